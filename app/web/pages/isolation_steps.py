"""The steps of a plan, one a screen: done, or left out for a reason that is written.

What proves is never left out, and work stays shut until it is done.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.isolation import PROVING, OnTheDay, Plan, Step, next_step, sheet_of
from app.domain.record.choices import SOURCE_KINDS, YES_NO
from app.web.pages.isolation import plan_of
from app.web.plan_address import Asked, asked
from app.web.session import supply

bp = Blueprint("isolation_steps", __name__, url_prefix="/homes/<home>/isolate")
SETTLES = {
    "medical": "Everyone who depends on it has been asked, and has another supply.",
    "leave_on": "Why it is left on has been looked at, and it may go off.",
}
# Where a hand is about to move, what stays live is shown again.
SHOWS_LIVE = frozenset({"switch_off", "prove_dead", "work"})
NO_REASON = "Write why this step is left out."


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A question with the answers to choose from.

    Attributes:
        name: Its name in the form.
        label: The question.
        options: Code and words of each answer.
        value: The answer given.
    """

    name: str
    label: str
    options: tuple[tuple[str, str], ...]
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StepPage:
    """One step of a plan.

    Attributes:
        title: Heading.
        what: What is worked on.
        number: Which step it is.
        total: How many there are.
        step: The step.
        stops: Reasons to stop and find out first.
        live: What stays live, on the steps where it matters most.
        unknown: What is not known there.
        go: Address that takes the answer.
        kept: Names and values of the plan, for the form.
        choices: Sources to answer, on their step.
        settle: Reasons that asking settles: code, words, whether ticked.
        texts: Other answers: name, label, value.
        reason: Why it is left out, as typed.
        errors: What is to be put right: id of the field, sentence.
        may_skip: Whether it may be left out.
        first: Address of the step that opens it, of one that is shut.
        opens: What that step is for, as its button says it.
        back: Address of the step before, if any.
        plan: Address of the plan.
    """

    title: str
    what: str
    number: int
    total: int
    step: Step
    stops: tuple[str, ...]
    live: tuple[str, ...]
    unknown: tuple[str, ...]
    go: str
    kept: tuple[tuple[str, str], ...]
    choices: tuple[Answer, ...]
    settle: tuple[tuple[str, str, bool], ...]
    texts: tuple[tuple[str, str, str], ...]
    reason: str
    errors: tuple[tuple[str, str], ...]
    may_skip: bool
    first: str
    opens: str
    back: str
    plan: str


@bp.get("/plan/step")
def step(home: str) -> ResponseReturnValue:
    """Show a step; with an answer, take it into the address and go on."""
    what = asked()
    if not what.refs:
        return redirect(url_for("isolation.index", home=home))
    code, do = request.args.get("at", ""), request.args.get("do", "")
    plan = plan_of(home, what)
    here = next((s for s in plan.steps if s.code == code), plan.steps[0])
    reason = " ".join(request.args.get("reason", "").split())[:200]
    if do == "skip" and here.code in PROVING:
        return redirect(what.url(".step", home, at=here.code))
    if do == "skip" and not reason and here.state != "blocked":
        return _shown(home, what, plan, here, (("reason", NO_REASON),)), 422
    if do in ("done", "skip"):
        return redirect(_onward(home, what, here, reason if do == "skip" else ""))
    return _shown(home, what, plan, here)


def _onward(home: str, what: Asked, here: Step, reason: str) -> str:
    """Return the address of the next step, with this one's answer in it."""
    if here.state == "blocked":
        return what.url(".step", home, at=_opening(plan_of(home, what)))
    answered = replace(what, day=_answered(what.day, here.code, reason))
    plan = plan_of(home, answered)
    codes = [s.code for s in plan.steps]
    upcoming = next_step(plan)
    if upcoming is None:
        return answered.url("isolation.show", home)
    after = codes[min(codes.index(here.code) + 1, len(codes) - 1)]
    ahead = after if codes.index(after) < codes.index(upcoming.code) else upcoming.code
    return answered.url(".step", home, at=ahead)


def _opening(plan: Plan) -> str:
    """Return the step that opens what is shut: proving, or else finding out."""
    unproved = (s.code for s in plan.steps if s.code in PROVING and s.state == "open")
    return "identify" if plan.advised == "stop" else next(unproved, "identify")


def _answered(day: OnTheDay, code: str, reason: str) -> OnTheDay:
    done = tuple(c for c in day.done if c != code)
    skipped = {c: why for c, why in day.skipped.items() if c != code}
    if reason:
        skipped[code] = reason
    else:
        done = (*done, code)
    return day.model_copy(update={"done": done, "skipped": skipped})


def _shown(
    home: str,
    what: Asked,
    plan: Plan,
    here: Step,
    errors: tuple[tuple[str, str], ...] = (),
) -> str:
    sheet = sheet_of(plan)
    codes = [s.code for s in plan.steps]
    number = codes.index(here.code)
    choices = _sources(home, what) if here.code == "sources" else ()
    settle = _settle(plan, what) if here.code == "warn" else ()
    texts = _texts(what) if here.code == "warn" else ()
    own = {a.name for a in choices} | {name for name, _, _ in texts}
    own |= {"settled"} if settle else set()
    shows = here.code in SHOWS_LIVE
    page = StepPage(
        title=here.title,
        what=sheet.title,
        number=number + 1,
        total=len(codes),
        step=here,
        stops=sheet.stops if number < 3 or here.state == "blocked" else (),
        live=sheet.still_live if shows else (),
        unknown=sheet.unknown if shows else (),
        go=url_for(".step", home=home),
        kept=tuple(pair for pair in what.pairs if pair[0] not in own),
        choices=choices,
        settle=settle,
        texts=texts,
        reason=plan.day.skipped.get(here.code, ""),
        errors=errors,
        may_skip=here.code not in PROVING,
        first=what.url(".step", home, at=_opening(plan)),
        opens="What to find out" if plan.advised == "stop" else "Prove dead first",
        back=what.url(".step", home, at=codes[number - 1]) if number else "",
        plan=what.url("isolation.show", home),
    )
    return render_template("pages/isolation/step.html", page=page)


def _sources(home: str, what: Asked) -> tuple[Answer, ...]:
    """Ask of every kind that the record does not answer with yes."""
    recorded = {s.kind for s in supply(home).record.sources if s.present == "yes"}
    answered = {s.kind: s.present for s in supply(home).record.sources}
    return tuple(
        Answer(
            name=f"source-{kind}",
            label=label,
            options=tuple(YES_NO.items()),
            value=what.day.sources.get(kind, answered.get(kind, "unknown")),
        )
        for kind, label in SOURCE_KINDS.items()
        if kind not in recorded | {"network", "other"}
    )


def _settle(plan: Plan, what: Asked) -> tuple[tuple[str, str, bool], ...]:
    given = {reason.code for reason in plan.reasons} | {*what.day.settled}
    return tuple(
        (code, words, code in what.day.settled)
        for code, words in SETTLES.items()
        if code in given
    )


def _texts(what: Asked) -> tuple[tuple[str, str, str], ...]:
    return (
        ("who", "Who works, and how to reach you", what.day.who),
        ("when", "From when to when", what.day.when),
    )
