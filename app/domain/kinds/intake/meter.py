"""Meter: counts the electricity used.

It is a sealed box with a display or a dial, and its number is on its face. One with
five terminals usually has an extra line leaving it, live at some hours only, which
shares the neutral of the other. Write down its kind and number, what leaves it, and
whether the seals are there. It is not yours: never open it, and tell the supplier if it
is loose or a seal is broken.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="meter",
    label="Meter",
    order=40,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 8h18"/>'
        '<text x="12" y="17.8" font-size="9" fill="currentColor" stroke="none" '
        'text-anchor="middle">Wh</text>'
    ),
    usual_owner="meter_operator",
    who_opens="Only the meter operator.",
    fields=("rated_current_a", "seal"),
)
