package quantity_test

import (
	"math"
	"testing"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// FuzzParse: any text is read as a finite amount, or refused with a finding.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"3,2 l", "3.2 qt", "25 Nm", "18 ft-lb", "170F", "5/8 in", "12,400 km", "−5 °C", "1e309 L", ""} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, list := quantity.Parse("", text, "", quantity.Metric)
		if math.IsNaN(a.Base) != finding.Refused(list) || math.IsInf(a.Base, 0) {
			t.Fatalf("Parse(%q) = %v, %v", text, a, list)
		}
	})
}
