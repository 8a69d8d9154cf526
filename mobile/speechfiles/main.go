// Command speechfiles prints where the verified library and model of the recogniser are and the judge's networks (an empty line when there is no
// judge), one a line, unpacking them first when needed. The scripts of the phone builds use it.
package main

import (
	"fmt"
	"os"

	"readback/speech/model"
)

func main() {
	f, err := model.Locate()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println(f.Library)
	fmt.Println(f.Model)
	fmt.Println(f.Rescorer.Model)
}
