#!/bin/sh
# bind.sh OUT.aar [ABI]: the core's native code for the phone, by the pinned gomobile and the NDK named by NDK.
# bind.sh -n: prints every step of that instead, and needs no NDK: proves the command line.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
out=$1
case ${2:-arm64-v8a} in x86_64) target=android/amd64 ;; *) target=android/arm64 ;; esac
mkdir -p "$root/build/_phone/bin"
(cd "$root" && go build -o build/_phone/bin/ golang.org/x/mobile/cmd/gobind golang.org/x/mobile/cmd/gomobile)
# gomobile wants a platform folder with an android.jar.
sdk=$(mktemp -d)
trap 'rm -rf "$sdk"' EXIT
mkdir -p "$sdk/platforms/android-35"
dry=
if [ "$out" = -n ]; then
	dry=-n out=build/core.aar
	: >"$sdk/platforms/android-35/android.jar"
	NDK=${NDK:-$sdk/ndk}
	mkdir -p "$NDK"
else
	# The framework jar has no java.*; gomobile compiles with a boot class path, so the JDK's is put in beside it.
	jar=$sdk/platforms/android-35/android.jar
	cp "$(android35)" "$jar"
	jmods=$(dirname "$(dirname "$(readlink -f "$(command -v javac)")")")/jmods
	for m in java.base java.logging; do jmod extract --dir "$sdk/$m" "$jmods/$m.jmod"; done
	for m in java.base java.logging; do (cd "$sdk/$m/classes" && zip -q -1 -r "$jar" java); done
fi
cd "$root"
# Never "gomobile init": it would install the newest gobind beside the pinned one. 16 KB pages are asked for explicitly: not
# every NDK does it by itself.
export PATH="$root/build/_phone/bin:$PATH" ANDROID_HOME="$sdk" ANDROID_NDK_HOME="$NDK" CGO_ENABLED=1
gomobile bind $dry -target=$target -androidapi 26 -javapkg=org.readback -trimpath \
	-ldflags='-s -w -buildid= -extldflags=-Wl,-z,max-page-size=16384' -o "$out" ./mobile
