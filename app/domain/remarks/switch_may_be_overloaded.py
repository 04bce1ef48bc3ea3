"""Nothing in the record keeps a main switch from being overloaded.

Looks at:
    The rated current of each main switch or isolating switch, the nearest fuse or
    circuit-breaker before it, the ways below it, and circuits with no fuse between.
Why it matters:
    A switch does not guard itself against too much current.
What to do:
    Ask an electrician. What the maker says goes first.
Source:
    BS 7671:2018+A2:2022, 536.4.202 (from memory); the test by the fuse before or the
    sum of the ways is a cautious rule of common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.chain import Step
from app.domain.circuits.guard import rated_of
from app.domain.load.rcd import behind
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

KIND = RemarkKind(code="switch-may-be-overloaded", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each switch that is rated below the fuse before it and its ways."""
    for switch in sight.record.devices:
        if switch.kind in ("main_switch", "isolator"):
            yield from _judged(sight, switch)


def _judged(sight: Sight, switch: Device) -> Iterator[Outcome]:
    fuse = sight.overcurrent(switch.ref)
    if not switch.rated_current_a:
        yield lacks(switch.ref, "the rated current")
    elif fuse is None or fuse.rated_current_a is None:
        need = Need(ref=fuse.ref if fuse else switch.ref, what="the fuse before it")
        yield CannotTell((switch.ref,), (need,))
    elif fuse.rated_current_a > switch.rated_current_a:
        yield from _by_ways(sight, switch, fuse)


def _by_ways(sight: Sight, switch: Device, fuse: Step) -> Iterator[Outcome]:
    ratings = [rated_of(d) for d in _protective_below(sight, switch.ref)]
    total = sum((rating.value for rating in ratings if rating), Decimal(0))
    rated = switch.rated_current_a or Decimal(0)
    _, bare = behind(sight.net, switch.ref)
    if all(ratings) and total <= rated and not bare:
        return
    yield Found(
        (switch.ref, fuse.ref),
        f"{sight.name(switch.ref)} is rated {rated} A behind a fuse of "
        f"{fuse.rated_current_a} A.",
        (
            figure("Rated current of the switch", rated, "A"),
            figure("Fuse before it", fuse.rated_current_a or 0, "A"),
            figure("Ways below it, as far as known", total, "A", calculated=True),
        ),
    )


def _protective_below(sight: Sight, ref: str) -> tuple[Device, ...]:
    board = sight.record.find(Device, ref)
    own = sight.record.devices_of(board.board) if board else ()
    below = sight.below(ref)
    return tuple(d for d in own if d.ref in below and protective(d))
