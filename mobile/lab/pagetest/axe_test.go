package pagetest_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"readback/mobile/app"
	"readback/mobile/lab/pagetest"
)

// axe is the source of the accessibility checker; a test without it is skipped.
func axe(t *testing.T) string {
	t.Helper()
	cache, err := os.UserCacheDir()
	if err != nil {
		t.Skip("there is no cache folder")
	}
	names, err := filepath.Glob(filepath.Join(cache, "readback", "axe", "axe-*.min.js"))
	if err != nil || len(names) == 0 {
		t.Skip("axe-core is missing: run mobile/lab/pagetest/fetch-axe.sh once with a network")
	}
	data, err := os.ReadFile(names[len(names)-1])
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

type finding struct {
	ID     string `json:"id"`
	Impact string `json:"impact"`
	Where  string `json:"where"`
}

// audit returns the serious and critical findings of the page as it is.
func audit(t *testing.T, b *browser, source string) []finding {
	t.Helper()
	b.run(t, js(source+"\n;undefined"))
	raw := value[string](t, b, `axe.run(document, {resultTypes: ['violations']}).then(r => JSON.stringify(r.violations.filter(v => v.impact === 'serious' || v.impact === 'critical').map(v => ({id: v.id, impact: v.impact, where: v.nodes.map(n => n.html.slice(0, 120)).join(' | ')}))))`)
	var out []finding
	if err := json.Unmarshal([]byte(raw), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// look is one screen as it is shown.
type look struct {
	name  string
	w, h  int64
	light string
}

func (l look) String() string { return fmt.Sprintf("%s-%dx%d-%s", l.name, l.w, l.h, l.light) }

// everywhere shows every screen of the page: the states of a job, then what is around jobs.
func everywhere(t *testing.T, f func(b *browser, l look)) {
	t.Helper()
	s, b := serveWalker(t), open(t)
	each(t, b, s, func(l look) { f(b, l) })
	b.clean(t)
	around(t, f)
}

// each shows every state in both lights at phone size.
func each(t *testing.T, b *browser, s *served, f func(l look)) {
	t.Helper()
	if err := app.Prepare(""); err != nil {
		t.Fatal(err)
	}
	b.run(t, size(360, 640), navigate(s.address()), until(`document.querySelector('[data-k="touch"]')`), click("touch"))
	for i, v := range pagetest.States() {
		b.run(t, waitStep(v.Step.ID))
		if len(v.Step.Points)+len(v.Step.Parts) > 0 {
			b.run(t, until(`document.querySelector('.picture svg')`))
		}
		for _, light := range []string{"light", "dark"} {
			b.run(t, scheme(light))
			f(look{pagetest.Names[i], 360, 640, light})
		}
		if i < len(pagetest.Names)-1 {
			b.run(t, next)
		}
	}
}

func TestAccessible(t *testing.T) {
	heavy(t)
	source := axe(t)
	everywhere(t, func(b *browser, l look) {
		for _, f := range audit(t, b, source) {
			t.Errorf("%s: %s (%s): %s", l, f.ID, f.Impact, f.Where)
		}
	})
}

// contrast is the lowest contrast of the step and the value, rest that of all other words, and target the smallest side of a control in
// CSS pixels.
const measuring = `(() => {
  const lum = c => { const [r, g, b] = c.match(/[\d.]+/g).slice(0, 3).map(v => { v /= 255; return v <= .03928 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4; }); return .2126 * r + .7152 * g + .0722 * b; };
  const ground = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor; if (c && !/^rgba.*, 0\)$|transparent/.test(c)) return c; } return 'rgb(255,255,255)'; };
  const ratio = (e, pseudo) => { const s = getComputedStyle(e, pseudo), a = lum(e instanceof SVGElement ? s.fill : s.color), b = lum(ground(e)); return (Math.max(a, b) + .05) / (Math.min(a, b) + .05); };
  const step = '#stepbox h1, #stepbox p, #stepbox dd, .caution p, .caution b, .verdict h1, .reply .value, .keypad output';
  let contrast = 21, rest = 21, dim = '', target = 1e3, small = '';
  for (const e of document.querySelectorAll(step)) contrast = Math.min(contrast, ratio(e));
  for (const e of document.querySelectorAll('body *')) {
    const words = e.placeholder || [...e.childNodes].filter(n => n.nodeType === 3).map(n => n.data.trim()).join('');
    if (!words || e.closest(step) || !e.checkVisibility() || e.getBoundingClientRect().width <= 1) continue;
    const r = ratio(e, e.placeholder && '::placeholder');
    if (r < rest) { rest = r; dim = words; }
  }
  for (const e of document.querySelectorAll('button, a.key, summary, input[type=text]')) {
    const r = e.getBoundingClientRect();
    if (r.width && Math.min(r.width, r.height) < target) { target = Math.min(r.width, r.height); small = e.textContent; }
  }
  const seen = document.querySelector('#sheet:not([hidden])') ? '#sheet, footer' : 'body';
  const controls = [...document.querySelectorAll('button, a.key, summary, input[type=text]')].filter(e => e.closest(seen) && e.getBoundingClientRect().width).map(e => ({e, r: e.getBoundingClientRect(), fixed: !!e.closest('footer')}));
  let gap = 1e3, close = '';
  controls.forEach((a, i) => controls.slice(0, i).forEach(b => {
    if (a.fixed !== b.fixed) return; // what scrolls passes under what stays
    const dx = Math.max(a.r.left, b.r.left) - Math.min(a.r.right, b.r.right), dy = Math.max(a.r.top, b.r.top) - Math.min(a.r.bottom, b.r.bottom), d = Math.max(dx, dy);
    if (d < gap) { gap = d; close = a.e.textContent + ' / ' + b.e.textContent; }
  }));
  const cut = controls.filter(c => c.e.localName !== 'input' && (c.e.scrollWidth > c.e.clientWidth + 1 || c.e.scrollHeight > c.e.clientHeight + 1)).map(c => c.e.textContent).join(' / ');
  return {contrast, rest, dim, target, small, gap, close, cut, wide: document.documentElement.scrollWidth > innerWidth};
})()`

type measured struct {
	Contrast float64 `json:"contrast"`
	Rest     float64 `json:"rest"`
	Dim      string  `json:"dim"`
	Target   float64 `json:"target"`
	Small    string  `json:"small"`
	Gap      float64 `json:"gap"` // smallest distance of two controls
	Close    string  `json:"close"`
	Cut      string  `json:"cut"` // controls whose words do not fit
	Wide     bool    `json:"wide"`
}

func TestContrastAndTargets(t *testing.T) {
	heavy(t)
	everywhere(t, func(b *browser, l look) {
		m := value[measured](t, b, measuring)
		if m.Contrast < 7 || m.Rest < 4.5 || m.Target < 64 || m.Gap < 8 || m.Cut != "" || m.Wide {
			t.Errorf("%s: contrast %.1f, of the rest %.1f (%s), smallest target %.0f px (%s), smallest gap %.1f px (%s), cut off: %q, wider than the screen: %v", l, m.Contrast, m.Rest, m.Dim, m.Target, m.Small, m.Gap, m.Close, m.Cut, m.Wide)
		}
		if l.light == "dark" {
			return
		}
		// Letters twice as large, and the whole page at 200 %: nothing is cut off at the side, and every control can be hit.
		for _, grown := range []struct {
			name     string
			to, back action
		}{
			{"letters at 200 %", js(`document.documentElement.style.fontSize = '212%'`), js(`document.documentElement.style.fontSize = ''`)},
			{"1280x800 at 200 %", size(640, 400), size(l.w, l.h)},
		} {
			b.run(t, grown.to)
			if m := value[measured](t, b, measuring); m.Target < 64 || m.Wide {
				t.Errorf("%s, %s: smallest target %.0f px (%s), wider than the screen: %v", l, grown.name, m.Target, m.Small, m.Wide)
				b.run(t, shot(t, "grown-"+l.name))
			}
			b.run(t, grown.back)
		}
	})
}

// The tree that a screen reader sees, as text; a change of it is seen in review.
func TestTree(t *testing.T) {
	heavy(t)
	var out strings.Builder
	told := map[string]bool{}
	everywhere(t, func(b *browser, l look) {
		if !told[l.name] {
			told[l.name] = true
			b.run(t, until(`!document.querySelector('#ear.cue')`)) // a cue passes
			fmt.Fprintf(&out, "== %s\n%s\n", l.name, tree(t, b))
		}
	})
	golden(t, "tree.txt", out.String())
}
