"""One more load, side by side with today, and what to do before it is bought."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.domain.load.against import Against, against_supply, supply_fuse
from app.domain.load.demand import (
    U0,
    Demand,
    Load,
    Rule,
    demand,
    loads_of,
    managed,
)
from app.domain.network import Network
from app.errors import InvalidError

KINDS: dict[str, Rule] = {
    "shower": "instant_water",
    "charger": "vehicle",
    "heat-pump": "heat_pump",
    "cooker": "cooking",
    "heater": "direct_heating",
    "immersion": "tank_water",
    "storage-heater": "storage_heating",
    "battery": "battery",
    "other": "fixed",
}
_ADDED = re.compile(r"([a-z-]+)=(\d{1,3}(?:\.\d{1,3})?)")


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """Today, and with what is thought of.

    Attributes:
        today: The demand as it is.
        then: The demand with the additions.
        then_managed: The same with vehicle charging managed; None without any.
        against_today: The demand of today against what it goes through.
        against_then: The demand then, against the same.
        first: What to do first, in order.
    """

    today: Demand
    then: Demand
    then_managed: Demand | None
    against_today: tuple[Against, ...]
    against_then: tuple[Against, ...]
    first: tuple[str, ...]


def added_load(text: str) -> Load:
    """Return a load thought of, from its kind and kilowatts, such as ``shower=8.5``.

    Raises:
        InvalidError: It is none of that.
    """
    found = _ADDED.fullmatch(text)
    if found is None or found[1] not in KINDS or not Decimal(found[2]):
        kinds = ", ".join(KINDS)
        raise InvalidError(
            f"“{text}” is no load: write a kind and kilowatts, such as shower=8.5. "
            f"Kinds: {kinds}."
        )
    watts = Decimal(found[2]) * 1000
    return Load(
        title=f"{found[1]} {found[2]} kW",
        circuit=None,
        rule=KINDS[found[1]],
        amps=watts / U0,
        basis=f"{watts.normalize():f} W, thought of",
    )


def what_if(net: Network, additions: Sequence[Load]) -> WhatIf:
    """Return a home's demand today and with some loads more."""
    loads = loads_of(net)
    today, then = demand(loads), demand([*loads, *additions])
    vehicles = any(load.rule == "vehicle" for load in (*loads, *additions))
    against = against_supply(net, then)
    return WhatIf(
        today=today,
        then=then,
        then_managed=demand(managed([*loads, *additions])) if vehicles else None,
        against_today=against_supply(net, today),
        against_then=against[: 1 + _tails_count(net)],
        first=_first(net, then, additions),
    )


def _tails_count(net: Network) -> int:
    return sum(1 for item in net.record.intake if item.kind == "tails")


def _first(net: Network, then: Demand, additions: Sequence[Load]) -> tuple[str, ...]:
    """Return what to do first; whom to ask comes before any sum."""
    home, fuse = net.record.home, supply_fuse(net)
    told = []
    if home.looped != "no":
        looped = "is" if home.looped == "yes" else "may be"
        told.append(
            f"Ask the network first: the supply {looped} looped to next door, and "
            "undoing that is its work."
        )
    if fuse is None or fuse.rated_current_a is None:
        told.append(
            "Ask the network what fuse the supply has: it is not known, and no figure "
            "is taken for it."
        )
    elif then.total > fuse.rated_current_a:
        told.append(
            "Ask the network before you buy: on paper there is no room. A larger fuse "
            "or a managed load are theirs and the installer's to judge."
        )
    if any(load.rule in ("vehicle", "heat_pump") for load in additions):
        told.append("A charger or a heat pump is told to the network in any case.")
    if then.left_out:
        names = ", ".join(load.title for load in then.left_out)
        told.append(
            f"Find out first what these take; they are not in the sum: {names}."
        )
    return tuple(told)
