"""Not known: a thing in the cupboard that no one has made out yet.

Choose this rather than guess: it stays on the list of things to find out. Write down
what is printed on it and where its cables go, with a photograph from where you stand.
It counts as live and as not yours; leave it closed.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="unknown",
    label="Not known",
    order=160,
    symbol=(
        '<rect x="3" y="3" width="18" height="18" stroke-dasharray="3 2"/>'
        '<text x="12" y="16.5" font-size="13" fill="currentColor" stroke="none" '
        'text-anchor="middle">?</text>'
    ),
    usual_owner="unknown",
    who_opens="Ask whose it is before anyone opens it.",
    fields=("rated_current_a", "poles", "seal"),
)
