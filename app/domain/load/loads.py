"""The loads of a home, circuit by circuit, as the record gives them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.chain import chains
from app.domain.circuits import (
    CannotTell,
    Outcome,
    Subject,
    Working,
    load_current,
)
from app.domain.circuits.current import cooker_sockets, is_least
from app.domain.circuits.phase import on_different, own_phase
from app.domain.kinds import DEVICE_KINDS
from app.domain.load.groups import GROUP_OF_USE, NO_LOAD
from app.domain.network import Network, downstream, fed_by
from app.domain.record import Circuit, Device
from app.domain.record._field import Model, field

LABEL = "Load of the way"
NO_CIRCUIT = "no circuit is recorded on it, nor that it is spare"
PART = "Only a part of its load is recorded, and counted."
NO_USE = "Cannot tell: what it is used for is not recorded."


class Load(Model):
    """What one circuit, or one thing that might be added, draws.

    A way in use of which no circuit is recorded is one too, and never counts.
    """

    ref: str = field("Circuit, or way without one", "")
    title: str = field("What it is called", ...)
    group: str = field("Group of loads", "")
    current: Outcome = field("Its current", ...)
    sockets: int = field("Sockets in its control unit", 0)
    managed: bool = field("Held back when the home draws much", default=False)
    off_peak: bool = field("On in off-peak hours only", default=False)
    phase: str = field("Phase", "unknown")
    on_different: bool = field(
        "Whether its ways are on different phases", default=False
    )
    is_way: bool = field("Whether it is a way without a circuit", default=False)

    @property
    def counts(self) -> bool:
        """Whether its current and its group are known."""
        return bool(self.group) and isinstance(self.current, Working)

    @property
    def why_not(self) -> str:
        """Why it is not counted, or not all of it; empty if it is."""
        if isinstance(self.current, CannotTell):
            return self.current.sentence
        if self.group and is_least(self.current):
            return PART
        return "" if self.group else NO_USE


def loads_of(net: Network) -> tuple[Load, ...]:
    """Return every load of a home; what feeds in or feeds a board is none."""
    subjects = (Subject(net, circuit) for circuit in net.record.circuits)
    of_circuits = (_load(s) for s in subjects if not _is_none(s))
    return (*of_circuits, *(_of_way(way) for way in _ways_without(net)))


def below(net: Network, ref: str, loads: Iterable[Load]) -> tuple[Load, ...]:
    """Return those of the loads that hang on a thing."""
    fed = downstream(net, ref)
    return tuple(load for load in loads if load.ref in fed)


def _is_none(subject: Subject) -> bool:
    return subject.circuit.use in NO_LOAD or subject.feeds_board


def _load(subject: Subject) -> Load:
    circuit = subject.circuit
    return Load(
        ref=circuit.ref,
        title=circuit.title,
        group=GROUP_OF_USE.get(circuit.use, ""),
        current=load_current(subject),
        sockets=cooker_sockets(subject),
        managed=circuit.managed == "yes",
        off_peak=_off_peak(subject.net, circuit),
        phase=subject.phase,
        on_different=on_different(subject.net.record, circuit),
    )


def _ways_without(net: Network) -> Iterator[Device]:
    """Yield the fuses and breakers that may be in use, and of which nothing hangs."""
    for device in net.record.devices:
        guards = "overload" in DEVICE_KINDS[device.kind].protects
        if guards and device.in_use != "spare" and not fed_by(net, device.ref):
            yield device


def _of_way(way: Device) -> Load:
    return Load(
        ref=way.ref,
        title=way.title,
        current=CannotTell(label=LABEL, why=NO_CIRCUIT),
        phase=own_phase(way),
        is_way=True,
    )


def _off_peak(net: Network, circuit: Circuit) -> bool:
    lines = chains(net, circuit.ref)
    return bool(lines) and all("off_peak" in chain.when for chain in lines)
