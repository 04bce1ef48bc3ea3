"""What a row names that is in the record already, so that nothing is made twice unseen.

By its reference, where the row gives one; else by what tells such things apart.  Each
thing of the record is named by one row at the most: three sockets that nothing tells
apart are three.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from app.domain.record import Circuit, Device, Point
from app.domain.spreadsheet.growing import Making
from app.domain.spreadsheet.values import plain


def point_there(making: Making, values: dict[str, Any], room: str | None) -> str | None:
    """Return the point that a row names: of its kind, room, place and name."""
    own = (values["kind"], room, _word(values, "place"), _word(values, "name"))
    same = (
        p
        for p in making.record.points
        if (p.kind, p.room, plain(p.place), plain(p.name)) == own
    )
    return _first(making, making.record.points, values, same)


def circuit_there(
    making: Making, values: dict[str, Any], ways: tuple[str, ...]
) -> str | None:
    """Return the circuit that a row names: of its name, number and ways."""
    name, number = _word(values, "name"), _word(values, "number")
    same = (
        c
        for c in making.record.circuits
        if (plain(c.name), plain(c.number)) == (name, number)
        and (not ways or set(ways) == set(c.ways))
    )
    return _first(making, making.record.circuits, values, same if name else ())


def device_there(making: Making, board: str, values: dict[str, Any]) -> str | None:
    """Return the device that a row names: of its board and way."""
    way = _word(values, "way")
    here = making.record.devices_of(board)
    same: Iterable[Device] = (d for d in here if way and plain(d.way) == way)
    return _first(making, making.record.devices, values, same)


def _word(values: dict[str, Any], name: str) -> str:
    return plain(str(values.get(name) or ""))


def _first(
    making: Making,
    things: tuple[Circuit, ...] | tuple[Device, ...] | tuple[Point, ...],
    values: dict[str, Any],
    same: Iterable[Circuit | Device | Point],
) -> str | None:
    """Return the one of a reference, else the first alike that no row has named yet."""
    wanted = str(values.get("ref", "")).casefold()
    by_ref = [item for item in things if item.ref.casefold() == wanted]
    named = {there.ref for there in making.there}
    for item in by_ref if wanted else same:
        if item.ref not in named:
            return item.ref
    return None
