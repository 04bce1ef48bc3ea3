"""Blank: a plain cover over an empty position.

It has no lever, no mark and no terminals, and feeds nothing. Write it down so that the
count of positions comes out right. Where a position is empty and has no blank, live
parts may be within reach: keep fingers and tools away, note it on the board's page and
ask an electrician to close it.
"""

from __future__ import annotations

from app.domain.kinds._kind import DeviceKind

KIND = DeviceKind(
    code="blank",
    label="Blank",
    order=150,
    symbol=(
        '<rect x="6.5" y="2.5" width="11" height="19"/><path d="M6.5 21.5l11-19"/>'
    ),
    short="BLANK",
)
