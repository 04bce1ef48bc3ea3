from __future__ import annotations

import shutil
from datetime import UTC, datetime
from pathlib import Path
from typing import cast

import pytest
from flask import Flask

from app.config import Config
from app.domain.edits import replaced
from app.domain.record import Record
from app.services.demo_pictures import with_pictures
from app.services.homes import add_home, open_home, save
from app.services.replies import bring_back
from app.store.engine import make_engine, writing
from app.store.phones import add_phone
from app.web import create_app
from tests.attacks.hostile import TEXTS, hostile, spoiled_reply
from tests.pages import CheckedClient, Page
from tests.web.test_guard import crawl

NOW = datetime(2026, 3, 5, 12, tzinfo=UTC)


@pytest.fixture(scope="session")
def spoiled(
    tmp_path_factory: pytest.TempPathFactory, empty_database: Path, demo: Record
) -> Config:
    """A data folder that only reading tests use: its every text is hostile."""
    config = Config(data=tmp_path_factory.mktemp("spoiled"), secret_key=b"zq" * 16)
    shutil.copy(empty_database, config.database)
    record = hostile(with_pictures(demo, config.files))
    with writing(make_engine(config.database)) as connection:
        add_home(connection, record)
        home = open_home(connection, record.home.ref)
        point = record.points[0].model_copy(update={"note": TEXTS[0]})
        save(connection, home, replaced(record, point.ref, point), TEXTS[1])
        came = hostile(demo, first=5)
        home = open_home(connection, record.home.ref)
        bring_back(connection, home, spoiled_reply(record), came)
        for number, text in enumerate(TEXTS):
            add_phone(connection, name=text, token_hash=f"{number}", at=NOW)
    return config


@pytest.fixture(scope="session")
def spoiled_app(spoiled: Config) -> Flask:
    app = create_app(spoiled)
    app.test_client_class = CheckedClient
    return app


@pytest.fixture(scope="session")
def seen(spoiled_app: Flask) -> dict[str, Page]:
    """One page at least of every sort that links and forms lead to."""
    client = cast("CheckedClient", spoiled_app.test_client())
    return crawl(client, "/homes/demo/?done=1", 1)
