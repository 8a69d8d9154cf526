package pagetest_test

import (
	"bytes"
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"readback/core/lab/metric"
	"readback/core/report"
	"readback/flows/lab/workspace"
	"readback/flows/prompts"
)

var onePage = regexp.MustCompile(`/Type\s*/Page[^s]`)

// recordPages prints the record of the demo's job, an igniter that is open, and counts its pages.
func recordPages(t *testing.T) int {
	t.Helper()
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	j := report.Job{Words: w, Clock: func(at int64) string { return time.UnixMilli(at).UTC().Format("2006-01-02 15:04:05") },
		Details: report.Details{Name: "Home", Address: "12 Test Street", Model: "X-100", Serial: "123"}}
	for i, x := range lived(t, workspace.Large(t), "igniter.open")[0] {
		x.Event.Seq = int64(i + 1)
		j.Entries = append(j.Entries, report.Entry{Event: x.Event, Effects: x.Effects, View: x.View})
	}
	var b bytes.Buffer
	if err := report.HTML(&b, j); err != nil {
		t.Fatal(err)
	}
	s := httptest.NewServer(http.HandlerFunc(func(rw http.ResponseWriter, _ *http.Request) { _, _ = rw.Write(b.Bytes()) }))
	t.Cleanup(s.Close)
	br := open(t)
	br.run(t, size(800, 1100), navigate(s.URL), shot(t, "record"))
	if n := value[int](t, br, `document.querySelectorAll('.readings tr').length`); n < 8 {
		t.Errorf("only %d rows of readings", n)
	}
	n := 0
	br.run(t, chromedp.Func(func(ctx context.Context, tg *chromedp.Target) error {
		r, err := cdp.Call(ctx, tg, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: new(true), PrintBackground: new(true)})
		if err != nil {
			return err
		}
		n = len(onePage.FindAll(r.Data, -1))
		return os.WriteFile(filepath.Join("..", "..", "..", "build", "shots", "record.pdf"), r.Data, 0o644)
	}))
	return n
}

// A technician reads the record of an ordinary job on four pages.
func TestRecordIsShort(t *testing.T) {
	heavy(t)
	if n := recordPages(t); n < 1 || n > 4 {
		t.Errorf("the record of the demo's job has %d pages, want at most 4", n)
	}
}

func recordFigures(t *testing.T, add metric.Adder) {
	add("record.pages", float64(recordPages(t)), "pages", "<= 4", 1)
}
