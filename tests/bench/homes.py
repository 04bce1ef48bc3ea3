"""Homes of each size, in a file, and the pages that are looked at."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from flask.testing import FlaskClient

from app.config import Config
from app.domain.record import Record
from app.services.homes import add_home
from app.store.engine import make_engine, writing
from app.store.migrate import upgrade
from app.web import create_app
from tests.big_home import big_home

SIZES = (60, 600, 6000)
# One of each main page, below the address of a home.
PAGES = (
    "", "intake/", "boards/", "boards/B0/", "circuits/", "circuits/C1/",
    "circuits/C1/figures/", "rooms/", "rooms/R1/", "points/", "points/P1/", "house/",
    "walk/rooms", "rounds/", "rounds/results", "ask/?point=P1", "isolate/?room=R1",
    "isolate/plan?ref=R1",
    "tripped/", "may-i/", "labels/", "boards/B0/chart", "load/", "remarks/",
    "open-questions/", "works/", "papers/", "results/", "reminders/", "files/",
    "one-line/", "hand-over/", "changes/", "document", "search/?q=light",
)  # fmt: skip


@cache
def home_of(points: int) -> Record:
    """Return a home with so many points, and rooms, ways and boards to match."""
    ways = max(points // 8, 6)
    return big_home(
        boards=max(ways // 20, 1), ways=ways, points=points, rooms=max(points // 8, 4)
    )


def stored(folder: Path, *records: Record) -> Config:
    """Return a data folder that holds some homes."""
    config = Config(data=folder, secret_key=b"of the benchmark" * 2)
    folder.mkdir(parents=True, exist_ok=True)
    upgrade(config.database, config.backups)
    with writing(make_engine(config.database)) as connection:
        for record in records:
            add_home(connection, record)
    return config


def client_of(config: Config) -> FlaskClient:
    """Return a browser on a data folder."""
    app = create_app(config)
    app.testing = True
    return app.test_client()
