from __future__ import annotations

import os
import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from app.config import DATABASE, Config
from app.domain.record import Record
from app.interchange import from_document
from app.services.demo_pictures import with_pictures
from app.services.documents import demo_record
from app.services.homes import add_home
from app.store.engine import make_engine, writing
from app.store.migrate import upgrade
from tests.browser_path import browser_path, flags

if TYPE_CHECKING:
    from flask import Flask
    from flask.testing import FlaskClient
    from playwright.sync_api import Browser

TESTS = Path(__file__).parent

settings.register_profile("dev", max_examples=50, deadline=None)
settings.register_profile(
    "ci", max_examples=50, deadline=None, derandomize=True, print_blob=True
)
settings.load_profile("ci" if os.environ.get("CI") else "dev")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark what drives a browser, by its folder."""
    for item in items:
        if TESTS / "browser" in item.path.parents:
            item.add_marker("browser")


@pytest.fixture(scope="session")
def empty_database(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A file that every migration has run on, to be copied and never written."""
    path = tmp_path_factory.mktemp("empty") / DATABASE
    upgrade(path, path.parent / "copies")
    return path


@pytest.fixture
def config(tmp_path: Path, empty_database: Path) -> Config:
    """Settings on a data folder of the test's own, with an empty file."""
    data = tmp_path / "data"
    data.mkdir()
    shutil.copy(empty_database, data / DATABASE)
    return Config(data=data, port=0, secret_key=b"of the tests" * 3)


@pytest.fixture
def database(config: Config) -> Path:
    return config.database


@pytest.fixture
def keep(database: Path) -> Callable[[Record], int]:
    """Write a home into the file of the test; returns its key."""

    def kept(record: Record) -> int:
        with writing(make_engine(database)) as connection:
            return add_home(connection, record)

    return kept


@pytest.fixture
def app(config: Config) -> Flask:
    from app.web import create_app

    return create_app(config)


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client that looks at every page it gets."""
    from tests.pages import CheckedClient

    app.test_client_class = CheckedClient
    return app.test_client()


@contextmanager
def serving(app: Flask) -> Iterator[str]:
    """Serve a program on this machine; give its address."""
    from werkzeug.serving import make_server

    server = make_server("127.0.0.1", 0, app, threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.port}"
    server.shutdown()
    thread.join()
    server.server_close()


@pytest.fixture
def live_url(app: Flask) -> Iterator[str]:
    """The program, served on the test's own file."""
    with serving(app) as address:
        yield address


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    from playwright.sync_api import sync_playwright

    path = browser_path()
    if path is None:
        pytest.fail("no browser of the Chromium family was found")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=flags())
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def houses() -> dict[str, Record]:
    """The test homes by name."""
    files = sorted((TESTS / "houses").glob("h*.json"))
    return {file.stem: from_document(file.read_bytes()) for file in files}


@pytest.fixture(scope="session")
def demo() -> Record:
    return demo_record()


@pytest.fixture
def illustrated(demo: Record, config: Config) -> Record:
    """The demo home with its pictures, whose files are in the test's data folder."""
    return with_pictures(demo, config.files)
