"""The page: `fioritura serve`. Thin: it parses a request, calls the rooms below, and shows what they answer."""
