"""Main earthing terminal: where the earthing and the bonding wires meet.

It is a bar or block with several green and yellow wires, near the meter or in the
board. The block in the home is yours; a terminal on the cut-out, where the network
gives one, is the network's. Write down which wires go to it and the words on their
labels. Never loosen anything on it, and do not work out the earthing arrangement from
how it looks.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="earthing_terminal",
    label="Main earthing terminal",
    order=110,
    symbol=(
        '<circle cx="12" cy="12" r="9.5"/>'
        '<path d="M12 4.5V12M6.5 12h11M8.5 15h7M10.5 18h3"/>'
    ),
    usual_owner="consumer",
    who_opens="An electrician. Never loosen anything on it.",
    carries_supply=False,
)
