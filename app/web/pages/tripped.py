"""It has tripped: one question a screen, and the sheet to hang by the board."""

from __future__ import annotations

from functools import partial

from flask import Blueprint, redirect, render_template, request
from flask.typing import ResponseReturnValue

from app.errors import NotFoundError
from app.services.tripped import sheet_pdf
from app.web.papers import pdf_answer, today
from app.web.session import supply
from app.web.tripped_address import NOBODY_KNOWS, read
from app.web.tripped_view import START, leaving, options, pick_page, screen_page

bp = Blueprint("tripped", __name__, url_prefix="/homes/<home>/tripped")


@bp.get("/")
def show(home: str) -> ResponseReturnValue:
    """Show the screen that the answers in the address lead to."""
    net, walk = supply(home), read(request.args)
    if not walk.screens:
        return redirect(START.url(home))
    for _, ref in walk.named:
        if ref != NOBODY_KNOWS and ref not in net.record.by_ref:
            raise NotFoundError(f"There is no “{ref}” in this home.")
    if walk.open:
        groups = options(net, walk)
        if not groups:
            return redirect(walk.naming(walk.open, NOBODY_KNOWS).url(home))
        page = pick_page(walk, groups, home)
        return render_template("pages/tripped/pick.html", page=page)
    if (away := leaving(net, walk)) is not None:
        return redirect(away.url(home))
    return render_template("pages/tripped/screen.html", page=screen_page(net, walk))


@bp.get("/sheet.pdf")
def sheet(home: str) -> ResponseReturnValue:
    """Make the sheet for the board."""
    return pdf_answer(partial(sheet_pdf, supply(home), today()), f"if-it-trips-{home}")
