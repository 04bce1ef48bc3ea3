"""The home as frozen values: what a person may write down, and no more."""

from __future__ import annotations

from app.domain.record._field import (
    LONG,
    REF_PATTERN,
    SHORT,
    FieldSpec,
    OneOf,
    RefTo,
    specs,
)
from app.domain.record.applies import fields_beside, fields_of_kind, hint_of_kind
from app.domain.record.aside import Aside
from app.domain.record.board import Board, Device
from app.domain.record.circuit import Circuit
from app.domain.record.files import Attachment, Spot
from app.domain.record.home import Home, Room, Source
from app.domain.record.intake import IntakeItem
from app.domain.record.items import Control, Item, Tie
from app.domain.record.point import Point
from app.domain.record.record import SORTS, Record
from app.domain.record.reminder import Occasion, Reminder
from app.domain.record.result import Result
from app.domain.record.survey import Reading, Round
from app.domain.record.trip import Trip
from app.domain.record.work import Paper, Work

__all__ = [
    "LONG",
    "REF_PATTERN",
    "SHORT",
    "SORTS",
    "Aside",
    "Attachment",
    "Board",
    "Circuit",
    "Control",
    "Device",
    "FieldSpec",
    "Home",
    "IntakeItem",
    "Item",
    "Occasion",
    "OneOf",
    "Paper",
    "Point",
    "Reading",
    "Record",
    "RefTo",
    "Reminder",
    "Result",
    "Room",
    "Round",
    "Source",
    "Spot",
    "Tie",
    "Trip",
    "Work",
    "fields_beside",
    "fields_of_kind",
    "hint_of_kind",
    "specs",
]
