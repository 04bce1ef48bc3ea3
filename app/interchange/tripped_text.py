"""What hangs on what can trip, as text for a console or a file."""

from __future__ import annotations

from app.domain.record.choices import CARE
from app.domain.tripped import GROUNDS, Hanging, Suspect, named, neutral_lines, where

FIRST = (
    "Water, burning, a drilled cable or a shock: leave it off and call.",
    "Unplug from the top of the list, then switch it on, once.",
)


def tripped_text(hangs: tuple[Hanging, ...]) -> str:
    """Return each device with its suspects in order; what to do first stands above."""
    return "\n\n".join(("\n".join(FIRST), *map(_device, hangs)))


def _device(one: Hanging) -> str:
    on = ", ".join(filter(None, (one.kind, one.printed, one.board, one.room)))
    lines = [f"{one.title} ({one.ref}): {on}"]
    ground = None
    for suspect in one.suspects:
        if suspect.ground != ground:
            ground = suspect.ground
            lines.append(f"  {GROUNDS[ground]}")
        lines.append(f"    {_suspect(suspect)}")
    if not one.suspects:
        lines.append("  What hangs on it is not recorded.")
    if one.ways:
        lines.append("  Ways below it")
        lines += [f"    {named(way)}" for way in one.ways]
    if one.button and one.ways:
        lines.append("  If it trips with every way off, leave it off and call")
        lines += [f"    {line}" for line in neutral_lines(one.ways)]
    if one.button:
        lines += [
            f"  The neutral goes another way than the line: {where(suspect)}"
            for suspect in one.borrowed
        ]
    return "\n".join(lines)


def _suspect(suspect: Suspect) -> str:
    todo = "unplug" if suspect.unplugs else "wired in"
    cares = "".join(f", {CARE[care].lower()}" for care in suspect.care)
    return f"{where(suspect)} ({suspect.ref}): {todo}{cares}"
