"""Points: the list, and one point: what feeds it, and what protects it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.answers import PointAnswer, TieAnswer
from app.domain.ask import ask_point
from app.domain.conditions import bad_ones, seen_as
from app.domain.isolation.own import live_because
from app.domain.isolation.rounds import of_point
from app.domain.kinds import KIND_HELP
from app.domain.network import Network
from app.domain.record import Control, Point, Tie
from app.domain.record.choices import GRADES, TIE_ROLES
from app.web.addresses import Link, delete_url, edit_url, item_url
from app.web.chains import ChainView, chain_views
from app.web.files_view import FilesView, files_of
from app.web.lists import ListView, list_view
from app.web.point_rows import POINT_HEADS, point_rows
from app.web.protection import cautions, protection_rows, sentence
from app.web.session import needed, supply
from app.web.words import Facts, day, facts_of

bp = Blueprint("points", __name__, url_prefix="/homes/<home>/points")


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of points.

    Attributes:
        title: Heading.
        list: The points, filtered and sorted as asked.
        new: Address of the form of a new point.
    """

    title: str
    list: ListView
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TieView:
    """A tie as a page shows it.

    Attributes:
        role: What it is, in words.
        to: What the point is tied to, with its address.
        grade: Code of how it is known.
        known: How it is known, in words.
        when: When and by whom.
        doubt: Work done since, with its address, if there is any.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    role: str
    to: Link
    grade: str
    known: str
    when: str
    doubt: Link | None
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PointPage:
    """One point.

    Attributes:
        title: What it is called.
        answer: What feeds it, in one sentence.
        cautions: What a hurried person must not miss.
        room: Its room, with its address.
        protection: What guards it, label and words.
        chains: From each source to it.
        neutral: The neutral's chains, where they differ.
        ties: What it is tied to.
        new_tie: Address of the form of a tie.
        controls: What switches it: label, address.
        new_control: Address of the form of a control.
        odd: Why it is an odd one out, if it is.
        unknowns: What the record does not say.
        facts: What is recorded of it.
        help: What its kind is.
        files: Its photographs and papers.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    title: str
    answer: str
    cautions: tuple[str, ...]
    room: Link | None
    protection: tuple[tuple[str, str | None], ...]
    chains: tuple[ChainView, ...]
    neutral: tuple[ChainView, ...]
    ties: tuple[TieView, ...]
    new_tie: str
    controls: tuple[Link, ...]
    new_control: str
    odd: str | None
    unknowns: tuple[str, ...]
    facts: Facts
    help: str
    files: FilesView
    edit: str
    delete: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the points."""
    net = supply(home)
    rows = point_rows(net, net.record.points, rooms=True)
    page = IndexPage(
        title="Points",
        list=list_view(POINT_HEADS, rows),
        new=url_for("items.new", home=home, plural="points"),
    )
    return render_template("pages/points/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show what feeds a point, whose each piece is, and what protects it."""
    net = supply(home)
    point = needed(net.record, Point, ref)
    return render_template("pages/points/show.html", page=_page(net, point))


def _page(net: Network, point: Point) -> PointPage:
    record, home = net.record, net.record.home.ref
    answer = ask_point(net, point)
    new: dict[str, Any] = {"home": home, "back": point.ref}
    return PointPage(
        title=point.title,
        answer=sentence(answer),
        cautions=(*_seen(net, point), *cautions(answer)),
        room=_room(net, answer),
        protection=protection_rows(answer),
        chains=chain_views(record, answer.chains),
        neutral=chain_views(record, answer.neutral_chains, "neutral"),
        ties=tuple(_tie(net, tie) for tie in answer.ties),
        new_tie=url_for("items.new", plural="ties", point=point.ref, **new),
        controls=_controls(net, point),
        new_control=url_for(
            "items.new", plural="controls", controlled=point.ref, **new
        ),
        odd=answer.odd,
        unknowns=answer.unknowns,
        facts=facts_of(point, record, skip=("name", "kind", "room")),
        help=KIND_HELP["point"][point.kind],
        files=files_of(record, point),
        edit=edit_url(home, point),
        delete=delete_url(home, point),
    )


def _seen(net: Network, point: Point) -> tuple[str, ...]:
    """Return what was seen of it that comes before what the record says."""
    bad = [f"It was seen {seen_as(p)}. Do not use or touch it: leave it and call."
           for p in bad_ones([point])]  # fmt: skip
    kept = (why for _, why in live_because(net, point.ref))
    return (*bad, *of_point(net, point), *kept)


def _room(net: Network, answer: PointAnswer) -> Link | None:
    if answer.room is None:
        return None
    room = net.record.by_ref[answer.room.ref]
    return answer.room.title, item_url(answer.home, room)


def _tie(net: Network, tie: TieAnswer) -> TieView:
    record = net.record
    item = record.by_ref[tie.ref]
    to = record.by_ref[tie.tied_to.ref]
    home = record.home.ref
    when = [day(tie.seen_on)] if tie.seen_on else []
    when += [tie.seen_by] if tie.seen_by else []
    assert isinstance(item, Tie)  # noqa: S101
    return TieView(
        role=TIE_ROLES[tie.role],
        to=(f"{to.noun}: {to.title}", item_url(home, to)),
        grade=tie.grade,
        known=GRADES[tie.grade],
        when=", ".join(when),
        doubt=_doubt(net, item),
        edit=f"{edit_url(home, item)}?back={tie.point}",
        delete=delete_url(home, item),
    )


def _doubt(net: Network, tie: Tie) -> Link | None:
    work = net.aged.get(tie.ref)
    return (work.title, item_url(net.record.home.ref, work)) if work else None


def _controls(net: Network, point: Point) -> tuple[Link, ...]:
    home = net.record.home.ref
    found = []
    for control in net.record.of(Control):
        if control.controlled == point.ref:
            other = net.record.by_ref[control.controller]
            found.append((f"Switched by {other.title}", edit_url(home, control)))
        elif control.controller == point.ref:
            other = net.record.by_ref[control.controlled]
            found.append((f"Switches {other.title}", edit_url(home, control)))
    return tuple(found)
