"""The circuit chart of a board: as a page, and as PDF for the inside of the door."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from flask import Blueprint, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.labels.chart import (
    MADE_BY,
    NOT_APPLYING,
    ChartRow,
    chart_of,
    rooms_in_words,
)
from app.services.papers import CAUTION, chart_pdf
from app.web.pages.labels import board_of
from app.web.papers import pdf_answer, today
from app.web.session import supply

bp = Blueprint("chart", __name__, url_prefix="/homes/<home>/boards/<ref>")
SIZES = ("a4", "a5")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartPage:
    """A board's circuit chart.

    Attributes:
        title: Heading.
        answer: Where the board stands, what feeds it, its main switch.
        made_by: How the chart was made, and what it is no proof of.
        in_doubt: Whether a row carries a query mark.
        rows: Way, device as marked, RCD, what it feeds, rooms, exceptions, how known,
            old label.
        pdfs: Paper size and address.
        board: Address of the board.
        labels: Address of its labels.
    """

    title: str
    answer: str
    made_by: str
    in_doubt: bool
    rows: tuple[tuple[str, ...], ...]
    pdfs: tuple[tuple[str, str], ...]
    board: str
    labels: str


@bp.get("/chart")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show a board's chart."""
    net = supply(home)
    board = board_of(net, ref)
    chart = chart_of(net, board)
    page = ChartPage(
        title=f"Circuit chart of {board.name}",
        answer=f"{chart.place}. Fed from: {chart.fed_from}. "
        f"Main switch: {chart.main_switch}.",
        made_by=f"{MADE_BY} {CAUTION}",
        in_doubt=chart.in_doubt,
        rows=tuple(_row(row) for row in chart.rows),
        pdfs=tuple(
            (s.upper(), url_for(".pdf", home=home, ref=ref, paper=s)) for s in SIZES
        ),
        board=url_for("boards.show", home=home, ref=ref),
        labels=url_for("labels.show", home=home, ref=ref),
    )
    return render_template("pages/labels/chart.html", page=page)


@bp.get("/chart.pdf")
def pdf(home: str, ref: str) -> ResponseReturnValue:
    """Make a board's chart; ``paper`` is A4 unless it says A5."""
    net = supply(home)
    board = board_of(net, ref)
    paper = request.args.get("paper", "a4")
    size = paper if paper in SIZES else "a4"
    make = partial(chart_pdf, net, board, today(), paper=size)
    return pdf_answer(make, f"chart-{board.ref}")


def _row(row: ChartRow) -> tuple[str, ...]:
    when = f", {row.when}" if row.when else ""
    none = "none found" if row.label.outgoing else NOT_APPLYING
    return (
        row.label.number or NOT_APPLYING,
        row.kind if row.printed == NOT_APPLYING else f"{row.kind}, {row.printed}",
        row.rcd,
        row.feeds,
        rooms_in_words(row),
        "; ".join(row.exceptions) or none,
        f"{row.how}{when}",
        row.old,
    )
