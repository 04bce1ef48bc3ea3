"""Local isolator: a switch beside a fixed thing that cuts it off there.

It is a rotary switch or a lever near a heat pump, a fan or a machine; one for a fan has
three poles. It normally breaks line and neutral and protects against nothing. Write
down what goes off with it. Its supply side stays live, and it is no isolation by
itself: the way on the board comes first.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="isolator",
    label="Local isolator",
    order=320,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 12h4M7 9.5v5M21 12h-4.5L10 7"/>'
        '<circle cx="8.6" cy="12" r="1.5"/>'
    ),
    group="fixed",
    switches="line_and_neutral",
    draws=False,
)
