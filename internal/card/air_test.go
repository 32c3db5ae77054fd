package card

import (
	"math"
	"testing"

	"tidysump/internal/quantity"
)

func TestReadAir(t *testing.T) {
	for _, c := range []struct {
		text      string
		low, high float64
	}{
		{"20", 20, 20},
		{"20 °C", 20, 20},
		{"-5 to 30 °C", -5, 30},
		{"−5–30 °C", -5, 30},
		{"-20–0 °C", -20, 0},
		{"-20 to -5", -20, -5},
		{"from -20 to -5 °C", -20, -5},
		{"14 to 50 °F", -10, 10},
		{"from -10 °C", -10, math.Inf(1)},
		{"above 0", 0, math.Inf(1)},
		{"to 50 °F", math.Inf(-1), 10},
		{"up to 10", math.Inf(-1), 10},
		{"below 10 °C", math.Inf(-1), 10},
	} {
		low, high, list := ReadAir(c.text, quantity.Metric)
		if len(list) > 0 || math.Abs(low-c.low) > 1e-9 || math.Abs(high-c.high) > 1e-9 {
			t.Errorf("%q: %v to %v, want %v to %v; %v", c.text, low, high, c.low, c.high, list)
		}
	}
	for _, text := range []string{"", "warm", "30 to -5 °C", "200 °C", "-300", "5 L", "from", "to "} {
		if low, high, list := ReadAir(text, quantity.Metric); len(list) != 1 || list[0].Code != "air-unread" || low == low || high == high {
			t.Errorf("%q: %v to %v %v", text, low, high, list)
		}
	}
	if low, _, _ := ReadAir("50", quantity.US); math.Abs(low-10) > 1e-9 {
		t.Errorf("50 of a person with US units: %v °C", low)
	}
}

// What a plan hands on of a chart is read back.
func TestReadAir_WithBothUnits(t *testing.T) {
	for _, text := range []string{"-10 °C to 40 °C", "14 °F to 104 °F", "from 14 °F", "to 104 °F"} {
		low, high, list := ReadAir(text, quantity.US)
		if len(list) > 0 || !math.IsInf(low, -1) && math.Abs(low+10) > 1e-9 || !math.IsInf(high, 1) && math.Abs(high-40) > 1e-9 {
			t.Errorf("%q: %v to %v %v", text, low, high, list)
		}
	}
}
