package fill

// sum is the best way found to reach a sum: by the fewest bottles, then the
// cheapest. bottles is 0 for a sum not reached.
type sum struct{ bottles, price int }

// fewest chooses sealed bottles for the rest in mL: the fewest, then the least
// left over, then the cheapest. It gives them in the order to pour, the smallest
// first, and all of them when they don't suffice.
//
// The smallest set that suffices is less than one bottle above the rest, and
// the best way to each sum up to there follows from those with one bottle less
// in the list (dynamic programming; bottles · sums steps).
func fewest(rest int, shelf []Bottle) []int {
	list := inOrder(shelf, false)
	if len(list) == 0 {
		return nil
	}
	top := rest + shelf[list[0]].Left - 1
	best := make([]sum, top+1)
	words := top/64 + 1
	taken := make([]uint64, words*len(list)) // one bit: this bottle bettered that sum
	for n := range list {
		b := &shelf[list[n]]
		for s := top; s >= b.Left; s-- {
			before, now := &best[s-b.Left], &best[s]
			if before.bottles == 0 && s != b.Left {
				continue
			}
			bottles, price := before.bottles+1, before.price+b.Price
			if now.bottles == 0 || bottles < now.bottles || bottles == now.bottles && price < now.price {
				now.bottles, now.price = bottles, price
				taken[n*words+s/64] |= 1 << (s % 64)
			}
		}
	}
	at := 0
	for s := rest; s <= top; s++ {
		if best[s].bottles > 0 && (at == 0 || best[s].bottles < best[at].bottles) {
			at = s
		}
	}
	if at == 0 {
		return list
	}
	var chosen []int
	for n := len(list) - 1; n >= 0; n-- {
		if taken[n*words+at/64]&(1<<(at%64)) != 0 {
			chosen = append(chosen, list[n])
			at -= shelf[list[n]].Left
			// Of equal ones the first on the shelf comes first.
			for k := len(chosen) - 1; k > 0 && chosen[k] < chosen[k-1] && shelf[chosen[k]].Left == shelf[chosen[k-1]].Left; k-- {
				chosen[k], chosen[k-1] = chosen[k-1], chosen[k]
			}
		}
	}
	return chosen
}
