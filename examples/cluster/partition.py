"""One partition of a table through the filter, on a worker."""

import csv
import os
import subprocess
import tempfile
import threading
from typing import Iterable, Iterator, NamedTuple

from pyspark.accumulators import AccumulatorParam


class Count(NamedTuple):
    """What became of the lines of a partition."""

    lines: int
    answers: int
    rejects: list[list[str]]


class Counts(AccumulatorParam):
    """Counts by the partition's number: a partition that runs twice counts once."""

    def zero(self, value: dict) -> dict:
        return {}

    def addInPlace(self, known: dict, more: dict) -> dict:
        known.update(more)
        return known


class Feeder(threading.Thread):
    """Writes lines to the filter while its answers are read, so that neither waits for ever."""

    def __init__(self, lines: Iterable[str], pipe) -> None:
        super().__init__(daemon=True)
        self.lines, self.pipe = lines, pipe
        self.count = self.rows = 0
        self.open_quote: str | None = None
        self.error: Exception | None = None

    def run(self) -> None:
        try:
            with self.pipe:
                for line in self.lines:
                    self.count += 1
                    self.rows += line != ""
                    if line.count('"') % 2:
                        self.open_quote = line
                        return
                    self.pipe.write(line.encode() + b"\n")
        except BrokenPipeError:
            pass  # the filter ended early: its status and its words say why
        except Exception as error:
            self.error = error


def assess(number: int, lines: Iterator[str], command: list[str], counts) -> Iterator[str]:
    """The lines of the result. Raises, and so fails the job, where the filter fails or a row
    is missing in what it gives."""
    if number > 0:
        first = next(lines, None)
        if first is None:
            counts.add({number: Count(0, 0, [])})
            return
        lines = chain_first(first, lines)
        command = [*command, "--no-header"]
    with tempfile.TemporaryDirectory() as scratch:
        said, rejects = (os.path.join(scratch, name) for name in ("said", "rejects.csv"))
        answers = 0 if number > 0 else -1  # the header is none
        with open(said, "wb") as words:
            process = subprocess.Popen(
                [*command, "--rejects", rejects],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=words,
            )
        feeder = Feeder(lines, process.stdin)
        feeder.start()
        try:
            for answer in process.stdout:
                answers += 1
                yield answer.decode().rstrip("\n")
            feeder.join()
            status = process.wait()
        finally:
            process.kill()  # does nothing to one that has ended
            process.wait()
        if feeder.error:
            raise feeder.error
        if feeder.open_quote is not None:
            raise RuntimeError(
                f"part {number}: a quoted text goes on behind its line: {feeder.open_quote}; "
                "accepted: records of one line, because a part may end after any"
            )
        if status != 0:
            with open(said, encoding="utf-8", errors="replace") as file:
                raise RuntimeError(f"part {number}: the filter ended with {status}: {file.read()}")
        with open(rejects, encoding="utf-8", newline="") as file:
            refused = list(csv.reader(file))[1:]
        if answers + len(refused) != feeder.rows:
            raise RuntimeError(
                f"part {number}: {feeder.rows} rows went in, {answers} answers and "
                f"{len(refused)} rejects came back"
            )
        counts.add({number: Count(feeder.count, answers, refused)})


def chain_first(first: str, rest: Iterator[str]) -> Iterator[str]:
    yield first
    yield from rest
