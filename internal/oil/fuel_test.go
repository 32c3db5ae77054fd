package oil

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Published: 5 % of fuel make a 20 of a 30 (a laboratory's rule).
func TestPetrol_MakesATwentyOfAThirty(t *testing.T) {
	for _, fresh := range []float64{10, 10.9, 11.5} {
		for _, fuel := range []float64{Petrol.Low, Petrol.High} {
			v := Mix(fresh, fuel, 0.05)
			if got := GradesAt(v, v, false); !slices.Contains(got, "20") {
				t.Errorf("%v mm²/s with 5 %% of fuel of %v: %v, grade %v", fresh, fuel, v, got)
			}
		}
	}
}

// Whatever the oil, the fuel and the shearing, the true share is within what is told.
func TestFuelOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fresh := rapid.Float64Range(5, 26).Draw(t, "fresh")
		share := rapid.Float64Range(0, 0.3).Draw(t, "share")
		fuel := rapid.Float64Range(Petrol.Low, Petrol.High).Draw(t, "fuel")
		worn := rapid.Float64Range(min(Sheared(fresh), fresh), fresh).Draw(t, "worn")
		used := Mix(worn, fuel, share) * rapid.Float64Range(1-misread, 1+misread).Draw(t, "misread")
		least, most := FuelOf(Band{fresh, fresh}, used)
		if share < least-1e-9 || share > most+1e-9 || least > most {
			t.Fatalf("%v of fuel in an oil of %v that now has %v: told %v to %v", share, fresh, used, least, most)
		}
	})
}

// The limits after shearing are below those of the grade that it begins from, and are
// JASO's: 9.0, 12.0, 15.0.
func TestSheared(t *testing.T) {
	for at100, want := range map[float64]float64{4.5: 4, 7: 6.9, 9.3: 9, 11: 9, 12.5: 12, 12.499999999999998: 12, 14.5: 12, 16.3: 15, 20: 15, 24: 21.9} {
		if got := Sheared(at100); got != want {
			t.Errorf("%v mm²/s may shear to %v, want %v", at100, got, want)
		}
	}
}

func TestRisenShare(t *testing.T) {
	for _, c := range [][3]float64{{2.5, 0.1, 0.1 / 2.6}, {3, 0, 0}, {3, -0.2, 0}, {1, 1, 0.5}} {
		if got := RisenShare(c[0], c[1]); !near(got, c[2], 1e-12) {
			t.Errorf("%v L that came to %v L: %v, want %v", c[1], c[0], got, c[2])
		}
	}
}
