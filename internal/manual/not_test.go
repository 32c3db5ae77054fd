package manual

import "testing"

// A word that is nearly "not" makes an amount that is asked, in any language.
func TestRead_NearlyNot(t *testing.T) {
	for _, text := range []string{
		"Engine oil (filter mot changed) ..... 1.0 L",
		"Engine oil wathout changing the filter ..... 1.0 L",
		"Motoröl, Filter nlcht gewechselt ..... 1,0 l",
	} {
		for _, r := range Read(text, "").Readings {
			if r.What == "oil.engine.with-filter" && r.Sure {
				t.Errorf("%q is sure to be %s with the filter", text, r.Text)
			}
		}
	}
	for _, r := range Read("Engine oil (filter changed) ..... 1.0 L", "").Readings {
		if !r.Sure {
			t.Errorf("%s %s is asked: %v", r.What, r.Text, r.Doubts)
		}
	}
}
