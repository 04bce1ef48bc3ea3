"""Whether the protective conductor stands the fault until the device has gone."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits.working import Check, Input, Working, at_most
from app.domain.record import Circuit, Device
from app.domain.tables import TABLES, OutsideTableError

K_IN_CABLE = "copper in cable, 70 °C thermoplastic"
_MULTIPLES = {"B": 5, "C": 10, "D": 20}
_TENTH = Decimal("0.1")


def least_size(amps: Decimal, seconds: Decimal, k: Decimal) -> Decimal:
    """Return √(I²t) ÷ k, in mm² (BS 7671:2018+A2:2022, 543.1.3)."""
    return (amps * amps * seconds).sqrt() / k


def adiabatic(circuit: Circuit, device: Device | None) -> Check:
    """Return whether the protective conductor is at least the size that it has to be.

    A rewirable fuse at the current that blows it in 0.4 s; a circuit-breaker at the
    current that trips it at once, for 0.1 s.  Faster than that, the maker's let-through
    energy is needed.
    """
    return at_most(
        "Does the protective conductor stand the fault?",
        _least(device),
        _there(circuit),
        "For a circuit-breaker at larger fault currents the maker's let-through energy "
        "decides; that is not looked at.",
    )


def _there(circuit: Circuit) -> Working:
    blank = Working(
        title="Protective conductor there",
        formula="S",
        unit="mm²",
        source="read from the cable",
    )
    if circuit.cpc_mm2 is None:
        return blank.lacking(("the size of the protective conductor",))
    put = Input(name="S", value=circuit.cpc_mm2, unit="mm²", origin="record")
    return blank.worth(circuit.cpc_mm2, (put,))


def _least(device: Device | None) -> Working:
    blank = Working(
        title="Least size for the fault",
        formula="√(I² × t) ÷ k",
        unit="mm²",
        source="BS 7671:2018+A2:2022, 543.1.3",
    )
    if device is None or device.rated_current_a is None:
        return blank.lacking(("kind and rating of the device",))
    try:
        amps, seconds = _fault(device, device.rated_current_a)
    except OutsideTableError as error:
        return blank.lacking((f"a device in the tables ({error.sentence})",))
    table = TABLES["adiabatic-k"]
    k = Input(
        name="k",
        value=table.value(K_IN_CABLE, "k"),
        unit=table.unit,
        origin="table",
        note=f"{table.standard}; {table.basis_of(K_IN_CABLE)}",
    )
    value = least_size(amps.value, seconds.value, k.value)
    return blank.worth(value, (amps, seconds, k))


def _fault(device: Device, rated: Decimal) -> tuple[Input, Input]:
    if device.kind == "fuse_rewirable":
        table = TABLES["zs-bs-3036"]
        amps = table.value(rated, "Ia at 0.4 s, A")
        note = f"blows it in 0.4 s; {table.standard}; {table.basis_of(rated)}"
        return _pair(amps, Decimal("0.4"), note)
    if device.curve in _MULTIPLES:
        amps = _MULTIPLES[device.curve] * rated
        return _pair(amps, _TENTH, f"trips type {device.curve} at once")
    raise OutsideTableError("Only rewirable fuses and types B, C and D are held here.")


def _pair(amps: Decimal, seconds: Decimal, note: str) -> tuple[Input, Input]:
    return (
        Input(name="I", value=amps, unit="A", origin="table", note=note),
        Input(name="t", value=seconds, unit="s", origin="table", note=note),
    )
