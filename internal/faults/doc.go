// Package faults holds no program, only a trial of the tests themselves: lists of planted
// faults, a sign or a constant each, every one of which must turn a test red.
//
// One text file a room, such as sun.txt. A fault is four lines, and a blank line ends it;
// lines that begin with # are remarks:
//
//	file: sun/fao.go
//	old:  1 + 0.033*math.Cos(j)
//	new:  1 - 0.033*math.Cos(j)
//	test: sun
//
// The old text stands exactly once in the file and within one line of it; test names the
// package, from the root of the repository, whose short tests must fail, and behind it, where
// they take long, the one that does. Nothing is
// changed on disk: the go command is handed the faulty file in place of the true one.
// The trial takes minutes and runs only when EYEUP_FAULTS is set: to 1 for the quarter of the
// faults whose week it is, so that any four weeks on end try each, or to all.
package faults
