"""Double socket-outlet: a plate with two outlets for plugs.

It counts as one point; nearly always both outlets are on one circuit, but try both. A
plug-in lamp or a loud radio shows when it goes off, and proves nothing more. Write down
where it is, and the mA if it has a test button of its own. Look behind furniture and
inside cupboards too.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="double_socket",
    label="Double socket-outlet",
    order=10,
    symbol=(
        '<path d="M4 20a8 8 0 0 1 16 0M12 12V4M7 12h10"/>'
        '<text x="12" y="20.5" font-size="8" fill="currentColor" stroke="none" '
        'text-anchor="middle">2</text>'
    ),
    group="sockets",
)
