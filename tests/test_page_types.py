"""The types of the page's scripts: made of the OpenAPI document, and as it is now."""

from __future__ import annotations

from tools.page_types import TARGET, document, types


def test_the_types_are_those_of_the_api() -> None:
    assert TARGET.read_text(encoding="utf-8") == types(document()), "run python -m tools.page_types"


def test_schemas_become_interfaces() -> None:
    number, text = {"type": "number"}, {"type": "string"}
    fields = {
        "kind": {"type": "string", "enum": ["right", "wrong"]},
        "line": {"anyOf": [{"type": "integer"}, {"type": "null"}]},
        "notes": {"type": "array", "items": {"type": "array", "prefixItems": [number, number, text]}},
        "states": {"type": "array", "items": {"type": "string", "enum": ["on", "off"]}},
        "words": {"type": "object", "additionalProperties": text, "description": "By\n  name."},
        "other": {"$ref": "#/components/schemas/View"},
        "anything": {"type": "object", "additionalProperties": True},
    }
    schemas = {"View": {"description": "A view.", "properties": fields}, "Body_of_a_form": {"properties": {}}}
    found = types({"components": {"schemas": schemas}})
    assert found.endswith(
        """
/** A view. */
export interface View {
  kind: "right" | "wrong";
  line: number | null;
  notes: [number, number, string][];
  states: ("on" | "off")[];
  /** By name. */
  words: Record<string, string>;
  other: View;
  anything: Record<string, unknown>;
}
"""
    )
    assert "Body_" not in found
