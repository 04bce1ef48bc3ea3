"""Nothing in the record keeps an RCD from being overloaded.

Looks at:
    The rated current of each RCD, the nearest fuse or circuit-breaker before it, and
    the ways below it; ways that only bring in generation are left out.
Why it matters:
    An RCD does not guard itself against too much current. More than its rating, for
    long, overheats it.
What to do:
    Ask an electrician. What the maker of the RCD says goes first; diversity by itself
    is no answer.
Source:
    BS 7671:2018+A2:2022, 536.4.3.2 and 536.4.202 (from memory); that either the fuse
    before or the sum of the ways may show it, is a cautious rule of common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.network import fed_by
from app.domain.record import Device
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
    lacks,
)
from app.domain.remarks._sight import Sight, protective

KIND = RemarkKind(code="rcd-may-be-overloaded", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each RCD that neither the fuse before it nor its ways keep within."""
    for rcd in sight.record.devices:
        if rcd.kind == "rcd" and rcd.ref in sight.net.fed:
            yield from _judged(sight, rcd)


def _judged(sight: Sight, rcd: Device) -> Iterator[Outcome]:
    fuse = sight.overcurrent(rcd.ref)
    before = fuse.rated_current_a if fuse else None
    ways = ways_below(sight, rcd.ref)
    ratings = [way.rated_current_a for way in ways]
    total = sum((rating for rating in ratings if rating), Decimal(0))
    rated = rcd.rated_current_a
    if not rated:
        yield lacks(rcd.ref, "the rated current")
    elif (before and before <= rated) or (all(ratings) and total <= rated):
        return
    elif before and total > rated:
        yield _found(sight, rcd, (before, total), fuse.ref if fuse else "")
    else:
        yield _lacking(rcd, fuse.ref if fuse else None, before, ways)


def _found(sight: Sight, rcd: Device, of: tuple[Decimal, Decimal], fuse: str) -> Found:
    before, total = of
    figures = (
        figure("Rated current of the RCD", rcd.rated_current_a or 0, "A"),
        figure("Fuse or circuit-breaker before it", before, "A"),
        figure("Ways below it, added up", total, "A", calculated=True),
    )
    return Found(
        (rcd.ref, fuse),
        f"{sight.name(rcd.ref)} is rated {rcd.rated_current_a} A, with {total} A of "
        f"ways below it and {before} A before it.",
        figures,
    )


def _lacking(
    rcd: Device,
    fuse: str | None,
    before: Decimal | None,
    ways: tuple[Device, ...],
) -> CannotTell:
    needs = [Need(ref=w.ref, what="the rating") for w in ways if not w.rated_current_a]
    if not before:
        needs.append(Need(ref=fuse or rcd.ref, what="the rating of the fuse before it"))
    return CannotTell((rcd.ref,), tuple(needs))


def ways_below(sight: Sight, ref: str) -> tuple[Device, ...]:
    """Return the nearest ways below a device that do not only bring in generation."""
    found: dict[str, Device] = {}
    seen, waiting = {ref}, [ref]
    while waiting:
        for fed in fed_by(sight.net, waiting.pop()):
            device = sight.record.find(Device, fed)
            if device is None or fed in seen:
                continue
            seen.add(fed)
            if not protective(device):
                waiting.append(fed)
            elif not _only_generates(sight, device):
                found[fed] = device
    return tuple(found.values())


def _only_generates(sight: Sight, way: Device) -> bool:
    uses = {c.use for c in sight.record.circuits_of(way.ref)}
    return bool(uses) and uses <= {"generation"}
