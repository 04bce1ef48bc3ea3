"""Who may ask: this program's own pages only; and what each answer forbids itself.

The server listens on this machine, and on the home network when told to.  A page from
elsewhere, open in the same browser, could still send it requests: hence the Host, the
Origin and Sec-Fetch-Site are looked at, besides the token that each form carries.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from flask import Flask, Response, request
from werkzeug.exceptions import BadRequest, Forbidden

from app.web.fields import UNSEEN
from app.web.paired import from_here, is_called
from app.web.sent_files import SENT_FILES

HERE_BY = (
    "This program answers to 127.0.0.1 and localhost only. "
    "Open it by one of these names."
)
ELSEWHERE_BY = "Open this program by the address that its computer shows."
WHITE = re.compile(r"[\t\r\n]")
# HTML Living Standard, "control-character-in-input-stream" and "noncharacter".
NOT_IN_A_PAGE = re.compile("[\x00-\x08\x0b\x0e-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff]")
SAFE = ("GET", "HEAD", "OPTIONS")
HEADERS = {
    "Content-Security-Policy": (
        "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; "
        "form-action 'self'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    # For browsers that do not know `frame-ancestors`.
    "X-Frame-Options": "DENY",
    # No page elsewhere holds on to a window of ours, or draws in what we answer.
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
}


def init_app(app: Flask) -> None:
    """Look at every request before it is answered, and at every answer."""
    app.before_request(_look)
    app.after_request(_forbid)


def _look() -> None:
    if not is_called(request.host):
        raise BadRequest(HERE_BY if from_here() else ELSEWHERE_BY)
    if any(UNSEEN.search(WHITE.sub("", text)) for text in _address()):
        raise BadRequest("An address holds no control characters.")
    if request.method in SAFE:
        return
    if taken := SENT_FILES.get(request.endpoint or ""):
        request.max_content_length = taken.most
    origin = request.headers.get("Origin")
    if origin is not None and origin != f"{request.scheme}://{request.host}":
        raise Forbidden("This form was sent from another site; it was not taken.")
    if request.headers.get("Sec-Fetch-Site", "same-origin") not in (
        "same-origin",
        "none",
    ):
        raise Forbidden("This form was sent from another site; it was not taken.")


def _address() -> Iterator[str]:
    yield request.path
    for name, value in request.args.items(multi=True):
        yield name
        yield value


def _forbid(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if response.mimetype == "text/html":
        response.headers["Cache-Control"] = "no-store"
        _show_what_can_be(response)
    return response


def _show_what_can_be(response: Response) -> None:
    """Show a mark where a text that is given back holds what no page may."""
    if not response.is_streamed and not response.direct_passthrough:
        text = response.get_data(as_text=True)
        if NOT_IN_A_PAGE.search(text):
            response.set_data(NOT_IN_A_PAGE.sub("\ufffd", text))
