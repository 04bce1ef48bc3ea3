"""What has tripped: each device with its entries; a walk is kept here as one more."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from app.domain.days import in_words
from app.domain.edits import added, new_ref
from app.domain.record import Record, Trip
from app.domain.record.choices import MOVED, TRIP_OUTCOMES
from app.domain.tripped import earlier, entry
from app.errors import InvalidError
from app.services.homes import save
from app.web.addresses import delete_url, edit_url, item_url
from app.web.forms import sent_once
from app.web.paired import device_name
from app.web.session import change, opened, opened_to_change
from app.web.tripped_address import read
from app.web.tripped_view import START, local, since
from app.web.words import with_board

NOT_ENDED = "How it ended is not recorded"

bp = Blueprint("trips", __name__, url_prefix="/homes/<home>/trips")


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One time that something tripped.

    Attributes:
        anchor: Its id on the page.
        when: Day and hour; says so where none is recorded.
        facts: What moved, how it ended, and by whom it was told.
        found: What it came from: name and address of each.
        note: What else was written.
        change: Address of its form.
        delete: Address where deleting is asked about.
    """

    anchor: str
    when: str
    facts: tuple[str, ...]
    found: tuple[tuple[str, str], ...]
    note: str
    change: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TripsPage:
    """What has tripped.

    Attributes:
        title: Heading.
        groups: Each device: its name, its address, how often it has tripped, entries.
        begin: Address where a walk begins.
    """

    title: str
    groups: tuple[tuple[str, str, str, tuple[Entry, ...]], ...]
    begin: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List what has tripped, device by device."""
    record = opened(home).record
    devices = dict.fromkeys(trip.device for trip in record.trips)
    page = TripsPage(
        title="What has tripped",
        groups=tuple(_group(record, device) for device in devices),
        begin=START.url(home),
    )
    return render_template("pages/tripped/log.html", page=page)


@bp.post("/")
def keep(home: str) -> ResponseReturnValue:
    """Keep a walk as an entry; its hour is that of the press."""
    walk, at = read(request.form), datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    if not walk.codes or not walk.screens:
        raise InvalidError("Go back, and answer the questions first.")
    with change() as connection:
        start = opened_to_change(connection, home)
        ref = new_ref(start.record, Trip)
        trip = entry(start.record, walk.screens, walk.chosen, ref, at)
        trip = trip.model_copy(update={"told_by": device_name()})
        record = added(start.record, trip)
        sentence = f"Kept: {trip.title} ({ref})."
        done = save(connection, start, record, sentence, once=sent_once())
    return redirect(url_for(".index", home=home, done=done), 303)


def _group(
    record: Record, device: str | None
) -> tuple[str, str, str, tuple[Entry, ...]]:
    trips = earlier(record, device)
    item = record.by_ref.get(device or "")
    name = with_board(record, item.ref) if item else "Device not recorded"
    url = item_url(record.home.ref, item) if item else ""
    often = f"It has tripped {since(trips)}." if item else ""
    return name, url, often, tuple(_entry(record, trip) for trip in trips)


def _entry(record: Record, trip: Trip) -> Entry:
    home = record.home.ref
    found = [item for ref in trip.found if (item := record.by_ref.get(ref))]
    by = f"Told by {trip.told_by}" if trip.told_by else ""
    ended = TRIP_OUTCOMES[trip.outcome] if trip.outcome != "unknown" else NOT_ENDED
    said = (MOVED[trip.moved], ended, by)
    return Entry(
        anchor=f"item-{trip.ref}",
        when=_when(trip),
        facts=tuple(filter(None, said)),
        found=tuple((item.title, item_url(home, item)) for item in found),
        note=trip.note,
        change=edit_url(home, trip),
        delete=delete_url(home, trip),
    )


def _when(trip: Trip) -> str:
    if not trip.happened_at:
        return "Day not recorded"
    at = local(trip.happened_at)
    return f"{in_words(at.date())}, {at:%H:%M}"
