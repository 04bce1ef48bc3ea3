"""Whether an RCD is shown not to be overloaded, by what stands round it.

An RCD has no overload protection of its own. Rule used, on the cautious side of
BS 7671:2018+A2:2022, 536.4.3.2 (from memory): shown where its rating is no smaller than
the nearest fuse or breaker before it, or than the sum of the ways behind it. The demand
with diversity is for information; the maker's instructions override all of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Literal

from app.domain.answers import Named
from app.domain.chain import Chain, Step, chains, is_overcurrent
from app.domain.circuits._working import Exact, plain
from app.domain.circuits.guard import as_guard, rated_of
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.load.demand import NOTHING
from app.domain.load.loads import Load, below
from app.domain.load.phases import heaviest
from app.domain.network import Network, fed_by
from app.domain.record import Circuit, Device, IntakeItem, Record
from app.domain.record._field import Model, Number, field

Verdict = Literal["shown", "not_shown", "cannot_tell"]
SOURCE = "BS 7671:2018+A2:2022, 536.4.3.2, from memory"
MAKER = "The instructions of its maker override this."


class RcdLoading(Model):
    """An RCD's rating against what is before it and what is behind it."""

    rcd: Named = field("RCD", ...)
    board: str = field("Board", "")
    rated_a: Number | None = field("Rated current", unit="A")
    residual_ma: Number | None = field("IΔn", unit="mA")
    before: Named | None = field("Nearest fuse or breaker before it")
    before_a: Number | None = field("Its rating", unit="A")
    ways: tuple[Named, ...] = field("Ways behind it", ())
    ways_a: Exact = field("Sum of their ratings, as far as they are known", ...)
    ways_unknown: tuple[Named, ...] = field("Ways whose rating is not recorded", ())
    bare: tuple[Named, ...] = field("Circuits with no fuse or breaker behind it", ())
    left_out: tuple[Named, ...] = field("Ways that feed in, left out", ())
    demand: str = field("Demand behind it with diversity, for information", "")
    by_before: bool | None = field("Shown by what is before it")
    by_ways: bool | None = field("Shown by what is behind it")
    verdict: Verdict = field("Verdict", ...)
    source: str = field("Where the rule stands", SOURCE)
    says: str = field("The answer in words", ...)


def rcd_loadings(net: Network, loads: tuple[Load, ...]) -> tuple[RcdLoading, ...]:
    """Return every RCD that stands by itself, with its loading."""
    rcds = [device for device in net.record.devices if device.kind == "rcd"]
    return tuple(rcd_loading(net, device, loads) for device in rcds)


def rcd_loading(net: Network, rcd: Device, loads: tuple[Load, ...]) -> RcdLoading:
    """Return one RCD's loading."""
    before = nearest_before(net, rcd.ref)
    ways, bare_ones = behind(net, rcd.ref)
    feeding = tuple(way for way in ways if _feeds_in(net.record, way))
    counted = [way for way in ways if way not in feeding]
    ratings = {way.ref: rated_of(way) for way in counted}
    unknown = [way for way in counted if not ratings[way.ref]]
    total = sum((r.value for r in ratings.values() if r), Decimal(0))
    by_before = _holds(rcd.rated_current_a, before.rated_current_a if before else None)
    by_ways = _by_sum(rcd.rated_current_a, total, complete=not unknown)
    by_ways = False if bare_ones and by_ways else by_ways
    bare = RcdLoading(
        rcd=_named(net.record, rcd.ref),
        board=rcd.board,
        rated_a=rcd.rated_current_a or None,
        residual_ma=rcd.residual_current_ma or None,
        before=_named(net.record, before.ref) if before else None,
        before_a=before.rated_current_a if before else None,
        ways=tuple(_named(net.record, way.ref) for way in counted),
        ways_a=total,
        ways_unknown=tuple(_named(net.record, way.ref) for way in unknown),
        bare=tuple(_named(net.record, each.ref) for each in bare_ones),
        left_out=tuple(_named(net.record, way.ref) for way in feeding),
        demand=heaviest(net, below(net, rcd.ref, loads)).shown,
        by_before=by_before,
        by_ways=by_ways,
        verdict=_verdict(by_before, by_ways),
        says="",
    )
    return bare.model_copy(update={"says": " ".join(_sentences(bare))})


def nearest_before(net: Network, ref: str) -> Step | None:
    """Return the nearest fuse or breaker before a thing; of several ways, the largest.

    None, if on any way there is none or its rating is not recorded.
    """
    found = [_nearest(chain) for chain in chains(net, ref)]
    guards = [as_guard(net.record, step) for step in found if step]
    known = [step for step in guards if step.rated_current_a]
    if not known or len(known) < len(found):
        return None
    return max(known, key=lambda step: step.rated_current_a or Decimal(0))


def _nearest(chain: Chain) -> Step | None:
    before = reversed(chain.steps[:-1])
    return next((step for step in before if is_overcurrent(step)), None)


def behind(
    net: Network, ref: str
) -> tuple[tuple[Device | IntakeItem, ...], tuple[Circuit, ...]]:
    """Return the first fuses and breakers behind a thing, on every branch, each once.

    Beside them the circuits that hang on it with none between.
    """
    seen, waiting = {ref}, list(fed_by(net, ref))
    ways: list[Device | IntakeItem] = []
    bare: list[Circuit] = []
    while waiting:
        here = waiting.pop(0)
        if here in seen:
            continue
        seen.add(here)
        item = net.record.by_ref[here]
        if isinstance(item, Circuit):
            bare.append(item)
        elif isinstance(item, Device | IntakeItem) and _protects(item):
            ways.append(item)
        elif isinstance(item, Device | IntakeItem):
            waiting[:0] = fed_by(net, here)
    return tuple(ways), tuple(bare)


def _protects(item: Device | IntakeItem) -> bool:
    kinds = DEVICE_KINDS if isinstance(item, Device) else INTAKE_KINDS
    return bool({"overload", "short_circuit"} & set(kinds[item.kind].protects))


def _feeds_in(record: Record, way: Device | IntakeItem) -> bool:
    circuits: tuple[Circuit, ...] = record.circuits_of(way.ref)
    return bool(circuits) and all(c.use == "generation" for c in circuits)


def _holds(rated: Decimal | None, most: Decimal | None) -> bool | None:
    return None if not rated or not most else rated >= most


def _by_sum(rated: Decimal | None, total: Decimal, *, complete: bool) -> bool | None:
    if not rated:
        return None
    return False if total > rated else (True if complete else None)


def _verdict(by_before: bool | None, by_ways: bool | None) -> Verdict:  # noqa: FBT001
    if by_before or by_ways:
        return "shown"
    return "cannot_tell" if None in (by_before, by_ways) else "not_shown"


def _sentences(found: RcdLoading) -> Iterator[str]:
    if found.rated_a is None:
        yield "Cannot tell: needs the rated current of the RCD."
        return
    yield _verdict_words(found)
    yield _before_words(found)
    yield _ways_words(found)
    if found.demand != NOTHING:
        yield f"With diversity {found.demand} is behind it: that alone shows nothing."
    if found.left_out:
        names = ", ".join(way.title for way in found.left_out)
        yield f"{names} can feed in through it and is left out of the sum."
    yield MAKER


def _verdict_words(found: RcdLoading) -> str:
    said = {
        "shown": "on paper it is guarded from overload.",
        "not_shown": (
            "not shown to be guarded from overload. Ask an electrician, who has the "
            "data of its maker."
        ),
        "cannot_tell": "cannot tell whether it is guarded from overload.",
    }[found.verdict]
    return f"{found.rated_a} A: {said}"


def _before_words(found: RcdLoading) -> str:
    if found.before is None:
        return "The rating of the fuse or breaker before it is not recorded: find out."
    how = "no more" if found.by_before else "more"
    name = f"{found.before.title}, {found.before_a} A"
    return f"Before it: {name}, {how} than its rating."


def _ways_words(found: RcdLoading) -> str:
    if found.bare:
        names = " and ".join(each.title for each in found.bare)
        return f"No fuse or breaker stands between it and {names}."
    if not found.ways:
        return "No way behind it is recorded."
    least = "at least " if found.ways_unknown else ""
    how = "no more than its rating" if found.by_ways else "more than its rating"
    if found.by_ways is None:
        how = "with some ratings not recorded"
    what = "one way" if len(found.ways) == 1 else f"{len(found.ways)} ways"
    return f"Behind it: {what}, {least}{plain(found.ways_a)} A together, {how}."


def _named(record: Record, ref: str) -> Named:
    return Named(ref=ref, title=record.by_ref[ref].title)
