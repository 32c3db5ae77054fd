package fill

// Bottle is a bottle of oil on the shelf.
type Bottle struct {
	Left   int // mL in it
	Opened bool
	Price  int // of the whole bottle, in the smallest coin
}

// Pour is what comes out of one bottle.
type Pour struct {
	Bottle int // its place on the shelf, from 0
	Amount int // mL poured
	Left   int // mL that stay in it
}

// Choice is which bottles to pour, in that order.
type Choice struct {
	Pours   []Pour
	New     int // bottles newly opened
	Cost    int // price of those
	Left    int // mL left over in all bottles poured from
	Missing int // mL that the shelf lacks
}

// Choose finds what to pour for need mL. The opened bottles are used up first,
// the emptiest before the others; a new one is opened only when they don't
// suffice. Of all ways that open the fewest new ones it takes the one that
// leaves the least over, and of those the cheapest: exactly, not by a rule of
// thumb. When the shelf doesn't suffice everything is poured.
func Choose(need int, shelf []Bottle) Choice {
	var c Choice
	rest := c.pour(need, shelf, inOrder(shelf, true))
	if rest > 0 {
		sealed := fewest(rest, shelf)
		for _, i := range sealed {
			c.New++
			c.Cost += shelf[i].Price
		}
		rest = c.pour(rest, shelf, sealed)
	}
	c.Missing = max(rest, 0)
	return c
}

// pour takes the rest from bottles in that order and gives what is lacking.
func (c *Choice) pour(rest int, shelf []Bottle, order []int) int {
	for _, i := range order {
		if rest <= 0 {
			break
		}
		p := Pour{Bottle: i, Amount: min(rest, shelf[i].Left)}
		p.Left = shelf[i].Left - p.Amount
		rest -= p.Amount
		c.Left += p.Left
		c.Pours = append(c.Pours, p)
	}
	return rest
}

// inOrder lists the opened bottles that hold something, the emptiest first; or
// the sealed ones, the largest first, the cheapest of equals.
func inOrder(shelf []Bottle, opened bool) []int {
	var list []int
	for i := range shelf {
		if shelf[i].Opened != opened || shelf[i].Left <= 0 {
			continue
		}
		at := len(list)
		list = append(list, i)
		for ; at > 0 && before(&shelf[i], &shelf[list[at-1]]); at-- {
			list[at] = list[at-1]
		}
		list[at] = i
	}
	return list
}

func before(b, than *Bottle) bool {
	if b.Opened {
		return b.Left < than.Left
	}
	return b.Left > than.Left || b.Left == than.Left && b.Price < than.Price
}
