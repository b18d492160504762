"""The training of the net in `fioritura.listening.model`: takes by chance from recorded notes, spoilt on a GPU.

`notes` and `bands` prepare what takes are made of, `lines` invents lines, `dry` plays them, `stock` makes them in many
processes, `spoil` puts them into rooms, over bands and through phones, `net` is the net, `train` trains it, `trials` are
what it is looked at by, `export` writes it for the program. Needs the extra `train`, and `dev`.
"""
