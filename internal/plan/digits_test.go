package plan_test

import (
	"regexp"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

var (
	figureOf = regexp.MustCompile(`\d[\d.]*`)
	isNought = regexp.MustCompile(`^0(\.0+)? |–0(\.0+)? `)
)

// A figure of a plan has no more digits than its standing deserves: an estimate two;
// and none that is known is nothing.
func TestPlans_Digits(t *testing.T) {
	figures := 0
	plantest.Samples(t, func(t *testing.T, _ *card.Card, _ plan.Bench, p *plan.Plan) {
		for _, s := range p.Steps {
			for _, f := range s.Figures {
				for _, text := range f.Texts {
					if strings.HasPrefix(text, "@") {
						continue
					}
					figures++
					if isNought.MatchString(text) {
						t.Errorf("%s: %s is %q", s.ID, f.Name, text)
					}
					for _, number := range figureOf.FindAllString(text, -1) {
						digits := len(strings.Trim(strings.Replace(number, ".", "", 1), "0"))
						// A temperature in °F has three digits, as bodies have.
						if f.Standing == card.Estimated && digits > 2 && !strings.HasSuffix(text, "°F") || digits > 4 {
							t.Errorf("%s: %s, %s, is %q", s.ID, f.Name, f.Standing, text)
						}
					}
				}
			}
		}
	})
	if figures < 1000 {
		t.Errorf("%d figures, too few to say anything", figures)
	}
}
