from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from app.domain.record import Home, Record
from app.errors import DatabaseError
from app.store import backup
from app.store.backup import DamagedError, back_up, check, copy_to, put_back
from app.store.copies import KEPT_BEFORE, tidy

NOW = datetime(2026, 11, 2, 10, 20, 30, tzinfo=UTC)


def names(database: Path) -> list[str]:
    with closing(sqlite3.connect(database)) as file:
        return [row[0] for row in file.execute("SELECT name FROM home ORDER BY id")]


@pytest.fixture
def named(keep: Callable[[Record], int]) -> Callable[[str], None]:
    def add(name: str) -> None:
        keep(Record(home=Home(ref=name, name=name)))

    return add


def test_a_copy_holds_what_the_file_holds(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    copy = back_up(database, tmp_path / "copies", note="asked", at=NOW)
    assert copy.name == "ways-20261102T102030000000-asked.sqlite3"
    assert names(copy) == ["first"]
    check(copy)
    assert list(copy.parent.iterdir()) == [copy]


def test_a_copy_is_made_while_another_writes(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    with closing(sqlite3.connect(database)) as writer:
        writer.execute("UPDATE home SET name = 'half done'")
        copy_to(database, tmp_path / "copy")
    assert names(tmp_path / "copy") == ["first"]


def test_only_the_newest_of_those_not_asked_for_are_kept(
    database: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "copies"
    asked = back_up(database, folder, note="asked", at=NOW)
    made = [
        back_up(database, folder, note="before-x", at=NOW + timedelta(minutes=n))
        for n in range(KEPT_BEFORE + 3)
    ]
    # None goes while one is about to go back to some other.
    assert sorted(folder.iterdir()) == sorted([asked, *made])
    tidy(folder, NOW + timedelta(days=1))
    assert sorted(folder.iterdir()) == sorted([asked, *made[3:]])


def test_the_oldest_of_many_copies_can_be_gone_back_to(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    folder = tmp_path / "copies"
    made = [
        back_up(database, folder, note="before-x", at=NOW + timedelta(minutes=n))
        for n in range(KEPT_BEFORE)
    ]
    named("second")
    put_back(made[0], database, folder, at=NOW + timedelta(hours=1))
    assert names(database) == ["first"]
    assert names(made[0]) == ["first"]


def test_a_copy_that_goes_away_meanwhile_is_never_made_anew(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    gone = tmp_path / "gone"
    with pytest.raises(DatabaseError, match="There is no file"):
        put_back(gone, database, tmp_path / "copies", at=NOW)
    with pytest.raises(sqlite3.OperationalError, match="unable to open"):
        backup._pour(gone, database)
    assert names(database) == ["first"]
    assert not gone.exists()
    assert [path.name for path in database.parent.iterdir()] == [database.name]


def test_a_damaged_file_is_put_back_where_it_was_if_the_copy_cannot_be_poured(
    database: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    copy = tmp_path / "copy"
    copy_to(database, copy)
    database.write_bytes(b"no more" * 1000)
    pour = backup._pour

    def full(source: Path, target: Path) -> None:
        if target == database:
            raise OSError(28, "No space left on device")
        pour(source, target)

    monkeypatch.setattr(backup, "_pour", full)
    with pytest.raises(DatabaseError, match=r"No space left.*Nothing was changed"):
        put_back(copy, database, tmp_path / "copies", at=NOW)
    assert database.read_bytes() == b"no more" * 1000
    assert [path.name for path in database.parent.iterdir()] == [database.name]


def test_a_copy_never_takes_the_place_of_a_file(database: Path, tmp_path: Path) -> None:
    target = tmp_path / "precious"
    target.write_text("mine", "utf-8")
    with pytest.raises(DatabaseError, match="is there already"):
        copy_to(database, target)
    assert target.read_text("utf-8") == "mine"


def test_what_is_not_there_cannot_be_copied(tmp_path: Path) -> None:
    with pytest.raises(DatabaseError, match="There is no file"):
        copy_to(tmp_path / "none", tmp_path / "copy")
    assert list(tmp_path.iterdir()) == []


def test_a_copy_into_no_folder_is_refused(database: Path, tmp_path: Path) -> None:
    with pytest.raises(DatabaseError, match="could not be copied"):
        copy_to(database, tmp_path / "no folder" / "copy")


def test_a_damaged_file_is_not_copied(database: Path, tmp_path: Path) -> None:
    damage(database)
    with pytest.raises(DatabaseError, match="damaged"):
        copy_to(database, tmp_path / "copy")
    assert not (tmp_path / "copy").exists()
    assert not list(tmp_path.glob("*.partial"))


def damage(database: Path) -> None:
    data = bytearray(database.read_bytes())
    middle = len(data) // 4096 // 2 * 4096
    data[middle : middle + 8192] = b"\xa5" * 8192
    database.write_bytes(data)


def test_damage_is_found(database: Path) -> None:
    check(database)
    damage(database)
    with pytest.raises(DamagedError):
        check(database)


def test_a_file_of_another_kind_is_found(tmp_path: Path) -> None:
    text = tmp_path / "text"
    text.write_text("This is a shopping list. " * 99, "utf-8")
    with pytest.raises(DamagedError, match="not a database"):
        check(text)


def test_what_names_nothing_is_found(database: Path) -> None:
    with closing(sqlite3.connect(database)) as file, file:
        file.execute("INSERT INTO item VALUES (9, 'P1', 'point', 1)")
    with pytest.raises(DamagedError, match="own check fails"):
        check(database)


def test_a_copy_takes_the_place_of_the_file_which_is_kept(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    copy = tmp_path / "copy"
    copy_to(database, copy)
    named("second")
    kept = put_back(copy, database, tmp_path / "copies", at=NOW)
    assert names(database) == ["first"]
    assert kept is not None
    assert names(kept) == ["first", "second"]
    assert names(copy) == ["first"]


def test_a_damaged_file_is_moved_aside_as_it_is(
    database: Path, tmp_path: Path, named: Callable[[str], None]
) -> None:
    named("first")
    copy = tmp_path / "copy"
    copy_to(database, copy)
    database.write_bytes(b"no more" * 1000)
    kept = put_back(copy, database, tmp_path / "copies", at=NOW)
    assert kept is not None
    assert kept.read_bytes() == b"no more" * 1000
    assert names(database) == ["first"]
    assert [path.name for path in database.parent.iterdir()] == [database.name]


def test_a_file_that_is_gone_is_put_back(database: Path, tmp_path: Path) -> None:
    copy = tmp_path / "copy"
    copy_to(database, copy)
    database.unlink()
    assert put_back(copy, database, tmp_path / "copies", at=NOW) is None
    check(database)


def test_the_file_itself_is_no_copy(database: Path, tmp_path: Path) -> None:
    with pytest.raises(DatabaseError, match="present file itself"):
        put_back(database, database, tmp_path / "copies", at=NOW)
    check(database)


@pytest.mark.parametrize("lock", ["EXCLUSIVE", "IMMEDIATE"])
def test_a_file_in_use_is_left_as_it_is(
    database: Path,
    lock: str,
    tmp_path: Path,
    named: Callable[[str], None],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("app.store.backup.WAIT_S", 0.1)
    copy = tmp_path / "copy"
    copy_to(database, copy)
    named("first")
    with closing(sqlite3.connect(database, isolation_level=None)) as other:
        other.execute(f"BEGIN {lock}")
        with pytest.raises(DatabaseError, match="locked"):
            put_back(copy, database, tmp_path / "copies", at=NOW)
    assert names(database) == ["first"]
