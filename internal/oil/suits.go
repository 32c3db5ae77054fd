package oil

// Need is what the oil is for.
type Need struct {
	Grades    []Grade  // that the bike may have, the usual one first
	Marks     []string // JASO marks that suit
	Service   string   // API categories, any of which will do, as ReadService gives them
	WetClutch bool     // a clutch runs in this oil
	Coldest   float64  // the coldest air expected in °C; NaN when not known
	// TopUp: a little is added in need to what is in, to ride home. What would
	// keep an oil from being filled is then a limit: no oil is worse. Only
	// what is no engine oil stays out.
	TopUp bool
}

// Bottle is the oil at hand, as its label reads. What is empty is not known; a
// mark or service None was looked for and isn't there.
type Bottle struct {
	Grade      Grade
	Mark       string // JASO, as ReadMark gives it
	Service    string // API, as ReadService gives it
	Conserving bool   // marked resource or energy conserving
}

// Weight is how much a reason weighs; the heaviest is the verdict.
type Weight int

// The weights, lightest first; a verdict is one of the last four.
const (
	Noted   Weight = iota // worth knowing, or what to do once the oil is in
	Suits                 // speaks for the oil
	Limited               // suits with a limit
	Open                  // can't be said before something is known
	Unfit
	never // unfit in need too
)

// String is a verdict's word id, without what stands before it.
func (w Weight) String() string {
	switch w {
	case Unfit:
		return "no"
	case Open:
		return "unknown"
	case Limited:
		return "limit"
	}
	return "suits"
}

// Reason is one thing that was looked at: Code is a finding's, Asked and Has
// what the bike asks for and what the bottle has.
type Reason struct {
	Code   string
	Weight Weight
	Asked  []string // any of them will do
	Has    string
}

type judge struct {
	need    *Need
	bottle  *Bottle
	verdict Weight
	reasons []Reason
}

// Judge says whether the bottle's oil suits, with everything that was looked
// at. How many steps a grade may be off is common practice, no source.
func Judge(need *Need, bottle *Bottle) (verdict Weight, reasons []Reason) {
	j := judge{need: need, bottle: bottle, verdict: Suits}
	j.grades()
	mark, code := j.mark()
	j.say(mark, code, bottle.Mark, need.Marks...)
	service, code := j.service()
	j.say(service, code, bottle.Service, need.Service)
	if need.TopUp && j.verdict != Unfit {
		j.inNeed(mark)
	}
	return j.verdict, j.reasons
}

// inNeed says what to do once a little of the oil is in.
func (j *judge) inNeed(mark Weight) {
	j.say(Noted, "add-little", "")
	if j.verdict == Limited {
		j.say(Noted, "change-soon", "")
	}
	if j.need.WetClutch && mark != Suits {
		j.say(Noted, "clutch-may-slip", "")
	}
}

// say adds a reason, if there is one: none has no code. In need, what is not
// known or would be unfit is a limit.
func (j *judge) say(weight Weight, code, has string, asked ...string) {
	if code == "" {
		return
	}
	switch {
	case weight == never:
		weight = Unfit
	case j.need.TopUp && weight > Limited:
		weight = Limited
	}
	j.verdict = max(j.verdict, weight)
	if has == None {
		has = ""
	}
	if len(asked) == 1 && asked[0] == "" {
		asked = nil
	}
	j.reasons = append(j.reasons, Reason{code, weight, asked, has})
}

// grades judges the bottle's grade against the nearest that is asked for, and
// against the season.
func (j *judge) grades() {
	has := j.bottle.Grade
	var nearest Grade
	place := -1
	for i, g := range j.need.Grades {
		if place < 0 || distance(g, has) < distance(nearest, has) {
			nearest, place = g, i
		}
	}
	weight, code := compare(nearest, has, place)
	j.say(weight, code, has.Designation(), nearest.Designation())
	if has != (Grade{}) && !has.Gear() && !nearest.Gear() {
		weight, code = j.season(has, has == nearest)
		j.say(weight, code, has.Designation())
	}
}

// distance orders grades by how near they are: the hot part first; between an
// engine oil and a gear oil it is far.
func distance(a, b Grade) int {
	hot, cold := a.summer-b.summer, a.winter-b.winter
	d := 20*max(hot, -hot) + max(cold, -cold)
	if a.Gear() != b.Gear() {
		d += 1000
	}
	return d
}

// compare holds a grade against the nearest that is asked for; place is that
// one's among them, less than 0 when none is.
func compare(asked, has Grade, place int) (Weight, string) {
	steps := has.summer - asked.summer
	switch {
	case place < 0:
		return Open, "need-unknown"
	case has == Grade{}:
		return Open, "grade-unknown"
	case has == asked && place == 0:
		return Suits, "grade-exact"
	case has == asked:
		return Suits, "grade-listed"
	case has.Gear() && asked.Gear():
		return Limited, "gear-grade-off"
	case has.Gear():
		return never, "gear-oil-in-engine"
	case asked.Gear():
		return Unfit, "engine-oil-in-gears"
	case has.summer == 0 || asked.summer == 0:
		return Open, "grade-hot-unknown"
	case steps > 1:
		return Unfit, "grade-far-thicker"
	case steps == 1:
		return Limited, "grade-thicker"
	case steps == -1:
		return Limited, "grade-thinner"
	case steps < -1:
		return Unfit, "grade-far-thinner"
	}
	return Limited, "grade-other-cold"
}
