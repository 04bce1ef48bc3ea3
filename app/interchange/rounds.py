"""Rounds as a file: what was off, and what each point did."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, ValidationError

from app.domain.record import choices
from app.domain.record._field import Model, Moment, OneOf, Ref, ShortText, field
from app.errors import InvalidError, Problem

MOST_BYTES = 2**21


class RoundInFile(Model):
    """One round.  A point that stands in none of the three lists was not looked at."""

    off: tuple[Ref, ...] = field("Devices switched off; none: a first look", ())
    when: Annotated[str, OneOf(choices.DAY_OR_NIGHT)] = field("By day or night", "day")
    dead: tuple[Ref, ...] = field("Points that went dead", ())
    live: tuple[Ref, ...] = field("Points that stayed live", ())
    not_looked: tuple[Ref, ...] = field("Points that were not looked at", ())
    how: Annotated[str, OneOf(choices.HOW_SEEN)] = field("Seen with", "unknown")
    at: Moment | None = field("When, in UTC")
    by: ShortText = field("By whom", "")
    note: ShortText = field("Note", "")


class RoundsFile(Model):
    """Rounds in the order in which they were made."""

    rounds: Annotated[tuple[RoundInFile, ...], Field(max_length=500)] = field(
        "Rounds", ...
    )


def rounds_from(data: bytes) -> tuple[RoundInFile, ...]:
    """Read rounds from a JSON file.

    Raises:
        InvalidError: It is none, with each place and reason; nothing of it is taken.
    """
    if len(data) > MOST_BYTES:
        raise InvalidError(f"The file is larger than {MOST_BYTES // 2**20} MB.")
    try:
        return RoundsFile.model_validate_json(data).rounds
    except ValidationError as error:
        problems = tuple(
            Problem(".".join(map(str, each["loc"])) or "file", each["msg"])
            for each in error.errors()
        )
        raise InvalidError("The file holds no rounds.", problems) from error
