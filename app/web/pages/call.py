"""Whom to call: by warning sign, by what is wanted, by whose each item is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.call import (
    NEEDS,
    SIGNS,
    URGENCIES,
    Contact,
    Sign,
    contacts,
    signs_recorded,
    whose_of,
)
from app.domain.call.signs import Who
from app.domain.record import Record
from app.web.danger import Danger, danger_of
from app.web.session import opened

bp = Blueprint("call", __name__, url_prefix="/homes/<home>/call")
HEADS = ("Whose it is", "Whom to call", "Items")
People = Mapping[Who, tuple[Contact, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """One sign, or one thing wanted.

    Attributes:
        code: Its anchor; empty if nothing leads to it.
        title: What is seen, or wanted.
        calls: Whom to call.
        say: What to say.
        meanwhile: What to do until then; may be empty.
        leave: What not to do; may be empty.
        basis: Where this stands.
    """

    code: str
    title: str
    calls: tuple[Contact, ...]
    say: str
    meanwhile: str
    leave: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CallPage:
    """Whom to call.

    Attributes:
        title: Heading.
        danger: What cannot wait.
        recorded: Signs that stand in the record: item, what is seen, anchor.
        signs: How soon, in words, and the signs.
        needs: What may be wanted else.
        heads: Heads of the items.
        items: Whose they are, whom to call, the items.
        edit: Address where the number of the network is written down.
        own: Whether a number of the network is written down.
    """

    title: str
    danger: Danger
    recorded: tuple[tuple[str, str, str], ...]
    signs: tuple[tuple[str, tuple[Advice, ...]], ...]
    needs: tuple[Advice, ...]
    heads: tuple[str, ...]
    items: tuple[tuple[str, str, str], ...]
    edit: str
    own: bool


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show whom to call."""
    record = opened(home).record
    people = contacts(record.home)
    page = CallPage(
        title="Whom to call",
        danger=danger_of(record.home),
        recorded=_recorded(record),
        signs=_signs(people),
        needs=_needs(people),
        heads=HEADS,
        items=_items(record, people),
        edit=url_for("homes.edit", home=home, _anchor="network_phone"),
        own=bool(record.home.network_phone),
    )
    return render_template("pages/call/index.html", page=page)


def _people(people: People, who: Iterable[Who]) -> tuple[Contact, ...]:
    return tuple(contact for each in who for contact in people[each])


def _names(found: tuple[Contact, ...]) -> str:
    said = (f"{c.name}, {c.number}" if c.number else c.name for c in found)
    return "; ".join(said)


def _items(record: Record, people: People) -> tuple[tuple[str, str, str], ...]:
    """Return the items of the intake by whose they are."""
    found: dict[tuple[str, tuple[Who, ...]], list[str]] = {}
    for whose in whose_of(record):
        found.setdefault((whose.owner, whose.who), []).append(whose.title)
    return tuple(
        (owner, _names(_people(people, who)), ", ".join(titles))
        for (owner, who), titles in found.items()
    )


def _recorded(record: Record) -> tuple[tuple[str, str, str], ...]:
    return tuple(
        (f"{item.title} ({item.ref})", sign.seen, sign.code)
        for item, sign in signs_recorded(record)
    )


def _signs(people: People) -> tuple[tuple[str, tuple[Advice, ...]], ...]:
    return tuple(
        (words, tuple(_sign(s, people) for s in SIGNS if s.urgency == code))
        for code, words in URGENCIES.items()
    )


def _sign(sign: Sign, people: People) -> Advice:
    return Advice(
        code=sign.code,
        title=sign.seen,
        calls=_people(people, sign.who),
        say=sign.say,
        meanwhile=sign.meanwhile,
        leave=sign.leave,
        basis=sign.basis,
    )


def _needs(people: People) -> tuple[Advice, ...]:
    return tuple(
        Advice(
            code="",
            title=need.wanted,
            calls=_people(people, need.who),
            say=need.say,
            meanwhile=need.meanwhile,
            leave="",
            basis=need.basis,
        )
        for need in NEEDS
    )
