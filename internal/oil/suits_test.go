package oil

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// weightNames are the weights as the rows below have them.
var weightNames = map[Weight]string{Noted: "note", Suits: "suits", Limited: "limit", Open: "unknown", Unfit: "no"}

// verdicts gives the verdict and the reasons as "weight code".
func verdicts(need Need, bottle Bottle) (string, []string) {
	verdict, reasons := Judge(&need, &bottle)
	var list []string
	for _, r := range reasons {
		list = append(list, weightNames[r.Weight]+" "+r.Code)
	}
	return verdict.String(), list
}

// gradesOf reads grades that are all known; an empty text is none.
func gradesOf(texts ...string) []Grade {
	var list []Grade
	for _, text := range texts {
		if text == "" {
			continue
		}
		g, ok := ReadGrade(text)
		if !ok {
			panic(text)
		}
		list = append(list, g)
	}
	return list
}

// gradeOf reads a grade; the zero Grade for none.
func gradeOf(text string) Grade {
	g, _ := ReadGrade(text)
	return g
}

var unasked = math.NaN()

func TestJudgeGrade(t *testing.T) {
	for _, c := range []struct {
		asked, has, verdict, reason string
	}{
		{"10W-40", "10W-40", "suits", "suits grade-exact"},
		{"10W-40,20W-50", "20W50", "suits", "suits grade-listed"},
		{"10W-40", "5W-40", "limit", "limit grade-other-cold"},
		{"10W-40", "10W-50", "limit", "limit grade-thicker"},
		{"10W-40", "10W-30", "limit", "limit grade-thinner"},
		{"10W-40", "20W-60", "no", "no grade-far-thicker"},
		{"10W-40", "0W-20", "no", "no grade-far-thinner"},
		{"10W-40,20W-50", "15W-50", "limit", "limit grade-other-cold"}, // against the 20W-50
		{"10W-40", "10W", "unknown", "unknown grade-hot-unknown"},
		{"10W-40", "75W-90", "no", "no gear-oil-in-engine"},
		{"80W-90", "20W-50", "no", "no engine-oil-in-gears"},
		{"80W-90", "80W-90", "suits", "suits grade-exact"},
		{"80W-90", "75W-140", "limit", "limit gear-grade-off"},
		{"10W-40", "", "unknown", "unknown grade-unknown"},
		{"", "10W-40", "unknown", "unknown need-unknown"},
	} {
		verdict, reasons := verdicts(Need{Grades: gradesOf(strings.Split(c.asked, ",")...), Coldest: unasked}, Bottle{Grade: gradeOf(c.has)})
		if verdict != c.verdict || reasons[0] != c.reason {
			t.Errorf("asked %s, has %s: %s %v, want %s %s", c.asked, c.has, verdict, reasons, c.verdict, c.reason)
		}
	}
}

func TestJudgeSeason(t *testing.T) {
	for _, c := range []struct {
		grade         string
		coldest       float64
		reason, other string // when the grade is the card's, and when it isn't
	}{
		// Published advice for cars.
		{"20W-50", -10, "limit season-cold", ""},
		{"10W-40", -20, "limit season-cold", ""},
		{"5W-30", -20, "suits season-fits", ""},
		{"30", 0, "limit season-cold", ""},
		{"40", 10, "limit season-cold", ""},
		{"20W-50", -6.6, "suits season-fits", ""},
		{"40", 15.6, "suits season-fits", ""},
		{"30", 4.5, "suits season-fits", ""},
		{"10W-40", -17.7, "suits season-fits", ""},
		// Below the cranking test of J300.
		{"10W-40", -25.1, "limit season-too-cold", "no season-too-cold"},
		{"20W-50", -15.1, "limit season-too-cold", "no season-too-cold"},
		{"5W-30", -30, "suits season-fits", ""},
		// Nothing is said of a single 50, and nothing was asked.
		{"50", 10, "unknown season-unknown", ""},
		{"10W-40", unasked, "note season-not-given", ""},
	} {
		_, reasons := verdicts(Need{Grades: gradesOf(c.grade), Coldest: c.coldest}, Bottle{Grade: gradeOf(c.grade)})
		if !slices.Contains(reasons, c.reason) {
			t.Errorf("%s at %v °C: %v, want %s", c.grade, c.coldest, reasons, c.reason)
		}
		_, reasons = verdicts(Need{Grades: gradesOf("0W-60"), Coldest: c.coldest}, Bottle{Grade: gradeOf(c.grade)})
		if c.other != "" && !slices.Contains(reasons, c.other) {
			t.Errorf("%s, not on the card, at %v °C: %v, want %s", c.grade, c.coldest, reasons, c.other)
		}
	}
	if _, reasons := verdicts(Need{Grades: gradesOf("80W-90"), Coldest: -30}, Bottle{Grade: gradeOf("80W-90")}); len(reasons) != 1 {
		t.Errorf("the season of a gear oil is judged: %v", reasons)
	}
}

func TestJudgeMark(t *testing.T) {
	for _, c := range []struct {
		wet              bool
		asked, has, cons string
		verdict, reason  string
	}{
		// "A machine that asks for MA may take MA1 or MA2" (a maker's page).
		{true, "MA", "MA", "", "suits", "suits mark-fits"},
		{true, "MA", "MA1", "", "suits", "suits mark-fits"},
		{true, "MA", "MA2", "", "suits", "suits mark-fits"},
		{true, "MA2", "MA2", "", "suits", "suits mark-fits"},
		// From memory: MA2 is not met by MA or MA1.
		{true, "MA2", "MA", "", "limit", "limit mark-other-wet"},
		{true, "MA2", "MA1", "", "limit", "limit mark-other-wet"},
		{true, "", "MA", "", "suits", "suits mark-fits"},
		{true, "MA", "MB", "", "no", "no mark-low-friction"},
		{true, "", "MB", "", "no", "no mark-low-friction"},
		{true, "MA", "NONE", "", "no", "no mark-none-asked"},
		{true, "", "NONE", "", "limit", "limit mark-none-wet"},
		{true, "", "", "", "unknown", "unknown mark-unknown-wet"},
		{true, "MA", "", "", "unknown", "unknown mark-unknown-wet"},
		// The bottom of the round mark is a caution, not proof.
		{true, "MA", "MA", "yes", "suits", "suits conserving-marked"},
		{true, "MA", "NONE", "yes", "no", "no conserving-wet"},
		{true, "", "NONE", "yes", "no", "no conserving-wet"},
		{true, "", "", "yes", "unknown", "unknown conserving-unmarked"},
		{true, "MA", "FC", "", "no", "no two-stroke"},
		// No clutch in the oil.
		{false, "MB", "MB", "yes", "suits", "suits mark-fits"},
		{false, "MB", "MA2", "", "suits", "note mark-more-friction"},
		{false, "MA", "MB", "", "limit", "limit mark-less-friction"},
		{false, "MA", "NONE", "", "limit", "limit mark-none"},
		{false, "MA", "", "", "unknown", "unknown mark-unknown"},
		{false, "", "", "yes", "suits", ""},
		{false, "", "FD", "", "no", "no two-stroke"},
	} {
		need := Need{Grades: gradesOf("10W-40"), WetClutch: c.wet, Coldest: unasked}
		if c.asked != "" {
			need.Marks = []string{c.asked}
		}
		verdict, reasons := verdicts(need, Bottle{Grade: gradeOf("10W-40"), Mark: c.has, Conserving: c.cons == "yes"})
		if verdict != c.verdict || c.reason != "" && !slices.Contains(reasons, c.reason) || c.reason == "" && len(reasons) != 2 {
			t.Errorf("wet %v, asked %q, has %q, conserving %q: %s %v, want %s %s", c.wet, c.asked, c.has, c.cons, verdict, reasons, c.verdict, c.reason)
		}
	}
}

// The order of the categories is API's; "the latest category includes the
// performance properties of each earlier category" (API, of car engines).
func TestJudgeService(t *testing.T) {
	for _, c := range []struct{ asked, label, verdict, reason string }{
		{"SL", "SL", "suits", "suits service-same"},
		{"SL", "API SN/CF", "suits", "suits service-newer"},
		{"SG", "SP", "suits", "suits service-newer"},
		{"SN", "SN PLUS", "suits", "suits service-newer"},
		{"SN+", "SP", "suits", "suits service-newer"},
		{"SP", "SN+", "no", "no service-older"},
		{"SL", "SJ, SH", "no", "no service-older"},
		{"SH", "SJ/SH", "suits", "suits service-same"},
		// C is for diesel engines.
		{"SL", "CI-4", "no", "no service-other-engine"},
		{"SL", "none", "no", "no service-none"},
		{"SL", "", "unknown", "unknown service-unknown"},
		// Which diesel or gear category covers which is not held here.
		{"CF", "CI-4/SL", "unknown", "unknown service-order-unknown"},
		{"GL-4", "GL-5", "unknown", "unknown service-order-unknown"},
		{"GL-4", "GL-4 / GL-5", "suits", "suits service-same"},
		{"", "", "suits", ""},
		// Older manuals list several, any of which will do.
		{"SE SF SG", "SF", "suits", "suits service-same"},
		{"SG SF", "SL", "suits", "suits service-newer"},
		{"SG SF", "SE", "no", "no service-older"},
		{"CF SG", "CI-4", "no", "no service-other-engine"},
	} {
		service, _, ok := ReadService(c.label)
		verdict, reasons := verdicts(Need{Grades: gradesOf("10W-40"), Service: c.asked, Coldest: unasked}, Bottle{Grade: gradeOf("10W-40"), Service: service})
		if !ok || verdict != c.verdict || c.reason != "" && !slices.Contains(reasons, c.reason) {
			t.Errorf("asked %s, label %s: %s %v, want %s %s", c.asked, c.label, verdict, reasons, c.verdict, c.reason)
		}
	}
	_, reasons := verdicts(Need{Grades: gradesOf("10W-40"), Service: "SG", WetClutch: true, Coldest: unasked}, Bottle{Grade: gradeOf("10W-40"), Mark: "MA", Service: "SP"})
	if !slices.Contains(reasons, "suits service-newer-wet") {
		t.Errorf("that API's order says nothing of a wet clutch is not told: %v", reasons)
	}
}

// Topping up in need: what would be kept out is a limit with what to do
// afterwards, and only what is no engine oil stays out.
func TestJudgeTopUp(t *testing.T) {
	need := Need{Grades: gradesOf("10W-40"), Marks: []string{"MA2"}, Service: "SL", WetClutch: true, Coldest: -20, TopUp: true}
	for _, c := range []struct {
		bottle  Bottle
		verdict string
		want    []string
	}{
		{Bottle{Grade: gradeOf("5W-30"), Mark: None, Service: "SP", Conserving: true}, "limit",
			[]string{"limit grade-thinner", "limit conserving-wet", "note add-little", "note change-soon", "note clutch-may-slip"}},
		{Bottle{Grade: gradeOf("0W-20"), Mark: "MB", Service: "SJ"}, "limit",
			[]string{"limit grade-far-thinner", "limit mark-low-friction", "limit service-older", "note clutch-may-slip"}},
		{Bottle{}, "limit", []string{"limit grade-unknown", "limit mark-unknown-wet", "limit service-unknown", "note clutch-may-slip"}},
		{Bottle{Grade: gradeOf("20W-40"), Mark: "MA2", Service: "SL"}, "limit", []string{"limit season-too-cold", "note change-soon"}},
		{Bottle{Grade: gradeOf("5W-40"), Mark: "MA2", Service: "SL"}, "limit", []string{"limit grade-other-cold", "note change-soon"}},
		{Bottle{Grade: gradeOf("75W-90"), Mark: None, Service: "GL-5"}, "no", []string{"no gear-oil-in-engine"}},
		{Bottle{Grade: gradeOf("10W-40"), Mark: "FC", Service: None}, "no", []string{"no two-stroke"}},
	} {
		verdict, reasons := verdicts(need, c.bottle)
		if verdict != c.verdict {
			t.Errorf("%+v: %s %v, want %s", c.bottle, verdict, reasons, c.verdict)
		}
		for _, want := range c.want {
			if !slices.Contains(reasons, want) {
				t.Errorf("%+v: %v lacks %q", c.bottle, reasons, want)
			}
		}
		fits := WetClutchMark(c.bottle.Mark)
		if fits && slices.Contains(reasons, "note clutch-may-slip") || verdict == "no" && slices.Contains(reasons, "note add-little") {
			t.Errorf("%+v: %v", c.bottle, reasons)
		}
	}
	need.Coldest = 5
	if verdict, reasons := verdicts(need, Bottle{Grade: gradeOf("10W-40"), Mark: "MA2", Service: "SL"}); verdict != "suits" || slices.Contains(reasons, "note change-soon") {
		t.Errorf("the card's own oil: %s %v", verdict, reasons)
	}
}

func drawn(t *rapid.T, name string, from ...string) string {
	return rapid.SampledFrom(from).Draw(t, name)
}

// In need nothing is judged harder than for filling, the verdict is always the
// heaviest reason, and what is not known never suits.
func TestJudgeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grades := []string{"", "10W-40", "5W-30", "0W-16", "20W-50", "30", "10W", "75W-90", "80W"}
		need := Need{Grades: gradesOf(drawn(t, "asked", grades...), drawn(t, "asked too", grades...)),
			Service: drawn(t, "category", "", "SG", "SL", "GL-4"), WetClutch: rapid.Bool().Draw(t, "wet"),
			Coldest: rapid.SampledFrom([]float64{unasked, -40, -20, -10, 5, 20}).Draw(t, "coldest")}
		if mark := drawn(t, "marks", "", "MA", "MA2", "MB"); mark != "" {
			need.Marks = []string{mark}
		}
		bottle := Bottle{Grade: gradeOf(drawn(t, "grade", grades...)), Mark: drawn(t, "mark", "", None, "MA", "MA1", "MA2", "MB", "FC"),
			Service: drawn(t, "service", "", None, "SL", "SP CF", "SF", "CF", "GL-5"), Conserving: rapid.Bool().Draw(t, "conserving")}
		filled, reasons := Judge(&need, &bottle)
		need.TopUp = true
		added, _ := Judge(&need, &bottle)
		if added > filled && filled != Open {
			t.Fatalf("%s to fill, %s in need", filled, added)
		}
		heaviest := Suits
		for _, r := range reasons {
			if r.Weight > heaviest {
				heaviest = r.Weight
			}
			if strings.Contains(r.Code, "unknown") && r.Weight != Open {
				t.Fatalf("%s has the weight %s", r.Code, weightNames[r.Weight])
			}
		}
		if filled != heaviest {
			t.Fatalf("%s, and the heaviest of %v is %s", filled, reasons, heaviest)
		}
		wet := need.WetClutch && !WetClutchMark(bottle.Mark)
		if (bottle.Grade == (Grade{}) || wet) && filled == Suits {
			t.Fatalf("%+v suits %+v", bottle, need)
		}
	})
}
