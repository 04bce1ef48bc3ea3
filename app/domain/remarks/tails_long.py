"""The tails are long for tails without a fuse of their own.

Looks at:
    The length of your tails, and whether a fuse of yours stands before them.
Why it matters:
    Long tails are a long run of cable that only the network's fuse protects. Networks
    set the limit themselves, often 3 m and sometimes 2 m.
What to do:
    Ask the network for its limit before anything is changed there; an electrician can
    fit a switch-fuse at the meter.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import IntakeItem
from app.domain.remarks._kind import Found, Outcome, RemarkKind, figure, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="tails-long", rank="knowing", group="network")

USUAL_LIMIT_M = Decimal(3)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each of your tails that is longer than networks usually take."""
    for tails in sight.intake_of("tails"):
        if tails.owner != "consumer" or _own_fuse(sight, tails):
            continue
        if tails.length_m is None:
            yield lacks(tails.ref, "the length")
        elif tails.length_m > USUAL_LIMIT_M:
            yield Found(
                (tails.ref,),
                f"{sight.name(tails.ref)} are {tails.length_m} m long.",
                (
                    figure("Length", tails.length_m, "m"),
                    figure("Usual limit", USUAL_LIMIT_M, "m"),
                ),
            )


def _own_fuse(sight: Sight, tails: IntakeItem) -> bool:
    fuse = sight.overcurrent(tails.ref)
    return fuse is not None and fuse.owner == "consumer"
