"""Settings for all tests: hypothesis judges what is found, not how long a loaded machine took over it."""

from hypothesis import settings

settings.register_profile("fioritura", deadline=None)
settings.load_profile("fioritura")
