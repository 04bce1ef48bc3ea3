"""Light switch: works a light from one place.

It normally breaks the line only, and its box stays live with the switch off. A plate
with several switches may hold more than one circuit: record one point for each switch
whose light is on another circuit. Write down which lights it works. A dimmer counts as
a switch; say so in the note.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="switch",
    label="Light switch",
    order=100,
    symbol=('<circle cx="7" cy="17" r="3.5"/><path d="M9.5 14.5L18.5 4l3 2.6"/>'),
    group="lights",
    switches="line",
    draws=False,
)
