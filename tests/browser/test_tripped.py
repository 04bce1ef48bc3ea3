"""It has tripped, at ten in the evening: a phone in one hand, no script, taps only."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from app.domain.record import Record


def test_an_rcd_trips_and_the_appliance_is_found(
    phone: Page, keep: Callable[[Record], int], demo: Record
) -> None:
    keep(demo)
    phone.goto("/homes/demo/")
    phone.get_by_role("main").get_by_role("link", name="It has tripped").tap()
    head = phone.get_by_role("heading", level=1)
    expect(head).to_have_text("Before you touch anything")
    for answer in (
        "No, none of these",
        "A device with a test button",
        "RCD B2.R1, “RCD”",
    ):
        _tap_under_the_thumb(phone, answer)
    expect(head).to_have_text("Unplug what hangs on it")
    first = phone.locator(".asks__thing").first
    expect(first).to_contain_text("Garage")
    for answer in ("Done", "It stays on", "One thing trips it"):
        _tap_under_the_thumb(phone, answer)
    expect(head).to_have_text("What trips it?")
    phone.get_by_role("link", name="behind the washing machine").tap()
    expect(head).to_have_text("Leave that one unplugged")
    phone.go_back()
    expect(head).to_have_text("What trips it?")
    phone.go_forward()
    _tap_under_the_thumb(phone, "Write it down")
    expect(phone.get_by_role("main")).to_contain_text("What trips it: Double socket")
    phone.get_by_role("button", name="Keep this as an entry").tap()
    expect(head).to_have_text("What has tripped")
    main = phone.get_by_role("main")
    expect(main).to_contain_text("It has tripped once")
    expect(main).to_contain_text("Found, and unplugged or left off")
    main.get_by_role("button", name="Undo").tap()


def _tap_under_the_thumb(phone: Page, words: str) -> None:
    """An answer lies on the screen as it opens, wide enough for a thumb."""
    link = phone.get_by_role("link", name=words, exact=True)
    box = link.bounding_box()
    assert box is not None
    assert box["y"] + box["height"] <= 844
    assert box["height"] >= 48
    assert box["width"] >= 300
    link.tap()
