"""Paper: documents as PDF, set by Typst in a process of its own."""

from __future__ import annotations

from app.report.pdf import Paper, PaperError, as_pdf

__all__ = ["Paper", "PaperError", "as_pdf"]
