"""From an empty file to an answer, with nothing but the keyboard."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

from tests.browser.answers import boundaries_of, chain_of, fact
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
    keys.skip()
    keys.follow("Add your home")
    keys.write(keys.page.get_by_label("Name"), "Two up, two down")
    keys.choose(keys.page.get_by_label("Nation"), "England")
    keys.choose(keys.page.get_by_label("Kind of dwelling"), "House")
    keys.send("Save")
    _expect_heading(keys, "Two up, two down")


def _intake(keys: Keys) -> None:
    keys.follow("Write down what is in the intake cupboard")
    for number, (kind, owner) in enumerate(INTAKE):
        keys.follow("Add an item" if number else "Add the first item")
        keys.follow(kind)
        keys.choose(keys.page.get_by_label("Whose it is"), owner)
        if kind == "Cut-out":
            keys.write(keys.page.get_by_label("Rating printed"), "60")
        keys.send("Save")
        _expect_heading(keys, "Intake")


def _board(keys: Keys) -> None:
    page = keys.page
    keys.press(page.get_by_role("link", name="Boards"))
    keys.follow("Add a board")
    keys.write(page.get_by_label("Name"), "Main board")
    keys.send("Save")
    keys.follow("Enter its ways")
    for number, way in enumerate(WAYS, 1):
        _way(keys, _row(page, number), way)
    keys.send("Save")
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


def _rooms(keys: Keys) -> None:
    page = keys.page
    keys.press(page.get_by_role("link", name="Rooms", exact=True))
    keys.follow("List the rooms")
    keys.to(_row(page, 1).get_by_label("Name"))
    page.keyboard.type("Kitchen")
    page.keyboard.press("Enter")
    expect(_row(page, 2).get_by_label("Name")).to_be_focused()
    page.keyboard.type("Landing")
    keys.send("Save")
    expect(page.get_by_role("table").get_by_role("row")).to_have_count(3)


def _points(keys: Keys) -> None:
    page = keys.page
    keys.follow("Kitchen")
    keys.follow("List its points")
    row = _row(page, 1)
    keys.choose(row.get_by_label("What it is"), "Fused connection unit")
    keys.write(row.get_by_label("Fuse in it"), "3")
    keys.choose(row.get_by_label("Fed from"), "Kitchen sockets (C1)")
    keys.choose(row.get_by_label("How known"), "Seen: went off and came back")
    row = _row(page, 2)
    keys.choose(row.get_by_label("What it is"), "Double socket-outlet")
    keys.write(row.get_by_label("Where in the room"), "left of the window")
    keys.choose(row.get_by_label("Fed from"), "Kitchen sockets (C1)")
    keys.send("Save, and more rows")
    row = _row(page, 1)
    keys.choose(row.get_by_label("What it is"), "Boiler")
    keys.choose(row.get_by_label("Fed from"), "Fused connection unit (P1)")
    keys.send("Save")
    _expect_heading(keys, "Kitchen")


def _ask(keys: Keys) -> None:
    page = keys.page
    keys.write(page.get_by_role("searchbox", name="Find in this home"), "boiler")
    with page.expect_navigation():
        page.keyboard.press("Enter")
    keys.follow("Boiler (P3)")
    _expect_heading(keys, "Boiler")
    assert chain_of(page) == [
        "S1", "I1", "I2", "I3", "I4", "I5", "D1", "D2", "D3", "C1", "P1", "P3",
    ]  # fmt: skip
    assert fact(page, "Overload and short circuit") == (
        "Cut-out, 60 A; Way 1, “RING”, B 32 A; Fused connection unit, 3 A"
    )
    assert fact(page, "RCDs before it") == "RCD D2, 30 mA, type not known"
    assert fact(page, "RCD of 30 mA or less") == "Yes, on every feed in the record"
    assert boundaries_of(page) == [("I2", "I3"), ("I4", "I5")]


def _row(page: Page, number: int) -> Locator:
    """Return a row of a quick table that nothing stands in yet."""
    head = page.get_by_role("rowheader", name=f"New {number}", exact=True)
    return page.get_by_role("row").filter(has=head)


def _write(keys: Keys, row: Locator, label: str, text: str) -> None:
    if text:
        keys.write(row.get_by_label(label), text)


def _expect_heading(keys: Keys, text: str) -> None:
    expect(keys.page.get_by_role("heading", level=1)).to_have_text(text)
