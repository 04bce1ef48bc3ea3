"""Communications hub: sends a smart meter's readings.

It is the small box with lights that is fixed to the top of a smart meter or stands
beside it. It feeds nothing in the home. Write down only that it is there. It is sealed
and not yours: leave it in its place.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="communications_hub",
    label="Communications hub",
    order=50,
    symbol=(
        '<rect x="4" y="13" width="16" height="8"/>'
        '<path d="M9.5 9.8a3.5 3.5 0 0 1 5 0M7 7a7 7 0 0 1 10 0M4.5 4.2a10.6 10.6 0 '
        '0 1 15 0M8 17h3"/>'
        '<circle cx="15.5" cy="17" r="1.2" fill="currentColor" stroke="none"/>'
    ),
    usual_owner="meter_operator",
    who_opens="Only the meter operator.",
    carries_supply=False,
    fields=("seal",),
)
