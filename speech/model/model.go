// Package model finds, verifies and unpacks the recogniser's library and its English model, and those of the rescorer that gives second
// opinions.
//
// They come as zip files (speech/fetch.sh gets them into the local Maven repository and the user's cache). They are unpacked
// once into the user's cache folder; every file is checked against a pinned SHA-256 when it is unpacked, and again each time before it is
// loaded: a damaged library ends the whole program. That takes a third of a second, beside everything else.
package model

import (
	"archive/zip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"sync/atomic"
)

// Files are the places to load from.
type Files struct {
	Library  string   // shared library of the engine
	Model    string   // folder of the model
	Rescorer Rescorer // zero: not here, readings are heard without a second opinion
}

// Rescorer is where the second opinion is loaded from.
type Rescorer struct {
	Runtime string       // shared library
	Model   string       // folder of the networks
	Rest    *atomic.Bool // true: opinions on readings rest, because the machine is hot or short of memory; nil: never
}

// Error says what is missing or damaged, why that matters and how to get it. Its text is meant for the person.
type Error struct {
	What string // "speech model is missing"
	Fix  string
	Err  error // cause, may be nil
}

func (e *Error) Error() string {
	s := "speech is off: " + e.What
	if e.Err != nil {
		s += " (" + e.Err.Error() + ")"
	}
	return s + ". " + e.Fix
}

func (e *Error) Unwrap() error { return e.Err }

// ErrMissing and ErrDamaged tell the two kinds of Error apart.
var (
	ErrMissing = errors.New("not found")
	ErrDamaged = errors.New("damaged")
)

const howToGet = `Run "make speech" once, with a network, to get it. Touch and keyboard do everything meanwhile.`

// file is one entry of the pinned manifest.
type file struct {
	name string // inside the archive, after its prefix
	size int64
	sum  string // SHA-256, hex
}

type archive struct {
	what, path, sum, prefix, folder string
	cached                          bool // path lies in the cache folder, not in the Maven repository
	files                           []file
}

// The manifests were taken from com.alphacephei:vosk-model-en:0.3.45 (aar) and com.alphacephei:vosk:0.3.45 (jar), both Apache-2.0.
var (
	modelArchive = archive{
		what: "the speech model", path: "com/alphacephei/vosk-model-en/0.3.45/vosk-model-en-0.3.45.aar",
		sum: "8a5792fccaf873b4745dbd1b3fe19d8a77a15898e806674020eea820424771cd", prefix: "assets/model-en-us/", folder: "model",
		files: []file{
			{"am/final.mdl", 15962575, "75370a0137f9daf8f469dedd7daa4513ae7a621f03240c6e512e2b50b656a7b6"},
			{"conf/mfcc.conf", 131, "1e2228006d01d805ad1c267fee9f79709ca87ac51bd82b0e3f5c69ba543f0fc4"},
			{"graph/Gr.fst", 24013795, "023c8b7e30704a9e37765c635c252e608a02f361235bf94abdcf2a5225d85b20"},
			{"graph/HCLr.fst", 22416994, "5caafba3081e1646545ac6bff0dd7a318e53dcbdc86f237909ce1d2ac1293d34"},
			{"graph/disambig_tid.int", 102, "9ad87cc166d0998f08f758f47a6223a120dfffcbee805c4849c3aa5e6bb3c0fc"},
			{"graph/phones/word_boundary.int", 1761, "da199d9c991e0e84681ddbb34627b915b26302d50a8fdaa23c51e2bc3a50b5c3"},
			{"ivector/final.dubm", 168048, "8c5d7dd69d2122313baaf19f61f35dd3fa18b70c62ac0687e311e1c46e6daca7"},
			{"ivector/final.ie", 8288887, "3f37faf90c375b9e4740b569398b5829ed9cc07d19be6d441f72c3b71d7efcc6"},
			{"ivector/final.mat", 44975, "ddd83586dc5f928cda8738b922c85ffe38fc789cb5f9151a712ca12f37265382"},
			{"ivector/global_cmvn.stats", 1080, "33be09afcc80059847a275c3d043b51f1ab954c7c2438ddbbf4745e8ba144ff9"},
			{"ivector/online_cmvn.conf", 95, "a2f3571754b64297cb7efb2e7ca3df61995c5a45fcbb97188f90613552bb2dfe"},
			{"ivector/splice.conf", 35, "9f0c5f7c82d18eaf25d8bce470efa9f7741f88411fe428774bc0a9bb69a24756"},
			{"uuid", 36, "3beb6a171028dd374e7f35dd37553d74d1f1014b6cfe4b8a1a7b93c9a005729e"},
		},
	}
	libraries = map[string]archive{
		"linux/amd64": library("linux-x86-64/", file{"libvosk.so", 25986496, "85c4654de3acdeb99abab86eeb2a6e603927d37089597c0fcc33d8638dc2ccaf"}),
		// From the wheel vosk 0.3.45 for manylinux2014_aarch64, Apache-2.0: the jar has none for arm64.
		"linux/arm64": {
			what: "the speech library", path: "download/vosk-0.3.45-py3-none-manylinux2014_aarch64.whl", cached: true,
			sum: "54efb47dd890e544e9e20f0316413acec7f8680d04ec095c6140ab4e70262704", prefix: "vosk/", folder: "lib",
			files: []file{{"libvosk.so", 7496288, "0e9df29f060a93cf3df3263a4d3635e1b75688a5fd84e86ade1599372e3c9597"}},
		},
		"darwin/amd64": library("darwin/", darwinLibrary),
		"darwin/arm64": library("darwin/", darwinLibrary),
		"windows/amd64": library("win32-x86-64/", file{"libvosk.dll", 26447872, "9331c2f6a32cf77141af27c9750e79532718f51bbc2e3cea3c60f14ca4251e4e"},
			file{"libgcc_s_seh-1.dll", 366907, "201bf8a54ebb490f93ea4beb20740a483bf67036b90b5720f32d0c746a72d1e9"},
			file{"libstdc++-6.dll", 26619146, "a1d96a848a567d7657e152cfe92e2fd62da412968cc11ec8bdb04bf20ebc5747"},
			file{"libwinpthread-1.dll", 606425, "92caeb8a4ea281c674003462a233f3b445b685b0a6f93eb11254feda2dda9cde"}),
	}
	// From the wheel moonshine-voice 0.0.49, MIT.
	judgeArchive = archive{
		what: "the rescorer's model", path: "download/moonshine_voice-0.0.49-py3-none-manylinux_2_34_x86_64.whl", cached: true,
		sum: "03edc378e5236832421ccd382b267e43b95af8008137ad6643f5baf5ba31b579", prefix: "moonshine_voice/assets/tiny-en/", folder: "judge",
		files: []file{
			{"encoder_model.ort", 13281600, "94e90a4654fc45cdfedb77c4c08e1739f48862998e58fada384b25118134f221"},
			{"decoder_model_merged.ort", 30412256, "cf524c4862d36e9e5ab032eddc73637efd822d70e868ac575cf1a46e1e4708a0"},
			{"tokenizer.bin", 249974, "6884b35fd6377d4c4d32336a0bc152f36b64d1e45b6503683cdc238250a8472d"},
		},
	}
	// From com.microsoft.onnxruntime:onnxruntime:1.23.2, MIT.
	runtimes = map[string]archive{
		"linux/amd64": {
			what: "the rescorer's library", path: "com/microsoft/onnxruntime/onnxruntime/1.23.2/onnxruntime-1.23.2.jar",
			sum: "e0ab4a1af57d2da09097202f2dfd691e390c82e81183314788ccde4cf7c3cc38", prefix: "ai/onnxruntime/native/linux-x64/", folder: "lib",
			files: []file{{"libonnxruntime.so", 22326072, "13ab8084954fa4a47c777880180b90810d6020f021441395712b48a75b74c68b"}},
		},
		"linux/arm64": {
			what: "the judge's library", path: "com/microsoft/onnxruntime/onnxruntime/1.23.2/onnxruntime-1.23.2.jar",
			sum: "e0ab4a1af57d2da09097202f2dfd691e390c82e81183314788ccde4cf7c3cc38", prefix: "ai/onnxruntime/native/linux-aarch64/", folder: "lib-arm64",
			files: []file{{"libonnxruntime.so", 18693384, "648ffa64fbe027ae27139109410900cf776a030dec2dbbac51053318cc44c286"}},
		},
	}
	darwinLibrary = file{"libvosk.dylib", 12533472, "82fdfba0dde392a7dbba70f9c1a17f6e3da27a50444a9f53939508525a1e6fdf"}
)

func library(prefix string, files ...file) archive {
	return archive{what: "the speech library", path: "com/alphacephei/vosk/0.3.45/vosk-0.3.45.jar",
		sum: "9e38e96e4448a41d889bb254b2f8424945554945c6e77e1cd97a3d8633fac2ba", prefix: prefix, folder: "lib", files: files}
}

// config replaces the model's own conf/model.conf. The lattice beam is 8 instead of 2, so that rivals stay in the lattice and a wrong
// word is not always certain; a lattice stops growing at 10 MB instead of 50, which only words outside of the grammar reach: they cost 150 to 300 MB
// before. The silence after which the engine would end a saying is 0.25, 0.35 and 0.5 s. It looks at 12 frames at a time
// instead of 20: partial results come a tenth of a second sooner and cost a quarter more computing (6 frames cost twice as much).
const config = `--min-active=200
--max-active=3000
--beam=10.0
--lattice-beam=8.0
--max-mem=10000000
--acoustic-scale=1.0
--frame-subsampling-factor=3
--frames-per-chunk=12
--endpoint.silence-phones=1:2:3:4:5:6:7:8:9:10
--endpoint.rule2.min-trailing-silence=0.25
--endpoint.rule3.min-trailing-silence=0.35
--endpoint.rule4.min-trailing-silence=0.5
`

// Locate returns verified files in the user's own cache, unpacking them from the user's Maven repository when needed.
func Locate() (Files, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		return Files{}, &Error{What: "there is no folder to unpack into", Fix: "Set HOME or XDG_CACHE_HOME.", Err: err}
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return Files{}, &Error{What: "there is no home folder", Fix: "Set HOME.", Err: err}
	}
	return LocateIn(filepath.Join(home, ".m2", "repository"), filepath.Join(cache, "readback"))
}

// LocateIn is Locate with a Maven repository and a cache folder of the caller's choice.
func LocateIn(repository, cache string) (Files, error) {
	lib, ok := libraries[runtime.GOOS+"/"+runtime.GOARCH]
	if !ok {
		return Files{}, &Error{What: "there is no speech library for " + runtime.GOOS + "/" + runtime.GOARCH, Fix: "Use touch and keyboard.", Err: ErrMissing}
	}
	dir, err := lib.ensureIn(repository, cache)
	if err != nil {
		return Files{}, err
	}
	f := Files{Library: filepath.Join(dir, lib.files[0].name)}
	if f.Model, err = modelArchive.ensureIn(repository, cache); err != nil {
		return Files{}, err
	}
	if a, ok := runtimes[runtime.GOOS+"/"+runtime.GOARCH]; ok {
		lib, err1 := a.ensureIn(repository, cache)
		nets, err2 := judgeArchive.ensureIn(repository, cache)
		if err1 == nil && err2 == nil { // else speech works without; "make speech" says why
			f.Rescorer = Rescorer{Runtime: filepath.Join(lib, a.files[0].name), Model: nets}
		}
	}
	return f, ensureConfig(filepath.Join(f.Model, "conf", "model.conf"))
}

func ensureConfig(path string) error {
	if b, err := os.ReadFile(path); err == nil && string(b) == config {
		return nil
	}
	if err := writeFile(path, func(w io.Writer) error { _, err := io.WriteString(w, config); return err }); err != nil {
		return &Error{What: "the model's settings could not be written", Fix: "Free some space.", Err: err}
	}
	return nil
}

// ensureIn leaves every file verified in a folder of the cache, and returns that.
func (a archive) ensureIn(repository, cache string) (string, error) {
	from := repository
	if a.cached {
		from = cache
	}
	dir := filepath.Join(cache, a.sum[:16], a.folder)
	return dir, a.ensure(from, dir)
}

// ensure leaves every file of the archive verified in dir. Files that are right already are kept: an unpacking that was
// cut off goes on where it stopped.
func (a archive) ensure(repository, dir string) error {
	var bad []file
	for _, f := range a.files {
		if sum, err := hashFile(filepath.Join(dir, filepath.FromSlash(f.name))); err != nil || sum != f.sum {
			bad = append(bad, f)
		}
	}
	if bad == nil {
		return nil
	}
	return a.unpack(repository, dir, bad)
}

func (a archive) unpack(repository, dir string, want []file) error {
	path := filepath.Join(repository, filepath.FromSlash(a.path))
	sum, err := hashFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return &Error{What: a.what + " is missing", Fix: howToGet, Err: ErrMissing}
	}
	if err != nil {
		return &Error{What: a.what + " cannot be read", Fix: howToGet, Err: err}
	}
	if sum != a.sum {
		return &Error{What: a.what + " is damaged: " + filepath.Base(path) + " has the wrong checksum",
			Fix: "Delete " + path + ". " + howToGet, Err: ErrDamaged}
	}
	z, err := zip.OpenReader(path)
	if err != nil {
		return &Error{What: a.what + " is damaged", Fix: "Delete " + path + ". " + howToGet, Err: fmt.Errorf("%w: %w", ErrDamaged, err)}
	}
	defer z.Close()
	for _, f := range want {
		to := filepath.Join(dir, filepath.FromSlash(f.name))
		err := writeFile(to, func(w io.Writer) error {
			r, err := z.Open(a.prefix + f.name)
			if err != nil {
				return err
			}
			defer r.Close()
			h := sha256.New()
			if _, err := io.Copy(io.MultiWriter(w, h), r); err != nil {
				return err
			}
			if hex.EncodeToString(h.Sum(nil)) != f.sum {
				return fmt.Errorf("%s in the archive: %w", f.name, ErrDamaged)
			}
			return nil
		})
		if err != nil {
			return &Error{What: a.what + " could not be unpacked", Fix: "About 100 MB of space is needed in " + dir + ".", Err: err}
		}
	}
	return nil
}

// writeFile writes through a temporary file of its own, so that a file under its real name is always whole, also when
// two programs unpack at once.
func writeFile(path string, fill func(io.Writer) error) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	tmp, err := os.CreateTemp(filepath.Dir(path), ".part-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name()) // gone already when renamed
	if err := fill(tmp); err != nil {
		tmp.Close()
		return err
	}
	if err := tmp.Close(); err != nil {
		return err
	}
	if err := os.Chmod(tmp.Name(), 0o644); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), path)
}

func hashFile(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}
