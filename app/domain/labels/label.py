"""What the label of each device of a board says."""

from __future__ import annotations

from dataclasses import dataclass

from app.domain.kinds import DEVICE_KINDS
from app.domain.labels.confirmed import confirmed, feeds_boards
from app.domain.labels.printed import printed, without_ratings_not_read
from app.domain.network import Network, downstream, fed_by
from app.domain.record import Board, Device

NOT_KNOWN = "Not known: do not take it to be off"
NOT_NAMED = "Not named yet"
SPARE = "Spare, no cable seen"
BLANK = "blank"


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """What stands on one label.

    Attributes:
        ref: The device.
        number: Its way number; empty where it has none.
        name: What it feeds, or what it is, or that this is not known.
        known: Whether anything is recorded of what it feeds.
        confirmed: Whether that is confirmed; else the name carries a query mark.
        printed: What is printed on the device, as far as it was read.
        rooms: Names of the rooms it serves, in the order of the walk.
        found: The label as it was found; stays in the record.
        outgoing: Whether it is a way.
        modules: Its width in modules, as recorded or as is usual for its kind.
        blank: Whether it is no device but a blank, which needs no label.
    """

    ref: str
    number: str
    name: str
    known: bool
    confirmed: bool
    printed: str
    rooms: tuple[str, ...]
    found: str | None
    outgoing: bool
    modules: int
    blank: bool = False

    @property
    def text(self) -> str:
        """Return the name, with a query mark where it is known and not confirmed."""
        in_doubt = self.outgoing and self.known and not self.confirmed
        return f"{self.name}\xa0?" if in_doubt else self.name

    @property
    def called(self) -> str:
        """Return what to call it in a sentence."""
        return f"Way {self.number}" if self.number else f"{self.name} ({self.ref})"


def labels_of(net: Network, board: Board) -> tuple[Label, ...]:
    """Return the labels of a board's devices from left to right."""
    return tuple(label_of(net, d) for d in net.record.devices_of(board.ref))


def label_of(net: Network, device: Device) -> Label:
    """Return what the label of a device says."""
    kind = DEVICE_KINDS[device.kind]
    way = is_way(net, device)
    name, known = _name(net, device) if way else (kind.label, True)
    return Label(
        ref=device.ref,
        number=device.way,
        name=name,
        known=known,
        confirmed=not way or confirmed(net, device),
        printed=printed(device),
        rooms=rooms_of(net, device) if way else (),
        found=device.label_found,
        outgoing=way,
        modules=device.modules or kind.modules,
        blank=device.kind == BLANK,
    )


def is_way(net: Network, device: Device) -> bool:
    """Return whether a device is a way, rather than what feeds the ways beside it."""
    beside = (net.record.find(Device, ref) for ref in fed_by(net, device.ref))
    above = any(other and other.board == device.board for other in beside)
    return DEVICE_KINDS[device.kind].outgoing and not above


def names_of(net: Network, device: Device) -> tuple[str, ...]:
    """Return the names of what a way feeds: its circuits and the boards behind it."""
    circuits = net.record.circuits_of(device.ref)
    names = [c.name for c in circuits if c.name] or feeds_boards(net, device)
    return tuple(dict.fromkeys(names))


def rooms_of(net: Network, device: Device) -> tuple[str, ...]:
    """Return the rooms that a way serves, in the order of the walk."""
    fed = downstream(net, device.ref)
    served = {point.room for point in net.record.points_among(fed)}
    return tuple(room.name for room in net.record.rooms if room.ref in served)


def _name(net: Network, device: Device) -> tuple[str, bool]:
    """Return a way's name, and whether anything is recorded of what it feeds."""
    names = " + ".join(names_of(net, device))
    plain = without_ratings_not_read(names, device)
    if plain:
        return plain, True
    if net.record.circuits_of(device.ref):
        return NOT_NAMED, bool(downstream(net, device.ref))
    return (SPARE, True) if device.in_use == "spare" else (NOT_KNOWN, False)
