package quantity_test

import (
	"math"
	"testing"
)

// Pairs of figures in two units as documents print them side by side: within
// half a unit of the last digit printed.
func TestUnits_PrintedPairs(t *testing.T) {
	checkPairs(t, []pair{
		{22, "in", "mm", 559, 0.5, "TM 5-3805-274-13&P, 22 in = 55.9 cm"},
		{4, "lbf·in", "N·m", 0.45, 0.005, "TM 9-6115-604-34 table 1-3"},
		{51, "lbf·in", "N·m", 5.8, 0.05, "TM 9-6115-604-34 table 1-3"},
		{82, "N·m", "lbf·ft", 60, 0.5, "engine manual, plugs with O-ring, 82±8 N·m (60±6 lbf·ft)"},
		{8, "N·m", "lbf·ft", 6, 0.5, "the same, its tolerance"},
		{48, "N·m", "lbf·ft", 35, 0.5, "engine manual, plugs with O-ring, 48±5 N·m (35±4 lbf·ft)"},
		{5, "N·m", "lbf·ft", 4, 0.5, "the same, its tolerance"},
		{8, "N·m", "kgf·m", 0.8, 0.05, "service manual, general table, M6"},
		{8, "N·m", "lbf·ft", 5.9, 0.05, "service manual, general table, M6"},
		{1500, "mi", "km", 2414, 0.5, "US Army manual, 1500 miles (2414 km)"},
		{15, "mi", "km", 24, 0.5, "a maker's severe schedule, 24 km (15 mi)"},
		{60, "°F", "°C", 16, 0.5, "the same, 16 °C (60 °F)"},
		{500, "°F", "°C", 260, 0.5, "manual for piston engines, bearing metal melts at 260 °C (500 °F)"},
		// Temperatures of scalds, as agencies and hospitals print them.
		{111, "°F", "°C", 43.9, 0.05, "pain starts"},
		{118, "°F", "°C", 47.8, 0.05, "first degree possible"},
		{120, "°F", "°C", 48.9, 0.05, "CPSC"},
		{125, "°F", "°C", 51.7, 0.05, "hospitals"},
		{130, "°F", "°C", 54.4, 0.05, "CPSC"},
		{131, "°F", "°C", 55.0, 0.05, "second degree possible"},
		{135, "°F", "°C", 57.2, 0.05, "hospitals"},
		{140, "°F", "°C", 60.0, 0.05, "CPSC"},
		{145, "°F", "°C", 62.8, 0.05, "hospitals"},
		{150, "°F", "°C", 65.6, 0.05, "CPSC"},
		{155, "°F", "°C", 68.3, 0.05, "hospitals"},
		{162, "°F", "°C", 72.2, 0.05, "tissue destroyed on contact"},
		// Air temperatures of a chart of grades for cars.
		{0, "°F", "°C", -17.8, 0.05, "chart of grades, 0 °F"},
		{20, "°F", "°C", -6.7, 0.05, "chart of grades, 20 °F"},
		{40, "°F", "°C", 4.4, 0.05, "chart of grades, 40 °F"},
		{60, "°F", "°C", 15.6, 0.05, "chart of grades, 60 °F"},
	})
}

// Figures that are printed wrong, and are not taken over.
func TestUnits_Misprints(t *testing.T) {
	for _, f := range []struct {
		value    float64
		from, to string
		printed  float64
		half     float64 // unit of its last digit
		right    float64
		source   string
	}{
		{5, "lbf·in", "N·m", 0.46, 0.005, 0.565, "TM 9-6115-604-34 table 1-3; a row above prints 0.56"},
		{36, "N·m", "kgf·m", 3.6, 0.05, 3.671, "service manual, general table, M10: the column is N·m over ten"},
	} {
		got := convert(t, f.value, f.from, f.to)
		if math.Abs(got-f.printed) <= f.half || !(math.Abs(got-f.right) <= 5e-4) {
			t.Errorf("%g %s = %.6g %s, want %g and not the misprint %g (%s)", f.value, f.from, got, f.to, f.right, f.printed, f.source)
		}
	}
}

// What GNU units 2.22 said when it was asked with 15 digits, so that the
// conversions are held to it where that program is not at hand. It parses "3/4
// inch" as 3/(4 inch); a difference of 1 °F it calls degF, a reading tempF().
func TestUnits_RecordedGNU(t *testing.T) {
	for _, f := range []struct {
		value    float64
		from, to string
		want     float64
	}{
		{1, "lbf·ft", "N·m", 1.3558179483314},
		{1, "lbf·in", "N·m", 0.112984829027617},
		{1, "kgf·m", "N·m", 9.80665},
		{1, "N·m", "lbf·ft", 0.737562149277265},
		{1, "N·m", "lbf·in", 8.85074579132718},
		{1, "N·m", "kgf·m", 0.101971621297793},
		{25, "N·m", "lbf·ft", 18.4390537319316},
		{30, "N·m", "lbf·ft", 22.126864478318},
		{22, "lbf·ft", "N·m", 29.8279948632908},
		{10, "N·m", "lbf·in", 88.5074579132718},
		{18, "lbf·ft", "N·m", 24.40472307},
		{35, "N·m", "lbf·ft", 25.8146752247},
		{2.5, "kgf·m", "N·m", 24.516625},
		{1, "US qt", "L", 0.946352946},
		{1, "US pt", "L", 0.473176473},
		{1, "US fl oz", "mL", 29.5735295625},
		{1, "US gal", "L", 3.785411784},
		{1, "imp qt", "L", 1.1365225},
		{1, "imp pt", "L", 0.56826125},
		{1, "imp fl oz", "mL", 28.4130625},
		{1, "imp gal", "L", 4.54609},
		{1, "L", "US qt", 1.05668820943259},
		{1, "L", "US fl oz", 33.814022701843},
		{1, "L", "imp pt", 1.7597539863927},
		{1, "L", "imp qt", 0.879876993196351},
		{1, "US qt", "imp qt", 0.832674184628989},
		{3.5, "US qt", "L", 3.312235311},
		{2.8, "imp pt", "L", 1.5911315},
		{3.2, "L", "US qt", 3.38140227018},
		{20, "imp fl oz", "mL", 568.26125},
		{1, "in", "mm", 25.4},
		{0.75, "in", "mm", 19.05},
		{1, "mi", "km", 1.609344},
		{1, "km", "mi", 0.621371192237334},
		{6000, "km", "mi", 3728.22715342},
		{1, "psi", "kPa", 6.89475729316836},
		{1, "bar", "psi", 14.5037737730209},
		{30, "psi", "bar", 2.06842718795},
		{212, "°F", "°C", 100},
		{70, "°F", "°C", 21.1111111111111},
		{90, "°C", "°F", 194},
		{-10, "°C", "°F", 14},
	} {
		// Some were recorded with twelve digits.
		if got := convert(t, f.value, f.from, f.to); !(math.Abs(got-f.want) <= 5e-12*math.Abs(f.want)) {
			t.Errorf("%g %s = %.15g %s, GNU units said %.15g", f.value, f.from, got, f.to, f.want)
		}
	}
	if got := convert(t, 71, "°F", "°C") - convert(t, 70, "°F", "°C"); math.Abs(got-0.555555555555556) > 1e-12 {
		t.Errorf("1 °F more is %.15g °C more, GNU units said 0.555555555555556", got)
	}
}

// Oil used over a distance, worked out from both definitions: published limits
// are in quarts over miles.
func TestUnits_OilOverDistance(t *testing.T) {
	for _, f := range []struct {
		volume   float64
		unit     string
		miles    float64
		perThous float64 // L/1000 km
		within   float64
	}{
		{1, "US qt", 1000, 0.588, 5e-4},
		{1, "US qt", 2000, 0.29, 0.005},
		{1, "US qt", 750, 0.78, 0.005},
		{1, "US qt", 900, 0.65, 0.005},
		{1, "L", 1000, 0.62, 0.005},
		{0.850, "US qt", 1000, 0.5, 5e-4},
	} {
		got := 1000 * convert(t, f.volume, f.unit, "L") / convert(t, f.miles, "mi", "km")
		if !(math.Abs(got-f.perThous) <= f.within) {
			t.Errorf("%g %s in %g mi is %.4f L/1000 km, want %g", f.volume, f.unit, f.miles, got, f.perThous)
		}
	}
}
