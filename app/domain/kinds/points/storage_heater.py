"""Storage heater: stores heat by night and gives it out by day.

It is a heavy, deep heater on a wall, with a switch beside it; some have a second switch
for a daytime fan or boost. Its night supply comes on by itself, so try it within its
hours. Write down both feeds if there are two, the hours and the kilowatts. No supply by
day says nothing about the night.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="storage_heater",
    label="Storage heater",
    order=200,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<rect x="6" y="8" width="12" height="8"/>'
        '<path d="M10 8v8M14 8v8"/>'
    ),
    group="fixed",
)
