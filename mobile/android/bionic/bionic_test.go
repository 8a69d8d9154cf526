package bionic

import (
	"bytes"
	"debug/elf"
	"encoding/binary"
	"fmt"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func system(t *testing.T, abi ABI) System {
	t.Helper()
	s, err := newSystem(abi)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The levels are those of Android's own documentation of these functions.
func TestLevels(t *testing.T) {
	for _, c := range []struct {
		lib, name, version string
		api                int
	}{
		{"libc.so", "strlen", "LIBC", 0},
		{"libc.so", "__cxa_thread_atexit_impl", "LIBC", 23},
		{"libc.so", "preadv", "LIBC_N", 24},
		{"libc.so", "catopen", "LIBC_O", 26},
		{"libc.so", "iconv", "LIBC_P", 28},
		{"libc.so", "getloadavg", "LIBC_Q", 29},
		{"libc.so", "memfd_create", "LIBC_R", 30},
		{"libm.so", "cos", "LIBC", 0},
		{"libdl.so", "dlopen", "LIBC", 0},
		{"liblog.so", "__android_log_print", "", 0},
	} {
		for _, abi := range []ABI{ARM64, X86} {
			y, ok := system(t, abi)[c.lib][c.name]
			if !ok || y.Version != c.version || y.API != c.api {
				t.Errorf("%s: %s of %s: %+v, want %s from %d on", abi, c.name, c.lib, y, c.version, c.api)
			}
		}
	}
}

func TestOtherProcessorsAndThePlatformAreLeftOut(t *testing.T) {
	libc := system(t, ARM64)["libc.so"]
	for _, name := range []string{"__atomic_cmpxchg", "__aeabi_memclr", "__system_property_wait_any", "*", ""} {
		if _, ok := libc[name]; ok {
			t.Errorf("%q is offered to an arm64 app", name)
		}
	}
	if !libc["stderr"].Data || libc["strlen"].Data {
		t.Error("stderr is a variable and strlen is none")
	}
}

func TestBadMapsAreRefusedWithTheirLine(t *testing.T) {
	for text, want := range map[string]string{
		"LIBC {\n a;\n":                   "node LIBC does not end",
		" a;\n":                           "line 1: \"a;\" stands outside",
		"LIBC {\n LIBC_N {\n":             "line 2: a node begins inside LIBC",
		"}\n":                             "line 1: a node ends",
		"LIBC {\n what\n};\n":             "line 2: \"what\" is neither",
		"{\n};\n":                         "line 1: a node without a name",
		"LIBC_ZZ {\n global:\n a;\n};\n":  "line 1: nobody knows the API level of LIBC_ZZ",
		"LIBC_M { # introduced=23\n a;\n": "node LIBC_M does not end",
	} {
		if _, err := parse(text, ARM64); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

func FuzzMap(f *testing.F) {
	f.Add("LIBC {\n global:\n a; # introduced=21 arm64\n b; # var\n local:\n *;\n};\n")
	f.Add(libdl)
	f.Fuzz(func(t *testing.T, text string) {
		got, err := parse(text, X86)
		if err != nil {
			return
		}
		for name, y := range got {
			if name != y.Name || name == "" && !strings.Contains(text, ";") {
				t.Errorf("%q is kept as %+v", name, y)
			}
		}
	})
}

func lib(name string, needed, exports, imports, weak []string) *library {
	l := &library{name: name, soname: name, needed: needed, exports: map[string]bool{}, weak: map[string]bool{}}
	for _, e := range exports {
		l.exports[e] = true
	}
	for _, i := range append(imports, weak...) {
		n, v, _ := strings.Cut(i, "@")
		l.imports = append(l.imports, elf.ImportedSymbol{Name: n, Version: v})
	}
	for _, w := range weak {
		l.weak[w] = true
	}
	return l
}

func TestNames(t *testing.T) {
	sys := system(t, ARM64)
	for _, c := range []struct {
		about string
		libs  []*library
		want  []string // of the last library, fatal ones begin with "!"
	}{
		{"all there", []*library{lib("a.so", []string{"libc.so"}, nil, []string{"strlen", "preadv@LIBC_N"}, nil)}, nil},
		{"too new", []*library{lib("a.so", []string{"libc.so"}, nil, []string{"memfd_create"}, nil)}, []string{"!memfd_create is there from API 30 on, the app promises 26"}},
		{"too new but asked for", []*library{lib("a.so", []string{"libc.so"}, nil, nil, []string{"memfd_create"})}, []string{"memfd_create is used where the phone has it, from API 30 on"}},
		{"nowhere", []*library{lib("a.so", []string{"libc.so"}, nil, []string{"gnu_get_libc_version"}, nil)}, []string{"!gnu_get_libc_version is in none of libc.so"}},
		{"not named as needed", []*library{lib("a.so", []string{"libc.so"}, nil, []string{"cosf"}, nil)}, []string{"!cosf is in libm.so, which this library does not name as needed"}},
		{"another version", []*library{lib("a.so", []string{"libc.so"}, nil, []string{"strlen@LIBC_P"}, nil)}, []string{"!strlen is asked for in version LIBC_P, the phone has it in LIBC"}},
		{"a library that no app may have", []*library{lib("a.so", []string{"libutils.so"}, nil, nil, nil)}, []string{"!it needs libutils.so, which is neither"}},
		{"the GNU C library", []*library{lib("a.so", []string{"libc.so.6"}, nil, nil, nil)}, []string{"!it needs libc.so.6"}},
		{"of one loaded before", []*library{lib("a.so", nil, []string{"f"}, nil, nil), lib("b.so", []string{"a.so"}, nil, []string{"f"}, nil)}, nil},
		{"of one loaded after", []*library{lib("b.so", []string{"a.so"}, nil, []string{"f"}, nil)}, []string{"!it needs a.so", "!f is in none of a.so"}},
		{"another name", []*library{{name: "a.so", soname: "b.so"}}, []string{"!it calls itself b.so"}},
	} {
		var got []Finding
		last := c.libs[len(c.libs)-1]
		last.checkNames(sys, 26, c.libs[:len(c.libs)-1], &Imports{}, func(fatal bool, kind, text string, args ...any) {
			got = append(got, Finding{Fatal: fatal, Kind: kind, Text: fmt.Sprintf(text, args...)})
		})
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %q", c.about, got, c.want)
			continue
		}
		for i, w := range c.want {
			if got[i].Fatal != strings.HasPrefix(w, "!") || !strings.HasPrefix(got[i].Text, strings.TrimPrefix(w, "!")) {
				t.Errorf("%s: %+v, want %q", c.about, got[i], w)
			}
		}
	}
}

// image writes a shared library with these program headers and dynamic entries and nothing else.
func image(machine elf.Machine, progs []elf.ProgHeader, dyn [][2]uint64) []byte {
	const head, ph, sh = 64, 56, 64
	dynAt := uint64(head + ph*len(progs))
	strAt := dynAt + uint64(16*(len(dyn)+1))
	strs := "\x00.dynamic\x00.dynstr\x00.shstrtab\x00"
	shAt := (strAt + uint64(len(strs)) + 7) &^ 7
	var b bytes.Buffer
	le := binary.LittleEndian
	put := func(v any) { _ = binary.Write(&b, le, v) } // into memory
	put(elf.Header64{Ident: [16]byte{0x7f, 'E', 'L', 'F', 2, 1, 1}, Type: uint16(elf.ET_DYN), Machine: uint16(machine), Version: 1,
		Phoff: head, Shoff: shAt, Ehsize: head, Phentsize: ph, Phnum: uint16(len(progs)), Shentsize: sh, Shnum: 4, Shstrndx: 3})
	for _, p := range progs {
		put(elf.Prog64{Type: uint32(p.Type), Flags: uint32(p.Flags), Off: p.Off, Vaddr: p.Vaddr, Filesz: p.Filesz, Memsz: p.Memsz, Align: p.Align})
	}
	for _, d := range append(slices.Clone(dyn), [2]uint64{}) {
		put(d)
	}
	b.WriteString(strs)
	b.Write(make([]byte, shAt-uint64(b.Len())))
	put(elf.Section64{})
	put(elf.Section64{Name: 1, Type: uint32(elf.SHT_DYNAMIC), Off: dynAt, Size: uint64(16 * (len(dyn) + 1)), Link: 2, Entsize: 16})
	put(elf.Section64{Name: 10, Type: uint32(elf.SHT_STRTAB), Off: strAt, Size: uint64(len(strs))})
	put(elf.Section64{Name: 18, Type: uint32(elf.SHT_STRTAB), Off: strAt, Size: uint64(len(strs))})
	return b.Bytes()
}

func TestShapes(t *testing.T) {
	code := elf.ProgHeader{Type: elf.PT_LOAD, Flags: elf.PF_R | elf.PF_X, Vaddr: 0, Memsz: 0x1000, Align: 0x4000}
	data := elf.ProgHeader{Type: elf.PT_LOAD, Flags: elf.PF_R | elf.PF_W, Off: 0x10, Vaddr: 0x8010, Memsz: 0x1000, Align: 0x4000}
	stack := elf.ProgHeader{Type: elf.PT_GNU_STACK, Flags: elf.PF_R | elf.PF_W}
	hash := [2]uint64{uint64(elf.DT_HASH), 1}
	with := func(p elf.ProgHeader, change func(*elf.ProgHeader)) elf.ProgHeader { change(&p); return p }
	for _, c := range []struct {
		about   string
		machine elf.Machine
		progs   []elf.ProgHeader
		dyn     [][2]uint64
		want    string // kinds of the fatal ones
	}{
		{"as it must be", elf.EM_AARCH64, []elf.ProgHeader{code, data, stack}, [][2]uint64{hash}, ""},
		{"another processor", elf.EM_X86_64, []elf.ProgHeader{code, stack}, [][2]uint64{hash}, "format"},
		{"4 KB pages", elf.EM_AARCH64, []elf.ProgHeader{with(code, func(p *elf.ProgHeader) { p.Align = 0x1000 }), stack}, [][2]uint64{hash}, "page"},
		{"askew", elf.EM_AARCH64, []elf.ProgHeader{with(data, func(p *elf.ProgHeader) { p.Vaddr = 0x9010 }), stack}, [][2]uint64{hash}, "page"},
		{"written and run", elf.EM_AARCH64, []elf.ProgHeader{with(code, func(p *elf.ProgHeader) { p.Flags |= elf.PF_W }), stack}, [][2]uint64{hash}, "text"},
		{"a stack that runs", elf.EM_AARCH64, []elf.ProgHeader{code, with(stack, func(p *elf.ProgHeader) { p.Flags |= elf.PF_X })}, [][2]uint64{hash}, "stack"},
		{"no word of the stack", elf.EM_AARCH64, []elf.ProgHeader{code}, [][2]uint64{hash}, "stack"},
		{"thread variables", elf.EM_AARCH64, []elf.ProgHeader{code, stack, {Type: elf.PT_TLS}}, [][2]uint64{hash}, "tls"},
		{"thread variables at a fixed place", elf.EM_AARCH64, []elf.ProgHeader{code, stack}, [][2]uint64{hash, {uint64(elf.DT_FLAGS), uint64(elf.DF_STATIC_TLS)}}, "tls"},
		{"changed code, by flag", elf.EM_AARCH64, []elf.ProgHeader{code, stack}, [][2]uint64{hash, {uint64(elf.DT_FLAGS), uint64(elf.DF_TEXTREL)}}, "text"},
		{"changed code, by entry", elf.EM_AARCH64, []elf.ProgHeader{code, stack}, [][2]uint64{hash, {uint64(elf.DT_TEXTREL), 0}}, "text"},
		{"no table of names", elf.EM_AARCH64, []elf.ProgHeader{code, stack}, nil, "format"},
		{"relocations packed in the new way", elf.EM_AARCH64, []elf.ProgHeader{code, stack}, [][2]uint64{hash, {uint64(dtRelr), 1}}, "format"},
	} {
		l, err := read("a.so", image(c.machine, c.progs, c.dyn))
		if err != nil {
			t.Errorf("%s: %v", c.about, err)
			continue
		}
		var got []string
		l.checkShape(ARM64, 26, func(fatal bool, kind, text string, args ...any) {
			if fatal {
				got = append(got, kind)
			}
		})
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %q", c.about, got, c.want)
		}
	}
}

func FuzzLibrary(f *testing.F) {
	f.Add(image(elf.EM_AARCH64, []elf.ProgHeader{{Type: elf.PT_LOAD, Align: 0x4000}}, [][2]uint64{{uint64(elf.DT_HASH), 1}}))
	sys, err := newSystem(ARM64)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		l, err := read("a.so", raw)
		if err != nil {
			return
		}
		check(sys, ARM64, 26, []*library{l})
	})
}

// TestStubs links a library against the symbol-only ones and finds in it what was linked.
func TestStubs(t *testing.T) {
	if _, err := exec.LookPath("ld.lld"); err != nil {
		t.Skip("linking for Android needs Debian's clang and lld; make apk installs them")
	}
	for _, abi := range []ABI{ARM64, X86} {
		dir := t.TempDir()
		if err := Stub(dir, abi, 26, "clang"); err != nil {
			t.Fatal(err)
		}
		build := func(name, call string) (string, error) {
			out := filepath.Join(dir, name)
			cmd := exec.Command("clang", "--target="+abi.Target(26), "-nostdlib", "-fuse-ld=lld", "-shared", "-fPIC", "-ffreestanding", "-xc", "-", "-o", out,
				"-Wl,-soname,"+name, "-Wl,-z,max-page-size=16384", "-Wl,--hash-style=both", "-Wl,-z,defs", "-L"+dir, "-lc")
			cmd.Stdin = strings.NewReader("int " + call + "(void); int f(void) { return " + call + "(); }")
			msg, err := cmd.CombinedOutput()
			if err != nil {
				return string(msg), err
			}
			return out, nil
		}
		if msg, err := build("libnew.so", "memfd_create"); err == nil || !strings.Contains(msg, "memfd_create") {
			t.Errorf("%s: what API 26 does not have was linked: %s", abi, msg)
		}
		out, err := build("libold.so", "preadv")
		if err != nil {
			t.Fatalf("%s: %s", abi, out)
		}
		found, n, err := Check(abi, 26, out)
		if err != nil || n.Names != 1 {
			t.Fatalf("%s: %v, %d imports, %v", abi, found, n.Names, err)
		}
		for _, f := range found {
			if f.Fatal {
				t.Errorf("%s: %v", abi, f)
			}
		}
		if found, _, _ = Check(abi, 23, out); !slices.ContainsFunc(found, func(f Finding) bool { return f.Kind == "unresolved" && strings.Contains(f.Text, "preadv") }) {
			t.Errorf("%s: preadv, new in 24, is not missed at 23: %v", abi, found)
		}
		if names, err := Exports(out); err != nil || !slices.Equal(names, []string{"f"}) {
			t.Errorf("%s: exports %v, %v", abi, names, err)
		}
	}
}
