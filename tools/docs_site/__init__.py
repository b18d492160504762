"""What the documentation site shows that the program itself makes: music as picture and sound, tables, references.

`hooks` is what mkdocs calls. Nothing made here is kept: each build shows the program as it is.
"""
