// Command program does what leans on Go's table of functions while it runs, and
// prints what came of it: recovering, collecting garbage, growing stacks, unwinding
// through deferred calls.
package main

import (
	"os"
	"runtime"
	"sort"
	"strconv"
	"strings"
)

type tree struct {
	left, right *tree
	name        string
}

func grow(depth int) *tree {
	if depth == 0 {
		return &tree{name: strconv.Itoa(depth)}
	}
	return &tree{grow(depth - 1), grow(depth - 1), strconv.Itoa(depth)}
}

func (t *tree) count() int {
	if t == nil {
		return 0
	}
	return 1 + t.left.count() + t.right.count()
}

// deep grows the stack, and collects garbage when it is at its highest.
func deep(n int, above *tree) int {
	var room [64]int
	room[n%64] = n
	if n == 0 {
		runtime.GC()
		return above.count()
	}
	return deep(n-1, above) + room[n%64] - n
}

// caught gives the text of what f panics with, after all that was deferred.
func caught(f func()) (text string) {
	defer func() {
		switch reason := recover().(type) {
		case error:
			text += reason.Error()
		case string:
			text += reason
		}
	}()
	defer func() { text += "after: " }()
	f()
	return "nothing"
}

// say prints a line. println does so by functions that only the traces of crashes need
// otherwise, and which a slim program lacks.
func say(words ...string) { os.Stdout.WriteString(strings.Join(words, " ") + "\n") }

// use keeps what it is given from being left out.
var use any

func main() {
	t := grow(12)
	say(strconv.Itoa(deep(10000, t)), strconv.Itoa(t.count()))
	var none *tree
	list := []int{1, 2, 3}
	say(caught(func() { use = list[len(t.name)+3] }))
	say(caught(func() { none.name = "x" }))
	say(caught(func() { panic("own") }))
	say(caught(func() { use = any(t).(interface{ Other() }) }))
	say(caught(func() { use = len(list) / none.count() }))
	names, words := map[string]int{}, make(chan string)
	go func() {
		defer close(words)
		for n := range 2000 {
			words <- strconv.Itoa(n % 97)
		}
	}()
	for word := range words {
		names[word]++
	}
	runtime.GC()
	keys := []string{}
	for word := range names {
		keys = append(keys, word)
	}
	sort.Strings(keys)
	say(strconv.Itoa(len(keys)), keys[50], strconv.Itoa(names[keys[50]]))
	defer os.Exit(3)
	panic("the end")
}
