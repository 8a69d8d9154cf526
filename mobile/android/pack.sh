#!/bin/sh
# Builds, signs and checks the APK. binding.sh comes first. Same sources, same key: the same bytes.
#
#   NDK=dir            an Android NDK: adds the core's native code (arm64) through the pinned gomobile
#   VOSK_ANDROID=dir   a folder with the recogniser's libvosk.so for arm64: adds it and the model
#   ONNX_ANDROID=dir   a folder with the judge's libonnxruntime.so for arm64: adds it and its networks; only beside VOSK_ANDROID
#   KEYSTORE=file KEYPASS=word   a PKCS 12 key to sign with; else one made once and kept in the cache
#   OUT=dir            where to (build/apk)
#
# Without NDK the APK carries no native code: it is good for checking the packing, says so in its name, here and on its first
# screen, and runs no job.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
need aapt zipalign apksigner zip unzip openjdk-17-jdk-headless maven

out=${OUT:-$root/build/apk}
cache=${XDG_CACHE_HOME:-$HOME/.cache}/readback
work=$out/work
rm -rf "$work"
mkdir -p "$work/gen" "$work/cls" "$work/dex" "$work/assets" "$work/native/lib/arm64-v8a" "$cache"
export TZ=UTC LC_ALL=C

A34=$(android34) A35=$(android35) R8=$(r8)

# 1. The binding's native code when there is an NDK. Its Java is there.
name=readback
if [ -n "${NDK:-}" ]; then
	"$here/bind.sh" "$work/core.aar"
	unzip -q -o "$work/core.aar" 'jni/arm64-v8a/libgojni.so' -d "$work/aar"
	mv "$work/aar/jni/arm64-v8a/libgojni.so" "$work/native/lib/arm64-v8a/"
else
	name=$name-no-native-code
fi
cp -R "$here/assets/." "$work/assets/"
if [ -n "${VOSK_ANDROID:-}" ]; then
	[ -f "$VOSK_ANDROID/libvosk.so" ] || { echo "VOSK_ANDROID=$VOSK_ANDROID holds no libvosk.so" >&2; exit 1; }
	cp "$VOSK_ANDROID/libvosk.so" "$work/native/lib/arm64-v8a/"
	# The model as the speech layer uses it: verified, with its own search settings.
	"$root/speech/fetch.sh"
	(cd "$root" && go build -o build/bin/ ./mobile/speechfiles)
	cp -RL "$("$root/build/bin/speechfiles" | sed -n 2p)" "$work/assets/model"
	if [ -n "${ONNX_ANDROID:-}" ]; then
		[ -f "$ONNX_ANDROID/libonnxruntime.so" ] || { echo "ONNX_ANDROID=$ONNX_ANDROID holds no libonnxruntime.so" >&2; exit 1; }
		nets=$("$root/build/bin/speechfiles" | sed -n 3p)
		[ -n "$nets" ] || { echo "the judge's networks are not here: make speech" >&2; exit 1; }
		cp "$ONNX_ANDROID/libonnxruntime.so" "$work/native/lib/arm64-v8a/"
		cp -RL "$nets" "$work/assets/model/judge"
	fi
	find "$work/assets/model" -name '.*' -type f -delete # notes of the cache; aapt leaves such names out
	(cd "$work/assets/model" && find . -type f | sed 's,^\./,,' | sort | while read -r f; do
		echo "$(sha256sum "$f" | cut -d' ' -f1) $(stat -c %s "$f") $f"; done >"$work/model.list" && mv "$work/model.list" model.list)
elif [ -n "${NDK:-}" ]; then
	name=$name-no-speech
fi
apk=$out/$name.apk

# 2. Resources, with the two pseudo-locales; classes; dex. Debian's aapt sorts its entries and dates them all the same.
aapt package -f -m -J "$work/gen" -M "$here/AndroidManifest.xml" -S "$here/res" -A "$work/assets" -I "$A34" --pseudo-localize -F "$work/base.apk" >/dev/null
find "$here/src" "$work/gen" "$root/build/_bind/java" -name '*.java' | sort >"$work/sources"
javac -Xlint:-options -nowarn --release 17 -cp "$A35" -d "$work/cls" @"$work/sources" 2>"$work/javac.log" || { cat "$work/javac.log" >&2; exit 1; }
find "$work/cls" -name '*.class' | sort >"$work/classes"
java -cp "$R8" com.android.tools.r8.D8 --release --min-api 26 --lib "$A35" --output "$work/dex" @"$work/classes"

# 3. Pack. Every entry gets the same date; libraries are stored, so that they can be mapped, on 16 KB boundaries.
cp "$work/base.apk" "$work/u.apk"
find "$work/dex" "$work/native" -exec touch -d '2020-01-01T00:00:00Z' {} +
(cd "$work/dex" && zip -q -X "$work/u.apk" classes.dex)
libs=$(cd "$work/native" && find lib -name '*.so' | sort)
if [ -n "$libs" ]; then
	for f in $libs; do
		readelf -lW "$work/native/$f" | awk '/LOAD/ && $NF != "0x4000" && $NF != "0x10000" { bad = 1 } END { exit bad }' ||
			{ echo "$f: not built for 16 KB pages" >&2; exit 1; }
	done
	# shellcheck disable=SC2086
	(cd "$work/native" && zip -q -0 -X "$work/u.apk" $libs)
fi
zipalign -f 16384 "$work/u.apk" "$work/a.apk"

# 4. Sign. The key made here is for trying out only; whoever gives the app to others signs with a key of their own.
ks=${KEYSTORE:-$cache/trial-key.p12}
pass=${KEYPASS:-readback}
if [ ! -f "$ks" ]; then
	keytool -genkeypair -keystore "$ks" -storetype PKCS12 -storepass "$pass" -alias readback -keyalg RSA -keysize 3072 \
		-sigalg SHA256withRSA -validity 10000 -dname 'CN=Readback trial' >/dev/null 2>&1
fi
rm -f "$out"/*.apk "$out"/*.idsig
apksigner sign --ks "$ks" --ks-pass "pass:$pass" --min-sdk-version 26 --v1-signing-enabled false --v4-signing-enabled false --out "$apk" "$work/a.apk"

# 5. Check what was made, not what was meant.
apksigner verify --min-sdk-version 26 "$apk"
zipalign -c 16384 "$apk"
"$here/permissions.sh" "$apk"
if [ -f "$work/assets/model/model.list" ]; then
	unzip -Z1 "$apk" >"$work/entries"
	cut -d' ' -f3- "$work/assets/model/model.list" | while read -r f; do
		grep -qxF "assets/model/$f" "$work/entries" || { echo "$apk lacks $f of the model" >&2; exit 1; }
	done
fi
echo "$apk: $(stat -c %s "$apk") bytes, sha256 $(sha256sum "$apk" | cut -d' ' -f1)"
case $name in
*no-native-code*) echo "WITHOUT NATIVE CODE: this APK shows one page that says so and runs no job. Set NDK (and VOSK_ANDROID) for one that does." ;;
*no-speech*) echo "WITHOUT THE RECOGNISER: touch only. Set VOSK_ANDROID for speech." ;;
esac
