package job_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// A job of which all four were told, and one of which nothing was.
func TestReplay_Face(t *testing.T) {
	c := plantest.Sample(t, bike)
	s := replayedNew(c, plan.Bench{}, finishedWith(
		job.Event{Kind: job.Reading, Step: "identify", What: plan.AskOdometer, Value: "12400"},
		job.Event{Kind: job.Reading, Step: "measure-engine", What: plan.AskDrained, About: "engine", Value: "2.4 L"},
		job.Event{Kind: job.Reading, Step: "tighten-drain", What: plan.AskTorque, About: "drain", Value: "29 N·m"},
		job.Event{Kind: job.Reading, Step: "pour-engine", What: plan.AskPoured, About: "engine", Value: "2.5 L"},
	))
	var got []string
	for _, d := range s.Face {
		got = append(got, d.Name+" "+strings.Join(d.Texts[:1], ""))
	}
	if want := []string{"face.in 2.5 L", "face.plug 29 N·m", "face.out 2.4 L", "face.odometer 12400 km"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	s = replayedNew(c, plan.Bench{}, finishedWith())
	for _, d := range s.Face {
		if len(d.Texts) > 0 {
			t.Errorf("nothing was told, and %s is %v", d.Name, d.Texts)
		}
	}
}

// Of every card, whatever happened: a finished job shows four figures, each as the record has
// it or as not told, and an open one none.
func TestReplay_FaceOfAny(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		s := replay(t, c, b, drawEvents(t, p, "a"))
		if s.Finished == "" {
			if len(s.Face) > 0 {
				t.Fatalf("open, and shows %v", s.Face)
			}
			return
		}
		if len(s.Face) != 4 {
			t.Fatalf("shows %d figures: %v", len(s.Face), s.Face)
		}
		known := []string{}
		for i := range s.Oils {
			known = append(known, strings.Join(s.Oils[i].Poured, "|"), strings.Join(s.Oils[i].Drained, "|"), "@"+s.Oils[i].Level)
		}
		for i := range s.Readings {
			known = append(known, strings.Join(s.Readings[i].Texts, "|"))
		}
		for _, d := range s.Face {
			if len(d.Texts) > 0 && !slices.Contains(known, strings.Join(d.Texts, "|")) {
				t.Fatalf("%s is %v, which the record doesn't have: %v", d.Name, d.Texts, known)
			}
			for _, text := range d.Texts {
				if text == "" || text == "@" {
					t.Fatalf("%s has an empty text", d.Name)
				}
			}
		}
	})
}
