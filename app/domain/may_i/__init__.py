"""May I do this job, must someone be told, and to what standard?

Three questions that are kept apart.  :func:`may_i` answers the second from a nation's
rules: four functions, one file each (``england``, ``wales``, ``scotland``,
``northern_ireland``), over a :class:`Case` in which nothing is open.  When the law
changes, that file changes, with its day.
"""

from __future__ import annotations

from app.domain.may_i._case import CONFIDENCES, VERDICTS, Nation
from app.domain.may_i.answer import NATIONS, Answer, building_of, may_i, side_by_side
from app.domain.may_i.jobs import JOBS, Job
from app.domain.may_i.questions import PLACES, QUESTIONS, Question
from app.domain.may_i.zone import in_bath_zone, place_of

__all__ = [
    "CONFIDENCES",
    "JOBS",
    "NATIONS",
    "PLACES",
    "QUESTIONS",
    "VERDICTS",
    "Answer",
    "Job",
    "Nation",
    "Question",
    "building_of",
    "in_bath_zone",
    "may_i",
    "place_of",
    "side_by_side",
]
