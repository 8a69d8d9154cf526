package number

import "strings"

// form is one way of reading number words as written digits.
type form struct {
	digits string // "26.10", "-0.5"
	cost   float64
	homo   bool // a homophone was used
	oh     bool // the word was "oh" or the letter o
}

// forms returns every reading of exactly these words as a number.
func forms(ts []token) []form {
	if len(ts) == 0 {
		return nil
	}
	if len(ts) == 1 && ts[0].dec != "" {
		return []form{{digits: ts[0].dec}}
	}
	if w := ts[0].word; w == "minus" || w == "negative" {
		var out []form
		for _, f := range forms(ts[1:]) {
			if !strings.HasPrefix(f.digits, "-") && !f.homo {
				f.digits, f.oh = "-"+f.digits, false
				out = append(out, f)
			}
		}
		return out
	}
	if f, ok := halves(ts); ok {
		return []form{f}
	}
	for i, t := range ts {
		if t.word == "point" || t.word == "decimal" || t.word == "dot" {
			return pointed(ts[:i], ts[i+1:])
		}
	}
	return append(whole(ts), implied(ts)...)
}

// pointed reads "whole point fraction".
func pointed(before, after []token) []form {
	heads := []form{{digits: "0"}}
	if len(before) > 0 {
		heads = whole(before)
	}
	var out []form
	for _, h := range heads {
		for _, f := range fraction(after) {
			out = append(out, form{digits: h.digits + "." + f.digits, cost: h.cost + f.cost, homo: h.homo || f.homo})
		}
	}
	return out
}

// fraction reads what stands after the point: digits, or one number below a hundred.
func fraction(ts []token) []form {
	var out []form
	if d, ok := spelled(ts); ok {
		out = append(out, form{digits: d})
	} else if d, ok := homophone(ts); ok {
		out = append(out, form{digits: d, cost: costHomophone, homo: true})
	}
	if d, ok := twoDigits(ts); ok {
		out = append(out, form{digits: d, cost: 0.2})
	}
	return out
}

// whole reads a number without a point.
func whole(ts []token) []form {
	var out []form
	if n, homo, ok := cardinal(ts); ok {
		f := form{digits: decimal(n), homo: homo, oh: len(ts) == 1 && (ts[0].word == "oh" || ts[0].word == "o")}
		if homo {
			f.cost = costHomophone
		}
		out = append(out, f)
	}
	if d, ok := spelled(ts); ok && len(d) > 1 && d[0] != '0' {
		return append(out, form{digits: d})
	}
	if head, tail, ok := pair(ts); ok {
		out = append(out, form{digits: head + tail})
	}
	return out
}

// implied reads numbers whose point was not said: "four seven", "one twenty", "twenty six four", "twenty four oh".
func implied(ts []token) []form {
	if d, ok := spelled(ts); ok {
		switch {
		case len(ts) == 2 && len(d) == 2 && d[0] != '0':
			return []form{{digits: d[:1] + "." + d[1:], cost: costDropped}}
		case len(d) == 3 && d[0] != '0' && d[1] == '0':
			return []form{{digits: d[:1] + "." + d[1:], cost: costPair + costDropped}}
		}
		return nil
	}
	if head, tail, ok := pair(ts); ok {
		return []form{{digits: head + "." + tail, cost: costPair}}
	}
	if len(ts) == 3 && tenWords[ts[0].word] > 0 { // tens, ones, one digit more
		head, ok1 := twoDigits(ts[:2])
		last, ok2 := digitWords[ts[2].word]
		if ok1 && ok2 && head[1] != '0' {
			return []form{{digits: head + "." + last}, {digits: head + last, cost: costDropped}}
		}
	}
	if n := len(ts); n > 2 && ts[n-2].word == "and" { // "two hundred and five"
		head, _, ok1 := cardinal(ts[:n-2])
		last, ok2 := digitWords[ts[n-1].word]
		if ok1 && ok2 && last != "0" {
			return []form{{digits: decimal(head) + "." + last, cost: costAnd}}
		}
	}
	return nil
}

// pair reads a small number followed by a two-digit one: "one twenty" is 1 and 20.
func pair(ts []token) (head, tail string, ok bool) {
	if len(ts) < 2 {
		return "", "", false
	}
	h, isDigit := digitWords[ts[0].word]
	if t, isTeen := teenWords[ts[0].word]; isTeen && t > 10 {
		h, isDigit = decimal(t), true
	}
	if !isDigit || h == "0" {
		return "", "", false
	}
	t, ok := twoDigits(ts[1:])
	return h, t, ok
}

// twoDigits reads a number from ten to ninety-nine.
func twoDigits(ts []token) (string, bool) {
	switch len(ts) {
	case 1:
		if n := teenWords[ts[0].word] + tenWords[ts[0].word]; n > 0 {
			return decimal(n), true
		}
	case 2:
		n, d := tenWords[ts[0].word], digitWords[ts[1].word]
		if n > 0 && d != "" && d != "0" {
			return decimal(n)[:1] + d, true
		}
	}
	return "", false
}

// spelled reads digits said one by one, "double five" and "triple five" included.
func spelled(ts []token) (string, bool) {
	var b strings.Builder
	for i := 0; i < len(ts); i++ {
		times := 1
		switch ts[i].word {
		case "double":
			times = 2
		case "triple":
			times = 3
		}
		if times > 1 {
			if i++; i == len(ts) {
				return "", false
			}
		}
		d, ok := digitWords[ts[i].word]
		if !ok {
			return "", false
		}
		b.WriteString(strings.Repeat(d, times))
	}
	return b.String(), b.Len() > 0
}

func homophone(ts []token) (string, bool) {
	if len(ts) != 1 {
		return "", false
	}
	d, ok := homophones[ts[0].word]
	return d, ok
}

// cardinal reads a properly built whole number: "one thousand two hundred and five", "twelve hundred", "a hundred".
func cardinal(ts []token) (n int64, homo, ok bool) {
	if len(ts) == 1 {
		if d, ok := digitWords[ts[0].word]; ok {
			return int64(d[0] - '0'), false, true
		}
	}
	var total int64
	rest := ts
	for _, s := range scaleOrder {
		i := index(rest, s)
		if i < 0 {
			continue
		}
		n, h, ok := belowThousand(rest[:i])
		if !ok {
			return 0, false, false
		}
		total, homo, rest = total+n*scaleWords[s], homo || h, rest[i+1:]
		if len(rest) > 1 && rest[0].word == "and" {
			rest = rest[1:]
		}
	}
	if len(rest) == 0 {
		return total, homo, total > 0
	}
	n, h, ok := belowThousand(rest)
	if total > 0 && n >= 1000 { // "two thousand twelve hundred"
		return 0, false, false
	}
	return total + n, homo || h, ok
}

// belowThousand reads 1 to 999, and "twelve hundred" up to "nineteen hundred and ninety nine".
func belowThousand(ts []token) (n int64, homo, ok bool) {
	i := index(ts, "hundred")
	if i < 0 {
		return belowHundred(ts)
	}
	h := int64(1)
	if i > 0 && ts[0].word != "a" {
		if h, homo, ok = belowHundred(ts[:i]); !ok || h > 19 || h == 10 {
			return 0, false, false
		}
	} else if i > 1 {
		return 0, false, false
	}
	rest := ts[i+1:]
	if len(rest) > 1 && rest[0].word == "and" {
		rest = rest[1:]
	}
	if len(rest) == 0 {
		return h * 100, homo, true
	}
	n, h2, ok := belowHundred(rest)
	return h*100 + n, homo || h2, ok
}

// belowHundred reads 1 to 99.
func belowHundred(ts []token) (n int64, homo, ok bool) {
	digit := func(w string) (int64, bool, bool) {
		if d := digitWords[w]; d != "" && d != "0" {
			return int64(d[0] - '0'), false, true
		}
		if d := homophones[w]; d != "" {
			return int64(d[0] - '0'), true, true
		}
		return 0, false, false
	}
	switch len(ts) {
	case 1:
		if n := teenWords[ts[0].word] + tenWords[ts[0].word]; n > 0 {
			return n, false, true
		}
		return digit(ts[0].word)
	case 2:
		if t := tenWords[ts[0].word]; t > 0 {
			d, homo, ok := digit(ts[1].word)
			return t + d, homo, ok
		}
	}
	return 0, false, false
}

// halves reads "a half", "two and a half", "three quarters", "two and a quarter".
func halves(ts []token) (form, bool) {
	part := map[string]string{"half": "5", "quarter": "25"}
	n := len(ts)
	frac := part[ts[n-1].word]
	switch {
	case frac != "" && n == 1, frac != "" && n == 2 && (ts[0].word == "a" || ts[0].word == "one"):
		return form{digits: "0." + frac}, true
	case n == 2 && ts[0].word == "three" && ts[1].word == "quarters":
		return form{digits: "0.75"}, true
	case frac != "" && n > 3 && ts[n-3].word == "and" && ts[n-2].word == "a":
		if v, homo, ok := cardinal(ts[:n-3]); ok && !homo {
			return form{digits: decimal(v) + "." + frac}, true
		}
	}
	return form{}, false
}

func index(ts []token, word string) int {
	for i, t := range ts {
		if t.word == word {
			return i
		}
	}
	return -1
}

func decimal(n int64) string {
	var b [20]byte
	i := len(b)
	for {
		i--
		b[i] = byte('0' + n%10)
		if n /= 10; n == 0 {
			return string(b[i:])
		}
	}
}
