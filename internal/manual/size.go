package manual

import (
	"strconv"
	"strings"

	"tidysump/internal/quantity"
)

// A key's size across flats, in millimetres. From memory.
const (
	leastKey = 3
	mostKey  = 60
	// The least hexagon of a plug; what is less beside a thread may be its length.
	leastHexagon = 10
)

// findSizes reads bare numbers beside a word for a key as its size: "SW 17", "clé de 17",
// "17er Ringschlüssel".
func (p *page) findSizes() {
	for n := range p.terms {
		t := &p.terms[n]
		if !p.isTool(t) {
			continue
		}
		i := t.to
		for k := 0; k < 2 && i < len(p.places) && p.sameLine(t.from, i) && (p.places[i].text == ":" || p.places[i].text == "(" || p.places[i].text == "." || p.places[i].function); k++ {
			i++
		}
		if p.sizeAt(i, t.from) {
			continue
		}
		for k := t.from - 1; k >= 0 && k >= t.from-2; k-- {
			if p.sizeAt(k, t.from) {
				break
			}
		}
	}
}

// isTool reports whether a term names a key or what a key turns.
func (p *page) isTool(t *term) bool {
	return t.has("tool.wrench") || t.has("drive.hexagon") || t.has("drive.hexagon-key")
}

// sameLine reports whether two tokens stand in one sentence without a gap.
func (p *page) sameLine(a, b int) bool {
	return p.places[a].sentence == p.places[b].sentence && p.places[b].gap != wide
}

// sizeAt takes a bare number as a size: behind the key's word, or before it with at most
// the letters of "17er" between them.
func (p *page) sizeAt(i, tool int) bool {
	if i < 0 || i >= len(p.places) || !p.sameLine(tool, i) {
		return false
	}
	t := &p.places[i]
	v, err := strconv.Atoi(t.text)
	if t.taken || t.kind != number || err != nil || v < leastKey || v > mostKey || i > 0 && t.gap == glued && p.places[i-1].kind == word {
		return false
	}
	next := p.at(i + 1)
	switch {
	case i < tool && i+1 != tool && !(next.kind == word && next.gap == glued && len(next.text) == 2):
		return false
	case i > tool && next.kind == number && next.gap != wide, i > tool && next.gap == glued && (next.kind == word || next.text == "-" || next.text == "/"):
		return false
	}
	if unit, _ := p.unitFrom(i + 1); unit != "" && unit != "min" && next.gap != wide {
		return false
	}
	base := float64(v)
	p.facts = append(p.facts, fact{kind: string(quantity.Length), text: t.text + " mm", from: i, to: i + 1, unit: "mm", low: base, high: base})
	p.take(i, i+1)
	return true
}

// otherDrive reports whether a word beside a key's size names another drive than a plain
// hexagon: "hexagon key, 8 across flats".
func (r *readings) otherDrive(t *term) bool {
	for i := max(t.from-4, 0); i < min(t.to+4, len(r.places)); i++ {
		if o := r.termAt(i); o != nil && r.sameLine(t.from, i) && (o.has("drive.hexagon-key") || o.has("drive.six-lobe")) {
			return true
		}
	}
	return false
}

// bracketSize reports whether a length stands in brackets right behind a part: its key's
// size, "drain plug (17 mm)".
func (r *readings) bracketSize(f *fact) bool {
	if f.unit != "mm" || f.low != f.high || f.low < leastKey || f.low > mostKey {
		return false
	}
	at := f.from
	if k := r.factAt(at - 2); k != nil && k.kind == "thread" && r.at(at-1).text == "," && r.at(at).gap != wide { // "M14, 17 mm"
		if r.at(k.from-1).text != "(" {
			return f.low >= leastHexagon
		}
		at = k.from
	}
	if r.at(at-1).text != "(" || !strings.Contains("),;", r.at(f.to).text) {
		return false
	}
	if k := r.factAt(at - 2); k != nil && k.kind == "thread" { // "drain bolt, M12 x 1.5 (17 mm)"
		if at = k.from; r.at(at-1).text != "," {
			at++
		}
	}
	n := r.mentionFrom(at) - 1
	return n >= 0 && r.mentions[n].to == at-1 && r.mentions[n].part != "" && (r.mentions[n].part != "filter" || r.about(r.mentions[n].from, at, "part.filter-bolt"))
}
