"""What the record answers of a job's questions, and where that stands in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.domain.may_i._case import Nation
from app.domain.may_i.answer import NATIONS, building_of, elsewhere
from app.domain.may_i.jobs import Job
from app.domain.may_i.zone import places_of
from app.domain.record import Home, Point, Record, Room
from app.domain.record.choices import DWELLINGS


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What a record says of the questions of a job.

    Attributes:
        nation: Whose rules hold; None if the home does not say.
        answers: Codes of questions, with the answer that the record gives.
        within: Codes of questions, with the answers that the record leaves open.
        source: Codes of questions, with where the record says so, in words.
    """

    nation: Nation | None
    answers: Mapping[str, str]
    within: Mapping[str, tuple[str, ...]]
    source: Mapping[str, str]

    def answers_to(self, job: Job) -> Mapping[str, str]:
        """Return its answers to a job; where it contradicts the job, that is asked."""
        if not elsewhere(job, self.within):
            return self.answers
        return {code: a for code, a in self.answers.items() if code != "place"}


def known_of(record: Record, ref: str = "") -> Known:
    """Return what a record says of a job, at a room or a point of it if one is named.

    Args:
        record: The record.
        ref: Reference of the room or point; anything else says nothing of a place.
    """
    answers: dict[str, str] = {}
    source: dict[str, str] = {}
    within: dict[str, tuple[str, ...]] = {}
    building = building_of(record.home.dwelling, record.home.storeys)
    if building is not None:
        answers["building"] = building
        source["building"] = _said_of_home(record.home)
    room, point = _where(record, ref)
    places = places_of(room, point)
    if places:
        within["place"] = places
        source["place"] = ", ".join(i.title for i in (point, room) if i is not None)
    if len(places) == 1:
        answers["place"] = places[0]
    return Known(
        nation=nation_of(record.home.nation),
        answers=answers,
        within=within,
        source=source,
    )


def nation_of(code: str) -> Nation | None:
    """Return a nation by its code; None for what is none."""
    return next((nation for nation in NATIONS if nation == code), None)


def _where(record: Record, ref: str) -> tuple[Room | None, Point | None]:
    point = record.find(Point, ref)
    return record.find(Room, point.room if point else ref), point


def _said_of_home(home: Home) -> str:
    storeys = f", storeys: {home.storeys}" if home.storeys is not None else ""
    return f"{DWELLINGS[home.dwelling]}{storeys}"
