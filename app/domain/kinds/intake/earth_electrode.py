"""Earth electrode: a rod or plate in the ground that is the home's own earth.

Outside it may show as the top of a rod in a small covered pit, with a green and yellow
wire. It is yours to keep in order. Where the earthing arrangement is TT, protection
leans on an RCD; a rod alone does not tell which arrangement it is. Write down where it
is and what its label says; one that is found may be out of use, so ask. Never
disconnect it.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="earth_electrode",
    label="Earth electrode",
    order=140,
    symbol='<path d="M12 2v11M4 13h16M7 17h10M10 21h4"/>',
    usual_owner="consumer",
    who_opens="An electrician. Never disconnect it.",
    carries_supply=False,
    fields=("resistance_ohm",),
)
