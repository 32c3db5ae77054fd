package oil_test

import (
	"testing"

	"tidysump/internal/oil"
)

// FuzzParseGrade: a grade belongs to a family exactly when it is taken.
func FuzzParseGrade(f *testing.F) {
	for _, text := range []string{"10W-40", "80W-90", "30", "5W", "W", "10W40", "-"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if family, ok := oil.ParseGrade(text); ok != (family != "") {
			t.Fatalf("ParseGrade(%q) = %q, %v", text, family, ok)
		}
	})
}
