"""From an empty file to an answer, with nothing but the keyboard."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

from tests.browser.answers import chain_of, fact
from tests.browser.keys import Keys

INTAKE = (
    ("Service cable", "Network"),
    ("Cut-out", "Network"),
    ("Tails", "Meter operator"),
    ("Meter", "Meter operator"),
    ("Tails", "Yours"),
)
# Way number, what it is, rating, type, IΔn, label as found, circuit it feeds.
WAYS = (
    ("", "Main switch", "100", "", "", "MAIN", ""),
    ("", "RCD", "63", "", "30", "", ""),
    ("1", "Circuit-breaker", "32", "B", "", "RING", "Kitchen sockets"),
    ("2", "Circuit-breaker", "6", "B", "", "LIGHTS", "Lights"),
    ("3", "Blank", "", "", "", "-", ""),
)


def test_a_home_is_written_down_and_asked_about_without_a_pointer(desk: Page) -> None:
    keys = Keys(desk)
    desk.goto("/")
    _new_home(keys)
    _intake(keys)
    _board(keys)
    _rooms(keys)
    _points(keys)
    _ask(keys)


def _new_home(keys: Keys) -> None:
    keys.go("link", "Add your home")
    keys.skip()
    keys.write(keys.page.get_by_label("Name"), "Two up, two down")
    keys.choose(keys.page.get_by_label("Nation"), "England")
    keys.choose(keys.page.get_by_label("Kind of dwelling"), "House")
    keys.page.keyboard.press("Tab")
    keys.go("button", "Save")
    expect(keys.page.get_by_role("heading", level=1)).to_have_text("Two up, two down")


def _intake(keys: Keys) -> None:
    keys.go("link", "Write down what is in the intake cupboard")
    for number, (kind, owner) in enumerate(INTAKE):
        keys.go("link", "Add an item" if number else "Add the first item")
        keys.go("link", kind)
        keys.skip()
        keys.choose(keys.page.get_by_label("Whose it is"), owner)
        if kind == "Cut-out":
            keys.write(keys.page.get_by_label("Rated current"), "60")
        keys.to(keys.page.get_by_role("button", name="Save", exact=True))
        keys.page.keyboard.press("Enter")
        expect(keys.page.get_by_role("heading", level=1)).to_have_text("Intake")


def _board(keys: Keys) -> None:
    page = keys.page
    page.keyboard.press("Home")
    keys.to(page.get_by_role("link", name="Boards"))
    page.keyboard.press("Enter")
    keys.go("link", "Add a board")
    keys.skip()
    keys.write(page.get_by_label("Name"), "Main board")
    keys.to(page.get_by_role("button", name="Save"))
    page.keyboard.press("Enter")
    keys.go("link", "Enter its ways")
    keys.skip()
    for number, way in enumerate(WAYS, 1):
        _way(keys, page.get_by_role("row", name=f"New {number}"), way)
    keys.to(page.get_by_role("button", name="Save", exact=True))
    page.keyboard.press("Enter")
    expect(page.get_by_role("table").get_by_role("row")).to_have_count(len(WAYS) + 1)


def _way(keys: Keys, row: Locator, way: tuple[str, ...]) -> None:
    number, kind, rated, curve, residual, label, circuit = way
    _write(keys, row, "Way number", number)
    keys.choose(row.get_by_label("What it is"), kind)
    _write(keys, row, "Rated current", rated)
    if curve:
        keys.choose(row.get_by_label("Type"), curve)
    _write(keys, row, "IΔn", residual)
    _write(keys, row, "Label as found", label)
    _write(keys, row, "Circuit it feeds", circuit)


def _write(keys: Keys, row: Locator, label: str, text: str) -> None:
    if text:
        keys.write(row.get_by_label(label), text)


def _rooms(keys: Keys) -> None:
    page = keys.page
    keys.to(page.get_by_role("link", name="Rooms", exact=True))
    page.keyboard.press("Enter")
    keys.go("link", "List the rooms")
    keys.skip()
    # Enter goes down the column.
    keys.to(page.get_by_role("row", name="New 1").get_by_label("Name"))
    page.keyboard.type("Kitchen")
    page.keyboard.press("Enter")
    page.keyboard.type("Landing")
    keys.to(page.get_by_role("button", name="Save", exact=True))
    page.keyboard.press("Enter")
    expect(page.get_by_role("table").get_by_role("row")).to_have_count(3)


def _points(keys: Keys) -> None:
    page = keys.page
    keys.go("link", "Kitchen")
    keys.go("link", "List its points")
    keys.skip()
    row = page.get_by_role("row", name="New 1")
    keys.choose(row.get_by_label("What it is"), "Fused connection unit")
    keys.write(row.get_by_label("Fuse in it"), "3")
    keys.choose(row.get_by_label("Fed from"), "Kitchen sockets (C1)")
    keys.choose(row.get_by_label("How known"), "Seen: went off and came back")
    row = page.get_by_role("row", name="New 2")
    keys.choose(row.get_by_label("What it is"), "Double socket-outlet")
    keys.write(row.get_by_label("Where in the room"), "left of the window")
    keys.choose(row.get_by_label("Fed from"), "Kitchen sockets (C1)")
    keys.to(page.get_by_role("button", name="Save, and more rows"))
    page.keyboard.press("Enter")
    expect(page.get_by_role("status")).to_contain_text("Entered")
    keys.skip()
    row = page.get_by_role("row", name="New 1")
    keys.choose(row.get_by_label("What it is"), "Boiler")
    keys.choose(row.get_by_label("Fed from"), "Fused connection unit (P1)")
    keys.to(page.get_by_role("button", name="Save", exact=True))
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("Kitchen")


def _ask(keys: Keys) -> None:
    page = keys.page
    box = page.get_by_role("searchbox", name="Find in this home")
    page.keyboard.press("Home")
    keys.write(box, "boiler")
    page.keyboard.press("Enter")
    keys.go("link", "Boiler (P3)")
    expect(page.get_by_role("heading", level=1)).to_have_text("Boiler")
    assert chain_of(page) == [
        "S1", "I1", "I2", "I3", "I4", "I5", "B1.MS", "B1.R1", "B1.W1", "C1", "P1", "P3",
    ]  # fmt: skip
    assert fact(page, "Overload and short circuit") == (
        "Cut-out, 60 A; Way 1, “RING”, B 32 A; Fused connection unit, 3 A"
    )
