package due

import "tidysump/internal/date"

// AskedAgain picks the bike whose odometer is asked for when the app is opened, by the days
// on which each was read last and from which each is to be looked at: of those that nobody
// has read for a month the one that is due first. -1 for none, also where somebody was asked
// within a month; asked is "" for a question that never was. A month is what readings must
// span before they say how much is ridden (LeastDays).
func AskedAgain(read, remind []string, today, asked string) int {
	ago := func(day string) int {
		then, known := date.ReadDay(day)
		now, ok := date.ReadDay(today)
		if !known || !ok {
			return -1
		}
		return now - then
	}
	if since := ago(asked); since >= 0 && since < LeastDays {
		return -1
	}
	first := -1
	for n := range read {
		if ago(read[n]) >= LeastDays && remind[n] != "" && (first < 0 || remind[n] < remind[first]) {
			first = n
		}
	}
	return first
}

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
