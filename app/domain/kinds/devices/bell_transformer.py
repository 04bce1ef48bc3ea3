"""Bell transformer: makes the extra-low voltage for a bell or a chime.

It is a block of two or so modules without a lever, marked with a few volts, such as 8 V
or 12 V. Its mains side is live whenever what feeds it is on, whether the bell rings or
not. Write down the volts, what it rings, and which device guards it.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="bell_transformer",
    label="Bell transformer",
    order=140,
    symbol=(
        '<circle cx="12" cy="9" r="4.5"/>'
        '<circle cx="12" cy="15" r="4.5"/>'
        '<path d="M12 2v2.5M12 19.5V22"/>'
    ),
    short="BELL",
    outgoing=True,
    modules=2,
)
