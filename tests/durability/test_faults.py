"""A little of what ``python -m tests.faults`` does at length."""

from __future__ import annotations

import random
from pathlib import Path

from tests.faults.kills import killed
from tests.faults.writers import written_at_once


def test_nothing_acknowledged_is_lost_by_kills_in_mixed_work(tmp_path: Path) -> None:
    done = killed(tmp_path, kills=5, seed=random.randrange(10**6))  # noqa: S311
    assert done.total() > 0


def test_eight_who_write_at_once_lose_nothing_and_see_no_lock(tmp_path: Path) -> None:
    told = written_at_once(tmp_path, writers=8, seconds=4)
    assert told["added"] > 0
    assert told["counted"] > 0
