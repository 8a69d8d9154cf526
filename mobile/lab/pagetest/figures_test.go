package pagetest_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"readback/core/lab/metric"
	"readback/mobile/lab/pagetest"
)

func median(x []float64) float64 {
	slices.Sort(x)
	return x[len(x)/2]
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		s := serveWalker(t)
		b := open(t)
		b.run(t, size(412, 915), navigate(s.address()), until(`document.querySelector('[data-k="touch"]')`))
		var paint, ready []float64
		for range 5 {
			b.run(t, chromedp.Reload(), until(`document.querySelector('[data-k="touch"]') && performance.getEntriesByName('first-contentful-paint').length && performance.getEntriesByName('interactive').length`))
			paint = append(paint, value[float64](t, b, `performance.getEntriesByName('first-contentful-paint')[0].startTime`)/1000)
			ready = append(ready, value[float64](t, b, `performance.getEntriesByName('interactive')[0].startTime`)/1000)
		}
		add("page.paint_s", median(paint), "s", "<= 0.3", len(paint))
		add("page.interactive_s", median(ready), "s", "<= 0.5", len(ready))
		add("page.requests", value[float64](t, b, `1 + performance.getEntriesByType('resource').filter(r => !r.name.includes('/api/')).length`), "requests", "<= 12", 1)
		weight := 0.0
		files, err := filepath.Glob("../../page/*")
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			st, err := os.Stat(f)
			if err != nil {
				t.Fatal(err)
			}
			weight += float64(st.Size()) / 1000
		}
		add("page.weight_kb", weight, "kB", "<= 250", len(files))

		// From the press to the new step on the page, drawing included.
		b.run(t, click("touch"), waitStep(pagetest.States()[0].Step.ID))
		for range len(pagetest.Names) - 1 {
			b.run(t, next)
		}
		time.Sleep(200 * time.Millisecond)
		steps := value[[]float64](t, b, `performance.getEntriesByName('step').map(e => e.duration)`)
		if len(steps) == 0 {
			t.Fatal("no step was timed")
		}
		add("page.step_ms", median(steps), "ms", "<= 50", len(steps))

		source := axe(t)
		serious, contrast, rest, target, views := 0, 21.0, 21.0, math.Inf(1), 0
		everywhere(t, func(b *browser, _ look) {
			views++
			serious += len(audit(t, b, source))
			m := value[measured](t, b, measuring)
			contrast, rest, target = min(contrast, m.Contrast), min(rest, m.Rest), min(target, m.Target)
		})
		add("page.axe_serious", float64(serious), "findings", "= 0", views)
		add("page.contrast_step", contrast, "ratio", ">= 7", views)
		add("page.contrast_rest", rest, "ratio", ">= 4.5", views)
		add("page.target_px", target, "px", ">= 64", views)
		add("page.outside_requests", float64(len(b.outside())), "requests", "= 0", views)
		add("page.policy_violations", float64(len(b.violations())), "violations", "= 0", views)
		foldFigures(t, add)
		recordFigures(t, add)
		eyeFigures(t, add)
		voiceFigures(t, add)
	})
}
