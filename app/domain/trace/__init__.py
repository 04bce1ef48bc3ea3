"""Finding out by switching off: what the readings say, and what to switch off next.

A :class:`Survey` holds ways, points and rounds; `states` says what is known of each
point with the readings that say so, `next_round` what to switch off next, `effort` how
much a manner still asks for, and `cannot_show` what no switching off can show.
`survey_of` makes the survey from a record, and `applied` writes what was found into it.
"""

from __future__ import annotations

from app.domain.trace.apply import Applied, Proposal, applied
from app.domain.trace.blind import cannot_show
from app.domain.trace.plan import (
    MANNERS,
    Effort,
    Manner,
    NextRound,
    effort,
    next_round,
)
from app.domain.trace.readings import Conflict, conflicts, likely_ways, survey_of
from app.domain.trace.state import NONE, STATUSES, Misread, PointState, Status, states
from app.domain.trace.survey import Group, Look, Survey, Way
from app.domain.trace.words import answer_of, naming, reasons_of

__all__ = [
    "MANNERS",
    "NONE",
    "STATUSES",
    "Applied",
    "Conflict",
    "Effort",
    "Group",
    "Look",
    "Manner",
    "Misread",
    "NextRound",
    "PointState",
    "Proposal",
    "Status",
    "Survey",
    "Way",
    "answer_of",
    "applied",
    "cannot_show",
    "conflicts",
    "effort",
    "likely_ways",
    "naming",
    "next_round",
    "reasons_of",
    "states",
    "survey_of",
]
