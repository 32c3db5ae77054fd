package quantity_test

import (
	"slices"
	"testing"

	"tidysump/internal/quantity"
)

// How a figure of a card is shown to a person: rounded to what can be set or
// poured, own units first.
func TestAmount_Show(t *testing.T) {
	for _, c := range []struct {
		text   string
		system quantity.System
		want   []string
	}{
		{"25 N·m", quantity.Metric, []string{"25 N·m", "18.4 lbf·ft"}},
		{"25 N·m", quantity.US, []string{"18.4 lbf·ft", "25 N·m"}},
		{"10 N·m", quantity.Metric, []string{"10 N·m", "7.4 lbf·ft", "89 lbf·in"}},
		{"22 lbf·ft", quantity.Metric, []string{"30 N·m", "22 lbf·ft"}},
		{"87 lbf·in", quantity.US, []string{"7.3 lbf·ft", "9.8 N·m", "87 lbf·in"}},
		{"2.5 L", quantity.Metric, []string{"2.5 L", "2.64 US qt"}},
		{"2.5 L", quantity.US, []string{"2.64 US qt", "2.5 L"}},
		{"2.5 L", quantity.Imperial, []string{"2.5 L", "4.4 imp pt"}},
		{"1 L", quantity.Metric, []string{"1 L", "1.06 US qt"}},
		{"3.50 US qt", quantity.Metric, []string{"3.31 L", "3.5 US qt"}},
		{"200 mL", quantity.Metric, []string{"200 mL", "6.8 US fl oz"}},
		{"5 mL", quantity.Metric, []string{"5 mL", "0.17 US fl oz"}},
		{"200 mL", quantity.Imperial, []string{"200 mL", "7 imp fl oz"}},
		{"6000 km", quantity.Imperial, []string{"3730 mi", "6000 km"}},
		{"17 mm", quantity.US, []string{"17 mm"}},
		{"0.625 in", quantity.Metric, []string{"5/8 in"}},
		{"1.0625 in", quantity.US, []string{"1 1/16 in"}},
		{"2 in", quantity.US, []string{"2 in"}},
		{"0.3 in", quantity.US, []string{"0.3 in"}},
		{"0.75 turn", quantity.US, []string{"0.75 turn"}},
	} {
		a, list := quantity.Parse("", c.text, "", c.system)
		if len(list) > 0 {
			t.Fatalf("Parse(%q): %v", c.text, list)
		}
		if got := a.Show(c.system); !slices.Equal(got, c.want) {
			t.Errorf("%q in %s units shows %q, want %q", c.text, c.system, got, c.want)
		}
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		value  float64
		digits int
		want   string
	}{
		{0, 3, "0"}, {2.5, 3, "2.5"}, {2.50, 2, "2.5"}, {1234, 2, "1200"}, {1250, 2, "1300"}, {0.04567, 2, "0.046"},
		{9.996, 3, "10"}, {-3.14159, 3, "-3.14"}, {-0.0001, 1, "-0.0001"}, {99.5, 2, "100"}, {1e6, 1, "1000000"}, {100, 5, "100"},
	} {
		if got := quantity.Number(c.value, c.digits); got != c.want {
			t.Errorf("Number(%g, %d) = %q, want %q", c.value, c.digits, got, c.want)
		}
	}
}

func TestAmount_PrintInUnitOfAnotherKind(t *testing.T) {
	a, _ := quantity.Parse("", "3 L", "", quantity.Metric)
	for _, unit := range []string{"N·m", "", "furlong"} {
		if got := a.Print(unit); got != "" {
			t.Errorf("3 L in %q prints %q, want nothing", unit, got)
		}
	}
}
