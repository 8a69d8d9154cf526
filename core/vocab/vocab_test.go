package vocab_test

import (
	"slices"
	"testing"

	"readback/core/vocab"
)

// Every list names each thing once, and every attribute is one that its readers know.
func TestLists(t *testing.T) {
	for name, ids := range map[string][]string{
		"hazards": vocab.HazardIDs(false), "alarms": vocab.AlarmIDs(), "commands": vocab.CommandIDs(),
		"stages": vocab.StageIDs(nil), "outcomes": vocab.OutcomeIDs(),
	} {
		sorted := slices.Sorted(slices.Values(ids))
		if len(slices.Compact(sorted)) != len(ids) || slices.Contains(ids, "") || len(ids) == 0 {
			t.Errorf("%s: %v: an id is empty or stands twice", name, ids)
		}
	}
	for _, h := range vocab.Hazards {
		if h.Level != vocab.Caution && h.Level != vocab.Warning && h.Level != vocab.Danger {
			t.Errorf("hazard %s has level %q", h.ID, h.Level)
		}
		if h.File && h.Price == 0 {
			t.Errorf("hazard %s of an equipment file costs nothing", h.ID)
		}
	}
	keys := map[string]string{}
	for _, c := range vocab.Commands {
		if !slices.Contains([]string{"hear", "ask", "answer", "job"}, c.Group) {
			t.Errorf("command %s is in group %q", c.ID, c.Group)
		}
		if other := keys[c.Key]; c.Key == "" || other != "" {
			t.Errorf("command %s has key %q, as %q", c.ID, c.Key, other)
		}
		keys[c.Key] = c.ID
	}
	if vocab.Worst([]string{"sharp", "mains", "hot"}) != "mains" || vocab.Worst(nil) != "" || vocab.Worst([]string{"none"}) != "" {
		t.Error("the worst hazard is not the first of the list")
	}
}
