"""The special location around a bath or shower, to the centimetre.

Building Regulations 2010 reg 12(9): up to 2.25 m or the shower head if higher; 0.6 m
from bath or tray, or 1.2 m from the head where there is neither.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.may_i import in_bath_zone, place_of
from app.domain.record import Room


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
