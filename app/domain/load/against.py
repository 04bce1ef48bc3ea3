"""Demand against the supply fuse, the tails and the switches that carry it."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Literal

from app.domain.answers import Named
from app.domain.board import HEADS
from app.domain.circuits._working import Figure, plain, tabled
from app.domain.circuits.needed import figure_of
from app.domain.circuits.phase import THREE
from app.domain.load.demand import NOTHING, Demand, amps, demand
from app.domain.load.loads import Load, below
from app.domain.load.phases import LOOSE, heaviest, is_three, on_phase
from app.domain.load.rcd import nearest_before
from app.domain.network import Network
from app.domain.record import Device, IntakeItem
from app.domain.record._field import Model, field
from app.domain.tables import TABLES, OutsideTableError

What = Literal["supply_fuse", "tails", "switch"]
Sign = Literal["within", "beyond", "open"]
NOTHING_THERE: tuple[Sign, str] = ("open", "No load is recorded yet: no verdict.")
CAUTIOUS = "On paper, cautious"
USUAL = (
    "Most homes come out above their fuse on this table; that alone is no proof of a "
    "fault."
)
FIND_OUT = (
    "The rating of the supply fuse is not recorded: find out from the network. Until "
    "then there is no verdict."
)
CARRIER = (
    "The figure on a cut-out is what it may hold; the fuse in it may be smaller, and "
    "only the network can say."
)
ASK = " Ask an electrician."
NO_PHASE = " That counts every circuit on it that no one phase is recorded for."
SWITCHES = frozenset({"isolator", "changeover"})


class Against(Model):
    """A demand beside the rating of what carries it."""

    what: What = field("What carries it", ...)
    thing: Named | None = field("Which")
    phase: str = field("Phase, in a three-phase home", "")
    rated: Figure | None = field("What it may carry")
    demand: str = field("Demand on it with diversity", ...)
    sign: Sign = field("Within, beyond or open", ...)
    says: str = field("The answer in words", ...)


def against(net: Network, loads: tuple[Load, ...]) -> tuple[Against, ...]:
    """Return the demand against everything that carries it, from the street."""
    return (
        *supply_fuses(net, loads),
        *_tails(net, loads),
        *_switches(net, loads),
    )


def supply_fuses(net: Network, loads: tuple[Load, ...]) -> tuple[Against, ...]:
    """Return the demand against each supply fuse, by phase where there are three."""
    cutouts = [item for item in net.record.intake if item.kind == "cutout"]
    if not cutouts:
        found = heaviest(net, loads)
        most = f"{found.total}{' on one phase at most' if is_three(net) else ''}"
        return (
            Against(
                what="supply_fuse",
                demand=found.shown,
                sign="open",
                says=f"{CAUTIOUS}: {most}. {FIND_OUT}",
            ),
        )
    return tuple(
        each for cutout in cutouts for each in _supply_fuse(net, cutout, loads)
    )


def _supply_fuse(
    net: Network, cutout: IntakeItem, loads: tuple[Load, ...]
) -> list[Against]:
    own = below(net, cutout.ref, loads)
    if not own:
        return _noted(cutout, [_nothing_there(net, cutout, loads)])
    hanging = own + tuple(x for x in loads if not x.ref)
    if not is_three(net):
        return _noted(cutout, [_fuse(cutout, demand(net, hanging), "")])
    loose = tuple(load for load in hanging if load.phase == LOOSE)
    found = [(phase, demand(net, on_phase(hanging, phase))) for phase in THREE]
    fuses = [_fuse(cutout, each, phase.upper(), loose) for phase, each in found]
    return _noted(cutout, fuses)


def _nothing_there(
    net: Network, cutout: IntakeItem, loads: tuple[Load, ...]
) -> Against:
    """Return that a fuse on which nothing is recorded has no verdict, or is beyond."""
    added = demand(net, tuple(load for load in loads if not load.ref))
    rated = figure_of(cutout, "rated_current_a")
    if rated and added.amps > rated.value and not is_three(net):
        return _fuse(cutout, added, "")
    sign, says = NOTHING_THERE
    if added.rows:
        says = f"What is added comes to {added.total}. {says}"
    return Against(
        what="supply_fuse",
        thing=Named(ref=cutout.ref, title=cutout.title),
        rated=rated,
        demand=added.shown if added.rows else NOTHING,
        sign=sign,
        says=says,
    )


def _fuse(
    cutout: IntakeItem, found: Demand, phase: str, loose: tuple[Load, ...] = ()
) -> Against:
    rated = figure_of(cutout, "rated_current_a")
    sign, says = _fuse_words(rated, found, loose)
    return Against(
        what="supply_fuse",
        thing=Named(ref=cutout.ref, title=cutout.title),
        phase=phase,
        rated=rated,
        demand=found.shown,
        sign=sign,
        says=f"{phase}: {says}" if phase else says,
    )


def _noted(cutout: IntakeItem, found: list[Against]) -> list[Against]:
    """Say once what a sum beyond it means, and what a printed figure is worth."""
    beyond = [n for n, each in enumerate(found) if each.sign == "beyond"]
    place = beyond[0] if beyond else len(found) - 1
    printed = cutout.rated_current_a and cutout.basis not in ("document", "told")
    more = (USUAL if beyond else "", CARRIER if printed else "")
    says = " ".join(part for part in (found[place].says, *more) if part)
    found[place] = found[place].model_copy(update={"says": says})
    return found


def _fuse_words(
    rated: Figure | None, found: Demand, loose: tuple[Load, ...]
) -> tuple[Sign, str]:
    if rated is None:
        return "open", f"{CAUTIOUS}: {found.total}. {FIND_OUT}"
    spare = rated.value - found.amps
    said = f"{CAUTIOUS}: {found.total} against a supply fuse of {rated.shown}"
    if spare < 0:
        return "beyond", f"{said}, {amps(-spare)} more."
    doubt = " and ".join(_doubts(found, loose))
    if doubt:
        return "open", f"{said}, but {doubt}: no verdict yet."
    return "within", f"{said}: {amps(spare)} to spare."


def _doubts(found: Demand, loose: tuple[Load, ...]) -> Iterator[str]:
    """Yield what the sum leaves out, in words; a sum of nothing has no verdict."""
    left = found.not_counted
    ways = sum(each.is_way for each in left)
    partly = sum(each.partly for each in left)
    loose_ways = sum(load.is_way for load in loose)
    differ = sum(load.on_different for load in loose)
    counts = (
        (len(left) - ways - partly, "circuit", "not counted"),
        (ways, "way", "not counted"),
        (partly, "circuit", "not counted in full"),
        (len(loose) - loose_ways - differ, "load", "on no phase recorded"),
        (differ, "load", "on ways of different phases"),
        (loose_ways, "way", "on no phase recorded"),
    )
    for number, noun, how in counts:
        if number:
            what = f"one {noun} is" if number == 1 else f"{number} {noun}s are"
            yield f"{what} {how}"


def _tails(net: Network, loads: tuple[Load, ...]) -> Iterator[Against]:
    for item in net.record.intake:
        if item.kind == "tails" and item.owner in ("consumer", "unknown"):
            hanging = below(net, item.ref, loads)
            if hanging:
                yield _tail(net, item, heaviest(net, hanging))


def _tail(net: Network, item: IntakeItem, found: Demand) -> Against:
    """Tails are guarded by the fuse before them: that counts, not the demand."""
    rated, fuse = _tail_capacity(item), nearest_before(net, item.ref)
    fuse_a = fuse.rated_current_a if fuse else None
    sign: Sign = "open"
    if rated is None:
        says = "The size of these tails is not recorded, or not in the table."
    elif fuse_a is None:
        says = f"{rated.shown}, clipped; the fuse before them is not recorded."
    else:
        sign = "within" if rated.value >= fuse_a else "beyond"
        how = "no less" if sign == "within" else "less"
        says = f"{rated.shown}, clipped: {how} than the fuse before them, {fuse_a} A."
    return Against(
        what="tails",
        thing=Named(ref=item.ref, title=item.title),
        rated=rated,
        demand=found.shown,
        sign=sign,
        says=says,
    )


def _tail_capacity(item: IntakeItem) -> Figure | None:
    size = figure_of(item, "csa_mm2")
    if size is None:
        return None
    assumes = ("The tails are taken as clipped to a surface.",)
    try:
        value = TABLES["tails"].at(size.value, "C")
    except OutsideTableError:
        return None
    return tabled(f"Tails of {size.shown}", value, assumes=assumes)


def _switches(net: Network, loads: tuple[Load, ...]) -> Iterator[Against]:
    heads = [d for d in net.record.devices if d.kind in HEADS]
    between = [i for i in net.record.intake if i.kind in SWITCHES]
    every: tuple[Device | IntakeItem, ...] = (*between, *heads)
    for item in every:
        hanging = below(net, item.ref, loads)
        if hanging:
            yield _switch(net, item, hanging)


def _switch(
    net: Network, item: Device | IntakeItem, hanging: tuple[Load, ...]
) -> Against:
    rated, fuse = figure_of(item, "rated_current_a"), nearest_before(net, item.ref)
    fuse_a = fuse.rated_current_a if fuse else None
    found = heaviest(net, hanging)
    sign, says = _switch_words(rated, fuse_a, found)
    if sign == "beyond" and rated:
        sure = heaviest(net, hanging, loose=False)
        if sure.amps <= rated.value:
            sign, says = "open", f"{says.removesuffix(ASK)}{NO_PHASE}"
    return Against(
        what="switch",
        thing=Named(ref=item.ref, title=_title(net, item)),
        rated=rated,
        demand=found.shown,
        sign=sign,
        says=says,
    )


def _switch_words(
    rated: Figure | None, fuse_a: Decimal | None, found: Demand
) -> tuple[Sign, str]:
    if rated is None:
        return "open", f"Its rating is not recorded; {found.shown} is on it on paper."
    if fuse_a and rated.value >= fuse_a:
        before = f"the fuse or breaker before it, {plain(fuse_a)} A"
        return "within", f"{rated.shown}, no less than {before}, which guards it."
    said = f"{CAUTIOUS}: {found.shown} against {rated.shown}"
    known = f"is {plain(fuse_a)} A" if fuse_a else "is not recorded"
    before = f"The fuse or breaker before it {known}."
    if found.amps > rated.value:
        return "beyond", f"{said}. {before}{ASK}"
    if fuse_a is None or found.not_counted:
        left = " Not everything on it is counted." if found.not_counted else ""
        return "open", f"{said}. {before}{left}"
    return "within", f"{said}. {before}"


def _title(net: Network, item: Device | IntakeItem) -> str:
    board = net.record.by_ref.get(getattr(item, "board", ""))
    return f"{item.title} of {board.title}" if board else item.title
