package csv_test

import (
	"testing"

	"tidysump/internal/csv"
	"tidysump/internal/quantity"
)

// Amounts come out in the person's usual unit, which the column's head names; what
// is no amount stays as it is.
func TestAmounts(t *testing.T) {
	kinds := []string{"text", string(quantity.Distance), string(quantity.Plain)}
	cells := []string{"Bike", "Odometer", "Jobs", "One", "1609.344", "2.5", "Two", "", "none"}
	for _, c := range []struct {
		system quantity.System
		comma  bool
		want   string
	}{
		{quantity.Metric, false, "\"Bike\",\"Odometer (km)\",\"Jobs\"\r\n\"One\",1609.34,2.5\r\n\"Two\",,\"none\"\r\n"},
		{quantity.US, true, "\"Bike\";\"Odometer (mi)\";\"Jobs\"\r\n\"One\";1000;2,5\r\n\"Two\";;\"none\"\r\n"},
	} {
		if got := csv.Amounts(kinds, cells, c.system, c.comma); got != c.want {
			t.Errorf("%s, comma %v: %q, want %q", c.system, c.comma, got, c.want)
		}
	}
}
