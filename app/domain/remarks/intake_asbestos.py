"""Something at the intake may hold asbestos.

Looks at:
    Items of the intake that are noted as perhaps holding asbestos.
Why it matters:
    Old meter boards and flash guards were made with it; dust is what harms.
What to do:
    Leave it whole: do not drill, saw, sand or vacuum. Tell everyone who comes to work
    there before they begin. Whether it is asbestos only a laboratory can say.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="intake-asbestos", rank="knowing", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each item of the intake that may hold asbestos."""
    for item in sight.record.intake:
        if item.condition == "asbestos":
            yield Found((item.ref,), f"{sight.name(item.ref)} may hold asbestos.")
    unseen = refs_of(i for i in sight.record.intake if i.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at what it is made of")
