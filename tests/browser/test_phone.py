"""A phone in one hand: taps only, and a browser that runs no script."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

from tests.browser.answers import boundaries_of, chain_of, fact
from tests.browser.conftest import PHONE, Opens

INTAKE = (
    ("Service cable", "Network"),
    ("Cut-out", "Network"),
    ("Meter", "Meter operator"),
    ("Tails", "Yours"),
)


def test_a_small_home_is_written_down_and_asked_about_with_taps(phone: Page) -> None:
    _new_home(phone, "Ground floor flat")
    _intake(phone)
    _board(phone)
    _rooms_and_points(phone)
    _ask(phone)


def test_what_was_deleted_comes_back(phone: Page) -> None:
    _new_home(phone, "Ground floor flat")
    _intake(phone)
    main = phone.get_by_role("main")
    _open_item(phone, "Meter")
    main.get_by_role("link", name="Delete Meter").tap()
    expect(main.get_by_role("heading", level=1)).to_have_text("Delete Meter?")
    expect(main).to_contain_text("Tails (I4)")
    main.get_by_role("button", name="Delete").tap()
    expect(main.get_by_role("status")).to_contain_text("Deleted intake item Meter")
    expect(phone.locator("#item-I3")).to_have_count(0)
    main.get_by_role("button", name="Undo").tap()
    expect(phone.get_by_role("main")).to_contain_text("Meter")
    phone.goto("/homes/ground-floor-flat/intake/")
    expect(phone.locator("#item-I3")).to_have_count(1)


def test_a_stale_save_shows_both_and_is_kept_when_sent_again(opens: Opens) -> None:
    one = opens(viewport=PHONE, has_touch=True, java_script_enabled=False)
    other = opens(viewport=PHONE, has_touch=True, java_script_enabled=False)
    _new_home(one, "Ground floor flat")
    for page in (one, other):
        page.goto("/homes/ground-floor-flat/edit")
    other.get_by_label("Name").fill("Flat 1")
    _save(other)
    one.get_by_label("Name").fill("The flat below")
    _save(one)
    row = one.get_by_role("row").filter(has=one.get_by_role("rowheader", name="Name"))
    cells = row.get_by_role("cell")
    expect(cells).to_have_text(["Flat 1", "The flat below"])
    expect(one.get_by_role("alert")).to_contain_text("Nothing was saved yet")
    expect(one.get_by_label("Name")).to_have_value("The flat below")
    _save(one)
    expect(one.get_by_role("heading", level=1)).to_have_text("The flat below")


def _new_home(page: Page, name: str) -> None:
    page.goto("/")
    page.get_by_role("link", name="Add your home").tap()
    page.get_by_label("Name").fill(name)
    page.get_by_label("Nation").select_option("Scotland")
    page.get_by_label("Kind of dwelling").select_option("Flat")
    _save(page)
    expect(page.get_by_role("heading", level=1)).to_have_text(name)


def _intake(page: Page) -> None:
    page.get_by_role("link", name="Write down what is in the intake").tap()
    for number, (kind, owner) in enumerate(INTAKE):
        first = "Add an item" if number else "Add the first item"
        page.get_by_role("link", name=first, exact=True).tap()
        page.get_by_role("main").get_by_role("link", name=kind, exact=True).tap()
        page.get_by_label("Whose it is").select_option(owner)
        _save(page)
        expect(page.get_by_role("heading", level=1)).to_have_text("Intake")


def _board(page: Page) -> None:
    page.get_by_role("link", name="Boards").tap()
    page.get_by_role("link", name="Add a board").tap()
    page.get_by_label("Name").fill("Fuse box")
    _save(page)
    page.get_by_role("link", name="Enter its ways").tap()
    row = _row(page, 1)
    row.get_by_label("What it is").select_option("Main switch")
    row = _row(page, 2)
    row.get_by_label("Way number").fill("1")
    row.get_by_label("What it is").select_option("Rewirable fuse (BS 3036)")
    row.get_by_label("Rated current").fill("30")
    row.get_by_label("Circuit it feeds").fill("Sockets")
    _save(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Fuse box")


def _rooms_and_points(page: Page) -> None:
    page.get_by_role("link", name="Rooms", exact=True).tap()
    page.get_by_role("link", name="List the rooms").tap()
    _row(page, 1).get_by_label("Name").fill("Kitchen")
    _save(page)
    page.get_by_role("link", name="Kitchen").tap()
    page.get_by_role("link", name="List its points").tap()
    row = _row(page, 1)
    row.get_by_label("What it is").select_option("Double socket-outlet")
    row.get_by_label("Where in the room").fill("by the fridge")
    row.get_by_label("Fed from").select_option("Sockets (C1)")
    _save(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Kitchen")


def _ask(page: Page) -> None:
    page.get_by_role("searchbox").fill("fridge")
    page.get_by_role("button", name="Find").tap()
    page.get_by_role("link", name="Double socket-outlet, by the fridge (P1)").tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("by the fridge")
    assert chain_of(page) == ["S1", "I1", "I2", "I3", "I4", "D1", "D2", "C1", "P1"]
    assert boundaries_of(page) == [("I2", "I3"), ("I3", "I4")]
    assert fact(page, "Overload and short circuit") == (
        "Cut-out, rating not known; Way 1, 30 A"
    )
    assert fact(page, "RCD of 30 mA or less") == (
        "No: none before it that counts, by the record"
    )


def _row(page: Page, number: int) -> Locator:
    head = page.get_by_role("rowheader", name=f"New {number}", exact=True)
    return page.get_by_role("row").filter(has=head)


def _save(page: Page) -> None:
    page.get_by_role("button", name="Save", exact=True).tap()


def _open_item(page: Page, name: str) -> None:
    page.locator("summary").filter(has_text=name).tap()
