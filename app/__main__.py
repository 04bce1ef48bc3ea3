"""``python -m app`` is the command ``ways``."""

from __future__ import annotations

from app.cli import main

main()
