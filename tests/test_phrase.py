"""Phrases: on tunes of known form, what returns is cut alike and counted rightly."""

from __future__ import annotations

from collections import Counter

import pytest

from fioritura.phrase import phrases
from fioritura.repeats import repeats
from fioritura.theory.metre import QUARTER
from tests.forms import FORMS, form_tune, sections_of


@pytest.mark.parametrize("name", FORMS)
def test_what_returns_is_cut_alike_and_counted_rightly(name: str) -> None:
    """Each section's phrases begin with it (or with its pickup), at the same places each time, and state for the n-th
    time what its letter says; the last phrase of one with another ending may be counted as new."""
    tune, spans = form_tune(name)
    found = phrases(tune)
    heard: Counter[str] = Counter()
    first_cuts: dict[str, list[int]] = {}
    first_models: dict[str, list[int]] = {}
    for section, (letter, start, end) in zip(sections_of(name), spans, strict=True):
        own = [phrase for phrase in found if start - QUARTER <= phrase.start_ticks < end - QUARTER]
        assert own[0].start_ticks - start in (0, -QUARTER)
        cuts = [0, *(phrase.start_ticks - start for phrase in own[1:])]
        assert cuts == first_cuts.setdefault(letter, cuts), section
        models = first_models.setdefault(letter, [phrase.model for phrase in own])
        heard[letter] += 1
        counted = own[:-1] if section.endswith("'") and len(own) > 1 else own
        for phrase, model in zip(counted, models, strict=False):
            assert phrase.model == model
            if heard[letter] == 1:
                assert phrase.statement == 1
            elif not section.endswith("'"):
                assert phrase.statement >= 2


@pytest.mark.parametrize("name", ["song", "reel", "two halves"])
def test_repeats_are_those_of_the_form(name: str) -> None:
    tune, spans = form_tune(name)
    again = {spans[n][1] for n in range(len(spans)) if spans[n][0] in {letter for letter, _, _ in spans[:n]}}
    assert again == {one.start_ticks for one in repeats(tune)}


def test_a_tune_of_new_bars_has_no_repeats() -> None:
    assert repeats(form_tune("through-composed")[0]) == ()
