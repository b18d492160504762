"""The page's server under mixed load for some minutes: ``python benchmarks/long_run.py --minutes 10``.

Four visitors bring tunes in, edit, ask for alternatives, listen, search and export, while the memory and the open files of
the server and its processes are taken every few seconds. Prints a table; the exit code is 1 when a request failed, or when
in the last third memory stands more than a tenth, or open files by more than a few, above the second third.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
import threading
import time
from collections import Counter
from pathlib import Path
from statistics import mean

from benchmarks.bench_page import Visitor, started

VISITORS = 4
SAMPLE_SEC = 5.0
MOST_GROWTH = 1.10
FEW_FILES = 8


class Load:
    """Visitors that work until they are told to stop; what they did and what failed."""

    def __init__(self, port: int) -> None:
        self.port = port
        self.done: Counter[str] = Counter()
        self.failed: list[str] = []
        self.stop = threading.Event()

    def visit(self, number: int) -> None:
        """One visitor's endless afternoon."""
        visitor, luck = Visitor(self.port), random.Random(number)
        ids = [visitor.bring(f"Evening {number}")]
        while not self.stop.is_set():
            kind = luck.choices(
                ("edit", "alternatives", "look", "search", "hear", "bring", "export"), (8, 4, 4, 3, 1, 0.3, 0.1)
            )[0]
            try:
                self._do(kind, visitor, ids, luck)
                self.done[kind] += 1
            except Exception as error:
                self.failed.append(f"{kind}: {type(error).__name__}: {error}"[:160])
                visitor = Visitor(self.port)

    def _do(self, kind: str, visitor: Visitor, ids: list[int], luck: random.Random) -> None:
        id = luck.choice(ids)
        if kind == "bring":
            if len(ids) < 6:
                ids.append(visitor.bring(f"Evening {luck.random():.4f}"))
        elif kind == "edit":
            visitor.edit(id, visitor.view(id), luck)
        elif kind == "alternatives":
            figure = luck.choice(visitor.view(id)["figures"])["id"]
            visitor.ask(f"/api/arrangements/{id}/alternatives?figure={figure}")
        elif kind == "look":
            visitor.view(id)
            visitor.ask(f"/stand/{id}")
        elif kind == "search":
            visitor.ask(f"/api/tunes?text={luck.choice(('lan', 'evening', 'quay', 'x'))}")
        elif kind == "hear":
            figure = luck.choice(visitor.view(id)["figures"])["id"]
            visitor.ask(f"/api/arrangements/{id}/figure-sound?figure={figure}")
        else:
            visitor.ask("/api/export")


def family(pid: int) -> list[int]:
    """A process and all that it has started."""
    children: dict[int, list[int]] = {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                parent = int((entry / "stat").read_text().rpartition(")")[2].split()[1])
            except OSError:
                continue
            children.setdefault(parent, []).append(int(entry.name))
    found = [pid]
    for one in found:
        found += children.get(one, [])
    return found


def measured(pid: int) -> tuple[float, int]:
    """Megabytes that are in memory, and open files, of the server's own process."""
    status = Path(f"/proc/{pid}/status").read_text()
    kilobytes = int(status.split("VmRSS:")[1].split()[0])
    return kilobytes / 1024, sum(1 for _ in Path(f"/proc/{pid}/fd").iterdir())


def whole(pid: int) -> tuple[float, int]:
    """The same of the server with all of its processes that stay; one that ends meanwhile counts as gone."""
    megabytes, files = 0.0, 0
    for one in family(pid):
        try:
            more, open_files = measured(one)
        except (OSError, IndexError):
            continue
        megabytes, files = megabytes + more, files + open_files
    return megabytes, files


def main() -> int:
    """Run the load and print what was measured."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--minutes", type=float, default=10.0)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        process, port = started(Path(folder))
        load = Load(port)
        threads = [threading.Thread(target=load.visit, args=(number,)) for number in range(VISITORS)]
        for thread in threads:
            thread.start()
        samples: list[tuple[float, int]] = []
        end = time.monotonic() + 60 * options.minutes
        while time.monotonic() < end:
            time.sleep(SAMPLE_SEC)
            samples.append(whole(process.pid))
        load.stop.set()
        for thread in threads:
            thread.join()
        process.terminate()
        process.wait()
    return report(load, samples)


def report(load: Load, samples: list[tuple[float, int]]) -> int:
    """Print the thirds and the verdict."""
    size = len(samples) // 3
    thirds = [samples[size * n : size * (n + 1)] for n in range(3)]
    print(f"{load.done.total():,} requests of {dict(load.done)}; {len(load.failed)} failed {load.failed[:3]}")
    print(f"{'third':<8}{'memory, mean':>14}{'most':>10}{'open files, mean':>18}")
    for name, third in zip(("first", "second", "last"), thirds, strict=True):
        megabytes, opened = zip(*third, strict=True)
        print(f"{name:<8}{mean(megabytes):>11.0f} MB{max(megabytes):>7.0f} MB{mean(opened):>18.1f}")
    (memory, files), (later, later_files) = (
        (mean(m for m, _ in third), mean(f for _, f in third)) for third in thirds[1:]
    )
    is_flat = later <= MOST_GROWTH * memory and later_files <= files + FEW_FILES
    print("Flat." if is_flat else "It grows.")
    return 0 if is_flat and not load.failed else 1


if __name__ == "__main__":
    sys.exit(main())
