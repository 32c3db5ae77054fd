package drain_test

import (
	"fmt"

	"tidysump/internal/drain"
	"tidysump/internal/oil"
)

// How long does a 3 L sump with an M12 plug run, cold and warm, and how much is left
// in after ten minutes?
func ExampleEngine_Left() {
	line, _ := oil.LineThrough(40, drain.TypicalAt40, 100, drain.TypicalAt100)
	engine := drain.Guess(3e-3, 10.5e-3)
	for _, celsius := range []float64{15, drain.WarmLow, drain.WarmHigh, drain.HabitHigh} {
		viscosity := line.At(celsius) * 1e-6
		fmt.Printf("%2.0f °C: runs for %3.0f s, %3.0f mL left after ten minutes\n",
			celsius, engine.RunsFor(viscosity), 1e6*engine.Left(viscosity, 600))
	}
	// Output:
	// 15 °C: runs for 259 s,  82 mL left after ten minutes
	// 50 °C: runs for  88 s,  35 mL left after ten minutes
	// 60 °C: runs for  79 s,  29 mL left after ten minutes
	// 82 °C: runs for  70 s,  21 mL left after ten minutes
}

// The engine was at 95 °C when it was switched off, and after ten minutes at 85. When
// may it be drained, in a garage of 18 °C?
func ExampleCoolingTime() {
	k, _ := drain.CoolingRate(95, 85, 18, 10)
	minutes, ok := drain.CoolingTime(95, drain.WarmHigh, 18, k)
	fmt.Printf("after %.0f min (%v)\n", minutes, ok)
	// Output:
	// after 44 min (true)
}

// How soon does a drain plug of 60 °C burn?
func ExampleSurface_BurnsIn() {
	seconds, may := drain.Metal.BurnsIn(60)
	fmt.Println("within", seconds, "s:", may, drain.Metal.Bands()[1].At(60))
	// Output:
	// within 2 s: true may-burn
}
