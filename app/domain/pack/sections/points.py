"""The points, room by room, in the order of the walk."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import POINT_KINDS
from app.domain.network import Network
from app.domain.pack.blocks import Block, Head, Pictures, Section, Table
from app.domain.pack.words import item_name, number
from app.domain.record import Point, Room, Tie
from app.domain.record.choices import CARE, GRADES, LOOKED_AT, STOREYS

HEADS = ("Point", "What it is", "Fed by", "How known", "More")
WIDTHS = (4, 3, 4, 3, 3)


def section(net: Network) -> Section:
    """Return the section: every point, with what feeds it and how that is known."""
    return Section(code="points", title="Points by room", blocks=tuple(_blocks(net)))


def house(net: Network) -> Section:
    """Return the drawing of the house by circuit."""
    drawn = Pictures(
        name="house",
        said="Room by room, each point on the line of its circuit. A broken line: not "
        "known. The tables by room say the same in words.",
    )
    blocks = (drawn,) if net.record.points else ()
    return Section(code="house", title="House by circuit", blocks=blocks)


def _blocks(net: Network) -> Iterator[Block]:
    for room in net.record.rooms:
        looked = LOOKED_AT[room.looked_at].lower()
        yield Head(text=f"{room.title} ({room.ref})")
        yield _table(net, f"{STOREYS[room.storey]}; looked at: {looked}", room)
    if net.record.points_of(None):
        yield Head(text="In no room")
        yield _table(net, "Points whose room is not recorded", None)


def _table(net: Network, caption: str, room: Room | None) -> Table:
    points = net.record.points_of(room.ref if room else None)
    return Table(
        caption=caption,
        heads=HEADS,
        widths=WIDTHS,
        rows=tuple(_row(net, point) for point in points),
        otherwise="No point is recorded here.",
    )


def _row(net: Network, point: Point) -> tuple[str, ...]:
    ties = net.record.ties_of(point.ref)
    return (
        f"{point.title} ({point.ref})",
        _kind(point),
        "; ".join(_fed(net, tie) for tie in ties) or "not known",
        "; ".join(dict.fromkeys(_how(net, tie) for tie in ties)) or "–",
        _more(point) or "–",
    )


def _kind(point: Point) -> str:
    label = POINT_KINDS[point.kind].label
    return label if point.count == 1 else f"{point.count} × {label}"


def _fed(net: Network, tie: Tie) -> str:
    role = {"feeds": "", "neutral": "neutral: ", "present": "in the box too: "}
    return f"{role[tie.role]}{item_name(net.record, tie.tied_to)}"


def _how(net: Network, tie: Tie) -> str:
    day = f", {tie.seen_on.isoformat()}" if tie.seen_on else ""
    since = ", work since" if tie.ref in net.aged else ""
    return f"{GRADES[tie.grade]}{day}{since}"


def _more(point: Point) -> str:
    facts = (
        number(point.fuse_a, "A fuse"),
        number(point.residual_current_ma, "mA RCD in it"),
        number(point.load_w, "W"),
        f"IP {point.ip}" if point.ip else "",
        "outdoors" if point.outdoor == "yes" else "",
        ", ".join(CARE[code].lower() for code in point.care),
        point.note,
    )
    return ", ".join(fact for fact in facts if fact)
