#!/bin/sh
# Gets the recogniser's library and its English model (Apache-2.0, 41 MB and 90 MB) from Maven Central into the local Maven
# repository, once, and checks them against pinned sums. Then the judge that gives second opinions on readings in noise: ONNX Runtime from Maven
# Central and the small English Moonshine network in a wheel of the Python registry (both MIT, 75 MB and 85 MB). Speech works without
# the judge, so that one is let go with a word when it cannot be had. Needs no network when all are there and right.
set -eu
here=$(dirname "$0")
repository=${HOME}/.m2/repository/com/alphacephei
model=$repository/vosk-model-en/0.3.45/vosk-model-en-0.3.45.aar
library=$repository/vosk/0.3.45/vosk-0.3.45.jar
model_sum=8a5792fccaf873b4745dbd1b3fe19d8a77a15898e806674020eea820424771cd
library_sum=9e38e96e4448a41d889bb254b2f8424945554945c6e77e1cd97a3d8633fac2ba

runtime=${HOME}/.m2/repository/com/microsoft/onnxruntime/onnxruntime/1.23.2/onnxruntime-1.23.2.jar
runtime_sum=e0ab4a1af57d2da09097202f2dfd691e390c82e81183314788ccde4cf7c3cc38
download=${XDG_CACHE_HOME:-$HOME/.cache}/readback/download
wheel=$download/moonshine_voice-0.0.49-py3-none-manylinux_2_34_x86_64.whl
wheel_sum=03edc378e5236832421ccd382b267e43b95af8008137ad6643f5baf5ba31b579

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

# Every step may fail, so nothing here relies on "set -e".
judge() {
	right "$wheel" "$wheel_sum" && right "$runtime" "$runtime_sum" && return 0
	(fetch "$runtime" "$runtime_sum" com.microsoft.onnxruntime:onnxruntime:1.23.2) && right "$runtime" "$runtime_sum" || return 1
	right "$wheel" "$wheel_sum" && return 0
	python3 -m pip --version >/dev/null 2>&1 || "$here/../.ci/need" python3-pip || return 1
	echo "Fetching moonshine-voice 0.0.49 from the Python registry"
	mkdir -p "$download" && rm -f "$wheel" || return 1
	wanted=$(mktemp) || return 1
	echo "moonshine-voice==0.0.49 --hash=sha256:$wheel_sum" >"$wanted"
	python3 -m pip download -q --disable-pip-version-check --no-deps --only-binary=:all: --platform manylinux_2_34_x86_64 \
		--require-hashes -r "$wanted" -d "$download"
	rm -f "$wanted"
	right "$wheel" "$wheel_sum"
}
[ "$(uname -sm)" != "Linux x86_64" ] || judge || echo "The judge of readings could not be had: more of them will be asked about."
