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

// wear is how far a bit stands along the one row of what wear leaves, the finer
// before the coarser, from 1; 0 for what doesn't belong to it. Common practice, no
// source.
func wear(bit int) int {
	if bit >= Nothing && bit <= Sand {
		return bit
	}
	return 0
}

// Compare says whether there is more now than before. Of different bits the
// coarser wear is more, and anything is more than nothing; what else differs in
// kind can't be compared. Of the same bits size and amount decide, where both are
// known of both; if one grew and the other shrank, that can't be compared. It is an
// order: what is more than more is more.
func Compare(now, before *Sign) Comparison {
	switch {
	case now.Bit == 0 || before.Bit == 0:
		return Apart
	case now.Bit != before.Bit:
		a, b := wear(now.Bit), wear(before.Bit)
		if now.Bit == Nothing || before.Bit == Nothing || a > 0 && b > 0 {
			return by(now.Bit - before.Bit)
		}
		return Apart
	case now.Bit < Flakes: // nobody measures paste
		return Same
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

func by(difference int) Comparison {
	switch {
	case difference < 0:
		return Less
	case difference > 0:
		return More
	}
	return Same
}
