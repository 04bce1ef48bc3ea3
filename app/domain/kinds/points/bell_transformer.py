"""Bell transformer: makes the extra-low voltage for a bell or a chime.

It is a small box in a cupboard, in the loft or inside the chime, always a little warm.
Its mains side is live all the time, and other cables are sometimes joined in it. Write
down where it is and what feeds it. It is easily forgotten, so look for it when
something stays live.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="bell_transformer",
    label="Bell transformer",
    order=270,
    symbol=(
        '<circle cx="12" cy="9" r="4.5"/>'
        '<circle cx="12" cy="15" r="4.5"/>'
        '<path d="M12 2v2.5M12 19.5V22"/>'
    ),
    group="other",
)
