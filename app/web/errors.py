"""Every refusal and every failure as a page: a sentence, what to do, a reference."""

from __future__ import annotations

import logging
import secrets
from contextlib import suppress
from dataclasses import dataclass

from flask import (
    Flask,
    Response,
    current_app,
    jsonify,
    render_template,
    request,
    url_for,
)
from flask_wtf.csrf import CSRFError, generate_csrf
from sqlalchemy.exc import OperationalError
from werkzeug.exceptions import HTTPException

from app.errors import (
    AppError,
    ConflictError,
    DatabaseError,
    InvalidError,
    NotFoundError,
    Problem,
)
from app.web.command import command_shown
from app.web.sent_files import SENT_FILES
from app.web.session import opened
from app.web.wants_json import wants_json

log = logging.getLogger(__name__)

STATUS: dict[type[AppError], int] = {
    NotFoundError: 404,
    ConflictError: 409,
    InvalidError: 422,
    DatabaseError: 503,
}
TITLES = {
    400: "This cannot be taken",
    403: "This was not taken",
    404: "There is no such page",
    405: "This cannot be done here",
    409: "It has changed since",
    413: "This is too large",
    415: "This cannot be taken",
    422: "This cannot be taken",
    500: "Something went wrong",
    503: "The file cannot be written just now",
}
SENTENCES = {
    404: "What you asked for is not here; perhaps it was deleted, or its name changed.",
    405: "This address takes no such request.",
    413: "What was sent is larger than a page of this program ever is. Nothing was "
    "changed.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ErrorPage:
    """A page that says what went wrong.

    Attributes:
        title: Heading.
        sentence: What happened.
        remedy: What can be done.
        reference: What the log calls it; empty when the log says nothing.
        problems: Reasons, one by one, with their places.
        refused: Whether what was sent is to be put right.
        form: Address of the form that was sent; empty where there is none.
    """

    title: str
    sentence: str
    remedy: str = ""
    reference: str = ""
    problems: tuple[Problem, ...] = ()
    refused: bool = False
    form: str = ""


def init_app(app: Flask) -> None:
    """Answer errors with pages."""
    app.register_error_handler(AppError, _refused)
    app.register_error_handler(CSRFError, _no_token)
    app.register_error_handler(HTTPException, _http)
    app.register_error_handler(OperationalError, _locked)
    app.register_error_handler(Exception, _failed)


def _page(status: int, page: ErrorPage) -> tuple[str | Response, int]:
    if wants_json():
        reasons = [problem.reason for problem in page.problems]
        sentence = " ".join((page.sentence, *reasons))
        return jsonify(error=status, sentence=sentence), status
    return render_template("errors/error.html", page=page), status


def _refused(error: AppError) -> tuple[str | Response, int]:
    status = next((s for cls, s in STATUS.items() if isinstance(error, cls)), 422)
    page = ErrorPage(
        title=TITLES[status],
        sentence=error.sentence,
        problems=error.problems,
        refused=status == 422,
    )
    return _page(status, page)


def _no_token(_error: CSRFError) -> tuple[str | Response, int]:
    if wants_json():
        return jsonify(error="token", token=generate_csrf()), 400
    page = ErrorPage(
        title=TITLES[400],
        sentence="The form had been open since before the program last started, or was "
        "sent from elsewhere. It was not taken.",
        remedy="Go back, reload the page, and send it again.",
    )
    return _page(400, page)


def _http(error: HTTPException) -> tuple[str | Response, int, dict[str, str]]:
    status = error.code or 500
    plain = type(error).description
    own = error.description if error.description != plain else None
    sentence = SENTENCES.get(status) or own or "This request cannot be understood."
    sent = SENT_FILES.get(request.endpoint or "")
    if status in (404, 413):
        _open_home()
    page = ErrorPage(
        title=TITLES.get(status, TITLES[400]),
        sentence=sent.refusal if sent and status == 413 else sentence,
        form=_form() if status == 413 else "",
    )
    allowed = getattr(error, "valid_methods", None)
    headers = {"Allow": ", ".join(sorted(allowed))} if allowed else {}
    return *_page(status, page), headers


def _form() -> str:
    """Return the address of the form that was sent: of a file, or on its own page."""
    sent = SENT_FILES.get(request.endpoint or "")
    own = current_app.create_url_adapter(request)
    if sent:
        url = url_for(sent.form, **(request.view_args or {}))
    elif own and own.test(method="GET"):
        url = request.path
    else:
        return ""
    asked = request.query_string.decode("ascii", "replace")
    return f"{url}?{asked}" if asked else url


def _open_home() -> None:
    """Open the home that an address names, for the way back: no view has done so.

    Whether the person may see it was asked before either of these can be answered.
    """
    parts = request.path.split("/")
    if len(parts) > 2 and parts[1] == "homes":
        with suppress(NotFoundError):
            opened(parts[2])


def _locked(error: OperationalError) -> tuple[str | Response, int]:
    """The disk is full, the file is read-only, or another program holds it."""
    reference = _logged(error)
    page = ErrorPage(
        title=TITLES[503],
        sentence="The file of this program could not be read or written: "
        f"{error.orig}. Nothing was changed.",
        remedy="See that the disk is not full, that its folder may be written, and "
        "that no other program has the file open; then go back and send it again.",
        reference=reference,
    )
    return _page(503, page)


def _failed(error: Exception) -> tuple[str | Response, int]:
    page = ErrorPage(
        title=TITLES[500],
        sentence="This is most likely a fault of the program, not of your record.",
        remedy="Go back, look whether what you sent was saved, and try again. If it "
        "stays, the log tells more under this reference, and this makes a copy of your "
        f"data and checks it: {command_shown('db', 'backup')}",
        reference=_logged(error),
    )
    return _page(500, page)


def _logged(error: Exception) -> str:
    reference = secrets.token_hex(4)
    log.error("%s: %s %s", reference, request.method, request.path, exc_info=error)
    return reference
