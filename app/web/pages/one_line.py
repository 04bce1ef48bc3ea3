"""The one-line diagram, for whoever comes to work on the installation."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.drawing.one_line import TITLE, one_line_blocks
from app.drawing.render import render
from app.services.drawings import one_line_file
from app.web.addresses import links
from app.web.papers import svg_answer
from app.web.session import opened

bp = Blueprint("one_line", __name__, url_prefix="/homes/<home>/one-line")


@dataclass(frozen=True, slots=True, kw_only=True)
class OneLinePage:
    """The one-line diagram.

    Attributes:
        title: Heading.
        drawings: The supply and each board: name for the page, and SVG.
        has_boards: Whether any board is recorded.
        file: Address of the diagram as a file.
        new_board: Address of the form of a new board.
    """

    title: str
    drawings: tuple[tuple[str, str], ...]
    has_boards: bool
    file: str
    new_board: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the diagram."""
    record = opened(home).record
    blocks = one_line_blocks(record, links(record))
    page = OneLinePage(
        title=TITLE,
        drawings=tuple((block.ident, render(block)) for block in blocks),
        has_boards=bool(record.boards),
        file=url_for(".file", home=home),
        new_board=url_for("items.new", home=home, plural="boards"),
    )
    return render_template("pages/one_line.html", page=page)


@bp.get("/one-line.svg")
def file(home: str) -> ResponseReturnValue:
    """Give the diagram as a file."""
    record = opened(home).record
    return svg_answer(one_line_file(record), f"{record.home.ref}-one-line")
