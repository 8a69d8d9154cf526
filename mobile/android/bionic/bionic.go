// Package bionic knows Android's C library without having it: its symbol maps say which functions each API level has. From them it writes
// the symbol-only libraries that the phone's native code is linked against (Stub), and it checks that a built library will load (Check).
//
// The maps, headers and start files in the folder aosp are AOSP's own (aosp/README.md, aosp/NOTICE). The maps of liblog and libandroid are not part of
// bionic; those two lists are short and written down here.
package bionic

import (
	"bufio"
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

//go:embed aosp/libc/libc.map.txt
var libc string

//go:embed aosp/libm/libm.map.txt
var libm string

//go:embed aosp/libdl/libdl.map.txt
var libdl string

// Functions of liblog and libandroid that an app may call, from the headers of Debian's android-liblog-dev (log.h) and, for libandroid, from memory: only the names
// that the libraries of this project import. A wrong name here shows as an unresolved one or as a failed load on the first phone.
const liblog = `
LIBLOG {
  global:
    __android_log_assert;
    __android_log_buf_print;
    __android_log_buf_write;
    __android_log_is_loggable; # introduced=30
    __android_log_print;
    __android_log_vprint;
    __android_log_write;
};
`

const libandroid = `
LIBANDROID {
  global:
    AAssetManager_fromJava;
};
`

// ABI is a kind of processor as an APK names it.
type ABI string

// The kinds of processor this project builds for.
const (
	ARM64 ABI = "arm64-v8a"
	X86   ABI = "x86_64"
)

// tag is the ABI's name in a symbol map.
func (a ABI) tag() string {
	if a == X86 {
		return "x86_64"
	}
	return "arm64"
}

// Target is clang's name of the ABI at an API level.
func (a ABI) Target(api int) string {
	arch := "aarch64"
	if a == X86 {
		arch = "x86_64"
	}
	return fmt.Sprintf("%s-linux-android%d", arch, api)
}

// Symbol is one name that a system library offers from an API level on.
type Symbol struct {
	Name    string
	Version string // version node such as LIBC_O; "" where the library has none
	API     int    // first API level; 0: always
	Data    bool   // a variable
}

// System is what the phone's own libraries offer to an app of one ABI, by library ("libc.so") and name. Whatever an API level is too low for is there too:
// its Symbol says from which on.
type System map[string]map[string]Symbol

// Names of the system libraries in the order in which they are written.
var Names = []string{"libc.so", "libm.so", "libdl.so", "liblog.so", "libandroid.so"}

// newSystem reads the maps for an ABI.
func newSystem(abi ABI) (System, error) {
	s := System{}
	for i, text := range []string{libc, libm, libdl, liblog, libandroid} {
		symbols, err := parse(text, abi)
		if err != nil {
			return nil, fmt.Errorf("bionic: the map of %s: %w", Names[i], err)
		}
		if i > 2 { // these two have no versions in the apps' eyes
			for n, y := range symbols {
				y.Version = ""
				symbols[n] = y
			}
		}
		s[Names[i]] = symbols
	}
	return s, nil
}

// parse reads a symbol map: version nodes with one name a line and tags after a "#". A name for other processors only, and one that only
// the platform itself may use, is left out.
func parse(text string, abi ABI) (map[string]Symbol, error) {
	out := map[string]Symbol{}
	in := bufio.NewScanner(strings.NewReader(text))
	node, local, nodeAPI, hidden := "", false, 0, false
	for n := 1; in.Scan(); n++ {
		code, comment, _ := strings.Cut(in.Text(), "#")
		code = strings.TrimSpace(code)
		tags := strings.Fields(comment)
		switch {
		case code == "":
		case strings.HasSuffix(code, "{"):
			if node != "" {
				return nil, fmt.Errorf("line %d: a node begins inside %s", n, node)
			}
			node, local = strings.TrimSpace(strings.TrimSuffix(code, "{")), false
			nodeAPI = introduced(tags, abi)
			hidden = strings.HasSuffix(node, "_PRIVATE") || strings.HasSuffix(node, "_PLATFORM") || strings.HasSuffix(node, "_DEPRECATED") ||
				slices.Contains(tags, "platform-only")
			if node == "" {
				return nil, fmt.Errorf("line %d: a node without a name", n)
			}
			if strings.HasPrefix(node, "LIBC_") && nodeAPI == 0 && !hidden { // LIBC_O carries no tag: from its name
				if nodeAPI = letters[strings.TrimPrefix(node, "LIBC_")]; nodeAPI == 0 {
					return nil, fmt.Errorf("line %d: nobody knows the API level of %s", n, node)
				}
			}
		case strings.HasPrefix(code, "}"):
			if node == "" {
				return nil, fmt.Errorf("line %d: a node ends that did not begin", n)
			}
			node = ""
		case code == "global:":
			local = false
		case code == "local:":
			local = true
		case strings.HasSuffix(code, ";"):
			if node == "" {
				return nil, fmt.Errorf("line %d: %q stands outside of a node", n, code)
			}
			name := strings.TrimSuffix(code, ";")
			if local || hidden || name == "*" || !applies(tags, abi) {
				continue
			}
			api := nodeAPI
			if own := introduced(tags, abi); own != 0 {
				api = own
			}
			out[name] = Symbol{Name: name, Version: node, API: api, Data: slices.Contains(tags, "var")}
		default:
			return nil, fmt.Errorf("line %d: %q is neither a node nor a name", n, code)
		}
	}
	if node != "" {
		return nil, fmt.Errorf("node %s does not end", node)
	}
	return out, in.Err()
}

// letters are the API levels of the version nodes, from the nodes of libc that carry a tag and android/api-level.h.
var letters = map[string]int{"N": 24, "O": 26, "P": 28, "Q": 29, "R": 30, "S": 31, "T": 33, "U": 34, "V": 35, "36": 36, "37": 37}

var arches = []string{"arm", "arm64", "riscv64", "x86", "x86_64"}

// applies tells whether a name with these tags is there for an app of the ABI.
func applies(tags []string, abi ABI) bool {
	some, mine := false, false
	for _, t := range tags {
		if t == "platform-only" {
			return false
		}
		if slices.Contains(arches, t) {
			some = true
			mine = mine || t == abi.tag()
		}
	}
	return !some || mine
}

// introduced is the API level of the tags, 0 where they tell none; one for the ABI wins.
func introduced(tags []string, abi ABI) int {
	api := 0
	for _, t := range tags {
		key, value, ok := strings.Cut(t, "=")
		if !ok || key != "introduced" && key != "introduced-"+abi.tag() {
			continue
		}
		n, err := strconv.Atoi(value)
		if err != nil {
			n = letters[value]
		}
		if key != "introduced" {
			return n
		}
		api = n
	}
	return api
}
