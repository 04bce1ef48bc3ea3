"""Corrections that come back: brought in or typed, then taken one by one."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import StringField, TextAreaField
from wtforms.validators import ValidationError

from app.domain.edits import Entry, removal
from app.domain.record import SHORT, Record
from app.domain.replies import (
    OTHER,
    Correction,
    circuit_of,
    correction_key,
    key_of,
    name_of,
)
from app.domain.told import told
from app.errors import InvalidError, Problem
from app.interchange.reply import MOST_BYTES, read_reply, typed_reply
from app.services.history import when
from app.services.replies import (
    OpenReply,
    accept,
    bring_back,
    open_replies,
    open_reply,
    turn_down,
)
from app.store.replies import throw_away
from app.web.addresses import item_url, with_done
from app.web.fields import DayField, fits, has_come, tidy
from app.web.session import change, opened, opened_to_change, read

FILE = "file-"
bp = Blueprint("replies", __name__, url_prefix="/homes/<home>/corrections")


@dataclass(frozen=True, slots=True, kw_only=True)
class DifferenceView:
    """One difference that is still open.

    Attributes:
        key: What it is known by.
        title: The thing, and its address where there is one.
        what: Whether it is added, removed or changed.
        now: What the record has of it now; for what is said in words.
        sentences: What they say.
        ways: Value and words of each way to take it.
    """

    key: str
    title: tuple[str, str]
    what: str
    now: str
    sentences: tuple[str, ...]
    ways: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReplyPage:
    """One reply beside the record.

    Attributes:
        title: Heading.
        answer: Who says so, and how much is open.
        open: What is still open.
        settle: Address that takes or turns one down.
        away: Address that throws the reply away.
        back: Address of the list.
        refusal: Why the last one was not taken.
    """

    title: str
    answer: str
    open: tuple[DifferenceView, ...]
    settle: str
    away: str
    back: str
    refusal: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The replies of a home, and the ways in.

    Attributes:
        title: Heading.
        replies: Each reply with its address.
        form: The form for what stands on paper.
        source: Who says so, of a record that came back as a file.
        refusal: Why the last one was not taken.
        problems: The reasons, with their places.
    """

    title: str
    replies: tuple[tuple[str, str], ...]
    form: TypedForm
    source: SourceForm
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


class SourceForm(FlaskForm):  # type: ignore[misc]
    """Who says so, and by which paper."""

    by = StringField("Who says so", validators=[fits(SHORT)])
    paper = StringField("Which paper, with its number", validators=[fits(SHORT)])
    dated = DayField("Its date", validators=[has_come])


class TypedForm(SourceForm):
    """What stands on a paper that came back."""

    lines = TextAreaField(
        "What it says, one line a thing",
        description="Such as: D4 feeds the shed, not the garage.",
    )

    def validate_lines(self, field: TextAreaField) -> None:
        """Take some words."""
        if not tidy(field.data or "", lines=True):
            raise ValidationError("Enter at least one line.")

    def exemplify(self, record: Record) -> None:
        """Give an example with a way of this home, if one feeds a circuit."""
        ways = (d.ref for d in record.devices if record.circuits_of(d.ref))
        if ref := next(ways, None):
            self.lines.description = f"Such as: {ref} feeds the shed, not the garage."


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List what came back, and ask for more."""
    return _index(home, TypedForm())


@bp.post("/file")
def take(home: str) -> ResponseReturnValue:
    """Take a reply or a record document that came back."""
    source = SourceForm(prefix=FILE)
    if not source.validate():
        return _index(home, TypedForm(formdata=None), source=source), 422
    try:
        reply, returned = read_reply(_sent(), home)
        if returned is not None:
            reply = reply.model_copy(update=_said(source))
        with change() as connection:
            start = opened_to_change(connection, home)
            key = bring_back(connection, start, reply, returned)
    except InvalidError as error:
        return _index(home, TypedForm(formdata=None), error, source=source), 422
    return redirect(url_for(".show", home=home, key=key), 303)


@bp.post("/typed")
def take_typed(home: str) -> ResponseReturnValue:
    """Take what was typed from a paper."""
    form = TypedForm()
    if not form.validate():
        return _index(home, form), 422
    try:
        reply = typed_reply(
            tidy(form.lines.data or "", lines=True),
            tidy(form.by.data or ""),
            tidy(form.paper.data or ""),
            form.dated.data,
            opened(home).record.by_ref,
        )
    except InvalidError as error:
        return _index(home, form, error), 422
    with change() as connection:
        key = bring_back(connection, opened_to_change(connection, home), reply, None)
    return redirect(url_for(".show", home=home, key=key), 303)


@bp.get("/<int:key>")
def show(home: str, key: int) -> ResponseReturnValue:
    """Show what is still open of a reply."""
    return _show(home, open_reply(read(), opened(home), key))


@bp.post("/<int:key>/settle")
def settle(home: str, key: int) -> ResponseReturnValue:
    """Take one difference, or turn it down."""
    which, way = request.form.get("which", ""), request.form.get("way", "")
    try:
        with change() as connection:
            start = opened_to_change(connection, home)
            found = open_reply(connection, start, key)
            if way == "down":
                turn_down(connection, found, which)
                done = None
            else:
                done = accept(connection, start, found, which, way)
    except InvalidError as error:
        found = open_reply(read(), opened(home), key)
        reasons = " ".join(problem.reason for problem in error.problems)
        return _show(home, found, f"{error.sentence} {reasons}".strip()), 422
    return redirect(with_done(url_for(".show", home=home, key=key), done), 303)


@bp.post("/<int:key>/away")
def away(home: str, key: int) -> ResponseReturnValue:
    """Throw a reply away; what was taken from it stays."""
    with change() as connection:
        found = open_reply(connection, opened_to_change(connection, home), key)
        throw_away(connection, found.kept.key)
    return redirect(url_for(".index", home=home), 303)


def _said(source: SourceForm) -> dict[str, object]:
    texts = {n: tidy(source[n].data or "") for n in ("by", "paper")}
    return {**texts, "dated": source.dated.data}


def _sent() -> bytes:
    file = request.files.get("reply")
    if file is None or not file.filename:
        raise InvalidError("Choose a file first.")
    with closing(file):
        sent: bytes = file.read(MOST_BYTES + 1)
    return sent


def _index(
    home: str,
    form: TypedForm,
    error: InvalidError | None = None,
    *,
    source: SourceForm | None = None,
) -> str:
    here = opened(home)
    form.exemplify(here.record)
    found = open_replies(read(), here)
    page = IndexPage(
        title="Corrections",
        replies=tuple(
            (
                f"{when(each.kept.at)}, {each.reply.source}: {each.open} open",
                url_for(".show", home=home, key=each.kept.key),
            )
            for each in found
        ),
        form=form,
        source=source or SourceForm(formdata=None, prefix=FILE),
        refusal=error.sentence if error else "",
        problems=error.problems if error else (),
    )
    return render_template("pages/replies/index.html", page=page)


def _show(home: str, found: OpenReply, refusal: str = "") -> str:
    key = found.kept.key
    number = "Nothing is" if not found.open else f"{found.open} differences are"
    page = ReplyPage(
        title=f"Corrections from {found.reply.source}",
        answer="One difference is open." if found.open == 1 else f"{number} open.",
        open=_views(home, found),
        settle=url_for(".settle", home=home, key=key),
        away=url_for(".away", home=home, key=key),
        back=url_for(".index", home=home),
        refusal=refusal,
    )
    return render_template("pages/replies/show.html", page=page)


def _views(home: str, found: OpenReply) -> tuple[DifferenceView, ...]:
    record, views = opened(home).record, []
    for entry in found.entries:
        for each in told([entry], record)[:1]:
            item = record.by_ref.get(each.ref)
            views.append(
                DifferenceView(
                    key=key_of(entry),
                    title=(each.name, item_url(home, item) if item else ""),
                    what=each.what.capitalize(),
                    now="",
                    sentences=(*each.sentences, *_goes_along(record, entry)),
                    ways=(("take", "Accept"),),
                )
            )
    if found.other:
        views.append(
            DifferenceView(
                key=OTHER,
                title=("Said beside that", ""),
                what="Said in words",
                now="",
                sentences=(found.reply.other,),
                ways=(("note", "Add to the home’s notes"),),
            )
        )
    words = (_said_in_words(home, record, said) for said in found.corrections)
    return (*views, *words)


def _goes_along(record: Record, entry: Entry) -> tuple[str, ...]:
    """Say what is deleted with a thing that is."""
    if entry.after is not None or entry.before is None:
        return ()
    going = removal(record, entry.before.ref) - {entry.before.ref}
    names = [record.by_ref[ref].title for ref in sorted(going) if ref in record.by_ref]
    return (f"With it goes: {', '.join(names)}.",) if names else ()


def _said_in_words(home: str, record: Record, said: Correction) -> DifferenceView:
    item, circuit = record.by_ref.get(said.ref), circuit_of(record, said.ref)
    if item is None:
        return DifferenceView(
            key=correction_key(said),
            title=(said.ref, ""),
            what="There is no such reference here",
            now="",
            sentences=(said.feeds,),
            ways=(),
        )
    name = (("name", "Take as the circuit’s name"),)
    return DifferenceView(
        key=correction_key(said),
        title=(f"{item.title} ({item.ref})", item_url(home, item)),
        what="Said in words",
        now=f"Here it feeds: {circuit.title}." if circuit else "",
        sentences=(said.feeds,),
        ways=(
            *(name if circuit and name_of(said) else ()),
            ("note", "Add to the note"),
        ),
    )
