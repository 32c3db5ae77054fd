package date_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"tidysump/internal/date"
)

const form = "2006-01-02T15:04:05.000Z"

// As the standard library reads it, over the years of a phone.
func TestSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := time.UnixMilli(rapid.Int64Range(0, 4102444800000).Draw(t, "ms")).UTC()
		text := at.Format(form)
		if !date.Valid(text) {
			t.Fatalf("%s is not valid", text)
		}
		if got, want := date.Seconds(text), float64(at.UnixMilli())/1000; math.Abs(got-want) > 1e-5 {
			t.Fatalf("Seconds(%s) = %v, want %v", text, got, want)
		}
	})
}

// Each day follows the one before, leap days and centuries included.
func TestDay(t *testing.T) {
	for day, at := 0, time.Unix(0, 0).UTC(); at.Year() < 2401; day, at = day+1, at.AddDate(0, 0, 1) {
		if got := date.Day(at.Year(), int(at.Month()), at.Day()); got != day {
			t.Fatalf("Day(%s) = %d, want %d", at.Format(time.DateOnly), got, day)
		}
	}
}

func TestValid(t *testing.T) {
	for text, want := range map[string]bool{
		"2026-11-25T10:09:01.000Z": true, "2026-11-25T23:59:60.999Z": true,
		"2026-11-25T10:09:01Z": false, "2026-11-25T10:09:01.000+01:00": false, "2026-13-25T10:09:01.000Z": false,
		"2026-00-25T10:09:01.000Z": false, "2026-11-32T10:09:01.000Z": false, "2026-11-25T24:00:00.000Z": false,
		"2026-11-25 10:09:01.000Z": false, "２026-11-25T10:09:01.00Z": false, "": false,
	} {
		if date.Valid(text) != want {
			t.Errorf("Valid(%q) = %v", text, !want)
		}
	}
}
