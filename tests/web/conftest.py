from __future__ import annotations

import shutil
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import cast

import pytest
from flask import Flask
from flask.testing import FlaskClient
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from app.config import Config
from app.domain.record import Record
from app.services.homes import add_home, open_home
from app.store.engine import make_engine, reading, writing
from app.web import create_app
from tests import builders as b
from tests.pages import CheckedClient


class Kept(BytecodeCache):
    """Templates compiled once for all tests."""

    def __init__(self) -> None:
        self.code: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        if bucket.key in self.code:
            bucket.load_bytecode(BytesIO(self.code[bucket.key]))

    def dump_bytecode(self, bucket: Bucket) -> None:
        stream = BytesIO()
        bucket.write_bytecode(stream)
        self.code[bucket.key] = stream.getvalue()


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Config:
    """Settings on the data folder that the tests of the pages take turns in."""
    data = tmp_path_factory.mktemp("pages")
    return Config(data=data, port=0, secret_key=b"of the pages" * 3)


@pytest.fixture(scope="session")
def program(shared: Config) -> Flask:
    """The program, made once; it opens its file anew for each request."""
    app = create_app(shared)
    app.jinja_env.bytecode_cache = Kept()
    return app


@pytest.fixture
def config(shared: Config, empty_database: Path) -> Config:
    """Settings on a folder with an empty file, whatever the last test left there."""
    for path in shared.data.iterdir():
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    shutil.copy(empty_database, shared.database)
    return shared


@pytest.fixture
def app(program: Flask, config: Config) -> Flask:
    return program


@pytest.fixture
def own_app(config: Config) -> Flask:
    """A program of the test's own, to be given more routes."""
    app = create_app(config)
    app.test_client_class = CheckedClient
    return app


@pytest.fixture
def visitor(client: FlaskClient) -> CheckedClient:
    """A person's browser; no home is there yet."""
    return cast("CheckedClient", client)


def file_with(folder: Path, empty_database: Path, record: Record) -> Path:
    path = folder / f"{record.home.ref}.sqlite3"
    shutil.copy(empty_database, path)
    with writing(make_engine(path)) as connection:
        add_home(connection, record)
    return path


@pytest.fixture(scope="session")
def small_file(
    tmp_path_factory: pytest.TempPathFactory, empty_database: Path, small: Record
) -> Path:
    return file_with(tmp_path_factory.mktemp("small"), empty_database, small)


@pytest.fixture(scope="session")
def demo_file(
    tmp_path_factory: pytest.TempPathFactory, empty_database: Path, demo: Record
) -> Path:
    return file_with(tmp_path_factory.mktemp("demo"), empty_database, demo)


@pytest.fixture(scope="session")
def small() -> Record:
    """Two rooms, one board with an RCD, two circuits, three points."""
    return b.home(
        b.room("R1", name="Kitchen", kind="kitchen"),
        b.room("R2", name="Hall", kind="hall"),
        b.street(
            b.board(
                "B1",
                b.main_switch(
                    "MS",
                    b.rcd(
                        "RCD",
                        b.way(
                            "W1",
                            b.circuit(
                                "C1",
                                b.socket("P1", room="R1", place="by the sink"),
                                name="Kitchen sockets",
                            ),
                            way="1",
                            label_found="SKTS",
                        ),
                    ),
                    b.way(
                        "W2",
                        b.circuit("C2", b.light("P2", room="R2"), name="Lights"),
                        way="2",
                        rated_current_a=6,
                    ),
                ),
                name="Main board",
                room="R2",
            )
        ),
        b.point("P3", kind="boiler", name="Boiler", room="R1"),
        b.control("P3", "P2"),
    )


@pytest.fixture
def here(visitor: CheckedClient, database: Path, small_file: Path) -> CheckedClient:
    """A browser, with the small home in the file."""
    shutil.copy(small_file, database)
    return visitor


@pytest.fixture
def at_demo(visitor: CheckedClient, database: Path, demo_file: Path) -> CheckedClient:
    """A browser, with the demo home in the file."""
    shutil.copy(demo_file, database)
    return visitor


@pytest.fixture
def stored(database: Path) -> Callable[..., Record]:
    """Read a home from the file."""

    def read(ref: str = "H1") -> Record:
        with reading(make_engine(database)) as connection:
            return open_home(connection, ref).record

    return read
