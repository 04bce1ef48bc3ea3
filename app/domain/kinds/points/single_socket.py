"""Single socket-outlet: a plate with one outlet for a plug.

It may be in the ring, on a spur, or behind a fused connection unit: that does not show
from outside. Write down where it is and what is always plugged in there. A round-pin
one may be on a lighting circuit. Hidden ones feed fridges, washing machines and hobs
behind units.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="single_socket",
    label="Single socket-outlet",
    order=20,
    symbol='<path d="M4 20a8 8 0 0 1 16 0M12 12V4M7 12h10"/>',
    group="sockets",
)
