"""Open questions: the faults and gaps of the record, and the odd ones out."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template
from flask.typing import ResponseReturnValue

from app.domain.fault import Fault
from app.domain.faults import faults
from app.domain.odd import odd_ones_out
from app.domain.record import Record
from app.web.addresses import Link, item_url
from app.web.papers import today
from app.web.session import supply

bp = Blueprint("faults", __name__, url_prefix="/homes/<home>/open-questions")


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultView:
    """A fault of the record as the page shows it.

    Attributes:
        sentence: What is odd.
        remedy: How to put it right.
        wrong: Whether the record cannot be true as written.
        links: What it is about: label and address.
    """

    sentence: str
    remedy: str
    wrong: bool
    links: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultsPage:
    """The open questions.

    Attributes:
        title: Heading.
        answer: How many there are, in one sentence.
        faults: Each of them, the wrong ones first.
        odd: Odd ones out: label, address, why.
    """

    title: str
    answer: str
    faults: tuple[FaultView, ...]
    odd: tuple[tuple[str, str, str], ...]


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show what the record contradicts, and what it leaves open."""
    net = supply(home)
    record = net.record
    found = faults(record, today())
    page = FaultsPage(
        title="Open questions",
        answer=_answer(found),
        faults=tuple(_view(record, fault) for fault in found),
        odd=tuple(
            (f"{record.by_ref[o.point].title} ({o.point})",
             item_url(home, record.by_ref[o.point]), o.sentence)
            for o in odd_ones_out(net)
        ),
    )  # fmt: skip
    return render_template("pages/faults.html", page=page)


def _answer(found: tuple[Fault, ...]) -> str:
    wrong = sum(fault.wrong for fault in found)
    if not found:
        return (
            "None of the checks found anything. That does not make the record complete."
        )
    if not wrong:
        return f"{len(found)} still open; none of them contradicts the rest."
    return f"{wrong} cannot be as written; {len(found) - wrong} are still open."


def _view(record: Record, fault: Fault) -> FaultView:
    items = [record.by_ref[ref] for ref in fault.subjects if ref in record.by_ref]
    return FaultView(
        sentence=fault.sentence,
        remedy=fault.remedy,
        wrong=fault.wrong,
        links=tuple(
            (f"{i.title} ({i.ref})", item_url(record.home.ref, i)) for i in items
        ),
    )
