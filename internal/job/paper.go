package job

import (
	"maps"
	"strconv"

	"tidysump/internal/plan"
)

// What a Billed event writes; its text is what was typed, the input of the
// operation "bill". Nothing that follows from it is kept.
const (
	Estimate = "estimate"
	Bill     = "bill"
)

// BillLines lists what a job is charged for: the parts laid out, of each oil what
// was poured, or what is due as long as nothing was; the work and the waste. The
// value "line" is the kind of line, "count" how much of it, empty when that is
// not known.
func (s *State) BillLines() []plan.Item {
	var lines []plan.Item
	oils := s.Oils
	for _, part := range s.parts {
		line := plan.Item{Word: part.Word, Values: maps.Clone(part.Values), Count: part.Count}
		kind, count := "part", strconv.Itoa(max(part.Count, 1))
		if part.Word == "part.oil" {
			line.Word, kind, count = "bill.oil", "oil", first(oils[0].Poured)
			if count == "" {
				count = first(oils[0].Due)
			}
			oils = oils[1:]
		}
		line.Values["line"], line.Values["count"] = kind, count
		lines = append(lines, line)
	}
	for _, kind := range [...]string{"labour", "waste"} {
		lines = append(lines, plan.NewItem(0, "bill."+kind, "line", kind))
	}
	return lines
}

func first(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[0]
}
