"""Work: planned and done, each with where, by whom, and its paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import RadioField, SelectField, StringField
from wtforms.validators import ValidationError

from app.domain.aging import aged_ties
from app.domain.days import in_words
from app.domain.may_i import job_titled
from app.domain.record import SHORT, Paper, Record, Work
from app.domain.record.choices import PAPER_KINDS, TOLD, WORK_STATES, WORKERS
from app.domain.works import (
    PlanFor,
    day_of_work,
    finished,
    in_turn,
    papers_of,
    plan_for,
)
from app.services.homes import digest, save
from app.web.addresses import Link, delete_url, edit_url, item_url, links_to, with_done
from app.web.fields import DayField, fits, has_come, options, tidy
from app.web.files_view import FilesView, files_of
from app.web.forms import sent_before, sent_once
from app.web.papers import today
from app.web.session import change, needed, opened, opened_to_change
from app.web.words import Facts, facts_of

bp = Blueprint("works", __name__, url_prefix="/homes/<home>/works")
NO_PAPER = "none"
NOWHERE = (
    "It names nothing that it touched, so it puts a doubt on nothing. Write down where."
)
NO_DAY = "Write down its day, or by when it was done: else no later look can lift it."
NOTHING_OFF = PlanFor(refs=(), says=())


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkRow:
    """Work in the list.

    Attributes:
        title: What is done.
        url: Its page.
        state: How far it is, and when, in words.
        where: The things that it touches, in words.
        papers: Its papers, in words.
    """

    title: str
    url: str
    state: str
    where: str
    papers: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorksPage:
    """The work of a home.

    Attributes:
        title: Heading.
        answer: How much is planned and done, in one sentence.
        rows: The work, what is planned first.
        new: Address of the form of work.
    """

    title: str
    answer: str
    rows: tuple[WorkRow, ...]
    new: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkPage:
    """One piece of work.

    Attributes:
        title: What is done.
        line: How it came from plan to paper, step by step: words, and whether reached.
        about: The things that it touches.
        doubt: That it puts ties in doubt, in words; empty if it does not.
        papers: Its papers.
        facts: What else is recorded.
        done: Address of the form that ends it; None when it is done.
        isolate: Address of the plan for switching off; None where nothing is named.
        left_out: What that plan leaves out and why, in sentences.
        files: Its photographs and papers.
        asked: Address of what “May I?” says of it now; None where it was not asked.
        edit: Address of its form.
        delete: Address where deleting is asked about.
        back: Address of the list.
    """

    title: str
    line: tuple[tuple[str, bool], ...]
    about: tuple[Link, ...]
    doubt: str
    papers: tuple[Link, ...]
    facts: Facts
    done: str | None
    isolate: str | None
    left_out: tuple[str, ...]
    files: FilesView
    asked: str | None
    edit: str
    delete: str
    back: str


class DoneForm(FlaskForm):  # type: ignore[misc]
    """When work was done, by whom, and the paper that came of it."""

    done_on = DayField(
        "Done on",
        description="Open, if the day is not known: then no later than today.",
        validators=[has_come],
    )
    done_by = SelectField("By whom", choices=options(WORKERS))
    told = RadioField("Whoever must be told has been told", choices=options(TOLD))
    paper = SelectField(
        "Paper that came of it",
        choices=options({NO_PAPER: "None, or not yet", **PAPER_KINDS}),
    )
    number = StringField("Its number", validators=[fits(SHORT)])
    dated = DayField("Its date", validators=[has_come])

    def validate_paper(self, field: SelectField) -> None:
        """Lose nothing that was typed of a paper."""
        if field.data == NO_PAPER and (self._number() or self.dated.data):
            raise ValidationError(
                "A number or a date of a paper is typed below. Choose what the paper "
                "is, or empty them."
            )

    def of_work(self, work: Work) -> dict[str, Any]:
        """Return what was said of work; without its day it was done by today."""
        said = {name: self[name].data for name in ("done_on", "done_by", "told")}
        latest = None if said["done_on"] else work.done_before or today()
        return {**said, "done_before": latest}

    def of_paper(self) -> Paper | None:
        """Return the paper that was named, if one was."""
        if self.paper.data == NO_PAPER:
            return None
        kind, dated = self.paper.data, self.dated.data
        return Paper(ref="Q", kind=kind, number=self._number(), dated=dated)

    def _number(self) -> str:
        return tidy(self.number.data or "")


@dataclass(frozen=True, slots=True, kw_only=True)
class DonePage:
    """The form that ends work.

    Attributes:
        title: Heading.
        form: The form.
        mark: How the work stood when it was shown.
        changed: Whether it was changed since.
        back: Address of the work.
    """

    title: str
    form: DoneForm
    mark: str
    changed: bool
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List the work, what is planned first."""
    record = opened(home).record
    works = in_turn(record)
    page = WorksPage(
        title="Work",
        answer=_answer(works),
        rows=tuple(_row(record, work) for work in works),
        new=url_for("items.new", home=home, plural=Work.plural),
    )
    return render_template("pages/works/index.html", page=page)


@bp.get("/<ref>/")
def show(home: str, ref: str) -> ResponseReturnValue:
    """Show one piece of work, from plan to paper."""
    record = opened(home).record
    work = needed(record, Work, ref)
    papers = papers_of(record, ref)
    off = NOTHING_OFF if work.state == "done" else plan_for(record, work)
    page = WorkPage(
        title=work.title,
        line=_line(work, papers),
        about=links_to(record, work.about),
        doubt=_doubt(record, work),
        papers=links_to(record, [paper.ref for paper in papers]),
        facts=facts_of(work, record, skip=_said_above(work)),
        done=None if work.state == "done" else url_for(".ask_done", home=home, ref=ref),
        isolate=url_for("isolation.show", home=home, ref=off.refs)
        if off.refs
        else None,
        left_out=off.says,
        files=files_of(record, work),
        asked=_asked(record, work),
        edit=edit_url(home, work),
        delete=delete_url(home, work),
        back=url_for(".index", home=home),
    )
    return render_template("pages/works/show.html", page=page)


@bp.get("/<ref>/done")
def ask_done(home: str, ref: str) -> ResponseReturnValue:
    """Ask when work was done and what paper came of it."""
    work = needed(opened(home).record, Work, ref)
    form = DoneForm(
        done_on=today(), done_by=work.done_by, told=work.told, paper=NO_PAPER
    )
    return _form(home, work, form)


@bp.post("/<ref>/done")
def take_done(home: str, ref: str) -> ResponseReturnValue:
    """Write down that work was done."""
    form, status = DoneForm(), 422
    with change() as connection:
        start = opened_to_change(connection, home)
        work = needed(start.record, Work, ref)
        if number := sent_before(connection, start.key):
            return redirect(with_done(item_url(home, work), number), 303)
        if form.validate():
            if request.form.get("mark") == digest(work):
                done = work.model_copy(update=form.of_work(work))
                record = finished(start.record, done, form.of_paper())
                sentence = f"Done: {work.title} ({work.ref})."
                number = save(connection, start, record, sentence, once=sent_once())
                return redirect(with_done(item_url(home, work), number), 303)
            status = 409
    return _form(home, work, form, changed=status == 409), status


def _form(home: str, work: Work, form: DoneForm, *, changed: bool = False) -> str:
    page = DonePage(
        title=f"Done: {work.title}",
        form=form,
        mark=digest(work),
        changed=changed,
        back=item_url(home, work),
    )
    return render_template("pages/works/done.html", page=page)


def _row(record: Record, work: Work) -> WorkRow:
    about = (record.by_ref[ref].title for ref in work.about)
    papers = (paper.title for paper in papers_of(record, work.ref))
    return WorkRow(
        title=work.title,
        url=item_url(record.home.ref, work),
        state=_state(work),
        where=", ".join(about),
        papers=", ".join(papers),
    )


def _state(work: Work) -> str:
    word, when = WORK_STATES[work.state], day_of_work(work)
    return f"{word}, {when}" if when else word


def _line(work: Work, papers: tuple[Paper, ...]) -> tuple[tuple[str, bool], ...]:
    planned = f"Planned for {in_words(work.planned_for)}" if work.planned_for else ""
    when = f"on {in_words(work.done_on)}" if work.done_on else day_of_work(work)
    done = f"Done {when}" if work.state == "done" and when else "Done"
    number = "a paper" if len(papers) == 1 else f"{len(papers)} papers"
    return (
        ("Asked: may I?", _was_asked(work)),
        (planned or "Planned", True),
        (done, work.state == "done"),
        (f"With {number}" if papers else "With its paper", bool(papers)),
    )


def _was_asked(work: Work) -> bool:
    """Return whether it names a job that “May I?” knows."""
    return job_titled(work.job) is not None


def _said_above(work: Work) -> tuple[str, ...]:
    """Return the fields shown elsewhere; a job that is none is shown as it is."""
    own = ("name", "about", "state")
    return (*own, "job") if _was_asked(work) or not work.job else own


def _doubt(record: Record, work: Work) -> str:
    if work.state == "done" and not work.about:
        return NOWHERE
    number = sum(other.ref == work.ref for other in aged_ties(record).values())
    if not number:
        return ""
    ties = "1 tie that was" if number == 1 else f"{number} ties that were"
    said = f"It puts a doubt on {ties} known before."
    if not work.no_later_than:
        return f"{said} {NO_DAY}"
    return f"{said} Look again, and write the new day."


def _asked(record: Record, work: Work) -> str | None:
    """Return where the job is answered, by today's rules."""
    job = job_titled(work.job)
    if job is None or work.state == "done":
        return None
    at = work.about[0] if len(work.about) == 1 else None
    return url_for("may_i.show", home=record.home.ref, job=job.code, at=at)


def _answer(works: tuple[Work, ...]) -> str:
    planned = sum(work.state == "planned" for work in works)
    done = sum(work.state == "done" for work in works)
    if not works:
        return "No work is written down yet."
    return f"{planned} planned, {done} done."
