package due

import "tidysump/internal/date"

// noticePause is how long nobody is reminded again that an oil is due: common practice,
// no source.
const noticePause = 7 // days

// Notice picks the bike to notify of, by its place among the days from which each is
// to be looked at: the first that has come. -1 for none, also where somebody was
// notified within a week. Times are those of package date; "" for a notice that never
// was.
func Notice(days []string, today, notified, now string) int {
	if date.Valid(notified) && date.Valid(now) && date.Seconds(now)-date.Seconds(notified) < noticePause*86400 {
		return -1
	}
	first := -1
	for n, day := range days {
		if day != "" && day <= today && (first < 0 || day < days[first]) {
			first = n
		}
	}
	return first
}
