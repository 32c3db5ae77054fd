package line_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/line"
	"tidysump/internal/quantity"
)

// filled gives what a reading fills, by field; a row's fields have it before their names.
func filled(r *line.Reading) map[string]string {
	out := map[string]string{}
	for _, p := range r.Pieces {
		if len(p.Options) == 0 {
			name := p.Field
			if p.List != "" {
				name = p.List + "/" + string(rune('0'+p.Row)) + "/" + name
			}
			out[name] = p.Text
		}
	}
	return out
}

// offered gives what a reading asks of each piece, as "field: text".
func offered(r *line.Reading) (list []string) {
	for _, p := range r.Pieces {
		for _, o := range p.Options {
			list = append(list, o.Field+": "+o.Text)
		}
	}
	return list
}

func read(text string) *line.Reading {
	return line.Read(&line.Ask{Text: text, System: quantity.Metric})
}

// Lines as people type and say them.
func TestRead(t *testing.T) {
	for _, c := range []struct{ text, op, fields string }{
		{"25 Nm, wrench with 60 mm adapter", "wrench", "torque=25 N·m adapter=60 mm"},
		{"wrench 25 Nm, scale 20 to 100 Nm, click", "wrench", "torque=25 N·m wrenches/0/low=20 N·m wrenches/0/high=100 N·m wrenches/0/tool=click"},
		{"18 ft-lb", "convert", "text=18 lbf·ft"},
		{"eighteen foot pounds", "convert", "text=18 lbf·ft"},
		{"twenty-five newton metres", "convert", "text=25 N·m"},
		{"two and a half litres", "convert", "text=2.5 L"},
		{"drop every 5 s, band 350 ml", "leak", "every=5 s way=drops band=350 mL"},
		{"12 drops in a minute, engine running", "leak", "drops=12 way=drops time=1 min engine=running"},
		{"caught 5 ml in 10 minutes", "leak", "caught=5 mL way=cap time=10 min"},
		{"two thirds of the band", "level", "share=2/3"},
		{"10w40 at minus 10", "oil-curve", "grade=10W-40 at=-10 °C"},
		{"97 mm2/s at 40 C and 14.5 mm2/s at 100 C", "oil-curve", "first=97 mm²/s firstAt=40 °C second=14.5 mm²/s secondAt=100 °C"},
		{"m12 by 1.5 aluminium", "torque-guess", "thread=M12x1.5 seat=aluminium"},
		{"drain plug M14x1.5, 25 Nm, believable", "torque-check", "what=plug thread=M14x1.5 torque=25 N·m"},
		{"turn M14x1.5 three quarters of a turn", "turn", "turn=0.75 turn thread=M14x1.5"},
		{"95 C to 80 C in 10 minutes, air 18 C", "cool", "first=95 °C second=80 °C between=10 min air=18 °C"},
		{"3 l through a 12 mm hole at 55 C", "run-out", "volume=3 L hole=12 mm temperature=55 °C"},
		{"need 2.6 l, bottles 4 l, 1 l", "bottles", "need=2.6 L bottles/0/size=4 L bottles/1/size=1 L"},
		{"3 l 10w40 mixed with 1 l 5w30", "oil-mix", "firstVolume=3 L firstGrade=10W-40 secondVolume=1 L secondGrade=5W-30"},
		{"does 10w-40 suit, bottle 5W-30 MA2", "oil-suits", "grades=10W-40 bottleGrade=5W-30 bottleMark=MA2"},
		{"how thick is 10w40 at 60 C", "oil-curve", "grade=10W-40 at=60 °C"},
		{"bike needs 10w40, 20w50, bottle 5w30, wet clutch, suits", "oil-suits", "grades=10W-40, 20W-50 bottleGrade=5W-30 clutch=wet"},
		{"70 degrees at first, 60 degrees now, 5 min later, air 20 degrees, wait", "cool", "first=70 °C second=60 °C between=5 min air=20 °C"},
		{"check my wrench, 10 kg at 400 mm, wrench weighs 1.2 kg, balances at 180 mm, scale to 100 Nm, clicks at 42 Nm", "wrench-check",
			"mass=10 kg lever=400 mm own=1.2 kg centre=180 mm high=100 N·m readings/0/reading=42 N·m"},
		{"fuel: put in 2.5 l, level before 70 %, now 130 %, band 500 ml", "fuel", "volume=2.5 L before=70 % now=130 % band=500 mL"},
		{"oil pressure 1.2 bar at 90 C 1500 rpm manual minimum 1.0 bar", "oil-pressure", "pressure=1.2 bar temperature=90 °C speed=1500 least=1 bar"},
		{"set my 20-100 Nm wrench to 24 Nm", "wrench", "torque=24 N·m wrenches/0/low=20 N·m wrenches/0/high=100 N·m"},
		{"caught 10 ml in half an hour", "leak", "caught=10 mL way=cap time=0.5 h"},
		{"12 drops per minute, engine running", "leak", "drops=12 way=drops time=1 min engine=running"},
		{"5 ml per hour", "leak", "caught=5 mL way=cap time=1 h"},
		{"20 drops on 100 m", "leak", "drops=20 stretch=100 m way=trail"},
		{"which bottle for 3.2 l, 4 l bottle and 1 l bottle open with 300 ml left", "bottles",
			"need=3.2 L bottles/0/size=4 L bottles/1/size=1 L bottles/1/opened=yes bottles/1/left=300 mL"},
		{"oil pressure 3.4 bar at 80 C and 3000 rpm, manual says 340 to 540 kPa", "oil-pressure",
			"pressure=3.4 bar temperature=80 °C speed=3000 least=340 kPa most=540 kPa"},
		{"3 l at 20 C, how much at 90 C", "oil-volume", "volume=3 L from=20 °C to=90 °C"},
		{"o-ring 60 x 3", "o-ring", "inside=60 mm section=3 mm"},
		{"which ring, 24.4x3.1 mm", "o-ring", "inside=24.4 mm section=3.1 mm"},
		{"joint torique 60 × 3", "o-ring", "inside=60 mm section=3 mm"},
		{"O-Ring 60 mal 3 mm", "o-ring", "inside=60 mm section=3 mm"},
		{"o-ring 24.4 mm inside, 3.1 mm thick", "o-ring", "inside=24.4 mm section=3.1 mm"},
	} {
		r := read(c.text)
		var list []string
		for name, text := range filled(r) {
			list = append(list, name+"="+text)
		}
		slices.Sort(list)
		if got := strings.Join(list, " "); r.Op != c.op || got != sorted(c.fields) {
			t.Errorf("%q is %s (%v), %s; want %s, %s", c.text, r.Op, r.Ops, got, c.op, c.fields)
		}
		if len(r.Unread) > 0 {
			t.Errorf("%q: not understood: %v", c.text, r.Unread)
		}
	}
}

// sorted puts the fields of a row in the order of their names.
func sorted(fields string) string {
	var want []string
	for rest := fields; rest != ""; {
		// A text may hold blanks: the next field begins at a word with an equals sign.
		at := len(rest)
		for i := 1; i < len(rest); i++ {
			if word, _, is := strings.Cut(rest[i:], "="); rest[i-1] == ' ' && is && !strings.Contains(word, " ") {
				at = i
				break
			}
		}
		want = append(want, strings.TrimSpace(rest[:at]))
		rest = rest[at:]
	}
	slices.Sort(want)
	return strings.Join(want, " ")
}

// What could go into several fields, or lacks the unit that none may be taken for, is
// asked for and filled in nowhere.
func TestRead_AsksRatherThanGuesses(t *testing.T) {
	for text, want := range map[string][]string{
		"70 C wait":                     {"first: 70 °C", "second: 70 °C", "target: 70 °C"},
		"wrench 18 lb":                  {"torque: 18 lbf·ft", "torque: 18 lbf·in"},
		"set the wrench to 18 lb":       {"torque: 18 lbf·ft", "torque: 18 lbf·in"},
		"level 5 mm below max":          {"above: 5 mm", "marks: 5 mm", "glass: 5 mm", "offset: 5 mm"},
		"oil at 70 C, how long to wait": {"first: 70 °C", "second: 70 °C", "target: 70 °C"},
		"wrench, 300 mm":                {"adapter: 300 mm", "grip: 300 mm"}, // nothing that may be left out is filled unnamed
		"wrench 25":                     {"torque: 25 N·m", "torque: 25 lbf·ft", "torque: 25 lbf·in", "torque: 25 kgf·m", "torque: 25 daN·m", "torque: 25 kgf·cm"},
	} {
		r := read(text)
		if got := offered(r); !slices.Equal(got, want) || len(filled(r)) > 0 || r.Answer != nil {
			t.Errorf("%q: offers %q and fills %v; want %q", text, got, filled(r), want)
		}
	}
}

// A figure in a line that says more than it is not read as one to be converted.
func TestRead_NothingConvertedForNothing(t *testing.T) {
	for _, text := range []string{
		"lost a litre in 1000 km",
		"she burned 300 ml on the way home",
		"hat 300 ml auf der Fahrt verloren",
		"il a perdu 300 ml en route",
	} {
		if r := read(text); r.Op != "" || r.Answer != nil || len(r.Pieces) > 0 {
			t.Errorf("%q is %s: %v", text, r.Op, filled(r))
		}
	}
}
