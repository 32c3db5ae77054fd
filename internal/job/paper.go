package job

import (
	"maps"
	"strconv"
	"strings"

	"tidysump/internal/plan"
)

// What a Billed event writes; its text is what was typed, the input of the
// operation "bill". Nothing that follows from it is stored.
const (
	Estimate = "estimate"
	Bill     = "bill"
)

// billed takes an estimate or a bill in, in place of one written before. A job cost
// what its bill says, and what its estimate says as long as there is no bill.
func (r *replayer) billed(e *placed) {
	others := r.state.Papers[:0]
	for _, p := range r.state.Papers {
		if p.What != e.What {
			others = append(others, p)
		}
	}
	r.state.Papers = append(others, *e.Event)
	r.state.Costs = ""
	for _, p := range r.state.Papers {
		if p.What == Bill || r.state.Costs == "" {
			r.state.Costs = p.ID
		}
	}
}

// BillLines lists what a job is charged for: the parts laid out, of each oil what
// was poured, or what is due as long as nothing was; the work and the waste. The
// value "line" is the kind of line, "count" how much of it, empty when that is
// not known, and "key" what its price is remembered by.
func (s *State) BillLines() []plan.Item {
	var lines []plan.Item
	for _, part := range s.parts {
		line := plan.Item{Word: part.Word, Values: maps.Clone(part.Values), Count: part.Count}
		kind, count := "part", strconv.Itoa(max(part.Count, 1))
		if part.Oil != "" {
			line.Word, kind, count = "bill.oil", "oil", s.pouredOrDue(part.Oil)
		}
		line.Values["line"], line.Values["count"], line.Values["key"] = kind, count, keyOf(&line)
		if !billedAs(lines, &line) {
			lines = append(lines, line)
		}
	}
	for _, kind := range [...]string{"labour", "waste"} {
		lines = append(lines, plan.NewItem(0, "bill."+kind, "line", kind, "key", "bill."+kind))
	}
	return lines
}

// billedAs writes a part as it is sold, without its place: a seal by kind and size. It
// reports whether that was counted in with one that is alike.
func billedAs(lines []plan.Item, line *plan.Item) bool {
	switch line.Word {
	case "part.filter-spin-on":
		line.Word = "bill.filter-spin-on"
	case "part.filter-cartridge":
		line.Word = "bill.filter-cartridge"
	case "part.filter-unknown":
		line.Word = "bill.filter-unknown"
	}
	if line.Values["kind"] == "" {
		return false
	}
	line.Word = "bill.seal"
	if line.Values["size"] == "" {
		line.Word = "bill.gasket"
	}
	for i := range lines {
		have := &lines[i]
		if have.Word == line.Word && have.Values["key"] == line.Values["key"] && have.Values["size"] == line.Values["size"] {
			have.Count += line.Count
			have.Values["count"] = strconv.Itoa(have.Count)
			return true
		}
	}
	return false
}

// keyOf tells a line from others like it on any bike: a seal by its kind, an oil by
// what it is for.
func keyOf(line *plan.Item) string {
	for _, name := range [...]string{"kind", "of"} {
		if v, ok := line.Values[name]; ok {
			return strings.TrimSpace(line.Word + " " + v)
		}
	}
	return line.Word
}

// Recounted are the counts that a bill doesn't take over from its estimate, by the
// keys of their lines: of each oil what was poured counts, and not what was meant to
// be.
func Recounted(lines []plan.Item) map[string]string {
	counts := map[string]string{}
	for _, line := range lines {
		key, count := line.Values["key"], line.Values["count"]
		if line.Values["line"] == "oil" && count != "" && counts[key] == "" {
			counts[key] = count
		}
	}
	return counts
}

// pouredOrDue is the volume of a circuit in the person's units; "" where neither
// is known.
func (s *State) pouredOrDue(circuit string) string {
	for n := range s.Oils {
		if o := &s.Oils[n]; o.Circuit != circuit {
			continue
		} else if len(o.Poured) > 0 {
			return o.Poured[0]
		} else {
			return first(o.Due)
		}
	}
	return ""
}

func first(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[0]
}
