package debris_test

import (
	"slices"
	"testing"

	"tidysump/internal/debris"
)

// A stop is never followed by advice for which the engine must run, nothing else
// by the advice not to start it, and every advice is given for something.
func TestNext(t *testing.T) {
	onTheRoad := []string{"short", "soon", "half", "hot-ride"}
	given := map[string]bool{}
	everySign(func(s debris.Sign) {
		verdict, reasons := debris.Judge(&s)
		next := debris.Next(verdict, reasons, false)
		for _, name := range next {
			given[name] = true
			if verdict == debris.Stop && slices.Contains(onTheRoad, name) {
				t.Errorf("%+v: stop, and %s", s, name)
			}
		}
		for _, name := range debris.Next(verdict, reasons, true) {
			if slices.Contains(onTheRoad, name) {
				t.Errorf("%+v: another look says stop, and this one %s", s, name)
			}
		}
		if stop := verdict == debris.Stop; stop != slices.Contains(next, "no-start") {
			t.Errorf("%+v: stop is %v, next %v", s, stop, next)
		}
		if verdict == debris.Watch && len(next) == 0 {
			t.Errorf("%+v: watch it, but how", s)
		}
		distances := 0
		for _, name := range []string{"short", "soon", "half"} {
			if slices.Contains(next, name) {
				distances++
			}
		}
		if distances > 1 {
			t.Errorf("%+v: %d distances in %v", s, distances, next)
		}
	})
	for _, name := range debris.Actions {
		if !given[name] {
			t.Errorf("%s is never advised", name)
		}
	}
}
