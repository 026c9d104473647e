package page

import (
	"slices"

	"eyeup/stock"
)

// action is a kind of entry as a form: what it is called and which fields it has. The
// names of its fields are the members of the entry's body; a dot leads into an object.
type action struct {
	Kind   string
	Says   string // on its button
	About  string // one sentence over the form
	Care   string // the caution of the work
	Fields []field
	Forms  []stock.Form // of stock it can be written of; none: any
	NoLot  bool         // it is not about a lot that is there
	Whole  bool         // it is about the lot wherever it stands
}

// lotMember is the member of the body that names the lot.
func (a action) lotMember() string {
	switch a.Kind {
	case "divided", "sown", "cuttings taken":
		return "from"
	}
	return "lot"
}

// field is one field of a form.
type field struct {
	Name    string // the member of the body
	Label   string
	Type    fieldType
	Choices []string
	Due     bool
	Help    string
	Start   string // what stands there at first
}

// fieldType says how a field is typed and read.
type fieldType string

const (
	tally   fieldType = "tally"   // a whole number with large buttons
	text    fieldType = "text"    // words
	choice  fieldType = "choice"  // one of Choices
	yes     fieldType = "yes"     // ticked or not
	measure fieldType = "measure" // a figure with its unit
	price   fieldType = "price"   // an amount in the garden's currency
	place   fieldType = "place"   // one of the garden's places
	colour  fieldType = "colour"  // #rrggbb
)

var (
	countField = field{Name: "count", Label: "how many", Type: tally, Due: true, Start: "all"}
	someField  = field{Name: "count", Label: "how many of them", Type: tally, Start: "all"}
	noteField  = field{Name: "note", Label: "note", Type: text}
	formNames  = []string{"clump", "division", "corm", "seed", "cutting", "tray", "pot", "plant"}
)

const (
	careLift  = "Lift with straight back and bent knees; two people for what weighs over 23 kg (51 lb)."
	careKnife = "Cut away from your hand; clean the knife between clumps, so that nothing is carried from one to the next."
	careMix   = "Damp the mix before you work with it, open bags away from your face, and wash your hands: dust and Legionella."
	careSap   = "Tubers, sap and leaves can irritate skin and are not for pets; wear gloves."
	careSick  = "Bag what is sick; keep it off the compost. Dips and sprays: the label is the law."
)

// actions are the kinds of entries that have a form, in the order of the year.
var actions = []action{
	{Kind: "taken in", Says: "take in", About: "New stock comes into the garden: bought, swapped, given, or found.", NoLot: true, Fields: []field{
		{Name: "variety", Label: "variety", Type: text, Due: true},
		{Name: "kind", Label: "kind", Type: text, Due: true, Start: "dahlia", Help: "dahlia, ranunculus, anemone, tomato …"},
		{Name: "form", Label: "form", Type: choice, Choices: formNames, Due: true},
		{Name: "count", Label: "how many", Type: tally, Due: true, Start: "1", Help: "packets, for seed"},
		{Name: "place", Label: "place", Type: place, Due: true},
		{Name: "crate", Label: "crate", Type: text},
		{Name: "bed", Label: "bed", Type: text, Help: "in open ground"},
		{Name: "row", Label: "row", Type: text},
		{Name: "pack", Label: "packed in", Type: text, Help: "vermiculite, bare, dry …"},
		{Name: "from", Label: "from", Type: text},
		{Name: "how", Label: "how", Type: choice, Choices: []string{"", "bought", "swapped", "given", "own", "found"}},
		{Name: "price", Label: "price", Type: price},
		{Name: "code", Label: "code on its label, if it has one", Type: text},
		noteField,
	}},
	{Kind: "round", Says: "round", About: "What was found: each one looked at, or some of them.", Care: careLift,
		Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Cutting}, Fields: []field{
			{Name: "firm", Label: "firm", Type: tally, Start: "0"},
			{Name: "wrinkled", Label: "wrinkled", Type: tally, Start: "0"},
			{Name: "soft", Label: "soft", Type: tally, Start: "0"},
			{Name: "lost", Label: "lost", Type: tally, Start: "0", Help: "thrown out, or past saving"},
			{Name: "whole", Label: "all of them were looked at", Type: yes, Start: "yes"},
			{Name: "weight", Label: "weight of all that were looked at", Type: measure, Help: "such as 4.2 kg or 9 lb"},
			noteField,
		}},
	{Kind: "divided", Says: "divide", About: "Clumps were cut; each good division has a body, a neck and an eye.", Care: careKnife, Forms: []stock.Form{stock.Clump}, Fields: []field{
		{Name: "clumps", Label: "clumps cut", Type: tally, Due: true, Start: "1"},
		{Name: "good", Label: "good divisions", Type: tally, Due: true, Start: "0"},
		{Name: "doubtful", Label: "doubtful", Type: tally, Start: "0", Help: "no eye seen yet"},
		{Name: "waste", Label: "waste", Type: tally, Start: "0"},
		{Name: "to.place", Label: "put into", Type: place},
		{Name: "to.crate", Label: "crate", Type: text},
		{Name: "sitting", Label: "sitting", Type: text, Help: "the same words for all that is cut at one go"},
		{Name: "knife", Label: "knife", Type: text},
		{Name: "tools", Label: "tools", Type: text, Help: "such as: cleaned between lots"},
		noteField,
	}},
	{Kind: "woken", Says: "wake", About: "Set warm and barely damp, till eyes show.", Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}, Fields: []field{
		countField, {Name: "to.place", Label: "in", Type: place}, {Name: "to.crate", Label: "tray", Type: text}, noteField}},
	{Kind: "started", Says: "start", About: "Set to grow in a pot or a tray.", Care: careMix, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Cutting}, Fields: []field{
		countField, {Name: "to.form", Label: "in a", Type: choice, Choices: []string{"pot", "tray"}, Due: true}, {Name: "to.place", Label: "place", Type: place},
		{Name: "container", Label: "container", Type: text, Help: "such as no1"}, noteField}},
	{Kind: "sown", Says: "sow", About: "A packet of seed was sown, or part of it.", Care: careMix, Forms: []stock.Form{stock.Seed}, Fields: []field{
		{Name: "seeds", Label: "seeds sown", Type: tally, Start: "0"}, {Name: "packets", Label: "packets emptied", Type: tally, Start: "0"},
		{Name: "count", Label: "plants to reckon with", Type: tally, Due: true, Start: "0", Help: "such as cells sown"},
		{Name: "to.form", Label: "in a", Type: choice, Choices: []string{"tray", "pot"}, Due: true}, {Name: "to.place", Label: "place", Type: place, Due: true}, noteField}},
	{Kind: "cuttings taken", Says: "take cuttings", Care: careKnife, Forms: []stock.Form{stock.Clump, stock.Division, stock.Tray, stock.Pot, stock.Plant}, Fields: []field{
		{Name: "count", Label: "cuttings", Type: tally, Due: true, Start: "1"}, {Name: "to.place", Label: "place", Type: place}, {Name: "sitting", Label: "sitting", Type: text},
		{Name: "knife", Label: "knife", Type: text}, {Name: "tools", Label: "tools", Type: text}, noteField}},
	{Kind: "eyed", Says: "eyes show", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Clump, stock.Division}},
	{Kind: "up", Says: "up", About: "Shoots are through the mix.", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot, stock.Plant, stock.Corm}},
	{Kind: "moved", Says: "move", About: "To another place or crate.", Care: careLift, Fields: []field{
		countField, {Name: "to.place", Label: "to", Type: place, Due: true}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "packed", Says: "pack", About: "For the winter.", Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}, Fields: []field{
		countField, {Name: "medium", Label: "packed in", Type: text, Due: true, Help: "vermiculite, bare, dry …"},
		{Name: "moisture", Label: "moisture", Type: choice, Choices: []string{"", "dry", "barely damp", "damp"}},
		{Name: "to.place", Label: "place", Type: place}, {Name: "to.crate", Label: "crate", Type: text},
		{Name: "weight", Label: "weight", Type: measure, Help: "of all of them, packing apart"}, noteField}},
	{Kind: "watered", Says: "water", Fields: []field{{Name: "feed", Label: "feed", Type: text}, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot, stock.Plant, stock.Cutting}},
	{Kind: "potted up", Says: "pot up", About: "Into a larger pot.", Care: careMix, Forms: []stock.Form{stock.Tray, stock.Pot}, Fields: []field{
		countField, {Name: "container", Label: "container", Type: text}, {Name: "to.place", Label: "place", Type: place}, noteField}},
	{Kind: "pinched", Says: "pinch", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Pot, stock.Plant}},
	{Kind: "hardened", Says: "harden", About: "Used to outdoor air.", Fields: []field{countField, {Name: "to.place", Label: "in", Type: place}, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot}},
	{Kind: "planted out", Says: "plant out", About: "Into open ground.", Care: careLift, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Tray, stock.Pot, stock.Cutting}, Fields: []field{
		countField, {Name: "to.place", Label: "place", Type: place, Due: true}, {Name: "to.bed", Label: "bed", Type: text}, {Name: "to.row", Label: "row", Type: text}, noteField}},
	{Kind: "first flower", Says: "first flower", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Plant, stock.Pot}},
	{Kind: "stems cut", Says: "cut stems", Fields: []field{{Name: "stems", Label: "stems", Type: tally, Due: true, Start: "1"}, noteField}, Forms: []stock.Form{stock.Plant}},
	{Kind: "name proved", Whole: true, Says: "prove the name", About: "In flower: is it what its name says?", Fields: []field{{Name: "true_to_name", Label: "true to name", Type: yes}, noteField}, Forms: []stock.Form{stock.Plant, stock.Pot}},
	{Kind: "marked", Says: "keep or go", About: "As seen in flower, before frost.", Fields: []field{
		{Name: "mark", Label: "mark", Type: choice, Choices: []string{"keep", "go"}, Due: true}, someField, noteField}},
	{Kind: "lifted", Says: "lift", About: "Out of the ground for the winter.", Care: careLift, Forms: []stock.Form{stock.Plant, stock.Pot}, Fields: []field{
		countField, {Name: "lost", Label: "dead or not found", Type: tally, Start: "0"}, {Name: "to.form", Label: "as", Type: choice, Choices: []string{"clump", "corm"}, Due: true},
		{Name: "to.place", Label: "to", Type: place, Due: true}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "cured", Says: "cure", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}},
	{Kind: "marked sick", Says: "mark sick", About: "Its kin are told at once.", Care: careSick, Fields: []field{
		{Name: "what", Label: "what is wrong", Type: text, Due: true}, {Name: "sure", Label: "proved, not only suspected", Type: yes}, someField, noteField}},
	{Kind: "set apart", Says: "set apart", About: "Some of the lot become a lot of their own: sick, promised, to be watched.", Fields: []field{
		countField, {Name: "why", Label: "why", Type: text, Due: true}, {Name: "to.place", Label: "to", Type: place}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "destroyed", Says: "destroy", Care: careSick, Fields: []field{countField, {Name: "why", Label: "why", Type: text}, noteField}},
	{Kind: "given away", Says: "give away", Care: careSap, Fields: []field{countField, noteField}},
	{Kind: "sold", Says: "sell", Care: careSap, Fields: []field{countField, {Name: "price", Label: "price of all", Type: price}, noteField}},
	{Kind: "named", Whole: true, Says: "name anew", About: "It is another variety than was thought.", Fields: []field{
		{Name: "variety", Label: "it is", Type: text, Due: true},
		{Name: "reach", Label: "reaches", Type: choice, Choices: []string{"lot", "down", "all"}, Due: true, Help: "lot: this one; down: it and all that came of it; all: all of one descent"}, noteField}},
	{Kind: "note", Whole: true, Says: "note", Fields: []field{{Name: "text", Label: "note", Type: text, Due: true}}},
}

// actionOf returns the action of a kind.
func actionOf(kind string) (action, bool) {
	i := slices.IndexFunc(actions, func(a action) bool { return a.Kind == kind })
	if i < 0 {
		return action{}, false
	}
	return actions[i], true
}

// actionsFor returns what can be written of a lot as it stands.
func actionsFor(l stock.Lot) []action {
	var all []action
	for _, a := range actions {
		if a.NoLot {
			continue
		}
		stands := slices.ContainsFunc(l.Standing, func(s stock.Standing) bool {
			return len(a.Forms) == 0 || slices.Contains(a.Forms, s.Spot.Form)
		})
		if stands {
			all = append(all, a)
		}
	}
	return all
}
