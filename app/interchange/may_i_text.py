"""What the rules say of a job, as plain text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.may_i import VERDICTS, jobs_found
from app.domain.may_i.shapes import MayIAnswer, Missing
from app.domain.record.choices import NATIONS


def may_i_text(answer: MayIAnswer) -> str:
    """Return an answer as text."""
    checked = f"{answer.checked.day} {answer.checked:%B %Y}"
    lines = [
        f"{answer.title}, by the rules of {NATIONS[answer.nation]}",
        "",
        f"Must someone be told?  {answer.says}.",
        f"  {answer.because}",
    ]
    if answer.rule:
        lines += [f"  Rule {answer.rule}: {answer.cite}. {answer.how_sure}."]
    for each in answer.decided_by:
        lines += [f"  It turned on: {each.question} {each.answer}."]
    lines += [f"  Looked up on {checked}. {answer.decides}"]
    lines += _open(answer)
    for route in answer.routes:
        lines += ["", f"  {route.who}", f"    {route.when}", f"    {route.paper}"]
    lines += ["", f"May I do it myself?  {answer.allowed}"]
    lines += ["", f"To what standard?  {answer.standard}"]
    lines += [f"  - {line}" for line in answer.cautions]
    lines += ["", "Call someone in for"]
    lines += [f"  - {line}" for line in answer.left_to_others]
    return "\n".join((*lines, "", f"Not looked up: {answer.not_checked}"))


def jobs_text() -> str:
    """Return every job with its code, by group."""
    lines: list[str] = []
    for group, jobs in jobs_found():
        lines += ["", group, *(f"  {job.code:<20} {job.title}" for job in jobs)]
    return "\n".join(lines[1:])


def _open(answer: MayIAnswer) -> list[str]:
    if not answer.missing:
        return []
    may_be = "; or: ".join(VERDICTS[code] for code in answer.may_be)
    return [
        f"  It may be: {may_be}.",
        "",
        "Answer what you know",
        *_asked(answer.missing),
    ]


def _asked(missing: Iterable[Missing]) -> Iterator[str]:
    for each in missing:
        yield f"  {each.question} {each.why}"
        for code, words in each.answers.items():
            option = "--place " if each.code == "place" else f"--answer {each.code}="
            yield f"    {option}{code:<16} {words}"
