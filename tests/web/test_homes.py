"""The list of homes, a new one, its facts, deleting it and bringing it back."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.domain.record import Record
from tests.pages import CheckedClient

Stored = Callable[..., Record]


def test_with_no_home_one_is_asked_for(visitor: CheckedClient) -> None:
    page = visitor.see("/")
    assert page.h1 == "Homes"
    assert "No home is recorded yet." in page.main
    assert visitor.see(page.links["Add your home"]).h1 == "A new home"


def test_the_only_home_is_opened_at_once(
    here: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> None:
    assert here.see("/").h1 == "A home"
    keep(houses["h01"])
    page = here.see("/")
    assert page.h1 == "Homes"
    assert here.see(page.links["A home"]).h1 == "A home"


def test_a_new_home_begins_with_its_name_and_the_network(
    visitor: CheckedClient, stored: Stored
) -> None:
    page = visitor.save("/homes/new", name="Our <old> house!", nation="wales")
    assert page.h1 == "Our <old> house!"
    assert "Nothing is written down yet." in page.main
    record = stored("our-old-house")
    assert record.home.nation == "wales"
    assert [source.kind for source in record.sources] == ["network"]
    next_step = page.links["Write down what is in the intake cupboard"]
    assert visitor.see(next_step).h1 == "Intake"


@pytest.mark.parametrize(
    ("name", "ref"), [("道", "home"), ("-- --", "home"), ("x" * 90, "x" * 28)]
)
def test_a_home_of_any_name_gets_a_reference(
    visitor: CheckedClient, stored: Stored, name: str, ref: str
) -> None:
    visitor.save("/homes/new", name=name)
    assert stored(ref).home.name == name
    visitor.save("/homes/new", name=name)
    assert stored(f"{ref}-2").home.name == name


def test_a_home_without_a_name_is_refused(visitor: CheckedClient) -> None:
    page = visitor.submit("/homes/new", name=" ", nation="scotland")
    assert (page.status, page.error("name")) == (422, "Enter a name.")
    assert page.value("nation") == "scotland"
    page = visitor.submit("/homes/new", name="x" * 121)
    assert page.error("name") == "Enter at most 120 characters; there are 121."
    assert "No home is recorded yet." in visitor.see("/homes/").main


def test_the_facts_are_changed_and_can_be_undone(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.save("/homes/H1/edit", name="The mill", ze_ohm="0,35", phases="single")
    assert page.h1 == "The mill"
    assert "0.35 Ω" in page.main
    assert page.undo == "Changed the facts of the home."
    here.go_on(here.submit_on(page, press="Undo"))
    assert stored() == small


def test_facts_that_cannot_be_are_refused(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.submit("/homes/H1/edit", storeys="99", mpan="12345", notes="typed")
    assert page.status == 422
    assert page.error("storeys") == "Enter a number from 1 to 20."
    assert page.value("notes") == "typed"
    page = here.submit_on(page, storeys="2")
    assert page.status == 422
    assert "13 digits" in page.error("mpan")
    assert stored() == small


def test_facts_changed_by_two_are_shown_to_the_second(
    here: CheckedClient, stored: Stored
) -> None:
    mine, theirs = here.see("/homes/H1/edit"), here.see("/homes/H1/edit")
    here.go_on(here.submit_on(theirs, name="Theirs"))
    page = here.submit_on(mine, name="Mine")
    assert page.status == 409
    rows = [" ".join(e.itertext()).split() for e in page.one("table").iter("tr")]
    assert rows[1:] == [["Name", "Theirs", "Mine"]]
    assert page.value("name") == "Mine"
    assert stored().home.name == "Theirs"
    assert here.go_on(here.submit_on(page)).h1 == "Mine"


def test_a_home_takes_another_reference_that_is_free(
    here: CheckedClient, keep: Callable[[Record], int], houses: dict[str, Record]
) -> None:
    keep(houses["h01"])
    page = here.submit("/homes/H1/edit", ref="h01")
    assert page.status == 422
    assert page.error("ref").startswith("There is a home “h01” already")
    page = here.go_on(here.submit_on(page, ref="mill"))
    assert page.h1 == "A home"
    assert here.see("/homes/mill/rooms/R1/").h1 == "Kitchen"
    here.go_on(here.submit_on(page, press="Undo"))
    assert here.see("/homes/H1/").h1 == "A home"


def test_a_home_is_deleted_and_brought_back(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.see("/homes/H1/delete")
    assert page.h1 == "Delete A home?"
    page = here.go_on(here.submit_on(page, press="Delete the home"))
    assert page.undo == "The home “A home” was deleted."
    here.see("/homes/H1/", 404)
    here.see("/homes/H1/rooms/", 404)
    back = here.go_on(here.submit_on(page, press="Bring it back"))
    assert back.h1 == "A home"
    assert stored() == small
    assert here.see("/homes/?away=H1").undo == ""


def test_only_a_deleted_home_is_said_to_be_deleted(here: CheckedClient) -> None:
    assert here.see("/homes/?away=H1").undo == ""
    assert here.see("/homes/?away=your+data").undo == ""
    assert here.send("/homes/bring-back", {"token": "H1"}).status == 404
    assert here.send("/homes/bring-back", {}).status == 404


@pytest.mark.parametrize("page", ["", "edit", "delete", "document", "document.json"])
def test_a_home_that_is_not_there_is_not_found(
    visitor: CheckedClient, page: str
) -> None:
    assert (
        "There is no home “nowhere” here"
        in visitor.see(f"/homes/nowhere/{page}", 404).main
    )


def test_the_next_step_follows_the_work(
    visitor: CheckedClient,
) -> None:
    visitor.save("/homes/new", name="New")
    visitor.save("/homes/new/new/intake?kind=tails", owner="consumer")
    page = visitor.see("/homes/new/")
    assert visitor.see(page.links["Write down the board"]).h1 == "New board"
    visitor.save("/homes/new/new/boards", name="Main")
    page = visitor.see("/homes/new/")
    step = visitor.see(page.links["Enter the ways of Main"])
    assert step.h1 == "Ways of Main"
    visitor.go_on(visitor.submit_on(step, {"new~1-kind": "rcbo"}))
    page = visitor.see("/homes/new/")
    rooms = visitor.see(page.links["List the rooms in the order you walk"])
    assert rooms.h1 == "Rooms in walking order"
