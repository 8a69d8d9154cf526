#!/bin/sh
# Gets axe-core (MPL-2.0), the accessibility checker of the page's tests, from the npm registry into the user's cache, once, checked
# against a pinned sum. Needs no network when it is there.
set -eu
version=4.14.1
sum=29348999450cdf2849a8e70b7912fc2da85a849da39c0d0d5394f51d4a9ed95c
cache=${XDG_CACHE_HOME:-$HOME/.cache}/readback/axe
file=$cache/axe-$version.min.js
right() { [ -f "$file" ] && echo "$sum  $file" | sha256sum -c --status 2>/dev/null; }
right && exit 0
command -v npm >/dev/null 2>&1 || { echo "axe-core is fetched by npm: apt-get install npm" >&2; exit 1; }
tmp=$(mktemp -d)
trap 'rm -rf "$tmp"' EXIT
echo "Fetching axe-core $version"
(cd "$tmp" && npm pack --silent "axe-core@$version" >/dev/null && tar xzf "axe-core-$version.tgz")
mkdir -p "$cache"
cp "$tmp/package/axe.min.js" "$file"
right || { rm -f "$file"; echo "axe-core $version: wrong checksum after download" >&2; exit 1; }
