package manual

import (
	"slices"
	"strings"
	"testing"
)

// order gives the lines of a text in the order in which they are read; a line that goes on
// stands behind the one before it.
func order(text string) (list []string) {
	rows := rowsOf(text, &lexemes{})
	d := languageOf(rows, "").dictionary()
	d.settleRows(rows)
	for _, p := range layoutOf(rows, d) {
		var b strings.Builder
		for i, t := range p.tokens {
			if i > 0 && t.gap != glued {
				b.WriteByte(' ')
			}
			b.WriteString(t.text)
		}
		if p.joined && len(list) > 0 {
			list[len(list)-1] += " " + b.String()
		} else {
			list = append(list, b.String())
		}
	}
	return list
}

func TestLayout_Order(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"columns with a gap", "Remove the drain plug and        Remove the cover and fit a\nlet the oil run out into         new element with its ring in\na tray.                          the housing.\n",
			[]string{"Remove the drain plug and let the oil run out into a tray.", "Remove the cover and fit a new element with its ring in the housing."}},
		{"lines in turn", "Remove the two screws of the oil filter\nDrain the oil. Fit the plug with a new\ncover, the cover and the element. Fit a\naluminium washer.\nnew element and a new ring.\n",
			[]string{"Remove the two screws of the oil filter cover, the cover and the element. Fit a new element and a new ring.", "Drain the oil. Fit the plug with a new aluminium washer."}},
		{"lines in turn that all begin small", "FILTER: turn the old one off with the\nOIL: put the machine on its\nfilter wrench. Smear oil on the ring of\ncentre stand. Take off the cap and\nthe new one, and screw it on by hand.\nthe drain plug, and drain the oil.\n",
			[]string{"FILTER: turn the old one off with the filter wrench. Smear oil on the ring of the new one, and screw it on by hand.", "OIL: put the machine on its centre stand. Take off the cap and the drain plug, and drain the oil."}},
		{"a label at a line's end", "Change the oil every 7,500 km. Racing:\nevery 20 hours.\n", []string{"Change the oil every 7,500 km. Racing: every 20 hours."}},
		{"a table is none", "Engine oil     1.5 L    SAE 10W-40\nGearbox oil    0.8 L    SAE 80W-90\nFinal drive    0.2 L    SAE 80W-90\n",
			[]string{"Engine oil 1.5 L SAE 10W-40", "Gearbox oil 0.8 L SAE 80W-90", "Final drive 0.2 L SAE 80W-90"}},
		{"a word parted at a line's end", "Tighten the drain plug with a new alu-\nminium washer.\n", []string{"Tighten the drain plug with a new aluminium washer."}},
		{"items of a list", "• Open the drain plug.\n• Close the plug.\n", []string{"· Open the drain plug.", "· Close the plug."}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := order(c.text); !slices.Equal(got, c.want) {
				t.Errorf("%q\ngot  %q\nwant %q", c.text, got, c.want)
			}
		})
	}
}

func letters(text string) []letter {
	line, _ := lineOf(nil, text, 0)
	return line
}

func TestLeader(t *testing.T) {
	for text, want := range map[string]int{"...... 25": 7, ". . . . 25": 8, "10...12": 0, "...12": 0, ".. 8": 3, "- 8": 0, "---- 8": 5} {
		if got := leader(letters(text)); got != want {
			t.Errorf("leader(%q) = %d, want %d", text, got, want)
		}
	}
}

// Signs come to plain ones, and every letter keeps its bytes.
func TestLineOf(t *testing.T) {
	text := "2½ l ﬁlter 3 N·m １２"
	var b strings.Builder
	last := 0
	for _, l := range letters(text) {
		if int(l.from) < last && int(l.from) != last || int(l.to) > len(text) || l.to <= l.from {
			t.Errorf("%q: %q stands at %d to %d", text, l.r, l.from, l.to)
		}
		last = int(l.from)
		b.WriteRune(l.r)
	}
	if got, want := b.String(), "2 1/2 l filter 3 N·m 12"; got != want {
		t.Errorf("%q reads %q, want %q", text, got, want)
	}
}

func TestFold(t *testing.T) {
	for word, want := range map[string]string{"Ölablaßschraube": "olablassschraube", "Œil": "oeil", "plug": "plug", "VIDANGE À": "vidange a"} {
		if got := fold(word); got != want {
			t.Errorf("fold(%q) = %q, want %q", word, got, want)
		}
	}
}
