"""Something at the intake is loose or hanging.

Looks at:
    Items of the intake that are noted as loose or hanging.
Why it matters:
    A meter or cable that hangs pulls at its terminals, and a loose terminal heats.
What to do:
    Do not push it back. Tell the supplier about a meter, the network about anything
    before it; an electrician sees to what is after the meter.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import EARTHING, Sight, refs_of

KIND = RemarkKind(code="intake-loose", rank="call", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each item of the intake that hangs loose."""
    for item in sight.record.intake:
        if item.condition == "loose" and item.kind not in EARTHING:
            yield Found((item.ref,), f"{sight.name(item.ref)} is loose or hangs.")
    unseen = refs_of(i for i in sight.intake_of("meter") if i.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look whether it hangs firm")
