package date_test

import (
	"fmt"

	"tidysump/internal/date"
)

// The oil was changed late on 31 August and is good for six months. Until when?
func ExampleAddMonths() {
	changed := date.DayOf("2026-08-31T21:40:00.000Z")
	until := date.AddMonths(changed, 6)
	fmt.Println(date.DayText(until), until-changed, "days")
	// Output:
	// 2027-02-28 181 days
}
