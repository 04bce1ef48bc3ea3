"""The copy of the day, wherever it goes; what is in its way is said."""

from __future__ import annotations

import os
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, BinaryIO

import pytest

from app.config import Config, files_beside
from app.domain.edits import replaced
from app.domain.record import Home, Record
from app.errors import DatabaseError, InvalidError
from app.services import copies, upkeep
from app.services.copies import (
    Keeper,
    chosen_folder,
    made_when_due,
    make,
    places_of,
)
from app.services.homes import open_home, save
from app.services.running import not_running, running
from app.services.upkeep import copy_of, restored
from app.store import backup, files
from app.store.copies import ASKED, DAILY, Copy, copies_in, path_for
from app.store.engine import make_engine, reading, writing
from app.store.settings import copies_folder
from tests.builders import board, home, street, way

NOW = datetime.now(UTC)
DAY = timedelta(days=1)


@pytest.fixture
def small() -> Record:
    return Record(home=Home(ref="a", name="A home"))


def choose(config: Config, folder: Path) -> None:
    with writing(make_engine(config.database)) as connection:
        copies.choose(config, connection, str(folder))


@pytest.fixture
def stick(config: Config, tmp_path: Path) -> Path:
    """Return the folder of one's own that the copies of this computer go to."""
    folder = tmp_path / "stick"
    folder.mkdir()
    choose(config, folder)
    return folder


def in_all(config: Config) -> list[Copy]:
    with reading(make_engine(config.database)) as connection:
        places = places_of(config, connection)
    return [copy for folder in places.every for copy in copies_in(folder)]


def rename(config: Config, ref: str, name: str) -> None:
    with writing(make_engine(config.database)) as connection:
        here = open_home(connection, ref)
        home = here.record.home.model_copy(update={"name": name})
        save(connection, here, replaced(here.record, ref, home), name)


def record_in(database: Path, ref: str) -> Record:
    with reading(make_engine(database)) as connection:
        return open_home(connection, ref).record


def test_the_first_is_made_when_there_is_a_home(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    assert made_when_due(config, NOW) is None
    assert in_all(config) == []
    keep(small)
    assert made_when_due(config, NOW) == ()
    (copy,) = in_all(config)
    assert copy.note == DAILY
    assert record_in(copy.path, small.home.ref) == small


def test_one_a_day_and_only_after_a_change(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    made_when_due(config, NOW)
    rename(config, small.home.ref, "changed today")
    assert made_when_due(config, NOW) is None
    assert made_when_due(config, NOW + DAY) == ()
    assert made_when_due(config, NOW + 2 * DAY) is None
    newest, _first = in_all(config)
    assert record_in(newest.path, small.home.ref).home.name == "changed today"


def test_a_clock_that_was_wrong_does_not_end_the_copies(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    made_when_due(config, NOW + 400 * DAY)
    assert made_when_due(config, NOW) == ()
    assert len(in_all(config)) == 2


def test_photographs_go_along_and_are_looked_through(
    config: Config, illustrated: Record, keep: Callable[[Record], int]
) -> None:
    keep(illustrated)
    assert made_when_due(config, NOW) == ()
    (copy,) = in_all(config)
    named = {a.sha256 for a in illustrated.attachments}
    assert files.digests_here(files_beside(copy.path)) == named
    victim = files.path_of(config.files, min(named))
    victim.unlink()
    victim.write_bytes(b"no longer what it was")
    rename(config, illustrated.home.ref, "later")
    (said,) = made_when_due(config, NOW + DAY) or ()
    assert "not there or damaged: 1" in said
    assert len(in_all(config)) == 2


def test_a_folder_of_ones_own_has_them_too_and_takes_no_room_twice(
    config: Config, illustrated: Record, keep: Callable[[Record], int], stick: Path
) -> None:
    keep(illustrated)
    made_when_due(config, NOW)
    rename(config, illustrated.home.ref, "later")
    made_when_due(config, NOW + DAY)
    there = [copy for copy in in_all(config) if stick in copy.path.parents]
    assert len(there) == 2
    digest = illustrated.attachments[0].sha256
    one, other = (files.path_of(files_beside(copy.path), digest) for copy in there)
    assert one.samefile(other)
    assert not one.samefile(files.path_of(config.files, digest))


@pytest.mark.parametrize("mounted", [False, True], ids=["gone", "an empty place"])
def test_a_folder_that_is_gone_is_said_and_the_own_copy_made(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    tmp_path: Path,
    mounted: bool,
    stick: Path,
) -> None:
    keep(small)
    stick.rename(tmp_path / "pulled out")
    if mounted:
        stick.mkdir()
    (said,) = made_when_due(config, NOW) or ()
    assert "is not there now" in said
    assert [copy.path.parent for copy in in_all(config)] == [config.backups]
    assert list(tmp_path.glob("stick/*")) == []
    with (
        reading(make_engine(config.database)) as connection,
        pytest.raises(DatabaseError, match="is not there now"),
    ):
        make(config, places_of(config, connection))


def test_what_is_in_the_way_of_one_stops_no_other(
    config: Config, small: Record, keep: Callable[[Record], int], stick: Path
) -> None:
    keep(small)
    config.backups.write_text("a file where the folder should be", "utf-8")
    with (
        reading(make_engine(config.database)) as connection,
        pytest.raises(DatabaseError, match="cannot be made"),
    ):
        make(config, places_of(config, connection))
    assert [copy.note for copy in in_all(config)] == [ASKED]


def test_what_lacks_photographs_is_no_good_copy_and_made_once_a_day(
    config: Config, illustrated: Record, keep: Callable[[Record], int]
) -> None:
    keep(illustrated)
    files.path_of(config.files, illustrated.attachments[0].sha256).unlink()
    (said,) = made_when_due(config, NOW) or ()
    assert "not there or damaged: 1" in said
    (copy,) = in_all(config)
    assert (copy.note, copy.is_good) == ("lacking", False)
    rename(config, illustrated.home.ref, "later")
    assert made_when_due(config, NOW) is None


def test_damage_in_one_copy_does_not_come_into_the_next(
    config: Config, illustrated: Record, keep: Callable[[Record], int], stick: Path
) -> None:
    keep(illustrated)
    made_when_due(config, NOW)
    (first,) = stick.glob("*/*-daily.files")
    victim = files.path_of(first, illustrated.attachments[0].sha256)
    rotten = victim.read_bytes()[:-1] + b"?"
    victim.write_bytes(rotten)
    rename(config, illustrated.home.ref, "later")
    assert made_when_due(config, NOW + DAY) == ()
    second = max(stick.glob("*/*-daily.files"))
    assert second != first
    assert files.is_sound(second, illustrated.attachments[0].sha256)


def test_a_stick_that_is_full_is_not_filled_with_halves(
    config: Config,
    illustrated: Record,
    keep: Callable[[Record], int],
    stick: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(illustrated)
    write, count = files.write, iter(range(100))

    def full(path: Path, data: bytes) -> None:
        if stick in path.parents and next(count):
            raise OSError(28, "No space left on device")
        write(path, data)

    monkeypatch.setattr(files, "write", full)
    (said,) = made_when_due(config, NOW) or ()
    assert "No space left" in said
    assert [path.name for path in stick.glob("*/*")] == []


def test_a_clock_set_back_within_the_day_takes_no_copy_away(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    made_when_due(config, NOW + timedelta(minutes=5))
    assert made_when_due(config, NOW) == ()
    assert len(in_all(config)) == 2
    assert made_when_due(config, NOW + timedelta(minutes=1)) is None


def test_a_copy_that_fails_lets_no_other_go(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    days = [NOW - DAY * n for n in range(7)]
    for day in days:
        backup.back_up(config.database, config.backups, note=DAILY, at=day)
    with closing(sqlite3.connect(config.database)) as file, file:
        file.execute("UPDATE home SET nation = 'nowhere at all'")
    (said,) = made_when_due(config, NOW + DAY) or ()
    assert "does not open" in said
    assert [copy.made_at for copy in in_all(config)] == days


def test_what_cannot_be_written_is_said_and_tried_again(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(small)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    keeper = Keeper(config)
    with monkeypatch.context() as patched:
        patched.setattr(backup, "_pour", full)
        keeper.look()
        assert keeper.settled(10)
    assert "No space left" in keeper.troubles[0]
    keeper.look()
    assert keeper.settled(10)
    assert in_all(config) == [], "it waits before it tries again"
    keeper._next = 0
    keeper.look()
    assert keeper.settled(10)
    assert keeper.troubles == ()
    assert len(in_all(config)) == 1


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("stick", "whole path"),
        ("/no/such/folder", "is not there now"),
        ("/x\x00y", "whole path"),
        ("/" + "x" * 2000, "whole path"),
        ("DATA", "inside the data folder"),
        ("DATA/copies", "inside the data folder"),
        ("FILE", "is not there now"),
    ],
)
def test_a_folder_that_will_not_do_is_refused(
    config: Config, tmp_path: Path, text: str, reason: str
) -> None:
    (tmp_path / "file").touch()
    config.backups.mkdir()
    path = text.replace("DATA", str(config.data)).replace("FILE", f"{tmp_path}/file")
    with pytest.raises(InvalidError, match=reason):
        chosen_folder(config, path)


def test_a_folder_may_be_chosen_or_none(config: Config, tmp_path: Path) -> None:
    assert chosen_folder(config, "") is None
    assert chosen_folder(config, str(tmp_path)) == tmp_path
    assert not list(tmp_path.glob("tmp*"))


def test_a_folder_that_cannot_be_written_is_refused(
    config: Config, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def read_only(**_: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(copies, "TemporaryFile", read_only)
    with pytest.raises(InvalidError, match=r"Nothing can be written.*Read-only"):
        chosen_folder(config, str(tmp_path))


@pytest.mark.parametrize("note", [DAILY, ASKED, "before-upgrade-x", "before-restore"])
@pytest.mark.parametrize("apart", [False, True], ids=["own", "apart"])
def test_every_kind_of_copy_can_be_gone_back_to(
    config: Config,
    illustrated: Record,
    keep: Callable[[Record], int],
    tmp_path: Path,
    note: str,
    apart: bool,
) -> None:
    keep(illustrated)
    folder = tmp_path / "stick" if apart else config.backups
    copy = backup.back_up(config.database, folder, note=note, at=NOW, link=not apart)
    rename(config, illustrated.home.ref, "a mistake")
    shutil.rmtree(config.files)
    kept = restored(config, copy)
    assert record_in(config.database, illustrated.home.ref) == illustrated
    digests = {a.sha256 for a in illustrated.attachments}
    assert all(files.is_sound(config.files, digest) for digest in digests)
    assert kept is not None
    assert record_in(kept, illustrated.home.ref).home.name == "a mistake"


def test_where_copies_go_stays_as_it_is_when_one_goes_back(
    config: Config, small: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(small)
    copy = backup.back_up(config.database, config.backups, note=ASKED, at=NOW)
    choose(config, tmp_path)
    restored(config, copy)
    with reading(make_engine(config.database)) as connection:
        assert copies_folder(connection) == str(tmp_path)


def test_two_computers_may_share_a_stick(config: Config, tmp_path: Path) -> None:
    other = replace(config, secret_key=b"of another" * 4)
    choose(config, tmp_path)
    with reading(make_engine(config.database)) as connection:
        one, two = (places_of(c, connection).apart for c in (config, other))
    assert one != two


def test_what_is_damaged_is_not_gone_back_to(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    damaged = path_for(config.backups, "damaged", NOW)
    damaged.parent.mkdir()
    damaged.write_bytes(b"no more" * 1000)
    with pytest.raises(DatabaseError, match="damaged"):
        restored(config, damaged)
    assert record_in(config.database, small.home.ref) == small


def test_of_a_day_the_newest_stays_and_it_has_all_of_the_day(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    noon = datetime(2026, 3, 5, 12, tzinfo=UTC)
    made_when_due(config, noon)
    rename(config, small.home.ref, "a whole day of mapping")
    written, at_the_end = noon + timedelta(hours=1), noon + timedelta(hours=3)
    os.utime(config.database, (written.timestamp(), written.timestamp()))
    assert made_when_due(config, at_the_end, timedelta(0)) == ()
    assert made_when_due(config, at_the_end, timedelta(0)) is None
    (copy,) = in_all(config)
    assert record_in(copy.path, "a").home.name == "a whole day of mapping"


def test_the_last_copy_is_made_at_the_end(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keeper = Keeper(config)
    keeper.look()
    assert keeper.settled(10)
    keep(small)
    keeper.look()
    assert in_all(config) == [], "there was no home a moment ago"
    keeper.finish(10)
    rename(config, "a", "later")
    keeper.finish(10)
    (copy,) = in_all(config)
    assert record_in(copy.path, "a").home.name == "later"


def test_what_was_copied_before_something_stands_for_no_copy_of_the_day(
    config: Config, small: Record, keep: Callable[[Record], int]
) -> None:
    keep(small)
    before = backup.back_up(
        config.database, config.backups, note="before-upgrade-x", at=NOW
    )
    assert not next(c for c in in_all(config) if c.path == before).is_good
    assert made_when_due(config, NOW + timedelta(seconds=1)) == ()
    assert [copy.note for copy in in_all(config)] == [DAILY, "before-upgrade-x"]


def test_one_that_is_asked_for_is_looked_through_too(
    config: Config, illustrated: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(illustrated)
    files.path_of(config.files, illustrated.attachments[0].sha256).unlink()
    copy, lacks = copy_of(config, None)
    assert lacks == 1
    assert [(c.path, c.note, c.is_good) for c in in_all(config)] == [
        (copy, "lacking", False)
    ]
    assert copy_of(config, tmp_path / "mine.sqlite3") == (tmp_path / "mine.sqlite3", 1)
    with closing(sqlite3.connect(config.database)) as file, file:
        file.execute("UPDATE home SET nation = 'nowhere at all'")
    with pytest.raises(DatabaseError, match="does not open"):
        copy_of(config, tmp_path / "other.sqlite3")
    assert not list(tmp_path.glob("other*"))


def test_a_copy_has_no_name_before_it_was_looked_through(
    config: Config,
    illustrated: Record,
    keep: Callable[[Record], int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(illustrated)

    def ended(copy: Path) -> None:
        assert copy.is_file()
        assert in_all(config) == []
        raise KeyboardInterrupt

    monkeypatch.setattr(copies, "look_through", ended)
    with pytest.raises(KeyboardInterrupt):
        made_when_due(config, NOW)
    assert list(config.backups.iterdir()) == []


def test_a_row_that_cannot_be_read_is_said(
    config: Config, keep: Callable[[Record], int]
) -> None:
    keep(home(street(board("B1", way("W1", rated_current_a=32)))))
    with closing(sqlite3.connect(config.database)) as file, file:
        file.execute("UPDATE device SET rated_current_a = 'x'")
    keeper = Keeper(config)
    keeper.look()
    assert keeper.settled(10)
    assert "does not open" in keeper.troubles[0]
    assert in_all(config) == []


def test_whatever_goes_wrong_is_said(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def odd(*_: object) -> None:
        raise LookupError("of a kind that nobody thought of")

    keep(small)
    monkeypatch.setattr(copies, "made_when_due", odd)
    keeper = Keeper(config)
    keeper.look()
    assert keeper.settled(10)
    assert "nobody thought of" in keeper.troubles[0]


def test_others_can_save_while_a_copy_goes_to_another_disk(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(small)
    slowly = shutil.copyfileobj

    def slow(full: BinaryIO, empty: BinaryIO) -> None:
        with closing(sqlite3.connect(config.database, timeout=0)) as other, other:
            other.execute("UPDATE home SET name = 'Meanwhile'")
        slowly(full, empty)

    monkeypatch.setattr("app.store.backup.shutil.copyfileobj", slow)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    found = [sqlite3.connect(file) for file in (copy, config.database)]
    names = [file.execute("SELECT name FROM home").fetchone() for file in found]
    assert names == [("A home",), ("Meanwhile",)]
    for file in found:
        file.close()


def test_a_damaged_photograph_of_a_copy_takes_the_place_of_no_sound_one(
    config: Config, illustrated: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(illustrated)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    digest = illustrated.attachments[0].sha256
    victim = files.path_of(files_beside(copy), digest)
    victim.write_bytes(victim.read_bytes()[:100])
    kept = restored(config, copy)
    assert files.is_sound(config.files, digest)
    assert kept is not None
    assert files.is_sound(files_beside(kept), digest)


def test_a_damaged_photograph_is_mended_from_a_copy(
    config: Config, illustrated: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(illustrated)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    digest = illustrated.attachments[0].sha256
    victim = files.path_of(config.files, digest)
    victim.write_bytes(victim.read_bytes()[:-1] + b"?")
    restored(config, copy)
    assert files.is_sound(config.files, digest)


def test_what_is_saved_while_one_goes_back_is_in_what_is_kept(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(small)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    once, make_copy = iter(["saved meanwhile"]), backup.back_up

    def slow(*given: Any, **named: Any) -> Path:
        made = make_copy(*given, **named)
        for name in once:
            rename(config, "a", name)
        return made

    monkeypatch.setattr(backup, "back_up", slow)
    kept = restored(config, copy)
    assert kept is not None
    assert record_in(kept, "a").home.name == "saved meanwhile"
    assert record_in(config.database, "a") == small


def test_a_copy_is_made_ready_before_it_takes_the_place(
    config: Config,
    small: Record,
    keep: Callable[[Record], int],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    keep(small)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    rename(config, "a", "as it is now")

    def fails(database: Path, _: None) -> None:
        assert database != config.database
        raise DatabaseError(f"{database} could not be upgraded. Nothing was changed.")

    monkeypatch.setattr(upkeep, "upgrade", fails)
    with pytest.raises(DatabaseError, match="Nothing was changed"):
        restored(config, copy)
    assert record_in(config.database, "a").home.name == "as it is now"
    assert not list(config.data.glob("*.partial*"))


def test_nobody_goes_back_while_the_program_runs_on_the_data(
    config: Config, small: Record, keep: Callable[[Record], int], tmp_path: Path
) -> None:
    keep(small)
    copy, _ = copy_of(config, tmp_path / "stick.sqlite3")
    refused = pytest.raises(DatabaseError, match="End it first")
    with running(config), running(config), refused:
        restored(config, copy)
    refused = pytest.raises(DatabaseError, match="older copy")
    with not_running(config), refused, running(config):
        pytest.fail("it runs, while a copy is being put in the place")
    restored(config, copy)
