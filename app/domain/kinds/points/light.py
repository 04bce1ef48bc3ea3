"""Light: a fitting in or on the ceiling or a wall, with its lamp.

A row of spotlights that one switch works may be one point with a count. Write down
where it is and which switches work it; a stair or landing light worked from two floors
may use two circuits. Low-voltage spots have a driver or a transformer, often above the
ceiling. For any work on lighting use the main switch: a shared neutral does not show.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="light",
    label="Light",
    order=90,
    symbol=(
        '<circle cx="12" cy="12" r="9"/>'
        '<path d="M5.6 5.6l12.8 12.8M18.4 5.6L5.6 18.4"/>'
    ),
    group="lights",
)
