"""Time switch or teleswitch: gives the order for off-peak hours.

It is a sealed box beside the meter with a clock, or one that listens for a radio
signal. That signal is being ended area by area from the middle of 2025: after it, what
an old box works may stay off, or stay on. Here it stands for the order only: where the
off-peak tails pass through it, record a contactor there too. Write down whether it is
sealed, and the hours if they are shown. What it works comes on by itself.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

# The end of the radio signal: from memory of the announcements of 2025.
KIND = IntakeKind(
    code="time_switch",
    label="Time switch or teleswitch",
    order=80,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<circle cx="12" cy="12" r="6"/>'
        '<path d="M12 8v4l2.8 2"/>'
    ),
    usual_owner="meter_operator",
    who_opens="Only the meter operator, if it is theirs.",
    carries_supply=False,
    fields=("seal",),
    switches_itself=True,
)
