"""Going back: to the form, never to a question of the browser."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from app.domain.record import Record
from tests import builders as b


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
