package flows_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"readback/flows"
)

const small = `appliance "tiny" {
  title = "tiny thing"
  fuel  = "none"
}
part "supply" {
  kind  = "supply"
  name  = "supply"
  ports = { l = "HOT", n = "NEU" }
  volts = q("120 V", "plate")
  ohms  = q("0.1 ohm", "plate")
}
part "lamp" {
  kind  = "load"
  name  = "lamp"
  ports = { a = "OUT", b = "NEU" }
  ohms  = q("100 ohm", "plate")
  works = q("80 V", "plate")
}
`

const switched = `# a switch before a load
assembly "switched" {
  machine = "furnace"
  after   = "OUT"
}

part "switch" {
  kind   = "switch"
  name   = "${machine} switch"
  ports  = { a = "HOT", b = "${after}" }
  closes = power
  mode "off" {
    name   = "${machine} switch off"
    does   = "off"
    rate   = q("3 x", "common practice")
    repair = "switch-on"
  }
  mode "worn" {
    name   = "${machine} switch worn"
    does   = "stuck-open"
    rate   = q("1 x", "common practice")
    repair = "switch-on"
  }
}

repair "switch-on" {
  name    = "switch the ${machine} on"
  kind    = "set"
  minutes = q("1 min", "common practice")
  step { act = "Switch it on." }
}
`

// loadTiny loads a small file that uses the assembly "switched" in the way that is given.
func loadTiny(use, assembly string) (string, error) {
	fsys := fstest.MapFS{"tiny.hcl": {Data: []byte(small + use)}, "assemblies/switched.hcl": {Data: []byte(assembly)}}
	m, err := flows.Load(fsys, "tiny.hcl")
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for _, p := range m.Parts {
		b.WriteString(p.ID + ":" + p.Name + ":" + p.Ports["b"] + "\n")
	}
	for _, md := range m.Modes {
		b.WriteString(md.Full + ":" + md.Name + "\n")
	}
	return b.String(), nil
}

func TestAssembly(t *testing.T) {
	for _, tt := range []struct{ name, use, want string }{
		{"as it is", `use "switched" {}`, "supply:supply:\nlamp:lamp:NEU\nswitch:furnace switch:OUT\nswitch.off:furnace switch off\nswitch.worn:furnace switch worn\n"},
		{"with a parameter", `use "switched" { machine = "boiler" }`, "supply:supply:\nlamp:lamp:NEU\nswitch:boiler switch:OUT\nswitch.off:boiler switch off\nswitch.worn:boiler switch worn\n"},
		{"changed", "use \"switched\" {\n  without = [\"mode switch.worn\"]\n  part \"switch\" {\n    name = \"red switch\"\n    mode \"off\" { name = \"red switch off\" }\n  }\n}\n", "supply:supply:\nlamp:lamp:NEU\nswitch:red switch:OUT\nswitch.off:red switch off\n"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := loadTiny(tt.use, switched)
			if err != nil {
				t.Fatal(err)
			}
			if got != tt.want {
				t.Errorf("got\n%swant\n%s", got, tt.want)
			}
		})
	}
}

// Problems point through the assembly: its file, line and source line, and where it is used.
func TestAssemblyProblems(t *testing.T) {
	for _, tt := range []struct{ name, use, assembly, want string }{
		{"inside", `use "switched" { machine = "boiler" }`, strings.Replace(switched, `does   = "off"`, `dose   = "off"`, 1),
			"assemblies/switched.hcl:12:3: mode off has no does\n\tmode \"off\" {\n\tused at tiny.hcl:19"},
		{"unknown", `use "swiched" {}`, switched, `tiny.hcl:19:1: no assembly "swiched"`},
		{"parameter", `use "switched" { engine = "x" }`, switched, `tiny.hcl:19:18: assembly "switched" has no parameter "engine"`},
		{"no such placeholder", `use "switched" {}`, strings.Replace(switched, "${after}", "${afterr}", 1), `assemblies/switched.hcl:10:30: no parameter "afterr"`},
		{"nothing to change", "use \"switched\" {\n  part \"swich\" { name = \"x\" }\n}", switched, `tiny.hcl:20:3: assembly "switched" has no part "swich" to change`},
		{"nothing to leave out", `use "switched" { without = ["mode switch.bent"] }`, switched, `assembly "switched" has no mode switch.bent to leave out`},
		{"twice", "use \"switched\" {}\nuse \"switched\" {}", switched, `tiny.hcl:20:1: assembly "switched" is already used at line 19`},
		{"quotes", `use "switched" { machine = "a\"b" }`, switched, `a parameter is words in quotes`},
		{"not a header", `use "switched" {}`, strings.Replace(switched, "assembly", "asembly", 1), `assemblies/switched.hcl:1:1: want one header, here are 0`},
		{"nested", `use "switched" {}`, switched + "use \"more\" {}\n", `an assembly uses no other`},
		{"same id", "part \"switch\" {\n  kind = \"thing\"\n  name = \"x\"\n}\nuse \"switched\" {}", switched, `part "switch" is already at tiny.hcl:19`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := loadTiny(tt.use, tt.assembly)
			if err == nil {
				t.Fatal("no error")
			}
			if !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got\n%v\nwant\n%s", err, tt.want)
			}
		})
	}
}
