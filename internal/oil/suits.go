package oil

import (
	"math"
	"slices"
)

// Need is what the oil is for.
type Need struct {
	Grades    []Grade    // that the bike may have, the usual one first
	Marks     []string   // JASO marks that suit
	Service   []string   // API categories, any of which will do
	Chart     []ChartRow // the manual's own, which rules over what is generally advised
	WetClutch bool       // a clutch runs in this oil
	// Coldest and Hottest are the air expected in °C; NaN when not known.
	Coldest, Hottest float64
	// TopUp: a little is added in need to what is in, to ride home. What would
	// keep an oil from being filled is then a limit: no oil is worse. Only
	// what is no engine oil stays out, and what nobody has read stays unknown.
	TopUp bool
	// Share is the part of all the oil that the added oil will be, 0 to 1; NaN when not
	// known, and then taken to be MostTopUp at most.
	Share float64
}

// MostTopUp is the share up to which an oil that is added is a top-up. From the lower to
// the upper mark is a tenth to a quarter of what an engine holds; with more than that a
// bike is filled with a mixture. Common practice, no source.
const MostTopUp = 0.25

// Bottle is the oil at hand, as its label reads. What is empty is not known; marks or
// service that are None alone were looked for and aren't there.
type Bottle struct {
	Grade      Grade
	Marks      []string // JASO
	Service    []string // API
	Conserving bool     // marked resource or energy conserving
}

// Weight is how much a reason weighs; the heaviest is the verdict.
type Weight int

// The weights, lightest first; a verdict is one of the last four.
const (
	Noted   Weight = iota // worth knowing, or what to do once the oil is in
	Suits                 // speaks for the oil
	Limited               // suits with a limit
	Open                  // can't be said before something is known
	unread                // nor before grade and mark were read on the label
	Unfit
	never // unfit in need too
)

// String is a verdict's word id, without what stands before it.
func (w Weight) String() string {
	switch w {
	case Unfit, never:
		return "no"
	case Open, unread:
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
	given   []Grade // that the chart gives for the air expected
	verdict Weight
	reasons []Reason
}

// Judge says whether the bottle's oil suits, with everything that was looked
// at. How many steps a grade may be off is common practice, no source.
func Judge(need *Need, bottle *Bottle) (verdict Weight, reasons []Reason) {
	j := judge{need: need, bottle: bottle, verdict: Suits}
	j.given = Charted(need.Chart, need.Coldest, need.Hottest)
	j.grades()
	mark, code := j.mark()
	j.say(mark, code, printed(bottle.Marks), need.Marks...)
	service, code := j.service()
	j.say(service, code, printed(bottle.Service), need.Service...)
	if j.little() && j.verdict <= Limited {
		j.inNeed(mark)
	} else if need.TopUp && !j.little() {
		j.say(Noted, "no-top-up", "")
	}
	return j.verdict, j.reasons
}

// little reports whether what is added is a top-up by its share.
func (j *judge) little() bool { return j.need.TopUp && !(j.need.Share > MostTopUp) }

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

// say adds a reason, if there is one: none has no code. Of a top-up, what would be unfit
// is a limit, and so is what can't be known; but not a grade or mark that nobody has read.
func (j *judge) say(weight Weight, code, has string, asked ...string) {
	if code == "" {
		return
	}
	switch {
	case weight == never:
		weight = Unfit
	case weight == unread:
		weight = Open
	case j.little() && weight > Limited:
		weight = Limited
	}
	j.verdict = max(j.verdict, weight)
	j.reasons = append(j.reasons, Reason{code, weight, asked, has})
}

// grades judges the bottle's grade against the nearest that is asked for, and
// against the season.
func (j *judge) grades() {
	has := j.bottle.Grade
	wanted := j.need.Grades
	if len(j.given) > 0 && !charts(j.need.Chart, has) {
		wanted = j.given
	}
	var nearest Grade
	place := -1
	for i, g := range wanted {
		if place < 0 || distance(g, has) < distance(nearest, has) {
			nearest, place = g, i
		}
	}
	weight, code := compare(nearest, has, place)
	if j.little() && weight == Unfit && j.mixesFar(nearest) {
		weight = never
	}
	var asked []string
	if place >= 0 {
		asked = []string{nearest.Designation()}
	}
	j.say(weight, code, has.Designation(), asked...)
	if has == (Grade{}) || has.Gear() != nearest.Gear() {
		return
	}
	season := j.season
	if has.Gear() {
		season = j.gearSeason
	}
	weight, code = season(has, slices.Contains(j.need.Grades, has))
	if code == "" {
		return
	}
	if code != "chart-other" {
		j.say(weight, code, has.Designation())
		return
	}
	asked = nil
	for _, g := range j.given {
		asked = append(asked, g.Designation())
	}
	j.say(weight, code, has.Designation(), asked...)
}

// mixesFar reports whether even a top-up may leave an oil that is more than a step off the
// grade asked for, by its viscosity at 100 °C.
func (j *judge) mixesFar(asked Grade) bool {
	share := j.need.Share
	if math.IsNaN(share) {
		share = MostTopUp
	}
	in, known := asked.Band()
	added, alsoKnown := j.bottle.Grade.Band()
	if !known || !alsoKnown || asked.Gear() != j.bottle.Grade.Gear() {
		return false
	}
	mix := in.Mix(added, share)
	thinner, thicker := beside(asked, -1), beside(asked, 1)
	return mix.Low < thinner.Least || thicker.Below > 0 && mix.High > thicker.Below
}

// beside gives the limits at 100 °C of the grade that is a step from another, without W;
// of the last one its own.
func beside(g Grade, step int) Summer {
	next := Grade{summer: g.summer + step}
	if next.summer < 1 || next.summer >= len(summerNames) || next.Gear() != g.Gear() {
		next.summer = g.summer
	}
	_, s, _ := next.Limits()
	return s
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

// compare holds a grade against the nearest that is asked for; place is that one's among
// them, less than 0 when none is. A step of J306 is as wide as one of J300: the middle of
// a grade at 100 °C is about 1.3 times that of the grade before it.
func compare(asked, has Grade, place int) (Weight, string) {
	steps := has.summer - asked.summer
	switch {
	case place < 0 && has == Grade{}:
		return unread, "need-unknown"
	case place < 0:
		return Open, "need-unknown"
	case has == Grade{}:
		return unread, "grade-unknown"
	case has == asked && place == 0:
		return Suits, "grade-exact"
	case has == asked:
		return Suits, "grade-listed"
	case has.Gear() && !asked.Gear():
		return never, "gear-oil-in-engine"
	case asked.Gear() && !has.Gear():
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
