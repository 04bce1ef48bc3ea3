"""Hatches, told apart without colour: six for owners, and one for a blank.

Network, slanting lines; meter operator, dots; yours, clear; landlord, level lines;
shared, lattice; not known, a broken outline.
"""

from __future__ import annotations

from app.drawing.ink import FINE
from app.drawing.svg import Value, element

TILE = 6
_LINES = {
    "network": "M-1 1L1 -1M0 6L6 0M5 7L7 5",
    "consumer": "",
    "landlord": "M0 3H6",
    "shared": "M-1 1L1 -1M0 6L6 0M5 7L7 5M-1 5L1 7M0 0L6 6M5 -1L7 1",
    "unknown": "",
    "blank": "M-1 5L1 7M0 0L6 6M5 -1L7 1",
}
HATCHES = (*_LINES, "meter_operator")


def pattern(code: str, ident: str) -> str:
    """Return the definition of a hatch."""
    frame: dict[str, Value] = {
        "id": ident,
        "width": TILE,
        "height": TILE,
        "patternUnits": "userSpaceOnUse",
    }
    return element("pattern", frame, _tile(code))


def _tile(code: str) -> str:
    if code == "meter_operator":
        return element("circle", {"cx": 3, "cy": 3, "r": 1.3, "fill": "currentColor"})
    ink: dict[str, Value] = {
        "fill": "none",
        "stroke": "currentColor",
        "stroke-width": FINE,
    }
    return element("path", {"d": _LINES.get(code) or "M0 0", **ink})
