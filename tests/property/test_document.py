from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.domain.links import broken_links
from app.domain.record import Record
from app.errors import InvalidError
from app.interchange import from_document, to_document
from tests.property.whole_records import whole_records


@given(whole_records())
def test_records_made_here_may_be_kept(record: Record) -> None:
    assert broken_links(record) == ()
    assert len(record.by_ref) == len(list(record.items()))


@given(whole_records())
def test_a_document_loses_nothing(record: Record) -> None:
    document = to_document(record)
    again = from_document(document.encode())
    assert again == record
    assert to_document(again) == document


@given(whole_records(), st.data())
def test_a_document_cut_short_is_refused(record: Record, data: st.DataObject) -> None:
    document = to_document(record).rstrip().encode()
    end = data.draw(st.integers(0, len(document) - 1))
    _refused_with_a_place(document[:end])


@given(st.binary(max_size=200))
def test_any_bytes_are_refused_in_sentences(data: bytes) -> None:
    _refused_with_a_place(data)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.text(max_size=8), inner, max_size=3)
    ),
    max_leaves=6,
)


@given(whole_records(), st.data(), JSON)
def test_any_value_in_any_place_is_taken_or_refused(
    record: Record, data: st.DataObject, value: object
) -> None:
    values = json.loads(to_document(record))
    name = data.draw(st.sampled_from(list(values)))
    if isinstance(values[name], list) and values[name]:
        fields = values[name][0]
        fields[data.draw(st.sampled_from(list(fields)))] = value
    else:
        values[name] = value
    document = json.dumps(values).encode()
    try:
        taken = from_document(document)
    except InvalidError:
        _refused_with_a_place(document)
    else:
        assert from_document(to_document(taken).encode()) == taken


def _refused_with_a_place(data: bytes) -> None:
    with pytest.raises(InvalidError) as refusal:
        from_document(data)
    problems = refusal.value.problems
    assert problems
    assert all(problem.place and problem.reason for problem in problems)
