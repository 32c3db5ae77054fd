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
		g.weigh("strip", s, safeThread)
		if g.Figures.Enough == 0 {
			g.Reasons.add(finding.Note, "length-never-enough", "", "")
		}
	}
	if s := &g.Figures.YieldShare; s.High > 0 {
		g.weigh("yield", &Range{1 / s.High, 1 / s.Low}, safeScrew)
	}
	g.doubt(j)
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

// weigh judges a safety by the whole of its range, and by what is shown of it: below 1
// at best it breaks, from safe on at worst it holds, and anything between is doubtful.
// That a load is borne makes no torque believable: it may be far too low.
func (g *Judgement) weigh(what string, safety *Range, safe float64) {
	code, grade := "torque-may-", finding.Doubt
	switch {
	case !quantity.AtLeast(safety.High, 1):
		code, g.Verdict = "torque-will-", NotBelievable
	case quantity.AtLeast(safety.Low, safe):
		code, grade = "torque-no-", finding.Note
	default:
		g.doubtful()
	}
	g.Reasons.add(grade, code+what, "safety", safety.Text(1, ""))
}

// doubtful makes the verdict no better than that.
func (g *Judgement) doubtful() {
	if g.Verdict != NotBelievable {
		g.Verdict = Doubtful
	}
}

// doubt doubts a washer and an engaged length that no such joint has: what rests on
// them is no better.
func (g *Judgement) doubt(j *Joint) {
	for _, f := range j.Odd() {
		g.doubtful()
		g.Reasons = append(g.Reasons, f)
	}
}

// Bounds of what is usual, common practice without a source but for the hole: rings of
// DIN 7603 are 0.2 mm wider than their thread. O-rings are stretched over it or lie
// under its head.
const (
	holeUnder, holeOver       = 0.3, 3    // mm that a washer's hole is narrower or wider than its thread
	leastElastic, mostElastic = 0.8, 1.6  // an O-ring's inside over the thread
	leastRing, mostRing       = 0.5, 0.75 // mm of a ring's width; of it over the thread, which a large head covers
	leastTurns, mostDiameters = 3.0, 3.0  // an engaged length: turns, and diameters, as long as inserts go
)

// Odd finds what no such joint has, by the same rules wherever it stands: a washer or
// ring that doesn't go with the thread, one too narrow or too wide, an engaged length
// of fewer than three turns or more than three diameters, a grade of inch screws (SAE
// J429) on a metric thread or a class of metric ones (ISO 898-1) on an inch thread. What
// isn't known isn't odd.
func (j *Joint) Odd() []finding.Finding {
	var odd reasons
	mm := func(v float64) string { return quantity.Number(v, 3) + " mm" }
	doubt := func(code, where string, value float64) {
		values := odd.add(finding.Doubt, code, "value", mm(value))
		values["thread"] = j.Name
		odd[len(odd)-1].Where = where
	}
	low, high := j.Diameter-holeUnder, j.Diameter+holeOver
	if j.Seal == ORing || j.Seal == SquareRing {
		low, high = leastElastic*j.Diameter, mostElastic*j.Diameter
	}
	if j.Inner > 0 && outside(j.Inner, low, high) {
		doubt("ring-not-on-thread", "/inner", j.Inner)
	} else if j.Inner > 0 && j.Outer > 0 && outside((j.Outer-j.Inner)/2, leastRing, mostRing*j.Diameter) {
		doubt("ring-width-odd", "/outer", j.Outer)
	}
	if j.Length > 0 && outside(j.Length, leastTurns*j.Pitch, mostDiameters*j.Diameter) {
		doubt("length-odd", "/length", j.Length)
	}
	if (j.Class >= Grade2) != j.Unified && j.Class != 0 && j.Class != Stainless {
		odd.add(finding.Doubt, "class-odd", "class", Classes[j.Class-1])["thread"] = j.Name
		odd[len(odd)-1].Where = "/class"
	}
	return odd
}

func outside(v, low, high float64) bool {
	return !quantity.AtLeast(v, low) || !quantity.AtMost(v, high)
}
