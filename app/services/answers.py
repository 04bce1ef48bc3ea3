"""Ask a record: find what is asked about, and answer; the command and programs use it.

The shapes are those of `app.domain.answers`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar, cast

from pydantic import TypeAdapter
from sqlalchemy import Connection

from app.domain.answers import PointAnswer, RoomAnswer, WayAnswer
from app.domain.ask import ask_point, ask_room, ask_way
from app.domain.circuits import CircuitAnswer
from app.domain.faults import Fault
from app.domain.history import Compared, Happened
from app.domain.load import LoadAnswer
from app.domain.may_i.shapes import MayIAnswer
from app.domain.network import network
from app.domain.record import Device, IntakeItem, Item, Point, Record, Result, Room
from app.domain.remarks import Remark
from app.domain.reminders import Due
from app.domain.trace.answers import PlanAnswer, TraceAnswer
from app.domain.tripped import Hanging
from app.errors import InvalidError, NotFoundError
from app.interchange.rounds import RoundsFile
from app.interchange.schema import published
from app.services.homes import OpenHome, open_home
from app.store.homes import all_homes

Answer = PointAnswer | WayAnswer | RoomAnswer
I = TypeVar("I", bound=Item)  # noqa: E741

QUESTIONS: Mapping[str, tuple[tuple[type[Item], ...], Callable[..., Answer]]] = {
    "point": ((Point,), ask_point),
    "way": ((Device, IntakeItem), ask_way),
    "room": ((Room,), ask_room),
}
SHAPES: Mapping[str, Any] = {
    "point": PointAnswer,
    "way": WayAnswer,
    "room": RoomAnswer,
    "circuit": CircuitAnswer,
    "load": LoadAnswer,
    "may-i": MayIAnswer,
    "faults": tuple[Fault, ...],
    "remarks": tuple[Remark, ...],
    "reminders": tuple[Due, ...],
    "results": tuple[Result, ...],
    "trace": TraceAnswer,
    "trace-plan": PlanAnswer,
    "rounds": RoundsFile,
    "tripped": tuple[Hanging, ...],
    "history": tuple[Happened, ...],
    "compare": Compared,
}


def the_home(connection: Connection, ref: str | None) -> OpenHome:
    """Return the home of a reference; without one, the only home that there is.

    Raises:
        NotFoundError: There is no such home, or none at all.
        InvalidError: There are several, and none was named.
    """
    if ref is not None:
        return open_home(connection, ref)
    found = all_homes(connection)
    if not found:
        raise NotFoundError(
            "There is no home here yet. Bring one in with: ways import FILE"
        )
    if len(found) > 1:
        names = ", ".join(home.ref for home in found)
        raise InvalidError(f"There are several homes: say which, --home {names}.")
    return open_home(connection, found[0].ref)


def answer(record: Record, question: str, ref: str) -> Answer:
    """Answer one of the three questions: ``point``, ``way`` or ``room``.

    Raises:
        NotFoundError: There is no such thing to ask about.
    """
    classes, ask = QUESTIONS[question]
    return ask(network(record), find(record, classes, ref))


def find(record: Record, classes: tuple[type[I], ...], ref: str) -> I:
    """Return the thing of a reference; capitals count only where they must.

    Raises:
        NotFoundError: There is no such thing, or there are several.
    """
    things = [item for cls in classes for item in record.of(cls)]
    exact = [item for item in things if item.ref == ref]
    alike = exact or [item for item in things if item.ref.lower() == ref.lower()]
    if len(alike) == 1:
        return alike[0]
    if alike:
        names = " or ".join(item.ref for item in alike)
        raise NotFoundError(f"“{ref}” may be {names}: write it as it stands.")
    raise NotFoundError(_no_such(record, classes, ref))


def answer_schema(question: str) -> dict[str, Any]:
    """Return the JSON Schema of what a question answers, or of ``faults``."""
    return published(TypeAdapter(SHAPES[question]).json_schema(mode="serialization"))


def as_json(value: object, question: str) -> Any:
    """Return an answer as values that JSON can hold, as its schema says."""
    return TypeAdapter(SHAPES[question]).dump_python(cast("Any", value), mode="json")


def _no_such(record: Record, classes: tuple[type[I], ...], ref: str) -> str:
    nouns = " or ".join(cls.noun.lower() for cls in classes)
    home = record.home.ref
    item = record.by_ref.get(ref)
    if item is not None:
        return f"{ref} is a {item.noun.lower()} in {home}, not a {nouns}."
    return f"There is no {nouns} “{ref}” in {home}."
