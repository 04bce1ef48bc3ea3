from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import cast

import pytest
from flask import Flask
from flask.testing import FlaskClient
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from app.domain.record import Record
from app.services.homes import open_home
from app.store.engine import make_engine, reading
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


KEPT = Kept()


@pytest.fixture
def visitor(app: Flask, client: FlaskClient) -> CheckedClient:
    """A person's browser; no home is there yet."""
    app.jinja_env.bytecode_cache = KEPT
    return cast("CheckedClient", client)


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
def here(
    visitor: CheckedClient, keep: Callable[[Record], int], small: Record
) -> CheckedClient:
    """A browser, with the small home in the file."""
    keep(small)
    return visitor


@pytest.fixture
def at_demo(
    visitor: CheckedClient, keep: Callable[[Record], int], demo: Record
) -> CheckedClient:
    """A browser, with the demo home in the file."""
    keep(demo)
    return visitor


@pytest.fixture
def stored(database: Path) -> Callable[..., Record]:
    """Read a home from the file."""

    def read(ref: str = "H1") -> Record:
        with reading(make_engine(database)) as connection:
            return open_home(connection, ref).record

    return read
