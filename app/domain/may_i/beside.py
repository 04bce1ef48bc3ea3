"""What goes with an answer: other people to ask, and what to leave to a trade.

The sentences about tenancies name the regulations that were read in November 2026;
those about leaving work to a trade are common practice, with no source, where none is
named.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from app.domain.may_i._case import Nation
from app.domain.may_i.answer import Answer
from app.domain.may_i.cautions import WET
from app.domain.may_i.jobs import Job
from app.domain.record import Home

NOT_YOURS = (
    "No. It belongs to the network or the meter operator: nobody else opens, alters or "
    "connects it."
)
_CONSENT = (
    "Electricity Safety, Quality and Continuity Regulations 2002, reg 25; in Northern "
    "Ireland those of 2012"
)
_LET: Mapping[Nation, str] = {
    "england": "Electrical Safety Standards in the Private Rented Sector (England) "
    "Regulations 2020 (SI 2020/312)",
    "wales": "Renting Homes (Fitness for Human Habitation) (Wales) Regulations 2022",
    "scotland": "Housing (Scotland) Act 2006 ss. 13, 19A and 19B",
    "northern_ireland": "Electrical Safety Standards for Private Tenancies Regulations "
    "(NI) 2024 (NISR 2024/201)",
}
_NOT_IN_THE_ZONE = (
    "Not there: so close to a bath or shower may be neither a socket nor a fused spur, "
    "whoever puts it in."
)
_FAR_FROM_THE_WATER = (
    "A socket only at least 2.5 m from the edge of zone 1, the space over bath or "
    "shower, whoever puts it in; nearer, a shaver unit made for it."
)
_FLATS = ("flat", "maisonette")


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Something that holds beside the verdict.

    Attributes:
        rule: Name of the rule; empty for what is practice.
        sentence: What holds.
        basis: Where it stands, and how well that is known.
    """

    rule: str
    sentence: str
    basis: str


def allowed(
    job: Job, answer: Answer, answers: Mapping[str, str], home: Home | None = None
) -> Beside:
    """Return whether a person may do it themselves, which is another question.

    Args:
        job: The job.
        answer: What the rules say of it.
        answers: What is answered of it, by the person or the record.
        home: The home, whose tenure and kind have a say; None if none is known.
    """
    if answer.verdict == "not_yours":
        return Beside(rule=answer.rule, sentence=NOT_YOURS, basis=_CONSENT)
    work = answers.get("work", job.sets.get("work", ""))
    plain = Beside(
        rule="", sentence=answer.rules.allowed, basis=answer.rules.allowed_basis
    )
    if work == "plug_in":
        return plain
    found = _not_there(job, answer, answers) or _trades_work(job, plain, answers)
    return _of_others(found, home) if home else found


def _not_there(job: Job, answer: Answer, answers: Mapping[str, str]) -> Beside | None:
    """Return that a socket or spur may not be added so near a bath or shower."""
    thing = answers.get("thing", job.sets.get("thing"))
    adds = job.sets.get("work") == "add" or answers.get("work") == "add"
    moved = adds or answers.get("new_cable") == "yes"
    if thing != "socket_or_spur" or not moved or not answer.places <= WET:
        return None
    near = answer.places == {"bath_zone"}
    return Beside(
        rule="",
        sentence=_NOT_IN_THE_ZONE if near else _FAR_FROM_THE_WATER,
        basis="BS 7671:2018+A2:2022, 701.512.3, from memory",
    )


def _trades_work(job: Job, plain: Beside, answers: Mapping[str, str]) -> Beside:
    """Return what is an electrician's by practice, though no law says so."""
    if "board_cover" in job.cares:
        sentence = "No law forbids it, but it is an electrician's work."
    elif _makes_circuit(job, answers):
        sentence = "No law forbids it, but the work at the board is an electrician's."
    else:
        return plain
    basis = f"{plain.basis}; what is left to a trade is common practice, no source"
    return Beside(rule="", sentence=sentence, basis=basis)


def _of_others(found: Beside, home: Home) -> Beside:
    """Return it with the landlord first, and what of a flat is not one's own last."""
    sentence = found.sentence
    if home.tenure == "rents":
        sentence = f"Ask the landlord first, in writing. {sentence}"
    if home.dwelling in _FLATS:
        sentence += " What the building shares is not yours to work on."
    return replace(found, sentence=sentence)


def others_to_ask(nation: Nation, dwelling: str, tenure: str) -> tuple[Beside, ...]:
    """Return who else has a say, by nation, kind of dwelling and tenure."""
    return tuple(_others(nation, dwelling, tenure))


def _others(nation: Nation, dwelling: str, tenure: str) -> Iterator[Beside]:
    if nation == "england" and dwelling in _FLATS:
        yield Beside(
            rule="EN6",
            sentence="Is the building 18 m high or more, or of seven storeys or more? "
            "Then the national regulator is its building control: ask the building's "
            "accountable person first. What has to be told stays the same.",
            basis="SI 2023/909 Schedule 2, read in part; the rest from memory",
        )
    if dwelling in _FLATS:
        yield Beside(
            rule="",
            sentence="In a flat the lease or the building's owner may want to consent.",
            basis="Common practice, no source",
        )
    if tenure == "let":
        yield Beside(
            rule="",
            sentence="It is let: the landlord's duties of inspection come on top. Keep "
            "the paper of this work with the report.",
            basis=_LET[nation],
        )


def left_to_others(job: Job, answers: Mapping[str, str]) -> tuple[str, ...]:
    """Return what of a job to call someone in for.

    Args:
        job: The job.
        answers: What is answered of it, by the person or the record.
    """
    work = answers.get("work", job.sets.get("work", ""))
    if work == "network_side":
        return ("All of it: the network operator, or for the meter the supplier.",)
    if work == "plug_in":
        return ("An appliance that is damaged, wet or trips its RCD.",)
    return tuple(_trades(job, answers))


def _makes_circuit(job: Job, answers: Mapping[str, str]) -> bool:
    work = answers.get("work", job.sets.get("work", ""))
    asked = (answers.get(code) for code in ("new_circuit", "bigger"))
    return "yes" in asked or work in ("new_circuit", "rewire", "consumer_unit")


def _trades(job: Job, answers: Mapping[str, str]) -> Iterator[str]:
    if _makes_circuit(job, answers):
        yield (
            "Choosing cable and device, the work at the board, and the first tests: an "
            "electrician. With the main switch off its incoming side stays live."
        )
    if "network_first" in job.cares:
        yield "Asking or telling the network: usually the installer does it."
    yield (
        "Testing before it is switched on (continuity, insulation, polarity, loop "
        "impedance, RCD): it needs instruments and practice. BS 7671, part 6."
    )
    yield "Anything under a board's cover, or where you are not sure."


def isolation_work(job: Job, answers: Mapping[str, str]) -> str:
    """Return the kind of work to plan the switching off for; empty for none."""
    if answers.get("work", job.sets.get("work")) in ("network_side", "plug_in"):
        return ""
    thing = answers.get("thing", job.sets.get("thing", ""))
    if "lighting" in job.cares or thing == "light_or_switch":
        return "lighting"
    return {"socket_or_spur": "sockets"}.get(thing, "any")
