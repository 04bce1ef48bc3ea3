"""What was done and measured over the years: work, papers, results, trips, changes."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from datetime import datetime

from app.domain.pack.blocks import Block, Head, Lines, Picture, Section, Table, Text
from app.domain.pack.words import day, item_name, names, number
from app.domain.record import Attachment, Paper, Record, Result, Work
from app.domain.record.choices import (
    MOVED,
    PAPER_KINDS,
    POLARITY,
    TOLD,
    TRIP_OUTCOMES,
    WORK_STATES,
    WORKED,
    WORKERS,
)
from app.domain.uk_time import uk_time
from app.domain.works import day_of_work, in_turn, papers_of


def section(record: Record, changes: tuple[str, ...]) -> Section:
    """Return the section; ``changes`` are the sentences of the log, newest first."""
    return Section(
        code="kept",
        title="Work, papers, results and changes",
        blocks=tuple(_blocks(record, changes)),
    )


def pictures(record: Record, there: Collection[str]) -> Section:
    """Return the section of photographs, each with what is marked on it."""
    photos = [a for a in record.attachments if a.media_type.startswith("image/")]
    return Section(
        code="photos",
        title="Photographs",
        blocks=tuple(
            block for photo in photos for block in _photo(record, photo, there)
        ),
    )


def _blocks(record: Record, changes: tuple[str, ...]) -> Iterator[Block]:
    yield Table(
        caption="Work",
        heads=("Work", "State", "Where", "By whom", "Told", "Papers"),
        widths=(4, 2, 4, 3, 2, 3),
        rows=tuple(_work(record, work) for work in in_turn(record)),
    )
    yield Table(
        caption="Papers",
        heads=("Paper", "Number", "About", "By whom", "Where it is kept"),
        widths=(4, 2, 4, 2, 3),
        rows=tuple(_paper(record, paper) for paper in record.papers),
    )
    yield Table(
        caption="Test results, as copied from papers",
        heads=("Of", "Ring r1, rn, r2", "R1+R2; R2", "Insulation", "Zs; Ze", "More"),
        widths=(4, 3, 2, 3, 2, 5),
        rows=tuple(_result(record, result) for result in record.results),
    )
    yield Head(text="Times that something tripped")
    yield Lines(lines=tuple(_trips(record)), otherwise="None is recorded.")
    if changes:
        yield Head(text="Changes of this record, newest first")
        yield Lines(lines=changes)


def _work(record: Record, work: Work) -> tuple[str, ...]:
    papers = names(record, tuple(p.ref for p in papers_of(record, work.ref)))
    return (
        ". ".join(part for part in (f"{work.title} ({work.ref})", work.note) if part),
        ", ".join(
            part for part in (WORK_STATES[work.state], day_of_work(work)) if part
        ),
        names(record, work.about) or "not recorded",
        ", ".join(p for p in (WORKERS[work.done_by], work.done_by_name) if p),
        TOLD[work.told],
        papers or "none recorded",
    )


def _paper(record: Record, paper: Paper) -> tuple[str, ...]:
    about = (paper.work, *paper.about) if paper.work else paper.about
    return (
        ", ".join(
            part
            for part in (
                f"{paper.title} ({paper.ref})",
                PAPER_KINDS[paper.kind] if paper.name else "",
                day(paper.dated) if paper.name else "",
                paper.note,
            )
            if part
        ),
        paper.number or "–",
        names(record, about) or "the home",
        paper.by or "–",
        paper.where_kept or "–",
    )


def _result(record: Record, result: Result) -> tuple[str, ...]:
    ring = (result.r1_ohm, result.rn_ohm, result.r2_ohm)
    return (
        item_name(record, result.about) if result.about else "The supply",
        _ohms(*ring),
        _ohms(result.r1_r2_ohm, result.r2_alone_ohm),
        insulation(result),
        _ohms(result.zs_ohm, result.ze_ohm),
        ", ".join(part for part in _more(record, result) if part) or "–",
    )


def _ohms(*values: object) -> str:
    if all(value is None for value in values):
        return "–"
    return "; ".join("–" if v is None else f"{v} Ω" for v in values)


def insulation(result: Result) -> str:
    """Return both insulation resistances of a result, a dash for none."""
    signs = {"over": "> ", "under": "< ", "exact": ""}
    found = [
        f"{words} {signs[sign]}{number(value, 'MΩ')}"
        for words, sign, value in (
            ("live to live", result.live_live_over, result.live_live_mohm),
            ("live to earth", result.live_earth_over, result.live_earth_mohm),
        )
        if value is not None
    ]
    return "; ".join(found) or "–"


def _more(record: Record, result: Result) -> tuple[str, ...]:
    polarity = POLARITY[result.polarity].lower() if result.polarity != "unknown" else ""
    return (
        f"RCD {number(result.rcd_ms, 'ms')}" if result.rcd_ms is not None else "",
        number(result.fault_current_ka, "kA"),
        f"polarity {polarity}" if polarity else "",
        f"button: {WORKED[result.rcd_button].lower()}"
        if result.rcd_button != "unknown"
        else "",
        day(result.tested_on) or "day not known",
        item_name(record, result.paper) if result.paper else "from which paper is open",
        result.tested_by,
        result.note,
    )


def _trips(record: Record) -> Iterator[str]:
    for trip in record.trips:
        device = f", {item_name(record, trip.device)}" if trip.device else ""
        found = f" From: {names(record, trip.found)}." if trip.found else ""
        at = trip.happened_at
        when = (
            day(uk_time(datetime.fromisoformat(at)).date()) if at else "day not known"
        )
        yield (
            f"{when}: {MOVED[trip.moved]}{device}. {TRIP_OUTCOMES[trip.outcome]}."
            f"{found} {trip.note}".rstrip()
        )


def _photo(
    record: Record, photo: Attachment, there: Collection[str]
) -> Iterator[Block]:
    spots = [spot for spot in record.spots if spot.attachment == photo.ref]
    yield Head(text=f"{photo.title} ({photo.ref})")
    if photo.sha256 not in there:
        yield Text(text="It is not in this pack: its file is not here.")
        return
    yield Picture(
        name=photo.sha256,
        photo=True,
        alt=photo.title,
        caption=", ".join(
            p for p in (names(record, photo.of), day(photo.taken_on)) if p
        ),
    )
    yield Lines(
        lines=tuple(
            f"{spot.title}: {spot.across / 10:g} % from the left, {spot.down / 10:g} % "
            f"from the top{f', {item_name(record, spot.about)}' if spot.about else ''}."
            for spot in spots
        )
    )
