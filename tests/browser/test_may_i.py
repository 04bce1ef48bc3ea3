"""From a job to its plan in two nations, with nothing but the keyboard."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from app.domain.record import Record
from app.services.homes import open_home
from app.store.engine import make_engine, reading
from tests import builders as b
from tests.browser.keys import Keys

Keep = Callable[[Record], int]
FAN = "Add an extractor fan in a bathroom"


def test_a_bathroom_fan_is_planned_in_wales_and_in_england(
    desk: Page, keep: Keep, database: Path
) -> None:
    bath = b.room("R1", name="Bathroom", kind="bathroom", has_bath="yes")
    far = b.point("P1", kind="shaver_unit", room="R1", from_bath_m="1.5")
    keep(b.home(bath, far, nation="wales"))
    keys = Keys(desk)
    desk.goto("/homes/H1/may-i/")
    _find(keys)
    _plan_in_wales(keys)
    _plan_in_england(keys)
    with reading(make_engine(database)) as connection:
        wales, england = open_home(connection, "H1").record.works
    assert "Building control has to be told (rule WA10)" in wales.note
    assert "No one has to be told (rule EN5)" in england.note
    assert (wales.about, england.about) == (("P1",), ("P1",))


def _find(keys: Keys) -> None:
    keys.skip()
    keys.write(keys.main.get_by_label("Find a job by a word"), "ventilation")
    keys.send("Find a job")
    keys.follow(FAN)


def _plan_in_wales(keys: Keys) -> None:
    expect(keys.main.get_by_text("Building control has to be told")).to_be_visible()
    keys.choose(keys.main.get_by_label("What is it about?"), "Shaver unit (P1)")
    keys.send("Take this")
    keys.send("Plan this work")
    expect(keys.page.get_by_role("heading", level=1)).to_have_text(
        f"{FAN}: Shaver unit"
    )


def _plan_in_england(keys: Keys) -> None:
    keys.follow("May I?")
    expect(keys.main.get_by_text("Planned already:")).to_be_visible()
    keys.follow("All four nations")
    keys.follow("England")
    expect(keys.main.get_by_text("It depends", exact=True)).to_be_visible()
    yes_or_no = keys.main.get_by_role("group", name="Does it need a new way")
    keys.to(yes_or_no.get_by_label("Yes"))
    keys.page.keyboard.press("ArrowDown")
    expect(yes_or_no.get_by_label("No", exact=True)).to_be_checked()
    keys.send("Answer")
    expect(keys.main.get_by_text("No one has to be told")).to_be_visible()
    keys.send("Plan this work")
