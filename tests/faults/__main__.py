"""The whole: ``python -m tests.faults [--kills 300] [--writers 8 --seconds 120]``."""

from __future__ import annotations

import argparse
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.faults.kills import killed
from tests.faults.writers import written_at_once


def main() -> None:
    """Run both, and print what was acknowledged."""
    parser = argparse.ArgumentParser(prog="python -m tests.faults")
    parser.add_argument("--kills", type=int, default=300)
    parser.add_argument("--writers", type=int, default=8)
    parser.add_argument("--seconds", type=float, default=120)
    parser.add_argument("--seed", type=int, default=1, help="Of the moments of kills.")
    chosen = parser.parse_args()
    begun = time.monotonic()
    if chosen.kills:
        with TemporaryDirectory() as folder:
            done = killed(Path(folder), chosen.kills, chosen.seed)
        print(f"{chosen.kills} kills: nothing acknowledged was lost or doubled.")
        print(f"  {dict(done.most_common())}, {time.monotonic() - begun:.0f} s")
    if chosen.writers:
        with TemporaryDirectory() as folder:
            told = written_at_once(Path(folder), chosen.writers, chosen.seconds)
        print(f"{chosen.writers} writers, {chosen.seconds:.0f} s: nothing lost.")
        print(f"  {dict(told.most_common())}")


if __name__ == "__main__":
    main()
