"""Inverter: turns direct current from panels or a battery into mains.

It is a box with a display or lights, in the loft, the garage or outdoors. It feeds the
circuit that it is joined to; it is meant to stop when the mains goes, unless it has a
backup output. Write down its rating, each isolator beside it, and record its source
too, with what it can feed back through. Tie it to its d.c. isolator and that to each
source that it serves: until then it counts as live. The wires from the panels are live
in daylight whatever is switched off.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="inverter",
    label="Inverter",
    order=300,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 21L21 3M6 6.5h6M6 9h1.5M8.5 9H10M12 17.5c1.2-2.6 2.4-2.6 '
        '3.4-.6s2.2 2 3.4-.6"/>'
    ),
    group="fixed",
)
