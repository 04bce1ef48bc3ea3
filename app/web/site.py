"""What every page shows around its own matter: the places, the search, the undo bar."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from flask import Flask, current_app, g, request, url_for
from flask_wtf.csrf import generate_csrf

from app import __version__
from app.config import Config
from app.domain.record import Home
from app.store.changes import latest_changes
from app.web.command import command_shown
from app.web.paired import from_here
from app.web.remarked import RowView, on_item
from app.web.session import opened, read


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A place of the program, with the pages in it.

    Attributes:
        label: Its name.
        url: Its first page.
        current: Whether the page shown is in it.
        links: Pages in it: label, address, whether it is the one shown.
    """

    label: str
    url: str
    current: bool
    links: tuple[tuple[str, str, bool], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo:
    """What was just done, and the form that takes it back."""

    sentence: str
    url: str
    token: int


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeLink:
    """The home that the page is about."""

    ref: str
    name: str
    url: str


# Label of the place, then its pages: label, endpoint.
PLACES: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        "The record",
        (
            ("Home", "homes.show"),
            ("Intake", "intake.index"),
            ("Sources", "sources.index"),
            ("Boards", "boards.index"),
            ("Circuits", "circuits.index"),
            ("Rooms", "rooms.index"),
            ("Points", "points.index"),
            ("House", "house.index"),
        ),
    ),
    ("Find out", (("Walk", "walk.index"), ("Switching rounds", "rounds.index"))),
    (
        "Use it",
        (
            ("Ask", "ask.index"),
            ("Isolate", "isolation.index"),
            ("It has tripped", "tripped.show"),
            ("Whom to call", "call.index"),
            ("May I?", "may_i.index"),
            ("Labels", "labels.index"),
            ("Load", "load.index"),
        ),
    ),
    (
        "Remarks",
        (("Remarks", "remarks.index"), ("Open questions", "faults.index")),
    ),
    (
        "Papers",
        (
            ("Work", "works.index"),
            ("Papers", "papers.index"),
            ("Test results", "results.index"),
            ("Reminders", "reminders.index"),
            ("Photographs", "attachments.index"),
            ("One-line", "one_line.index"),
            ("Hand over", "pack.index"),
            ("Document", "documents.show"),
            ("Changes", "changes.index"),
        ),
    ),
)
# Pages that are in the place of another list than their own.
IN_PLACE_OF = {
    "chart": "labels",
    "devices": "boards",
    "figures": "circuits",
    "findings": "rounds",
    "isolation_steps": "isolation",
    "label_sheets": "labels",
    "marking": "rounds",
    "pictures": "attachments",
    "spots": "attachments",
    "uploads": "attachments",
    "typed_lists": "boards",
    "replies": "pack",
    "spreadsheets": "documents",
    "trips": "tripped",
    "past": "changes",
}

# Views of one item, whatever its sort, which lead to its history.
ITEM_PAGES = ("show", "edit", "update")


class Site:
    """What the layout needs, worked out only when it is asked for."""

    def __init__(self, config: Config) -> None:
        self.demo = config.demo
        self.version = __version__

    @property
    def home(self) -> HomeLink | None:
        """The home that the page is about, if it is there."""
        home = _home()
        if home is None:
            return None
        url = url_for("homes.show", home=home.ref)
        return HomeLink(ref=home.ref, name=home.name, url=url)

    @cached_property
    def places(self) -> tuple[Place, ...]:
        """The places of the home."""
        home = _home()
        return tuple(_place(label, pages, home) for label, pages in PLACES if home)

    @property
    def remarks_on(self) -> tuple[RowView, ...]:
        """The remarks on the item that the page is about."""
        return on_item() if _home() else ()

    @property
    def history(self) -> tuple[str, str] | None:
        """The way to the history of the item that the page is about: label, address."""
        ref = (request.view_args or {}).get("ref", "")
        home, page = _home(), (request.endpoint or "").rpartition(".")[2]
        if home is None or page not in ITEM_PAGES:
            return None
        item = opened(home.ref).record.by_ref.get(ref)
        if item is None:
            return None
        url = url_for("changes.of_item", home=home.ref, ref=ref)
        return f"History of {item.title}", url

    @property
    def search_url(self) -> str | None:
        """Address of the search, within a home."""
        home = _home()
        return url_for("search.index", home=home.ref) if home else None

    @property
    def query(self) -> str:
        """What was searched for."""
        return request.args.get("q", "")

    @property
    def undo(self) -> Undo | None:
        """The change that was just made, named in the address by its number."""
        home, number = _home(), request.args.get("done", "")
        if home is None or not number:
            return None
        newest = latest_changes(read(), opened(home.ref).key, 1)
        change = newest[0] if newest else None
        if change is None or str(change.key) != number or change.undoes:
            return None
        url = url_for("changes.undo", home=home.ref)
        return Undo(sentence=change.sentence, url=url, token=change.key)

    @cached_property
    def csrf(self) -> str:
        """The token of this browser's forms."""
        token: str = generate_csrf()
        return token

    @cached_property
    def once(self) -> str:
        """The key of a form of this page: sent twice, it counts once."""
        return secrets.token_hex(8)

    @property
    def changes_url(self) -> str | None:
        """Address of the changes, within a home."""
        home = _home()
        return url_for("changes.index", home=home.ref) if home else None

    @property
    def asked_here(self) -> bool:
        """Whether this is what came back of a form that this address also asks with."""
        if request.method != "POST":
            return False
        address = current_app.create_url_adapter(request)
        return address is not None and "GET" in address.allowed_methods()

    @property
    def homes_url(self) -> str:
        """Address of the list of homes."""
        return url_for("homes.index")

    @property
    def help_url(self) -> str:
        """Address of the help."""
        return url_for("help.index")

    @property
    def glossary_url(self) -> str:
        """Address of the glossary."""
        return url_for("glossary.index")

    def command(self, *words: str) -> str:
        """Return what to type in a terminal to have this program do something."""
        return command_shown(*words)

    @property
    def phones_url(self) -> str | None:
        """Address of the phones, on this computer."""
        return url_for("phones.index") if from_here() else None

    @property
    def copies_url(self) -> str | None:
        """Address of the copies of the record, on this computer."""
        return url_for("copies.index") if from_here() else None

    def static(self, name: str) -> str:
        """Return the address of a static file, new whenever the file is."""
        return _static_url(current_app.static_folder or "", name)


def init_app(app: Flask, config: Config) -> None:
    """Give every template the site."""

    @app.context_processor
    def _site() -> dict[str, Any]:
        return {"site": Site(config)}


def _home() -> Home | None:
    """Return the home of the address, once the view has found it there."""
    return g.home.record.home if "home" in g else None


def _place(label: str, pages: tuple[tuple[str, str], ...], home: Home) -> Place:
    links = tuple(
        (name, url_for(endpoint, home=home.ref), _is_here(endpoint))
        for name, endpoint in pages
    )
    current = any(here for _, _, here in links)
    shown = links if len(links) > 1 else ()
    return Place(label=label, url=links[0][1], current=current, links=shown)


def _is_here(endpoint: str) -> bool:
    """A page is in the place of its own list; forms to the list of their sort."""
    here = (request.endpoint or "").partition(".")[0]
    if here == "items":
        here = (request.view_args or {}).get("plural", "")
        here = {"devices": "boards", "ties": "points", "controls": "points"}.get(
            here, here
        )
    return endpoint.partition(".")[0] == IN_PLACE_OF.get(here, here)


@cache
def _static_url(folder: str, name: str) -> str:
    file = Path(folder) / name
    stamp = int(file.stat().st_mtime) if file.is_file() else 0
    return url_for("static", filename=name, v=stamp)
