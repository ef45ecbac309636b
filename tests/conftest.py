"""The same examples in every run; look for new ones with `--hypothesis-profile=search`."""

from hypothesis import settings

settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("search", derandomize=False, deadline=None, max_examples=1000)
settings.load_profile("steady")
