#!/bin/sh
# pack.sh [trial|release] [ABI]: builds, signs and checks an APK for one kind of processor: arm64-v8a (phones) or x86_64 (emulators).
# Same sources, same key: the same bytes.
#
# trial      the whole phone from pinned downloads: native core, recogniser (arm64 only), ONNX Runtime, model, networks. Its name, icon, version and about
#            page say trial: the recogniser is one person's build that nothing here can be compared with.
# release    takes no library of another hand: VOSK_ANDROID and KEYSTORE are wanted, NDK is advised, without ONNX_ANDROID there is no second engine
#
#   VOSK_ANDROID=dir   a folder with one's own build of the recogniser's libvosk.so
#   ONNX_ANDROID=dir   a folder with one's own libonnxruntime.so
#   NDK=dir            links the core with this Android NDK instead of Debian's clang
#   KEYSTORE=file KEYPASS=word   a PKCS 12 key to sign with; the trial's is made once and kept in the cache
#   OUT=dir            where to (build/apk)
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
kind=${1:-trial}
abi=${2:-arm64-v8a}
api=26
fail() { echo "pack.sh: $*" >&2; exit 1; }
case $abi in arm64-v8a | x86_64) ;; *) fail "no ABI $abi; there are arm64-v8a and x86_64" ;; esac
case $kind in
trial) ;;
release)
	[ -n "${VOSK_ANDROID:-}" ] || fail "a release wants a recogniser of your own build: set VOSK_ANDROID to the folder with its libvosk.so for $abi. Without one: make apk, a trial"
	[ -n "${KEYSTORE:-}" ] || fail "a release is signed with a key of your own: set KEYSTORE (PKCS 12) and KEYPASS"
	;;
*) fail "neither trial nor release: $kind" ;;
esac
[ -z "${VOSK_ANDROID:-}" ] || [ -f "$VOSK_ANDROID/libvosk.so" ] || fail "VOSK_ANDROID=$VOSK_ANDROID holds no libvosk.so"
[ -z "${ONNX_ANDROID:-}" ] || [ -f "$ONNX_ANDROID/libonnxruntime.so" ] || fail "ONNX_ANDROID=$ONNX_ANDROID holds no libonnxruntime.so"
if [ "$kind" = release ] && [ "$(sha256sum "$VOSK_ANDROID/libvosk.so" | cut -d' ' -f1)" = "$vosk_trial_sum" ]; then
	fail "$VOSK_ANDROID/libvosk.so is the trial's recogniser; a release wants your own build"
fi
need aapt zipalign apksigner dexdump zip unzip openjdk-17-jdk-headless maven binutils

out=${OUT:-$root/build/apk}
cache=${XDG_CACHE_HOME:-$HOME/.cache}/readback
work=$out/work-$abi
libs=$work/native/lib/$abi
rm -rf "$work"
mkdir -p "$work/gen" "$work/cls" "$work/dex" "$work/assets" "$libs" "$work/aar" "$cache"
export TZ=UTC LC_ALL=C

A34=$(android34) A35=$(android35) R8=$(r8)

# 1. Native code, in the order in which the app loads it: core, recogniser, judge.
"$here/core.sh" "$abi" "$libs"
loaded=libgojni.so
cp -R "$here/assets/." "$work/assets/"
if [ -n "${VOSK_ANDROID:-}" ]; then
	cp "$VOSK_ANDROID/libvosk.so" "$libs/"
elif [ "$abi" = arm64-v8a ]; then
	unzip -q -j -o "$(vosk_trial)" vosk_termux/lib/libvosk.so -d "$libs"
	[ "$(sha256sum "$libs/libvosk.so" | cut -d' ' -f1)" = "$vosk_trial_sum" ] || fail "libvosk.so in the wheel is not the pinned one"
fi
name=readback-$kind-$abi
if [ -f "$libs/libvosk.so" ]; then
	loaded="$loaded libvosk.so"
	# The model as the speech layer uses it: verified, with its own search settings.
	"$root/speech/fetch.sh"
	(cd "$root" && go build -o build/_phone/bin/ ./mobile/speechfiles)
	"$root/build/_phone/bin/speechfiles" >"$work/speech.txt"
	cp -RL "$(sed -n 2p "$work/speech.txt")" "$work/assets/model"
	if [ -n "${ONNX_ANDROID:-}" ]; then
		cp "$ONNX_ANDROID/libonnxruntime.so" "$libs/"
	elif [ "$kind" = trial ]; then
		tar xzf "$(onnx_android)" -C "$work/aar" package/Plugins/Android/onnxruntime.aar
		unzip -q -j -o "$work/aar/package/Plugins/Android/onnxruntime.aar" "jni/$abi/libonnxruntime.so" -d "$libs"
		rm -r "$work/aar"
	fi
	if [ -f "$libs/libonnxruntime.so" ]; then
		loaded="$loaded libonnxruntime.so"
		nets=$(sed -n 3p "$work/speech.txt")
		[ -n "$nets" ] || fail "the judge's networks are not here: make speech"
		cp -RL "$nets" "$work/assets/model/judge"
	fi
	find "$work/assets/model" -name '.*' -type f -delete # notes of the cache; aapt leaves such names out
	(cd "$work/assets/model" && find . -type f | sed 's,^\./,,' | sort | while read -r f; do
		echo "$(sha256sum "$f" | cut -d' ' -f1) $(stat -c %s "$f") $f"; done >"$work/model.list" && mv "$work/model.list" model.list)
else
	name=$name-no-speech
fi
apk=$out/$name.apk

# What is to be loaded is looked at as the phone's own loader would; a missing function is named.
# shellcheck disable=SC2086
(cd "$libs" && "$root/build/_phone/bin/nativelibs" check -abi "$abi" -api "$api" $loaded) >"$work/native.txt" || { cat "$work/native.txt" >&2; exit 1; }

# 2. Resources, with the two pseudo-locales; classes; dex. Debian's aapt sorts its entries and dates them all the same.
version=$(sed -n 's/.*android:versionName="\([^"]*\)".*/\1/p' "$here/AndroidManifest.xml")
set -- -S "$here/res"
if [ "$kind" = trial ]; then
	version=$version-trial
	set -- -S "$here/trial/res" "$@"
fi
aapt package -f -m -J "$work/gen" -M "$here/AndroidManifest.xml" --version-name "$version" --replace-version "$@" -A "$work/assets" -I "$A34" --pseudo-localize -F "$work/base.apk" >/dev/null
find "$here/src" "$work/gen" "$root/build/_phone/$abi/java" -name '*.java' | sort >"$work/sources"
javac -Xlint:-options -nowarn --release 17 -cp "$A35" -d "$work/cls" @"$work/sources" 2>"$work/javac.log" || { cat "$work/javac.log" >&2; exit 1; }
find "$work/cls" -name '*.class' | sort >"$work/classes"
java -cp "$R8" com.android.tools.r8.D8 --release --min-api "$api" --lib "$A35" --output "$work/dex" @"$work/classes"
dexdump "$work/dex/classes.dex" >"$work/dex.txt"
"$root/build/_phone/bin/nativelibs" jni "$libs/libgojni.so" "$work/dex.txt" >>"$work/native.txt"

# 3. Pack. Every entry gets the same date; libraries are stored, so that they can be mapped, on 16 KB boundaries.
cp "$work/base.apk" "$work/u.apk"
find "$work/dex" "$work/native" -exec touch -d '2020-01-01T00:00:00Z' {} +
(cd "$work/dex" && zip -q -X "$work/u.apk" classes.dex)
for f in $loaded; do
	readelf -lW "$libs/$f" | awk '/LOAD/ && $NF != "0x4000" && $NF != "0x10000" { bad = 1 } END { exit bad }' || fail "$f: not built for 16 KB pages"
	(cd "$work/native" && zip -q -0 -X "$work/u.apk" "lib/$abi/$f")
done
zipalign -f 16384 "$work/u.apk" "$work/a.apk"

# 4. Sign. The key made here is for trying out only.
ks=${KEYSTORE:-$cache/trial-key.p12}
pass=${KEYPASS:-readback}
if [ ! -f "$ks" ]; then
	[ "$kind" = trial ] || fail "KEYSTORE=$ks is not there"
	keytool -genkeypair -keystore "$ks" -storetype PKCS12 -storepass "$pass" -alias readback -keyalg RSA -keysize 3072 \
		-sigalg SHA256withRSA -validity 10000 -dname 'CN=Readback trial' >/dev/null 2>&1
fi
rm -f "$apk" "$apk.idsig"
apksigner sign --ks "$ks" --ks-pass "pass:$pass" --min-sdk-version "$api" --v1-signing-enabled false --v4-signing-enabled false --out "$apk" "$work/a.apk"

# 5. Check what was made, not what was meant.
apksigner verify --min-sdk-version "$api" "$apk"
zipalign -c 16384 "$apk"
"$here/permissions.sh" "$apk"
unzip -Z1 "$apk" >"$work/entries"
for f in $loaded; do grep -qx "lib/$abi/$f" "$work/entries" || fail "$apk lacks $f"; done
if [ -f "$work/assets/model/model.list" ]; then
	cut -d' ' -f3- "$work/assets/model/model.list" | while read -r f; do
		grep -qxF "assets/model/$f" "$work/entries" || fail "$apk lacks $f of the model"
	done
fi
label=$(aapt dump badging "$apk" | sed -n "s/^application-label:'\(.*\)'/\1/p")
case $kind in
trial) [ "$label" != "${label%trial*}" ] || fail "$apk is a trial and its name does not say so: $label" ;;
release) [ "$label" = "${label%trial*}" ] || fail "$apk is a release and calls itself $label" ;;
esac
cat "$work/native.txt"
# Each part as it lies in the APK.
unzip -v "$apk" | awk -v total="$(stat -c %s "$apk")" '
	function part(f) {
		if (f ~ /libgojni/) return "core"
		if (f ~ /libvosk/) return "recogniser"
		if (f ~ /libonnxruntime/) return "second engine"
		if (f ~ /^assets\/model\/judge/) return "networks of the second engine"
		if (f ~ /^assets\/model/) return "model"
		return "shell"
	}
	$1 ~ /^[0-9]+$/ && NF >= 8 { size[part($8)] += $3; sum += $3 }
	END { n = split("core,recogniser,second engine,model,networks of the second engine,shell", order, ",")
		for (i = 1; i <= n; i++) if (size[order[i]]) printf "size: %-30s %7.2f MB\n", order[i], size[order[i]] / 1e6
		printf "size: %-30s %7.2f MB\n", "alignment, signature, names", (total - sum) / 1e6
		printf "size: %-30s %7.2f MB\n", "whole", total / 1e6 }' | tee "$work/sizes.txt"
echo "$label $version, $abi, API $api and later: $apk: $(stat -c %s "$apk") bytes, sha256 $(sha256sum "$apk" | cut -d' ' -f1)"
[ -f "$libs/libvosk.so" ] || echo "WITHOUT THE RECOGNISER: nobody offers one for $abi; this APK works by touch only. Set VOSK_ANDROID for speech."
[ -n "${NDK:-}" ] || [ "$kind" = trial ] || echo "The core was linked by Debian's clang against AOSP's headers and maps; with NDK= it is linked by Android's own tools."
