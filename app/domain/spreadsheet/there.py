"""What a row names that is in the record already, so that nothing is made twice unseen.

By its reference, where the row gives one; else by what tells such things apart.  Each
thing of the record is named by one row at the most: three sockets that nothing tells
apart are three.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from app.domain.record import Circuit, Device, Item, Point, Record
from app.domain.spreadsheet.growing import Making
from app.domain.spreadsheet.values import plain


def point_there(making: Making, values: dict[str, Any], room: str | None) -> str | None:
    """Return the point that a row names: of its kind, room, place and name."""
    place, name = _word(values, "place"), _word(values, "name")
    return _there(making, Point, values, (values["kind"], room, place, name))


def circuit_there(
    making: Making, values: dict[str, Any], ways: tuple[str, ...] | None
) -> str | None:
    """Return the circuit that a row names: of its name, number and ways, if any."""
    name, number = _word(values, "name"), _word(values, "number")
    told_apart = bool(name) and ways is not None
    key = (name, number, *sorted(ways or ())) if told_apart else None
    return _there(making, Circuit, values, key)


def device_there(making: Making, board: str, values: dict[str, Any]) -> str | None:
    """Return the device that a row names: of its board and way."""
    way = _word(values, "way")
    return _there(making, Device, values, (board, way) if way else None)


def _keys(record: Record, cls: type[Item]) -> Iterable[tuple[object, str]]:
    """Yield what each thing of a sort is told apart by, with its reference.

    A circuit is told apart with its ways, and where a row names none, without.
    """
    for item in record.of(cls):
        yield item.ref.casefold(), item.ref
        if isinstance(item, Point):
            yield (item.kind, item.room, plain(item.place), plain(item.name)), item.ref
        elif isinstance(item, Device):
            yield (item.board, plain(item.way)), item.ref
        elif isinstance(item, Circuit):
            called = (plain(item.name), plain(item.number))
            for key in dict.fromkeys((called, (*called, *sorted(item.ways)))):
                yield key, item.ref


def _there(
    making: Making, cls: type[Item], values: dict[str, Any], key: object
) -> str | None:
    """Return the one of a reference, else the first alike that no row has named yet."""
    if cls not in making.alike:
        alike: dict[object, list[str]] = {}
        for each, ref in _keys(making.record, cls):
            alike.setdefault(each, []).append(ref)
        making.alike[cls] = alike
    wanted = str(values.get("ref", "")).casefold()
    found = making.alike[cls].get(wanted or key, [])
    return next((ref for ref in found if ref not in making.named), None)


def _word(values: dict[str, Any], name: str) -> str:
    return plain(str(values.get(name) or ""))
