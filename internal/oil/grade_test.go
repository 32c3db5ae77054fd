package oil_test

import (
	"testing"

	"tidysump/internal/oil"
)

// SAE J300 (engine) and SAE J306 (gear) name these grades.
func TestParseGrade(t *testing.T) {
	for _, f := range []struct {
		text string
		want oil.Family
	}{
		{"0W-20", oil.EngineGrade}, {"5W-30", oil.EngineGrade}, {"10W-30", oil.EngineGrade},
		{"10W-40", oil.EngineGrade}, {"15W-50", oil.EngineGrade}, {"20W-50", oil.EngineGrade},
		{"25W-60", oil.EngineGrade}, {"0W-8", oil.EngineGrade}, {"0W-12", oil.EngineGrade}, {"5W-16", oil.EngineGrade},
		{"10W40", oil.EngineGrade}, {"30", oil.EngineGrade}, {"20W", oil.EngineGrade},
		{"75W-90", oil.GearGrade}, {"80W-90", oil.GearGrade}, {"85W-140", oil.GearGrade}, {"75W-110", oil.GearGrade},
		{"70W", oil.GearGrade}, {"80", oil.GearGrade}, {"90", oil.GearGrade}, {"190", oil.GearGrade}, {"250", oil.GearGrade},

		{"", ""}, {"W", ""}, {"-", ""}, {"10W-", ""},
		{"10W-90", ""}, // one of each standard
		{"80W-40", ""},
		{"12W-40", ""}, {"10W-45", ""}, {"10w-40", ""}, {"10W--40", ""}, {"10W-40-50", ""},
		{"SAE 10W-40", ""}, {" 10W-40", ""}, {"100", ""}, {"75", ""}, {"40W", ""},
	} {
		got, ok := oil.ParseGrade(f.text)
		if got != f.want || ok != (f.want != "") {
			t.Errorf("ParseGrade(%q) = %q, %v, want %q", f.text, got, ok, f.want)
		}
	}
}

// JASO T903 has four marks; MB is the one for low friction and dry clutches.
func TestWetClutchMark(t *testing.T) {
	wet := map[string]bool{"MA": true, "MA1": true, "MA2": true, "MB": false}
	for _, mark := range oil.Marks {
		if got := oil.WetClutchMark(mark); got != wet[mark] {
			t.Errorf("WetClutchMark(%q) = %v", mark, got)
		}
	}
	if len(oil.Marks) != len(wet) || oil.WetClutchMark("") || oil.WetClutchMark("FB") {
		t.Errorf("marks %v; \"\" and two-stroke marks must not be wet", oil.Marks)
	}
}
