"""RCD: switches off when some of the current leaks to earth.

It has a test button, often marked T, and a figure in mA such as 30 mA; most are two
modules wide. It looks after the group of ways behind it, or stands in a box of its own.
It does nothing against overload, or against a shock between line and neutral. Write
down the A, the mA, the type letters, and the S if there is one. The test button tries
the device itself, not the wiring.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="rcd",
    label="RCD",
    order=20,
    symbol=(
        '<path d="M14 2v6M14 22v-6L9 8.5"/>'
        '<path d="M9 18.5a5 1.9 0 1 0 10 0a5 1.9 0 1 0-10 0"/>'
        '<path d="M9 18.5H4.5v-6h7" stroke-dasharray="2 1.3"/>'
    ),
    short="RCD",
    fields=(
        "rated_current_a",
        "residual_current_ma",
        "rcd_type",
        "time_delayed",
        "button_pressed_on",
        "button_every_months",
        "poles",
    ),
    protects=("earth_leakage",),
    opens="line_and_neutral",
    modules=2,
)
