package flows_test

import (
	"fmt"
	"os"
	"testing/fstest"

	"readback/core/appliance"
	"readback/flows"
)

// One file is one appliance. An engine simulates it with any fault.
func ExampleLoad() {
	m, err := flows.Load(os.DirFS("../testdata/flows"), "tiny.hcl")
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := appliance.Compile(m)
	if err != nil {
		fmt.Println(err)
		return
	}
	step, _, _ := e.Reached(nil)
	fmt.Println(m.Title, "reaches", step)
	// Output: small heater for trying the engine reaches run
}

// A mistake is told with its place and the likely word.
func ExampleLint() {
	src := "appliance \"x\" {\n  titel = \"a heater\"\n}\n"
	r, err := flows.Lint(fstest.MapFS{"x.hcl": {Data: []byte(src)}}, "x.hcl", nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Problems[len(r.Problems)-1])
	// Output:
	// x.hcl:2:3: an appliance has no "titel"
	// 	titel = "a heater"
	// 	did you mean "title"?
}

func ExampleBuiltin() {
	models, err := flows.Builtin()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range models {
		fmt.Println(m.ID)
	}
	// Output:
	// furnace-hsi
	// furnace-condensing
	// furnace-direct-spark
	// furnace-pilot
	// heater-millivolt
	// boiler-zone
}
