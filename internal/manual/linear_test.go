package manual_test

import (
	"strings"
	"testing"

	"tidysump/internal/manual"
)

// What is made for a text is in proportion to it, whatever stands in it: twice the text makes
// twice as much.
func TestRead_Linear(t *testing.T) {
	for _, fragment := range []string{"Oil drain plug 25 N·m ", "o1l dra1n p1ug l5 Nrn\n", "Ölablassschraube mitFilter25Nm\n",
		"Engine oil  1.2 L  1.4 L  with filter  every 6000 km\n", "When the engine is warm, look it over. ", "* 2) (a) – ", "5 or "} {
		made := func(bytes int) float64 {
			text := strings.Repeat(fragment, bytes/len(fragment))
			return testing.AllocsPerRun(1, func() { manual.Read(text, "") })
		}
		if once, twice := made(10_000), made(20_000); twice > 2.3*once {
			t.Errorf("%q: %.0f pieces of memory for 10 kB, %.0f for 20", fragment, once, twice)
		}
	}
}
