#!/bin/sh
# fetch.sh COORDINATES SHA256: prints the path of one pinned artefact, fetched through its registry's own client when it is not in the cache yet,
# and checked against its sum every time. COORDINATES are
#   group:artifact:version or group:artifact:version:packaging    through Maven
#   pypi:name:version:file                                        a wheel, through pip; the file's name tells for which system
#   npm:name:version                                              a package, through npm
set -eu
coords=$1 sum=$2
root=$(cd "$(dirname "$0")/.." && pwd)
download=${XDG_CACHE_HOME:-$HOME/.cache}/readback/download

maven() {
	IFS=: read -r group artifact version kind <<EOF
$coords
EOF
	kind=${kind:-jar}
	repo=${MAVEN_REPO:-$HOME/.m2/repository}
	file=$repo/$(echo "$group" | tr . /)/$artifact/$version/$artifact-$version.$kind
	[ -f "$file" ] && return
	echo "Fetching $coords" >&2
	mvn -q -B -Dmaven.repo.local="$repo" org.apache.maven.plugins:maven-dependency-plugin:3.6.1:get -Dtransitive=false -Dartifact="$group:$artifact:$version:$kind" >&2
}

wheel() {
	IFS=: read -r _ name version base <<EOF
$coords
EOF
	file=$download/$base
	[ -f "$file" ] && return
	echo "Fetching $name $version" >&2
	python3 -m pip --version >/dev/null 2>&1 || "$root/.ci/need" python3-pip >&2
	platform=${base%.whl}
	platform=${platform##*-}
	set -- --platform "$platform"
	[ "$platform" != any ] || set --
	mkdir -p "$download"
	tmp=$(mktemp -d)
	python3 -m pip download -q --disable-pip-version-check --no-deps --only-binary=:all: --python-version 3.12 "$@" -d "$tmp" "$name==$version" >&2
	mv "$tmp/$base" "$file"
	rm -rf "$tmp"
}

npmpack() {
	IFS=: read -r _ name version <<EOF
$coords
EOF
	file=$download/$name-$version.tgz
	[ -f "$file" ] && return
	echo "Fetching $name $version" >&2
	command -v npm >/dev/null 2>&1 || "$root/.ci/need" npm >&2
	mkdir -p "$download"
	tmp=$(mktemp -d)
	(cd "$tmp" && npm pack --silent "$name@$version" >/dev/null)
	mv "$tmp/$name-$version.tgz" "$file"
	rm -rf "$tmp"
}

case $coords in
pypi:*) wheel ;;
npm:*) npmpack ;;
*) maven ;;
esac
got=$(sha256sum "$file" | cut -d' ' -f1)
if [ "$got" != "$sum" ]; then
	echo "$file: its sum is $got, pinned is $sum; remove the file and try again" >&2
	exit 1
fi
echo "$file"
