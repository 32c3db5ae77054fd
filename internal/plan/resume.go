package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/finding"
)

// OtherVersion is the word, after "step.", of a step that a job began with and that is
// planned no more, or not yet.
const OtherVersion = "other-version"

// Resume makes the plan that a job began with: that of its card and bench with the
// steps of those ids, in their order, whatever is planned today. Without ids it is
// the plan of today. A step that is planned no more, or not yet, can be done and
// holds what is written at it; what it was about is known by its id alone.
func Resume(checked *card.Checked, b Bench, steps []string) (*Plan, []finding.Finding) {
	p, list := Make(checked, b)
	if p != nil && len(steps) > 0 {
		p.Steps = resumed(p, steps)
	}
	return p, list
}

// resumed gives the steps of those ids in their order, each once.
func resumed(p *Plan, ids []string) []Step {
	list := make([]Step, 0, len(ids))
	here := make(map[string]*Step, len(p.Steps))
	for i := range p.Steps {
		here[p.Steps[i].ID] = &p.Steps[i]
	}
	seen := make(map[string]bool, len(ids))
	stage := Ready
	for _, id := range ids {
		if id == "" || seen[id] {
			continue
		}
		seen[id] = true
		s := Step{ID: id, Stage: stage, Word: "step." + OtherVersion, Values: finding.Values("id", finding.Clip(id))}
		if known := here[id]; known != nil {
			s = *known
		}
		stage = s.Stage
		list = append(list, s)
	}
	return list
}
