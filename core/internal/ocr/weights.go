package ocr

import (
	_ "embed"
	"fmt"
	"sync"
)

//go:embed find.bin
var findBytes []byte

//go:embed align.bin
var alignBytes []byte

//go:embed row.bin
var rowBytes []byte

// Nets are the three networks.
type Nets struct{ Find, Align, Row *Net }

// Load makes the networks of the bytes of three files of weights.
func Load(find, align, row []byte) (*Nets, error) {
	var n Nets
	for _, x := range []struct {
		name string
		net  **Net
		from []byte
	}{{"finder", &n.Find, find}, {"aligner", &n.Align, align}, {"row reader", &n.Row, row}} {
		var err error
		if *x.net, err = parse(x.from); err != nil {
			return nil, fmt.Errorf("%s: %w", x.name, err)
		}
	}
	return &n, nil
}

// Own are the networks that come with the package.
var Own = sync.OnceValue(func() *Nets {
	n, err := Load(findBytes, alignBytes, rowBytes)
	if err != nil {
		panic("ocr: an embedded network is damaged: " + err.Error())
	}
	return n
})
