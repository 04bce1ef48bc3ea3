"""May I?: choose a job, answer what its verdict turns on, plan it."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.edits import added, new_ref
from app.domain.isolation.help import STOP_WHEN
from app.domain.may_i import (
    VERDICTS,
    Answer,
    Beside,
    Nation,
    allowed,
    jobs_found,
    left_to_others,
    others_to_ask,
    planned_already,
    planned_work,
)
from app.domain.record import Work
from app.domain.record.choices import NATIONS
from app.errors import InvalidError
from app.services.homes import save
from app.store.changes import find_change
from app.web.addresses import item_url, with_done
from app.web.forms import sent_once
from app.web.may_i_address import asked
from app.web.may_i_view import (
    Asking,
    Form,
    Given,
    Pairs,
    asking,
    by_rule,
    facts,
    given,
    isolate_link,
    open_form,
    row,
    where,
)
from app.web.papers import today
from app.web.session import change, opened, opened_to_change

bp = Blueprint("may_i", __name__, url_prefix="/homes/<home>/may-i")
HEADS = ("Where", "Must someone be told?", "Rule", "How sure")


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexPage:
    """Where a job is chosen.

    Attributes:
        title: Heading.
        here: Address of this page.
        query: The words searched for.
        kept: Names and values that go with them.
        about: What the job is about, if that is chosen already.
        groups: The jobs: heading, and title and address of each.
        nation: Name of the home's nation; empty if it is not said.
        record: Address where the home says it.
    """

    title: str
    here: str
    query: str
    kept: Pairs
    about: str
    groups: tuple[tuple[str, Pairs], ...]
    nation: str
    record: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NationPage:
    """Where the nation is asked, when the home does not say.

    Attributes:
        title: Heading.
        go: Address of the answer.
        kept: Names and values that go with it.
        nations: Code and name of each.
        record: Address where the home says it for good.
        all_four: Address of all four side by side.
        back: Address of the jobs.
    """

    title: str
    go: str
    kept: Pairs
    nations: Pairs
    record: str
    all_four: str
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerPage:
    """What the rules say of a job: three questions, kept apart.

    Attributes:
        title: Heading.
        where: Whose rules, and of what place, in a sentence.
        allowed: Whether one may do it oneself.
        others: Who else has a say.
        says: Whether someone must be told, in words.
        may_be: The verdicts that are still open, in words.
        answer: What the rules say.
        by_rule: The rule, the day it was looked up, and who decides.
        facts: Where the rule stands, what decided it, how sure.
        given: The answers that count.
        form: What is still open.
        note: A sentence that belongs to the job; may be empty.
        trades: What to call someone in for.
        stop_when: When to stop.
        isolate: Title and address of what to switch off; None if nothing is.
        call: Address of whom to call.
        all_four: Address of all four nations side by side.
        plan: Address that plans it.
        planned: Title and address of work that is planned for just this.
        back: Address of the jobs.
    """

    title: str
    where: str
    allowed: Beside
    others: tuple[Beside, ...]
    says: str
    may_be: tuple[str, ...]
    answer: Answer
    by_rule: str
    facts: Pairs
    given: tuple[Given, ...]
    form: Form
    note: str
    trades: tuple[str, ...]
    stop_when: tuple[str, ...]
    isolate: tuple[str, str] | None
    call: str
    all_four: str
    plan: str
    planned: Pairs
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NationsPage:
    """All four nations side by side.

    Attributes:
        title: Heading.
        heads: Heads of the table.
        rows: Nation with its address, verdict, rule, how sure.
        given: The answers that count in all of them.
        job: Title and address of the answer for this home.
    """

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[tuple[str, str], str, str, str], ...]
    given: tuple[Given, ...]
    job: tuple[str, str]


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Choose a job."""
    record = opened(home).record
    nation, said = record.home.nation, asked(record)
    query = request.args.get("q", "").strip()[:200]
    groups = tuple(
        (name, tuple((j.title, said.url(".show", home, j.code)) for j in jobs))
        for name, jobs in jobs_found(query)
    )
    about = record.by_ref.get(said.at)
    page = IndexPage(
        title="May I?",
        here=url_for(".index", home=home),
        query=query,
        kept=said.pairs,
        about=about.title if about else "",
        groups=groups,
        nation=NATIONS[nation] if nation != "unknown" else "",
        record=url_for("homes.edit", home=home),
    )
    return render_template("pages/may_i/index.html", page=page)


@bp.get("/<job>/")
def show(home: str, job: str) -> ResponseReturnValue:
    """Answer of one job, or ask for the nation first."""
    ask = asking(opened(home).record, job)
    if ask.nation is None:
        page = _nation_page(ask)
        return render_template("pages/may_i/nation.html", page=page)
    answer = _answer_page(ask, ask.nation)
    return render_template("pages/may_i/show.html", page=answer)


@bp.get("/<job>/nations")
def nations(home: str, job: str) -> ResponseReturnValue:
    """Show all four nations side by side."""
    ask = asking(opened(home).record, job)
    page = NationsPage(
        title=f"All four nations: {ask.job.title}",
        heads=HEADS,
        rows=tuple(row(ask, column) for column in ask.columns()),
        given=given(ask, "nations"),
        job=(ask.job.title, ask.url("show")),
    )
    return render_template("pages/may_i/nations.html", page=page)


@bp.post("/<job>/plan")
def plan(home: str, job: str) -> ResponseReturnValue:
    """Plan the work, with the answer as it stands."""
    with change() as connection:
        start = opened_to_change(connection, home)
        ask = asking(start.record, job)
        work = _work(ask)
        record = added(start.record, work)
        sentence = f"Planned: {work.title} ({work.ref})."
        done = save(connection, start, record, sentence, once=sent_once())
        made = find_change(connection, start.key, done or 0)
    # Sent twice: what was planned the first time is shown.
    planned = (made and made.entries[0].after) or work
    return redirect(with_done(item_url(home, planned), done), 303)


def _work(ask: Asking) -> Work:
    """Return the work to plan.

    Raises:
        InvalidError: Nobody has said yet in which nation it is.
    """
    if ask.nation is None:
        raise InvalidError("Say first in which nation the home is.")
    ref = new_ref(ask.record, Work)
    return planned_work(ref, ask.job, ask.answer(ask.nation), ask.about, today())


def _nation_page(ask: Asking) -> NationPage:
    home = ask.record.home.ref
    return NationPage(
        title=ask.job.title,
        go=url_for(".show", home=home, job=ask.job.code),
        kept=ask.said.pairs,
        nations=tuple(pair for pair in NATIONS.items() if pair[0] != "unknown"),
        record=url_for("homes.edit", home=home),
        all_four=ask.url("nations"),
        back=url_for(".index", home=home),
    )


def _answer_page(ask: Asking, nation: Nation) -> AnswerPage:
    home, answer = ask.record.home, ask.answer(nation)
    planned = planned_already(ask.record, ask.job, ask.about)
    return AnswerPage(
        title=ask.job.title,
        where=where(ask, nation),
        allowed=allowed(ask.job, answer, ask.answers, home),
        others=others_to_ask(nation, home.dwelling, home.tenure),
        says=VERDICTS[answer.verdict],
        may_be=tuple(VERDICTS[code] for code in answer.may_be),
        answer=answer,
        by_rule=by_rule(answer),
        facts=facts(answer),
        given=given(ask, "show", nation),
        form=open_form(ask, answer),
        note=ask.job.note,
        trades=left_to_others(ask.job, ask.answers),
        stop_when=STOP_WHEN if isolate_link(ask) else (),
        isolate=isolate_link(ask),
        call=url_for("call.index", home=home.ref),
        all_four=ask.url("nations"),
        plan=ask.url("plan"),
        planned=tuple((w.title, item_url(home.ref, w)) for w in planned),
        back=url_for(".index", home=home.ref),
    )
