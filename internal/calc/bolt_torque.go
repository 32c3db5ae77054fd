package calc

import (
	"math"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// guessFields are what is asked about a fastener, torqueFields what more there is
// to a torque on it.
var (
	guessFields = [...]field{whatField, threadField, sealField, seatField, classField}

	torqueFields = [...]field{
		whatField,
		threadField,
		{name: "torque", kind: quantity.Torque, low: 0.01, high: 5000, needed: true},
		sealField,
		seatField,
		classField,
		{name: "lubrication", kind: Choice, words: bolt.Lubrications, family: "lubrication."},
		{name: "length", kind: quantity.Length, low: 0.5, high: 200},
		{name: "inner", then: "outer", kind: quantity.Length, low: 1, high: 100},
		{name: "outer", kind: quantity.Length, low: 1, high: 150},
	}

	whatField   = field{name: "what", kind: Choice, words: bolt.Whats, family: "what.", needed: true}
	threadField = field{name: "thread", kind: Text, says: Thread, front: true} // a filter needs none
	sealField   = field{name: "seal", kind: Choice, words: bolt.Seals, family: "seal.", front: true}
	seatField   = field{name: "seat", kind: Choice, words: bolt.Seats, family: "seat.", front: true}
	classField  = field{name: "class", kind: Choice, words: bolt.Classes}
)

// thread reads a thread out of a field.
func (f *Form) thread(name string) bolt.Thread {
	t, ok := bolt.ParseThread(f.of(name).text)
	if !ok {
		f.reject("unknown-thread", name, "text", finding.Clip(f.of(name).text))
	}
	return t
}

// pitched refuses a thread whose pitch is left out and would change the answer.
func (f *Form) pitched(t *bolt.Thread) {
	if t.PitchOpen() {
		f.reject("pitch-missing", "thread", "text", finding.Clip(t.Name))
	}
}

// choice gives the place of the word chosen, from 1; 0 when none is.
func (f *Form) choice(name string) int { return int(f.number(name)) }

// joint reads what is known of a fastener.
func (f *Form) joint() *bolt.Joint {
	j := &bolt.Joint{What: bolt.What(f.choice("what")), Seal: bolt.Seal(f.choice("seal")),
		Seat: bolt.Seat(f.choice("seat")), Class: bolt.Class(f.choice("class"))}
	if j.What != bolt.Filter {
		j.Thread = f.thread("thread")
		if j.What == bolt.Plug {
			f.pitched(&j.Thread)
		}
	}
	return j
}

// torqueCheck judges a torque that stands somewhere.
func torqueCheck(f *Form, a *Answer) {
	j := f.joint()
	j.Lubrication, j.Length = bolt.Lubrication(f.choice("lubrication")), f.number("length")
	j.Inner, j.Outer = f.number("inner"), f.number("outer")
	if j.Outer < j.Inner || j.Inner == 0 && j.Outer > 0 {
		f.reject("washer-size", "outer")
	}
	if f.refused() {
		return
	}
	j.Settle()
	torque := f.of("torque")
	var g bolt.Judgement
	g.Judge(j, torque.number, torque.unit.Scale, f.system)
	a.word("verdict", "torque."+string(g.Verdict))
	a.list("texts", bolt.Texts(torque.number, f.system))
	a.number("base", torque.number)
	a.word("meant", g.Meant)
	a.joint(j, &g.Figures)
	*f.list = append(*f.list, g.Reasons...)
}

// poundForce is in newtons, exact.
const poundForce = 4.4482216152605

// joint puts the figures of a joint: none of a filter, whose torque its gasket
// takes, and no pressure where there is no washer.
func (a *Answer) joint(j *bolt.Joint, all *bolt.Figures) {
	if j.What == bolt.Filter {
		return
	}
	if a.system == quantity.US {
		a.jointFigure("preload", &all.Preload, poundForce, " lbf")
	} else {
		a.jointFigure("preload", &all.Preload, 1000, " kN")
	}
	a.jointFigure("nut-factor", &all.NutFactor, 1, "")
	a.jointFigure("yield-share", &all.YieldShare, 0.01, " %")
	a.jointFigure("strip-safety", &all.Stripping, 1, "")
	if all.Stripping.High > 0 {
		a.holding(all)
	}
	if j.Washered() {
		a.jointFigure("washer-pressure", &all.Pressure, 1, " MPa")
	}
}

// holding puts what makes a thread hold: enough of it, rounded up to half a millimetre,
// or a wire thread insert.
func (a *Answer) holding(all *bolt.Figures) {
	if mm := math.Ceil(2*all.Enough) / 2; mm > 0 {
		a.ranged(a.amount("figures", "length-enough", "strip-safety", mm, mm, "mm", 3), &bolt.Range{Low: mm, High: mm})
	}
	if all.Inserts[0].High == 0 {
		return
	}
	texts := make([]string, len(all.Inserts))
	for n := range texts {
		texts[n] = quantity.Number(bolt.InsertLengths[n], 2) + "·d: " + all.Inserts[n].Text(1, "")
	}
	a.estimate("figures", "insert", "insert", texts...)
}

// jointFigure puts one figure of a joint; how it was worked out is named after it.
func (a *Answer) jointFigure(name string, r *bolt.Range, scale float64, unit string) {
	if r.High == 0 {
		a.unknown("figures", name)
		return
	}
	a.ranged(a.estimate("figures", name, method(name), r.Text(scale, unit)), r)
}

// ranged gives a figure its ends.
func (a *Answer) ranged(s *shown.Figure, r *bolt.Range) { s.Low, s.High = r.Low, r.High }

// torqueGuess gives the band of the published tables for a fastener whose
// manual is not to be had.
func torqueGuess(f *Form, a *Answer) {
	j := f.joint()
	if f.refused() {
		return
	}
	b := j.Published()
	if b.High == 0 {
		a.unknown("figures", "torque")
		return
	}
	a.ranged(a.estimate("figures", "torque", method(b.Table), b.Torques(f.system)...), &b.Range)
}
