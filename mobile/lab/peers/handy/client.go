package handy

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os/exec"
)

// option is one answer that the screen offers.
type option struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`
	Text string `json:"text"`
}

// step is the step that the screen shows.
type step struct {
	ID      string   `json:"id"`
	Kind    string   `json:"kind"`
	Level   string   `json:"level"`
	Caution string   `json:"caution"`
	Where   string   `json:"where"`
	Meter   string   `json:"meter"`
	Act     string   `json:"act"`
	Say     string   `json:"say"`
	Points  []string `json:"points"`
	Parts   []string `json:"parts"`
	Place   string   `json:"place"`
	Answers []option `json:"answers"`
	Keypad  []string `json:"keypad"`
	Part    string   `json:"part"`
	Until   int64    `json:"until"`
	Power   string   `json:"power"`
}

func (s step) has(id string) bool {
	for _, a := range s.Answers {
		if a.ID == id {
			return true
		}
	}
	return false
}

func (s step) kindOf(id string) string {
	for _, a := range s.Answers {
		if a.ID == id {
			return a.Kind
		}
	}
	return "choice"
}

// choices are the offered answers that are no commands.
func (s step) choices() []string {
	var out []string
	for _, a := range s.Answers {
		if a.Kind == "choice" {
			out = append(out, a.ID)
		}
	}
	return out
}

type suspect struct {
	Part string  `json:"part"`
	Name string  `json:"name"`
	P    float64 `json:"p"`
}

// view is the screen.
type view struct {
	Stage string `json:"stage"`
	State string `json:"state"`
	Step  *step  `json:"step"`
	Said  string `json:"said"`
	Heard *struct {
		Text  string `json:"text"`
		Taken string `json:"taken"`
	} `json:"heard"`
	Suspects []suspect `json:"suspects"`
	Site     struct {
		Power  string   `json:"power"`
		Call   string   `json:"call"`
		Covers []string `json:"covers"`
		Lifted []string `json:"lifted"`
	} `json:"site"`
}

type effect struct {
	Type   string          `json:"type"`
	ID     string          `json:"id"`
	Text   string          `json:"text"`
	Level  string          `json:"level"`
	At     int64           `json:"at"`
	View   *view           `json:"view"`
	Result json.RawMessage `json:"result"`
}

// catalogue is the first line of the program, as far as it is used here.
type catalogue struct {
	Checks []struct {
		ID, Stage, Function, Unit, Quantity, Red, Black, Part, Power, Call, At, Hazard string
		Options, Lift, Places                                                          []string
	} `json:"checks"`
	Repairs []struct {
		ID, Name, Part, Kind, Stop string
		Steps                      []string
	} `json:"repairs"`
	Parts  []struct{ ID, Place string } `json:"parts"`
	Places []struct {
		ID, Name string
		Cover    bool
	} `json:"places"`
}

// client talks with one process of the program.
type client struct {
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bufio.Scanner
	cat catalogue
}

func dial(binary, appliance string) (*client, error) {
	cmd := exec.Command(binary, "talk", "-appliance", appliance)
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
	sc := bufio.NewScanner(out)
	sc.Buffer(make([]byte, 1<<16), 1<<24)
	c := &client{cmd: cmd, in: in, out: sc}
	if !sc.Scan() {
		return nil, fmt.Errorf("no catalogue from %s", binary)
	}
	if err := json.Unmarshal(sc.Bytes(), &c.cat); err != nil {
		return nil, fmt.Errorf("catalogue: %w", err)
	}
	return c, nil
}

func (c *client) close() {
	c.in.Close()
	c.cmd.Process.Kill()
	c.cmd.Wait()
}

// read takes the effects up to the next "taken", "refused" or the end.
func (c *client) read() ([]effect, error) {
	var out []effect
	for c.out.Scan() {
		var e effect
		if err := json.Unmarshal(c.out.Bytes(), &e); err != nil {
			return out, fmt.Errorf("effect: %w", err)
		}
		out = append(out, e)
		if e.Type == "taken" || e.Type == "refused" {
			return out, nil
		}
	}
	return out, io.EOF
}

func (c *client) send(event map[string]any) ([]effect, error) {
	b, err := json.Marshal(event)
	if err != nil {
		return nil, err
	}
	if _, err := c.in.Write(append(b, '\n')); err != nil {
		return nil, err
	}
	return c.read()
}
