package oil

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The short form against the examples printed in API MPMS 11.1 for other oils
// (expansions per °F from their own coefficients): the full procedure, which
// shifts the temperature scales too, differs in the sixth digit.
func TestSwellAgainstPrintedExamples(t *testing.T) {
	for _, c := range []struct {
		perF, fahrenheit, want float64
		source                 string
	}{
		{341.0957 / (946.918739324112 * 946.918739324112), -27.7, 1.033011591958, "11.1.6.1, example 1: crude oil"},
		{103.8720/(936.784387011266*936.784387011266) + 0.2701/936.784387011266, 48.04, 1.004858068990, "11.1.6.1, example 3: fuel oil"},
		{0.00057634, 84.5, 0.985817857839, "11.1.6.2, example 7"},
	} {
		// swell counts from 15 °C in K, the examples from 60 °F.
		if got := 1 / swell(c.perF, 15+c.fahrenheit-60); !near(got, c.want, 1e-5) {
			t.Errorf("%s: %v, want %v", c.source, got, c.want)
		}
	}
}

func TestDensity(t *testing.T) {
	for _, c := range []struct {
		at15, celsius, want, tolerance float64
		source                         string
	}{
		{873, 0, 882, 0.5, "measured lubricating oil, public data base AD00348"},
		{880, 0, 880 * 1.01067, 0.005, "computed, table 54D"},
		{880, 20, 880 * 0.99643, 0.005, "computed"},
		{880, 80, 880 * 0.95305, 0.005, "computed"},
		{880, 100, 880 * 0.93840, 0.005, "computed"},
		{870, 120, 870 * 0.92278, 0.005, "computed"},
		{855, 100, 855 * 0.93657, 0.005, "computed"},
		// Through the base of 60 °F (coefficient 0.34878 per °F), where the
		// oil of 876.0 kg/m³ has 876.349 at 15 °C.
		{876.349, 80, 835.04, 0.02, "computed by the edition of 2004"},
		{900, 100, 900 * 0.93978, 0.005, "computed"},
	} {
		if got := Density(c.at15, c.celsius); !near(got, c.want, c.tolerance) {
			t.Errorf("%v at %v °C: %v, want %v (%s)", c.at15, c.celsius, got, c.want, c.source)
		}
	}
	for _, c := range [][2]float64{{800, 20}, {1164, 20}, {880, -51}, {880, 151}, {math.NaN(), 20}, {880, math.NaN()}, {0.88, 20}} {
		if got := Density(c[0], c[1]); !math.IsNaN(got) {
			t.Errorf("%v at %v °C: %v", c[0], c[1], got)
		}
		if got := DensityAt15(c[0], c[1]); c[0] < 700 && !math.IsNaN(got) {
			t.Errorf("%v weighed at %v °C: %v at 15 °C", c[0], c[1], got)
		}
	}
}

// The published rule "200 L swell by about 7 when 50 °C warmer", and that a
// fixed 0.00070 per K is too little at 80 °C.
func TestSwellInSize(t *testing.T) {
	if got := 200 * (Density(880, 15)/Density(880, 65) - 1); got < 6.5 || got > 7.5 {
		t.Errorf("200 L swell by %v", got)
	}
	if got := Density(880, 80) / 880; !(got < 0.95648) {
		t.Errorf("at 80 °C %v of the density, a fixed 0.00070 per K says 0.95648", got)
	}
}

func TestDensityProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at15 := rapid.Float64Range(LeastDensity, MostDensity).Draw(t, "at15")
		celsius := rapid.Float64Range(LeastHeat, MostHeat).Draw(t, "celsius")
		d := Density(at15, celsius)
		if got := DensityAt15(d, celsius); !near(got, at15, 1e-5) {
			t.Fatalf("%v at 15 °C, back %v", at15, got)
		}
		if warmer := Density(at15, min(celsius+1, MostHeat)); celsius < MostHeat-1 && !(warmer < d) {
			t.Fatalf("%v at %v °C, %v a degree warmer", d, celsius, warmer)
		}
	})
}
