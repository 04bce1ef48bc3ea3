"""Pull cord for a light: a switch on the ceiling worked by a cord.

It is found mostly in bathrooms and over beds. A light one has a thin cord; a large one
with a red line or a small lamp is for a shower or heater, so choose that kind instead.
Write down what it works. It normally breaks the line only.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="pull_cord",
    label="Pull cord for a light",
    order=120,
    symbol=(
        '<circle cx="9" cy="8.5" r="3.5"/>'
        '<path d="M12 7L20 3l1.5 3M9 12v6.5"/>'
        '<path d="M9 22l-2-4h4z" fill="currentColor" stroke="none"/>'
    ),
    group="lights",
    switches="line",
    draws=False,
)
