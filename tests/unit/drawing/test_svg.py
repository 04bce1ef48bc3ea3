from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest

from app.drawing.hatch import HATCHES, pattern
from app.drawing.ink import shortened, text_width, wrapped
from app.drawing.svg import element, number, words

NASTY = '<script>alert("it\'s")</script> & ]]> \x00 \ufffe'


def test_text_and_attributes_come_back_as_they_were() -> None:
    root = ET.fromstring(element("a", {"href": NASTY}, words(NASTY)))  # noqa: S314
    expected = NASTY.replace("\x00", "\ufffd").replace("\ufffe", "\ufffd")
    assert root.text == expected
    assert root.attrib == {"href": expected}


def test_nothing_is_left_unescaped() -> None:
    assert "<script" not in element("text", {"x": 1, "title": NASTY}, words(NASTY))


def test_attributes_without_a_value_are_left_out() -> None:
    assert element("g", {"href": None, "x": 2.0}) == '<g x="2"/>'


@pytest.mark.parametrize(
    ("value", "written"),
    [(1.0, "1"), (1.255, "1.25"), (0.1 + 0.2, "0.3"), (123456.0, "123456")],
)
def test_numbers_are_written_in_one_way(value: float, written: str) -> None:
    assert number(value) == written


def test_short_text_is_left_alone() -> None:
    assert shortened("Cooker", 100, 12) == "Cooker"


@pytest.mark.parametrize("text", ["W" * 50, "a b " * 40, "電" * 30])
def test_long_text_is_cut_to_fit_and_ends_with_an_ellipsis(text: str) -> None:
    cut = shortened(text, 90, 13)
    assert cut.endswith("…")
    assert text.startswith(cut[:-1].rstrip())
    assert text_width(cut, 13) <= 90


def test_lines_break_at_spaces_and_only_the_last_is_cut() -> None:
    text = "Sockets in the kitchen, the utility room and the old dairy"
    lines = wrapped(text, 100, 12, most=3)
    assert len(lines) == 3
    assert all(text_width(line, 12) <= 100 for line in lines)
    assert [line for line in lines if line.endswith("…")] == [lines[-1]]
    assert wrapped(text, 1000, 12, most=3) == (text,)


def test_a_figure_keeps_its_unit() -> None:
    assert wrapped("fuse of 30\xa0mA", 60, 12, most=2) == ("fuse of", "30\xa0mA")


def test_hatches_are_told_apart_by_their_drawing() -> None:
    clear = {"consumer", "unknown"}
    drawn = {pattern(code, "same") for code in HATCHES if code not in clear}
    assert len(drawn) == len(HATCHES) - len(clear)
