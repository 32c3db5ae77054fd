package calc

import (
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var turnFields = [...]field{
	{name: "thread", kind: aText, needed: true},
	{name: "turn", kind: quantity.Angle, high: 3600, needed: true},
}

// turn gives how far a thread moves when it is turned.
func turn(f *Form, a *Answer) {
	t, text := f.thread("thread"), f.of("turn").text
	if strings.Trim(text, " 0123456789,./½¼¾") == "" { // turns or degrees?
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
