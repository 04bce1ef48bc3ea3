"""What is to be done again: from the record, and what somebody has set."""

from __future__ import annotations

from app.domain.reminders.done import done
from app.domain.reminders.due import HEADS, Due, dues
from app.domain.reminders.wrong import wrong_with

__all__ = ["HEADS", "Due", "done", "dues", "wrong_with"]
