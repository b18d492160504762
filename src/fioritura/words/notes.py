"""How notes are called: in English, in German (B is the note below H), in solfège."""

from __future__ import annotations

from typing import Final, Literal

__all__ = ["Naming", "note_name"]

Naming = Literal["english", "german", "solfege"]

_LETTERS: Final = "CDEFGAB"
_SYLLABLES: Final = ("Do", "Re", "Mi", "Fa", "Sol", "La", "Si")
_FRENCH_SYLLABLES: Final = ("Do", "Ré", "Mi", "Fa", "Sol", "La", "Si")
_SIGNS: Final = {-2: "𝄫", -1: "♭", 0: "", 1: "♯", 2: "𝄪"}
_GERMAN_FLATS: Final = {"E": "Es", "A": "As"}


def note_name(letter: str, alter: int, naming: Naming, language: str) -> str:
    """A note's name: ``"B♭"``, in German ``"B"``, in syllables ``"Si♭"``.

    `letter` is C to B, `alter` the number of sharps, negative for flats.
    """
    sign = _SIGNS.get(alter, ("♯" if alter > 0 else "♭") * abs(alter))
    if naming == "solfege":
        syllables = _FRENCH_SYLLABLES if language == "fr" else _SYLLABLES
        return syllables[_LETTERS.index(letter)] + sign
    if naming == "english":
        return letter + sign
    if letter == "B":
        return "B" if alter == -1 else "H" + "is" * alter if alter >= 0 else "H" + "es" * -alter
    if alter < 0:
        return _GERMAN_FLATS.get(letter, f"{letter}es") + (
            "as" if letter == "A" and alter < -1 else "es" * (-alter - 1)
        )
    return letter + "is" * alter
