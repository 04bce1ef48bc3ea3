"""A large home: three boards, forty ways, a hundred and fifty points."""

from __future__ import annotations

from itertools import cycle, islice

from app.domain.record import Record
from tests import builders as b

STOREYS = ("ground", "first", "second", "loft", "cellar", "outside")
NAMES = ("Kitchen", "Hall and stairs", "Long living room at the back", "Study", "Store")
KINDS = (
    "double_socket", "light", "switch", "fused_connection_unit", "smoke_alarm",
    "cooker", "extractor", "unknown", "outdoor_socket", "storage_heater",
)  # fmt: skip
PLACES = ("left of the window", "behind the door, low down", "over the worktop", "")


def big_home(
    *, boards: int = 3, ways: int = 40, points: int = 150, rooms: int = 20
) -> Record:
    """Return a home of this size; every tenth point has no tie, some no room."""
    made_rooms = [
        b.room(f"R{n}", name=f"{NAMES[n % 5]} {n}", storey=STOREYS[n % 6])
        for n in range(rooms)
    ]
    groups = [
        [f"W{n}" for n in range(ways) if n % boards == at] for at in range(boards)
    ]
    made = [_board(at, refs) for at, refs in enumerate(groups)]
    ties = [
        b.tie(f"P{n}", f"C{n % (ways - 2)}", grade="0" if n % 7 == 0 else "3")
        for n in range(points)
        if n % 10
    ]
    return b.home(*made_rooms, b.street(*made), *_points(points, rooms), *ties)


def _board(at: int, ways: list[str]) -> b.Part:
    half = len(ways) // 2
    first = b.rcd(f"RCD{at}", *map(_way, ways[:half]), rcd_type="A")
    switch = b.main_switch(f"MS{at}", first, *map(_way, ways[half:]))
    return b.board(f"B{at}", switch, name=f"Board {at}")


def _way(ref: str) -> b.Part:
    number = ref[1:]
    name = f"Sockets and lights of part {number}"
    sizes = {} if int(number) % 4 else {"line_mm2": 2.5, "cpc_mm2": 1.5}
    circuit = b.circuit(f"C{number}", name=name, number=number, **sizes)
    make = b.rcbo if int(number) % 3 == 0 else b.way
    return make(ref, circuit, way=number, label_found="SKTS")


def _points(many: int, rooms: int) -> list[b.Part]:
    kinds, places = cycle(KINDS), cycle(PLACES)
    return [
        b.point(
            f"P{n}",
            kind=kind,
            place=place,
            room=f"R{n * 7 % rooms}" if n % 25 else None,
            outdoor="yes" if n % 30 == 1 else "unknown",
        )
        for n, (kind, place) in enumerate(
            islice(zip(kinds, places, strict=False), many)
        )
    ]
