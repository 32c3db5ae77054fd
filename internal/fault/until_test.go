package fault_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/fault"
)

// everyVerdict calls work with what follows from every way to answer some or all
// questions of every problem, with everything that may be at hand.
func everyVerdict(work func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict)) {
	for n := range table.Faults {
		f := &table.Faults[n]
		for _, hand := range handsOf(f) {
			answersOf(f, func(answers map[string]string) {
				work(f, answers, hand, fault.Judge(table, f, answers, hand))
			})
		}
	}
}

// What stops the bike says what has to be seen before it is ridden again, and what
// doesn't stop it has nothing to wait for.
func TestJudge_NoDeadEnd(t *testing.T) {
	everyVerdict(func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict) {
		if stops := fault.Stops(v.Outcome); stops != (len(v.Until) > 0) {
			t.Errorf("%s %v %v: %s, until %v", f.ID, answers, hand, v.Outcome, v.Until)
		}
	})
}

// seenAgain is what has to be seen again after an answer that stops the bike, of one
// of these: common practice, no source.
var seenAgain = map[string]string{
	"tyre=yes": "until.tyre", "lamp=on": "until.pressure", "lamp=flickers": "until.pressure", "ran=on": "until.pressure",
	"returns=drops": "until.dry", "returns=drips": "until.dry", "comes=drops": "until.dry", "comes=drips": "until.dry",
	"leak=seen": "until.source", "airbox=oily": "until.airbox", "lever=bent": "until.lever", "side=pressed": "until.crack",
	"boss=cracked": "until.crack", "feel=soft": "until.thread", "askew=binds": "until.thread", "torn=torn": "until.filter",
	"match=differs": "until.filter", "slips=always": "until.clutch", "milk=all": "until.twice", "milk=water": "until.twice",
	"rises=risen": "until.fuel", "bits=grey": "until.metal", "bits=piece": "until.metal", "out=inside": "until.pieces",
	"fills=stands": "until.pieces", "hole=unsure": "until.places", "came=none": "until.places", "where=road": "until.road",
	"tight=moved": "until.torque", "held=pressed": "until.dry", "noise=stays": "until.noise", "lying=on": "until.cylinder",
}

// Of several answers that stop the bike each is waited for, whichever row speaks.
func TestJudge_UntilEachSignIsGone(t *testing.T) {
	met := map[string]bool{}
	everyVerdict(func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict) {
		if !fault.Stops(v.Outcome) {
			return
		}
		for q, a := range answers {
			want := seenAgain[q+"="+a]
			if want == "" {
				continue
			}
			met[q+"="+a] = true
			// Another hole was poured into: what stands in it is the other's.
			if !slices.Contains(v.Until, want) && answers["hole"] != "unsure" {
				t.Errorf("%s %v %v: until %v, not %s", f.ID, answers, hand, v.Until, want)
			}
		}
	})
	if len(met) != len(seenAgain) {
		t.Errorf("of %d answers %d were met", len(seenAgain), len(met))
	}
}

// Every question can be answered by none of its answers. That counts as an answer
// left out, and is told apart from it.
func TestJudge_Other(t *testing.T) {
	for q, list := range table.Questions {
		if answers := strings.Fields(list); answers[len(answers)-1] != fault.Other || len(answers) < 3 {
			t.Errorf("%s has the answers %v", q, answers)
		}
	}
	everyVerdict(func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict) {
		for _, q := range f.Asks {
			if answers[q] != "" {
				continue
			}
			with := maps.Clone(answers)
			with[q] = fault.Other
			got := fault.Judge(table, f, with, hand)
			if got.Outcome != v.Outcome || got.Why != v.Why || slices.Contains(got.Open, q) || !slices.Contains(got.Other, q) {
				t.Errorf("%s %v %v: %s %s, open %v, other %v; not answered %s %s", f.ID, with, hand, got.Outcome, got.Why, got.Open, got.Other, v.Outcome, v.Why)
			}
		}
	})
}

// Oil in the air box is out of it before the engine starts, and where there was too
// much oil or the bike lay down, somebody looks for it.
func TestJudge_AirBoxBeforeTheStart(t *testing.T) {
	starts := []string{"do.start-5", "do.dry-look", "do.level-right"}
	surplus := []string{"do.drain-syringe", "do.drain-plug", "do.upright"}
	everyVerdict(func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict) {
		at := slices.Index(v.Now, "do.airbox-out")
		if answers["airbox"] == "oily" {
			if !fault.Stops(v.Outcome) || slices.ContainsFunc(v.Now[:max(at, 0)], func(w string) bool { return slices.Contains(starts, w) }) ||
				at < 0 && slices.ContainsFunc(v.Now, func(w string) bool { return slices.Contains(starts, w) }) {
				t.Errorf("%s %v %v: %s %v", f.ID, answers, hand, v.Outcome, v.Now)
			}
		}
		had := slices.ContainsFunc(v.Now, func(w string) bool { return slices.Contains(surplus, w) })
		if had && !fault.Stops(v.Outcome) && answers["airbox"] != "dry" && !slices.Contains(v.Now, "do.airbox-look") {
			t.Errorf("%s %v %v: %s, and nobody looks into the air box", f.ID, answers, hand, v.Outcome)
		}
	})
}

// Where the pressure is not known while the bike rolls, or can go while it is
// ridden on, the engine can seize and lock the wheel: that can kill, so it is a
// WARNING and no NOTICE.
func TestJudge_SeizedEngine(t *testing.T) {
	if got := table.Warns["caution.seize"]; got != "WARNING" {
		t.Errorf("a seized engine is a %q", got)
	}
	watched := 0
	everyVerdict(func(f *fault.Fault, answers map[string]string, hand []string, v *fault.Verdict) {
		rolls := slices.Contains(v.Limits, "do.stop-lamp") || slices.Contains(v.Now, "do.off-road")
		if !rolls {
			return
		}
		watched++
		if !slices.Contains(v.Warns, "caution.seize") {
			t.Errorf("%s %v %v: %s, warns %v", f.ID, answers, hand, v.Outcome, v.Warns)
		}
	})
	if watched < 50 {
		t.Errorf("only %d verdicts were met", watched)
	}
}

// Water in the oil: no riding until it was changed twice. Thin oil, or more of it,
// and metal of a bearing: no riding until the cause is mended. Nothing at hand
// changes that.
func TestJudge_OilThatStops(t *testing.T) {
	for id, answers := range map[string][]string{
		"milky": {"milk=all", "milk=water", "milk=other", ""}, "wrong-fluid": {"ran=no", "ran=out", ""},
		"fuel-smell": {"rises=risen", "rises=other", ""}, "metal": {"bits=grey", "bits=piece", ""},
	} {
		want := map[string]string{"milky": "until.twice", "wrong-fluid": "until.twice", "fuel-smell": "until.fuel", "metal": "until.metal"}[id]
		f := table.Find(id)
		for _, text := range answers {
			for _, hand := range handsOf(f) {
				given, _ := said(text)
				if v := fault.Judge(table, f, given, hand); !fault.Stops(v.Outcome) || !slices.Contains(v.Until, want) {
					t.Errorf("%s %s %v: %s until %v", id, text, hand, v.Outcome, v.Until)
				}
			}
		}
	}
}
