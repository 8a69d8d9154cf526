"""Trains the finder, the aligner and the row reader of core/internal/ocr from samples that `trainreader -draw` writes.

    GOGC=400 trainreader -draw DIR -parts 900 -each 1200 -digits testdata/camera/lcd-digits.zip -seed 12 &
    python3 learn.py find DIR OUT 365 core/internal/ocr/find.bin &
    python3 learn.py align DIR OUT 365 core/internal/ocr/align.bin &
    python3 learn.py row DIR OUT 365 core/internal/ocr/row.bin

The number is how many seconds to train; the rate falls over that time, so another machine gets other weights. The last argument names weights
to begin with; without it training begins from nothing. New parts are taken in as they appear and deleted. PyTorch, one GPU. OUT gets
find.bin (weights as 16-bit floats) and find.json: what this program's network, with the weights so rounded, makes of an input that the Go test makes too.
"""
import glob, json, os, struct, sys, time, zlib
import numpy as np
import torch
import torch.nn as nn
import torch.nn.functional as F

SEED = 21


def conv(i, o, kh=3, kw=3, sy=1, sx=1, py=None, px=None, relu=True):
    return dict(op="conv", kh=kh, kw=kw, sy=sy, sx=sx, py=kh // 2 if py is None else py, px=kw // 2 if px is None else px, **{"in": i}, out=o, relu=relu)


def depth(c, kh=3, kw=3, sy=1, sx=1):
    return dict(op="depth", kh=kh, kw=kw, sy=sy, sx=sx, py=kh // 2, px=kw // 2, **{"in": c}, out=c, relu=True)


def op(name, what):
    return dict(op=name, name=what)


def block(c, n, kh=3, kw=3):
    """Two residual halves: a filter for each channel, then a mixture of channels."""
    return [op("save", n), depth(c, kh, kw), conv(c, c, 1, 1, relu=False), dict(op="add", name=n, relu=True)]


FIND = dict(h=240, w=320, c=3, ops=[
    conv(3, 8, sy=2, sx=2), depth(8, sy=2, sx=2), conv(8, 24, 1, 1), depth(24), depth(24, sy=2, sx=2), conv(24, 40, 1, 1), op("save", "s8"),
    depth(40, sy=2, sx=2), conv(40, 80, 1, 1), *block(80, "b"), op("save", "s16"),
    depth(80, sy=2, sx=2), conv(80, 112, 1, 1), *block(112, "c"), *block(112, "d", 5, 5), *block(112, "e"),
    conv(112, 80, 1, 1, relu=False), op("up", "s16"), dict(op="add", name="s16", relu=True), *block(80, "f"),
    conv(80, 40, 1, 1, relu=False), op("up", "s8"), dict(op="add", name="s8", relu=True), *block(40, "g"), conv(40, 6, 1, 1, relu=False)])

ROW = dict(h=40, w=240, c=3, ops=[
    conv(3, 16, sy=2, sx=2), depth(16, sy=2, sx=2), conv(16, 40, 1, 1), *block(40, "a"), conv(40, 56, 1, 1), depth(56, sy=2), conv(56, 104, 1, 1),
    *block(104, "b"), *block(104, "c"), conv(104, 152, 5, 1, py=0, px=0), *block(152, "d", 1, 7), *block(152, "e", 1, 7), *block(152, "f", 1, 7),
    conv(152, 18, 1, 1, relu=False)])


ALIGN = dict(h=48, w=240, c=3, ops=[
    conv(3, 12, sy=2, sx=2), depth(12, sy=2, sx=2), conv(12, 32, 1, 1), *block(32, "a"), depth(32, sy=2), conv(32, 64, 1, 1), *block(64, "b", 3, 5),
    conv(64, 96, 6, 1, py=0, px=0), *block(96, "c", 1, 9), *block(96, "d", 1, 9), conv(96, 3, 1, 1, relu=False)])


class Net(nn.Module):
    def __init__(self, spec):
        super().__init__()
        self.spec, self.layers = spec, nn.ModuleList()
        for k, o in enumerate(spec["ops"]):
            if o["op"] not in ("conv", "depth"):
                continue
            last = k == len(spec["ops"]) - 1
            c = nn.Conv2d(o["in"], o["out"], (o["kh"], o["kw"]), (o["sy"], o["sx"]), (o["py"], o["px"]), groups=o["in"] if o["op"] == "depth" else 1, bias=last)
            nn.init.kaiming_normal_(c.weight, nonlinearity="relu")
            self.layers.append(c if last else nn.Sequential(c, nn.BatchNorm2d(o["out"])))

    def forward(self, x):
        saved, i = {}, 0
        for o in self.spec["ops"]:
            n = o.get("name")
            if o["op"] in ("conv", "depth"):
                x = self.layers[i](x)
                i += 1
                if o.get("relu"):
                    x = F.relu(x)
            elif o["op"] == "save":
                saved[n] = x
            elif o["op"] == "load":
                x = saved[n]
            elif o["op"] == "add":
                x = x + saved[n]
                if o.get("relu"):
                    x = F.relu(x)
            elif o["op"] == "up":
                x = F.interpolate(x, scale_factor=2, mode="nearest")[:, :, :saved[n].shape[2], :saved[n].shape[3]]
        return x

    def folded(self):
        """Weights and biases with the normalisation in them, rounded to 16 bits."""
        out = []
        for l in self.layers:
            if isinstance(l, nn.Conv2d):
                w, b = l.weight.data, l.bias.data
            else:
                c, n = l[0], l[1]
                k = n.weight.data / torch.sqrt(n.running_var + n.eps)
                w, b = c.weight.data * k[:, None, None, None], n.bias.data - n.running_mean * k
            out.append((w.float().cpu().half().float(), b.float().cpu().half().float()))
        return out


def plain(spec, weights, x):
    """The network as Go runs it."""
    saved, i = {}, 0
    for o in spec["ops"]:
        n = o.get("name")
        if o["op"] in ("conv", "depth"):
            w, b = weights[i]
            i += 1
            x = F.conv2d(x, w, b, (o["sy"], o["sx"]), (o["py"], o["px"]), groups=o["in"] if o["op"] == "depth" else 1)
        elif o["op"] == "save":
            saved[n] = x
        elif o["op"] == "add":
            x = x + saved[n]
        elif o["op"] == "up":
            x = F.interpolate(x, scale_factor=2, mode="nearest")[:, :, :saved[n].shape[2], :saved[n].shape[3]]
        if o.get("relu"):
            x = F.relu(x)
    return x


def start(net, path, x):
    """Begins with the weights of a file that save wrote. The normalisation is not in it: it is set so that the network does on x what the file's does."""
    b = open(path, "rb").read()
    n, = struct.unpack("<I", b[7:11])
    assert json.loads(b[11:11 + n])["ops"] == net.spec["ops"], "another network"
    v, at, biases = np.frombuffer(b[11 + n:-4], "<f2").astype(np.float32), 0, []
    def take(k):
        nonlocal at
        at += k
        return torch.from_numpy(v[at - k:at].copy())
    for o, l in zip([o for o in net.spec["ops"] if o["op"] in ("conv", "depth")], net.layers):
        c = l if isinstance(l, nn.Conv2d) else l[0]
        if o["op"] == "conv":
            w = take(o["out"] * o["kh"] * o["kw"] * o["in"]).view(o["out"], o["kh"], o["kw"], o["in"]).permute(0, 3, 1, 2)
        else:
            w = take(o["kh"] * o["kw"] * o["in"]).view(o["kh"], o["kw"], o["in"]).permute(2, 0, 1)[:, None]
        c.weight.data.copy_(w)
        bias = take(o["out"]).to(x.device)
        if l is c:
            c.bias.data.copy_(bias)
            continue
        def measure(m, a, bias=bias):
            a = a[0].float()
            mean, var = a.mean((0, 2, 3)), a.var((0, 2, 3), unbiased=False)
            m.running_mean.copy_(mean)
            m.running_var.copy_(var)
            m.weight.data.copy_(torch.sqrt(var + m.eps))
            m.bias.data.copy_(bias + mean)
        l[1].register_forward_pre_hook(measure)
    net.eval()
    with torch.no_grad():
        net(x)
    for l in net.layers:
        if not isinstance(l, nn.Conv2d):
            l[1]._forward_pre_hooks.clear()
    net.train()


def save(net, spec, path):
    weights = net.folded()
    head = json.dumps(spec, separators=(",", ":")).encode()
    body = b"RBNET1\n" + struct.pack("<I", len(head)) + head
    i = 0
    for o in spec["ops"]:
        if o["op"] not in ("conv", "depth"):
            continue
        w, b = weights[i]
        i += 1
        # conv: output, then row, column, input channel; depth: row, column, channel
        w = w.permute(0, 2, 3, 1) if o["op"] == "conv" else w[:, 0].permute(1, 2, 0)
        body += w.contiguous().numpy().astype("<f2").tobytes() + b.numpy().astype("<f2").tobytes()
    with open(path + ".bin", "wb") as f:
        f.write(body + struct.pack("<I", zlib.crc32(body)))
    y, x, c = np.mgrid[:spec["h"], :spec["w"], :3]
    probe = ((x * 37 + y * 101 + c * 53 + (x * y) % 97 * 11) % 256).astype(np.float32)
    probe = torch.from_numpy((probe - 128) / 64).permute(2, 0, 1)[None]
    with torch.no_grad():
        out = plain(spec, weights, probe)[0].permute(1, 2, 0).flatten()
    with open(path + ".json", "w") as f:
        json.dump(dict(every=7, out=[round(float(v), 6) for v in out[::7]]), f)
    return sum(w.numel() + b.numel() for w, b in weights)


class Samples:
    """Parts taken in as they appear, kept on the GPU."""

    def __init__(self, what, folder, dev, fields):
        self.what, self.folder, self.dev, self.fields, self.parts, self.n = what, folder, dev, fields, [], 0
        self.extra = None

    def load(self, name):
        a, b = self.fields(name)
        for f in (name, name[:-3] + ".want"):
            os.remove(f)
        return torch.from_numpy(a).to(self.dev), torch.from_numpy(b).to(self.dev)

    def poll(self):
        for name in sorted(glob.glob(f"{self.folder}/{self.what}-*.in")):
            self.parts.append(self.load(name))
            self.n = sum(len(p[0]) for p in self.parts)
            print(self.what, "has", self.n, flush=True)
        if self.what == "row" and self.extra is None:
            for name in glob.glob(f"{self.folder}/photo-*.in"):
                self.extra = self.load(name)

    def batch(self, size, g):
        """Parts that came last are drawn as often as all."""
        p = self.parts[int(torch.randint(len(self.parts), (1,), generator=g))]
        k = torch.randint(len(p[0]), (size,), device=self.dev)
        a, b = p[0][k], p[1][k]
        if self.extra is not None:
            m = size // 24
            k = torch.randint(len(self.extra[0]), (m,), device=self.dev)
            a, b = torch.cat([a[m:], self.extra[0][k]]), torch.cat([b[m:], self.extra[1][k]])
        return a, b


def spoil(x):
    """x is N,3,H,W from 0 to 255: another exposure, curve, colour, blur and noise for each."""
    n, dev = len(x), x.device
    r = lambda lo, hi: torch.rand(n, 1, 1, 1, device=dev) * (hi - lo) + lo
    y, c = x[:, :1], x[:, 1:] - 128
    turn = (torch.rand(n, 1, 1, 1, device=dev) < 0.08).float()
    y = y * (1 - turn) + (255 - y) * turn
    y = 255 * (y / 255).clamp(1e-3, 1) ** r(0.7, 1.4)
    y = (y - 128) * r(0.5, 1.15) + 128 + r(-30, 30)
    soft = F.avg_pool2d(F.pad(y, (1, 1, 1, 1), mode="replicate"), 3, 1)
    along = F.avg_pool2d(F.pad(y, (2, 2, 0, 0), mode="replicate"), (1, 5), 1)
    across = F.avg_pool2d(F.pad(y, (0, 0, 2, 2), mode="replicate"), (5, 1), 1)
    pick = torch.rand(n, 1, 1, 1, device=dev)
    y = torch.where(pick < 0.08, along, torch.where(pick > 0.94, across, y))
    soft = torch.where((pick < 0.08) | (pick > 0.94), y, soft)
    k = r(-0.5, 1.0) * (torch.rand(n, 1, 1, 1, device=dev) < 0.35).float()
    y = y + (soft - y) * k
    y = y + torch.randn_like(y) * r(0, 9) * (torch.rand(n, 1, 1, 1, device=dev) < 0.5).float()
    none = (torch.rand(n, 1, 1, 1, device=dev) < 0.3).float()
    # colours turned to others, so that what is read hangs on none
    a = torch.rand(n, 1, 1, 1, device=dev) * 6.283 * (torch.rand(n, 1, 1, 1, device=dev) < 0.3).float()
    c = torch.cat([c[:, :1] * a.cos() - c[:, 1:] * a.sin(), c[:, :1] * a.sin() + c[:, 1:] * a.cos()], 1)
    ramp = torch.linspace(-1, 1, y.shape[3], device=dev)[None, None, None] * r(-25, 25) + torch.linspace(-1, 1, y.shape[2], device=dev)[None, None, :, None] * r(-15, 15)
    y = y + ramp * (torch.rand(n, 1, 1, 1, device=dev) < 0.3).float()
    c = c * r(0.3, 1.4) * (1 - none) + torch.randn(n, 2, 1, 1, device=dev) * 6 * (1 - none)
    return torch.cat([y.clamp(0, 255).round(), (c + 128).clamp(0, 255).round()], 1)


def moved(a, b, cell, dev):
    """Shifts each batch by whole cells, what comes in is grey: a is N,H,W,C, b is N,(rows,)columns,values."""
    wide = int(torch.randint(-2, 3, (1,)))
    if wide:
        a, b = torch.roll(a, wide * cell, 2), torch.roll(b, wide, -2)
        s = slice(0, wide) if wide > 0 else slice(wide, None)
        a, b = a.clone(), b.clone()
        a[:, :, s.start if s.start is None else s.start * cell:None if s.stop is None else s.stop * cell] = 128
        b[..., s, :] = 255 if b.dtype == torch.uint8 else -1
    if b.dim() == 4:
        high = int(torch.randint(-2, 3, (1,)))
        if high:
            a, b = torch.roll(a, high * cell, 1), torch.roll(b, high, 1)
            s = slice(0, high) if high > 0 else slice(high, None)
            a, b = a.clone(), b.clone()
            a[:, s.start if s.start is None else s.start * cell:None if s.stop is None else s.stop * cell] = 128
            b[:, s] = -1
    return a, b


def normal(x, band):
    """As in Normal and NormalAll of core/internal/ocr."""
    y = x[:, :1]
    b = y[:, :, 8:32, 15:225] if band else y
    least = 4.0 if band else 16.0
    m = b.mean((2, 3), keepdim=True)
    s = ((b * b).mean((2, 3), keepdim=True) - m * m).clamp(min=least).sqrt()
    return torch.cat([(y - m) / s, (x[:, 1:] - 128) / s], 1)


def find_loss(out, want):
    want = want.permute(0, 3, 1, 2)
    t = want[:, 0]
    known, on = (t >= 0).float(), (t > 0).float()
    bce = F.binary_cross_entropy_with_logits(out[:, 0], on, reduction="none")
    p = torch.sigmoid(out[:, 0])
    hard = (on * (1 - p) + (1 - on) * p) + 0.1
    score = (bce * hard * known).sum() / (on.sum() + 30)
    reg = F.smooth_l1_loss(out[:, 1:], want[:, 1:], reduction="none", beta=0.05) * torch.tensor([2, 4, 6, 1, 1.0], device=out.device)[None, :, None, None]
    reg = (reg * on[:, None]).sum() / (on.sum() + 30)
    return 4 * score + 3 * reg, dict(score=score, reg=reg)


def align_loss(out, want):
    out, want = out[:, :, 0], want.permute(0, 2, 1)  # N,3,60
    t = want[:, 0]
    known, on = (t >= 0).float(), (t > 0).float()
    there = F.binary_cross_entropy_with_logits(out[:, 0], on, reduction="none")
    there = (there * known).sum() / known.sum().clamp(min=1)
    edge = F.smooth_l1_loss(out[:, 1:], (want[:, 1:] - 24) / 8, reduction="none", beta=0.05)
    edge = (edge * on[:, None]).sum() / (2 * on.sum() + 1)
    return 2 * there + 4 * edge, dict(there=there, edge=edge)


def row_loss(out, want):
    out = out[:, :, 0]  # N,18,60
    t = want[..., 0].long()
    ce = F.cross_entropy(out[:, :14], t.where(t < 255, torch.full_like(t, -1)), ignore_index=-1, reduction="none")
    w = torch.where(t == 0, 0.5, 1.0)
    loss = (ce * w).sum() / len(out) / 8
    parts = dict(cls=loss)
    for k, name in enumerate(("point", "minus", "start", "end")):
        v = want[..., k + 1]
        b = F.binary_cross_entropy_with_logits(out[:, 14 + k], (v == 1).float(), reduction="none") * (v < 255).float()
        parts[name] = b.sum() / len(out) / 8 * (1.0 if k < 2 else 0.4)
        loss = loss + parts[name]
    return loss, parts


def poll_first(data):
    while not data.parts:
        data.poll()
        time.sleep(0.5)


def main():
    what, folder, result, seconds = sys.argv[1], sys.argv[2], sys.argv[3], float(sys.argv[4])
    first = sys.argv[5] if len(sys.argv) > 5 else ""
    dev = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(SEED)
    torch.backends.cudnn.benchmark = True
    g = torch.Generator().manual_seed(SEED)
    spec = dict(find=FIND, row=ROW, align=ALIGN)[what]
    net = Net(spec).to(dev).to(memory_format=torch.channels_last)
    if what == "find":
        fields = lambda n: (np.fromfile(n, np.uint8).reshape(-1, 240, 320, 3), np.fromfile(n[:-3] + ".want", np.float32).reshape(-1, 30, 40, 6))
        size, rate = 256, 2e-3
    elif what == "align":
        fields = lambda n: (np.fromfile(n, np.uint8).reshape(-1, 48, 240, 3), np.fromfile(n[:-3] + ".want", np.float32).reshape(-1, 60, 3))
        size, rate = 512, 2e-3
    else:
        fields = lambda n: (np.fromfile(n, np.uint8).reshape(-1, 40, 240, 3), np.fromfile(n[:-3] + ".want", np.uint8).reshape(-1, 60, 5))
        size, rate = 1024, 2e-3
    if first:
        rate *= 0.6
    if dev == "cpu":
        size = 8
    data = Samples(what, folder, dev, fields)
    poll_first(data)
    if first:
        start(net, first, normal(spoil(data.batch(size, g)[0].permute(0, 3, 1, 2).float()), what == "row"))
    slow = Net(spec).to(dev)
    slow.load_state_dict(net.state_dict())
    slow_state, net_state = ([v for v in m.state_dict().values() if v.dtype.is_floating_point] for m in (slow, net))
    opt = torch.optim.AdamW(net.parameters(), lr=rate, weight_decay=0.02, fused=dev == "cuda")
    began, step, told, polled = time.time(), 0, time.time(), time.time()
    sums = {}
    while (t := (time.time() - began) / seconds) < 1:
        for q in opt.param_groups:
            q["lr"] = rate * min(1, (step + 1) / 300) * (0.5 + 0.5 * np.cos(np.pi * t)) + 1e-6
        a, b = data.batch(size, g)
        a, b = moved(a, b, dict(find=8, align=4, row=4)[what], dev)
        x = spoil(a.permute(0, 3, 1, 2).float())
        x = normal(x, what == "row").contiguous(memory_format=torch.channels_last)
        with torch.autocast(dev, torch.bfloat16, enabled=dev == "cuda"):
            out = net(x)
        loss, parts = dict(find=find_loss, row=row_loss, align=align_loss)[what](out.float(), b)
        opt.zero_grad(set_to_none=True)
        loss.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 5.0)
        opt.step()
        step += 1
        with torch.no_grad():
            k = min(0.999, step / (step + 100))
            torch._foreach_lerp_(slow_state, net_state, 1 - k)
        if step % 50 == 0:
            for n, v in parts.items():
                sums.setdefault(n, []).append(v.item())
        if time.time() - told > 20:
            print(what, f"step {step} {time.time() - began:.0f} s", *(f"{n} {np.mean(v):.4f}" for n, v in sums.items()), flush=True)
            sums, told = {}, time.time()
        if time.time() - polled > 3 and t < 0.9:
            data.poll()
            polled = time.time()
    slow.eval()
    n = save(slow, spec, f"{result}/{what}")
    torch.save(slow.state_dict(), f"{result}/{what}.pt")
    print(what, "done:", step, "steps,", n, "weights,", data.n, "samples", flush=True)


main()
