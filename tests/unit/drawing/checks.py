"""What every drawing is held to, and records to draw."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

from app.domain.record import Record
from app.drawing.scene import Box, Scene, Stroke, Symbol

SHAPES = {"path", "circle", "ellipse", "rect", "line", "polyline", "polygon"}
TAGS = SHAPES | {"svg", "title", "desc", "defs", "pattern", "g", "a", "text"}
SVG = "{http://www.w3.org/2000/svg}"
Named = tuple[Box, str]
HOUSES = sorted((Path(__file__).parents[2] / "houses").glob("*.json"))


def read_house(path: Path) -> Record:
    document = json.loads(path.read_text(encoding="utf-8"))
    kept = {k: v for k, v in document.items() if k not in ("format", "version")}
    return record(**kept)


def record(**items: Any) -> Record:
    document = {"home": {"ref": "H", "name": "Home"}, **items}
    return Record.model_validate_json(json.dumps(document))


def link(ref: str) -> str | None:
    return f"/things/{ref}?a=1&b=2"


def nowhere(_ref: str) -> str | None:
    return None


def parsed(svg: str) -> ET.Element:
    root = ET.fromstring(svg)  # noqa: S314 - made by ourselves a moment ago
    assert root.tag == f"{SVG}svg"
    named = root.attrib["aria-labelledby"].split()
    ids = [e.attrib["id"] for e in root.iter() if "id" in e.attrib]
    assert len(ids) == len(set(ids))
    assert set(named) <= set(ids)
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in TAGS
        assert not {"style", "onclick"} & set(element.attrib)
    return root


def drawn_refs(root: ET.Element) -> list[str]:
    return [e.attrib["data-ref"] for e in root.iter() if "data-ref" in e.attrib]


def links(root: ET.Element) -> dict[str, str]:
    return {e.attrib["data-ref"]: e.attrib["href"] for e in root.iter(f"{SVG}a")}


def said(root: ET.Element) -> str:
    """All text that can be seen, without titles."""
    return " ".join(
        "".join([e.text or "", *(c.tail or "" for c in e)])
        for e in root.iter(f"{SVG}text")
    )


def assert_laid_out(scene: Scene) -> None:
    """Things do not overlap; text overlaps no other text and stays on the sheet."""
    sheet = Box(0, 0, scene.width, scene.height)
    things = [(thing.box, thing.ref) for thing in scene.things()]
    texts = [(text.box, text.text) for text in scene.texts()]
    assert not list(meeting(things))
    assert not list(meeting(texts))
    for box, _ in (*things, *texts):
        assert sheet.x <= box.x, box
        assert sheet.y <= box.y, box
        assert box.right <= sheet.right + 0.1, box
        assert box.bottom <= sheet.bottom + 0.1, box


def meeting(named: Iterable[Named]) -> Iterator[tuple[Named, Named]]:
    """Yield the pairs that overlap, looking from the top of the sheet downwards."""
    near: list[Named] = []
    for one in sorted(named, key=lambda pair: pair[0].y):
        near = [other for other in near if other[0].bottom > one[0].y]
        yield from ((other, one) for other in near if one[0].overlaps(other[0]))
        near.append(one)


def assert_legible(scene: Scene, screen: float = 358) -> None:
    """At a phone's width, 390 less the margins of the page, text is about 12 px."""
    for text in scene.texts():
        assert text.size * screen / scene.width >= 11.9


def assert_clear(scene: Scene) -> None:
    """No line runs through words or a symbol; no symbol lies on words or another."""
    symbols = [p for p in scene.strokes() if isinstance(p, Symbol)]
    drawn = [(Box(s.x, s.y, 24, 24), "symbol") for s in symbols]
    drawn += [(text.box, text.text) for text in scene.texts()]
    runs = [(run, "line") for run in _runs(scene)]
    for (one, name), (other, called) in meeting([*drawn, *runs]):
        assert name == called == "line", (name, one, called, other)


def _runs(scene: Scene) -> Iterator[Box]:
    """Yield the box of each straight run of a line."""
    for part in scene.strokes():
        if isinstance(part, Stroke) and not part.filled:
            for (x, y), (to_x, to_y) in pairwise(part.places):
                left, top = min(x, to_x), min(y, to_y)
                yield Box(left, top, abs(to_x - x), abs(to_y - y))
