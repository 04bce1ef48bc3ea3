"""The walk: by taps, by keys, without a script, and with the program gone."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import BrowserContext, Error, Locator, Page, expect

from app.config import Config
from app.domain.record import Point, Record
from app.services.homes import open_home
from app.store.engine import make_engine, reading
from tests import builders as b
from tests.browser.conftest import PHONE, Opens
from tests.browser.keys import Keys
from tests.browser.served import Served

Keep = Callable[[Record], int]
WALK = "/homes/H1/walk/"
COPIES = """(count) => Object.keys(sessionStorage).filter(
  (key) => key.startsWith("walk:")).length === count"""


@pytest.fixture
def house(keep: Keep) -> Record:
    """Three rooms in which nothing is listed yet."""
    record = b.home(
        b.room("R1", name="Kitchen", kind="kitchen", looked_at="not_yet"),
        b.room("R2", name="Landing", kind="landing", looked_at="not_yet"),
        b.room("R3", name="Loft", kind="loft", looked_at="not_yet"),
    )
    keep(record)
    return record


def points(config: Config) -> list[tuple[str | None, str, str, int]]:
    return [(p.room, p.kind, p.place, p.count) for p in record_of(config).points]


def record_of(config: Config) -> Record:
    with reading(make_engine(config.database)) as connection:
        return open_home(connection, "H1").record


def kind(page: Page, name: str) -> Locator:
    """Return the choice of a kind, however many of it are listed already."""
    exactly = re.compile(rf"^{re.escape(name)}( \d+ here)?$")
    return page.get_by_role("radio", name=exactly)


def tap(page: Page, name: str) -> None:
    page.get_by_role("main").get_by_role("button", name=name, exact=True).tap()


def two_taps(page: Page, name: str, place: str) -> None:
    """Tap what it is, then where; nothing else, and without scrolling between."""
    kind(page, name).tap()
    at = page.get_by_role("button", name=place, exact=True)
    expect(at).to_be_in_viewport(ratio=1)
    at.tap()


def is_listed(page: Page, line: str) -> None:
    expect(page.locator(".walked__line").first).to_have_text(line)


def is_in(page: Page, room: str) -> None:
    expect(page.get_by_role("heading", level=1)).to_have_text(room)


@pytest.mark.parametrize("script", [False, True], ids=["no script", "script"])
@pytest.mark.usefixtures("house")
def test_a_house_is_walked_with_taps_only(
    opens: Opens, config: Config, script: bool
) -> None:
    page = opens(viewport=PHONE, has_touch=True, java_script_enabled=script)
    page.goto("/homes/H1/")
    page.get_by_role("link", name="Find out").tap()
    two_taps(page, "Double socket-outlet", "under the worktop")
    is_listed(page, "Double socket-outlet, under the worktop")
    tap(page, "Freezer")
    is_listed(
        page, "Double socket-outlet, under the worktop missed if it goes off: freezer"
    )
    two_taps(page, "Light", "over the sink")
    is_listed(page, "Light, over the sink")
    for alike in ("2", "3", "4"):
        tap(page, "One more alike")
        is_listed(page, f"Light, over the sink {alike} alike")
    page.get_by_role("link", name="Extractor fan").tap()
    tap(page, "ceiling")
    is_listed(page, "Extractor fan, ceiling")
    tap(page, "Undo")
    is_listed(page, "Light, over the sink 4 alike")
    tap(page, "All of it")
    is_in(page, "Landing")
    page.locator("summary", has_text="Something else").tap()
    two_taps(page, "Storage heater", "left wall")
    is_listed(page, "Storage heater, left wall")
    page.get_by_role("link", name="Next Loft").tap()
    is_in(page, "Loft")
    tap(page, "Could not get in")
    is_in(page, "All rooms")
    tap(page, "Add: Garage")
    is_in(page, "Garage")
    assert points(config) == [
        ("R1", "double_socket", "under the worktop", 1),
        ("R1", "light", "over the sink", 4),
        ("R2", "storage_heater", "left wall", 1),
    ]
    assert [(r.name, r.looked_at) for r in record_of(config).rooms] == [
        ("Kitchen", "all"),
        ("Landing", "not_yet"),
        ("Loft", "no_access"),
        ("Garage", "not_yet"),
    ]


@pytest.mark.usefixtures("house")
def test_a_double_click_and_a_key_held_down_are_one_press(
    desk: Page, config: Config
) -> None:
    desk.goto(f"{WALK}rooms/R2?kind=light")
    at = desk.get_by_role("button", name="ceiling", exact=True)
    at.dblclick()
    is_listed(desk, "Light, ceiling")
    expect(desk.locator(".walked__line")).to_have_count(1)
    kind(desk, "Light").check()
    at.focus()
    for _ in range(4):
        desk.keyboard.down("Enter")
    desk.keyboard.up("Enter")
    expect(desk.locator(".walked__line")).to_have_count(2)
    desk.wait_for_timeout(300)
    assert len(points(config)) == 2


@pytest.mark.usefixtures("house")
def test_another_phone_goes_on_where_one_stopped(opens: Opens) -> None:
    one = opens(viewport=PHONE, has_touch=True)
    one.goto(f"{WALK}rooms/R2")
    two_taps(one, "Smoke alarm", "ceiling")
    is_listed(one, "Smoke alarm, ceiling")
    one.close()
    other = opens(viewport=PHONE, has_touch=True, java_script_enabled=False)
    other.goto("/homes/H1/")
    other.get_by_role("link", name="Find out").tap()
    is_in(other, "Landing")
    is_listed(other, "Smoke alarm, ceiling")


@pytest.mark.usefixtures("house")
def test_what_was_chosen_can_be_chosen_again(phone: Page) -> None:
    phone.goto(f"{WALK}rooms/R1")
    kind(phone, "Boiler").tap()
    expect(kind(phone, "Heat alarm")).to_be_hidden()
    tap(phone, "Choose again what it is")
    expect(kind(phone, "Heat alarm")).to_be_visible()
    expect(phone.get_by_role("button", name="left wall").first).to_be_hidden()


@pytest.mark.usefixtures("house")
def test_a_house_is_walked_with_keys_only(desk: Page, config: Config) -> None:
    desk.goto(WALK)
    keys = Keys(desk)
    keys.skip()
    keys.to(kind(desk, "Double socket-outlet"))
    for _ in range(3):
        desk.keyboard.press("ArrowDown")
    expect(kind(desk, "Fused connection unit")).to_be_checked()
    keys.to(desk.get_by_role("button", name="above the worktop, right"))
    desk.keyboard.press("Enter")
    is_listed(desk, "Fused connection unit, above the worktop, right")
    expect(kind(desk, "Double socket-outlet")).to_be_focused()
    desk.evaluate("() => { window.before = null; }")
    desk.keyboard.press("Space")
    keys.write(desk.get_by_label("How many alike"), "many")
    desk.keyboard.press("Enter")
    expect(desk.get_by_label("How many alike")).to_be_focused()
    keys.write(desk.get_by_label("How many alike"), "2")
    keys.write(desk.get_by_label("Or in your own words"), "by the clock")
    desk.keyboard.press("Enter")
    is_listed(desk, "Double socket-outlet, by the clock 2 alike")
    desk.evaluate("() => { window.before = null; }")
    keys.send("In part")
    is_in(desk, "Landing")
    keys.follow("Back Kitchen")
    is_in(desk, "Kitchen")
    assert points(config) == [
        ("R1", "fused_connection_unit", "above the worktop, right", 1),
        ("R1", "double_socket", "by the clock", 2),
    ]


@pytest.fixture
def served(config: Config, house: Record) -> Iterator[Served]:
    assert house.rooms
    server = Served(config.data)
    yield server
    server.kill()


def test_with_the_program_gone_points_wait_and_arrive_once(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = contexts().new_page()
    page.goto(f"{url}homes/H1/walk/rooms/R1")
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()
    page.wait_for_function(COPIES, arg=3)
    served.kill()
    two_taps(page, "Light", "over the sink")
    for _ in range(2):
        two_taps(page, "Double socket-outlet", "under the worktop")
    waiting = page.locator("[data-waiting-list] > li")
    expect(waiting).to_have_text(
        [
            "Double socket-outlet, under the worktop: waiting",
            "Double socket-outlet, under the worktop: waiting",
            "Light, over the sink: waiting",
        ]
    )
    page.get_by_role("link", name="Next Landing").tap()
    is_in(page, "Landing")
    expect(page.locator("[data-walk-said]")).to_contain_text("as it was at")
    two_taps(page, "Smoke alarm", "ceiling")
    expect(waiting).to_have_text(["Smoke alarm, ceiling: waiting"])
    page.get_by_role("link", name="Next Loft").tap()
    is_in(page, "Loft")
    page.get_by_role("link", name="Back Landing").tap()
    is_in(page, "Landing")
    expect(waiting).to_have_text(["Smoke alarm, ceiling: waiting"])
    expect(page).to_have_url(re.compile("/R2$"))
    page.go_back()
    is_in(page, "Loft")
    page.get_by_role("link", name="Next All rooms").tap()
    expect(page.locator("[data-walk-said]")).to_contain_text("Stay here")
    with pytest.raises(Error, match="net::ERR_"):
        page.reload()
    assert points(config) == []
    served.start()
    page.goto(f"{url}homes/H1/walk/")
    within_a_minute(lambda: len(points(config)) >= 4)
    page.goto(f"{url}homes/H1/walk/")
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()
    assert points(config) == [
        ("R1", "light", "over the sink", 1),
        ("R1", "double_socket", "under the worktop", 1),
        ("R1", "double_socket", "under the worktop", 1),
        ("R2", "smoke_alarm", "ceiling", 1),
    ]
    is_in(page, "Landing")
    expect(page.locator("[data-outbox-bar]")).to_be_hidden()


def within_a_minute(done: Callable[[], bool]) -> None:
    end = time.monotonic() + 60
    while not done():
        assert time.monotonic() < end
        time.sleep(0.2)


def test_a_page_left_open_shows_what_arrived(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = contexts().new_page()
    page.goto(f"{url}homes/H1/walk/rooms/R1")
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()
    served.kill()
    two_taps(page, "Light", "over the sink")
    expect(page.locator("[data-waiting-list] > li")).to_have_count(1)
    served.start()
    expect(page.locator("[data-waiting]")).to_be_hidden(timeout=60_000)
    is_listed(page, "Light, over the sink")
    [point] = record_of(config).points
    assert isinstance(point, Point)
