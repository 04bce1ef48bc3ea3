"""A plan for switching off as text, for a console or a file."""

from __future__ import annotations

from app.domain.isolation import Sheet, Step


def isolation_text(sheet: Sheet) -> str:
    """Return every part of a sheet that says something, under its heading."""
    parts = [
        ("", [f"{sheet.title}. {sheet.home}", sheet.advice]),
        ("STOP AND FIND OUT", sheet.stops),
        ("Before you isolate, label", sheet.labels),
        ("STILL LIVE HERE", sheet.still_live),
        ("Not known, so counts as live", sheet.unknown),
        (f"Switch off, in order ({sheet.set_name})", _switches(sheet)),
        ("Why the wide set", sheet.reasons),
        ("Or", sheet.instead),
        ("Missed if it goes off", sheet.care),
        (sheet.off_head, sheet.others_off),
        ("Keeps another supply", sheet.partly),
        ("The household first", sheet.before),
        ("Other sources", sheet.sources),
        ("Bear in mind", sheet.cautions),
        ("Steps", [line for step in sheet.steps for line in _step(step)]),
        ("Stop when", sheet.stop_when),
        ("Whom to call", sheet.call),
        ("", [sheet.no_proof]),
    ]
    blocks = [_block(head, list(lines)) for head, lines in parts]
    return "\n\n".join(filter(None, blocks))


def _block(head: str, lines: list[str]) -> str:
    said = [line for line in lines if line]
    if not said:
        return ""
    return "\n".join([head, *(f"  {line}" for line in said)] if head else said)


def _switches(sheet: Sheet) -> list[str]:
    found = [f"{s.number}. {s.name}: {s.where}. {s.note}" for s in sheet.switches]
    return found or ["The record names no switch of yours that would part this."]


def _step(step: Step) -> list[str]:
    head = f"{step.title}. {step.why}"
    return [
        head,
        *(f"  {line}" for line in step.do),
        *(f"  {w}: ____" for w in step.writes),
    ]
