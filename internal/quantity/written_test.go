package quantity_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// What people write, and manuals and packagings print. The same is read whatever the
// dots, dashes, blanks and digits that a keyboard gives.
func TestRead_WhatPeopleWrite(t *testing.T) {
	const none = ""
	for _, c := range []struct {
		kind quantity.Kind
		text string
		want float64 // in unit
		unit string
		note string
	}{
		{"", "25 N•m", 25, "N·m", none},
		{"", "25 N∙m", 25, "N·m", none},
		{"", "2,5 daN·m", 2.5, "daN·m", none},
		{"", "120 kgf·cm", 120, "kgf·cm", none},
		{"", "120 kg-cm", 120, "kgf·cm", none},
		{"", "90 inch-pounds", 90, "lbf·in", none},
		{"", "18 foot-pounds", 18, "lbf·ft", none},
		{"", "18 lbs ft", 18, "lbf·ft", none},
		{"", "18 lb.-ft.", 18, "lbf·ft", none},
		{"", "18 pound-feet", 18, "lbf·ft", none},
		{"", "25 N·m (18 lbf·ft)", 25, "N·m", none},
		{"", "2.5 kgf·m [25 N·m]", 2.5, "kgf·m", none},
		{"", "25 Nm/18 lb-ft", 25, "N·m", none},
		{"", "25 N·m (2.5 kgf·m, 18 lbf·ft)", 25, "N·m", none},
		{"", "25 N·m {2.5 kgf·m}", 25, "N·m", none},
		{"", "25 N·m (2.5 kgf·m, 25 lbf·ft)", 25, "N·m", "twin-differs"},
		{"", "460 kPa (4.7 kgf/cm², 67 psi)", 460, "kPa", none},
		{"", "4.7 kgf/cm2, 67 psi", 4.7, "kgf/cm²", none},
		{"", "18 ft/lbs", 18, "lbf·ft", none},
		{"", "3.2 L (3.4 qt)", 3.2, "L", none},
		{"", "4.5 L (4.0 imp qt)", 4.5, "L", none},
		{"", "3.785 L (1 gal)", 3.785, "L", none},
		{"", "12,000 km (7,500 mi)", 12000, "km", "number-read-as"},
		{"", "1000 km (600 mi)", 1000, "km", none},
		{"", "25 N·m (25 lbf·ft)", 25, "N·m", "twin-differs"},
		{"", "3.2 L (3.8 qt)", 3.2, "L", "twin-differs"},
		{quantity.Temperature, "80°", 80, "°C", none},
		{"", "68 ºF", 68, "°F", none},
		{"", "68 ˚F", 68, "°F", none},
		{"", "20 ℃", 20, "°C", none},
		{"", "20 degrees Celsius", 20, "°C", none},
		{"", "–5 °C", -5, "°C", none},
		{"", "− 5 °C", -5, "°C", none},
		{"", "100 cm^3", 100, "mL", none},
		{"", "—5 °C", -5, "°C", none},
		{"", "‑5 °C", -5, "°C", none},
		{"", "－５℃", -5, "°C", none},
		{"", "55 cm", 55, "cm", none},
		{"", "2 m", 2, "m", none},
		{"", "50 cl", 50, "cL", none},
		{"", "5 dl", 5, "dL", none},
		{"", "3 dm³", 3, "L", none},
		{"", "1'500 mL", 1500, "mL", none},
		{"", "1’500 cm³", 1500, "mL", none},
		{"", "1ʼ500 km", 1500, "km", none},
		{"", "1\u2009500 mL", 1500, "mL", none},
		{quantity.Duration, "1:30", 90, "min", "number-read-as"},
		{"", "1:30 h", 90, "min", none},
		{"", "1:30 min", 90, "s", none},
		{"", "1 h 30 min", 90, "min", none},
		{"", "1h30", 90, "min", none},
		{"", "2 days 4 h", 52, "h", none},
		{"", "1 lb 4 oz", 20, "oz", none},
		{"", "6 weeks", 6, "weeks", none},
		{"", "2 years", 2, "years", none},
		{"", "1 yr", 1, "years", none},
		{"", "11/16 in", 0.6875, "in", none},
		{"", "1-1/16 in", 1.0625, "in", none},
		{"", "3/4 of a turn", 0.75, "turn", none},
		{"", "1,500 mL", 1500, "mL", "number-read-as"},
		{"", "1.500 cc", 1500, "mL", "number-read-as"},
		{"", "1,130 in-lb", 1130, "lbf·in", "number-read-as"},
		{"", "1,500,000 km", 1500000, "km", none},
		{"", "1.0 kg/cm²", 1, "kgf/cm²", none},
		{"", "~20 min", 20, "min", none},
		{"", "٣٫٢ L", 3.2, "L", none},
		{"", "\u200f3,2\u200e L", 3.2, "L", none},
	} {
		a, list := quantity.Parse(c.kind, c.text, "°C", quantity.Metric)
		u, _ := quantity.Find(a.Unit)
		code := none
		if len(list) > 0 {
			code = list[0].Code
		}
		if a.Unit != c.unit || !quantity.Near(u.FromBase(a.Base), c.want) || code != c.note || len(list) > 1 {
			t.Errorf("%q is read as %v %s, %v, want %v %s %s", c.text, u.FromBase(a.Base), a.Unit, list, c.want, c.unit, c.note)
		}
	}
}

// A range is one in whatever way it is written, and one figure where one is asked for
// is not taken out of it.
func TestRead_Ranges(t *testing.T) {
	for _, c := range []struct {
		text      string
		low, high float64
		unit      string
	}{
		{"18~22 N·m", 18, 22, "N·m"},
		{"18～22 N·m", 18, 22, "N·m"},
		{"18–22 N·m", 18, 22, "N·m"},
		{"18 - 22 Nm", 18, 22, "N·m"},
		{"18 Nm - 22 Nm", 18, 22, "N·m"},
		{"18 Nm–22", 18, 22, "N·m"},
		{"18...22 N·m", 18, 22, "N·m"},
		{"18…22 N·m", 18, 22, "N·m"},
		{"18 to 22 N·m", 18, 22, "N·m"},
		{"18 bis 22 N·m", 18, 22, "N·m"},
		{"24 ± 2 N·m", 22, 26, "N·m"},
		{"24±2 N·m", 22, 26, "N·m"},
		{"24 N·m ± 2 N·m", 22, 26, "N·m"},
		{"24 +/- 2 N·m", 22, 26, "N·m"},
		{"20 N·m ± 10 %", 18, 22, "N·m"},
		{"2.4±0.2 kgf·m", 2.2, 2.6, "kgf·m"},
		{"82±8 N·m (60±6 lbf·ft)", 74, 90, "N·m"}, // engine manual, plugs with O-ring
		{"48±5 N·m (35±4 lbf·ft)", 43, 53, "N·m"}, // the same
		{"-10…+5 °C", -10, 5, "°C"},
		{"80 ± 5 °C", 75, 85, "°C"},
		{"1-1/2 to 2 turns", 1.5, 2, "turn"},
		{"1/2-3/4 turn", 0.5, 0.75, "turn"},
		{"90 min - 2 h", 90, 120, "min"},
	} {
		q := quantity.Ask{System: quantity.Metric}
		low, high, ranged, list := q.ReadRange(c.text)
		u, _ := quantity.Find(low.Unit)
		if !ranged || len(list) > 0 || low.Unit != c.unit || !quantity.Near(u.FromBase(low.Base), c.low) || !quantity.Near(u.FromBase(high.Base), c.high) {
			t.Errorf("%q is read as %v to %v %s, ranged %v, %v", c.text, u.FromBase(low.Base), u.FromBase(high.Base), low.Unit, ranged, list)
		}
		if a, list := q.Read(c.text); !math.IsNaN(a.Base) || len(list) != 1 || list[0].Code != "one-figure" {
			t.Errorf("one figure of %q is %v, %v", c.text, a.Base, list)
		}
	}
}

// What a field can hold settles what a number is; where either can be, it is asked.
func TestRead_Believable(t *testing.T) {
	for _, c := range []struct {
		kind       quantity.Kind
		text, unit string
		low, high  float64
		want       float64 // in the base unit; NaN where it is asked
		code       string
	}{
		{quantity.Share, "0.5", "%", -1, 2, 0.5, "number-read-as"},
		{quantity.Share, "0,25", "%", -1, 2, 0.25, "number-read-as"},
		{quantity.Share, "½", "%", -1, 2, 0.5, ""},
		{quantity.Share, "1/2", "%", -1, 2, 0.5, ""},
		{quantity.Share, "0.5 %", "%", -1, 2, 0.005, ""},
		{quantity.Share, "50", "%", -1, 2, 0.5, ""},
		{quantity.Share, "0", "%", -1, 2, 0, ""},
		{quantity.Share, "1", "%", -1, 2, math.NaN(), "number-two-ways"},
		{quantity.Share, "0.5", "%", 0, 0.2, 0.005, "number-read-as"},
		{quantity.Length, "11/16", "mm", 0, 100, 17.4625, ""},
		{quantity.Length, "1 1/16", "mm", 0, 100, 26.9875, ""},
		{quantity.Angle, "3/4", "°", 0, 3600, 270, ""},
		{quantity.Volume, "1,500 mL", "L", 0, 25, 1.5, "number-read-as"},
		{quantity.Volume, "1,500 mL", "L", 0, 0.5, 0.0015, "number-read-as"},
		{quantity.Length, "1,250 mm", "mm", 0.25, 6, 1.25, ""},
		{quantity.Length, "1,250 mm", "mm", 0, 2000, math.NaN(), "number-two-ways"},
		{quantity.Viscosity, "1,250 mm²/s", "mm²/s", 1, 1e5, math.NaN(), "number-two-ways"},
		{quantity.Viscosity, "10,530 mm²/s", "mm²/s", 1, 1000, 10.53, ""},
		{quantity.Mass, "1,200 kg", "kg", 0, 50, 1.2, ""},
		{quantity.Mass, "1,200 kg", "kg", 0, 2000, math.NaN(), "number-two-ways"},
		{quantity.Duration, "1:30", "min", 0, 600, 90, "number-read-as"},
		{quantity.Duration, "1:30", "min", 0, 10, 1.5, "number-read-as"},
	} {
		q := quantity.Ask{Kind: c.kind, Unit: c.unit, System: quantity.Metric, Low: c.low, High: c.high}
		a, list := q.Read(c.text)
		code := ""
		if len(list) > 0 {
			code = list[0].Code
		}
		if code != c.code || !quantity.Near(a.Base, c.want) && !(math.IsNaN(c.want) && math.IsNaN(a.Base)) {
			t.Errorf("%q between %v and %v is %v, %v, want %v %s", c.text, c.low, c.high, a.Base, list, c.want, c.code)
		}
	}
}

// Nothing is colder than nothing, and no figure has thirty digits.
func TestRead_OutOfRange(t *testing.T) {
	for text, code := range map[string]string{
		"-273.16 °C": "below-absolute-zero", "−300 °C": "below-absolute-zero", "-459.68 °F": "below-absolute-zero",
		"-270 ± 10 °C": "below-absolute-zero", "-300–20 °C": "below-absolute-zero",
		"-273.15 °C": "", "-459.67 °F": "",
		"123456789012345678901234567890 km": "number-too-long", "0.000000000000000000000000000001 L": "number-too-long",
		"999999999999999 km": "", "1000000000000000 km": "number-too-long", "24 ± 2": "no-unit", "18-22 cubits": "unknown-unit", "3 pigs-4 cows": "unknown-unit",
		"25 N·m (90°)": "unit-of-other-kind", "25 N·m (18)": "no-unit", "3 mN": "unknown-unit", "1 h 90 min": "unknown-unit", "1:75": "not-a-number",
	} {
		q := quantity.Ask{System: quantity.Metric}
		a, _, _, list := q.ReadRange(text)
		if code == "" && len(list) == 0 && !math.IsNaN(a.Base) {
			continue
		}
		if len(list) != 1 || list[0].Code != code || list[0].Grade != finding.Refuse || !math.IsNaN(a.Base) {
			t.Errorf("%q is %v, %v, want %s", text, a.Base, list, code)
		}
	}
}

// Each unit in each spelling, with each mark, dash, blank and set of digits that a
// keyboard has, is the same as in its plain form.
func TestRead_AnyKeyboard(t *testing.T) {
	swaps := [][]string{
		{".", ",", "．", "，", "٫"},
		{"-", "−", "–", "—", "‑", "‐", "－", "﹣"},
		{" ", "\u00a0", "\u202f", "\u2009", "\u3000", "\t", "", "  "},
		{"·", "•", "∙", "⋅", "*", ".", "-", "×", "・", ""},
		{"°", "º", "˚", "° "},
		{"²", "2"}, {"³", "3"},
	}
	digits := [][]rune{[]rune("0123456789"), []rune("０１２３４５６７８９"), []rune("٠١٢٣٤٥٦٧٨٩"), []rune("۰۱۲۳۴۵۶۷۸۹")}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		system := rapid.SampledFrom(systems).Draw(t, "system")
		spelling := u.ID
		if u.Kind != quantity.Torque {
			spelling = rapid.SampledFrom(append(strings.Split(u.Spellings, "|"), u.ID)).Draw(t, "spelling")
		}
		number := rapid.SampledFrom([]string{"7", "12.5", "0.25", "-5", "-1.5", "140", "1234.5"}).Draw(t, "number")
		set := rapid.SampledFrom(digits).Draw(t, "digits")
		swap := func(text string, in ...int) string {
			for _, n := range in {
				if strings.Contains(text, swaps[n][0]) {
					text = strings.ReplaceAll(text, swaps[n][0], rapid.SampledFrom(swaps[n]).Draw(t, "for "+swaps[n][0]))
				}
			}
			return text
		}
		typed := strings.Map(func(r rune) rune {
			if r >= '0' && r <= '9' {
				return set[r-'0']
			}
			return r
		}, swap(number, 0, 1)) + swap(" ", 2) + swap(spelling, 3, 4, 5, 6, 2)
		plain, notes := quantity.Parse(u.Kind, number+" "+u.ID, "", system)
		got, list := quantity.Parse(u.Kind, typed, "", system)
		if math.IsNaN(plain.Base) || got != plain || len(list) != len(notes) {
			t.Fatalf("%q is read as %+v, %v; %s %s is %+v, %v", typed, got, list, number, u.ID, plain, notes)
		}
	})
}

// Nothing is read as a thousand times more or less than it can mean without a word:
// where the mark may group thousands, what is taken in silence is a fraction of a unit
// of which a thousand is no part of an oil change, or of which a thousand isn't
// believable in the field.
func TestRead_NoFactorThousandInSilence(t *testing.T) {
	// The most of it that is met in an oil change, in the base unit: a drum, a wheel
	// axle's torque, a lorry; above it nobody can mean thousands.
	most := map[quantity.Kind]float64{quantity.Volume: 50, quantity.Torque: 500, quantity.Mass: 20}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		whole, part := rapid.IntRange(1, 999).Draw(t, "whole"), rapid.IntRange(0, 999).Draw(t, "part")
		number := fmt.Sprintf("%d%s%03d", whole, rapid.SampledFrom([]string{",", "."}).Draw(t, "mark"), part)
		q := quantity.Ask{Kind: u.Kind, System: rapid.SampledFrom(systems).Draw(t, "system")}
		small, large := u.ToBase(float64(whole)+float64(part)/1000), u.ToBase(float64(1000*whole+part))
		if rapid.Bool().Draw(t, "bounds") {
			q.Low = rapid.Float64Range(0, large).Draw(t, "low")
			q.High = rapid.Float64Range(q.Low, 2*large).Draw(t, "high")
		}
		a, list := q.Read(number + " " + u.ID)
		in := func(v float64) bool { return q.Low != q.High && v >= q.Low && v <= q.High }
		limit, limited := most[u.Kind]
		switch {
		case len(list) > 0:
		case in(small) && in(large):
			t.Fatalf("%s %s is taken for %v without a word, and either is believable", number, u.ID, a.Base)
		case in(large):
			t.Fatalf("%s %s is taken for %v without a word, and only thousands are believable", number, u.ID, a.Base)
		case !in(small) && limited && large <= limit:
			t.Fatalf("%s %s is taken for %v without a word; %v is met too", number, u.ID, a.Base, large)
		case !in(small) && q.Low != q.High && q.Low <= small && large <= q.High:
			t.Fatalf("%s %s is taken for %v without a word", number, u.ID, a.Base)
		}
	})
}
