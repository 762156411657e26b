"""Assess a table of buildings on Apache Spark, with `sillmark portfolio` as the filter of
each partition. README.md beside this file says how to run it.

    run.py TABLE OUT [--parts NUMBER] [--binary PATH] [--master URL] [--rejects PATH] -- OPTIONS

OPTIONS are those of `sillmark portfolio`, such as --zones and --dem. OUT is a folder of parts
that follow each other: `cat OUT/part-*` is what one run on one machine writes.
"""

import argparse
import csv
import io
import os
import re
import sys

from py4j.protocol import Py4JJavaError
from pyspark import RDD
from pyspark.sql import SparkSession, functions

sys.dont_write_bytecode = True  # no compiled file beside the scripts
from partition import Counts, assess  # noqa: E402

PARQUET = (".parquet", ".pq")
# What belongs to the whole table, and not to a part of it.
NOT_FOR_A_PART = (
    "--columns", "--from", "--layer", "--no-header", "--output", "-o", "--rank", "--rejects",
    "--resume", "--summary", "--to",
)  # fmt: skip


def main() -> None:
    arguments, options = read_arguments()
    spark = SparkSession.builder.appName("sillmark")
    if arguments.master:
        spark = spark.master(arguments.master)
    spark = spark.config("spark.ui.showConsoleProgress", "false").getOrCreate()
    spark.sparkContext.setLogLevel("OFF")
    context = spark.sparkContext
    context.addPyFile(os.path.join(os.path.dirname(__file__), "partition.py"))

    parts = arguments.parts or context.defaultParallelism
    is_parquet = arguments.table.endswith(PARQUET)
    read = parquet_lines if is_parquet else csv_lines
    columns, lines = read(spark, arguments.table, parts)
    # A worker gives each partition one core; the program would take all of them.
    threads = [] if "--threads" in options else ["--threads", "1"]
    command = [arguments.binary, "portfolio", "-", "--columns", column_names(columns)]
    command += threads + options

    counts = context.accumulator({}, Counts())
    answers = lines.mapPartitionsWithIndex(lambda number, part: assess(number, part, command, counts))
    try:
        answers.saveAsTextFile(arguments.out)
    except Py4JJavaError as error:
        # A part failed, and so did the job: what the filter said, out of the engine's trace.
        said = re.search(r"\n(?:RuntimeError: )?((?:part |\w+Error: ).*?)\n\n", str(error), re.DOTALL)
        sys.exit(said.group(1).strip() if said else error.java_exception.toString())
    finally:
        spark.stop()
    tell_rejects(counts.value, arguments.rejects, 0 if is_parquet else 1)


def read_arguments() -> tuple[argparse.Namespace, list[str]]:
    own, options = sys.argv[1:], []
    if "--" in own:
        split = own.index("--")
        own, options = own[:split], own[split + 1 :]
    parser = argparse.ArgumentParser(usage="run.py TABLE OUT [options] -- --zones … --dem …")
    parser.add_argument("table", help="CSV with a header line, or Parquet (.parquet)")
    parser.add_argument("out", help="folder to make")
    parser.add_argument("--parts", type=int, default=0, help="partitions; else one for each core")
    parser.add_argument("--binary", default="sillmark", help="the program on every worker")
    parser.add_argument("--master", help="the cluster, such as local[*]; else spark-submit says it")
    parser.add_argument("--rejects", help="CSV of rows without an answer; else they go to stderr")
    for option in options:
        if option.split("=")[0] in NOT_FOR_A_PART:
            parser.error(f"option {option}: it is for a whole table; accepted: options of each row")
    return parser.parse_args(own), options


def csv_lines(spark: SparkSession, path: str, parts: int) -> tuple[list[str], RDD]:
    """Columns, and the lines as they are: what is wrong with one, the filter says."""
    lines = spark.sparkContext.textFile(path, parts)
    header = next(csv.reader([lines.first().lstrip("\ufeff")]))

    def without_header(number, part):
        if number == 0:
            next(part)
        return part

    return header, lines.mapPartitionsWithIndex(without_header)


def parquet_lines(spark: SparkSession, path: str, parts: int) -> tuple[list[str], RDD]:
    """Columns, and the rows as lines of CSV."""
    rows = spark.read.parquet(path)
    number = "number of the row"
    numbered = rows.withColumn(number, functions.monotonically_increasing_id())
    in_order = numbered.repartitionByRange(parts, number).sortWithinPartitions(number)
    return rows.columns, in_order.drop(number).rdd.map(csv_line)


def csv_line(row) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="").writerow(row)
    return text.getvalue()


def column_names(columns: list[str]) -> str:
    for name in columns:
        if "," in name:
            sys.exit(f'column "{name}": its name holds a comma; accepted: a name without one')
    return ",".join(columns)


def tell_rejects(counts: dict, path: str | None, before: int) -> None:
    """Writes rejected rows, with their lines in the table, of which `before` hold a header."""
    file = open(path, "w", encoding="utf-8", newline="") if path else sys.stderr
    writer = csv.writer(file, lineterminator="\n")
    rejected = sum(len(part.rejects) for part in counts.values())
    if path or rejected:
        writer.writerow(["line", "id", "field", "value", "problem", "accepted"])
    for _, part in sorted(counts.items()):
        for line, *rest in part.rejects:
            writer.writerow([int(line) + before, *rest])
        before += part.lines
    if path:
        file.close()
    answers = sum(part.answers for part in counts.values())
    print(f"{answers} rows answered, {rejected} rejected, {len(counts)} parts", file=sys.stderr)


if __name__ == "__main__":
    main()
