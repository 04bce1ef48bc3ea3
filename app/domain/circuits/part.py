"""One question of arithmetic about a circuit, with its answer."""

from __future__ import annotations

from typing import Literal

from app.domain.circuits._working import CannotTell, Outcome, Working
from app.domain.record._field import Model, field

Sign = Literal["within", "beyond", "open"]
ASK = "Let an electrician look at it."


class Part(Model):
    """One question: what was worked out, beside what it is held against."""

    code: str = field("Code", ...)
    title: str = field("What is asked", ...)
    found: Outcome = field("What was worked out", ...)
    limit: Outcome | None = field("What it is held against")
    sign: Sign | None = field("Within, beyond or open; none: no limit applies")
    says: str = field("The answer in a sentence", ...)

    @property
    def assumes(self) -> tuple[str, ...]:
        """All that is assumed in it and in its limit."""
        both = [o for o in (self.found, self.limit) if isinstance(o, Working)]
        return tuple(dict.fromkeys(a for outcome in both for a in outcome.assumes))

    @property
    def workings(self) -> tuple[Working, ...]:
        """The calculations in it, each with those that it rests on, each once."""
        both = [o for o in (self.found, self.limit) if isinstance(o, Working)]
        every = {(w.label, w.put_in): w for o in both for w in o.chain()}
        return tuple(every.values())


def plain_part(code: str, title: str, found: Outcome, says: str) -> Part:
    """Return a question without a limit; open, if nothing could be worked out."""
    if isinstance(found, CannotTell):
        return open_part(code, title, found)
    return Part(code=code, title=title, found=found, says=says)


def open_part(
    code: str, title: str, found: CannotTell, beside: Outcome | None = None
) -> Part:
    """Return a question that cannot be answered, with what it would take."""
    says = found.sentence
    return Part(
        code=code, title=title, found=found, limit=beside, sign="open", says=says
    )


def held_against(
    code: str, title: str, found: Outcome, limit: Outcome, words: tuple[str, str]
) -> Part:
    """Return a result beside the most that it may be.

    Args:
        code: Code of the question.
        title: The question.
        found: What was worked out.
        limit: The most that it may be.
        words: What to say where it is within, and where it is beyond.
    """
    if isinstance(found, CannotTell):
        return open_part(code, title, found, limit)
    if isinstance(limit, CannotTell):
        return Part(
            code=code,
            title=title,
            found=found,
            limit=limit,
            sign="open",
            says=f"{found.shown}; the limit is open. {limit.sentence}",
        )
    said = (f"{found.shown}. {words[0]}", f"{found.shown}. {words[1]}")
    return judged(code, title, found, limit, said, within=found.value <= limit.value)


def judged(
    code: str,
    title: str,
    found: Working,
    limit: Working | None,
    words: tuple[str, str],
    *,
    within: bool,
) -> Part:
    """Return an answered question; what it assumes is said in the sentence."""
    part = Part(
        code=code,
        title=title,
        found=found,
        limit=limit,
        sign="within" if within else "beyond",
        says=words[0] if within else words[1],
    )
    if not part.assumes:
        return part
    return part.model_copy(update={"says": f"{part.says} Part of that is assumed."})
