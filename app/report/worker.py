"""The process that runs Typst: ``python -m app.report.worker TEMPLATE``.

It works in the current folder: reads ``TEMPLATE.typ`` and what that reads, writes
``out.pdf``. One letter that no font has stops a PDF/UA document, so such letters are
replaced and the document is set again.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

import fontpkg_inter
import typst

from app.report.plain import MARK

ROUNDS = 40
_NOT_SHOWN = re.compile(r'the text `"(.*)"` could not be displayed', re.DOTALL)
_CODE = re.compile(r"\\u\{([0-9a-f]+)\}")
# Latin with its accents and the marks that are common in English text.
_COMMON = re.compile("[^\x00-\u024f\u2010-\u2027\u2030-\u203a\u20ac\u25a1]")


def main(arguments: list[str]) -> int:
    """Set the template named; return the exit status."""
    (template,) = arguments
    folder = Path.cwd()
    try:
        (folder / "out.pdf").write_bytes(_set(folder, f"{template}.typ"))
    except typst.TypstError as error:
        print(error.message.splitlines()[0], file=sys.stderr)  # noqa: T201
        return 1
    return 0


def _set(folder: Path, template: str) -> bytes:
    """Return the PDF; letters are replaced until all that is left can be shown."""
    for _ in range(ROUNDS):
        try:
            return _once(folder, template)
        except typst.TypstError as error:
            found = _NOT_SHOWN.search(error.message)
            if found is None:
                raise
            _replace(folder, re.compile(re.escape(_named(found[1]))))
    _replace(folder, _COMMON)
    return _once(folder, template)


def _once(folder: Path, template: str) -> bytes:
    fonts = typst.Fonts(
        include_system_fonts=False, font_paths=[fontpkg_inter.ROOT / "files"]
    )
    made = typst.compile(
        folder / template,
        root=folder,
        font_paths=fonts,
        ignore_system_fonts=True,
        format="pdf",
        pdf_standards=["ua-1"],
    )
    if not isinstance(made, bytes):
        raise TypeError("Typst gave no single file")
    return made


def _named(text: str) -> str:
    """Return the letters of a message, which writes some as their code."""
    return _CODE.sub(lambda code: chr(int(code[1], 16)), text)


def _replace(folder: Path, letters: re.Pattern[str]) -> None:
    for path in (folder / "data.json", *folder.glob("*.svg")):
        text = path.read_text(encoding="utf-8")
        path.write_text(letters.sub(MARK, text), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
