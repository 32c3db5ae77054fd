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
		// Gear grades differ by how far they are apart, as engine grades do (SAE J306).
		{"80W-90", "75W-90", "limit", "limit grade-other-cold"},
		{"80W-90", "80W-110", "limit", "limit grade-thicker"},
		{"80W-90", "80W-85", "limit", "limit grade-thinner"},
		{"80W-90", "75W-140", "no", "no grade-far-thicker"},
		{"75W-140", "80W-90", "no", "no grade-far-thinner"},
		{"80W-90", "250", "no", "no grade-far-thicker"},
		{"80W-90", "80W", "unknown", "unknown grade-hot-unknown"},
		{"10W-40", "", "unknown", "unknown grade-unknown"},
		{"", "10W-40", "unknown", "unknown need-unknown"},
	} {
		verdict, reasons := verdicts(Need{Grades: gradesOf(strings.Split(c.asked, ",")...), Coldest: unasked, Hottest: unasked, Share: unasked}, Bottle{Grade: gradeOf(c.has)})
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
		// Below the pumping test it is no limit but a no, also for the card's own grade.
		{"20W-50", -20.1, "no season-too-cold", "no season-too-cold"},
		{"10W-40", -40, "no season-too-cold", "no season-too-cold"},
		{"0W-20", -40, "limit season-too-cold", "no season-too-cold"},
		// A grade without W was tested in no cold.
		{"30", -40, "no season-untested", "no season-untested"},
		{"40", -15.1, "no season-untested", "no season-untested"},
		{"30", -10.1, "limit season-untested", "no season-untested"},
		{"30", -10, "limit season-cold", "limit season-cold"},
		{"20", -40, "no season-untested", "no season-untested"},
		{"60", -40, "no season-untested", "no season-untested"},
		// What keeps a 40 out keeps a 50 out; what a 30 may do a 20 may.
		{"50", 10, "limit season-cold", ""},
		{"60", 15.5, "limit season-cold", ""},
		{"20", 4.5, "suits season-fits", ""},
		// Nothing is said of a single 50 in the warmth, nor of a 20 in the cold, and nothing was asked.
		{"50", 20, "unknown season-unknown", ""},
		{"20", 0, "unknown season-unknown", ""},
		{"10W-40", unasked, "note season-not-given", ""},
		// Gear oils, below the temperature at which J306 measures their W grade.
		{"80W-90", -26.1, "limit gear-too-cold", "no gear-too-cold"},
		{"75W-90", -40.1, "limit gear-too-cold", "no gear-too-cold"},
		{"85W-140", -12.1, "limit gear-too-cold", "no gear-too-cold"},
		{"90", -12.1, "limit gear-untested", "no gear-untested"},
	} {
		_, reasons := verdicts(Need{Grades: gradesOf(c.grade), Coldest: c.coldest, Hottest: unasked, Share: unasked}, Bottle{Grade: gradeOf(c.grade)})
		if !slices.Contains(reasons, c.reason) {
			t.Errorf("%s at %v °C: %v, want %s", c.grade, c.coldest, reasons, c.reason)
		}
		other := "0W-60"
		if gradeOf(c.grade).Gear() {
			other = "75W-250"
		}
		_, reasons = verdicts(Need{Grades: gradesOf(other), Coldest: c.coldest, Hottest: unasked, Share: unasked}, Bottle{Grade: gradeOf(c.grade)})
		if c.other != "" && !slices.Contains(reasons, c.other) {
			t.Errorf("%s, not on the card, at %v °C: %v, want %s", c.grade, c.coldest, reasons, c.other)
		}
	}
	for _, air := range []float64{-26, 20, unasked} {
		if _, reasons := verdicts(Need{Grades: gradesOf("80W-90"), Coldest: air, Hottest: unasked}, Bottle{Grade: gradeOf("80W-90")}); len(reasons) != 1 {
			t.Errorf("more is said of a gear oil at %v °C than that it is the one: %v", air, reasons)
		}
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
		need := Need{Grades: gradesOf("10W-40"), WetClutch: c.wet, Coldest: unasked, Hottest: unasked, Share: unasked}
		if c.asked != "" {
			need.Marks = []string{c.asked}
		}
		verdict, reasons := verdicts(need, Bottle{Grade: gradeOf("10W-40"), Marks: strings.Fields(c.has), Conserving: c.cons == "yes"})
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
		label := ReadLabel(c.label)
		service := label.Service
		if label.None {
			service = []string{None}
		}
		verdict, reasons := verdicts(Need{Grades: gradesOf("10W-40"), Service: strings.Fields(c.asked), Coldest: unasked, Hottest: unasked, Share: unasked}, Bottle{Grade: gradeOf("10W-40"), Service: service})
		if label.Unread != "" || verdict != c.verdict || c.reason != "" && !slices.Contains(reasons, c.reason) {
			t.Errorf("asked %s, label %s: %s %v, want %s %s", c.asked, c.label, verdict, reasons, c.verdict, c.reason)
		}
	}
	_, reasons := verdicts(Need{Grades: gradesOf("10W-40"), Service: []string{"SG"}, WetClutch: true, Coldest: unasked, Hottest: unasked, Share: unasked}, Bottle{Grade: gradeOf("10W-40"), Marks: []string{"MA"}, Service: []string{"SP"}})
	if !slices.Contains(reasons, "suits service-newer-wet") {
		t.Errorf("that API's order says nothing of a wet clutch is not told: %v", reasons)
	}
}

// Topping up in need: what would be kept out is a limit with what to do
// afterwards, and only what is no engine oil stays out.
func TestJudgeTopUp(t *testing.T) {
	need := Need{Grades: gradesOf("10W-40"), Marks: []string{"MA2"}, Service: []string{"SL"}, WetClutch: true, Coldest: -20, Hottest: unasked, Share: unasked, TopUp: true}
	for _, c := range []struct {
		bottle  Bottle
		verdict string
		want    []string
	}{
		{Bottle{Grade: gradeOf("5W-30"), Marks: []string{None}, Service: []string{"SP"}, Conserving: true}, "limit",
			[]string{"limit grade-thinner", "limit conserving-wet", "note add-little", "note change-soon", "note clutch-may-slip"}},
		{Bottle{Grade: gradeOf("0W-20"), Marks: []string{"MB"}, Service: []string{"SJ"}}, "limit",
			[]string{"limit grade-far-thinner", "limit mark-low-friction", "limit service-older", "note clutch-may-slip"}},
		// A bottle that nobody has read: the label is in the hand.
		{Bottle{}, "unknown", []string{"unknown grade-unknown", "unknown mark-unknown-wet"}},
		{Bottle{Grade: gradeOf("10W-40"), Service: []string{"SL"}}, "unknown", []string{"unknown mark-unknown-wet"}},
		{Bottle{Marks: []string{"MA2"}, Service: []string{"SL"}}, "unknown", []string{"unknown grade-unknown"}},
		{Bottle{Grade: gradeOf("10W-40"), Marks: []string{"TC"}}, "no", []string{"no two-stroke"}},
		{Bottle{Grade: gradeOf("10W-40"), Marks: []string{"MA2", "FC"}, Service: []string{"SL"}}, "no", []string{"no two-stroke"}},
		{Bottle{Grade: gradeOf("10W-40"), Marks: []string{None}, Service: []string{"GL-5"}}, "no", []string{"no gear-oil-in-engine"}},
		{Bottle{Grade: gradeOf("20W-40"), Marks: []string{"MA2"}, Service: []string{"SL"}}, "limit", []string{"limit season-too-cold", "note change-soon"}},
		{Bottle{Grade: gradeOf("5W-40"), Marks: []string{"MA2"}, Service: []string{"SL"}}, "limit", []string{"limit grade-other-cold", "note change-soon"}},
		{Bottle{Grade: gradeOf("75W-90"), Marks: []string{None}, Service: []string{"GL-5"}}, "no", []string{"no gear-oil-in-engine"}},
		{Bottle{Grade: gradeOf("10W-40"), Marks: []string{"FC"}, Service: []string{None}}, "no", []string{"no two-stroke"}},
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
		fits := slices.ContainsFunc(c.bottle.Marks, WetClutchMark)
		if fits && slices.Contains(reasons, "note clutch-may-slip") || verdict != "limit" && slices.Contains(reasons, "note add-little") {
			t.Errorf("%+v: %v", c.bottle, reasons)
		}
	}
	need.Coldest = 5
	if verdict, reasons := verdicts(need, Bottle{Grade: gradeOf("10W-40"), Marks: []string{"MA2"}, Service: []string{"SL"}}); verdict != "suits" || slices.Contains(reasons, "note change-soon") {
		t.Errorf("the card's own oil: %s %v", verdict, reasons)
	}
}

// A top-up is a top-up by its share: 92 % of another oil is a change.
func TestJudgeTopUp_Share(t *testing.T) {
	need := Need{Grades: gradesOf("10W-40"), Marks: []string{"MA2"}, Service: []string{"SL"}, WetClutch: true, Coldest: 5, Hottest: unasked, TopUp: true}
	car := Bottle{Grade: gradeOf("5W-30"), Marks: []string{None}, Service: []string{"SP"}, Conserving: true}
	for _, c := range []struct {
		share   float64
		verdict string
		said    string
	}{
		{unasked, "limit", "limit conserving-wet"},
		{0.1, "limit", "note change-soon"},
		{0.25, "limit", "note add-little"},
		{0.26, "no", "note no-top-up"},
		{0.5, "no", "no conserving-wet"},
		{0.92, "no", "note no-top-up"},
		{1, "no", "note no-top-up"},
	} {
		need.Share = c.share
		if verdict, reasons := verdicts(need, car); verdict != c.verdict || !slices.Contains(reasons, c.said) {
			t.Errorf("%v of a conserving car oil: %s %v, want %s %s", c.share, verdict, reasons, c.verdict, c.said)
		}
	}
	// A quarter of an oil that is far off leaves one that is far off; a twentieth doesn't.
	thin := Bottle{Grade: gradeOf("0W-8"), Marks: []string{"MA2"}, Service: []string{"SL"}}
	for share, want := range map[float64]string{0.05: "limit", 0.25: "no"} {
		need.Share = share
		if verdict, reasons := verdicts(need, thin); verdict != want {
			t.Errorf("%v of a 0W-8: %s %v, want %s", share, verdict, reasons, want)
		}
	}
}

// The manual's own chart wins over what is generally advised, in both directions.
func TestJudgeChart(t *testing.T) {
	chart := []ChartRow{
		{gradeOf("10W-30"), math.Inf(-1), 20},
		{gradeOf("10W-40"), -10, 35},
		{gradeOf("20W-50"), 10, math.Inf(1)},
		{gradeOf("30"), -20, 0},
	}
	for _, c := range []struct {
		has            string
		coldest, warm  float64
		verdict, wants string
	}{
		{"10W-40", -5, 30, "suits", "suits chart-fits"},
		{"10W-40", -10, 35, "suits", "suits chart-fits"},
		{"10W-40", -15, 0, "no", "no chart-other 10W-30/30"}, // generally advised to -17.8
		{"10W-40", 0, 40, "no", "no chart-none"},
		{"10W-40", 20, 40, "no", "no chart-other 20W-50"},
		{"20W-50", 15, 40, "suits", "suits chart-fits"},
		{"20W-50", 5, unasked, "no", "no chart-other 10W-30/10W-40"}, // generally advised from -6.7
		{"30", -15, -5, "suits", "suits chart-fits"},                 // generally advised from 4.4
		{"10W-30", -40, 10, "suits", "suits chart-fits"},
		{"10W-40", unasked, 38, "no", "no chart-other 20W-50"},
		{"10W-40", unasked, unasked, "suits", "note season-not-given"},
		// A grade that the chart hasn't is held against what it gives.
		{"10W-60", 30, 40, "limit", "limit grade-thicker 20W-50"},
		{"5W-30", 30, 40, "no", "no grade-far-thinner 20W-50"},
	} {
		need := Need{Grades: gradesOf("10W-40", "10W-30", "20W-50", "30"), Chart: chart, Coldest: c.coldest, Hottest: c.warm}
		verdict, reasons := Judge(&need, &Bottle{Grade: gradeOf(c.has)})
		var list []string
		for _, r := range reasons {
			list = append(list, weightNames[r.Weight]+" "+r.Code, weightNames[r.Weight]+" "+r.Code+" "+strings.ReplaceAll(strings.Join(r.Asked, "/"), "SAE ", ""))
		}
		if verdict.String() != c.verdict || !slices.Contains(list, c.wants) {
			t.Errorf("%s in air of %v to %v: %s %q, want %s %q", c.has, c.coldest, c.warm, verdict, list, c.verdict, c.wants)
		}
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
			Service: strings.Fields(drawn(t, "category", "", "SG", "SL", "GL-4")), WetClutch: rapid.Bool().Draw(t, "wet"),
			Coldest: rapid.SampledFrom([]float64{unasked, -40, -20, -10, 5, 20}).Draw(t, "coldest")}
		if mark := drawn(t, "marks", "", "MA", "MA2", "MB"); mark != "" {
			need.Marks = []string{mark}
		}
		bottle := Bottle{Grade: gradeOf(drawn(t, "grade", grades...)), Marks: strings.Fields(drawn(t, "mark", "", None, "MA", "MA1", "MA2", "MB", "FC")),
			Service: strings.Fields(drawn(t, "service", "", None, "SL", "SP CF", "SF", "CF", "GL-5")), Conserving: rapid.Bool().Draw(t, "conserving")}
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
		wet := need.WetClutch && !slices.ContainsFunc(bottle.Marks, WetClutchMark)
		if (bottle.Grade == (Grade{}) || wet) && filled == Suits {
			t.Fatalf("%+v suits %+v", bottle, need)
		}
	})
}
