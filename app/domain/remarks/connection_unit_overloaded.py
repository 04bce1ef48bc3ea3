"""More hangs on a fused connection unit than its fuse carries.

Looks at:
    The loads behind each fused connection unit, and the fuse in it.
Why it matters:
    A fuse near its limit runs hot for hours before it opens, and scorches its holder.
What to do:
    Use less there at a time. Ask an electrician about a circuit of its own for what is
    large. Never put in a larger fuse than the unit is made for.
Source:
    BS 1362 and BS 1363-4: 13 A at most; calculated at 230 V.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import Point
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacking
from app.domain.remarks._sight import VOLTS, Sight, is_socket, refs_of

KIND = RemarkKind(code="connection-unit-overloaded", rank="electrician", group="points")

MOST_A = Decimal(13)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each unit with more behind it than its fuse."""
    for unit in sight.record.points:
        if unit.kind != "fused_connection_unit":
            continue
        behind = sight.points_below(unit.ref)
        loads = [p.load_w for p in behind if p.load_w]
        current = sum(loads, Decimal(0)) / VOLTS
        fuse = unit.fuse_a or MOST_A
        sockets = [p for p in behind if is_socket(p)]
        if current > fuse or (unit.fuse_a or 0) > MOST_A:
            yield _found(sight, unit, behind, current)
        elif len(sockets) > 1 and not loads:
            yield lacking((unit.ref, *refs_of(sockets)), "the load")


def _found(
    sight: Sight, unit: Point, behind: tuple[Point, ...], current: Decimal
) -> Found:
    figures = (
        figure("Fuse", unit.fuse_a or MOST_A, "A"),
        figure("Loads behind it", current, "A", calculated=True),
    )
    return Found(
        (unit.ref, *refs_of(behind)),
        f"{sight.name(unit.ref)} has loads of {round(current, 1)} A behind a fuse of "
        f"{unit.fuse_a or MOST_A} A.",
        figures,
    )
