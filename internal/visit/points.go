package visit

import (
	"strconv"
	"strings"
)

// A signature is drawn on a field that is 1000 wide and 400 high, whatever the screen.
const (
	padWidth  = 1000
	padHeight = 400
)

// leastDrawn is how long all lines of a signature are together at least: less is a slip
// of the finger. Common practice, no source.
const leastDrawn = 150

// pathOf reads the points of a signature, "12,34 15,40;60,20 61,22": strokes parted by
// ";", points by blanks, whole numbers within the field. It gives them as the path of an
// SVG; a fault is the code of a finding.
func pathOf(points string) (path, fault string) {
	if len(points) > MostPoints {
		return "", "signature-too-long"
	}
	var out strings.Builder
	drawn := 0
	for stroke := range strings.SplitSeq(points, ";") {
		letter, lastX, lastY := "M", 0, 0
		for point := range strings.FieldsSeq(stroke) {
			x, y, ok := pointOf(point)
			if !ok {
				return "", "signature-unreadable"
			}
			if letter == "L" {
				drawn += max(x-lastX, lastX-x) + max(y-lastY, lastY-y)
			}
			out.WriteString(letter + strconv.Itoa(x) + " " + strconv.Itoa(y))
			letter, lastX, lastY = "L", x, y
		}
	}
	if drawn < leastDrawn {
		return "", "signature-none"
	}
	return out.String(), ""
}

func pointOf(text string) (x, y int, ok bool) {
	left, right, two := strings.Cut(text, ",")
	x, y = digits(left), digits(right)
	return x, y, two && x >= 0 && x <= padWidth && y >= 0 && y <= padHeight
}

// digits reads a whole number of at most four digits; -1 is whatever is no such number.
func digits(text string) (n int) {
	if len(text) == 0 || len(text) > 4 {
		return -1
	}
	for _, c := range []byte(text) {
		if c < '0' || c > '9' {
			return -1
		}
		n = 10*n + int(c-'0')
	}
	return n
}
