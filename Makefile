# Two commands do all the set-up on a fresh machine with Go: make run and make test.
.DEFAULT_GOAL := help
SHELL := /bin/sh
export GOTOOLCHAIN := local
export CGO_ENABLED := 0

NEED   := ./.ci/need
BIN    := build/readback
GO_SRC := $(shell git ls-files -co --exclude-standard '*.go' '*.hcl' 'mobile/page/*' 2>/dev/null)

.PHONY: help
help: ## lists the targets
	@grep -E '^[a-z0-9-]+:.*## ' Makefile | sed -E 's/:.*## /\t/' | expand -t 12

.PHONY: speech
speech: ## fetches the recogniser and its model once, checked against pinned sums
	@./speech/fetch.sh

.PHONY: run
run: voice speech $(BIN) ## starts the assistant on this computer
	$(BIN)

.PHONY: voice
voice:
	@$(NEED) espeak-ng

# The loudspeaker is reached through C (ALSA), the only place beside the phone where C is compiled.
$(BIN): $(GO_SRC) go.mod go.sum
	@$(NEED) gcc libc6-dev pkg-config libasound2-dev
	CGO_ENABLED=1 go build -tags sound -trimpath -ldflags='-s -w' -o $@ ./mobile/desktop

.PHONY: tools
tools: speech
	@$(NEED) espeak-ng flite ngspice chromium gcc libc6-dev pkg-config libasound2-dev

.PHONY: test
test: tools ## runs every test
	go test -timeout 12m ./...
	CGO_ENABLED=1 go test -tags sound ./mobile/desktop/sound

.PHONY: demo
demo: tools $(BIN) ## plays a whole job without a person: synthesised speech, real recogniser, simulated furnace
	$(BIN) demo -out build/demo

.PHONY: check
check: tools ## format, vet, staticcheck, race detector
	@test -z "$$(gofmt -l core flows speech mobile)" || { gofmt -l core flows speech mobile; exit 1; }
	go vet ./...
	go tool staticcheck ./...
	CGO_ENABLED=1 go tool staticcheck -tags sound ./mobile/desktop/...
	CGO_ENABLED=1 go test -race -short -timeout 20m ./core/... ./flows/... ./speech/... ./mobile/app/...

.PHONY: prove
prove: ## proves the safety invariants over every reachable state of every equipment file
	go test -count=1 -v -run 'Proof|EquipmentFiles|Mutants|OneWrongAnswer' ./core/worksite ./core/job ./core/plan

# The phone's targets run beside each other where only they are asked for; each tells what it did when it is through.
ifeq ($(filter-out jvm shelltest apk page,$(MAKECMDGOALS)),)
ifneq ($(word 2,$(MAKECMDGOALS)),)
MAKEFLAGS += -j2 -Otarget
endif
endif

.PHONY: binding
binding:
	./mobile/binding.sh

.PHONY: jvm
jvm: speech binding ## tests the phone binding on a plain JVM: generated Java, real recogniser, a spoken job
	./mobile/jvm/test.sh

.PHONY: shelltest
shelltest: speech binding ## tests the Android shell on the real framework code, API 34 and 35
	./mobile/android/test.sh

.PHONY: apk
apk: ## builds a trial APK for a phone: everything in it, native code without an NDK; NDK= links with one
	./mobile/android/pack.sh trial arm64-v8a
	./mobile/android/bind.sh -n > build/apk/bind-steps.txt

.PHONY: apk-x86
apk-x86: ## the trial APK for an emulator on a PC: by touch only, nobody offers the recogniser for it
	./mobile/android/pack.sh trial x86_64

.PHONY: release
release: ## an APK to give away: wants VOSK_ANDROID= (your own build), KEYSTORE= KEYPASS=; takes NDK=, ONNX_ANDROID=
	./mobile/android/pack.sh release arm64-v8a

.PHONY: arm64
arm64: speech voice ## runs the core, the recogniser and the second engine for arm64 under emulation, beside this machine's own
	./mobile/arm64.sh

.PHONY: page
page: tools ## whole jobs in a real browser: by voice, touch and keyboard, pictures of twelve states
	@./mobile/lab/pagetest/fetch-axe.sh
	PAGE=all go test -count=1 -timeout 20m -v ./mobile/lab/pagetest

.PHONY: hear
hear: tools ## measures hearing per voice and noise level into build/hear.tsv
	@mkdir -p build
	FIGURES=$(CURDIR)/build/hear-figures.tsv FIGURES_COMMAND='make hear' go test -run '^TestFigures$$' -count=1 -timeout 30m -v ./speech/lab/hearbench/...

.PHONY: peers
peers: ## reads drawn meters with ssocr and tesseract, and codes with zbar, beside this program's own reading
	@$(NEED) ssocr tesseract-ocr zbar-tools
	PEERS=1 go test -run '^TestPeers$$' -count=1 -timeout 20m -v ./core/camera ./mobile/codes

.PHONY: net
net: ## trains the display reader's network from nothing (about ten minutes)
	go run ./core/lab/trainreader -o core/camera/net.bin -digits testdata/camera/lcd-digits.zip -meters 3000 -epochs 8

.PHONY: fit
fit: tools ## fits how sure a reading is on the tuning half; its weights belong into speech/listen/sure.go
	HEAR_FIT=60 go test -run '^TestFit$$' -count=1 -timeout 30m -v ./speech/lab/hearbench

.PHONY: figures
figures: export FIGURES = $(CURDIR)/build/figures.raw
figures: tools $(BIN) ## measures every figure into build/figures.tsv
	@./mobile/lab/pagetest/fetch-axe.sh
	@mkdir -p build && rm -f build/figures.raw
	-go test -run '^TestFigures$$' -count=1 -p 1 -timeout 120m ./...
	-@.ci/minutes test.minutes 10 env -u FIGURES $(MAKE) --no-print-directory test GOFLAGS=-count=1
	-@.ci/minutes phone.minutes 6 env -u FIGURES $(MAKE) --no-print-directory jvm shelltest apk page
	@{ printf 'name\tvalue\tunit\ttarget\tmet\tn\tcommand\n'; sort build/figures.raw; } > build/figures.tsv
	@cut -f1-6 build/figures.tsv | expand -t 36,52,62,76,82

# Bounded: ten minutes a parser, some forty for the figures, two hours of jobs. What is done is not done again; SOAK="-fuzz 1m -run 10m" makes it short.
.PHONY: soak
soak: tools ## hours of fuzzing, power cuts, kills, faults and jobs by voice; goes on where it was stopped
	go run ./mobile/lab/soak -state build/soak $(SOAK)

.PHONY: fuzz
fuzz: ## fuzzes every parser, 20 s each
	@go list ./... | while read -r p; do go test -list '^Fuzz' "$$p" | grep '^Fuzz' | while read -r f; do \
		echo "$$p $$f"; go test -run '^$$' -fuzz "^$$f\$$" -fuzztime 20s "$$p" || exit 1; done || exit 1; done

.PHONY: clean
clean: ## removes what was built here (downloads stay cached)
	rm -rf build bin
