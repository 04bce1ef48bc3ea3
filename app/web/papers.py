"""A PDF or a drawing as an answer."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime

from flask import Response

from app.web.session import let_go


def today() -> date:
    """Return the day on this machine's clock, which papers carry."""
    return datetime.now().astimezone().date()


def pdf_answer(make: Callable[[], bytes], name: str) -> Response:
    """Return a PDF to be shown in the browser, with the name that it is saved under.

    Args:
        make: Makes it, of what was read before: meanwhile others can write.
        name: The name, without what it ends with.
    """
    let_go()
    answer = Response(make(), mimetype="application/pdf")
    answer.headers["Content-Disposition"] = f'inline; filename="{name}.pdf"'
    answer.headers["Cache-Control"] = "no-store"
    return answer


def svg_answer(made: str, name: str) -> Response:
    """Return an SVG file to be kept, with the name that it is saved under."""
    answer = Response(made, mimetype="image/svg+xml")
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}.svg"'
    answer.headers["Cache-Control"] = "no-store"
    return answer
