package bionic

import (
	"bytes"
	"debug/elf"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Page is the largest memory page a phone of today has, in bytes (Android's own page on page sizes): parts of a library that are loaded must lie on its
// boundaries.
const Page = 16 << 10

// Finding is what is wrong with a library, or, where it is not Fatal, worth knowing.
type Finding struct {
	Library string
	Fatal   bool
	Kind    string // "unresolved", "weak", "version", "needed", "page", "text", "tls", "stack", "format", "name"
	Text    string
}

func (f Finding) String() string {
	if f.Fatal {
		return fmt.Sprintf("%s: %s: %s", f.Library, f.Kind, f.Text)
	}
	return fmt.Sprintf("%s: note: %s", f.Library, f.Text)
}

// Imports is how many names were looked at.
type Imports struct{ Names, Weak int }

// Library is what Check needs of one.
type library struct {
	name    string
	soname  string
	needed  []string
	exports map[string]bool
	imports []elf.ImportedSymbol
	weak    map[string]bool
	file    *elf.File
}

func open(path string) (*library, error) {
	raw, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("bionic: %w", err)
	}
	return read(filepath.Base(path), raw)
}

func read(name string, raw []byte) (*library, error) {
	f, err := elf.NewFile(bytes.NewReader(raw))
	if err != nil {
		return nil, fmt.Errorf("bionic: %s: %w", name, err)
	}
	l := &library{name: name, file: f, exports: map[string]bool{}, weak: map[string]bool{}}
	if l.needed, err = f.ImportedLibraries(); err != nil {
		return nil, fmt.Errorf("bionic: %s: %w", name, err)
	}
	if names, err := f.DynString(elf.DT_SONAME); err == nil && len(names) == 1 {
		l.soname = names[0]
	}
	symbols, err := f.DynamicSymbols()
	if err != nil && !errors.Is(err, elf.ErrNoSymbols) {
		return nil, fmt.Errorf("bionic: %s: %w", name, err)
	}
	for _, y := range symbols {
		switch {
		case y.Name == "":
		case y.Section != elf.SHN_UNDEF:
			l.exports[y.Name] = true
		default:
			if elf.ST_BIND(y.Info) == elf.STB_WEAK {
				l.weak[y.Name] = true
			}
			l.imports = append(l.imports, elf.ImportedSymbol{Name: y.Name, Version: y.Version, Library: y.Library})
		}
	}
	return l, nil
}

// Exports are the names a library offers.
func Exports(path string) ([]string, error) {
	l, err := open(path)
	if err != nil {
		return nil, err
	}
	var out []string
	for n := range l.exports {
		out = append(out, n)
	}
	slices.Sort(out)
	return out, nil
}

// Check tells what keeps libraries from loading on a phone of an ABI at an API level, in the order in which the app loads them.
func Check(abi ABI, api int, paths ...string) ([]Finding, Imports, error) {
	sys, err := newSystem(abi)
	if err != nil {
		return nil, Imports{}, err
	}
	var all []*library
	for _, p := range paths {
		l, err := open(p)
		if err != nil {
			return nil, Imports{}, err
		}
		all = append(all, l)
	}
	out, n := check(sys, abi, api, all)
	return out, n, nil
}

func check(sys System, abi ABI, api int, all []*library) ([]Finding, Imports) {
	var out []Finding
	var n Imports
	for i, l := range all {
		say := func(fatal bool, kind, text string, args ...any) {
			out = append(out, Finding{l.name, fatal, kind, fmt.Sprintf(text, args...)})
		}
		l.checkNames(sys, api, all[:i], &n, say)
		l.checkShape(abi, api, say)
	}
	return out, n
}

type sayer func(fatal bool, kind, text string, args ...any)

// checkNames looks every imported name up in the libraries that this one says it needs.
func (l *library) checkNames(sys System, api int, loaded []*library, n *Imports, say sayer) {
	if l.soname != "" && l.soname != l.name {
		say(true, "name", "it calls itself %s", l.soname)
	}
	offered := map[string][]string{} // name to the libraries that have it
	for _, need := range l.needed {
		if own := slices.IndexFunc(loaded, func(o *library) bool { return o.name == need }); own >= 0 {
			for name := range loaded[own].exports {
				offered[name] = append(offered[name], need)
			}
			continue
		}
		if sys[need] == nil {
			say(true, "needed", "it needs %s, which is neither one of the phone's libraries for apps nor loaded before it", need)
		}
	}
	for _, im := range l.imports {
		n.Names++
		weak := l.weak[im.Name]
		if weak {
			n.Weak++
		}
		if offered[im.Name] != nil {
			continue
		}
		found, later, foreign := false, 0, ""
		for lib, names := range sys {
			y, ok := names[im.Name]
			switch {
			case !ok:
			case !slices.Contains(l.needed, lib):
				foreign = lib
			case y.API > api:
				later = y.API
			default:
				found = true
				if im.Version != "" && y.Version != "" && im.Version != y.Version {
					say(true, "version", "%s is asked for in version %s, the phone has it in %s", im.Name, im.Version, y.Version)
				}
			}
		}
		switch {
		case found:
		case later != 0 && weak:
			say(false, "weak", "%s is used where the phone has it, from API %d on", im.Name, later)
		case weak:
			say(false, "weak", "%s is used where somebody has it; no phone does", im.Name)
		case later != 0:
			say(true, "unresolved", "%s is there from API %d on, the app promises %d", im.Name, later, api)
		case foreign != "":
			say(true, "unresolved", "%s is in %s, which this library does not name as needed", im.Name, foreign)
		default:
			say(true, "unresolved", "%s is in none of %s", im.Name, strings.Join(l.needed, " "))
		}
	}
}

// Tags and flags that debug/elf has no names for.
const (
	dtRelr         = elf.DynTag(36)
	dtAndroidRel   = elf.DynTag(0x6000000f)
	dtAndroidRela  = elf.DynTag(0x60000011)
	dtAndroidRelr  = elf.DynTag(0x6fffe000)
	relrSince      = 30 // DT_RELR, bionic's own notes on its linker: "SHT_RELR ... API level 30"; DT_ANDROID_RELR from 28
	androidRelr    = 28
	gnuHashSince   = 23
	androidPacked  = 23
	elfTLSSince    = 29 // bionic's notes on ELF TLS
	staticTLSFlag  = uint64(elf.DF_STATIC_TLS)
	textRelocation = uint64(elf.DF_TEXTREL)
)

// checkShape looks at how the library is laid out.
func (l *library) checkShape(abi ABI, api int, say sayer) {
	f := l.file
	machine := elf.EM_AARCH64
	if abi == X86 {
		machine = elf.EM_X86_64
	}
	if f.Machine != machine || f.Class != elf.ELFCLASS64 || f.Type != elf.ET_DYN || f.Data != elf.ELFDATA2LSB {
		say(true, "format", "it is %v %v %v, not a shared library for %s", f.Class, f.Machine, f.Type, abi)
		return
	}
	tls, ident, stack := false, false, false
	for _, p := range f.Progs {
		switch p.Type {
		case elf.PT_LOAD:
			if p.Align < Page || p.Align&(p.Align-1) != 0 || p.Off%p.Align != p.Vaddr%p.Align {
				say(true, "page", "the part at %#x is laid out for pages of %#x bytes; %#x are wanted", p.Vaddr, p.Align, Page)
			}
			if p.Flags&elf.PF_W != 0 && p.Flags&elf.PF_X != 0 {
				say(true, "text", "the part at %#x can be written and run", p.Vaddr)
			}
		case elf.PT_TLS:
			tls = true
		case elf.PT_GNU_STACK:
			stack = true
			if p.Flags&elf.PF_X != 0 {
				say(true, "stack", "it wants a stack that can be run")
			}
		case elf.PT_NOTE:
			if raw, err := readAll(p); err == nil && bytes.Contains(raw, []byte("Android\x00")) {
				ident = true
				k := bytes.Index(raw, []byte("Android\x00"))
				if k+12 <= len(raw) {
					if built := binary.LittleEndian.Uint32(raw[k+8:]); int(built) > api {
						say(true, "version", "it was built for API %d and later, the app promises %d", built, api)
					}
				}
			}
		}
	}
	if !stack {
		say(true, "stack", "it does not say that its stack is never run")
	}
	if !ident {
		say(false, "format", "it has no note that it was built for Android")
	}
	if tls && api < elfTLSSince {
		say(true, "tls", "it has thread variables of the ELF kind, which phones know from API %d on", elfTLSSince)
	}
	values := func(tag elf.DynTag) []uint64 { v, _ := f.DynValue(tag); return v } // no such entry is no value
	for _, v := range values(elf.DT_FLAGS) {
		if v&textRelocation != 0 {
			say(true, "text", "its code is changed when it is loaded (text relocations)")
		}
		if v&staticTLSFlag != 0 {
			say(true, "tls", "it wants thread variables at a fixed place, which a library loaded later cannot have")
		}
	}
	if len(values(elf.DT_TEXTREL)) > 0 {
		say(true, "text", "its code is changed when it is loaded (text relocations)")
	}
	if len(values(elf.DT_HASH)) == 0 && (len(values(elf.DT_GNU_HASH)) == 0 || api < gnuHashSince) {
		say(true, "format", "it has no table of its names that API %d can read", api)
	}
	for _, t := range []struct {
		tag   elf.DynTag
		since int
	}{{dtRelr, relrSince}, {dtAndroidRelr, androidRelr}, {dtAndroidRel, androidPacked}, {dtAndroidRela, androidPacked}} {
		if len(values(t.tag)) > 0 && api < t.since {
			say(true, "format", "its relocations are packed in a way that phones know from API %d on", t.since)
		}
	}
	l.checkRelocations(abi, say)
}

func readAll(p *elf.Prog) ([]byte, error) {
	b := make([]byte, min(p.Filesz, 4096))
	_, err := p.ReadAt(b, 0)
	return b, err
}

// checkRelocations looks at each change that loading makes: none may be inside of code, and none may be of the kinds that need a thread variable at a fixed
// place.
func (l *library) checkRelocations(abi ABI, say sayer) {
	f := l.file
	inText := 0
	fixed := 0
	for _, s := range f.Sections {
		if s.Type != elf.SHT_RELA || s.Flags&elf.SHF_ALLOC == 0 {
			continue
		}
		raw, err := s.Data()
		if err != nil {
			say(true, "format", "its relocations cannot be read: %v", err)
			return
		}
		for ; len(raw) >= 24; raw = raw[24:] {
			at, info := f.ByteOrder.Uint64(raw), f.ByteOrder.Uint64(raw[8:])
			kind := uint32(info)
			if abi == ARM64 && elf.R_AARCH64(kind) == elf.R_AARCH64_TLS_TPREL64 || abi == X86 && elf.R_X86_64(kind) == elf.R_X86_64_TPOFF64 {
				fixed++
			}
			for _, p := range f.Progs {
				if p.Type == elf.PT_LOAD && p.Flags&elf.PF_W == 0 && at >= p.Vaddr && at < p.Vaddr+p.Memsz {
					inText++
				}
			}
		}
	}
	if inText > 0 {
		say(true, "text", "%d relocations are in parts that cannot be written", inText)
	}
	if fixed > 0 {
		say(true, "tls", "%d relocations want thread variables at a fixed place", fixed)
	}
}
