"""Take in a home from its document: a person's own, or the demo home."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from pydantic import ValidationError
from sqlalchemy import Connection

from app.config import Config
from app.domain.edits import entries_between
from app.domain.history import History
from app.domain.record import Home, Record
from app.errors import InvalidError, Problem
from app.interchange import from_document
from app.paths import resource_dir
from app.services.demo_pictures import with_pictures
from app.services.history import bring_history
from app.services.homes import add_home, free_home_ref, note_ref, open_home
from app.store.engine import make_engine, writing
from app.store.homes import all_homes
from app.store.migrate import upgrade


def take_in(
    connection: Connection,
    record: Record,
    *,
    as_ref: str | None = None,
    history: History | None = None,
) -> str:
    """Add a home, under its own reference or another; return the reference.

    Args:
        connection: An open transaction.
        record: The home.
        as_ref: Another reference for it.
        history: What was done to it elsewhere; the other reference is one change more.

    Raises:
        InvalidError: The reference is taken, or is none.
    """
    called = record if as_ref is None else _called(record, as_ref)
    key = add_home(connection, called)
    if history is not None:
        bring_history(connection, key, record, history)
        note_ref(connection, key, record, called)
    return called.home.ref


@dataclass(frozen=True, slots=True, kw_only=True)
class HereAlready:
    """A home that has the reference or the name of one that is brought in.

    Attributes:
        home: Its own facts.
        differs: How many things differ between the two, its reference aside.
    """

    home: Home
    differs: int


def here_already(connection: Connection, record: Record) -> tuple[HereAlready, ...]:
    """Return the homes that are taken for one that is brought in, also those aside."""
    wanted = record.home
    homes = (*all_homes(connection), *all_homes(connection, archived=True))
    return tuple(
        HereAlready(home=home, differs=_differing(connection, home, record))
        for home in homes
        if home.ref == wanted.ref or home.name.casefold() == wanted.name.casefold()
    )


def _differing(connection: Connection, home: Home, record: Record) -> int:
    own = open_home(connection, home.ref).record
    called = record.home.model_copy(update={"ref": home.ref})
    return len(entries_between(own, record.having(home=called)))


def add_demo(connection: Connection, files: Path) -> str:
    """Add the demo home under a reference that is free; return that.

    Args:
        connection: An open transaction.
        files: Where the bytes of its pictures are kept.
    """
    record = with_pictures(demo_record(), files)
    free = free_home_ref(connection, record.home.ref)
    return take_in(connection, record, as_ref=free)


def demo_record() -> Record:
    """Return the demo home."""
    return from_document((resource_dir("seed_demo") / "demo.json").read_bytes())


@contextmanager
def demo_folder() -> Iterator[Config]:
    """Give a data folder with the demo home; it is removed at the end."""
    folder = Path(tempfile.mkdtemp(prefix="ways-demo-"))
    try:
        config = Config(data=folder, demo=True)
        upgrade(config.database, config.backups)
        with writing(make_engine(config.database)) as connection:
            add_demo(connection, config.files)
        yield config
    finally:
        # The log file in it may still be open, which Windows does not let go of.
        shutil.rmtree(folder, ignore_errors=True)


def _called(record: Record, ref: str) -> Record:
    try:
        home = Home.model_validate({**dict(record.home), "ref": ref})
    except ValidationError as error:
        reason = (
            f"“{ref}” cannot be a reference: letters, digits, dot and hyphen, "
            "32 at the most, the first a letter or a digit."
        )
        raise InvalidError(
            "The home was not taken in.", (Problem("home.ref", reason),)
        ) from error
    return record.having(home=home)
