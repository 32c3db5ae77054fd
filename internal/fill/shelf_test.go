package fill

import (
	"math/bits"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

func TestChoose(t *testing.T) {
	for _, row := range []struct {
		name  string
		need  int
		shelf []Bottle
		order []int
		new   int
		left  int
		miss  int
	}{
		{"opened suffices: none new", 800, []Bottle{{1000, false, 10}, {500, true, 0}, {400, true, 0}}, []int{2, 1}, 0, 100, 0},
		{"opened first, then one", 1200, []Bottle{{1000, false, 10}, {300, true, 0}}, []int{1, 0}, 1, 100, 0},
		{"one of 4 L, not four of 1 L", 3100, []Bottle{{1000, false, 9}, {1000, false, 9}, {1000, false, 9}, {1000, false, 9}, {4000, false, 99}}, []int{4}, 1, 900, 0},
		{"a greedy choice leaves more", 1900, []Bottle{{1500, false, 1}, {1000, false, 1}, {900, false, 1}}, []int{2, 1}, 2, 0, 0},
		{"the cheaper of equals", 1000, []Bottle{{1000, false, 12}, {1000, false, 7}}, []int{1}, 1, 0, 0},
		{"less left over before cheaper", 900, []Bottle{{1000, false, 12}, {1500, false, 7}}, []int{0}, 1, 100, 0},
		{"the shelf lacks", 5000, []Bottle{{1000, false, 1}, {0, true, 0}, {700, true, 0}}, []int{2, 0}, 1, 0, 3300},
		{"an empty shelf", 500, nil, nil, 0, 0, 500},
		{"exactly all", 3000, []Bottle{{1000, false, 1}, {2000, false, 1}}, []int{0, 1}, 2, 0, 0},
	} {
		c := Choose(row.need, row.shelf)
		var order []int
		for _, p := range c.Pours {
			order = append(order, p.Bottle)
		}
		if len(order) != len(row.order) || c.New != row.new || c.Left != row.left || c.Missing != row.miss {
			t.Errorf("%s: %+v", row.name, c)
			continue
		}
		for i := range order {
			if order[i] != row.order[i] {
				t.Errorf("%s: poured %v, want %v", row.name, order, row.order)
				break
			}
		}
	}
}

func drawShelf(t *rapid.T, most int) []Bottle {
	shelf := make([]Bottle, rapid.IntRange(0, most).Draw(t, "bottles"))
	for i := range shelf {
		shelf[i] = Bottle{rapid.IntRange(0, 60).Draw(t, "left"), rapid.Bool().Draw(t, "opened"), rapid.IntRange(0, 5).Draw(t, "price")}
		if rapid.Bool().Draw(t, "round") {
			shelf[i].Left *= 10
		}
	}
	return shelf
}

// every tries every set of sealed bottles.
func every(need int, shelf []Bottle) (new, left, cost int, enough bool) {
	rest, sealed := need, []Bottle(nil)
	open := 0
	for _, b := range shelf {
		if b.Opened {
			open += b.Left
		} else {
			sealed = append(sealed, b)
		}
	}
	rest -= open
	if rest <= 0 {
		return 0, -rest, 0, true
	}
	for set := range uint(1) << len(sealed) {
		n, sum, price := bits.OnesCount(set), 0, 0
		for i, b := range sealed {
			if set&(1<<i) != 0 {
				sum, price = sum+b.Left, price+b.Price
			}
		}
		if sum < rest {
			continue
		}
		over := sum - rest
		if !enough || n < new || n == new && (over < left || over == left && price < cost) {
			new, left, cost, enough = n, over, price, true
		}
	}
	return new, left, cost, enough
}

func TestChooseEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shelf := drawShelf(t, 10)
		need := rapid.IntRange(1, 2500).Draw(t, "need")
		c := Choose(need, shelf)
		new, left, cost, enough := every(need, shelf)
		if enough != (c.Missing == 0) {
			t.Fatalf("missing %d, enough %v", c.Missing, enough)
		}
		if !enough {
			return
		}
		// Opened bottles that stay untouched are not left over by the choice.
		untouched := 0
		if c.New == 0 {
			for i, b := range shelf {
				if b.Opened && !poured(c, i) {
					untouched += b.Left
				}
			}
		}
		if c.New != new || c.Left+untouched != left || c.Cost != cost {
			t.Fatalf("chose %+v; best opens %d, leaves %d, costs %d", c, new, left, cost)
		}
	})
}

func poured(c Choice, bottle int) bool {
	for _, p := range c.Pours {
		if p.Bottle == bottle {
			return true
		}
	}
	return false
}

// TestChooseKeepsOil: no oil appears or vanishes, and no sealed bottle is
// touched before the opened ones are empty.
func TestChooseKeepsOil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shelf := drawShelf(t, 200)
		need := rapid.IntRange(1, 25000).Draw(t, "need")
		c := Choose(need, shelf)
		used, left, new := 0, 0, 0
		seen := map[int]bool{}
		for i, p := range c.Pours {
			if seen[p.Bottle] || p.Amount <= 0 || p.Left < 0 || p.Amount+p.Left != shelf[p.Bottle].Left {
				t.Fatalf("pour %d: %+v of %+v", i, p, shelf[p.Bottle])
			}
			if i+1 < len(c.Pours) && p.Left != 0 {
				t.Fatal("a bottle is left before the last")
			}
			seen[p.Bottle] = true
			used, left = used+p.Amount, left+p.Left
			if !shelf[p.Bottle].Opened {
				new++
			}
		}
		if used+c.Missing != need || left != c.Left || new != c.New {
			t.Fatalf("%d poured, %d missing of %d; %d left", used, c.Missing, need, left)
		}
		if new > 0 {
			for i, b := range shelf {
				if b.Opened && b.Left > 0 && !seen[i] {
					t.Fatal("a new bottle before an opened one")
				}
			}
		}
	})
}

// BenchmarkChoose is the worst shelf: 200 sealed bottles, all of another size,
// all smaller than the need.
func BenchmarkChoose(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 2))
	shelf := make([]Bottle, 200)
	for i := range shelf {
		shelf[i] = Bottle{100 + random.IntN(24000), false, random.IntN(9000)}
	}
	for b.Loop() {
		if Choose(25000, shelf).Missing > 0 {
			b.Fatal("missing")
		}
	}
}
