"""One label as it will be printed, for the page that offers it."""

from __future__ import annotations

from app.domain.labels.fit import Line
from app.domain.labels.layout import Cell
from app.domain.labels.width import width
from app.drawing.svg import Value, element, words


def draw_label(cell: Cell) -> str:
    """Return a label as SVG, in millimetres, its lines where they will be printed."""
    said = " ".join(line.text for line in cell.fitted.lines)
    attributes: dict[str, Value] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "viewBox": f"0 0 {cell.width:g} {cell.height:g}",
        "role": "img",
        "aria-label": f"Label: {said}",
        "font-family": "Inter, system-ui, sans-serif",
    }
    frame: dict[str, Value] = {
        "width": cell.width,
        "height": cell.height,
        "fill": "none",
        "stroke": "currentColor",
        "stroke-width": 0.3,
    }
    lines = (_line(line) for line in cell.fitted.lines)
    return element("svg", attributes, element("rect", frame), *lines)


def _line(line: Line) -> str:
    """A face that is not ours is pressed into the room that ours takes."""
    place: dict[str, Value] = {
        "x": line.x,
        "y": line.y,
        "font-size": line.size,
        "font-weight": 600 if line.bold else None,
        "fill": "currentColor",
        "textLength": width(line.text, line.size, bold=line.bold),
        "lengthAdjust": "spacingAndGlyphs",
    }
    return element("text", place, words(line.text))
