"""Something else: a thing of the intake that this list does not hold.

Write down its name, what is printed on it, what feeds it and what it feeds. A seal
means that it is not yours. Ask whose it is before anyone opens it.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="other",
    label="Something else",
    order=150,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="7" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="12" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
        '<circle cx="17" cy="12" r="1.3" fill="currentColor" stroke="none"/>'
    ),
    usual_owner="unknown",
    who_opens="Ask whose it is before anyone opens it.",
    fields=("rated_current_a", "poles", "seal"),
)
