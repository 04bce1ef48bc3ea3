"""What is measured, one function a table."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterator
from datetime import date
from functools import partial
from html import unescape
from pathlib import Path
from typing import Any

import networkx as nx

from app.config import Config
from app.domain.ask import ask_point, ask_room, ask_way
from app.domain.chain import chains
from app.domain.edits import replaced
from app.domain.isolation import plan
from app.domain.network import Network, network
from app.domain.record import Record
from app.domain.trace.answers import trace_answer
from app.services.homes import open_home, save
from app.services.remarks import remarks_of
from app.services.worked import memory
from app.store import homes as stored_homes
from app.store.engine import make_engine, reading, writing
from tests.bench.floor import answer_at_least, floor_of
from tests.bench.homes import PAGES, SIZES, client_of, home_of, stored
from tests.bench.timing import Row, best_of, exponent, ratio

TODAY = date(2026, 11, 25)
MOST_OVER_FLOOR = 3
STREET = " where the supply begins"
# Pages that are also measured with nothing kept from before.
FIRST_TIME = ("/house/", "/points/", "/remarks/", "/isolate/plan?ref=R1")


def pages_over_floor(folder: Path, times: int) -> Iterator[Row]:
    """Each main page of a home of 60 points against the least that it can cost.

    The floor reads the rows each time; ours keeps a home that it has read until the
    home is written.  The first time, with nothing kept, stands behind.
    """
    config = stored(folder / "floor", home_of(60))
    client = client_of(config)
    addresses = [f"/homes/{home_of(60).home.ref}/{page}" for page in PAGES]
    texts = {a.partition("?")[0]: client.get(a).text for a in addresses}
    floor = floor_of(config.database, texts)
    for address in addresses:
        least = address.partition("?")[0]
        assert unescape(floor.get(least).text) == unescape(texts[least])
        yield ratio(
            address.partition("/homes/")[2],
            partial(client.get, address),
            partial(floor.get, least),
            MOST_OVER_FLOOR,
            times,
        )
    for address in (a for a in addresses if a.endswith(FIRST_TIME)):
        yield ratio(
            f"the first time: {address.partition('/homes/')[2]}",
            partial(_with_nothing_kept, partial(client.get, address)),
            partial(floor.get, address.partition("?")[0]),
            MOST_OVER_FLOOR,
            times,
        )


def _with_nothing_kept(act: Callable[[], object]) -> object:
    memory.clear()
    return act()


def answers_over_floor(folder: Path, times: int) -> Iterator[Row]:
    """Each JSON answer against the rows read, and its own values written.

    Ours keeps a home that it has read; the first time, with nothing kept, follows.
    """
    config = stored(folder / "answers", home_of(60))
    for name, answer in ANSWERS.items():
        text = _asked(config, answer)
        yield ratio(
            f"{name} as JSON",
            partial(_asked, config, answer),
            partial(answer_at_least, config.database, text),
            MOST_OVER_FLOOR,
            times,
        )
        yield ratio(
            f"the first time: {name}",
            partial(_with_nothing_kept, partial(_asked, config, answer)),
            partial(answer_at_least, config.database, text),
            MOST_OVER_FLOOR,
            times,
        )


def _asked(config: Config, answer: Callable[[Network], Any]) -> str:
    with reading(make_engine(config.database)) as connection:
        net = open_home(connection, home_of(60).home.ref).worked.net
    text: str = answer(net).model_dump_json()
    return text


ANSWERS: dict[str, Callable[[Network], Any]] = {
    "ask point": lambda net: ask_point(net, net.record.points[1]),
    "ask way": lambda net: ask_way(net, net.record.devices[3]),
    "ask room": lambda net: ask_room(net, net.record.rooms[1]),
    "trace": trace_answer,
}


def domain_against_networkx(times: int) -> Iterator[Row]:
    """The whole home computed, against networkx asked for the reachability in it."""
    record = home_of(SIZES[0])
    edges = edges_of(record)
    for name, compute in WHOLE_HOME.items():
        reach = partial(_reached, REACH[name], record, edges)
        yield ratio(name, partial(compute, record), reach, 1, times)


def _reached(
    reach: Callable[[Any, Record], int], record: Record, edges: list[tuple[str, str]]
) -> int:
    return reach(graph_of(record, edges), record)


def edges_of(record: Record) -> list[tuple[str, str]]:
    """Return the feeds of a record: what feeds, and what is fed."""
    feeders = network(record).feeders.values()
    return [(feed.feeder, feed.fed) for feeds in feeders for feed in feeds]


def graph_of(record: Record, edges: list[tuple[str, str]]) -> Any:
    """Build the graph, as ours builds its network: both begin with the record."""
    graph: Any = nx.DiGraph()
    graph.add_nodes_from(record.by_ref)
    graph.add_edges_from(edges)
    return graph


def starts_of(graph: Any) -> list[str]:
    """Return where the supply begins: what feeds something and is fed by nothing."""
    return [n for n in graph if graph.out_degree(n) and not graph.in_degree(n)]


def paths_to_all(graph: Any, record: Record) -> int:
    """Find every path from each point up to where the supply begins."""
    starts, upwards = set(starts_of(graph)), graph.reverse(copy=False)
    return sum(
        len(list(nx.all_simple_paths(upwards, point.ref, starts)))
        for point in record.points
    )


def parted_rooms(graph: Any, record: Record) -> int:
    """Find, for each room, which single devices part all its points from the supply.

    What parts a thing from where the supply begins is what dominates it.
    """
    whole = graph.copy()
    whole.add_edges_from((STREET, start) for start in starts_of(graph))
    above = nx.immediate_dominators(whole, STREET)
    devices = {device.ref for device in record.devices}

    def parting(ref: str) -> Iterator[str]:
        here: str | None = ref
        while here is not None and here != STREET:
            yield here
            here = above.get(here)

    return sum(
        len(set.intersection(*(set(parting(p.ref)) for p in points)) & devices)
        for room in record.rooms
        if (points := [p for p in record.points_of(room.ref) if p.ref in above])
    )


def off_with_each(graph: Any, record: Record) -> int:
    """Find what each way feeds, and what feeds each point."""
    ways = sum(len(nx.descendants(graph, device.ref)) for device in record.devices)
    return ways + sum(len(nx.ancestors(graph, point.ref)) for point in record.points)


def reach_of_all(graph: Any, _record: Record) -> int:
    """Walk from each thing to all that it feeds, and to all that feeds it."""
    reached = sum(len(nx.descendants(graph, node)) for node in graph)
    return reached + sum(len(nx.ancestors(graph, node)) for node in graph)


def _all_chains(record: Record) -> int:
    net = network(record)
    return sum(len(chains(net, point.ref)) for point in record.points)


def _all_plans(record: Record) -> int:
    net = network(record)
    return sum(bool(plan(net, (room.ref,))) for room in record.rooms)


WHOLE_HOME: dict[str, Callable[[Record], object]] = {
    "chains of all points": _all_chains,
    "isolation of all rooms": _all_plans,
    "tracing": lambda record: trace_answer(network(record)),
    "remarks": lambda record: remarks_of(record, TODAY),
}


REACH: dict[str, Callable[[Any, Record], int]] = {
    "chains of all points": paths_to_all,
    "isolation of all rooms": parted_rooms,
    "tracing": off_with_each,
    "remarks": reach_of_all,
}
# A plan looks at the whole home, however small the room; the largest has 750 rooms.
GROWING = {
    **{name: act for name, act in WHOLE_HOME.items() if act is not _all_plans},
    "isolation of eight rooms": lambda record: [
        plan(net, (room.ref,))
        for net in (network(record),)
        for room in record.rooms[:8]
    ],
}


def growth_of_pages(folder: Path) -> Iterator[Row]:
    """Each main page for 60, 600 and 6,000 points."""
    clients = {
        size: client_of(stored(folder / f"grown-{size}", home_of(size)))
        for size in SIZES
    }
    for page in PAGES:
        taken = [
            best_of(
                partial(clients[size].get, f"/homes/{home_of(size).home.ref}/{page}"),
                5 if size < 6000 else 2,
            )
            for size in SIZES
        ]
        yield exponent(page or "the home", SIZES, taken)


def growth_of_domain() -> Iterator[Row]:
    """Each computation for the whole home, and reading it, for growing homes."""
    for name, compute in GROWING.items():
        taken = [
            best_of(partial(compute, home_of(size)), 3 if size < 6000 else 1)
            for size in SIZES
        ]
        yield exponent(name, SIZES, taken)


def among_a_hundred(folder: Path, times: int) -> Iterator[Row]:
    """Pages of a home among a hundred in one file, against the home alone.

    Both read from the rows, with nothing kept.
    """
    one = home_of(60)
    others = [
        one.having(home=one.home.model_copy(update={"ref": f"other-{n}"}))
        for n in range(99)
    ]
    alone = client_of(stored(folder / "alone", one))
    among = client_of(stored(folder / "among", one, *others))
    for page in ("", "points/", "remarks/", "changes/", "search/?q=light"):
        address = f"/homes/{one.home.ref}/{page}"
        yield ratio(
            page or "the home",
            partial(_with_nothing_kept, partial(among.get, address)),
            partial(_with_nothing_kept, partial(alone.get, address)),
            1.25,
            times,
        )


def reading_a_home(folder: Path) -> Iterator[Row]:
    """A home read from its rows, nothing being kept from before."""
    taken = []
    for size in SIZES:
        config = stored(folder / f"read-{size}", home_of(size))
        with reading(make_engine(config.database)) as connection:
            taken.append(best_of(partial(stored_homes.load, connection, 1), 3))
    yield exponent("a home read from its rows", SIZES, taken)


def durable_save(folder: Path, times: int) -> Iterator[Row]:
    """One point saved and on the disk, against a bare write with its fsync."""
    config = stored(folder / "save", home_of(60))
    engine, numbers = make_engine(config.database), iter(range(10**6))

    def one_save() -> None:
        with writing(engine) as connection:
            here = open_home(connection, home_of(60).home.ref)
            point = here.record.points[0]
            new = point.model_copy(update={"note": f"{next(numbers)}"})
            save(connection, here, replaced(here.record, point.ref, new), "Changed")

    with tempfile.TemporaryFile(dir=folder) as file:

        def bare() -> None:
            file.write(b"x" * 4096)
            file.flush()
            os.fsync(file.fileno())

        yield ratio("save of a point, on the disk", one_save, bare, None, times)
