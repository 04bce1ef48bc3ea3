"""What protects a point, and where along the way the owner changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from decimal import Decimal
from itertools import pairwise

from app.domain.answers import Cover, Overcurrent, Rcd
from app.domain.chain import (
    Chain,
    Step,
    chains,
    is_overcurrent,
    is_rcd,
    may_be_rcd,
)
from app.domain.feedback import may_go_on
from app.domain.network import MOST_PATHS, Network, joined_at, upstream
from app.domain.record import Point, Source

# BS 7671:2018+A2:2022, 415.1.1: additional protection is an RCD of 30 mA or less that
# opens within the time its standard sets, so none that is time-delayed, type S.
PEOPLE_MA = Decimal(30)
# Sources behind someone else's board, of which the record of this home says nothing.
ELSEWHERE = frozenset({"neighbour", "landlord", "other"})
# Sources whose own outlet is a direct current as a rule; all others give mains.
NOT_MAINS = frozenset({"solar", "battery"})


def cover(point: Point, line: tuple[Chain, ...], past: Iterable[str] = ()) -> Cover:
    """Return whether an RCD of 30 mA or less stands on every chain to a point.

    Sources that reach it ``past`` such an RCD (see `past_rcd`) are one feed more, of
    which nobody can tell whether one stands before it.

    The point itself does not count: an RCD in it guards at most what is behind it.
    What runs on extra-low voltage from a mains circuit has a mains side, and is judged
    as any other. An RCD that failed guards nobody: where the record has no other one,
    the answer is *failed*, which is no yes.
    """
    if point.current in ("dc", "extra_low") and not any(map(_may_be_mains, line)):
        return "not_mains"
    found: set[Cover] = {_cover_of(chain) for chain in line}
    if any(past):
        found.add("unknown")
    if len(line) >= MOST_PATHS:
        return "unknown"
    if len(found) == 1:
        return found.pop()
    if found == {"yes", "failed"}:
        return "failed"
    return "some" if found & {"yes", "failed"} else "unknown"


def past_rcd(net: Network, line: tuple[Chain, ...]) -> tuple[str, ...]:
    """Return the sources that can feed a point past the RCDs that count for it.

    Such a source joins behind the RCD and may run without the network, so that it goes
    on feeding with that RCD open; by the last thing that it shares with the chain it
    turns towards the point.  An RCD that it would pass backwards does not count: the
    record does not say whether it works that way round.
    """
    return tuple(
        source.ref
        for source in net.record.sources
        if may_go_on(source) and (joined := joined_at(net.record, source))
        for above in [{joined, *upstream(net, joined)}]
        if any(_passes_none(chain, above) for chain in line)
    )


def earthing_open(net: Network, line: tuple[Chain, ...]) -> tuple[str, ...]:
    """Return the sources of one's own whose neutral may have no earth behind an RCD.

    An RCD opens on a fault to earth only where the neutral of the source is earthed.
    One that runs without the network needs an earth of its own for that, and no record
    holds whether it has (BS 7671:2018+A2:2022, 551.4.3.2, from memory).
    """
    begins = (
        net.record.find(Source, chain.steps[0].ref)
        for chain in line
        if any(_guards_people(step) for step in chain.steps[:-1])
    )
    own = (s for s in begins if s and s.kind != "network" and s.kind not in ELSEWHERE)
    return tuple(dict.fromkeys(source.ref for source in own if may_go_on(source)))


def doubts_of_cover(past: Iterable[str], earthing_open: Iterable[str]) -> str:
    """Return what an RCD that counts does not guard against, by the names of sources.

    It is the end of a sentence, empty where there are none.
    """
    behind = "".join(
        f"; {name} joins behind the RCD, and may feed on with it open" for name in past
    )
    unearthed = "".join(
        f"; fed by {name}, it opens only if the neutral there is earthed, which is not "
        "recorded"
        for name in earthing_open
    )
    return behind + unearthed


def without_30_ma(net: Network) -> tuple[str, ...]:
    """Return the mains points that no RCD of 30 mA or less stands before."""
    return tuple(
        point.ref
        for point in net.record.points
        if cover(point, chains(net, point.ref)) == "no"
    )


def boundaries(line: Iterable[Chain]) -> tuple[tuple[str, str], ...]:
    """Return each pair of neighbouring steps of the chains that changes hands."""
    return _pairs(line, _differs)


def boundaries_unknown(line: Iterable[Chain]) -> tuple[tuple[str, str], ...]:
    """Return each pair of which it is not known whether it changes hands."""
    return _pairs(line, _may_differ)


def _pairs(
    line: Iterable[Chain], chosen: Callable[[Step, Step], bool]
) -> tuple[tuple[str, str], ...]:
    pairs = (
        (one.ref, other.ref)
        for chain in line
        for one, other in pairwise(chain.steps)
        if chosen(one, other)
    )
    return tuple(dict.fromkeys(pairs))


def _differs(one: Step, other: Step) -> bool:
    return "unknown" not in (one.owner, other.owner) and one.owner != other.owner


def _may_differ(one: Step, other: Step) -> bool:
    """A circuit belongs to whoever owns its way, and a board has one owner."""
    follows = other.sort in ("circuit", "point")
    same_board = one.board is not None and one.board == other.board
    return "unknown" in (one.owner, other.owner) and not follows and not same_board


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
            failed=step.failed,
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
    guards = [step for step in before if _guards_people(step)]
    if guards:
        return "failed" if all(step.failed for step in guards) else "yes"
    if not chain.begins_at_source or before[0].kind in ELSEWHERE:
        return "unknown"
    sure = all(ratings) and not any(may_be_rcd(step) for step in before)
    return "no" if sure else "unknown"


def _passes_none(chain: Chain, above: set[str]) -> bool:
    """Return whether every RCD of a chain that counts stands before where one turns."""
    before = chain.steps[:-1]
    shared = [n for n, step in enumerate(before) if step.ref in above]
    guards = [n for n, step in enumerate(before) if _guards_people(step)]
    return bool(shared and guards) and max(guards) <= max(shared)


def _guards_people(step: Step) -> bool:
    """Where its delay is not known it counts: common practice, no source."""
    small = step.residual_current_ma and step.residual_current_ma <= PEOPLE_MA
    return bool(is_rcd(step) and small and step.time_delayed != "yes")


def _may_be_mains(chain: Chain) -> bool:
    passes_circuit = any(step.sort == "circuit" for step in chain.steps)
    begins = chain.steps[0]
    return passes_circuit or begins.sort != "source" or begins.kind not in NOT_MAINS
