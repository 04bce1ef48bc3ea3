"""The file within a request: one reading for a page, one writing for a form."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TypeVar

from flask import Flask, current_app, g
from sqlalchemy import Connection, Engine

from app.domain.network import Network
from app.domain.record import Item, Record
from app.errors import NotFoundError
from app.services.copies import Keeper
from app.services.homes import OpenHome, open_home
from app.store.engine import writing

I = TypeVar("I", bound=Item)  # noqa: E741


def init_app(app: Flask, engine: Engine) -> None:
    """Give the application its file."""
    app.extensions["engine"] = engine
    app.teardown_appcontext(_close)


def read() -> Connection:
    """Return the request's connection for reading; it sees one state throughout."""
    if "connection" not in g:
        g.connection = _engine().connect()
    connection: Connection = g.connection
    return connection


def opened(ref: str) -> OpenHome:
    """Return a home as this request sees it.

    Raises:
        NotFoundError: There is no such home.
    """
    if "home" not in g or g.home.record.home.ref != ref:
        g.home = open_home(read(), ref)
    home: OpenHome = g.home
    return home


def supply(ref: str) -> Network:
    """Return the supply network of a home as this request sees it."""
    return opened(ref).worked.net


def needed(record: Record, cls: type[I], ref: str) -> I:
    """Return an item that an address names.

    Raises:
        NotFoundError: The home has no such one.
    """
    found = record.find(cls, ref)
    if found is None:
        raise NotFoundError(f"There is no {cls.noun.lower()} “{ref}” in this home.")
    return found


def let_go() -> None:
    """End this request's reading, for nobody can write while it lasts."""
    _close()


@contextmanager
def change() -> Iterator[Connection]:
    """Give a connection that commits at the end of the block, or not at all."""
    _close()
    with writing(_engine(), made_by=g.get("made_by", "")) as connection:
        yield connection
    keeper: Keeper | None = current_app.extensions.get("keeper")
    if keeper:
        keeper.look()


def opened_to_change(connection: Connection, ref: str) -> OpenHome:
    """Return a home as a transaction sees it; a form shown again shows this one.

    Raises:
        NotFoundError: There is no such home.
    """
    g.home = open_home(connection, ref)
    home: OpenHome = g.home
    return home


def _engine() -> Engine:
    engine: Engine = current_app.extensions["engine"]
    return engine


def _close(_error: BaseException | None = None) -> None:
    connection = g.pop("connection", None)
    if connection is not None:
        connection.close()
    g.pop("home", None)
