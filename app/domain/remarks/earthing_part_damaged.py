"""A part of the earthing is broken, loose or wet.

Looks at:
    What is seen of the condition of the earthing terminal and conductor, the bonds and
    the electrode.
Why it matters:
    With the earth parted, metal things stay live in a fault and nothing opens.
What to do:
    Touch none of it, a loose clamp included. Ask an electrician soon.
Source:
    Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import CONDITIONS
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import EARTHING, Sight, refs_of

KIND = RemarkKind(code="earthing-part-damaged", rank="electrician", group="earthing")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each part of the earthing that is not sound."""
    parts = sight.intake_of(*EARTHING)
    for item in parts:
        if item.condition not in ("sound", "unknown"):
            seen = CONDITIONS[item.condition].lower()
            yield Found((item.ref,), f"{sight.name(item.ref)} was seen: {seen}.")
    unseen = refs_of(item for item in parts if item.condition == "unknown")
    if unseen:
        yield lacking(unseen, "a look at the condition")
