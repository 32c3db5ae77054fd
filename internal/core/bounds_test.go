package core_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/quantity"
)

// noBound is a figure that nobody reads as a bound: "0.0000000951 years".
var noBound = regexp.MustCompile(`^0\.00000|^0 [^°]`)

// A quantity out of its bounds is refused with bounds that can be read, in whatever
// unit it was typed: in each field of each calculation.
func TestCalculations_BoundsAreRead(t *testing.T) {
	var answer struct {
		OK struct {
			Forms []struct {
				Op     string
				Fields []struct{ Name, Kind string }
			}
		}
	}
	if err := json.Unmarshal(core.Call("forms", []byte(`{}`)), &answer); err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, f := range answer.OK.Forms {
		for _, field := range f.Fields {
			for n := range quantity.Units {
				u := &quantity.Units[n]
				if string(u.Kind) != field.Kind {
					continue
				}
				in, _ := json.Marshal(map[string]string{field.Name: "900000000 " + u.ID})
				var refused struct {
					Findings []struct {
						Code, Where string
						Values      map[string]string
					}
				}
				if err := json.Unmarshal(core.Call(f.Op, in), &refused); err != nil {
					t.Fatal(err)
				}
				for _, finding := range refused.Findings {
					if finding.Code != "not-believable" || finding.Where != "/"+field.Name {
						continue
					}
					told++
					if low, high := finding.Values["low"], finding.Values["high"]; noBound.MatchString(low) && !strings.HasPrefix(low, "0 ") || noBound.MatchString(high) {
						t.Errorf("%s %s: from %s to %s", f.Op, in, low, high)
					}
				}
			}
		}
	}
	if told < 100 {
		t.Errorf("%d bounds told", told)
	}
}

// What is told as a range of temperatures has no tenths, and what is assumed of an
// engine's shape no more than an estimate's two digits.
func TestCalculations_EstimatesHaveTwoDigits(t *testing.T) {
	for _, want := range []string{"1000", "300", "50", "4000", "12000"} {
		a := calculated(t, "oil-curve", `{"grade":"10W-40","want":"`+want+`"}`)
		for _, text := range a.shown("temperature-for") {
			if regexp.MustCompile(`\d\.\d`).MatchString(text) {
				t.Errorf("%s mm²/s: %s", want, text)
			}
		}
	}
	three := regexp.MustCompile(`[1-9]\.?\d\.?[1-9]`)
	for _, want := range []string{"14.49", "14.4", "13", "11.2", "10.95"} {
		a := calculated(t, "oil-mix", `{"firstVolume":"3 L","firstViscosity":"14.5","secondViscosity":"10.9","want":"`+want+`"}`)
		for _, text := range a.shown("second-volume") {
			if three.MatchString(text) || strings.HasPrefix(text, "0.0") {
				t.Errorf("%s mm²/s: %s", want, text)
			}
		}
	}
	for _, volume := range []string{"0.1", "0.37", "1.3", "2.9", "3.7", "6.1", "11"} {
		a := calculated(t, "run-out", `{"volume":"`+volume+`","hole":"11","temperature":"61"}`)
		for _, f := range a.Assumed {
			if name := f.Name; name != "figure.head" && name != "figure.wall-height" {
				continue
			}
			for _, text := range f.Texts {
				if three.MatchString(text) {
					t.Errorf("%s L: %s is %s", volume, f.Name, text)
				}
			}
		}
	}
}
