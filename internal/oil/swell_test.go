package oil

import "testing"

// Volume correction factors of lubricating oils, ASTM D1250 table 54D: computed
// apart from this program, no printed value was found.
func TestSwellTable(t *testing.T) {
	at := [...]float64{0, 20, 40, 60, 80, 90, 100, 120}
	for _, row := range []struct {
		at15 float64
		vcf  [len(at)]float64 // 0: none worked out
	}{
		{855, [...]float64{1.01098, 0.99632, 0, 0, 0.95166, 0, 0.93657, 0}},
		{860, [...]float64{1.01091, 0.99635, 0.98165, 0.96685, 0.95194, 0.94445, 0.93695, 0.92187}},
		{870, [...]float64{1.01079, 0.99639, 0.98187, 0.96723, 0.95250, 0.94510, 0.93768, 0.92278}},
		{880, [...]float64{1.01067, 0.99643, 0.98207, 0.96761, 0.95305, 0.94573, 0.93840, 0.92367}},
		{900, [...]float64{1.01043, 0.99651, 0.98247, 0.96833, 0.95410, 0.94695, 0.93978, 0.92539}},
	} {
		for i, want := range row.vcf {
			if got := Density(row.at15, at[i]) / row.at15; want > 0 && !near(got, want, 5.1e-6) {
				t.Errorf("%v at %v °C: VCF %v, want %v", row.at15, at[i], got, want)
			}
		}
	}
	// 3.00 L at 20 °C are 3.161 L at 90 °C.
	if got := 3 * Density(880, 20) / Density(880, 90); !near(got, 3.1608, 5e-5) {
		t.Errorf("3 L at 20 °C are %v L at 90 °C", got)
	}
}

// The coefficients are published twice: 0.34878 per °F from 60 °F on (API MPMS
// 11.1, 2004) and 0.6278 per K from 15 °C on (1980), which agree. A page says
// that the first is per K: with that, oil would swell half as much.
func TestSwellPerDegree(t *testing.T) {
	if !near(0.34878*1.8, 0.6278, 5e-5) {
		t.Error("the two coefficients differ")
	}
	// Computed with the first: 900.0 at 60 °F; 876.0 at 60 °F.
	for _, c := range []struct{ at60, fahrenheit, want, full float64 }{
		{900, 32, 1.010815, 1.010817}, {900, 100, 0.984429, 0.984425}, {900, 212, 0.940183, 0.940167},
		{876, 176, 0.953237, 0.953224},
	} {
		got := 1 / swell(0.34878/c.at60, 15+c.fahrenheit-60)
		if !near(got, c.want, 6e-7) || !near(got, c.full, 2e-5) {
			t.Errorf("%v at %v °F: %v, want %v", c.at60, c.fahrenheit, got, c.want)
		}
	}
	// The whole relation by the other coefficient: 880 at 15 °C are 879.651 at
	// 60 °F.
	for celsius, want := range map[float64]float64{80: 0.953055, 100: 0.938409} {
		got := 879.651 / swell(0.34878/879.651, 15+celsius*1.8+32-60) / 880
		if !near(got, want, 1.1e-6) || !near(got, Density(880, celsius)/880, 2e-5) {
			t.Errorf("880 at %v °C by way of 60 °F: %v, want %v", celsius, got, want)
		}
		misread := 1 / swell(0.34878/880, celsius)
		if near(misread, Density(880, celsius)/880, 0.01) {
			t.Errorf("0.34878 per K gives %v too: this test tells nothing", misread)
		}
	}
}

// Printed in API MPMS 11.1.6.2, example 1: a crude oil weighed as 823.7 kg/m³ at
// 80.3 °F has 832.0485 at 60 °F, factor 0.98996631; the scales of temperature
// that we take as one move the sixth digit.
func TestSwellBack(t *testing.T) {
	at60, factor := 823.7, 0.0
	for range 20 {
		factor = 1 / swell(341.0957/(at60*at60), 15+80.3-60)
		at60 = 823.7 / factor
	}
	if !near(at60, 832.0485162, 0.003) || !near(factor, 0.98996631, 1e-5) {
		t.Errorf("%v at 60 °F, factor %v", at60, factor)
	}
	if !near(factor, 0.98996884, 1e-8) {
		t.Errorf("the short form gives the factor %v, computed 0.98996884", factor)
	}
}
