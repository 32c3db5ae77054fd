package job

import "strconv"

// What a Billed event writes; its text is what was typed, the input of the
// operation "bill". Nothing that follows from it is kept.
const (
	Estimate = "estimate"
	Bill     = "bill"
)

// ToBill lists what a job is charged for: the parts laid out, of each oil what
// was poured, or what is due as long as nothing was; the work and the waste. The
// value "line" is the kind of line, "count" how much of it, empty when that is
// not known.
func (s *State) ToBill() []Item {
	oils := s.Oils
	for i := range s.parts {
		part := &s.parts[i]
		line, count := "part", strconv.Itoa(max(part.Count, 1))
		if part.Word == "part.oil" {
			part.Word, line, count = "bill.oil", "oil", first(oils[0].Poured)
			if count == "" {
				count = first(oils[0].Due)
			}
			oils = oils[1:]
		}
		part.Values["line"], part.Values["count"] = line, count
	}
	for _, line := range [...]string{"labour", "waste"} {
		s.parts = append(s.parts, item(0, "bill."+line, "line", line))
	}
	return s.parts
}

func first(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[0]
}
