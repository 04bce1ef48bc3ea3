"""Heater: a fixed electric heater that warms as soon as it is on.

It may be a panel, a towel rail, a fan heater or underfloor heating; a portable one with
a plug does not count. It is fed through a fused connection unit or on a circuit of its
own, and may have a thermostat or timer. Write down the watts printed on it and the
switch that cuts it off. Off by its thermostat is not off.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="heater",
    label="Heater",
    order=190,
    symbol=(
        '<rect x="2.5" y="7" width="19" height="10"/>'
        '<path d="M7.25 7v10M12 7v10M16.75 7v10"/>'
    ),
    group="fixed",
)
