#!/bin/sh
# Tests the binding on a plain JVM, with the real recogniser. binding.sh comes first. Arguments go to Maven.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
need openjdk-17-jdk-headless maven espeak-ng
work=$root/build/jvm
mkdir -p "$work"
"$root/speech/fetch.sh"
(cd "$root" && go build -o build/jvm/ ./mobile/lab/fakeuser ./mobile/speechfiles)
"$work/speechfiles" >"$work/speech.txt"
cd "$here"
rm -rf "$work/target/surefire-reports"
maven "$work/maven.log" "-Dvosk=$(sed -n 1p "$work/speech.txt")" "-Dmodel=$(sed -n 2p "$work/speech.txt")" "$@" test
echo "jvm: $(cat "$work"/target/surefire-reports/*.txt | awk '/^Tests run:/ { gsub(",", ""); run += $3; bad += $5 + $7; skip += $9 } END { print run " run, " bad " failed, " skip " skipped" }')"
