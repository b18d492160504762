"""Hear a take: the way from a recording to notes, in one direction.

audio -> frames (`pitch`) -> segments (`segment`, `attack`) -> tones (`inflect`) -> notes (`notes`)

Where onnxruntime is installed, a small net (`neural`) sets where the tones begin, where they end and what they are; what
is measured inside them (cents, vibrato, scoops) comes from the frames all the same. Only clean tones of which the net
knows nothing are told by the frames alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import exp
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.listening.attack import struck_odds, tonguing
from fioritura.listening.audio import blocks_of_array, blocks_of_file
from fioritura.listening.inflect import Tone, inflections, pitch_line, steady_pitch, tones, vibrato
from fioritura.listening.informed import informed
from fioritura.listening.net_tones import net_tones
from fioritura.listening.neural import Heard, NeuralEar, has_net
from fioritura.listening.notes import CONTOUR_SEC, Attack, PlayedNote, Take
from fioritura.listening.pitch import FRAME_SEC, Floats, Track, Tracker
from fioritura.listening.quality import ClipMeter, PartMeter, findings, player_share
from fioritura.listening.segment import STRUCK_MARGIN, gate_db, segments
from fioritura.tune import Tune

__all__ = ["hear", "notes_of", "tuning_cents"]

_CLEAR: Final = 0.05
_WAVE_FRAMES: Final = 31
_SMOOTH_CENTS: Final = 25.0
_LEAST_FRAMES: Final = 20
_LOUD_DB: Final = 15.0
_RELEASE_DB: Final = 18.0
_FAINT_ODDS: Final = -2.0
"""Chosen on the train half of the benchmark's tunes, dry and in a room."""
_STRAY_CENTS: Final = 60.0
"""Farther from the net's note the frames hear something else that sounds at the time."""
_FARTHEST_CENTS: Final = 49.0
_FIRM_SEC: Final = 0.25
"""No note lies farther from its name; one shorter than this no farther than its share of it, since the attacks of low
reeds are out of tune, and a short note is little else."""
_RINGING_FRAMES: Final = 70
"""For 0.4 s a room keeps a note: what lies at its pitch before the next is no scoop into that."""
_CONTOUR_FRAMES: Final = round(CONTOUR_SEC / FRAME_SEC)


def hear(source: Path | str | NDArray[Any], rate: int = 44100, tune: Tune | None = None) -> Take:
    """Hear a recording of one wind player.

    Args:
        source: a file (WAV, FLAC, MP3, OGG), or samples within ±1 of shape (frames,) or (frames, channels).
        rate: sampling rate of an array in Hz; a file knows its own.
        tune: what is probably played, where it is known; nothing is heard that is not there.

    Returns:
        The notes in order, the player's tuning, and what spoils the recording. An hour needs some
        600 MB at the peak, half of it for the net.

    Raises:
        ReadError: the file is missing or not audio.
        OptionError: the array is not a recording.
    """
    blocks = blocks_of_array(source, rate) if isinstance(source, np.ndarray) else blocks_of_file(Path(source))
    ear = NeuralEar() if has_net() else None
    tracker, clipping, parts = Tracker(passes=2 if ear is None else 1), ClipMeter(), PartMeter()
    for block in blocks:
        clipping.feed(block.raw)
        parts.feed(block.mono)
        tracker.feed(block.mono)
        if ear:
            ear.feed(block.mono)
    track = tracker.finish()
    heard = ear.finish() if ear else None
    player = player_share(track, heard, parts.share) if heard else None
    if player is not None and player.is_clean:
        heard = None
    elif heard and tune:
        heard = informed(heard, tune)
    notes = tuple(notes_of(track, heard))
    return Take(
        notes=notes,
        duration_sec=round(track.duration_sec, 3),
        tuning_cents=round(_tuning_of_notes(notes) if heard else tuning_cents(track), 1),
        findings=tuple(findings(track, clipping.share, parts.share, gate_db(track.level_db), player)),
    )


def _tuning_of_notes(notes: Sequence[PlayedNote]) -> float:
    """The circular mean of the notes' deviations within the semitone, by their lengths."""
    turns = sum(note.duration_sec * np.exp(2j * np.pi * note.pitch_cents / 100) for note in notes)
    return float(np.angle(turns) * 100 / (2 * np.pi)) if notes else 0.0


def tuning_cents(track: Track) -> float:
    """The player's tuning above A4 = 440 Hz, −50 to 50: the circular mean of clean frames within the semitone.

    Frames are averaged over a wave of vibrato where notes are long enough for it.
    """
    cents, unclear = track.heard.best()
    is_clean = (unclear < _CLEAR) & (track.level_db > np.percentile(track.level_db, 90) - _LOUD_DB)
    clean = np.where(is_clean, cents, np.nan)
    steps = np.abs(np.diff(clean, append=np.nan))
    smooth = np.where(steps < _SMOOTH_CENTS, clean, np.nan)
    held = sliding_window_view(np.pad(smooth, (0, _WAVE_FRAMES), constant_values=np.nan), _WAVE_FRAMES).mean(axis=1)
    held = held[np.isfinite(held)]
    within = held if held.size >= _LEAST_FRAMES else clean[np.isfinite(clean)]
    if not within.size:
        return 0.0
    return float(np.angle(np.exp(2j * np.pi * within / 100).mean()) * 100 / (2 * np.pi))


def notes_of(track: Track, heard: Heard | None = None) -> Iterator[PlayedNote]:
    """The notes of a track, in order; they begin and end between two frames.

    Given what the net heard, its notes are measured; without, the frames alone say what the notes are.
    """
    tuning = heard.tuning_cents if heard else tuning_cents(track)
    tongued = tonguing(track)
    struck = struck_odds(track) if heard is None else np.zeros(0, np.float32)
    found = net_tones(heard, track) if heard else tones(segments(track, tuning, struck), track, tuning)
    unclear = np.minimum(track.heard.best()[1], track.fresh.aperiodicity.min(axis=1))
    for place, tone in enumerate(found):
        before = found[place - 1] if place else None
        is_joined = before is not None and before.stop >= tone.start
        is_near = before is not None and heard is not None and tone.start - before.stop < _RINGING_FRAMES
        ringing = before if is_joined or is_near else None
        home = 100.0 * (tone.midi - 69) + tuning
        line = pitch_line(track, tone.start, tone.stop, home)
        if not line.size and heard is None:
            continue
        release = _release(track, tone)
        stop = tone.stop if heard else release
        is_slurred = is_joined and bool((tongued[max(0, tone.start - 4) : tone.start + 6] <= 0).all())
        swing = vibrato(line[tone.core_start - tone.start : tone.core_stop - tone.start])
        pitch = swing[1] if swing else steady_pitch(line, tone) if line.size else home
        if heard and abs(pitch - home) > _STRAY_CENTS:
            pitch, swing = home, None
        elif heard:
            most = _FARTHEST_CENTS * float(np.clip((tone.stop - tone.start) * FRAME_SEC / _FIRM_SEC, 0.5, 1))
            pitch = float(np.clip(pitch, home - most, home + most))
        yield PlayedNote(
            onset_sec=round(track.time(tone.start - 0.5), 4),
            offset_sec=round(track.time(stop - 0.5), 4),
            pitch_cents=round(pitch, 1),
            midi=tone.midi,
            level_db=round(float(np.median(track.level_db[tone.core_start : tone.core_stop])), 1),
            attack=Attack.SLURRED if is_slurred else Attack.TONGUED,
            inflections=tuple(
                inflections(line[: release - tone.start], tone, pitch, track.time(tone.start), ringing)
            ),
            vibrato=swing[0] if swing else None,
            confidence=round(_confidence(float(np.median(unclear[tone.core_start : tone.core_stop])), tone), 2),
            apartness=round(1 / (1 + exp(-tone.struck_odds)), 2) if is_joined else 1.0,
            faint_attacks=tone.faint if heard else tuple(_faint_attacks(struck, track, tone.start, stop)),
            contour=tuple(line[: stop - tone.start : _CONTOUR_FRAMES].round(1).tolist()),
        )


def _faint_attacks(struck: Floats, track: Track, start: int, stop: int) -> Iterator[tuple[float, float]]:
    """Where a note may have been struck again, though the frames alone do not part it."""
    first = start + STRUCK_MARGIN
    odds = struck[first : max(first, stop - STRUCK_MARGIN)]
    for frame in np.flatnonzero(odds > _FAINT_ODDS):
        yield round(track.time(first + int(frame)), 4), round(1 / (1 + exp(-float(odds[frame]))), 2)


def _release(track: Track, tone: Tone) -> int:
    """The frame where the level has sunk for good by `_RELEASE_DB`: a room's tail is no part of the note."""
    level = track.level_db[tone.core_start : tone.stop]
    loud = np.flatnonzero(level > np.percentile(level, 75) - _RELEASE_DB)
    return tone.core_start + int(loud[-1]) + 1 if loud.size else tone.stop


def _confidence(unclear: float, tone: Tone) -> float:
    """Clear tones of 50 ms and more are sure; short and unclear ones are not. The net knows how sure it is."""
    length = min(1.0, (tone.stop - tone.start) / 9)
    if tone.confidence is not None:
        return max(0.05, min(1.0, tone.confidence * length))
    return max(0.05, min(1.0, (1 - 1.5 * unclear)) * length)
