"""The demand against what it goes through: supply fuse, tails, main switch, RCDs."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.load.demand import Demand, Load, demand, loads_of
from app.domain.network import Network, downstream
from app.domain.record import Device, IntakeItem
from app.domain.tables import TABLES

Verdict = Literal["within", "over_on_paper", "find_out"]
RcdVerdict = Literal["ok", "not_shown", "find_out"]
SHOWN: dict[RcdVerdict, str] = {
    "ok": "protected from overload, by the figures in the record",
    "not_shown": "not shown to be protected from overload",
    "find_out": "cannot be told: find out the ratings",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Against:
    """The demand against one thing that it goes through.

    Attributes:
        title: The thing.
        rated: What it is rated for, in amperes; None when not known.
        amps: The demand through it, in amperes.
        verdict: How they compare.
        sentence: The same in words.
    """

    title: str
    rated: Decimal | None
    amps: Decimal
    verdict: Verdict
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RcdLoad:
    """An RCD, what stands before it, and what hangs on it.

    An RCD is judged by the nearest overcurrent device before it, or by the sum of the
    ways behind it; its diversified demand is information only, and the maker's
    instructions go before all of this.

    Attributes:
        device: The RCD.
        rated: Its rated current, in amperes; None when not known.
        before: Rating of the nearest overcurrent device before it; None if not known.
        before_title: What that device is.
        ways: Sum of the ratings of the ways behind it; None while one is not known.
        by_upstream: Whether the device before it is no larger; None: cannot be told.
        by_ways: Whether the ways together are no larger; None: cannot be told.
        demand: The diversified demand behind it, for information.
        verdict: What follows.
    """

    device: Device
    rated: Decimal | None
    before: Decimal | None
    before_title: str
    ways: Decimal | None
    by_upstream: bool | None
    by_ways: bool | None
    demand: Demand
    verdict: RcdVerdict


def supply_fuse(net: Network) -> IntakeItem | None:
    """Return the cut-out, which holds the supply fuse."""
    return next((i for i in net.record.intake if i.kind == "cutout"), None)


def against_supply(net: Network, found: Demand) -> tuple[Against, ...]:
    """Return the demand against supply fuse, tails and main switches."""
    fuse = supply_fuse(net)
    rated = fuse.rated_current_a if fuse else None
    title = fuse.title if fuse else "Supply fuse"
    tails = [item for item in net.record.intake if item.kind == "tails"]
    switches = [d for d in net.record.devices if d.kind == "main_switch"]
    behind = {d.ref: demand(loads_behind(net, d.ref)).total for d in switches}
    return (
        _against(title, rated, found.total),
        *(_against(item.title, _tails(item), found.total) for item in tails),
        *(_against(d.title, d.rated_current_a, behind[d.ref]) for d in switches),
    )


def loads_behind(net: Network, ref: str) -> list[Load]:
    """Return the loads that a thing feeds."""
    fed = downstream(net, ref)
    return loads_of(net, [c for c in net.record.circuits if c.ref in fed])


def rcd_loads(net: Network) -> tuple[RcdLoad, ...]:
    """Return each RCD that has ways behind it, judged."""
    return tuple(
        _rcd(net, device) for device in net.record.devices if device.kind == "rcd"
    )


def _against(title: str, rated: Decimal | None, amps: Decimal) -> Against:
    if rated is None:
        verdict: Verdict = "find_out"
        sentence = "Its rating is not known: find out. No figure is assumed for it."
    elif amps <= rated:
        verdict = "within"
        sentence = f"{rated - amps:.0f} A to spare on paper."
    else:
        verdict = "over_on_paper"
        sentence = (
            f"{amps - rated:.0f} A over on paper. The table is cautious, and most "
            "homes come out over; there is nothing to spare for a large new load."
        )
    return Against(
        title=title, rated=rated, amps=amps, verdict=verdict, sentence=sentence
    )


def _tails(item: IntakeItem) -> Decimal | None:
    table = TABLES["tails"]
    if item.csa_mm2 is None or item.csa_mm2 not in set(table.numbers()):
        return None
    return table.value(item.csa_mm2, "C")


def _rcd(net: Network, device: Device) -> RcdLoad:
    before = nearest_overcurrent(net, device.ref)
    upstream_a = before.rated_current_a if before else None
    ways = ways_behind(net, device)
    total = _sum(ways)
    rated = device.rated_current_a
    by_upstream, by_ways = _no_larger(upstream_a, rated), _no_larger(total, rated)
    return RcdLoad(
        device=device,
        rated=rated,
        before=upstream_a,
        before_title=before.title if before else "",
        ways=total,
        by_upstream=by_upstream,
        by_ways=by_ways,
        demand=demand(loads_behind(net, device.ref)),
        verdict=_verdict(by_upstream, by_ways),
    )


def _no_larger(amps: Decimal | None, rated: Decimal | None) -> bool | None:
    return None if amps is None or rated is None else amps <= rated


def _verdict(*tests: bool | None) -> RcdVerdict:
    if any(tests):
        return "ok"
    return "find_out" if None in tests else "not_shown"


def _sum(devices: list[Device]) -> Decimal | None:
    ratings = [device.rated_current_a for device in devices]
    known = [rating for rating in ratings if rating is not None]
    return sum(known, Decimal(0)) if len(known) == len(ratings) else None


def ways_behind(net: Network, device: Device) -> list[Device]:
    """Return the ways behind an RCD on its own board, generation left out."""
    fed = downstream(net, device.ref)
    return [
        other
        for other in net.record.devices_of(device.board)
        if other.ref in fed
        and "overload" in DEVICE_KINDS[other.kind].protects
        and not _generates(net, other)
        and (net.record.circuits_of(other.ref) or other.in_use != "spare")
    ]


def _generates(net: Network, device: Device) -> bool:
    circuits = net.record.circuits_of(device.ref)
    return bool(circuits) and all(c.use == "generation" for c in circuits)


def nearest_overcurrent(net: Network, ref: str) -> Device | IntakeItem | None:
    """Return the nearest fuse or circuit-breaker before a thing, on its first feeds."""
    seen, here = {ref}, ref
    while True:
        feeds = net.feeders.get(here, ())
        here = feeds[0].feeder if feeds else ""
        if not here or here in seen:
            return None
        seen.add(here)
        item = net.record.by_ref.get(here)
        if isinstance(item, Device) and "overload" in DEVICE_KINDS[item.kind].protects:
            return item
        if isinstance(item, IntakeItem) and _fuse(item):
            return item


def _fuse(item: IntakeItem) -> bool:
    return "overload" in INTAKE_KINDS[item.kind].protects
