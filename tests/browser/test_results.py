"""A sheet of twelve circuits' results is copied with nothing but the keyboard."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from app.domain.record import Record
from tests import builders as b
from tests.browser.keys import Keys

# r1, rn, r2, R1+R2, R2, live to live, live to earth, Zs, RCD: as papers write them.
ROW = ("0.4{n}", "0.4{n}", "0.7{n}", "0.2{n}", "", ">200", ">200", "0.5{n}", "2{n}")


def house() -> Record:
    ways = (
        b.way(
            f"W{n}",
            b.circuit(f"C{n}", b.socket(f"P{n}"), number=str(n), name=f"Ring {n}"),
            way=str(n),
        )
        for n in range(1, 13)
    )
    return b.home(b.street(b.board("B1", b.main_switch("MS", *ways), name="The board")))


def test_twelve_rows_are_copied_by_keyboard(
    desk: Page, keep: Callable[[Record], int]
) -> None:
    keep(house())
    desk.goto("/homes/H1/results/board/B1/copy")
    desk.get_by_label("Its number").focus()
    desk.keyboard.type("2026/17")
    desk.keyboard.press("Tab")
    desk.keyboard.type("A. Person")
    desk.keyboard.press("Tab")
    desk.keyboard.type("0.24")
    desk.keyboard.press("Tab")
    desk.keyboard.type("1.1")
    for n in range(12):
        for column, text in enumerate(ROW):
            desk.keyboard.press("Tab")
            if column == 7:
                desk.keyboard.type("Correct")
                desk.keyboard.press("Tab")
            desk.keyboard.type(text.format(n=n % 10))
        desk.keyboard.press("Tab")
        desk.keyboard.type("It worked")
    Keys(desk).send("Save")
    expect(desk.get_by_text("Copied test results of The board (B1).")).to_be_visible()
    rows = desk.get_by_role("row").filter(has_text="Ring")
    expect(rows).to_have_count(12)
    expect(rows.nth(11)).to_contain_text("0.41 Ω; 0.41 Ω; 0.71 Ω")
    expect(rows.nth(11)).to_contain_text(
        "polarity correct, RCD 21 ms, button: it worked"
    )


def test_what_is_wrong_has_room_on_a_phone(
    phone: Page, keep: Callable[[Record], int]
) -> None:
    keep(house())
    phone.goto("/homes/H1/results/board/B1/copy")
    phone.get_by_label("Zs, Ω").nth(2).fill("much")
    phone.get_by_role("button", name="Save").click()
    box = phone.locator(".cell__error").bounding_box()
    row = phone.locator(".quick__row--wrong").bounding_box()
    assert box
    assert row
    # All but the padding and the mark of the row.
    assert box["width"] > 0.9 * row["width"]
