"""A job as a page of “May I?” shows it: what counts, what is open, what it leads to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from flask import url_for

from app.domain.may_i import (
    CONFIDENCES,
    JOBS,
    VERDICTS,
    Answer,
    Column,
    Job,
    Known,
    Nation,
    Question,
    isolation_work,
    known_of,
    may_i,
    questions_of,
    side_by_side,
)
from app.domain.record import Item, Record
from app.domain.record.choices import NATIONS
from app.errors import NotFoundError
from app.web.addresses import edit_url
from app.web.may_i_address import Asked, asked
from app.web.words import day

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """An answer that counts already.

    Attributes:
        question: The question.
        answer: The answer, in words.
        source: Where the record says so; empty if the person did.
        change: Address where it is open again, or where the record is changed.
    """

    question: str
    answer: str
    source: str
    change: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """The questions of a job that are still open.

    Attributes:
        go: Address that the answers are sent to.
        kept: Names and values that go with them.
        places: What the job may be about: heading, then reference and title of each.
        questions: The questions.
    """

    go: str
    kept: Pairs
    places: tuple[tuple[str, Pairs], ...]
    questions: tuple[Question, ...]


@dataclass(frozen=True)
class Asking:
    """A job asked about in a home, with what the address and the record say.

    Attributes:
        record: The record of the home.
        job: The job.
        said: What the address says.
    """

    record: Record
    job: Job
    said: Asked

    @cached_property
    def known(self) -> Known:
        """What the record says."""
        return known_of(self.record, self.said.at)

    @property
    def nation(self) -> Nation | None:
        """Whose rules; None while nobody has said."""
        return self.said.nation or self.known.nation

    @property
    def about(self) -> Item | None:
        """The thing of the record that it is about."""
        return self.record.by_ref.get(self.said.at)

    @property
    def answers(self) -> Mapping[str, str]:
        """Every answer; what a person says goes before what the record does."""
        return {**self.known.answers_to(self.job), **self.said.answers}

    @property
    def within(self) -> Mapping[str, tuple[str, ...]]:
        """What the record leaves open."""
        return self.known.within

    def answer(self, nation: Nation) -> Answer:
        """Return what a nation's rules say."""
        return may_i(nation, self.job, self.answers, self.within)

    def columns(self) -> tuple[Column, ...]:
        """Return what all four say."""
        return side_by_side(self.job, self.answers, self.within)

    def url(self, page: str, said: Asked | None = None) -> str:
        """Return the address of a page of this job."""
        home = self.record.home.ref
        return (said or self.said).url(f"may_i.{page}", home, self.job.code)


def asking(record: Record, code: str) -> Asking:
    """Return what this request asks of a job.

    Raises:
        NotFoundError: There is no such job.
    """
    if code not in JOBS:
        raise NotFoundError(f"There is no job “{code}” here.")
    return Asking(record, JOBS[code], asked(record))


def facts(answer: Answer) -> Pairs:
    """Return where a rule stands, what decided it, and how sure that is."""
    rules = answer.rules
    decided = "; ".join(f"{question} {said}" for question, said in answer.decided_by)
    return (
        *((("It stands in", answer.cite),) if answer.cite else ()),
        *((("Decided by", decided),) if decided else ()),
        *(() if answer.missing else (("How sure", CONFIDENCES[answer.confidence]),)),
        ("The rules", rules.authority),
        ("Not looked up", rules.not_checked),
    )


def by_rule(answer: Answer) -> str:
    """Return the rule, the day it was looked up, and who decides, in a line."""
    rules = answer.rules
    rule = f"Rule {answer.rule}, looked up" if answer.rule else "Rules looked up"
    return f"{rule} on {day(rules.checked)}. {answer.decides}"


def given(ask: Asking, page: str, nation: Nation = "england") -> tuple[Given, ...]:
    """Return what counts already: what it is about, and each answer to a question.

    Args:
        ask: What is asked.
        page: The page that an answer is changed on.
        nation: Whose questions; England asks what every nation asks, and no more.
    """
    return tuple(_given(ask, page, nation))


def _given(ask: Asking, page: str, nation: Nation) -> Iterator[Given]:
    if ask.about is not None:
        yield Given(
            question="What it is about",
            answer=f"{ask.about.title} ({ask.about.ref})",
            source="",
            change=ask.url(page, ask.said.without("at")),
        )
    for question in questions_of(nation, ask.job, ask.within):
        if ask.answers.get(question.code) in question.answers:
            yield _one(ask, page, question)


def _one(ask: Asking, page: str, question: Question) -> Given:
    code, home = question.code, ask.record.home
    own = code in ask.said.answers
    of_record = ask.about if code == "place" and ask.about else home
    again = ask.url(page, ask.said.without(code))
    return Given(
        question=question.text,
        answer=question.answers[ask.answers[code]],
        source="" if own else ask.known.source.get(code, ""),
        change=again if own else _edit(home.ref, of_record),
    )


def _edit(home: str, item: Item) -> str:
    if item.sort == "home":
        return url_for("homes.edit", home=home)
    return edit_url(home, item)


def open_form(ask: Asking, answer: Answer) -> Form:
    """Return the open questions; what is done is asked before all others."""
    first = tuple(q for q in answer.missing if q.code == "work")
    return Form(
        go=url_for("may_i.show", home=ask.record.home.ref, job=ask.job.code),
        kept=ask.said.pairs,
        places=() if ask.said.at else _places(ask.record),
        questions=first or answer.missing,
    )


def _places(record: Record) -> tuple[tuple[str, Pairs], ...]:
    groups: list[tuple[str, Sequence[Item]]] = [
        ("Rooms", record.rooms),
        *((room.name, record.points_of(room.ref)) for room in record.rooms),
        ("Circuits", record.circuits),
        ("Boards", record.boards),
    ]
    return tuple(
        (name, tuple((i.ref, f"{i.title} ({i.ref})") for i in items))
        for name, items in groups
        if items
    )


def isolate_link(ask: Asking) -> tuple[str, str] | None:
    """Return what leads to the plan for switching off, where something is."""
    work, home = isolation_work(ask.job, ask.answers), ask.record.home.ref
    if not work:
        return None
    if ask.about is None:
        return "Choose what to switch off", url_for("isolation.index", home=home)
    url = url_for("isolation.show", home=home, ref=ask.about.ref, job=work)
    return f"What to switch off: {ask.about.title}", url


def row(ask: Asking, column: Column) -> tuple[tuple[str, str], str, str, str]:
    """Return one nation as a row: its name with its page, verdict, rule, how sure."""
    answer, said = column.answer, ask.said
    answers = {**said.answers}
    if column.building:
        answers["building"] = column.building
    there = Asked(nation=column.nation, at=said.at, answers=answers)
    return (
        (column.title, ask.url("show", there)),
        _says(answer),
        f"{answer.rule or 'Open'}, looked up on {day(answer.rules.checked)}",
        "Open" if answer.missing else CONFIDENCES[answer.confidence],
    )


def _says(answer: Answer) -> str:
    if not answer.missing:
        return f"{VERDICTS[answer.verdict]}. {answer.because}"
    may_be = [VERDICTS[code] for code in answer.may_be]
    asks = " ".join(question.text for question in answer.missing)
    return f"It depends: {asks} It may be: {'; or: '.join(may_be)}."


def where(ask: Asking, nation: Nation) -> str:
    """Return whose rules, and of what place, in a sentence."""
    place = f", for {ask.about.title}" if ask.about is not None else ""
    return f"By the rules of {NATIONS[nation]}{place}."
