from __future__ import annotations

import threading
from pathlib import Path

import pytest
from sqlalchemy import text

from app.domain.edits import replaced
from app.domain.record import Home, Record
from app.services.homes import add_home, open_home, save
from app.store.engine import make_engine, reading, writing
from app.store.migrate import upgrade

WRITERS, TIMES = 6, 8


def test_writers_at_the_same_time_wait_for_each_other(database: Path) -> None:
    """Each reads, then writes what follows from it: none is lost, none is refused."""
    engine = make_engine(database)
    with writing(engine) as connection:
        add_home(connection, Record(home=Home(ref="a", name="0")))
    failures: list[BaseException] = []

    def count_up() -> None:
        try:
            for _ in range(TIMES):
                with writing(engine) as connection:
                    here = open_home(connection, "a")
                    name = str(int(here.record.home.name) + 1)
                    home = here.record.home.model_copy(update={"name": name})
                    save(connection, here, replaced(here.record, "a", home), "Counted")
        except BaseException as failure:  # noqa: BLE001 - it is looked at below
            failures.append(failure)

    threads = [threading.Thread(target=count_up) for _ in range(WRITERS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []
    with reading(engine) as connection:
        here = open_home(connection, "a")
        assert here.record.home.name == str(WRITERS * TIMES)
        logged = connection.execute(text("SELECT count(*) FROM change")).scalar()
        assert logged == WRITERS * TIMES


def test_a_reader_sees_one_state_throughout(database: Path) -> None:
    engine = make_engine(database)
    query = text("SELECT count(*) FROM home")
    with reading(engine) as connection:
        assert connection.execute(query).scalar() == 0
    with writing(engine) as connection:
        add_home(connection, Record(home=Home(ref="a", name="A")))
        with reading(engine) as other:
            assert other.execute(query).scalar() == 0
    with reading(engine) as connection:
        assert connection.execute(query).scalar() == 1


def test_references_are_enforced(database: Path) -> None:
    with reading(make_engine(database)) as connection:
        assert connection.execute(text("PRAGMA foreign_keys")).scalar() == 1
        assert connection.execute(text("PRAGMA synchronous")).scalar() == 2


@pytest.mark.parametrize("name", ["with space", "hash#1", "per%20cent", "Ω"])
def test_a_folder_may_have_any_name(tmp_path: Path, name: str) -> None:
    database = tmp_path / name / "ways.sqlite3"
    upgrade(database, database.parent / "copies")
    with writing(make_engine(database)) as connection:
        add_home(connection, Record(home=Home(ref="a", name="A")))
    assert upgrade(database, database.parent / "copies") is None
    assert [path.name for path in database.parent.iterdir()] == ["ways.sqlite3"]
