"""The list of changes, taking one back, and when that cannot be."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Record
from tests.pages import CheckedClient

Stored = Callable[..., Record]
CHANGES = "/homes/H1/changes/"
EDIT = "/homes/H1/points/P1/edit"
SENTENCE = "Changed point Socket-outlet, size not noted, by the sink (P1)."


def test_nothing_changed_yet(here: CheckedClient) -> None:
    assert "Nothing has been changed yet." in here.see(CHANGES).main


def test_the_newest_stands_first_and_can_be_undone(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    here.save(EDIT, note="x")
    here.save("/homes/H1/new/rooms", name="Loft")
    page = here.see(CHANGES)
    added, changed = "Undo: Added room Loft (R3).", f"Undo: {SENTENCE}"
    assert page.main.index(added[6:]) < page.main.index(changed[6:])
    page = here.go_on(here.submit_on(page, press=changed))
    assert page.h1 == "Changes"
    assert f"Undone: {SENTENCE}" in page.main
    assert "undone since" in page.main
    assert stored().points == small.points
    here.go_on(here.submit_on(page, press=added))
    assert stored() == small


def test_an_undoing_is_undone(here: CheckedClient, stored: Stored) -> None:
    here.save(EDIT, note="x")
    page = here.save(CHANGES, press=f"Undo: {SENTENCE}")
    here.go_on(here.submit_on(page, press=f"Undo: Undone: {SENTENCE}"))
    assert stored().points[0].note == "x"


def test_what_was_changed_again_cannot_be_undone(
    here: CheckedClient, stored: Stored
) -> None:
    first = here.save(EDIT, note="first")
    here.save(EDIT, note="second")
    page = here.submit_on(first, press="Undo")
    assert page.status == 409
    assert "what it changed has been changed again since" in page.main
    assert "Undo the later change first" in page.main
    assert stored().points[0].note == "second"


def test_it_is_undone_once(here: CheckedClient) -> None:
    after = here.save(EDIT, note="x")
    here.go_on(here.submit_on(after, press="Undo"))
    again = here.submit_on(after, press="Undo")
    assert (again.status, "undone already" in again.main) == (409, True)


@pytest.mark.parametrize("token", ["", "x", "-1", "1.5", "1e3", "٣", "9" * 13])
def test_a_change_must_be_named(here: CheckedClient, token: str) -> None:
    page = here.send(f"{CHANGES}undo", {"token": token})
    assert (page.status, "Say which change" in page.main) == (422, True)


def test_a_change_that_was_never_made(
    here: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> None:
    assert here.send(f"{CHANGES}undo", {"token": "99"}).status == 404
    here.save(EDIT, note="x")
    keep(houses["h01"])
    assert here.send("/homes/h01/changes/undo", {"token": "1"}).status == 404
    assert here.see("/homes/h01/?done=1").undo == ""


@pytest.mark.parametrize("done", ["", "0", "x", "-1", "99", "1'", "٣", "9" * 5000])
def test_an_address_cannot_make_an_undo_bar(here: CheckedClient, done: str) -> None:
    here.save(EDIT, note="x")
    assert here.see(f"/homes/H1/?done={done}").undo == ""
    assert here.see("/homes/H1/?done=1").undo == SENTENCE
