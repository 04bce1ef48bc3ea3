"""Heat alarm: sounds when the air grows hot, for a kitchen or a garage.

It looks like a smoke alarm and says heat on its face. It is mostly linked with the
smoke alarms and shares their feed and their way of keeping on by battery. Write down
the date printed on it. It does not sense smoke, so it does not stand in for a smoke
alarm.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="heat_alarm",
    label="Heat alarm",
    order=230,
    symbol=(
        '<circle cx="12" cy="12" r="9"/>'
        '<path d="M12 6v8"/>'
        '<circle cx="12" cy="15.5" r="2.4" fill="currentColor" stroke="none"/>'
    ),
    group="alarms",
    # BS 5839-6:2019, grades D1 and D2: mains with a battery behind it (from memory).
    often_battery=True,
)
