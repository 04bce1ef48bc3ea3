"""Remarks: by what one action settles, each kind with its text, set aside or not."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from pydantic import ValidationError
from wtforms import HiddenField, TextAreaField

from app.domain.record import LONG, Record
from app.domain.remarks import GROUPS, RANKS, UNITS, Remark, Unit
from app.errors import NotFoundError
from app.services.homes import save
from app.services.remarks import brought_back, remarks_of, set_aside
from app.web.addresses import Link, with_done
from app.web.fields import tidy
from app.web.papers import today
from app.web.remarked import (
    OutcomeView,
    RowView,
    counts,
    needed,
    outcome_view,
    remarked,
    rows_of,
    standing,
)
from app.web.session import change, opened, opened_to_change

bp = Blueprint("remarks", __name__, url_prefix="/homes/<home>/remarks")


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupView:
    """Remarks that one action settles.

    Attributes:
        action: The action, in words.
        ranks: Code and words of each rank among them, and how many kinds have it.
        rows: The remarks, one row a kind.
        open: Whether they are shown at once: something in them cannot wait.
    """

    action: str
    ranks: tuple[tuple[str, str, int], ...]
    rows: tuple[RowView, ...]
    open: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """The remarks on a home.

    Attributes:
        title: Heading.
        answer: How many there are, in one sentence.
        groups: What one action settles, with its remarks, the worst first.
        needs: What is missing, and the things that lack it.
        open: How many kinds of remark cannot be told yet.
        aside: Remarks that are set aside.
        kinds: Every kind of remark that is looked for: title and address.
    """

    title: str
    answer: str
    groups: tuple[GroupView, ...]
    needs: tuple[tuple[str, tuple[Link, ...]], ...]
    open: int
    aside: tuple[RowView, ...]
    kinds: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KindPage:
    """One kind of remark: its text, and what it finds in this home.

    Attributes:
        title: Its title.
        rank: Code of its rank.
        word: The rank in words.
        settles: The one action that settles it.
        sections: Heading and text of each part of its text.
        found: What it finds.
        cannot: What it cannot tell.
        aside: What was set aside.
        back: Address of the list.
        bring_back: Address where one is brought back.
    """

    title: str
    rank: str
    word: str
    settles: str
    sections: tuple[tuple[str, str], ...]
    found: tuple[OutcomeView, ...]
    cannot: tuple[OutcomeView, ...]
    aside: tuple[OutcomeView, ...]
    back: str
    bring_back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AsidePage:
    """The form by which a remark is set aside.

    Attributes:
        title: Heading.
        sentence: What was found.
        form: The form.
        back: Address to go back to.
        changed: Whether what was found changed since the form was shown.
    """

    title: str
    sentence: str
    form: AsideForm
    back: str
    changed: bool = False


class AsideForm(FlaskForm):  # type: ignore[misc]
    """Why a remark is set aside, and a mark of how it stood."""

    reason = TextAreaField(
        "Why you set it aside",
        description="Such as: seen by an electrician in 2021, who left it so.",
    )
    facts = HiddenField()

    def said(self) -> str:
        """Return the reason, tidied."""
        return tidy(self.reason.data or "")

    def refuse(self, sentence: str) -> None:
        """Put an error beside the reason."""
        self.reason.errors = [*self.reason.errors, sentence]


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the remarks, by what one action settles."""
    record, found = opened(home).record, remarked(home)
    here = standing(found)
    page = IndexPage(
        title="Remarks",
        answer=_answer(counts(found)),
        groups=_groups(home, here),
        needs=needed(record, found),
        open=len({r.code for r in found if r.outcome == "cannot_tell"}),
        aside=rows_of(home, (r for r in found if r.aside == "set")),
        kinds=tuple(
            (unit.title, url_for(".show", home=home, code=code))
            for code, unit in sorted(UNITS.items(), key=lambda pair: pair[1].title)
        ),
    )
    return render_template("pages/remarks/index.html", page=page)


@bp.get("/<code>/")
def show(home: str, code: str) -> ResponseReturnValue:
    """Show one kind of remark, and what it finds here."""
    record, unit = opened(home).record, _unit(code)
    own = [remark for remark in remarked(home) if remark.code == code]
    views = {remark: outcome_view(record, remark) for remark in own}
    told = [r for r in own if r.aside != "set"]
    page = KindPage(
        title=unit.title,
        rank=unit.kind.rank,
        word=RANKS[unit.kind.rank],
        settles=GROUPS[unit.kind.group],
        sections=tuple(unit.sections.items()),
        found=tuple(views[r] for r in told if r.outcome == "remark"),
        cannot=tuple(views[r] for r in told if r.outcome != "remark"),
        aside=tuple(views[r] for r in own if r.aside == "set"),
        back=url_for(".index", home=home),
        bring_back=url_for(".bring_back", home=home, code=code),
    )
    return render_template("pages/remarks/show.html", page=page)


@bp.get("/<code>/<subject>/aside")
def aside(home: str, code: str, subject: str) -> ResponseReturnValue:
    """Ask why a remark is set aside."""
    remark = _find(remarked(home), code, subject)
    form = AsideForm(facts=remark.facts)
    return render_template("pages/remarks/aside.html", page=_form(home, remark, form))


@bp.post("/<code>/<subject>/aside")
def put_aside(home: str, code: str, subject: str) -> ResponseReturnValue:
    """Set a remark aside, with the reason and the day."""
    status, form = 422, AsideForm()
    with change() as connection:
        start = opened_to_change(connection, home)
        remark = _find(remarks_of(start.record, today()), code, subject)
        if form.facts.data != remark.facts:
            status, form.facts.data = 409, remark.facts
        elif (record := _with_aside(start.record, remark, form)) is not None:
            sentence = f"Set aside: {remark.title}."
            done = save(connection, start, record, sentence)
            return redirect(
                with_done(url_for(".show", home=home, code=code), done), 303
            )
    page = _form(home, remark, form, changed=status == 409)
    return render_template("pages/remarks/aside.html", page=page), status


@bp.post("/<code>/back")
def bring_back(home: str, code: str) -> ResponseReturnValue:
    """Bring back a remark that was set aside."""
    unit = _unit(code)
    with change() as connection:
        start = opened_to_change(connection, home)
        ref = request.form.get("ref", "")
        if not any(a.ref == ref and a.remark == code for a in start.record.asides):
            raise NotFoundError("This remark is not set aside; perhaps it was undone.")
        record = brought_back(start.record, ref)
        done = save(connection, start, record, f"Brought back: {unit.title}.")
    return redirect(with_done(url_for(".show", home=home, code=code), done), 303)


def _answer(said: str) -> str:
    if not said:
        return "Nothing to remark on so far, from what is recorded."
    return f"From the record alone: {said}."


def _groups(home: str, found: tuple[Remark, ...]) -> tuple[GroupView, ...]:
    """The group with the worst remark comes first, then the order of the groups."""
    groups: dict[str, list[Remark]] = {}
    for remark in found:
        groups.setdefault(remark.group, []).append(remark)
    ranks, order = list(RANKS), list(GROUPS)

    def worst_first(group: str) -> tuple[int, int]:
        worst = min(ranks.index(r.rank) for r in groups[group])  # type: ignore[arg-type]
        return worst, order.index(group)

    return tuple(
        _group(GROUPS[group], rows_of(home, groups[group]))
        for group in sorted(groups, key=worst_first)
    )


def _group(action: str, rows: tuple[RowView, ...]) -> GroupView:
    ranks = [row.rank for row in rows]
    return GroupView(
        action=action,
        ranks=tuple((r, RANKS[r], ranks.count(r)) for r in RANKS if r in ranks),
        rows=rows,
        open="call" in ranks,
    )


def _unit(code: str) -> Unit:
    if code not in UNITS:
        raise NotFoundError(f"There is no remark “{code}”.")
    return UNITS[code]


def _find(found: Iterable[Remark], code: str, subject: str) -> Remark:
    for remark in found:
        if remark.code == code and remark.about[0] == subject:
            return remark
    raise NotFoundError("There is no such remark on this home now.")


def _form(
    home: str, remark: Remark, form: AsideForm, *, changed: bool = False
) -> AsidePage:
    return AsidePage(
        title=f"Set aside: {remark.title}",
        sentence=remark.sentence,
        form=form,
        back=url_for(".show", home=home, code=remark.code),
        changed=changed,
    )


def _with_aside(record: Record, remark: Remark, form: AsideForm) -> Record | None:
    """Return the record with the remark set aside; None if the reason is refused."""
    reason = form.said()
    if not form.validate() or not reason:
        form.refuse("Enter why, in a few words, such as: seen by an electrician.")
        return None
    try:
        return set_aside(record, remark, reason, today())
    except ValidationError:
        form.refuse(f"Use plain characters, {LONG} at most.")
        return None
