"""Vehicle charger: charges an electric car from a circuit of its own.

It is a box with a cable or an outlet, on a wall or a post; a car charged from a plain
socket does not count. It may hold protection of its own and limit itself to the home's
other load. Write down its kilowatts or amperes, what feeds it, and whether a car can
feed the home through it. The network has to be told of a new one.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="vehicle_charger",
    label="Vehicle charger",
    order=240,
    symbol=(
        '<rect x="2.5" y="3" width="10" height="18"/>'
        '<path d="M8.5 7l-2.7 4.5h3.6L6.7 16"/>'
        '<path d="M12.5 17.5H16a2 2 0 0 0 2-2V9M16.7 4.5V2M19.3 4.5V2"/>'
        '<rect x="15.2" y="4.5" width="5.6" height="4.5"/>'
    ),
    group="fixed",
)
