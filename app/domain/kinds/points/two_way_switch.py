"""Two-way light switch: works a light together with another switch elsewhere.

It is found on stairs, landings and in long rooms; its up and down mean neither on nor
off. Its box may hold wires of two circuits, so both floors' lights count as one group
until shown otherwise. Write down which lights it works and where its partner is. It
normally breaks the line only.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="two_way_switch",
    label="Two-way light switch",
    order=110,
    symbol=(
        '<circle cx="12" cy="12" r="3.5"/>'
        '<path d="M14.5 9.5L19.5 3l2.8 2.2M9.5 14.5L4.5 21l-2.8-2.2"/>'
    ),
    group="lights",
    switches="line",
    draws=False,
)
