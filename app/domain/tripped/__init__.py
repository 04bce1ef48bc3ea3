"""It has tripped, now what?  Screens of one question each, and suspects in order."""

from __future__ import annotations

from app.domain.tripped.screens import FIRST, NAMES_DEVICE, SCREENS, Screen, trail
from app.domain.tripped.suspects import GROUNDS, Suspect, circuits_below, suspects

__all__ = [
    "FIRST",
    "GROUNDS",
    "NAMES_DEVICE",
    "SCREENS",
    "Screen",
    "Suspect",
    "circuits_below",
    "suspects",
    "trail",
]
