"""What a new item probably is: a guess to confirm in its form, never stored."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from app.domain.board import left_feeder
from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Item, Record


def guesses(
    cls: type[Item], record: Record, given: Mapping[str, str]
) -> dict[str, Any]:
    """Return values to begin the form of a new item with."""
    guess = GUESSES.get(cls.sort)
    return guess(record, given) if guess else {}


def _intake(record: Record, given: Mapping[str, str]) -> dict[str, Any]:
    """An item follows the last one of the chain, and stands where that one stands."""
    kind = INTAKE_KINDS.get(given.get("kind", ""))
    if kind is None:
        return {}
    chain = [i for i in record.intake if INTAKE_KINDS[i.kind].carries_supply]
    mains = [s.ref for s in record.sources if s.kind == "network"]
    before = chain[-1].ref if chain else next(iter(mains), None)
    return {
        "owner": kind.usual_owner,
        "fed_from": before if kind.carries_supply else None,
        "room": chain[-1].room if chain else None,
    }


def _board(record: Record, _given: Mapping[str, str]) -> dict[str, Any]:
    """A first board hangs on the end of the intake."""
    chain = [i for i in record.intake if INTAKE_KINDS[i.kind].carries_supply]
    feeding = {i.fed_from for i in record.intake} | {b.fed_from for b in record.boards}
    ends = [i for i in chain if i.ref not in feeding]
    return {
        "owner": "consumer",
        "fed_from": ends[-1].ref if ends else None,
        "room": chain[-1].room if chain else None,
    }


def _device(record: Record, given: Mapping[str, str]) -> dict[str, Any]:
    """A device follows the last RCD or main switch to its left."""
    board = given.get("board", "")
    return {"fed_from": left_feeder(record.devices_of(board), given.get("kind", ""))}


GUESSES: dict[str, Callable[[Record, Mapping[str, str]], dict[str, Any]]] = {
    "intake": _intake,
    "board": _board,
    "device": _device,
}
