"""Not known: a thing on the wall or a cable that no one has made out yet.

Choose this rather than guess: it stays on the list of things to find out. Write down
where it is and what it looks like, with a photograph. It counts as live; a switch that
seems to do nothing may still work something.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="unknown",
    label="Not known",
    order=360,
    symbol=(
        '<rect x="3" y="3" width="18" height="18" stroke-dasharray="3 2"/>'
        '<text x="12" y="16.5" font-size="13" fill="currentColor" stroke="none" '
        'text-anchor="middle">?</text>'
    ),
    group="other",
)
