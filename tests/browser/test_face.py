"""The face of a board: touch a way, touch a room; no script is needed."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from app.domain.record import Record


@pytest.fixture
def board(phone: Page, keep: Callable[[Record], int], demo: Record) -> Page:
    keep(demo)
    phone.goto(f"/homes/{demo.home.ref}/boards/B2/")
    return phone


def lit(page: Page) -> list[str]:
    """Return the references of what is brought forward, each marked by a word too."""
    things = page.locator(".drawing__thing--lit")
    for thing in things.all():
        expect(thing.get_by_text("here", exact=True)).to_have_count(1)
    return [thing.get_attribute("data-ref") or "" for thing in things.all()]


def test_nothing_is_brought_forward_at_first(board: Page) -> None:
    assert lit(board) == []


def test_a_way_lights_and_lists_its_circuit_and_its_rooms(board: Page) -> None:
    board.locator("[data-ref='B2.W6']").tap()
    found = board.get_by_role("status")
    expect(found).to_contain_text("Way 6, “SOCKETS”")
    assert lit(board) == ["B2.W6"]
    assert found.get_by_role("link").all_inner_texts() == [
        "Open Way 6, “SOCKETS”",
        "Kitchen and lean-to ring",
        "Kitchen",
        "Lean-to",
        "Back garden and yard",
    ]


def test_a_room_lights_its_ways(board: Page) -> None:
    board.get_by_role("link", name="Kitchen", exact=True).tap()
    found = board.get_by_role("status")
    expect(found).to_contain_text("Kitchen is served, on this board, by:")
    assert sorted(lit(board)) == ["B2.W2", "B2.W3", "B2.W4", "B2.W6"]
    expect(found.get_by_role("link")).to_have_count(4)
