"""Isolate: choose what is worked on; the plan, its sheet, its file, the whole house."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.isolation import (
    JOBS,
    Plan,
    Sheet,
    house_off,
    house_sheet,
    next_step,
    progress_of,
    sheet_of,
)
from app.domain.record import Record
from app.domain.search import find_items
from app.services.isolation import as_html, as_paper, may_be_worked_on, planned
from app.web.lists import groups_of
from app.web.papers import pdf_answer, today
from app.web.plan_address import Asked, asked
from app.web.session import opened, supply

bp = Blueprint("isolation", __name__, url_prefix="/homes/<home>/isolate")
MOST_FOUND = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One list to choose what is worked on from.

    Attributes:
        id: Name for the page.
        text: The question.
        button: What its button says.
        groups: What may be chosen: heading, then reference and title of each.
        jobs: Kinds of work to choose from, where that matters.
    """

    id: str
    text: str
    button: str
    groups: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]
    jobs: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoosePage:
    """Where what is to be worked on is chosen.

    Attributes:
        title: Heading.
        here: Address of this page.
        go: Address of the plan.
        query: The word searched for.
        found: What holds it: title, address.
        choices: The lists.
        whole: Address of the whole house off.
    """

    title: str
    here: str
    go: str
    query: str
    found: tuple[tuple[str, str], ...]
    choices: tuple[Choice, ...]
    whole: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPage:
    """A plan at a glance.

    Attributes:
        title: Heading.
        sheet: The plan as lines.
        progress: How many steps are done, and how many left out.
        begin: What the button of the steps says.
        step: Address of the step that comes next.
        whole: Address of the whole sheet.
        file: Address of the file to save.
        pdf: Address of the PDF.
        notice: Address of the household's notice.
        labels: Address of the labels.
        rounds: Address of the switching rounds.
    """

    title: str
    sheet: Sheet
    progress: str
    begin: str
    step: str
    whole: str
    file: str
    pdf: str
    notice: str
    labels: str
    rounds: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPage:
    """A whole sheet on one page.

    Attributes:
        title: Heading.
        sheet: The plan, or the whole house off, as lines.
        file: Address of the file to save.
        pdf: Address of the PDF.
        plan: Address of the plan; empty for the whole house.
    """

    title: str
    sheet: Sheet
    file: str
    pdf: str
    plan: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NoticePage:
    """A notice for whoever lives there.

    Attributes:
        title: Heading.
        sheet: The plan as lines.
        off: Everything that goes off, room by room.
        here: Address of this page.
        kept: Names and values of the plan, for the form.
        when: From when to when.
        who: Who works, and how to reach them.
        plan: Address of the plan.
    """

    title: str
    sheet: Sheet
    off: tuple[str, ...]
    here: str
    kept: tuple[tuple[str, str], ...]
    when: str
    who: str
    plan: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Choose what is to be worked on."""
    record = opened(home).record
    query = request.args.get("q", "").strip()[:200]
    page = ChoosePage(
        title="Isolate before work",
        here=url_for(".index", home=home),
        go=url_for(".show", home=home),
        query=query,
        found=_found(record, query),
        choices=_choices(record),
        whole=url_for(".house", home=home),
    )
    return render_template("pages/isolation/index.html", page=page)


@bp.get("/plan")
def show(home: str) -> ResponseReturnValue:
    """Show a plan at a glance."""
    what = asked()
    if not what.refs:
        return _choose(home)
    plan = plan_of(home, what)
    upcoming = next_step(plan)
    code = upcoming.code if upcoming else plan.steps[-1].code
    page = PlanPage(
        title=sheet_of(plan).title,
        sheet=sheet_of(plan),
        progress=progress_of(plan),
        begin=f"{'Go on' if _begun(plan) else 'Begin'}, step by step",
        step=what.url("isolation_steps.step", home, at=code),
        whole=what.url(".whole", home),
        file=what.url(".file", home),
        pdf=what.url(".pdf", home),
        notice=what.url(".notice", home),
        labels=url_for("labels.index", home=home),
        rounds=url_for("rounds.index", home=home),
    )
    return render_template("pages/isolation/show.html", page=page)


@bp.get("/plan/sheet")
def whole(home: str) -> ResponseReturnValue:
    """Show the whole plan on one page."""
    what = asked()
    if not what.refs:
        return _choose(home)
    sheet = sheet_of(plan_of(home, what))
    page = SheetPage(
        title=sheet.title,
        sheet=sheet,
        file=what.url(".file", home),
        pdf=what.url(".pdf", home),
        plan=what.url(".show", home),
    )
    return render_template("pages/isolation/sheet.html", page=page)


@bp.get("/plan/file")
def file(home: str) -> ResponseReturnValue:
    """Give the plan as one file to keep on the phone."""
    what = asked()
    if not what.refs:
        return _choose(home)
    name = f"isolate-{'-'.join(what.refs)[:60]}"
    return _to_keep(sheet_of(plan_of(home, what)), name)


@bp.get("/plan.pdf")
def pdf(home: str) -> ResponseReturnValue:
    """Make the plan as PDF."""
    what = asked()
    if not what.refs:
        return _choose(home)
    sheet = sheet_of(plan_of(home, what))
    make = partial(as_paper, supply(home), sheet, today(), what.day)
    return pdf_answer(make, f"isolate-{'-'.join(what.refs)[:60]}")


@bp.get("/plan/notice")
def notice(home: str) -> ResponseReturnValue:
    """Show a notice for whoever lives there."""
    what = asked()
    if not what.refs:
        return _choose(home)
    sheet = sheet_of(plan_of(home, what))
    own = ("when", "who")
    page = NoticePage(
        title="Notice for the household",
        sheet=sheet,
        off=sheet.others_off,
        here=url_for(".notice", home=home),
        kept=tuple(pair for pair in what.pairs if pair[0] not in own),
        when=what.day.when,
        who=what.day.who,
        plan=what.url(".show", home),
    )
    return render_template("pages/isolation/notice.html", page=page)


@bp.get("/whole-house")
def house(home: str) -> ResponseReturnValue:
    """Show how the whole home is taken off."""
    sheet = house_sheet(house_off(supply(home)))
    page = SheetPage(
        title=sheet.title,
        sheet=sheet,
        file=url_for(".house_file", home=home),
        pdf=url_for(".house_pdf", home=home),
        plan="",
    )
    return render_template("pages/isolation/sheet.html", page=page)


@bp.get("/whole-house.pdf")
def house_pdf(home: str) -> ResponseReturnValue:
    """Make the whole house off as PDF."""
    net = supply(home)
    make = partial(as_paper, net, house_sheet(house_off(net)), today())
    return pdf_answer(make, f"whole-house-{home}")


@bp.get("/whole-house/file")
def house_file(home: str) -> ResponseReturnValue:
    """Give the whole house off as one file to keep."""
    return _to_keep(house_sheet(house_off(supply(home))), f"whole-house-{home}")


def plan_of(home: str, what: Asked) -> Plan:
    """Return the plan that an address asks for.

    Raises:
        NotFoundError: It names what is not in the record.
    """
    return planned(supply(home), what.refs, what.job, what.day)


def _begun(plan: Plan) -> bool:
    return any(step.state in ("done", "skipped") for step in plan.steps)


def _choose(home: str) -> ResponseReturnValue:
    return redirect(url_for(".index", home=home))


def _to_keep(sheet: Sheet, name: str) -> Response:
    answer = Response(as_html(sheet, today()), mimetype="text/html")
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}.html"'
    answer.headers["Cache-Control"] = "no-store"
    return answer


def _found(record: Record, query: str) -> tuple[tuple[str, str], ...]:
    items = [i for i in find_items(record, query) if may_be_worked_on(record, i.ref)]
    home = record.home.ref
    return tuple(
        (f"{i.noun}: {i.title} ({i.ref})", url_for(".show", home=home, ref=i.ref))
        for i in items[:MOST_FOUND]
    )


def _choices(record: Record) -> tuple[Choice, ...]:
    by_room = [(r.name, record.points_of(r.ref)) for r in record.rooms]
    points = [*by_room, ("No room recorded", record.points_of(None))]
    return (
        Choice(
            id="room",
            text="In a room",
            button="Plan for this room",
            groups=groups_of([("Rooms", record.rooms)]),
            jobs=tuple(JOBS.items()),
        ),
        Choice(
            id="point",
            text="At one point",
            button="Plan for this point",
            groups=groups_of(points),
        ),
        Choice(
            id="circuit",
            text="On a circuit",
            button="Plan for this circuit",
            groups=groups_of([("Circuits", record.circuits)]),
        ),
        Choice(
            id="board",
            text="At a board",
            button="Plan for this board",
            groups=groups_of([("Boards", record.boards)]),
        ),
    )
