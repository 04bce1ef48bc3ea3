"""The sources, each answered yes, no or not known."""

from __future__ import annotations

from collections.abc import Callable

from app.domain.record import Record
from tests.pages import CheckedClient

Stored = Callable[..., Record]
SOURCES = "/homes/H1/sources/"


def test_what_is_not_answered_is_asked(here: CheckedClient) -> None:
    page = here.see(SOURCES)
    assert "Sources 6 kinds of source are not answered." in page.main
    assert "nothing here can say that a thing is fed by the network alone" in page.main
    assert page.form("Yes: Solar panels")
    assert page.form("No: Next door")


def test_no_is_kept_and_can_be_undone(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.save(SOURCES, press="No: Solar panels")
    assert page.undo == "Answered: solar panels, no."
    assert page.main.count("5 kinds of source are not answered.") == 1
    assert [(s.kind, s.present) for s in stored().sources[1:]] == [("solar", "no")]
    here.go_on(here.submit_on(page, press="Undo"))
    assert stored() == small


def test_yes_leads_to_what_there_is_to_say_of_it(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.save(SOURCES, press="Yes: Battery")
    assert page.h1 == "Change source S2"
    page = here.go_on(here.submit_on(page, runs_without_network="yes"))
    assert "Can feed when the network is off Yes" in page.main
    assert stored().sources[1].present == "yes"


def test_an_open_one_in_the_record_is_answered_itself(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/new/sources", kind="solar", name="On the garage")
    page = here.see(SOURCES)
    assert "Is there one: Not known" in page.main
    here.go_on(here.submit_on(page, press="No: Solar panels"))
    assert [(s.name, s.present) for s in stored().sources[1:]] == [
        ("On the garage", "no")
    ]


def test_the_same_answer_counts_once(here: CheckedClient, stored: Stored) -> None:
    page = here.see(SOURCES)
    here.submit_on(page, press="Yes: Solar panels")
    again = here.submit_on(page, press="Yes: Solar panels")
    assert again.status == 303
    assert len(stored().sources) == 2
    other = here.submit_on(page, press="No: Solar panels")
    assert (other.status, "answered already" in other.main) == (409, True)
    assert stored().sources[1].present == "yes"


def test_what_is_no_answer_is_refused(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    for fields in (
        {"kind": "solar", "present": "unknown"},
        {"kind": "sun", "present": "yes"},
        {"kind": "network", "present": "no"},
        {},
    ):
        page = here.send(f"{SOURCES}answer", fields)
        assert page.status == 422
        assert "Answer yes or no for one of the sources" in page.main
    assert stored() == small


def test_all_answered_is_said(here: CheckedClient) -> None:
    page = here.see(SOURCES)
    for word in ("Solar panels", "Battery", "Generator or its inlet", "Next door"):
        page = here.go_on(here.submit_on(page, press=f"No: {word}"))
    page = here.go_on(here.submit_on(page, press="No: Vehicle that can feed the home"))
    last = "No: Landlord or the building's shared supply"
    page = here.go_on(here.submit_on(page, press=last))
    assert "Every kind of source is answered." in page.main
    assert "Is there any of these?" not in page.main
