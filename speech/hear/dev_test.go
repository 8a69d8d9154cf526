package hear_test

import (
	"fmt"
	"os"
	"testing"
	"time"

	data "readback/flows/phrase"
	"readback/speech/hear"
)

func TestDev(t *testing.T) {
	if os.Getenv("DEV") == "" {
		t.Skip("DEV is not set")
	}
	lex, _ := data.Load()
	b, err := hear.Open(lex)
	if err != nil {
		t.Skip(err)
	}
	defer b.Close()
	vs := hear.Voices()
	t.Log(len(vs), "voices")
	items := hear.Readings(240, 11)
	noise := map[string][]float64{"pink": hear.Noise("pink", 3, 16000*60), "fan": hear.Noise("fan", 3, 16000*60)}
	n := 0
	fmt.Sscan(os.Getenv("DEV"), &n)
	for _, c := range hear.Conditions {
		if only := os.Getenv("ONLY"); only != "" && only != c.String() {
			continue
		}
		right, wrong, multi, total := 0, 0, 0, 0
		var delay []float64
		byVoice := map[string][2]int{}
		start := time.Now()
		for i, it := range items {
			if it.Held() || total >= n {
				continue
			}
			v := vs[i%len(vs)]
			pcm, err := v.Say(it.Say)
			if err != nil {
				t.Fatal(err)
			}
			var nz []float64
			if c.Noise != "" {
				nz = noise[c.Noise][(i*7919)%800000:]
			}
			clip := hear.Clip(pcm, -26, c.SNR, nz, 0.8, 2)
			h, err := b.Hear(clip, 12800+len(pcm))
			if err != nil {
				t.Fatal(err)
			}
			total++
			k := byVoice[v.Name]
			k[1]++
			ok := len(h.Final) > 0 && it.Right(h.Final[len(h.Final)-1].Best())
			if len(h.Final) > 1 {
				multi++
			}
			if ok {
				right++
				k[0]++
				delay = append(delay, h.Delay)
			} else {
				if len(h.Final) > 0 && len(h.Final[len(h.Final)-1].Meanings) > 0 {
					wrong++
				}
				if os.Getenv("SHOW") != "" {
					s := ""
					for _, u := range h.Final {
						s += fmt.Sprintf(" | %q %s", u.Text, u.Fault)
					}
					t.Logf("%s %s: %q%s", c, v.Name, it.Say, s)
				}
			}
			byVoice[v.Name] = k
		}
		sum := 0.0
		for _, d := range delay {
			sum += d
		}
		t.Logf("%s: right %.1f%% wrong %.1f%% split %d n %d, mean delay %.2f s, %.2f s a clip; %v", c, 100*float64(right)/float64(total), 100*float64(wrong)/float64(total), multi, total, sum/float64(len(delay)), time.Since(start).Seconds()/float64(total), byVoice)
	}
}
