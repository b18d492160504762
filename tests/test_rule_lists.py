"""What the rules say is what the lists in `data/rules` say: no rule changes unnoticed.

After an intended change of a rule: ``python -m tools.list_rules``, and look at what it changed.
"""

from __future__ import annotations

from difflib import unified_diff
from functools import cache

import pytest

from tools.list_rules import HOME, LISTS, TUNES


@cache
def _listed() -> frozenset[str]:
    """The techniques of which the lists have figures; a new one is in none until they are made anew."""
    lists = [(HOME / f"{name}.txt").read_text(encoding="utf-8").splitlines() for name in TUNES]
    return frozenset(line.split()[1] for lines in lists for line in lines)


@pytest.mark.parametrize("name", LISTS)
def test_the_rules_are_those_of_the_list(name: str) -> None:
    listed = (HOME / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    found = [line for line in LISTS[name]() if name not in TUNES or line.split()[1] in _listed()]
    changes = list(unified_diff(listed, found, "listed", "found", lineterm="", n=0))
    assert not changes, "\n".join(changes[:20])
