"""Boxes of every form for tests."""

from __future__ import annotations

from bookmaker.things.box.forms.form import BoxEntry

__all__ = ["entry_of", "kind_of"]


def entry_of(form: type[BoxEntry], **keys: object) -> BoxEntry:
    room = {"length": "30 mm", "width": "20 mm", "height": "12 mm"}
    kind = form.model_fields["kind"].default
    return form.model_validate({"id": "box", "kind": kind, "stock": "card", "inside": room, **keys})


def kind_of(form: type[BoxEntry]) -> str:
    return str(form.model_fields["kind"].default)
