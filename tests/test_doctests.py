"""The examples in the docstrings of the rooms that a developer builds on: all are true, and no function is without."""

from __future__ import annotations

import doctest
import inspect
import pkgutil
from collections.abc import Callable, Iterator
from importlib import import_module
from types import ModuleType

import pytest

import fioritura

ROOMS = ("arrange", "library", "techniques", "theory")


def _modules() -> list[str]:
    return [
        module.name
        for room in ROOMS
        for module in pkgutil.iter_modules(import_module(f"fioritura.{room}").__path__, f"fioritura.{room}.")
    ]


def _public_functions(module: ModuleType) -> Iterator[tuple[str, Callable[..., object]]]:
    """The module's own functions: those in its `__all__`, or without one those whose name says so."""
    names = getattr(module, "__all__", [name for name in vars(module) if not name.startswith("_")])
    for name in names:
        one = getattr(module, name)
        if inspect.isroutine(inspect.unwrap(one)) and inspect.unwrap(one).__module__ == module.__name__:
            yield name, one


@pytest.mark.parametrize("name", [*_modules(), "fioritura.players.setting"])
def test_the_examples_are_true(name: str) -> None:
    found = doctest.testmod(import_module(name))
    assert found.failed == 0


def test_no_function_is_without_an_example() -> None:
    functions = [
        (f"{name}.{function}", one) for name in _modules() for function, one in _public_functions(import_module(name))
    ]
    assert len(functions) > 80
    assert [name for name, one in functions if ">>>" not in (inspect.getdoc(one) or "")] == []


def test_no_function_of_the_facade_is_without_an_example() -> None:
    own = [(name, getattr(fioritura, name)) for name in fioritura.__all__]
    functions = [(name, one) for name, one in own if inspect.isroutine(inspect.unwrap(one))]
    assert len(functions) > 20
    assert [name for name, one in functions if ">>>" not in (inspect.getdoc(one) or "")] == []
