"""Homes made at random: some as the record should be, some as it should not.

`random_home` is a plain generator for long seeded loops; Hypothesis drives the same
one and shrinks what it finds.  `any_records` fills every field of every item by its
declaration, whatever sense that makes.
"""

from __future__ import annotations

from datetime import date, datetime
from decimal import Decimal
from random import Random
from typing import Any

from hypothesis import strategies as st

from app.domain.record import (
    SORTS,
    Board,
    Circuit,
    Control,
    Device,
    FieldSpec,
    Home,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
    specs,
)

DEVICES = ("main_switch", "rcd", "circuit_breaker", "rcbo", "changeover", "unknown")
POINTS = ("socket", "light", "switch", "fused_connection_unit", "inverter")
# What each sort of thing may be fed from, as the record's fields say.
FEEDERS = {
    "intake": ("source", "intake", "device"),
    "board": ("intake", "circuit", "device", "point", "source"),
    "device": ("device", "intake", "circuit", "point", "source"),
    "circuit": ("device", "intake"),
    "point": ("circuit", "point", "source"),
}

ASTRAY = ["GONE", "R1", "B1", *(f"{sort}{n}" for sort in "IDCP" for n in (1, 2, 4, 6))]


class Builder:
    """Adds one thing after another; a raw one now and then names what it should not."""

    def __init__(self, rng: Random, *, raw: bool) -> None:
        self.rng = rng
        self.raw = raw
        self.items: dict[str, list[Item]] = {cls.plural: [] for cls in SORTS.values()}
        self.refs: dict[str, list[str]] = {sort: [] for sort in SORTS}
        self.latest: list[str] = []

    def ref(self, sort: str) -> str:
        return f"{SORTS[sort].prefix}{len(self.refs[sort]) + 1}"

    def add(self, item: Item) -> None:
        self.items[item.plural].append(item)
        self.refs[item.sort].append(item.ref)
        self.latest.append(item.ref)

    def one_of(self, *sorts: str) -> str | None:
        """Name something that is there, half the time one of the latest."""
        if self.raw and self.rng.random() < 0.2:
            return self.rng.choice(ASTRAY)
        known = [ref for sort in sorts for ref in self.refs[sort]]
        latest = [ref for ref in self.latest if ref in known]
        if latest and self.rng.random() < 0.5:
            return latest[-1]
        return self.rng.choice(known) if known and self.rng.random() < 0.9 else None

    def feeder(self, sort: str) -> str | None:
        return self.one_of(*FEEDERS[sort])

    def some(self, *values: Any) -> Any:
        return self.rng.choice(values)


def random_home(rng: Random, *, raw: bool = False, most: int = 36) -> Record:
    """Return a home of up to so many things, ties and controls apart."""
    build = Builder(rng, raw=raw)
    build.add(Room(ref="R1", name="Hall", storey="ground"))
    build.add(Room(ref="R2", name="Bedroom", storey="first"))
    build.add(Source(ref="S1", kind="network", present="yes"))
    makers = (_source, _intake, _board, _device, _device, _circuit, _circuit, _point)
    for _ in range(rng.randint(0, most)):
        rng.choice((*makers, _point, _point))(build)
    for _ in range(rng.randint(0, len(build.refs["point"]))):
        _tie(build)
        _control(build)
    groups = {name: tuple(items) for name, items in build.items.items()}
    return Record(home=Home(ref="H1", name="A home"), **groups)  # type: ignore[arg-type]


def _source(build: Builder) -> None:
    build.add(
        Source(
            ref=build.ref("source"),
            kind=build.some("solar", "battery", "network", "neighbour"),
            present=build.some("yes", "no", "unknown"),
            when=build.some("always", "daylight", "unknown"),
            joins=build.one_of("circuit", "device", "intake"),
        )
    )


def _intake(build: Builder) -> None:
    build.add(
        IntakeItem(
            ref=build.ref("intake"),
            kind=build.some("cutout", "meter", "tails", "changeover"),
            owner=build.some("network", "consumer", "unknown"),
            fed_from=build.feeder("intake"),
            second_feed=build.some(None, build.feeder("intake")),
        )
    )


def _board(build: Builder) -> None:
    build.add(
        Board(
            ref=build.ref("board"),
            name="Board",
            room=build.some("R1", None),
            fed_from=build.feeder("board"),
        )
    )


def _device(build: Builder) -> None:
    build.add(
        Device(
            ref=build.ref("device"),
            board=build.one_of("board") or "B1",
            kind=build.some(*DEVICES),
            fed_from=build.some(None, build.feeder("device")),
            second_feed=build.some(None, None, build.feeder("device")),
            residual_current_ma=build.some(None, Decimal(30), Decimal(100)),
            phase=build.some("l1", "l2", "l3", "unknown"),
        )
        if build.raw
        else _valid_device(build)
    )


def _valid_device(build: Builder) -> Device:
    """A device whose board is not fed from the device itself, nor from behind it."""
    boards = {board.ref: board for board in build.items["boards"]}
    board = build.one_of("board")
    if board not in boards:
        build.add(Board(ref=build.ref("board"), name="Board", fed_from=None))
        board = build.refs["board"][-1]
    return Device(
        ref=build.ref("device"),
        board=board or "",
        kind=build.some(*DEVICES),
        fed_from=build.some(None, build.feeder("device")),
        second_feed=build.some(None, None, build.feeder("device")),
        residual_current_ma=build.some(None, Decimal(30), Decimal(100)),
    )


def _circuit(build: Builder) -> None:
    ways = (build.feeder("circuit") for _ in range(build.rng.randint(0, 2)))
    build.add(
        Circuit(
            ref=build.ref("circuit"),
            ways=tuple(dict.fromkeys(way for way in ways if way)),
        )
    )


def _point(build: Builder) -> None:
    point = build.ref("point")
    feeders = [build.feeder("point") for _ in range(build.some(1, 1, 2))]
    build.add(
        Point(
            ref=point,
            kind=build.some(*POINTS),
            room=build.some("R1", "R2", None),
            residual_current_ma=build.some(None, None, Decimal(30)),
            current=build.some("mains", "dc", "unknown"),
        )
    )
    for feeder in dict.fromkeys(feeders):
        if feeder:
            _add_tie(build, point, feeder, "feeds")
    if build.rng.random() < 0.2:
        earlier = [ref for ref in build.refs["point"] if ref != point]
        _add_tie(
            build, point, build.some(*earlier, *build.refs["circuit"], "S1"), "neutral"
        )


def _tie(build: Builder) -> None:
    """A tie more; in a raw home it may close a circle."""
    point = build.one_of("point")
    if point and build.raw:
        role = build.some("feeds", "neutral", "present")
        _add_tie(build, point, build.feeder("point") or "GONE", role)
    elif point and build.refs["circuit"]:
        _add_tie(build, point, build.some(*build.refs["circuit"]), "present")


def _add_tie(build: Builder, point: str, tied_to: str, role: str) -> None:
    build.add(
        Tie(
            ref=build.ref("tie"),
            point=point,
            tied_to=tied_to,
            role=role,
            grade=build.some("0", "1", "3", "5"),
        )
    )


def _control(build: Builder) -> None:
    controller, controlled = build.one_of("point"), build.one_of("point", "device")
    if controller and controlled:
        build.add(
            Control(
                ref=build.ref("control"), controller=controller, controlled=controlled
            )
        )


def _from(rng: Random) -> Record:
    return random_home(rng)


def _raw_from(rng: Random) -> Record:
    return random_home(rng, raw=True)


homes = st.randoms(use_true_random=False).map(_from)
raw_homes = st.randoms(use_true_random=False).map(_raw_from)

REFS = [f"{prefix}{n}" for prefix in "RSIBDCPTK" for n in (1, 2, 3)]
MOMENTS = st.datetimes(datetime(1970, 1, 1), datetime(2100, 1, 1)).map(  # noqa: DTZ001
    lambda moment: f"{moment:%Y-%m-%dT%H:%M:%SZ}"
)
LINE = st.characters(exclude_categories=("Cc", "Cs", "Cn"))
LINES = st.one_of(LINE, st.sampled_from("\n\t"))


def _values(spec: FieldSpec) -> st.SearchStrategy[Any]:
    if spec.name == "ref":
        return st.sampled_from(REFS)
    if spec.name == "mpan":
        return st.sampled_from(["", "1312345678907", "81123456789"])
    if spec.name == "network_phone":
        return st.sampled_from(["", "105", "+44 (0)300 000-0000"])
    if spec.name == "sha256":
        return st.sampled_from(["0" * 64, "5eed" * 16])
    made = _made(spec)
    return st.none() | made if spec.optional else made


def _made(spec: FieldSpec) -> st.SearchStrategy[Any]:
    codes, refs = st.sampled_from(list(spec.choices) or [""]), st.sampled_from(REFS)
    low, high = spec.low or 0, spec.high or 0
    return {
        "text": st.text(LINE, max_size=spec.max_length),
        "long": st.text(LINES, max_size=60),
        "int": st.integers(low, high),
        "decimal": st.integers(low * 100, high * 100).map(lambda n: Decimal(n) / 100),
        "date": st.dates(date(1900, 1, 1)),
        "moment": MOMENTS,
        "choice": codes,
        "choices": st.lists(codes, max_size=3).map(tuple),
        "ref": refs,
        "refs": st.lists(refs, max_size=3).map(tuple),
    }[spec.type]


def any_items(model: type[Item]) -> st.SearchStrategy[Item]:
    """Items of a class with any value that each of its fields takes."""
    fields = {spec.name: _values(spec) for spec in specs(model)}
    return st.fixed_dictionaries(fields).map(model.model_validate)


_ANY_HOME = any_items(Home)
_ANY_LISTS = {
    cls.plural: st.lists(any_items(cls), max_size=3).map(tuple)
    for cls in SORTS.values()
}


@st.composite
def _any_record(draw: st.DrawFn) -> Record:
    lists = {plural: draw(items) for plural, items in _ANY_LISTS.items()}
    return Record.model_validate({"home": draw(_ANY_HOME), **lists})


any_records = _any_record()
