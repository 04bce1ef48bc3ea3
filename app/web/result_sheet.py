"""The grid in which a paper's results are copied: cells as typed, and what is asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from flask import request

from app.domain.results import Question, Sheet, questions
from app.domain.results.sheet import BY_NAME, Column, Row, is_empty, shown, values_of
from app.services.homes import digest
from app.web.fields import tidy

NEW = "new"
NOTHING = "Nothing is filled in: enter at least one value. N/A and LIM are no values."


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One cell.

    Attributes:
        id: Its name and id.
        label: What it holds, for those who do not see the head.
        text: What stands in it.
        choices: What may be chosen; none for a value.
        error: Why it cannot be taken.
        question: What is asked about it.
        source: Where the figure behind the question stands.
        stands: What a tick beside the question says: this value, asked about so.
        confirmed: Whether it was said that the paper has it so.
    """

    id: str
    label: str
    text: str
    choices: Mapping[str, str]
    error: str = ""
    question: str = ""
    source: str = ""
    stands: str = ""
    confirmed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GridRow:
    """One row: what was tested, and its cells."""

    title: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """The grid as shown or as sent.

    Attributes:
        sheet: What it is of.
        typed: What was typed, by reference and field.
        errors: What cannot be read, by reference and field.
        asked: What is asked.
        confirmed: Keys of questions that were answered for the very value that stands.
        nothing: Whether it was sent with no value, and none was copied before.
    """

    sheet: Sheet
    typed: Mapping[str, Mapping[str, str]]
    errors: Mapping[tuple[str, str], str]
    asked: tuple[Question, ...]
    confirmed: frozenset[str]
    nothing: bool = False

    @property
    def values(self) -> dict[str, dict[str, object]]:
        """The fields of each row; only where nothing is wrong."""
        return {
            row.ref: values_of(row, self.typed.get(row.ref, {}))
            for row in self.sheet.rows
        }

    @property
    def open(self) -> tuple[Question, ...]:
        """What is asked and not answered."""
        return tuple(q for q in self.asked if q.key not in self.confirmed)

    @property
    def problems(self) -> list[tuple[str, str]]:
        """Each cell to look at again: its id, and the sentence."""
        if self.nothing:
            row = self.sheet.rows[0]
            return [(f"{row.columns[0].name}-{row.ref}", NOTHING)]
        wrong = [
            (f"{name}-{ref}", self._placed(ref, name, sentence))
            for (ref, name), sentence in self.errors.items()
        ]
        asked = [
            (f"ok-{q.key}", self._placed(q.row, q.column, q.sentence))
            for q in self.open
        ]
        return wrong + asked

    def _placed(self, ref: str, name: str, sentence: str) -> str:
        """Return a sentence with its row, and its column where it does not say it."""
        title = next(row.title for row in self.sheet.rows if row.ref == ref)
        head = BY_NAME[name].head
        place = title if head in sentence else f"{title}, {head}"
        return f"{place}: {sentence}"

    def rows(self, of: str) -> tuple[GridRow, ...]:
        """Return the rows of circuits, or that of the board."""
        return tuple(
            GridRow(
                title=row.title,
                cells=tuple(self._cell(row, column) for column in row.columns),
            )
            for row in self.sheet.rows
            if row.of == of
        )

    def _cell(self, row: Row, column: Column) -> Cell:
        key = f"{column.name}-{row.ref}"
        asked = next((q for q in self.asked if q.key == key), None)
        text = self.typed.get(row.ref, {}).get(column.name, "")
        return Cell(
            id=key,
            label=f"{row.title}, {column.head}",
            text=text,
            choices=column.choices,
            error=self.errors.get((row.ref, column.name), ""),
            question=asked.sentence if asked else "",
            source=asked.source if asked else "",
            stands=_stands(asked, text) if asked else "",
            confirmed=key in self.confirmed,
        )


def as_it_stands(sheet: Sheet) -> Grid:
    """Return the grid of what was copied so far."""
    typed = {
        row.ref: {c.name: shown(row.result, c) for c in row.columns}
        for row in sheet.rows
    }
    return Grid(sheet=sheet, typed=typed, errors={}, asked=(), confirmed=frozenset())


def as_sent(sheet: Sheet, earthing: str, longest: Callable[[str], int | None]) -> Grid:
    """Return the grid as it was sent, with what is wrong and what is asked."""
    typed = {
        row.ref: {
            c.name: tidy(request.form.get(f"{c.name}-{row.ref}", ""))[:40]
            for c in row.columns
        }
        for row in sheet.rows
    }
    errors: dict[tuple[str, str], str] = {}
    asked: list[Question] = []
    for row in sheet.rows:
        wrong = _wrong(row, typed[row.ref])
        errors |= wrong
        if not wrong:
            values = values_of(row, typed[row.ref])
            asked += questions(row, values, earthing, longest)
    confirmed = frozenset(
        q.key
        for q in asked
        if request.form.get(f"ok-{q.key}") == _stands(q, typed[q.row][q.column])
    )
    return Grid(
        sheet=sheet,
        typed=typed,
        errors=errors,
        asked=tuple(asked),
        confirmed=confirmed,
        nothing=not errors and _says_nothing(sheet, typed),
    )


def _says_nothing(sheet: Sheet, typed: Mapping[str, Mapping[str, str]]) -> bool:
    """Return whether no cell holds a value, and none was copied before."""
    return not sheet.results and all(
        is_empty(values_of(row, typed[row.ref])) for row in sheet.rows
    )


def mark_of(sheet: Sheet) -> str:
    """Return a mark of what was copied so far, to tell whether it changed since."""
    return digest(sheet.results)


def _stands(question: Question, text: str) -> str:
    """Return what a tick says, so that it holds for no other value typed later."""
    return f"{text}: {question.sentence}"


def _wrong(row: Row, typed: Mapping[str, str]) -> dict[tuple[str, str], str]:
    found = {}
    for column in row.columns:
        try:
            values_of(row, {column.name: typed[column.name]})
        except ValueError as error:
            found[row.ref, column.name] = str(error)
    return found
