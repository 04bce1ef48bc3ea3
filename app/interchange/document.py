"""One home as a JSON document, versioned; out without loss, in whole or not at all.

The document is the record itself with two keys before it: ``format`` and ``version``.
On request two more stand behind it: ``began`` and ``history``.
"""

from __future__ import annotations

import codecs
import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, NoReturn

from pydantic import ValidationError

from app.domain.history import History
from app.domain.links import broken_links
from app.domain.record import SORTS, Home, Item, Record, specs
from app.errors import InvalidError, Problem
from app.interchange.history import KEYS, HistoryInFile, history_from, history_values
from app.interchange.letters import unwritable
from app.interchange.refusal import problem_of, refuse
from app.interchange.schema import published

FORMAT = "ways-and-points record"
VERSION = 1
NO_DOCUMENT = (
    "This is no document of a home: that is a .json file, or comes in a .zip pack."
)
UTF_16 = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
MOST_BYTES = 8 * 2**20
# A long history makes a document larger; a command may take it.
MOST_BYTES_WITH_HISTORY = 64 * 2**20
MOST_ITEMS = 20_000
MOST_DEPTH = 12
MOST_DIGITS = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """What a document holds: a record, and its history if that was asked for."""

    record: Record
    history: History | None


def to_document(record: Record, history: History | None = None) -> str:
    """Return a record as a document: UTF-8, one item a line, always the same.

    Args:
        record: The record.
        history: What was done to it, if that is to be kept in the document too.
    """
    values = record.model_dump(mode="json")
    lines = [_pair("format", FORMAT), _pair("version", VERSION)]
    lines.append(_pair("home", values.pop("home")))
    lines += [_list(name, items) for name, items in values.items()]
    if history is not None:
        past = history_values(history)
        lines.append(_pair("began", past["began"]))
        lines.append(_list("history", past["history"]))
    return "{\n" + ",\n".join(lines) + "\n}\n"


def from_document(data: bytes) -> Record:
    """Return the record that a document holds.

    Raises:
        InvalidError: It cannot be taken; its problems say where and why.
    """
    return document_from(data).record


def document_from(data: bytes, most: int | None = None) -> Document:
    """Return the record that a document holds, with its history if it is there.

    Args:
        data: The document.
        most: How many bytes are taken; else `MOST_BYTES`.

    Raises:
        InvalidError: It cannot be taken; its problems say where and why.
    """
    values = _parsed(data, most or MOST_BYTES)
    _check_heading(values)
    past = {key: values.pop(key) for key in KEYS if key in values}
    body = {k: v for k, v in values.items() if k not in ("format", "version")}
    _check_size(body)
    if written_as_text := list(_texts_for_numbers(body)):
        refuse(written_as_text)
    try:
        record = Record.model_validate_json(json.dumps(body))
    except ValidationError as error:
        refuse([problem_of(e) for e in error.errors(include_url=False)])
    problems = broken_links(record)
    if problems:
        refuse(list(problems))
    history = history_from(past, record) if past else None
    return Document(record=record, history=history)


def document_schema() -> dict[str, Any]:
    """Return the JSON Schema of the document."""
    schema = published(Record.model_json_schema())
    schema["title"] = f"Ways and Points record, version {VERSION}"
    heading = {"format": {"const": FORMAT}, "version": {"const": VERSION}}
    past = published(HistoryInFile.model_json_schema())
    schema["properties"] = heading | schema["properties"] | past["properties"]
    schema["$defs"] |= past["$defs"]
    schema["required"] = [*heading, *schema["required"]]
    return schema


def _list(name: str, items: list[Any]) -> str:
    rows = ",\n".join(f"  {_text(item)}" for item in items)
    return f" {_text(name)}: [\n{rows}\n ]" if items else _pair(name, [])


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


def _pair(name: str, value: Any) -> str:
    return f" {_text(name)}: {_text(value)}"


def _parsed(data: bytes, most: int) -> dict[str, Any]:
    if len(data) > most:
        raise InvalidError(
            f"It is larger than {most // 2**20} MB. Nothing was changed."
        )
    values = _decoded(data)
    if not isinstance(values, dict):
        refuse([Problem("the document", "It must be an object in braces.")])
    if _depth(values) > MOST_DEPTH:
        refuse([Problem("the document", "It is nested too deeply.")])
    if broken := list(unwritable(values)):
        refuse(broken)
    return values


def _decoded(data: bytes) -> Any:
    start = data.removeprefix(codecs.BOM_UTF8).lstrip()[:2]
    if not start:
        refuse([Problem("the file", "It is empty.")])
    if start[:1] not in (b"{", b"[") and start not in UTF_16:
        refuse([Problem("the file", NO_DOCUMENT)])
    try:
        return json.loads(
            data.decode("utf-8-sig"),
            object_pairs_hook=_no_key_twice,
            parse_constant=_no_constant,
            parse_int=_whole_number,
        )
    except UnicodeDecodeError as error:
        refuse([Problem(f"byte {error.start}", "This is not UTF-8 text.")])
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        refuse([Problem(place, f"This is not whole JSON: {error.msg}.")])
    except ValueError as error:
        refuse([Problem("the document", str(error))])
    except RecursionError:
        refuse([Problem("the document", "It is nested too deeply.")])


def _no_key_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        keys = Counter(key for key, _ in pairs)
        twice = next(key for key, count in keys.items() if count > 1)
        shown = twice[:40].encode(errors="replace").decode()
        raise ValueError(f"The key “{shown}” stands twice in one object.")
    return found


def _no_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is not a number that a record can hold.")


def _whole_number(digits: str) -> int:
    if len(digits) > MOST_DIGITS:
        raise ValueError(
            f"A number of {len(digits)} digits is more than fits a record."
        )
    return int(digits)


def _depth(value: Any) -> int:
    """Return how deep a value is nested, without recursion."""
    deepest, waiting = 0, [(value, 1)]
    while waiting:
        here, depth = waiting.pop()
        deepest = max(deepest, depth)
        inner = here.values() if isinstance(here, dict) else here
        if isinstance(here, dict | list) and depth <= MOST_DEPTH:
            waiting += [(part, depth + 1) for part in inner]
    return deepest


def _check_heading(values: dict[str, Any]) -> None:
    if values.get("format") != FORMAT:
        refuse([Problem("format", f"It must say “{FORMAT}”.")])
    version = values.get("version")
    if isinstance(version, bool) or not isinstance(version, int):
        refuse([Problem("version", f"It must be the number {VERSION}.")])
    if version > VERSION:
        reason = (
            f"Version {version} is newer than this program knows; it reads {VERSION}."
        )
        refuse([Problem("version", reason)])
    if version != VERSION:
        refuse([Problem("version", f"There is no version {version}.")])


def _check_size(body: dict[str, Any]) -> None:
    count = sum(len(v) for v in body.values() if isinstance(v, list))
    if count > MOST_ITEMS:
        reason = f"It holds {count} items; {MOST_ITEMS} is the most."
        refuse([Problem("the document", reason)])


def _texts_for_numbers(body: dict[str, Any]) -> Iterator[Problem]:
    """Yield each text that stands for a decimal: pydantic takes it from JSON."""
    for cls in SORTS.values():
        items = body.get(cls.plural)
        for index, values in enumerate(items if isinstance(items, list) else ()):
            yield from _texts_in(cls, values, f"{cls.plural}[{index}]")
    yield from _texts_in(Home, body.get("home"), "home")


def _texts_in(cls: type[Item], values: Any, place: str) -> Iterator[Problem]:
    if isinstance(values, dict):
        for spec in specs(cls):
            if spec.type == "decimal" and isinstance(values.get(spec.name), str):
                yield Problem(f"{place}.{spec.name}", "It must be a number, not text.")
