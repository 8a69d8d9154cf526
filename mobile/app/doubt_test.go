package app_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/lab/scenario"
	"readback/core/protocol"
	"readback/flows"
	"readback/mobile/app"
)

// lastJob leads a job with an open igniter to its end and tells the events of the look that condemned it and of a reading.
func lastJob(t *testing.T) (b *bench, id string, look, read int64) {
	t.Helper()
	models, err := flows.Builtin()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range models {
		e, err := appliance.Compile(m)
		if err != nil {
			t.Fatal(err)
		}
		for i := range m.Modes {
			if m.Modes[i].Full != "igniter.open" {
				continue
			}
			b = open(t, app.Config{New: app.NewMachine})
			p := &scenario.Person{Model: m, See: scenario.EngineSight(e), Modes: []int{i}}
			b.ok("POST", "/api/start", `{"appliance":"`+m.ID+`","voice":false}`)
			for range 300 {
				var st app.State
				if err := json.Unmarshal([]byte(b.ok("GET", "/api/state", "")), &st); err != nil {
					t.Fatal(err)
				}
				if id = st.View.Job; st.View.State == "ended" {
					look, read := answers(t, b, id)
					return b, id, look, read
				}
				u, err := p.Reply(st.View)
				if err != nil {
					t.Fatal(err)
				}
				data, err := json.Marshal(app.EventBody{Step: st.View.Step.ID, Event: protocol.Event{Type: protocol.EvSaid, Said: &u}})
				if err != nil {
					t.Fatal(err)
				}
				b.ok("POST", "/api/event", string(data))
			}
			t.Fatal("the job does not end")
		}
	}
	t.Skip("no built-in appliance has an igniter")
	return nil, "", 0, 0
}

// answers are the events of the look at the igniter and of the last reading that was judged.
func answers(t *testing.T, b *bench, id string) (look, read int64) {
	t.Helper()
	var steps []app.ReplayStep
	if err := json.Unmarshal([]byte(b.ok("GET", "/api/jobs/"+id+"/steps", "")), &steps); err != nil {
		t.Fatal(err)
	}
	asked := ""
	for _, s := range steps {
		if s.View == nil {
			continue
		}
		if s.Event.Said != nil && asked == "glow-look" && s.View.Step.ID != "glow-look" {
			look = s.Event.Seq
		}
		if s.Event.Said != nil && s.View.Heard != nil && s.View.Heard.Verdict != "" {
			read = s.Event.Seq
		}
		asked = s.View.Step.ID
	}
	if look == 0 || read == 0 {
		t.Fatalf("the look came with event %d, a reading with %d", look, read)
	}
	return look, read
}

// A technician doubts a reading of a job that is over: what the answers say without it stands beside what they said, and is kept as a signed
// remark. The journal does not change.
func TestDoubtIsSignedBesideTheRecord(t *testing.T) {
	b, id, seq, read := lastJob(t)
	post := func(want int, path, body string) string {
		t.Helper()
		code, text := b.call("POST", "/api/jobs/"+id+path, body)
		if code != want {
			t.Errorf("%s %s: status %d, %.200s", path, body, code, text)
		}
		return text
	}
	before := b.ok("GET", "/api/jobs/"+id+"/journal", "")
	var out app.Doubted
	if err := json.Unmarshal([]byte(post(200, "/doubt", fmt.Sprintf(`{"seq":%d}`, seq))), &out); err != nil {
		t.Fatal(err)
	}
	if !out.Was.Closed || len(out.Is.Suspects) == 0 || out.Is.Closed && out.Is.Suspects[0].P == out.Was.Suspects[0].P {
		t.Errorf("with the reading: %+v; without: %+v", out.Was, out.Is)
	}
	post(200, "/doubt", fmt.Sprintf(`{"seq":%d,"option":"good"}`, seq))
	post(400, "/doubt", fmt.Sprintf(`{"seq":%d,"value":"60 ohm"}`, seq)) // it was no reading
	post(200, "/doubt", fmt.Sprintf(`{"seq":%d,"value":"60 ohm"}`, read))
	post(400, "/doubt", fmt.Sprintf(`{"seq":%d,"value":"60 parsecs"}`, seq))
	post(400, "/doubt", fmt.Sprintf(`{"seq":%d,"value":"1e9 ohm"}`, seq))
	post(400, "/doubt", `{"seq":1}`)
	post(400, "/remarks", fmt.Sprintf(`{"seq":%d,"text":"no name"}`, seq))
	post(200, "/remarks", fmt.Sprintf(`{"seq":%d,"by":"T. Tester","text":"The plug was not apart."}`, seq))
	post(200, "/details", `{"name":"North house","serial":"S-7"}`)
	page := b.ok("GET", "/api/jobs/"+id+"/transcript", "")
	for _, want := range []string{"T. Tester", "The plug was not apart.", "North house", "Serial S-7"} {
		if !strings.Contains(page, want) {
			t.Errorf("the record lacks %q", want)
		}
	}
	if !strings.HasPrefix(b.ok("GET", "/api/jobs/"+id+"/journal", ""), before) { // the clock may have ticked
		t.Error("the journal was changed")
	}
	var list []app.JobInfo
	if err := json.Unmarshal([]byte(b.ok("GET", "/api/jobs", "")), &list); err != nil || len(list) != 1 || list[0].Name != "North house" || list[0].What == "" {
		t.Errorf("the list shows %+v (%v)", list, err)
	}
	if svg := b.ok("GET", fmt.Sprintf("/api/jobs/%s/drawing/%d", id, seq-1), ""); !strings.HasPrefix(svg, "<svg") {
		t.Errorf("no picture of that moment: %.60q", svg)
	}
}
