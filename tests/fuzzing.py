"""Damaged and invented input for every reader, made from a number: the same number is always the same input.

Half of the inputs are sound files with something changed (bytes flipped, stretches cut, doubled or swapped with another
file's, numbers made extreme), the others are drawn from the grammar's own words without regard for sense.
"""

from __future__ import annotations

import io
import json
import random
import re
import wave
import zipfile
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING, Any

from fioritura.errors import FiorituraError
from tests import fuzzing_api

if TYPE_CHECKING:
    from fioritura.tune import Tune

__all__ = ["READERS", "Reader", "made", "tried"]

HOME = Path(__file__).parent
EXTREMES = (
    "9" * 5000,
    "³",
    "0",
    "-1",
    "1e308",
    "NaN",
    "inf",
    "99999999999999999999",
    "2147483648",
    "0.1",
    "",
    "-0",
    "1/0",
    "٣",
    "½",
    "1e-9",
)
NASTY = (
    b"\x00",
    b"\xff\xfe",
    b"\xef\xbb\xbf",
    b"\r",
    b"<!--",
    b"]]>",
    b"&amp;",
    b"%",
    b"\\",
    b'"',
    b"'",
    "\u202e♭𝄫".encode(),
)

ABC_WORDS = (
    *"CDEFGABcdefgabzxZXy", *"^_=,'/><()[]{}|:-+~.HJLMOPRSTuv&\\$!*#%\"", "\n", " ", "X:1\n", "T:tune\n", "M:4/4\n", "M:C|\n",
    "M:2+3/8\n", "M:none\n", "L:1/8\n", "L:1/0\n", "K:C\n", "K:F#mix\n", "K:HP\n", "K:C clef=bass octave=-9\n", "Q:1/4=120\n", "Q:1/4=1e9\n",
    "V:1\n", "V:2 clef=alto\n", "P:A2(BC)3\n", "P:A\n", "[K:G]", "[M:3/4]", "[V:2]", "[r:note]", "(3", "(3:2:3", "(9:0:1", "(99999", "|:", ":|",
    "::", "|]", "[1", "[2", "|1", ":|2", '"Am7"', '"^text"', '"C/E"', '"???"', "!trill!", "!D.C.!", "!segno!", "+fermata+", "{/c}", "{abc}", "[CEG]",
    "C2", "C/2", "C3/2", "C////", "C1000000000", "z4", "Z8", "Z999999999", "A>B", "A<<<B", "A-A", "w: la- la _ *\n", "W:words\n", "%%score (1 2)\n",
    "%%abc-version 2.1\n", "m: ~n2 = n/o/n\n", "U: T = !trill!\n", "I:linebreak $\n", "s:|x|\n", "\\\n", "%comment\n",
)  # fmt: skip

CHORD_WORDS = (
    *"ABCDEFGHabcdefgh", *"#b♯♭xn", "##", "bb", "m", "M", "maj", "Maj7", "min", "mi", "-", "Δ", "Δ7", "°", "o7", "ø", "ø7", "dim", "aug", "+", "sus", "sus2",
    "sus4", "9sus4", "6", "6/9", "69", "7", "9", "11", "13", "b9", "#9", "#11", "b13", "(b9)", "(b9,#11)", "(", ")", ",", "/", "/G", "/F#", "alt",
    "add9", "add", "no3", "omit5", "N.C.", "NC", "%", "|", "||", " ", "  ", "♮5", "-5", "+5", "7♯5♭9", "quartal", "99", "1", "𝄫", "\t", "\n",
)  # fmt: skip

XML_WORDS = (
    "<measure>", '<measure number="{n}">', "</measure>", "<note>", "</note>", "<chord/>", "<rest/>", "<rest measure='yes'/>", "<grace/>",
    "<pitch><step>C</step><octave>4</octave></pitch>", "<pitch><step>{n}</step><octave>{n}</octave></pitch>", "<duration>{n}</duration>", "<voice>{n}</voice>",
    "<type>quarter</type>", "<type>1024th</type>", "<dot/>", "<tie type='start'/>", "<tie type='stop'/>", "<backup><duration>{n}</duration></backup>",
    "<forward><duration>{n}</duration></forward>", "<attributes>", "</attributes>", "<divisions>{n}</divisions>",
    "<key><fifths>{n}</fifths><mode>dorian</mode></key>", "<time><beats>{n}</beats><beat-type>{n}</beat-type></time>", "<time><beats>3+2</beats><beat-type>8</beat-type></time>",
    "<time><senza-misura/></time>", "<transpose><chromatic>{n}</chromatic><octave-change>{n}</octave-change></transpose>", "<sound tempo='{n}'/>", "<sound dacapo='yes'/>",
    "<barline><repeat direction='forward'/></barline>", "<barline location='right'><repeat direction='backward' times='{n}'/></barline>",
    "<barline><ending number='{n}' type='start'/></barline>", "<barline><ending number='1, 2' type='stop'/></barline>",
    "<harmony><root><root-step>G</root-step><root-alter>{n}</root-alter></root><kind text='7'>dominant</kind><degree><degree-value>{n}</degree-value><degree-alter>{n}</degree-alter><degree-type>add</degree-type></degree></harmony>",
    "<notations><tuplet type='start'/><ornaments><trill-mark/></ornaments></notations>", "<time-modification><actual-notes>{n}</actual-notes><normal-notes>{n}</normal-notes></time-modification>",
    "<direction><direction-type><words>Swing</words></direction-type></direction>", "<lyric><text>la</text></lyric>", "<unpitched/>", "<cue/>", "<staves>2</staves>", "<part id='P2'>", "</part>",
)  # fmt: skip


@dataclass(frozen=True)
class Reader:
    """A reader under test: sound inputs to damage, inputs from the grammar, and the reading itself."""

    sound: Callable[[], tuple[bytes, ...]]
    drawn: Callable[[random.Random], bytes]
    read: Callable[[bytes], object]


def made(reader: str, number: int) -> bytes:
    """Input `number` for a reader."""
    rng = random.Random(f"{reader}/{number}")
    chosen = READERS[reader]
    if rng.random() < 0.5:
        return chosen.drawn(rng)
    samples = chosen.sound()
    return _damaged(rng, rng.choice(samples), rng.choice(samples))


def tried(reader: str, data: bytes) -> str:
    """What became of an input: "read", or the name of the deliberate error. Any other error comes out."""
    try:
        READERS[reader].read(data)
    except FiorituraError as error:
        assert str(error).strip(), "an error without a message"
        return type(error).__name__
    return "read"


def _damaged(rng: random.Random, data: bytes, other: bytes) -> bytes:
    for _ in range(rng.choice((1, 1, 1, 2, 8))):
        a, b = sorted(rng.randrange(len(data) + 1) for _ in range(2))
        kind = rng.randrange(8)
        if kind == 0:
            data = data[:a]
        elif kind == 1:
            data = data[:a] + data[min(b, a + rng.choice((1, 8, 200))) :]
        elif kind == 2:
            data = data[:b] + data[a : min(b, a + 2000)] * rng.choice((1, 2, 5)) + data[b:]
        elif kind == 3:
            data = data[:a] + rng.choice(NASTY) + data[a:]
        elif kind == 4:
            c = rng.randrange(len(other) + 1)
            data = data[:a] + other[c : c + rng.choice((4, 40, 1000))] + data[b:]
        elif kind == 5 and data:
            context = min(a, len(data) - 1)
            data = data[:context] + bytes([data[context] ^ 1 << rng.randrange(8)]) + data[context + 1 :]
        else:
            data = _with_extreme_number(rng, data)
    return data


def _with_extreme_number(rng: random.Random, data: bytes) -> bytes:
    numbers = list(re.finditer(rb"\d+", data))
    if not numbers:
        return data
    hit = rng.choice(numbers)
    return data[: hit.start()] + rng.choice(EXTREMES).encode() + data[hit.end() :]


def _words(rng: random.Random, words: tuple[str, ...], most: int) -> str:
    text = "".join(rng.choice(words) for _ in range(rng.randrange(1, most)))
    return re.sub(r"\{n\}", lambda _: rng.choice((*EXTREMES, "1", "2", "4", "8", "12")), text)


def _file_reader(suffix: str) -> Callable[[bytes], object]:
    def read(data: bytes) -> object:
        from fioritura.notation.read import read_tunes

        with NamedTemporaryFile(suffix=suffix) as file:
            file.write(data)
            file.flush()
            return list(read_tunes(file.name))

    return read


@cache
def _tunes() -> tuple[Tune, ...]:
    from tests.tunes import random_tune

    return tuple(random_tune(seed, bars=4) for seed in range(6))


@cache
def _musicxml() -> tuple[bytes, ...]:
    from fioritura.notation.musicxml.writer import write_musicxml
    from fioritura.notation.score import Score, Staff

    files = [path.read_bytes() for path in sorted((HOME / "data").glob("*.musicxml"))]
    written = [write_musicxml(Score(tune, (Staff(tune.notes, "Lead"),))) for tune in _tunes()]
    return (*written, min(files, key=len))


def _musicxml_drawn(rng: random.Random) -> bytes:
    return _musicxml_rearranged(rng) if rng.random() < 0.6 else _musicxml_invented(rng)


def _musicxml_rearranged(rng: random.Random) -> bytes:
    """A sound file with elements taken out, doubled, moved elsewhere or given another text or attribute."""
    from lxml import etree

    root = etree.fromstring(rng.choice(_musicxml()))
    for _ in range(rng.choice((1, 1, 2, 3, 8))):
        elements = [element for element in root.iter(etree.Element) if element.getparent() is not None]
        if len(elements) < 2:
            break
        one, other = rng.sample(elements, 2)
        match rng.randrange(5):
            case 0:
                if (parent := one.getparent()) is not None:
                    parent.remove(one)
            case 1:
                one.addnext(etree.fromstring(etree.tostring(one, with_tail=False)))
            case 2 if other not in one.iter() and one not in other.iter():
                other.append(one)
            case 3:
                one.text = rng.choice((*EXTREMES, "3", "12", "start", "C", "whole"))
            case _:
                key = rng.choice((*one.attrib, "type", "number", "times", "tempo"))
                one.set(str(key), rng.choice((*EXTREMES, "1", "start", "stop")))
    return etree.tostring(root, xml_declaration=True, encoding="UTF-8")


def _musicxml_invented(rng: random.Random) -> bytes:
    body = _words(rng, XML_WORDS, 40)
    head = "<?xml version='1.0' encoding='UTF-8'?>"
    if rng.random() < 0.1:
        head += '<!DOCTYPE score-partwise [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c SYSTEM "file:///etc/hostname">]>'
        body += "&b;&c;"
    parts = "<part-list><score-part id='P1'><part-name>Lead</part-name></score-part></part-list>"
    measure = "<measure number='1'><attributes><divisions>4</divisions></attributes>"
    return f"{head}<score-partwise version='4.0'>{parts}<part id='P1'>{measure}{body}</measure></part></score-partwise>".encode()


@cache
def _mxl() -> tuple[bytes, ...]:
    return tuple(_zipped({"META-INF/container.xml": _CONTAINER, "score.xml": data}) for data in _musicxml())


_CONTAINER = b"<container><rootfiles><rootfile full-path='score.xml'/></rootfiles></container>"


def _zipped(members: dict[str, bytes]) -> bytes:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in members.items():
            archive.writestr(zipfile.ZipInfo(name), data)
    return file.getvalue()


def _mxl_drawn(rng: random.Random) -> bytes:
    name = rng.choice(
        (
            *["score.xml"] * 12,
            "../../score.xml",
            "/etc/score.xml",
            "a/" * 200 + "s.xml",
            "score.mxl",
            "META-INF/container.xml",
            "\x01.xml",
        )
    )
    container = _CONTAINER.replace(b"score.xml", name.encode())
    bomb = b" " * rng.choice((0, 0, 0, 3_000_000))
    members = {"META-INF/container.xml": container, name: _musicxml_drawn(rng) + bomb}
    if rng.random() < 0.2:
        del members["META-INF/container.xml"]
    return _damaged(rng, _zipped(members), b"PK\x03\x04") if rng.random() < 0.3 else _zipped(members)


@cache
def _abc() -> tuple[bytes, ...]:
    from fioritura.notation.abc.writer import write_abc
    from fioritura.notation.score import Score, Staff

    written = [write_abc(Score(tune, (Staff(tune.notes, "Lead"),))).encode() for tune in _tunes()]
    book = b"".join(data.replace(b"X:1", b"X:%d" % n) for n, data in enumerate(written[:2], start=1))
    return (*written, book)


def _abc_drawn(rng: random.Random) -> bytes:
    return _abc_interspersed(rng) if rng.random() < 0.6 else _abc_invented(rng)


def _abc_interspersed(rng: random.Random) -> bytes:
    """A sound tune with a few words of the grammar where they may not belong."""
    text = rng.choice(_abc()).decode()
    for _ in range(rng.choice((1, 1, 2, 4))):
        context = rng.randrange(len(text) + 1)
        text = text[:context] + rng.choice(ABC_WORDS) + text[context + rng.choice((0, 0, 1)) :]
    return text.encode()


def _abc_invented(rng: random.Random) -> bytes:
    head = "X:1\nT:drawn\nM:4/4\nL:1/8\nK:C\n" if rng.random() < 0.7 else ""
    return (head + _words(rng, ABC_WORDS, 60)).encode("utf-8", "surrogatepass")


@cache
def _midi() -> tuple[bytes, ...]:
    from tests.midi_files import played

    return tuple(played(tune, seed, 0.02, (0.7, 1.0)) for seed, tune in enumerate(_tunes()))


def _midi_drawn(rng: random.Random) -> bytes:
    """Events that may follow one another in a file, or, in every third, bytes that may not stand there."""
    is_sound = rng.random() < 0.7
    events = b"".join(
        rng.choice(
            (b"\x00", b"\x60", b"\x83\x60", b"\x87\x40", b"\xff\xff\xff\x7f" if rng.random() < 0.05 else b"\x30")
        )
        + (_midi_event(rng) if is_sound or rng.random() < 0.8 else rng.randbytes(3))
        for _ in range(rng.randrange(1, 60))
    )
    events += b"\x00\xff\x2f\x00"
    if is_sound:
        return _midi_file(rng, events, len(events), 1, rng.choice((480, 96, 1, 32767)))
    length = len(events) if rng.random() < 0.8 else rng.choice((0, 1, 2**31, 2**32 - 1))
    return _midi_file(rng, events, length, rng.choice((1, 1, 0, 2, 65535)), rng.choice((480, 0, 0xE728, 0x8000)))


def _midi_event(rng: random.Random) -> bytes:
    note, channel = rng.choice((60, 62, 64, 67, 72, rng.randrange(128))), rng.choice((0, 0, 0, 1, 9))
    if rng.random() < 0.7:
        return bytes((rng.choice((0x90, 0x80)) + channel, note, rng.choice((64, 64, 0))))
    metre = (rng.randrange(256), rng.randrange(9)) if rng.random() < 0.1 else (rng.choice((2, 3, 4, 6, 12)), 3)
    return rng.choice(
        (
            b"\xff\x51\x03" + rng.choice((b"\x07\xa1\x20", b"\x00\x00\x00", b"\x00\x00\x01", b"\xff\xff\xff")),
            b"\xff\x58\x04" + bytes((*metre, 24, 8)),
            b"\xff\x59\x02" + bytes((rng.choice((0, 3, 7, 253, 249)), rng.choice((0, 1)))),
            bytes((0xC0 + channel, note)),
            bytes((0xE0 + channel, rng.randrange(128), rng.randrange(128))),
            bytes((0xB0 + channel, rng.choice((7, 64, 123)), rng.randrange(128))),
            b"\xf0\x02\x01\xf7",
            b"\xff\x03" + rng.choice((b"\x04Lead", b"\x00", b"\x02\xff\xfe")),
        )
    )


def _midi_file(rng: random.Random, events: bytes, length: int, tracks: int, division: int) -> bytes:
    head = (
        b"MThd" + (6).to_bytes(4, "big") + rng.choice((*[0, 1] * 6, 2)).to_bytes(2, "big") + tracks.to_bytes(2, "big")
    )
    return head + division.to_bytes(2, "big") + b"MTrk" + length.to_bytes(4, "big") + events


@cache
def _arrangements() -> tuple[bytes, ...]:
    from fioritura.arrange.arrangement import arranged
    from fioritura.arrange.arrangement_file import arrangement_to_json
    from fioritura.players.player import Player
    from fioritura.players.setting import Setting

    setting = Setting(Player.of("concert", 3), 110.0)
    return tuple(arrangement_to_json(arranged(tune, setting)).encode() for tune in _tunes()[:2])


def _arrangement_drawn(rng: random.Random) -> bytes:
    """A sound file with one value, somewhere in the tree, replaced by another of any kind."""
    data = json.loads(rng.choice(_arrangements()))
    contexts = list(_places(data))
    for _ in range(rng.choice((1, 1, 3))):
        holder, key = rng.choice(contexts)
        value: object = rng.choice(
            (None, True, -1, 0, 10**30, 1e308, float("nan"), "", "C", "𝄞", [], {}, [[]], [1, 2], {"step": 1})
        )
        if rng.random() < 0.2 and isinstance(holder, dict):
            holder.pop(key, None)
        else:
            holder[key] = value
    return json.dumps(data).encode()


def _places(data: Any) -> Iterator[tuple[Any, Any]]:
    items = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for key, value in items:
        yield data, key
        yield from _places(value)


def _read_arrangement(data: bytes) -> object:
    from fioritura.arrange.arrangement_file import arrangement_from_json

    return arrangement_from_json(data.decode("utf-8", "replace"))


def _archive_drawn(rng: random.Random) -> bytes:
    """A shelf's archive with values of its table changed, or with entries that are missing, damaged or called otherwise."""
    with zipfile.ZipFile(io.BytesIO(fuzzing_api.archives()[0])) as archive:
        members = {name: archive.read(name) for name in archive.namelist()}
    table = json.loads(members["shelf.json"])
    contexts = list(_places(table))
    for _ in range(rng.choice((0, 1, 1, 3))):
        holder, key = rng.choice(contexts)
        holder[key] = rng.choice((*fuzzing_api.ODD, *members))
    members["shelf.json"] = json.dumps(table).encode()
    if rng.random() < 0.5:
        name = rng.choice(tuple(members))
        data = members.pop(name)
        if rng.random() < 0.7:
            members[rng.choice((name, name, name, f"../{name}"))] = _damaged(rng, data, b"[" * 100_000)
    return _zipped(members)


def _chords_drawn(rng: random.Random) -> bytes:
    """Symbols of all kinds in the four bars of a tune, or words without regard for sense."""
    if rng.random() < 0.3:
        return _words(rng, CHORD_WORDS, 24).encode()
    cells = (" ".join(_symbol(rng) for _ in range(rng.choice((1, 1, 2, 4)))) for _ in range(4))
    return " | ".join(cells).encode()


def _symbol(rng: random.Random) -> str:
    root = rng.choice("ABCDEFG") + rng.choice(("", "", "b", "#", "♭", "##"))
    quality = rng.choice(CHORD_WORDS[CHORD_WORDS.index("m") : CHORD_WORDS.index("7") + 1])
    rest = "".join(rng.choice(CHORD_WORDS) for _ in range(rng.choice((0, 0, 0, 1, 2))))
    return root + rng.choice(("", quality)) + rest


def _chords() -> tuple[bytes, ...]:
    return (b"C | Am7 | Dm7 G7 | C", b"F#m7b5 | B7(b9,#11)/F# | Em6/9 | N.C. | %", "B♭Δ7 | E♭ø | Aø7 D7♭9".encode())


def _read_chords(data: bytes) -> object:
    from fioritura.arrange.harmonise import chords_from_text
    from fioritura.theory.chord_symbol import read_chord

    text = data.decode("utf-8", "replace")
    with suppress(FiorituraError):
        read_chord(text)
    return chords_from_text(_tunes()[0], text)


@cache
def _audio() -> tuple[bytes, ...]:
    import numpy as np
    import soundfile

    tone = (0.3 * np.sin(np.arange(2205) * 0.06)).astype(np.float32)
    files = []
    for kind, subtype in (
        ("WAV", "PCM_16"),
        ("WAV", "FLOAT"),
        ("FLAC", "PCM_16"),
        ("OGG", "VORBIS"),
        ("AIFF", "PCM_16"),
        ("MP3", "MPEG_LAYER_III"),
    ):
        file = io.BytesIO()
        soundfile.write(file, tone, 22050, format=kind, subtype=subtype)
        files.append(file.getvalue())
    return tuple(files)


def _audio_drawn(rng: random.Random) -> bytes:
    """A WAV whose header and samples say extreme things: rates, channels, lengths, samples that are not numbers."""
    file = io.BytesIO()
    with wave.open(file, "wb") as sound:
        sound.setnchannels(rng.choice((1, 2, 7, 255)))
        sound.setsampwidth(rng.choice((1, 2, 3, 4)))
        sound.setframerate(44100)
        sound.writeframes(rng.randbytes(rng.choice((0, 1, 255 * 12, 5000))))
    data = bytearray(file.getvalue())
    data[24:28] = rng.choice((0, 1, 8000, 22050, 192000, 2**31 - 1, 2**32 - 1)).to_bytes(4, "little")
    if rng.random() < 0.5:
        data[20:22] = rng.choice((1, 3, 6, 7, 0xFFFE, 0)).to_bytes(2, "little")
    if rng.random() < 0.3:
        data[40:44] = rng.choice((0, 1, 2**31, 2**32 - 1)).to_bytes(4, "little")
    if rng.random() < 0.3:
        data[44:] = rng.choice((b"\x00\x00\xc0\x7f", b"\x00\x00\x80\x7f", b"\xff\xff\xff\xff")) * 50
    return bytes(data)


def _read_audio(data: bytes) -> object:
    from fioritura.listening.audio import blocks_of_file

    with NamedTemporaryFile(suffix=".wav") as file:
        file.write(data)
        file.flush()
        return sum(len(block.mono) for block in blocks_of_file(Path(file.name)))


def _ornamented(data: bytes) -> object:
    """The whole way: read, made ready, ornamented, written as MusicXML and ABC."""
    from fioritura.arrange.arranger import ornament
    from fioritura.arrange.prepare import prepared
    from fioritura.lesson.edition import Edition, comparison_score
    from fioritura.notation.abc.writer import write_abc
    from fioritura.notation.musicxml.writer import write_musicxml
    from fioritura.notation.read import read_tunes
    from fioritura.players.player import Player
    from fioritura.players.setting import Setting

    player = Player.of("concert", 5)
    with NamedTemporaryFile(suffix=".musicxml" if data.startswith(b"<?xml") else ".abc") as file:
        file.write(data)
        file.flush()
        (tune, *_) = read_tunes(file.name)
    tune = prepared(tune, player.instrument)
    score = comparison_score(Edition(ornament(tune, Setting(player, tune.quarters_per_minute, tune.feel))))
    return write_musicxml(score), write_abc(score)


UPLOADS = {"abc": ".abc", "musicxml": ".musicxml", "mxl": ".mxl", "midi": ".mid", "audio": ".wav"}


def _upload(rng: random.Random) -> tuple[str, bytes]:
    """A file as another reader's input would be, under the name of its kind."""
    reader = rng.choice(tuple(UPLOADS))
    return "sent" + UPLOADS[reader], made(reader, rng.randrange(10**9))


READERS: dict[str, Reader] = {
    "musicxml": Reader(_musicxml, _musicxml_drawn, _file_reader(".musicxml")),
    "mxl": Reader(_mxl, _mxl_drawn, _file_reader(".mxl")),
    "abc": Reader(_abc, _abc_drawn, _file_reader(".abc")),
    "midi": Reader(_midi, _midi_drawn, _file_reader(".mid")),
    "arrangement": Reader(_arrangements, _arrangement_drawn, _read_arrangement),
    "chords": Reader(_chords, _chords_drawn, _read_chords),
    "audio": Reader(_audio, _audio_drawn, _read_audio),
    "whole way": Reader(
        lambda: (*_musicxml(), *_abc()),
        lambda rng: rng.choice((_musicxml_rearranged, _abc_interspersed))(rng),
        _ornamented,
    ),
    "archive": Reader(fuzzing_api.archives, _archive_drawn, fuzzing_api.restored),
    "api": Reader(
        fuzzing_api.page_requests, lambda rng: fuzzing_api.drawn(rng, _upload, _abc_drawn), fuzzing_api.answered
    ),
}
