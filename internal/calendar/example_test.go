package calendar_test

import (
	"fmt"
	"strings"

	"tidysump/internal/calendar"
	"tidysump/internal/date"
)

// A day to remember, for the calendar of the phone.
func ExampleFile() {
	day, _ := date.ReadDay("2027-04-03")
	f := calendar.Begin("Tidysump", "2026-11-25T10:09:01.000Z")
	f.Add("oil-1@example", day, "Hallowmoor Fellane 420: change the oil", "12 months; 6,000 km")
	fmt.Print(strings.ReplaceAll(f.End(), "\r\n", "\n"))
	// Output:
	// BEGIN:VCALENDAR
	// VERSION:2.0
	// PRODID:-//Tidysump//EN
	// CALSCALE:GREGORIAN
	// BEGIN:VEVENT
	// UID:oil-1@example
	// DTSTAMP:20261125T100901Z
	// DTSTART;VALUE=DATE:20270403
	// SUMMARY:Hallowmoor Fellane 420: change the oil
	// DESCRIPTION:12 months\; 6\,000 km
	// TRANSP:TRANSPARENT
	// BEGIN:VALARM
	// ACTION:DISPLAY
	// TRIGGER:PT9H
	// DESCRIPTION:Hallowmoor Fellane 420: change the oil
	// END:VALARM
	// END:VEVENT
	// END:VCALENDAR
}
