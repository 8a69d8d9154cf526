#!/bin/sh
# The binding's real Java (build/_bind/java) and the core as libgojni.so for this machine (build/_bind/native): made once for the tests
# on a plain JVM, the tests of the shell and the APK. The underscore keeps Go's own tools away.
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/mobile/pins.sh"
need openjdk-17-jdk-headless gcc libc6-dev
work=$root/build/_bind
rm -rf "$work"
mkdir -p "$root/build/bin" "$work/shim"

cd "$root"
env -u GOOS -u GOARCH go build -o build/bin/ golang.org/x/mobile/cmd/gobind golang.org/x/mobile/cmd/gomobile
build/bin/gobind -lang=go,java -javapkg=org.readback -outdir="$work" ./mobile
if grep -rn 'skipped' "$work/java/org/readback" "$work/src/gobind" >&2; then
	echo "gobind left out what is named above: mobile.go exports a shape that does not cross" >&2
	exit 1
fi

# The generated files for Android fit any JVM, but their names say otherwise.
for f in "$work"/src/gobind/*_android.c "$work"/src/gobind/*_android.go; do
	mv "$f" "${f%_android.*}_jvm.${f##*.}"
done
ar rcs "$work/shim/liblog.a"
jdk=$(dirname "$(dirname "$(readlink -f "$(command -v javac)")")")
# The JDK's AttachCurrentThread takes another pointer type than Android's; the support file makes warnings errors.
CGO_ENABLED=1 CGO_LDFLAGS="-L$work/shim" \
	CGO_CFLAGS="-O2 -D__GOBIND_ANDROID__ -Wno-incompatible-pointer-types -I$jdk/include -I$jdk/include/linux -I$root/mobile/jvm/shim/include" \
	go build -buildmode=c-shared -trimpath -buildvcs=false -ldflags='-s -w -buildid=' -o "$work/native/libgojni.so" ./build/_bind/src/gobind
