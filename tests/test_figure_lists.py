"""The figures that a few tunes offer are those of the lists in `data/figures`: no rule changes unnoticed.

After an intended change of a rule: ``python -m tools.list_figures``, and look at what it changed."""

from __future__ import annotations

from difflib import unified_diff

import pytest

from tools.list_figures import HOME, TUNES, figure_list


@pytest.mark.parametrize("name", TUNES)
def test_figures_are_those_of_the_list(name: str) -> None:
    listed = (HOME / f"{name}.txt").read_text(encoding="utf-8").splitlines()
    found = list(figure_list(name))
    changes = list(unified_diff(listed, found, "listed", "found", lineterm="", n=0))
    assert not changes, "\n".join(changes[:20])
