"""What is kept of a home is what its file says, whoever wrote it."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

from app.config import Config
from app.domain.edits import replaced
from app.domain.record import Home, Record, Room
from app.services.homes import open_home, save
from app.services.upkeep import restored
from app.services.worked import Memory
from app.store.backup import back_up
from app.store.copies import ASKED
from app.store.engine import make_engine, reading, writing
from app.store.homes import load, stamp_of
from tests.bench.homes import home_of


def opened(database: Path, ref: str) -> Record:
    with reading(make_engine(database)) as connection:
        return open_home(connection, ref).record


def rename(database: Path, ref: str, name: str) -> None:
    with writing(make_engine(database)) as connection:
        here = open_home(connection, ref)
        home = here.record.home.model_copy(update={"name": name})
        save(connection, here, replaced(here.record, ref, home), name)


def test_it_is_read_once_and_anew_after_each_write(
    database: Path, keep: Callable[[Record], int]
) -> None:
    keep(home_of(60))
    first = opened(database, "H1")
    assert opened(database, "H1") is first
    rename(database, "H1", "Another")
    second = opened(database, "H1")
    assert second.home.name == "Another"
    with reading(make_engine(database)) as connection:
        assert load(connection, 1) == second


def test_two_states_never_have_one_stamp(
    database: Path, keep: Callable[[Record], int]
) -> None:
    keep(Record(home=Home(ref="a", name="A")))
    stamps = set()
    for name in ("B", "A", "B", "A"):
        rename(database, "a", name)
        with reading(make_engine(database)) as connection:
            stamps.add(stamp_of(connection, 1))
    assert len(stamps) == 4


def test_a_copy_that_was_gone_back_to_is_read_as_it_is(
    config: Config, keep: Callable[[Record], int]
) -> None:
    keep(Record(home=Home(ref="a", name="Then")))
    assert opened(config.database, "a").home.name == "Then"
    now = datetime.now(UTC)
    copy = back_up(config.database, config.backups, note=ASKED, at=now)
    rename(config.database, "a", "Now")
    assert opened(config.database, "a").home.name == "Now"
    restored(config, copy)
    assert opened(config.database, "a").home.name == "Then"


def test_what_another_file_says_is_its_own(
    config: Config, tmp_path: Path, keep: Callable[[Record], int]
) -> None:
    keep(Record(home=Home(ref="a", name="One")))
    other = tmp_path / "other.sqlite3"
    shutil.copy(config.database, other)
    rename(other, "a", "Other")
    assert opened(config.database, "a").home.name == "One"
    assert opened(other, "a").home.name == "Other"


def test_only_as_much_is_kept_as_has_room() -> None:
    memory = Memory(most_items=25)
    rooms = tuple(Room(ref=f"R{n}", name="x") for n in range(9))
    record = Record(home=Home(ref="a", name="A"), rooms=rooms)
    loaded: list[str] = []

    def load_as(stamp: str) -> Callable[[], Record]:
        def load_it() -> Record:
            loaded.append(stamp)
            return record

        return load_it

    for stamp in ("1", "2", "1", "3", "1", "2"):
        memory.get(stamp, load_as(stamp))
    assert loaded == ["1", "2", "3", "2"]


def test_without_a_stamp_nothing_is_kept() -> None:
    memory, record = Memory(), Record(home=Home(ref="a", name="A"))
    one = memory.get(None, lambda: record)
    assert memory.get(None, lambda: record) is not one


def test_remarks_are_those_of_the_day() -> None:
    worked = Memory().get(None, lambda: home_of(60))
    first = worked.remarks(date(2026, 1, 1))
    assert worked.remarks(date(2026, 1, 1)) is first
    assert worked.remarks(date(2026, 1, 2)) is not first
