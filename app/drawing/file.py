"""A drawing as a file of its own: black ink on white, with all that it needs inside."""

from __future__ import annotations

from dataclasses import replace

from app.drawing.render import render
from app.drawing.scene import Scene

_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_STYLE = (
    "<style>"
    "svg{color:#000;background:#fff}"
    "a{color:inherit;text-decoration:none}"
    ".ink--faint{stroke:#666}"
    "@media print{svg{max-width:100%;height:auto}}"
    "</style>"
)
_PAPER = '<rect width="100%" height="100%" fill="#fff"/>'


def as_file(scene: Scene) -> str:
    """Return a scene as the text of an SVG file that opens anywhere."""
    drawn = render(replace(scene, fits=False))
    head, end, rest = drawn.partition("</desc>")
    return f"{_HEAD}{head}{end}{_STYLE}{_PAPER}{rest}\n"
