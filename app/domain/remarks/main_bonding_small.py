"""A main bonding conductor is small.

Looks at:
    The printed size of each main bonding conductor, and the earthing arrangement.
Why it matters:
    It keeps pipes and the earth of the home at one voltage in a fault; where the
    network's neutral breaks, it may carry the current of the whole home.
What to do:
    Ask an electrician. Leave clamps and wires alone.
Source:
    BS 7671:2018+A2:2022, table 54.8: 10 mm² for TN-C-S with a neutral up to 35 mm²;
    544.1.1: half the earthing conductor, 6 mm² at least, for TN-S and TT (from memory).
Not retrospective:
    6 mm² was usual before the late 1980s (from memory); it is remarked on, not judged.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
    lacks,
)
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="main-bonding-small", rank="electrician", group="earthing")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each bond that is smaller than the table for its arrangement."""
    wanted = _wanted(sight)
    for bond in sight.intake_of("main_bonding"):
        if bond.basis == "unknown" and not bond.csa_mm2:
            continue
        if wanted is None:
            yield CannotTell(
                (bond.ref,),
                (Need(ref=sight.home, what="the earthing arrangement"),),
            )
        elif not bond.csa_mm2:
            yield lacks(bond.ref, "the printed size")
        elif bond.csa_mm2 < wanted:
            yield Found(
                (bond.ref, sight.home),
                f"{sight.name(bond.ref)} is {bond.csa_mm2} mm².",
                (
                    figure("Size", bond.csa_mm2, "mm²"),
                    figure("By the table", wanted, "mm²"),
                ),
            )


def _wanted(sight: Sight) -> Decimal | None:
    """Half of 16 mm², the earthing conductor for usual tails, is made as 10 mm²."""
    earthing = sight.record.home.earthing
    if earthing == "unknown":
        return None
    return Decimal(10) if earthing in ("tn_c_s", "tn_s") else Decimal(6)
