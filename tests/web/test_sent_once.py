"""A form that is sent twice counts once; the same on another day counts again."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from app.domain.record import Record
from app.services.homes import open_home, save
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading, writing
from tests.pages import CheckedClient, Page

Stored = Callable[..., Record]
HOME = "/homes/H1/"
TRIPPED = f"{HOME}tripped/?to=moved&to=rcd&device=RCD&to=neutral"
# Address, button, what is typed.
FORMS: dict[str, tuple[str, str, dict[str, str]]] = {
    "round": (f"{HOME}rounds/new", "By day, everything on", {}),
    "round by hand": (f"{HOME}rounds/new", "Plan this round", {"off": "W1"}),
    "work done": (f"{HOME}works/W3/done", "Write it down", {}),
    "results": (
        f"{HOME}results/board/B1/copy",
        "Save",
        {"paper": "new", "ze_ohm-B1": "0.2"},
    ),
    "reminder": (f"{HOME}reminders/rcd_button.RCD/done", "Write it down", {}),
    "press": (
        f"{HOME}reminders/",
        "It tripped today: Press the test button, RCD RCD",
        {},
    ),
    "item": (f"{HOME}new/rooms", "Save", {"name": "Attic"}),
    "ways": (
        f"{HOME}boards/B1/ways",
        "Save",
        {"new~1-way": "9", "new~1-kind": "circuit_breaker"},
    ),
    "walk": (f"{HOME}walk/rooms", "Add: Loft", {}),
    "may I": (
        f"{HOME}may-i/add-socket/?at=P2&place=kitchen&new_circuit=no&nation=england",
        "Plan this work",
        {},
    ),
}


@pytest.fixture
def ready(here: CheckedClient) -> CheckedClient:
    here.save(f"{HOME}new/works", name="Socket moved", about_1="P1")
    return here


@pytest.mark.parametrize("name", FORMS)
def test_sent_twice_it_counts_once_and_on_another_page_again(
    ready: CheckedClient, stored: Stored, database: Path, name: str
) -> None:
    url, press, typed = FORMS[name]
    before = stored()
    page = ready.see(url)
    assert ready.submit_on(page, typed, press).status == 303
    once, first = stored(), changes(database)
    assert once != before
    assert ready.submit_on(page, typed, press).status == 303
    assert (stored(), changes(database)) == (once, first)
    put_back(database, before)
    assert ready.submit_on(ready.see(url), typed, press).status == 303
    assert stored() != before
    assert changes(database) == first + 2


def test_a_list_saved_twice_counts_once_and_after_it_was_taken_away_again(
    here: CheckedClient, stored: Stored, database: Path, small: Record
) -> None:
    def looked() -> Page:
        url, typed = f"{HOME}boards/B1/list", {"lines": "7 Loft"}
        typed["kind_unsaid"] = "circuit_breaker"
        return here.submit(url, typed, "See what it makes")

    page = looked()
    for _ in range(2):
        assert here.submit_on(page, press="Save all of it").status == 303
    assert changes(database) == 1
    put_back(database, small)
    assert here.submit_on(looked(), press="Save all of it").status == 303
    assert [c.name for c in stored().circuits][2:] == ["Loft"]


def test_a_home_is_added_once_and_its_namesake_too(visitor: CheckedClient) -> None:
    for made in ("/homes/twice/", "/homes/twice-2/"):
        page = visitor.see("/homes/new")
        for _ in range(2):
            assert visitor.submit_on(page, press="Save", name="Twice").location == made
    visitor.save("/homes/twice-2/delete", press="Delete the home")
    page = visitor.submit_on(page, press="Save", name="Twice")
    assert page.location == "/homes/twice-3/"


def test_a_copy_and_a_likeness_of_a_home_are_made_once_each(
    here: CheckedClient,
) -> None:
    copied, alike = here.see(f"{HOME}copy"), here.see("/like-another")
    for _ in range(2):
        first = here.submit_on(copied, {"name": "Two"}, "Make the copy")
        second = here.submit_on(alike, {"named": "Three"}, "Begin the home")
        assert (first.location, second.location) == ("/homes/two/", "/homes/three/")


def test_a_reply_that_comes_twice_is_kept_once(here: CheckedClient) -> None:
    page = here.see(f"{HOME}corrections/")
    typed = {"lines": "W1 feeds the shed."}
    first, again, other = (
        here.submit_on(page, {"lines": lines}, "Take it down").location
        for lines in (typed["lines"], typed["lines"], "W2 feeds the shed.")
    )
    assert first == again != other


def test_a_form_without_its_key_is_refused(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    answer: Page = here.send(f"{HOME}rounds/new", {"go": "baseline_day", "once": ""})
    assert answer.status == 422
    assert "This form came without its key" in answer.main
    assert stored() == small


def changes(database: Path) -> int:
    with reading(make_engine(database)) as connection:
        return len(latest_changes(connection, open_home(connection, "H1").key, 99))


def put_back(database: Path, record: Record) -> None:
    """Make the home what it was, as another change would."""
    with writing(make_engine(database)) as connection:
        assert save(connection, open_home(connection, "H1"), record, "Put back.")
