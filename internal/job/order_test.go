package job_test

import (
	"slices"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/job"
)

func stepIDs(t *testing.T, c *card.Card, b job.Bench) []string {
	t.Helper()
	p, list := job.Make(c, b)
	if p == nil {
		t.Fatalf("no plan: %v", list)
	}
	ids := make([]string, len(p.Steps))
	for i, s := range p.Steps {
		ids[i] = s.ID
	}
	return ids
}

// A level is read in the state that the card asks for: cold oils before the
// engine runs, warm and hot ones after. A cover that is opened to read or fill
// goes back on. Common practice, no source.
func TestMake_Order(t *testing.T) {
	three := job.Bench{Circuits: []string{"engine", "primary", "gearbox"}}
	tests := []struct {
		card   string
		bench  job.Bench
		before string
		after  string
	}{
		{"hallowmoor-drover-1700", three, "level-found-gearbox", "warm-up"},
		{"hallowmoor-drover-1700", three, "warm-up", "level-found-hot-engine"},
		{"tessaly-corda-650", job.Bench{}, "warm-up", "level-found-engine"},
		{"hallowmoor-drover-1700", three, "top-up-gearbox", "first-start"},
		{"hallowmoor-drover-1700", three, "first-start", "top-up-engine"},
		{"hallowmoor-drover-1700", three, "level-cover-off-inspection", "pour-all-primary"},
		{"hallowmoor-drover-1700", three, "top-up-primary", "level-cover-on-inspection"},
		{"hallowmoor-drover-1700", three, "level-cover-on-inspection", "caps-on"},
	}
	for _, tt := range tests {
		ids := stepIDs(t, sample(t, tt.card), tt.bench)
		first, second := slices.Index(ids, tt.before), slices.Index(ids, tt.after)
		if first < 0 || second < 0 || first >= second {
			t.Errorf("%s: %q is step %d, %q is step %d of %v", tt.card, tt.before, first, tt.after, second, ids)
		}
	}
}

// A filter that the card tightens by a turn doesn't show a missing torque.
func TestMake_TurnStandsForTorque(t *testing.T) {
	p, _ := job.Make(sample(t, "tessaly-corda-650"), job.Bench{})
	for _, s := range p.Steps {
		if s.Word == "step.filter-on" && (len(s.Figures) != 1 || s.Figures[0].Name != "figure.turn") {
			t.Errorf("the filter shows %+v, want its turn alone", s.Figures)
		}
	}
}
