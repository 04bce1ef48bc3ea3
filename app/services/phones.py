"""Paired phones: letting one in, knowing it again, and removing it."""

from __future__ import annotations

import hashlib
import logging
import secrets
from datetime import datetime, timedelta

from sqlalchemy import Connection

from app.errors import NotFoundError
from app.store.phones import (
    Phone,
    add_phone,
    all_phones,
    phone_with,
    remove_phone,
    set_seen,
)
from app.store.settings import computer_name

log = logging.getLogger(__name__)

PASS_BYTES = 32
SEEN_TO_WITHIN = timedelta(minutes=5)


def let_in(connection: Connection, name: str, at: datetime) -> str:
    """Add a phone and return its pass, which is kept nowhere else than on the phone.

    Args:
        connection: An open transaction.
        name: What its owner calls it; a number is added when another, or this
            computer, has that name.
        at: Now, UTC.
    """
    token = secrets.token_urlsafe(PASS_BYTES)
    names = (computer_name(connection), *(p.name for p in all_phones(connection)))
    own = _distinct(name, {taken.casefold() for taken in names})
    add_phone(connection, name=own, token_hash=_hash(token), at=at)
    log.info("a phone was paired")
    return token


def known_by(connection: Connection, token: str) -> Phone | None:
    """Return the phone that a pass belongs to; None once it was removed."""
    return phone_with(connection, _hash(token)) if token else None


def was_seen_lately(phone: Phone, at: datetime) -> bool:
    """Return whether what is kept of when a phone was seen is good enough."""
    return at - phone.seen_at < SEEN_TO_WITHIN


def note_seen(connection: Connection, phone: Phone, at: datetime) -> None:
    """Keep when a phone was last seen."""
    set_seen(connection, phone.key, at)


def remove(connection: Connection, key: int) -> None:
    """Remove a phone: from now on its pass is worth nothing.

    Raises:
        NotFoundError: There is no such phone.
    """
    if not remove_phone(connection, key):
        raise NotFoundError("There is no such phone; perhaps it was removed already.")
    log.info("a phone was removed")


def _hash(token: str) -> str:
    """A pass is long and random, so that a plain hash cannot be turned back."""
    return hashlib.sha256(token.encode("utf-8", "replace")).hexdigest()


def _distinct(name: str, taken: set[str]) -> str:
    number, own = 1, name
    while own.casefold() in taken:
        number += 1
        own = f"{name} {number}"
    return own
