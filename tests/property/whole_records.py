"""Records that may be kept: any values, no reference that leads nowhere or in a circle.

What an item refers to is always made before it; that keeps circles out.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal
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
    Reading,
    Record,
    Room,
    Round,
    Source,
    Tie,
    specs,
)
from tests.property.strategies import MOMENTS

Draw = Callable[[st.SearchStrategy[Any]], Any]
MOST_FIELDS = 5
TEXT = st.text(st.characters(exclude_categories=("Cs", "Cc", "Cn")), max_size=12)

# What is checked digit by digit.
ODD = ("mpan", "network_phone")


@st.composite
def whole_records(draw: Draw) -> Record:
    making = _Making(draw)
    making.make(Room, 3)
    making.make(Source, 3)
    making.make(IntakeItem, 3)
    for _ in range(draw(st.integers(0, 2))):
        making.make(Board, 1)
        making.make(Device, 3)
    for cls, most in ((Circuit, 3), (Point, 4), (Tie, 4), (Control, 2)):
        making.make(cls, most)
    making.make(Round, 2)
    making.make(Reading, 3)
    return making.record()


class _Making:
    """A record being made, item by item."""

    def __init__(self, draw: Draw) -> None:
        self.draw = draw
        self.made: dict[str, list[Item]] = {sort: [] for sort in SORTS}

    def make(self, cls: type[Item], most: int) -> None:
        for _ in range(self.draw(st.integers(0, most))):
            values = self._values(cls)
            if values is not None:
                self.made[cls.sort].append(cls.model_validate(values))

    def record(self) -> Record:
        home = Home.model_validate({"ref": "home", "name": "A", **self._chosen(Home)})
        lists = {cls.plural: tuple(self.made[sort]) for sort, cls in SORTS.items()}
        return Record.model_validate({"home": home, **lists})

    def _values(self, cls: type[Item]) -> dict[str, Any] | None:
        """Return values for an item; None when there is nothing it could be of."""
        required = [s for s in specs(cls) if s.required and s.name != "ref"]
        values = {spec.name: self._value(spec) for spec in required}
        if any(value is None for value in values.values()):
            return None
        if cls is Tie:
            values |= self._earlier_point(values)
        number = sum(map(len, self.made.values()))
        ref = self.draw(st.sampled_from(("", "x.", "Y-"))) + f"{cls.prefix}{number}"
        return {**self._chosen(cls), **values, "ref": ref}

    def _chosen(self, cls: type[Item]) -> dict[str, Any]:
        free = {s.name: s for s in specs(cls) if not s.required and s.name not in ODD}
        names = st.sampled_from(list(free))
        picked = self.draw(st.lists(names, unique=True, max_size=MOST_FIELDS))
        return {name: self._value(free[name]) for name in picked}

    def _earlier_point(self, values: dict[str, Any]) -> dict[str, Any]:
        """Keep circles out: a point is behind one made before it, or on a circuit."""
        refs = [item.ref for item in self.made["point"]]
        if values["tied_to"] not in refs:
            return {}
        pair = sorted((refs.index(values["point"]), refs.index(values["tied_to"])))
        if pair[0] == pair[1]:
            circuits = self.made["circuit"]
            return {"tied_to": circuits[0].ref} if circuits else {"role": "present"}
        return {"tied_to": refs[pair[0]], "point": refs[pair[1]]}

    def _value(self, spec: FieldSpec) -> Any:
        if spec.sorts:
            return self._reference(spec)
        return self.draw(_plain(spec))

    def _reference(self, spec: FieldSpec) -> Any:
        refs = [item.ref for sort in spec.sorts for item in self.made[sort]]
        if spec.type == "refs":
            some = st.lists(st.sampled_from(refs), unique=True, max_size=3)
            return tuple(self.draw(some)) if refs else ()
        return self.draw(st.sampled_from(refs)) if refs else None


def _plain(spec: FieldSpec) -> st.SearchStrategy[Any]:
    low, high = spec.low or 0, 9999 if spec.high is None else spec.high
    made: dict[str, st.SearchStrategy[Any]] = {
        "text": TEXT,
        "long": TEXT.map(lambda text: f"{text}\n\t{text}"),
        "int": st.integers(low, high),
        "decimal": st.integers(low * 10**4, high * 10**4).map(
            lambda whole: Decimal(whole) / 10**4
        ),
        "date": st.dates(date(1900, 1, 1), date(2100, 1, 1)),
        "moment": MOMENTS,
    }
    codes = st.sampled_from(list(spec.choices) or [""])
    made |= {"choice": codes, "choices": st.lists(codes, unique=True).map(tuple)}
    value = made[spec.type]
    return st.none() | value if spec.optional else value
