"""Remarks: the list, each kind, setting one aside and bringing it back."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from app.domain.record import Record
from app.domain.remarks import UNITS, Remark, Unit, remarks
from app.services import homes
from app.services import remarks as service
from app.services.worked import Memory
from tests.pages import CheckedClient

Stored = Callable[..., Record]
TODAY = date(2026, 11, 25)
LIST = "/homes/H1/remarks/"
KIND = f"{LIST}main-switch-one-pole/"
FUSE = f"{LIST}known-by-label-only/"
ASIDE = f"{LIST}earthing-unknown/H1/aside"


def test_the_list_says_the_worst_first_and_links_each_kind(
    at_demo: CheckedClient, demo: Record
) -> None:
    page = at_demo.see("/homes/demo/remarks/")
    found = [r for r in remarks(demo, TODAY) if r.outcome == "remark"]
    for remark in found:
        assert remark.title in page.main
    assert page.main.index("What cannot be told yet") > page.main.index(found[0].title)
    calls = {r.code for r in found if r.rank == "call"}
    assert page.main.count("Leave it and call") == len(calls)


@pytest.mark.parametrize("code", UNITS)
def test_each_kind_has_its_page(at_demo: CheckedClient, code: str) -> None:
    page = at_demo.see(f"/homes/demo/remarks/{code}/")
    assert page.h1 == UNITS[code].title
    for heading in UNITS[code].sections:
        assert heading in page.main


def test_a_kind_or_a_subject_that_is_not_there_is_not_found(
    here: CheckedClient,
) -> None:
    here.see(f"{LIST}no-such-remark/", 404)
    here.see(f"{LIST}earthing-unknown/P1/aside", 404)
    here.see(f"{LIST}no-such-remark/P1/aside", 404)


def test_home_says_how_many_there_are(here: CheckedClient) -> None:
    page = here.see("/homes/H1/")
    assert "about gaps in the record" in page.main
    assert LIST in page.links.values()


def test_an_item_shows_the_remarks_on_it(here: CheckedClient) -> None:
    page = here.see("/homes/H1/points/P3/")
    assert "Remarks on it" in page.main
    assert UNITS["fed-by-nobody-knows"].title in page.main
    assert "Remarks on it" not in here.see("/homes/H1/points/").main


def test_a_remark_is_set_aside_and_brought_back(
    here: CheckedClient, stored: Stored
) -> None:
    after = here.save(ASIDE, {"reason": "Asked the network."}, press="Set it aside")
    title = UNITS["earthing-unknown"].title
    assert after.undo == f"Set aside: {title}."
    (aside,) = stored().asides
    assert (aside.remark, aside.about) == ("earthing-unknown", None)
    assert aside.reason == "Asked the network."
    assert aside.day is not None
    listed = here.see(LIST).main
    assert listed.index(title) > listed.index("Set aside")
    page = here.see(f"{LIST}earthing-unknown/")
    assert "Asked the network." in page.main
    back = here.go_on(here.submit_on(page, press="Bring it back"))
    assert back.undo == f"Brought back: {title}."
    assert stored().asides == ()


def test_it_comes_back_when_its_facts_change(
    here: CheckedClient, stored: Stored
) -> None:
    aside = f"{LIST}fed-by-nobody-knows/P3/aside"
    here.save(aside, {"reason": "Known."}, press="Set it aside")
    assert "changed since" not in here.see(f"{LIST}fed-by-nobody-knows/").main
    here.save("/homes/H1/points/P3/edit", {"kind": "heater"})
    page = here.see(f"{LIST}fed-by-nobody-knows/")
    assert "has changed since" in page.main
    assert "Known." in page.main
    here.save(aside, {"reason": "Still known."}, press="Set it aside")
    (kept,) = stored().asides
    assert kept.reason == "Still known."


def test_a_reason_is_asked_for_and_what_was_typed_is_kept(
    here: CheckedClient, stored: Stored
) -> None:
    page = here.submit(ASIDE, {"reason": "  "}, press="Set it aside")
    assert page.status == 422
    assert "Enter why" in page.error("reason")
    long = "x" * 4001
    page = here.submit(ASIDE, {"reason": long}, press="Set it aside")
    assert page.status == 422
    assert page.value("reason", "Set it aside") == long
    assert stored().asides == ()


def test_what_changed_meanwhile_is_not_set_aside_unread(
    here: CheckedClient, stored: Stored
) -> None:
    aside = f"{LIST}fed-by-nobody-knows/P3/aside"
    shown = here.see(aside)
    here.save("/homes/H1/points/P3/edit", {"kind": "heater"})
    page = here.submit_on(shown, {"reason": "Known."}, press="Set it aside")
    assert page.status == 409
    assert "has changed since" in page.main
    assert page.value("reason", "Set it aside") == "Known."
    here.submit_on(page, press="Set it aside")
    assert [a.reason for a in stored().asides] == ["Known."]


def test_what_is_not_set_aside_cannot_be_brought_back(here: CheckedClient) -> None:
    here.save(ASIDE, {"reason": "Known."}, press="Set it aside")
    page = here.see(f"{LIST}earthing-unknown/")
    here.submit_on(page, press="Bring it back")
    assert here.submit_on(page, press="Bring it back").status == 404


def test_a_remark_that_fails_does_not_hide_the_others(
    here: CheckedClient, monkeypatch: pytest.MonkeyPatch, database: Path
) -> None:
    def fails(_seen: object) -> list[Remark]:
        raise ZeroDivisionError

    unit = UNITS["seal-missing"]
    broken = Unit(kind=unit.kind, title=unit.title, sections=unit.sections, look=fails)  # type: ignore[arg-type]
    monkeypatch.setattr(service, "UNITS", {**UNITS, "seal-missing": broken})
    monkeypatch.setattr(homes, "memory", Memory())
    shutil.copy(database, database.with_suffix(".copy"))
    page = here.see(LIST)
    assert "This could not be looked for" in page.main
    assert UNITS["earthing-unknown"].title in page.main
