"""Papers to hang at a board: labels, notices, the chart; the check of the printer."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict
from datetime import date
from typing import Any

from pydantic import TypeAdapter

from app.domain.labels.chart import (
    MADE_BY,
    NOT_APPLYING,
    Chart,
    ChartRow,
    chart_of,
    rooms_in_words,
)
from app.domain.labels.layout import Cell, Choice
from app.domain.labels.notices import Notice
from app.domain.labels.sheet import SHEETS, LabelSheet
from app.domain.network import Network
from app.domain.record import Board
from app.drawing.board import draw_board
from app.errors import NotFoundError
from app.report import Paper, as_pdf
from app.report.plain import Plain

FULL_SIZE = "Print at 100 %, no fit to page."
DOUBT = "? not confirmed."
CAUTION = (
    "Off at the board is no proof. The wires into a main switch stay live when it is "
    "off."
)


def labels_pdf(board: Board, cells: Iterable[Cell], choice: Choice, day: date) -> bytes:
    """Return labels as PDF; a sheet of labels gets no outlines and no note."""
    pages: dict[int, list[Plain]] = {}
    for cell in cells:
        pages.setdefault(cell.page, []).append(_cell(cell))
    title = f"Labels for {board.name}"
    loose = choice.manner != "sheet"
    data: dict[str, Plain] = {
        "outlined": loose,
        "note": f"{title}. {FULL_SIZE} {DOUBT}" if loose else "",
        "pages": [pages.get(page, []) for page in range(max(pages, default=0) + 1)],
    }
    return as_pdf(Paper(template="labels", title=title, day=day, data=data))


def calibration_pdf(sheet: LabelSheet | None, day: date) -> bytes:
    """Return the page that shows whether a printer keeps its measure."""
    data: dict[str, Plain] = {"sheet": sheet.name if sheet else None}
    title = "Check of the printer"
    return as_pdf(Paper(template="calibration", title=title, day=day, data=data))


def notices_pdf(board: Board, notices: Iterable[Notice], day: date) -> bytes:
    """Return notices as PDF."""
    title = f"Notices for {board.name}"
    data: dict[str, Plain] = {"notices": [_notice(notice) for notice in notices]}
    return as_pdf(Paper(template="notices", title=title, day=day, data=data))


def chart_pdf(net: Network, board: Board, day: date, *, paper: str = "a4") -> bytes:
    """Return a board's circuit chart as PDF, on ``a4`` or ``a5``; the face on A4."""
    chart = chart_of(net, board)
    drawn = paper == "a4" and bool(chart.rows)
    data = _chart(chart) | {
        "paper": paper,
        "drawn": drawn,
        "face_alt": f"The face of {board.name}; the table says the same in words.",
    }
    face = draw_board(net.record, board.ref, lambda _ref: None, frozenset())
    title = f"Circuit chart of {board.name}"
    drawings = {"face": face} if drawn else {}
    return as_pdf(
        Paper(template="chart", title=title, day=day, data=data, drawings=drawings)
    )


def sheets_by_code(own: Mapping[int, LabelSheet]) -> dict[str, LabelSheet]:
    """Return every label sheet by its code: one's own first."""
    added = {f"own-{key}": sheet for key, sheet in own.items()}
    offered = {f"{s.columns}x{s.rows}-{s.width_mm}": s for s in SHEETS}
    return added | offered


def sheet_named(own: Mapping[int, LabelSheet], code: str) -> LabelSheet:
    """Return the sheet of a code; the first one without a code.

    Raises:
        NotFoundError: There is no such sheet.
    """
    sheets = sheets_by_code(own)
    if code and code not in sheets:
        raise NotFoundError(
            f"There is no sheet “{code}”. There are: {', '.join(sheets)}."
        )
    return sheets[code] if code else next(iter(sheets.values()))


def left_out(cell: Cell) -> str:
    """Say what has no room on a label; nothing where all of it has."""
    if cell.label is None or not cell.fitted.left_out:
        return ""
    what = " and ".join(cell.fitted.left_out)
    return (
        f"{cell.label.called}: too long for this size. Left out: {what}. Take a larger "
        "label, or shorten the name."
    )


def as_values(given: Any) -> Any:
    """Return labels, problems or a chart as values that JSON can hold."""
    return TypeAdapter(type(given)).dump_python(given, mode="json")


def _cell(cell: Cell) -> dict[str, Plain]:
    return {
        "x": cell.x,
        "y": cell.y,
        "width": cell.width,
        "height": cell.height,
        "lines": [asdict(line) for line in cell.fitted.lines],
    }


def _notice(notice: Notice) -> dict[str, Plain]:
    return asdict(notice)


def _chart(chart: Chart) -> dict[str, Plain]:
    return {
        "heading": f"Circuit chart: {chart.board}",
        "place": chart.place,
        "fed_from": chart.fed_from,
        "main_switch": chart.main_switch,
        "rows": [_row(row) for row in chart.rows],
        "in_doubt": chart.in_doubt,
        "made_by": MADE_BY,
        "caution": CAUTION,
    }


def _row(row: ChartRow) -> dict[str, Plain]:
    return {
        "number": row.label.number or NOT_APPLYING,
        "kind": row.kind,
        "printed": row.printed,
        "rcd": row.rcd,
        "name": row.feeds,
        "rooms": rooms_in_words(row),
        "exceptions": row.exceptions,
        "how": row.how,
        "when": row.when,
        "old": row.old,
    }
