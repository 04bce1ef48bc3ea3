"""Blank plate: a plain plate over a box in the wall.

There may be a live cable behind it, or none. Write down where it is, and leave what
feeds it not known until something shows it. It is never spare by its looks, and the
plate stays on.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="blank_plate",
    label="Blank plate",
    order=350,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="6.5" cy="12" r="1.2" fill="currentColor" stroke="none"/>'
        '<circle cx="17.5" cy="12" r="1.2" fill="currentColor" stroke="none"/>'
    ),
    group="other",
    draws=False,
)
