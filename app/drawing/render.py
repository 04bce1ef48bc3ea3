"""From a scene to SVG text."""

from __future__ import annotations

from app.drawing.hatch import pattern
from app.drawing.ink import DASHES, FINE, HEAVY, LINE, MARKS
from app.drawing.scene import Frame, Part, Scene, Stroke, Symbol, Text, Thing
from app.drawing.svg import Value, element, number, words


def render(scene: Scene) -> str:
    """Return a scene as one ``svg`` element."""
    names = {part: f"{scene.ident}-{part}" for part in ("title", "desc")}
    size: dict[str, Value] = (
        {"width": scene.width, "height": scene.height} if not scene.fits else {}
    )
    attributes: dict[str, Value] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": "drawing__sheet",
        "viewBox": f"0 0 {number(scene.width)} {number(scene.height)}",
        **size,
        "role": "group",
        "aria-labelledby": f"{names['title']} {names['desc']}",
        "font-family": "system-ui, sans-serif",
    }
    return element(
        "svg",
        attributes,
        element("title", {"id": names["title"]}, words(scene.title)),
        element("desc", {"id": names["desc"]}, words(scene.description)),
        _definitions(scene),
        *(_any(part, scene.ident) for part in scene.parts),
    )


def _definitions(scene: Scene) -> str:
    used = {part.hatch for part in scene.strokes() if isinstance(part, Frame)}
    codes = sorted(code for code in used if code)
    hatches = [pattern(code, f"{scene.ident}-hatch-{code}") for code in codes]
    return element("defs", None, *hatches) if hatches else ""


def _any(part: Part | Thing, ident: str) -> str:
    return _thing(part, ident) if isinstance(part, Thing) else _part(part, ident)


def _thing(thing: Thing, ident: str) -> str:
    name = "drawing__thing drawing__thing--lit" if thing.lit else "drawing__thing"
    box = thing.box
    target: dict[str, Value] = {
        "x": box.x,
        "y": box.y,
        "width": box.width,
        "height": box.height,
        "fill": "none",
        "pointer-events": "all",
    }
    return element(
        "a" if thing.href is not None else "g",
        {"class": name, "data-ref": thing.ref, "href": thing.href},
        element("title", None, words(thing.title)),
        element("rect", {"class": "drawing__target", **target}),
        *(_part(part, ident) for part in thing.parts),
    )


def _part(part: Part, ident: str) -> str:
    if isinstance(part, Frame):
        return _frame(part, ident)
    if isinstance(part, Stroke):
        return _stroke(part)
    return _text(part) if isinstance(part, Text) else _symbol(part)


_WEIGHTS = {LINE: "", FINE: "fine", HEAVY: "heavy", MARKS: "marks"}


def _ink(
    weight: float, dashes: str | None, *, lit: bool, faint: bool = False
) -> dict[str, Value]:
    said = (
        _WEIGHTS.get(weight),
        "dashed" if dashes == DASHES else "",
        "lit" if lit else "",
        "faint" if faint else "",
    )
    return {
        "class": " ".join(["ink", *(f"ink--{state}" for state in said if state)]),
        "fill": "none",
        "stroke": "currentColor",
        "stroke-width": weight,
        "stroke-dasharray": dashes,
    }


def _frame(frame: Frame, ident: str) -> str:
    box = frame.box
    place: dict[str, Value] = {
        "x": box.x,
        "y": box.y,
        "width": box.width,
        "height": box.height,
    }
    outline = element(
        "rect",
        {
            **_ink(
                frame.weight,
                DASHES if frame.dashed else None,
                lit=frame.lit,
                faint=frame.faint,
            ),
            **place,
            "rx": frame.corner or None,
        },
    )
    if not frame.hatch:
        return outline
    fill = f"url(#{ident}-hatch-{frame.hatch})"
    return element("rect", {**place, "fill": fill}) + outline


def _stroke(stroke: Stroke) -> str:
    path = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in stroke.places)
    ink = _ink(stroke.weight, stroke.dashes, lit=stroke.lit, faint=stroke.faint)
    if stroke.filled:
        ink |= {"class": f"{ink['class']} ink--solid", "fill": "currentColor"}
        path += "Z"
    return element("path", {**ink, "d": path})


def _text(text: Text) -> str:
    turn = f"rotate(-90 {number(text.x)} {number(text.y)})" if text.turned else None
    whole = element("title", None, words(text.whole)) if text.whole else ""
    return element(
        "text",
        {
            "x": text.x,
            "y": text.y,
            "font-size": text.size,
            "font-weight": 600 if text.bold else None,
            "text-anchor": None if text.anchor == "start" else text.anchor,
            "transform": turn,
            "fill": "currentColor",
        },
        whole,
        words(text.text),
    )


def _symbol(symbol: Symbol) -> str:
    ink = _ink(FINE if symbol.faint else LINE, None, lit=False, faint=symbol.faint)
    place = f"translate({number(symbol.x)} {number(symbol.y)})"
    return element(
        "g", {**ink, "transform": place, "aria-hidden": "true"}, symbol.drawn
    )
