"""Make the gallery in docs: ten renditions of three tunes in the public domain, as picture and sound.

``python -m tools.make_gallery``; the pages are looked at bar by bar before they are committed.
"""

from __future__ import annotations

from pathlib import Path

from fioritura.arrange.arranger import ornament
from fioritura.arrange.prepare import prepared
from fioritura.arrange.rendition import Rendition
from fioritura.lesson.edition import Edition, comparison_score
from fioritura.notation.engraving.engrave import engrave_page
from fioritura.notation.read import read_tune
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.sound.mixdown import write_audio
from fioritura.sound.perform import perform
from fioritura.techniques.table import technique_named
from fioritura.words import capital, say

HOME = Path(__file__).parents[1] / "docs" / "gallery"
RENDITIONS: tuple[tuple[str, str, int, Idiom, int], ...] = (
    ("saints", "alto-sax", 1, "jazz", 0),
    ("saints", "alto-sax", 3, "jazz", 0),
    ("saints", "tenor-sax", 4, "jazz", 2),
    ("saints", "trumpet", 5, "jazz", 1),
    ("greensleeves", "flute", 2, "folk", 0),
    ("greensleeves", "flute", 4, "folk", 1),
    ("greensleeves", "clarinet", 3, "jazz", 0),
    ("amazing_grace", "tenor-sax", 2, "jazz", 0),
    ("amazing_grace", "alto-sax", 4, "jazz", 0),
    ("amazing_grace", "soprano-sax", 5, "jazz", 3),
)


def main() -> None:
    """Write the pictures, the sounds and the page."""
    lines = [
        "# Gallery\n",
        "Ten renditions of three tunes in the public domain, just as `fioritura ornament` gives them: the plain tune over",
        "the ornamented line at written pitch. Start playback softly, in headphones most of all.\n",
    ]
    for number, (name, player, level, idiom, seed) in enumerate(RENDITIONS, start=1):
        rendition = made(name, player, level, idiom, seed)
        stem = stem_of(number, name, player, level)
        svg = engrave_page(comparison_score(Edition(rendition)), width_mm=190, staff_mm=6.2)
        (HOME / f"{stem}.svg").write_text(svg, encoding="utf-8")
        sound(rendition, HOME / f"{stem}.mp3")
        lines += page_entry(rendition, number, stem)
    (HOME / "README.md").write_text("\n".join(lines), encoding="utf-8")


def made(name: str, player: str, level: int, idiom: Idiom, seed: int) -> Rendition:
    """One rendition of a tune of the gallery."""
    performer = Player.of(player, level)
    tune = prepared(read_tune(HOME / f"{name}.abc"), performer.instrument)
    setting = Setting(performer, tune.quarters_per_minute, tune.feel, idiom)
    return ornament(tune, setting, seed=seed)


def stem_of(number: int, name: str, player: str, level: int, *rest: object) -> str:
    """What the files of a rendition are called, without their endings."""
    return f"{number:02}-{name}-{player}-{level}"


def sound(rendition: Rendition, path: Path) -> None:
    """The ornamented line as MP3."""
    tune, setting = rendition.tune, rendition.setting
    write_audio(perform(tune, rendition.line, instrument=setting.instrument, feel=setting.feel), path)


def page_entry(rendition: Rendition, number: int, stem: str) -> list[str]:
    """The Markdown of one rendition: title, settings, picture, sound, and the reason of each figure."""
    tune, setting = rendition.tune, rendition.setting
    return [
        f"## {number}. {tune.title}: {say(setting.instrument.title)}, level {setting.level}, {setting.idiom}\n",
        f"`{command_for(stem, rendition)}` · {len(rendition.figures)} figures, {rendition.kept_share:.0%} of the tune kept · "
        f"[hear it]({stem}.mp3)\n",
        f"![{tune.title}, level {setting.level}]({stem}.svg)\n",
        "| bar | beat | figure | why here |",
        "|---|---|---|---|",
        *figure_rows(rendition),
        "",
    ]


def command_for(stem: str, rendition: Rendition) -> str:
    """The command that makes a rendition."""
    setting = rendition.setting
    return (
        f"fioritura ornament docs/gallery/{stem[3:].split('-')[0]}.abc --player {setting.instrument.id} "
        f"--level {setting.level} --idiom {setting.idiom} --seed {rendition.seed}"
    )


def figure_rows(rendition: Rendition) -> list[str]:
    """Place, name and reason of each figure as rows of a table."""
    rows = []
    for figure in rendition.figures:
        bar, beat = rendition.tune.beat_at(figure.start_ticks)
        rows.append(
            f"| {bar} | {beat:g} | {capital(say(technique_named(figure.technique).name))} | {say(figure.why)} |"
        )
    return rows


if __name__ == "__main__":
    main()
