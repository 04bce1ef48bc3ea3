"""Earthing conductor: joins the main earthing terminal to the means of earthing.

It is the green and yellow wire from the terminal to the cut-out, to the service cable's
sheath, or to a rod or plate outside. Protection against shock in the whole home leans
on it. Write down where it goes as far as you can see, and its size only if it is
printed. Never disconnect it, and never clamp anything to a lead sheath.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="earthing_conductor",
    label="Earthing conductor",
    order=120,
    symbol='<path d="M2 16h20M12 16V8M7.5 8h9"/>',
    usual_owner="consumer",
    who_opens="An electrician. Never disconnect it.",
    carries_supply=False,
    fields=("csa_mm2", "length_m"),
)
