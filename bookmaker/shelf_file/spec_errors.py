"""The words of the spec's checker turned into words for makers."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, get_args, get_origin

from pydantic import BaseModel, ValidationError

from ..ground.problems import FieldPath, Problem, near_match, show_field
from ..ground.quantities import show
from .fields.entry import Entry
from .slips.marks import AFTER_COMMA, COMMA_ENDS
from .spots import TELLING, Spot, models_in, spot_of, tags_of, told_apart_by

__all__ = ["Fault", "explain", "faults"]

GROUP = ("is not a group of keys", "write keys and values under it, or between { and }")
LIST = ("is not a list", "write a list, each item after a -")
SHAPES = {
    "model_type": GROUP,
    "model_attributes_type": GROUP,
    "dict_type": GROUP,
    "tuple_type": LIST,
    "list_type": LIST,
    "string_type": ("is not a text", "write one value on the line"),
}
"""What the checker found instead of the shape it wanted, and what to write."""

OTHER_WORDS = {
    "by": ("author",),
    "writer": ("author",),
    "name": ("title",),
    "date": ("year",),
    "font": ("face",),
    "typeface": ("face",),
    "lang": ("language",),
    "line_height": ("leading",),
    "line_spacing": ("leading",),
    "publisher": ("imprint",),
    "image": ("picture", "front_picture", "file"),
    "path": ("file", "folder", "picture"),
    "background": ("colour",),
    "paper": ("stock",),
    "length": ("height",),
    **dict.fromkeys(("sheet_size", "paper_size"), ("sheet",)),
}
"""What else makers may call a key, and the keys it may be."""

NO_COLON = re.compile(r"(\w+)(?: ?[:：=;] ?| )(.+)")
"""What became of a key and its value between braces where no colon with a blank after it stands between them."""

WITH_COLON = "a key has a colon and a blank after it"

FEW, MOST_GROUPS = 3, 2
"""So many kinds are each written out, and so many groups that know a key."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A failure as a problem, with the spot where it is, the sort of failure, and what to read on with in its place.

    It `follows` from another one of its group, and needs no telling, where a key is missing because its name is
    misspelt, or where a key is the rest of a length after its decimal comma.
    """

    problem: Problem
    spot: Spot
    sort: str
    instead: Mapping[str, Any]
    follows: bool = False


def explain(failure: ValidationError, model: type[BaseModel]) -> Iterator[Problem]:
    """Every failure as a problem that names its field as the file has it, without the checker's own steps between."""
    return (
        fault.problem.named("", show_field(fault.problem.subject or ()) or "it")
        for fault in faults(failure, model)
        if not fault.follows
    )


def faults(failure: ValidationError, model: type[BaseModel]) -> Iterator[Fault]:
    """Every failure as a fault."""
    errors = failure.errors(include_url=False)
    rests = {error["loc"][:-1]: str(error["loc"][-1]) for error in errors if AFTER_COMMA.match(str(error["loc"][-1]))}
    found = []
    for error in errors:
        spot = spot_of(error["loc"], model)
        instead = (error.get("ctx") or {}).get("instead") or {}
        problem = _with_its_rest(_explained(error["type"], error, spot), rests.get(error["loc"][:-1], ""))
        found.append(Fault(problem, spot, error["type"], instead))
    said = {(fault.spot.field[:-1], fault.problem.remedy) for fault in found}
    parted = {fault.spot.field[:-1] for fault in found if fault.problem.remedy.endswith(COMMA_ENDS)}
    for fault in found:
        *group, key = fault.spot.field or ("",)
        meant = (f"did you mean {key}?", f"{WITH_COLON}: write {key}:")
        misspelt = fault.sort == "missing" and any(
            around == tuple(group) and remedy.startswith(meant) for around, remedy in said
        )
        rest = tuple(group) in parted and AFTER_COMMA.match(str(key))
        yield replace(fault, follows=True) if misspelt or rest else fault


def _with_its_rest(problem: Problem, rest: str) -> Problem:
    """A number without a unit, where a decimal comma between braces has made a key of its `rest`: not to be cut short.

    >>> _with_its_rest(Problem("21 has no unit", "write 21 mm"), "5 mm").remedy
    'write 21.5 mm: between braces a comma ends a value'
    """
    whole = re.match(r"(\d+) has no unit$", problem.message) if rest else None
    return replace(problem, remedy=f"write {whole[1]}.{rest}: {COMMA_ENDS}") if whole else problem


def _explained(kind: str, error: Mapping[str, Any], spot: Spot) -> Problem:
    field = spot.field
    context = error.get("ctx") or {}
    match kind:
        case "maker":
            message, remedy, limit = context["message"], context["remedy"], context["limit"]
            return Problem(message, remedy, field=field, limit=limit, subject=field)
        case "missing":
            *around, key = field
            remedy = f"add {key}: {_meaning(spot.owner, field)}"
            return Problem(f"has no {key}", remedy, field=field, subject=tuple(around))
        case "extra_forbidden":
            return _unknown_key(field, spot.owner, spot.others, error["input"])
        case "union_tag_not_found":
            key, tags = context["discriminator"].strip("'"), [tag for one in spot.choices for tag in tags_of(one)]
            return Problem(f"has no {key}", f"add {key}: with one of {', '.join(tags)}", field=field, subject=field)
        case "literal_error" | "enum" | "union_tag_invalid":
            return _not_a_choice(field, error, context)
    found, remedy = SHAPES.get(kind, (f"cannot be used ({error['msg']})", f"write {_meaning(spot.owner, field)}"))
    if error["input"] is None:
        found = "is empty"
    written = error["input"]
    if isinstance(written, str) and (meant := _kind_meant(spot, written) or _key_meant(spot, written)):
        remedy = f"write {field[-1]}: {{{meant}}}"
    return Problem(found, remedy, field=field, subject=field)


def _kind_meant(spot: Spot, written: str) -> str:
    """The kind or style of group that a single word stands for, as it should be written; or an empty text."""
    tags = [tag for choice in spot.choices for tag in tags_of(choice)]
    meant = near_match(written, tags)
    return f"{told_apart_by(spot.choices)}: {meant}" if meant else ""


def _key_meant(spot: Spot, written: str) -> str:
    """The key of a group, none of which is a must, that takes a value as it was written, with the value."""
    if len(spot.choices) != 1 or any(known.is_required() for known in spot.choices[0].model_fields.values()):
        return ""
    [model] = spot.choices
    if issubclass(model, Entry) and (meant := model.in_one_value(written)):
        return meant
    key = next((key for key in model.model_fields if _takes(model, key, written)), "")
    return f"{key}: {_quoted(written)}" if key else ""


def _takes(model: type[BaseModel], key: str, written: str) -> bool:
    try:
        model.model_validate({key: written})
    except ValidationError:
        return False
    return True


def _unknown_key(
    field: FieldPath, owner: type[BaseModel] | None, kinds: Sequence[type[BaseModel]], written: object
) -> Problem:
    """A key that its group does not know; `kinds` are the others the group might have been, with keys of their own."""
    if field == ("defaults",):  # laid under the books, and still here only if they have another shape
        return Problem("is not a group of keys", GROUP[1], field=field, subject=field)
    known = [*(owner.model_fields if owner else []), *(["defaults"] if len(field) == 1 else [])]
    key = str(field[-1])
    other = next((word for word in OTHER_WORDS.get(key, ()) if word in known), "")
    meant = other or near_match(key, known)
    remedy = f"did you mean {meant}?" if meant else "known here: " + ", ".join(known)
    others = [tag for kind in kinds if key in kind.model_fields for tag in tags_of(kind)]
    groups, inner = _groups_meant(owner, key)
    where, listed = _list_of(owner, key) if owner else ("", ())
    if others:
        else_meant = f"{meant}, if that is what you mean" if key in meant else f"leave {key} out"
        remedy = f"{_of_others(others, told_apart_by(kinds))}, or {else_meant}"
    elif listed:
        remedy = f"write it in the list {where}: with kind: {' or '.join(listed)}"
    elif key in TELLING and isinstance(written, str) and not any(_tells(owner, group, written) for group in groups):
        remedy = f"leave {key} out; what is no book, such as a box, stands in the list things:"
    elif groups and written is not None:
        value = _quoted(written) if isinstance(written, str) else "…"
        remedy = f"write {' or '.join(f'{group}: {{{inner}: {value}}}' for group in groups[:MOST_GROUPS])}"
    elif written is None and AFTER_COMMA.match(key):
        remedy = f"{COMMA_ENDS}: write the number with a point, as in 21.{key}"
    elif written is None and (parted := NO_COLON.match(key)) and parted[1] in known:
        remedy = f"{WITH_COLON}: write {parted[1]}: {show(parted[2])}"
    elif written is None and not meant:
        remedy = "give it a value; or, if it is part of a text that holds a comma, put that text in quotes"
    if field[-1] == "<<":
        remedy = "write what books share under defaults"
    *around, _ = field
    unknown = f"has an unknown key {show(key)!r}"
    return Problem(unknown, remedy, field=field, value=key, subject=tuple(around))


def _of_others(tags: Sequence[str], told_apart_by: str) -> str:
    """What to write where a key belongs to groups of other kinds or styles."""
    first, *more = tags
    if len(tags) <= FEW:
        return "write " + " or ".join(f"{told_apart_by}: {tag}" for tag in tags)
    return f"write {told_apart_by}: {first}, or another of {', '.join(more)}"


@cache
def _groups_with(owner: type[BaseModel]) -> Mapping[str, Sequence[str]]:
    """The keys that groups have which may stand in a group, each with the names of these."""
    found: dict[str, list[str]] = {}
    for name, part in owner.model_fields.items():
        for key in {key for model in models_in(part.annotation) for key in model.model_fields}:
            found.setdefault(key, []).append(name)
    return found


def _groups_meant(owner: type[BaseModel] | None, key: str) -> tuple[Sequence[str], str]:
    """The groups that have a key, or one that it is another word for, and that key."""
    found = _groups_with(owner) if owner else {}
    return next(((found[word], word) for word in (key, *OTHER_WORDS.get(key, ())) if word in found), ((), key))


@cache
def _list_of(owner: type[BaseModel], key: str) -> tuple[str, Sequence[str]]:
    """The list of a group whose items may be of the kinds that a key names, such as a box, and these kinds."""
    for name, part in owner.model_fields.items():
        if get_origin(part.annotation) is tuple:
            items = [model for option in get_args(part.annotation) for model in models_in(option)]
            one = {key, key.removesuffix("s"), key.removesuffix("es")}
            kinds = [tag for model in items for tag in tags_of(model) if one & {tag, *tag.split()}]
            if kinds:
                return name, kinds
    return "", ()


def _tells(owner: type[BaseModel] | None, group: str, written: str) -> bool:
    """Whether a word is one of the kinds that a group may be of."""
    models = models_in(owner.model_fields[group].annotation) if owner else []
    return any(near_match(written, tags_of(model)) for model in models)


def _quoted(written: str) -> str:
    """A value as it is written within braces.

    >>> _quoted("Salt, Rope"), _quoted("48"), _quoted("#fff")
    ('"Salt, Rope"', '48', '"#fff"')
    """
    seen = show(written)
    return f'"{seen}"' if re.search(r"[,:#{}\[\]]", seen) else seen


def _not_a_choice(field: FieldPath, error: Mapping[str, Any], context: Mapping[str, Any]) -> Problem:
    written = str(context.get("tag", error["input"]))
    if "tag" in context:
        told_apart_by = context["discriminator"].strip("'")
        field = (*field, told_apart_by)
    choices = re.findall(r"'([^']*)'", str(context.get("expected") or context.get("expected_tags")))
    meant = near_match(written, choices)
    remedy = f"did you mean {meant}?" if meant else "write one of " + ", ".join(choices)
    return Problem(f"{show(written)!r} is not known", remedy, field=field, value=written, subject=field)


def _meaning(owner: type[BaseModel] | None, field: FieldPath) -> str:
    """What belongs in a field, by its own description."""
    described = owner.model_fields[str(field[-1])] if owner and str(field[-1]) in owner.model_fields else None
    return (described.description if described else None) or "a value"
