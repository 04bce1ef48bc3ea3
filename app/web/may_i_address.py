"""A question to “May I?” in an address: the job's place, the nation, every answer.

Nothing of it is kept elsewhere, so a page that is reloaded, or sent to someone who
lives there too, says the same.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from flask import request, url_for

from app.domain.may_i import QUESTIONS, Nation, nation_of
from app.domain.record import Item, Record
from app.services.isolation import may_be_worked_on


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What an address says of a job.

    Attributes:
        nation: The nation asked for, where it is not the home's own.
        at: Reference of the room, point, circuit or board that it is about; may be
            empty.
        answers: Codes of questions, with codes of their answers.
    """

    nation: Nation | None
    at: str
    answers: Mapping[str, str]

    @property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Names and values that say all of it in an address or a form."""
        return (
            *((("nation", self.nation),) if self.nation else ()),
            *((("at", self.at),) if self.at else ()),
            *self.answers.items(),
        )

    def url(self, endpoint: str, home: str, job: str) -> str:
        """Return the address of a page of this question."""
        path, query = url_for(endpoint, home=home, job=job), urlencode(self.pairs)
        return f"{path}?{query}" if query else path

    def without(self, name: str) -> Asked:
        """Return it with one thing open again: ``at``, or the code of a question."""
        if name == "at":
            return replace(self, at="")
        kept = {code: a for code, a in self.answers.items() if code != name}
        return replace(self, answers=kept)

    def about(self, record: Record) -> Item | None:
        """Return the thing of the record that it is about."""
        return record.by_ref.get(self.at)


def asked(record: Record) -> Asked:
    """Return what the address of this request says; what makes no sense is left out."""
    args = request.args
    said = {code: args.get(code, "") for code in QUESTIONS}
    at = args.get("at", "")
    return Asked(
        nation=nation_of(args.get("nation", "")),
        at=at if may_be_worked_on(record, at) else "",
        answers={c: said[c] for c, q in QUESTIONS.items() if said[c] in q.answers},
    )
