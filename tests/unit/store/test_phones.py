from __future__ import annotations

import logging
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from app.config import Config
from app.errors import NotFoundError
from app.services.phones import known_by, let_in, note_seen, remove, was_seen_lately
from app.services.upkeep import copy_of, restored
from app.store.engine import make_engine, reading, writing
from app.store.phones import all_phones

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)


def test_a_phone_is_known_by_its_pass_until_it_is_removed(database: Path) -> None:
    engine = make_engine(database)
    with writing(engine) as connection:
        token = let_in(connection, "Hall phone", NOW)
        other = let_in(connection, "Tablet", NOW)
    with reading(engine) as connection:
        phone = known_by(connection, token)
        assert phone is not None
        assert (phone.name, phone.paired_at, phone.seen_at) == ("Hall phone", NOW, NOW)
        for wrong in ("", token[:-1], f"{token}x", token.lower(), "é" * 43):
            assert known_by(connection, wrong) is None
    with writing(engine) as connection:
        remove(connection, phone.key)
    with writing(engine) as connection:
        assert known_by(connection, token) is None
        assert known_by(connection, other) is not None
        with pytest.raises(NotFoundError):
            remove(connection, phone.key)


def test_only_the_hash_of_a_pass_is_kept(
    database: Path, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    with writing(make_engine(database)) as connection:
        token = let_in(connection, "Hall phone", NOW)
    assert len(token) >= 43
    assert token.encode() not in database.read_bytes()
    assert token not in caplog.text


def test_two_of_one_name_are_told_apart(database: Path) -> None:
    with writing(make_engine(database)) as connection:
        for name in ("Phone", "phone", "Phone"):
            let_in(connection, name, NOW)
        names = [phone.name for phone in all_phones(connection)]
    assert names == ["Phone", "phone 2", "Phone 3"]


def test_when_it_was_seen_is_kept(database: Path) -> None:
    with writing(make_engine(database)) as connection:
        phone = known_by(connection, let_in(connection, "Phone", NOW))
        assert phone is not None
        assert was_seen_lately(phone, NOW + timedelta(minutes=4))
        later = NOW + timedelta(minutes=5)
        assert not was_seen_lately(phone, later)
        note_seen(connection, phone, later)
        assert [p.seen_at for p in all_phones(connection)] == [later]


def test_going_back_to_a_copy_brings_no_removed_phone_back(config: Config) -> None:
    engine = make_engine(config.database)
    with writing(engine) as connection:
        token = let_in(connection, "Lost phone", NOW)
    copy, _ = copy_of(config, config.data / "copy.sqlite3")
    with writing(engine) as connection:
        remove(connection, all_phones(connection)[0].key)
    restored(config, copy)
    with reading(engine) as connection:
        assert known_by(connection, token) is None
        assert all_phones(connection) == ()
