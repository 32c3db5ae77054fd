package calc

import (
	"math"
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

var oilSuitsFields = []field{
	{name: "grades", front: true, kind: Text, says: Grade, many: true},
	{name: "marks", front: true, kind: Text, says: Mark},
	{name: "service", front: true, kind: Text, says: Service},
	{name: "clutch", front: true, kind: Choice, words: texts(card.Clutches...), family: "clutch."},
	{name: "bottleGrade", front: true, kind: Text, says: Grade, letters: labelLetters},
	{name: "bottleMark", front: true, kind: Text, says: Mark, letters: labelLetters},
	{name: "bottleService", front: true, kind: Text, says: Service, letters: labelLetters},
	{name: "conserving", kind: Yes},
	{name: "coldest", then: "hottest", kind: quantity.Temperature, low: -60, high: 60},
	{name: "hottest", kind: quantity.Temperature, low: -60, high: 60},
	{name: "chart", kind: Text, says: Lines, letters: 1000, lines: true},
	{name: "purpose", kind: Choice, words: []string{"change", topUp}, family: "oil-for."},
	{name: "add", kind: quantity.Volume, low: 0.01, high: 25},
	{name: "due", kind: quantity.Volume, low: 0.05, high: 25},
}

// labelLetters are offered for what a bottle says.
const labelLetters = 200

// topUp is the purpose of an oil that is added to what is in.
const topUp = "top-up"

// labelFields are the fields in which parts of the bike's and the bottle's label stand, and
// what is refused in them. Each may hold a whole label.
var labelFields = [...]struct{ asked, bottle, code string }{
	{"grades", "bottleGrade", "unknown-grade"},
	{"marks", "bottleMark", "unknown-mark"},
	{"service", "bottleService", "unknown-service"},
}

// oilSuits says whether the oil at hand suits what a bike asks for. When a little
// of it is to be added in need, it says what that makes of the oil that is in.
func oilSuits(f *Form, a *Answer) {
	var need oil.Need
	var bottle oil.Bottle
	f.readNeed(&need)
	f.readBottle(&bottle)
	if need.Share > 1 && f.has("due") {
		f.reject("add-beyond-due", "add", "add", f.of("add").text, "due", f.of("due").text)
	}
	if f.refused() {
		return
	}
	verdict, reasons := oil.Judge(&need, &bottle)
	a.word("verdict", "oil-verdict."+verdict.String())
	for n := range reasons {
		f.reason(&reasons[n])
	}
	f.assumptions(&need)
	if need.TopUp {
		f.topUp(a, &need, &bottle)
	}
}

// readNeed reads what the bike asks for. An engine's clutch runs in its oil
// unless it is said that it doesn't: that is the stricter, and the usual.
func (f *Form) readNeed(need *oil.Need) {
	need.TopUp = f.of("purpose").text == topUp
	need.Coldest, need.Hottest = f.orUnknown("coldest"), f.orUnknown("hottest")
	if need.Hottest < need.Coldest {
		f.reject("range-reversed", "hottest", "value", f.of("coldest").text)
	}
	need.Share = f.orUnknown("add") / f.orUnknown("due")
	for _, d := range labelFields {
		l := f.label(d.asked, d.code)
		need.Grades = append(need.Grades, l.Grades...)
		need.Marks = append(need.Marks, l.Marks...)
		need.Service = append(need.Service, l.Service...)
	}
	f.readChart(need)
	gear := false
	for _, g := range need.Grades {
		gear = gear || g.Gear()
	}
	need.WetClutch = card.Clutch(f.of("clutch").text) != card.DryClutch && (f.has("clutch") || !gear)
}

// orUnknown is a field's number; NaN where nothing was given.
func (f *Form) orUnknown(name string) float64 {
	if !f.has(name) {
		return math.NaN()
	}
	return f.number(name)
}

// readChart reads the rows of the manual's chart, "10W-40: -10 to 40 °C". Its grades are
// such as the bike may have.
func (f *Form) readChart(need *oil.Need) {
	for _, row := range strings.Split(strings.ReplaceAll(f.of("chart").text, ";", "\n"), "\n") {
		if strings.TrimSpace(row) == "" {
			continue
		}
		name, air, _ := strings.Cut(row, ":")
		g, known := oil.ReadGrade(name)
		low, high, list := card.ReadAir(air, f.system)
		if !known || finding.Refused(list) || low > high {
			f.reject("chart-unread", "chart", "text", finding.Clip(strings.TrimSpace(row)))
			continue
		}
		need.Chart = append(need.Chart, oil.ChartRow{Grade: g, From: low, To: high})
		if !slices.Contains(need.Grades, g) {
			need.Grades = append(need.Grades, g)
		}
	}
}

// readBottle reads the label of the oil at hand; what is left out is not known.
func (f *Form) readBottle(b *oil.Bottle) {
	var grades []oil.Grade
	none := [len(labelFields)]bool{}
	other := ""
	for n, d := range labelFields {
		l := f.label(d.bottle, d.code)
		for _, g := range l.Grades {
			if !slices.Contains(grades, g) {
				grades = append(grades, g)
			}
		}
		b.Marks = append(b.Marks, l.Marks...)
		b.Service = append(b.Service, l.Service...)
		b.Conserving = b.Conserving || l.Conserving
		none[n] = l.None
		if len(l.Other) > 0 {
			other = strings.Join(l.Other, "/")
		}
	}
	b.Grade = f.oneGrade("bottleGrade", grades)
	b.Conserving = b.Conserving || f.number("conserving") == 1
	if len(b.Marks) == 0 && none[1] {
		b.Marks = []string{oil.None}
	}
	if len(b.Service) == 0 && none[2] {
		b.Service = []string{oil.None}
	}
	if other != "" {
		f.say(finding.Note, "not-compared", "", "text", other)
	}
}

// reason says one reason of the verdict: a doubt when it speaks against the oil.
func (f *Form) reason(r *oil.Reason) {
	grade := finding.Note
	if r.Weight > oil.Suits {
		grade = finding.Doubt
	}
	values := map[string]string{}
	if len(r.Asked) > 0 {
		thing := "either"
		if strings.HasPrefix(r.Code, "mark-") {
			thing = "mark"
		}
		values["asked"] = shown.Choice(thing, r.Asked, values)
	}
	if r.Has != "" {
		values["has"] = r.Has
	}
	*f.list = append(*f.list, finding.Finding{Code: r.Code, Where: f.at + "/", Grade: grade, Values: values})
}

// assumptions notes what was assumed since it was not given.
func (f *Form) assumptions(need *oil.Need) {
	if need.WetClutch && !f.has("clutch") {
		f.say(finding.Note, "clutch-assumed", "clutch")
	}
	if !f.has("purpose") {
		f.say(finding.Note, "change-assumed", "purpose")
	}
	if need.TopUp && math.IsNaN(need.Share) {
		f.say(finding.Note, "share-assumed", "add", "share", quantity.Number(100*oil.MostTopUp, 2)+" %")
	}
	if !need.TopUp && f.has("add") {
		f.unused("add", "@ask.oil-suits.add", "@oil-for.change")
	}
}

// topUp adds what the oil makes of the one that is in: taken to be of the usual
// grade, in an engine that is full once it is added.
func (f *Form) topUp(a *Answer, need *oil.Need, bottle *oil.Bottle) {
	share := need.Share
	if math.IsNaN(share) {
		a.unknown("figures", "second-share")
		return
	}
	const by = "mix-of-grades"
	var usual oil.Grade
	if len(need.Grades) > 0 {
		usual = need.Grades[0]
	}
	first, known := usual.Band()
	second, alsoKnown := bottle.Grade.Band()
	if known && alsoKnown {
		f.mixture(a, by, first, second, share, 100)
	} else {
		a.computed("second-share", by, share, share, "%")
	}
}
