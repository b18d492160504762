"""What is kept between calls: caches have a bound, and values that are frozen stay as they were made; and where chance
comes from."""

from __future__ import annotations

import ast
import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from functools import _lru_cache_wrapper
from pathlib import Path

import pytest

import fioritura

SOURCE = Path(fioritura.__file__).parent
MODULES = sorted(
    module.name
    for module in pkgutil.walk_packages([str(SOURCE)], "fioritura.")
    if not module.name.endswith("__main__")
)


def caches() -> Iterator[tuple[str, _lru_cache_wrapper[object]]]:
    """Every function with a cache, of modules and of their classes, once each."""
    seen: set[int] = set()
    for name in MODULES:
        module = importlib.import_module(name)
        holders = [module, *(one for one in vars(module).values() if inspect.isclass(one))]
        for holder in holders:
            for key, value in vars(holder).items():
                function = getattr(value, "__func__", value)
                if isinstance(function, _lru_cache_wrapper) and id(function) not in seen:
                    seen.add(id(function))
                    yield f"{name}.{key}", function


def test_every_cache_has_a_bound_or_holds_one_thing() -> None:
    found = dict(caches())
    assert len(found) > 40, "the walk finds them"
    unbounded = [
        name
        for name, function in found.items()
        if function.cache_parameters()["maxsize"] is None and inspect.signature(function.__wrapped__).parameters
    ]
    assert unbounded == []


def test_no_cache_is_made_where_the_walk_does_not_look() -> None:
    """A cache on a function inside a function, or one that holds its object for ever (`self`), would escape it."""
    decorated = 0
    for path in SOURCE.rglob("*.py"):
        for function in functions(ast.parse(path.read_text(encoding="utf-8"))):
            if any(is_cache(decorator) for decorator in function.decorator_list):
                decorated += 1
                names = [argument.arg for argument in function.args.args]
                assert "self" not in names, f"{path.name}: {function.name}"
    wrapped_by_call = 1
    """`notation/abc/notes._pitch`, made by a call and not by a decorator."""
    assert decorated + wrapped_by_call == len(dict(caches()))


def functions(tree: ast.AST) -> Iterator[ast.FunctionDef]:
    return (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef))


def is_cache(decorator: ast.expr) -> bool:
    called = decorator.func if isinstance(decorator, ast.Call) else decorator
    return isinstance(called, ast.Name) and called.id in ("cache", "lru_cache")


@pytest.mark.parametrize("path", sorted(SOURCE.rglob("*.py")), ids=lambda path: str(path.relative_to(SOURCE)))
def test_frozen_values_are_written_only_while_they_are_made(path: Path) -> None:
    """`object.__setattr__` stands in `__post_init__` alone, for a value's own fields; no `__dict__` is written to."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    made = {id(node) for f in functions(tree) if f.name in ("__init__", "__post_init__") for node in ast.walk(f)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and node.attr == "__setattr__":
            assert id(node) in made, f"line {node.lineno}"
        assert not (isinstance(node, ast.Attribute) and node.attr == "__dict__"), f"line {node.lineno}"


def test_chance_is_drawn_from_one_place() -> None:
    """No module of the engine takes numbers from `random` or numpy's generators."""
    for path in SOURCE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            assert not {"random", "numpy.random"} & set(names), f"{path.name}, line {getattr(node, 'lineno', 0)}"
            assert not (isinstance(node, ast.Attribute) and node.attr == "random"), f"{path.name}, line {node.lineno}"
