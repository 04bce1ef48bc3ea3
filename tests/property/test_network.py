"""The network of any home agrees with a graph library's, built here a second time."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from random import Random

import networkx as nx
from hypothesis import given, settings

from app.domain.answers import Rcd
from app.domain.ask import ask_point, ask_room, ask_way, without_30_ma
from app.domain.circles import circles
from app.domain.faults import faults
from app.domain.network import (
    MOST_PATHS,
    Role,
    circuits_of,
    downstream,
    goes_off,
    network,
    paths,
    upstream,
)
from app.domain.odd import odd_ones_out
from app.domain.protection import cover
from app.domain.record import Device, IntakeItem, Record
from tests.property.strategies import any_records, homes, random_home, raw_homes

Graph = nx.DiGraph
ROLES: tuple[Role, Role] = ("line", "neutral")
# What each field may name, written a second time.
LINKS = {
    "sources": {"joins": "circuit device intake"},
    "intake": {
        "fed_from": "source intake device",
        "second_feed": "source intake device",
        "room": "room",
    },
    "boards": {"room": "room", "fed_from": "intake circuit device point source"},
    "devices": {
        "board": "board",
        "fed_from": "device intake circuit point source",
        "second_feed": "device intake circuit point source",
    },
    "circuits": {"ways": "device intake"},
    "points": {"room": "room"},
    "ties": {"point": "point", "tied_to": "circuit point source"},
    "controls": {
        "controller": "point device intake",
        "controlled": "point device intake",
    },
}


def sorts(record: Record) -> dict[str, str]:
    return {item.ref: item.sort for item in record.items()}


def named(record: Record, plural: str, field: str) -> Iterator[tuple[str, str, bool]]:
    """Yield who names whom in a field, and whether that may be."""
    sort_of, allowed = sorts(record), LINKS[plural][field].split()
    for item in getattr(record, plural):
        value = getattr(item, field)
        for ref in value if isinstance(value, tuple) else [value] if value else []:
            yield item.ref, ref, sort_of.get(ref) in allowed


def digraph(record: Record, role: Role) -> Graph[str]:
    graph: Graph[str] = nx.DiGraph()
    graph.add_nodes_from(sorts(record))
    for plural, field in (
        ("intake", "fed_from"),
        ("intake", "second_feed"),
        ("devices", "fed_from"),
        ("devices", "second_feed"),
        ("circuits", "ways"),
    ):
        graph.add_edges_from((f, n) for n, f, ok in named(record, plural, field) if ok)
    board_feed = {n: f for n, f, ok in named(record, "boards", "fed_from") if ok}
    for device in record.devices:
        if device.fed_from is None and device.board in board_feed:
            graph.add_edge(board_feed[device.board], device.ref)
    borrowed = {tie.point for tie in record.ties if tie.role == "neutral"}
    rights = zip(
        named(record, "ties", "point"), named(record, "ties", "tied_to"), strict=True
    )
    for tie, (point, tied_to) in zip(record.ties, rights, strict=True):
        feeds = tie.role == "feeds" and (role == "line" or tie.point not in borrowed)
        returns = tie.role == "neutral" and role == "neutral"
        if point[2] and tied_to[2] and (feeds or returns):
            graph.add_edge(tie.tied_to, tie.point)
    return graph


def agrees(record: Record) -> None:
    net = network(record)
    for role in ROLES:
        graph = digraph(record, role)
        for ref in graph:
            assert upstream(net, ref, role) == nx.ancestors(graph, ref)
            assert downstream(net, ref, role) == nx.descendants(graph, ref)


def test_reach_circles_and_faults_agree_in_2000_homes() -> None:
    circular = 0
    for seed in range(2000):
        record = random_home(Random(seed), raw=seed % 2 == 1)  # noqa: S311
        agrees(record)
        circular += circles_agree(record)
        leads_nowhere_agrees(record)
    assert circular > 100


@given(raw_homes)
def test_reach_agrees(record: Record) -> None:
    agrees(record)


@given(homes)
def test_a_home_as_it_should_be_has_no_circle_and_leads_nowhere_never(
    record: Record,
) -> None:
    codes = {fault.code for fault in faults(record)}
    assert not codes & {"feeds_itself", "leads_nowhere", "used_twice"}


@given(homes)
def test_paths_are_all_the_simple_paths_from_where_the_supply_begins(
    record: Record,
) -> None:
    net = network(record)
    for role in ROLES:
        graph = digraph(record, role)
        roots = [ref for ref in graph if graph.in_degree(ref) == 0]
        for ref in graph:
            found = [path.refs for path in paths(net, ref, role)]
            expected = _simple_paths(graph, roots, ref)
            assert len(set(found)) == len(found) == min(len(expected), MOST_PATHS)
            assert set(found) <= expected


def _simple_paths(
    graph: Graph[str], roots: list[str], ref: str
) -> set[tuple[str, ...]]:
    if ref in roots:
        return {(ref,)}
    return {
        tuple(path) for root in roots for path in nx.all_simple_paths(graph, root, ref)
    }


@given(raw_homes)
def test_a_path_is_a_path_of_the_graph_and_whole_only_from_a_source(
    record: Record,
) -> None:
    net, sort_of = network(record), sorts(record)
    for role in ROLES:
        graph = digraph(record, role)
        for ref in graph:
            for path in paths(net, ref, role):
                assert path.refs[-1] == ref
                assert len(set(path.refs)) == len(path.refs)
                assert all(graph.has_edge(*pair) for pair in pairwise(path.refs))
                assert path.circle == (graph.in_degree(path.refs[0]) > 0)
                assert path.whole == (sort_of[path.refs[0]] == "source")


@given(raw_homes)
def test_a_circle_is_reported_if_there_is_one_and_is_one(record: Record) -> None:
    circles_agree(record)


def circles_agree(record: Record) -> bool:
    """Return whether there is a circle, having looked at each that is reported."""
    graphs = [digraph(record, role) for role in ROLES]
    found = circles(network(record))
    assert bool(found) == any(not nx.is_directed_acyclic_graph(g) for g in graphs)
    for circle in found:
        closed = list(pairwise((*circle, circle[0])))
        assert any(all(g.has_edge(*pair) for pair in closed) for g in graphs)
    assert bool(found) == any(f.code == "feeds_itself" for f in faults(record))
    return bool(found)


@given(raw_homes)
def test_what_leads_nowhere_is_reported_each_time(record: Record) -> None:
    leads_nowhere_agrees(record)


def leads_nowhere_agrees(record: Record) -> None:
    wrong = [
        who
        for plural, fields in LINKS.items()
        for field in fields
        for who, _, ok in named(record, plural, field)
        if not ok
    ]
    found = [f.subjects[0] for f in faults(record) if f.code == "leads_nowhere"]
    assert sorted(found) == sorted(wrong)


@given(homes)
def test_what_goes_off_is_what_nothing_else_reaches(record: Record) -> None:
    net, graph = network(record), digraph(record, "line")
    for opened in graph:
        rest = nx.restricted_view(graph, [opened], [])
        roots = [r for r in rest if graph.in_degree(r) == 0]
        still = set(roots).union(*(nx.descendants(rest, root) for root in roots))
        assert goes_off(net, opened) == set(graph) - still - {opened}


@given(raw_homes)
def test_what_goes_off_was_fed(record: Record) -> None:
    net = network(record)
    for ref in sorts(record):
        assert goes_off(net, ref) <= downstream(net, ref)


@given(raw_homes)
def test_to_remove_a_tie_never_adds_a_feed(record: Record) -> None:
    """A neutral that is its own again apart: then the line's way is its way too."""
    before = network(record)
    for tie in record.ties:
        ties = tuple(t for t in record.ties if t is not tie)
        after = network(record.having(ties=ties))
        roles = ROLES if tie.role == "feeds" else ROLES[:1]
        for role in roles:
            for point in record.points:
                assert upstream(after, point.ref, role) <= upstream(
                    before, point.ref, role
                )


@given(raw_homes)
def test_all_circuits_at_once_agree_with_one_by_one(record: Record) -> None:
    net = network(record)
    for point in record.points:
        assert set(net.circuits_at.get(point.ref, ())) == set(
            circuits_of(net, point.ref)
        )


@given(raw_homes)
def test_all_circuits_of_the_neutral_at_once_agree_with_one_by_one(
    record: Record,
) -> None:
    net = network(record)
    for point in record.points:
        assert set(net.neutral_circuits_at.get(point.ref, ())) == set(
            circuits_of(net, point.ref, "neutral")
        )


@given(raw_homes)
def test_a_source_feeds_back_into_all_that_shares_a_feed_with_where_it_joins(
    record: Record,
) -> None:
    net, graph = network(record), digraph(record, "line")
    rights = [name for name, _, ok in named(record, "sources", "joins") if ok]
    for source in record.sources:
        there = source.ref in rights and source.present != "no"
        assert (source.ref in net.fed_back) == there
        if not there:
            continue
        above = {source.joins, *nx.ancestors(graph, source.joins)}
        shares = {ref for ref in graph if above & {ref, *nx.ancestors(graph, ref)}}
        assert net.fed_back[source.ref] == shares


@given(homes)
def test_no_rcd_counts_for_sure_where_a_source_reaches_a_point_past_all_of_them(
    record: Record,
) -> None:
    net, graph = network(record), digraph(record, "line")
    answers = {point: ask_point(net, point) for point in record.points}
    guards = {r.ref for answer in answers.values() for r in answer.rcds if small(r)}
    unguarded = nx.restricted_view(graph, guards, [])
    joins = [
        s.joins
        for s in record.sources
        if s.joins and s.present != "no" and s.runs_without_network != "no"
    ]
    for point, answer in answers.items():
        forwards = cover(point, answer.chains)
        before = set(graph.predecessors(point.ref))
        past = False
        for joined in joins:
            turns = {joined, *nx.ancestors(graph, joined)}
            onward = {n for t in turns for n in graph.successors(t)} - guards
            reached = turns.union(*({n, *nx.descendants(unguarded, n)} for n in onward))
            past = past or bool(before & reached)
        if past:
            assert answer.within_30_ma not in ("yes", "failed")
        else:
            assert answer.past_rcd == ()
            assert answer.within_30_ma == forwards


def small(each: Rcd) -> bool:
    ma = each.residual_current_ma
    return bool(ma and ma <= 30) and each.time_delayed != "yes"


def ways(record: Record) -> tuple[Device | IntakeItem, ...]:
    return (*record.devices, *record.intake)


def asked(record: Record) -> None:
    net = network(record)
    for point in record.points:
        answer = ask_point(net, point)
        assert answer.point.ref == point.ref
        assert bool(answer.unknowns) or all(c.begins_at_source for c in answer.chains)
    for way in ways(record):
        fed = {point.ref for point in ask_way(net, way).points}
        assert fed <= downstream(net, way.ref)
    for room in record.rooms:
        assert len(ask_room(net, room).points) == len(record.points_of(room.ref))
    odd = [o.point for o in odd_ones_out(net)]
    assert set(odd) | set(without_30_ma(net)) <= {p.ref for p in record.points}


@given(raw_homes)
def test_every_question_has_an_answer(record: Record) -> None:
    asked(record)


@settings(max_examples=50)
@given(any_records)
def test_nothing_raises_whatever_the_record_holds(record: Record) -> None:
    net = network(record)
    assert all(fault.sentence for fault in faults(record))
    for point in record.points:
        ask_point(net, point)
    for way in ways(record):
        ask_way(net, way)
    for room in record.rooms:
        ask_room(net, room)
    odd_ones_out(net)
    without_30_ma(net)
