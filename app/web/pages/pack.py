"""Handing over: choose what goes into the pack, see what leaves the house, take it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from flask import Blueprint, Response, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.pack import PARTS, holding
from app.domain.record import SORTS, Record
from app.errors import InvalidError
from app.services.pack import (
    Wanted,
    changes_told,
    pack_files,
    pack_page,
    pack_pdf,
    pack_zip,
)
from app.services.pack_pictures import store_in
from app.web.files_view import folder
from app.web.papers import pdf_answer, today
from app.web.session import let_go, opened, read
from app.web.words import how_many

bp = Blueprint("pack", __name__, url_prefix="/homes/<home>/hand-over")


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """Something that is kept back unless it is asked for.

    Attributes:
        code: Its code.
        words: What it is.
        there: How much of it the record holds, in words.
        taken: Whether it goes along.
    """

    code: str
    words: str
    there: str
    taken: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PackPage:
    """What goes into the pack.

    Attributes:
        title: Heading.
        holds: What leaves the house in any case, counted.
        parts: What may be kept back.
        zip: Address of everything as one file.
        pdf: Address of the PDF alone.
        html: Address of the page alone.
    """

    title: str
    holds: tuple[str, ...]
    parts: tuple[PartView, ...]
    zip: str
    pdf: str
    html: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show what leaves the house, and offer the pack."""
    record, taken = opened(home).record, _taken()
    page = PackPage(
        title="Hand over",
        holds=tuple(_holds(record)),
        parts=tuple(
            PartView(
                code=code,
                words=words,
                there=_there(record, code),
                taken=code in taken,
            )
            for code, words in PARTS.items()
        ),
        zip=url_for(".as_zip", home=home),
        pdf=url_for(".as_pdf", home=home),
        html=url_for(".as_html", home=home),
    )
    return render_template("pages/pack/index.html", page=page)


@bp.get("/pack.zip")
def as_zip(home: str) -> ResponseReturnValue:
    """Give everything as one file."""
    name = f"{opened(home).record.home.ref}-pack"
    wanted = _wanted(home)
    let_go()
    made = pack_zip(pack_files(wanted), name, today())
    return _attached(made, "application/zip", f"{name}.zip")


@bp.get("/pack.pdf")
def as_pdf(home: str) -> ResponseReturnValue:
    """Give the PDF."""
    name = f"{opened(home).record.home.ref}-pack"
    return pdf_answer(partial(pack_pdf, _wanted(home)), name)


@bp.get("/pack.html")
def as_html(home: str) -> ResponseReturnValue:
    """Give the page that opens from the disk."""
    name = f"{opened(home).record.home.ref}-pack.html"
    wanted = _wanted(home)
    let_go()
    return _attached(pack_page(wanted), "text/html", name)


def _wanted(home: str) -> Wanted:
    without = tuple(code for code in PARTS if code not in _taken())
    here = opened(home)
    return Wanted(
        record=here.record,
        day=today(),
        without=without,
        changes=changes_told(read(), here),
        store=store_in(folder()),
    )


def _taken() -> tuple[str, ...]:
    taken = tuple(dict.fromkeys(request.args.getlist("with")))
    if wrong := [code for code in taken if code not in PARTS]:
        raise InvalidError(
            f"There is no part “{wrong[0][:40]}”. There is: {', '.join(PARTS)}."
        )
    return taken


def _attached(made: bytes, media_type: str, name: str) -> Response:
    answer = Response(made, mimetype=media_type)
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    answer.headers["Cache-Control"] = "no-store"
    return answer


def _holds(record: Record) -> tuple[str, ...]:
    by_ticks = ("attachment", "spot")
    return tuple(
        how_many(len(record.of(cls)), cls)
        for sort, cls in SORTS.items()
        if sort not in by_ticks and record.of(cls)
    )


def _there(record: Record, code: str) -> str:
    """Say how much of a part there is to keep back."""
    number = holding(record, code)
    if number is None:
        return ""
    if not number:
        return "none recorded"
    return "1 entry" if number == 1 else f"{number} entries"
