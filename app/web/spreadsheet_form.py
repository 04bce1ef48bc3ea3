"""The forms of a spreadsheet: which file, what its columns hold, what else is made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from flask_wtf import FlaskForm
from wtforms import BooleanField
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Record
from app.domain.spreadsheet import KINDS, TARGETS, Match, Sheet, headings
from app.domain.spreadsheet.shapes import FORMULA, column_letters
from app.domain.spreadsheet.values import tidied
from app.services.spreadsheets import Waiting
from app.web.fields import NOTHING, ChoiceField

SAMPLES, SAMPLE_LENGTH = 3, 30
# What the devices on a board's ways may be, where nothing says so.
UNSAID = ("circuit_breaker", "rcbo", "fuse_rewirable", "fuse_cartridge", "fuse_bs88")


@dataclass(frozen=True, slots=True, kw_only=True)
class ColumnView:
    """A column of the sheet, with the question what it holds.

    Attributes:
        letters: What a spreadsheet calls it.
        heading: Its heading, if it has one.
        samples: What stands in its first filled cells.
        field: The bound field.
        basis: Why it holds what is chosen: a guess, or as last time.
    """

    letters: str
    heading: str
    samples: tuple[str, ...]
    field: Any
    basis: str


def kind_field(chosen: str) -> Any:
    """Return the unbound question what a file holds."""
    choices = [SelectChoice(code, word) for code, word in KINDS.items()]
    default = chosen if chosen in KINDS else "circuits"
    return ChoiceField(label="What it holds", choices=choices, default=default)


def unsaid_field(default: str = "unknown") -> Any:
    """Return the unbound question what a device is where nothing says so."""
    words = {code: DEVICE_KINDS[code].label for code in ("unknown", *UNSAID)}
    return ChoiceField(
        label="What a way is, where nothing says so",
        description="B32 is printed on a circuit-breaker and on an RCBO alike.",
        choices=[SelectChoice(code, word) for code, word in words.items()],
        default=default if default in words else "unknown",
    )


class ColumnsForm:
    """What the columns of a sheet hold, and what else is asked.

    Attributes:
        form: The bound form.
        columns: Each column with its question.
        further: Names of the other questions, in order.
    """

    def __init__(
        self, record: Record, file: Waiting, sheet: Sheet, match: Match, basis: str
    ) -> None:
        self._file, self._sheet, self._match = file, sheet, match
        self._names = [f"c{index}" for index in range(len(headings(sheet, match.row)))]
        asked = _further(record, file)
        self.further = tuple(asked)
        choices = [SelectChoice(NOTHING, "Not taken")]
        choices += [SelectChoice(t.code, t.label) for t in TARGETS[file.kind]]
        fields: dict[str, Any] = {
            name: ChoiceField(label=f"What column {column_letters(index)} holds",
                              choices=choices)
            for index, name in enumerate(self._names)
        }  # fmt: skip
        held = dict(zip(self._names, match.columns, strict=False))
        self.form: Any = type("ColumnsForm", (FlaskForm,), {**fields, **asked})(
            data=held
        )
        self.columns = tuple(self._views(basis))

    def valid(self) -> bool:
        """Return whether every column holds one thing, and nothing is held by two."""
        if not self.form.validate():
            return False
        held = [self.form[name].data for name in self._names]
        twice = {code for code, times in Counter(held).items() if code and times > 1}
        for name, code in zip(self._names, held, strict=True):
            if code in twice:
                self.form[name].errors = [_elsewhere(self._names, held, name)]
        if not any(held):
            self.form[self._names[0]].errors = [
                "Choose what at least one column holds."
            ]
        return not self.form.errors

    def said(self, sheet: int) -> Waiting:
        """Return the file with what was said of it."""
        columns = tuple(self.form[name].data or "" for name in self._names)
        more = {name: self.form[name].data for name in self.further}
        if "board" in more:
            more["board"] = more["board"] or None
        match = Match(row=self._match.row, columns=columns)
        update = {"match": match, "sheet": sheet, **more}
        return self._file.model_copy(update=update)

    def _views(self, basis: str) -> list[ColumnView]:
        words = headings(self._sheet, self._match.row)
        return [
            ColumnView(
                letters=column_letters(index),
                heading=words[index],
                samples=_samples(self._sheet, self._match.row, index),
                field=self.form[name],
                basis=basis if code else "",
            )
            for index, (name, code) in enumerate(
                zip(self._names, self._match.columns, strict=False)
            )
        ]


def _further(record: Record, file: Waiting) -> dict[str, Any]:
    """Return the unbound questions beside the columns, by their names."""
    fields: dict[str, Any] = {}
    if len(record.boards) != 1 or file.kind == "ways":
        fields["board"] = _board_field(record, file)
    if file.kind == "circuits":
        fields["make_devices"] = BooleanField(
            label="Make ways that are not there, and fill in what others lack",
            default=file.make_devices,
        )
    if file.kind == "points":
        fields["make_rooms"] = BooleanField(
            label="Make rooms that are not there", default=file.make_rooms
        )
    else:
        fields["kind_unsaid"] = unsaid_field(file.kind_unsaid)
    return fields


def _board_field(record: Record, file: Waiting) -> Any:
    ways = file.kind == "ways"
    first = [] if ways else [SelectChoice(NOTHING, "Not said")]
    return ChoiceField(
        label="Which board" if ways else "Board of ways that name none",
        choices=[*first, *(SelectChoice(b.ref, b.name) for b in record.boards)],
        default=file.board or (record.boards[0].ref if ways else NOTHING),
    )


def _elsewhere(names: Sequence[str], held: Sequence[Any], name: str) -> str:
    code = held[names.index(name)]
    others = [
        column_letters(index)
        for index, (other, what) in enumerate(zip(names, held, strict=True))
        if what == code and other != name
    ]
    return f"Column {' and '.join(others)} is to hold the same. Choose one of them."


def _samples(sheet: Sheet, row: int, index: int) -> tuple[str, ...]:
    found = []
    for cells in sheet.rows[row:]:
        text = cells[index] if index < len(cells) else ""
        if text == FORMULA:
            text = "a formula without its result"
        if shown := tidied(text):
            cut = shown[:SAMPLE_LENGTH]
            found.append(cut if cut == shown else f"{cut}…")
        if len(found) == SAMPLES:
            break
    return tuple(found)
