#!/usr/bin/env python3
"""Runs `plainwatt grade` under Apache Spark's RDD.pipe on a local cluster, and compares it with the single run.

    python3 tests/spark/pipe.py [--program target/release/plainwatt] [--rows 20000] [--partitions 7]

The rows of an invented catalogue are spread over partitions, each is piped through a process of its own, and what comes
back must equal the single run byte for byte. Skipped, with a message and exit code 0, where PySpark (pip: pyspark) or Java
is not found; exit code 1 where the two differ.
"""
import argparse
import os
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

NAMES = "listing,supplier,title,claim_w,class,deep_red,white"
# Rows that a split of the text would get wrong, but for a row a line: inch marks, quotes, semicolons, other alphabets.
TITLES = [
    '24" x 12" board',
    '"300 W, for ""bloom"""',
    "a; b; c; d; e; f; g; h; i",
    "Pflanzenlampe für 植物",
    '"never closed',
    "300W LED Grow Light (100x3W)",
]


def invented(rows):
    """Invented listings, one a line; every seventh claim cannot be read."""
    for row in range(rows):
        claim = "a lot" if row % 7 == 6 else 30 + row % 900
        yield f"L{row},=s{row % 40},{TITLES[row % len(TITLES)]},{claim},3W,{row % 59},{row % 53}"


def skip(why):
    print(f"skipped: {why}")
    sys.exit(0)


def main():
    here = Path(__file__).resolve().parents[2]
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", type=Path, default=here / "target" / "release" / "plainwatt")
    parser.add_argument("--rows", type=int, default=20_000)
    parser.add_argument("--partitions", type=int, default=7)
    asked = parser.parse_args()

    if not asked.program.is_file():
        skip(f"{asked.program} is not there; cargo build --release makes it")
    try:
        from pyspark import SparkConf, SparkContext
    except ImportError:
        skip("PySpark is not there; pip install pyspark")
    java = Path(os.environ["JAVA_HOME"], "bin", "java") if os.environ.get("JAVA_HOME") else shutil.which("java")
    if not java or not os.path.exists(java):
        skip("Java is not there; PySpark needs it on the path or in JAVA_HOME")

    command = [str(asked.program.resolve()), "grade", "-", "--format", "csv", "--no-header", "--header", NAMES]
    lines = list(invented(asked.rows))
    text = "".join(line + "\n" for line in lines).encode()
    single = subprocess.run(command, input=text, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=True).stdout

    conf = SparkConf().setMaster("local[2]").setAppName("grade").set("spark.ui.enabled", "false")
    spark = SparkContext(conf=conf)
    spark.setLogLevel("ERROR")
    try:
        # checkCode: a process that fails ends the job, else its rows would be missing without a word.
        graded = spark.parallelize(lines, asked.partitions).pipe(shlex.join(command), checkCode=True).collect()
    finally:
        spark.stop()
    piped = "".join(line + "\n" for line in graded).encode()

    if piped != single:
        pairs = zip(piped.splitlines(), single.splitlines())
        first = next((n for n, (a, b) in enumerate(pairs, 1) if a != b), "the shorter one's end")
        print(f"different: {len(piped)} bytes under Spark, {len(single)} in the single run, first at line {first}")
        sys.exit(1)
    print(f"equal: {len(graded)} rows in {asked.partitions} partitions, {len(piped)} bytes, byte for byte")
    if len(graded) != asked.rows:
        print(f"but {asked.rows} rows went in")
        sys.exit(1)


if __name__ == "__main__":
    main()
