package core_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// shelfOf is so many bottles of one size, as typed.
func shelfOf(n int, size string) string {
	return "[" + strings.TrimSuffix(strings.Repeat(`{"size":"`+size+`"},`, n), ",") + "]"
}

// n quarts out of n bottles of a quart are exactly enough, and of one bottle more that
// one stays shut: a quart is 946.352946 mL in the US and 1136.5225 mL in Britain.
func TestBottles_Quarts(t *testing.T) {
	for _, unit := range []string{"US qt", "imp qt", "US pt", "imp pt", "US fl oz", "imp fl oz", "US gal", "imp gal", "L", "mL"} {
		for n := 1; n <= 8; n++ {
			size := "1 " + unit
			switch unit {
			case "mL":
				size = "1000 mL"
			case "US fl oz", "imp fl oz":
				size = "32 " + unit
			}
			number, _, _ := strings.Cut(size, " ")
			one, _ := strconv.Atoi(number)
			for _, more := range []int{0, 1, 3} {
				for _, system := range quantity.Systems {
					var a pouredOut
					in := fmt.Sprintf(`{"need":"%d %s","system":"%s","bottles":%s}`, n*one, unit, system, shelfOf(n+more, size))
					if n*one > 5 && strings.HasSuffix(unit, "gal") {
						continue // beyond what an engine takes
					}
					must(t, "bottles", []byte(in), &a)
					if a.Verdict != "shelf.open-new" || a.Opened != n || a.Missing != 0 || a.Left != 0 {
						t.Errorf("%s: %s, %d opened, %v L missing, %v L left", in, a.Verdict, a.Opened, a.Missing, a.Left)
					}
				}
			}
		}
	}
}

// Over every unit of volume, size and system: a multiple of the bottle is that many
// bottles, whatever unit it is asked for in; nothing is opened, lacking or left over for
// less than a reading shows; and what is told adds up.
func TestBottles_Multiples(t *testing.T) {
	var units []quantity.Unit
	for _, u := range quantity.Units {
		if u.Kind == quantity.Volume {
			units = append(units, u)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		sold := rapid.SampledFrom(units).Draw(t, "sold in")
		asked := rapid.SampledFrom(units).Draw(t, "asked in")
		size := rapid.Float64Range(0.25, 25).Draw(t, "litres")
		if rapid.Bool().Draw(t, "drum") {
			size = rapid.Float64Range(0.25, 60).Draw(t, "drum of")
		}
		text := quantity.Number(sold.FromBase(size), rapid.IntRange(2, 6).Draw(t, "digits"))
		value, _ := strconv.ParseFloat(text, 64)
		size = sold.ToBase(value)
		most := int(24.9 / size)
		system := rapid.SampledFrom(quantity.Systems).Draw(t, "system")
		if most < 1 {
			most = 1
		}
		// Of a hundred bottles one is less than a reading shows, and stays closed.
		n := rapid.IntRange(1, min(most, 99)).Draw(t, "n")
		need := float64(n) * size
		if need > 25 {
			need, n = 25*rapid.Float64Range(0.01, 1).Draw(t, "of the drum"), 1
		}
		in := fmt.Sprintf(`{"need":"%s %s","system":"%s","bottles":%s}`, strconv.FormatFloat(asked.FromBase(need), 'f', 9, 64), asked.ID, system,
			shelfOf(n+rapid.IntRange(0, 3).Draw(t, "more"), text+" "+sold.ID))
		var a pouredOut
		answered(t, "bottles", []byte(in), &a)
		if a.Opened != n || a.Missing != 0 || a.Verdict != "shelf.open-new" {
			t.Fatalf("%s: %d opened, %v L missing", in, a.Opened, a.Missing)
		}
		sum := 0.0
		for _, p := range a.Pours {
			sum += p.Pour
			if p.Left > 0 && p.Left < 0.0049 || p.Pour < 0.0049 {
				t.Fatalf("%s: pours %v L and leaves %v", in, p.Pour, p.Left)
			}
		}
		if short := need - sum; short > 0.01*need+1e-3 || -short > 0.011*need+1e-3 {
			t.Fatalf("%s: %v L of %v", in, sum, need)
		}
		for _, f := range a.Figures {
			for _, text := range f.Texts {
				if number, _, _ := strings.Cut(text, " "); number == "0" && math.Abs(a.Left) > 0 {
					t.Fatalf("%s: %s is %s", in, f.Name, text)
				}
			}
		}
	})
}
