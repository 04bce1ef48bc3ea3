"""All figures of one circuit, from the record."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits.adiabatic import adiabatic
from app.domain.circuits.cable import U0, capacity
from app.domain.circuits.drop import circuit_drop, drop_check, from_origin
from app.domain.circuits.loop import (
    measured_limit,
    r1_r2,
    rcd_limit,
    zs_check,
    zs_limit,
)
from app.domain.circuits.overload import overload
from app.domain.circuits.working import Check, Input, Working
from app.domain.network import Network, upstream
from app.domain.record import Circuit, Device


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitFigures:
    """The figures of a circuit.

    Attributes:
        device: What protects it, if it is one device.
        design: Current that the figures count with.
        workings: Figures by themselves.
        checks: Figures held against their limits.
    """

    device: Device | None
    design: Input
    workings: tuple[Working, ...]
    checks: tuple[Check, ...]


def circuit_figures(net: Network, circuit: Circuit) -> CircuitFigures:
    """Return all figures of a circuit, each with its working or with what it needs."""
    home = net.record.home
    device = device_of(net, circuit)
    amps = design_current(circuit, device)
    drops = [circuit_drop(each, amps_of(net, each)) for each in _before(net, circuit)]
    drop = circuit_drop(circuit, amps)
    whole = from_origin([*drops, drop]) if drops else drop
    limit = zs_limit(circuit, device)
    workings = [capacity(circuit), drop, r1_r2(circuit), limit, measured_limit(limit)]
    residual = [each for each in _rcds(net, circuit) if each.residual_current_ma]
    workings += [rcd_limit(each.residual_current_ma or Decimal(0)) for each in residual]
    return CircuitFigures(
        device=device,
        design=amps,
        workings=tuple(workings),
        checks=(
            overload(circuit, device),
            drop_check(circuit, whole),
            zs_check(home, circuit, device),
            adiabatic(circuit, device),
        ),
    )


def device_of(net: Network, circuit: Circuit) -> Device | None:
    """Return the one device that a circuit is wired to."""
    found = [net.record.find(Device, ref) for ref in circuit.ways]
    return found[0] if len(found) == 1 else None


def amps_of(net: Network, circuit: Circuit) -> Input:
    """Return the current that a circuit's figures count with."""
    return design_current(circuit, device_of(net, circuit))


def design_current(circuit: Circuit, device: Device | None) -> Input:
    """Return the design current: the connected load, else the device's rating."""
    if circuit.connected_w is not None:
        note = f"{circuit.connected_w} W ÷ 230 V"
        value = circuit.connected_w / U0
        return Input(name="I", value=value, unit="A", origin="record", note=note)
    if device is not None and device.rated_current_a is not None:
        note = "no load is recorded: the rating of the device"
        value = device.rated_current_a
        return Input(name="I", value=value, unit="A", origin="assumed", note=note)
    note = "neither load nor rating is recorded: 0 A"
    return Input(name="I", value=Decimal(0), unit="A", origin="assumed", note=note)


def _before(net: Network, circuit: Circuit) -> list[Circuit]:
    """Return the distribution circuits between the origin and a circuit."""
    above = upstream(net, circuit.ref)
    return [each for each in net.record.circuits if each.ref in above]


def _rcds(net: Network, circuit: Circuit) -> list[Device]:
    above = upstream(net, circuit.ref)
    return [d for d in net.record.devices if d.ref in above and d.residual_current_ma]
