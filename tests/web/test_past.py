"""The record as it stood, two moments compared, and the history of single things."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from io import BytesIO
from pathlib import Path

import pytest
from sqlalchemy import update

from app.domain.record import Record
from app.interchange import document_from, from_document, to_document
from app.store import tables
from app.store.engine import make_engine, writing
from tests.pages import CheckedClient, text_of

Stored = Callable[..., Record]
EDIT = "/homes/H1/points/P1/edit"
CHANGES = "/homes/H1/changes/"
PAST = "/homes/H1/past/"


@pytest.fixture
def lived_in(here: CheckedClient, database: Path) -> CheckedClient:
    """A home recorded since 1 March 2026, with a change on 2 March and one in June."""
    here.save(EDIT, note="first")
    here.save("/homes/H1/rooms/R1/edit", name="Scullery")
    with writing(make_engine(database)) as connection:
        began = {"began_at": "2026-03-01T09:00:00+00:00"}
        connection.execute(update(tables.home).values(began))
        for key, at in ((1, "2026-03-02T10:30:20"), (2, "2026-06-01T22:59:59")):
            this = tables.change.c.id == key
            values = {"at": f"{at}+00:00"}
            connection.execute(update(tables.change).where(this).values(values))
    return here


def as_it_stood(client: CheckedClient, query: str) -> Record:
    return from_document(client.get(f"{PAST}record.json?{query}").get_data())


def test_a_moment_is_asked_for(here: CheckedClient) -> None:
    page = here.see(PAST)
    assert page.h1 == "The record as it stood"
    assert page.by_id["day"].get("value")
    assert "The record of this home begins on" in page.main


def test_it_is_shown_and_given_as_it_stood(
    lived_in: CheckedClient, small: Record, stored: Stored
) -> None:
    page = lived_in.see(f"{PAST}?day=2026-03-01")
    assert page.h1 == "As it stood on 1 March 2026, 23:59"
    assert "It has been changed since." in page.main
    assert "1 board, 2 circuits, 3 points and" in page.main
    assert "Kitchen (R1)" in page.main
    assert as_it_stood(lived_in, "day=2026-03-01") == small
    assert as_it_stood(lived_in, "day=2026-06-01") == stored()
    response = lived_in.get(page.links["Download it as a document"])
    assert response.get_data(as_text=True) == to_document(small)


def test_a_time_counts_to_the_end_of_its_minute(
    lived_in: CheckedClient, small: Record
) -> None:
    assert as_it_stood(lived_in, "day=2026-03-02&time=10:29") == small
    then = as_it_stood(lived_in, "day=2026-03-02&time=10:30")
    assert (then.points[0].note, then.rooms) == ("first", small.rooms)


def test_the_day_is_that_of_the_united_kingdom(
    lived_in: CheckedClient, small: Record
) -> None:
    """In summer 22:59:59 UTC is the last second of the day."""
    assert as_it_stood(lived_in, "day=2026-05-31").rooms == small.rooms
    assert as_it_stood(lived_in, "day=2026-06-01&time=23:58").rooms == small.rooms
    assert as_it_stood(lived_in, "day=2026-06-01").rooms[0].name == "Scullery"


def test_nothing_changed_since_is_said(here: CheckedClient) -> None:
    today = here.see(PAST).by_id["day"].get("value")
    assert "Nothing has been changed since." in here.see(f"{PAST}?day={today}").main


@pytest.mark.parametrize(
    ("query", "box", "said"),
    [
        ("day=x", "day", "Enter a day, such as 2026-03-01."),
        ("day=2026-02-30", "day", "Enter a day"),
        ("time=10:00", "day", "Choose the day, too."),
        ("day=2026-03-02&time=25:00", "time", "Enter a time, such as 14:30"),
        ("day=1999-12-31", "day", "The record of this home begins on 1 March 2026"),
        ("day=0001-01-01", "day", "The record of this home begins on"),
        ("day=9999-12-31", "day", "That day is still to come."),
    ],
)
def test_what_is_no_moment_of_the_record_is_said_beside_it(
    lived_in: CheckedClient, query: str, box: str, said: str
) -> None:
    page = lived_in.see(f"{PAST}?{query}", status=422)
    assert said in page.error(box)
    assert lived_in.get(f"{PAST}record.json?{query}").status_code == 422


def test_two_days_are_compared(lived_in: CheckedClient) -> None:
    query = "from_day=2026-03-01&to_day=2026-06-01"
    page = lived_in.see(f"{PAST}compare?{query}")
    assert "Room Scullery (R1): changed" in page.main
    assert "Name: “Kitchen” → “Scullery”" in page.main
    assert "Note: nothing → “first”" in page.main
    turned = "from_day=2026-06-01&to_day=2026-03-01"
    assert lived_in.see(f"{PAST}compare?{turned}").all("h3") != []
    same = "from_day=2026-03-03&to_day=2026-03-04"
    assert "Nothing differs." in lived_in.see(f"{PAST}compare?{same}").main
    page = lived_in.see(f"{PAST}compare?from_day=x", status=422)
    assert "Enter a day" in page.error("from_day")


def test_a_thing_has_a_history(lived_in: CheckedClient) -> None:
    page = lived_in.see("/homes/H1/rooms/R1/")
    page = lived_in.see(page.links["History of Scullery"])
    assert page.h1 == "History of Scullery (R1)"
    assert "Name: “Kitchen” → “Scullery”" in page.main
    assert [text_of(head) for head in page.all("h2")] == ["1 June 2026"]
    assert "23:59, on this computer" in page.main
    assert "not been changed since" in lived_in.see(f"{CHANGES}of/R2").main
    lived_in.see(f"{CHANGES}of/NEVER", status=404)


def test_a_history_follows_a_new_reference(here: CheckedClient) -> None:
    here.save(EDIT, note="first")
    here.save(EDIT, ref="LAMP")
    page = here.see(f"{CHANGES}of/LAMP")
    assert "Reference: “P1” → “LAMP”" in page.main
    assert "Note: nothing → “first”" in page.main
    assert (
        "Nothing in the record has this reference now."
        in here.see(f"{CHANGES}of/P1").main
    )


def test_changes_are_sifted(lived_in: CheckedClient) -> None:
    assert "Changed room" in lived_in.see(f"{CHANGES}?sort=room").main
    assert "Changed point" not in lived_in.see(f"{CHANGES}?sort=room").main
    assert "Changed point" in lived_in.see(f"{CHANGES}?text=NOTE").main
    assert "Changed room" not in lived_in.see(f"{CHANGES}?text=note").main
    assert "Changed room" in lived_in.see(f"{CHANGES}?text=kitchen+r1").main
    page = lived_in.see(f"{CHANGES}?text=100%25_")
    assert "No change is like that." in page.main
    assert page.by_id["text"].get("value") == "100%_"


def test_what_stands_in_the_way_is_named_with_its_link(here: CheckedClient) -> None:
    here.save("/homes/H1/new/rooms", name="Loft")
    here.save(EDIT, room="R3")
    here.save(EDIT, note="of no account")
    page = here.send(f"{CHANGES}undo", {"token": "1"})
    assert (page.status, page.h1) == (409, "Added room Loft (R3).")
    assert "something else needs what it did" in page.main
    (link,) = [url for url in page.links.values() if url == f"{CHANGES}2"]
    assert "Room: Kitchen (R1) → Loft (R3)" in here.see(link).main
    here.send(f"{CHANGES}undo", {"token": "3"})
    here.send(f"{CHANGES}undo", {"token": "2"})
    assert here.send(f"{CHANGES}undo", {"token": "1"}).status == 303


def test_what_is_gone_since_is_named_as_what_is_to_be_undone_first(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/new/rooms", name="Loft")
    here.save("/homes/H1/new/points", kind="light", room="R3")
    point = stored().points[-1].ref
    here.save(f"/homes/H1/points/{point}/delete", press="Delete")
    here.save("/homes/H1/rooms/R3/delete", press="Delete")
    page = here.send(f"{CHANGES}undo", {"token": "3"})
    assert page.status == 409
    assert "what it would bring back needs what is gone since" in page.main
    assert "something else needs" not in page.main
    assert f"{CHANGES}4" in page.links.values()
    here.send(f"{CHANGES}undo", {"token": "4"})
    assert here.send(f"{CHANGES}undo", {"token": "3"}).status == 303


def test_what_was_taken_back_does_not_stand_in_the_way(here: CheckedClient) -> None:
    here.save(EDIT, note="first")
    here.save(EDIT, note="second")
    here.send(f"{CHANGES}undo", {"token": "2"})
    assert "Undo" in [text_of(b) for b in here.see(f"{CHANGES}1").all("button")]
    here.send(f"{CHANGES}undo", {"token": "3"})
    page = here.see(f"{CHANGES}1")
    assert "Undo" not in [text_of(button) for button in page.all("button")]
    assert f"{CHANGES}2" in page.links.values()
    assert f"{CHANGES}4" not in page.links.values()


def test_a_change_that_is_not_there(here: CheckedClient) -> None:
    here.see(f"{CHANGES}99", status=404)


def test_this_computer_is_given_a_name(here: CheckedClient) -> None:
    here.save("/phones/", name="  Study ")
    here.save(EDIT, note="first")
    page = here.see(CHANGES)
    assert "from Study" in page.main
    assert "carry the name “Study”" in page.main
    page = here.submit("/phones/", name="x" * 41)
    assert (page.status, "at most 40" in page.error("name")) == (422, True)


def test_a_history_goes_along_and_comes_back(
    lived_in: CheckedClient, stored: Stored, small: Record
) -> None:
    data = lived_in.get("/homes/H1/document.json?history=yes").get_data()
    document = document_from(data)
    assert document.history is not None
    assert len(document.history.changes) == 2
    file = (BytesIO(data), "home.json")
    sent = lived_in.post(
        "/import",
        data={"csrf_token": lived_in.token(), "document": file, "beside": "yes"},
    )
    assert sent.headers["Location"].endswith("/homes/H1-2/")
    then = lived_in.get("/homes/H1-2/past/record.json?day=2026-03-01").get_data()
    assert from_document(then) == small
    page = lived_in.see("/homes/H1-2/changes/")
    assert "Taken in as H1-2; it was H1." in page.main
    assert "from another computer" in page.main


def test_a_clock_that_was_set_back_changes_no_order(
    lived_in: CheckedClient, database: Path, small: Record
) -> None:
    lived_in.save("/homes/H1/rooms/R2/edit", name="Passage")
    early = datetime(2026, 3, 1, 12, tzinfo=UTC) - timedelta(hours=1)
    with writing(make_engine(database)) as connection:
        this = tables.change.c.id == 3
        values = {"at": early.isoformat(timespec="seconds")}
        connection.execute(update(tables.change).where(this).values(values))
    assert as_it_stood(lived_in, "day=2026-03-01") == small
    assert as_it_stood(lived_in, "day=2026-05-01").rooms == small.rooms
    assert as_it_stood(lived_in, "day=2026-06-01").rooms[1].name == "Passage"
