package slim

import (
	"encoding/binary"
	"errors"
	"slices"
	"strings"
)

var errCode = errors.New("the program's functions aren't those of the table of functions")

// stub is the body of a function without locals that does nothing but crash
// (WebAssembly core specification, 5.5.13: its size, no locals, unreachable, end).
var stub = []byte{3, 0, 0x00, 0x0b}

// forTraces are functions of package runtime that run only to print what the trace of
// a crash shows, to die after it, or to profile and trace a running program, which nobody
// can turn on in a page: the beginnings of their names, with closures and methods. A
// program that would print them has died anyway; with them gone it dies without a word.
var forTraces = []string{
	"runtime.print", "runtime.traceback", "runtime.goroutineheader", "runtime.showframe", "runtime.showfuncinfo",
	"runtime.dump", "runtime.hexdump", "runtime.(*hexdumper).", "runtime.badPointer", "runtime.gcDumpObject",
	"runtime.(*mspan).reportZombies", "runtime.schedtrace", "runtime.(*profBuf).",
	"runtime.traceAdvance", "runtime.traceStack", "runtime.traceLocker.", "runtime.traceWriter.", "runtime.traceEventWriter.",
	"runtime.(*traceBuf).", "runtime.(*traceMap).", "runtime.(*traceStackTable).", "runtime.(*traceTypeTable).",
	"runtime.(*traceStringTable).", "runtime.(*traceRegionAlloc).", "runtime.(*traceSchedResourceState).",
	"runtime.(*traceAdvancerState).", "runtime.traceReadCPU", "runtime.traceStopReadCPU", "runtime.traceCPUFlush",
	"runtime.traceBufFlush", "runtime.traceSyncBatch", "runtime.traceThreadDestroy", "runtime.traceRegisterLabels",
}

// forDeath are further functions of that kind, each with its closures; all that begin
// so where a dot ends the name.
var forDeath = []string{
	// Frames by their functions, files and lines.
	"runtime.(*Frames).", "runtime.CallersFrames", "runtime.callers", "runtime.gcallers", "runtime.fpTracebackPCs", "runtime.fpTracebackPartialExpand",
	"runtime.fpunwindExpand", "runtime.expandCgoFrames", "runtime.callCgoSymbolizer", "runtime.cgoContextPCs",
	"runtime.funcline", "runtime.funcline1", "runtime.funcfile",
	"runtime.funcpkgpath", "runtime.(*Func).", "runtime.makeTraceFrame", "runtime.makeTraceFrames", "runtime.isExportedRuntime",
	"runtime.funcNameForPrint", "runtime.funcNamePiecesForPrint", "runtime.(*waitReason).String",
	"runtime.waitReason.String", "runtime.stwReason.String", "runtime.lockRank.String", "runtime.(*lockRank).",
	// Profiles.
	"runtime.saveblockevent", "runtime.saveBlockEventStack", "runtime.blockevent", "runtime.blocksampled",
	"runtime.stkbucket", "runtime.newBucket", "runtime.(*bucket).", "runtime.doRecordGoroutineProfile",
	"runtime.tryRecordGoroutineProfile",
	"runtime.tryRecordGoroutineProfileWB", "runtime.saveg", "runtime.setprofilebucket", "runtime.makeProfStack",
	// The way to the end.
	"runtime.dopanic_m", "runtime.startpanic_m", "runtime.freezetheworld", "runtime.fatalpanic", "runtime.fatalthrow",
	"runtime.preprintpanics", "runtime.badmorestackg0.func1", "runtime.fatal.func1", "runtime.throw.func1",
	"runtime.gwrite", "runtime.writeErr", "runtime.writeErrData",
}

// notInAPage are functions that can't come about where a program has one thread, one
// module and no GODEBUG, is never stopped at any instruction, and calls no C, each with
// its closures; all that begin so where a dot ends the name.
var notInAPage = []string{
	// What GODEBUG asks for: finalizers and marks checked, lost goroutines found.
	"runtime.checkFinalizersAndCleanups", "runtime.setCheckmark", "runtime.runCheckmark", "runtime.getCheckmark",
	"runtime.startCheckmarks", "runtime.endCheckmarks", "runtime.getCleanupContext", "runtime.setTinyBlockContext",
	"runtime.findGoroutineLeaks", "runtime.findMaybeRunnableGoroutines", "runtime.allGsSnapshotSortedForGC",
	"runtime.(*g).isMaybeRunnable",
	// Frames stopped at any instruction, types of several modules, arenas, pins, testing/synctest.
	"runtime.scanConservative", "runtime.typesEqual", "runtime.(*mspan).setUserArenaChunkToFault",
	"runtime.(*mspan).refreshPinnerBits", "runtime.(*synctestBubble).",
	// Another thread, and C.
	"runtime.newm", "runtime.newm1", "runtime.allocm", "runtime.mexit", "runtime.newosproc", "runtime.startm", "runtime.oneNewExtraM",
	"runtime.newextram", "runtime.cgocall", "runtime.reentersyscall", "runtime.exitsyscall", "runtime.exitsyscallNoP", "runtime.exitsyscallTryGetP",
	"runtime.entersyscall", "runtime.entersyscallWakeSysmon",
	"runtime.entersyscallHandleGCWait",
	"runtime.syscallingThread.",
	// Its own records compared, which no interface holds.
	"type:.eq.runtime.", "type:.eq.[2]runtime.", "type:.eq.internal/",
}

// asked are those among them that are called to find out whether there is anything
// to print or to trace.
var asked = []string{"runtime.printlock", "runtime.printunlock", "runtime.traceLocker.ok"}

// neverRuns reports whether a function of that name runs in no page that lives.
func neverRuns(name string) bool {
	begins := func(prefix string) bool { return strings.HasPrefix(name, prefix) }
	is := func(known string) bool {
		rest, found := strings.CutPrefix(name, known)
		return found && (rest == "" || rest[0] == '.' || strings.HasSuffix(known, "."))
	}
	return (slices.ContainsFunc(forTraces, begins) && !slices.ContainsFunc(asked, begins)) ||
		slices.ContainsFunc(forDeath, is) || slices.ContainsFunc(notInAPage, is)
}

// idle lists the functions that never run, by their places in the code section, where
// they stand as in the table: each has one entry, and these rise evenly.
func (t *table) idle() (places []int, err error) {
	first := t.record(0).word(entry)
	step := t.record(min(1, t.count-1)).word(entry) - first
	for n := range t.count {
		r := t.record(n)
		if r.word(entry) != first+n*step {
			return nil, errCode
		}
		if neverRuns(t.name(r.word(nameAt))) {
			places = append(places, n)
		}
	}
	return places, nil
}

// name gives the name that begins at an offset.
func (t *table) name(at int) string {
	text := string(t.memory[t.names+at : t.units])
	name, _, _ := strings.Cut(text, "\x00")
	return name
}

// stubbed gives a program in which the functions at these places, in their order, are
// stubs. There are so many functions in its code section as the table has.
func (s *sections) stubbed(program []byte, count int, places []int) ([]byte, error) {
	r := s.code
	if r.number() != count {
		return nil, errCode
	}
	body := binary.AppendUvarint(nil, uint64(count))
	for n := range count {
		start := r.at
		size := r.number()
		if r.err != nil || size > len(r.body)-r.at {
			return nil, errCode
		}
		r.at += size
		if _, found := slices.BinarySearch(places, n); found {
			body = append(body, stub...)
		} else {
			body = append(body, program[start:r.at]...)
		}
	}
	if r.at != len(r.body) {
		return nil, errCode
	}
	out := append([]byte{}, program[:s.codeAt]...)
	out = binary.AppendUvarint(append(out, codeSection), uint64(len(body)))
	out = append(out, body...)
	return append(out, program[len(r.body):]...), nil
}
