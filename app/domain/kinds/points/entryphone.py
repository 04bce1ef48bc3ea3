"""Entryphone or intercom: speaks to and opens the door.

In a block it is often fed from the building's supply and stays on when the home is off.
At home it has a small power unit at a socket-outlet or in a cupboard. Write down what
feeds it, or that it is not known. Work on the building's part is for the building's
owner.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="entryphone",
    label="Entryphone or intercom",
    order=280,
    symbol=(
        '<rect x="6" y="2" width="12" height="20"/>'
        '<path d="M9 6h6M9 9h6M9 12h6"/>'
        '<circle cx="12" cy="17.3" r="1.8"/>'
    ),
    group="other",
)
