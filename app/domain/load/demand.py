"""Maximum demand with diversity: each row with its rule and its figures.

On-Site Guide, Table A2, for one household at 230 V.  Final circuits are counted, never
the device that feeds a board; what a home generates is not taken off.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from app.domain.network import Network, upstream
from app.domain.record import Circuit, Device, Point

Rule = Literal[
    "lighting",
    "cooking",
    "instant_water",
    "tank_water",
    "storage_heating",
    "direct_heating",
    "vehicle",
    "battery",
    "heat_pump",
    "sockets",
    "fixed",
]
U0 = Decimal(230)
TEN, FIVE = Decimal(10), Decimal(5)
LAMP_W = Decimal(100)
SOURCE = "IET On-Site Guide, Table A2; confirmed"
VEHICLE_SOURCE = "BS 7671:2018+A2:2022, 722.311.201; one source"
HEAT_PUMP_SOURCE = "counted whole, for want of a rule; common practice, no source"
RULES: dict[Rule, str] = {
    "lighting": "66 % of the connected load",
    "cooking": "10 A and 30 % of the rest, 5 A more for a socket in the control",
    "instant_water": "all of the two largest, 25 % of the rest",
    "tank_water": "all of it",
    "storage_heating": "all of it",
    "direct_heating": "all up to 10 A, 50 % of the rest",
    "vehicle": "all of it, unless its load is managed",
    "battery": "all of it",
    "heat_pump": "all of it",
    "sockets": "all of the largest device, 40 % of the others",
    "fixed": "all of the largest, 40 % of the others",
}
SOURCES: dict[Rule, str] = {"vehicle": VEHICLE_SOURCE, "heat_pump": HEAT_PUMP_SOURCE}
_BY_USE: dict[str, Rule] = {
    "lighting": "lighting",
    "cooker": "cooking",
    "shower": "instant_water",
    "water_heating": "tank_water",
    "storage_heating": "storage_heating",
    "space_heating": "direct_heating",
    "vehicle": "vehicle",
    "battery": "battery",
    "heat_pump": "heat_pump",
    "sockets": "sockets",
    "fixed": "fixed",
    "alarm": "fixed",
    "other": "fixed",
}
NOT_COUNTED = ("generation", "distribution")


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """One load that counts: a circuit's, or one that is thought of.

    Attributes:
        title: What it is.
        circuit: Reference of its circuit; None for one that is thought of.
        rule: Which of :data:`RULES` it goes by.
        amps: Its current, in amperes; None when it is not known.
        basis: Where the current comes from.
        assumed: Whether it is assumed, for want of a record.
        with_socket: Whether a cooker's control holds a socket.
        lamps: How many lampholders, for lighting.
        off_peak: Whether it is there in off-peak hours only.
        phase: Which phase, as the record has it.
    """

    title: str
    circuit: str | None
    rule: Rule
    amps: Decimal | None
    basis: str
    assumed: bool = False
    with_socket: bool = False
    lamps: int = 0
    off_peak: bool = False
    phase: str = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The loads of one rule, and what they count for.

    Attributes:
        rule: The rule.
        words: The rule in words.
        source: Where it stands.
        loads: The loads.
        amps: What they count for, in amperes.
    """

    rule: Rule
    words: str
    source: str
    loads: tuple[Load, ...]
    amps: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """What a set of loads comes to.

    Attributes:
        rows: A row for each rule, in the order of the table.
        total: Sum of the rows, in amperes.
        low: The same with lampholders as they are and cooking taken apart.
        high: The same with 100 W at least a lampholder.
        left_out: Loads of which the current is not known.
    """

    rows: tuple[Row, ...]
    total: Decimal
    low: Decimal
    high: Decimal
    left_out: tuple[Load, ...]


def loads_of(net: Network, circuits: Iterable[Circuit] | None = None) -> list[Load]:
    """Return the loads of a home's final circuits, or of some of them."""
    chosen = net.record.circuits if circuits is None else circuits
    return [
        _load(net, c) for c in chosen if c.use not in NOT_COUNTED and _final(net, c)
    ]


def demand(loads: Sequence[Load]) -> Demand:
    """Return what loads come to by the table, with the range of the usual readings."""
    known = [load for load in loads if load.amps is not None]
    rows = tuple(_rows(known))
    total = sum((row.amps for row in rows), Decimal(0))
    more = sum((_lamps_at_100_w(load) for load in known), Decimal(0))
    return Demand(
        rows=rows,
        total=total,
        low=total - _cooking_apart(known),
        high=total + more * Decimal("0.66"),
        left_out=tuple(load for load in loads if load.amps is None),
    )


def _final(net: Network, circuit: Circuit) -> bool:
    """Return whether a circuit ends at points, not at another board."""
    fed = net.fed.get(circuit.ref, ())
    return not any(net.record.find(Device, feed.fed) for feed in fed)


def _load(net: Network, circuit: Circuit) -> Load:
    rule = _BY_USE.get(circuit.use, "fixed")
    points = [
        p
        for ref in net.points_at.get(circuit.ref, ())
        if (p := net.record.find(Point, ref))
    ]
    amps, basis, assumed = _amps(net, circuit, rule, points)
    return Load(
        title=circuit.title,
        circuit=circuit.ref,
        rule=rule,
        amps=amps,
        basis=basis,
        assumed=assumed,
        with_socket=any(p.kind == "cooker_outlet_socket" for p in points),
        lamps=sum(p.count for p in points if p.kind == "light"),
        off_peak=_off_peak(net, circuit),
        phase=_phase(net, circuit),
    )


def _amps(
    net: Network, circuit: Circuit, rule: Rule, points: Sequence[Point]
) -> tuple[Decimal | None, str, bool]:
    """Return a circuit's current, where it comes from, and whether it is assumed."""
    device = next(
        (d for d in (net.record.find(Device, r) for r in circuit.ways) if d), None
    )
    rating = device.rated_current_a if device else None
    if rule == "sockets":
        return (rating, "rating of the device", False) if rating else _not_known()
    if circuit.connected_w is not None:
        return circuit.connected_w / U0, f"{circuit.connected_w} W recorded", False
    watts = [p.load_w * p.count for p in points if p.load_w is not None]
    if watts:
        total = sum(watts, Decimal(0))
        return total / U0, f"{total} W at its points", False
    lamps = sum(p.count for p in points if p.kind == "light")
    if rule == "lighting" and lamps:
        return lamps * LAMP_W / U0, f"{lamps} lampholders of 100 W assumed", True
    if rating:
        return rating, "no load recorded: rating of the device", True
    return _not_known()


def _not_known() -> tuple[None, str, bool]:
    return None, "neither load nor rating is recorded", False


def _device(net: Network, circuit: Circuit) -> Device | None:
    found = (net.record.find(Device, ref) for ref in circuit.ways)
    return next((device for device in found if device), None)


def _off_peak(net: Network, circuit: Circuit) -> bool:
    above = (net.record.by_ref.get(ref) for ref in upstream(net, circuit.ref))
    return any(getattr(item, "when", "") == "off_peak" for item in above)


def _phase(net: Network, circuit: Circuit) -> str:
    device = _device(net, circuit)
    return device.phase if device else "unknown"


def _rows(loads: Sequence[Load]) -> Iterable[Row]:
    for rule, words in RULES.items():
        these = tuple(load for load in loads if load.rule == rule)
        if these:
            yield Row(
                rule=rule,
                words=words,
                source=SOURCES.get(rule, SOURCE),
                loads=these,
                amps=_ALLOWED[rule](these),
            )


def _currents(loads: Sequence[Load]) -> list[Decimal]:
    return sorted((load.amps or Decimal(0) for load in loads), reverse=True)


def _all(loads: Sequence[Load]) -> Decimal:
    return sum(_currents(loads), Decimal(0))


def _lighting(loads: Sequence[Load]) -> Decimal:
    return Decimal("0.66") * _all(loads)


def cooking(amps: Decimal, *, sockets: int = 0) -> Decimal:
    """Return what cooking counts for: 10 A, 30 % of the rest, 5 A a socket."""
    over = max(amps - TEN, Decimal(0))
    return min(amps, TEN) + Decimal("0.3") * over + FIVE * sockets


def _cooking(loads: Sequence[Load]) -> Decimal:
    return cooking(_all(loads), sockets=sum(load.with_socket for load in loads))


def _cooking_apart(loads: Sequence[Load]) -> Decimal:
    """Return how much less cooking is, lamps apart, when no socket is counted."""
    cookers = [load for load in loads if load.rule == "cooking"]
    return FIVE * sum(load.with_socket for load in cookers)


def _instant(loads: Sequence[Load]) -> Decimal:
    currents = _currents(loads)
    return sum(currents[:2], Decimal(0)) + sum(currents[2:], Decimal(0)) / 4


def _direct(loads: Sequence[Load]) -> Decimal:
    amps = _all(loads)
    return min(amps, TEN) + max(amps - TEN, Decimal(0)) / 2


def _largest_and_40(loads: Sequence[Load]) -> Decimal:
    currents = _currents(loads)
    return currents[0] + Decimal("0.4") * sum(currents[1:], Decimal(0))


def _lamps_at_100_w(load: Load) -> Decimal:
    """Return how much more a lighting load is at 100 W a lampholder."""
    if load.rule != "lighting" or load.amps is None:
        return Decimal(0)
    return max(load.lamps * LAMP_W / U0 - load.amps, Decimal(0))


_ALLOWED: dict[Rule, Callable[[Sequence[Load]], Decimal]] = {
    "lighting": _lighting,
    "cooking": _cooking,
    "instant_water": _instant,
    "tank_water": _all,
    "storage_heating": _all,
    "direct_heating": _direct,
    "vehicle": _all,
    "battery": _all,
    "heat_pump": _all,
    "sockets": _largest_and_40,
    "fixed": _largest_and_40,
}


def managed(loads: Sequence[Load]) -> list[Load]:
    """Return the loads with vehicle charging managed: it gives way to all others."""
    nothing = Decimal(0)
    return [
        replace(load, amps=nothing, basis="managed: gives way to the rest")
        if load.rule == "vehicle"
        else load
        for load in loads
    ]
