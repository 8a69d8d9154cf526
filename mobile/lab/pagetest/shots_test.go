package pagetest_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"

	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

var sizes = [][2]int64{{360, 640}, {412, 915}, {1280, 800}}

// Pictures of the twelve states in three sizes and two lights, kept for looking at.
func TestShots(t *testing.T) {
	heavy(t)
	s := serve(t, app.Config{Version: "test", New: newWalker, Speech: app.Speech{Open: func(app.Listener) (app.Ear, error) { return deaf{}, nil }}})
	b := open(t, chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true))
	b.run(t, navigate(s.address()), until(`document.querySelector('[data-k="touch"]')`))
	take := func(name string, before action) {
		for _, sz := range sizes {
			for _, light := range []string{"light", "dark"} {
				b.run(t, size(sz[0], sz[1]), scheme(light), before, shot(t, fmt.Sprintf("%s-%dx%d-%s", name, sz[0], sz[1], light)))
			}
		}
	}
	picture := func(name string) { take(name, js(`scrollTo(0,0)`)) }
	below := func(name string) {
		take(name, js(`(document.querySelector('details[open]') || document.getElementById('picturebox')).scrollIntoView({block: 'center'})`))
	}
	picture("home")
	b.run(t, click("touch"))
	for i, v := range pagetest.States() {
		b.run(t, waitStep(v.Step.ID))
		picture(fmt.Sprintf("%02d-%s", i+1, pagetest.Names[i]))
		switch pagetest.Names[i] {
		case "volts":
			b.run(t, js(`document.getElementById('ear').click()`), until(`document.getElementById('ear').dataset.light === 'on'`))
			picture("volts-by-voice")
			b.run(t, js(`document.getElementById('ear').click()`))
		case "ohms":
			b.run(t, click("picture"), until(`document.querySelector('.room.large svg')`))
			picture("large")
			b.run(t, click("look-near"), until(`document.querySelector('.room.near svg')`))
			picture("wiring-here")
			b.run(t, click("look-all"), until(`document.querySelector('.room.all svg')`), click("zoom-in"))
			picture("wiring")
			b.run(t, click("close"))
		case "taken":
			b.run(t, click("swhy"), js(`document.getElementById('whybox').scrollIntoView()`))
			below("why")
			b.run(t, click("swhy"))
		}
		if i < len(pagetest.Names)-1 {
			b.run(t, next)
		}
	}
	b.clean(t)
	around(t, func(b *browser, l look) { b.run(t, shot(t, l.String())) })
}

// next answers the state, whatever it is, so that the walker goes on.
var next = js(`new Promise(r => setTimeout(() => { document.body.dispatchEvent(new KeyboardEvent('keydown', {key: 'r', bubbles: true})); r(); }, 450))`)
