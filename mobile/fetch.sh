#!/bin/sh
# fetch.sh COORDINATES SHA256: prints the path of one pinned artefact, fetched through Maven when it is not in its cache yet and
# checked against its sum every time. COORDINATES are group:artifact:version or group:artifact:version:packaging.
set -eu
coords=$1 sum=$2
IFS=: read -r group artifact version kind <<EOF
$coords
EOF
kind=${kind:-jar}
repo=${MAVEN_REPO:-$HOME/.m2/repository}
file=$repo/$(echo "$group" | tr . /)/$artifact/$version/$artifact-$version.$kind
if [ ! -f "$file" ]; then
	echo "Fetching $coords" >&2
	mvn -q -B -Dmaven.repo.local="$repo" org.apache.maven.plugins:maven-dependency-plugin:3.6.1:get -Dtransitive=false -Dartifact="$group:$artifact:$version:$kind" >&2
fi
got=$(sha256sum "$file" | cut -d' ' -f1)
if [ "$got" != "$sum" ]; then
	echo "$file: its sum is $got, pinned is $sum; remove the file and try again" >&2
	exit 1
fi
echo "$file"
