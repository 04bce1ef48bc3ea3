from __future__ import annotations

from pathlib import Path

from sqlalchemy import func, select

from app.store.column_matches import MOST_KEPT, remember, remembered
from app.store.engine import make_engine, reading, writing
from app.store.tables import column_match


def test_a_match_is_remembered_for_its_kind_and_headings(database: Path) -> None:
    engine = make_engine(database)
    with writing(engine) as connection:
        remember(connection, "points", "room\npoint", ("room", ""))
        remember(connection, "points", "room\npoint", ("room", "kind"))
    with reading(engine) as connection:
        assert remembered(connection, "points", "room\npoint") == ("room", "kind")
        assert remembered(connection, "ways", "room\npoint") is None
        assert remembered(connection, "points", "room") is None


def test_only_the_newest_are_remembered(database: Path) -> None:
    with writing(make_engine(database)) as connection:
        for number in range(MOST_KEPT + 2):
            remember(connection, "points", str(number), ("room",))
        count = connection.execute(select(func.count()).select_from(column_match))
        assert count.scalar() == MOST_KEPT
        assert remembered(connection, "points", "1") is None
        assert remembered(connection, "points", "2") == ("room",)
