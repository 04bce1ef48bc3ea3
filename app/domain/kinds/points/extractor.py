"""Extractor fan: draws air out of a kitchen, a bathroom or a toilet.

It is often on the lighting circuit and worked by the light's switch, with a run-on
timer that keeps one wire live. A small switch above the door or outside the room may
cut it off. Write down which switch works it and which one cuts it off.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="extractor",
    label="Extractor fan",
    order=140,
    symbol=(
        '<circle cx="12" cy="12" r="9"/>'
        '<path d="M12 12c-1.8-4-6.5-3.6-6.5 0s4.7 4 6.5 0c1.8-4 6.5-3.6 6.5 0s-4.7 '
        '4-6.5 0z"/>'
    ),
    group="lights",
)
