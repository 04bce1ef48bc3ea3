"""What a room of a kind usually has, where points usually stand, what is forgotten.

Common practice, no source.  It orders what is offered first and reminds of what is
easily walked past; nothing here says that a thing is missing, for many a room is not
like others.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from app.domain.record import Record, Room
from app.domain.record.choices import ROOM_KINDS

Stands = Literal["low", "high", "door"]

PLAIN = ("double_socket", "light", "switch")
WET = (
    "light",
    "pull_cord",
    "extractor",
    "shower",
    "shower_switch",
    "shaver_unit",
    "heater",
)
# Kinds of point by kind of room, likeliest first.
USUAL: Mapping[str, tuple[str, ...]] = {
    "kitchen": (
        *PLAIN,
        "fused_connection_unit",
        "cooker_outlet",
        "cooker",
        "appliance_switch",
        "extractor",
        "boiler",
        "heat_alarm",
    ),
    "living": (*PLAIN, "single_socket", "fused_connection_unit", "data_equipment"),
    "dining": (*PLAIN, "single_socket"),
    "bedroom": (*PLAIN, "single_socket", "data_equipment"),
    "bedroom_with_shower": (
        *PLAIN,
        "extractor",
        "shower",
        "shower_switch",
        "shaver_unit",
    ),
    "bathroom": WET,
    "shower_room": WET,
    "toilet": ("light", "switch", "extractor"),
    "hall": (
        "double_socket",
        "light",
        "two_way_switch",
        "smoke_alarm",
        "bell_transformer",
        "data_equipment",
    ),
    "landing": ("double_socket", "light", "two_way_switch", "smoke_alarm"),
    "stairs": ("light", "two_way_switch", "smoke_alarm"),
    "utility": (
        *PLAIN,
        "fused_connection_unit",
        "appliance_switch",
        "extractor",
        "boiler",
    ),
    "office": (*PLAIN, "single_socket", "data_equipment"),
    "cupboard": (
        *PLAIN,
        "fused_connection_unit",
        "water_heater",
        "bell_transformer",
        "data_equipment",
        "junction_box",
    ),
    "loft": (*PLAIN, "junction_box", "extractor", "data_equipment", "inverter"),
    "cellar": (*PLAIN, "junction_box", "motor"),
    "conservatory": (*PLAIN, "fused_connection_unit", "heater"),
    "porch": ("light", "switch", "bell_transformer"),
    "garage": (*PLAIN, "vehicle_charger", "motor", "junction_box"),
    "outbuilding": (*PLAIN, "fused_connection_unit", "junction_box"),
    "outside": (
        "outdoor_socket",
        "light",
        "isolator",
        "vehicle_charger",
        "heat_pump",
        "junction_box",
    ),
    "common": ("light", "switch", "smoke_alarm", "entryphone"),
    "other": (*PLAIN, "fused_connection_unit"),
    "unknown": (*PLAIN, "fused_connection_unit"),
}
# Where one of these is listed, the others are not offered as not listed yet.
ALIKE: tuple[frozenset[str], ...] = (
    frozenset({"double_socket", "single_socket", "socket"}),
    frozenset({"switch", "two_way_switch", "pull_cord"}),
    frozenset({"cooker_outlet", "cooker_outlet_socket"}),
    frozenset({"heater", "storage_heater"}),
)
# Where a kind of point usually stands; the others stand low on a wall.
STANDS: Mapping[str, Stands] = {
    "light": "high",
    "extractor": "high",
    "smoke_alarm": "high",
    "heat_alarm": "high",
    "junction_box": "high",
    "switch": "door",
    "two_way_switch": "door",
    "pull_cord": "door",
    "shower_switch": "door",
    "entryphone": "door",
    "bell_transformer": "door",
}
MOST_PLACES = 8
PLACES: Mapping[Stands, tuple[str, ...]] = {
    "low": (
        "left of the window",
        "right of the window",
        "left of the door",
        "right of the door",
        "left wall",
        "right wall",
        "opposite the door",
        "in the skirting",
    ),
    "high": (
        "ceiling",
        "ceiling, by the door",
        "ceiling, by the window",
        "left wall",
        "right wall",
        "over the door",
        "over the window",
        "in a cupboard",
    ),
    "door": (
        "by the door",
        "outside the door",
        "inside the door",
        "by the other door",
        "by the bed",
        "by the window",
        "in a cupboard",
        "ceiling",
    ),
}
# What comes before these in a kind of room.
PLACES_IN: Mapping[tuple[str, Stands], tuple[str, ...]] = {
    ("kitchen", "low"): (
        "above the worktop, left",
        "above the worktop, right",
        "under the worktop",
        "in a cupboard",
        "by the cooker",
        "by the fridge",
    ),
    ("kitchen", "high"): ("ceiling", "over the sink", "under the wall cupboards"),
    ("utility", "low"): ("above the worktop", "under the worktop", "by the sink"),
    ("living", "low"): (
        "left of the chimney",
        "right of the chimney",
        "behind the television",
    ),
    ("bedroom", "low"): ("left of the bed", "right of the bed"),
    ("bedroom_with_shower", "low"): ("left of the bed", "right of the bed"),
    ("bathroom", "low"): ("by the mirror", "over the bath", "outside the door"),
    ("bathroom", "high"): ("ceiling", "over the bath", "by the mirror"),
    ("shower_room", "low"): ("by the mirror", "in the shower", "outside the door"),
    ("shower_room", "high"): ("ceiling", "over the shower", "by the mirror"),
    ("hall", "low"): ("by the front door", "at the foot of the stairs"),
    ("hall", "door"): ("by the front door", "at the foot of the stairs"),
    ("landing", "low"): ("at the top of the stairs",),
    ("landing", "door"): ("at the top of the stairs",),
    ("stairs", "door"): ("at the top of the stairs", "at the foot of the stairs"),
    ("loft", "low"): ("by the hatch", "by the tank", "on a rafter"),
    ("loft", "high"): ("by the hatch", "by the tank", "on a rafter"),
    ("loft", "door"): ("by the hatch", "below the hatch"),
    ("garage", "low"): ("by the big door", "by the side door", "over the bench"),
    ("outside", "low"): ("front wall", "back wall", "side wall", "by the gate"),
    ("outside", "high"): ("by the front door", "by the back door", "in the garden"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgotten:
    """A place that is often walked past.

    Attributes:
        code: What a form calls it.
        kind: Kind of room that it would be.
        name: What it would be called.
        why: What is often there.
        word: Part of the name by which one of the kind is told; empty where any is.
        storey: The storey, where the place says it.
    """

    code: str
    kind: str
    name: str
    why: str
    word: str = ""
    storey: str = "unknown"


PLACES_FORGOTTEN = (
    Forgotten(
        code="loft",
        kind="loft",
        name="Loft",
        why="A light, junction boxes, an aerial amplifier, a fan.",
        storey="loft",
    ),
    Forgotten(
        code="under_stairs",
        kind="cupboard",
        name="Cupboard under the stairs",
        why="A light, a bell transformer, the router.",
        word="stair",
    ),
    Forgotten(
        code="airing",
        kind="cupboard",
        name="Airing cupboard",
        why="A water heater, pumps and valves, a timer.",
        word="airing",
    ),
    Forgotten(
        code="outside",
        kind="outside",
        name="Outside walls",
        why="Lights, sockets, a charger, what feeds the garden.",
        storey="outside",
    ),
    Forgotten(
        code="garage",
        kind="garage",
        name="Garage",
        why="Sockets, lights, a door motor, a freezer.",
    ),
    Forgotten(
        code="shed",
        kind="outbuilding",
        name="Shed",
        why="Sockets and lights, fed over or under the garden.",
    ),
)
POINTS_FORGOTTEN = (
    "smoke_alarm",
    "heat_alarm",
    "bell_transformer",
    "extractor",
    "water_heater",
    "outdoor_socket",
    "data_equipment",
)


def usual_kinds(room_kind: str) -> tuple[str, ...]:
    """Return the kinds of point offered first, the unidentified one at the end."""
    return (*USUAL[room_kind], "unknown")


def not_listed(record: Record, room: Room) -> tuple[str, ...]:
    """Return the kinds that such a room usually has and this one has none of yet."""
    here = {point.kind for point in record.points_of(room.ref)}
    here |= {kind for alike in ALIKE if alike & here for kind in alike}
    offered: list[str] = []
    for kind in USUAL[room.kind]:
        if kind not in here:
            offered.append(kind)
            here |= next((alike for alike in ALIKE if kind in alike), frozenset())
    return tuple(offered)


def stands(kind: str) -> Stands:
    """Return whereabouts in a room a kind of point usually stands."""
    return STANDS.get(kind, "low")


def usual_places(room_kind: str, where: Stands) -> tuple[str, ...]:
    """Return the places offered for what stands there, likeliest first."""
    own = PLACES_IN.get((room_kind, where), ())
    return tuple(dict.fromkeys((*own, *PLACES[where])))[:MOST_PLACES]


def forgotten_places(record: Record) -> tuple[Forgotten, ...]:
    """Return the places often walked past that the record has no room for."""
    return tuple(
        place
        for place in PLACES_FORGOTTEN
        if not any(
            room.kind == place.kind and place.word in room.name.lower()
            for room in record.rooms
        )
    )


def forgotten_kinds(record: Record) -> tuple[str, ...]:
    """Return the kinds of point often walked past that the record has none of."""
    here = {point.kind for point in record.points}
    return tuple(kind for kind in POINTS_FORGOTTEN if kind not in here)


def rooms_for(record: Record, kind: str) -> tuple[Room, ...]:
    """Return the rooms that usually have a kind of point, in walking order."""
    fitting = {room_kind for room_kind in ROOM_KINDS if kind in USUAL[room_kind]}
    return tuple(room for room in record.rooms if room.kind in fitting)
