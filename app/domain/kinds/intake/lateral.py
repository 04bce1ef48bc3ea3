"""Riser or lateral in the building: carries the supply from its intake to you.

In a block of flats it runs in a shaft or along a corridor, from the building's intake
room to your cut-out or meter. It often belongs to the building's owner and not to the
network: ask which. Write down who told you, and the room that it starts from if you
know. Nothing of yours cuts it off.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="lateral",
    label="Riser or lateral in the building",
    order=15,
    symbol=(
        '<path d="M7 22V3M4.5 6L7 2.5L9.5 6M7 10h8M7 17h8"/>'
        '<rect x="15" y="7.5" width="5.5" height="5"/>'
        '<rect x="15" y="14.5" width="5.5" height="5"/>'
    ),
    usual_owner="landlord",
    who_opens="Only the building's owner or the network.",
)
