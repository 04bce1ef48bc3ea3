"""It has tripped, now what?  Screens of one question each, and suspects in order."""

from __future__ import annotations

from app.domain.tripped.hanging import (
    Hanging,
    Moves,
    WayBelow,
    borrowed,
    can_trip,
    candidates,
    hanging,
    has_button,
    missed,
    where,
)
from app.domain.tripped.log import earlier, entry, how_often
from app.domain.tripped.screens import (
    FIRST,
    SCREENS,
    Screen,
    asked,
    choices_of,
    trail,
)
from app.domain.tripped.sheet import IfItTrips, if_it_trips
from app.domain.tripped.story import (
    TO_ADD,
    Chosen,
    moved,
    named,
    neutral_lines,
    story,
)
from app.domain.tripped.suspects import (
    GROUNDS,
    Suspect,
    circuits_below,
    suspects,
)
from app.domain.tripped.wrong import wrong_lines, wrong_on

__all__ = [
    "FIRST",
    "GROUNDS",
    "SCREENS",
    "TO_ADD",
    "Chosen",
    "Hanging",
    "IfItTrips",
    "Moves",
    "Screen",
    "Suspect",
    "WayBelow",
    "asked",
    "borrowed",
    "can_trip",
    "candidates",
    "choices_of",
    "circuits_below",
    "earlier",
    "entry",
    "hanging",
    "has_button",
    "how_often",
    "if_it_trips",
    "missed",
    "moved",
    "named",
    "neutral_lines",
    "story",
    "suspects",
    "trail",
    "where",
    "wrong_lines",
    "wrong_on",
]
