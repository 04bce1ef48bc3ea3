from __future__ import annotations

import shutil
import subprocess
from datetime import date
from pathlib import Path

import pytest

from app.paths import resource_dir
from app.report import Paper, PaperError, as_pdf, pdf
from app.report.plain import Plain, plain
from tests.unit.report.pdf import MM, assert_accessible, fonts_of, opened, text_of

DAY = date(2026, 3, 5)
TITLE = "Check of the printer"


def calibration(sheet: str | None = None) -> Paper:
    return Paper(template="calibration", title=TITLE, day=DAY, data={"sheet": sheet})


def own_template(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, body: str) -> None:
    folder = tmp_path / "print"
    folder.mkdir()
    shutil.copy(resource_dir("templates") / "print" / "sheet.typ", folder)
    (folder / "own.typ").write_text(
        f'#import "sheet.typ": *\n#show: sheet.with(data)\n= Own\n{body}',
        encoding="utf-8",
    )
    monkeypatch.setattr(pdf, "resource_dir", lambda _name: tmp_path)


def test_it_is_tagged_titled_in_british_english_with_its_fonts_inside() -> None:
    assert_accessible(as_pdf(calibration()), TITLE)


def test_the_same_paper_on_the_same_day_is_the_same_file() -> None:
    assert as_pdf(calibration()) == as_pdf(calibration())


def test_both_rulers_are_100_mm() -> None:
    with opened(as_pdf(calibration())) as document:
        lines = [*document.pages[0].lines]
    wide = max(line["x1"] - line["x0"] for line in lines)
    tall = max(line["bottom"] - line["top"] for line in lines)
    assert (wide / MM, tall / MM) == pytest.approx((100, 100), abs=0.2)


def test_the_frame_stands_10_mm_inside_the_edge() -> None:
    with opened(as_pdf(calibration())) as document:
        page = document.pages[0]
        (frame,) = page.rects
        edges = (frame["x0"], frame["top"], page.width - frame["x1"])
        below = page.height - frame["bottom"]
    assert [edge / MM for edge in (*edges, below)] == pytest.approx([10] * 4, abs=0.2)


def test_letters_without_a_glyph_are_replaced_and_the_rest_stays() -> None:
    made = as_pdf(calibration("Box 😀 日本 \x07 Ω ≥ é"))
    assert "Box □ □□ Ω ≥ é" in text_of(made)
    assert_accessible(made, TITLE)


def test_more_unknown_letters_than_rounds_still_end_in_a_file() -> None:
    made = as_pdf(calibration("".join(map(chr, range(0x4E00, 0x4E00 + 60))) + " end"))
    assert text_of(made).count("□") == 60
    assert "end" in text_of(made)


def test_text_is_never_read_as_markup() -> None:
    made = as_pdf(calibration('#read("/etc/hosts") *b* $x$'))
    assert '#read("/etc/hosts") *b* $x$' in text_of(made)


def test_a_drawing_keeps_its_words_and_takes_the_print_face(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    own_template(tmp_path, monkeypatch, '#image("face.svg", alt: "The face")')
    drawing = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 20"'
        ' font-family="system-ui, sans-serif"><text y="12">Way one 日</text></svg>'
    )
    paper = Paper(
        template="own", title="Own", day=DAY, data={}, drawings={"face": drawing}
    )
    made = as_pdf(paper)
    assert "Way one □" in text_of(made)
    with opened(made) as document:
        assert all("Inter" in name for name in fonts_of(document.pages[0]))


def test_a_picture_without_words_for_it_is_refused_in_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    own_template(tmp_path, monkeypatch, '#image("face.svg")')
    drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"></svg>'
    paper = Paper(
        template="own", title="Own", day=DAY, data={}, drawings={"face": drawing}
    )
    with pytest.raises(PaperError, match=r"The PDF could not be made: .*alt"):
        as_pdf(paper)


def test_a_template_that_does_not_end_is_given_up(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    endless = "#let n = 0\n#for a in range(100000) { for b in range(100000) { n = a } }"
    own_template(tmp_path, monkeypatch, endless)
    paper = Paper(template="own", title="Own", day=DAY, data={})
    with pytest.raises(PaperError, match="not ready after 1 seconds"):
        as_pdf(paper, seconds=1)


def test_it_leaves_nothing_behind(monkeypatch: pytest.MonkeyPatch) -> None:
    folders: list[Path] = []
    run = subprocess.run

    def noted(*args: object, **named: object) -> object:
        folders.append(Path(str(named["cwd"])))
        return run(*args, **named)  # type: ignore[call-overload]

    monkeypatch.setattr(subprocess, "run", noted)
    as_pdf(calibration())
    assert [folder.exists() for folder in folders] == [False]


def test_text_is_made_plain_however_deep_it_lies() -> None:
    given: dict[str, Plain] = {
        "a": ["x\x00y", {"b": "half \ud800 \u202eturned\ttab\nline"}],
        "n": 1.5,
    }
    assert plain(given) == {"a": ["xy", {"b": "half □ turned tab\nline"}], "n": 1.5}
