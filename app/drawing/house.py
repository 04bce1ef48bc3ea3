"""House by circuit: storeys and rooms in the order of the walk, points on their lines.

Each point stands once: in its room, or outdoors, or where no room is recorded; on the
line of the circuit that feeds it, or of a source that does without one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from app.domain.network import Network, network, sources_of
from app.domain.record import Point, Record, Room
from app.domain.record.choices import STOREYS
from app.drawing.line import Line, lines_of

NO_ROOM, OUTDOORS = "no-room", "outdoors"
NOT_FED = "Not known what feeds these"
# How many points of one line stand together, and how tall a page is: in rows of points,
# with one for the head of each line.
_MANY, _PAGE = 12, 14.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """A point on a line.

    Attributes:
        point: The point.
        lines: References of every circuit or source that feeds it, the line's first.
        said: What else to say of it: its room if that is elsewhere, its other lines.
        seen: Whether it is recorded how its feed is known.
    """

    point: Point
    lines: tuple[str, ...]
    said: tuple[str, ...]
    seen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Points of one room on one line; no line: what feeds them is not known."""

    line: Line | None
    hung: tuple[Hung, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A room as it is drawn, or what stands in the place of one.

    Attributes:
        code: Reference of the room, or one of the codes of this module.
        room: The room, if it is one.
        part: Which part of it this is, from 1.
    """

    code: str
    title: str
    room: Room | None
    groups: tuple[Group, ...]
    part: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Storey:
    """A storey with its blocks; ``code`` is that of the record."""

    code: str
    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class House:
    """What the drawing shows of a record."""

    net: Network

    @property
    def record(self) -> Record:
        """The record."""
        return self.net.record

    @cached_property
    def lines(self) -> Mapping[str, Line]:
        """The line of every circuit and source."""
        return lines_of(self.record)

    @cached_property
    def order(self) -> Mapping[str, int]:
        """The place of each line, by its reference."""
        return {ref: place for place, ref in enumerate(self.lines)}

    @cached_property
    def storeys(self) -> tuple[Storey, ...]:
        """The storeys in the order of the walk; outside and no room at the end."""
        return tuple(_storeys(self))


def house_of(record: Record) -> House:
    """Return what the drawing shows of a record."""
    return House(network(record))


def in_parts(block: Block) -> tuple[Block, ...]:
    """Return a room, or the parts of one that is taller than a page."""
    parts: list[list[Group]] = [[]]
    room = _PAGE
    for group in block.groups:
        for at in range(0, len(group.hung), _MANY):
            piece = Group(line=group.line, hung=group.hung[at : at + _MANY])
            tall = 1 + len(piece.hung) / 3
            if tall > room and parts[-1]:
                parts.append([])
                room = _PAGE
            parts[-1].append(piece)
            room -= tall
    return tuple(
        replace(
            block,
            title=f"{block.title}, part {at + 1}" if at else block.title,
            part=at + 1,
            groups=tuple(groups),
        )
        for at, groups in enumerate(parts)
    )


def is_outside(room: Room | None) -> bool:
    """Return whether a room is itself outside."""
    return room is not None and (room.storey == "outside" or room.kind == "outside")


def _storeys(house: House) -> Iterator[Storey]:
    rooms = house.record.rooms
    codes = dict.fromkeys(r.storey for r in rooms if not is_outside(r))
    for code in codes:
        here = [r for r in rooms if r.storey == code and not is_outside(r)]
        title = "Storey not known" if code == "unknown" else STOREYS[code]
        blocks = tuple(_room_block(house, room) for room in here)
        yield Storey(code=code, title=title, blocks=blocks)
    outside = tuple(_outside(house))
    if outside:
        yield Storey(code="outside", title=STOREYS["outside"], blocks=outside)
    loose = [p for p in house.record.points if _is_loose(house.record, p)]
    if loose:
        groups = _groups(house, loose)
        block = Block(code=NO_ROOM, title="No room recorded", room=None, groups=groups)
        yield Storey(code=NO_ROOM, title="Room not known", blocks=(block,))


def _outside(house: House) -> Iterator[Block]:
    record = house.record
    yield from (_room_block(house, r) for r in record.rooms if is_outside(r))
    points = [p for p in record.points if _is_moved_out(record, p)]
    if points:
        yield Block(
            code=OUTDOORS,
            title="Outdoors, by the record",
            room=None,
            groups=_groups(house, points, named=True),
        )


def _room_block(house: House, room: Room) -> Block:
    points = [
        p
        for p in house.record.points_of(room.ref)
        if not _is_moved_out(house.record, p)
    ]
    return Block(
        code=room.ref, title=room.name, room=room, groups=_groups(house, points)
    )


def _is_moved_out(record: Record, point: Point) -> bool:
    """A point outdoors is drawn outside, whichever room it was noted in."""
    return point.outdoor == "yes" and not is_outside(record.find(Room, point.room))


def _is_loose(record: Record, point: Point) -> bool:
    return record.find(Room, point.room) is None and not _is_moved_out(record, point)


def _groups(
    house: House, points: Iterable[Point], *, named: bool = False
) -> tuple[Group, ...]:
    """Sort points by their first line, in the record's order, those of none last."""
    found: dict[str, list[Hung]] = {}
    for point in points:
        hung = _hung(house, point, named=named)
        found.setdefault(next(iter(hung.lines), ""), []).append(hung)
    return tuple(
        Group(line=house.lines.get(ref), hung=tuple(found[ref]))
        for ref in sorted(found, key=lambda ref: house.order.get(ref, len(house.order)))
    )


def _hung(house: House, point: Point, *, named: bool) -> Hung:
    net = house.net
    circuits = net.circuits_at.get(point.ref, ())
    lines = tuple(dict.fromkeys((*circuits, *sources_of(net, point.ref))))
    lines = tuple(sorted(lines, key=house.order.__getitem__))
    room = net.record.find(Room, point.room)
    also = [house.lines[ref].tag for ref in lines[1:]]
    said = [room.name if room else "no room recorded"] if named else []
    ties = [t for t in net.record.ties_of(point.ref) if t.role == "feeds"]
    return Hung(
        point=point,
        lines=lines,
        said=(*said, *([f"also on {', '.join(also)}"] if also else [])),
        seen=any(tie.grade != "0" for tie in ties),
    )
