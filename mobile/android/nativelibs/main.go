// Command nativelibs serves the packing of the phone's native code.
//
//	nativelibs stubs -abi ABI -api LEVEL DIR          writes the phone's system libraries, names without code, to link against
//	nativelibs check -abi ABI -api LEVEL LIB...       fails unless every library, in the order of loading, will load on such a phone
//	nativelibs jni LIB DEXDUMP                        fails unless the native methods of the Java side and those of the library are the same
package main

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"readback/mobile/android/bionic"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "nativelibs:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	if len(args) == 0 {
		return errors.New("want: stubs, check or jni")
	}
	f := flag.NewFlagSet(args[0], flag.ContinueOnError)
	abi := f.String("abi", string(bionic.ARM64), "kind of processor")
	api := f.Int("api", 26, "lowest API level")
	if err := f.Parse(args[1:]); err != nil {
		return err
	}
	if *abi != string(bionic.ARM64) && *abi != string(bionic.X86) {
		return fmt.Errorf("nobody builds for %s here; there are %s and %s", *abi, bionic.ARM64, bionic.X86)
	}
	rest := f.Args()
	switch {
	case args[0] == "stubs" && len(rest) == 1:
		return bionic.Stub(rest[0], bionic.ABI(*abi), *api, "clang")
	case args[0] == "check" && len(rest) > 0:
		return check(bionic.ABI(*abi), *api, rest, out)
	case args[0] == "jni" && len(rest) == 2:
		return jni(rest[0], rest[1], out)
	}
	return fmt.Errorf("%s: wrong number of arguments", args[0])
}

func check(abi bionic.ABI, api int, libs []string, out io.Writer) error {
	found, n, err := bionic.Check(abi, api, libs...)
	if err != nil {
		return err
	}
	bad, unresolved := 0, 0
	for _, f := range found {
		fmt.Fprintln(out, f)
		if f.Fatal {
			bad++
		}
		if f.Kind == "unresolved" {
			unresolved++
		}
	}
	fmt.Fprintf(out, "native: %d libraries, %d imports (%d weak), %d unresolved at API %d, %d faults\n", len(libs), n.Names, n.Weak, unresolved, api, bad)
	if bad > 0 {
		return fmt.Errorf("%d faults in what the phone would load", bad)
	}
	return nil
}

// jni compares the native methods that the dex file names, as dexdump prints them, with those that the library offers.
func jni(lib, dump string, out io.Writer) error {
	exports, err := bionic.Exports(lib)
	if err != nil {
		return err
	}
	f, err := os.Open(dump)
	if err != nil {
		return err
	}
	defer f.Close()
	wanted, err := nativeMethods(f)
	if err != nil {
		return fmt.Errorf("%s: %w", dump, err)
	}
	if len(wanted) == 0 {
		return fmt.Errorf("%s names no native method", dump)
	}
	var offered, lost, spare []string
	for _, e := range exports {
		if strings.HasPrefix(e, "Java_") {
			offered = append(offered, e)
		}
	}
	for _, w := range wanted {
		if !slices.Contains(offered, w) {
			lost = append(lost, w)
		}
	}
	for _, o := range offered {
		if !slices.Contains(wanted, o) {
			spare = append(spare, o)
		}
	}
	fmt.Fprintf(out, "jni: %d native methods in the APK, %d in %s\n", len(wanted), len(offered), filepath.Base(lib))
	if lost != nil {
		return fmt.Errorf("the library does not have what Java calls: %s", strings.Join(lost, " "))
	}
	if spare != nil {
		return fmt.Errorf("the library has what no Java calls: %s", strings.Join(spare, " "))
	}
	return nil
}

// nativeMethods reads the output of dexdump.
func nativeMethods(r io.Reader) ([]string, error) {
	var out []string
	class, name := "", ""
	in := bufio.NewScanner(r)
	in.Buffer(nil, 1<<20)
	value := func(line string) string {
		_, v, _ := strings.Cut(line, "'")
		v, _, _ = strings.Cut(v, "'")
		return v
	}
	for in.Scan() {
		line := strings.TrimSpace(in.Text())
		switch {
		case strings.HasPrefix(line, "Class descriptor"):
			class = strings.TrimSuffix(strings.TrimPrefix(value(line), "L"), ";")
		case strings.HasPrefix(line, "name "):
			name = value(line)
		case strings.HasPrefix(line, "access ") && strings.Contains(line, "NATIVE"):
			out = append(out, "Java_"+mangle(class)+"_"+mangle(name))
		}
	}
	slices.Sort(out)
	return slices.Compact(out), in.Err()
}

// mangle writes a name as the Java Native Interface Specification has it (chapter 2, resolving native method names).
func mangle(s string) string {
	var b strings.Builder
	for _, c := range s {
		switch {
		case c == '/':
			b.WriteByte('_')
		case c == '_':
			b.WriteString("_1")
		case c == ';':
			b.WriteString("_2")
		case c == '[':
			b.WriteString("_3")
		case c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9':
			b.WriteRune(c)
		default:
			fmt.Fprintf(&b, "_0%04x", c)
		}
	}
	return b.String()
}
