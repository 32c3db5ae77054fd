package fill

import (
	"math/bits"
	"math/rand/v2"
	"slices"
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
		{"what a jug does not show opens nothing", 1009, []Bottle{{1000, true, 0}, {1000, false, 1}}, []int{0}, 0, 0, 0},
		{"what it shows does", 1020, []Bottle{{1000, true, 0}, {1000, false, 1}}, []int{0, 1}, 1, 980, 0},
		{"nor is it lacking", 3800, []Bottle{{946, false, 1}, {946, false, 1}, {946, false, 1}, {946, false, 1}}, []int{0, 1, 2, 3}, 4, 0, 0},
		{"nor left over", 996, []Bottle{{1000, false, 1}}, []int{0}, 1, 0, 0},
		{"of two that are enough the one that is all of it", 1000, []Bottle{{995, false, 1}, {1000, false, 9}}, []int{1}, 1, 0, 0},
		{"a few millilitres are shown by less", 50, []Bottle{{47, true, 0}, {500, false, 1}}, []int{0, 1}, 1, 497, 0},
		{"exactly all", 3000, []Bottle{{1000, false, 1}, {2000, false, 1}}, []int{0, 1}, 2, 0, 0},
	} {
		// The rows are in mL.
		shelf := slices.Clone(row.shelf)
		for i := range shelf {
			shelf[i].Left *= millilitre
		}
		c := Choose(row.need*millilitre, shelf)
		var order []int
		for _, p := range c.Pours {
			order = append(order, p.Bottle)
		}
		if len(order) != len(row.order) || c.New != row.new || c.Left != row.left*millilitre || c.Missing != row.miss*millilitre {
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

// drawShelf draws bottles as they are sold and as they are left, in µL.
func drawShelf(t *rapid.T, most int) []Bottle {
	shelf := make([]Bottle, rapid.IntRange(0, most).Draw(t, "bottles"))
	for i := range shelf {
		left := rapid.IntRange(0, 2000).Draw(t, "left") * millilitre
		switch rapid.IntRange(0, 2).Draw(t, "size") {
		case 0:
			left = rapid.SampledFrom([]int{250000, 473176, 500000, 568261, 946353, 1000000, 1136523, 2000000, 3785412, 4000000, 4546090}).Draw(t, "sold")
		case 1:
			left = rapid.IntRange(0, 2000*millilitre).Draw(t, "odd")
		}
		shelf[i] = Bottle{left, rapid.Bool().Draw(t, "opened"), rapid.IntRange(0, 5).Draw(t, "price")}
	}
	return shelf
}

// every tries every set of sealed bottles: the fewest that leave less than the slack
// missing, and how near the best of those come.
func every(need int, shelf []Bottle) (new, left int, enough bool) {
	rest, slack, sealed := need, readable(need), []Bottle(nil)
	for _, b := range shelf {
		switch {
		case b.Left < millilitre:
		case b.Opened:
			rest -= b.Left
		default:
			sealed = append(sealed, b)
		}
	}
	if rest < slack {
		return 0, 0, true
	}
	for set := range uint(1) << len(sealed) {
		n, sum := bits.OnesCount(set), 0
		for i, b := range sealed {
			if set&(1<<i) != 0 {
				sum += b.Left
			}
		}
		over := sum - rest
		if over <= -slack {
			continue
		}
		if !enough || n < new || n == new && (left < 0 && over > left || over >= 0 && over < left) {
			new, left, enough = n, over, true
		}
	}
	return new, left, enough
}

func TestChooseEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shelf := drawShelf(t, 9)
		need := rapid.IntRange(10, 12000).Draw(t, "need") * millilitre
		if rapid.Bool().Draw(t, "in quarts") {
			need = rapid.IntRange(1, 12).Draw(t, "quarts") * 946353
		}
		c := Choose(need, shelf)
		new, left, enough := every(need, shelf)
		if enough != (c.Missing == 0) {
			t.Fatalf("missing %d, enough %v", c.Missing, enough)
		}
		if !enough {
			return
		}
		opened := 0
		for _, p := range c.Pours {
			if b := shelf[p.Bottle]; !b.Opened {
				opened += b.Left
			}
		}
		for _, b := range shelf {
			if b.Opened && b.Left >= millilitre {
				opened += b.Left
			}
		}
		// Sums are told apart by the mL: half a mL on either side.
		if over := opened - need; c.New != new || new > 0 && (over > left+millilitre || over < left-millilitre && left >= 0) {
			t.Fatalf("chose %+v: %d over; best opens %d, leaves %d", c, over, new, left)
		}
	})
}

// TestChooseCheapest: of ways that are alike the cheapest.
func TestChooseCheapest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.SampledFrom([]int{250000, 946353, 1000000, 1136523}).Draw(t, "size")
		shelf := make([]Bottle, rapid.IntRange(1, 12).Draw(t, "bottles"))
		var prices []int
		for i := range shelf {
			shelf[i] = Bottle{size, false, rapid.IntRange(0, 9).Draw(t, "price")}
			prices = append(prices, shelf[i].Price)
		}
		slices.Sort(prices)
		n, want := rapid.IntRange(1, len(shelf)).Draw(t, "n"), 0
		for _, p := range prices[:n] {
			want += p
		}
		if c := Choose(n*size, shelf); c.Cost != want || c.New != n || c.Missing != 0 || c.Left != 0 {
			t.Fatalf("%d of %v: %+v, want a cost of %d", n, shelf, c, want)
		}
	})
}

// TestChooseKeepsOil: no oil appears or vanishes but what no reading shows, and no
// sealed bottle is touched before the opened ones are empty.
func TestChooseKeepsOil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shelf := drawShelf(t, 200)
		need := rapid.IntRange(10, 25000).Draw(t, "need") * millilitre
		c := Choose(need, shelf)
		used, left, new := 0, 0, 0
		seen := map[int]bool{}
		for i, p := range c.Pours {
			if seen[p.Bottle] || p.Amount <= 0 || p.Left < 0 || p.Amount+p.Left != shelf[p.Bottle].Left {
				t.Fatalf("pour %d: %+v of %+v", i, p, shelf[p.Bottle])
			}
			if p.Left > 0 && (i+1 < len(c.Pours) || p.Left < readable(shelf[p.Bottle].Left)) {
				t.Fatalf("pour %d leaves %d", i, p.Left)
			}
			seen[p.Bottle] = true
			used, left = used+p.Amount, left+p.Left
			if !shelf[p.Bottle].Opened {
				new++
			}
		}
		if lacks := need - used; left != c.Left || new != c.New || c.Missing > 0 && (c.Missing != lacks || lacks < readable(need)) ||
			c.Missing == 0 && (lacks >= readable(need) || -lacks*50 > need*3) {
			t.Fatalf("%d poured, %d missing of %d; %d left", used, c.Missing, need, left)
		}
		if new > 0 {
			for i, b := range shelf {
				if b.Opened && b.Left >= millilitre && !seen[i] {
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
		shelf[i] = Bottle{100*millilitre + random.IntN(24000*millilitre), false, random.IntN(9000)}
	}
	for b.Loop() {
		if Choose(25000*millilitre, shelf).Missing > 0 {
			b.Fatal("missing")
		}
	}
}
