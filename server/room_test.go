package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"testing/iotest"
	"time"
)

// steady gives so many bytes, and then an error.
func steady(bytes int, end error) io.Reader {
	return io.MultiReader(strings.NewReader(strings.Repeat("x", bytes)), iotest.ErrReader(end))
}

func TestShare_Read(t *testing.T) {
	broken := errors.New("broken")
	for _, c := range []struct {
		name   string
		length int64
		body   io.Reader
		room   int64
		bytes  int
		err    error
	}{
		{"nothing", 0, strings.NewReader(""), 0, 0, nil},
		{"small, without room", 100, steady(100, io.EOF), 0, 100, nil},
		{"small, in bytes", 100, iotest.OneByteReader(steady(100, io.EOF)), 0, 100, nil},
		{"its end with the last byte", 100, iotest.DataErrReader(steady(100, io.EOF)), 0, 100, nil},
		{"small, chunked", -1, steady(100, io.EOF), 0, 100, nil},
		{"all that may be", maxBody, steady(maxBody, io.EOF), roomForAll, maxBody, nil},
		{"all that may be, chunked", -1, steady(maxBody, io.EOF), roomForAll, maxBody, nil},
		{"too large, chunked", -1, steady(maxBody+1, io.EOF), roomForAll, 0, errTooLarge},
		{"without an end", -1, steady(100*maxBody, io.EOF), roomForAll, 0, errTooLarge},
		{"no room", maxBody, steady(maxBody, io.EOF), maxBody / 2, 0, errNoRoom},
		{"no room, chunked", -1, steady(maxBody, io.EOF), maxBody / 2, 0, errNoRoom},
		{"broken off", 100, steady(50, broken), 0, 0, broken},
		{"too slow", maxBody, steady(maxBody/2, os.ErrDeadlineExceeded), roomForAll, 0, os.ErrDeadlineExceeded},
	} {
		all := &room{most: c.room}
		held := all.share()
		in, err := held.read(c.body, c.length)
		if err != c.err || len(in) != c.bytes || len(bytes.Trim(in, "x")) > 0 {
			t.Errorf("%s: %d bytes (%v), want %d (%v)", c.name, len(in), err, c.bytes, c.err)
		}
		if got := all.held; got > c.room || got+roomForEach < int64(cap(in)) {
			t.Errorf("%s: %d bytes of room for %d", c.name, got, cap(in))
		}
		held.release()
		if got := all.held; got != 0 || len(all.shares) > 0 {
			t.Errorf("%s: %d bytes of room are never given back", c.name, got)
		}
	}
}

// What is promised takes no room: only what has arrived.
func TestShare_Promised(t *testing.T) {
	all := &room{most: roomForAll, grace: time.Hour}
	for range 10 * roomForAll / maxBody {
		all.share().read(steady(4000, os.ErrDeadlineExceeded), maxBody)
	}
	if got := all.held; got != 0 {
		t.Errorf("bodies that did not come hold %d bytes", got)
	}
}

// However many hold something, it is never more than the room.
func TestShare_Hold(t *testing.T) {
	all := &room{most: 100_000, grace: time.Hour}
	var shares []*share
	for all.held <= all.most-50_000 {
		s := all.share()
		if !s.hold(50_000 + roomForEach) {
			t.Fatalf("no room for 50000 bytes where %d of %d are held", all.held, all.most)
		}
		shares = append(shares, s)
	}
	late := all.share()
	if late.hold(60_000+roomForEach) || all.held != 100_000 {
		t.Errorf("%d bytes are held, %d may be", all.held, all.most)
	}
	if !late.hold(roomForEach) {
		t.Error("a small one finds no room")
	}
	if !shares[0].hold(10) || !late.hold(50_000+roomForEach) {
		t.Error("what was given back can't be held")
	}
}

// Where the room is full the one is cut off that has waited longest: nobody who doesn't
// wait, who holds nothing, or who has not had the time.
func TestShare_CutOff(t *testing.T) {
	all := &room{most: 100_000}
	var cut []string
	begin := func(name string, bytes int, waits bool) *share {
		s := all.share()
		if waits {
			s.waits(func() { cut = append(cut, name) })
		}
		if !s.hold(bytes + roomForEach) {
			t.Fatalf("%s finds no room where %d of %d are held", name, all.held, all.most)
		}
		return s
	}
	begin("nothing", 0, true)
	works := begin("works", 30_000, false)
	oldest := begin("oldest", 30_000, true)
	begin("older", 30_000, true)
	begin("newest", 30_000, true)
	if strings.Join(cut, " ") != "oldest" || all.held != 90_000 {
		t.Fatalf("cut off: %v, held: %d", cut, all.held)
	}
	if oldest.hold(1) {
		t.Error("who was cut off goes on")
	}
	oldest.release()
	begin("large", 70_000, true)
	if strings.Join(cut, " ") != "oldest older newest" || all.held != 100_000 {
		t.Fatalf("cut off: %v, held: %d", cut, all.held)
	}
	if late := all.share(); late.hold(roomForEach+100_001) || len(cut) != 3 {
		t.Errorf("for what can never find room were cut off: %v", cut)
	}
	works.release()
	all.grace = time.Hour
	begin("early", 30_000, true)
	if late := all.share(); late.hold(10_000+roomForEach) || strings.HasSuffix(strings.Join(cut, " "), "early") {
		t.Errorf("cut off before its time: %v", cut)
	}
}
