"""What protects a point, and where along the way the owner changes."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from itertools import pairwise

from app.domain.answers import Cover, Overcurrent, Rcd
from app.domain.chain import (
    Chain,
    Known,
    Step,
    chains,
    is_overcurrent,
    is_rcd,
    may_be_rcd,
)
from app.domain.network import MOST_PATHS, Network
from app.domain.record import Point

# BS 7671:2018+A2:2022, 415.1.1: additional protection is an RCD of 30 mA or less.
PEOPLE_MA = Decimal(30)
# Sources behind someone else's board, of which the record of this home says nothing.
ELSEWHERE = frozenset({"neighbour", "landlord", "other"})


def cover(point: Point, line: tuple[Chain, ...]) -> Cover:
    """Return whether an RCD of 30 mA or less stands on every chain to a point.

    The point itself does not count: an RCD in it guards only what is behind it.
    """
    if point.current in ("dc", "extra_low"):
        return "not_mains"
    found = {_cover_of(chain) for chain in line}
    if len(line) >= MOST_PATHS:
        return "unknown"
    if len(found) == 1:
        return found.pop()
    return "some" if "yes" in found else "unknown"


def without_30_ma(net: Network) -> tuple[str, ...]:
    """Return the mains points that no RCD of 30 mA or less stands before."""
    known: Known = {}
    return tuple(
        point.ref
        for point in net.record.points
        if cover(point, chains(net, point.ref, known=known)) == "no"
    )


def boundaries(line: Iterable[Chain]) -> tuple[tuple[str, str], ...]:
    """Return each pair of neighbouring steps of the chains whose owners differ."""
    pairs = (
        (one.ref, other.ref)
        for chain in line
        for one, other in pairwise(chain.steps)
        if one.owner != other.owner
    )
    return tuple(dict.fromkeys(pairs))


def overcurrents(before: Iterable[Step]) -> tuple[Overcurrent, ...]:
    """Return the fuses and circuit-breakers among the steps."""
    return tuple(
        Overcurrent(
            ref=step.ref,
            title=step.title,
            kind=step.kind,
            rated_current_a=step.fuse_a or step.rated_current_a,
            curve=step.curve,
        )
        for step in before
        if is_overcurrent(step)
    )


def rcds(before: Iterable[Step]) -> tuple[Rcd, ...]:
    """Return the RCDs among the steps."""
    return tuple(
        Rcd(
            ref=step.ref,
            title=step.title,
            residual_current_ma=step.residual_current_ma,
            rcd_type=step.rcd_type,
            time_delayed=step.time_delayed,
        )
        for step in before
        if is_rcd(step)
    )


def local_fuses(before: Iterable[Step]) -> dict[str, Decimal | None]:
    """Return the fuses in points among the steps; None: its rating is not recorded."""
    return {
        step.ref: step.fuse_a
        for step in before
        if step.sort == "point" and is_overcurrent(step)
    }


def _cover_of(chain: Chain) -> Cover:
    before = chain.steps[:-1]
    ratings = [step.residual_current_ma for step in before if is_rcd(step)]
    if any(ma and ma <= PEOPLE_MA for ma in ratings):
        return "yes"
    if not chain.begins_at_source or before[0].kind in ELSEWHERE:
        return "unknown"
    sure = all(ratings) and not any(may_be_rcd(step) for step in before)
    return "no" if sure else "unknown"
