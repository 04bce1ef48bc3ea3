"""Each board as it stands on the wall, and the schedule of its circuits."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.circuits import Part, Working, circuit_figures
from app.domain.labels.chart import Chart, ChartRow, chart_of, rooms_in_words
from app.domain.network import Network
from app.domain.pack.blocks import Block, Head, Lines, Picture, Section, Table, Text
from app.domain.pack.sections.kept import insulation
from app.domain.pack.words import day, known, number
from app.domain.record import Circuit, Result
from app.domain.record.choices import ARRANGEMENTS, CABLES, CIRCUIT_USES, METHODS
from app.domain.results.over_time import latest, results_of


def section(net: Network) -> Section:
    """Return the section: each board with its face and its devices."""
    return Section(code="boards", title="Boards", blocks=tuple(_boards(net)))


def schedule(net: Network) -> Section:
    """Return the circuit schedule: what was measured and calculated told apart."""
    return Section(
        code="circuits", title="Circuit schedule", blocks=tuple(_schedule(net))
    )


def _boards(net: Network) -> Iterator[Block]:
    for board in net.record.boards:
        chart = chart_of(net, board)
        yield Head(text=f"{board.title} ({board.ref})")
        yield Lines(lines=tuple(_facts(chart)))
        yield Picture(
            name=f"board-{board.ref}",
            alt=f"The face of {board.title}; the table says the same in words.",
        )
        yield Table(
            caption=f"Devices of {board.title}, from left to right",
            heads=("Way", "Device, as marked", "Behind RCD", "Feeds", "How known"),
            widths=(1, 3, 2, 3, 3),
            rows=tuple(_device(row) for row in chart.rows),
        )
    if not net.record.boards:
        yield Text(text="No board is recorded.")


def _facts(chart: Chart) -> Iterator[str]:
    yield f"Stands: {known(chart.place)}. Fed from: {known(chart.fed_from)}."
    yield f"Main switch: {known(chart.main_switch)}."
    if chart.in_doubt:
        yield "A query mark: what it feeds is not confirmed."


def _device(row: ChartRow) -> tuple[str, ...]:
    more = (rooms_in_words(row), *row.exceptions)
    old = f"Label found: {row.old}" if row.old not in ("", "–") else ""
    return (
        f"{row.label.number or '–'} ({row.label.ref})",
        f"{row.kind}, {row.printed}",
        row.rcd or "–",
        ". ".join(part for part in (row.feeds, *more, old) if part and part != "–"),
        ", ".join(part for part in (row.how, row.when) if part),
    )


def _schedule(net: Network) -> Iterator[Block]:
    yield Text(
        text="Calculated figures are worked out from this record, measured ones are "
        "copied from a paper; neither overrules the other. A dash: nothing recorded."
    )
    yield Table(
        caption="Circuits",
        heads=("Circuit", "Ways", "Use", "Cable", "Length", "Points"),
        widths=(4, 3, 3, 5, 1, 1),
        rows=tuple(_circuit(net, circuit) for circuit in net.record.circuits),
    )
    yield Table(
        caption="Figures",
        heads=(
            "Circuit",
            "R1+R2 calculated",
            "R1+R2 measured",
            "Zs calculated",
            "Zs measured",
            "Insulation measured",
        ),
        widths=(4, 2, 3, 2, 3, 4),
        rows=tuple(_figures(net, circuit) for circuit in net.record.circuits),
    )


def _circuit(net: Network, circuit: Circuit) -> tuple[str, ...]:
    ways = (net.record.by_ref.get(ref) for ref in circuit.ways)
    cable = (
        CABLES[circuit.cable] if circuit.cable != "unknown" else "cable not known",
        number(circuit.line_mm2, "mm²"),
        f"earth {number(circuit.cpc_mm2, 'mm²')}" if circuit.cpc_mm2 else "",
        METHODS[circuit.method] if circuit.method != "unknown" else "",
    )
    return (
        " ".join(
            part
            for part in (circuit.number, f"{circuit.title} ({circuit.ref})")
            if part
        ),
        "; ".join(f"{way.title} ({way.ref})" for way in ways if way) or "none recorded",
        f"{CIRCUIT_USES[circuit.use]}, {ARRANGEMENTS[circuit.arrangement].lower()}",
        ", ".join(part for part in cable if part),
        number(circuit.length_m, "m") or "–",
        str(len(net.points_at.get(circuit.ref, ()))),
    )


def _figures(net: Network, circuit: Circuit) -> tuple[str, ...]:
    answer = circuit_figures(net, circuit)
    return (
        f"{circuit.title} ({circuit.ref})",
        _calculated(answer.part("r1r2")),
        _measured(net, circuit, "r1_r2_ohm"),
        _calculated(answer.part("zs")),
        _measured(net, circuit, "zs_ohm"),
        _insulated(net, circuit),
    )


def _measured(net: Network, circuit: Circuit, name: str) -> str:
    """Return the newest figure of its kind, with its own day."""
    found = latest(net.record, circuit.ref, name)
    return f"{number(getattr(found, name), 'Ω')}, {_on(found)}" if found else "–"


def _insulated(net: Network, circuit: Circuit) -> str:
    own = results_of(net.record, circuit.ref)
    found = next((result for result in own if insulation(result) != "–"), None)
    return f"{insulation(found)}, {_on(found)}" if found else "–"


def _on(result: Result) -> str:
    return day(result.tested_on) or "day not known"


def _calculated(part: Part | None) -> str:
    return part.found.shown if part and isinstance(part.found, Working) else "–"
