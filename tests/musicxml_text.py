"""MusicXML written by hand for reader tests: four divisions a quarter, so a note's length counts sixteenths."""

from __future__ import annotations

from pathlib import Path

DATA = Path(__file__).parent / "data"
START = "<divisions>4</divisions><key><fifths>0</fifths><mode>major</mode></key>"


def attributes(beats: int | str = 4, unit: int | str = 4, more: str = "") -> str:
    """Attributes of a first measure in C major; `more` follows the time signature."""
    time = f"<time><beats>{beats}</beats><beat-type>{unit}</beat-type></time>"
    return f"<attributes>{START}{time}{more}</attributes>"


def note(pitch: str | None, sixteenths: float = 4, before: str = "", after: str = "", voice: str = "1") -> str:
    """A note ("Bb4") or rest (None); `before` stands before the pitch, `after` behind the voice."""
    body = "<rest/>"
    if pitch:
        alter = pitch.count("#") - pitch[1:].count("b")
        alter_text = f"<alter>{alter}</alter>" if alter else ""
        body = f"<pitch><step>{pitch[0]}</step>{alter_text}<octave>{pitch[-1]}</octave></pitch>"
    duration = "" if "grace" in before else f"<duration>{sixteenths:g}</duration>"
    return f"<note>{before}{body}{duration}<voice>{voice}</voice>{after}</note>"


def notes(line: str) -> str:
    """Notes from text, ``"C4:4 r:2 D4:2"``: lengths in sixteenths, 4 where none stands."""
    pairs = (word.partition(":") for word in line.split())
    return "".join(note(None if name == "r" else name, float(length or 4)) for name, _, length in pairs)


def score(*measures: str, head: str = "", name: str = "Lead") -> bytes:
    """A partwise score of one part; a measure is its content, ``"<measure"`` at its start is kept."""
    return score_of({name: list(measures)}, head)


def score_of(parts: dict[str, list[str]], head: str = "") -> bytes:
    """A partwise score of several parts."""
    listed = "".join(
        f'<score-part id="P{number}"><part-name>{name}</part-name></score-part>'
        for number, name in enumerate(parts, 1)
    )
    bodies = "".join(
        f'<part id="P{number}">{"".join(_measure(n, text) for n, text in enumerate(measures, 1))}</part>'
        for number, measures in enumerate(parts.values(), 1)
    )
    return f'<score-partwise version="4.0">{head}<part-list>{listed}</part-list>{bodies}</score-partwise>'.encode()


def _measure(number: int, text: str) -> str:
    return text if text.startswith("<measure") else f'<measure number="{number}">{text}</measure>'


def harmony(root: str, kind: str, text: str = "", more: str = "") -> str:
    """A chord symbol; `more` follows the kind."""
    alter = root.count("#") - root[1:].count("b")
    alter_text = f"<root-alter>{alter}</root-alter>" if alter else ""
    text = f' text="{text}"' if text else ""
    return (
        f"<harmony><root><root-step>{root[0]}</root-step>{alter_text}</root><kind{text}>{kind}</kind>{more}</harmony>"
    )
