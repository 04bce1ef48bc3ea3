"""Contactor: puts the off-peak supply on when a clock or a meter orders it.

It is a closed box between meter and off-peak board; it may hum or click. It protects
against nothing and is no isolator: what it feeds may come on at any hour. Whose it is
differs: a sealed one is not yours. Write down its rating, what works it, its hours and
its seal; its cover stays on.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="contactor",
    label="Contactor",
    order=90,
    symbol=(
        '<path d="M17 2v6M17 22v-6L12 8.5M17 4.4a1.8 1.8 0 0 1 0 3.6"/>'
        '<rect x="2.5" y="9" width="5.5" height="6.5"/>'
        '<path d="M8 12.3h6.3" stroke-dasharray="2 1.3"/>'
    ),
    usual_owner="unknown",
    who_opens="Ask whose it is before anyone opens it.",
    fields=("rated_current_a", "poles", "seal"),
    opens="line_and_neutral",
    switches_itself=True,
)
