"""Changeover switch or battery gateway: chooses which supply feeds the home.

It is a switch with two on-positions, or a box beside a battery that changes over by
itself. With the network off it may feed the home from a battery or a generator. Write
down both feeds and which parts of the home it serves. Off at the meter is not off
behind it, until the other supply is off too.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="changeover",
    label="Changeover switch or battery gateway",
    order=105,
    symbol=(
        '<path d="M7 2v3.5M17 2v3.5M12 22v-4M11.2 15L7.8 8.5"/>'
        '<circle cx="7" cy="7" r="1.5"/>'
        '<circle cx="17" cy="7" r="1.5"/>'
        '<circle cx="12" cy="16.5" r="1.5"/>'
    ),
    usual_owner="consumer",
    who_opens="You may switch it if it has a handle; an electrician may open it.",
    fields=("rated_current_a", "poles"),
    opens="line_and_neutral",
)
