"""Settings for all tests: hypothesis judges what is found, not how long a loaded machine took over it.

It draws the same examples every time, so that a change is told from a lucky draw; ``--hypothesis-profile=search`` draws new ones.
"""

from hypothesis import settings

settings.register_profile("search", deadline=None)
settings.register_profile("fioritura", deadline=None, derandomize=True)
settings.load_profile("fioritura")
