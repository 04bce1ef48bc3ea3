"""A main bond is not confirmed.

Looks at:
    The main bonds that are recorded without anyone having seen them, or none for gas
    or water.
Why it matters:
    Not seen is not the same as not there, but a pipe that is not bonded can become live
    in a fault.
What to do:
    Look for a clamp with a green and yellow wire near where the pipe comes in; look,
    and touch nothing. If there is none, tell an electrician. A plastic pipe needs none.
Source:
    BS 7671:2018+A2:2022, 411.3.1.2 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="main-bonding-not-confirmed", rank="electrician", group="earthing"
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each bond that nobody has seen; none recorded cannot be told."""
    bonds = sight.intake_of("main_bonding")
    for bond in bonds:
        if bond.basis == "unknown":
            yield Found(
                (bond.ref,), f"{sight.name(bond.ref)}: nobody has seen it so far."
            )
    missing = {"gas", "water"} - {bond.service for bond in bonds}
    if missing:
        names = " and the ".join(sorted(missing))
        yield lacks(sight.home, f"whether the {names} is bonded, or not of metal")
