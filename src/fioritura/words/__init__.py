"""What is said to people: messages are values (an id and its arguments) until a face shows them in a language.

A room that has something to say makes a `Message`; `say` renders it. The texts lie in Project Fluent files, one a
language and room (``words/de/arrange.ftl``), those of the techniques beside each technique's file.
"""

from fioritura.words.message import Message, Speakable, Value, message, verbatim
from fioritura.words.speech import (
    LANGUAGES,
    Naming,
    add_words,
    capital,
    language,
    language_tag,
    naming,
    say,
    speaking,
)
from fioritura.words.stored import kept, message_data, message_from, remembered

__all__ = [
    "LANGUAGES",
    "Message",
    "Naming",
    "Speakable",
    "Value",
    "add_words",
    "capital",
    "kept",
    "language",
    "language_tag",
    "message",
    "message_data",
    "message_from",
    "naming",
    "remembered",
    "say",
    "speaking",
    "verbatim",
]
