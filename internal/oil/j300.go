package oil

import "tidysump/internal/quantity"

// The limits are those of SAE J300 for new oil. Digits were read in public
// copies of three editions: 2024 (0W, 5W, 10W, 20, 30), 2021 (all W grades)
// and 2015 (all rows); where a row was read in several they agree. That the
// edition of 2024 changed no limit is from memory. Older tables begin grade 20
// at 5.6 mm²/s and ask 2.9 mPa·s of a 0W-40: superseded.

// Winter is a row of SAE J300 for a W grade.
type Winter struct {
	// Cranking is the most that the oil may have when it is cranked at
	// CrankingAt, in mPa·s (ASTM D5293).
	Cranking, CrankingAt float64
	// Pumping is the most that it may have when it is pumped at PumpingAt, in
	// mPa·s, without yield stress (ASTM D4684; of a gear grade ASTM D2983).
	Pumping, PumpingAt float64
	Least              float64 // kinematic at 100 °C, from this on; a W grade has no upper limit
}

// Winters are the W grades: 0W, 5W, 10W, 15W, 20W, 25W.
var Winters = [...]Winter{
	{6200, -35, 60000, -40, 3.8},
	{6600, -30, 60000, -35, 3.8},
	{7000, -25, 60000, -30, 4.1},
	{7000, -20, 60000, -25, 5.6},
	{9500, -15, 60000, -20, 5.6},
	{13000, -10, 60000, -15, 9.3},
}

// Summer is a row of SAE J300 for a grade without W.
type Summer struct {
	Least     float64 // kinematic at 100 °C, from this on
	Below     float64 // kinematic at 100 °C, below this
	HighShear float64 // at least, in mPa·s at 150 °C and 10⁶ 1/s
}

// Summers are the grades without W: 8, 12, 16, 20, 30, 40, 50, 60. Neighbours
// from 8 to 20 overlap. For the 40 of a 0W-40, 5W-40 and 10W-40 see Limits.
var Summers = [...]Summer{
	{4.0, 6.1, 1.7},
	{5.0, 7.1, 2.0},
	{6.1, 8.2, 2.3},
	{6.9, 9.3, 2.6},
	{9.3, 12.5, 2.9},
	{12.5, 16.3, 3.7},
	{16.3, 21.9, 3.7},
	{21.9, 26.1, 3.7},
}

const summer40 = 6

// Limits gives what J300, or of a gear grade J306, asks of a new oil of this grade:
// the rows of its two parts joined. What has no limit is 0: cold cranking and pumping
// without a W part, the upper end and high shear with nothing but a W part, cranking
// and high shear of a gear oil. A 40 that begins with 0W, 5W or 10W needs 3.5 mPa·s at
// high shear (raised from 2.9 in 2007), any other 40 needs 3.7. It reports false for no
// grade, and for parts that no oil can join, as in 25W-20.
func (g Grade) Limits() (w Winter, s Summer, ok bool) {
	if g == (Grade{}) {
		return w, s, false
	}
	switch {
	case g.winter >= gearWinter:
		w = gearWinters[g.winter-gearWinter]
	case g.winter > 0:
		w = Winters[g.winter-1]
	}
	switch {
	case g.summer >= gearSummer:
		s = gearSummers[g.summer-gearSummer]
	case g.summer > 0:
		s = Summers[g.summer-1]
	}
	if g.summer == summer40 && g.winter >= 1 && g.winter <= 3 {
		s.HighShear = 3.5
	}
	if s.Least < w.Least {
		s.Least = w.Least
	}
	return w, s, s.Below == 0 || s.Least < s.Below
}

// GradesAt lists the grades without W, of J300 or for gears of J306, whose range at 100
// °C a viscosity from low to high touches (low = high for one figure; a figure that was
// typed as a limit is on it). Several answers mean that the kinematic viscosity alone
// doesn't settle the grade: between 8, 12, 16 and 20 the high-shear viscosity does. The
// W part can't be read from it at all.
func GradesAt(low, high float64, gear bool) []string {
	rows, names := Summers[:], summerNames[1:]
	if gear {
		rows, names = gearSummers[:], summerNames[gearSummer:]
	}
	var list []string
	for i := range rows {
		s := &rows[i]
		below := s.Below == 0 || !quantity.AtLeast(low, s.Below)
		if below && (quantity.AtLeast(low, s.Least) || !quantity.AtMost(high, s.Least)) {
			list = append(list, names[i])
		}
	}
	return list
}
