"""Several homes: the list, what is due where, copies, homes put aside or deleted."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta

import pytest
from icalendar import Calendar

from app.config import Config
from app.domain.record import Record, Work
from app.services import portfolio
from app.services.homes import bring_back, open_home, put_away
from app.store import homes, tables
from app.store.engine import make_engine, reading, writing
from tests import builders as b
from tests.pages import CheckedClient

Keep = Callable[[Record], int]
Stored = Callable[..., Record]


def let(ref: str, name: str, day: date) -> Record:
    return b.home(ref=ref, name=name, tenure="let", nation="wales", inspected_on=day)


def test_the_list_says_what_each_home_needs(here: CheckedClient, keep: Keep) -> None:
    keep(let("H2", "The flat", date(2015, 1, 1)))
    page = here.see("/homes/")
    assert "The flat Next: Write down what is in the intake cupboard" in page.main
    assert "1 to do now" in page.main or "One thing to do now" in page.main
    assert "For a home that is let" not in here.see("/homes/H1/reminders/").main


def test_the_list_goes_on_after_twenty(visitor: CheckedClient, keep: Keep) -> None:
    for number in range(23):
        keep(b.home(ref=f"N{number:02}", name=f"Home {number:02}"))
    page = visitor.see("/homes/")
    assert "Home 19" in page.main
    assert "Home 20" not in page.main
    assert "Home 22" in visitor.see(page.links["Further homes"]).main
    assert visitor.see("/homes/?first=x").status == 200
    assert visitor.see("/homes/?first=-5").status == 200


def test_what_is_due_where(visitor: CheckedClient, keep: Keep) -> None:
    work = Work(ref="W1", name="New shower", told="no")
    keep(let("H1", "The flat", date(2015, 1, 1)).having(works=(work,)))
    keep(b.home(ref="H2", name="Ours", tenure="owner", inspected_on=date(2015, 1, 1)))
    page = visitor.see("/homes/due")
    duty = "For a home that is let, a new report was to be there by 1 January 2020."
    assert duty in page.main
    assert "Recommended by 1 January 2025." in page.main
    assert page.main.index("The flat") < page.main.index("Ours")
    assert "The flat: New shower" in page.links
    events = Calendar.from_ical(visitor.get("/homes/due.ics").get_data()).walk("VEVENT")
    assert {str(e["summary"]).rpartition("(")[2] for e in events} == {
        "The flat)", "Ours)"
    }  # fmt: skip


def test_a_change_is_seen_in_the_list_at_once(here: CheckedClient) -> None:
    before = here.see("/homes/").main
    here.save("/homes/H1/edit", tenure="let", nation="wales", inspected_on="2001-01-01")
    assert "by 1 January 2006" in here.see("/homes/").main
    assert "by 1 January 2006" not in before


def test_a_copy_has_everything_and_its_own_name(
    here: CheckedClient, stored: Stored, small: Record
) -> None:
    page = here.submit("/homes/H1/copy", press="Make the copy", name="")
    assert "Enter a name for the copy." in page.error("name")
    after = here.save("/homes/H1/copy", press="Make the copy", name="Next door’s")
    assert after.h1 == "Next door’s"
    copy = stored("next-door-s")
    assert copy.having(home=small.home) == small


def test_a_home_is_put_aside_and_taken_up_again(here: CheckedClient) -> None:
    page = here.go_on(here.submit("/homes/H1/", press="Put it aside"))
    assert page.undo == "The home “A home” was put aside."
    assert "Every home is put aside." in page.main
    assert "No home is recorded yet" not in page.main
    assert "Put aside A home" in page.main
    assert "A home" not in here.see("/homes/due").main
    page = here.go_on(here.submit("/homes/H1/", press="Take it up again"))
    assert page.undo == "The home “A home” was taken up again."
    assert "Put aside" not in page.main
    page = here.go_on(here.submit_on(page, press="Put it aside"))
    page = here.go_on(here.submit_on(page, press="Take it up again"))
    assert "Put aside" not in page.main
    assert here.see("/homes/?aside=H9").undo == ""


def test_a_deleted_home_comes_back_within_thirty_days(here: CheckedClient) -> None:
    here.go_on(here.submit("/homes/H1/delete", press="Delete the home"))
    page = here.see("/homes/")
    assert "can be brought back until" in page.main
    back = here.go_on(here.submit_on(page, press="Bring back A home"))
    assert back.h1 == "A home"


def test_after_thirty_days_it_is_gone_and_no_other(
    here: CheckedClient, keep: Keep, config: Config, small: Record
) -> None:
    here.save("/homes/H1/rooms/R1/edit", name="Scullery")
    key = keep(small.having(home=small.home.model_copy(update={"ref": "H2"})))
    here.submit("/homes/H1/delete", press="Delete the home")
    now = datetime.now(UTC)
    assert portfolio.clear_deleted(config, now + timedelta(days=29)) == ()
    assert portfolio.clear_deleted(config, now + timedelta(days=31)) == ("H1",)
    assert len(list(config.backups.glob("*before-removal*.sqlite3"))) == 1
    engine = make_engine(config.database)
    with reading(engine) as connection:
        assert open_home(connection, "H2").record.rooms == small.rooms
        for table in tables.metadata.sorted_tables:
            if "home_id" in table.c:
                kept = connection.execute(table.select()).mappings()
                assert {row["home_id"] for row in kept} <= {key}, table.name
    with writing(engine) as connection:
        assert homes.deleted_homes(connection) == ()


def test_what_was_brought_back_while_the_copy_is_made_stays(
    here: CheckedClient, config: Config, monkeypatch: pytest.MonkeyPatch
) -> None:
    here.submit("/homes/H1/delete", press="Delete the home")
    late = datetime.now(UTC) + timedelta(days=31)

    def copied(*_: object, **__: object) -> None:
        with writing(make_engine(config.database)) as connection:
            bring_back(connection, "H1")
            put_away(connection, open_home(connection, "H1"), late)

    monkeypatch.setattr(portfolio, "back_up", copied)
    assert portfolio.clear_deleted(config, late) == ()
    with reading(make_engine(config.database)) as connection:
        assert [home.ref for home in homes.deleted_homes(connection)] == ["H1"]


def test_what_has_no_day_yet_stands_there_too(here: CheckedClient) -> None:
    page = here.see("/homes/due")
    head, _, rest = page.main.partition("No day yet")
    assert head
    assert "Press the test button" in rest
    assert "No day is known." in rest
