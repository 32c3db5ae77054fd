package calc

import (
	"math"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

var oilSuitsFields = []field{
	{name: "grades", front: true, kind: aText},
	{name: "marks", front: true, kind: aText},
	{name: "service", front: true, kind: aText},
	{name: "clutch", front: true, kind: aChoice, words: texts(card.Clutches...), family: "clutch."},
	{name: "bottleGrade", front: true, kind: aText},
	{name: "bottleMark", front: true, kind: aText},
	{name: "bottleService", front: true, kind: aText},
	{name: "conserving", kind: aYes},
	{name: "coldest", kind: quantity.Temperature, low: -60, high: 60},
	{name: "purpose", kind: aChoice, words: []string{"change", topUp}, family: "oil-for."},
	{name: "add", kind: quantity.Volume, low: 0.01, high: 25},
	{name: "due", kind: quantity.Volume, low: 0.05, high: 25},
}

// topUp is the purpose of an oil that is added to what is in.
const topUp = "top-up"

// oilSuits says whether the oil at hand suits what a bike asks for. When a little
// of it is to be added in need, it says what that makes of the oil that is in.
func oilSuits(f *Form, a *Answer) {
	var need oil.Need
	var bottle oil.Bottle
	f.readNeed(&need)
	f.readBottle(&bottle)
	share := f.number("add") / f.number("due")
	if share > 1 && f.has("due") {
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
		f.topUp(a, &need, &bottle, share)
	}
}

// readNeed reads what the bike asks for. An engine's clutch runs in its oil
// unless it is said that it doesn't: that is the stricter, and the usual.
func (f *Form) readNeed(need *oil.Need) {
	need.TopUp = f.of("purpose").text == topUp
	need.Coldest = math.NaN()
	if f.has("coldest") {
		need.Coldest = f.number("coldest")
	}
	gear := false
	for _, text := range f.listed("grades") {
		g := f.readGrade("grades", text)
		need.Grades = append(need.Grades, g)
		gear = gear || g.Gear()
	}
	for _, text := range f.listed("marks") {
		if mark := f.readMark("marks", text); mark != oil.None {
			need.Marks = append(need.Marks, mark)
		}
	}
	need.Service, _ = f.service("service")
	if need.Service == oil.None {
		need.Service = ""
	}
	need.WetClutch = card.Clutch(f.of("clutch").text) != card.DryClutch && (f.has("clutch") || !gear)
}

// listed gives the words of a list, with blanks or commas between them.
func (f *Form) listed(name string) []string { return oil.Words(strings.ToUpper(f.of(name).text)) }

func (f *Form) readMark(name, text string) string {
	mark, ok := oil.ReadMark(text)
	f.readable(ok, "unknown-mark", name, text)
	return mark
}

// service reads API categories.
func (f *Form) service(name string) (categories string, conserving bool) {
	text := f.of(name).text
	categories, conserving, ok := oil.ReadService(text)
	f.readable(ok, "unknown-service", name, text)
	return categories, conserving
}

// readBottle reads the label of the oil at hand; what is left out is not known.
func (f *Form) readBottle(b *oil.Bottle) {
	b.Grade = f.grade("bottleGrade")
	b.Mark = f.readMark("bottleMark", f.of("bottleMark").text)
	b.Service, b.Conserving = f.service("bottleService")
	b.Conserving = b.Conserving || f.number("conserving") == 1
}

// reason says one reason of the verdict: a doubt when it speaks against the oil.
func (f *Form) reason(r *oil.Reason) {
	grade := finding.Note
	if r.Weight > oil.Suits {
		grade = finding.Doubt
	}
	values := map[string]string{}
	if len(r.Asked) > 0 {
		values["asked"] = shown.Choice("mark", r.Asked, values) // only marks are several
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
	if !need.TopUp && f.has("add") {
		f.unused("add", "@ask.oil-suits.add", "@oil-for.change")
	}
}

// topUp adds what the oil makes of the one that is in: taken to be of the usual
// grade, in an engine that is full once it is added.
func (f *Form) topUp(a *Answer, need *oil.Need, bottle *oil.Bottle, share float64) {
	if !f.has("add") || !f.has("due") {
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
