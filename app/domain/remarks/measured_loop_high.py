"""A measured loop impedance is more than a measured one may reach.

Looks at:
    The newest Zs that was copied for each circuit, against four fifths of what its
    device needs; with an earth electrode and an RCD, against what the RCD needs.
Why it matters:
    On a fault to earth the device may take too long to cut off.
What to do:
    Let an electrician look at it. An RCD of 30 mA before it cuts off all the same where
    it works.
Source:
    BS 7671:2018+A2:2022, Table 41.3 and the like; the 0.8 rule of its guidance (from
    memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.circuits import Working
from app.domain.remarks._kind import (
    CannotTell,
    Found,
    Need,
    Outcome,
    RemarkKind,
    figure,
    lacking,
)
from app.domain.remarks._sight import Sight
from app.domain.results.beside import source_of
from app.domain.results.over_time import latest

KIND = RemarkKind(code="measured-loop-high", rank="electrician", group="circuits")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each circuit that was measured beyond what its device needs."""
    missing = []
    for circuit in sight.record.circuits:
        result = latest(sight.record, circuit.ref, "zs_ohm")
        if result is None or result.zs_ohm is None:
            missing.append(circuit.ref)
            continue
        part = sight.figures(circuit).part("zs-measured")
        limit = part.found if part else None
        if not isinstance(limit, Working):
            needs = limit.needs if limit else ()
            lacks = tuple(Need(ref=n.ref, what=n.label) for n in needs)
            about = tuple(dict.fromkeys((circuit.ref, *(n.ref for n in lacks))))
            yield CannotTell(about, lacks, limit.why if limit else "")
        elif result.zs_ohm > limit.value:
            yield Found(
                (circuit.ref,),
                f"{sight.name(circuit.ref)}: measured {result.zs_ohm} Ω "
                f"({source_of(sight.record, result)}); it may reach {limit.shown}."
                f"{_assumed(limit)}",
                (figure("Zs", result.zs_ohm, "Ω"),),
            )
    if missing:
        yield lacking(tuple(missing), "its measured Zs, from a paper")


def _assumed(limit: Working) -> str:
    return f" Assumed: {' '.join(limit.assumes)}" if limit.assumes else ""
