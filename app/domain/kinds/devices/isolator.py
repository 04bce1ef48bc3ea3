"""Isolating switch: a switch on a board that cuts off what is behind it.

It has a lever and a rating, but no letter before the figure and no test button. It
protects against nothing. Most break line and neutral. Write down the rating and which
ways or which cable it feeds. With it off, the side that feeds it stays live.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="isolator",
    label="Isolating switch",
    order=90,
    symbol=(
        '<path d="M14 2v5M11 7h6M14 22v-6L8.5 9"/><circle cx="14" cy="8.6" r="1.5"/>'
    ),
    short="ISOL",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
    outgoing=True,
    modules=2,
)
