"""Shaver unit: a two-pin outlet for a razor, by a mirror or a basin.

One with a transformer, for bathrooms, is larger and may hum; some are part of a light.
It gives a small current only, and is often on the lighting circuit. Write down where it
is and whether it is in a light. It is not for a hair dryer or a heater.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="shaver_unit",
    label="Shaver unit",
    order=250,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="10" cy="8.5" r="3"/>'
        '<circle cx="14" cy="8.5" r="3"/>'
        '<path d="M9.5 14.5v4M14.5 14.5v4"/>'
    ),
    group="lights",
)
