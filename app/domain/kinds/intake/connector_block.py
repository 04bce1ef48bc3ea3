"""Service connector block: splits one pair of tails into several.

It is a small closed box or a pair of them, without a switch, with more cables out than
in. It may mean that the home has more than one main switch: follow each cable and
record each board. Write down how many pairs leave it and where they go. It protects
nothing and cannot be switched off from its own place; its cover stays on.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="connector_block",
    label="Service connector block",
    order=70,
    symbol=(
        '<rect x="3" y="9" width="18" height="6"/>'
        '<path d="M12 2v7M6 15v7M12 15v7M18 15v7"/>'
        '<circle cx="6" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="12" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="18" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
    ),
    usual_owner="consumer",
    who_opens="An electrician, with the supply off upstream.",
    fields=("rated_current_a",),
)
