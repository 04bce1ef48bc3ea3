"""What goes out from a thing of the one-line diagram: circuits, boards, or nothing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from app.domain.kinds import DEVICE_KINDS
from app.domain.network import Network
from app.domain.record import Board, Circuit, Device
from app.drawing.cable import cable_of
from app.drawing.feeds import NOT_RECORDED
from app.drawing.joins import joins_said, named_with_board
from app.drawing.line import tags_of
from app.drawing.scene import Linker
from app.drawing.tree import Out


@dataclass(frozen=True, slots=True)
class Diagram:
    """What every part of the diagram needs.

    Attributes:
        net: The supply network of the record.
        link: Address of the page of a reference, or None.
        tags: Tags of the circuits.
    """

    net: Network
    link: Linker
    tags: Mapping[str, str]

    @classmethod
    def of(cls, net: Network, link: Linker) -> Diagram:
        """Return the diagram of a network."""
        return cls(net, link, tags_of(net.record))


def outs_of(diagram: Diagram, ref: str) -> tuple[Out, ...]:
    """Return what goes out from a device or an intake item.

    A way that feeds nothing by the record has one for that, unless it is spare.
    """
    record = diagram.net.record
    circuits = circuits_out(diagram, ref)
    boards = [Out(title=f"to {title}") for title in _fed_directly(diagram.net, ref)]
    found = (*circuits, *boards)
    device = record.find(Device, ref)
    if found or device is None or not DEVICE_KINDS[device.kind].outgoing:
        return found
    if any(ref in (d.fed_from, d.second_feed) for d in record.devices):
        return ()
    if device.in_use == "spare":
        return (Out(title="spare"),)
    return (Out(title=NOT_RECORDED, known=False),)


def circuits_out(diagram: Diagram, ref: str) -> tuple[Out, ...]:
    """Return the circuits that are wired to a device or an intake item."""
    circuits = diagram.net.record.circuits_of(ref)
    return tuple(circuit_out(diagram, circuit, ref) for circuit in circuits)


def circuit_out(diagram: Diagram, circuit: Circuit, way: str = "") -> Out:
    """Return a circuit with its cable, its points and what it feeds beyond them.

    Args:
        diagram: The diagram.
        circuit: The circuit.
        way: The way that it is drawn at; its others are named.
    """
    record = diagram.net.record
    cable, known = cable_of(circuit)
    points = len(diagram.net.points_at.get(circuit.ref, ()))
    onward = [f"to {title}" for title in _fed_directly(diagram.net, circuit.ref)]
    others = [named_with_board(record, other) for other in circuit.ways if other != way]
    also = [f"also from {name}" for name in others]
    count = [f"{points} point{'s' if points > 1 else ''}"] if points else []
    return Out(
        ref=circuit.ref,
        tag=diagram.tags[circuit.ref],
        title=circuit.title,
        facts=(cable, *also, *count, *onward, *joins_said(record, circuit)),
        known=known,
        href=diagram.link(circuit.ref),
    )


def _fed_directly(net: Network, ref: str) -> Iterator[str]:
    """Name the boards that a thing feeds, and devices elsewhere, without a circuit."""
    record = net.record
    here = getattr(record.by_ref.get(ref), "board", None)
    for item in record.fed_from(ref):
        on = getattr(item, "board", None)
        if isinstance(item, Board):
            yield item.title
        elif on is None or on != here:
            other = record.find(Board, on)
            yield f"{item.title} on {other.title}" if other else item.title
