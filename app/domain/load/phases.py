"""The demand of a three-phase home, phase by phase: each has a fuse of its own."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.circuits.phase import THREE
from app.domain.load.demand import Demand, demand
from app.domain.load.loads import Load
from app.domain.network import Network
from app.domain.record._field import Model, field

LOOSE = "unknown"


class PhaseDemand(Model):
    """The demand on one phase, or of the loads of no one recorded phase."""

    phase: str = field("Phase; empty: no one is recorded", "")
    demand: Demand = field("Demand on it with diversity", ...)


def by_phase(net: Network, loads: Iterable[Load]) -> tuple[PhaseDemand, ...]:
    """Return the demand on each phase; nothing, unless the home is three-phase.

    What is on all three counts on each. Loads of no one recorded phase stand last.
    """
    every = tuple(loads)
    return tuple(_by_phase(net, every)) if is_three(net) else ()


def on_phase(loads: Iterable[Load], phase: str) -> tuple[Load, ...]:
    """Return the loads of one phase, those on all three too."""
    return tuple(load for load in loads if load.phase in (phase, "all"))


def heaviest(net: Network, loads: Iterable[Load], *, loose: bool = True) -> Demand:
    """Return the demand on the phase with most; of a single-phase home, all of it.

    Args:
        net: The network.
        loads: The loads.
        loose: Whether what is of no recorded phase counts on every phase, or on none.
    """
    every = tuple(loads)
    if not is_three(net):
        return demand(net, every)
    more = tuple(load for load in every if load.phase == LOOSE) if loose else ()
    each = [demand(net, (*on_phase(every, phase), *more)) for phase in THREE]
    return max(each, key=lambda found: found.amps)


def is_three(net: Network) -> bool:
    """Return whether the home has three phases by the record."""
    return net.record.home.phases == "three"


def _by_phase(net: Network, loads: tuple[Load, ...]) -> Iterator[PhaseDemand]:
    for phase in THREE:
        found = demand(net, on_phase(loads, phase))
        yield PhaseDemand(phase=phase.upper(), demand=found)
    loose = [load for load in loads if load.phase == LOOSE]
    if loose:
        yield PhaseDemand(demand=demand(net, loose))
