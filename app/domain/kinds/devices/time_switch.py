"""Time switch: puts a load on and off at set hours.

It has a dial with pegs or a small display. It protects against nothing, and most break
the line only. Write down the hours that are set and whether its clock is right. Off by
the clock is not off: what it feeds comes on by itself.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="time_switch",
    label="Time switch",
    order=120,
    symbol=(
        '<path d="M19 2v6M19 22v-6l-4.5-7.5"/>'
        '<circle cx="7" cy="12.3" r="4.7"/>'
        '<path d="M7 9.3v3l2 1.6"/>'
        '<path d="M11.7 12.3h5.3" stroke-dasharray="2 1.3"/>'
    ),
    short="TIME",
    fields=("rated_current_a", "poles"),
    opens="line",
    switches_itself=True,
    outgoing=True,
    modules=2,
)
