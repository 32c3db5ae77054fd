package debris_test

import (
	"fmt"

	"tidysump/internal/debris"
)

// Grey paste on the magnet and dark oil; then two bright flakes of metal in the oil,
// up to 2 mm. Is either a reason to stop?
func ExampleJudge() {
	for _, answers := range []map[string]string{
		{"found": "paste", "depth": "half", "oil": "dark"},
		{"found": "flakes", "size": "two", "amount": "few", "colour": "bright", "magnet": "sticks", "oil": "dark"},
		{"found": "flakes", "size": "two", "amount": "many", "colour": "reddish", "noise": "stays"},
	} {
		sign, _ := debris.Read(answers)
		verdict, reasons := debris.Judge(&sign)
		fmt.Println(debris.Verdicts[verdict], reasons[0].Code, debris.Next(verdict, reasons, false))
	}
	// Output:
	// normal debris-paste [photo]
	// watch debris-flakes [photo keep cut short]
	// stop debris-many [no-start photo keep cut sample open]
}

// Is there more on the magnet than at the last change?
func ExampleCompare() {
	before, _ := debris.Read(map[string]string{"found": "fuzz"})
	now, _ := debris.Read(map[string]string{"found": "flakes", "size": "half", "amount": "few"})
	fmt.Println(debris.Comparisons[debris.Compare(&now, &before)])
	// Output:
	// look-more
}
