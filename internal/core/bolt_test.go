package core

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"tidysump/internal/bolt"
	"tidysump/specs"
)

// boltOps are the operations on fasteners.
var boltOps = []struct{ name, example string }{
	{"torque-check", `{"what":"plug","thread":"M12x1.5","torque":"25 N·m","seal":"flat-copper","seat":"aluminium","class":"8.8","lubrication":"oiled","length":"15 mm","inner":"12.2 mm","outer":"18 mm","system":"us"}`},
	{"torque-guess", `{"what":"plug","thread":"M14x1.5","seal":"flat-copper","seat":"aluminium"}`},
	{"wrench", `{"torque":"25 N·m","adapter":"50 mm","angle":"45°","grip":"300 mm","wrenches":[{"id":"a","low":"20 N·m","high":"100 N·m","graduation":"0.5 N·m"},{"id":"b","low":"10 lbf·ft","high":"80 lbf·ft"},{"high":"10 N·m"}]}`},
	{"turn", `{"thread":"M20x1.5","turn":"3/4 turn"}`},
	{"wrench-check", `{"mass":"10 kg","lever":"400 mm","own":"1.2 kg","centre":"180 mm","high":"100 N·m","graduation":"0.5 N·m","readings":[{"reading":"42 N·m"}]}`},
}

// boltAnswer is an answer as JSON, read without the program's own reader.
type boltAnswer struct {
	Verdict, Meant, Take string
	Base                 float64
	Texts                []string
	Figures              []boltFigure
	Wrenches             []struct {
		ID, Verdict, Unit, Setting string
		Low, High, Mark, Step      float64
		Usable, UsableAt, MarkAt   float64
		Gets                       []boltFigure
		Beside                     []struct {
			Setting string
			Gets    []boltFigure
		}
	}
	Notes, Findings []boltNote // Findings when refused
}

type boltNote struct {
	Code, Where, Grade string
	Values             map[string]string
}

// figure is the answer's only one.
func (a *boltAnswer) figure() boltFigure {
	if len(a.Figures) != 1 {
		return boltFigure{Name: "not one figure"}
	}
	return a.Figures[0]
}

type boltFigure struct {
	Name, Standing, Method, Lookup string
	Texts                          []string
	Low, High                      float64
}

// runBolt runs an operation; ok is false when the input was refused.
func runBolt(t interface{ Fatalf(string, ...any) }, op, in string) (a boltAnswer, ok bool) {
	out, outcome := Do(op, []byte(in))
	var both struct {
		OK       *boltAnswer
		Findings []boltNote
	}
	if err := json.Unmarshal(out, &both); err != nil {
		t.Fatalf("%s %s: %s: %v", op, in, out, err)
	}
	if both.OK == nil {
		both.OK = &boltAnswer{Findings: both.Findings}
	}
	return *both.OK, outcome == OK
}

func TestTorqueCheck_Refuses(t *testing.T) {
	for _, f := range []struct{ in, code, where string }{
		{`{"torque":"25 N·m"}`, "missing", "/what"},
		{`{"what":"plug","torque":"25 N·m"}`, "unknown-thread", "/thread"},
		{`{"what":"plug","thread":"M12x1.5"}`, "missing", "/torque"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25"}`, "no-unit", "/torque"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 L"}`, "unit-of-other-kind", "/torque"},
		{`{"what":"plug","thread":"M12x1.5","torque":"-25 N·m"}`, "not-believable", "/torque"},
		{`{"what":"plug","thread":"M12x1.5","torque":"0 N·m"}`, "not-believable", "/torque"},
		{`{"what":"plug","thread":"M12x1.5","torque":"1e9 N·m"}`, "unknown-unit", "/torque"},
		{`{"what":"nail","thread":"M12x1.5","torque":"25 N·m"}`, "unknown-word", "/what"},
		{`{"what":"plug","thread":"pipe","torque":"25 N·m"}`, "unknown-thread", "/thread"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","seat":"cheese"}`, "unknown-word", "/seat"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","class":"8.9"}`, "unknown-word", "/class"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","inner":"12 mm"}`, "washer-size", "/outer"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","outer":"18 mm"}`, "washer-size", "/outer"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","inner":"18 mm","outer":"12 mm"}`, "washer-size", "/outer"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","length":"9 cubits"}`, "unknown-unit", "/length"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","length":"9 m"}`, "not-believable", "/length"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","system":"old"}`, "unknown-word", "/system"},
		{`{"what":"plug","thread":"M12x1.5","torque":"25 N·m","colour":"red"}`, "unknown-member", "/colour"},
		{`{"what":7}`, "wrong-type", "/what"},
		{`{`, "not-json-end", "/"},
	} {
		a, ok := runBolt(t, "torque-check", f.in)
		if ok || len(a.Findings) == 0 || a.Findings[0].Code != f.code || a.Findings[0].Where != f.where {
			t.Errorf("%s: ok %v, %+v, want %s at %s", f.in, ok, a.Findings, f.code, f.where)
		}
	}
}

// The figures of a joint of which everything is known, against the formulas.
func TestTorqueCheck_Figures(t *testing.T) {
	a, ok := runBolt(t, "torque-check", boltOps[0].example)
	if !ok || a.Verdict != "torque.believable" || a.Meant != "" || len(a.Figures) != 6 {
		t.Fatalf("%v %+v", ok, a)
	}
	th, _ := bolt.ParseThread("M12x1.5")
	const ring = (12.2 + 18) / 2
	strongest := bolt.Preload(bolt.NutFactor(&th, 0.08, 0.08, ring), 12, 25)
	weakest := bolt.Preload(bolt.NutFactor(&th, 0.16, 0.16, ring), 12, 25)
	area := math.Pi / 4 * (18*18 - 12.2*12.2)
	for n, want := range [][2]float64{
		{weakest, strongest},
		{25000 / (strongest * 12), 25000 / (weakest * 12)},
		{weakest / bolt.Permissible(&th, 640, 1, 0.16), strongest / bolt.Permissible(&th, 640, 1, 0.08)},
		{bolt.PullOutArea(&th, 15) * 136.8 / strongest, bolt.ThreadStripArea(&th, 15) * 190 / weakest},
		{15, 15}, // 14.6 mm, up to the next half
		{weakest / area, strongest / area},
	} {
		f := a.Figures[n]
		if math.Abs(f.Low-want[0]) > 1e-9*want[0] || math.Abs(f.High-want[1]) > 1e-9*want[1] || f.Standing != "estimated" || f.Method == "" {
			t.Errorf("%s: %+v, want %v", f.Name, f, want)
		}
	}
	if got := a.Figures[0].Texts; len(got) != 1 || !strings.HasSuffix(got[0], " lbf") {
		t.Errorf("preload for the US: %v", got)
	}
}

// What isn't known is said to be so, with the place to look.
func TestTorqueCheck_Unknown(t *testing.T) {
	a, _ := runBolt(t, "torque-check", `{"what":"plug","thread":"M13x1","torque":"25 N·m","seat":"steel"}`)
	for n, known := range []bool{true, true, false, false, false} {
		f := a.Figures[n]
		if known != (f.Standing == "estimated") || known != (len(f.Texts) > 0) || known == (f.Lookup != "") {
			t.Errorf("%+v, known should be %v", f, known)
		}
	}
	if a, _ = runBolt(t, "torque-check", `{"what":"screw","thread":"M6","torque":"10 N·m"}`); len(a.Figures) != 4 {
		t.Errorf("a screw without a washer: %+v", a.Figures)
	}
	if a, _ = runBolt(t, "torque-check", `{"what":"filter","torque":"12 N·m"}`); len(a.Figures) != 0 {
		t.Errorf("a filter: %+v", a.Figures)
	}
}

// No torque on the sample cards looks wrong; that all of it holds in any aluminium by the
// lower estimate, however deep the screw engages, is more than anybody knows.
func TestTorqueCheck_SampleCards(t *testing.T) {
	type figure struct {
		Value, To float64
		Unit      string
	}
	var cards []struct {
		ID    string
		Bolts []struct {
			Purpose, Thread string
			Torque          *figure
			Seal            *struct{ Kind string }
		}
	}
	if err := json.Unmarshal(specs.Samples(), &cards); err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, c := range cards {
		for _, b := range c.Bolts {
			if b.Torque == nil || b.Torque.Value == 0 || b.Thread == "" {
				continue
			}
			in := map[string]string{"what": "plug", "thread": b.Thread, "seat": "aluminium"}
			switch b.Purpose {
			case "filter-cover-screw", "level-screw", "panel":
				in["what"] = "screw"
			case "filter-can":
				in = map[string]string{"what": "filter", "thread": b.Thread}
			}
			if b.Seal != nil {
				in["seal"] = b.Seal.Kind
			}
			for _, v := range []float64{b.Torque.Value, max(b.Torque.To, b.Torque.Value)} {
				in["torque"] = fmt.Sprint(v, " ", b.Torque.Unit)
				text, _ := json.Marshal(in)
				a, ok := runBolt(t, "torque-check", string(text))
				if !ok || a.Verdict == "torque.not-believable" {
					t.Errorf("%s: %s: %s %+v", c.ID, text, a.Verdict, a.Notes)
				}
				checked++
			}
		}
	}
	if checked < 8 {
		t.Errorf("only %d torques checked", checked)
	}
}

func TestTorqueGuess(t *testing.T) {
	a, ok := runBolt(t, "torque-guess", `{"what":"plug","thread":"M12x1.5","seal":"flat-copper","seat":"aluminium"}`)
	if f := a.figure(); !ok || f.Low != 25 || f.High != 27.5 || f.Standing != "estimated" || f.Method != "@method.copper-plugs" {
		t.Errorf("%+v", a)
	}
	for _, in := range []string{
		`{"what":"plug","thread":"M12x1.5","seal":"folded","seat":"aluminium"}`,
		`{"what":"plug","thread":"M12x1.5","seal":"flat-copper"}`,
		`{"what":"plug","thread":"M13x1","seal":"flat-copper","seat":"steel"}`,
	} {
		a, ok := runBolt(t, "torque-guess", in)
		if f := a.figure(); !ok || f.Standing != "unknown" || f.Low != 0 || len(f.Texts) > 0 || f.Lookup == "" {
			t.Errorf("%s: %+v", in, a)
		}
	}
	if _, ok := runBolt(t, "torque-guess", `{"what":"plug","thread":"M12x1.5","torque":"3 N·m"}`); ok {
		t.Error("a torque is no part of a guess")
	}
}

func TestWrench(t *testing.T) {
	a, ok := runBolt(t, "wrench", boltOps[2].example)
	if !ok || a.Take != "a" || len(a.Wrenches) != 3 {
		t.Fatalf("%v %+v", ok, a)
	}
	// Computed: 25·300/(300 + 50·cos 45°) = 22.364 N·m = 16.495 lbf·ft.
	w := a.Wrenches[0]
	if w.Verdict != "wrench.sets-wide" || w.Setting != "22.5 N·m" || w.Mark != 22.5 || w.Usable != 20 || w.Step != 0.5 {
		t.Errorf("%+v", w)
	}
	// Half a millimetre, a finger's width and 5° are in it, by hand: 40° at 51 and 280
	// mm, 50° at 49 and 320 mm.
	cos := func(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
	low, high := 22.5*0.96*(1+49*cos(50)/320), 22.5*1.04*(1+51*cos(40)/280)
	if g := w.Gets[0]; math.Abs(g.Low-low) > 1e-9 || math.Abs(g.High-high) > 1e-9 || g.Method != "@method.wrench-adapter" {
		t.Errorf("%+v, want %v to %v", g, low, high)
	}
	if f := a.figure(); f.Name != "figure.wrench-must" || f.Low != 24 || f.High != 26 {
		t.Errorf("%+v", f)
	}
	if w := a.Wrenches[1]; w.Unit != "lbf·ft" || w.High != 80 || w.Mark != 16.5 || w.Setting != "16.5 lbf·ft" {
		t.Errorf("%+v", w)
	}
	if w := a.Wrenches[2]; w.Verdict != "wrench.above-scale" || w.Setting != "" || len(w.Gets) > 0 {
		t.Errorf("%+v", w)
	}
}

// What may be used of a scale, and where the mark stands on it: a fifth of the scale
// or where it begins, whichever is more; no mark beyond the end.
func TestWrench_Scale(t *testing.T) {
	a, _ := runBolt(t, "wrench", `{"torque":"25 N·m","wrenches":[{"low":"20 N·m","high":"100 N·m"},{"low":"40 N·m","high":"160 N·m"},
		{"high":"200 N·m"},{"high":"20 N·m"},{"low":"5 lbf·ft","high":"80 lbf·ft"}]}`)
	for n, want := range []struct{ usable, usableAt, markAt float64 }{
		{20, 0.2, 0.25},
		{40, 0.25, 0.1563}, // 25/160
		{40, 0.2, 0.125},   // below a fifth, and drawn there all the same
		{4, 0.2, 0},
		{16, 0.2, 0.23}, // 25 N·m = 18.439 lbf·ft, to three digits 18.4
	} {
		if w := a.Wrenches[n]; w.Usable != want.usable || w.UsableAt != want.usableAt || w.MarkAt != want.markAt {
			t.Errorf("wrench %d: %+v, want %+v", n, w, want)
		}
	}
	if a, _ := runBolt(t, "wrench", `{"torque":"25 N·m","adapter":"50 mm","wrenches":[{"high":"60 N·m"}]}`); a.Wrenches[0].MarkAt != 0 {
		t.Errorf("no setting is known, and the mark is drawn at %v", a.Wrenches[0].MarkAt)
	}
}

func TestWrench_Grip(t *testing.T) {
	a, _ := runBolt(t, "wrench", `{"torque":"25 N·m","adapter":"50 mm","wrenches":[{"id":"a","high":"60 N·m"},{"id":"b","high":"60 N·m","grip":"250 mm"}]}`)
	if a.Wrenches[0].Verdict != "wrench.grip-unknown" || a.Wrenches[1].Verdict != "wrench.sets-wide" || a.Take != "b" {
		t.Errorf("%+v", a)
	}
	for _, f := range []struct{ in, code, where string }{
		{`{"torque":"25 N·m"}`, "missing", "/wrenches"},
		{`{"torque":"25 N·m","wrenches":[{"high":"60 N·m"},{"id":"a"}]}`, "missing", "/wrenches/1/high"},
		{`{"torque":"25 N·m","wrenches":[{"low":"90 N·m","high":"60 N·m"}]}`, "range-reversed", "/wrenches/0/low"},
		// Rounded to such graduations a setting would be far off, and look right.
		{`{"torque":"25 N·m","wrenches":[{"high":"60 N·m","graduation":"20 N·m"}]}`, "too-coarse", "/wrenches/0/graduation"},
		{`{"torque":"25 N·m","wrenches":[{"high":"60 N·m","graduation":"0.0000001 N·m"}]}`, "not-believable", "/wrenches/0/graduation"},
		{`{"torque":"25 N·m","wrenches":[{"high":"60"}]}`, "no-unit", "/wrenches/0/high"},
		{`{"torque":"25 N·m","wrenches":["a"]}`, "wrong-type", "/wrenches/0"},
	} {
		a, ok := runBolt(t, "wrench", f.in)
		if ok || len(a.Findings) == 0 || a.Findings[0].Code != f.code || a.Findings[0].Where != f.where {
			t.Errorf("%s: ok %v, %+v, want %s at %s", f.in, ok, a.Findings, f.code, f.where)
		}
	}
}

// A wrench is chosen for what is set on it and not for what the fastener gets; one
// that is exact enough goes first, then the shortest scale.
func TestWrench_Take(t *testing.T) {
	for _, f := range []struct{ what, in, take string }{
		// 12 N·m through a backward adapter of 200 mm are 36 N·m: more than five times 12
		// is the scale that serves.
		{"backward", `{"torque":"12–20 N·m","adapter":"200 mm","angle":"180°","grip":"300 mm","wrenches":[{"id":"a","low":"20 N·m","high":"100 N·m","graduation":"1 N·m"}]}`, "a"},
		{"typed as minus", `{"torque":"12–20 N·m","adapter":"-200 mm","grip":"300 mm","wrenches":[{"id":"a","low":"20 N·m","high":"100 N·m","graduation":"1 N·m"}]}`, "a"},
		// 30 N·m through a forward one of 300 mm are 15 N·m.
		{"forward", `{"torque":"30 N·m","adapter":"300 mm","grip":"300 mm","wrenches":[{"id":"a","low":"20 N·m","high":"100 N·m"},{"id":"b","low":"5 N·m","high":"25 N·m"}]}`, "b"},
		{"its marks are too coarse", `{"torque":"12.5 N·m","wrenches":[{"id":"a","high":"50 N·m","graduation":"5 N·m"},{"id":"b","high":"60 N·m","graduation":"0.5 N·m"}]}`, "b"},
		{"the exact one before the short one", `{"torque":"24.6 N·m","wrenches":[{"id":"a","high":"50 N·m","graduation":"1 N·m"},{"id":"b","high":"60 N·m","graduation":"0.2 N·m"}]}`, "b"},
		{"a beam last", `{"torque":"25 N·m","wrenches":[{"id":"a","high":"50 N·m","tool":"beam"},{"id":"b","high":"60 N·m","tool":"click"}]}`, "b"},
		{"none", `{"torque":"12.5 N·m","wrenches":[{"id":"a","high":"50 N·m","graduation":"5 N·m"}]}`, ""},
	} {
		if a, ok := runBolt(t, "wrench", f.in); !ok || a.Take != f.take {
			t.Errorf("%s: %s: took %q of %+v, want %q", f.what, f.in, a.Take, a.Wrenches, f.take)
		}
	}
}

// Where no mark gives the torque, both beside it are told with what comes of them.
func TestWrench_Beside(t *testing.T) {
	a, _ := runBolt(t, "wrench", `{"torque":"25 N·m","adapter":"50 mm","grip":"300 mm","wrenches":[{"low":"10 N·m","high":"100 N·m","graduation":"5 N·m"}]}`)
	w := a.Wrenches[0]
	if w.Verdict != "wrench.between-marks" || w.Setting != "" || len(w.Gets) > 0 || len(w.Beside) != 2 {
		t.Fatalf("%+v", a)
	}
	for n, want := range []struct {
		setting string
		torque  float64
	}{{"20 N·m", 20 * 350.0 / 300}, {"25 N·m", 25 * 350.0 / 300}} {
		b := w.Beside[n]
		if g := b.Gets[0]; b.Setting != want.setting || g.Low > 0.96*want.torque || g.High < 1.04*want.torque {
			t.Errorf("%+v, want %+v", b, want)
		}
	}
	// A range is what it must be, however it is written.
	for _, torque := range []string{"22–26 N·m", "24 ± 2 N·m", "22~26 Nm", "22 to 26 N·m"} {
		a, ok := runBolt(t, "wrench", `{"torque":"`+torque+`","wrenches":[{"high":"60 N·m","graduation":"1 N·m"}]}`)
		if !ok || a.Wrenches[0].Verdict != "wrench.sets" || a.Wrenches[0].Setting != "24 N·m" || len(a.Figures) > 0 {
			t.Errorf("%s: %+v", torque, a)
		}
	}
	if a, ok := runBolt(t, "wrench", `{"torque":"25–22 N·m","wrenches":[{"high":"60 N·m"}]}`); ok || a.Findings[0].Code != "range-reversed" {
		t.Errorf("a range that ends below its beginning: %+v", a)
	}
}

func TestTurn(t *testing.T) {
	for _, f := range []struct {
		in, text string
		mm       float64
	}{
		{`{"thread":"M20x1.5","turn":"270°"}`, "1.13 mm", 1.125},
		{`{"thread":"3/4-16 UNF","turn":"3/4 turn"}`, "1.19 mm", 1.190625},
		{`{"thread":"3/4-16 UNF","turn":"1 1/2 turns","system":"us"}`, "0.094 in", 2.38125},
		{`{"thread":"M6","turn":"0,25 turn"}`, "0.25 mm", 0.25},
		{`{"thread":"M6","turn":"3/4"}`, "0.75 mm", 0.75}, // a fraction is of a turn
	} {
		a, ok := runBolt(t, "turn", f.in)
		if got := a.figure(); !ok || math.Abs(got.Low-f.mm) > 1e-9 || got.Low != got.High || len(got.Texts) != 1 || got.Texts[0] != f.text {
			t.Errorf("%s: %+v, want %s", f.in, a, f.text)
		}
	}
	if a, ok := runBolt(t, "turn", `{"thread":"M6","turn":"0.75"}`); ok || a.Findings[0].Code != "no-unit" {
		t.Errorf("a turn without a unit: %+v", a)
	}
}

// The verdict on a wrench, and what it must answer at.
func TestWrenchCheck(t *testing.T) {
	const hung = `"mass":"10 kg","lever":"400 mm","own":"1.2 kg","centre":"180 mm","massOff":"20 g","leverOff":"1 mm"`
	for _, f := range []struct{ in, verdict string }{
		{`{` + hung + `,"high":"100 N·m"}`, ""},
		{`{` + hung + `,"high":"100 N·m","readings":[{"reading":"41.5 N·m"},{"reading":"41 N·m"}]}`, "wrench-check.within"},
		{`{` + hung + `,"high":"100 N·m","readings":[{"reading":"41.5 N·m"},{"reading":"45 N·m"},{"reading":"41 N·m"}]}`, "wrench-check.outside"},
		{`{` + hung + `,"high":"100 N·m","readings":[{"reading":"45 N·m"},{"reading":"41 N·m"}]}`, "wrench-check.outside"},
		{`{` + hung + `,"high":"100 N·m","readings":[{"reading":"41.5 N·m"},{"reading":"43 N·m"}]}`, "wrench-check.not-told"},
		{`{` + hung + `,"high":"100 N·m","tool":"beam","readings":[{"reading":"43 N·m"}]}`, "wrench-check.within"},
		{`{` + hung + `,"high":"80 lbf·ft","readings":[{"reading":"30.5 lbf·ft"}]}`, "wrench-check.within"},
		{`{` + hung + `,"high":"250 N·m","readings":[{"reading":"41 N·m"}]}`, "wrench-check.below-fifth"},
		{`{` + hung + `,"high":"40 N·m","readings":[{"reading":"40 N·m"}]}`, "wrench-check.above-scale"},
	} {
		a, ok := runBolt(t, "wrench-check", f.in)
		if !ok || a.Verdict != f.verdict || len(a.Figures) == 0 || a.Figures[0].Name != "figure.wrench-load" || a.Figures[0].Low > 41.35 || a.Figures[0].High < 41.34 {
			t.Errorf("%s: %+v, want %q", f.in, a, f.verdict)
		}
		if len(a.Notes) == 0 || a.Notes[0].Code != "mass-falls" || a.Notes[0].Grade != "doubt" {
			t.Errorf("%s: nobody is told that the mass may fall: %+v", f.in, a.Notes)
		}
	}
	// Off by 5 % of the mass, nothing is sure.
	a, _ := runBolt(t, "wrench-check", `{"mass":"10 kg","lever":"400 mm","own":"1.2 kg","centre":"180 mm","massOff":"500 g","high":"100 N·m","readings":[{"reading":"41.3 N·m"}]}`)
	if a.Verdict != "wrench-check.not-told" || a.Notes[1].Code != "check-too-rough" {
		t.Errorf("%+v", a)
	}
	for _, f := range []struct{ in, code, where string }{
		{`{"mass":"10 kg"}`, "missing", "/lever"},
		{`{"mass":"10 kg","lever":"400 mm","own":"1.2 kg","centre":"180 mm","massOff":"10 kg","high":"100 N·m"}`, "error-too-large", "/massOff"},
		{`{` + hung + `,"high":"100 N·m","readings":[{"reading":"41"}]}`, "no-unit", "/readings/0/reading"},
	} {
		a, ok := runBolt(t, "wrench-check", f.in)
		if ok || a.Findings[0].Code != f.code || a.Findings[0].Where != f.where {
			t.Errorf("%s: %+v, want %s at %s", f.in, a.Findings, f.code, f.where)
		}
	}
}
