package calc

import (
	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var turnFields = [...]field{
	{name: "thread", kind: Text, says: Thread, needed: true},
	{name: "turn", kind: quantity.Angle, high: 3600, needed: true},
}

// turn gives how far a thread moves when it is turned.
func turn(f *Form, a *Answer) {
	t, text := f.thread("thread"), f.of("turn").text
	f.pitched(&t)
	if _, isBare := quantity.ParseNumber(text); isBare { // turns or degrees?
		f.reject("no-unit", "turn", "text", finding.Clip(text))
		return
	}
	mm := t.Travel(f.number("turn"))
	text = plain(mm, mm, " mm", 3)
	if f.system == quantity.US {
		text = plain(mm/25.4, mm/25.4, " in", 2)
	}
	a.ranged(a.estimate("figures", "travel", "pitch", text), &bolt.Range{Low: mm, High: mm})
}
