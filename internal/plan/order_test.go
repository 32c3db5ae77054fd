package plan_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

func stepIDs(t *testing.T, c *card.Card, b plan.Bench) []string {
	t.Helper()
	p, list := plantest.Made(c, b)
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
	three := plan.Bench{Circuits: []string{"engine", "primary", "gearbox"}}
	tests := []struct {
		card   string
		bench  plan.Bench
		before string
		after  string
	}{
		{"hallowmoor-drover-1360", three, "level-found-gearbox", "warm-up"},
		{"hallowmoor-drover-1360", three, "warm-up", "level-found-hot-engine"},
		{"tessaly-corda-570", plan.Bench{}, "warm-up", "level-found-engine"},
		{"hallowmoor-drover-1360", three, "top-up-gearbox", "first-start"},
		{"hallowmoor-drover-1360", three, "first-start", "level-interim-engine"},
		{"hallowmoor-drover-1360", three, "level-interim-engine", "leak-look"},
		{"hallowmoor-drover-1360", three, "ride", "top-up-engine"},
		{"tessaly-corda-570", plan.Bench{}, "second-start", "top-up-engine"},
		{"tessaly-corda-570", plan.Bench{}, "top-up-engine", "leak-look"},
		{"hallowmoor-drover-1360", three, "level-cover-off-inspection", "pour-all-primary"},
		{"hallowmoor-drover-1360", three, "top-up-primary", "level-cover-on-inspection"},
		{"hallowmoor-drover-1360", three, "level-cover-on-inspection", "caps-on"},
	}
	for _, tt := range tests {
		ids := stepIDs(t, plantest.Sample(t, tt.card), tt.bench)
		first, second := slices.Index(ids, tt.before), slices.Index(ids, tt.after)
		if first < 0 || second < 0 || first >= second {
			t.Errorf("%s: %q is step %d, %q is step %d of %v", tt.card, tt.before, first, tt.after, second, ids)
		}
	}
}

// A filter that the card tightens by a turn doesn't show a missing torque.
func TestMake_TurnStandsForTorque(t *testing.T) {
	p, _ := plantest.Made(plantest.Sample(t, "tessaly-corda-570"), plan.Bench{})
	for _, s := range p.Steps {
		if s.Word == "step.filter-on-turn" && (len(s.Figures) != 1 || s.Figures[0].Name != "figure.turn") {
			t.Errorf("the filter shows %+v, want its turn alone", s.Figures)
		}
	}
}

// Oils of several circuits run out one after the other: each is looked at and
// measured before the next one can join it in the tray.
func TestMake_OneOilAfterTheOther(t *testing.T) {
	c := plantest.Sample(t, "quillane-vastro-1010")
	ids := stepIDs(t, c, plan.Bench{Circuits: []string{"engine", "gearbox", "final"}})
	last := -1
	for _, of := range []struct{ circuit, drain string }{{"engine", "drain"}, {"gearbox", "gearbox-drain"}, {"final", "final-drain"}} {
		for _, id := range []string{"tray-" + of.circuit, "open-drain-plug-" + of.drain, "run-out-" + of.circuit, "look-oil-" + of.circuit, "measure-" + of.circuit} {
			at := slices.Index(ids, id)
			if at <= last {
				t.Errorf("%q is step %d and should come after step %d of %v", id, at, last, ids)
			}
			last = at
		}
	}
}

// A level that is read through a screw has a step before that opens it, and one after
// that closes it, also before anything is drained; but a cover on a paper gasket is
// opened only once, to be filled.
func TestMake_CoverIsClosedBeforeTheEngineRuns(t *testing.T) {
	for _, tt := range []struct {
		card, circuit string
		want          []string
	}{
		{"hallowmoor-drover-1360", "primary", []string{"warm-up", "level-cover-off-inspection", "top-up-primary", "level-cover-on-inspection"}},
		{"quillane-vastro-1010", "final", []string{"peek-off-final-level", "level-found-final", "peek-on-final-level", "warm-up", "level-plug-off-final-level", "top-up-final", "level-plug-on-final-level"}},
		{"skarvald-kettra-290", "engine", []string{"warm-up", "peek-off-check", "level-found-engine", "peek-on-check", "second-start", "level-plug-off-check", "top-up-engine", "level-plug-on-check"}},
	} {
		var got []string
		for _, id := range stepIDs(t, plantest.Sample(t, tt.card), plan.Bench{Circuits: []string{tt.circuit}}) {
			if slices.Contains(tt.want, id) || strings.HasPrefix(id, "peek-") {
				got = append(got, id)
			}
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: steps %v, want %v", tt.card, got, tt.want)
		}
	}
}

// An oil without a gauge asks for no level; a hole, which has no marks, asks
// whether the oil runs out.
func TestMake_AsksWhatTheGaugeCanSay(t *testing.T) {
	p, _ := plantest.Made(plantest.Sample(t, "brunnveld-halvar-940"), plan.Bench{Circuits: []string{"engine", "gearbox", "final"}})
	asked := map[string][]string{}
	for _, s := range p.Steps {
		for _, a := range s.Asks {
			if a.What == plan.AskLevel {
				asked[a.About] = a.Choice
			}
		}
	}
	if _, ok := asked["gearbox"]; ok || len(asked["engine"]) != 5 || !slices.Contains(asked["final"], "runs-out") || slices.Contains(asked["final"], "middle") {
		t.Errorf("levels asked: %v", asked)
	}
}

// A centrifugal filter is opened only when the bench asks for it, and no volume
// depends on it.
func TestMake_CentrifugalFilter(t *testing.T) {
	c := plantest.Sample(t, "marrowick-tamber-95")
	for _, also := range [][]string{nil, {"rotor"}} {
		p, list := plantest.Made(c, plan.Bench{Also: also})
		if p == nil {
			t.Fatalf("also %v: %v", also, list)
		}
		opened := slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return s.Word == "step.filter-off-centrifugal" })
		if opened != (also != nil) || p.Oils[0].Due.First() != "0.7 L" || len(p.Also) != 1 || (p.Also[0].Count > 0) != opened {
			t.Errorf("also %v: opened %v, due %s, offered %+v", also, opened, p.Oils[0].Due.First(), p.Also)
		}
	}
}

// Step ids differ where a step's word and an id make the same name.
func TestMake_StepIDsDoNotCollide(t *testing.T) {
	hot := card.Level{Device: "window", State: "hot", Stance: "upright"}
	warm := card.Level{Device: "window", State: "warm", Stance: "upright"}
	c := &card.Card{Format: card.Format, Version: card.Version, ID: "drawn", Make: "Plainford", Model: "One", Layout: card.WetSump,
		Circuits: []card.Circuit{{ID: "hot-x", Role: card.GearboxOil, Level: warm}, {ID: "x", Role: card.EngineOil, Level: hot}}}
	ids := stepIDs(t, c, plan.Bench{})
	if !slices.Contains(ids, "level-found-hot-x") || !slices.Contains(ids, "level-found-hot-x-again") {
		t.Errorf("steps %v", ids)
	}
}
