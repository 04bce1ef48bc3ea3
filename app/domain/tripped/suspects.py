"""What hangs on a device that has moved, in the order in which to suspect it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from app.domain.kinds import POINT_KINDS
from app.domain.network import Network, downstream
from app.domain.record import Device, Point, Room

Ground = Literal[
    "outdoors", "wet", "heats", "motor", "sockets", "fixed", "lights", "rest"
]

# Common practice, no source: water first, then heating elements and motors.
GROUNDS: dict[Ground, str] = {
    "outdoors": "Outdoors, where water gets in",
    "wet": "Where there is water",
    "heats": "Holds a heating element",
    "motor": "Holds a motor",
    "sockets": "Whatever is plugged in here",
    "fixed": "Wired in",
    "lights": "A light, its switch or its fan",
    "rest": "Less likely",
}
_ORDER = tuple(GROUNDS)
_HEATS = {
    "boiler",
    "cooker",
    "cooker_outlet",
    "cooker_outlet_socket",
    "heater",
    "shower",
    "shower_switch",
    "storage_heater",
    "water_heater",
}
_MOTORS = {"appliance_switch", "heat_pump", "motor"}
_WET_ROOMS = {"bathroom", "shower_room", "bedroom_with_shower"}
# Where water runs into what is plugged in or wired in, but not up to the light.
_SPLASHED_ROOMS = {"kitchen", "utility"}
_OUTDOOR_KINDS = {"outdoor_socket", "vehicle_charger"}
_OUTDOOR_ROOMS = {"outside", "outbuilding", "garage"}
_WET_CARES = {"washing", "water"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """A point that hangs on what has moved, and why it stands where it stands.

    Attributes:
        ref: Reference of the point.
        title: What it is called.
        room: Name of its room; None when it has none.
        ground: Which of :data:`GROUNDS` puts it there.
        unplugs: Whether what is at it can be unplugged; else it is wired in.
        care: What is missed while it is off, as codes.
    """

    ref: str
    title: str
    room: str | None
    ground: Ground
    unplugs: bool
    care: tuple[str, ...]


def suspects(net: Network, device: str) -> tuple[Suspect, ...]:
    """Return every point that a device feeds, the likeliest first.

    Points on extra-low voltage or direct current are among them: what makes their
    supply hangs on the same device.
    """
    fed = downstream(net, device)
    points = [point for point in net.record.points if point.ref in fed]
    found = [suspect_of(net, point) for point in points]
    return tuple(sorted(found, key=_place))


def circuits_below(net: Network, device: str) -> tuple[Device, ...]:
    """Return the ways below a device that can be switched off one by one."""
    fed = downstream(net, device)
    wired = {way for circuit in net.record.circuits for way in circuit.ways}
    return tuple(
        other for other in net.record.devices if other.ref in fed and other.ref in wired
    )


def _place(suspect: Suspect) -> tuple[int, bool]:
    """Return its place in the order: its ground, then what water runs through."""
    return _ORDER.index(suspect.ground), not _WET_CARES & {*suspect.care}


def suspect_of(net: Network, point: Point) -> Suspect:
    """Return a point as a suspect, with the ground to suspect it on."""
    room = net.record.find(Room, point.room)
    return Suspect(
        ref=point.ref,
        title=point.title,
        room=room.name if room else None,
        ground=_ground(point, room),
        unplugs=_unplugs(point),
        care=point.care,
    )


def _unplugs(point: Point) -> bool:
    """A fused connection unit stands among the sockets and is wired all the same."""
    in_group = POINT_KINDS[point.kind].group == "sockets"
    return in_group and point.kind != "fused_connection_unit"


def _ground(point: Point, room: Room | None) -> Ground:
    group = POINT_KINDS[point.kind].group
    if _outdoors(point, room):
        return "outdoors"
    if _wet(point, room, group):
        return "wet"
    if point.kind in _HEATS:
        return "heats"
    if point.kind in _MOTORS or {"freezer", "fridge"} & {*point.care}:
        return "motor"
    by_group: dict[str, Ground] = {
        "sockets": "sockets",
        "lights": "lights",
        "fixed": "fixed",
    }
    return by_group.get(group, "rest")


def _outdoors(point: Point, room: Room | None) -> bool:
    outside = room is not None and room.kind in _OUTDOOR_ROOMS
    return point.outdoor == "yes" or point.kind in _OUTDOOR_KINDS or outside


def _wet(point: Point, room: Room | None, group: str) -> bool:
    kind = room.kind if room else "unknown"
    splashed = kind in _SPLASHED_ROOMS and group in ("sockets", "fixed")
    return kind in _WET_ROOMS or splashed or bool(_WET_CARES & {*point.care})
