package plan

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// OtherVersion is the word, after "step.", of a step that a job began with and that
// this version knows nothing of.
const OtherVersion = "other-version"

// Every word that a step ever had is in testdata/steps-released.txt, and stays
// understood: renames are those that are called otherwise now, retired the recipes of
// those that no sequence puts any more. Their texts stay in the catalogue.
var (
	renames = []rename{}
	retired = []recipe{
		{word: "filter-on", on: aBolt, closes: true, photo: PhotoFilter, must: true, warns: []string{"ring-twice", "torque-unknown"}, figures: []string{"turn", "torque"}, asks: []string{AskTorque}, helps: tightening},
	}
)

type rename struct{ was, is string }

// became are retired steps in whose place today's plan has one of several, whichever
// the card asks for. A job that holds no ids of its steps goes on in it.
var became = []struct {
	was string
	is  []string
}{
	{"filter-on", []string{"filter-on-torque", "filter-on-turn", "filter-on-hand"}},
}

// Heir gives the step of the plan that stands in the place of a retired one; nil where
// none does.
func (p *Plan) Heir(id string) *Step {
	for _, b := range became {
		rest, ok := cutWord(id, b.was)
		if !ok {
			continue
		}
		for _, is := range b.is {
			if s := p.Step(is + rest); s != nil {
				return s
			}
		}
	}
	return nil
}

// mostSteps is how many steps a job may have begun with: several times those of the
// longest plan. What is beyond has no place in any.
const mostSteps = 2000

// Resume makes the plan that a job began with: that of its card and bench with the
// steps of those ids, each once and in their order, whatever is planned today. Without
// ids it is the plan of today. A step keeps the id that the job knows it by. One that
// is not planned today is made from its recipe; one that has none is a plain step, which
// can be done and holds what is written at it.
func Resume(checked *card.Checked, b Bench, steps []string) (*Plan, []finding.Finding) {
	p, list := begin(checked, b)
	if p == nil {
		return nil, list
	}
	if len(steps) > 0 {
		p.resume(steps, renames)
	}
	return p.plan, nil
}

func (p *planner) resume(ids []string, renames []rename) {
	today := make(map[string]*Step, len(p.plan.Steps))
	for i := range p.plan.Steps {
		today[p.plan.Steps[i].ID] = &p.plan.Steps[i]
	}
	list := make([]Step, 0, min(len(ids), mostSteps))
	seen := make(map[string]bool, cap(list))
	stage := Ready
	for _, id := range ids {
		if id == "" || seen[id] || len(list) == mostSteps {
			continue
		}
		seen[id] = true
		s := p.understood(id, today, renames)
		if s == nil {
			s = &Step{Word: "step." + OtherVersion, Values: finding.Values("id", finding.Clip(id))}
		}
		if s.Stage != "" {
			stage = s.Stage
		}
		list = append(list, *s)
		made := &list[len(list)-1]
		made.ID, made.Stage, made.Notes = id, stage, nil
	}
	p.plan.Steps = list
	p.shorten()
	p.notes()
}

// Known gives the step of an id that some version planned, as this one would; nil where
// nothing is known of it.
func (p *Plan) Known(id string) *Step {
	return (&planner{day: p.day, plan: p}).understood(id, nil, renames)
}

// understood is known of an id that may have another word today.
func (p *planner) understood(id string, today map[string]*Step, renames []rename) *Step {
	s := p.known(id, today)
	for i := 0; s == nil && i < len(renames); i++ {
		if rest, ok := cutWord(id, renames[i].was); ok {
			s = p.known(renames[i].is+rest, today)
		}
	}
	return s
}

// cutWord gives what follows a word in the id of a step.
func cutWord(id, word string) (rest string, ok bool) {
	rest, ok = strings.CutPrefix(id, word)
	return rest, ok && (rest == "" || rest[0] == '-')
}

// known gives the step of an id: as it is planned today, or else, without a stage, from
// the recipe of which the id begins with the word and ends with what it is about; nil
// where there is none.
func (p *planner) known(id string, today map[string]*Step) *Step {
	if s := today[id]; s != nil {
		return s
	}
	var best *recipe
	var on subject
	for i := range len(recipes) + len(retired) {
		r := &recipes[min(i, len(recipes)-1)]
		if i >= len(recipes) {
			r = &retired[i-len(recipes)]
		}
		rest, ok := cutWord(id, r.word)
		if !ok || best != nil && len(best.word) > len(r.word) {
			continue
		}
		for rest != "" && p.subjectOf(r, rest) == nil {
			again := false
			if rest, again = strings.CutSuffix(rest, "-again"); !again {
				break
			}
		}
		if of := p.subjectOf(r, rest); of != nil {
			best, on = r, *of
		}
	}
	if best == nil {
		return nil
	}
	s := p.fitted(best, on)
	return &s
}

// subjectOf finds what a recipe's step is about, by what follows its word in the id: a
// hyphen and an id of the card, or nothing. It gives nil where the card has no such
// thing.
func (p *planner) subjectOf(r *recipe, rest string) *subject {
	id := strings.TrimPrefix(rest, "-")
	of := subject{}
	switch {
	case r.on == nothing:
		if rest != "" {
			return nil
		}
		return &of
	case r.perOil && rest == "" && len(p.circuits) == 1:
		of.circuit = p.circuits[0]
	case id == "":
	case r.on == aCircuit:
		of.circuit = p.card.Circuit(id)
	case r.on == aBolt:
		of.bolt = p.card.Bolt(id)
	case r.on == aFilter:
		for i := range p.card.Filters {
			if f := &p.card.Filters[i]; f.ID == id {
				of.filter = f
			}
		}
	case r.on == aStrainer:
		for i := range p.card.Strain {
			if s := &p.card.Strain[i]; s.ID == id {
				of.strain = s
			}
		}
	}
	if of == (subject{}) {
		return nil
	}
	return &of
}
