package pages

import (
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"strconv"
)

// bench is what is true here today, as the core reads it.
type bench struct {
	System     string   `json:"system"`
	Place      string   `json:"place"`
	KeepFilter bool     `json:"keepFilter,omitempty"`
	Circuits   []string `json:"circuits,omitempty"`
	Also       []string `json:"also,omitempty"`
	Outside    string   `json:"outside,omitempty"`
	GetHome    bool     `json:"getHome,omitempty"`
	Helper     bool     `json:"helper,omitempty"`
}

// benchOf reads the bench out of a form. What is not told is as usual.
func (p *Pages) benchOf(given url.Values) bench {
	b := bench{System: p.systemOf(given), Place: p.limits().Places[0], KeepFilter: given.Get("filter") == "keep",
		Circuits: given["circuit"], Also: given["also"], Outside: given.Get("outside"),
		GetHome: given.Get("home") != "", Helper: given.Get("helper") != ""}
	if place := given.Get("place"); slices.Contains(p.limits().Places, place) {
		b.Place = place
	}
	return b
}

// planned is a plan with what it was made of.
type planned struct {
	Limits   limits
	Bench    bench
	Plan     plan
	Notes    []string // the card's, of the whole job
	NotesAt  []noteAt
	Findings []finding // why there is no plan
	Card     string    // an own card, which lies nowhere but in the form
	Own      bool
	Charted  bool // the manual has a chart, by which the air decides
	OfUsual  bool // nothing was told of which oils are changed
}

type noteAt struct{ At, Text string }

// Bike is the plan of a sample bike.
func (p *Pages) Bike(ask Ask) Page {
	card, known := p.cards[ask.Name]
	if !known {
		return p.Missing(ask)
	}
	return p.plan(ask, card, false)
}

// mostCard is the most bytes of an own card: far above what the largest says.
const mostCard = 200_000

// Card is the plan of an own card, whose text is sent; without one, the form for it.
func (p *Pages) Card(ask Ask) Page {
	text := ask.Given.Get("card")
	switch {
	case text == "":
		return p.draw(ask, http.StatusOK, "card", func(s *speaker) shown {
			return shown{Title: s.t("bikes.new", nil), Of: planned{}}
		})
	case len(text) > mostCard:
		return p.unplanned(ask, http.StatusRequestEntityTooLarge, finding{Code: "text-too-long", Where: "/card", Values: values{"most": strconv.Itoa(mostCard)}}, "")
	case !json.Valid([]byte(text)):
		// What the core says of it counts: it knows where the fault is.
		_, outcome := p.do("check-card", append(append([]byte(`{"card":`), text...), '}'))
		return p.refusedCard(ask, text, Statuses[outcome])
	}
	return p.plan(ask, json.RawMessage(text), true)
}

// refusedCard says what is wrong with a text that is no JSON.
func (p *Pages) refusedCard(ask Ask, text string, status int) Page {
	out, _ := p.do("check-card", append(append([]byte(`{"card":`), text...), '}'))
	var said struct{ Findings []finding }
	must(json.Unmarshal(out, &said))
	if len(said.Findings) == 0 { // the braces of a text can't close ours
		said.Findings = []finding{{Code: "not-json", Where: "/card"}}
		status = http.StatusBadRequest
	}
	return p.unplanned(ask, status, said.Findings[0], text)
}

func (p *Pages) unplanned(ask Ask, status int, f finding, text string) Page {
	return p.draw(ask, status, "card", func(s *speaker) shown {
		return shown{Title: s.t("bikes.new", nil), Of: planned{Card: text, Findings: []finding{f}}}
	})
}

func (p *Pages) plan(ask Ask, card json.RawMessage, own bool) Page {
	v := planned{Limits: p.limits(), Bench: p.benchOf(ask.Given), Own: own, OfUsual: len(ask.Given["circuit"]) == 0}
	in := struct {
		Card  json.RawMessage `json:"card"`
		Bench bench           `json:"bench"`
	}{card, v.Bench}
	var status int
	v.Plan, v.Findings, status = call[plan](p.do, "plan", in)
	if own {
		v.Card = string(card)
	}
	if status != http.StatusOK && own {
		return p.draw(ask, status, "card", func(s *speaker) shown { return shown{Title: s.t("bikes.new", nil), Of: v} })
	}
	var written struct {
		Notes   []string
		NotesAt []noteAt
	}
	if json.Unmarshal(card, &written) == nil { // else the core has refused it
		v.Notes, v.NotesAt = written.Notes, written.NotesAt
	}
	for _, o := range v.Plan.Oils {
		v.Charted = v.Charted || o.Chart != nil
	}
	return p.draw(ask, status, "bike", func(s *speaker) shown {
		return shown{Title: s.verbatim(v.Plan.Name), System: v.Bench.System, Of: v}
	})
}

// System is the system of units of the bench.
func (v planned) System() string { return v.Bench.System }

// First is the first pour of an oil, where the whole of it doesn't go in at once.
func (v planned) First(o oil) *figure {
	for _, s := range v.Plan.Steps {
		for n := range s.Figures {
			if s.Figures[n].Name == "figure.first-pour" && s.Values["of"] == "@"+o.Role {
				return &s.Figures[n]
			}
		}
	}
	return nil
}

// Today are the fasteners that are turned and worth reading before the job.
func (v planned) Today() []bolt {
	return slices.DeleteFunc(slices.Clone(v.Plan.Bolts), func(b bolt) bool { return !b.Listed })
}

// Left are those to be left alone.
func (v planned) Left() []bolt {
	return slices.DeleteFunc(slices.Clone(v.Plan.Bolts), func(b bolt) bool { return !b.Leave })
}

// Cautions are those of all steps, each once, the gravest first.
func (v planned) Cautions() (list []warn) {
	for _, signal := range []string{"DANGER", "WARNING", "CAUTION", "NOTICE"} {
		for _, s := range v.Plan.Steps {
			for _, w := range s.Warns {
				if w.Signal == signal && !slices.Contains(list, w) {
					list = append(list, w)
				}
			}
		}
	}
	return list
}

// Stage is a part of the job.
type stage struct {
	Name  string
	Steps []step
}

// Stages are the steps by the part of the job that they belong to.
func (v planned) Stages() (list []stage) {
	for _, s := range v.Plan.Steps {
		if n := len(list) - 1; n >= 0 && list[n].Name == s.Stage {
			list[n].Steps = append(list[n].Steps, s)
			continue
		}
		list = append(list, stage{s.Stage, []step{s}})
	}
	return list
}

// MayShort reports whether somebody may want no more than to get home.
func (v planned) MayShort() bool {
	return v.Bench.GetHome || slices.Contains(v.Limits.GetHomeAt, v.Bench.Place)
}

// Cleaned reports whether something that is cleaned at some changes only is cleaned today.
func (v planned) Cleaned(i item) bool { return i.Count > 0 }
