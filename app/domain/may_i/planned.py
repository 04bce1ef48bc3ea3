"""Work that is planned from an answer, with the answer as it stood."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from app.domain.may_i._case import CONFIDENCES, VERDICTS
from app.domain.may_i.answer import Answer
from app.domain.may_i.jobs import Job
from app.domain.record import Item, Record, Work
from app.domain.record.choices import NATIONS

SHORT = 120


def planned_work(
    ref: str, job: Job, answer: Answer, about: Item | None, today: date
) -> Work:
    """Return work as planned from an answer.

    Args:
        ref: Reference of the work.
        job: The job that was asked about.
        answer: What the rules said of it.
        about: The room, point, circuit or board that it touches, if one was named.
        today: The day, which the note carries.
    """
    told = "no" if answer.verdict in ("notice", "warrant") else "unknown"
    return Work(
        ref=ref,
        name=_name(job, about),
        job=job.title,
        about=(about.ref,) if about is not None else (),
        told=told,
        note="\n".join(_note(answer, today)),
    )


def planned_already(record: Record, job: Job, about: Item | None) -> tuple[Work, ...]:
    """Return the work of a record that is planned for just this."""
    refs = (about.ref,) if about is not None else ()
    return tuple(
        work
        for work in record.works
        if (work.job, work.about, work.state) == (job.title, refs, "planned")
    )


def _name(job: Job, about: Item | None) -> str:
    name = f"{job.title}: {about.title}" if about is not None else job.title
    return name if len(name) <= SHORT else job.title


def _note(answer: Answer, today: date) -> Iterator[str]:
    rules = answer.rules
    yield (
        f"“May I?” on {_day(today)}, by the rules of {NATIONS[rules.nation]} as looked "
        f"up on {_day(rules.checked)}:"
    )
    rule = f" (rule {answer.rule})" if answer.rule else ""
    yield f"{VERDICTS[answer.verdict]}{rule}. {answer.because}"
    for question, said in answer.decided_by:
        yield f"It turned on: {question} {said}."
    if answer.cite:
        yield f"Where it stands: {answer.cite}. {CONFIDENCES[answer.confidence]}."
    yield answer.decides


def _day(day: date) -> str:
    return f"{day.day} {day:%B %Y}"
