#!/bin/sh
# Tests the shell on the real framework code, API 34 and 35: with the APK's own manifest, resources and assets, and with the real core
# in the same process. binding.sh comes first. Arguments go to Maven, such as -Dtest=NAME.
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/mobile/pins.sh"
need aapt zip unzip openjdk-17-jdk-headless maven

work=$root/build/shell
mkdir -p "$work/gen" "$work/sdks" "$work/aar" "$work/testres/com/android/tools"

A34=$(android34)
android35 >/dev/null
for jar in "$(run34)" "$(run35)"; do ln -sf "$jar" "$work/sdks/"; done
for a in monitor tracing idling; do
	mkdir -p "$work/aar/$a"
	unzip -q -o "$($a)" classes.jar -d "$work/aar/$a"
done

# The trial APK's resources as Robolectric reads them.
aapt package -f -m -J "$work/gen" -M "$here/AndroidManifest.xml" -S "$here/trial/res" -S "$here/res" -A "$here/assets" -I "$A34" --pseudo-localize -F "$work/resources.apk" >/dev/null
cat >"$work/testres/com/android/tools/test_config.properties" <<EOF
android_merged_manifest=$here/AndroidManifest.xml
android_merged_resources=$here/res
android_merged_assets=$here/assets
android_resource_apk=$work/resources.apk
android_custom_package=org.readback.shell
EOF
cd "$here"
rm -rf "$work/target/surefire-reports"
maven "$work/maven.log" "$@" test
echo "shelltest: $(cat "$work"/target/surefire-reports/*.txt | awk '/^Tests run:/ { gsub(",", ""); run += $3; bad += $5 + $7; skip += $9 } END { print run " run, " bad " failed, " skip " skipped" }')"
