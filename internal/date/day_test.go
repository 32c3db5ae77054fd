package date_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"tidysump/internal/date"
)

func dayOf(at time.Time) int { return date.Day(at.Year(), int(at.Month()), at.Day()) }

// As the standard library has it, over eight hundred years.
func TestDate(t *testing.T) {
	for at := time.Date(1600, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() < 2401; at = at.AddDate(0, 0, 1) {
		day := dayOf(at)
		if y, m, d := date.Date(day); y != at.Year() || m != int(at.Month()) || d != at.Day() {
			t.Fatalf("Date(%d) = %d-%d-%d, want %s", day, y, m, d, at.Format(time.DateOnly))
		}
		text := at.Format(time.DateOnly)
		if date.DayText(day) != text {
			t.Fatalf("DayText(%d) = %s, want %s", day, date.DayText(day), text)
		}
		if got, ok := date.ReadDay(text); !ok || got != day {
			t.Fatalf("ReadDay(%s) = %d, %v", text, got, ok)
		}
	}
}

// The standard library counts a day too many into the next month; here it is
// the last day of its own.
func TestAddMonths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := time.Unix(86400*rapid.Int64Range(0, 40000).Draw(t, "day"), 0).UTC()
		months := rapid.IntRange(0, 240).Draw(t, "months")
		want := at.AddDate(0, months, 0)
		if want.Day() != at.Day() {
			want = want.AddDate(0, 0, -want.Day())
		}
		if got := date.AddMonths(dayOf(at), months); got != dayOf(want) {
			t.Fatalf("%s and %d months: %s, want %s", at.Format(time.DateOnly), months, date.DayText(got), want.Format(time.DateOnly))
		}
	})
}

func TestAddMonths_EndOfMonth(t *testing.T) {
	for _, c := range []struct {
		from   string
		months int
		want   string
	}{
		{"2027-01-31", 1, "2027-02-28"}, {"2028-01-31", 1, "2028-02-29"}, {"2026-11-30", 3, "2027-02-28"},
		{"2026-12-31", 6, "2027-06-30"}, {"2028-02-29", 12, "2029-02-28"}, {"2026-12-01", 1, "2027-01-01"},
	} {
		from, _ := date.ReadDay(c.from)
		if got := date.DayText(date.AddMonths(from, c.months)); got != c.want {
			t.Errorf("%s and %d months: %s, want %s", c.from, c.months, got, c.want)
		}
	}
}

func TestReadDay_Not(t *testing.T) {
	for _, text := range []string{"", "2027-02-29", "2027-13-01", "2027-00-10", "2027-04-31", "2027-4-3", "20270403", "2027-04-03T00:00:00.000Z", "２027-04-03"} {
		if day, ok := date.ReadDay(text); ok {
			t.Errorf("%q is read as %s", text, date.DayText(day))
		}
	}
}
