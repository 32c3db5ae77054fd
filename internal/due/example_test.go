package due_test

import (
	"fmt"

	"tidysump/internal/date"
	"tidysump/internal/due"
)

// The oil went in on 3 April at 12,000 km and is good for 6,000. When is it due, by
// what was ridden so far?
func ExamplePace_When() {
	day := func(text string) float64 { n, _ := date.ReadDay(text); return float64(n) }
	readings := []due.Reading{
		{Day: day("2026-04-03"), Count: 12000}, {Day: day("2026-05-02"), Count: 12700},
		{Day: day("2026-06-10"), Count: 13900}, {Day: day("2026-07-01"), Count: 14300}, {Day: day("2026-08-20"), Count: 15800},
	}
	pace, ok := due.PaceOf(readings)
	fmt.Printf("%.0f km a day (%.0f to %.0f) %v\n", pace.Middle, pace.Low, pace.High, ok)
	early, middle, late := pace.When(readings[len(readings)-1], 18000)
	for _, d := range []float64{early, middle, late} {
		fmt.Println(date.DayText(int(d)))
	}
	// Output:
	// 27 km a day (14 to 41) true
	// 2026-10-13
	// 2026-11-09
	// 2027-01-29
}

// 0.3 L were topped up over 2,500 km, and the level fell by a quarter of 0.4 L
// besides. Is that much?
func ExampleConsumption() {
	lost := 0.3 + due.Lost(0.75, 0.5, 0.4)
	use, ok := due.Consumption(lost, 2500)
	fmt.Printf("%.2f L per 1,000 km: %s %v\n", use, due.Judge(use), ok)
	// Output:
	// 0.16 L per 1,000 km: usual true
}

// The interval is 6,000 km, and 6,400 were ridden. How late is that?
func ExampleGradeOf() {
	span := due.Span{due.Km: 6000, due.Time: 12}
	change := due.Mark{12000, 0, 20546}
	at := span.After(&change, 1)
	now := due.Mark{18400, 0, 20546 + 200}
	most, share := due.Used(&change, &at, &now)
	fmt.Println(most == due.Km, share > 1, due.GradeOf(share) == due.Now)
	// Output:
	// true true true
}
