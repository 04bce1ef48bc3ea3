"""Pages in their bad moments: refused, stale, not found; and on paper."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from app.domain.record import Record
from tests.browser.conftest import DESK, PHONE
from tests.browser.eye import faults_of

HOME = "/homes/demo"
PARTS_OF_A_SCREEN = (
    ".skip",
    ".search",
    ".places",
    ".inside",
    ".foot__links",
    ".button",
)
Reach = Callable[[Page], int]


def _not_found(page: Page) -> int:
    answer = page.goto(f"{HOME}/points/NOWHERE/")
    assert answer is not None
    return answer.status


def _form_refused(page: Page) -> int:
    page.goto(f"{HOME}/devices/B2.W6/edit")
    page.get_by_label("What it is").select_option("Choose")
    page.get_by_label("Rated current").fill("a lot")
    return _sent(page)


def _new_home_refused(page: Page) -> int:
    page.goto("/homes/new")
    return _sent(page)


def _quick_refused(page: Page) -> int:
    page.goto(f"{HOME}/boards/B3/ways")
    page.get_by_label("Rated current").nth(1).fill("x")
    page.get_by_label("IΔn").nth(2).fill("a great many")
    return _sent(page)


def _form_stale(page: Page) -> int:
    page.goto(f"{HOME}/devices/B2.W6/edit")
    _forget(page)
    page.get_by_label("Label as found").fill("SOCKETS, KITCHEN")
    return _sent(page)


def _quick_stale(page: Page) -> int:
    page.goto(f"{HOME}/boards/B3/ways")
    _forget(page)
    page.get_by_label("Label as found").nth(1).fill("HEATING")
    return _sent(page)


def _document_refused(page: Page) -> int:
    page.goto("/import")
    page.get_by_label("The document").set_input_files(
        {"name": "home.json", "mimeType": "application/json", "buffer": b'{"a": 1}'}
    )
    return _sent(page, "Bring it in")


def _just_saved(page: Page) -> int:
    page.goto(f"{HOME}/points/P30/edit")
    page.get_by_label("Note").fill("The plate is cracked.")
    return _sent(page)


def _round_refused(page: Page) -> int:
    page.goto(f"{HOME}/rounds/new")
    return _sent(page, "Plan this round")


def _to_switch_off(page: Page) -> int:
    page.goto(f"{HOME}/rounds/N5/marks?how=lamp#switch-off")
    expect(page.get_by_role("heading", name="Switch off now")).to_be_visible()
    return 200


def _to_put_back(page: Page) -> int:
    page.goto(f"{HOME}/rounds/N5/marks?how=thing#back-on")
    expect(page.get_by_role("heading", name="Put everything back on")).to_be_visible()
    return 200


def _marks_waiting(page: Page) -> int:
    """Marks of which one was refused and one waits."""
    page.goto(f"{HOME}/rounds/N5/marks")
    expect(page.locator("html[data-outbox=ready]")).to_be_attached()
    forms = page.locator(".marks__form")
    forms.first.locator("[name=point]").evaluate("e => { e.value = 'NOWHERE'; }")
    forms.first.get_by_role("button", name="Went dead").click()
    expect(page.locator("[data-outbox-refused]")).to_contain_text("no such point")
    page.route("**/marks", lambda _never_answered: None)
    forms.nth(1).get_by_role("button", name="Stayed live").click()
    expect(page.locator("[data-outbox-count]")).to_contain_text("1 entry waits")
    page.evaluate("() => scrollTo(0, 0)")
    return 200


REACHED: dict[int, list[Reach]] = {
    200: [_just_saved, _to_switch_off, _to_put_back, _marks_waiting],
    404: [_not_found],
    409: [_form_stale, _quick_stale],
    422: [
        _form_refused,
        _new_home_refused,
        _quick_refused,
        _document_refused,
        _round_refused,
    ],
}
STATES = [(reach, status) for status, some in REACHED.items() for reach in some]


@pytest.mark.parametrize("half", [0, 1])
def test_a_bad_moment_can_be_read(
    desk: Page, keep: Callable[[Record], int], demo: Record, half: int
) -> None:
    keep(demo)
    found = []
    for reach, status in STATES[half::2]:
        assert reach(desk) == status, reach
        for size in (PHONE, DESK):
            desk.set_viewport_size(size)
            found += faults_of(desk)
    assert found == []


def test_a_refused_form_takes_the_focus_to_what_there_is_to_put_right(
    desk: Page, keep: Callable[[Record], int], demo: Record
) -> None:
    keep(demo)
    _form_refused(desk)
    summary = desk.get_by_role("alert")
    expect(summary).to_be_focused()
    desk.keyboard.press("Tab")
    desk.keyboard.press("Enter")
    expect(desk.get_by_label("What it is")).to_be_focused()


@pytest.mark.parametrize("place", ["points/P30/", "boards/B2/", "intake/"])
def test_paper_shows_the_matter_and_no_way_about(
    desk: Page, keep: Callable[[Record], int], demo: Record, place: str
) -> None:
    keep(demo)
    desk.goto(f"{HOME}/{place}")
    assert _seen(desk) == set(PARTS_OF_A_SCREEN)
    desk.emulate_media(media="print")
    assert _seen(desk) == set()
    expect(desk.get_by_role("heading", level=1)).to_be_visible()
    expect(desk.locator(".drawing > svg").first).to_be_visible()
    assert (
        desk.evaluate("() => getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    )
    assert desk.pdf().startswith(b"%PDF-")


def test_paper_shows_each_item_of_the_intake_unfolded(
    desk: Page, keep: Callable[[Record], int], demo: Record
) -> None:
    keep(demo)
    desk.goto(f"{HOME}/intake/")
    said = desk.get_by_text("Who may open it:")
    expect(said.first).to_be_hidden()
    desk.emulate_media(media="print")
    expect(said).to_have_count(len(demo.intake))
    expect(said.last).to_be_visible()


@pytest.mark.parametrize(
    ("place", "folded"),
    [("circuits/C12/figures/", ".working__formula"), ("remarks/", ".remark__text")],
)
def test_paper_unfolds_what_is_worked_out_and_what_is_remarked_on(
    desk: Page,
    keep: Callable[[Record], int],
    demo: Record,
    place: str,
    folded: str,
) -> None:
    keep(demo)
    desk.goto(f"{HOME}/{place}")
    lines = desk.locator(folded)
    expect(lines.last).to_be_hidden()
    desk.emulate_media(media="print")
    for line in lines.all():
        expect(line).to_be_visible()


def test_no_bar_lies_over_a_plan_on_paper(
    desk: Page, keep: Callable[[Record], int], demo: Record
) -> None:
    keep(demo)
    desk.goto(f"{HOME}/isolate/plan?ref=R-UNDER")
    bar = desk.locator(".underbar")
    expect(bar).to_be_visible()
    desk.emulate_media(media="print")
    expect(bar).to_be_hidden()
    expect(desk.get_by_role("heading", name="Still live here")).to_be_visible()


def _seen(page: Page) -> set[str]:
    parts = PARTS_OF_A_SCREEN
    return {p for p in parts if any(e.is_visible() for e in page.locator(p).all())}


def _sent(page: Page, button: str = "Save") -> int:
    """Send a form; return how it was answered."""
    with page.expect_response(lambda r: r.request.is_navigation_request()) as answer:
        page.get_by_role("button", name=button, exact=True).click()
        page.wait_for_load_state()
    status = answer.value.status
    return 200 if status == 303 else status


def _forget(page: Page) -> None:
    """Make a form out of date, as if it had been opened before another's save."""
    page.locator("[name$=mark]").evaluate_all(
        "all => all.forEach(e => e.value = 'old')"
    )
