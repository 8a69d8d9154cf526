#!/bin/sh
# Gets the recogniser's library and its English model (Apache-2.0, 41 MB and 90 MB) from Maven Central into the local Maven
# repository, once, and checks them against pinned sums. Needs no network when both are there and right.
set -eu
here=$(dirname "$0")
repository=${HOME}/.m2/repository/com/alphacephei
model=$repository/vosk-model-en/0.3.45/vosk-model-en-0.3.45.aar
library=$repository/vosk/0.3.45/vosk-0.3.45.jar
model_sum=8a5792fccaf873b4745dbd1b3fe19d8a77a15898e806674020eea820424771cd
library_sum=9e38e96e4448a41d889bb254b2f8424945554945c6e77e1cd97a3d8633fac2ba

right() { # file sum
	[ -f "$1" ] && echo "$2  $1" | sha256sum -c --status 2>/dev/null
}

fetch() { # file sum coordinates
	right "$1" "$2" && return 0
	if ! command -v mvn >/dev/null 2>&1; then
		"$here/../.ci/need" maven
	fi
	echo "Fetching $3 from Maven Central"
	rm -f "$1" # a damaged one would be kept
	# The repository is named, because Maven takes the home of the password file where HOME says another.
	mvn -q -B -Dmaven.repo.local="$HOME/.m2/repository" org.apache.maven.plugins:maven-dependency-plugin:3.6.1:get -Dtransitive=false -Dartifact="$3"
	right "$1" "$2" || { echo "$1: wrong checksum after download; delete it and try again" >&2; exit 1; }
}

fetch "$model" "$model_sum" com.alphacephei:vosk-model-en:0.3.45:aar
fetch "$library" "$library_sum" com.alphacephei:vosk:0.3.45
