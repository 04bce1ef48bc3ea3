"""Whether the device looks after the cable: overload, rings, rewirable fuses."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits.cable import capacity
from app.domain.circuits.working import Check, Input, Working, at_most
from app.domain.record import Circuit, Device

REWIRABLE = Decimal("0.725")
RING_DEVICES = (Decimal(30), Decimal(32))
RING_MM2 = Decimal("2.5")
RING_IZ = Decimal(20)


def rated(device: Device | None) -> Working:
    """Return the rated current of a device as a figure, in amperes."""
    blank = Working(
        title="Rated current of the device, In",
        formula="In",
        unit="A",
        places=0,
        source="read from the device",
    )
    if device is None:
        return blank.lacking(("which device feeds it",))
    if device.rated_current_a is None:
        return blank.lacking(("the rating of the device",))
    value = device.rated_current_a
    put = Input(name="In", value=value, unit="A", origin="record", note=device.title)
    return blank.worth(value, (put,))


def overload(circuit: Circuit, device: Device | None) -> Check:
    """Return whether the device is no larger than the cable carries.

    A ring final circuit is judged by its own rule, a rewirable fuse by 0.725 of the
    capacity.
    """
    if circuit.arrangement == "ring":
        return ring_rule(circuit, device)
    limit = capacity(circuit)
    if device is not None and device.kind == "fuse_rewirable":
        limit = rewirable(limit)
    return at_most(
        "Is the device no larger than the cable carries?", rated(device), limit
    )


def rewirable(carries: Working) -> Working:
    """Return the largest rewirable fuse for a capacity: 0.725 of it."""
    if carries.value is None:
        return carries
    factor = Input(
        name="0.725",
        value=REWIRABLE,
        unit="",
        origin="table",
        note="1.45 ÷ fusing factor 2; confirmed",
    )
    iz = Input(name="Iz", value=carries.value, unit="A", origin="worked_out")
    return Working(
        title="Largest rewirable fuse for the cable",
        formula="0.725 × Iz",
        inputs=(factor, iz, *carries.assumed),
        value=REWIRABLE * carries.value,
        unit="A",
        places=1,
        source="BS 7671:2018+A2:2022, 433.1.202",
    )


def ring_rule(circuit: Circuit, device: Device | None) -> Check:
    """Return whether a ring keeps its rule: 30 or 32 A, 2.5 mm², 20 A of cable."""
    carries = capacity(circuit)
    least = Working(
        title="Least capacity of the cable of a ring",
        formula="20 A",
        inputs=(Input(name="least", value=RING_IZ, unit="A", origin="table"),),
        value=RING_IZ,
        unit="A",
        places=0,
        source="BS 7671:2018+A2:2022, 433.1.204",
    )
    size, rating = circuit.line_mm2, rated(device).value
    parts = (
        None if rating is None else rating in RING_DEVICES,
        None if size is None else size >= RING_MM2,
        None if carries.value is None else carries.value >= RING_IZ,
    )
    holds = False if False in parts else (None if None in parts else True)
    needs = tuple(dict.fromkeys((*carries.needs, *rated(device).needs)))
    return Check(
        title="Does the ring keep its rule?",
        figure=carries if holds is not None else carries.lacking(needs),
        limit=least,
        holds=holds,
        note="A device of 30 or 32 A, 2.5 mm² at least, and a cable that carries 20 A "
        "as it is laid.",
    )
