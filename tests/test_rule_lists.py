"""What the rules say is what the lists in `data/rules` say: no rule changes unnoticed.

After an intended change of a rule: ``python -m tools.list_rules``, and look at what it changed.
"""

from __future__ import annotations

from difflib import unified_diff

import pytest

from tools.list_rules import HOME, LISTS


@pytest.mark.parametrize("name", LISTS)
def test_the_rules_are_those_of_the_list(name: str) -> None:
    listed = (HOME / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    found = list(LISTS[name]())
    changes = list(unified_diff(listed, found, "listed", "found", lineterm="", n=0))
    assert not changes, "\n".join(changes[:20])
