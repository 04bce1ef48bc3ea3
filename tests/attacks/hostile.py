"""A home whose every text is hostile: found from the declarations, none by hand."""

from __future__ import annotations

from itertools import count
from typing import Any

from app.domain.record import (
    SHORT,
    SORTS,
    Aside,
    FieldSpec,
    Home,
    Item,
    Record,
    Spot,
    Trip,
    specs,
)
from app.domain.replies import Correction, Reply

# What no program may work out: 911 times 977.
WORKED_OUT = "890047"
TEXTS = (
    "<script>document.title='zq'</script>",
    '"><img src=zq.png onerror="document.title=\'zq\'">',
    "'><svg onload=document.title='zq'></svg>",
    "javascript:document.title='zq'//",
    "{{ 911 * 977 }}{% raw %}${911*977}#{911*977}",
    "]]></title></style></textarea><b zq>-->",
    "\u202egnitrevni\u202c \u2066a\u2069 \u200fb",
    '#read("/etc/passwd") #(911 * 977) $911 dot 977$ *b* _i_ `c`',
    '\\"\\\\ \\u{41} \\n \\r %0d%0a ../../etc/passwd',
    "&lt;zq&gt;&amp;&#60;zq&#62;&xxe;<!ENTITY zq SYSTEM 'file:///etc/passwd'>",
    "=911*977+cmd|' /C calc'!A0",
    "+911*977",
    "-911*977",
    '@SUM(911*977);http://evil.example/zq" title="zq',
    "a;b,c\\;d:X-ZQ=1 END:VEVENT",
)
LONGEST = "\n".join(TEXTS) + "\nEND:VEVENT\nX-ZQ:1\n\tSet-Cookie: zq=1"
LONG_EVERY = 40
# What is checked digit by digit, and what is a code in all but its type.
ODD = {"mpan", "network_phone", "ref", "sha256"}


def hostile(record: Record, first: int = 0) -> Record:
    """Return a record with something hostile in every text that a document takes."""
    whole = record.having(**_missing(record)) if record.attachments else record
    number = count(first)
    lists = {
        cls.plural: tuple(_spoiled(item, number) for item in whole.of(cls))
        for cls in SORTS.values()
    }
    return whole.having(home=_spoiled(whole.home, number), **lists)


def spoiled_reply(record: Record) -> Reply:
    """Return a reply whose every text is hostile."""
    ways = [
        Correction(ref=circuit.ref, feeds=text)
        for circuit, text in zip(record.circuits, (LONGEST, *TEXTS), strict=False)
    ]
    return Reply(by=TEXTS[0], paper=TEXTS[1], other=LONGEST, ways=tuple(ways))


def texts_of(cls: type[Item | Home]) -> list[FieldSpec]:
    """Return the fields of a class that hold words."""
    return [s for s in specs(cls) if s.type in ("text", "long") and s.name not in ODD]


def _spoiled(item: Any, number: Any) -> Any:
    values = {spec.name: _text(spec, next(number)) for spec in texts_of(type(item))}
    return type(item).model_validate({**dict(item), **values})


def _text(spec: FieldSpec, number: int) -> str:
    if spec.type == "long" and number % LONG_EVERY == 0:
        return LONGEST[: spec.max_length]
    return TEXTS[number % len(TEXTS)][: min(spec.max_length, SHORT)]


def _missing(record: Record) -> dict[str, Any]:
    """Return one thing at least of each sort that the record has none of."""
    point, picture = record.points[0].ref, record.attachments[0].ref
    made: dict[str, Any] = {
        "asides": (Aside(ref="AS9", remark="x", reason="x", about=point),),
        "trips": (Trip(ref="TR9", moved="rcd"),),
        "spots": (Spot(ref="L9", attachment=picture, across=1, down=1, about=point),),
    }
    return {name: items for name, items in made.items() if not getattr(record, name)}
