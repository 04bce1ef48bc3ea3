"""Every page type, full and empty, on a small and a large screen, light and dark."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from flask import Flask
from playwright.sync_api import Page, expect

from app.domain.edits import replaced
from app.domain.record import Home, Record
from app.domain.replies import Correction, Reply
from app.services.homes import open_home, save
from app.services.replies import bring_back
from app.store.engine import make_engine, writing
from tests.browser.conftest import DESK, PHONE
from tests.browser.eye import faults_of
from tests.browser.places import BESIDE, places_of

Keep = Callable[[Record], int]
# Of these there is one only after something was done.
DONE = ("/homes/demo/changes/1", "/homes/demo/corrections/1")
EMPTY = Record(home=Home(ref="empty", name="Nothing yet"))
# Looked at in parts, so that several hands can look at once.
PARTS = 4
NO_PAGES = {
    "static", "homes.start", "ask.go", "walk.index", "documents.download",
    "labels.pdf", "labels.notices", "labels.calibration", "chart.pdf",
    "pairing.show", "isolation.pdf", "isolation.file", "isolation.house_pdf",
    "isolation.house_file", "reminders.calendar", "portfolio.calendar",
    "past.download", "house.file",
    "one_line.file",
    "tripped.sheet", "pack.as_zip", "pack.as_pdf", "pack.as_html",
    "pictures.small", "pictures.large", "pictures.original",
    # A file must wait for these: they are looked at in test_spreadsheets.
    "spreadsheets.columns", "spreadsheets.preview",
}  # fmt: skip


def test_every_page_type_is_looked_at(app: Flask, illustrated: Record) -> None:
    match = app.url_map.bind("127.0.0.1").match
    seen = {
        match(url.partition("?")[0])[0]
        for url in (*BESIDE, *places_of(illustrated), *DONE)
    }
    pages = {rule.endpoint for rule in app.url_map.iter_rules() if _shows(rule.methods)}
    assert pages - NO_PAGES == seen


@pytest.mark.parametrize("part", range(PARTS))
def test_a_full_home_can_be_read(
    desk: Page, keep: Keep, illustrated: Record, database: Path, part: int
) -> None:
    keep(illustrated)
    _change(database, illustrated)
    places = [*BESIDE, *places_of(illustrated), *DONE]
    _look_at(desk, places[part::PARTS])


@pytest.mark.parametrize("half", [0, 1])
def test_an_empty_home_can_be_read(desk: Page, keep: Keep, half: int) -> None:
    keep(EMPTY)
    forms = ("new/", "/edit", "/delete")
    places = [p for p in places_of(EMPTY) if not any(form in p for form in forms)]
    _look_at(desk, places[half::2])


def test_nothing_at_all_can_be_read(desk: Page) -> None:
    _look_at(desk, ["/"])
    expect(desk.get_by_role("link", name="Add your home")).to_be_visible()


def _change(database: Path, record: Record) -> None:
    """Change a room and bring a reply, so that there are both to look at."""
    with writing(make_engine(database)) as connection:
        home = open_home(connection, record.home.ref)
        room = home.record.rooms[0]
        noted = room.model_copy(update={"note": "Looked at again."})
        save(connection, home, replaced(home.record, room.ref, noted), "Noted.")
        said = Correction(ref="B2.W8", feeds="the shed")
        reply = Reply(by="A. Person", paper="17/26", ways=(said,))
        bring_back(connection, home, reply, None)


def _look_at(page: Page, places: list[str]) -> None:
    found = []
    for place in places:
        page.set_viewport_size(DESK)
        answer = page.goto(place)
        assert answer is not None
        if answer.status != 200:
            found.append(f"{place}: {answer.status}")
        for size in (DESK, PHONE):
            page.set_viewport_size(size)
            found += faults_of(page)
    assert found == []


def _shows(methods: set[str] | None) -> bool:
    return "GET" in (methods or ())
