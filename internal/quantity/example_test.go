package quantity_test

import (
	"fmt"

	"tidysump/internal/quantity"
)

// The manual says 18 ft-lb, and the wrench has newton metres.
func ExampleParse() {
	torque, _ := quantity.Parse(quantity.Torque, "18 ft-lb", "", quantity.Metric)
	fmt.Println(torque.Print("N·m"), torque.Show(quantity.Metric))
	// Output:
	// 24.4 N·m [24.4 N·m 18 lbf·ft]
}

// How much is "3.2 qt"? In the United States another volume than in Britain, so it is
// said how it was read.
func ExampleParse_ambiguous() {
	for _, system := range []quantity.System{quantity.US, quantity.Imperial} {
		volume, notes := quantity.Parse(quantity.Volume, "3.2 qt", "", system)
		fmt.Println(volume.Print("L"), notes[0].Code, notes[0].Values["unit"])
	}
	// Output:
	// 3 L unit-read-as US qt
	// 3.64 L unit-read-as imp qt
}

// A torque without a unit is refused: a mix-up of units breaks bolts.
func ExampleUsual() {
	_, list := quantity.Parse(quantity.Torque, "18", quantity.Usual(quantity.Torque, quantity.Metric), quantity.Metric)
	fmt.Println(list[0].Code, list[0].Grade)
	fmt.Println(quantity.Usual(quantity.Volume, quantity.US))
	// Output:
	// no-unit refuse
	// US qt
}

// A plug is tightened with 22 to 25 N·m.
func ExampleBetween() {
	low, _ := quantity.Parse(quantity.Torque, "22 N·m", "", quantity.Metric)
	high, _ := quantity.Parse(quantity.Torque, "25 N·m", "", quantity.Metric)
	fmt.Println(quantity.Between(low, high, quantity.Metric))
	// Output:
	// [22–25 N·m 16.2–18.4 lbf·ft]
}
