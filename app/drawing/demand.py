"""How the demand of a home builds up, group on group, against its supply fuse.

Each bar begins where the one before it ended.  What lies beyond the fuse is hatched, so
that it reads in black and white too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from app.domain.load.demand import Demand, Row
from app.drawing.ink import DASHES, HEAVY, PLAIN, STRONG, shortened
from app.drawing.render import render
from app.drawing.scene import Box, Frame, Part, Scene, Stroke, Text

WIDTH, MARGIN, STEP, BAR = 360.0, 4.0, 40.0, 14.0
ROOM = WIDTH - 2 * MARGIN
BEYOND = "shared"
# Why no line of a fuse can be drawn.
UNKNOWN = "Supply fuse: not known"
SEVERAL = "Supply fuses: more than one"
NO_PHASE = "Phase: not recorded"


def draw_demand(
    demand: Demand, rated: Decimal | None, *, phase: str = "", without: str = UNKNOWN
) -> str:
    """Return the drawing as SVG text.

    Args:
        demand: The demand.
        rated: Rating of the supply fuse; None where no line can be drawn for it.
        phase: The phase that it is of; empty: it is of no one phase.
        without: Why no line can be drawn.
    """
    return render(demand_scene(demand, rated, phase=phase, without=without))


def demand_scene(
    demand: Demand, rated: Decimal | None, *, phase: str = "", without: str = UNKNOWN
) -> Scene:
    """Return the drawing as a scene."""
    most = max(demand.amps, rated or Decimal(0), Decimal(1))
    scale = ROOM / float(most)
    top = 66.0
    bottom = top + STEP * (len(demand.rows) + 1)
    parts = [
        *_heading(rated, without),
        *_bars(demand.rows, rated, scale, top),
        *_total(demand, rated, scale, top + STEP * len(demand.rows)),
        *_fuse_line(rated, scale, top, len(demand.rows) + 1),
    ]
    return Scene(
        ident=f"demand-{phase.lower()}" if phase else "demand",
        title=f"How the demand builds up{f' on {phase}' if phase else ''}",
        description=_description(demand, rated, without),
        width=WIDTH,
        height=bottom + 4,
        parts=tuple(parts),
    )


def _description(demand: Demand, rated: Decimal | None, without: str) -> str:
    rows = "; ".join(f"{row.label} {row.shown}" for row in demand.rows)
    fuse = f"Supply fuse: {rated} A" if rated else without
    return f"{rows}. Together {demand.total}. {fuse}."


def _heading(rated: Decimal | None, without: str) -> Iterator[Part]:
    if rated is None:
        yield Text(x=MARGIN, y=16, text=f"{without}, so no line is drawn")
        return
    yield Text(x=MARGIN, y=16, text=f"Broken line: supply fuse, {rated} A")
    yield Frame(box=Box(MARGIN, 26, 24, BAR), hatch=BEYOND)
    yield Text(x=MARGIN + 32, y=37, text="Beyond the fuse, on paper")


def _bars(
    rows: Sequence[Row], rated: Decimal | None, scale: float, top: float
) -> Iterator[Part]:
    before = Decimal(0)
    for place, row in enumerate(rows):
        y = top + STEP * place
        yield from _named(row.label, row.shown, y, bold=False)
        yield from _bar(before, before + row.amps, rated, scale, y + 6)
        before += row.amps


def _total(
    demand: Demand, rated: Decimal | None, scale: float, y: float
) -> Iterator[Part]:
    yield from _named("Together", demand.total, y, bold=True)
    yield from _bar(Decimal(0), demand.amps, rated, scale, y + 6, weight=HEAVY)


def _named(label: str, shown: str, y: float, *, bold: bool) -> Iterator[Part]:
    size = STRONG if bold else PLAIN
    text = shortened(label, ROOM - 110, size, bold=bold)
    whole = label if text != label else None
    yield Text(x=MARGIN, y=y, text=text, whole=whole, size=size, bold=bold)
    yield Text(x=WIDTH - MARGIN, y=y, text=shown, size=size, bold=bold, anchor="end")


def _bar(
    start: Decimal,
    end: Decimal,
    rated: Decimal | None,
    scale: float,
    y: float,
    *,
    weight: float = 1.5,
) -> Iterator[Part]:
    edge = end if rated is None else min(max(rated, start), end)
    for low, high, hatch in ((start, edge, None), (edge, end, BEYOND)):
        if high > low:
            x, width = MARGIN + float(low) * scale, float(high - low) * scale
            box = Box(x, y, max(width, 1.0), BAR)
            yield Frame(box=box, hatch=hatch, weight=weight)


def _fuse_line(
    rated: Decimal | None, scale: float, top: float, rows: int
) -> Iterator[Part]:
    """Yield the fuse's line beside each bar, clear of the words between."""
    if rated is None:
        return
    x = MARGIN + float(rated) * scale
    for place in range(rows):
        y = top + STEP * place
        yield Stroke(places=((x, y + 3), (x, y + BAR + 9)), dashes=DASHES)
