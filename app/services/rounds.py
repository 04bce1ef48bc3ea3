"""Rounds that were written down elsewhere, taken into a home."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence

from sqlalchemy import Connection

from app.domain.record import Device, Point, Record
from app.domain.trace.rounds import begun, with_readings
from app.errors import InvalidError, Problem
from app.interchange.rounds import RoundInFile, rounds_from
from app.services.homes import OpenHome, save
from app.store.changes import change_sent_as


def read_rounds(connection: Connection, at_start: OpenHome, data: bytes) -> int:
    """Take rounds in from a file, all or none; return how many.

    The same file taken in again changes nothing, and none are returned.

    Raises:
        InvalidError: The file holds no rounds, or names what is not there.
    """
    rounds = rounds_from(data)
    problems = tuple(_problems(at_start.record, rounds))
    if problems:
        raise InvalidError("The rounds do not fit this home.", problems)
    once = hashlib.sha256(data).hexdigest()
    if change_sent_as(connection, at_start.key, once):
        return 0
    sentence = f"{len(rounds)} rounds taken in from a file."
    new = _with(at_start.record, rounds)
    save(connection, at_start, new, sentence, once=once)
    return len(rounds)


def _problems(record: Record, rounds: Sequence[RoundInFile]) -> Iterator[Problem]:
    for number, each in enumerate(rounds):
        place = f"rounds.{number}"
        for ref in each.off:
            if not record.find(Device, ref):
                yield Problem(f"{place}.off", f"there is no device “{ref}”")
        marked = (*each.dead, *each.live, *each.not_looked)
        for ref in dict.fromkeys(marked):
            if not record.find(Point, ref):
                yield Problem(place, f"there is no point “{ref}”")
            if marked.count(ref) > 1:
                yield Problem(place, f"point “{ref}” stands in it more than once")


def _with(record: Record, rounds: Sequence[RoundInFile]) -> Record:
    for each in rounds:
        about = {"how": each.how, "note": each.note, "stage": "done", "when": each.when}
        started = {"started_at": each.at, "started_by": each.by}
        record, made = begun(record, {"off": each.off, **about, **started})
        seen = {"dead": each.dead, "live": each.live, "not_looked": each.not_looked}
        common = {"round": made.ref, "seen_at": each.at, "seen_by": each.by}
        record = with_readings(
            record,
            (
                {**common, "point": point, "seen": what, "how": each.how}
                for what, points in seen.items()
                for point in points
            ),
        )
    return record
