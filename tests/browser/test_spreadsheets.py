"""A spreadsheet brought in on a phone without a script; and how its pages look."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import FilePayload, Page, ViewportSize, expect

from app.domain.record import Record
from tests.browser.conftest import DESK, PHONE, Opens
from tests.browser.eye import faults_of
from tests.sheets import as_csv, as_xlsx

START = "/homes/demo/spreadsheet"
ROWS = [
    ["Room", "Point", "Where", "Load", "Circuit"],
    ["Kitchen", "light", "", "1x", ""],
]
GOOD = [ROWS[0], ["Attic", "light", "over the hatch", "12 W", "?"]]


def choose(page: Page, name: str, data: bytes) -> None:
    page.goto(f"{START}?kind=points")
    file = FilePayload(name=name, mimeType="application/octet-stream", buffer=data)
    page.get_by_label("The file, CSV or XLSX").set_input_files(file)
    page.get_by_role("button", name="Go on to its columns").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("What the columns hold")


def look(page: Page) -> None:
    page.get_by_role("button", name="See what it would make").click()


def test_a_file_is_mended_and_taken_in_without_a_script(
    phone: Page, keep: Callable[[Record], int], demo: Record
) -> None:
    keep(demo)
    choose(phone, "points.csv", as_csv(ROWS, ";", "utf-16"))
    expect(phone.get_by_label("What column C holds")).to_have_value("place")
    look(phone)
    expect(phone.get_by_role("alert")).to_contain_text("Row 2, column “Load”: “1x”")
    choose(phone, "points.xlsx", as_xlsx(GOOD))
    expect(phone.get_by_text("As you matched them last time.")).to_be_visible()
    phone.get_by_label("Make rooms that are not there").check()
    look(phone)
    expect(phone.get_by_text("It would make: 1 room, 1 point.")).to_be_visible()
    phone.get_by_role("button", name="Take all of it in").click()
    expect(phone.get_by_text("Brought in points from “points.xlsx”.")).to_be_visible()
    phone.get_by_role("button", name="Undo").click()
    expect(phone.get_by_text("Undone: Brought in points").first).to_be_visible()
    phone.goto("/homes/demo/points/?filter=hatch")
    expect(phone.get_by_text("over the hatch")).to_have_count(0)


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_its_pages_can_be_read(
    opens: Opens, keep: Callable[[Record], int], demo: Record, size: ViewportSize
) -> None:
    keep(demo)
    page = opens(viewport=size)
    choose(page, "points.csv", as_csv([*ROWS, *GOOD[1:]]))
    found = faults_of(page)
    look(page)
    found += faults_of(page)
    choose(page, "points.csv", as_csv([*GOOD[:1], ["", "light", "x", "12", ""]]))
    look(page)
    found += faults_of(page)
    page.goto("/homes/demo/boards/B1/list")
    page.get_by_label("One way a line").fill("31 Loft B6\n32 Shed B16")
    page.get_by_role("button", name="See what it makes").click()
    found += faults_of(page)
    assert found == []
