"""What the package `fioritura` hands on to a developer, in one room over all others."""
