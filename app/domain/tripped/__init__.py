"""It has tripped, now what?  Screens of one question each, and suspects in order."""

from __future__ import annotations

from app.domain.tripped.hanging import (
    Hanging,
    WayBelow,
    borrowed,
    can_trip,
    candidates,
    hanging,
    has_button,
    where,
)
from app.domain.tripped.screens import (
    FIRST,
    SCREENS,
    Screen,
    asked,
    choices_of,
    trail,
)
from app.domain.tripped.sheet import IfItTrips, if_it_trips
from app.domain.tripped.story import Chosen, neutral_lines, story
from app.domain.tripped.suspects import (
    GROUNDS,
    Suspect,
    circuits_below,
    suspects,
)

__all__ = [
    "FIRST",
    "GROUNDS",
    "SCREENS",
    "Chosen",
    "Hanging",
    "IfItTrips",
    "Screen",
    "Suspect",
    "WayBelow",
    "asked",
    "borrowed",
    "can_trip",
    "candidates",
    "choices_of",
    "circuits_below",
    "hanging",
    "has_button",
    "if_it_trips",
    "neutral_lines",
    "story",
    "suspects",
    "trail",
    "where",
]
