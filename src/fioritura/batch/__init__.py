"""Many tunes at once: whole folders and books, on this machine's cores or on a cluster, to be taken up again at will.

files -> tunes (`sources`) -> jobs -> workers (`pool`, `cluster`) that make pieces (`job`) -> the output folder (`store`)
"""
