"""Smoke alarm: sounds when it senses smoke.

One that runs on the mains has a small light, mostly green, that goes out with its
supply; one with a battery only is not fed by any circuit. It may be on a lighting
circuit or a way of its own, and its battery keeps it going. Write down the date printed
on it and which alarms sound with it. Keep all of them working when work is over.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="smoke_alarm",
    label="Smoke alarm",
    order=220,
    symbol=(
        '<circle cx="12" cy="12" r="9"/>'
        '<path d="M9 17.5c-2.5-3.5 2.5-7 0-11M14 17.5c-2.5-3.5 2.5-7 0-11"/>'
    ),
    group="alarms",
    # BS 5839-6:2019, grades D1 and D2: mains with a battery behind it (from memory).
    often_battery=True,
)
