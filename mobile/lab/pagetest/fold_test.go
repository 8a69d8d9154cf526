package pagetest_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"readback/core/advise"
	"readback/core/job"
	"readback/core/lab/metric"
	"readback/core/lab/scenario"
	"readback/core/plan"
	"readback/core/protocol"
	"readback/flows/lab/workspace"
	"readback/flows/lexicon"
	"readback/flows/prompts"
	"readback/mobile/app"
)

// player shows what a job came to, one exchange for every answer.
type player struct {
	at   int
	list []scenario.Exchange
}

func (p *player) View() *protocol.View {
	if p.at < 0 {
		return nil
	}
	v := p.list[p.at].View
	return &v
}

func (p *player) Step(ev protocol.Event) ([]protocol.Effect, error) {
	if ev.Type != protocol.EvBegin && ev.Type != protocol.EvSaid {
		return nil, nil
	}
	p.at = min(p.at+1, len(p.list)-1)
	x := &p.list[p.at]
	x.View.Seq = ev.Seq
	var out []protocol.Effect
	for _, e := range x.Effects {
		if e.Type == protocol.DoSay {
			out = append(out, e)
		}
	}
	return append(out, protocol.Effect{Type: protocol.DoShow, View: p.View()}), nil
}

// lived leads whole jobs of a file, one fault each, by touch.
func lived(t *testing.T, b *workspace.Bench, faults ...string) [][]scenario.Exchange {
	t.Helper()
	words, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	var out [][]scenario.Exchange
	for _, f := range faults {
		mode := -1
		for i := range b.Model.Modes {
			if b.Model.Modes[i].Full == f {
				mode = i
			}
		}
		if mode < 0 {
			t.Fatalf("%s has no mode %q", b.Model.ID, f)
		}
		adv, err := advise.ForCase(b.Case, words, plan.House{Call: math.NaN()})
		if err != nil {
			t.Fatal(err)
		}
		m, err := job.New(b.Model, adv, *lex, words, job.Options{})
		if err != nil {
			t.Fatal(err)
		}
		p := &scenario.Person{Model: b.Model, See: scenario.EngineSight(b.Engine), Modes: []int{mode}}
		run, err := scenario.Lead(m, p, protocol.Begin{Job: "j", Appliance: b.Model.ID, Lang: "en"}, nil)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, run.Exchanges)
	}
	return out
}

// folded tells what of a step is not above the fold: between the site and the foot, without scrolling. Caution, picture, sentence, answers.
const folded = `(() => {
  scrollTo(0, 0);
  const top = document.getElementById('site').getBoundingClientRect().bottom - 1, foot = document.getElementById('foot').getBoundingClientRect().top + 1;
  const out = [];
  for (const [name, q] of [['caution', '#cautionbox > *'], ['picture', '#picturebox svg'], ['sentence', '#stepbox h1, #stepbox .say'], ['answers', '#answerbox button, #answerbox input[type=text], #answerbox a']])
    for (const e of document.querySelectorAll(q)) { const r = e.getBoundingClientRect(); if (r.width > 1 && (r.top < top || r.bottom > foot)) out.push(name + ' ' + Math.round(r.bottom - foot)); }
  for (const a of document.querySelectorAll('#stepbox h1, #stepbox .say')) for (const b of document.querySelectorAll('#answerbox')) {
    const r = a.getBoundingClientRect(), o = b.getBoundingClientRect();
    if (o.height && r.bottom > o.top + 1 && r.top < o.bottom) out.push('sentence under the pad');
  }
  return out.join(', ');
})()`

// walkFold shows every step of jobs at phone size by touch and counts those that fit. SHOTS keeps pictures of every step in build/shots.
func walkFold(t *testing.T) (fit, all int, bad []string) {
	t.Helper()
	jobs := map[*workspace.Bench][]string{workspace.Large(t): {"igniter.open", "batteries.dead", "filter.packed", "flame-rod.dirty"}, workspace.Small(t): {"thermopile.weak"}}
	for b, faults := range jobs {
		for n, list := range lived(t, b, faults...) {
			s := serve(t, app.Config{Version: "test", New: func(bg protocol.Begin) (app.Machine, error) {
				for i := range list {
					list[i].View.Job = bg.Job
				}
				return &player{at: -1, list: list}, nil
			}})
			br := open(t)
			br.run(t, size(360, 640), navigate(s.address()), until(`document.querySelector('[data-k="touch"]')`))
			br.run(t, js(`document.querySelector('[data-k="m`+b.Model.ID+`"]')?.click()`))
			br.run(t, click("touch"))
			for i := range list {
				v := &list[i].View
				br.run(t, until(fmt.Sprintf(`document.getElementById('main').dataset.step === %q`, v.Step.ID+v.State)))
				br.run(t, js(`new Promise(ok => setTimeout(ok, 60))`))
				if os.Getenv("SHOTS") != "" {
					br.run(t, shot(t, fmt.Sprintf("fold-%s-%d-%03d-%s", b.Model.ID[:4], n, i, strings.ReplaceAll(v.Step.ID, "/", "_"))))
				}
				if out := value[string](t, br, folded); out != "" {
					bad = append(bad, fmt.Sprintf("%s %d %s: %s", faults[n], i, v.Step.ID, out))
				} else if v.State != "ended" {
					fit++
				}
				if v.State != "ended" {
					all++
				}
				if i < len(list)-1 {
					br.run(t, js(`fetch('/api/event', {method: 'POST', body: JSON.stringify({step: '', event: {at: 0, type: 'said', said: {text: 'x', source: 'touch', meanings: [{kind: 'command', id: 'ready', cost: 0}]}}})})`))
					br.run(t, until(fmt.Sprintf(`performance.now() && document.getElementById('main').dataset.step === %q`, list[i+1].View.Step.ID+list[i+1].View.State)))
				}
			}
			br.clean(t)
		}
	}
	return fit, all, bad
}

// Caution, picture, sentence and answers of at least 95 of 100 steps of whole jobs stand above the fold of a small phone.
func TestAboveTheFold(t *testing.T) {
	heavy(t)
	fit, all, bad := walkFold(t)
	t.Logf("%d of %d steps fit", fit, all)
	for _, b := range bad {
		t.Log(b)
	}
	if 100*fit < 95*all {
		t.Errorf("only %d of %d steps stand above the fold", fit, all)
	}
}

// foldFigures is the same as a figure.
func foldFigures(t *testing.T, add metric.Adder) {
	fit, all, _ := walkFold(t)
	add("page.fold_pct", 100*float64(fit)/float64(all), "%", ">= 95", all)
}
