"""The past, whatever was done: what stood at a moment is what was exported then."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    precondition,
    rule,
    run_state_machine_as_test,
)
from sqlalchemy import Connection

from app.domain import edits
from app.domain.record import Item, Point, Record, Room
from app.errors import AppError, InvalidError
from app.interchange import document_from, to_document
from app.services import history as past
from app.services import homes
from app.services.documents import take_in
from app.services.homes import OpenHome, open_home, save, undo
from app.services.undoing import InTheWayError
from app.store import history as log
from app.store.changes import find_change, latest_changes
from app.store.engine import make_engine
from tests.property.strategies import random_home

START = datetime(2026, 3, 1, 12, tzinfo=UTC)
EVERY = 3
FAR = START + timedelta(days=9999)


class Clock:
    """Stands in for the clock; it may be set back."""

    def __init__(self) -> None:
        self.at = START

    def now(self, _zone: Any) -> datetime:
        return self.at


class Past(RuleBasedStateMachine):
    """Changes at random; beside them, each record as it was exported at its moment."""

    file: Path

    def __init__(self) -> None:
        super().__init__()
        self.clock, self.open = Clock(), ExitStack()
        self.open.enter_context(patch.object(homes, "datetime", self.clock))
        self.open.enter_context(patch.object(log, "SNAPSHOT_EVERY", EVERY))
        self.connection = self.open.enter_context(rolled_back(self.file))
        self.stood: list[tuple[datetime, str]] = []
        self.after: dict[int, str] = {}

    def teardown(self) -> None:
        with self.open:
            if self.stood:
                self._what_stood_is_what_was_exported()
                self._what_stood_before_a_change_is_kept()
                self._it_goes_elsewhere_and_is_the_same()

    @initialize(rng=st.randoms(use_true_random=False))
    def begin(self, rng: Any) -> None:
        homes.add_home(self.connection, random_home(rng, most=6))
        self._note()

    @rule(seconds=st.integers(1, 4000))
    def wait(self, seconds: int) -> None:
        self.clock.at += timedelta(seconds=seconds)

    @rule(seconds=st.integers(1, 4000))
    def set_the_clock_back(self, seconds: int) -> None:
        self.clock.at -= timedelta(seconds=seconds)

    @rule(room=st.booleans())
    def add(self, room: bool) -> None:
        record = self.here.record
        if room:
            made: Item = Room(ref=edits.new_ref(record, Room), name="A room")
        else:
            made = Point(ref=edits.new_ref(record, Point), kind="light")
        self._save(edits.added(record, made))

    @rule(data=st.data(), note=st.sampled_from(["", "one", "two"]))
    def change(self, data: st.DataObject, note: str) -> None:
        item = self._one(data)
        fields = type(item).model_fields
        update = {"note": note} if "note" in fields else {"name": f"Name {note}"}
        self._save(
            edits.replaced(self.here.record, item.ref, item.model_copy(update=update))
        )

    @rule(data=st.data(), number=st.integers(1, 5))
    def rename(self, data: st.DataObject, number: int) -> None:
        item, ref = self._one(data), f"N{number}"
        if ref not in self.here.record.by_ref:
            other = item.model_copy(update={"ref": ref})
            self._save(edits.replaced(self.here.record, item.ref, other))

    @rule(data=st.data())
    def remove(self, data: st.DataObject) -> None:
        self._save(edits.removed(self.here.record, self._one(data).ref))

    @rule(data=st.data(), steps=st.integers(-3, 3))
    def move(self, data: st.DataObject, steps: int) -> None:
        self._save(edits.moved(self.here.record, self._one(data).ref, steps))

    @precondition(lambda self: self.after)
    @rule(data=st.data())
    def take_back(self, data: st.DataObject) -> None:
        number = data.draw(st.sampled_from(sorted(self.after)))
        newest = latest_changes(self.connection, self.here.key, 1)[0].key
        before = past.before(self.connection, self.here, number)
        back = self._undone(number)
        if isinstance(back, InTheWayError):
            assert number != newest
            assert back.later
            assert all(later.key > number for later in back.later)
        elif isinstance(back, AppError):
            assert "undone already" in back.sentence
        else:
            assert number != newest or back == before
            self._note()

    def _what_stood_is_what_was_exported(self) -> None:
        latest = START
        for place, (at, text) in enumerate(self.stood):
            latest = max(latest, at)
            later = [other for other, _ in self.stood[place + 1 :]]
            if not later or max(later[0], latest) > latest:
                assert to_document(self._as_of(latest)) == text

    def _what_stood_before_a_change_is_kept(self) -> None:
        texts = [text for _, text in self.stood]
        for place, number in enumerate(sorted(self.after)):
            found = past.before(self.connection, self.here, number)
            assert to_document(found) == texts[place]

    def _it_goes_elsewhere_and_is_the_same(self) -> None:
        here = self.here
        text = to_document(here.record, past.whole_history(self.connection, here))
        document = document_from(text.encode())
        ref = homes.free_home_ref(self.connection, here.record.home.ref)
        take_in(self.connection, document.record, as_ref=ref, history=document.history)
        there = open_home(self.connection, ref)
        assert document.history is not None
        assert past.whole_history(self.connection, there).changes[:-1] == tuple(
            _as_told_elsewhere(change) for change in document.history.changes
        )
        mine = [c.key for c in latest_changes(self.connection, there.key, 999)][::-1]
        for number, (_, text) in zip(mine, self.stood, strict=True):
            found = past.before(self.connection, there, number)
            assert to_document(found) == text

    @property
    def here(self) -> OpenHome:
        return open_home(self.connection, "H1")

    def _one(self, data: st.DataObject) -> Item:
        """Return any item; an empty home is given a room first."""
        if not self.here.record.by_ref:
            self.add(room=True)
        items = list(self.here.record.items())
        return items[data.draw(st.integers(0, 99)) % len(items)]

    def _save(self, new: Record) -> None:
        try:
            number = save(self.connection, self.here, new, "An edit")
        except InvalidError:
            return
        if number is not None:
            self._note()

    def _undone(self, number: int) -> Record | AppError:
        try:
            return undo(self.connection, self.here, number)
        except AppError as refusal:
            return refusal

    def _note(self) -> None:
        here = self.here
        for change in latest_changes(self.connection, here.key, 1):
            self.after[change.key] = change.sentence
        self.stood.append((self.clock.at, to_document(here.record)))

    def _as_of(self, at: datetime) -> Record:
        return past.as_of(self.connection, self.here, at, FAR).record


def _as_told_elsewhere(change: Any) -> Any:
    from dataclasses import replace

    return replace(change, made_by=change.made_by or past.ELSEWHERE)


@contextmanager
def rolled_back(database: Path) -> Iterator[Connection]:
    engine = make_engine(database).execution_options(sqlite_begin="IMMEDIATE")
    with engine.connect() as connection:
        yield connection
        connection.rollback()


def test_the_past_whatever_was_done(
    empty_database: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Past, "file", empty_database, raising=False)
    run_state_machine_as_test(
        Past, settings=settings(max_examples=12, stateful_step_count=10)
    )


def test_an_item_that_is_not_there_has_no_change(empty_database: Path) -> None:
    with rolled_back(empty_database) as connection:
        assert find_change(connection, 1, 1) is None
