"""A circuit's cable in the tables: its capacity, its voltage drop, its resistance."""

from __future__ import annotations

from decimal import ROUND_CEILING, Decimal

from app.domain.circuits.working import Input, Working
from app.domain.record import Circuit
from app.domain.tables import TABLES, OutsideTableError, Table

U0 = Decimal(230)
WARM = Decimal("1.20")
SOURCE_WARM = "IET On-Site Guide, Table I3: 1 + 0.004 × (70 − 20)"
_BY_CABLE = {
    "twin_and_earth": "capacity-4d5",
    "singles_in_conduit": "capacity-4d1a",
    "armoured": "capacity-4d4a",
}
_FIVE = Decimal(5)


def table_of(circuit: Circuit) -> Table | None:
    """Return the capacity table of a circuit's cable; None where there is none.

    Flat twin and earth in conduit or trunking is looked up as two-core cable.
    """
    if circuit.cable == "twin_and_earth" and circuit.method == "B":
        return TABLES["capacity-4d2a"]
    code = _BY_CABLE.get(circuit.cable)
    return TABLES[code] if code else None


def looked_up(name: str, table: Table, row: Decimal | int | str, column: str) -> Input:
    """Return a value of a table as an input, with its basis.

    Raises:
        OutsideTableError: The table does not hold it.
    """
    return Input(
        name=name,
        value=table.value(row, column),
        unit=table.unit.partition(";")[0] if ";" in table.unit else table.unit,
        origin="table",
        note=f"{table.standard}; {table.basis_of(row)}",
    )


def missing_cable(circuit: Circuit, *, method: bool = True) -> tuple[str, ...]:
    """Return what of the cable has to be known first."""
    missing = []
    if circuit.cable == "unknown":
        missing.append("the kind of cable")
    if circuit.line_mm2 is None:
        missing.append("the size of the line conductor")
    if method and circuit.method == "unknown":
        missing.append("how the cable is laid")
    return tuple(missing)


def capacity(circuit: Circuit) -> Working:
    """Return what a circuit's cable can carry, with its factors.

    Exact decimals, in amperes.  Where nothing is recorded of ambient temperature,
    grouping and insulation, 30 °C, none and none are assumed, and said to be.
    """
    blank = Working(
        title="Capacity of the cable, Iz",
        formula="Iz = It × Ca × Cg × Ci",
        unit="A",
        places=1,
        source="BS 7671:2018+A2:2022, Appendix 4, section 5",
    )
    needs = missing_cable(circuit)
    table = table_of(circuit)
    if needs or table is None or circuit.line_mm2 is None:
        why = needs or ("a table for this kind of cable, which there is none of here",)
        return blank.lacking(why)
    try:
        inputs = (
            looked_up("It", table, circuit.line_mm2, circuit.method),
            ambient(circuit.ambient_c),
            grouping(circuit.grouped_with),
            insulation(circuit),
        )
    except (OutsideTableError, ValueError) as error:
        return blank.lacking((_reason(error),))
    value = Decimal(1)
    for each in inputs:
        value *= each.value
    return blank.worth(value, inputs)


def _reason(error: Exception) -> str:
    if isinstance(error, OutsideTableError):
        return f"a figure beyond the table ({error.sentence})"
    return "a size, cable and way of laying that the table holds"


def ambient(celsius: int | None) -> Input:
    """Return the factor for the warmest place, the next warmer row of the table.

    Raises:
        OutsideTableError: It is warmer than the table goes.
    """
    if celsius is None:
        note = "nothing is recorded of a warm place: 30 °C"
        return Input(name="Ca", value=Decimal(1), unit="", origin="assumed", note=note)
    up = (Decimal(celsius) / _FIVE).to_integral_value(ROUND_CEILING) * _FIVE
    return looked_up("Ca", TABLES["ambient"], max(up, Decimal(25)), "70 °C cable")


def grouping(others: int | None) -> Input:
    """Return the factor for cables beside it, the next larger number in the table.

    Raises:
        OutsideTableError: There are more than the table goes.
    """
    if others is None:
        note = "nothing is recorded of cables beside it: none"
        return Input(name="Cg", value=Decimal(1), unit="", origin="assumed", note=note)
    table, all_of_them = TABLES["grouping"], Decimal(others + 1)
    row = next((n for n in table.numbers() if n >= all_of_them), all_of_them)
    return looked_up("Cg", table, row, "bunched")


def insulation(circuit: Circuit) -> Input:
    """Return the factor for the length wholly inside insulation.

    Raises:
        OutsideTableError: The factor is not for this way of laying.
    """
    length = circuit.insulation_mm
    if length is None and circuit.method in ("100", "101", "102", "103"):
        note = "the way of laying counts it already"
        return Input(name="Ci", value=Decimal(1), unit="", origin="table", note=note)
    if length is None:
        note = "none is recorded"
        return Input(name="Ci", value=Decimal(1), unit="", origin="assumed", note=note)
    if length == 0:
        return Input(name="Ci", value=Decimal(1), unit="", origin="record")
    if circuit.method != "C":
        raise OutsideTableError(
            "The factor for insulation goes with cable clipped to a surface, method C."
        )
    table = TABLES["insulation"]
    row = next((n for n in table.numbers() if n >= length), Decimal(500))
    return looked_up("Ci", table, row, "Ci")


def millivolts(circuit: Circuit) -> Input | None:
    """Return the voltage drop of the cable a metre, or None where no table has it."""
    table = table_of(circuit)
    if table is None and circuit.cable == "unknown":
        return None
    table = table or TABLES["capacity-4d5"]
    if circuit.line_mm2 is None:
        return None
    try:
        found = looked_up("mV/A/m", table, circuit.line_mm2, "mV/A/m")
    except OutsideTableError:
        return None
    return Input(
        name="mV/A/m",
        value=found.value,
        unit="mV/A/m",
        origin="table",
        note=found.note,
    )


def resistance(name: str, mm2: Decimal) -> Input:
    """Return the resistance of a copper conductor at 20 °C, in mΩ/m.

    Raises:
        OutsideTableError: The table has no such size.
    """
    return looked_up(name, TABLES["conductor-resistance"], mm2, "20 °C")
