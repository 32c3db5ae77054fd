package debris

// Comparison is what two looks at the same place say of each other.
type Comparison int

// The comparisons, of the later look with the earlier one.
const (
	Apart Comparison = iota // not comparable
	Less
	Same
	More
)

// Comparisons are their names: findings' codes.
var Comparisons = []string{"look-apart", "look-less", "look-same", "look-more"}

// wears reports whether two bits stand along the one row of what wear leaves, the
// finer before the coarser. A heap is more than what it may be heaped of, paste and
// fuzz, and not to be held against pieces. Common practice, no source.
func wears(a, b int) bool {
	low, high := min(a, b), max(a, b)
	return low >= Nothing && high <= Sand && (low != Heap || high == Heap)
}

// Compare says whether there is more now than before. Of different bits the
// coarser wear is more, and anything is more than nothing; what else differs in
// kind can't be compared. Of the same bits what was measured decides, where it is
// known of both; if one grew and the other shrank, that can't be compared. It is an
// order: what is more than more is more.
func Compare(now, before *Sign) Comparison {
	switch {
	case now.Bit == 0 || before.Bit == 0:
		return Apart
	case now.Bit != before.Bit:
		if now.Bit == Nothing || before.Bit == Nothing || wears(now.Bit, before.Bit) {
			return by(now.Bit - before.Bit)
		}
		return Apart
	case now.Bit < Flakes: // nobody counts paste
		if (now.Depth == 0) != (before.Depth == 0) {
			return Apart
		}
		return by(now.Depth - before.Depth)
	case now.Size == 0 || before.Size == 0 || now.Amount == 0 || before.Amount == 0:
		return Apart
	}
	size, amount := by(now.Size-before.Size), by(now.Amount-before.Amount)
	switch {
	case size == amount || amount == Same:
		return size
	case size == Same:
		return amount
	}
	return Apart
}

// Recurs reports whether what was to be watched the last time is there again: the
// same bit and no less of it, as far as that is known, or the same of the oil.
func Recurs(now, before *Sign) bool {
	bit := now.Bit > 0 && now.Bit == before.Bit && Compare(now, before) != Less && bits(now).watched() && bits(before).watched()
	oil := now.Oil > 0 && (now.Oil == before.Oil || smells(now.Oil) && smells(before.Oil)) && (&Sign{Oil: now.Oil}).watched()
	return bit || oil
}

// smells reports whether there is fuel in the oil, perhaps no more than one smells.
func smells(oil int) bool { return oil == FuelSmell || oil == Fuel }

// bits is what a sign tells of bits alone.
func bits(s *Sign) *Sign {
	return &Sign{Bit: s.Bit, Depth: s.Depth, Size: s.Size, Amount: s.Amount, Colour: s.Colour, FirstService: s.FirstService}
}

func (s *Sign) watched() bool {
	verdict, _ := s.weigh()
	return verdict == Watch
}

func by(difference int) Comparison {
	switch {
	case difference < 0:
		return Less
	case difference > 0:
		return More
	}
	return Same
}
