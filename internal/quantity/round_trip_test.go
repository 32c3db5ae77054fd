package quantity_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var systems = quantity.Systems

// What is printed in the unit it was given in reads back as the same amount,
// and prints the same again.
func TestParse_ReadsWhatPrintPrints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		system := rapid.SampledFrom(systems).Draw(t, "system")
		a := amountIn(t, u)
		text := a.Print(u.ID)
		b, list := quantity.Parse(u.Kind, text, "", system)
		if len(list) > 0 {
			t.Fatalf("Parse(%q): %v", text, list)
		}
		if math.Abs(b.Base-a.Base) > 1e-9*math.Max(1, math.Abs(a.Base)) || b.Unit != u.ID {
			t.Fatalf("Parse(%q) = %g %s, want %g", text, b.Base, b.Unit, a.Base)
		}
		if again := b.Print(u.ID); again != text {
			t.Fatalf("%q reads back and prints %q", text, again)
		}
	})
}

// What is printed in another unit is off by no more than its last digit.
func TestPrint_InAnotherUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		var others []quantity.Unit
		for _, o := range quantity.Units {
			if o.Kind == u.Kind {
				others = append(others, o)
			}
		}
		other := rapid.SampledFrom(others).Draw(t, "other")
		a := amountIn(t, u)
		text := a.Print(other.ID)
		b, list := quantity.Parse(u.Kind, text, "", quantity.Metric)
		if len(list) > 0 {
			t.Fatalf("Parse(%q): %v", text, list)
		}
		want, got := other.FromBase(a.Base), other.FromBase(b.Base)
		// Two significant digits at least, or a whole unit.
		if math.Abs(got-want) > math.Max(0.051*math.Abs(want), 10) {
			t.Fatalf("%s is printed as %q, which is %g; want %g", a.Print(u.ID), text, got, want)
		}
	})
}

// amountIn draws an amount in a unit, of one to six digits, with two after the point
// at most where three would not be read as a fraction.
func amountIn(t *rapid.T, u quantity.Unit) quantity.Amount {
	mantissa := rapid.IntRange(0, 999999).Draw(t, "mantissa")
	finest := 4
	if a, list := quantity.Parse(u.Kind, "1.234 "+u.ID, "", quantity.Metric); len(list) > 0 || u.FromBase(a.Base) > 2 {
		finest = 2
	}
	scale := rapid.IntRange(0, finest).Draw(t, "scale")
	value := float64(mantissa) / math.Pow10(scale)
	text := quantity.Number(value, 15)
	digits := len(strings.TrimLeft(strings.Replace(text, ".", "", 1), "0"))
	return quantity.Amount{Kind: u.Kind, Base: u.ToBase(value), Unit: u.ID, Digits: max(digits, 1)}
}

// Sizes of spanners are printed as fractions and typed as such.
func TestParse_Fractions(t *testing.T) {
	inch, _ := quantity.Find("in")
	for sixteenths := range 64 {
		a := quantity.Amount{Kind: quantity.Length, Base: inch.ToBase(float64(sixteenths) / 16), Unit: inch.ID, Digits: 4}
		text := a.Print("in")
		b, list := quantity.Parse("", text, "", quantity.US)
		if len(list) > 0 || math.Abs(b.Base-a.Base) > 1e-9 || b.Print("in") != text {
			t.Errorf("%d/16 in prints %q, which reads as %g mm, %v, want %g", sixteenths, text, b.Base, list, a.Base)
		}
	}
	for text, want := range map[string]float64{
		"3/4 turn": 270, "1/2turn": 180, "1 1/2 turns": 540, "0/5 turn": 0,
		"3/0 turn": math.NaN(), "-1/2 turn": math.NaN(), "1/2.5 turn": math.NaN(), "1/2/3 turn": math.NaN(), "1/ turn": math.NaN(), "/2 turn": math.NaN(),
	} {
		got, _ := quantity.Parse(quantity.Angle, text, "", quantity.Metric)
		if got.Base != want && !(math.IsNaN(got.Base) && math.IsNaN(want)) {
			t.Errorf("Parse(%q) = %g°, want %g", text, got.Base, want)
		}
	}
}

// Every spelling means its unit, in every system, with and without a blank, and in
// the plural. A torque's are those of its force and its length, in either order
// but for N, whose mN would be something else.
func TestParse_Spellings(t *testing.T) {
	seen := map[string]string{}
	for _, u := range quantity.Units {
		spellings := strings.Split(u.Spellings, "|")
		if u.Spellings == "" {
			t.Errorf("%s has no spelling", u.ID)
		}
		if u.Kind == quantity.Torque {
			spellings = torques(t, u)
		}
		for _, s := range append([]string{u.ID}, spellings...) {
			if other, twice := seen[s]; twice && other != u.ID {
				t.Errorf("%q is %s and %s", s, other, u.ID)
			}
			seen[s] = u.ID
			forms := []string{"7 " + s, "7" + s, "7 " + strings.ToUpper(s)}
			if u.Kind != quantity.Torque && s != u.ID && len(s) > 1 && !strings.HasSuffix(s, "s") {
				forms = append(forms, "7 "+s+"s")
			}
			kind := quantity.Kind("")
			if u.ID == "oz" { // by itself it is one of a volume
				kind = u.Kind
			}
			for _, text := range forms {
				a, list := quantity.Parse(kind, text, "", quantity.US)
				if len(list) > 0 || a.Unit != u.ID {
					t.Errorf("Parse(%q) = %s, %v, want %s", text, a.Unit, list, u.ID)
				}
			}
		}
	}
}

// torques are the spellings of a unit of torque.
func torques(t *testing.T, u quantity.Unit) (list []string) {
	force, id, _ := strings.Cut(u.ID, "·")
	length, ok := quantity.Find(id)
	if !ok {
		t.Fatalf("%s has no length", u.ID)
	}
	for _, f := range strings.Split(u.Spellings, "|") {
		for _, l := range strings.Split(length.Spellings, "|") {
			for _, between := range []string{"", "-", "·", " ", ".", "*"} {
				list = append(list, f+between+l)
				if !strings.HasSuffix(force, "N") {
					list = append(list, l+between+f)
				}
			}
		}
	}
	return list
}

func TestParse_AmbiguousUnits(t *testing.T) {
	for _, c := range []struct {
		text   string
		system quantity.System
		want   string
	}{
		{"3 qt", quantity.US, "US qt"},
		{"3 qt", quantity.Metric, "US qt"},
		{"3 quarts", quantity.Imperial, "imp qt"},
		{"2 pints", quantity.Imperial, "imp pt"},
		{"2 pt.", quantity.US, "US pt"},
		{"8 oz", quantity.US, "US fl oz"},
		{"8 fl oz", quantity.Imperial, "imp fl oz"},
		{"1 gal", quantity.Imperial, "imp gal"},
	} {
		a, list := quantity.Parse(quantity.Volume, c.text, "", c.system)
		if a.Unit != c.want || len(list) != 1 || list[0].Code != "unit-read-as" || list[0].Grade != finding.Note {
			t.Errorf("Parse(%q, %s) = %s, %v, want %s and a note", c.text, c.system, a.Unit, list, c.want)
		}
	}
}

// A refusal is reported, and comes with an amount that can't pass for one.
func TestParse_Refuses(t *testing.T) {
	for _, c := range []struct{ text, standard, code string }{
		{"", "L", "not-a-number"},
		{"L", "", "not-a-number"},
		{"-", "L", "not-a-number"},
		{"1.2.3 L", "", "not-a-number"},
		{"1,000.5 L", "", "not-a-number"},
		{"1-2 L", "", "one-figure"},
		{"NaN L", "", "not-a-number"},
		{"Inf", "L", "not-a-number"},
		{"3", "", "no-unit"},
		{"3", "furlong", "no-unit"},
		{"3 furlongs", "", "unknown-unit"},
		{"1e3 L", "", "unknown-unit"},
		{"0x1p4 L", "", "unknown-unit"},
		{"25 N·m", "", "unit-of-other-kind"},
		{"3", "N·m", "unit-of-other-kind"},
		{strings.Repeat("9", 400) + " L", "", "number-too-long"},
		{strings.Repeat("9", 30) + " L", "", "number-too-long"},
		{"1" + strings.Repeat("0", 301) + " L", "", "number-too-long"},
		{strings.Repeat("0", 301) + "1 L", "", "number-too-long"},
		{"0." + strings.Repeat("0", 301) + "1 L", "", "number-too-long"},
	} {
		a, list := quantity.Parse(quantity.Volume, c.text, c.standard, quantity.Metric)
		if len(list) != 1 || list[0].Code != c.code || list[0].Grade != finding.Refuse || !math.IsNaN(a.Base) {
			t.Errorf("Parse(%.40q, %q) = %g, %v, want %s and NaN", c.text, c.standard, a.Base, list, c.code)
		}
		if a.Print("L") != "" {
			t.Errorf("the refused %.40q prints %q", c.text, a.Print("L"))
		}
	}
}
