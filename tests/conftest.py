"""Settings for all tests: hypothesis judges what is found, not how long a loaded machine took over it.

It draws the same examples every time, so that a change is told from a lucky draw; ``--hypothesis-profile=search`` draws new ones.
"""

import gc
import os
from functools import cache

from hypothesis import settings

settings.register_profile("search", deadline=None)
settings.register_profile("fioritura", deadline=None, derandomize=True)
settings.load_profile("fioritura")

_CACHED = type(cache(len))


def pytest_sessionstart() -> None:
    """Forget what was computed before a mutant was put in place: mutmut tests it in a fork of a process that has run all tests."""
    if os.environ.get("MUTANT_UNDER_TEST"):
        for found in gc.get_objects():
            if isinstance(found, _CACHED):
                found.cache_clear()
