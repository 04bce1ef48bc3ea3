"""The intake: every item from the street to the boards, whose it is, the earthing."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.ask import boundaries, boundaries_unknown
from app.domain.chain import chains
from app.domain.kinds import INTAKE_KINDS
from app.domain.network import Network
from app.domain.record import IntakeItem, Record, fields_beside
from app.domain.record.choices import OWNERS
from app.drawing.street import draw_street
from app.web.addresses import delete_url, edit_url, links
from app.web.danger import Danger, danger_of
from app.web.files_view import FilesView, files_of
from app.web.results_view import ResultsView, results_at
from app.web.session import opened, supply
from app.web.words import Facts, facts_of

bp = Blueprint("intake", __name__, url_prefix="/homes/<home>/intake")


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemView:
    """One item of the intake as the page shows it.

    Attributes:
        ref: Its reference, and its anchor on the page.
        title: What it is called.
        owner: Code of whose it is.
        owner_word: Whose it is, in words.
        who_opens: Who may open or alter it.
        facts: What is recorded of it, and known.
        files: Its photographs and papers.
        results: What was measured at it.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        move: Address that moves it up or down.
    """

    ref: str
    title: str
    owner: str
    owner_word: str
    who_opens: str
    facts: Facts
    files: FilesView
    results: ResultsView
    edit: str
    delete: str
    move: str


@dataclass(frozen=True, slots=True, kw_only=True)
class IntakePage:
    """The intake.

    Attributes:
        title: Heading.
        answer: Where the owner changes, in sentences.
        drawing: From the street to the boards, as SVG.
        items: Every item.
        new: Address where the kind of a new item is asked.
        danger: The warning signs that cannot wait, and whom to call.
        call: Address of whom to call, with everything else.
    """

    title: str
    answer: tuple[str, ...]
    drawing: str
    items: tuple[ItemView, ...]
    new: str
    danger: Danger
    call: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the intake."""
    record = opened(home).record
    page = IntakePage(
        title="Intake",
        answer=_answer(supply(home)),
        drawing=draw_street(record, links(record)),
        items=tuple(_item(record, item) for item in record.intake),
        new=url_for("items.new", home=home, plural="intake"),
        danger=danger_of(record.home),
        call=url_for("call.index", home=home),
    )
    return render_template("pages/intake.html", page=page)


def _answer(net: Network) -> tuple[str, ...]:
    """Say where the owner changes along the chains of the intake, or may change."""
    ends = [item.ref for item in net.record.intake if _carries(item)]
    found = [chains(net, ref) for ref in ends]
    known = dict.fromkeys(pair for line in found for pair in boundaries(line))
    open_ones = dict.fromkeys(p for line in found for p in boundaries_unknown(line))
    changes = "it changes hands."
    may = "it is not known whether it changes hands."
    return (
        *(_between(net.record, pair, changes) for pair in known),
        *(_between(net.record, pair, may) for pair in open_ones),
    )


def _between(record: Record, pair: tuple[str, str], what: str) -> str:
    return f"Between {_said(record, pair[0])} and {_said(record, pair[1])} {what}"


def _carries(item: IntakeItem) -> bool:
    return INTAKE_KINDS[item.kind].carries_supply


def _said(record: Record, ref: str) -> str:
    item = record.by_ref[ref]
    owner = OWNERS[getattr(item, "owner", "unknown")].lower()
    return f"{item.title} ({owner})"


def _who_opens(item: IntakeItem) -> str:
    """Who may open an item: what is usual for its kind holds for its usual owner."""
    kind = INTAKE_KINDS[item.kind]
    if item.owner in (kind.usual_owner, "unknown"):
        return kind.who_opens
    if item.owner == "consumer":
        return "An electrician, with the supply off before it."
    return "Whoever owns it, or someone whom they send. Not you."


def _item(record: Record, item: IntakeItem) -> ItemView:
    home = record.home.ref
    skip = ("kind", "name", "owner", *fields_beside(item))
    return ItemView(
        ref=item.ref,
        title=item.title,
        owner=item.owner,
        owner_word=OWNERS[item.owner],
        who_opens=_who_opens(item),
        facts=facts_of(item, record, skip=skip),
        files=files_of(record, item),
        results=results_at(record, item),
        edit=edit_url(home, item),
        delete=delete_url(home, item),
        move=url_for("items.move", home=home, plural="intake", ref=item.ref),
    )
