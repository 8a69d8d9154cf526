# Sourced by the scripts here. Pinned tools and libraries of the phone builds, and what all of them need.
# Set root before sourcing. Nothing of this is committed; Maven, Debian and Go keep it in their own caches.
set -eu
need() { "$root/.ci/need" "$@"; }
fetch() { "$root/mobile/fetch.sh" "$@"; }

r8() { fetch com.android.tools:r8:8.5.35 4733945987ee0a840fafc34080b135259e01678412e07212b23f706334290294; }
# Resources are compiled against 34: the older resource compiler of Debian cannot read the table of 35.
android34() { fetch org.robolectric:android-all:14-robolectric-10818077 6be2218c6a53fe3c57bc22ebdc723edcb7270a8a6f187545708aa5c0ed813977; }
android35() { fetch org.robolectric:android-all:15-robolectric-13954326 e17105f6c432357e6bb278a527f8e848d01fc56ccee01be77725bea23d871990; }
run34() { fetch org.robolectric:android-all-instrumented:14-robolectric-10818077-i7 3fdac2d463f431c6b8d83b9d0ca739e795de75fffedee648c6761bd4bd864701; }
run35() { fetch org.robolectric:android-all-instrumented:15-robolectric-12650502-i7 33c2d7cc4186d4605269d5d411fa1818972c5b30a9f70bfbbd3d430b076af52f; }
monitor() { fetch androidx.test:monitor:1.7.2:aar 868cc120d10d024b886fa157e1e1eaee0e6a8e5d55e7f765ef41d8fc0fea775b; }
tracing() { fetch androidx.tracing:tracing:1.1.0:aar 5b78e2c618fc10b3d14decc01df76158f15954ad746aacf0607766721da081f6; }
idling() { fetch androidx.test.espresso:espresso-idling-resource:3.6.1:aar bc63a8780f1c707724e389f530cb2e1a6847da97f6a8114604c002aba2fd86ca; }

# The trial APK's recogniser for arm64: one person's build (Apache-2.0) that nothing here can be compared with. Only make apk uses it; a release wants
# VOSK_ANDROID=, a build of one's own.
vosk_trial() { fetch pypi:vosk-termux:0.0.2:vosk_termux-0.0.2-py3-none-any.whl 404a780fab9847116482f64e1be8aa5db53fd11a45d44e03ed492552c5a2765a; }
vosk_trial_sum=06965ebb4e5eb3a9e4a815755e178d9553392e3fe8d3d368ac46952ad3694173
# ONNX Runtime 1.29.0 for Android (MIT), arm64 and x86_64, repackaged.
onnx_android() { fetch npm:com.github.asus4.onnxruntime:0.4.9 e59788788818fdde1b2e522e766a21ba0f7d8391de55737abf81e32cc801785d; }
# What make arm64 runs: the makers' own build of the recogniser for arm64 with the GNU C library (Apache-2.0). The jar with the judge's is fetched by speech/fetch.sh.
vosk_arm64() { fetch pypi:vosk:0.3.45:vosk-0.3.45-py3-none-manylinux2014_aarch64.whl 54efb47dd890e544e9e20f0316413acec7f8680d04ec095c6140ab4e70262704; }

# maven LOG ...: quiet, and without the network once everything is there.
maven() {
	log=$1
	shift
	mvn -q -B -o "$@" >"$log" 2>&1 && return 0
	if grep -q 'offline mode' "$log"; then
		mvn -q -B "$@" >"$log" 2>&1 && return 0
	fi
	cat "$log" >&2
	return 1
}
