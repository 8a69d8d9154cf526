package appliance_test

import (
	"fmt"

	"readback/core/appliance"
)

func ExampleKindOf() {
	k := appliance.KindOf("fuse")
	fmt.Println(k.Doc)
	for _, e := range k.Effects {
		fmt.Println("-", e.Name)
	}
	// Output:
	// opens for good when its current exceeds the rating; also a breaker
	// - open
	// - resist
	// - short
	// - set
}

func ExampleKindsAsked() {
	fmt.Println(appliance.KindsAsked("microamps_now"))
	// Output: [board rod]
}
