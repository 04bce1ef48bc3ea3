"""Homes made at random in which there is something to switch off, and to get wrong.

They are those of `strategies`, with owners, poles, own switches before the boards,
sources that do or do not stop with the network, and borrowed neutrals.
"""

from __future__ import annotations

from random import Random
from typing import Any

from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Device,
    Home,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
)
from tests.property.strategies import random_home

OWNERS = ("consumer", "consumer", "consumer", "network", "meter_operator", "unknown")
POLES = ("line", "line_and_neutral", "unknown")
POINTS = ("socket", "light", "fused_connection_unit", "switch")
INTAKE = ("cutout", "meter", "tails", "isolator", "switch_fuse", "connector_block")


def switchable_home(rng: Random, *, raw: bool = False, most: int = 36) -> Record:
    """Return a home of which most boards are one's own."""
    record = random_home(rng, raw=raw, most=most)
    lists = {
        plural: tuple(_varied(rng, item) for item in getattr(record, plural))
        for plural in ("sources", "intake", "boards", "devices", "points")
    }
    return record.having(**lists)


def _varied(rng: Random, item: Item) -> Item:
    return item.model_copy(update=_values(rng, item))


def _values(rng: Random, item: Item) -> dict[str, str]:
    pick = rng.choice
    if isinstance(item, Source):
        return {"runs_without_network": pick(("yes", "no", "unknown"))}
    if isinstance(item, IntakeItem):
        kind = item.kind if item.kind == "changeover" else pick(INTAKE)
        return {"kind": kind, "owner": pick(OWNERS), "poles": pick(POLES)}
    if isinstance(item, Board):
        return {"owner": pick(OWNERS)}
    if isinstance(item, Device):
        return {"poles": pick(POLES)}
    if isinstance(item, Point) and rng.random() < 0.2:
        return pick(({"kind": "dc_isolator"}, {"battery_backed": "yes"}))
    return {}


class Wiring:
    """Wires a home as homes are wired: boards from the street, down to the points."""

    def __init__(self, rng: Random) -> None:
        self.rng = rng
        self.items: dict[str, list[Item]] = {cls.plural: [] for cls in SORTS.values()}
        self.count = 0

    def add(self, cls: type[Item], **fields: Any) -> str:
        self.count += 1
        ref = str(fields.pop("ref", f"{cls.prefix}{self.count}"))
        self.items[cls.plural].append(cls.model_validate({"ref": ref, **fields}))
        return ref

    def refs(self, cls: type[Item]) -> list[str]:
        return [item.ref for item in self.items[cls.plural]]

    def chance(self, share: float) -> bool:
        return self.rng.random() < share

    def board(self, feeder: str | None, depth: int = 0) -> None:
        pick = self.rng.choice
        board = self.add(
            Board,
            name="Board",
            fed_from=feeder,
            room=pick(("R1", "R2")),
            owner="consumer" if self.chance(0.93) else pick(OWNERS),
            earthing=pick(("supply", "tt")),
        )
        kind = pick(("main_switch", "rcd", "isolator"))
        poles = pick(POLES)
        head = None
        if self.chance(0.9):
            head = self.add(Device, board=board, kind=kind, poles=poles)
        for _ in range(self.rng.randint(1, 2)):
            inner = head
            if self.chance(0.5):
                inner = self.add(Device, board=board, kind="rcd", fed_from=head)
            for _ in range(self.rng.randint(1, 3)):
                self.way(board, inner, depth)

    def way(self, board: str, feeder: str | None, depth: int) -> None:
        kind = self.rng.choice(("circuit_breaker", "rcbo", "fuse_rewirable", "blank"))
        way = self.add(Device, board=board, kind=kind, fed_from=feeder)
        others = self.refs(Device)
        second = (self.rng.choice(others),) if self.chance(0.08) else ()
        circuit = self.add(Circuit, ways=tuple(dict.fromkeys((way, *second))))
        if depth < 2 and self.chance(0.15):
            self.board(circuit, depth + 1)
            return
        for _ in range(self.rng.randint(0, 4)):
            self.point(circuit)

    def point(self, feeder: str | None) -> str:
        ref = self.add(
            Point,
            kind=self.rng.choice(
                ("socket", "light", "fused_connection_unit", "switch")
            ),
            room=self.rng.choice(("R1", "R2")),
        )
        if feeder and self.chance(0.95):
            self.tie(ref, feeder, "feeds")
        for role, share in (("feeds", 0.05), ("neutral", 0.08), ("present", 0.08)):
            if self.chance(share):
                self.tie(ref, self.rng.choice(self.refs(Circuit)), role)
        if self.chance(0.2):
            behind = self.add(Point, kind="socket", room="R1")
            self.tie(behind, ref, "feeds")
            if self.chance(0.2):
                behind = self.add(Point, kind="socket", battery_backed="yes")
                self.tie(behind, ref, "feeds")
                self.tie(self.add(Point, kind="light"), behind, "feeds")
        return ref

    def tie(self, point: str, tied_to: str, role: str) -> None:
        grade = self.rng.choice(("0", "2", "3", "4"))
        self.add(Tie, point=point, tied_to=tied_to, role=role, grade=grade)

    def source(self) -> None:
        """Panels or a battery: behind a d.c. isolator, joined to a circuit, or both."""
        source = self.add(
            Source,
            kind=self.rng.choice(("solar", "battery", "neighbour", "generator")),
            present=self.rng.choice(("yes", "yes", "unknown", "no")),
            runs_without_network=self.rng.choice(("yes", "no", "unknown")),
            joins=self.rng.choice((None, *self.refs(Circuit), *self.refs(Device))),
        )
        if self.chance(0.5):
            kind = self.rng.choice(("dc_isolator", "battery"))
            isolator = self.add(Point, kind=kind, room="R2", current="dc")
            self.tie(isolator, source, "feeds")
            inverter = self.point(self.rng.choice(self.refs(Circuit)))
            self.tie(inverter, isolator, "feeds")
            if self.chance(0.4):
                self.board(inverter, 2)


def wired_home(rng: Random) -> Record:
    """Return a home as it may stand, with one to three boards on the street."""
    wiring = Wiring(rng)
    for number in (1, 2):
        wiring.add(Room, ref=f"R{number}", name="Room", looked_at="all")
    network = wiring.add(Source, ref="S1", kind="network", present="yes")
    cutout = wiring.add(IntakeItem, kind="cutout", owner="network", fed_from=network)
    meter = wiring.add(IntakeItem, kind="meter", owner="network", fed_from=cutout)
    feeder = wiring.add(IntakeItem, kind="tails", owner="consumer", fed_from=meter)
    if wiring.chance(0.4):
        owner = rng.choice(OWNERS)
        feeder = wiring.add(
            IntakeItem, kind="isolator", owner=owner, fed_from=feeder, poles="line"
        )
    for _ in range(rng.randint(1, 3)):
        after = feeder
        if wiring.chance(0.3):
            kind = rng.choice(("switch_fuse", "contactor", "tails"))
            after = wiring.add(IntakeItem, kind=kind, owner="consumer", fed_from=feeder)
        wiring.board(after if wiring.chance(0.95) else None)
    for _ in range(rng.randint(0, 2)):
        wiring.source()
    groups = {name: tuple(items) for name, items in wiring.items.items()}
    return Record(home=Home(ref="H1", name="A home"), **groups)  # type: ignore[arg-type]
