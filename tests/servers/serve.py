"""Serves one layer on loopback, by OGC API - Features and by GeoServices REST.

serve.py FOLDER MODULES: the folder holds the layer and how it is served; the modules are those
of package.json. Prints the address of each as soon as it answers, and serves until its standard
input ends, as it does however the caller ends.
"""

import os
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import urllib.request
from contextlib import ExitStack, contextmanager
from pathlib import Path

SECONDS_TO_ANSWER = 60
SECONDS_TO_END = 10
PROGRAMS = Path(sys.executable).parent


def main(source, modules):
    # What is cleaned up at an end of its own accord is cleaned up at any.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    with tempfile.TemporaryDirectory(prefix="sillmark-servers-") as folder, ExitStack() as stack:
        folder = Path(folder)
        shutil.copytree(source, folder, dirs_exist_ok=True, copy_function=shutil.copyfile)
        folder.chmod(0o700)
        print(stack.enter_context(ogc(folder)), flush=True)
        print(stack.enter_context(geoservices(folder, Path(modules))), flush=True)
        sys.stdin.read()


@contextmanager
def ogc(folder):
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
        replace(folder / "pygeoapi.yml", "5099", str(port))
        files = {"PYGEOAPI_CONFIG": "pygeoapi.yml", "PYGEOAPI_OPENAPI": "openapi.yml"}
        describe = [PROGRAMS / "pygeoapi", "openapi", "generate", "pygeoapi.yml"]
        describe += ["--output-file", "openapi.yml"]
        subprocess.run(describe, cwd=folder, stdout=subprocess.DEVNULL, check=True)
        command = [PROGRAMS / "gunicorn", "--bind", f"fd://{listener.fileno()}"]
        with running([*command, "pygeoapi.flask_app:APP"], listener, folder, files) as log:
            yield answering(f"http://127.0.0.1:{port}", "/conformance?f=json", log)


@contextmanager
def geoservices(folder, modules):
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
        replace(folder / "server.js", "8099, '127.0.0.1'", f"{{ fd: {listener.fileno()} }}")
        names = {"NODE_PATH": str(modules / "node_modules"), "SUPPRESS_NO_CONFIG_WARNING": "1"}
        with running(["node", "server.js"], listener, folder, names) as log:
            layer = "/file-geojson/rest/services/nfhl/FeatureServer/0?f=json"
            yield answering(f"http://127.0.0.1:{port}", layer, log)


def replace(path, old, new):
    text = path.read_text()
    if old not in text:
        sys.exit(f"{path.name}: there is no {old!r} to be replaced")
    path.write_text(text.replace(old, new))


@contextmanager
def running(command, listener, folder, environment):
    """Runs a server on a port that is open already, so that nobody takes it in between."""
    log = folder / f"{Path(command[0]).name}.log"
    with open(log, "wb") as said:
        server = subprocess.Popen(
            command,
            cwd=folder,
            env={**os.environ, **environment},
            stdin=subprocess.DEVNULL,
            stdout=said,
            stderr=said,
            pass_fds=[listener.fileno()],
        )
    listener.close()
    try:
        yield log
    finally:
        server.terminate()
        try:
            server.wait(SECONDS_TO_END)
        except subprocess.TimeoutExpired:
            server.kill()
            server.wait()


def answering(address, path, log):
    """The address, once the server answers; where it ends before, so does its connection."""
    try:
        with urllib.request.urlopen(address + path, timeout=SECONDS_TO_ANSWER) as answer:
            answer.read()
    except OSError as error:
        sys.exit(f"{address}{path}: {error}\n{log.read_text(errors='replace')}")
    return address


if __name__ == "__main__":
    main(*sys.argv[1:])
