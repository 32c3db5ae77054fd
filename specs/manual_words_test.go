package specs_test

import (
	"slices"
	"strings"
	"testing"

	readings "tidysump/internal/place"
)

// manualWords name what the page of a manual may say: of a thing an aspect, and the cells
// in which what was found is shown (static/app/manual/what.js and found.js).
func manualWords(*testing.T) []family {
	var things, aspects, cells, stems, notes []string
	for _, what := range readings.Whats() {
		thing, aspect := "", string(what)
		if at := strings.LastIndexByte(aspect, '.'); at >= 0 {
			thing, aspect = aspect[:at], aspect[at+1:]
			things = append(things, thing)
		}
		aspects = append(aspects, aspect)
		stem, rest, _ := strings.Cut(aspect, "-")
		switch {
		case thing == "":
			cells = append(cells, "bike")
		case thing == "interval" && !slices.Contains([]string{"distance", "months", "hours"}, stem):
			stems = append(stems, stem)
			if rest == "first" {
				notes = append(notes, aspect)
			}
		case strings.HasPrefix(thing, "oil.") && slices.Contains([]string{"grades", "marks", "service"}, aspect):
			cells = append(cells, thing)
		case strings.HasPrefix(thing, "oil."):
			cells = append(cells, string(what))
		}
	}
	return []family{
		{"manual.of.", things, plain},
		{"manual.is.", aspects, plain},
		{"manual.cell.", cells, plain},
		{"manual.cell.interval.", append(stems, "usual"), plain},
		{"manual.note.", append(notes, "displacement", "cooling", "marks", "service", "wait", "run", "band", "count", "time", "turn", "size"), plain},
	}
}
