"""What a hurried person must not be told wrongly: every feed is named, none hidden."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pytest

from app.domain.edits import replaced
from app.domain.record import Record
from app.interchange import to_document
from app.services.homes import open_home, save
from app.store.engine import make_engine, writing
from tests import builders as b
from tests.pages import CheckedClient, Page, page_of

Keep = Callable[[Record], int]
Stored = Callable[..., Record]


def landlord() -> b.Part:
    return b.source("LAND", kind="landlord", name="Landlord's riser", owner="landlord")


def test_a_feed_without_a_circuit_is_named_first(
    visitor: CheckedClient, keep: Keep
) -> None:
    on_both = (b.one_way(b.circuit("C1", b.socket("P1"))), b.tie("P1", "LAND"))
    keep(b.home(*on_both, landlord()))
    said = visitor.see("/homes/H1/points/P1/").main
    assert "it has 2 feeds: it is on Circuit C1 (C1), from Way" not in said
    assert "on Circuit C1 (C1)" in said
    assert "fed by Landlord's riser (LAND), without a circuit of this home" in said
    assert "Each of them has to be off." in said


def test_one_feed_is_not_called_several(visitor: CheckedClient, keep: Keep) -> None:
    keep(b.home(b.one_way(b.circuit("C1", b.socket("P1")))))
    said = visitor.see("/homes/H1/points/P1/").main
    assert "By the record it is on Circuit C1 (C1)" in said
    assert "has to be off" not in said


def test_two_supplies_further_up_are_one_way_to_switch(
    visitor: CheckedClient, keep: Keep
) -> None:
    change = b.device(
        "CO", b.way("W1", b.circuit("C1", b.socket("P1"))), kind="changeover",
        second_feed="GEN",
    )  # fmt: skip
    generator = b.source("GEN", kind="generator", name="Genset")
    keep(b.home(b.street(b.board("B1", change)), generator))
    said = visitor.see("/homes/H1/points/P1/").main
    assert "on Circuit C1 (C1), from Circuit-breaker W1 (W1), fed by Genset" in said
    assert "it has 2 feeds" in said


def test_two_paths_to_one_way_are_told_apart_from_two_feeds(
    visitor: CheckedClient, keep: Keep
) -> None:
    way = b.way("W1", b.circuit("C1", b.socket("P1")))
    change = b.device("CO", way, kind="changeover", second_feed="TAIL2")
    second = b.tails("TAIL2", fed_from="MET")
    keep(b.home(b.street(b.board("B1", change)), second))
    said = visitor.see("/homes/H1/points/P1/").main
    assert "from Circuit-breaker W1 (W1); further up that has 2 feeds" in said
    assert "Each of them has to be off." not in said


@pytest.mark.parametrize(
    ("kind", "guards"),
    [
        ("fused_connection_unit", "it guards what is behind it, not its own supply"),
        ("double_socket", "whether it guards what is behind the point too is not"),
    ],
)
def test_an_rcd_in_a_point_is_said_to_guard_no_more_than_is_known(
    visitor: CheckedClient, keep: Keep, kind: str, guards: str
) -> None:
    point = b.point("P1", kind=kind, residual_current_ma=30)
    keep(b.home(b.one_way(b.circuit("C1", point))))
    said = visitor.see("/homes/H1/points/P1/").main
    assert f"RCD in the point itself 30 mA: {guards}" in said


def test_a_room_names_what_feeds_it_past_the_boards(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(
        b.home(b.room("R1"), landlord(), b.light("P1", room="R1"), b.tie("P1", "LAND"))
    )
    said = visitor.see("/homes/H1/rooms/R1/").main
    assert "Landlord's riser feeds it too, past the boards." in said
    assert "Landlord's riser (no circuit)" in said
    assert "treat as live" not in said


def test_every_chain_is_drawn(visitor: CheckedClient, keep: Keep) -> None:
    sources = [b.source(f"S{n}", kind="other", name=f"Feed {n}") for n in range(9)]
    ties = [b.tie("P1", f"S{n}") for n in range(9)]
    keep(b.home(*sources, b.light("P1"), *ties))
    page = visitor.see("/homes/H1/points/P1/")
    for n in range(9):
        assert f"From Feed {n}" in page.main


def test_a_board_names_every_feed_from_outside_it(
    visitor: CheckedClient, keep: Keep
) -> None:
    night = b.intake("NIGHT", kind="contactor", when="off_peak", name="Night contactor")
    both = b.street(night, b.board("B1", b.main_switch("MS"), name="Board"))
    extra = b.device("W9", board="B1", kind="circuit_breaker", fed_from="NIGHT")
    generator = b.source("GEN", kind="generator", name="Genset", when="backup")
    change = b.device("CO", board="B1", kind="changeover", second_feed="GEN")
    keep(b.home(both, extra, generator, change))
    said = visitor.see("/homes/H1/boards/B1/").main
    assert "Night contactor (off-peak hours only)" in said
    assert "Genset (when the network is off)" in said
    assert "switching off one leaves the rest" in said
    assert "Night contactor" in visitor.see("/homes/H1/boards/").main


def test_a_circuit_shows_what_is_on_it_in_part(
    visitor: CheckedClient, keep: Keep
) -> None:
    two = (b.way("W1", b.circuit("C1", b.light("P1"))), b.way("W2", b.circuit("C2")))
    ties = (b.tie("P1", "C2", "neutral"), b.tie("P1", "C2", "present"))
    keep(b.home(b.street(b.board("B1", b.main_switch("MS", *two))), *ties))
    other = visitor.see("/homes/H1/circuits/C2/").main
    assert "Light: only its neutral returns here" in other
    assert "Light: its conductors are in that box too" in other
    assert "Light: its neutral returns elsewhere" in (
        visitor.see("/homes/H1/circuits/C1/").main
    )
    way = visitor.see("/homes/H1/devices/W1/").main
    assert "its neutral returns by Circuit C2" in way


def test_a_neutral_borrowed_before_the_point_is_warned_of(
    visitor: CheckedClient, keep: Keep
) -> None:
    behind = b.circuit("C1", b.switch("P1", b.light("P2")))
    board = b.board("B1", b.main_switch("MS", b.way("W1", behind), b.way("W2")))
    other = b.circuit("C2", ways=("W2",), name="Upstairs lights")
    keep(b.home(b.street(board), other, b.tie("P1", "C2", "neutral")))
    said = visitor.see("/homes/H1/points/P2/").main
    assert "Its neutral belongs to Upstairs lights." in said


def test_a_source_that_can_feed_back_is_warned_of(
    visitor: CheckedClient, keep: Keep
) -> None:
    battery = b.source("BAT", kind="battery", name="Battery", when="backup", joins="C1")
    keep(b.home(b.room("R1"), b.one_way(b.circuit("C1", b.socket("P1", room="R1"))),
                battery))  # fmt: skip
    for place in ("points/P1", "devices/W1", "rooms/R1"):
        said = visitor.see(f"/homes/H1/{place}/").main
        assert "Battery: by the record it may feed back into this supply" in said


def test_a_way_says_what_it_feeds_and_how_little_is_known(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.one_way(b.circuit("C1", b.socket("P1", tied="0")))))
    way = visitor.see("/homes/H1/devices/W1/").main
    assert "By the record it feeds one circuit and one point." in way
    assert "For one point of these that is known from a label at best." in way
    assert "it feeds one circuit, one device and one point" in (
        visitor.see("/homes/H1/devices/MS/").main
    )


def test_an_owner_not_known_is_no_change_of_hands(
    visitor: CheckedClient, keep: Keep
) -> None:
    keep(b.home(b.source("GRID", b.cutout("CUT", b.tails("T", owner="unknown")))))
    said = visitor.see("/homes/H1/intake/").main
    assert "it is not known whether it changes hands." in said
    assert "is not known) it changes hands" not in said


def test_who_may_open_follows_the_recorded_owner(
    visitor: CheckedClient, keep: Keep
) -> None:
    switch = b.intake("SW", kind="isolator", owner="network")
    keep(b.home(b.source("GRID", switch)))
    said = visitor.see("/homes/H1/intake/").main
    assert "Not you." in said
    assert "You may switch it" not in said


def test_no_fault_found_is_not_called_complete(visitor: CheckedClient) -> None:
    visitor.save("/homes/new", name="Fresh")
    said = visitor.see("/homes/fresh/open-questions/").main
    assert "None of the checks found anything." in said
    assert "That does not make the record complete." in said


def test_two_ways_of_one_circuit_do_not_undo_each_other(
    visitor: CheckedClient, keep: Keep, stored: Stored
) -> None:
    both = b.board("B1", b.main_switch("MS", b.way("W1"), b.way("W2")))
    keep(b.home(b.street(both), b.circuit("C1", name="Cooker", ways=("W1", "W2"))))
    visitor.save("/homes/H1/boards/B1/ways", {"W1-feeds": "Oven"})
    assert stored().circuits[0].name == "Oven"


def test_one_of_several_circuits_is_not_changed_in_the_table(
    visitor: CheckedClient, keep: Keep, stored: Stored
) -> None:
    two = (b.circuit("C1", name="One"), b.circuit("C2", name="Two"))
    keep(b.home(b.street(b.board("B1", b.way("W1", *two)))))
    page = visitor.see("/homes/H1/boards/B1/ways")
    assert page.value("W1-feeds") == "More than one: see the way"
    refused = visitor.submit("/homes/H1/boards/B1/ways", {"W1-feeds": "x"})
    assert refused.status == 422
    assert "W1 feeds more than one circuit" in refused.main
    assert [c.name for c in stored().circuits] == ["One", "Two"]


def test_a_form_may_be_sent_again_after_its_change_was_undone(
    here: CheckedClient, stored: Stored
) -> None:
    url, fields = "/homes/H1/new/rooms", {"name": "Attic", "ref": "R9", "once": "o"}
    form = here.see(url).values() | {name: [value] for name, value in fields.items()}
    form.pop("csrf_token")
    assert here.send(url, form).status == 303
    assert here.send("/homes/H1/changes/undo", {"token": "1"}).status == 303
    assert "R9" not in stored().by_ref
    assert here.send(url, form).status == 303
    assert "R9" in stored().by_ref


def test_deleting_asks_again_when_more_would_go_than_was_shown(
    here: CheckedClient, stored: Stored
) -> None:
    url = "/homes/H1/boards/B1/delete"
    mark = here.see(url).value("mark", press="Delete")
    here.save("/homes/H1/new/devices?kind=rcbo&board=B1", way="3")
    assert here.send(url, {"mark": mark}).status == 409
    assert len(stored().devices) == 5


def test_an_undo_that_would_take_the_reference_of_another_home_is_refused(
    here: CheckedClient, stored: Stored
) -> None:
    here.save("/homes/H1/edit", ref="elsewhere")
    assert here.go_on(_imported(here, "H1")).status == 200
    refused = here.send("/homes/elsewhere/changes/undo", {"token": "1"})
    assert refused.status == 409
    assert stored("elsewhere").home.ref == "elsewhere"


def _imported(client: CheckedClient, ref: str) -> Page:
    text = to_document(b.home(ref=ref))
    file = (BytesIO(text.encode()), "home.json")
    data = {"csrf_token": client.token(), "document": file, "beside": "yes"}
    return page_of(client.post("/import", data=data))


@pytest.mark.parametrize("number", ["1", "999", "x", "-1", "1" * 40])
def test_only_the_newest_change_is_offered_for_undo(
    here: CheckedClient, number: str
) -> None:
    here.save("/homes/H1/rooms/R1/edit", name="Scullery")
    here.save("/homes/H1/rooms/R1/edit", name="Pantry")
    page = here.see(f"/homes/H1/rooms/R1/?done={number}")
    assert "Undo" not in page.main
    assert "Undo" in here.see("/homes/H1/rooms/R1/?done=2").main


def test_old_changes_can_still_be_reached(here: CheckedClient, database: Path) -> None:
    with writing(make_engine(database)) as connection:
        for number in range(101):
            home = open_home(connection, "H1")
            room = home.record.rooms[0]
            named = room.model_copy(update={"name": f"Name {number}"})
            renamed = replaced(home.record, room.ref, named)
            save(connection, home, renamed, f"Change number {number}")
    page = here.see("/homes/H1/changes/")
    pages = [page]
    while older := pages[-1].links.get("Older changes"):
        pages.append(here.see(older))
    assert len(pages) == 3
    assert "Change number 0" in pages[-1].main
    assert not any("Change number 0" in each.main for each in pages[:-1])
    assert "Undo" in pages[-1].main


def test_a_large_room_is_shown_in_part(visitor: CheckedClient, keep: Keep) -> None:
    points = [b.socket(f"P{n}", room="R1") for n in range(103)]
    keep(b.home(b.room("R1"), *points))
    page = visitor.see("/homes/H1/rooms/R1/points")
    assert "3 more are not in this table" in page.main
    assert page.value("P99-kind") == "socket"
    assert "P100-kind" not in page.values()
