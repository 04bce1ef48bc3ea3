"""The special location around a bath or shower, to the centimetre.

Building Regulations 2010 reg 12(9): up to 2.25 m or the shower head if higher; 0.6 m
from bath or tray, or 1.2 m from the head where there is neither.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.may_i import in_bath_zone, place_of, places_of
from app.domain.record import Point, Room


@pytest.mark.parametrize(
    ("distance", "height", "head", "open_floor", "inside"),
    [
        ("0.60", "2.25", None, False, True),
        ("0.61", "2.25", None, False, False),
        ("0.60", "2.26", None, False, False),
        ("0.60", "2.30", "2.40", False, True),
        ("0.60", "2.41", "2.40", False, False),
        ("0.60", "2.20", "2.00", False, True),
        ("1.20", "1.00", None, True, True),
        ("1.21", "1.00", None, True, False),
        ("0", "0", None, False, True),
    ],
)
def test_the_zone(
    distance: str, height: str, head: str | None, open_floor: bool, inside: bool
) -> None:
    found = in_bath_zone(
        Decimal(distance),
        Decimal(height),
        head_height_m=Decimal(head) if head else None,
        open_floor=open_floor,
    )
    assert found is inside


@pytest.mark.parametrize(
    ("fields", "place"),
    [
        ({"kind": "kitchen"}, "kitchen"),
        ({"kind": "kitchen", "has_shower": "yes"}, None),
        ({"kind": "bathroom"}, None),
        ({"kind": "bedroom_with_shower"}, None),
        ({"kind": "bedroom"}, None),
        ({"kind": "bedroom", "has_bath": "no", "has_shower": "no"}, "elsewhere"),
        ({"kind": "living"}, "elsewhere"),
        ({"kind": "outside"}, "outdoors"),
        ({"kind": "outbuilding"}, "outbuilding"),
        ({"kind": "garage"}, None),
        ({"kind": "living", "has_pool": "yes"}, "pool_room"),
        ({"kind": "unknown"}, None),
    ],
)
def test_a_room_is_a_kind_of_place(fields: dict[str, str], place: str | None) -> None:
    room = Room.model_validate({"ref": "R1", "name": "A room", **fields})
    assert place_of(room) == place


WATER = ("bath_zone", "bathroom", "bath_void")


@pytest.mark.parametrize(
    ("shower", "distance", "height", "places"),
    [
        ("no", None, None, WATER),
        ("no", "0.6", None, WATER),
        ("no", "0.6", "2.25", ("bath_zone",)),
        ("no", "0.61", "1", ("bathroom",)),
        ("no", "0.6", "2.26", ("bathroom", "bath_void")),
        # Behind the panel of a bath, or above it: the record does not say.
        ("no", "0", "0.3", WATER),
        # A shower may have no tray, and a head above 2.25 m.
        ("yes", "0.61", "1", WATER),
        ("unknown", "0.61", "1", WATER),
        ("yes", "1.2", "1", WATER),
        ("yes", "1.21", "1", ("bathroom",)),
        ("yes", "0.6", "2.26", WATER),
        ("yes", "0.6", "2.25", ("bath_zone",)),
    ],
)
def test_a_point_by_the_water_is_placed_by_its_lengths(
    shower: str, distance: str | None, height: str | None, places: tuple[str, ...]
) -> None:
    room = Room(ref="R1", name="A", kind="bathroom", has_bath="yes", has_shower=shower)
    point = Point(
        ref="P1",
        kind="extractor",
        from_bath_m=Decimal(distance) if distance else None,
        height_m=Decimal(height) if height else None,
    )
    assert places_of(room, point) == places


@pytest.mark.parametrize(
    ("kind", "places"),
    [
        ("garage", ("elsewhere", "outbuilding")),
        ("utility", ("elsewhere", "kitchen")),
        ("toilet", ("elsewhere",)),
        ("bedroom", ("elsewhere", *WATER)),
        ("unknown", ()),
    ],
)
def test_what_the_record_leaves_open_stays_open(
    kind: str, places: tuple[str, ...]
) -> None:
    assert places_of(Room(ref="R1", name="A", kind=kind)) == places


def test_a_point_outdoors_is_outdoors_whatever_its_room() -> None:
    point = Point(ref="P1", kind="light", outdoor="yes")
    assert places_of(Room(ref="R1", name="A", kind="kitchen"), point) == ("outdoors",)
    assert places_of(None) == ()
