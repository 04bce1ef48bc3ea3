"""Points as rows of a table."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.network import Network, circuits_of
from app.domain.record import Circuit, Device, Point, Record, Room, Source, Tie
from app.domain.record.choices import CARE, GRADES
from app.web.addresses import Link, item_url

POINT_HEADS = ("Point", "Room", "Circuit", "Way", "How known", "Missed if off")
Cell = Link | str | None


def point_rows(
    net: Network, points: Iterable[Point], *, rooms: bool = False
) -> tuple[tuple[Cell, ...], ...]:
    """Return a row for each point, with its room or without."""
    rows = [_row(net, point) for point in points]
    return tuple(row if rooms else (row[0], *row[2:]) for row in rows)


def _row(net: Network, point: Point) -> tuple[Cell, ...]:
    record = net.record
    room = record.find(Room, point.room)
    circuits = [record.by_ref[ref] for ref in circuits_of(net, point.ref)]
    ties = [tie for tie in record.ties_of(point.ref) if tie.role == "feeds"]
    return (
        (point.title, item_url(record.home.ref, point)),
        room.name if room else None,
        " and ".join([*(c.title for c in circuits), *_sources(record, ties)]) or None,
        " and ".join(_ways(record, circuits)) or None,
        ", ".join(dict.fromkeys(GRADES[tie.grade] for tie in ties)) or None,
        ", ".join(CARE[code] for code in point.care) or "none noted",
    )


def _sources(record: Record, ties: Iterable[Tie]) -> list[str]:
    found = (record.find(Source, tie.tied_to) for tie in ties)
    return [f"{source.title} (no circuit)" for source in found if source]


def _ways(record: Record, circuits: Iterable[object]) -> list[str]:
    refs = [ref for c in circuits if isinstance(c, Circuit) for ref in c.ways]
    return [_way(record, ref) for ref in dict.fromkeys(refs)]


def _way(record: Record, ref: str) -> str:
    device = record.find(Device, ref)
    if device is None:
        return record.by_ref[ref].title if ref in record.by_ref else ref
    board = record.by_ref.get(device.board)
    name = f"way {device.way}" if device.way else device.ref
    return f"{board.title}, {name}" if board else name
