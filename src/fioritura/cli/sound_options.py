"""Options that `play` and `backing` share, and the writing of what they make."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from fioritura.cli.options import names, print_json, print_plan, print_warnings, print_words
from fioritura.errors import OptionError
from fioritura.words import Message, message, say

if TYPE_CHECKING:
    from fioritura.arrange.plan import Plan
    from fioritura.lesson.practice import Practice, Version
    from fioritura.sound.performance import Performance
    from fioritura.sound.synth import Synth
    from fioritura.theory.key import Key
    from fioritura.tune import Tune

__all__ = ["Tempos", "add_form_options", "add_sound_options", "give_out", "keys_of", "loops_of", "tempos_of"]

PARTS: Final = ("melody", "bass", "chords", "drums", "click")


def add_form_options(parser: argparse.ArgumentParser) -> Any:
    """Feel, tempo, key and how the form goes."""
    group = parser.add_argument_group("band and form")
    group.add_argument(
        "--feel",
        metavar="FEEL",
        help="swing shuffle slow-blues ballad bossa soul funk waltz folk-waltz march reel jig (default: what suits the tune)",
    )
    group.add_argument(
        "--tempo", default="", metavar="BPM,...", help="beats a minute (in 6/8 dotted quarters); one version for each"
    )
    group.add_argument(
        "--key",
        default="",
        metavar="KEY,...|all",
        help="sounding key, as Bb; all: the twelve along the fourths; best: see ornament",
    )
    group.add_argument(
        "--bars", default="", metavar="A-B,...", help="loop these bars after a bar of count-in; one version for each"
    )
    group.add_argument(
        "--opening",
        choices=("count-in", "pickup", "intro"),
        help="what comes before (default: the drums lead in; a count-in for a loop or a single chorus)",
    )
    group.add_argument("--ending", choices=("ritard", "tag", "straight"), help="default: the feel's own")
    group.add_argument("--mute", default="", metavar="PART,...", help=f"without these of {' '.join(PARTS)}")
    group.add_argument("--just", default="", metavar="PART,...", help="these parts alone, and the click")
    group.add_argument("--minus", default="", metavar="PART,...|each", help="one version without each of these parts")
    group.add_argument("--click", action="store_true", help="click on every beat, not just in the count-in")
    group.add_argument("--exact", action="store_true", help="no humanised timing")
    group.add_argument("--seed", type=int, default=0, metavar="N", help="another good version, always the same")
    return group


def add_sound_options(parser: argparse.ArgumentParser) -> None:
    """Synth, soundfont and output."""
    group = parser.add_argument_group("sound")
    group.add_argument("--stems", action="store_true", help="each part in a file of its own, too; they add up")
    group.add_argument(
        "--voice",
        default="measured",
        metavar="measured|soundfont|FILE.sfz",
        help="what the melody sings with (default: measured; see fioritura sounds)",
    )
    group.add_argument("--soundfont", type=Path, metavar="FILE", help="an .sf2 or .sf3 file (see fioritura sounds)")
    group.add_argument("--synth", choices=("built-in", "fluidsynth"), help="default: built-in where there is one")
    group.add_argument("--json", action="store_true", help="print a summary as JSON")


@dataclass(frozen=True, slots=True)
class Tempos:
    """The tempos asked for, in beats and in quarters a minute."""

    beats: tuple[float, ...]
    quarters: tuple[float, ...]


def tempos_of(options: argparse.Namespace, tune: Tune) -> Tempos:
    """The tempos of ``--tempo``; none for the tune's own.

    Raises:
        OptionError: not numbers, or out of reach.
    """
    from fioritura.sound.clock import checked_tempo
    from fioritura.theory.metre import QUARTER

    try:
        beats = tuple(float(text) for text in names(options.tempo))
    except ValueError:
        raise OptionError("cli-no-tempo", given=options.tempo) from None
    share = tune.metre.beat_ticks / QUARTER
    return Tempos(beats, tuple(checked_tempo(beat * share) for beat in beats))


def keys_of(options: argparse.Namespace, tune: Tune) -> tuple[Key, ...]:
    """The keys of ``--key``; none for the tune's own.

    Raises:
        TuneError, OptionError: no such key.
    """
    from fioritura.arrange.keys import BEST, best_key, key_named, twelve_keys
    from fioritura.players.instruments import instrument_named

    if options.key.strip().lower() == "all":
        return twelve_keys(tune.key)
    instrument = instrument_named(options.player)
    return tuple(
        best_key(tune, [instrument]) if name.lower() == BEST else key_named(name, tune.key)
        for name in names(options.key)
    )


def loops_of(options: argparse.Namespace) -> tuple[tuple[int, int], ...]:
    """The loops of ``--bars``; none for all of the tune.

    Raises:
        OptionError: not a range of bars.
    """
    from fioritura.accompany.excerpt import bar_range

    return tuple(map(bar_range, names(options.bars)))


def give_out(practice: Practice, options: argparse.Namespace, targets: Sequence[Path]) -> int:
    """Write every version to every target, all or nothing in each folder, and say what was made."""
    from fioritura.lesson.practice import versions
    from fioritura.sound.encode import AUDIO_FORMATS
    from fioritura.sound.synth import synth_named

    for target in targets:
        if target.suffix.lower().lstrip(".") not in (*AUDIO_FORMATS, "mid"):
            raise OptionError("cli-bad-ending", name=target.name)
    line_ups = _line_ups(options)
    needs_synth = any(target.suffix.lower() != ".mid" for target in targets)
    synth = synth_named(options.synth, options.soundfont) if needs_synth else None
    records = []
    for version in versions(practice):
        records += _write_version(version, practice, options, targets, line_ups, synth)
    print_warnings(practice.tune, options)
    _say(records, options, practice.plan)
    return 0


@dataclass(frozen=True, slots=True)
class _LineUp:
    """Who plays in a version: all but `without`; `just` names them where few do."""

    without: tuple[str, ...] = ()
    just: tuple[str, ...] = ()
    suffix: str = ""


def _line_ups(options: argparse.Namespace) -> tuple[_LineUp, ...]:
    """Who is to play: one line-up, or one for each part that is to be left out."""
    muted, just = _parts(options.mute), _parts(options.just)
    if muted and just:
        raise OptionError("cli-mute-or-just")
    is_each = options.minus.strip().lower() == "each"
    if just:
        muted = tuple(part for part in PARTS[:-1] if part not in just)
    minus = tuple(part for part in PARTS[:-1] if part not in muted) if is_each else _parts(options.minus)
    if minus:
        return tuple(_LineUp((*muted, part), suffix=f"-without-{part}") for part in minus)
    return (_LineUp(muted, just),)


def _parts(text: str) -> tuple[str, ...]:
    found = tuple(name.lower() for name in names(text))
    for name in found:
        if name not in PARTS:
            raise OptionError("cli-no-part", given=name, known=PARTS)
    return found


def _write_version(
    version: Version,
    practice: Practice,
    options: argparse.Namespace,
    targets: Sequence[Path],
    line_ups: Sequence[_LineUp],
    synth: Synth | None,
) -> list[dict[str, Any]]:
    """One version with each line-up; a part that it does not have can't be left out of it."""
    from fioritura.sound.calibrate import calibrated
    from fioritura.sound.session import played

    performance = _voiced(played(version.session), options.voice)
    there = {part.name.lower() for part in performance.parts}
    if synth is not None:
        performance = calibrated(performance, synth)
    records = []
    for line_up in line_ups:
        if line_up.suffix and line_up.without[-1] not in there:
            continue
        titled = replace(performance, title=_title(performance, version, practice, line_up))
        heard = titled.without(line_up.without)
        if not any(part.notes for part in heard.parts):
            raise OptionError("cli-all-muted")
        files = []
        for target in targets:
            path = target.with_stem(target.stem + version.suffix + line_up.suffix)
            files += _write(heard, path, version, options, synth)
        records.append(_record(heard, version, practice, files))
    return records


def _voiced(performance: Performance, voice: str) -> Performance:
    """The performance with the voice that ``--voice`` names.

    Raises:
        OptionError: no such voice.
    """
    if voice == "measured":
        return performance
    if voice == "soundfont":
        return performance.with_voice("")
    if Path(voice).suffix != ".sfz":
        raise OptionError("cli-no-voice", given=voice)
    return performance.with_voice(str(Path(voice).absolute()))


def _title(performance: Performance, version: Version, practice: Practice, line_up: _LineUp) -> str:
    """Tune, what is heard, key, tempo, bars and parts in words."""
    named = line_up.just or tuple(part for part in line_up.without if part != "melody" or practice.what != "backing")
    loop = version.loop
    return say(
        message(
            "cli-sound-title",
            title=performance.title or message("cli-untitled"),
            what=practice.what,
            key=version.key,
            tempo=f"{version.session.tune.metre.beat_sign} = {performance.beats_per_minute:g}",
            has_bars="yes" if loop else "no",
            bars=f"{loop[0]}–{loop[1]}" if loop else "",
            has_parts="just" if line_up.just else "without" if named else "all",
            parts=tuple(map(_part_name, named)),
        )
    )


def _record(performance: Performance, version: Version, practice: Practice, files: Sequence[Path]) -> dict[str, Any]:
    return {
        "title": performance.title,
        "key": str(version.key),
        "quarters_per_minute": performance.clock.tempo_at(0),
        "beats_per_minute": performance.beats_per_minute,
        "feel": practice.feel.id,
        "choruses": [chorus.name for chorus in version.session.choruses],
        "energies": [round(chorus.energy, 3) for chorus in version.session.choruses],
        "parts": [part.name.lower() for part in performance.parts],
        "bars": len(performance.bars),
        "duration_sec": round(performance.duration_sec, 2),
        "files": [str(path) for path in files],
    }


def _write(
    performance: Performance, path: Path, version: Version, options: argparse.Namespace, synth: Synth | None
) -> list[Path]:
    """One file, and its stems where they are wanted."""
    from fioritura.files import staged_folder, write_beside
    from fioritura.sound.midi_writer import write_midi
    from fioritura.sound.mixdown import write_audio

    if path.suffix.lower() == ".mid":
        write_beside(path, write_midi(performance))
        return [path]
    artist = version.session.tune.composer
    with _progress(path.name) as progress:
        if not options.stems:
            write_audio(performance, path, synth=synth, artist=artist, progress=progress)
            return [path]
        with staged_folder(path.parent) as stage:
            mastering = write_audio(performance, stage / path.name, synth=synth, artist=artist, progress=progress)
            written = [path]
            for part in performance.parts:
                name = f"{path.stem}-{part.name.lower()}{path.suffix}"
                stem = replace(
                    performance.only([part.name]), title=f"{performance.title}, {say(_part_name(part.name))}"
                )
                write_audio(stem, stage / name, synth=synth, artist=artist, mastering=mastering, progress=progress)
                written.append(path.with_name(name))
        return written


@contextmanager
def _progress(name: str) -> Iterator[Any]:
    """A progress bar on a terminal; nothing elsewhere."""
    if not sys.stderr.isatty():
        yield None
        return
    from tqdm import tqdm

    with tqdm(total=100, unit="%", leave=False, desc=name, bar_format="{desc}: {percentage:3.0f}%|{bar}|") as bar:
        yield lambda share: bar.update(round(100 * share) - bar.n)


def _part_name(name: str) -> Message:
    return message("cli-part", name=name.lower())


def _say(records: Sequence[dict[str, Any]], options: argparse.Namespace, plan: Plan | None) -> None:
    if options.json:
        print_json(records[0] if len(records) == 1 else {"versions": records})
        return
    print_plan(plan)
    for record in records:
        minutes, seconds = divmod(round(record["duration_sec"]), 60)
        print_words(
            "cli-sound-made",
            title=record["title"],
            feel=message(f"feel-{record['feel']}"),
            time=f"{minutes}:{seconds:02}",
        )
        for path in record["files"]:
            print(f"  {path}")
    print_words("care-hearing.short")
