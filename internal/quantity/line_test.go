package quantity_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// Whole lines as manuals print them, of invented machines: what is taken of them, and what
// is said of the rest.
func TestReadRange_Lines(t *testing.T) {
	for _, c := range []struct {
		kind      quantity.Kind
		text      string
		low, high float64 // in unit
		unit      string
		codes     string
	}{
		{quantity.Torque, "30 N·m (3.1 kgf·m, 22 lbf·ft)", 30, 30, "N·m", ""},
		{quantity.Torque, "30 N·m {3.1 kgf·m} [22 lbf·ft]", 30, 30, "N·m", ""},
		{quantity.Torque, "30 N·m (3.1 kgf·m) (22 lbf·ft)", 30, 30, "N·m", ""},
		{quantity.Torque, "Drain plug: 30 N·m (3.1 kgf·m; 22 ft-lb)", 30, 30, "N·m", ""},
		{quantity.Torque, "25–35 N·m (2.5–3.6 kgf·m, 18–26 lbf·ft)", 25, 35, "N·m", ""},
		{quantity.Torque, "30 N·m (31 kgf·m, 22 lbf·ft)", 30, 30, "N·m", "twin-differs"},
		{quantity.Torque, "30 N·m (3.1 kgf·m, 32 lbf·ft)", 30, 30, "N·m", "twin-differs"},
		{quantity.Torque, "30 N·m (13.1 kgf·m, 32 lbf·ft)", 30, 30, "N·m", "twin-differs twin-differs"},
		{quantity.Torque, "30 N·m (22 lbf·ft) with oiled thread", 30, 30, "N·m", "rest-not-read"},
		{quantity.Duration, "3 minutes after idling 3–5 min", 3, 3, "min", "rest-not-read"},
		{quantity.Duration, "Wait: 2-3 min after stopping the engine", 2, 3, "min", "rest-not-read"},
		{quantity.Volume, "2.6 L (2.7 US qt, 2.3 Imp qt) with filter change", 2.6, 2.6, "L", "rest-not-read"},
		{quantity.Volume, "After disassembly: 3.2 L", 3.2, 3.2, "L", ""},
		{quantity.Distance, "Every: 6000 km", 6000, 6000, "km", ""},
		// A condition is none where no figure with a unit stands before it.
		{quantity.Length, "5/8 in", 0.625, 0.625, "in", ""},
		{quantity.Length, "2 in", 2, 2, "in", ""},
		{quantity.Torque, "30 with oil", math.NaN(), math.NaN(), "", "unknown-unit"},
	} {
		q := quantity.Ask{Kind: c.kind, System: quantity.Metric}
		low, high, _, notes := q.ReadRange(c.text)
		if got := codesOf(notes); got != c.codes {
			t.Errorf("%q: %q, want %q", c.text, got, c.codes)
		}
		if math.IsNaN(c.low) {
			if !math.IsNaN(low.Base) {
				t.Errorf("%q is read as %v", c.text, low)
			}
			continue
		}
		u, known := quantity.Find(c.unit)
		if !known || low.Unit != c.unit || math.Abs(u.FromBase(low.Base)-c.low) > 1e-9 || math.Abs(u.FromBase(high.Base)-c.high) > 1e-9 {
			t.Errorf("%q: %v to %v, want %v to %v %s", c.text, low, high, c.low, c.high, c.unit)
		}
	}
}

func codesOf(notes []finding.Finding) string {
	var codes []string
	for _, n := range notes {
		codes = append(codes, n.Code)
	}
	return strings.Join(codes, " ")
}

// lines are the ways in which manuals print a figure with its twins.
var lines = []string{"A (B, C)", "A (B; C)", "A (B/C)", "A {B} [C]", "A (B) (C)", "A = B = C", "A, B, C", "A / B / C", "A (B, C) after a ride", "Figure: A (B, C)"}

// Over all units and quantities: a line that prints a figure in three units is read as the
// first, and says nothing; one of which a twin is another amount says so, with both.
func TestReadRange_PrintedLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(quantity.Units).Draw(t, "unit")
		value := float64(rapid.IntRange(20, 980).Draw(t, "value")) / 10
		a := quantity.Amount{Kind: u.Kind, Base: u.ToBase(value), Unit: u.ID, Digits: 3}
		second, third := other(t, u.Kind), other(t, u.Kind)
		printed := []string{a.Print(u.ID), a.Print(second.ID), a.Print(third.ID)}
		for _, text := range printed {
			if strings.ContainsAny(text, "/e") && strings.ContainsAny(strings.SplitN(text, " ", 2)[0], "/e") {
				t.Skip("a spanner's fraction, or a number that no manual prints")
			}
		}
		differs := rapid.IntRange(0, 2).Draw(t, "which twin is another amount")
		if differs > 0 {
			b := a
			b.Base = u.ToBase(value * 3) // beyond what rounding either could hide
			printed[differs] = b.Print([]string{"", second.ID, third.ID}[differs])
		}
		line := rapid.SampledFrom(lines).Draw(t, "line")
		text := strings.NewReplacer("A", printed[0], "B", printed[1], "C", printed[2]).Replace(line)
		q := quantity.Ask{Kind: u.Kind, System: quantity.Metric}
		low, high, ranged, notes := q.ReadRange(text)
		if finding.Refused(notes) || ranged || low.Unit != u.ID || math.Abs(low.Base-a.Base) > 0.02*math.Abs(a.Base)+0.1*u.Scale || high != low {
			t.Fatalf("%q is %v to %v, %v", text, low, high, notes)
		}
		at := slices.IndexFunc(notes, func(n finding.Finding) bool { return n.Code == "twin-differs" })
		if (at >= 0) != (differs > 0) {
			t.Fatalf("%q: %v", text, notes)
		}
		if at >= 0 && (notes[at].Values["text"] != printed[0] || notes[at].Values["other"] != printed[differs]) {
			t.Fatalf("%q: the disagreement is told as %v", text, notes[at].Values)
		}
	})
}
