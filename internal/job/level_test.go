package job_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
)

// series gives events one second after the other.
func series(parts ...job.Event) []job.Event {
	for i := range parts {
		parts[i].ID = "e" + strconv.Itoa(i)
		parts[i].Time = "2026-11-25T12:00:" + strconv.Itoa(10+i) + ".000Z"
	}
	return parts
}

// A level dragged in the picture says where it stands and, when the card knows
// what lies between the marks, what to pour: the sample's band is 400 mL.
func TestReplay_LevelAsShare(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	band, _ := c.Circuits[0].Level.Band.Amount()
	if band.Base != 0.4 {
		t.Fatalf("the sample's band is %v L: work the figures below out again", band.Base)
	}
	for _, f := range []struct {
		value, word, amend, change string
	}{
		{"-20 %", "level.below", "amend.pour", "80 mL"}, // up to the lower mark at once
		{"0 %", "level.low", "amend.pour", "150 mL"},    // 200 mL to the middle, less 50
		{"20 %", "level.low", "amend.pour", "70 mL"},
		{"25 %", "level.middle", "amend.pour", "50 mL"},
		{"50 %", "level.middle", "amend.right", ""},
		{"75 %", "level.middle", "amend.right", ""},
		{"90 %", "level.high", "amend.full", ""},
		{"120 %", "level.above", "amend.take-out", "180 mL"}, // down to three quarters
	} {
		s, _ := replayed(c, plan.Bench{}, []job.Event{read("top-up-engine", "level", "engine", f.value)})
		oil := s.Oils[0]
		if oil.Level != f.word || oil.Amend != f.amend || (len(oil.Change) > 0) != (f.change != "") || f.change != "" && oil.Change[0] != f.change {
			t.Errorf("%s: %s, %s, %v; want %+v", f.value, oil.Level, oil.Amend, oil.Change, f)
		}
	}
}

// Half of the way between the marks is half in whatever way it is written, and of "1"
// nobody knows whether it is all of it.
func TestReplay_HalfALevel(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for value, code := range map[string]string{"50 %": "", "50": "", "½": "", "1/2": "", "0.5": "number-read-as", "0,5": "number-read-as", "1": "number-two-ways"} {
		s, _ := replayed(c, plan.Bench{}, []job.Event{read("top-up-engine", "level", "engine", value)})
		found := ""
		for _, f := range s.Findings {
			found += f.Code
		}
		want := "level.middle"
		if code == "number-two-ways" {
			want = ""
		}
		if found != code || s.Oils[0].Level != want || want != "" && s.Readings[0].Share != "50" {
			t.Errorf("%q: level %q, found %q, want %q; %+v", value, s.Oils[0].Level, found, code, s.Readings)
		}
	}
}

// A share that is not on the gauge is refused, and a word after a share takes the
// advice back: a word doesn't say how much is missing.
func TestReplay_LevelShareRefused(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for _, value := range []string{"160 %", "-60 %", "many", "1 L", "NaN", ""} {
		s, _ := replayed(c, plan.Bench{}, []job.Event{read("top-up-engine", "level", "engine", value)})
		if len(s.Findings) != 1 || s.Findings[0].Code != "unknown-word" || s.Oils[0].Level != "" {
			t.Errorf("%q: %+v, level %q", value, s.Findings, s.Oils[0].Level)
		}
	}
	s, _ := replayed(c, plan.Bench{}, series(
		read("top-up-engine", "level", "engine", "20 %"), read("top-up-engine", "level", "engine", "high")))
	if oil := s.Oils[0]; oil.Level != "level.high" || oil.Amend != "" {
		t.Errorf("a word after a share leaves %+v", oil)
	}
}

// What is left to pour goes down with what was poured; what came out is held
// against what was due. The sample takes 2.5 L with its filter.
func TestReplay_OilBalance(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	s, _ := replayed(c, plan.Bench{}, nil)
	if got := s.Oils[0].Left; len(got) == 0 || got[0] != s.Oils[0].Due[0] {
		t.Errorf("nothing poured: %v left of %v", got, s.Oils[0].Due)
	}
	s, _ = replayed(c, plan.Bench{}, series(
		read("measure-engine", "drained", "engine", "2.0 L"), read("pour-engine", "poured", "engine", "2.1 L")))
	if oil := s.Oils[0]; oil.Left[0] != "0.4 L" || oil.Caught != "caught.less" {
		t.Errorf("2.1 of %v poured, 2.0 drained: %v left, %s", oil.Due, oil.Left, oil.Caught)
	}
}

// Only a dry second look closes a job, and only after it was finished.
func TestReplay_SecondLook(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	finish := job.Event{Kind: job.Finish}
	look := func(value string) job.Event { return read("second-look", "leak", "", value) }
	done := job.Event{Kind: job.Done, Step: "second-look"}
	stop := job.Event{Kind: job.Problem, What: "oil-on-tyre", Value: "do-not-ride"}
	mended := job.Event{Kind: job.Problem, What: "oil-on-tyre", Value: "carry-on"}
	for _, f := range []struct {
		name   string
		events []job.Event
		want   job.Phase
		found  string
	}{
		{"not finished", series(look("dry")), job.PhaseOpen, ""},
		{"finished", series(finish), job.PhaseWaiting, ""},
		{"not said", series(finish, done), job.PhaseWaiting, "leak-not-said"},
		{"dry", series(finish, look("dry"), done), job.PhaseClosed, ""},
		{"residue", series(finish, look("residue"), done), job.PhaseClosed, ""},
		{"leak", series(finish, look("drop"), done), job.PhaseWaiting, "leak-stays"},
		{"leak mended", series(finish, look("drop"), look("dry"), done), job.PhaseClosed, ""},
		{"dry, then a leak", series(finish, look("dry"), look("drop"), done), job.PhaseWaiting, "leak-stays"},
		{"a problem stands", series(finish, stop, look("dry"), done), job.PhaseWaiting, "problem-stays"},
		{"a problem judged anew", series(finish, stop, mended, look("dry"), done), job.PhaseClosed, ""},
		{"the leak look alone", series(read("leak-look", "leak", "", "dry"), finish, done), job.PhaseWaiting, "leak-not-said"},
	} {
		s := replayedNew(c, plan.Bench{}, f.events)
		found := slices.ContainsFunc(s.Findings, func(x finding.Finding) bool { return x.Code == f.found })
		if s.Phase != f.want || (s.Closed != "") != (f.want == job.PhaseClosed) || f.found != "" && !found {
			t.Errorf("%s: %s, closed %q, %+v", f.name, s.Phase, s.Closed, s.Findings)
		}
		if s.Next == "second-look" {
			t.Errorf("%s: next is the second look, though other steps are open", f.name)
		}
	}
}

// A job that was closed stays closed whatever is asked for it today, and says what spoke
// against that.
func TestReplay_ClosedAlready(t *testing.T) {
	c := plantest.Sample(t, bike)
	look := func(value string) job.Event { return read("second-look", "leak", "", value) }
	done := job.Event{Kind: job.Done, Step: "second-look"}
	for found, parts := range map[string][]job.Event{
		"":                       {{Kind: job.Finish}, look("dry"), done},
		"closed-despite-leak":    {{Kind: job.Finish}, done},
		"closed-despite-leak ":   {{Kind: job.Finish}, look("drop"), done},
		"closed-despite-problem": {{Kind: job.Finish}, look("dry"), {Kind: job.Problem, What: "oil-on-tyre", Value: "do-not-ride"}, done},
	} {
		s, _ := replayed(c, plan.Bench{}, series(parts...))
		told := ""
		for _, f := range s.Findings {
			if strings.HasPrefix(f.Code, "closed-") && f.Grade == finding.Doubt {
				told += f.Code
			}
		}
		if s.Phase != job.PhaseClosed || s.Closed == "" || told != strings.TrimSpace(found) {
			t.Errorf("%s: %s, findings %v", found, s.Phase, s.Findings)
		}
	}
}

// Whatever level is read, the advice ends at the upper mark at the most.
func TestReplay_NeverAboveTheUpperMark(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	rapid.Check(t, func(t *rapid.T) {
		band := rapid.IntRange(20, 1500).Draw(t, "band")
		c.Circuits[0].Level.Band.Value, c.Circuits[0].Level.Band.Unit = float64(band), "mL"
		share := rapid.IntRange(-50, 150).Draw(t, "share")
		event := read("top-up-engine", "level", "engine", quantity.Number(float64(share), 4)+" %")
		s, list := replayed(c, plan.Bench{}, []job.Event{event})
		if s == nil {
			t.Fatalf("no state: %v", list)
		}
		oil := s.Oils[0]
		if oil.Amend != "amend.pour" {
			return
		}
		change, _ := quantity.Parse(quantity.Volume, oil.Change[0], "mL", quantity.Metric)
		if after := float64(share)/100 + change.Base*1000/float64(band); after > 1+1e-9 {
			t.Fatalf("at %d %% of %d mL it says pour %v: to %v", share, band, oil.Change, after)
		}
	})
}
