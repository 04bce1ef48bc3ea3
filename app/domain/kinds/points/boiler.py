"""Boiler: heats the home or its hot water with gas, oil or electricity.

It is fed through a fused connection unit as a rule, with its pump, valves and controls;
some of these may have another feed. Write down each switch that puts it off, the fuse,
and the clock or thermostat. Mark heating as missed if it goes off. The gas side is for
a registered gas engineer.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="boiler",
    label="Boiler",
    order=180,
    symbol=(
        '<rect x="4.5" y="2.5" width="15" height="19"/>'
        '<path d="M12 18c-2.8 0-4-1.9-4-4 0-2.8 2.8-4 3.2-7.5 2.6 1.6 4.8 4.6 4.8 '
        '7.5 0 2.1-1.2 4-4 4z"/>'
    ),
    group="fixed",
)
