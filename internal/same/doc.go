// Command same holds two builds of the program side by side: it runs every command that
// answers in JSON with both, over the invented garden and the example garden, and reports
// each key, number, date, code or count that differs. Sentences may differ. See
// tools/same.sh, which builds the two.
package main
