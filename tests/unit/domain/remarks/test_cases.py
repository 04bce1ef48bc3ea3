"""Every remark against its three homes, and what every remark has to have."""

from __future__ import annotations

import ast
import sys
from pathlib import Path

import pytest

import app.domain.remarks as package
from app.domain.may_i import JOBS
from app.domain.record import Paper, Record, Work
from app.domain.remarks import GROUPS, RANKS, UNITS, sight
from app.domain.remarks._kind import EXTRA_SECTION, SECTIONS, CannotTell, Found, Outcome
from app.domain.remarks._look import units_in
from tests.builders import home
from tests.unit.domain.remarks.cases import CASES, TODAY, on_three_phases

FOLDER = Path(package.__file__).parent
MODULES = sorted(p for p in FOLDER.glob("*.py") if not p.name.startswith("_"))


def outcomes(code: str, record: Record) -> list[Outcome]:
    return list(UNITS[code].look(sight(record, TODAY)))


def test_there_are_enough() -> None:
    assert len(UNITS) >= 45
    assert len(UNITS) == len(MODULES)


def test_each_remark_has_its_cases_and_each_case_its_remark() -> None:
    assert set(CASES) == set(UNITS)


@pytest.mark.parametrize("code", sorted(CASES))
def test_it_is_found_where_it_is(code: str) -> None:
    assert any(isinstance(o, Found) for o in outcomes(code, CASES[code].found))


@pytest.mark.parametrize("code", sorted(CASES))
def test_it_is_quiet_where_nothing_is_amiss(code: str) -> None:
    assert outcomes(code, CASES[code].quiet) == []


@pytest.mark.parametrize("code", sorted(CASES))
def test_it_says_what_it_lacks(code: str) -> None:
    case, unit = CASES[code], UNITS[code]
    assert (case.cannot is None) == bool(unit.kind.always_tells)
    if case.cannot is not None:
        found = outcomes(code, case.cannot)
        assert found
        assert not any(isinstance(outcome, Found) for outcome in found)


@pytest.mark.parametrize("code", sorted(UNITS))
def test_its_text_is_whole(code: str) -> None:
    unit = UNITS[code]
    assert unit.title
    assert unit.kind.rank in RANKS
    assert unit.kind.group in GROUPS
    assert set(unit.sections) - {EXTRA_SECTION} == set(SECTIONS)
    assert [name for name, text in unit.sections.items() if not text] == []


@pytest.mark.parametrize("code", sorted(UNITS))
def test_its_source_has_an_edition_or_says_that_there_is_none(code: str) -> None:
    source = UNITS[code].sections["Source"]
    known = ("BS ", "IET ", "SI ", "NISR", "no source", "record itself says")
    assert any(word in source for word in known)
    if "BS 7671" in source:
        assert ":20" in source


def test_a_module_is_named_after_its_code() -> None:
    codes = {path.stem.replace("_", "-") for path in MODULES}
    assert codes == set(UNITS)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_no_remark_reads_another(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    named = [
        node.module
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.module
    ]
    inner = [name for name in named if name.startswith("app.domain.remarks.")]
    others = [n for n in inner if not n.rpartition(".")[2].startswith("_")]
    assert others == []


def test_a_module_that_holds_no_remark_is_refused() -> None:
    with pytest.raises(ValueError, match="holds no remark"):
        units_in(sys.modules["app.domain.kinds.devices"])


def test_a_loop_that_rests_on_a_usual_ze_is_not_told() -> None:
    record = CASES["loop-impedance-high"].found
    supply = record.home.model_copy(update={"ze_ohm": None, "ze_basis": "unknown"})
    (outcome,) = outcomes("loop-impedance-high", record.having(home=supply))
    assert isinstance(outcome, CannotTell)
    assert outcome.needs[0].ref == record.home.ref


@pytest.mark.parametrize("code", ["demand-above-main-fuse", "little-left-for-more"])
def test_a_fuse_of_three_phases_has_one_remark(code: str) -> None:
    watts = 30000 if code == "demand-above-main-fuse" else 9000
    found = outcomes(code, on_three_phases(watts))
    assert [outcome.about for outcome in found] == [("CUT",)]
    assert isinstance(found[0], Found)


@pytest.mark.parametrize(
    ("job", "kinds", "outcome"),
    [
        ("", (), "no paper is recorded"),
        # BS 7671:2018+A2:2022, 644: none of these says what was measured.
        ("", ("invoice",), "only: Invoice or quotation"),
        ("", ("manual", "plan"), "only: Maker's instructions, Plan or sketch"),
        ("", ("network_letter",), "only: Letter"),
        ("", ("condition_report",), "only: Condition report"),
        ("", ("minor_works",), ""),
        ("", ("invoice", "installation_certificate"), ""),
        ("add-socket", ("minor_works",), ""),
        ("replace-board", ("minor_works",), "not for a new circuit or a board"),
        ("replace-board", ("installation_certificate",), ""),
        ("new-shower", ("minor_works",), "not for a new circuit or a board"),
        ("new-shower", ("compliance",), ""),
        ("supply-fuse", ("network_letter",), ""),
        ("", ("unknown",), "needs"),
    ],
)
@pytest.mark.parametrize("by", ["title", "code"])
def test_only_a_paper_of_the_right_kind_counts(
    by: str, job: str, kinds: tuple[str, ...], outcome: str
) -> None:
    called = JOBS[job].title if job and by == "title" else job
    values = {"state": "done", "done_by": "registered", "job": called}
    work = Work.model_validate({"ref": "W1", "name": "Work", **values})
    papers = tuple(
        Paper(ref=f"Q{n}", kind=kind, work="W1") for n, kind in enumerate(kinds)
    )
    found = outcomes("work-without-paper", home().having(works=(work,), papers=papers))
    if outcome == "needs":
        assert [(type(o), o.about) for o in found] == [(CannotTell, ("Q0",))]
    else:
        said = [o.sentence for o in found if isinstance(o, Found)]
        assert len(said) == len(found) == bool(outcome)
        assert outcome in "".join(said)
