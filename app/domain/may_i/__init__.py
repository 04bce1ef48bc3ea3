"""May I do this job, must someone be told, and to what standard?

Three questions that are kept apart.  :func:`may_i` answers the second from a nation's
rules: four functions, one file each (``england``, ``wales``, ``scotland``,
``northern_ireland``), over a :class:`Case` in which nothing is open.  When the law
changes, that file changes, with its day.
"""

from __future__ import annotations

from app.domain.may_i._case import CONFIDENCES, VERDICTS, Nation
from app.domain.may_i.answer import (
    NATIONS,
    Answer,
    Column,
    building_of,
    may_i,
    questions_of,
    side_by_side,
)
from app.domain.may_i.beside import (
    Beside,
    allowed,
    isolation_work,
    left_to_others,
    others_to_ask,
)
from app.domain.may_i.groups import GROUPS, jobs_found
from app.domain.may_i.jobs import JOBS, Job, job_titled
from app.domain.may_i.known import Known, known_of, nation_of
from app.domain.may_i.planned import planned_already, planned_work
from app.domain.may_i.questions import PLACES, QUESTIONS, Question
from app.domain.may_i.zone import in_bath_zone, place_of, places_of

__all__ = [
    "CONFIDENCES",
    "GROUPS",
    "JOBS",
    "NATIONS",
    "PLACES",
    "QUESTIONS",
    "VERDICTS",
    "Answer",
    "Beside",
    "Column",
    "Job",
    "Known",
    "Nation",
    "Question",
    "allowed",
    "building_of",
    "in_bath_zone",
    "isolation_work",
    "job_titled",
    "jobs_found",
    "known_of",
    "left_to_others",
    "may_i",
    "nation_of",
    "others_to_ask",
    "place_of",
    "places_of",
    "planned_already",
    "planned_work",
    "questions_of",
    "side_by_side",
]
