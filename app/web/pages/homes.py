"""Homes: the list, a new one, one home at a glance, its facts, and putting it away."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any

from flask import Blueprint, current_app, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from sqlalchemy import Connection

from app.config import Config
from app.domain.days import in_words
from app.domain.faults import faults
from app.domain.mpan import area
from app.domain.progress import Progress, progress
from app.domain.record import Home, Item, Record, Source, specs
from app.domain.reminders import dues
from app.domain.reported import home_as_reported
from app.errors import InvalidError
from app.services.homes import (
    OpenHome,
    add_home,
    bring_back,
    digest,
    free_home_ref,
    put_away,
    save,
)
from app.services.portfolio import gone_after
from app.store.copies import copies_in, last_good
from app.store.homes import all_homes, deleted_homes
from app.store.settings import set_home_sent_as
from app.web.forms import (
    Difference,
    ItemForm,
    defaults_of,
    differences,
    home_made,
    sent_once,
    values_of,
)
from app.web.home_bar import HomeBar, home_bar
from app.web.paired import from_here
from app.web.papers import today
from app.web.remarked import counts, remarked
from app.web.session import change, opened, opened_to_change, read
from app.web.standings import standing_of_home
from app.web.words import Facts, facts_of, minute, within

bp = Blueprint("homes", __name__)

EMPTY = Record(home=Home(ref="new", name="New"))
# What a new home is asked; the rest of its facts can wait.
PAGE = 20
FIRST_QUESTIONS = ("name", "nation", "dwelling", "tenure")


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeRow:
    """A home in the list.

    Attributes:
        name: Its name.
        url: Its address.
        next: The one thing most worth doing next, and its address.
        says: What waits there, a sentence each.
    """

    name: str
    url: str
    next: tuple[str, str]
    says: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The list of homes.

    Attributes:
        title: Heading.
        rows: The homes of this page of the list.
        last_copy: When the last good copy was made; empty where nothing is said.
        more: Address of the next page of the list; empty for the last.
        archived: Homes that were put aside: name and address.
        deleted: Homes that can be brought back: name, reference, until when.
        bar: What was just done to a home; None where nothing was.
    """

    title: str
    rows: tuple[HomeRow, ...]
    last_copy: str
    more: str
    archived: tuple[tuple[str, str], ...]
    deleted: tuple[tuple[str, str, str], ...]
    bar: HomeBar | None


@dataclass(frozen=True, slots=True, kw_only=True)
class HomePage:
    """One home at a glance.

    Attributes:
        title: Its name.
        progress: What is known, what is not, and the next thing worth doing.
        next_url: Address of that next thing.
        facts: Its own facts, label and words.
        supply: Its supply facts, label and words.
        edit: Address of the form of its facts.
        delete: Address where deleting is asked about.
        wrong: How many faults of the record cannot be true as written.
        remarks: How many remarks there are of each rank; empty for none.
        archived: Whether it was put aside.
    """

    title: str
    progress: Progress
    next_url: str
    facts: Facts
    supply: Facts
    edit: str
    delete: str
    wrong: int
    remarks: str
    archived: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FormPage:
    """The form of a home.

    Attributes:
        title: Heading.
        form: The form.
        names: Fields shown, in order.
        back: Address to go back to.
        differences: For a stale save: what was changed meanwhile.
    """

    title: str
    form: ItemForm
    names: tuple[str, ...]
    back: str
    differences: tuple[Difference, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DeletePage:
    """A page that asks before a home is put away."""

    title: str
    back: str


@bp.get("/")
def start() -> ResponseReturnValue:
    """Go to the one home there is, else to the list."""
    homes = all_homes(read())
    if len(homes) == 1:
        return redirect(url_for("homes.show", home=homes[0].ref))
    return redirect(url_for("homes.index"))


@bp.get("/homes/")
def index() -> ResponseReturnValue:
    """List the homes."""
    connection = read()
    every = all_homes(connection)
    first = min(max(request.args.get("first", 0, type=int), 0), len(every))
    after = first + PAGE
    page = IndexPage(
        title="Homes",
        rows=tuple(_home_row(home) for home in every[first:after]),
        last_copy=_last_copy() if every else "",
        more=url_for(".index", first=after) if after < len(every) else "",
        archived=tuple(
            (home.name, url_for(".show", home=home.ref))
            for home in all_homes(connection, archived=True)
        ),
        deleted=tuple(
            (home.name, home.ref, in_words(gone_after(home.at).date()))
            for home in deleted_homes(connection)
        ),
        bar=home_bar(connection),
    )
    return render_template("pages/homes/index.html", page=page)


@bp.get("/homes/new")
def new() -> ResponseReturnValue:
    """Show the few questions that a new home begins with."""
    return _show_form(ItemForm(Home, EMPTY, defaults_of(Home, ())), None)


@bp.post("/homes/new")
def create() -> ResponseReturnValue:
    """Add a home, and the network that feeds it."""
    with change() as connection:
        if made := home_made(connection):
            return redirect(url_for(".show", home=made), 303)
        ref = free_home_ref(connection, ref_from(request.form.get("name", "")))
        form = ItemForm(Home, EMPTY, defaults_of(Home, (("ref", ref),)))
        form.form.ref.data = ref
        if form.valid():
            home = form.item()
            mains = Source(ref="S1", kind="network", name="The network in the street")
            add_home(connection, EMPTY.having(home=home, sources=(mains,)))
            set_home_sent_as(connection, sent_once(), ref)
            return redirect(url_for(".show", home=ref), 303)
    return _show_form(form, None), 422


@bp.get("/homes/<home>/")
def show(home: str) -> ResponseReturnValue:
    """Show one home at a glance."""
    record = opened(home).record
    found = faults(record, today())
    known = progress(record, found, dues(record, today()))
    page = HomePage(
        title=record.home.name,
        progress=known,
        next_url=_next_url(home, known),
        facts=_facts(record, supply=False),
        supply=_facts(record, supply=True),
        edit=url_for(".edit", home=home),
        delete=url_for(".delete", home=home),
        wrong=sum(fault.wrong for fault in found),
        remarks=counts(remarked(home)),
        archived=home in {h.ref for h in all_homes(read(), archived=True)},
    )
    return render_template("pages/homes/show.html", page=page)


@bp.get("/homes/<home>/edit")
def edit(home: str) -> ResponseReturnValue:
    """Show the form of a home's facts."""
    record = opened(home).record
    form = ItemForm(Home, record, values_of(record.home), mark=digest(record.home))
    return _show_form(form, record)


@bp.post("/homes/<home>/edit")
def update(home: str) -> ResponseReturnValue:
    """Change a home's facts."""
    status = 422
    changed: tuple[Difference, ...] = ()
    with change() as connection:
        start = opened_to_change(connection, home)
        old = start.record.home
        form = ItemForm(Home, start.record, values_of(old))
        if form.valid():
            item = form.item()
            if form.form.mark.data == digest(old) or item == old:
                done = _save_home(connection, start, form, item)
                if not form.form.errors:
                    return redirect(url_for(".show", home=item.ref, done=done), 303)
            else:
                status, changed = 409, differences(start.record, form, old)
                form.form.mark.data = digest(old)
    return _show_form(form, start.record, changed), status


@bp.get("/homes/<home>/delete")
def delete(home: str) -> ResponseReturnValue:
    """Ask before a home is deleted."""
    name = opened(home).record.home.name
    page = DeletePage(title=f"Delete {name}?", back=url_for(".show", home=home))
    return render_template("pages/homes/delete.html", page=page)


@bp.post("/homes/<home>/delete")
def destroy(home: str) -> ResponseReturnValue:
    """Delete a home; it can be brought back."""
    with change() as connection:
        put_away(connection, opened_to_change(connection, home), datetime.now(UTC))
    return redirect(url_for(".index", away=home), 303)


@bp.post("/homes/bring-back")
def restore() -> ResponseReturnValue:
    """Bring a deleted home back."""
    ref = request.form.get("token", "")
    with change() as connection:
        bring_back(connection, ref)
    return redirect(url_for(".show", home=ref), 303)


def _home_row(home: Home) -> HomeRow:
    found = standing_of_home(home.ref)
    waiting = len(found.waiting)
    said = [f"{number} to {word.lower()}" for word, number in found.worst.items()]
    if waiting:
        said.append("One thing to do now" if waiting == 1 else f"{waiting} to do now")
    return HomeRow(
        name=home.name,
        url=url_for(".show", home=home.ref),
        next=(found.next.next_step, _next_url(home.ref, found.next)),
        says=(*said, f"Inspection: {within(found.inspection.says)}"),
    )


def _next_url(home: str, known: Progress) -> str:
    arguments: dict[str, Any] = dict(known.next_arguments)
    return url_for(known.next_endpoint, home=home, **arguments)


def _save_home(
    connection: Connection, start: OpenHome, form: ItemForm, item: Item
) -> int | None:
    try:
        record = start.record.having(home=item)
        return save(connection, start, record, "Changed the facts of the home.")
    except InvalidError as error:
        form.refuse("ref", error.sentence)
        return None


def _last_copy() -> str:
    """Say when the last good copy was made, to whom can look after it."""
    config: Config = current_app.extensions["config"]
    if not from_here() or config.demo:
        return ""
    copy = last_good(copies_in(config.backups), datetime.now(UTC))
    if copy is None:
        return "There is no good copy of the record yet."
    return f"Your last good copy is from {minute(copy.made_at)}."


def _facts(record: Record, *, supply: bool) -> Facts:
    skip = tuple(s.name for s in specs(Home) if bool(s.group) != supply)
    home = home_as_reported(record, today())
    facts = facts_of(home, record, skip=(*skip, "name"))
    if not (supply and record.home.mpan):
        return facts
    by_mpan = ("Licence area by the MPAN", area(record.home.mpan))
    return replace(facts, known=(*facts.known, by_mpan))


def ref_from(name: str) -> str:
    """Return a reference made from a name: lower case, hyphens for the rest."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:28].strip("-")
    return plain or "home"


def _show_form(
    form: ItemForm, record: Record | None, changed: Iterable[Difference] = ()
) -> str:
    names = tuple(form.shown) if record else FIRST_QUESTIONS
    page = FormPage(
        title="Change the facts of the home" if record else "A new home",
        form=form,
        names=names,
        back=url_for(".show", home=record.home.ref) if record else url_for(".index"),
        differences=tuple(changed),
    )
    return render_template("pages/homes/form.html", page=page)
