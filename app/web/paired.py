"""Who asks: this computer, or a phone on the home network that was paired with it.

`device_name` says by whom a change is made.  What comes from elsewhere without a
paired phone's pass gets the page that pairs it, and nothing more.  Where a request
comes from is what the connection says; no header is believed about it.
"""

from __future__ import annotations

import logging
import re
from datetime import UTC, datetime
from ipaddress import ip_address

from flask import Flask, current_app, g, redirect, request, url_for
from flask.typing import ResponseReturnValue
from sqlalchemy.exc import OperationalError
from werkzeug.exceptions import Forbidden

from app.config import Config
from app.services.pairing import Pairing
from app.services.phones import known_by, note_seen, was_seen_lately
from app.store.phones import Phone
from app.web.session import change, read

log = logging.getLogger(__name__)

HERE = "this computer"
COOKIE = "ways-phone"
COOKIE_LASTS_S = 400 * 24 * 3600
OWN_HOST = re.compile(r"(127\.0\.0\.1|localhost)(:[0-9]{1,5})?", re.IGNORECASE)
HTTP_PORT = 80
# What may be had before pairing: the page that pairs, and the sheets it is drawn by.
PAIRING_SHEETS = (
    "css/tokens.css",
    "css/base.css",
    "css/layout.css",
    "css/components/button.css",
    "css/components/error_summary.css",
    "css/components/field.css",
    "css/components/notice.css",
    "css/components/page.css",
)
PAIRING_FILES = (*PAIRING_SHEETS, "img/mark.svg")
PAIRING_PAGES = ("pairing.show", "pairing.pair")
# The pages of these blueprints are for this computer alone.
HERE_ONLY = {
    "copies": "Copies are made and kept on the computer only.",
    "phones": "Phones are paired and removed on the computer only.",
}


class NotPairedError(Forbidden):
    """A form came from elsewhere, and not from a paired phone."""

    description = (
        "This phone is not paired with the computer, or was removed there. "
        "Nothing was taken."
    )


def init_app(app: Flask, config: Config) -> None:
    """Look at where each request comes from."""
    app.extensions["pairing"] = Pairing()
    app.extensions["config"] = config
    app.before_request(_admit)


def device_name() -> str:
    """Return by whom a change of this request is made, to be kept with it.

    That is the name of the paired phone that sent it, or “this computer” for a browser
    on the machine that the program runs on.
    """
    own = phone()
    return own.name if own else HERE


def phone() -> Phone | None:
    """Return the paired phone that asks; None for this computer, or an unpaired one."""
    own: Phone | None = g.get("phone")
    return own


def from_here() -> bool:
    """Return whether the request comes from the machine that the program runs on."""
    try:
        return ip_address(request.remote_addr or "").is_loopback
    except ValueError:
        return False


def pairing() -> Pairing:
    """Return the code that there is, and the tries at it."""
    own: Pairing = current_app.extensions["pairing"]
    return own


def shared_urls() -> tuple[str, ...]:
    """Return the addresses that a phone may open; none when nothing is shared."""
    config: Config = current_app.extensions["config"]
    return config.shared_urls


def is_called(host: str) -> bool:
    """Return whether a Host is a name of ours, for where the request comes from."""
    if from_here():
        return OWN_HOST.fullmatch(host) is not None
    config: Config = current_app.extensions["config"]
    ports = (f":{config.port}", *(("",) if config.port == HTTP_PORT else ()))
    return host in {f"{own}{port}" for own in config.shared_at for port in ports}


def _admit() -> ResponseReturnValue | None:
    if from_here():
        return None
    own = known_by(read(), request.cookies.get(COOKIE, ""))
    if own is None:
        return _turn_away()
    g.phone, g.made_by = own, own.name
    if request.blueprint in HERE_ONLY:
        raise Forbidden(HERE_ONLY[request.blueprint])
    _note(own)
    return None


def _turn_away() -> ResponseReturnValue | None:
    """Lead to the page that pairs; every address is answered alike."""
    if request.endpoint in PAIRING_PAGES:
        return None
    if request.endpoint == "static":
        if (request.view_args or {}).get("filename") in PAIRING_FILES:
            return None
        raise NotPairedError
    if request.method in ("GET", "HEAD"):
        return redirect(url_for("pairing.show"))
    raise NotPairedError


def _note(own: Phone) -> None:
    """Keep when a phone was seen; that this cannot be kept stops nobody reading."""
    now = datetime.now(UTC)
    if was_seen_lately(own, now):
        return
    try:
        with change() as connection:
            note_seen(connection, own, now)
    except OperationalError as error:
        log.warning("when a phone was seen could not be kept: %s", error.orig)
