"""Cooker, oven or hob: a cooking appliance wired in.

One that has a plug is a thing at a socket-outlet instead. It is fed through a cooker
switch, or a small oven through a fused connection unit. Write down the watts or
kilowatts on its plate, seen by opening the oven's door or from its papers. A gas hob
with a spark may be on the sockets' circuit.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="cooker",
    label="Cooker, oven or hob",
    order=80,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="8" cy="8" r="2.4"/>'
        '<circle cx="16" cy="8" r="2.4"/>'
        '<circle cx="8" cy="16" r="2.4"/>'
        '<circle cx="16" cy="16" r="2.4"/>'
    ),
    group="fixed",
)
