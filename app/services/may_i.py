"""May I?, asked by words: a nation, a job and answers, with or without a record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from app.domain.may_i import (
    JOBS,
    NATIONS,
    QUESTIONS,
    Job,
    Known,
    Nation,
    known_of,
    may_i,
    nation_of,
    questions_of,
)
from app.domain.may_i.shapes import MayIAnswer, shaped
from app.domain.record import Record
from app.errors import InvalidError, NotFoundError
from app.services.isolation import may_be_worked_on

NOTHING_KNOWN = Known(nation=None, answers={}, within={}, source={})


def asked(
    job: Job,
    nation: str | None,
    answers: Mapping[str, str],
    record: Record | None = None,
    at: str = "",
) -> MayIAnswer:
    """Return what the rules say of a job.

    Args:
        job: The job.
        nation: Code of the nation; None for the record's own.
        answers: Codes of questions, with codes of their answers.
        record: The home, whose facts are used where no answer is given.
        at: Reference of the room or point where it is; may be empty.

    Raises:
        NotFoundError: There is no such thing in the record.
        InvalidError: The nation is not said, there is no such nation, or the job does
            not ask what is answered.
    """
    known = _known(record, at)
    where = _nation(nation, known)
    refuse_unasked(job, answers, known)
    every = {**known.answers_to(job), **answers}
    home = record.home if record else None
    return shaped(job, may_i(where, job, every, known.within), every, home)


def refuse_unasked(job: Job, answers: Mapping[str, str], known: Known) -> None:
    """Refuse an answer to what a job does not ask in any nation.

    Raises:
        InvalidError: There is one; the sentence says what the job asks.
    """
    # Scotland asks all that the others ask, and of the building besides.
    asked = {q.code: q for q in questions_of("scotland", job, known.within)}
    for code, answer in answers.items():
        if code not in asked:
            raise InvalidError(
                f"“{job.title}” does not ask {code}. It asks: {', '.join(asked)}."
            )
        if answer not in asked[code].answers:
            names = ", ".join(asked[code].answers)
            raise InvalidError(
                f"“{answer}” does not answer {code} here. There is: {names}."
            )


def read_answers(texts: Iterable[str]) -> dict[str, str]:
    """Return answers written as ``question=answer``.

    Raises:
        InvalidError: One of them is none; the sentence says what there is.
    """
    found = {}
    for text in texts:
        code, _, answer = text.partition("=")
        if code not in QUESTIONS:
            names = ", ".join(QUESTIONS)
            raise InvalidError(f"There is no question “{code}”. There is: {names}.")
        if answer not in QUESTIONS[code].answers:
            names = ", ".join(QUESTIONS[code].answers)
            raise InvalidError(f"“{answer}” does not answer {code}. There is: {names}.")
        found[code] = answer
    return found


def the_job(code: str) -> Job:
    """Return the job of a code.

    Raises:
        NotFoundError: There is none.
    """
    if code not in JOBS:
        raise NotFoundError(f"There is no job “{code}”. List them: ways may-i --jobs")
    return JOBS[code]


def _known(record: Record | None, at: str) -> Known:
    if record is None:
        if at:
            raise InvalidError("A place of the record needs a home: name it, --home.")
        return NOTHING_KNOWN
    if at and not may_be_worked_on(record, at):
        home = record.home.ref
        raise NotFoundError(
            f"No point, room, circuit or board is called {at} in {home}."
        )
    return known_of(record, at)


def _nation(code: str | None, known: Known) -> Nation:
    nation = known.nation if code is None else nation_of(code)
    if nation is None:
        names = ", ".join(NATIONS)
        raise InvalidError(f"Say in which nation: --nation {names}.")
    return nation
