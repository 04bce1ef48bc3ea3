"""Maximum demand with diversity: group by group, and how far it may lie off.

Source: IET On-Site Guide, Tables A1 and A2. The table is cautious: most homes come out
above their supply fuse on it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from decimal import ROUND_HALF_UP, Decimal

from app.domain.circuits import Subject, Working
from app.domain.circuits._working import Exact
from app.domain.load.groups import GROUPS, Group
from app.domain.load.loads import Load
from app.domain.network import Network
from app.domain.record import Circuit
from app.domain.record._field import Model, field

SOCKET_A = 5
NOTHING = "nothing counted yet"
LAMP_W, VOLTS = Decimal(100), Decimal(230)
LAMPS = "100 W for every light, instead of the load recorded"
EACH_COOKER = "the rule for cooking for each circuit, instead of all together"
UNMANAGED = "what is held back counted in full"


class Row(Model):
    """A group of loads, its rule and its figures."""

    group: str = field("Group", ...)
    label: str = field("What it is called", ...)
    rule: str = field("Rule", ...)
    put_in: str = field("The rule with the numbers in it", ...)
    amps: Exact = field("What counts, not rounded", ...)
    shown: str = field("What counts", ...)
    loads: tuple[str, ...] = field("Circuits in it", ())
    source: str = field("Where the rule stands", ...)
    basis: str = field("How well that is known", "")
    assumes: tuple[str, ...] = field("What is assumed", ())


class Variation(Model):
    """A common other way to count, and the total by it."""

    label: str = field("How", ...)
    amps: Exact = field("Total by it, not rounded", ...)
    shown: str = field("Total by it", ...)


class NotCounted(Model):
    """A circuit, or a way without one, that the total leaves out, wholly or in part."""

    ref: str = field("Circuit or way", ...)
    title: str = field("What it is called", ...)
    why: str = field("Why", ...)
    partly: bool = field("Whether a part of it is counted", default=False)
    is_way: bool = field("Whether it is a way without a circuit", default=False)


class Demand(Model):
    """A total with its rows; what is not counted makes it a least."""

    rows: tuple[Row, ...] = field("Rows", ())
    amps: Exact = field("Total, not rounded", ...)
    shown: str = field("Total", ...)
    low: Exact = field("Least by the common variations", ...)
    high: Exact = field("Most by the common variations", ...)
    variations: tuple[Variation, ...] = field("Common other ways to count", ())
    day: str = field("Without what is on in off-peak hours only", "")
    off_peak: str = field("What is on in off-peak hours only, alone", "")
    not_counted: tuple[NotCounted, ...] = field("Circuits and ways left out", ())

    @property
    def total(self) -> str:
        """The total in words: a least, where circuits are left out."""
        least = self.not_counted and self.shown != NOTHING
        return f"at least {self.shown}" if least else self.shown

    @property
    def assumes(self) -> tuple[str, ...]:
        """All that is assumed in it."""
        return tuple(dict.fromkeys(a for row in self.rows for a in row.assumes))


def demand(net: Network, loads: Sequence[Load]) -> Demand:
    """Return the demand of some loads; what is managed counts as held back."""
    counted = [load for load in loads if load.counts]
    rows = tuple(rows_of(load for load in counted if not load.managed))
    total = _sum(rows)
    changes = tuple(_changes(net, counted))
    day = [load for load in counted if not load.off_peak and not load.managed]
    night = [load for load in counted if load.off_peak and not load.managed]
    return Demand(
        rows=rows,
        amps=total,
        shown=amps(total) if counted or not loads else NOTHING,
        low=total + sum((min(c, Decimal(0)) for _, c in changes), Decimal(0)),
        high=total + sum((max(c, Decimal(0)) for _, c in changes), Decimal(0)),
        variations=tuple(
            Variation(label=label, amps=total + change, shown=amps(total + change))
            for label, change in changes
        ),
        day=amps(_total(day)) if night else "",
        off_peak=amps(_total(night)) if night else "",
        not_counted=tuple(_left_out(load) for load in loads if load.why_not),
    )


def _left_out(load: Load) -> NotCounted:
    return NotCounted(
        ref=load.ref,
        title=load.title,
        why=load.why_not,
        partly=load.counts,
        is_way=load.is_way,
    )


def rows_of(loads: Iterable[Load]) -> Iterator[Row]:
    """Yield a row for each group that has a load."""
    every = list(loads)
    for group in GROUPS.values():
        chosen = [load for load in every if load.group == group.code]
        if chosen:
            yield _row(group, chosen)


def amps(value: Decimal) -> str:
    """Write a current to one place, as a total deserves."""
    return f"{value.quantize(Decimal('0.1'), rounding=ROUND_HALF_UP)} A"


def _row(group: Group, loads: Sequence[Load]) -> Row:
    workings = [load.current for load in loads if isinstance(load.current, Working)]
    currents = [working.value for working in workings]
    sockets = _sockets(group, loads)
    more = f" + {SOCKET_A} A × {sockets} for a socket" if sockets else ""
    value = group.counted(currents) + SOCKET_A * sockets
    return Row(
        group=group.code,
        label=group.label,
        rule=group.rule,
        put_in=f"{group.put_in(currents)}{more}",
        amps=value,
        shown=amps(value),
        loads=tuple(load.title for load in loads),
        source=group.source,
        basis=group.basis,
        assumes=tuple(dict.fromkeys(a for w in workings for a in w.assumes)),
    )


def _sockets(group: Group, loads: Sequence[Load]) -> int:
    return sum(load.sockets for load in loads) if group.code == "cooking" else 0


def _changes(net: Network, loads: Sequence[Load]) -> Iterator[tuple[str, Decimal]]:
    """Yield each common variation with what it changes in the total."""
    in_force = [load for load in loads if not load.managed]
    for label, change in (
        (LAMPS, _by_lamps(net, in_force)),
        (EACH_COOKER, _by_cooker(in_force)),
        (UNMANAGED, _total(loads) - _total(in_force)),
    ):
        if change:
            yield label, change


def _by_lamps(net: Network, loads: Sequence[Load]) -> Decimal:
    """Count every light as Table A1 does, where lights are recorded."""
    lights = [load for load in loads if load.group == "lighting" and load.ref]
    lamps = sum(_lamps(net, load) for load in lights)
    if not lamps:
        return Decimal(0)
    counted = GROUPS["lighting"].counted([lamps * LAMP_W / VOLTS])
    return counted - _sum(rows_of(lights))


def _lamps(net: Network, load: Load) -> int:
    circuit = net.record.find(Circuit, load.ref)
    if circuit is None:
        return 0
    points = Subject(net, circuit).points
    return sum(point.count for point in points if point.kind == "light")


def _by_cooker(loads: Sequence[Load]) -> Decimal:
    cookers = [load for load in loads if load.group == "cooking"]
    if len(cookers) < 2:
        return Decimal(0)
    return sum((_total([load]) for load in cookers), -_total(cookers))


def _total(loads: Iterable[Load]) -> Decimal:
    return _sum(rows_of(loads))


def _sum(rows: Iterable[Row]) -> Decimal:
    return sum((row.amps for row in rows), Decimal(0))
