"""A circuit's cable against the tables: what it carries, what it loses."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.circuits._working import (
    CannotTell,
    Figure,
    Outcome,
    Working,
    assumed,
    tabled,
    told,
    worked,
)
from app.domain.circuits.capacity import (
    ambient_factor,
    capacity,
    grouping_factor,
    insulation_factor,
)
from app.domain.circuits.current import design_current
from app.domain.circuits.guard import TWO_WAYS
from app.domain.circuits.needed import needs_elsewhere
from app.domain.circuits.phase import NO_TABLE
from app.domain.circuits.ring import ring_drop_at_middle, ring_drop_spread
from app.domain.circuits.subject import Subject
from app.domain.circuits.voltage import drop_at_end, drop_spread, from_origin
from app.domain.tables import TABLES

CAPACITY = "Capacity of the cable, Iz"
DROP = "Voltage drop"
MV = "Drop (mV/A/m)"
# The table of each kind of cable, and of each way of laying it that another table has.
TABLE_OF = {
    "twin_and_earth": "flat-twin-and-earth",
    "twin_no_earth": "multicore",
    "singles_in_conduit": "singles",
    "armoured": "armoured-70",
}
ELSEWHERE = {("twin_and_earth", "B"): "multicore"}
PVC = (
    "The armoured cable is taken as PVC; XLPE would carry more and lose a little more."
)
AIR = "The air round the cable is taken as 30 °C at the warmest."
GROUND = "The ground is taken as 20 °C, with nothing else warm in it."
ALONE = "The cable is taken as lying alone."
CLEAR = "The cable is taken as lying in no insulation beyond its way of laying."
TAILS = "What the tails lose is left out."
FACTORS_WITHIN = frozenset({"A", "100", "101", "102", "103"})


@told(CAPACITY)
def cable_capacity(subject: Subject) -> Outcome:
    """Return what a circuit's cable carries, with every factor that is known."""
    circuit = subject.circuit
    if subject.three_phase:
        return CannotTell(label=CAPACITY, why=NO_TABLE)
    open_ones = ("cable", "line_mm2", "method")
    if circuit.line_mm2 is None or "unknown" in (circuit.cable, circuit.method):
        return subject.cannot(CAPACITY, *open_ones)
    slug = ELSEWHERE.get((circuit.cable, circuit.method), TABLE_OF.get(circuit.cable))
    if slug is None or circuit.method not in TABLES[slug].columns:
        why = "no table here has this kind of cable laid in this way"
        return CannotTell(label=CAPACITY, why=why)
    reason = _beyond_tables(subject)
    if reason:
        return CannotTell(label=CAPACITY, why=reason)
    value = TABLES[slug].at(circuit.line_mm2, circuit.method)
    tabulated = tabled(f"It, method {circuit.method}", value, assumes=_taken(subject))
    return capacity(tabulated, tuple(_factors(subject)))


@told(DROP)
def own_drop(subject: Subject, *, spread: bool = False) -> Outcome:
    """Return the drop of one circuit by itself.

    Args:
        subject: The circuit.
        spread: Whether its load is spread evenly; else all of it is at the far end.
    """
    circuit, length = subject.circuit, subject.figure("length_m")
    if subject.three_phase:
        return CannotTell(label=DROP, why=NO_TABLE)
    unknown = "unknown" in (circuit.cable, circuit.arrangement)
    if circuit.line_mm2 is None or length is None or unknown:
        names = ("cable", "arrangement", "line_mm2", "length_m")
        return subject.cannot(DROP, *names)
    if circuit.cable not in TABLE_OF:
        why = "no table here has this kind of cable"
        return CannotTell(label=DROP, why=why)
    current = design_current(subject)
    if isinstance(current, CannotTell):
        return current.model_copy(update={"label": DROP})
    value = TABLES[TABLE_OF[circuit.cable]].at(circuit.line_mm2, MV)
    mv = tabled("Drop of the cable", value, assumes=_taken(subject))
    return _drop(subject, mv, worked(current), length, spread=spread)


def drop_from_origin(subject: Subject, *, spread: bool = False) -> Outcome:
    """Return the drop from the origin to the end of a circuit, boards between too."""
    before = subject.before
    if before is None:
        return CannotTell(label=DROP, why=TWO_WAYS)
    drops: list[Working] = []
    for circuit in (*before, subject.circuit):
        last = circuit.ref == subject.circuit.ref
        drop = own_drop(subject.of(circuit), spread=spread and last)
        if isinstance(drop, CannotTell):
            return needs_elsewhere(drop, circuit, subject.circuit)
        drops.append(drop)
    found = from_origin(drops)
    return found.model_copy(update={"assumes": (*found.assumes, TAILS)})


def _drop(
    subject: Subject, mv: Figure, current: Figure, length: Figure, *, spread: bool
) -> Working:
    if subject.is_ring:
        return (ring_drop_spread if spread else ring_drop_at_middle)(
            length, current, mv
        )
    return (drop_spread if spread else drop_at_end)(mv, current, length)


def _taken(subject: Subject) -> tuple[str, ...]:
    """Return what is assumed where a table for single-phase circuits is read."""
    pvc = (PVC,) if subject.circuit.cable == "armoured" else ()
    return (*pvc, *subject.phase_assumed)


def _beyond_tables(subject: Subject) -> str:
    """Return why no factor can be given for how a cable lies; empty if it can."""
    circuit = subject.circuit
    if circuit.method == "D" and circuit.grouped_with:
        return "no table here has the factor for cables together in the ground"
    within = circuit.insulation_mm and circuit.method not in FACTORS_WITHIN | {"C"}
    if within:
        return "the factor for insulation is for a cable by method C"
    return ""


def _factors(subject: Subject) -> Iterator[Figure]:
    circuit = subject.circuit
    if circuit.method == "D":
        yield assumed("Ca, ground", Decimal(1), "", GROUND)
        return
    if circuit.ambient_c is None:
        yield assumed("Ca", Decimal(1), "", AIR)
    else:
        yield ambient_factor(Decimal(circuit.ambient_c))
    if circuit.grouped_with is None:
        yield assumed("Cg", Decimal(1), "", ALONE)
    else:
        yield grouping_factor(Decimal(circuit.grouped_with + 1))
    if circuit.method not in FACTORS_WITHIN:
        if circuit.insulation_mm is None:
            yield assumed("Ci", Decimal(1), "", CLEAR)
        elif circuit.insulation_mm:
            yield insulation_factor(Decimal(circuit.insulation_mm))
