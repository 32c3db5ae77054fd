package bolt

// Seat is the material in which an internal thread is cut; 0: not known.
type Seat int

// The metals; what follows are alloys of them.
const (
	Steel Seat = 1 + iota
	CastIron
	Aluminium
	Magnesium
	firstAlloy
)

// Seats are the names of the seats, the first being Steel.
var Seats = []string{"steel", "cast-iron", "aluminium", "magnesium",
	"a380", "380", "383", "a413", "adc12", "en-ac-46000", "az91d"}

// Alloy is a die-casting alloy. Strengths are in MPa and typical of separately
// cast test bars: the wall of a casting, and an old thread, may be weaker.
type Alloy struct {
	Metal   Seat
	Tensile float64
	Yield   float64
	Shear   float64 // 0: none published
	Memory  bool    // from memory, not out of a page that was read
}

// alloys: NADCA product standards table A-3-2-12 (A380 to A413); JIS H
// 5302:2006, least average of die-cast parts (ADC12); published property tables
// (AZ91D); EN 1706:2010 table A.1 (EN AC-46000), from memory.
// They are in the order of Seats.
var alloys = [...]Alloy{
	{Aluminium, 324, 160, 190, false},
	{Aluminium, 317, 160, 190, false},
	{Aluminium, 310, 150, 0, false},
	{Aluminium, 290, 130, 170, false},
	{Aluminium, 228, 154, 0, false},
	{Aluminium, 240, 140, 0, true},
	{Magnesium, 230, 150, 138, false},
}

// shearShare is shear strength over tensile strength where no shear strength is
// published: the lower end of the usual 0.6 to 0.7 (from memory).
const shearShare = 0.6

// ShearStrength is the published shear strength in MPa, or 0.6 of the tensile
// strength.
func (a *Alloy) ShearStrength() float64 {
	if a.Shear > 0 {
		return a.Shear
	}
	return shearShare * a.Tensile
}

// Metal gives the metal of a seat.
func (s Seat) Metal() Seat {
	if s >= firstAlloy {
		return alloys[s-firstAlloy].Metal
	}
	return s
}

// Shear gives the shear strength in MPa: of the alloy, or from the weakest to
// the strongest alloy of the metal. It isn't known for steel and iron, which
// nobody specifies on a motorcycle.
func (s Seat) Shear() Range {
	var r Range
	for n := range alloys {
		a := &alloys[n]
		if s == a.Metal || s == firstAlloy+Seat(n) {
			mpa := a.ShearStrength()
			r.widen(Range{mpa, mpa})
		}
	}
	return r
}
