package fault_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/fault"
)

// said reads "lamp=on level=low +oil": answers, and what is at hand.
func said(text string) (answers map[string]string, hand []string) {
	answers = map[string]string{}
	for _, part := range strings.Fields(text) {
		if thing, isHand := strings.CutPrefix(part, "+"); isHand {
			hand = append(hand, thing)
			continue
		}
		q, a, _ := strings.Cut(part, "=")
		answers[q] = a
	}
	return answers, hand
}

// Cases as a mechanic would decide them: common practice, no source, but that US
// Army TM 5-3820-276-10-2 lets leaks of the classes I and II run with the level
// watched, and repairs one of class III first.
var cases = []struct{ id, said, want string }{
	{"burnt", "", "do-not-ride"},
	{"drop-plug", "", "do-not-ride"},
	{"drop-plug", "returns=nothing", "carry-on"},
	{"drop-plug", "returns=other", "do-not-ride"},
	{"drop-plug", "returns=damp", "ride-gently"},
	{"drop-plug", "returns=drops", "do-not-ride"},
	{"drop-plug", "returns=drops +spanner +tape", "ride-gently"},
	{"drop-plug", "returns=drops +tape", "do-not-ride"},
	{"drop-plug", "returns=drips", "do-not-ride"},
	{"drop-plug", "returns=drips +spanner +sealant", "do-not-ride"},
	{"drop-plug", "returns=drips +washer", "do-not-ride"},
	{"drop-plug", "returns=drips +spanner +washer +oil", "ride-gently"},
	{"drop-filter", "returns=nothing", "carry-on"},
	{"drop-filter", "returns=damp +grip", "ride-gently"},
	{"drop-filter", "returns=drops", "do-not-ride"},
	{"drop-filter", "returns=drips", "do-not-start"},
	{"drop-filter", "", "do-not-start"},
	{"drop-filter-cover", "returns=nothing", "carry-on"},
	{"drop-filter-cover", "returns=drops", "do-not-ride"},
	{"drop-filter-cover", "returns=drips", "do-not-start"},
	{"drop-filter-cover", "returns=drips +ring", "do-not-start"},
	{"drop-filter-cover", "returns=drips +spanner +ring +oil", "ride-gently"},
	{"drop-back", "returns=nothing front=dry", "carry-on"},
	{"drop-back", "returns=drops front=wet", "do-not-ride"},
	{"drop-back", "returns=drops", "do-not-ride"},
	{"drop-cover", "returns=drops", "ride-gently"},
	{"drop-cover", "returns=drips", "do-not-ride"},
	{"drop-hose", "returns=drips", "do-not-start"},
	{"drop-wheel", "tyre=yes returns=nothing", "do-not-ride"},
	{"drop-wheel", "returns=nothing", "do-not-ride"},
	{"drop-wheel", "tyre=no returns=nothing", "carry-on"},
	{"filter-burst", "tyre=no", "do-not-start"},
	{"lost-plug", "long=seconds tyre=no +plug +oil", "do-not-ride"},
	{"lost-plug", "long=longer tyre=no +plug +oil", "do-not-start"},
	{"lamp-start", "", "do-not-start"},
	{"lamp-start", "lamp=on level=right", "do-not-start"},
	{"lamp-start", "lamp=out level=right", "ride-gently"},
	{"lamp-start", "lamp=out", "do-not-start"},
	{"lamp-start", "lamp=out +oil", "ride-gently"},
	{"lamp-start", "lamp=flickers level=low +oil", "do-not-start"},
	{"lamp-riding", "level=right", "do-not-start"},
	{"lamp-riding", "level=low +oil", "do-not-ride"},
	{"lamp-flicker", "level=low", "do-not-start"},
	{"noise", "lamp=out noise=fades", "ride-gently"},
	{"noise", "lamp=on noise=fades", "do-not-start"},
	{"smoke-exhaust", "over=above", "do-not-start"},
	{"smoke-exhaust", "over=above +syringe", "do-not-start"},
	{"smoke-exhaust", "over=above airbox=dry +syringe", "ride-gently"},
	{"smoke-exhaust", "over=right airbox=oily", "do-not-start"},
	{"smoke-pipe", "pipe=spilt", "carry-on"},
	{"smoke-pipe", "pipe=leaks", "do-not-start"},
	{"clutch-slips", "slips=full", "ride-gently"},
	{"clutch-slips", "slips=always", "do-not-ride"},
	{"clutch-drags", "warm=goes", "carry-on"},
	{"plug-stuck", "tight=tight", "carry-on"},
	{"plug-rounded", "tight=moved", "do-not-ride"},
	{"plug-turns", "", "do-not-start"},
	{"plug-turns", "+rubber +oil", "ride-gently"},
	{"plug-mend", "", "do-not-start"},
	{"plug-mend", "boss=whole", "do-not-start"},
	{"plug-mend", "boss=whole +insert +washer +oil", "ride-gently"},
	{"plug-mend", "boss=whole +insert +oil", "do-not-start"},
	{"plug-mend", "boss=cracked +insert +washer +oil", "do-not-start"},
	{"plug-mend", "boss=other +insert +washer +oil", "do-not-start"},
	{"plug-askew", "askew=binds", "do-not-start"},
	{"torque-forgotten", "", "do-not-ride"},
	{"torque-forgotten", "+wrench", "carry-on"},
	{"too-tight", "feel=soft returns=nothing", "do-not-start"},
	{"wrong-washer", "returns=drops", "do-not-ride"},
	{"filter-backwards", "ran=on +grip", "do-not-start"},
	{"filter-backwards", "ran=no +grip", "carry-on"},
	{"filter-stuck", "torn=whole", "carry-on"},
	{"filter-stuck", "torn=torn", "do-not-start"},
	{"ring-missing", "ran=no", "do-not-start"},
	{"stud-out", "ran=no", "do-not-start"},
	{"stud-out", "ran=no +locker +wrench", "carry-on"},
	{"stud-out", "ran=on +locker +wrench", "do-not-start"},
	{"wrong-filter", "ran=no", "do-not-start"},
	{"wrong-filter", "ran=no match=differs +filter", "carry-on"},
	{"wrong-filter", "ran=out match=differs +grip", "do-not-start"},
	{"wrong-filter", "ran=out match=same", "ride-gently"},
	{"snapped", "held=cover sits=flush", "ride-gently"},
	{"snapped", "held=pressed sits=proud", "do-not-ride"},
	{"snapped", "held=plug sits=flush", "do-not-start"},
	{"snapped", "held=plug sits=flush +drill", "do-not-ride"},
	{"thread-small", "held=cover", "ride-gently"},
	{"thread-small", "held=pressed +longer", "do-not-start"},
	{"thread-small", "held=pressed +insert", "ride-gently"},
	{"fell-in", "", "do-not-start"},
	{"fell-in", "out=out", "carry-on"},
	{"too-much", "much=little airbox=dry", "ride-gently"},
	{"too-much", "much=far", "do-not-start"},
	{"too-much", "much=far airbox=dry +syringe", "ride-gently"},
	{"too-much", "much=little airbox=oily +syringe", "do-not-start"},
	{"too-little", "lamp=out", "do-not-start"},
	{"too-little", "lamp=out +oil", "carry-on"},
	{"too-little", "lamp=out +near", "ride-gently"},
	{"too-little", "lamp=on +oil", "do-not-ride"},
	{"too-little", "lamp=on +near", "do-not-start"},
	{"too-little", "+oil", "do-not-ride"},
	{"no-level", "", "do-not-start"},
	{"level-gone", "gone=start leak=none +oil", "carry-on"},
	{"level-gone", "gone=start +oil", "do-not-ride"},
	{"no-fill", "", "do-not-start"},
	{"no-fill", "hole=right fills=slow", "carry-on"},
	{"no-fill", "hole=right fills=early", "ride-gently"},
	{"no-fill", "hole=unsure fills=early", "do-not-start"},
	{"no-fill", "hole=right fills=stands", "do-not-start"},
	{"came-short", "", "do-not-start"},
	{"came-short", "hole=right came=some was=right", "carry-on"},
	{"came-short", "hole=right came=some was=low", "ride-gently"},
	{"came-short", "hole=right came=none was=right", "do-not-start"},
	{"came-short", "hole=unsure came=some was=right", "do-not-start"},
	{"car-oil", "ran=no", "ride-gently"},
	{"car-oil", "ran=out slips=always", "do-not-ride"},
	{"wrong-grade", "near=near", "carry-on"},
	{"wrong-place", "ran=out", "do-not-start"},
	{"wrong-fluid", "ran=out +oil +spanner +filter", "do-not-start"},
	{"wrong-fluid", "ran=no +oil +spanner +filter", "do-not-ride"},
	{"milky", "milk=cap", "ride-gently"},
	{"milky", "milk=all", "do-not-start"},
	{"milky", "milk=water", "do-not-start"},
	{"fuel-smell", "rises=same", "ride-gently"},
	{"fuel-smell", "rises=risen", "do-not-start"},
	{"fuel-smell", "rises=risen +oil +spanner", "do-not-ride"},
	{"metal", "bits=paste", "carry-on"},
	{"metal", "bits=bright", "ride-gently"},
	{"metal", "bits=grey", "do-not-start"},
	{"metal", "bits=piece", "do-not-start"},
	{"metal", "bits=other", "do-not-start"},
	{"oil-on-tyre", "", "do-not-ride"},
	{"oil-on-tyre", "+wash", "do-not-ride"},
	{"oil-on-brake", "", "do-not-ride"},
	{"cap-off", "tyre=no +cap +oil", "carry-on"},
	{"cap-off", "tyre=yes +cap +oil", "do-not-ride"},
	{"spill", "where=hard tyre=no", "carry-on"},
	{"spill", "where=hard", "do-not-ride"},
	{"toppled", "airbox=oily lying=off", "do-not-start"},
	{"toppled", "airbox=dry lying=off", "do-not-start"},
	{"toppled", "airbox=dry lying=off leak=none lever=straight", "ride-gently"},
	{"toppled", "airbox=dry lying=off leak=none lever=bent", "do-not-ride"},
	{"toppled", "airbox=dry lying=off leak=seen lever=straight", "do-not-start"},
	{"toppled", "airbox=dry lying=on leak=none", "do-not-start"},
	{"toppled", "airbox=dry lying=on leak=none +sparks", "do-not-ride"},
	{"cracked", "comes=drips", "do-not-start"},
	{"cracked", "comes=damp side=pan +epoxy +oil", "ride-gently"},
	{"cracked", "comes=damp side=pan", "do-not-ride"},
	{"cracked", "comes=damp side=pressed +epoxy +oil", "do-not-start"},
}

func TestJudge(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range cases {
		seen[c.id] = true
		f := table.Find(c.id)
		if f == nil {
			t.Errorf("the table has no %s", c.id)
			continue
		}
		answers, hand := said(c.said)
		for q, a := range answers {
			if !slices.Contains(strings.Fields(table.Questions[q]), a) || !slices.Contains(f.Asks, q) {
				t.Errorf("%s: %s=%s is no answer", c.id, q, a)
			}
		}
		if got := fault.Judge(table, f, answers, hand); got.Outcome != c.want {
			t.Errorf("%s, %s: %s, want %s", c.id, c.said, got.Outcome, c.want)
		}
	}
	for _, f := range table.Faults {
		if !seen[f.ID] {
			t.Errorf("no case of %s", f.ID)
		}
	}
}

// Of rows that are equally bad the more general one speaks where it isn't known
// which holds.
func TestJudge_GeneralReason(t *testing.T) {
	for id, want := range map[string]string{"lamp-start": "fault-why.lamp-on", "drop-plug": "fault-why.drips", "noise": "fault-why.lamp-on"} {
		if got := fault.Judge(table, table.Find(id), nil, nil); got.Why != want || !got.Feared {
			t.Errorf("%s: %s, feared %t", id, got.Why, got.Feared)
		}
	}
}

// Oil on a tyre or brake and a lamp that is on stop the bike, whatever is at hand
// and whatever else was answered.
func TestJudge_AlwaysSevere(t *testing.T) {
	severe := map[string]string{"tyre": "yes", "lamp": "on", "ran": "on", "lever": "bent", "side": "pressed", "airbox": "oily",
		"rises": "risen", "boss": "cracked", "hole": "unsure", "came": "none", "bits": "grey", "out": "inside", "torn": "torn"}
	checked := 0
	for n := range table.Faults {
		f := &table.Faults[n]
		whole := slices.Contains([]string{"oil-on-tyre", "oil-on-brake", "lamp-riding", "lamp-flicker", "lost-plug", "filter-burst"}, f.ID)
		for _, hand := range handsOf(f) {
			answersOf(f, func(answers map[string]string) {
				is := whole
				for q, a := range severe {
					is = is || answers[q] == a
				}
				if !is {
					return
				}
				checked++
				if got := fault.Judge(table, f, answers, hand); !fault.Stops(got.Outcome) {
					t.Errorf("%s %v %v: %s", f.ID, answers, hand, got.Outcome)
				}
			})
		}
	}
	if checked < 100 {
		t.Errorf("only %d ways were tried", checked)
	}
}

// A table from elsewhere may be anything: what no rule says, an outcome that is
// none and an answer that is none count as the worst, and a flood of questions ends.
func TestJudge_ForeignTable(t *testing.T) {
	many := fault.Fault{Rows: []fault.Row{{Outcome: "carry-on"}}}
	questions := map[string]string{"q": "a b"}
	for range 40 {
		many.Asks = append(many.Asks, "q")
	}
	for name, c := range map[string]struct {
		fault   fault.Fault
		answers map[string]string
	}{
		"no rows":             {fault.Fault{}, nil},
		"a foreign outcome":   {fault.Fault{Rows: []fault.Row{{Outcome: "dance"}, {Outcome: "carry-on"}}}, nil},
		"an unknown question": {fault.Fault{Asks: []string{"w"}, Rows: []fault.Row{{Outcome: "carry-on"}}}, map[string]string{"w": "a"}},
		"a foreign answer":    {fault.Fault{Asks: []string{"q"}, Rows: []fault.Row{{When: map[string]string{"q": "a"}, Outcome: "carry-on"}}}, map[string]string{"q": "c"}},
		"a flood":             {many, nil},
	} {
		got := fault.Judge(&fault.Table{Questions: maps.Clone(questions)}, &c.fault, c.answers, nil)
		if got.Outcome != "do-not-start" {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
