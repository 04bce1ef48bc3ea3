"""Labels for a board: what each says, whether that is known, and how it fits."""

from __future__ import annotations

from app.domain.labels.confirmed import confirmed, feeding_ties
from app.domain.labels.label import Label, labels_of
from app.domain.labels.layout import Cell, Choice, laid_out
from app.domain.labels.problems import LabelProblem, label_problems
from app.domain.labels.sheet import SHEETS, LabelSheet

__all__ = [
    "SHEETS",
    "Cell",
    "Choice",
    "Label",
    "LabelProblem",
    "LabelSheet",
    "confirmed",
    "feeding_ties",
    "label_problems",
    "labels_of",
    "laid_out",
]
