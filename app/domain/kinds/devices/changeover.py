"""Changeover switch: feeds part of the board from one of two supplies.

Its lever has two on-positions, often marked I, 0 and II, or with the names of the
supplies. It joins one supply or the other, never both. Write down both feeds: with one
supply off, the other may still feed what is behind it. Do not try it out to learn what
it does.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="changeover",
    label="Changeover switch",
    order=100,
    symbol=(
        '<path d="M7 2v3.5M17 2v3.5M12 22v-4M11.2 15L7.8 8.5"/>'
        '<circle cx="7" cy="7" r="1.5"/>'
        '<circle cx="17" cy="7" r="1.5"/>'
        '<circle cx="12" cy="16.5" r="1.5"/>'
    ),
    short="C/O",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
    outgoing=True,
    modules=4,
)
