"""Write the trained net as ONNX: weights stored in half precision, computed with in single precision.

python -m tools.train_listener.export OUT/net.pt src/fioritura/listening/model/listener.onnx
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any, Final

import numpy as np
import torch
from torch import nn
from torch.nn.utils.fusion import fuse_conv_bn_eval

from fioritura.listening.spectra import FINE_BINS, QUICK_BINS
from tools.train_listener.net import ListenerNet

__all__ = ["export", "read_net"]

LEAST_NUMBERS: Final = 64
"""Smaller tensors stay as they are."""


class _Probabilities(nn.Module):
    """The net with probabilities for logits."""

    def __init__(self, net: ListenerNet) -> None:
        super().__init__()
        self.net = net

    def forward(self, spectra: Any) -> tuple[Any, Any]:
        pitch, onset = self.net(spectra)
        return torch.softmax(pitch, dim=2), torch.sigmoid(onset)


def read_net(path: Path) -> ListenerNet:
    """The net with the weights of a training run, in single precision, ready to listen."""
    net = ListenerNet()
    state = torch.load(path, map_location="cpu", weights_only=True)
    net.load_state_dict({name: one.float() if one.is_floating_point() else one for name, one in state.items()})
    net.eval()
    return net


def _fuse(module: nn.Module) -> None:
    """Put each normalisation that follows a convolution into its weights."""
    for child in module.children():
        _fuse(child)
        if isinstance(child, nn.Sequential):
            for place in range(len(child) - 1):
                if isinstance(child[place], nn.Conv2d) and isinstance(child[place + 1], nn.BatchNorm2d):
                    child[place] = fuse_conv_bn_eval(child[place], child[place + 1])
                    child[place + 1] = nn.Identity()
        if hasattr(child, "wide"):
            child.wide, child.norm = fuse_conv_bn_eval(child.wide, child.norm), nn.Identity()


def export(net: ListenerNet, path: Path) -> None:
    """Write the net; its input is (1, frames, bins), its outputs pitch (1, frames, states) and onset (1, frames)."""
    import onnx

    _fuse(net)
    shape = {"spectra": {1: "frames"}, "pitch": {1: "frames"}, "onset": {1: "frames"}}
    beside = path.with_suffix(".new")
    torch.onnx.export(
        _Probabilities(net).eval(),
        (torch.zeros(1, 200, FINE_BINS + QUICK_BINS),),
        str(beside),
        input_names=["spectra"],
        output_names=["pitch", "onset"],
        dynamic_axes=shape,
        dynamo=False,
    )
    model = onnx.load(str(beside))
    casts = []
    for tensor in list(model.graph.initializer):
        values = onnx.numpy_helper.to_array(tensor)
        if values.dtype == np.float32 and values.size >= LEAST_NUMBERS:
            stored = onnx.numpy_helper.from_array(values.astype(np.float16), f"{tensor.name}_half")
            casts.append(onnx.helper.make_node("Cast", [stored.name], [tensor.name], to=onnx.TensorProto.FLOAT))
            model.graph.initializer.remove(tensor)
            model.graph.initializer.append(stored)
    nodes = [*casts, *model.graph.node]
    del model.graph.node[:]
    model.graph.node.extend(nodes)
    for node in model.graph.node:
        node.doc_string = ""
    onnx.checker.check_model(model)
    onnx.save(model, str(beside))
    beside.replace(path)


def main() -> int:
    """Read a net, write a file."""
    if len(sys.argv) != 3:
        print(__doc__)
        return 2
    export(read_net(Path(sys.argv[1])), Path(sys.argv[2]))
    print(f"{Path(sys.argv[2]).stat().st_size / 1e6:.2f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
