"""Words that never break, letters of other scripts: no page is pushed sideways."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, ViewportSize

from app.domain.record import Board, Circuit, Home, IntakeItem, Point, Record
from tests.browser.conftest import DESK
from tests.browser.places import places_of

NARROW = ViewportSize(width=320, height=640)
LONG = "Цепь مرحبا 🔌 " + "Verylongwordwithoutabreak" * 4
NAMED = (Board, Circuit, IntakeItem, Point)


def stretched(record: Record) -> Record:
    """Return a record with a long word as every name and every label."""
    lists = {
        cls.plural: tuple(i.model_copy(update={"name": LONG}) for i in record.of(cls))
        for cls in NAMED
    }
    labelled = [d.model_copy(update={"label_found": LONG}) for d in record.devices]
    home = Home(ref=record.home.ref, name=LONG)
    return record.having(home=home, devices=tuple(labelled), **lists)


def test_the_words_are_as_long_as_a_record_takes(demo: Record) -> None:
    long = stretched(demo)
    assert Record.model_validate_json(long.model_dump_json()) == long
    assert {type(i) for i in long.items() if i.title.startswith("Цепь")} == set(NAMED)
    assert {device.label_found for device in long.devices} == {LONG}


@pytest.mark.parametrize("half", [0, 1])
def test_no_page_is_pushed_sideways(
    desk: Page, keep: Callable[[Record], int], demo: Record, half: int
) -> None:
    keep(stretched(demo))
    places = [*places_of(demo), f"/homes/{demo.home.ref}/boards/B2/?lit=B2.W6"]
    wide = []
    for place in places[half::2]:
        answer = desk.goto(place)
        assert answer is not None
        assert answer.status == 200
        for size in (NARROW, DESK):
            desk.set_viewport_size(size)
            if desk.evaluate("document.documentElement.scrollWidth") > size["width"]:
                wide.append((place, size))
    assert wide == []
