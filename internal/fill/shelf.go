package fill

// millilitre is one in the µL in which a shelf is counted: so fine that a quart or an
// ounce is what it is, in whole numbers that add up.
const millilitre = 1000

// readable gives the least of a volume in µL that a jug or a bottle's own scale shows:
// a hundredth of it, the 10 mL of a jug's marks at least, but of a few millilitres a
// twentieth. Common practice, no source.
func readable(volume int) int {
	return min(max(volume/100, 10*millilitre), volume/20)
}

// Bottle is a bottle of oil on the shelf.
type Bottle struct {
	Left   int // µL in it
	Opened bool
	Price  int // of the whole bottle, in the smallest coin
}

// Pour is what comes out of one bottle.
type Pour struct {
	Bottle int // its place on the shelf, from 0
	Amount int // µL poured
	Left   int // µL that stay in it
}

// Choice is which bottles to pour, in that order.
type Choice struct {
	Pours   []Pour
	New     int // bottles newly opened
	Cost    int // price of those
	Left    int // µL left over in all bottles poured from
	Missing int // µL that the shelf lacks
}

// Choose finds what to pour for need µL. The opened bottles are used up first,
// the emptiest before the others; a new one is opened only when they don't
// suffice. Of all ways that open the fewest new ones it takes the one that
// leaves the least over, to the mL, and of those the cheapest: exactly, not by a rule
// of thumb. When the shelf doesn't suffice everything is poured.
//
// What no reading shows decides nothing: for less than that no bottle is opened, and
// nothing is lacking or left in a bottle.
func Choose(need int, shelf []Bottle) Choice {
	var c Choice
	slack := readable(need)
	rest := c.pour(need, shelf, inOrder(shelf, true))
	if rest > 0 && rest >= slack {
		sealed := fewest(rest, slack, shelf)
		for _, i := range sealed {
			c.New++
			c.Cost += shelf[i].Price
		}
		rest = c.pour(rest, shelf, sealed)
	}
	if rest >= slack {
		c.Missing = max(rest, 0)
	}
	return c
}

// pour takes the rest from bottles in that order and gives what is lacking.
func (c *Choice) pour(rest int, shelf []Bottle, order []int) int {
	for _, i := range order {
		if rest <= 0 {
			break
		}
		p := Pour{Bottle: i, Amount: min(rest, shelf[i].Left)}
		if p.Left = shelf[i].Left - p.Amount; p.Left < readable(shelf[i].Left) {
			p.Amount, p.Left = shelf[i].Left, 0
		}
		rest -= p.Amount
		c.Left += p.Left
		c.Pours = append(c.Pours, p)
	}
	return rest
}

// inOrder lists the opened bottles that hold a mL and more, the emptiest first; or
// the sealed ones, the largest first, the cheapest of equals.
func inOrder(shelf []Bottle, opened bool) []int {
	var list []int
	for i := range shelf {
		if shelf[i].Opened != opened || shelf[i].Left < millilitre {
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
