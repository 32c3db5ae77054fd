package quantity_test

import (
	"math"
	"testing"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// FuzzParse: any text is read as a finite amount, or refused with a finding.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"3,2 l", "3.2 qt", "25 Nm", "18 ft-lb", "170F", "5/8 in", "12,400 km", "−5 °C", "1e309 L", "",
		"24 ± 2 N•m (18±1.5 lbf·ft)", "18~22", "1:30", "1 h 30 min", "1,500 mL", "½", "-270 ± 10 %", "1-1/16 in", "3/4 of a turn",
		"30 N·m (3.1 kgf·m, 22 lbf·ft)", "30 N·m {3.1 kgf·m} [22 lbf·ft]", "Wait: 3 minutes after idling 3–5 min", "5 in if in in", ": 3 L at"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, list := quantity.Parse("", text, "", quantity.Metric)
		if math.IsNaN(a.Base) != finding.Refused(list) || math.IsInf(a.Base, 0) {
			t.Fatalf("Parse(%q) = %v, %v", text, a, list)
		}
		for _, kind := range []quantity.Kind{"", quantity.Temperature, quantity.Share, quantity.Duration} {
			q := quantity.Ask{Kind: kind, Unit: quantity.Base(kind), System: quantity.US, High: 200}
			low, high, ranged, list := q.ReadRange(text)
			if refused := finding.Refused(list); math.IsNaN(low.Base) != refused || math.IsNaN(high.Base) != refused || ranged && refused || !ranged && !refused && low != high {
				t.Fatalf("%q as %s is %v to %v, ranged %v, %v", text, kind, low, high, ranged, list)
			}
		}
	})
}
