"""Whole runs of a program: seconds on the wall and peak memory."""

import os
import subprocess
import sys
import tempfile
import time
from typing import NamedTuple


class Cost(NamedTuple):
    """What a run took."""

    seconds: float
    megabytes: float

    def better(self, other: "Cost | None") -> "Cost":
        """The lower of each, of two runs of the same."""
        if other is None:
            return self
        return Cost(min(self.seconds, other.seconds), min(self.megabytes, other.megabytes))


def run(command: list[str]) -> Cost:
    """Runs a program whose words are of no interest unless it fails, which ends the bench."""
    with tempfile.TemporaryFile() as said:
        start = time.perf_counter()
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=said)
        # wait4 tells what this child used; getrusage would tell the largest of all so far.
        _, status, usage = os.wait4(process.pid, 0)
        seconds = time.perf_counter() - start
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode != 0:
            said.seek(0)
            words = said.read().decode(errors="replace")
            sys.exit(f"{' '.join(command)}\nended with {process.returncode}: {words}")
    # Kilobytes on Linux, bytes on macOS.
    unit = 1e6 if sys.platform == "darwin" else 1e3
    return Cost(seconds, usage.ru_maxrss * (1.024 if unit == 1e3 else 1.0) / unit)


def alternate(commands: dict[str, list[str]], outputs: dict[str, str], runs: int) -> dict[str, Cost]:
    """The best of so many runs of each, one after the other in turn, so that what else the
    machine does meets both."""
    best: dict[str, Cost] = {}
    for _ in range(runs):
        for name, command in commands.items():
            if os.path.exists(outputs[name]):
                os.remove(outputs[name])
            best[name] = run(command).better(best.get(name))
    return best
