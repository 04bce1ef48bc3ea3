"""Shower switch or pull cord: cuts off an electric shower.

It is a large switch outside the room, or a ceiling switch with a cord, a red mark and
often a small lamp. It normally breaks both poles and has no fuse. Write down its rating
if it is printed, and that the shower goes off with it. Heat, a brown mark or a buzz:
leave the shower off and call an electrician.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="shower_switch",
    label="Shower switch or pull cord",
    order=160,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 10h5l6-4.5M16 10h5"/>'
        '<path d="M8 13.5v2M8 17v2M12 13.5v2M12 17v2M16 13.5v2M16 17v2"/>'
    ),
    group="fixed",
    switches="line_and_neutral",
    draws=False,
)
