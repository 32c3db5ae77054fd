package outlook

import (
	"strconv"

	"tidysump/internal/due"
)

// rank says of which oils something is known, and which of them is the most urgent:
// by its grade, and of equals by its day.
func (r *reckoner) rank() {
	first := -1
	for n := range r.outlook.Oils {
		d := &r.outlook.Oils[n]
		d.Known = d.Changed != "" || len(d.At) > 0 || d.Day != ""
		day := d.Remind
		if day == "" {
			day = "never" // sorts after every day
		}
		d.Order = strconv.Itoa(int(due.TwiceOver)-d.Grade) + " " + day
		if d.Known && (first < 0 || d.Grade > r.outlook.Oils[first].Grade) {
			first, r.outlook.First = n, d.Circuit
		}
	}
}
