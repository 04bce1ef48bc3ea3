"""A row of a sheet as it is read, and what becomes of it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import ValidationError

from app.domain.record import FieldSpec, Item, specs
from app.domain.spreadsheet.targets import Target
from app.domain.spreadsheet.values import (
    UnreadableError,
    readable,
    says_nothing,
    tidied,
    value_of,
)

I = TypeVar("I", bound=Item)  # noqa: E741
MOST_SHOWN = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class CellFault:
    """A cell that cannot be taken.

    Attributes:
        row: Its row in the sheet, from 1; 0 where it is about no single row.
        column: Heading of its column; empty where it is about the whole row.
        typed: What stands in it.
        reason: Why it cannot be taken: what follows on the cell, or a sentence.
        line: Whether the row is a line of a typed list.
    """

    row: int
    column: str
    typed: str
    reason: str
    line: bool = False

    @property
    def place(self) -> str:
        """Where it is, in words."""
        where = f"{'line' if self.line else 'row'} {self.row}" if self.row else ""
        column = f"column “{self.column}”" if self.column and not self.line else ""
        return ", ".join(filter(None, (where, column))) or "the sheet"

    @property
    def why(self) -> str:
        """What is wrong, as a sentence."""
        if not self.typed:
            return self.reason
        cut = self.typed[:MOST_SHOWN]
        shown = cut if cut == self.typed else f"{cut}…"
        return f"“{shown}” {self.reason}{'' if self.reason[-1] in '.?' else '.'}"

    @property
    def sentence(self) -> str:
        """Where it is and what is wrong."""
        return f"{self.place[0].upper()}{self.place[1:]}: {self.why}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeRow:
    """What one row makes.

    Attributes:
        row: Its number in the sheet.
        ref: Reference of the thing it makes.
        what: What that is called.
        facts: What is recorded of it, label and words.
        beside: What is made or changed beside it, or what it is tied to.
    """

    row: int
    ref: str
    what: str
    facts: tuple[tuple[str, str], ...]
    beside: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class There:
    """A row that names what is in the record already.

    Attributes:
        row: Its number in the sheet.
        ref: Reference of the thing that is there.
        what: What that is called.
    """

    row: int
    ref: str
    what: str


@dataclass(slots=True, kw_only=True)
class RowIn:
    """A row as it is read: its cells by what they are to hold.

    Attributes:
        number: Its number in the sheet.
        cells: Text by code.
        columns: Heading by code.
        targets: What each code is.
        faults: What was found wrong in it.
        line: Whether it is a line of a typed list.
    """

    number: int
    cells: Mapping[str, str]
    columns: Mapping[str, str]
    targets: Mapping[str, Target]
    faults: list[CellFault]
    line: bool = False

    def text(self, code: str) -> str:
        """Return what a cell says, tidied; nothing where it leaves it open."""
        text = self.cells.get(code, "")
        try:
            readable(text)
        except UnreadableError as error:
            self.fault(code, str(error))
            return ""
        return "" if says_nothing(text) else tidied(text)

    def fault(self, code: str, reason: str) -> None:
        """Note that a cell cannot be taken; each of them once."""
        text = self.cells.get(code, "")
        fault = CellFault(
            row=self.number,
            column=self.columns.get(code, ""),
            typed=tidied(text) if "\x00" not in text else "The cell",
            reason=reason,
            line=self.line,
        )
        same = [f for f in self.faults if (f.column, f.typed) == (fault.column, text)]
        if not same or not code:
            self.faults.append(fault)

    def said(
        self, sort: str, together: Callable[[str], Mapping[str, Any]] | None = None
    ) -> tuple[dict[str, Any], dict[str, str]]:
        """Return what its cells say of the fields of a sort, and by which column.

        Args:
            sort: Sort of the item that has the fields.
            together: Reads a cell that says more than its own field, as B32 does.
        """
        values: dict[str, Any] = {}
        by: dict[str, str] = {}
        for code, spec in self._fields(sort):
            try:
                value = value_of(spec, sort, self.cells[code])
            except UnreadableError as error:
                more = self._together(code, together)
                self._agree(code, more, values, by)
                if not more:
                    self.fault(code, str(error))
                continue
            if value is not None and value != ():
                self._agree(code, {spec.name: value}, values, by)
        return values, by

    def _agree(
        self,
        code: str,
        more: Mapping[str, Any],
        values: dict[str, Any],
        by: dict[str, str],
    ) -> None:
        """Take what a cell says; where another cell says otherwise, that is a fault."""
        for name, value in more.items():
            if values.get(name, value) != value:
                self.fault(code, f"and the column “{self.columns[by[name]]}” differ")
            values.setdefault(name, value)
            by.setdefault(name, code)

    def take(
        self,
        code: str,
        read: Callable[[str], Mapping[str, Any]],
        values: dict[str, Any],
        by: dict[str, str],
    ) -> None:
        """Take what a cell of several facts says beside what others have said."""
        if text := self.text(code):
            try:
                self._agree(code, read(text), values, by)
            except UnreadableError as error:
                self.fault(code, str(error))

    def _together(
        self, code: str, read: Callable[[str], Mapping[str, Any]] | None
    ) -> Mapping[str, Any]:
        try:
            return read(self.cells[code]) if read else {}
        except UnreadableError:
            return {}

    def built(
        self, cls: type[I], values: Mapping[str, Any], by: Mapping[str, str]
    ) -> I | None:
        """Return the item of some values; None, and faults, if none."""
        try:
            return cls.model_validate(values)
        except ValidationError as error:
            for one in error.errors(include_url=False):
                name = str(one["loc"][0]) if one["loc"] else ""
                reason = one["msg"].removeprefix("Value error, ")
                self.fault(by.get(name, ""), f"cannot be taken: {reason}")
            return None

    def _fields(self, sort: str) -> Iterator[tuple[str, FieldSpec]]:
        for code in self.cells:
            target = self.targets.get(code)
            if target and target.spec is not None and target.sort == sort:
                yield code, target.spec


def facts_of(item: Item, *skip: str) -> tuple[tuple[str, str], ...]:
    """Return what an item says of itself, label and words, without its references."""
    found = []
    for spec in specs(type(item)):
        if spec.sorts or spec.name in ("ref", *skip):
            continue
        value = getattr(item, spec.name)
        if value not in (None, "", (), "unknown", spec.default):
            found.append((spec.label, _words(spec, value)))
    return tuple(found)


def _words(spec: FieldSpec, value: Any) -> str:
    if spec.type == "choice":
        return spec.choices[value]
    if spec.type == "choices":
        return ", ".join(spec.choices[code] for code in value)
    return f"{value} {spec.unit}".strip()
