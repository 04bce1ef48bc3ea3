from __future__ import annotations

import re

import segno

from app.drawing.qr import QUIET, qr_code, qr_lines

URL = "http://192.168.178.123:5025/"
# What each half block shows: light above, light below.
HALVES = {" ": (0, 0), "▀": (1, 0), "▄": (0, 1), "█": (1, 1)}


def dark_modules() -> set[tuple[int, int]]:
    rows = segno.make_qr(URL).matrix
    return {
        (x + QUIET, y + QUIET)
        for y, row in enumerate(rows)
        for x, dark in enumerate(row)
        if dark
    }


def test_the_path_draws_the_dark_modules() -> None:
    code = qr_code(URL)
    drawn = re.findall(r"M(\d+) (\d+)h1v1h-1z", code.path)
    assert {(int(x), int(y)) for x, y in drawn} == dark_modules()
    assert re.sub(r"M\d+ \d+h1v1h-1z", "", code.path) == ""
    assert code.size == len(segno.make_qr(URL).matrix) + 2 * QUIET


def test_the_lines_show_the_same_the_other_way_round() -> None:
    lines = qr_lines(URL)
    size = qr_code(URL).size
    assert {len(line) for line in lines} == {size}
    dark = {
        (x, 2 * n + half)
        for n, line in enumerate(lines)
        for x, sign in enumerate(line)
        for half in (0, 1)
        if not HALVES[sign][half] and 2 * n + half < size
    }
    assert dark == dark_modules()
