"""Lights without a 30 mA RCD.

Looks at:
    Every RCD before each light and what goes with the lights, bathrooms apart.
Why it matters:
    Lights are opened and changed by people, and their cables run where nails go.
What to do:
    Nothing by itself. Have it added when the board is next worked on.
Source:
    BS 7671:2018+A2:2022, 411.3.4 (from memory).
Not retrospective:
    Asked of new lights in homes since 1 January 2019.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._cover import without_cover
from app.domain.remarks._kind import Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="lights-without-30-ma", rank="knowing", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield the circuits with such lights."""
    yield from without_cover(sight, "lights")
