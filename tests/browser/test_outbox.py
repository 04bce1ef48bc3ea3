"""Marks outlive the program: kept on the phone, sent once each, in order."""

from __future__ import annotations

import os
import random
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime

import pytest
from playwright.sync_api import BrowserContext, Error, Page, expect

from app.config import Config
from app.domain.record import Reading, Record
from app.services.homes import open_home
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading
from tests.browser.served import Served
from tests.builders import (
    board,
    circuit,
    home,
    main_switch,
    room,
    socket,
    street,
    switched_off,
    way,
)

POINTS = [f"P{n}" for n in range(1, 25)]
MARKS = "/homes/H1/rounds/N1/marks"


@pytest.fixture
def record() -> Record:
    """Two rooms of twelve sockets each on one way, and a round that is under way."""
    sockets = [
        socket(ref, room="R1" if n < 12 else "R2") for n, ref in enumerate(POINTS)
    ]
    return home(
        room("R1", name="Kitchen"),
        room("R2", name="Hall"),
        street(board("B1", main_switch("MS", way("W1", circuit("C1", *sockets))))),
        *switched_off("N1", "W1", stage="marking"),
    )


@pytest.fixture
def served(
    config: Config, keep: Callable[[Record], int], record: Record
) -> Iterator[Served]:
    keep(record)
    server = Served(config.data)
    yield server
    server.close()


def opened(context: BrowserContext, url: str) -> Page:
    page = context.new_page()
    visit(page, url)
    return page


def visit(page: Page, url: str) -> None:
    """Open a page and wait until it shows what waits on the device."""
    page.goto(url)
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()


def mark(page: Page, point: str, name: str) -> None:
    page.locator(f"#point-{point}").get_by_role("button", name=name, exact=True).tap()


def waits(page: Page) -> None:
    """Wait until nothing waits any more."""
    none = page.locator("html[data-outbox-waiting='0']")
    expect(none).to_be_attached(timeout=60_000)


def stored(config: Config) -> Record:
    with reading(make_engine(config.database)) as connection:
        return open_home(connection, "H1").record


def readings(config: Config) -> tuple[Reading, ...]:
    return stored(config).readings


def test_twenty_marks_made_without_the_program_arrive_once(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    context = contexts()
    page = opened(context, url + MARKS[1:])
    assert page.evaluate("isSecureContext") is False
    served.kill()
    began = datetime.now(UTC).replace(microsecond=0)
    for number, point in enumerate(POINTS[:20]):
        mark(page, point, "Went dead" if number % 2 else "Stayed live")
        state = page.locator(f"#point-{point} [data-state]")
        expect(state).to_have_text("Waits on this device")
    bar = page.locator("[data-outbox-count]")
    expect(bar).to_contain_text("20 entries wait on this device")
    with pytest.raises(Error, match="ERR_EMPTY_RESPONSE"):
        page.reload()
    ended = datetime.now(UTC)
    time.sleep(1.1)
    served.start()
    visit(page, url + MARKS[1:])
    waits(page)
    expect(page.locator("[data-marks-done]")).to_have_text("20")
    found = readings(config)
    assert [each.point for each in found] == POINTS[:20]
    assert [each.seen for each in found] == ["live", "dead"] * 10
    times = [datetime.fromisoformat(each.seen_at or "") for each in found]
    assert times == sorted(times)
    assert all(began <= made <= ended for made in times)
    assert len(log(config)) == 20


def log(config: Config) -> list[str]:
    with reading(make_engine(config.database)) as connection:
        key = open_home(connection, "H1").key
        return [change.sentence for change in latest_changes(connection, key, 10_000)]


def test_a_page_left_open_sends_by_itself_when_the_program_is_back(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    served.kill()
    mark(page, "P1", "Went dead")
    expect(page.locator("#point-P1 [data-state]")).to_have_text("Waits on this device")
    served.start()
    expect(page.locator("#point-P1 [data-state]")).to_have_text("Saved", timeout=40_000)
    assert [each.point for each in readings(config)] == ["P1"]


def test_two_phones_mark_one_round_at_once_and_nothing_is_lost(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    one, other = (opened(contexts(), url + MARKS[1:]) for _ in range(2))
    for first, second in zip(POINTS[:12], reversed(POINTS), strict=False):
        mark(one, first, "Went dead")
        mark(other, second, "Went dead")
    mark(one, "P1", "Went dead")
    mark(other, "P1", "Stayed live")
    # Until it is kept nothing waits: the last mark has to have arrived.
    expect(other.locator("#point-P1 [data-state]")).to_have_text("Saved")
    for page in (one, other):
        waits(page)
    found = readings(config)
    assert {each.point for each in found} == set(POINTS)
    assert len({each.seen_by for each in found}) == 2
    other.goto(url + "homes/H1/rounds/results")
    seen = other.get_by_role("main")
    expect(seen).to_contain_text("Seen differently")


def test_what_is_refused_is_kept_and_said_and_does_not_block_the_rest(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    form = page.locator("#point-P1 input[name=point]")
    form.evaluate("element => { element.value = 'P99'; }")
    mark(page, "P1", "Went dead")
    refused = page.locator("[data-outbox-refused]")
    expect(refused).to_contain_text("There is no such point")
    mark(page, "P2", "Went dead")
    expect(page.locator("#point-P2 [data-state]")).to_have_text("Saved")
    assert [each.point for each in readings(config)] == ["P2"]
    page.reload()
    expect(refused).to_contain_text("There is no such point")
    refused.get_by_role("button", name="Throw away").tap()
    waits(page)


def test_a_whole_round_goes_through_without_the_program(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + "homes/H1/rounds/new")
    page.get_by_role("checkbox", name="W1").check()
    page.get_by_role("button", name="Plan this round").tap()
    page.get_by_role("link", name="Go on: get ready to look").tap()
    page.get_by_label("You will see it with").select_option("A lamp")
    page.get_by_label("Whose marks these are").fill("Ash")
    page.get_by_role("button", name="Open the next page").tap()
    expect(page.get_by_role("heading", name="Switch off now")).to_be_visible()
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()
    served.kill()
    page.get_by_role("link", name="It is off: mark the points").tap()
    expect(page.get_by_role("heading", name="Mark each point")).to_be_focused()
    mark(page, "P1", "Went dead")
    page.get_by_label("Seen with").select_option("The thing itself")
    mark(page, "P2", "Stayed live")
    page.get_by_role("link", name="Done marking").tap()
    expect(page.get_by_role("heading", name="Put everything back on")).to_be_visible()
    page.get_by_role("button", name="All is back on", exact=True).tap()
    expect(page.locator("[data-stage-state]")).to_have_text("Waits on this device")
    served.start()
    shown = page.get_by_role("heading", name="What the rounds have shown")
    expect(shown).to_be_visible(timeout=40_000)
    told = [(each.point, each.how, each.seen_by) for each in readings(config)]
    assert told == [("P1", "lamp", "Ash"), ("P2", "thing", "Ash")]
    assert [each.stage for each in stored(config).rounds] == ["marking", "done"]


def test_two_pages_of_one_browser_send_what_waits_once_and_both_say_so(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    context = contexts()
    one, other = (opened(context, url + MARKS[1:]) for _ in range(2))
    served.kill()
    for page, points in ((one, POINTS[:3]), (other, POINTS[3:6])):
        for point in points:
            mark(page, point, "Went dead")
    served.start()
    for page in (one, other):
        waits(page)
        for point in POINTS[:6]:
            state = page.locator(f"#point-{point} [data-state]")
            expect(state).to_have_text("Saved")
    assert [each.point for each in readings(config)] == POINTS[:6]
    assert len(log(config)) == 6


def test_marks_outlive_the_key_that_their_forms_were_made_with(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    by = page.locator("#point-P1 input[name=by]").input_value()
    served.kill()
    for point in POINTS[:3]:
        mark(page, point, "Went dead")
    (config.data / "key").unlink()
    served.start()
    waits(page)
    assert [(each.point, each.seen_by) for each in readings(config)] == [
        (point, by) for point in POINTS[:3]
    ]


def test_what_the_program_fails_at_again_and_again_does_not_block_the_rest(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    fault = {"error": 500, "sentence": "Something went wrong."}
    page.route("**/marks", lambda route: route.fulfill(status=500, json=fault), times=3)
    mark(page, "P1", "Went dead")
    mark(page, "P2", "Went dead")
    refused = page.locator("[data-outbox-refused]")
    expect(refused).to_contain_text("Something went wrong.", timeout=20_000)
    waits(page)
    assert [each.point for each in readings(config)] == ["P2"]
    refused.get_by_role("button", name="Send again").tap()
    expect(refused).to_be_empty()
    waits(page)
    assert [each.point for each in readings(config)] == ["P2", "P1"]


def test_a_browser_that_keeps_nothing_says_so_and_sends_at_once(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    context = contexts()
    context.add_init_script(
        "Object.defineProperty(window, 'indexedDB', { value: undefined });"
    )
    page = context.new_page()
    page.goto(url + MARKS[1:])
    said = page.locator("[data-outbox-count]")
    expect(said).to_contain_text("This browser keeps nothing on the device")
    mark(page, "P1", "Went dead")
    pressed = page.locator("#point-P1 [aria-pressed=true]")
    expect(pressed).to_have_text("Went dead")
    assert [(each.point, each.seen) for each in readings(config)] == [("P1", "dead")]


def test_nothing_is_asked_of_the_program_while_nothing_waits(
    served: Served, contexts: Callable[[], BrowserContext]
) -> None:
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    page.wait_for_load_state("networkidle")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.wait_for_timeout(3000)
    assert asked == []


def test_kills_at_random_moments_lose_and_double_nothing(
    served: Served, config: Config, contexts: Callable[[], BrowserContext]
) -> None:
    """WAYS_KILLS says how often; a hundred took eight minutes."""
    times = kills()
    rng = random.Random(5)  # noqa: S311 - no secret
    url = served.start()
    page = opened(contexts(), url + MARKS[1:])
    sent = []
    for number in range(times):
        for _ in range(4):
            point, name = rng.choice(POINTS), rng.choice(("Went dead", "Stayed live"))
            mark(page, point, name)
            sent.append((point, "dead" if name == "Went dead" else "live"))
            time.sleep(rng.uniform(0, 0.05))
        served.kill()
        if number % 3 == 0:
            mark(page, "P1", "Not looked")
            sent.append(("P1", "not_looked"))
        time.sleep(rng.uniform(0, 0.1))
        served.start()
        time.sleep(rng.uniform(0, 0.3))
    visit(page, url + MARKS[1:])
    waits(page)
    assert [(each.point, each.seen) for each in readings(config)] == sent


def kills() -> int:
    return int(os.environ.get("WAYS_KILLS", "4"))
