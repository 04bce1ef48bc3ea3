"""SQLite behind SQLAlchemy: one file, one table a sort of item, from the record."""

from __future__ import annotations
