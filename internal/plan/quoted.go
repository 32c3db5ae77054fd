package plan

import (
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/shown"
)

// quotable are the words of a part that a manual may say, where a sheet shows them: how
// each is called, and the family of its words; what has none is written as it is.
var quotable = [...]struct{ member, name, family string }{
	{"thread", "plan.thread", ""},
	{"drive", "plan.tool", "@drive."},
	{"seal/kind", "plan.seal", "@seal."},
	{"oil/marks", "plan.mark", ""},
	{"oil/service", "plan.service", ""},
	{"level/device", "plan.device", "@device."},
	{"level/state", "plan.state", "@state."},
	{"level/stance", "plan.stance", "@stance."},
}

// quoted lists the words of a part that come from the words of a manual, each once, with
// where it stands there.
func (d *day) quoted(part string) (list []shown.Figure) {
	for i := range quotable {
		q := &quotable[i]
		at := part + "/" + q.member
		for n := range d.card.Quotes {
			from := &d.card.Quotes[n]
			j := slices.IndexFunc(from.Of, func(of card.Quoted) bool { return of.At == at })
			if j < 0 {
				continue
			}
			if _, holds := from.Of[j].Holds(d.card); holds {
				list = append(list, shown.Figure{Name: q.name, Texts: []string{q.family + from.Of[j].Says}, Standing: card.FromManual,
					Source: d.print.Title(from.Source), Page: from.Page, Quote: strings.TrimLeft(from.Words, "@ ")})
				break
			}
		}
	}
	return list
}
