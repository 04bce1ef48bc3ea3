from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

import pytest

from app.domain.chain import Chain, Step, chains
from app.domain.network import network
from app.domain.record.choices import OWNERS
from app.drawing.chain import chain_scene, draw_chain
from app.drawing.scene import Frame
from app.drawing.supply import NOT_RECORDED
from tests.unit.drawing.checks import (
    HOUSES,
    assert_laid_out,
    assert_legible,
    drawn_refs,
    link,
    links,
    nowhere,
    parsed,
    read_house,
    said,
)

GRID = Step(
    ref="GRID", sort="source", kind="network", title="Source GRID", owner="network"
)
RCBO = Step(
    ref="W1",
    sort="device",
    kind="rcbo",
    title="Way 1",
    owner="consumer",
    rated_current_a=Decimal(32),
    curve="B",
    protects=("overload", "short_circuit", "earth_leakage"),
    residual_current_ma=Decimal(30),
    rcd_type="A",
    time_delayed="no",
    opens="line",
    opens_basis="usual",
    when="off_peak",
)
RING = Step(ref="C1", sort="circuit", title="Ring", owner="consumer")
LAMP = Step(
    ref="P1",
    sort="point",
    kind="light",
    title="Lamp",
    owner="consumer",
    tie="T1",
    grade="3",
)


def chain(*steps: Step, whole: bool = True) -> Chain:
    refs = tuple(step.ref for step in steps)
    return Chain(references=refs, begins_at_source=whole, steps=steps)


WHOLE = chain(GRID, RCBO, RING, LAMP)


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.stem)
def test_every_chain_of_a_house_is_drawn_step_by_step(path: Path) -> None:
    house = read_house(path)
    net = network(house)
    for point in house.points:
        for role in ("line", "neutral"):
            for one in chains(net, point.ref, role):
                root = parsed(draw_chain(one, link, OWNERS))
                assert drawn_refs(root) == list(one.references)
                scene = chain_scene(one, link, OWNERS)
                assert_laid_out(scene)
                assert_legible(scene)


def test_a_step_says_what_it_is_guards_and_opens() -> None:
    text = said(parsed(draw_chain(WHOLE, link, OWNERS)))
    for words in (
        "The network in the street Network",
        "Changes hands here above: network · below: yours",
        "Way 1 Yours · RCBO · 32 A · type B",
        "guards: overload, short circuit",
        "guards: earth leakage at 30 mA · type A",
        "opens at least the line; the neutral: not",
        "off-peak hours only",
        "seen: went off and came back",
    ):
        assert words in text
    assert NOT_RECORDED not in text


def test_what_is_not_known_is_named_and_dashed() -> None:
    bare = RCBO.model_copy(
        update={"rated_current_a": None, "residual_current_ma": None, "rcd_type": None}
    )
    unknown = chain(bare, RING, whole=False)
    text = said(parsed(draw_chain(unknown, link, OWNERS)))
    assert NOT_RECORDED in text
    assert "rating not known" in text
    assert "mA not known" in text
    scene = chain_scene(unknown, link, OWNERS)
    frames = [p for p in scene.things()[0].parts if isinstance(p, Frame)]
    assert frames[0].dashed


def test_poles_that_are_recorded_are_not_called_usual() -> None:
    step = RCBO.model_copy(
        update={"opens": "line_and_neutral", "opens_basis": "recorded"}
    )
    text = said(parsed(draw_chain(chain(GRID, step), link, OWNERS)))
    assert "opens line and neutral" in text
    assert "usual" not in text


def test_an_owner_without_a_word_is_drawn_by_its_code() -> None:
    text = said(parsed(draw_chain(WHOLE, link, {})))
    assert "above: network · below: consumer" in text


def test_two_chains_on_a_page_share_no_id() -> None:
    drawn = [
        draw_chain(WHOLE, link, OWNERS),
        draw_chain(chain(GRID, LAMP), link, OWNERS),
        draw_chain(WHOLE, link, OWNERS, id_prefix="other"),
        draw_chain(WHOLE.model_copy(update={"role": "neutral"}), link, OWNERS),
    ]
    ids = [re.findall(r' id="([^"]+)"', svg) for svg in drawn]
    assert all(ids)
    flat = [ident for found in ids for ident in found]
    assert len(flat) == len(set(flat))


def test_links_and_lit_steps() -> None:
    svg = draw_chain(WHOLE, link, OWNERS, lit=frozenset({"P1"}))
    root = parsed(svg)
    assert links(root) == {ref: link(ref) for ref in WHOLE.references}
    assert said(root).count("This one") == 1
    assert links(parsed(draw_chain(WHOLE, nowhere, OWNERS))) == {}


def test_an_empty_chain_is_drawn_as_one() -> None:
    root = parsed(draw_chain(Chain(), link, OWNERS))
    assert drawn_refs(root) == []


def test_text_is_escaped() -> None:
    nasty = LAMP.model_copy(update={"title": "<script>'&\""})
    svg = draw_chain(chain(GRID, nasty), link, OWNERS)
    assert "<script" not in svg
    assert "<script>'&\"" in said(parsed(svg))
