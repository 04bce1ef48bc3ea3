"""Cooker switch with a socket-outlet: a cooker switch and a socket on one plate.

The large switch is for the cooker, the small one for the socket beside it. Both are on
the cooker's circuit, so the socket stays on when the kitchen sockets go off. Write down
what is plugged in there. Its supply side stays live when it is off.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="cooker_outlet_socket",
    label="Cooker switch with a socket-outlet",
    order=70,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 10h5l6-4.5M16 10h5"/>'
        '<path d="M8 19a4 4 0 0 1 8 0M12 15v-2.5M9.5 15h5"/>'
    ),
    group="fixed",
    switches="line_and_neutral",
)
