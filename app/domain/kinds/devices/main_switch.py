"""Main switch: the switch meant to cut off everything on its board.

It is usually the widest switch, at one end, marked with a figure such as 100 A and with
1 and 0. A household one breaks line and neutral together; an old one may not, or may
leave out some of the ways. It protects against nothing. Write down its rating, and the
poles if a drawing on its face shows them. With it off, its incoming terminals and the
tails stay live.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="main_switch",
    label="Main switch",
    order=10,
    symbol=(
        '<path d="M8 2v5M6 7h4M8 22v-6L3.8 9.4M18 2v5M16 7h4M18 22v-6l-4.2-6.6"/>'
        '<circle cx="8" cy="8.4" r="1.3"/>'
        '<circle cx="18" cy="8.4" r="1.3"/>'
        '<path d="M6 12.8h10" stroke-dasharray="2 1.3"/>'
    ),
    short="MAIN",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
    modules=2,
)
