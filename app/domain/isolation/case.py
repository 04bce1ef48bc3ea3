"""What the rules look at: the network, the aim, the sets and the answers of the day."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from app.domain.isolation.aim import Aim, borrowings
from app.domain.isolation.sets import devices_on, next_before
from app.domain.isolation.shapes import OnTheDay
from app.domain.isolation.wires import Wires, carries_on
from app.domain.kinds import POINT_KINDS
from app.domain.network import Network
from app.domain.record import (
    Board,
    Circuit,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Source,
)
from app.domain.record import Tie as TieItem
from app.domain.unknowns import FROM_THE_STREET

WEAK_GRADES = frozenset({"0", "1", "2"})


@dataclass(frozen=True)
class Case:
    """One plan in the making.

    Attributes:
        wires: How the supply can run.
        aim: What is to be worked on.
        near: The nearest set.
        wide: The wide set.
        used: The set that the stop rules look at.
        day: What was answered on the day.
    """

    wires: Wires
    aim: Aim
    near: frozenset[str]
    wide: frozenset[str]
    used: frozenset[str]
    day: OnTheDay

    @property
    def net(self) -> Network:
        """The supply network."""
        return self.wires.net

    @property
    def record(self) -> Record:
        """The record that it was made from."""
        return self.wires.net.record

    @cached_property
    def targets(self) -> frozenset[str]:
        """Everything that has to be parted."""
        return self.aim.targets(self.net)

    @cached_property
    def near_devices(self) -> tuple[Device, ...]:
        """The devices on boards in the nearest set, in the record's order."""
        return tuple(d for d in self.record.devices if d.ref in self.near)

    @cached_property
    def near_boards(self) -> tuple[Board, ...]:
        """The boards that these devices are on."""
        refs = {device.board for device in self.near_devices}
        return tuple(board for board in self.record.boards if board.ref in refs)

    @cached_property
    def lighting(self) -> bool:
        """Whether a conductor of a lighting circuit, or a light, is worked on."""
        from_job = self.aim.job == "lighting"
        circuits = (self.record.find(Circuit, ref) for ref in self.aim.circuits)
        return (
            from_job
            or any(c.use == "lighting" for c in circuits if c)
            or any(is_light(point) for point in self.aim.points)
        )

    @cached_property
    def borrowed(self) -> tuple[str, ...]:
        """Circuits there that share a neutral with another."""
        shared = borrowings(self.net)
        return tuple(ref for ref in self.aim.circuits if ref in shared)

    @cached_property
    def beside_network(self) -> tuple[Source, ...]:
        """Other sources that can feed the work with the network off.

        The earthing that is recorded is that of the network; how any of these is
        earthed is written nowhere.
        """
        behind = self.wires.leads_to(self.targets)
        return tuple(
            source
            for source in self.record.sources
            if source.kind not in FROM_THE_STREET
            and source.ref in behind
            and carries_on(source)
        )

    @cached_property
    def earthings(self) -> frozenset[str]:
        """The earthing arrangements of what the nearest set feeds, by any source."""
        others = {"unknown"} if self.beside_network else frozenset[str]()
        return self.earthings_of_network | others

    @cached_property
    def earthings_of_network(self) -> frozenset[str]:
        """The same while the network feeds it."""
        of_home = self.record.home.earthing
        boards = self.near_boards
        found = {of_home if b.earthing == "supply" else b.earthing for b in boards}
        return frozenset(found or {of_home})

    @property
    def both_poles(self) -> bool:
        """Whether line and neutral both have to be parted."""
        unsure = bool(self.earthings & {"tt", "unknown"})
        return unsure or self.lighting or bool(self.borrowed)

    def parting(self, refs: frozenset[str]) -> tuple[Item, ...]:
        """Return the switches of a set that stand next before the targets."""
        barred = devices_on(self.wires, (board.ref for board in self.aim.boards))
        met = next_before(self.wires, self.targets, refs - barred)
        switches = (self.record.by_ref[ref] for ref in sorted(met))
        return tuple(s for s in switches if isinstance(s, Device | IntakeItem))

    def ties(self) -> Iterator[TieItem]:
        """Yield every tie by which the points of the work are fed, near or far."""
        seen: set[str] = set()
        waiting = [point.ref for point in self.aim.points]
        while waiting:
            ref = waiting.pop(0)
            for tie in self.record.ties_of(ref) if ref not in seen else ():
                yield tie
                if self.record.find(Point, tie.tied_to):
                    waiting.append(tie.tied_to)
            seen.add(ref)


def is_light(point: Point) -> bool:
    """Return whether a point is a light, or switches one."""
    return POINT_KINDS[point.kind].group == "lights"
