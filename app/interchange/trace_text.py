"""What switching off has shown, as plain text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.trace.answers import PlanAnswer, TraceAnswer
from app.domain.trace.plan import MANNERS
from app.interchange.answer_text import CAUTION

NOT_FOR_WORK = (
    "Switching off is for finding out, not for working: before any work, prove it at "
    "the point, on the day."
)


def trace_text(answer: TraceAnswer) -> str:
    """Return what is known of each point as text."""
    return "\n".join((*_findings(answer), *_hidden(answer), "", CAUTION))


def plan_text(plan: PlanAnswer) -> str:
    """Return the next round as text."""
    return "\n".join((*_plan(plan), "", NOT_FOR_WORK))


def _findings(answer: TraceAnswer) -> Iterator[str]:
    yield f"Rounds that count: {answer.rounds}"
    for found in answer.points:
        yield f"{found.point.ref}  {found.point.title}: {found.answer}"
        yield from (f"    {reason}" for reason in found.reasons)


def _hidden(answer: TraceAnswer) -> Iterator[str]:
    if answer.hidden:
        yield ""
        yield "What switching off cannot show, or has not yet"
    for each in answer.hidden:
        names = ", ".join(thing.ref for thing in each.things)
        yield f"  {each.sentence} ({names})"


def _plan(plan: PlanAnswer) -> Iterator[str]:
    needed = plan.effort
    yield f"{MANNERS[plan.manner]}"  # type: ignore[index]
    if plan.purpose is None:
        yield "There is nothing left that switching off could show."
        return
    yield "To tell ways apart" if plan.purpose == "tell_apart" else "To confirm"
    yield "Switch off"
    yield from (f"  {each.ref}  {each.title}" for each in plan.switch_off)
    yield f"Then look at {len(plan.look_at)} points"
    yield from (f"  {each.ref}  {each.title}" for each in plan.look_at)
    yield (
        f"Still needed: {needed.finding_best} to {needed.finding_worst} rounds until "
        f"every point is found, {needed.rounds_best} to {needed.rounds_worst} with the "
        f"confirming looks; {needed.readings_best} to {needed.readings_worst} readings."
    )
