package job

import (
	"fmt"
	"readback/core/worksite"
)

var ZZ func(map[situation]bool)

func Dims() {
	ZZ = func(seen map[situation]bool) {
		n := len(seen)
		er := func(name string, f func(k *situation)) {
			m := map[situation]bool{}
			for k := range seen {
				f(&k)
				m[k] = true
			}
			fmt.Printf("%s: %d -> %d (%.2f)\n", name, n, len(m), float64(n)/float64(len(m)))
		}
		er("power", func(k *situation) { k.power = 0 })
		er("proof", func(k *situation) { k.proof = 0 })
		er("call", func(k *situation) { k.call = 0 })
		er("covers", func(k *situation) { k.covers = worksite.Set{} })
		er("wires", func(k *situation) { k.wires = false })
		er("jumper", func(k *situation) { k.jumper = false })
		er("held", func(k *situation) { k.held = false })
		er("jack", func(k *situation) { k.jack = false })
		er("series", func(k *situation) { k.series = false })
		er("placed", func(k *situation) { k.placed = false })
		er("drained", func(k *situation) { k.drained = false; k.shown = false })
		er("resets", func(k *situation) { k.resets = false })
		er("kind", func(k *situation) { k.kind = "" })
		er("act", func(k *situation) { k.act = worksite.Act{} })
		er("need", func(k *situation) { k.need = 0 })
		er("consent", func(k *situation) { k.consent = 0 })
		er("ending", func(k *situation) { k.ending = false })
		er("leaveOn", func(k *situation) { k.leaveOn = false })
		er("noMeter", func(k *situation) { k.noMeter = false })
		er("noProof", func(k *situation) { k.noProof = false })
		er("handled", func(k *situation) { k.handled = false })
		er("leaveitems", func(k *situation) { k.leave = false; k.items = false })
		er("stopped", func(k *situation) { k.stopped = false })
		er("refused", func(k *situation) { k.refused = 0 })
		er("bad", func(k *situation) { k.bad = 0 })
		er("alarm", func(k *situation) { k.alarm = "" })
		er("doubt", func(k *situation) { k.doubtAsk = false })
		e := map[string]int{}
		for k := range seen { e[fmt.Sprint(k.ending, k.noMeter, k.noProof)]++ }
		fmt.Println(e)
	}
}
