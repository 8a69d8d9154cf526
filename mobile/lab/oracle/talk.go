package oracle

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os/exec"
)

// What an outside program needs of the line protocol, as DEVELOPERS.md tells it.
type (
	checkInfo struct {
		ID, Stage, Name, Act, Ask, Function, Quantity, Unit string
		Red, Black, RedNet, BlackNet, Part, Power, Call, At string
		Hazard                                              string
		Lift, Options, Places                               []string
		HandsIn                                             bool
	}
	pointInfo struct{ ID, Name, Net, Place string }
	partInfo  struct {
		ID, Name, Kind, Place string
		Ports                 map[string]string
		Safety                bool
	}
	repairInfo struct {
		ID, Name, Part, Kind, Stop string
		Steps                      []string
	}
	placeInfo struct {
		ID, Name string
		Cover    bool
	}
	catalogued struct {
		Checks  []checkInfo
		Points  []pointInfo
		Parts   []partInfo
		Repairs []repairInfo
		Places  []placeInfo
		Dead    []string
	}
	answer struct{ ID, Kind, Text string }
	view   struct {
		Stage   string
		StageNo int
		State   string
		Site    struct{ Power, Call, Door string }
		Step    struct {
			ID, Kind, Level, Caution, Where, Act, Say, Place, Part string
			Points, Keypad                                         []string
			Answers                                                []answer
		}
		Open     []string
		Suspects []struct {
			Part string
			P    float64
		}
	}
	outcome struct {
		Outcome, Repair, Stop string
		Mended                []string
		P                     float64
		Checks                int
	}
	effect struct {
		Type, ID, Text, Level string
		At                    int64
		View                  *view
		Result                *outcome
	}
	decimal struct {
		M int64 `json:"m"`
		E int   `json:"e"`
	}
	value struct {
		D decimal `json:"d"`
		U string  `json:"u"`
	}
	reading struct {
		Value *value `json:"value,omitempty"`
		State string `json:"state,omitempty"`
		AC    string `json:"ac,omitempty"`
	}
	meaning struct {
		Kind    string   `json:"kind"`
		ID      string   `json:"id,omitempty"`
		Text    string   `json:"text,omitempty"`
		Reading *reading `json:"reading,omitempty"`
	}
)

// link is a running guide.
type link struct {
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bufio.Scanner
	at  int64
	cat catalogued
}

// dial starts the guide as a child process.
func dial(program string) (*link, error) {
	cmd := exec.Command(program, "talk", "-appliance", "furnace-hsi")
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	l := &link{cmd: cmd, in: in, out: bufio.NewScanner(out), at: 1_800_000_000_000}
	l.out.Buffer(nil, 4<<20)
	if !l.out.Scan() {
		l.close()
		return nil, fmt.Errorf("examine: no catalogue: %v", l.out.Err())
	}
	if err := json.Unmarshal(l.out.Bytes(), &l.cat); err != nil {
		l.close()
		return nil, fmt.Errorf("examine: catalogue: %w", err)
	}
	return l, nil
}

func (l *link) close() {
	l.in.Close()
	_ = l.cmd.Wait() // it ends with its input
}

// send gives one event, ms after the last one, and takes the effects.
func (l *link) send(ms int64, event map[string]any) ([]effect, error) {
	l.at += ms
	event["at"] = l.at
	data, err := json.Marshal(event)
	if err != nil {
		return nil, err
	}
	if _, err := l.in.Write(append(data, '\n')); err != nil {
		return nil, fmt.Errorf("examine: the guide is gone: %w", err)
	}
	var out []effect
	for taken := 0; taken < 1; {
		if !l.out.Scan() {
			return out, fmt.Errorf("examine: the guide ended: %v", l.out.Err())
		}
		var e effect
		if err := json.Unmarshal(l.out.Bytes(), &e); err != nil {
			return out, err
		}
		switch e.Type {
		case "taken":
			taken++
		case "refused":
			return out, fmt.Errorf("examine: refused: %s", e.Text)
		}
		out = append(out, e)
	}
	return out, nil
}

// say sends what a person means.
func (l *link) say(ms int64, m meaning) ([]effect, error) {
	return l.send(ms, map[string]any{"type": "said", "said": map[string]any{"source": "line", "text": m.words(), "meanings": []meaning{m}}})
}

// words writes a meaning for the record.
func (m meaning) words() string {
	switch {
	case m.Reading != nil && m.Reading.State != "":
		return m.Reading.State
	case m.Reading != nil:
		return fmt.Sprintf("%de%d %s", m.Reading.Value.D.M, m.Reading.Value.D.E, m.Reading.Value.U)
	case m.Text != "":
		return m.Text
	}
	return m.ID
}
