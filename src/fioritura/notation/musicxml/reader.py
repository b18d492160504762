"""Read the melody of a MusicXML score (3.x and 4.0, partwise or timewise).

An own reader over the element tree, because chord symbols, ornaments and lyrics must come through whole. Pitches in
MusicXML are written pitches for transposing parts (`transpose` leads to the sounding ones); octave clefs and
octave-shift lines change nothing, since the pitch element gives the true octave (W3C MusicXML 4.0).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Final

from lxml import etree

from fioritura.errors import FiorituraError, TuneError
from fioritura.notation.assemble import MAX_BARS, Irregular, RawBar, RawTune, assemble, bar_message, bar_numbers
from fioritura.notation.musicxml.file import parse_score
from fioritura.notation.musicxml.part import Measure, PartContent, VoiceNote, settle_codas, walk_part
from fioritura.notation.part_choice import PartSummary, choose_part, part_list
from fioritura.theory.key import Key
from fioritura.theory.key_finding import find_mode
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import LETTERS, Pitch
from fioritura.tune import Tune
from fioritura.words import Message, message

__all__ = ["read_musicxml"]

Element = etree._Element

_OCTAVES: Final = frozenset("0123456789")

_LEAST_VOICE_SHARE: Final = 0.25
"""A voice with fewer notes than this share of the busiest one of its staff is not taken for the melody."""


def read_musicxml(data: bytes, *, part: str | int | None = None, irregular: Irregular = "refuse") -> Tune:
    """The melody of an uncompressed MusicXML score.

    `part` (a name, part of one, or a number from 1) overrides the choice of the part.

    Raises:
        ReadError: no MusicXML, damaged, or values in it that make no sense.
        TuneError: no melody, several notes at once in it, or bars that do not add up.
        OptionError: there is no such part.
    """
    root = parse_score(data)
    parts = _parts(root)
    summaries = _summaries(root, parts)
    chosen = choose_part(summaries, part)
    content = walk_part(parts[chosen][1])
    settle_codas(content.bars)
    _put_melody(content, summaries)
    _adopt(content, [measures for index, (_, measures) in enumerate(parts) if index != chosen])
    _settle_modes(content)
    name = summaries[chosen].name
    if len(parts) > 1 and part is None:
        taken = name or message("part-numbered", number=chosen + 1)
        content.warnings.insert(0, message("melody-taken-from", part=taken, parts=part_list(summaries)))
    return assemble(
        RawTune(
            bars=content.bars,
            title=_title(root),
            composer=_composer(root),
            part_name=name,
            words=content.words,
            feel=content.feel,
            warnings=content.warnings,
        ),
        irregular=irregular,
    )


def _parts(root: Element) -> list[tuple[str, list[Measure]]]:
    """Each part's id and measures, whichever way the score is nested."""
    parts: dict[str, list[Measure]] = {}
    if root.tag == "score-partwise":
        for part in root.iterfind("part"):
            measures = parts.setdefault(str(part.get("id", "")), [])
            measures += (Measure(_attributes(measure), list(measure)) for measure in part.iterfind("measure"))
    else:
        for measure in root.iterfind("measure"):
            for part in measure.iterfind("part"):
                measures = parts.setdefault(str(part.get("id", "")), [])
                measures.append(Measure(_attributes(measure), list(part)))
    if not parts:
        raise TuneError("xml-no-part")
    longest = max(map(len, parts.values()))
    if longest > MAX_BARS:
        raise TuneError("tune-too-long", bars=longest, limit=MAX_BARS)
    return list(parts.items())


def _attributes(element: Element) -> dict[str, str]:
    return {str(name): str(value) for name, value in element.attrib.items()}


def _summaries(root: Element, parts: Sequence[tuple[str, list[Measure]]]) -> list[PartSummary]:
    """What the parts look like; a part that stands alone needs no looking over."""
    if len(parts) == 1:
        return [PartSummary(_part_name(root, parts[0][0]), note_count=1)]
    return [_summary(root, part_id, measures) for part_id, measures in parts]


def _summary(root: Element, part_id: str, measures: Sequence[Measure]) -> PartSummary:
    """Look a part over without walking it."""
    pitches: list[int] = []
    together = unpitched = 0
    has_chords = has_bass_clef = is_drum_clef = False
    for element in (element for measure in measures for element in measure.content):
        if element.tag == "harmony":
            has_chords = True
        elif element.tag == "attributes":
            clefs = [clef.findtext("sign") for clef in element.iterfind("clef") if clef.get("number", "1") == "1"]
            has_bass_clef |= "F" in clefs
            is_drum_clef |= "percussion" in clefs
        elif element.tag == "note" and element.find("grace") is None:
            midi = _rough_midi(element)
            if midi is not None:
                pitches.append(midi)
                together += element.find("chord") is not None
            unpitched += element.find("unpitched") is not None
    return PartSummary(
        name=_part_name(root, part_id),
        note_count=len(pitches),
        mean_midi=sum(pitches) / len(pitches) if pitches else 0.0,
        overlap_share=together / len(pitches) if pitches else 0.0,
        has_chord_symbols=has_chords,
        is_percussion=unpitched > len(pitches) or (is_drum_clef and not pitches),
        has_bass_clef=has_bass_clef,
    )


def _rough_midi(note: Element) -> int | None:
    """The white key that a note stands on; None where that can't be told."""
    step, octave = note.findtext("pitch/step") or "", note.findtext("pitch/octave") or ""
    if len(step) != 1 or step not in LETTERS or octave not in _OCTAVES:
        return None
    return Pitch(LETTERS.index(step) + 7 * int(octave)).midi


def _part_name(root: Element, part_id: str) -> str:
    for part in root.iterfind("part-list/score-part"):
        if part.get("id") == part_id:
            names = (part.findtext(path) for path in ("part-name", "score-instrument/instrument-name"))
            return next((" ".join(name.split()) for name in names if name and name.strip()), "")
    return ""


def _put_melody(content: PartContent, summaries: Sequence[PartSummary]) -> None:
    """Put the notes of the part's melody voice into its bars.

    Raises:
        TuneError: several notes sound at once.
    """
    if not content.notes:
        return
    staff = min(note.staff for note in content.notes)
    counts = Counter(note.voice for note in content.notes if note.staff == staff)
    most = max(counts.values())
    voice = min(
        (name for name, count in counts.items() if count >= _LEAST_VOICE_SHARE * most), key=lambda name: _order(name)
    )
    melody = [note for note in content.notes if note.voice == voice]
    if any(note.staff != staff for note in melody) and _first_clash(melody):
        melody = [note for note in melody if note.staff == staff]
    melody = _without_unisons(melody)
    clash = _first_clash(melody)
    if clash:
        raise _polyphony(content.bars, clash, summaries)
    for note in melody:
        content.bars[note.bar].notes.append(note.note)
    content.warnings += _melody_warnings(content, melody, voice)


def _melody_warnings(content: PartContent, melody: Sequence[VoiceNote], voice: str) -> list[Message]:
    """What is lost on the way from the part to its melody."""
    warnings: list[Message] = []
    others = len(content.notes) - len(melody)
    if others:
        warnings.append(message("xml-one-voice-read", voice=voice, count=others))
    signs = Counter(sign for note in melody for sign in note.left_out)
    warnings += (message("xml-signs-left-out", sign=sign, count=count) for sign, count in sorted(signs.items()))
    rounded = [note for note in melody if note.is_rounded]
    if rounded:
        first = bar_message(bar_numbers(content.bars)[rounded[0].bar])
        warnings.append(message("xml-lengths-rounded", count=len(rounded), bar=first, part=f"1/{QUARTER}"))
    if voice in content.voices_ending_in_graces:
        warnings.append(message("xml-graces-at-end"))
    return warnings


def _order(voice: str) -> tuple[int, str]:
    return (int(voice) if voice.isascii() and voice.isdecimal() and len(voice) < 6 else 1_000_000, voice)


def _by_onset(notes: Iterable[VoiceNote]) -> list[VoiceNote]:
    return sorted(notes, key=lambda note: (note.bar, note.note.offset_ticks))


def _without_unisons(notes: Iterable[VoiceNote]) -> list[VoiceNote]:
    """Drop the second of two noteheads that stand for the same sound."""
    kept: dict[tuple[int, int, int], VoiceNote] = {}
    for note in _by_onset(notes):
        kept.setdefault((note.bar, note.note.offset_ticks, note.note.pitch.midi), note)
    return list(kept.values())


def _first_clash(notes: Iterable[VoiceNote]) -> tuple[VoiceNote, VoiceNote] | None:
    for first, second in pairwise(_by_onset(notes)):
        if first.bar == second.bar and second.note.offset_ticks < first.note.offset_ticks + first.note.duration_ticks:
            return first, second
    return None


def _polyphony(
    bars: Sequence[RawBar], clash: tuple[VoiceNote, VoiceNote], summaries: Sequence[PartSummary]
) -> TuneError:
    first, second = clash
    bar, pitch, other = bar_message(bar_numbers(bars)[first.bar]), first.note.pitch, second.note.pitch
    if len(summaries) > 1:
        return TuneError("xml-part-at-once", bar=bar, pitch=pitch, other=other, parts=part_list(summaries))
    return TuneError("xml-notes-at-once", bar=bar, pitch=pitch, other=other)


def _adopt(content: PartContent, others: Iterable[Sequence[Measure]]) -> None:
    """Take from other parts what is often written over one part only: chord symbols, tempos, jumps and feel.

    The other parts are walked no further than needed; a fault in one of them does not harm the melody.
    """
    has_chords, has_tempos, has_jumps = _holds(content.bars)
    for measures in others:
        if has_chords and has_tempos and has_jumps:
            return
        try:
            other = walk_part(measures)
        except FiorituraError:
            continue
        settle_codas(other.bars)
        for bar, source in zip(content.bars, other.bars, strict=False):
            bar.chords = bar.chords if has_chords else source.chords
            bar.tempos = bar.tempos if has_tempos else source.tempos
            bar.jumps = bar.jumps if has_jumps else source.jumps
        has_chords, has_tempos, has_jumps = _holds(content.bars)
        content.words += other.words
        content.feel = content.feel or other.feel


def _holds(bars: Sequence[RawBar]) -> tuple[bool, bool, bool]:
    """Are there chord symbols, tempos, jumps?"""
    return any(bar.chords for bar in bars), any(bar.tempos for bar in bars), any(bar.jumps for bar in bars)


def _settle_modes(content: PartContent) -> None:
    """Where the file gives a key signature without a mode, find out which of its two keys it is."""
    unsure = [content.bars[index] for index in sorted(content.bars_without_mode)]
    for fifths in {bar.key.fifths for bar in unsure}:
        bars = [bar for bar in unsure if bar.key.fifths == fifths]
        weights = [0.0] * 12
        last: int | None = None
        for note in (note for bar in bars for note in bar.notes):
            last = note.pitch.midi % 12
            weights[last] += note.duration_ticks
        if last is None:
            continue
        key = _key_by_last_chord(fifths, bars) or find_mode(fifths, weights, last)
        for bar in bars:
            bar.key = key


def _key_by_last_chord(fifths: int, bars: Sequence[RawBar]) -> Key | None:
    """The key whose tonic chord closes the passage (common practice)."""
    chords = [chord.chord for bar in bars for chord in bar.chords if chord.chord]
    for key in (Key(fifths), Key(fifths, "minor")):
        if chords and chords[-1].root == key.tonic and ("minor" in chords[-1].kind) == key.is_minor:
            return key
    return None


def _title(root: Element) -> str:
    texts = (root.findtext(path) or "" for path in ("work/work-title", "movement-title"))
    return next((text for text in texts if text.strip()), "") or _credit(root, "title") or _largest_credit(root)


def _composer(root: Element) -> str:
    creators = root.findall("identification/creator")
    named = [creator.text or "" for creator in creators if creator.get("type") == "composer"]
    return next((text for text in named if text.strip()), "") or _credit(root, "composer")


def _credit(root: Element, kind: str) -> str:
    for credit in root.iterfind("credit"):
        if (credit.findtext("credit-type") or "").strip() == kind:
            return " ".join((words.text or "") for words in credit.iterfind("credit-words"))
    return ""


def _largest_credit(root: Element) -> str:
    """The text of the first page in the largest type, which is the title where nothing says so."""
    words = [
        (float(size) if size.replace(".", "", 1).isdecimal() else 0.0, words.text or "")
        for credit in root.iterfind("credit")
        if credit.get("page", "1") == "1" and credit.find("credit-type") is None
        for words in credit.iterfind("credit-words")
        for size in [str(words.get("font-size", "0"))]
    ]
    return max(words, key=lambda pair: pair[0])[1] if words else ""
