"""Socket-outlet, size not noted: one or two outlets, no one wrote which.

Use it for a list copied from somewhere else, or where only a plug can be seen. Write
down where it is; change it to single or double when you stand in front of it.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="socket",
    label="Socket-outlet, size not noted",
    order=30,
    symbol=(
        '<path d="M4 20a8 8 0 0 1 16 0M12 12V4M7 12h10"/>'
        '<text x="12" y="20.5" font-size="8" fill="currentColor" stroke="none" '
        'text-anchor="middle">?</text>'
    ),
    group="sockets",
)
