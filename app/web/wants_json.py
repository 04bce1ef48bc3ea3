"""Whether a script asks, which is answered in JSON, or a page."""

from __future__ import annotations

from flask import request


def wants_json() -> bool:
    """Return whether the answer is for a script."""
    return request.accept_mimetypes.best == "application/json"
