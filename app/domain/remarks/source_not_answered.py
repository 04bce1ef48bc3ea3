"""Whether something else can feed the home is not answered.

Looks at:
    Solar panels, batteries, generators, vehicles, next door and the landlord.
Why it matters:
    What is not known counts as live: with every switch off, something else may still
    feed a part of the home.
What to do:
    Answer each with yes or no. Look on the roof, in the garage and at the boards for
    notices; ask who lived there before.
Source:
    BS 7671:2018+A2:2022, 514.15.1 (from memory); else common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record.choices import SOURCE_KINDS
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight, refs_of
from app.domain.unknowns import unanswered_sources

KIND = RemarkKind(
    code="source-not-answered",
    rank="record",
    group="sources",
    always_tells="Each is answered or it is not.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the kinds of source that nobody has answered."""
    kinds = unanswered_sources(sight.record)
    asked = refs_of(s for s in sight.record.sources if s.present == "unknown")
    if kinds:
        names = ", ".join(SOURCE_KINDS[kind].lower() for kind in kinds)
        yield Found((sight.home, *asked), f"Not answered: {names}.")
