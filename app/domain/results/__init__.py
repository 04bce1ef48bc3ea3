"""Test results: read as papers write them, questioned, kept over time."""

from __future__ import annotations

from app.domain.results.beside import MeasuredBeside, measured_beside
from app.domain.results.over_time import latest, results_of
from app.domain.results.questions import Question, questions
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
    "latest",
    "measured_beside",
    "questions",
    "read",
    "results_of",
    "sheet_of",
]
