"""Parts of an ABC tune put into playing order (abc 2.1, section 3.1.9).

A header's ``P:ABA`` says in which order the sections that the body marks ``P:A`` and ``P:B`` are played. Three
cases stay as they are written: each section in turn; a section several times running, which becomes a repeat; and
the first one again at the end, which becomes a da capo al Fine. Any other order is written out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import groupby

from fioritura.notation.abc.lexer import Token
from fioritura.words import Message, message

__all__ = ["in_playing_order"]


@dataclass(slots=True)
class _Section:
    name: str
    state: tuple[Token, ...]
    """The K:, M: and L: fields in force where the section begins."""
    tokens: list[Token] = field(default_factory=list)

    @property
    def has_repeat(self) -> bool:
        return any(token.kind == "bar" and ":" in token.text for token in self.tokens)


def in_playing_order(
    tokens: Sequence[Token], order: Sequence[str], header: Sequence[Token]
) -> tuple[list[Token], Message | None]:
    """The tokens of a voice arranged by the order of its parts, and a warning where they had to be written out.

    `header` holds the header's own K:, M: and L: fields.
    """
    lead, sections = _sections(tokens, header)
    names = [section.name for section in sections]
    by_name = {section.name: section for section in sections}
    if not order or len(by_name) < len(sections) or not set(order) <= set(names):
        unknown = sorted(set(order) - set(names))
        missing = message("abc-parts-missing", order="".join(order), parts=tuple(unknown))
        return list(tokens), missing if sections and unknown else None
    runs = [(name, len(list(run))) for name, run in groupby(order)]
    played = [name for name, _ in runs]
    if played in (names, [*names, names[0]]) and len(names) + len(played) > 2:
        arranged = [token for name, count in runs[: len(names)] for token in _repeated(by_name[name], count)]
        if played != names:
            first = _repeated(sections[0], runs[0][1])
            arranged = [*first, *_closing_sign(first[-1], "!fine!"), *arranged[len(first) :]]
            arranged += _closing_sign(arranged[-1], "!D.C.!")
        return [*lead, *arranged], None
    written_out = [token for name in order for token in (*by_name[name].state, *by_name[name].tokens)]
    return [*lead, *written_out], message("abc-parts-written-out", order="".join(order))


def _sections(tokens: Sequence[Token], header: Sequence[Token]) -> tuple[list[Token], list[_Section]]:
    lead: list[Token] = []
    sections: list[_Section] = []
    state = {token.text[0]: token for token in header}
    for token in tokens:
        if token.kind == "field" and token.text[0] == "P":
            sections.append(_Section(token.text[2:].strip(), tuple(state.values())))
            continue
        if token.kind == "field" and token.text[0] in "KML":
            state[token.text[0]] = token
        (sections[-1].tokens if sections else lead).append(token)
    return lead, sections


def _repeated(section: _Section, count: int) -> list[Token]:
    """A section's tokens, with repeat signs around them where it is played several times and has none."""
    tokens = section.tokens
    if count == 1 or section.has_repeat or not tokens:
        return tokens or [Token("line_end", "", 0, 0)]
    dots = ":" * (count - 1)
    opening, closing = (
        tokens[0]._replace(kind="bar", text="|" + dots),
        tokens[-1]._replace(kind="bar", text=dots + "|"),
    )
    return [opening, *tokens, closing]


def _closing_sign(after: Token, text: str) -> list[Token]:
    """A sign on the bar before, as if it stood at the end of a line."""
    return [after._replace(kind="decoration", text=text), after._replace(kind="line_end", text="")]
