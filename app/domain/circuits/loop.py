"""Earth loop: R1+R2, Zs against the device's limit, rings, measured figures, TT."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits.cable import SOURCE_WARM, WARM, resistance
from app.domain.circuits.working import Check, Input, Working, at_most
from app.domain.record import Circuit, Device, Home
from app.domain.tables import TABLES, OutsideTableError, Table

EIGHTY = Decimal("0.8")
CMIN_U0 = Decimal("218.5")
# BS 3871, upper instantaneous multiples of In; from memory.
OLD_TYPES = {"1": 4, "2": 7, "3": 10, "4": 50}
_FUSES = {
    "fuse_rewirable": "zs-bs-3036",
    "fuse_cartridge": "zs-bs-1361",
    "fuse_bs88": "zs-bs-88-3",
}
_BREAKERS = ("circuit_breaker", "rcbo", "afdd")


def r1_r2(circuit: Circuit) -> Working:
    """Return R1+R2 at 20 °C to the furthest point, in ohms.

    A ring: a quarter of both loops together, which its middle reads.
    """
    ring = circuit.arrangement == "ring"
    blank = Working(
        title="R1+R2 at 20 °C",
        formula="(R line + R protective) × L ÷ 1000" + (" ÷ 4" if ring else ""),
        unit="Ω",
        source="BS EN 60228; IET On-Site Guide, Table I1",
    )
    needs = tuple(_missing(circuit))
    if needs:
        return blank.lacking(needs)
    try:
        line = resistance("R line", circuit.line_mm2 or Decimal(0))
        protective = resistance("R protective", circuit.cpc_mm2 or Decimal(0))
    except OutsideTableError as error:
        return blank.lacking((f"a size in the table ({error.sentence})",))
    length = Input(
        name="L", value=circuit.length_m or Decimal(0), unit="m", origin="record"
    )
    value = (line.value + protective.value) * length.value / 1000
    value = value / 4 if ring else value
    return blank.worth(value, (line, protective, length))


def _missing(circuit: Circuit) -> list[str]:
    missing = []
    if circuit.line_mm2 is None:
        missing.append("the size of the line conductor")
    if circuit.cpc_mm2 is None:
        missing.append("the size of the protective conductor")
    if circuit.length_m is None:
        missing.append("the length of the cable")
    if circuit.arrangement == "unknown":
        missing.append("whether it is a ring or a radial")
    return missing


def zs(home: Home, circuit: Circuit) -> Working:
    """Return Zs at running temperature, calculated from the record, in ohms."""
    blank = Working(
        title="Zs, calculated, conductors warm",
        formula="Ze + 1.20 × (R1+R2)",
        unit="Ω",
        source=f"BS 7671:2018+A2:2022, 411.4; {SOURCE_WARM}",
    )
    part = r1_r2(circuit)
    needs = part.needs if home.ze_ohm is not None else ("Ze", *part.needs)
    if needs or home.ze_ohm is None or part.value is None:
        return blank.lacking(needs)
    measured = home.ze_basis == "measured"
    ze = Input(
        name="Ze",
        value=home.ze_ohm,
        unit="Ω",
        origin="measured" if measured else "record",
        note="as recorded: " + ("measured" if measured else "not measured"),
    )
    both = Input(name="R1+R2", value=part.value, unit="Ω", origin="worked_out")
    warm = Input(name="1.20", value=WARM, unit="", origin="table", note=SOURCE_WARM)
    value = ze.value + warm.value * both.value
    return blank.worth(value, (ze, both, warm))


def longest_time(circuit: Circuit, device: Device | None) -> Decimal | None:
    """Return the longest disconnection time in a TN system, in seconds.

    0.4 s for a final circuit to 63 A with sockets, or to 32 A without; 5 s for the
    rest (BS 7671:2018+A2:2022, 411.3.2).  None where that cannot be told.
    """
    if circuit.use == "distribution" or circuit.arrangement == "distribution":
        return Decimal(5)
    if device is None or device.rated_current_a is None:
        return None
    most = 63 if circuit.use in ("sockets", "unknown") else 32
    return Decimal("0.4") if device.rated_current_a <= most else Decimal(5)


def zs_limit(circuit: Circuit, device: Device | None) -> Working:
    """Return the largest Zs for a circuit's device, in ohms."""
    seconds = longest_time(circuit, device)
    blank = Working(
        title="Largest Zs for the device",
        formula=f"table, {seconds} s" if seconds else "table",
        unit="Ω",
        source="BS 7671:2018+A2:2022, 411.4",
    )
    if device is None or device.rated_current_a is None or seconds is None:
        return blank.lacking(("kind and rating of the device",))
    if device.kind not in (*_BREAKERS, *_FUSES):
        return blank.lacking(("a device that the tables hold",))
    try:
        found = _limit(device, device.rated_current_a, seconds)
    except OutsideTableError as error:
        return blank.lacking((f"a device that the tables hold ({error.sentence})",))
    return blank.worth(found.value, (found,))


def _limit(device: Device, amps: Decimal, seconds: Decimal) -> Input:
    if device.kind in _BREAKERS:
        return _breaker_limit(device, amps, seconds)
    table = TABLES[_FUSES[device.kind]]
    return _of(table, amps, f"{seconds} s")


def _breaker_limit(device: Device, amps: Decimal, seconds: Decimal) -> Input:
    if device.curve in OLD_TYPES:
        return Input(
            name="Zs",
            value=CMIN_U0 / (OLD_TYPES[device.curve] * amps),
            unit="Ω",
            origin="table",
            note=f"BS 3871 type {device.curve}, 218.5 ÷ (m × In); from memory",
        )
    if device.curve == "unknown":
        raise OutsideTableError("the type of the circuit-breaker is not recorded")
    column = device.curve
    if device.curve == "D":
        column = "D at 0.4 s" if seconds < 1 else "D at 5 s"
    return _of(TABLES["zs-circuit-breaker"], amps, column)


def _of(table: Table, amps: Decimal, column: str) -> Input:
    return Input(
        name="Zs",
        value=table.value(amps, column),
        unit="Ω",
        origin="table",
        note=f"{table.standard}; {table.basis_of(amps)}",
    )


def zs_check(home: Home, circuit: Circuit, device: Device | None) -> Check:
    """Return whether the calculated Zs keeps the device's limit."""
    return at_most(
        "Is the calculated Zs within the limit of the device?",
        zs(home, circuit),
        zs_limit(circuit, device),
        "Calculated from your record; a measurement goes first.",
    )


def measured_limit(limit: Working) -> Working:
    """Return what a cold measurement may read at most: 0.8 of the limit, in ohms."""
    if limit.value is None:
        return limit
    whole = Input(name="limit", value=limit.value, unit="Ω", origin="worked_out")
    factor = Input(
        name="0.8", value=EIGHTY, unit="", origin="table", note="Appendix 3; confirmed"
    )
    return Working(
        title="What a cold measurement may read at most",
        formula="0.8 × limit",
        inputs=(factor, whole),
        value=EIGHTY * limit.value,
        unit="Ω",
        source="BS 7671:2018+A2:2022, Appendix 3",
    )


def rcd_limit(residual_ma: Decimal) -> Working:
    """Return the largest earth loop with an RCD: 50 V ÷ IΔn, in ohms."""
    put = Input(name="IΔn", value=residual_ma, unit="mA", origin="record")
    return Working(
        title="Largest earth loop with the RCD",
        formula="50 V ÷ IΔn",
        inputs=(put,),
        value=Decimal(50) / residual_ma * 1000 if residual_ma else None,
        needs=() if residual_ma else ("IΔn of the RCD",),
        unit="Ω",
        places=0,
        source="BS 7671:2018+A2:2022, 411.5.3 and Table 41.5",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RingFigures:
    """What the three end-to-end readings of a ring say, all in ohms.

    Attributes:
        line_and_neutral_agree: Whether r1 and rn are within 0.05 Ω.
        ratio: r2 ÷ r1.
        expected_ratio: What the sizes lead one to expect; None where not known.
        r1_r2: (r1+r2) ÷ 4, which the middle of the ring reads.
    """

    line_and_neutral_agree: bool
    ratio: Decimal
    expected_ratio: Decimal | None
    r1_r2: Decimal


def ring_figures(
    r1: Decimal, rn: Decimal, r2: Decimal, circuit: Circuit | None = None
) -> RingFigures:
    """Return what the end-to-end readings of a ring say of each other.

    0.05 Ω is common practice, no source.  (r1+r2) ÷ 4 is what the middle reads; with a
    thinner protective conductor the other points read less.

    Raises:
        ValueError: A reading is not above nought.
    """
    if min(r1, rn, r2) <= 0:
        raise ValueError("end-to-end readings are above nought")
    expected = None
    if circuit is not None and circuit.line_mm2 and circuit.cpc_mm2:
        line, protective = (
            resistance("r", size) for size in (circuit.line_mm2, circuit.cpc_mm2)
        )
        expected = protective.value / line.value
    return RingFigures(
        line_and_neutral_agree=abs(r1 - rn) <= Decimal("0.05"),
        ratio=r2 / r1,
        expected_ratio=expected,
        r1_r2=(r1 + r2) / 4,
    )
