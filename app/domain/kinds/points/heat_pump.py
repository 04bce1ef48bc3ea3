"""Heat pump: an outdoor unit with a fan that heats the home or its water.

It has a circuit of its own as a rule, an isolator beside it outdoors, and a controller,
a pump and perhaps a back-up heater indoors. Write down the rating plate's figures, and
each isolator and what it cuts off. The network has to be told of a new one. An air
conditioner with an outdoor unit is recorded here too.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="heat_pump",
    label="Heat pump",
    order=210,
    symbol=(
        '<rect x="2" y="4" width="20" height="16"/>'
        '<circle cx="9.5" cy="12" r="5.5"/>'
        '<path d="M9.5 6.5v11M4 12h11M17.5 8H20M17.5 12H20M17.5 16H20"/>'
    ),
    group="fixed",
)
