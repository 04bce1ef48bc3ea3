"""The demand of a home against each main fuse, all phases of one fuse together."""

from __future__ import annotations

from decimal import Decimal

from app.domain.load import Against, below, demand
from app.domain.load.against import supply_fuses
from app.domain.load.phases import on_phase
from app.domain.remarks._sight import Sight


def by_fuse(sight: Sight) -> dict[str, list[Against]]:
    """Return what is told of each main fuse, by its reference."""
    found: dict[str, list[Against]] = {}
    for fuse in supply_fuses(sight.net, sight.loads) if sight.record.circuits else ():
        if fuse.thing is not None:
            found.setdefault(fuse.thing.ref, []).append(fuse)
    return found


def spare(sight: Sight, fuse: Against) -> Decimal | None:
    """Return what the sum leaves of a main fuse, [A]; None without its rating."""
    if fuse.rated is None or fuse.thing is None:
        return None
    loads = below(sight.net, fuse.thing.ref, sight.loads)
    on_it = on_phase(loads, fuse.phase.lower()) if fuse.phase else loads
    return fuse.rated.value - demand(sight.net, on_it).amps
