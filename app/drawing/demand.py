"""How the demand builds up: a step a rule, and what the supply fuse is rated for."""

from __future__ import annotations

from decimal import Decimal

from app.domain.load import Demand
from app.drawing.ink import LINE, SMALL
from app.drawing.render import render
from app.drawing.scene import Box, Frame, Part, Scene, Stroke, Text

WIDTH, LABEL, ROW, TOP = 640.0, 210.0, 34.0, 34.0
BAR = 18.0
NAMES = {
    "lighting": "Lighting",
    "cooking": "Cooking",
    "instant_water": "Instant hot water",
    "tank_water": "Hot water tank",
    "storage_heating": "Storage heating",
    "direct_heating": "Direct heating",
    "vehicle": "Vehicle charging",
    "battery": "Battery",
    "heat_pump": "Heat pump",
    "sockets": "Socket circuits",
    "fixed": "Other fixed",
}


def draw_demand(found: Demand, fuse: Decimal | None) -> str:
    """Return the drawing as SVG.

    Args:
        found: The demand.
        fuse: What the supply fuse is rated for, in amperes; None when not known.
    """
    return render(demand_scene(found, fuse))


def demand_scene(found: Demand, fuse: Decimal | None) -> Scene:
    """Return the drawing as a scene: readable without colour."""
    most = max(found.total, fuse or Decimal(0), Decimal(1))
    scale = (WIDTH - LABEL - 70) / float(most)
    parts: list[Part] = []
    so_far = Decimal(0)
    for place, row in enumerate(found.rows):
        y = TOP + place * ROW
        x = LABEL + float(so_far) * scale
        wide = max(float(row.amps) * scale, 1.0)
        parts.append(Frame(box=Box(x, y, wide, BAR), hatch="consumer"))
        parts.append(Text(x=0, y=y + 14, text=NAMES[row.rule], size=SMALL))
        amps = f"{row.amps:.1f} A"
        parts.append(Text(x=x + wide + 6, y=y + 14, text=amps, size=SMALL))
        so_far += row.amps
    bottom = TOP + len(found.rows) * ROW
    parts += _total(found, bottom, scale)
    if fuse is not None:
        parts += _fuse(fuse, bottom + ROW, scale)
    return Scene(
        ident="demand",
        title="How the demand builds up",
        description=_described(found, fuse),
        width=WIDTH,
        height=bottom + ROW + 12,
        parts=tuple(parts),
    )


def _total(found: Demand, y: float, scale: float) -> list[Part]:
    wide = max(float(found.total) * scale, 1.0)
    total = f"{found.total:.1f} A"
    return [
        Frame(box=Box(LABEL, y, wide, BAR), weight=LINE * 2),
        Text(x=0, y=y + 14, text="All together", size=SMALL, bold=True),
        Text(x=LABEL + wide + 6, y=y + 14, text=total, size=SMALL, bold=True),
    ]


def _fuse(fuse: Decimal, bottom: float, scale: float) -> list[Part]:
    x = LABEL + float(fuse) * scale
    return [
        Stroke(places=((x, 20), (x, bottom)), dashes="6 4", weight=LINE * 1.5),
        Text(x=x, y=14, text=f"supply fuse {fuse} A", size=SMALL, anchor="middle"),
    ]


def _described(found: Demand, fuse: Decimal | None) -> str:
    rows = ", ".join(
        f"{NAMES[row.rule].lower()} {row.amps:.1f} A" for row in found.rows
    )
    rated = f"The supply fuse is rated {fuse} A." if fuse else "Its fuse is not known."
    return f"{rows or 'no load known'}; {found.total:.1f} A in all. {rated}"
