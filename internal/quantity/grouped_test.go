package quantity_test

import (
	"testing"

	"tidysump/internal/quantity"
)

// Odometers count whole kilometres: a mark before exactly three digits groups
// them. A volume or torque is read with a decimal mark, as typed.
func TestParse_GroupedDistance(t *testing.T) {
	tests := []struct {
		kind  quantity.Kind
		text  string
		want  float64
		notes int
	}{
		{quantity.Distance, "12,400 km", 12400, 1},
		{quantity.Distance, "12.400 km", 12400, 1},
		{quantity.Distance, "12 400 km", 12400, 0},
		{quantity.Distance, "12.4 km", 12.4, 0},
		{quantity.Distance, "0.125 km", 0.125, 0},
		{quantity.Distance, "12400,5 km", 12400.5, 0},
		{"", "7,500 mi", 7500 * 1.609344, 1},
		{quantity.Volume, "3,200 L", 3.2, 0},
		{quantity.Torque, "1.130 Nm", 1.13, 0},
	}
	for _, tt := range tests {
		got, notes := quantity.Parse(tt.kind, tt.text, "", quantity.Metric)
		if got.Base != tt.want || len(notes) != tt.notes {
			t.Errorf("Parse(%q, %q) = %v with %d notes, want %v with %d", tt.kind, tt.text, got.Base, len(notes), tt.want, tt.notes)
		}
	}
}

// Temperatures are printed to whole degrees: a scale's zero is not nothing, so
// significant digits say little. 80 °C is 176 °F by definition.
func TestPrint_WholeDegrees(t *testing.T) {
	a, _ := quantity.Parse(quantity.Temperature, "80 °C", "", quantity.Metric)
	if got := a.Print("°F"); got != "176 °F" {
		t.Errorf("80 °C prints as %q, want 176 °F", got)
	}
}

// Signs that phones put in by themselves, and fractions as packagings print them.
func TestParse_Signs(t *testing.T) {
	for text, want := range map[string]float64{
		"1½ turns": 540, "¾ turn": 270, "1 ½ turns": 540, "¼ turn": 90, "−90°": -90, "1\u202f080°": 1080,
	} {
		a, list := quantity.Parse(quantity.Angle, text, "", quantity.Metric)
		if len(list) > 0 || a.Base != want {
			t.Errorf("Parse(%q) = %v°, %v, want %v°", text, a.Base, list, want)
		}
	}
}
