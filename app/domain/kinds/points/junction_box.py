"""Junction box: a closed box where cables are joined.

It is round or square, in a loft, under a floor or in a cupboard, and may be hidden in
old wiring. Cables of more than one circuit may meet in it. Write down where it is and
how many cables enter, as seen from outside. Its cover stays on: one circuit off does
not mean that all in it is.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="junction_box",
    label="Junction box",
    order=340,
    symbol=(
        '<circle cx="12" cy="12" r="6.5"/>'
        '<path d="M1.5 12h4M18.5 12h4M12 18.5v4"/>'
        '<circle cx="12" cy="12" r="2" fill="currentColor" stroke="none"/>'
    ),
    group="other",
    draws=False,
)
