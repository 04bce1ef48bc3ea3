"""Switching rounds: the list of them, and starting the next."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, cast, get_args

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.network import Network, network
from app.domain.record import Device, Record, Round
from app.domain.record.choices import MANNERS
from app.domain.trace import (
    Manner,
    Survey,
    effort,
    likely_ways,
    loses_left_on,
    naming,
    next_round,
    states,
    survey_of,
)
from app.domain.trace.rounds import begun
from app.services.homes import save
from app.web.forms import sent_once
from app.web.rounds_view import devices_by_board, found_so_far, person
from app.web.session import change, opened, opened_to_change, supply

bp = Blueprint("rounds", __name__, url_prefix="/homes/<home>/rounds")
FIRST_LOOKS = {"baseline_day": "day", "baseline_night": "night"}
ABOUT = {
    "one_at_a_time": "Disturbs least at once, and confirms as it goes.",
    "halving": "Fewest rounds until all is found. Points on two ways can fool it, so "
    "the confirming looks come on top.",
    "self_checking": "Each way is off equally often, so that points on two ways and a "
    "misread point show themselves.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundView:
    """A round in the list.

    Attributes:
        title: What it is called.
        off: What was off, in words; empty for a first look.
        stage: How far it is.
        marks: How many marks there are.
        url: Where it goes on.
    """

    title: str
    off: str
    stage: str
    marks: int
    url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundsPage:
    """The rounds.

    Attributes:
        title: Heading.
        answer: What is known, in one sentence.
        under_way: The round that is not ended, if there is one.
        rounds: All rounds, the newest first.
        start: Address that starts a round.
        results: Address of what they have shown.
        can_start: Whether there are ways and points to find out about.
    """

    title: str
    answer: str
    under_way: RoundView | None
    rounds: tuple[RoundView, ...]
    start: str
    results: str
    can_start: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MannerView:
    """A manner to choose, and what it still asks for.

    Attributes:
        code: Its code.
        name: Its name.
        about: What it is good for.
        finding: Rounds until every point is found.
        rounds: Rounds in all, with the looks that confirm.
        readings: Readings in all.
        next: What the next round would switch off; empty when nothing is left.
    """

    code: str
    name: str
    about: str
    finding: str
    rounds: str
    readings: str
    next: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StartPage:
    """Choosing the next round.

    Attributes:
        title: Heading.
        first_looks: First looks not made yet: code and words.
        manners: The three manners.
        boards: Board names with their devices: reference, name, why it is left on.
        error: What is wrong with what was sent; empty when nothing.
        chosen: References ticked before.
    """

    title: str
    first_looks: tuple[tuple[str, str], ...]
    manners: tuple[MannerView, ...]
    boards: tuple[tuple[str, tuple[tuple[str, str, str], ...]], ...]
    error: str
    chosen: tuple[str, ...]


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """Show the rounds."""
    record, survey = opened(home).record, survey_of(supply(home))
    views = tuple(_view(record, each) for each in reversed(record.rounds))
    open_ones = [
        v for v, r in zip(views, reversed(record.rounds), strict=True) if _open(r)
    ]
    page = RoundsPage(
        title="Switching rounds",
        answer=found_so_far(survey, states(survey)),
        under_way=open_ones[0] if open_ones else None,
        rounds=views,
        start=url_for(".new", home=home),
        results=url_for("findings.index", home=home),
        can_start=bool(survey.ways and survey.points),
    )
    return render_template("pages/rounds/index.html", page=page)


@bp.get("/new")
def new(home: str) -> ResponseReturnValue:
    """Ask how to go on."""
    return _start_page(home)


@bp.post("/new")
def create(home: str) -> ResponseReturnValue:
    """Begin a round: a first look, the next of a manner, or one chosen by hand."""
    with change() as connection:
        start = opened_to_change(connection, home)
        values = _chosen(start.record)
        if isinstance(values, str):
            return _start_page(home, error=values), 422
        now = datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
        about = {"stage": "planned", "started_at": now, "started_by": person()}
        record, made = begun(start.record, {**values, **about})
        save(connection, start, record, f"{made.title} planned.", once=sent_once())
        stands = opened_to_change(connection, home).record
    ref = made.ref if stands.find(Round, made.ref) else stands.rounds[-1].ref
    step = "ready" if made.off else "prepare"
    return redirect(url_for(f"marking.{step}", home=home, ref=ref), 303)


def _open(each: Round) -> bool:
    return each.stage in ("planned", "marking")


def _view(record: Record, each: Round) -> RoundView:
    called = naming(record)
    page = {"planned": "marking.ready", "marking": "marking.marks"}
    return RoundView(
        title=each.title,
        off="; ".join(map(called, each.off)),
        stage=each.stage_words,
        marks=len(record.readings_of(each.ref)),
        url=url_for(
            page.get(each.stage, "marking.marks"), home=record.home.ref, ref=each.ref
        ),
    )


def _start_page(home: str, *, error: str = "") -> str:
    record, net = opened(home).record, supply(home)
    survey = survey_of(net)
    made = {("night" if look.night else "day") for look in survey.looks if not look.off}
    words = {
        "baseline_day": "By day, everything on",
        "baseline_night": "By night, everything on, in off-peak hours",
    }
    page = StartPage(
        title="Start a round",
        first_looks=tuple(
            (c, w) for c, w in words.items() if FIRST_LOOKS[c] not in made
        ),
        manners=tuple(_manner(survey, net, m) for m in get_args(Manner)),
        boards=tuple(
            (name, tuple((d.ref, d.title, d.leave_on) for d in devices))
            for name, devices in devices_by_board(record)
            if devices
        ),
        error=error,
        chosen=tuple(request.form.getlist("off")),
    )
    return render_template("pages/rounds/start.html", page=page)


def _manner(survey: Survey, net: Network, manner: Manner) -> MannerView:
    planned = next_round(survey, manner, likely_ways(net))
    needed = effort(survey, manner)
    called = naming(net.record)
    return MannerView(
        code=manner,
        name=MANNERS[manner],
        about=ABOUT[manner],
        finding=_span(needed.finding_best, needed.finding_worst),
        rounds=_span(needed.rounds_best, needed.rounds_worst),
        readings=_span(needed.readings_best, needed.readings_worst),
        next="; ".join(map(called, planned.switches)) if planned else "",
    )


def _span(low: int, high: int) -> str:
    return f"{high}" if low == high else f"{low} to {high}"


def _chosen(record: Record) -> dict[str, Any] | str:
    """Return the fields of the round asked for, or what is wrong."""
    asked = request.form.get("go", "")
    if asked in FIRST_LOOKS:
        return {"when": FIRST_LOOKS[asked]}
    night = "night" if request.form.get("when") == "night" else "day"
    if asked not in get_args(Manner):
        off = tuple(dict.fromkeys(request.form.getlist("off")))
        return _wrong_by_hand(record, off) or {"off": off, "when": night}
    net = network(record)
    planned = next_round(survey_of(net), cast("Manner", asked), likely_ways(net))
    if planned is None:
        return "There is nothing left that switching off could show in this manner."
    fields = {"off": planned.switches, "asked": planned.points, "manner": asked}
    return {**fields, "when": night}


def _wrong_by_hand(record: Record, off: tuple[str, ...]) -> str:
    devices = [record.find(Device, ref) for ref in off]
    if not off:
        return "Tick what you will switch off, or choose one of the manners."
    if None in devices:
        return "One of these is no longer in the record. Choose again."
    kept = loses_left_on(network(record), off)
    if kept:
        return f"{kept[0].title} is to be left on: {kept[0].leave_on}."
    return ""
