"""Where a place is as the rules tell places apart, from the record and two lengths."""

from __future__ import annotations

from decimal import Decimal

from app.domain.may_i._case import Place
from app.domain.record import Point, Room

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
    places = places_of(room)
    return places[0] if len(places) == 1 else None


def places_of(room: Room | None, point: Point | None = None) -> tuple[Place, ...]:
    """Return every kind of place that a room, or a point in it, may be.

    None at all: the record says nothing of it.
    """
    if point is not None and point.outdoor == "yes":
        return ("outdoors",)
    if room is None:
        return ()
    if room.has_pool == "yes":
        return ("pool_room",)
    dry = _BY_KIND.get(room.kind, ())
    if "yes" in (room.has_bath, room.has_shower) or room.kind in _WET:
        kitchen: tuple[Place, ...] = ("kitchen",) if room.kind == "kitchen" else ()
        return (*kitchen, *_by_the_water(room, point))
    if room.kind == "bedroom" and {room.has_bath, room.has_shower} != {"no"}:
        return (*dry, *_by_the_water(room, point))
    return dry


def _by_the_water(room: Room, point: Point | None) -> tuple[Place, ...]:
    """Return where in a room with a bath or shower a point may be, by its lengths.

    A shower may have no tray, and a head above 2.25 m, unless there is no shower.
    """
    if point is None or point.from_bath_m is None:
        return _WET_PLACES
    distance, height = point.from_bath_m, point.height_m
    showers = room.has_shower != "no"
    found = {
        in_bath_zone(distance, each, head_height_m=head, open_floor=open_floor)
        for each in ((height,) if height is not None else (Decimal(0), _VERY_HIGH))
        for head in ((None, _VERY_HIGH) if showers else (None,))
        for open_floor in ((False, True) if showers else (False,))
    }
    if distance > FROM_HEAD_M or (distance > FROM_EDGE_M and not showers):
        return ("bathroom",)
    if found == {True} and distance > 0:
        return ("bath_zone",)
    return ("bathroom", "bath_void") if found == {False} else _WET_PLACES


_WET_PLACES: tuple[Place, ...] = ("bath_zone", "bathroom", "bath_void")
_VERY_HIGH = Decimal(99)
_WET = ("bathroom", "shower_room", "bedroom_with_shower")
_DRY = (
    "living",
    "dining",
    "bedroom",
    "toilet",
    "hall",
    "landing",
    "stairs",
    "office",
    "cupboard",
    "loft",
    "cellar",
)
_BY_KIND: dict[str, tuple[Place, ...]] = {
    **dict.fromkeys(_DRY, ("elsewhere",)),
    "kitchen": ("kitchen",),
    "outside": ("outdoors",),
    "outbuilding": ("outbuilding",),
    # Detached or not, and whether food is prepared there, the record does not say.
    "garage": ("elsewhere", "outbuilding"),
    "utility": ("elsewhere", "kitchen"),
    "conservatory": ("elsewhere", "outbuilding"),
    "porch": ("elsewhere", "outdoors"),
}
