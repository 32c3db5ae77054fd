package find_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/card"
	"tidysump/internal/find"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// replies are what a card answers to things; nil for a bench that is refused.
func replies(c *card.Card, b plan.Bench, things ...find.Thing) []find.Reply {
	checked, _ := card.Accept(c)
	list, _ := find.Answers(checked, things, b)
	return list
}

func text(r wire.Record) string { return string(wire.Write(r)) }

// figuresOf are the figures of all replies, written.
func figuresOf(list []find.Reply) []string {
	var out []string
	for i := range list {
		for n := range list[i].Figures {
			out = append(out, text(&list[i].Figures[n]))
		}
	}
	return out
}

// What is asked of any sample is answered with just the figure that its plan shows for it,
// on any bench, or is said to be not known where the plan says so, or none.
func TestAnswers_ThePlansFigures(t *testing.T) {
	plantest.Samples(t, func(t *testing.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		same := func(what string, got []string, want ...string) {
			t.Helper()
			if !slices.Equal(got, want) {
				t.Errorf("%s: answered %s\nthe plan has %s", what, got, want)
			}
		}
		for thing, purposes := range map[find.Thing][]card.Purpose{find.Drain: {card.DrainPlug}, find.Filter: {card.FilterCanned, card.FilterCover},
			find.Strainer: {card.StrainerCap}, find.Filler: {card.FillerCap}, find.LevelScrew: {card.LevelScrew}} {
			var want, sizes []string
			known := false
			for _, purpose := range purposes { // a plan may have both in one
				for i := range p.Bolts {
					s := &p.Bolts[i]
					if s.Purpose != "purpose."+string(purpose) {
						continue
					}
					known = true
					tight := &s.Torque
					if s.By == plan.ByTurn {
						tight = s.Turn
					}
					want = append(want, text(tight))
					if len(s.Tool) != 1 || s.Tool[0] != "@drive.hand" && s.Tool[0] != "@drive.strap" {
						sizes = append(sizes, text(&s.Size))
					}
				}
			}
			slices.Sort(want)
			slices.Sort(sizes)
			torques, tools := figuresOf(replies(c, b, thing, find.Torque)), figuresOf(replies(c, b, find.Tool, thing))
			slices.Sort(torques)
			slices.Sort(tools)
			if !known && thing == find.Drain { // oil runs out of something else
				continue
			}
			same(string(thing)+" torque", torques, want...)
			same(string(thing)+" tool", tools, sizes...)
			if list := replies(c, b, thing); !known && (len(list) != 1 || !list[0].Lacks) {
				t.Errorf("%s: %+v, though the card has none", thing, list)
			}
		}
		var volumes, grades []string
		for i := range p.Oils {
			volumes = append(volumes, text(&p.Oils[i].Due))
			for n := range p.Oils[i].Figures {
				volumes = append(volumes, text(&p.Oils[i].Figures[n]))
			}
			grades = append(grades, text(&p.Oils[i].Need))
			if p.Oils[i].Rows != nil {
				grades = append(grades, text(p.Oils[i].Rows))
			}
		}
		same("volume", figuresOf(replies(c, b, find.Volume)), volumes...)
		same("grade", figuresOf(replies(c, b, find.Grade)), grades...)
		var torques []string
		for i := range p.Bolts {
			if s := &p.Bolts[i]; s.Listed && s.By == plan.ByTurn {
				torques = append(torques, text(s.Turn))
			} else if s.Listed {
				torques = append(torques, text(&s.Torque))
			}
		}
		same("torque", figuresOf(replies(c, b, find.Torque)), torques...)
	})
}

// Of any card and bench each thing has an answer, whose words are in the catalogue; a figure
// in it is known or said to be not known, and no two things together ask for less.
func TestAnswers_Any(t *testing.T) {
	plantest.Plans(t, func(t *rapid.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		things := rapid.SliceOfNDistinct(rapid.SampledFrom(find.Things), 1, 3, rapid.ID).Draw(t, "things")
		list := replies(c, b, things...)
		if len(list) == 0 && !slices.ContainsFunc(things, bolted) {
			t.Fatalf("%v: no answer", things)
		}
		for _, r := range list {
			plantest.Say(t, r.Of, nil)
			for _, f := range r.Figures {
				plantest.SayFigure(t, f)
			}
			for _, l := range r.Lines {
				plantest.Say(t, l.Word, l.Values)
			}
			if r.Lacks && (len(r.Figures) > 0 || len(r.Lines) > 0) {
				t.Fatalf("%v: %+v has nothing, and figures", things, r)
			}
		}
	})
}

// bolted reports whether a thing is asked of the fasteners that are worth reading, of which
// a card may have none.
func bolted(t find.Thing) bool { return t == find.Torque || t == find.Tool || t == find.Washer }

// Every sample answers to every thing, asked by its model and the thing's name, as a list of
// all samples has it.
func TestAnswers_ByModel(t *testing.T) {
	var lines []bike
	cards := map[int]*card.Card{}
	plantest.Samples(t, func(t *testing.T, c *card.Card, b plan.Bench, p *plan.Plan) {
		if b.System == "" && b.Place == "" && len(b.Circuits) == 0 {
			cards[len(lines)] = c
			lines = append(lines, bike{Text: strings.ToLower(p.Name), Volume: p.Oils[0].Due.First()})
		}
	})
	if len(lines) < 10 {
		t.Fatalf("only %d samples", len(lines))
	}
	for at, c := range cards {
		for _, thing := range find.Things {
			name, _, _ := strings.Cut(names[string(thing)], ",")
			typed := strings.ToLower(c.Model) + " " + name
			s := searchOf(typed, lines)
			f := s.Find()
			if len(f.About) != 1 || f.About[0] != at || len(f.Things) != 1 || f.Things[0] != thing {
				t.Errorf("%q: %q, want %d about %s", typed, said(&f), at, thing)
				continue
			}
			list := replies(c, plan.Bench{}, f.Things...)
			if len(list) == 0 {
				t.Errorf("%q: no answer", typed)
			}
			for _, r := range list {
				if !r.Lacks && len(r.Figures)+len(r.Tool)+len(r.Lines) == 0 {
					t.Errorf("%q: an answer without anything in it: %+v", typed, r)
				}
			}
		}
	}
}

// A figure that the card doesn't have is said to be not known, and where it stands.
func TestAnswers_Unknown(t *testing.T) {
	c := &card.Card{Format: card.Format, Version: card.Version, ID: "one", Make: "Plainford", Model: "One", Layout: card.WetSump,
		Circuits: []card.Circuit{{ID: "engine", Role: card.EngineOil}},
		Bolts:    []card.Bolt{{ID: "drain", Purpose: card.DrainPlug, Circuit: "engine", Drains: true}}}
	for _, things := range [][]find.Thing{{find.Drain, find.Torque}, {find.Drain, find.Washer}, {find.Volume}} {
		list := replies(c, plan.Bench{}, things...)
		var f *shown.Figure
		if len(list) > 0 && len(list[0].Figures) > 0 {
			f = &list[0].Figures[0]
		}
		if f == nil || f.Standing != card.Unknown || len(f.Texts) > 0 || f.Lookup == "" {
			t.Errorf("%v: %+v", things, list)
		}
	}
}
