"""The bytes: what is shown of a picture in two sizes, and the original to download."""

from __future__ import annotations

from flask import Blueprint, Response, request
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import Forbidden

from app.errors import NotFoundError
from app.pictures import SUFFIXES
from app.services.files import original as original_of
from app.services.files import shown
from app.web.files_view import NOT_HERE, find_file, folder
from app.web.paired import from_here

bp = Blueprint("pictures", __name__, url_prefix="/homes/<home>/files")
YEAR_S = 365 * 24 * 3600


@bp.get("/<ref>/small")
def small(home: str, ref: str) -> ResponseReturnValue:
    """Give a picture as a list shows it."""
    return _shown(home, ref, "small")


@bp.get("/<ref>/large")
def large(home: str, ref: str) -> ResponseReturnValue:
    """Give a picture as its page shows it."""
    return _shown(home, ref, "large")


@bp.get("/<ref>/original")
def original(home: str, ref: str) -> ResponseReturnValue:
    """Give a file as it came, to be kept and never shown by the browser.

    What the camera wrote into a picture is still in it, so that phones do not get it.
    """
    attachment = find_file(home, ref)
    if attachment.is_picture and not from_here():
        raise Forbidden("The original of a picture is given to the computer only.")
    data = original_of(folder(), attachment)
    if data is None:
        raise NotFoundError(NOT_HERE)
    response = Response(data, mimetype=attachment.media_type)
    name = f"{home}-{attachment.ref}.{SUFFIXES[attachment.media_type]}"
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    response.headers["Content-Security-Policy"] = "default-src 'none'; sandbox"
    response.headers["Cross-Origin-Resource-Policy"] = "same-origin"
    response.headers["Cache-Control"] = "no-store"
    return response


def _shown(home: str, ref: str, size: str) -> ResponseReturnValue:
    attachment = find_file(home, ref)
    jpeg = shown(folder(), attachment, size)
    if jpeg is None:
        raise NotFoundError(NOT_HERE)
    response = Response(jpeg, mimetype="image/jpeg")
    response.headers["Cross-Origin-Resource-Policy"] = "same-origin"
    # The address names the content, so that it may be kept for as long as one likes.
    named = request.args.get("v") == attachment.sha256[:12]
    kept = f"private, max-age={YEAR_S}, immutable"
    response.headers["Cache-Control"] = kept if named else "no-store"
    return response
