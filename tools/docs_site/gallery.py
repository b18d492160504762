"""The gallery, made anew: the same renditions as in docs/gallery, by the engine as it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fioritura.arrange.rendition import Rendition
from fioritura.lesson.edition import Edition, comparison_score, line_performance
from tools.docs_site.media import CARE, Media, Sound, both_widths, in_sentence, music_figure
from tools.make_gallery import RENDITIONS, command_for, figure_rows, made, stem_of

__all__ = ["Gallery"]


@dataclass(frozen=True)
class Gallery:
    """The renditions by the names of their files."""

    renditions: dict[str, Rendition]

    @classmethod
    def made(cls) -> Gallery:
        """Every rendition of the gallery, found and chosen now."""
        return cls({stem_of(number, *one): made(*one) for number, one in enumerate(RENDITIONS, start=1)})

    def media(self) -> Iterator[Media]:
        """Picture and sound of each rendition."""
        for stem, rendition in self.renditions.items():
            edition = Edition(rendition)
            yield from both_widths(f"gallery/{stem}", comparison_score(edition))
            yield Sound(f"gallery/{stem}.mp3", line_performance(edition))

    def page(self) -> str:
        """The page as Markdown."""
        lines = [
            "---\nhide: [navigation]\n---\n# Gallery\n",
            "Ten renditions of three tunes in the public domain, just as `fioritura ornament` gives them: the plain tune over the",
            "ornamented line at written pitch. They were found, engraved and played when this page was built.\n",
            f"{CARE}\n{{ .care }}\n",
        ]
        for number, (stem, rendition) in enumerate(self.renditions.items(), start=1):
            lines += self._entry(number, stem, rendition)
        return "\n".join(lines)

    def _entry(self, number: int, stem: str, rendition: Rendition) -> Iterator[str]:
        tune, setting = rendition.tune, rendition.setting
        title = f"{tune.title}: {in_sentence(setting.instrument)}, level {setting.level}, {setting.idiom}"
        yield f"## {number}. {title}\n"
        yield f"{len(rendition.figures)} figures, {rendition.kept_share:.0%} of the tune kept.\n"
        yield music_figure(stem, title, sound=f"{stem}.mp3")
        yield f"```sh\n{command_for(stem, rendition)}\n```\n"
        yield '??? note "The figures, and why they stand there"\n'
        rows = ["| where | figure | why here |", "|---|---|---|", *figure_rows(rendition)]
        yield from (f"    {row}" for row in rows)
        yield ""
