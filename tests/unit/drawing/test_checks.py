"""The checks of drawings find what they look for."""

from __future__ import annotations

import pytest

from app.drawing.scene import Box, Part, Scene, Stroke, Symbol, Text, Thing
from tests.unit.drawing.checks import assert_clear, assert_laid_out

WORDS = Text(x=10, y=20, text="Kitchen")


def scene(*parts: Part | Thing) -> Scene:
    return Scene(
        ident="s", title="S", description="", width=200, height=100, parts=parts
    )


def thing(x: float) -> Thing:
    return Thing(ref="P1", title="P1", box=Box(x, 30, 20, 20), parts=())


@pytest.mark.parametrize(
    "wrong",
    [
        (WORDS, Text(x=30, y=25, text="Hall")),
        (thing(10), thing(25)),
        (Text(x=190, y=20, text="Kitchen"),),
        (Text(x=10, y=5, text="Kitchen"),),
    ],
)
def test_what_overlaps_or_leaves_the_sheet_is_found(wrong: tuple[Part, ...]) -> None:
    assert_laid_out(scene(WORDS, thing(10), thing(30)))
    with pytest.raises(AssertionError):
        assert_laid_out(scene(*wrong))


@pytest.mark.parametrize(
    "wrong",
    [
        Stroke(places=((30, 0), (30, 50))),
        Stroke(places=((0, 18), (90, 18))),
        Symbol(x=12, y=5, drawn=""),
    ],
)
def test_a_line_or_a_symbol_on_words_is_found(wrong: Part) -> None:
    assert_clear(scene(WORDS, Stroke(places=((5, 0), (5, 50), (90, 50)))))
    with pytest.raises(AssertionError):
        assert_clear(scene(WORDS, wrong))
