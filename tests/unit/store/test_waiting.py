from __future__ import annotations

import os
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from app.store.waiting import KEPT_FOR, MOST_FILES, clear, keep, kept, let_go, put

NOW = datetime.now(UTC)


def test_what_is_kept_is_there_until_it_is_let_go(tmp_path: Path) -> None:
    token = keep(tmp_path / "waiting", "a", NOW)
    assert kept(tmp_path / "waiting", token, NOW) == "a"
    put(tmp_path / "waiting", token, "b")
    assert kept(tmp_path / "waiting", token, NOW) == "b"
    let_go(tmp_path / "waiting", token)
    let_go(tmp_path / "waiting", token)
    assert kept(tmp_path / "waiting", token, NOW) is None


def test_it_is_kept_for_a_day(tmp_path: Path) -> None:
    now = datetime.now(UTC)
    old = keep(tmp_path, "a", now)
    later = now + KEPT_FOR + timedelta(minutes=1)
    assert kept(tmp_path, old, later) is None
    keep(tmp_path, "b", later)
    assert not (tmp_path / old).exists()


def test_what_is_too_old_goes_without_another_being_kept(tmp_path: Path) -> None:
    clear(tmp_path / "waiting", NOW)
    token = keep(tmp_path / "waiting", "a", NOW)
    path = tmp_path / "waiting" / token
    assert path.stat().st_mode & 0o077 == 0
    clear(tmp_path / "waiting", NOW)
    assert path.exists()
    clear(tmp_path / "waiting", datetime.now(UTC) + KEPT_FOR + timedelta(minutes=1))
    assert not path.exists()


def test_only_so_many_are_kept_and_the_oldest_goes(tmp_path: Path) -> None:
    tokens = []
    for number in range(MOST_FILES + 1):
        tokens.append(keep(tmp_path, str(number), NOW))
        moment = NOW.timestamp() - 100 + number
        os.utime(tmp_path / tokens[-1], (moment, moment))
    keep(tmp_path, "last", NOW)
    assert [kept(tmp_path, token, NOW) for token in tokens[:2]] == [None, None]
    assert len(list(tmp_path.iterdir())) == MOST_FILES


@pytest.mark.parametrize("token", ["", "..", "../secret", "A" * 32, "0" * 33, "0" * 32])
def test_a_token_is_no_path(tmp_path: Path, token: str) -> None:
    folder = tmp_path / "waiting"
    keep(folder, "a", NOW)
    (tmp_path / "secret").write_text("x", "utf-8")
    assert kept(folder, token, NOW) is None
    let_go(folder, token)
    assert (tmp_path / "secret").exists()
