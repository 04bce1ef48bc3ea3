"""Old rubber or cloth covered cable at the intake.

Looks at:
    Items of the intake whose cable is noted as rubber or cloth covered.
Why it matters:
    The covering goes hard and falls off when it is moved, and leaves live metal bare.
What to do:
    Leave it where it lies. An electrician sees to what is after the meter, the network
    or the supplier to what is before it.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="intake-old-cable", rank="electrician", group="board")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each cable of the intake with an old covering."""
    tails = sight.intake_of("tails", "service_cable", "lateral")
    for item in sight.record.intake:
        if item.condition == "old_cloth":
            whose = "yours" if item.owner == "consumer" else "not yours, or not known"
            yield Found(
                (item.ref,),
                f"{sight.name(item.ref)} has an old rubber or cloth covering. "
                f"Whose it is: {whose}.",
            )
    unseen = refs_of(item for item in tails if item.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at its covering")
