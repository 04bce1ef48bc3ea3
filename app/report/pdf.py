"""From a template and its data to a PDF.

The template is set by Typst in a process of its own: it can be ended when it takes too
long, and what it keeps in memory goes with it. It sees one clean folder and no font but
ours and Typst's own, so that every machine prints the same.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from app.errors import AppError
from app.paths import PACKAGE, resource_dir
from app.report.plain import Plain, plain

SECONDS = 30.0
FACE = "Inter"

_SVG_FACE = re.compile(r'\bfont-family="[^"]*"')


class PaperError(AppError):
    """The PDF could not be made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A document to be set.

    Attributes:
        template: Name of a file in ``templates/print``, without its ending.
        title: The document's title.
        day: The day that it carries; the same paper on the same day is the same file.
        data: What the template finds in ``data.json``, beside the title and the day.
        drawings: SVG by name; the template finds each as ``<name>.svg``.
        photos: JPEG or PNG by file name.
    """

    template: str
    title: str
    day: date
    data: Mapping[str, Plain]
    drawings: Mapping[str, str] = field(default_factory=dict)
    photos: Mapping[str, bytes] = field(default_factory=dict)


def as_pdf(paper: Paper, *, seconds: float = SECONDS) -> bytes:
    """Return the document as a tagged PDF (PDF/UA-1), its fonts inside.

    Letters that no font here has are printed as a replacement mark.

    Raises:
        PaperError: It took too long, or could not be set; says so in a sentence.
    """
    with TemporaryDirectory(prefix="ways-paper-") as name:
        folder = Path(name)
        _lay_out(paper, folder)
        _run(folder, paper.template, seconds)
        return (folder / "out.pdf").read_bytes()


def _lay_out(paper: Paper, folder: Path) -> None:
    """Put the templates, the data and the pictures into the folder."""
    for template in resource_dir("templates").glob("print/*.typ"):
        shutil.copyfile(template, folder / template.name)
    head: dict[str, Plain] = {
        "title": paper.title,
        "day": paper.day.isoformat(),
    }
    text = json.dumps(plain({**head, **paper.data}), ensure_ascii=False)
    (folder / "data.json").write_text(text, encoding="utf-8")
    for name, drawing in paper.drawings.items():
        (folder / f"{name}.svg").write_text(_in_print(drawing), encoding="utf-8")
    for name, photo in paper.photos.items():
        (folder / name).write_bytes(photo)


def _in_print(drawing: str) -> str:
    """Name the print face: Typst takes a serif for a face that it does not know."""
    return _SVG_FACE.sub(f'font-family="{FACE}"', drawing)


def _run(folder: Path, template: str, seconds: float) -> None:
    command = [sys.executable, "-m", "app.report.worker", template]
    try:
        done = subprocess.run(  # noqa: S603
            command,
            cwd=folder,
            env={**os.environ, "PYTHONPATH": str(PACKAGE.parent)},
            capture_output=True,
            check=False,
            timeout=seconds,
            text=True,
            encoding="utf-8",
            errors="replace",
        )
    except subprocess.TimeoutExpired as error:
        sentence = (
            f"The PDF was not ready after {seconds:g} seconds, so it was given up."
        )
        raise PaperError(f"{sentence} Print the page itself instead.") from error
    if done.returncode:
        reason = (done.stderr.strip().splitlines() or ["no reason given"])[-1]
        raise PaperError(f"The PDF could not be made: {reason}")
