"""Chain: from where the supply begins to one thing, what each step guards and opens."""

from __future__ import annotations

import zlib
from collections.abc import Iterator, Mapping
from itertools import pairwise

from app.domain.chain import Chain, Step, is_overcurrent, is_rcd
from app.domain.kinds import DEVICE_KINDS
from app.domain.record.choices import GRADES, POLES, SOURCE_KINDS
from app.drawing.outline import Outline, lay_out
from app.drawing.phrase import hours, joined, quantity
from app.drawing.render import render
from app.drawing.row import MARGIN, SHEET, Fact, Row
from app.drawing.scene import Linker, Part, Scene, Thing
from app.drawing.supply import NOT_RECORDED
from app.drawing.symbols import symbol_of

_GUARDS = {"overload": "overload", "short_circuit": "short circuit"}


def draw_chain(
    chain: Chain,
    link: Linker,
    owners: Mapping[str, str],
    *,
    lit: frozenset[str] = frozenset(),
    id_prefix: str | None = None,
) -> str:
    """Return the drawing of one chain as SVG.

    Args:
        chain: The chain, from `app.domain.chain`.
        link: Address of the page of a reference, or None.
        owners: Words for the owners' codes.
        lit: References to bring forward.
        id_prefix: Begins the ids in the drawing; left out, the chain's own steps make
            one, so that different chains never clash on a page.
    """
    return render(chain_scene(chain, link, owners, lit=lit, id_prefix=id_prefix))


def chain_scene(
    chain: Chain,
    link: Linker,
    owners: Mapping[str, str],
    *,
    lit: frozenset[str] = frozenset(),
    id_prefix: str | None = None,
) -> Scene:
    """Return what `draw_chain` draws, before it is SVG."""
    parts, y = lay_out(_outline(chain, link, owners, lit), MARGIN)
    titles = [step.title for step in chain.steps]
    what = "Neutral of" if chain.role == "neutral" else "What feeds"
    return Scene(
        ident=id_prefix or _ident(chain),
        title=f"{what} {titles[-1]}" if titles else "An empty chain",
        description=_description(parts, whole=chain.begins_at_source),
        width=SHEET,
        height=y + MARGIN,
        parts=tuple(parts),
    )


def _ident(chain: Chain) -> str:
    steps = "/".join((chain.role, *chain.references))
    return f"chain-{zlib.crc32(steps.encode()):08x}"


def _description(parts: list[Part | Thing], *, whole: bool) -> str:
    said = [part.title for part in parts if isinstance(part, Thing)]
    start = "From the source: " if whole else f"{NOT_RECORDED}: "
    return start + "; ".join(said) if said else "Nothing is recorded."


def _outline(
    chain: Chain, link: Linker, owners: Mapping[str, str], lit: frozenset[str]
) -> Outline:
    """Rows are kept by place: a chain read from elsewhere may name a thing twice."""
    steps = {f"{at}": step for at, step in enumerate(chain.steps)}
    rows = {at: _row(step, link, owners, lit) for at, step in steps.items()}
    places = list(steps)
    return Outline(
        roots=places[:1],
        rows=rows,
        fed={one: (two,) for one, two in pairwise(places)},
        begins={}
        if chain.begins_at_source
        else dict.fromkeys(places[:1], NOT_RECORDED),
        owners=owners,
    )


def _row(
    step: Step, link: Linker, owners: Mapping[str, str], lit: frozenset[str]
) -> Row:
    facts = [_first(step, owners), *_guards(step), _opens(step)]
    when = hours(step.when)
    grade = [Fact(GRADES[step.grade].lower(), grade=step.grade)] if step.grade else []
    return Row(
        ref=step.ref,
        symbol=symbol_of(step.sort, step.kind),
        title=_title(step),
        facts=(
            *(Fact(text) for text in facts if text),
            *([Fact(when, framed=True)] if when else []),
            *grade,
        ),
        owner=step.owner,
        dashed=not _is_known(step),
        lit=step.ref in lit,
        href=link(step.ref),
    )


def _title(step: Step) -> str:
    if step.sort == "source" and step.title == f"Source {step.ref}":
        return SOURCE_KINDS.get(step.kind or "", step.title)
    return step.title


def _first(step: Step, owners: Mapping[str, str]) -> str:
    label = DEVICE_KINDS[step.kind].label if step.sort == "device" and step.kind else ""
    curve = f"type\xa0{step.curve}" if step.curve not in (None, "unknown") else ""
    if step.sort == "circuit":
        label = "Circuit"
    if step.title.startswith(label):
        label = ""
    own = owners.get(step.owner, step.owner)
    return joined([own, label, _rating(step), curve])


def _rating(step: Step) -> str:
    if step.rated_current_a is not None:
        return quantity(step.rated_current_a, "A")
    if not is_overcurrent(step):
        return ""
    if step.sort == "point":
        return f"fuse {quantity(step.fuse_a, 'A')}" if step.fuse_a else "fuse not known"
    return "rating not known"


def _guards(step: Step) -> Iterator[str]:
    against = [word for code, word in _GUARDS.items() if code in step.protects]
    if against:
        yield "guards: " + ", ".join(against)
    if is_rcd(step):
        figure = step.residual_current_ma
        at = f"at {quantity(figure, 'mA')}" if figure is not None else "mA not known"
        known = step.rcd_type not in (None, "unknown")
        kind = f"type\xa0{step.rcd_type}" if known else "type\xa0not\xa0known"
        late = "time-delayed" if step.time_delayed == "yes" else ""
        yield joined([f"guards: earth leakage {at}", kind, late])
        yield step.failed


def _opens(step: Step) -> str:
    if step.opens == "none":
        return ""
    poles = POLES.get(step.opens, step.opens).lower()
    usual = step.opens_basis == "usual"
    if usual and step.opens == "line":
        return "opens at least the line; the neutral: not recorded"
    return (
        f"opens {poles} (usual for its kind, not recorded)"
        if usual
        else f"opens {poles}"
    )


def _is_known(step: Step) -> bool:
    missing_ma = is_rcd(step) and step.residual_current_ma is None
    rated = step.rated_current_a is not None or step.fuse_a is not None
    return not missing_ma and not step.failed and (rated or not is_overcurrent(step))
