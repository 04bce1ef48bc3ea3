"""The stable shape of an answer, for another program."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from app.domain.may_i._case import (
    CONFIDENCES,
    VERDICTS,
    Confidence,
    Nation,
    VerdictCode,
)
from app.domain.may_i.answer import Answer
from app.domain.may_i.beside import allowed, left_to_others
from app.domain.may_i.jobs import Job
from app.domain.record import Home
from app.domain.record._field import Model, field


class Decided(Model):
    """A question and its answer, in words."""

    question: str = field("Question", ...)
    answer: str = field("Answer", ...)


class Missing(Model):
    """A question that could still turn the verdict."""

    code: str = field("Code", ...)
    question: str = field("Question", ...)
    why: str = field("How to find the answer", ...)
    answers: dict[str, str] = field("Code and words of each answer", ...)


class Telling(Model):
    """A way of telling, and the paper to end with."""

    who: str = field("Who tells", ...)
    when: str = field("When", ...)
    paper: str = field("The paper to end with", ...)


class MayIAnswer(Model):
    """What the rules of one nation say of a job."""

    nation: Nation = field("Nation", ...)
    job: str = field("Code of the job", ...)
    title: str = field("The job", ...)
    verdict: VerdictCode = field("Verdict", ...)
    says: str = field("The verdict in words", ...)
    because: str = field("Why", ...)
    rule: str = field("Rule that decided; empty while it depends", ...)
    cite: str = field("Where the rule stands", ...)
    confidence: Confidence = field("How sure", ...)
    how_sure: str = field("How sure, in words", ...)
    checked: date = field("Day on which the rules were looked up", ...)
    authority: str = field("What the rules stand in", ...)
    not_checked: str = field("What was not looked up", ...)
    decides: str = field("Who decides", ...)
    decided_by: tuple[Decided, ...] = field("What it turned on", ...)
    missing: tuple[Missing, ...] = field("What could still turn it", ...)
    may_be: tuple[VerdictCode, ...] = field("Verdicts that are still open", ...)
    routes: tuple[Telling, ...] = field("Ways of telling", ...)
    allowed: str = field("Whether one may do it oneself", ...)
    standard: str = field("To what standard, told or not", ...)
    cautions: tuple[str, ...] = field("Cautions", ...)
    left_to_others: tuple[str, ...] = field("What to call someone in for", ...)


def shaped(
    job: Job, answer: Answer, answers: Mapping[str, str], home: Home | None = None
) -> MayIAnswer:
    """Return an answer in its stable shape.

    Args:
        job: The job.
        answer: What the rules say.
        answers: What was answered of it.
        home: The home; None if none is known.
    """
    rules = answer.rules
    return MayIAnswer(
        nation=rules.nation,
        job=job.code,
        title=job.title,
        verdict=answer.verdict,
        says=VERDICTS[answer.verdict],
        because=answer.because,
        rule=answer.rule,
        cite=answer.cite,
        confidence=answer.confidence,
        how_sure=CONFIDENCES[answer.confidence],
        checked=rules.checked,
        authority=rules.authority,
        not_checked=rules.not_checked,
        decides=answer.decides,
        decided_by=tuple(Decided(question=q, answer=a) for q, a in answer.decided_by),
        missing=tuple(
            Missing(code=q.code, question=q.text, why=q.hint, answers=dict(q.answers))
            for q in answer.missing
        ),
        may_be=answer.may_be,
        routes=tuple(
            Telling(who=r.who, when=r.when, paper=r.paper) for r in answer.routes
        ),
        allowed=allowed(job, answer, answers, home).sentence,
        standard=rules.standard,
        cautions=(*answer.cares, *((job.note,) if job.note else ())),
        left_to_others=left_to_others(job, answers),
    )
