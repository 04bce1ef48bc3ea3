"""Direct-current isolator: a switch in the wires between panels and inverter.

It is a rotary switch in a small box by the inverter or the panels, often with a sun or
d.c. on its label. Off, it parts the two sides; the side to the panels stays live in
daylight. Write down what it parts and what its label says. Where it is hot, wet,
cracked or brown: do not touch it, and call the installer.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="dc_isolator",
    label="Direct-current isolator",
    order=310,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 10h5l6-4.5M16 10h5"/>'
        '<path d="M6 14.5h12M6 17.5h3M10.5 17.5h3M15 17.5h3"/>'
    ),
    group="fixed",
    # Its poles are those of a direct current: it opens neither line nor neutral.
    switches="none",
    draws=False,
)
