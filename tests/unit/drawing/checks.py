"""What every drawing is held to, and records to draw."""

from __future__ import annotations

import json
from itertools import combinations
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

from app.domain.record import Record
from app.drawing.scene import Box, Scene

SHAPES = {"path", "circle", "ellipse", "rect", "line", "polyline", "polygon"}
TAGS = SHAPES | {"svg", "title", "desc", "defs", "pattern", "g", "a", "text"}
SVG = "{http://www.w3.org/2000/svg}"
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
    for one, other in combinations(scene.things(), 2):
        assert not one.box.overlaps(other.box), (one.ref, other.ref)
    for text, more in combinations(scene.texts(), 2):
        assert not text.box.overlaps(more.box), (text.text, more.text)
    for box in (*(t.box for t in scene.things()), *(t.box for t in scene.texts())):
        assert sheet.x <= box.x, box
        assert sheet.y <= box.y, box
        assert box.right <= sheet.right + 0.1, box
        assert box.bottom <= sheet.bottom + 0.1, box


def assert_legible(scene: Scene, screen: float = 358) -> None:
    """At a phone's width, 390 less the margins of the page, text is about 12 px."""
    for text in scene.texts():
        assert text.size * screen / scene.width >= 11.9
