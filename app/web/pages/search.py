"""Search from anywhere: a word, and the things of the home that hold it."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, request
from flask.typing import ResponseReturnValue

from app.domain.network import Network
from app.domain.record import Point
from app.domain.search import find_items
from app.web.addresses import item_url
from app.web.point_rows import point_rows
from app.web.session import supply

bp = Blueprint("search", __name__, url_prefix="/homes/<home>/search")
MOST_FOUND = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One thing that was found.

    Attributes:
        title: What it is called.
        noun: What sort of thing it is.
        where: Its room, circuit and way, or where it stands.
        url: Its address.
    """

    title: str
    noun: str
    where: str
    url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchPage:
    """What was found.

    Attributes:
        title: Heading.
        query: What was searched for.
        found: What was found, the nearest first.
        more: How many more there are.
    """

    title: str
    query: str
    found: tuple[Found, ...]
    more: int


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show what holds the words searched for."""
    net = supply(home)
    query = request.args.get("q", "").strip()[:200]
    items = find_items(net.record, query)
    page = SearchPage(
        title=f"Found for “{query}”" if query else "Search",
        query=query,
        found=tuple(
            Found(
                title=f"{item.title} ({item.ref})",
                noun=item.noun,
                where=_where(net, item),
                url=item_url(home, item),
            )
            for item in items[:MOST_FOUND]
        ),
        more=max(len(items) - MOST_FOUND, 0),
    )
    return render_template("pages/search.html", page=page)


def _where(net: Network, item: object) -> str:
    """A point shows its room, its circuit and its way at once."""
    if isinstance(item, Point):
        row = point_rows(net, [item], rooms=True)[0]
        known = [str(cell) for cell in row[1:4] if cell]
        return ", ".join(known) or "nothing recorded"
    place = net.record.by_ref.get(
        getattr(item, "board", None) or getattr(item, "room", None) or ""
    )
    return place.title if place else ""
