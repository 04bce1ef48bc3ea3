"""Switching off before work: which switches, why those, what stays live, the steps.

The sets come from reachability alone; the rules only say which of them to take, or to
stop.  Nothing here says that anything has no voltage: the last word is the tester's.
"""

from __future__ import annotations

from app.domain.isolation.aim import JOBS
from app.domain.isolation.house import house_off
from app.domain.isolation.plan import plan
from app.domain.isolation.shapes import ADVICE, HouseOff, OnTheDay, Outcome, Plan, Step
from app.domain.isolation.sheet import Sheet, house_sheet, sheet_of
from app.domain.isolation.steps import PROVING, next_step, progress_of

__all__ = [
    "ADVICE",
    "JOBS",
    "PROVING",
    "HouseOff",
    "OnTheDay",
    "Outcome",
    "Plan",
    "Sheet",
    "Step",
    "house_off",
    "house_sheet",
    "next_step",
    "plan",
    "progress_of",
    "sheet_of",
]
