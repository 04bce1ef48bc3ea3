"""Line and neutral were found swapped.

Looks at:
    What papers say of the polarity, for each circuit, device and the supply.
Why it matters:
    A switch or a breaker may then part the neutral and leave the line live: what is
    switched off gives a shock all the same.
What to do:
    Do not open anything on it, and have an electrician put it right. Where it is the
    supply itself, ring 105 at once.
Source:
    BS 7671:2018+A2:2022, 132.14.1 and 643.6 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.polarity import polarity_wrong

KIND = RemarkKind(
    code="polarity-wrong",
    rank="call",
    group="call",
    always_tells="where no paper says that it is wrong there is nothing to tell",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each thing of which the last word is that it is wrong."""
    for about in dict.fromkeys(result.about for result in sight.record.results):
        if result := polarity_wrong(sight.record, about):
            ref = about or sight.home
            yield Found(
                (ref,),
                f"{sight.name(ref)}: polarity not correct "
                f"({source_of(sight.record, result)}).",
            )
