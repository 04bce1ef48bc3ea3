from __future__ import annotations

import os
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

from app.store.copies import (
    ASKED,
    DAILY,
    DAMAGED,
    LACKING,
    Copy,
    copies_in,
    last_good,
    path_for,
    tidy,
    unneeded,
)

NOW = datetime(2026, 11, 25, 18, 10, tzinfo=UTC)


def copy(days_ago: float, note: str = DAILY) -> Copy:
    at = NOW - timedelta(days=days_ago)
    return Copy(made_at=at, note=note, path=path_for(Path("copies"), note, at))


def test_a_name_says_when_and_why(tmp_path: Path) -> None:
    path_for(tmp_path, "before-upgrade-abc", NOW).touch()
    path_for(tmp_path, DAILY, NOW - timedelta(days=1)).touch()
    for other in ("holiday.sqlite3", "ways-1-daily.sqlite3", "ways-x.sqlite3.partial"):
        (tmp_path / other).touch()
    first, second = copies_in(tmp_path)
    assert (first.made_at, first.note) == (NOW, "before-upgrade-abc")
    assert second.note == DAILY
    assert copies_in(tmp_path / "nowhere") == ()


def test_what_is_damaged_is_no_good_copy() -> None:
    assert last_good([copy(0, DAMAGED)], NOW) is None
    assert last_good([copy(0, DAMAGED), copy(3), copy(2, ASKED)], NOW) == copy(2, ASKED)


def test_of_a_year_of_days_a_week_a_month_and_half_a_year_are_kept() -> None:
    year = [copy(days) for days in range(365)]
    kept = sorted(set(year) - unneeded(year, NOW), reverse=True)
    days = [(NOW - k.made_at).days for k in kept]
    # 25 November 2026 is a Wednesday: Sundays before, then the last day of each month.
    assert days == [0, 1, 2, 3, 4, 5, 6, 10, 17, 25, 56, 86, 117, 148]


def test_of_one_day_the_newest_is_kept() -> None:
    hours = [copy(hour / 48) for hour in range(6)]
    assert set(hours) - unneeded(hours, NOW) == {copy(0)}


def test_a_long_absence_removes_nothing() -> None:
    old = [copy(days) for days in (400, 401, 900)]
    assert unneeded(old, NOW) == frozenset()


def test_what_was_asked_for_or_is_damaged_stays() -> None:
    kept = [copy(n, note) for n in range(40) for note in (ASKED, DAMAGED)]
    assert unneeded(kept, NOW) == frozenset()


def test_what_lacks_something_is_no_good_copy_and_lets_no_other_go() -> None:
    week = [copy(days) for days in range(7)]
    lacking = [copy(days / 10, LACKING) for days in range(3)]
    assert last_good([*week, *lacking], NOW) == copy(0)
    assert unneeded([*week, *lacking], NOW) == frozenset(lacking[1:])


def test_a_copy_of_a_day_to_come_says_nothing_and_stays() -> None:
    to_come = [copy(-1), copy(-400)]
    assert last_good([*to_come, copy(3)], NOW) == copy(3)
    made_now = copy(0)
    later_today = copy(-0.01)
    assert unneeded([*to_come, later_today, made_now], NOW) == frozenset()


def test_a_name_that_holds_no_day_is_somebodys_own(tmp_path: Path) -> None:
    (tmp_path / "ways-99999999T999999999999-x.sqlite3").touch()
    assert copies_in(tmp_path) == ()
    tidy(tmp_path, NOW)
    assert len(list(tmp_path.iterdir())) == 1


def test_what_an_end_half_way_left_goes_after_an_hour(tmp_path: Path) -> None:
    whole = path_for(tmp_path, DAILY, NOW)
    whole.touch()
    whole.with_suffix(".files").mkdir()
    half = tmp_path / "ways-20261124T181000000000-daily.sqlite3.partial"
    half.touch()
    half_files = tmp_path / "ways-20261124T181000000000-daily.files"
    (half_files / "ab").mkdir(parents=True)
    mine = tmp_path / "mine.partial"
    mine.touch()
    tidy(tmp_path, NOW)
    assert half.exists()
    old = time.time() - 4000
    for path in (half, half_files, mine, whole, whole.with_suffix(".files")):
        os.utime(path, (old, old))
    tidy(tmp_path, NOW)
    left = {whole, whole.with_suffix(".files"), mine}
    assert set(tmp_path.iterdir()) == left
