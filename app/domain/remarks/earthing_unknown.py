"""The earthing arrangement is not known.

Looks at:
    The earthing arrangement of the home.
Why it matters:
    It decides what clears a fault: the fuses, or an RCD. It can never be told from how
    the cupboard looks.
What to do:
    Read it in an electrician's document, or ask the network.
Source:
    BS 7671:2018+A2:2022, 312.2 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="earthing-unknown",
    rank="record",
    group="earthing",
    always_tells="The arrangement is said or it is not.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield that nobody has said how the home is earthed."""
    if sight.record.home.earthing == "unknown":
        yield Found((sight.home,), "The earthing arrangement is not recorded.")
