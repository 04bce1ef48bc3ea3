"""Labels: the boards, the labels of one with what is wrong with them, its notices."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial
from typing import Any
from urllib.parse import urlencode

from flask import Blueprint, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.labels import (
    Cell,
    Label,
    label_problems,
    labels_of,
    laid_out,
)
from app.domain.labels.notices import Notice, notices_of
from app.domain.labels.problems import WORDS
from app.domain.network import Network
from app.domain.record import Board, Record
from app.drawing.label import draw_label
from app.errors import InvalidError
from app.services.papers import (
    calibration_pdf,
    labels_pdf,
    left_out,
    notices_pdf,
    sheets_by_code,
)
from app.store.label_sheets import own_sheets
from app.web.addresses import Link, item_url
from app.web.label_form import NEEDS, Asked, asked
from app.web.ledes import counted
from app.web.papers import pdf_answer, today
from app.web.session import needed, opened, read, supply

bp = Blueprint("labels", __name__, url_prefix="/homes/<home>")
Wrong = tuple[str, str, tuple[Link, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The boards that labels may be made for.

    Attributes:
        title: Heading.
        rows: Board with the address of its labels, how many ways, how many of them
            are confirmed, the address of its chart.
        calibration: Address of the check of the printer.
        sheets: Address of the label sheets of one's own.
        boards: Address of the list of boards.
    """

    title: str
    rows: tuple[tuple[Link, str, str, Link], ...]
    calibration: str
    sheets: str
    boards: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A label as it will be printed.

    Attributes:
        drawing: The label, as SVG.
        left_out: What has no room on it, as a sentence; may be empty.
    """

    drawing: str
    left_out: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelsPage:
    """The labels of one board.

    Attributes:
        title: Heading.
        answer: How many of its ways are confirmed, in one sentence.
        problems: What is wrong with its labels: word, sentence, a link for each device.
        here: Address of this page.
        form: Which labels, and how.
        needs: Heading and fields for each manner of printing.
        typed: Whether anything was chosen yet.
        labels: The labels chosen, as they will be printed.
        pdf: Address of the PDF; None where nothing is chosen that can be printed.
        notices: The notices that may hang there.
        notices_url: Address of the notices as PDF.
        chart: Address of the chart.
        calibration: Address of the check of the printer.
        sheets: Address of the label sheets of one's own.
    """

    title: str
    answer: str
    problems: tuple[Wrong, ...]
    here: str
    form: Any
    needs: tuple[tuple[str, tuple[str, ...]], ...]
    typed: bool
    labels: tuple[Shown, ...]
    pdf: str | None
    notices: tuple[Notice, ...]
    notices_url: str
    chart: str
    calibration: str
    sheets: str


@bp.get("/labels/")
def index(home: str) -> ResponseReturnValue:
    """List the boards with how far their labels are known."""
    net = supply(home)
    page = IndexPage(
        title="Labels",
        rows=tuple(_row(net, board) for board in net.record.boards),
        calibration=url_for(".calibration", home=home),
        sheets=url_for("label_sheets.index", home=home),
        boards=url_for("boards.index", home=home),
    )
    return render_template("pages/labels/index.html", page=page)


@bp.get("/boards/<ref>/labels")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show a board's labels as they will be printed, what is wrong with them first."""
    net = supply(home)
    board = board_of(net, ref)
    labels = labels_of(net, board)
    return _show(net, board, labels, asked(net.record, labels, own_sheets(read())))


@bp.get("/boards/<ref>/labels.pdf")
def pdf(home: str, ref: str) -> ResponseReturnValue:
    """Make the labels that the address asks for."""
    net = supply(home)
    board = board_of(net, ref)
    labels = labels_of(net, board)
    wanted = asked(net.record, labels, own_sheets(read()))
    if wanted.choice is None:
        return _show(net, board, labels, wanted)
    cells = laid_out(labels, wanted.chosen, wanted.choice, wanted.sheet)
    make = partial(labels_pdf, board, cells, wanted.choice, today())
    return pdf_answer(make, f"labels-{board.ref}")


@bp.get("/boards/<ref>/notices.pdf")
def notices(home: str, ref: str) -> ResponseReturnValue:
    """Make the notices that the address asks for."""
    net = supply(home)
    board = board_of(net, ref)
    wanted = request.args.getlist("notice")
    chosen = [notice for notice in notices_of(net, board) if notice.code in wanted]
    if not chosen:
        raise InvalidError("Tick at least one notice, then make them.")
    make = partial(notices_pdf, board, chosen, today())
    return pdf_answer(make, f"notices-{board.ref}")


@bp.get("/labels/calibration.pdf")
def calibration(home: str) -> ResponseReturnValue:
    """Make the page with the two rulers."""
    opened(home)
    sheets = sheets_by_code(own_sheets(read()))
    sheet = sheets.get(request.args.get("sheet", ""))
    return pdf_answer(partial(calibration_pdf, sheet, today()), "check-of-the-printer")


def board_of(net: Network, ref: str) -> Board:
    """Return a board of the record.

    Raises:
        NotFoundError: There is no such board.
    """
    return needed(net.record, Board, ref)


def _row(net: Network, board: Board) -> tuple[Link, str, str, Link]:
    home = net.record.home.ref
    ways = [label for label in labels_of(net, board) if label.outgoing]
    return (
        (board.name, url_for(".show", home=home, ref=board.ref)),
        str(len(ways)),
        str(sum(way.confirmed for way in ways)),
        ("Circuit chart", url_for("chart.show", home=home, ref=board.ref)),
    )


def _show(
    net: Network, board: Board, labels: tuple[Label, ...], wanted: Asked
) -> ResponseReturnValue:
    page = _page(net, board, labels, wanted)
    status = 200 if wanted.choice is not None else 422
    return render_template("pages/labels/show.html", page=page), status


def _page(
    net: Network, board: Board, labels: tuple[Label, ...], wanted: Asked
) -> LabelsPage:
    home, ref = net.record.home.ref, board.ref
    cells: tuple[Cell, ...] = ()
    if wanted.choice is not None:
        cells = laid_out(labels, wanted.chosen, wanted.choice, wanted.sheet)
    # Only what the form knows: an address may hold anything else besides.
    query = {
        name: request.args.getlist(name) for name in request.args if name in wanted.form
    }
    made = f"{url_for('.pdf', home=home, ref=ref)}?{urlencode(query, doseq=True)}"
    return LabelsPage(
        title=f"Labels of {board.name}",
        answer=_answer([label for label in labels if label.outgoing]),
        problems=_problems(net, board),
        here=url_for(".show", home=home, ref=ref),
        form=wanted.form,
        needs=NEEDS,
        typed=bool(request.args),
        labels=tuple(_shown(cell) for cell in cells if cell.label),
        pdf=made if cells else None,
        notices=notices_of(net, board),
        notices_url=url_for(".notices", home=home, ref=ref),
        chart=url_for("chart.show", home=home, ref=ref),
        calibration=url_for(".calibration", home=home, sheet=wanted.form.sheet.data),
        sheets=url_for("label_sheets.index", home=home),
    )


def _answer(ways: list[Label]) -> str:
    """Say how far the labels of the ways are known."""
    unknown = sum(not way.known for way in ways)
    sure = sum(way.known and way.confirmed for way in ways)
    if not ways:
        return "No way of this board is written down yet."
    return (
        f"{counted(len(ways), 'way').capitalize()}: {sure} confirmed, "
        f"{len(ways) - sure - unknown} with a query mark, {unknown} not known."
    )


def _problems(net: Network, board: Board) -> tuple[Wrong, ...]:
    return tuple(
        (WORDS[problem.code], problem.sentence, _links(net.record, problem.ways))
        for problem in label_problems(net, board)
    )


def _links(record: Record, refs: Iterable[str]) -> tuple[Link, ...]:
    items = (record.by_ref[ref] for ref in refs)
    return tuple((f"Open {i.title}", item_url(record.home.ref, i)) for i in items)


def _shown(cell: Cell) -> Shown:
    return Shown(drawing=draw_label(cell), left_out=left_out(cell))
