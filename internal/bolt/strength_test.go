package bolt_test

import (
	"slices"
	"testing"

	"tidysump/internal/bolt"
)

// class finds a class by name.
func class(t testing.TB, name string) bolt.Class {
	t.Helper()
	n := slices.Index(bolt.Classes, name)
	if n < 0 {
		t.Fatalf("no class %s", name)
	}
	return bolt.Class(n + 1)
}

// seat finds a material by name.
func seat(t testing.TB, name string) bolt.Seat {
	t.Helper()
	n := slices.Index(bolt.Seats, name)
	if n < 0 {
		t.Fatalf("no seat %s", name)
	}
	return bolt.Seat(n + 1)
}

// The words and the numbers that stand for them must not drift apart.
func TestNames(t *testing.T) {
	for _, f := range []struct {
		names []string
		n     int
		want  string
	}{
		{bolt.Classes, int(bolt.Class88), "8.8"}, {bolt.Classes, int(bolt.Stainless), "A2-70"},
		{bolt.Classes, int(bolt.Grade2), "SAE grade 2"}, {bolt.Classes, int(bolt.Grade5), "SAE grade 5"}, {bolt.Classes, int(bolt.Grade8), "SAE grade 8"},
		{bolt.Seats, int(bolt.Steel), "steel"}, {bolt.Seats, int(bolt.CastIron), "cast-iron"},
		{bolt.Seats, int(bolt.Aluminium), "aluminium"}, {bolt.Seats, int(bolt.Magnesium), "magnesium"},
		{bolt.Seals, int(bolt.FlatAluminium), "flat-aluminium"}, {bolt.Seals, int(bolt.FlatCopper), "flat-copper"},
		{bolt.Seals, int(bolt.Folded), "folded"}, {bolt.Seals, int(bolt.Bonded), "bonded"}, {bolt.Seals, int(bolt.Fibre), "fibre"},
		{bolt.Seals, int(bolt.ORing), "o-ring"}, {bolt.Seals, int(bolt.SquareRing), "square-ring"}, {bolt.Seals, int(bolt.Paper), "paper"},
		{bolt.Whats, int(bolt.Plug), "plug"}, {bolt.Whats, int(bolt.Screw), "screw"}, {bolt.Whats, int(bolt.Filter), "filter"},
		{bolt.Lubrications, int(bolt.Oiled), "oiled"}, {bolt.Lubrications, int(bolt.Dry), "dry"},
	} {
		if got := f.names[f.n-1]; got != f.want {
			t.Errorf("%d is %q, want %q", f.n, got, f.want)
		}
	}
}

// EN ISO 898-1: loads printed to three digits, nominal stress area times
// strength. The tolerance is 1 %: M6 8.8 is printed 11 600, rounded down.
func TestClass_Loads(t *testing.T) {
	for _, f := range []struct {
		class           string
		diameter        float64
		area            float64 // mm², nominal
		proof, ultimate float64 // N; 0: not printed
	}{
		{"8.8", 6, 20.1, 11600, 16100},
		{"8.8", 8, 36.6, 21200, 0},
		{"8.8", 12, 84.3, 48900, 0},
		{"10.9", 6, 20.1, 16700, 0},
		{"10.9", 8, 36.6, 0, 38100},
		{"5.8", 10, 58, 22000, 30200},
		// Right for the misprints below; 9.8 is from memory.
		{"10.9", 20, 245, 0, 255000},
		{"9.8", 12, 84.3, 0, 75900},
		{"10.9", 4, 8.78, 0, 9130},
	} {
		s := class(t, f.class).Strength(f.diameter)
		if f.proof > 0 {
			nearly(t, f.class+" proof load", s.Proof*f.area, f.proof, 0.01)
		}
		if f.ultimate > 0 {
			nearly(t, f.class+" ultimate load", s.Tensile*f.area, f.ultimate, 0.01)
		}
	}
}

// Ultimate loads that pages print wrong: 8.78·1040 is 9130, 245·1040 is 255 000,
// 84.3·900 is 75 900.
func TestClass_Loads_Misprints(t *testing.T) {
	for _, f := range []struct {
		class                    string
		diameter, area, printed  float64
		right, halfOfThirdDigits float64 // N
	}{
		{"10.9", 4, 8.78, 91130, 9130, 5}, {"10.9", 20, 245, 250000, 255000, 500}, {"9.8", 12, 84.3, 75200, 75900, 50},
	} {
		got := class(t, f.class).Strength(f.diameter).Tensile * f.area
		near(t, f.class+" ultimate load", got, f.right, f.halfOfThirdDigits)
		if got > f.printed*0.995 && got < f.printed*1.005 {
			t.Errorf("%s at %v mm: %v N is the misprint %v", f.class, f.diameter, got, f.printed)
		}
	}
}

// The code of a class: the first number times 100 is the nominal tensile
// strength, both times 10 the nominal yield; the standard's least values lie at
// or a little above them.
func TestClass_Code(t *testing.T) {
	for _, f := range []struct {
		class          string
		tensile, yield float64
	}{
		{"4.6", 400, 240}, {"4.8", 400, 320}, {"5.6", 500, 300}, {"5.8", 500, 400}, {"6.8", 600, 480},
		{"8.8", 800, 640}, {"9.8", 900, 720}, {"10.9", 1000, 900}, {"12.9", 1200, 1080},
	} {
		s := class(t, f.class).Strength(8)
		if s.Tensile < f.tensile || s.Tensile > 1.07*f.tensile || s.Yield < f.yield || s.Yield > 1.07*f.yield {
			t.Errorf("%s: %+v, nominally %v/%v", f.class, s, f.tensile, f.yield)
		}
	}
	// ISO 3506-1; the yield from memory.
	if s := class(t, "A2-70").Strength(8); s.Tensile != 700 || s.Yield != 450 {
		t.Errorf("A2-70: %+v, want 700/450", s)
	}
}

func TestClass_Strength(t *testing.T) {
	for _, f := range []struct {
		class              string
		diameter           float64
		tensile, yield, sp float64 // MPa, ISO 898-1:2013 table 3
	}{
		{"4.6", 8, 400, 240, 225},
		{"5.8", 8, 520, 420, 380},
		{"8.8", 16, 800, 640, 580},
		{"8.8", 18, 830, 660, 600},
		{"10.9", 18, 1040, 940, 830},
		{"12.9", 8, 1220, 1100, 970},
	} {
		if s := class(t, f.class).Strength(f.diameter); s != (bolt.Strength{Tensile: f.tensile, Yield: f.yield, Proof: f.sp}) {
			t.Errorf("%s at %v mm: %+v, want %v/%v/%v", f.class, f.diameter, s, f.tensile, f.yield, f.sp)
		}
	}
	for _, name := range []string{"4.8", "5.6", "6.8", "9.8", "A2-70"} {
		if s := class(t, name).Strength(8); !s.Memory || s.Yield == 0 {
			t.Errorf("%s: %+v must say that it is from memory", name, s)
		}
	}
	if s := bolt.Class(0).Strength(8); s != (bolt.Strength{}) {
		t.Errorf("an unknown class has the strength %+v", s)
	}
}

// SAE J429 in two copies that agree: psi, and the sizes they hold for. From
// there on or below there is no figure.
func TestClass_InchGrades(t *testing.T) {
	const in, psi = 25.4, 0.006894757293168361
	for _, f := range []struct {
		class                 string
		from, to              float64 // in
		proof, yield, tensile float64 // psi
	}{
		{"SAE grade 2", 0.25, 0.75, 55000, 57000, 74000},
		{"SAE grade 2", 0.7501, 1.5, 33000, 36000, 60000},
		{"SAE grade 5", 0.25, 1, 85000, 92000, 120000},
		{"SAE grade 5", 1.0001, 1.5, 74000, 81000, 105000},
		{"SAE grade 8", 0.25, 1.5, 120000, 130000, 150000},
	} {
		for _, size := range []float64{f.from, f.to} {
			s := class(t, f.class).Strength(size * in)
			near(t, f.class+" proof", s.Proof, f.proof*psi, 1e-9)
			near(t, f.class+" yield", s.Yield, f.yield*psi, 1e-9)
			near(t, f.class+" tensile", s.Tensile, f.tensile*psi, 1e-9)
			if s.Memory {
				t.Errorf("%s is from memory", f.class)
			}
		}
		for _, size := range []float64{0.19, 1.51} { // a No. 10 screw, and above the standard
			if s := class(t, f.class).Strength(size * in); s != (bolt.Strength{}) {
				t.Errorf("%s at %v in: %+v, and the standard doesn't have it", f.class, size, s)
			}
		}
	}
}

// The inch sizes on which a strength ends are on it whichever way they were read.
func TestClass_InchLimits(t *testing.T) {
	for thread, want := range map[string]float64{"3/4-16 UNF": 57, "1-12 UNF": 36, "1/4-28 UNF": 57, "3/4-10 UNC": 57} {
		th, ok := bolt.ParseThread(thread)
		if got := class(t, "SAE grade 2").Strength(th.Diameter).Yield; !ok || got != want*6.894757293168361 {
			t.Errorf("%s, grade 2: yield %v MPa, want %v ksi", thread, got, want)
		}
	}
}

func TestSeat_Shear(t *testing.T) {
	for _, f := range []struct {
		seat      string
		low, high float64 // MPa
		source    string
	}{
		{"a380", 190, 190, "NADCA table A-3-2-12"},
		{"380", 190, 190, "same"},
		{"a413", 170, 170, "same"},
		{"383", 186, 186, "0.6 of 310 MPa: the table has no shear strength; a page that prints 200 has 384's"},
		{"adc12", 136.8, 136.8, "0.6 of 228 MPa, JIS H 5302:2006"},
		{"az91d", 138, 138, "alloy property tables"},
		{"en-ac-46000", 144, 144, "0.6 of 240 MPa, from memory"},
		{"aluminium", 136.8, 190, "weakest and strongest"},
		{"magnesium", 138, 138, "the only one"},
		{"steel", 0, 0, "not known"},
		{"cast-iron", 0, 0, "not known"},
	} {
		r := seat(t, f.seat).Shear()
		near(t, f.seat+" weakest, "+f.source, r.Low, f.low, 0.01)
		near(t, f.seat+" strongest, "+f.source, r.High, f.high, 0.01)
	}
	if r := bolt.Seat(0).Shear(); r.High != 0 {
		t.Errorf("an unknown seat has the shear strength %+v", r)
	}
}
