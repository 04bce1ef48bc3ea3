"""``python -m tests.bench [--quick] [TABLE…]``: the tables, or some of them."""

from __future__ import annotations

import argparse
import gc
from collections.abc import Callable, Iterable
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench import processes, rows
from tests.bench.timing import Row, table

Measure = Callable[[Path, int], Iterable[Row]]
TABLES: dict[str, tuple[str, Measure]] = {
    "pages": ("Pages of a home of 60 points over the floor", rows.pages_over_floor),
    "answers": ("JSON answers over the floor", rows.answers_over_floor),
    "domain": (
        "The whole home against networkx, reachability alone",
        lambda _, times: rows.domain_against_networkx(times),
    ),
    "growth": (
        "Growth of pages from 60 to 6,000 points: exponent",
        lambda folder, _: rows.growth_of_pages(folder),
    ),
    "computing": (
        "Growth of what is computed: exponent",
        lambda _folder, _: rows.growth_of_domain(),
    ),
    "reading": (
        "Growth of reading a home: exponent",
        lambda folder, _: rows.reading_a_home(folder),
    ),
    "hundred": (
        "A home among a hundred against the home alone",
        rows.among_a_hundred,
    ),
    "save": ("Saving against a bare write", rows.durable_save),
    "start": (
        "Starting against a bare program",
        lambda folder, times: processes.start_over_bare(folder, min(times, 5)),
    ),
    "memory": ("Memory", lambda folder, _: processes.memory(folder)),
    "papers": (
        "Growth of a sheet and of the pack: exponent",
        lambda _folder, _: processes.papers(),
    ),
}


def main() -> None:
    """Measure, and print the tables."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench")
    parser.add_argument("tables", nargs="*", metavar="TABLE", help=", ".join(TABLES))
    parser.add_argument("--quick", action="store_true", help="Fewer tries.")
    chosen = parser.parse_args()
    times = 5 if chosen.quick else 21
    missed = []
    for name in chosen.tables or TABLES:
        title, measure = TABLES[name]
        # What an earlier table has left is not looked through again in this one.
        gc.collect()
        gc.freeze()
        with TemporaryDirectory() as folder:
            found = list(measure(Path(folder), times))
        print(table(title, found), flush=True)
        missed += [row.name for row in found if row.misses]
    print(f"\n{len(missed)} miss: {', '.join(missed)}" if missed else "\nNone misses.")


if __name__ == "__main__":
    main()
