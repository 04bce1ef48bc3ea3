"""A seal at the intake is missing.

Looks at:
    Whether the seal of each item is there, where the item is not yours.
Why it matters:
    Sealed things belong to the network or the supplier. Behind a missing seal nobody
    knows who was there last or how it was left.
What to do:
    Leave it as it is and tell the supplier about a meter, the network about a cut-out.
    Nobody is accused of anything: say when you first saw it.
Source:
    Electricity Safety, Quality and Continuity Regulations 2002, SI 2002/2665, 24, and
    for Northern Ireland NISR 2012/381, 25.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="seal-missing", rank="call", group="network")

SEALED = ("cutout", "meter", "time_switch", "communications_hub")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each thing of others whose seal is not there."""
    theirs = [i for i in sight.intake_of(*SEALED) if i.owner != "consumer"]
    for item in theirs:
        if item.seal == "no":
            yield Found((item.ref,), f"{sight.name(item.ref)} has no seal.")
    unseen = refs_of(item for item in theirs if item.seal == "unknown")
    if unseen:
        yield lacking(unseen, "whether the seal is there")
