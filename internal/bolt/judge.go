package bolt

import (
	"math"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// Verdict is what comes of judging a torque: a word id's last part.
type Verdict string

// The verdicts.
const (
	Believable    Verdict = "believable"
	Doubtful      Verdict = "doubtful"
	NotBelievable Verdict = "not-believable"
	NotJudged     Verdict = "not-known" // no table to hold it against, and nothing breaks
)

// Judgement is a verdict with its reasons.
type Judgement struct {
	Verdict Verdict
	Reasons reasons
	Meant   string  // id of the unit probably meant, "" where the one given fits
	Figures Figures // of the joint; none for a filter, whose torque its gasket takes
}

// Seals differ by a factor of two on the same thread in the published tables;
// tables for screws differ by less where the seat is the same.
const (
	sealFactor  = 2
	screwFactor = 1.5
)

// Judge holds a torque in N·m against the published tables, the thread and the
// screw. The joint must be settled. Scale is the unit in which the torque was
// given, in N·m; system is for the figures in the reasons.
func (g *Judgement) Judge(j *Joint, torque, scale float64, system quantity.System) {
	g.table(j, torque, scale, system)
	if j.What == Filter {
		g.Reasons.add(finding.Note, "torque-on-gasket", "", "")
		return
	}
	j.At(torque, &g.Figures)
	if s := &g.Figures.Stripping; s.High > 0 {
		g.weigh("strip", 1/s.High, 1/s.Low)
	}
	if s := &g.Figures.YieldShare; s.High > 0 {
		g.weigh("yield", s.Low, s.High)
	}
	g.Reasons = append(g.Reasons, j.assumed...)
}

// reasons speak for or against a torque.
type reasons []finding.Finding

// add adds a reason and gives its values, which take more.
func (r *reasons) add(grade finding.Grade, code, key, value string) map[string]string {
	var values map[string]string
	if key != "" {
		values = finding.Values(key, value)
	}
	*r = append(*r, finding.Finding{Code: code, Where: "/torque", Grade: grade, Values: values})
	return values
}

// table compares with the published tables. A figure as far out of them as they
// are from each other is still believable.
func (g *Judgement) table(j *Joint, nm, scale float64, system quantity.System) {
	b := j.Usual()
	code, grade, factor := "torque-near-table", finding.Note, screwFactor
	if j.What == Plug {
		factor = sealFactor
	}
	g.Verdict = Believable
	switch {
	case b.High == 0:
		g.Verdict = NotJudged
		g.Reasons.add(finding.Note, "torque-no-table", "", "")
		return
	case b.within(nm, 1):
		code = "torque-in-table"
	case b.within(nm, factor):
	case nm < b.Low && j.What == Plug && !j.washered() && b.Table != tableInch:
		// Such a seal needs no force: low torques on large threads are usual.
		code, g.Verdict = "torque-under-washers", NotJudged
	default:
		code, grade, g.Verdict = "torque-out-of-table", finding.Doubt, NotBelievable
	}
	values := g.Reasons.add(grade, code, "band", b.Torques(system)[0])
	values["thread"], values["table"] = b.Thread, "@method."+b.Table
	if g.Verdict == NotBelievable {
		g.slip(&b.Range, nm/scale, math.Sqrt(factor), system)
	}
}

// slip looks for a unit in which the same number would be at home in the band,
// give or take a factor.
func (g *Judgement) slip(band *Range, typed, factor float64, system quantity.System) {
	for n := range quantity.Units {
		u := &quantity.Units[n]
		if u.Kind == quantity.Torque && band.within(typed*u.Scale, factor) {
			g.Meant = u.ID
			g.Reasons.add(finding.Doubt, "torque-slip", "meant", quantity.Number(typed, 6)+" "+u.ID)["value"] = Texts(typed*u.Scale, system)[0]
			return
		}
	}
}

// weigh judges a load that must stay below 1: beyond it at best it can't be
// right, in the middle of its range it is doubtful, at worst it is mentioned. That a
// load is borne makes no torque believable: it may be far too low.
func (g *Judgement) weigh(what string, low, high float64) {
	code, grade := "torque-may-", finding.Doubt
	switch {
	case low > 1:
		code, g.Verdict = "torque-will-", NotBelievable
	case low*high > 1:
		if g.Verdict != NotBelievable {
			g.Verdict = Doubtful
		}
	case high > 1:
		grade = finding.Note
	default:
		code, grade = "torque-no-", finding.Note
	}
	g.Reasons.add(grade, code+what, "", "")
}
