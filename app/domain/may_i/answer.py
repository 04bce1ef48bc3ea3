"""May I?  A job, a nation and what is known of the place, to a verdict.

What is not answered is not guessed: every way of answering the open questions is tried,
and only what comes out the same each time is a verdict.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product
from typing import Any

from app.domain.may_i import england, northern_ireland, scotland, wales
from app.domain.may_i._case import (
    VERDICTS,
    Building,
    Case,
    Confidence,
    Nation,
    Route,
    Rules,
    Ruling,
    VerdictCode,
)
from app.domain.may_i.cautions import cautions_of
from app.domain.may_i.jobs import Job
from app.domain.may_i.questions import PLACES, QUESTIONS, Question, narrowed

NATIONS: dict[Nation, tuple[Rules, Callable[[Case], Ruling]]] = {
    "england": (england.RULES, england.england),
    "wales": (wales.RULES, wales.wales),
    "scotland": (scotland.RULES, scotland.scotland),
    "northern_ireland": (northern_ireland.RULES, northern_ireland.northern_ireland),
}
_SCOTLAND_ASKS = ("building", "separating_wall", "building_change")
_CLOSED: dict[str, Any] = {
    "work": "add",
    "thing": "other",
    "place": "elsewhere",
    "new_circuit": False,
    "outdoor_wiring": False,
    "special": "none",
    "building": "low_house",
    "separating_wall": False,
    "building_change": False,
}
_WORST: tuple[Confidence, ...] = ("low", "medium", "high")


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What the rules of one nation say of a job.

    Attributes:
        verdict: Which of ``VERDICTS``; ``depends`` while an answer could turn it.
        rule: Name of the rule that decided, or of each that may, where all of them
            come out the same; empty while it depends.
        because: Why, in a sentence.
        cite: Where the rule stands.
        confidence: How sure the reading is.
        decided_by: Question and answer, in words, that the verdict turned on.
        missing: Questions that could still turn it, the most telling first.
        may_be: The verdicts that are still open.
        routes: Ways of telling, where someone has to be told.
        places: The kinds of place where it may be; one, if it is known.
        cares: Cautions that go with the job there.
        rules: The nation's rules as they were on the day they were looked up.
    """

    verdict: VerdictCode
    rule: str
    because: str
    cite: str
    confidence: Confidence
    decided_by: tuple[tuple[str, str], ...]
    missing: tuple[Question, ...]
    may_be: tuple[VerdictCode, ...]
    routes: tuple[Route, ...]
    places: frozenset[str]
    cares: tuple[str, ...]
    rules: Rules

    @property
    def decides(self) -> str:
        """Who decides in the end."""
        if self.verdict == "not_yours":
            return "The network or the meter operator decides, not this record."
        return self.rules.decides


def may_i(
    nation: Nation,
    job: Job,
    answers: Mapping[str, str],
    within: Mapping[str, Collection[str]] | None = None,
) -> Answer:
    """Return what a nation's rules say of a job.

    Args:
        nation: Whose rules.
        job: One of ``JOBS``.
        answers: Codes of questions, with codes of their answers; what is not known is
            left out.  Answers to questions that the job does not ask are not used.
        within: Codes of questions, with the answers that the record leaves open.  They
            narrow what is not answered, and open what the job says otherwise of itself.
    """
    rules, rule = NATIONS[nation]
    every_way = questions_of(nation, job, within or {})
    asked = tuple(_narrowed(q, job, answers, within or {}) for q in every_way)
    known = {q.code: answers[q.code] for q in asked if answers.get(q.code) in q.sets}
    known |= {q.code: next(iter(q.sets)) for q in asked if len(q.sets) == 1}
    open_questions = tuple(q for q in asked if q.code not in known)
    places = _places(job, known, asked, within or {})
    thing = known.get("thing", job.sets.get("thing", ""))
    every = _rulings(job, rule, known, open_questions)
    rulings = tuple(every.values())
    found = {ruling.verdict for ruling in rulings}
    may_be = tuple(verdict for verdict in VERDICTS if verdict in found)
    turning = _turning(open_questions, every)
    ruling = _undecided(turning) if turning else _agreed(rulings)
    return Answer(
        verdict=ruling.verdict,
        rule=ruling.rule,
        because=ruling.says,
        cite=ruling.cite,
        confidence=min(_least_sure(rulings), job.doubt, key=_WORST.index),
        decided_by=_decided_by(job, rule, known, every_way),
        missing=turning,
        may_be=may_be,
        routes=tuple(route for code in may_be for route in rules.routes.get(code, ())),
        places=places,
        cares=cautions_of(job.cares, places, thing),
        rules=rules,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """What one nation says, and of which building where that matters.

    Attributes:
        title: The nation, with the kind of building in Scotland.
        nation: Whose rules.
        building: The kind of building in Scotland; empty elsewhere.
        answer: What they say.
    """

    title: str
    nation: Nation
    building: str
    answer: Answer


def side_by_side(
    job: Job,
    answers: Mapping[str, str],
    within: Mapping[str, Collection[str]] | None = None,
) -> tuple[Column, ...]:
    """Return what each of the four nations says of a job; Scotland of two buildings."""
    columns: tuple[tuple[str, Nation, str], ...] = (
        ("England", "england", ""),
        ("Wales", "wales", ""),
        ("Scotland, house of one or two storeys", "scotland", "low_house"),
        ("Scotland, flat or higher house", "scotland", "flat"),
        ("Northern Ireland", "northern_ireland", ""),
    )
    return tuple(
        Column(
            title=title,
            nation=nation,
            building=building,
            answer=may_i(nation, job, {**answers, "building": building}, within),
        )
        for title, nation, building in columns
    )


def building_of(dwelling: str, storeys: int | None) -> Building | None:
    """Return the kind of building as Scotland's rules tell them apart, if known."""
    if dwelling in ("flat", "maisonette"):
        return "flat"
    if dwelling == "bungalow" and storeys is None:
        return "low_house"
    if dwelling in ("house", "bungalow") and storeys is not None:
        return "low_house" if storeys <= 2 else "high_house"
    return None


def questions_of(
    nation: Nation, job: Job, within: Mapping[str, Collection[str]]
) -> tuple[Question, ...]:
    """Return the questions of a job there; what is done comes before all others.

    Where a job is follows from what it is, or is asked.  It is asked as well where the
    record says that it cannot be there.
    """
    codes = job.asks + (_SCOTLAND_ASKS if nation == "scotland" else ())
    found = [
        narrowed(QUESTIONS[code], job.limits.get(code, ()))
        for code in dict.fromkeys(codes)
    ]
    if elsewhere(job, within):
        places = (job.sets["place"], *within["place"])
        found.append(narrowed(QUESTIONS["place"], places))
    return tuple(found)


def elsewhere(job: Job, within: Mapping[str, Collection[str]]) -> bool:
    """Return whether the record says that it is not where the job has to be."""
    places = within.get("place", ())
    return bool(places) and job.sets.get("place", next(iter(places))) not in places


def _narrowed(
    question: Question,
    job: Job,
    answers: Mapping[str, str],
    within: Mapping[str, Collection[str]],
) -> Question:
    """Return a question with what the record leaves open, unless it is answered."""
    code = question.code
    answered = answers.get(code) in question.sets
    if answered or (code == "place" and elsewhere(job, within)):
        return question
    return narrowed(question, within.get(code, ()))


def _places(
    job: Job,
    known: Mapping[str, str],
    asked: Iterable[Question],
    within: Mapping[str, Collection[str]],
) -> frozenset[str]:
    """Return every kind of place where a job may be, whether it is asked or not."""
    if "place" in known:
        return frozenset({known["place"]})
    for question in asked:
        if question.code == "place":
            return frozenset(question.answers)
    if "place" in job.sets:
        return frozenset({job.sets["place"]})
    return frozenset(within.get("place") or PLACES)


def _case(job: Job, chosen: Mapping[str, str]) -> Case:
    """Return the case: the job's own facts, then the answers, in the order asked."""
    fields = _CLOSED | dict(job.sets)
    for code, answer in chosen.items():
        fields |= QUESTIONS[code].sets[answer]
    return Case(**fields)


def _choices(questions: tuple[Question, ...]) -> Iterator[dict[str, str]]:
    for picked in product(*(question.sets for question in questions)):
        yield {q.code: answer for q, answer in zip(questions, picked, strict=True)}


def _rulings(
    job: Job,
    rule: Callable[[Case], Ruling],
    known: Mapping[str, str],
    questions: tuple[Question, ...],
) -> dict[tuple[str, ...], Ruling]:
    """Return what the rule says for every way of answering some questions."""
    return {
        tuple(more.values()): rule(_case(job, {**known, **more}))
        for more in _choices(questions)
    }


def _turning(
    questions: tuple[Question, ...], rulings: Mapping[tuple[str, ...], Ruling]
) -> tuple[Question, ...]:
    """Return the questions of which one answer instead of another turns a verdict."""
    turning = []
    for place, question in enumerate(questions):
        verdicts: dict[tuple[str, ...], set[str]] = {}
        for picked, ruling in rulings.items():
            others = picked[:place] + picked[place + 1 :]
            verdicts.setdefault(others, set()).add(ruling.verdict)
        if any(len(found) > 1 for found in verdicts.values()):
            turning.append(question)
    return tuple(turning)


def _decided_by(
    job: Job,
    rule: Callable[[Case], Ruling],
    known: Mapping[str, str],
    asked: Iterable[Question],
) -> tuple[tuple[str, str], ...]:
    """Return the answers given that the verdict turned on, in words."""
    told = []
    for question in asked:
        if question.code not in known:
            continue
        rest = {code: a for code, a in known.items() if code != question.code}
        every = _rulings(job, rule, rest, (question,))
        verdicts = {ruling.verdict for ruling in every.values()}
        if len(verdicts) > 1:
            told.append((question.text, question.answers[known[question.code]]))
    return tuple(told)


def _undecided(turning: tuple[Question, ...]) -> Ruling:
    return Ruling(
        verdict="depends",
        rule="",
        because=f"It turns on what is not said yet: {turning[0].text}",
        cite="",
    )


def _agreed(rulings: Sequence[Ruling]) -> Ruling:
    """Return rulings of one verdict as one, which claims only what holds in each."""
    grounds = [ruling.grounds for ruling in rulings]
    shared = tuple(g for g in grounds[0] if all(g in each for each in grounds))
    rulings = [replace(ruling, grounds=shared) for ruling in rulings]
    return replace(
        rulings[0],
        rule=" or ".join(dict.fromkeys(ruling.rule for ruling in rulings)),
        because=" Or: ".join(dict.fromkeys(ruling.because for ruling in rulings)),
        cite="; ".join(dict.fromkeys(ruling.cite for ruling in rulings)),
    )


def _least_sure(rulings: Iterable[Ruling]) -> Confidence:
    return min((ruling.confidence for ruling in rulings), key=_WORST.index)
