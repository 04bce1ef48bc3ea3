"""Pump, motor or fixed machine: anything wired in that turns.

It may be a sump pump, a garage door, a gate, a stairlift, a lathe, a pond pump. It may
start by itself by a float, a timer or a remote control. Write down its watts, its
switch and what it is for, and mark what is missed if it goes off. Keep clear of its
moving parts even when it stands still.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="motor",
    label="Pump, motor or fixed machine",
    order=260,
    symbol=(
        '<circle cx="12" cy="12" r="9.5"/>'
        '<text x="12" y="16.3" font-size="12" fill="currentColor" stroke="none" '
        'text-anchor="middle">M</text>'
    ),
    group="fixed",
)
