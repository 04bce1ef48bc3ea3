from __future__ import annotations

from typing import get_args

import pytest

from app.domain.kinds import POINT_KINDS
from app.domain.record import Record, Room
from app.domain.record.choices import ROOM_KINDS, STOREYS
from app.domain.usual import (
    MOST_PLACES,
    PLACES,
    PLACES_FORGOTTEN,
    PLACES_IN,
    POINTS_FORGOTTEN,
    STANDS,
    USUAL,
    Stands,
    forgotten_kinds,
    forgotten_places,
    not_listed,
    rooms_for,
    stands,
    usual_kinds,
    usual_places,
)
from tests import builders as b


def room_of(record: Record) -> Room:
    [room] = record.rooms
    return room


def test_every_kind_of_room_has_kinds_of_point_that_there_are() -> None:
    assert set(USUAL) == set(ROOM_KINDS)
    for kinds in USUAL.values():
        assert kinds
        assert len(set(kinds)) == len(kinds)
        assert set(kinds) <= set(POINT_KINDS)
    assert set(STANDS) <= set(POINT_KINDS)
    assert set(POINTS_FORGOTTEN) <= set(POINT_KINDS)


def test_what_nobody_has_identified_can_always_be_listed() -> None:
    for kind in ROOM_KINDS:
        assert usual_kinds(kind)[-1] == "unknown"


def test_a_kitchen_often_has_what_a_bedroom_has_not() -> None:
    ours = {"cooker_outlet", "fused_connection_unit", "extractor", "boiler"}
    assert ours <= set(USUAL["kitchen"])
    assert not ours & set(USUAL["bedroom"])


@pytest.mark.parametrize("kind", ROOM_KINDS)
def test_some_places_are_offered_in_every_room_for_whatever_stands_there(
    kind: str,
) -> None:
    for where in PLACES:
        places = usual_places(kind, where)
        assert 4 <= len(places) <= MOST_PLACES
        assert len(set(places)) == len(places)


def test_the_rooms_own_places_come_first() -> None:
    assert set(PLACES) == set(get_args(Stands))
    for (kind, where), places in PLACES_IN.items():
        assert usual_places(kind, where)[: len(places)] == places
    assert usual_places("office", "high")[0] == "ceiling"
    assert (stands("light"), stands("switch"), stands("boiler")) == (
        "high",
        "door",
        "low",
    )


def test_only_what_is_not_listed_is_offered() -> None:
    empty = b.home(b.room("R1", kind="landing"))
    assert not_listed(empty, room_of(empty)) == USUAL["landing"]
    some = b.home(b.room("R1", kind="landing"), b.light("P1", room="R1"))
    assert not_listed(some, room_of(some)) == (
        "double_socket",
        "two_way_switch",
        "smoke_alarm",
    )


def test_what_does_the_same_is_not_offered_beside_it() -> None:
    record = b.home(
        b.room("R1", kind="bedroom"),
        b.socket("P1", room="R1"),
        b.point("P2", kind="pull_cord", room="R1"),
    )
    assert not_listed(record, room_of(record)) == ("light", "data_equipment")
    empty = b.home(b.room("R1", kind="bedroom"))
    assert "single_socket" not in not_listed(empty, room_of(empty))


def test_points_of_another_room_do_not_count() -> None:
    record = b.home(
        b.room("R1", kind="toilet"), b.light("P1", room="R2"), b.light("P2")
    )
    assert "light" in not_listed(record, room_of(record))


def test_a_forgotten_place_is_offered_until_there_is_a_room_for_it() -> None:
    codes = [place.code for place in PLACES_FORGOTTEN]
    assert [p.code for p in forgotten_places(b.home())] == codes
    record = b.home(
        b.room("R1", kind="loft"),
        b.room("R2", kind="cupboard", name="Under stairs"),
        b.room("R3", kind="garage"),
    )
    left = [p.code for p in forgotten_places(record)]
    assert left == ["airing", "outside", "shed"]


def test_a_forgotten_place_makes_a_room() -> None:
    assert {"loft", "cupboard", "outside", "garage"} <= {
        place.kind for place in PLACES_FORGOTTEN
    }
    for place in PLACES_FORGOTTEN:
        assert place.kind in ROOM_KINDS
        assert place.storey in STOREYS
        assert place.word in place.name.lower()
        assert place.why


def test_a_kind_often_forgotten_is_offered_until_one_is_listed_anywhere() -> None:
    assert forgotten_kinds(b.home()) == POINTS_FORGOTTEN
    record = b.home(b.point("P1", kind="smoke_alarm"))
    assert forgotten_kinds(record) == POINTS_FORGOTTEN[1:]


def test_it_is_offered_in_the_rooms_that_usually_have_one() -> None:
    record = b.home(
        b.room("R1", kind="bedroom"),
        b.room("R2", kind="landing"),
        b.room("R3", kind="hall"),
    )
    assert [r.ref for r in rooms_for(record, "smoke_alarm")] == ["R2", "R3"]
    assert rooms_for(record, "heat_pump") == ()
