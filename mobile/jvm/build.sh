#!/bin/sh
# build.sh -lib JAVA_OUT NATIVE_OUT: the binding's real Java and the core as libgojni.so for this machine.
# build.sh [maven arguments]: that, then the tests of the binding on a plain JVM.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"

lib() { # JAVA_OUT NATIVE_OUT
	need openjdk-17-jdk-headless gcc libc6-dev
	gen=$root/_gen
	gobind "$gen"
	# The generated files for Android fit any JVM, but their names say otherwise.
	for f in "$gen"/src/gobind/*_android.c "$gen"/src/gobind/*_android.go; do
		mv "$f" "${f%_android.*}_jvm.${f##*.}"
	done
	mkdir -p "$2" "$1/java" "$root/build/jvm/shim"
	ar rcs "$root/build/jvm/shim/liblog.a"
	jdk=$(dirname "$(dirname "$(readlink -f "$(command -v javac)")")")
	# The JDK's AttachCurrentThread takes another pointer type than Android's; the support file makes warnings errors.
	(cd "$root" && CGO_ENABLED=1 CGO_LDFLAGS="-L$root/build/jvm/shim" \
		CGO_CFLAGS="-O2 -D__GOBIND_ANDROID__ -Wno-incompatible-pointer-types -I$jdk/include -I$jdk/include/linux -I$here/shim/include" \
		go build -buildmode=c-shared -trimpath -buildvcs=false -ldflags='-s -w -buildid=' -o "$2/libgojni.so" ./_gen/src/gobind)
	rm -rf "$1/java"
	cp -R "$gen/java" "$1/java"
}

if [ "${1:-}" = -lib ]; then
	lib "$2" "$3"
	exit 0
fi
need maven espeak-ng
work=$root/build/jvm
lib "$work/gobind" "$work/native"
"$root/speech/fetch.sh"
(cd "$root" && go build -o build/jvm/ ./mobile/jvm/person ./mobile/speechfiles)
"$work/speechfiles" >"$work/speech.txt"
cd "$here"
rm -rf "$work/target/surefire-reports"
maven "-Dvosk=$(sed -n 1p "$work/speech.txt")" "-Dmodel=$(sed -n 2p "$work/speech.txt")" "$@" test
echo "jvm: $(cat "$work"/target/surefire-reports/*.txt | awk '/^Tests run:/ { gsub(",", ""); run += $3; bad += $5 + $7; skip += $9 } END { print run " run, " bad " failed, " skip " skipped" }')"
