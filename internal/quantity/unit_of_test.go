package quantity_test

import (
	"testing"

	"tidysump/internal/quantity"
)

// The table of all spellings says what reading an amount says.
func TestUnitOf(t *testing.T) {
	for text, want := range map[string]string{
		"N.m": "N·m", "Nm": "N·m", "lbf·ft": "lbf·ft", "ft-lb": "lbf·ft", "ft/lbs": "lbf·ft", "lb-in": "lbf·in", "kgm": "kgf·m",
		"kp m": "kgf·m", "m-kg": "kgf·m", "kgf cm": "kgf·cm", "US qt": "US qt", "qt": "US qt", "quarts": "US qt", "Imp. qt": "imp qt",
		"litres": "L", "L": "L", "cm³": "mL", "cc": "mL", "fl.oz.": "US fl oz", "oz": "US fl oz", "°C": "°C", "hours": "h", "mN": "", "": "",
		"kg/m3": "kg/m³", "turns": "turn", "inches": "in",
	} {
		if got := quantity.UnitOf(text); got != want {
			t.Errorf("UnitOf(%q) = %q, want %q", text, got, want)
		}
	}
}
