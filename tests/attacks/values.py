"""What nobody should type, for every kind of box; and what nobody should send."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

TYPED = (
    "", " ", "0", "-1", "-0", "1e999", "1e-999", "NaN", "Infinity", "9" * 400,
    "9" * 5000, "0." + "0" * 300 + "1", "1/2", "½", "١٢", "1,000,5", "0x1F", "1_000",
    "2026-02-30", "0000-01-01", "9999-12-31", "10000-01-01", "2026-W01", "24:61",
    "P1", "p1", "P999999", "demo", "unknown", "none", "yes", "../../etc/passwd",
    "/dev/full", "<script>alert(1)</script>", "'; DROP TABLE item; --",
    "\x00", "\x1b[2J",
    "a\r\nSet-Cookie: a=b", "\u202e", "\ufeff", "\uffff", "👩‍👩‍👧", "{{ 7*7 }}",
    "true", "[]",
    "x" * 5000, "x y " * 20_000, "\n" * 3000,
)  # fmt: skip
ANY_TEXT = st.sampled_from(TYPED) | st.text(max_size=40) | st.integers().map(str)
ANY_JSON: st.SearchStrategy[Any] = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.sampled_from(TYPED)
    | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text(max_size=8), inner, max_size=4)
    ),
    max_leaves=8,
)
# Documents that are no documents.
RAW = (
    b"",
    b"\x00",
    b"null",
    b"[" * 100_000,
    b'{"a":' * 50_000,
    b"[" + b"1," * 100_000 + b"1]",
    b'{"format": "ways-and-points record", "version": 1}',
    b'{"format": "ways-and-points record", "version": ' + b"9" * 5000 + b"}",
    b'{"home": {"ref": "\xff\xfe"}}',
    b'{"a": 1, "a": 2}',
    b"\xef\xbb\xbf{}",
    b"PK\x03\x04" + b"\x00" * 50,
    b"%PDF-1.7\n" + b"\x00" * 200,
    b"\x89PNG\r\n\x1a\n" + b"\x00" * 200,
    b"\xff\xd8\xff\xe0" + b"\x00" * 200,
    b"a,b\n" + b'"' * 5000,
    b",".join([b"x"] * 20_000) + b"\n1",
    b"Name\n" + b"x\n" * 20_000,
)
