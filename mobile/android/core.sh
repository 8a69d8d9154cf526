#!/bin/sh
# core.sh ABI OUT: the core's native code for the phone, OUT/libgojni.so, and the binding's Java, build/_phone/ABI/java. Without an NDK:
# Debian's clang and lld, bionic's own headers and start files (bionic/aosp) and symbol-only libraries made from its symbol maps. With NDK=dir: the pinned
# gomobile and that NDK's clang.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
[ -n "${NDK:-}" ] || need clang lld android-liblog-dev android-libnativehelper-dev
export ABI=$1 API=26
out=$2
work=$root/build/_phone/$ABI
export STUBS=$work/stubs
rm -rf "$work"
mkdir -p "$STUBS" "$out" "$root/build/_phone/bin"
cd "$root"
go build -o build/_phone/bin/ ./mobile/android/nativelibs golang.org/x/mobile/cmd/gobind golang.org/x/mobile/cmd/gomobile
GOOS=android CGO_ENABLED=1 build/_phone/bin/gobind -lang=go,java -javapkg=org.readback -outdir="$work" ./mobile
if grep -rn 'skipped' "$work/java/org/readback" "$work/src/gobind" >&2; then
	echo "gobind left out what is named above: mobile.go exports a shape that does not cross" >&2
	exit 1
fi
if [ -n "${NDK:-}" ]; then
	"$here/bind.sh" "$work/core.aar" "$ABI"
	unzip -q -o -j "$work/core.aar" "jni/$ABI/libgojni.so" -d "$out"
	exit
fi
build/_phone/bin/nativelibs stubs -abi "$ABI" -api "$API" "$STUBS"
crt=${AOSP:-$here/bionic/aosp}/libc/arch-common/bionic
"$here/cc" -O2 -fPIC -DPLATFORM_SDK_VERSION="$API" -c "$crt/crtbegin_so.c" -o "$STUBS/crtbegin_so.o"
# The note that says for which API level this was built, as bionic's crtbrand.S writes it; that file includes private headers.
cat >"$STUBS/crtbrand.s" <<EOF
	.section .note.android.ident,"a",%note
	.balign 4
	.long 8
	.long 4
	.long 1
	.ascii "Android\0"
	.long $API
EOF
"$here/cc" -c "$STUBS/crtbrand.s" -o "$STUBS/crtbrand.o"
case $ABI in
arm64-v8a) arch=arm64 ;;
x86_64) arch=amd64 ;;
esac
GOOS=android GOARCH=$arch CGO_ENABLED=1 CC="$here/cc" CGO_CFLAGS=-O2 go build -buildmode=c-shared -trimpath -buildvcs=false -ldflags='-s -w -buildid=' \
	-o "$out/libgojni.so" "./build/_phone/$ABI/src/gobind"
rm -f "$out/libgojni.h"
