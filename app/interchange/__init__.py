"""The record as a document that other programs can read: JSON, with its schema."""

from __future__ import annotations

from app.interchange.document import (
    FORMAT,
    VERSION,
    Document,
    document_from,
    document_schema,
    from_document,
    to_document,
)

__all__ = [
    "FORMAT",
    "VERSION",
    "Document",
    "document_from",
    "document_schema",
    "from_document",
    "to_document",
]
