"""Where a place is as the rules tell places apart, from the record and two lengths."""

from __future__ import annotations

from decimal import Decimal

from app.domain.may_i._case import Place
from app.domain.record import Room

# Building Regulations 2010 reg 12(9), England.
UP_TO_M = Decimal("2.25")
FROM_EDGE_M = Decimal("0.6")
FROM_HEAD_M = Decimal("1.2")


def in_bath_zone(
    distance_m: Decimal,
    height_m: Decimal,
    *,
    head_height_m: Decimal | None = None,
    open_floor: bool = False,
) -> bool:
    """Return whether a place is in the special location around a bath or shower.

    Args:
        distance_m: Level distance from the edge of the bath or tray; with an open
            floor, from the middle of the shower head.
        height_m: Height above the finished floor.
        head_height_m: Height of a fixed shower head, where there is one.
        open_floor: Whether the shower has neither bath nor tray.
    """
    top = max(UP_TO_M, head_height_m or UP_TO_M)
    reach = FROM_HEAD_M if open_floor else FROM_EDGE_M
    return height_m <= top and distance_m <= reach


def place_of(room: Room) -> Place | None:
    """Return the kind of place that a room is; None where the record cannot tell.

    A room with a bath or shower stays open: it matters how close to it.  So does a
    garage, which may stand by itself.
    """
    if room.has_pool == "yes":
        return "pool_room"
    if "yes" in (room.has_bath, room.has_shower) or room.kind in _WET:
        return None
    by_kind: dict[str, Place] = {
        "kitchen": "kitchen",
        "outside": "outdoors",
        "outbuilding": "outbuilding",
    }
    if room.kind == "bedroom" and {room.has_bath, room.has_shower} != {"no"}:
        return None
    return by_kind.get(room.kind) or ("elsewhere" if room.kind in _DRY else None)


_WET = ("bathroom", "shower_room", "bedroom_with_shower")
_DRY = (
    "living",
    "dining",
    "bedroom",
    "hall",
    "landing",
    "stairs",
    "office",
    "cupboard",
    "loft",
)
