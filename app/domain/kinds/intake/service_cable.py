"""Service cable: brings the supply from the street into the building.

It is a thick cable out of the floor or the wall, or down from an overhead line, and it
ends at the cut-out. It is live at all times, and no switch in the home cuts it off.
Write down how it comes in, and whether a second cable goes on to next door. Heat,
damage or black pitch running out: keep away and ring the network.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="service_cable",
    label="Service cable",
    order=10,
    symbol=(
        '<path d="M12 22v-9M9.5 6V2M14.5 6V2"/>'
        '<path d="M12 13.5L6.5 6h11z" fill="currentColor"/>'
    ),
    usual_owner="network",
    who_opens="Only the network.",
    fields=("entry",),
)
