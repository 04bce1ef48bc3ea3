"""Electric shower: heats its water as it runs.

It is a box on the wall with a hose; a mixer shower without a cable does not count. It
has a circuit of its own as a rule, with a large switch or cord in or near the room.
Write down the kilowatts printed on it, such as 8.5 kW, without opening it. If it trips,
smells or tingles, leave it off and call an electrician.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="shower",
    label="Electric shower",
    order=150,
    symbol=(
        '<rect x="3" y="3" width="18" height="9"/>'
        '<circle cx="12" cy="7.5" r="2"/>'
        '<path d="M7 15v2.5M7 19.5V22M12 14v2.5M12 18.5V21M17 15v2.5M17 19.5V22"/>'
    ),
    group="fixed",
)
