package bionic

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Stub writes the symbol-only system libraries of an ABI at an API level into dir: every name that level has, with its version, and no
// code. The command cc links them; it is clang.
func Stub(dir string, abi ABI, api int, cc string) error {
	s, err := newSystem(abi)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("bionic: %w", err)
	}
	for _, lib := range Names {
		source, script := Source(s[lib], api)
		base := filepath.Join(dir, strings.TrimSuffix(lib, ".so"))
		if err := os.WriteFile(base+".s", []byte(source), 0o644); err != nil {
			return fmt.Errorf("bionic: %w", err)
		}
		args := []string{"--target=" + abi.Target(api), "-nostdlib", "-fuse-ld=lld", "-shared", "-Wl,--build-id=none", "-Wl,-soname," + lib, "-o", base + ".so", base + ".s"}
		if script != "" {
			if err := os.WriteFile(base+".map", []byte(script), 0o644); err != nil {
				return fmt.Errorf("bionic: %w", err)
			}
			args = append(args, "-Wl,--version-script="+base+".map")
		}
		if out, err := exec.Command(cc, args...).CombinedOutput(); err != nil {
			return fmt.Errorf("bionic: linking %s: %w: %s", lib, err, out)
		}
	}
	return nil
}

// Source is the assembly of a symbol-only library and its version script; that is empty where the library has no versions.
func Source(symbols map[string]Symbol, api int) (source, script string) {
	var asm strings.Builder
	nodes := map[string][]string{}
	for _, name := range slices.Sorted(maps.Keys(symbols)) {
		y := symbols[name]
		if y.API > api {
			continue
		}
		if y.Data {
			fmt.Fprintf(&asm, ".data\n.globl %s\n.type %s,%%object\n.size %s,8\n%s: .quad 0\n", name, name, name, name)
		} else {
			fmt.Fprintf(&asm, ".text\n.globl %s\n.type %s,%%function\n%s:\n", name, name, name)
		}
		if y.Version != "" {
			nodes[y.Version] = append(nodes[y.Version], name)
		}
	}
	var v strings.Builder
	before := ""
	for _, node := range slices.SortedFunc(maps.Keys(nodes), func(a, b string) int {
		return letters[strings.TrimPrefix(a, "LIBC_")] - letters[strings.TrimPrefix(b, "LIBC_")]
	}) {
		fmt.Fprintf(&v, "%s { global: %s; } %s;\n", node, strings.Join(nodes[node], "; "), before)
		before = node
	}
	return asm.String(), v.String()
}
