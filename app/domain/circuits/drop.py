"""Voltage drop: radials, rings both ways round, and from the origin through boards."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from app.domain.circuits.cable import U0, millivolts
from app.domain.circuits.working import Check, Input, Working, at_most
from app.domain.record import Circuit
from app.domain.tables import TABLES

_SOURCE = "BS 7671:2018+A2:2022, Appendix 4, section 6"
_THOUSAND = Decimal(1000)


def radial_drop(mv: Decimal, loads: Iterable[tuple[Decimal, Decimal]]) -> Decimal:
    """Return the drop to the end of a radial, in volts.

    Args:
        mv: Drop of the cable, mV/A/m.
        loads: Place from the board in metres, and current in amperes, of each load.
    """
    return sum((mv * place * amps for place, amps in loads), Decimal(0)) / _THOUSAND


def drop_at(
    mv: Decimal, loads: Sequence[tuple[Decimal, Decimal]], place: Decimal
) -> Decimal:
    """Return the drop at a place of a radial, in volts; loads beyond it count too."""
    return radial_drop(mv, [(min(where, place), amps) for where, amps in loads])


def ring_drop_at(
    mv: Decimal,
    loop: Decimal,
    loads: Iterable[tuple[Decimal, Decimal]],
    place: Decimal,
) -> Decimal:
    """Return the drop at a place of a ring, shared both ways round, in volts.

    Args:
        mv: Drop of the cable, mV/A/m.
        loop: Length round the loop, in metres.
        loads: Place round the loop in metres, and current in amperes, of each load.
        place: Where, in metres round the loop.
    """
    total = sum(
        (
            amps * min(place, where) * (loop - max(place, where))
            for where, amps in loads
        ),
        Decimal(0),
    )
    return mv * total / loop / _THOUSAND


def circuit_drop(circuit: Circuit, amps: Input) -> Working:
    """Return the drop to the far end of a circuit, all its load there, in volts.

    A ring has its load in the middle of the loop, which is the worst place.
    """
    ring = circuit.arrangement == "ring"
    blank = Working(
        title="Voltage drop in the circuit",
        formula="mV/A/m × I × L ÷ 1000" + (" ÷ 4" if ring else ""),
        unit="V",
        source=_SOURCE,
    )
    mv = millivolts(circuit)
    needs = []
    if mv is None:
        needs.append("kind and size of the cable")
    if circuit.length_m is None:
        needs.append("the length of the cable")
    if circuit.arrangement == "unknown":
        needs.append("whether it is a ring or a radial")
    if needs or mv is None or circuit.length_m is None:
        return blank.lacking(tuple(needs))
    length = Input(name="L", value=circuit.length_m, unit="m", origin="record")
    value = mv.value * amps.value * length.value / _THOUSAND
    value = value / 4 if ring else value
    return blank.worth(value, (mv, amps, length))


def from_origin(parts: Sequence[Working]) -> Working:
    """Return the drop through distribution circuits and the final circuit, in volts."""
    needs = tuple(dict.fromkeys(need for part in parts for need in part.needs))
    values = [part.value for part in parts if part.value is not None]
    blank = Working(
        title="Voltage drop from the origin",
        formula=" + ".join(f"V{n + 1}" for n in range(len(parts))),
        unit="V",
        source=_SOURCE,
    )
    if needs or not values:
        return blank.lacking(needs or ("a circuit",))
    own = tuple(
        Input(name=f"V{n + 1}", value=value, unit="V", origin="worked_out")
        for n, value in enumerate(values)
    )
    assumed = tuple(each for part in parts for each in part.assumed)
    return blank.worth(sum(values, Decimal(0)), (*own, *assumed))


def drop_check(circuit: Circuit, drop: Working) -> Check:
    """Return whether a drop keeps the limit for what the circuit is used for."""
    use = "lighting" if circuit.use == "lighting" else "other"
    table = TABLES["voltage-drop-limits"]
    percent = Input(
        name="limit",
        value=table.value(use, "%"),
        unit="%",
        origin="table",
        note=f"{table.standard}; {table.basis_of(use)}",
    )
    limit = Working(
        title="Limit of voltage drop",
        formula="limit × 230 V ÷ 100",
        inputs=(percent,),
        value=percent.value * U0 / 100,
        unit="V",
        places=1,
        source=table.standard,
    )
    note = "" if circuit.use != "unknown" else "Its use is not known: 5 % is taken."
    return at_most("Is the voltage drop within its limit?", drop, limit, note)
