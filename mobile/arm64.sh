#!/bin/sh
# The core, the recogniser and the second engine for arm64, really run: under user-mode emulation with Debian's arm64 C library, the makers' own arm64
# builds of the same versions, and beside them this machine's own. The same sound must lead to the same decisions, and a spoken job to its right end.
#
# Then the trial's recogniser itself, built for Android's C library, behind a thin loader (lab/bionicrun): it must hear the same words at the same times.
#
#   CLIPS=n   how many spoken phrases (24; emulated, each takes about 25 s of one core)
#   JOB=fault which job is led (stat-mode.cool; about ten minutes emulated), JOB= leads none
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/mobile/pins.sh"
need qemu-user libc6-arm64-cross libstdc++6-arm64-cross libgcc-s1-arm64-cross libatomic1-arm64-cross gcc-aarch64-linux-gnu libc6-dev-arm64-cross gcc libc6-dev unzip espeak-ng flite
clips=${CLIPS:-24}
job=${JOB-stat-mode.cool}
"$root/speech/fetch.sh"
vosk_arm64 >/dev/null
work=$root/build/arm64
mkdir -p "$work"
cd "$root"
go build -o "$work/here" ./mobile/lab/twoarch
GOOS=linux GOARCH=arm64 go build -o "$work/there" ./mobile/lab/twoarch
cd "$work"
there() { nice -n 10 qemu-aarch64 -L /usr/aarch64-linux-gnu ./there "$@" 2>there.err; }
./here load
there load
./here clips clips.gob "$clips"
rm -f here-*.txt there-*.txt
for part in 0 1; do
	./here hear clips.gob "$part" 2 >"here-$part.txt"
	{ there hear clips.gob "$part" 2 >"there-$part.txt" || touch "there-$part.failed"; } &
done
wait
for part in 0 1; do [ ! -f "there-$part.failed" ] || { rm there-*.failed; tail -3 there.err >&2; exit 1; }; done
cat here-0.txt here-1.txt >here.txt
cat there-0.txt there-1.txt >there.txt
./here differ here.txt there.txt
if [ -n "$job" ]; then
	rm -rf here-job there-job
	./here job here-job "$job" >here-job.txt
	there job there-job "$job" >there-job.txt || { tail -3 there.err >&2; exit 1; }
	if cmp -s here-job.txt there-job.txt; then echo "job: the same conversation, $(grep -c . here-job.txt) lines"; else
		echo "job: conversations differ:"
		diff here-job.txt there-job.txt | head -20
	fi
	echo "job here: $(tail -1 here-job.txt)"
	echo "job there: $(tail -1 there-job.txt)"
	grep -q '^end	ended	fixed	' there-job.txt || exit 1
fi

# The trial's own recogniser. The loader hands it the GNU C library's functions, so this proves its code, not that a phone loads it.
cc=$root/mobile/lab/bionicrun/run.c
gcc -O1 -o bionicrun-here "$cc" -ldl
aarch64-linux-gnu-gcc -O1 -DLOADER -o bionicrun-there "$cc" -ldl
unzip -q -o -j "$(vosk_trial)" vosk_termux/lib/libvosk.so -d trial
./here say "one hundred twenty three point four" >said.pcm
phrases='["one hundred twenty three point four", "two hundred forty volts", "one hundred twenty point four", "[unk]"]'
./here files >files.txt
model=$(sed -n 2p files.txt)
./bionicrun-here "$(sed -n 1p files.txt)" "$model" "$phrases" said.pcm >said-here.txt 2>/dev/null
nice -n 10 qemu-aarch64 -L /usr/aarch64-linux-gnu ./bionicrun-there trial/libvosk.so "$model" "$phrases" said.pcm >said-there.txt 2>there.err || { tail -3 there.err >&2; exit 1; }
for side in here there; do grep -vE '"confidence"' "said-$side.txt" >"words-$side.txt"; done
grep -q '"text" : "one hundred twenty three point four"' words-there.txt || { echo "the trial's recogniser heard something else" >&2; exit 1; }
cmp words-here.txt words-there.txt
echo "trial recogniser: the same words at the same times; costs here and there: $(grep -o 'confidence" : [0-9.]*' said-here.txt | sed 's/.* //' | tr '\n' ' ')/ $(grep -o 'confidence" : [0-9.]*' said-there.txt | sed 's/.* //' | tr '\n' ' ')"
