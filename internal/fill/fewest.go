package fill

// sum is the best way found to reach a sum of µL: by the fewest bottles, then the
// cheapest. bottles is 0 for a sum not reached.
type sum struct{ microlitres, bottles, price int }

// fewest chooses sealed bottles for the rest in µL, or for what lacks less than the
// slack of it: the fewest, then the least left over, then the cheapest. It gives them in
// the order to pour, the smallest first, and all of them when they don't suffice.
//
// The smallest set that suffices is less than one bottle above the rest, and
// the best way to each sum up to there follows from those with one bottle less
// in the list (dynamic programming; bottles · sums steps). Sums are told apart by the
// mL, each holds what it is in µL, so that no rounding adds up.
func fewest(rest, slack int, shelf []Bottle) []int {
	list := inOrder(shelf, false)
	if len(list) == 0 {
		return nil
	}
	best := make([]sum, place(rest+shelf[list[0]].Left)+1)
	words := len(best)/64 + 1
	taken := make([]uint64, words*len(list)) // one bit: this bottle bettered that sum
	for n := range list {
		b := &shelf[list[n]]
		for s := len(best) - 1; s >= 0; s-- {
			before := &best[s]
			reached := sum{before.microlitres + b.Left, before.bottles + 1, before.price + b.Price}
			at := place(reached.microlitres)
			if before.bottles == 0 && s > 0 || at >= len(best) {
				continue
			}
			now := &best[at]
			if now.bottles == 0 || reached.bottles < now.bottles || reached.bottles == now.bottles && reached.price < now.price {
				*now = reached
				taken[n*words+at/64] |= 1 << (at % 64)
			}
		}
	}
	at := closest(best, rest, slack)
	if at == 0 {
		return list
	}
	var chosen []int
	left := best[at].microlitres
	for n := len(list) - 1; n >= 0; n-- {
		if at := place(left); taken[n*words+at/64]&(1<<(at%64)) != 0 {
			chosen = append(chosen, list[n])
			left -= shelf[list[n]].Left
			// Of equal ones the first on the shelf comes first.
			for k := len(chosen) - 1; k > 0 && chosen[k] < chosen[k-1] && shelf[chosen[k]].Left == shelf[chosen[k-1]].Left; k-- {
				chosen[k], chosen[k-1] = chosen[k-1], chosen[k]
			}
		}
	}
	return chosen
}

// place is where a sum in µL stands: by its nearest mL.
func place(microlitres int) int { return (microlitres + millilitre/2) / millilitre }

// closest gives the place of the sum to pour: of the fewest bottles that bring the rest,
// but for less than the slack, that which leaves the least over, or lacks the least
// where each of them lacks some. 0 where none is enough.
func closest(best []sum, rest, slack int) int {
	at := 0
	for s := range best {
		switch b := &best[s]; {
		case b.bottles == 0 || b.microlitres <= rest-slack:
		case at == 0 || b.bottles < best[at].bottles, b.bottles == best[at].bottles && best[at].microlitres < rest:
			at = s
		}
	}
	return at
}
