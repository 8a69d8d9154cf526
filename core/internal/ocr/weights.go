package ocr

import (
	_ "embed"
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

// Own are the networks that come with the package.
var Own = sync.OnceValue(func() *Nets {
	var n Nets
	for _, x := range []struct {
		net  **Net
		from []byte
	}{{&n.Find, findBytes}, {&n.Align, alignBytes}, {&n.Row, rowBytes}} {
		var err error
		if *x.net, err = parse(x.from); err != nil {
			panic("ocr: an embedded network is damaged: " + err.Error())
		}
	}
	return &n
})
