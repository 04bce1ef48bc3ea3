"""The drawing of how the demand builds up."""

from __future__ import annotations

from decimal import Decimal

import pytest

from app.domain.load import load_answer
from app.domain.network import network
from app.drawing.demand import (
    BEYOND,
    MARGIN,
    NO_PHASE,
    SEVERAL,
    demand_scene,
    draw_demand,
)
from app.drawing.scene import Frame, Stroke
from tests.unit.domain.test_houses import NAMES, record_of
from tests.unit.drawing.checks import parsed


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("rated", [None, Decimal(60), Decimal(100), Decimal(400)])
def test_every_group_is_drawn_and_nothing_leaves_the_sheet(
    name: str, rated: Decimal | None
) -> None:
    found = load_answer(network(record_of(name))).demand
    scene = demand_scene(found, rated)
    words = [text.whole or text.text for text in scene.texts()]
    assert {row.label for row in found.rows} <= set(words)
    assert {row.shown for row in found.rows} <= set(words)
    assert found.shown in words
    for part in scene.strokes():
        if isinstance(part, Frame):
            assert part.box.x >= MARGIN - 0.01
            assert part.box.right <= scene.width
    for text in scene.texts():
        assert text.box.x >= 0
        assert text.box.right <= scene.width
    assert parsed(draw_demand(found, rated)) is not None


def test_what_lies_beyond_the_fuse_is_hatched_and_its_line_is_drawn() -> None:
    found = load_answer(network(record_of("h01"))).demand
    scene = demand_scene(found, Decimal(80))
    hatched = [p for p in scene.strokes() if isinstance(p, Frame) and p.hatch == BEYOND]
    lines = [p for p in scene.strokes() if isinstance(p, Stroke)]
    [x] = {place[0] for line in lines for place in line.places}
    assert len(lines) == len(found.rows) + 1
    assert all(p.box.x >= x - 0.01 for p in hatched[1:])
    # The key, the group that crosses the line, those after it, and the total.
    assert len(hatched) == 3


@pytest.mark.parametrize("without", [SEVERAL, NO_PHASE])
def test_where_no_line_can_be_drawn_the_reason_is_named(without: str) -> None:
    found = load_answer(network(record_of("h01"))).demand
    scene = demand_scene(found, None, without=without)
    assert f"{without}, so no line is drawn" in [t.text for t in scene.texts()]
    assert scene.description.endswith(f"{without}.")


def test_an_unknown_fuse_has_no_line_and_is_named() -> None:
    found = load_answer(network(record_of("h01"))).demand
    scene = demand_scene(found, None)
    assert not [part for part in scene.strokes() if isinstance(part, Stroke)]
    assert any("not known" in text.text for text in scene.texts())
    assert "Supply fuse: not known" in scene.description
