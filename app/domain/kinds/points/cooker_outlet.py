"""Cooker switch: the large switch that feeds a cooker, an oven or a hob.

It is a plate with a wide, often red, switch near the cooker, normally breaking both
poles. It has no fuse: the way on the board guards it. Write down what goes off with it;
an oven and a hob may be fed through one switch or through two. Its supply side stays
live when it is off.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="cooker_outlet",
    label="Cooker switch",
    order=60,
    symbol=(
        '<rect x="3" y="3" width="18" height="18"/>'
        '<path d="M3 10h5l6-4.5M16 10h5"/>'
        '<circle cx="8" cy="16" r="2.3"/>'
        '<circle cx="16" cy="16" r="2.3"/>'
    ),
    group="fixed",
    switches="line_and_neutral",
    draws=False,
)
