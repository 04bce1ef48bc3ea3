"""Test results: read as papers write them, questioned, kept over time."""

from __future__ import annotations

from app.domain.results.beside import MeasuredBeside, measured_beside
from app.domain.results.over_time import latest, newest_first, results_of
from app.domain.results.questions import Question, earthing_at, questions, questions_of
from app.domain.results.rcd_times import longest_at
from app.domain.results.read import Reading, read
from app.domain.results.sheet import COLUMNS, Column, Row, Sheet, copied, sheet_of

__all__ = [
    "COLUMNS",
    "Column",
    "MeasuredBeside",
    "Question",
    "Reading",
    "Row",
    "Sheet",
    "copied",
    "earthing_at",
    "latest",
    "longest_at",
    "measured_beside",
    "newest_first",
    "questions",
    "questions_of",
    "read",
    "results_of",
    "sheet_of",
]
