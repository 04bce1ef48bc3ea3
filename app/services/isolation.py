"""Plans for switching off: made from a record, and as files to carry."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict
from datetime import date
from html import escape
from typing import Any

from app.domain.isolation import JOBS, OnTheDay, Plan, Sheet, plan
from app.domain.kinds import DEVICE_KINDS
from app.domain.network import Network
from app.domain.record import Board, Circuit, Point, Record, Room
from app.errors import InvalidError, NotFoundError
from app.report import Paper, as_pdf
from app.report.plain import Plain
from app.services.carried import hash_for_policy, style, templates

# What the look of the saved file is made of; it is the pages' own.
STYLES = ("tokens", "base", "components/isolation", "print")
MAY_BE_WORKED_ON = (Point, Room, Circuit, Board)


def planned(
    net: Network, refs: Iterable[str], job: str = "any", day: OnTheDay | None = None
) -> Plan:
    """Return the plan for things of a record.

    Raises:
        NotFoundError: One of them is not in the record, or is none to work on.
        InvalidError: There is no such kind of work.
    """
    wanted = tuple(refs)
    missing = [ref for ref in wanted if not may_be_worked_on(net.record, ref)]
    if missing:
        raise NotFoundError(
            f"No point, room, circuit or board is called {', '.join(missing)} here."
        )
    if job not in JOBS:
        raise InvalidError(f"There is no work “{job}”. There is: {', '.join(JOBS)}.")
    return plan(net, wanted, job=job, day=day)


def may_be_worked_on(record: Record, ref: str) -> bool:
    """Return whether a reference names something that a plan can be made for."""
    return isinstance(record.by_ref.get(ref), MAY_BE_WORKED_ON)


def as_html(sheet: Sheet, day: date) -> str:
    """Return a sheet as one file that opens from the disk: no program, no network."""
    plan_macros: Any = templates().get_template("components/plan.html").module
    title = escape(f"{sheet.title}, {sheet.home}")
    looks = style(*STYLES)
    policy = (
        f"default-src 'none'; style-src 'sha256-{hash_for_policy(looks)}'; "
        "base-uri 'none'; form-action 'none'"
    )
    written = f"From the record as it stood on {day.day} {day:%B %Y}."
    return (
        '<!DOCTYPE html>\n<html lang="en-GB">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>{looks}</style>\n</head>\n"
        f'<body class="carried">\n<main class="sheet">\n<h1>{title}</h1>\n'
        f"<p>{escape(written)}</p>\n{plan_macros.whole(sheet)}\n</main>\n</body>\n"
        "</html>\n"
    )


def as_paper(
    net: Network, sheet: Sheet, day: date, answers: OnTheDay | None = None
) -> bytes:
    """Return a sheet as PDF, on one page of A4 if its letters may be small enough.

    Args:
        net: The supply network, for the boards as they stand.
        sheet: The plan, or the whole house off.
        day: The day that the paper carries.
        answers: Who works and when, as far as that was said.
    """
    answers = answers or OnTheDay()
    data: dict[str, Plain] = {
        **{name: list(getattr(sheet, name)) for name in PLAIN_LISTS},
        "heading": sheet.title,
        "home": f"{sheet.home.rstrip('.')}.",
        "advice": f"{sheet.advice or 'In this order'}.",
        "no_proof": sheet.no_proof,
        "still_live": [*sheet.still_live, *(f"Unknown: {u}" for u in sheet.unknown)],
        "switches": [asdict(switch) for switch in sheet.switches],
        "off_head": sheet.off_head,
        "rooms_off": sheet.rooms_off,
        "steps": [
            {"title": s.title, "why": s.why, "writes": list(s.writes)}
            for s in sheet.steps
        ],
        "boards": _boards(net, sheet),
        "who": answers.who,
        "when": answers.when,
    }
    title = f"{sheet.title}, {sheet.home}"
    return as_pdf(Paper(template="isolation", title=title, day=day, data=data))


PLAIN_LISTS = (
    "stops",
    "labels",
    "care",
    "partly",
    "sources",
    "cautions",
    "stop_when",
    "call",
)


def _boards(net: Network, sheet: Sheet) -> list[Plain]:
    """Return each board with something to switch, its devices from the left."""
    record = net.record
    marked = frozenset(switch.ref for switch in sheet.switches)
    with_some = [
        board
        for board in record.boards
        if any(d.ref in marked for d in record.devices_of(board.ref))
    ]
    return [
        {
            "name": board.name,
            "devices": [
                {
                    "text": device.way or DEVICE_KINDS[device.kind].short,
                    "off": device.ref in marked,
                }
                for device in record.devices_of(board.ref)
            ],
        }
        for board in with_some
    ]
