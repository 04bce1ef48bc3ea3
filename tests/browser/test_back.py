"""Going back: to the form, never to a question of the browser."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from app.domain.record import Record
from tests import builders as b
from tests.browser.conftest import PHONE, Opens


def test_back_from_what_a_corrected_form_made_leads_to_the_form(
    desk: Page, keep: Callable[[Record], int]
) -> None:
    keep(b.home())
    desk.goto("/homes/H1/new/rooms")
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.get_by_role("alert")).to_be_visible()
    desk.locator("#name").fill("Attic")
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.get_by_role("heading", level=1)).to_have_text("Attic")
    desk.go_back()
    expect(desk.locator("#name")).to_have_value("")
    desk.go_back()
    expect(desk.locator("#name")).to_have_value("")
    desk.go_forward()
    desk.go_forward()
    expect(desk.get_by_role("heading", level=1)).to_have_text("Attic")


def test_a_double_tap_does_not_go_on_to_delete(
    opens: Opens, keep: Callable[[Record], int]
) -> None:
    keep(b.home())
    page = opens(viewport=PHONE, has_touch=True)
    page.goto("/homes/H1/delete")
    button = page.get_by_role("button", name="Delete the home").bounding_box()
    page.goto("/homes/H1/")
    link = page.get_by_role("link", name="Delete the home")
    link.scroll_into_view_if_needed()
    assert button is not None
    for act in (page.mouse.dblclick, page.touchscreen.tap):
        page.goto("/homes/H1/")
        page.evaluate(
            "([x, y]) => { const e = document.querySelector('a[href$=\\'/delete\\']');"
            "e.style.cssText = `position:fixed;left:${x}px;top:${y}px;z-index:9`; }",
            [button["x"], button["y"]],
        )
        act(button["x"] + 20, button["y"] + 20)
        page.wait_for_url("**/delete")
        page.touchscreen.tap(button["x"] + 20, button["y"] + 20)
        page.wait_for_timeout(600)
        assert page.url.endswith("/delete")
    page.get_by_role("button", name="Delete the home").click()
    expect(page.get_by_text("was deleted")).to_be_visible()
