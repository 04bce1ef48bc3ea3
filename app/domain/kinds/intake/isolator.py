"""Isolating switch: cuts off all that is behind it, between meter and board.

It is a small box with one lever, often marked 100 A, with tails in and tails out. It
normally breaks both poles and protects against nothing; with it, work on a board needs
no fuse pulled. Write down the rating and what it feeds. With it off, its supply side
and the tails before it stay live; its cover stays on.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="isolator",
    label="Isolating switch",
    order=60,
    symbol=(
        '<path d="M14 2v5M11 7h6M14 22v-6L8.5 9"/><circle cx="14" cy="8.6" r="1.5"/>'
    ),
    usual_owner="consumer",
    who_opens="You may switch it; an electrician may open it.",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
)
