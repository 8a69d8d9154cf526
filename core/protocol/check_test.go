package protocol_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode"

	"readback/core/protocol"
	"readback/core/utterance"
)

// What no door may let in, with the words that say why.
func TestDecodeRefuses(t *testing.T) {
	reading := func(r string) string {
		return `{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"reading","cost":0,"reading":` + r + `}]}}`
	}
	for _, tt := range []struct{ event, want string }{
		{``, "nothing in it"},
		{`{"type":"tick"`, "unexpected end of JSON"},
		{`{"type":"tick"}{}`, "more than one value"},
		{`{"type":"tick","colour":1}`, `unknown field "colour"`},
		{`{"type":"dance"}`, `no such type "dance"`},
		{`{"type":"said"}`, "said is missing"},
		{`{"type":"begin"}`, "begin is missing"},
		{`{"type":"seen"}`, "seen is missing"},
		{`{"type":"photo"}`, "photo is missing"},
		{`{"type":"device"}`, "device is missing"},
		{`{"at":-1,"type":"tick"}`, "at is -1"},
		{`{"at":9223372036854775807,"type":"tick"}`, "before the year 10000"},
		{`{"seq":-4,"at":1,"type":"tick"}`, "seq -4"},
		{`{"at":1,"type":"undo","target":-2}`, "target -2"},
		{reading(`{"value":{"d":{"m":-9223372036854775808},"u":"V"}}`), "more than 15 digits"},
		{reading(`{"value":{"d":{"m":1,"e":400},"u":"V"}}`), "exponent 400"},
		{reading(`{"value":{"d":{"m":1,"e":2147483647},"u":"V"}}`), "exponent 2147483647"},
		{reading(`{"value":{"d":{"m":1,"e":-300},"u":"V"}}`), "exponent -300"},
		{reading(`{"value":{"d":{"m":1},"u":"parsec"}}`), `no unit "parsec"`},
		{reading(`{"state":"purple"}`), `no display state "purple"`},
		{reading(`{"state":"jumping","low":{"d":{"m":1,"e":99},"u":"V"}}`), "reading.low has the exponent 99"},
		{reading(`{"ac":"dx","value":{"d":{"m":1},"u":"V"}}`), "neither ac nor dc"},
		{`{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"reading","cost":0}]}}`, "a reading without one"},
		{`{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"wish","cost":0}]}}`, `no kind "wish"`},
		{`{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"count","text":"99999999999999999999","cost":0}]}}`, "a count of 20 digits"},
		{`{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"choice","cost":1e300}]}}`, "no such number"},
		{`{"at":1,"type":"said","said":{"text":"","source":"camera"}}`, "is the camera"},
		{`{"at":1,"type":"said","said":{"text":"","source":"radio"}}`, "want voice, touch, key or line"},
		{`{"at":1,"type":"said","said":{"text":"","source":"line","meanings":[` + strings.Repeat(`{"kind":"choice","cost":0},`, 64) + `{"kind":"choice","cost":0}]}}`, "has 65, more than 64"},
		{`{"at":1,"type":"said","said":{"source":"line","text":"` + strings.Repeat("a", 20000) + `"}}`, "said.text has 20000 bytes"},
		{`{"at":1,"type":"spoke","spoke":"` + strings.Repeat("a", 200) + `"}`, "spoke has 200 bytes"},
		{`{"at":1,"type":"photo","photo":{"id":"before","name":"../../key","sha256":""}}`, "no name of a file"},
		{`{"at":1,"type":"photo","photo":{"id":"before","name":"a.jpg","sha256":"","marks":[{"x":1.5,"y":0,"name":"w"}]}}`, "want shares"},
		{`{"at":1,"type":"seen","seen":{"step":"a","kind":"meter","p":1.5}}`, "want a probability"},
		{`{"at":1,"type":"seen","seen":{"step":"a","kind":"meter","frames":-1}}`, "counts -1 pictures"},
		{`{"at":1,"type":"device","device":{"kind":"battery","level":1e200}}`, "no such number"},
	} {
		_, err := protocol.Decode([]byte(tt.event))
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%.120s: %v, want %s", tt.event, err, tt.want)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		u := utterance.Utterance{Source: "voice", Margin: bad}
		if err := (&protocol.Event{At: 1, Type: protocol.EvSaid, Said: &u}).Check(); err == nil {
			t.Errorf("%g passes", bad)
		}
		if err := (&protocol.Event{At: 1, Type: protocol.EvSeen, Seen: &protocol.Seen{P: bad}}).Check(); err == nil {
			t.Errorf("%g passes for a probability", bad)
		}
	}
}

// Texts lose what a terminal or a page would act on; the caller's own event is not changed.
func TestPlainText(t *testing.T) {
	text := "26\u202e1.4 V\a\x1b[31m\u2066 \r\nred\u200b"
	ev := protocol.Event{At: 1, Type: protocol.EvSaid, Said: &utterance.Utterance{Source: "voice", Text: text}}
	was := ev.Said
	if err := ev.Check(); err != nil {
		t.Fatal(err)
	}
	if want := "261.4 V[31m   red"; ev.Said.Text != want {
		t.Errorf("%q, want %q", ev.Said.Text, want)
	}
	if was.Text != text {
		t.Error("the caller's own utterance was changed")
	}
	if s := protocol.Plain("é"+strings.Repeat("é", 10), 5); s != "éé" {
		t.Errorf("cut to %q", s)
	}
	if got, err := protocol.Decode([]byte(`{"at":1,"type":"said","said":{"text":"x","source":"line","meanings":[{"kind":"emergency","id":"volcano","cost":0}]}}`)); err != nil || got.Alarm() != "any" {
		t.Errorf("an emergency of another name: %v, %q", err, got.Alarm())
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"at":1,"type":"said","said":{"text":"x","source":"line","meanings":[{"kind":"reading","cost":0,"reading":{"value":{"d":{"m":261,"e":-1},"u":"V"}}}]}}`))
	f.Add([]byte(`{"at":1,"type":"seen","seen":{"step":"a","kind":"meter","p":0.5,"wires":[{"x":0.1,"y":0.1,"name":"w","ax":1,"ay":1,"change":"same"}]}}`))
	f.Add([]byte(`{"at":1,"type":"photo","photo":{"id":"before","name":"a.jpg","sha256":"","marks":[{"x":1,"y":0,"name":"w"}]}}`))
	f.Add([]byte(`{"at":1,"type":"device","device":{"kind":"battery","level":3}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		ev, err := protocol.Decode(data)
		if err != nil {
			return
		}
		out, err := json.Marshal(ev)
		if err != nil {
			t.Fatalf("what was taken cannot be written: %v", err)
		}
		again, err := protocol.Decode(out)
		if err != nil {
			t.Fatalf("what was taken is refused when it is read again: %v", err)
		}
		if ev.Said != nil {
			for _, s := range append([]string{ev.Said.Text, again.Said.Text}, ev.Said.Rivals...) {
				if strings.ContainsFunc(s, unicode.IsControl) {
					t.Fatalf("a control character in %q", s)
				}
			}
			for _, m := range ev.Said.Meanings {
				if m.Reading != nil {
					if x := m.Reading.Value.Dec.Float(); math.IsNaN(x) || math.IsInf(x, 0) || len(m.Reading.Value.Dec.String()) > 40 {
						t.Fatalf("a reading of %v", m.Reading.Value)
					}
				}
			}
		}
	})
}
