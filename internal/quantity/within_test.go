package quantity_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// ends gives the figures of a text, and the unit after them.
func ends(t *rapid.T, text, unit string) []float64 {
	numbers, ok := strings.CutSuffix(text, " "+unit)
	if !ok {
		t.Fatalf("%q is not in %s alone", text, unit)
	}
	var list []float64
	for _, number := range strings.Split(strings.ReplaceAll(numbers, "…", "–"), "–") {
		v, err := strconv.ParseFloat(number, 64)
		if top, bottom, fraction := strings.Cut(number, "/"); fraction {
			whole, top, mixed := strings.Cut(top, " ")
			if !mixed {
				whole, top = "0", whole
			}
			w, _ := strconv.ParseFloat(whole, 64)
			n, _ := strconv.ParseFloat(top, 64)
			d, _ := strconv.ParseFloat(bottom, 64)
			v, err = w+n/d, nil
		}
		if err != nil {
			t.Fatalf("%q holds %q", text, number)
		}
		list = append(list, v)
	}
	return list
}

// drawn draws an amount from a millionth to a million of any unit, as a person
// gives it or, rough, as it was worked out.
func drawn(t *rapid.T, rough bool) (quantity.Amount, *quantity.Unit) {
	u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
	digits := rapid.IntRange(1, 5).Draw(t, "digits")
	value := math.Pow(10, rapid.Float64Range(-6, 6).Draw(t, "magnitude"))
	if !rough {
		value, _ = strconv.ParseFloat(quantity.Number(value, digits), 64)
	}
	return quantity.Amount{Kind: u.Kind, Base: u.ToBase(value), Unit: u.ID, Digits: digits, Rough: rough}, &u
}

// other draws a unit of the same kind.
func other(t *rapid.T, kind quantity.Kind) *quantity.Unit {
	var list []*quantity.Unit
	for n := range quantity.Units {
		if quantity.Units[n].Kind == kind {
			list = append(list, &quantity.Units[n])
		}
	}
	return rapid.SampledFrom(list).Draw(t, "other")
}

// A converted figure is within 1 % of what was given, in every unit and of any size;
// a temperature, whose zero is not nothing, within a twentieth of a degree or 1 %.
func TestPrint_Within(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, given := drawn(t, false)
		u := other(t, a.Kind)
		text := a.Print(u.ID)
		got, want := ends(t, text, u.ID)[0], u.FromBase(a.Base)
		off := 0.01*math.Abs(want) + 1e-12
		if a.Kind == quantity.Temperature {
			off = max(off, 0.05+1e-9)
		} else if got == 0 {
			t.Fatalf("%g %s, which is not nothing, is %q", given.FromBase(a.Base), given.ID, text)
		}
		if math.Abs(got-want) > off {
			t.Fatalf("%g %s, %d digits, is %q and not %g", given.FromBase(a.Base), given.ID, a.Digits, text, want)
		}
	})
}

// An estimate has no more digits than it claims, two at least, in any unit; and is
// as right as these are.
func TestPrint_Estimates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, given := drawn(t, true)
		u := other(t, a.Kind)
		text := a.Print(u.ID)
		got, want := ends(t, text, u.ID)[0], u.FromBase(a.Base)
		number := strings.Trim(strings.Replace(strings.TrimSuffix(text, " "+u.ID), ".", "", 1), "-0")
		off := 0.0501
		switch {
		case a.Kind == quantity.Temperature:
			return // digits say little about it
		case strings.Contains(number, "/"):
			return // a spanner's fraction
		case u.ID == given.ID && a.Digits == 1:
			off = 0.5
		}
		if len(number) > max(a.Digits, 3) || len(number) > 2 && a.Digits <= 2 {
			t.Fatalf("an estimate of %d digits, %g %s, is %q", a.Digits, given.FromBase(a.Base), given.ID, text)
		}
		if got == 0 || math.Abs(got/want-1) > off {
			t.Fatalf("an estimate of %d digits, %g %s, is %q and not %g", a.Digits, given.FromBase(a.Base), given.ID, text, want)
		}
	})
}

// Both ends of a range stand in one unit in every system, and are two where they
// differ by more than the coarser shows.
func TestBetween_OneUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, u := drawn(t, rapid.Bool().Draw(t, "rough"))
		high := low
		high.Base = u.ToBase(u.FromBase(low.Base) * rapid.Float64Range(1, 20).Draw(t, "by"))
		for _, system := range quantity.Systems {
			for _, text := range quantity.Between(low, high, system) {
				var unit *quantity.Unit
				for n := range quantity.Units {
					if one := &quantity.Units[n]; one.Kind == low.Kind && strings.HasSuffix(text, " "+one.ID) && (unit == nil || len(one.ID) > len(unit.ID)) {
						unit = one
					}
				}
				if unit == nil {
					t.Fatalf("%g to %g %s in %s units is %q", u.FromBase(low.Base), u.FromBase(high.Base), u.ID, system, text)
				}
				list := ends(t, text, unit.ID)
				if len(list) > 2 || len(list) == 2 && list[0] >= list[1] && low.Kind != quantity.Temperature {
					t.Fatalf("%g to %g %s in %s units is %q", u.FromBase(low.Base), u.FromBase(high.Base), u.ID, system, text)
				}
				if len(list) == 1 && low.Digits > 1 && high.Base > 1.12*low.Base && low.Kind != quantity.Temperature {
					t.Fatalf("%g to %g %s in %s units is one figure, %q", u.FromBase(low.Base), u.FromBase(high.Base), u.ID, system, text)
				}
			}
		}
	})
}

// Conversions that once said nothing, or something else.
func TestPrint_NotNothing(t *testing.T) {
	for _, c := range []struct{ text, unit, want string }{
		{"270°", "turn", "0.75 turn"},
		{"90°", "turn", "0.25 turn"},
		{"90 min", "h", "1.5 h"},
		{"30 s", "min", "0.5 min"},
		{"1 mL", "L", "0.001 L"},
		{"17 N·m", "lbf·ft", "12.5 lbf·ft"},
		{"100 N·m", "lbf·ft", "74 lbf·ft"},
		{"33 °F", "°C", "0.6 °C"},
		{"20 °C", "°F", "68 °F"},
		{"-18 °C", "°F", "-0.4 °F"},
	} {
		a, list := quantity.Parse("", c.text, "", quantity.Metric)
		if got := a.Print(c.unit); got != c.want || len(list) > 0 {
			t.Errorf("%s is %q, %v, want %q", c.text, got, list, c.want)
		}
	}
}
