"""Aerial, phone or data equipment: an amplifier, a router, or an outlet for them.

The outlets carry extra-low voltage; an amplifier or a router has a mains feed
somewhere, perhaps in the loft. Write down where that feed is and who misses it when it
goes off. A router that goes off may take the phone, an alarm and this page with it.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="data_equipment",
    label="Aerial, phone or data equipment",
    order=290,
    symbol='<path d="M12 21V4M6.5 4l5.5 6.5L17.5 4M7 21h10"/>',
    group="other",
)
