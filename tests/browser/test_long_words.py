"""Words that never break, letters of other scripts: no page is pushed sideways."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Board, Circuit, Home, IntakeItem, Point, Record
from tests.browser.conftest import DESK, Opens
from tests.browser.places import places_of

NARROW = {"width": 320, "height": 640}
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


@pytest.mark.parametrize("size", [NARROW, DESK], ids=["narrow", "desk"])
def test_no_page_is_pushed_sideways(
    opens: Opens, keep: Callable[[Record], int], demo: Record, size: dict[str, int]
) -> None:
    keep(stretched(demo))
    page = opens(viewport=size)
    wide = []
    for place in [*places_of(demo), f"/homes/{demo.home.ref}/boards/B2/?lit=B2.W6"]:
        answer = page.goto(place)
        assert answer is not None
        assert answer.status == 200
        if page.evaluate("document.documentElement.scrollWidth") > size["width"]:
            wide.append(place)
    assert wide == []
