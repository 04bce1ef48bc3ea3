"""The groups of loads that diversity knows, and the rule of each.

Source: IET On-Site Guide, Table A2, for one household.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits import COMMON_PRACTICE, plain
from app.domain.tables import BASES, TABLES, Basis

TABLE_A2 = TABLES["diversity"].source
Currents = Sequence[Decimal]
TEN = Decimal(10)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Loads to which one rule applies together.

    Attributes:
        code: Code.
        label: What it is called.
        rule: The rule in words.
        counted: What counts of the currents of its loads.
        put_in: The same with the numbers in it.
        source: Where the rule stands.
        basis: How well that is known; empty where there is no source.
    """

    code: str
    label: str
    rule: str
    counted: Callable[[Currents], Decimal]
    put_in: Callable[[Currents], str]
    source: str = TABLE_A2
    basis: str = BASES["C"]


def _all_of_it(currents: Currents) -> Decimal:
    return sum(currents, Decimal(0))


def _added(currents: Currents) -> str:
    return " + ".join(f"{plain(round(c, 2))} A" for c in currents)


def _largest(count: int, share: str) -> Callable[[Currents], Decimal]:
    def counted(currents: Currents) -> Decimal:
        ordered = sorted(currents, reverse=True)
        rest = _all_of_it(ordered[count:]) * Decimal(share)
        return _all_of_it(ordered[:count]) + rest

    return counted


def _largest_put_in(count: int, percent: str) -> Callable[[Currents], str]:
    def put_in(currents: Currents) -> str:
        ordered = sorted(currents, reverse=True)
        rest = ordered[count:]
        if not rest:
            return _added(ordered)
        return f"{_added(ordered[:count])} + {percent} of ({_added(rest)})"

    return put_in


def _above_ten(share: str) -> Callable[[Currents], Decimal]:
    def counted(currents: Currents) -> Decimal:
        whole = _all_of_it(currents)
        rest = max(whole - TEN, Decimal(0))
        return min(whole, TEN) + rest * Decimal(share)

    return counted


def _above_ten_put_in(percent: str) -> Callable[[Currents], str]:
    def put_in(currents: Currents) -> str:
        whole = _all_of_it(currents)
        if whole <= TEN:
            return f"{_added(currents)}, within the first 10 A"
        return f"10 A + {percent} of {plain(round(whole - TEN, 2))} A"

    return put_in


def _whole(code: str, label: str, basis: Basis = "C") -> Group:
    return Group(
        code=code,
        label=label,
        rule="all of it",
        counted=_all_of_it,
        put_in=_added,
        basis=BASES[basis],
    )


def _by_largest(code: str, label: str, count: int, share: str, rule: str) -> Group:
    percent = f"{plain(Decimal(share) * 100)} %"
    return Group(
        code=code,
        label=label,
        rule=rule,
        counted=_largest(count, share),
        put_in=_largest_put_in(count, percent),
    )


GROUPS: dict[str, Group] = {
    group.code: group
    for group in (
        Group(
            code="lighting",
            label="Lighting",
            rule="66 % of all of it",
            counted=lambda currents: _all_of_it(currents) * Decimal("0.66"),
            put_in=lambda currents: f"66 % of ({_added(currents)})",
        ),
        Group(
            code="cooking",
            label="Cooking",
            rule="10 A, 30 % of the rest, 5 A for a socket in the control unit",
            counted=_above_ten("0.3"),
            put_in=_above_ten_put_in("30 %"),
        ),
        _by_largest(
            "instant_water",
            "Showers, instant water heaters",
            2,
            "0.25",
            "all of the two largest, 25 % of the rest",
        ),
        _whole("storage_water", "Water heating with a tank"),
        Group(
            code="space_heating",
            label="Space heating",
            rule="all up to 10 A, 50 % of the rest",
            counted=_above_ten("0.5"),
            put_in=_above_ten_put_in("50 %"),
        ),
        _whole("storage_heating", "Storage heating"),
        _whole("vehicle", "Vehicle charging", "S"),
        Group(
            code="heat_pump",
            label="Heat pump",
            rule="all of it",
            counted=_all_of_it,
            put_in=_added,
            source=COMMON_PRACTICE,
            basis="",
        ),
        Group(
            code="battery",
            label="Battery charging",
            rule="all of it",
            counted=_all_of_it,
            put_in=_added,
            source=COMMON_PRACTICE,
            basis="",
        ),
        _by_largest(
            "socket_circuit",
            "Socket circuits",
            1,
            "0.4",
            "all of the largest, 40 % of every other",
        ),
        _by_largest(
            "stationary",
            "Other fixed equipment",
            1,
            "0.4",
            "all of the largest, 40 % of every other",
        ),
    )
}
GROUP_OF_USE = {
    "lighting": "lighting",
    "cooker": "cooking",
    "shower": "instant_water",
    "water_heating": "storage_water",
    "space_heating": "space_heating",
    "storage_heating": "storage_heating",
    "vehicle": "vehicle",
    "heat_pump": "heat_pump",
    "battery": "battery",
    "sockets": "socket_circuit",
    "alarm": "stationary",
    "fixed": "stationary",
    "other": "stationary",
}
# What feeds in, and what only leads to another board, is no load of its own.
NO_LOAD = frozenset({"generation", "distribution"})
