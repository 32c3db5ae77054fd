//go:build !js

package quantity_test

import (
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/quantity"
)

// gnuNames are the units as GNU units calls them. The year is the
// Julian one here and a month a twelfth of it, which GNU units has not: both are
// spelled out.
var gnuNames = map[string]string{
	"L": "liter", "mL": "milliliter", "cL": "centiliter", "dL": "deciliter",
	"US fl oz": "usfloz", "US pt": "uspint", "US qt": "usquart", "US gal": "usgallon",
	"imp fl oz": "brfloz", "imp pt": "brpint", "imp qt": "brquart", "imp gal": "brgallon", "cu in": "inch^3",
	"N·m": "N m", "lbf·ft": "lbf ft", "lbf·in": "lbf inch", "kgf·m": "kgf m",
	"daN·m": "10 N m", "kgf·cm": "kgf cm",
	"mm": "mm", "cm": "cm", "m": "m", "in": "inch", "ft": "foot", "km": "km", "mi": "mile",
	"kPa": "kPa", "bar": "bar", "psi": "psi", "kgf/cm²": "kgf/cm^2",
	"kg": "kg", "g": "gram", "lb": "lb", "oz": "oz",
	"min": "minute", "s": "second", "h": "hour", "months": "(365.25|12) day",
	"days": "day", "weeks": "week", "years": "365.25 day",
	"°": "degree", "turn": "360 degree",
	"°C": "tempC", "°F": "tempF",
	"mm²/s": "mm^2/s", "kg/m³": "kg/m^3", "kg/L": "kg/liter", "m²": "m^2", "%": "percent",
}

// Every pair of units of a kind agrees with GNU units (Debian package "units").
func TestUnits_GNU(t *testing.T) {
	program := os.Getenv("GNU_UNITS") // set by make test, which installs it
	if program == "" {
		t.Skip("GNU_UNITS does not name the program")
	}
	for _, from := range quantity.Units {
		for _, to := range quantity.Units {
			if from.Kind != to.Kind || from.ID == to.ID || gnuNames[from.ID] == "" || gnuNames[to.ID] == "" {
				continue // one without a name fails below
			}
			const value = 37.25 // any number that is not special to a scale
			got := to.FromBase(from.ToBase(value))
			want := askGNU(t, program, value, from, to)
			if math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Errorf("%g %s = %.15g %s, GNU units says %.15g", value, from.ID, got, to.ID, want)
			}
		}
	}
}

// Every unit has a name of GNU units, so that it is held against that program too.
func TestUnits_EachHasAGNUName(t *testing.T) {
	for _, u := range quantity.Units {
		if gnuNames[u.ID] == "" {
			t.Errorf("gnuNames (units_test.go) have no %s", u.ID)
		}
	}
}

func askGNU(t *testing.T, program string, value float64, from, to quantity.Unit) float64 {
	t.Helper()
	have, want := gnuNames[from.ID], gnuNames[to.ID]
	number := strconv.FormatFloat(value, 'g', -1, 64)
	if from.Kind == quantity.Temperature {
		have = have + "(" + number + ")"
	} else {
		have = number + " " + have
	}
	out, err := exec.Command(program, "-t", "-d", "15", have, want).CombinedOutput()
	if err != nil {
		t.Fatalf("units %q %q: %v: %s", have, want, err, out)
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatalf("units %q %q: %q", have, want, out)
	}
	return v
}
