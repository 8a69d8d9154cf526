package pagetest_test

import (
	"fmt"
	"testing"

	"readback/mobile/pagetest"
)

var sizes = [][2]int64{{360, 640}, {412, 915}, {1280, 800}}

// Pictures of the twelve states in three sizes and two lights, kept for looking at.
func TestShots(t *testing.T) {
	heavy(t)
	s := serveWalker(t)
	b := open(t)
	b.run(t, navigate(s.address()), until(`document.querySelector('[data-k="touch"]')`))
	picture := func(name string) {
		for _, sz := range sizes {
			for _, light := range []string{"light", "dark"} {
				b.run(t, size(sz[0], sz[1]), scheme(light), js(`scrollTo(0,0)`), shot(t, fmt.Sprintf("%s-%dx%d-%s", name, sz[0], sz[1], light)))
			}
		}
	}
	picture("home")
	b.run(t, click("touch"))
	for i, v := range pagetest.States() {
		b.run(t, waitStep(v.Step.ID))
		picture(fmt.Sprintf("%02d-%s", i+1, pagetest.Names[i]))
		if i < len(pagetest.Names)-1 {
			b.run(t, next)
		}
	}
	b.clean(t)
}

// next answers the state, whatever it is, so that the walker goes on.
var next = js(`new Promise(r => setTimeout(() => { document.body.dispatchEvent(new KeyboardEvent('keydown', {key: 'r', bubbles: true})); r(); }, 450))`)
