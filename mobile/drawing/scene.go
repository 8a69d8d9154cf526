package drawing

import "fmt"

// region is where a place lies in a scene, and what the scene is.
type region struct {
	scene      string
	x, y, w, h float64
}

// regions are the places by their names in core/vocab, in a panel.
var regions = map[string]region{
	"room":         {"cabinet", 4, 22, 122, 120},
	"rooms":        {"house", 24, 62, 82, 68},
	"wall":         {"wall", 76, 46, 30, 28},
	"wall-base":    {"wall", 76, 46, 30, 28},
	"breakers":     {"breakers", 38, 26, 54, 100},
	"outdoors":     {"outdoors", 66, 66, 46, 26},
	"outdoor-unit": {"outdoors", 84, 98, 38, 36},
	"front":        {"cabinet", 34, 36, 62, 104},
	"switch":       {"cabinet", 6, 66, 18, 26},
	"pan":          {"cabinet", 30, 28, 70, 9},
	"splice":       {"cabinet", 20, 92, 18, 16},
	"slot":         {"cabinet", 95, 92, 12, 46},
	"upper":        {"cabinet", 38, 40, 54, 46},
	"burners":      {"cabinet", 46, 58, 38, 20},
	"lower":        {"cabinet", 38, 90, 54, 46},
	"duct":         {"cabinet", 42, 4, 46, 24},
	"coil":         {"cabinet", 38, 14, 54, 22},
	"heater":       {"heater", 20, 34, 90, 102},
	"heater-bay":   {"heater", 26, 100, 78, 32},
	"heater-rear":  {"heater", 46, 104, 50, 24},
}

var scenes = map[string]string{
	"cabinet": `<path d="M2 142h126" {w}/><path d="M42 36V4M88 36V4" /><path d="M34 36h62v104H34z" {f}/><path d="M38 40h54v46H38zM38 90h54v46H38z"/><path d="M46 58h38v20H46z"/><path d="M58 48h14M58 98h14" stroke-width="3"/>` +
		`<path d="M96 92h10v46H96"/><rect x="8" y="68" width="14" height="22" rx="2" {f}/><path d="M15 74v8"/><path d="M38 28h54v8H38z"/><path d="M112 138V60q0 -10 10 -10h8"/><path d="M30 100h8M4 126h30M4 132h30"/>`,
	"house":    `<path d="M6 70L65 18l59 52M18 60v78h94V60M2 138h126" {w}/><path d="M65 70v68M18 102h94"/><path d="M30 128h24M76 92h24" stroke-width="4"/>`,
	"wall":     `<path d="M2 138h126" {w}/><path d="M16 138V34h40v104M48 90v6"/><rect x="78" y="48" width="26" height="24" rx="4" {f}/><path d="M83 54h10v9h-10z"/><path d="M70 138V112M118 138V112M70 116h48"/>`,
	"breakers": `<path d="M38 26h54v100H38z" {f}/><path d="M92 26l24 12v100l-24 -12"/><path d="M44 40h18M68 40h18M44 54h18M68 54h18M44 68h18M68 68h18M44 82h18M68 82h18M44 96h18M68 96h18M44 110h18M68 110h18" stroke-width="6" stroke-opacity=".5"/>`,
	"outdoors": `<path d="M2 134h126" {w}/><path d="M4 134V44L40 12l30 28v94" {f}/><path d="M70 74h28v10H70" {g}/><path d="M104 72q8 -4 14 0M104 84q8 4 14 0"/><path d="M86 100h34v34H86z" {f}/><circle cx="103" cy="116" r="11"/><path d="M92 116h22M103 105v22"/>`,
	"heater":   `<path d="M2 138h126" {w}/><path d="M20 34h90v102H20z" {f}/><path d="M30 44h70v46H30z"/><path d="M44 86c-8 -10 4 -14 2 -28c10 12 12 20 4 28zM64 86c-8 -10 4 -14 2 -28c10 12 12 20 4 28zM84 86c-8 -10 4 -14 2 -28c10 12 12 20 4 28z"/><path d="M26 100h78v32H26z"/><circle cx="40" cy="116" r="8"/><path d="M52 110h38v16H52z"/><path d="M58 34V4h14v30"/>`,
}

// placePicture is the scene of a place with the place itself marked: a heavy frame, a tone, an arrow that points at it. way: "open" and
// "close" show its cover on its way.
func placePicture(id, way string) string {
	r, ok := regions[id]
	if !ok {
		return ""
	}
	s := scenes[r.scene]
	switch way {
	case "open", "close":
		s += fmt.Sprintf(`<rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" {g} stroke-width="3" stroke-dasharray="6 4"/>`, r.x, r.y, r.w, r.h)
		w, h := max(r.w*.8, 16), max(r.h*.8, 16)
		x, y := min(r.x+r.w*.55, panelW-w-3), min(r.y+r.h*.5, panelH-h-8)
		s += fmt.Sprintf(`<rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" fill="var(--sheet, #fff)" stroke-width="3"/><rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" {g} stroke-width="3"/>`, x, y, w, h, x, y, w, h)
		cx, cy := x+w/2, y+h/2
		if way == "open" {
			s += arrow(cx-14, cy-10, cx+14, cy+12)
		} else {
			s += arrow(cx+14, cy+12, cx-14, cy-10)
		}
		return s
	}
	s += fmt.Sprintf(`<rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" {g} stroke-width="5"/>`, r.x, r.y, r.w, r.h)
	cx, cy := r.x+r.w/2, r.y+r.h/2
	switch { // the arrow comes from where there is room
	case r.w > 80:
	case cx < 40:
		s += arrow(cx+44, cy-22, r.x+r.w+3, cy-4)
	case r.y > 30:
		s += arrow(panelW-2, r.y-16, min(r.x+r.w-4, 112), cy-3)
	default:
		s += arrow(panelW-2, cy+34, min(r.x+r.w-4, 112), cy+3)
	}
	return s
}
