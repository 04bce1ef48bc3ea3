"""Any record that the model allows is drawn, however its references lead."""

from __future__ import annotations

from collections import Counter
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from app.domain.chain import chains
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, POINT_KINDS
from app.domain.network import network
from app.domain.record import Record
from app.domain.record import choices as c
from app.drawing.board import board_scene, draw_board
from app.drawing.chain import chain_scene, draw_chain
from app.drawing.one_line import one_line_blocks, one_line_scene
from app.drawing.render import render
from app.drawing.street import draw_street, street_scene
from app.drawing.whole_house import house_bands, house_scene
from tests.unit.drawing.checks import (
    assert_clear,
    assert_laid_out,
    drawn_refs,
    link,
    parsed,
    record,
)

NAMES = st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=40)
POOL = [f"{p}{n}" for p in "SIBDCP" for n in range(4)]
REFS = st.none() | st.sampled_from([*POOL, "GONE"])


def items(prefix: str, **fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    none: dict[str, st.SearchStrategy[Any]] = {}
    one = st.fixed_dictionaries(none, optional=fields)
    needed = ("kind", "board", "name", "point", "tied_to")
    must = st.fixed_dictionaries({n: fields[n] for n in needed if n in fields})
    both = st.tuples(one, must).map(lambda pair: {**pair[0], **pair[1]})
    return st.lists(both, max_size=4).map(
        lambda found: [{**f, "ref": f"{prefix}{n}"} for n, f in enumerate(found)]
    )


def one_of(codes: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(list(codes))


FIGURES = st.none() | st.integers(0, 100)
OWNERS = one_of(c.OWNERS)
SOME = st.sampled_from(POOL)
RECORDS = st.fixed_dictionaries(
    {
        "rooms": items("R", name=NAMES, storey=one_of(c.STOREYS)),
        "sources": items(
            "S",
            kind=one_of(c.SOURCE_KINDS),
            name=NAMES,
            present=one_of(c.YES_NO),
            owner=OWNERS,
            joins=REFS,
            when=one_of(c.WHEN),
        ),
        "intake": items(
            "I",
            kind=one_of(INTAKE_KINDS),
            name=NAMES,
            owner=OWNERS,
            fed_from=REFS,
            second_feed=REFS,
            rated_current_a=FIGURES,
            printed=NAMES,
            when=one_of(c.WHEN),
        ),
        "boards": items("B", name=NAMES, fed_from=REFS, owner=OWNERS),
        "devices": items(
            "D",
            board=st.sampled_from(["B0", "B1", "GONE"]),
            kind=one_of(DEVICE_KINDS),
            way=NAMES,
            label_found=st.none() | NAMES,
            fed_from=REFS,
            second_feed=REFS,
            residual_current_ma=FIGURES,
            modules=st.none() | st.integers(1, 12),
        ),
        "circuits": items(
            "C",
            name=NAMES,
            number=NAMES,
            ways=st.lists(SOME, max_size=3),
            line_mm2=FIGURES,
        ),
        "points": items(
            "P",
            kind=one_of(POINT_KINDS),
            name=NAMES,
            fuse_a=FIGURES,
            room=st.sampled_from([None, "R0", "R1", "R2", "GONE"]),
            outdoor=one_of(c.YES_NO),
            count=st.integers(1, 99),
        ),
        "ties": items("T", point=SOME, tied_to=SOME, grade=one_of(c.GRADES)),
    }
).map(lambda found: record(**found))


@settings(deadline=None)
@given(RECORDS)
def test_the_street_shows_every_item_once(house: Record) -> None:
    refs = drawn_refs(parsed(draw_street(house, link)))
    assert len(refs) == len(set(refs))
    assert {item.ref for item in (*house.intake, *house.boards)} <= set(refs)
    assert_laid_out(street_scene(house, link, frozenset(refs[::2])))


@settings(deadline=None)
@given(RECORDS)
def test_a_board_shows_every_device_once(house: Record) -> None:
    for ref in ("B0", "B1", "GONE"):
        is_there = any(board.ref == ref for board in house.boards)
        expected = [d.ref for d in house.devices_of(ref)] if is_there else []
        root = parsed(draw_board(house, ref, link, frozenset(expected[::2])))
        assert drawn_refs(root) == expected
        assert_laid_out(board_scene(house, ref, link, frozenset(expected[::2])))


@settings(deadline=None)
@given(RECORDS)
def test_a_chain_shows_every_step_in_order(house: Record) -> None:
    net = network(house)
    for item in (*house.points, *house.devices):
        for one in chains(net, item.ref)[:3]:
            root = parsed(draw_chain(one, link, c.OWNERS))
            assert drawn_refs(root) == [step.ref for step in one.steps]
            assert_laid_out(chain_scene(one, link, c.OWNERS))


@settings(deadline=None)
@given(RECORDS)
def test_a_house_shows_every_point_once(house: Record) -> None:
    for lit in ("", "C0", "R0"):
        bands, key = house_bands(house, link, lit)
        scenes = [*(block for band in bands for block in band.blocks), *key]
        for scene in scenes:
            parsed(render(scene))
            assert_laid_out(scene)
            assert_clear(scene)
        refs = Counter(thing.ref for scene in scenes for thing in scene.things())
        assert {p.ref: refs[p.ref] for p in house.points} == {
            p.ref: 1 for p in house.points
        }
        assert_laid_out(house_scene(house, link, lit))


@settings(deadline=None)
@given(RECORDS)
def test_a_one_line_diagram_shows_every_circuit(house: Record) -> None:
    scenes = one_line_blocks(house, link)
    for scene in scenes:
        parsed(render(scene))
        assert_laid_out(scene)
        assert_clear(scene)
    refs = {thing.ref for scene in scenes for thing in scene.things()}
    assert {circuit.ref for circuit in house.circuits} <= refs
    assert {board.ref for board in house.boards} <= refs
    assert_laid_out(one_line_scene(house, link))
