"""The load of a home: what it comes to, and what carries it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from app.domain.load.against import Against, against
from app.domain.load.demand import Demand, demand
from app.domain.load.differ import RcdsDiffer, rcds_differ
from app.domain.load.loads import Load, loads_of
from app.domain.load.phases import PhaseDemand, by_phase
from app.domain.load.rcd import RcdLoading, rcd_loadings
from app.domain.load.what_if import Addition, WhatIf, what_if
from app.domain.network import Network
from app.domain.record._field import Model, field


class LoadAnswer(Model):
    """A home's demand with diversity, against all that carries it."""

    asks: Literal["load"] = "load"
    home: str = field("Home", ...)
    demand: Demand = field("Demand today; of three phases, all of them together", ...)
    phases: tuple[PhaseDemand, ...] = field("Phase by phase, in a three-phase home", ())
    loads: tuple[Load, ...] = field("Loads, circuit by circuit", ())
    against: tuple[Against, ...] = field("Against what carries it", ())
    rcds: tuple[RcdLoading, ...] = field("Each RCD", ())
    rcds_differ: tuple[RcdsDiffer, ...] = field("Boards whose RCDs differ", ())
    what_if: WhatIf | None = field("With something more")


def load_answer(net: Network, additions: Sequence[Addition] = ()) -> LoadAnswer:
    """Return the load of a home, and what it would be with something more."""
    loads = loads_of(net)
    return LoadAnswer(
        home=net.record.home.ref,
        demand=demand(net, loads),
        phases=by_phase(net, loads),
        loads=loads,
        against=against(net, loads),
        rcds=rcd_loadings(net, loads),
        rcds_differ=rcds_differ(net, loads),
        what_if=what_if(net, loads, additions) if additions else None,
    )
