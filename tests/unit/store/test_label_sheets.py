from __future__ import annotations

from pathlib import Path

from app.domain.labels import SHEETS
from app.store.engine import make_engine, reading, writing
from app.store.label_sheets import add_sheet, own_sheets, remove_sheet


def test_a_sheet_is_kept_as_it_was_and_once(database: Path) -> None:
    engine = make_engine(database)
    with writing(engine) as connection:
        first = add_sheet(connection, SHEETS[0])
        second = add_sheet(connection, SHEETS[1])
        assert add_sheet(connection, SHEETS[0]) == first
    with reading(engine) as connection:
        assert own_sheets(connection) == {first: SHEETS[0], second: SHEETS[1]}


def test_a_sheet_is_removed_and_one_that_is_not_there_stays_so(database: Path) -> None:
    engine = make_engine(database)
    with writing(engine) as connection:
        key = add_sheet(connection, SHEETS[0])
        remove_sheet(connection, key)
        remove_sheet(connection, 99)
        assert own_sheets(connection) == {}
