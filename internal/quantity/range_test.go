package quantity_test

import (
	"slices"
	"testing"

	"tidysump/internal/quantity"
)

// A range that begins below zero can't be taken for a subtraction, and reads back.
func TestBetween_BelowZero(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      []string
	}{
		{-15, 30, []string{"-15…30 °C", "5–86 °F"}},
		{-30, -20, []string{"-30…-20 °C", "-22…-4 °F"}},
		{5, 30, []string{"5–30 °C", "41–86 °F"}},
	} {
		at := func(celsius float64) quantity.Amount {
			return quantity.Amount{Kind: quantity.Temperature, Base: celsius, Unit: "°C", Digits: 2}
		}
		got := quantity.Between(at(c.low), at(c.high), quantity.Metric)
		if !slices.Equal(got, c.want) {
			t.Errorf("%v to %v °C: %q; want %q", c.low, c.high, got, c.want)
		}
		for _, text := range got {
			ask := quantity.Ask{Kind: quantity.Temperature, System: quantity.Metric}
			low, high, _, notes := ask.ReadRange(text)
			if len(notes) > 0 || low.Base > c.low+0.5 || low.Base < c.low-0.5 || high.Base > c.high+0.5 || high.Base < c.high-0.5 {
				t.Errorf("%q reads as %v to %v °C, %v; want about %v to %v", text, low.Base, high.Base, notes, c.low, c.high)
			}
		}
	}
}
