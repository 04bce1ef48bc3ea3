"""The rating of the main fuse is not known.

Looks at:
    The rating of the cut-out.
Why it matters:
    Everything after it is judged by this fuse. Cut-outs hold 60, 80 or 100 A, and the
    number on the carrier need not be that of the fuse in it, so none may be taken for
    granted.
What to do:
    Ask the network what is fitted. Never pull the fuse to look.
Source:
    SI 2002/2665, 28, lets an owner ask (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="main-fuse-unknown", rank="record", group="network")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each cut-out without a rating; without a cut-out nothing can be told."""
    cutouts = sight.intake_of("cutout")
    for item in cutouts:
        if not item.rated_current_a:
            yield Found(
                (item.ref,), f"The rating of {sight.name(item.ref)} is not recorded."
            )
    if not cutouts:
        yield lacks(sight.home, "the cut-out, with its rating")
