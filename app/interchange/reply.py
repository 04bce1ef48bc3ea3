"""A reply as the page of a pack saves it, or a record document that came back."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any, NoReturn

from pydantic import ValidationError

from app.domain.record import Record
from app.domain.replies import Correction, Reply
from app.errors import InvalidError, Problem
from app.interchange.document import from_document
from app.interchange.letters import unwritable

FORMAT = "ways-and-points reply"
VERSION = 1
MOST_BYTES = 8 * 2**20
NAMES = ("by", "paper", "dated", "ways", "other")


def read_reply(data: bytes, home: str) -> tuple[Reply, Record | None]:
    """Return what came back: what is said in words, and the record if it is one.

    Args:
        data: The file.
        home: Reference of the home that it is to be about.

    Raises:
        InvalidError: It is neither, or of another home; its problems say where.
    """
    if len(data) > MOST_BYTES:
        sentence = f"It is larger than {MOST_BYTES // 2**20} MB. Nothing was changed."
        raise InvalidError(sentence)
    values = _values(data)
    if values.get("format") != FORMAT:
        record = from_document(data)
        _check_home(record.home.ref, home)
        return Reply(), record
    if values.get("version") != VERSION:
        _refuse("version", f"This program reads version {VERSION}.")
    _check_home(values.get("home"), home)
    _check_letters(values)
    odd = sorted(set(values) - {"format", "version", "home", *NAMES})
    if odd:
        _refuse(odd[0][:80], "A reply has no such field.")
    try:
        own = {name: values[name] for name in NAMES if name in values}
        return Reply.model_validate_json(json.dumps(own)), None
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        _refuse(".".join(str(part) for part in first["loc"]), first["msg"])


def typed_reply(
    lines: str, by: str, paper: str, dated: Any, refs: Iterable[str]
) -> Reply:
    """Return a reply typed from paper: a reference and what is said of it, by line.

    Raises:
        InvalidError: A line begins with none of ``refs``; its problems say which.
    """
    problems, found = [], []
    known = {ref.upper(): ref for ref in refs}
    for number, line in enumerate(lines.splitlines(), 1):
        ref, _, said = line.strip().partition(" ")
        said = said.strip().lstrip(":–- ").strip()
        if not ref:
            continue
        own = known.get(ref.rstrip(":,").upper())
        if own is None or not said:
            reason = _wrong_line(ref.rstrip(":,"), own)
            problems.append(Problem(f"line {number}", reason))
        else:
            found.append(Correction(ref=own, feeds=said))
    if problems:
        raise InvalidError("Some lines cannot be taken.", tuple(problems))
    return Reply(by=by, paper=paper, dated=dated, ways=tuple(found))


def _wrong_line(typed: str, own: str | None) -> str:
    if own is not None:
        return f"Say what {own} feeds, behind it."
    return (
        f"There is no “{typed[:40]}” in this home. Begin with a reference of this "
        "home, then say what it feeds."
    )


def _values(data: bytes) -> dict[str, Any]:
    try:
        values = json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        _refuse("the file", "This is no reply and no record document.")
    if not isinstance(values, dict):
        _refuse("the file", "This is no reply and no record document.")
    return values


def _check_home(found: object, home: str) -> None:
    if found != home:
        _refuse("home", f"It is about the home {ascii(found)[:42]}, not “{home}”.")


def _check_letters(values: dict[str, Any]) -> None:
    try:
        found = next(unwritable(values), None)
    except RecursionError:
        _refuse("the file", "It is nested too deeply.")
    if found:
        _refuse(ascii(found.place)[1:81], found.reason)


def _refuse(place: str, reason: str) -> NoReturn:
    raise InvalidError(
        "The reply cannot be taken; nothing was changed.", (Problem(place, reason),)
    )
