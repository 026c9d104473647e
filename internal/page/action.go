package page

import (
	"slices"

	"eyeup/stock"
)

// action is a kind of entry as a form: its name and its fields. The names of the fields are
// the members of the entry's body; a dot leads into an object.
type action struct {
	Kind   string
	Says   string // on its button
	About  string // one sentence over the form
	Care   string // a caution about the work
	Fields []field
	Forms  []stock.Form // the forms of stock it can be written of; none: any
	NoLot  bool         // it makes a new lot, instead of being about one
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
	Start   string // its value at first
}

// fieldType says how a field is filled in and read.
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
	careLift  = "Lift with a straight back and bent knees. Over 23 kg (51 lb), lift with two people."
	careKnife = "Cut away from your hand. Clean the knife between clumps, so that it carries no disease."
	careMix   = "Potting mix gives off dust and may hold Legionella. Damp it before you work, open bags away from your face, and wash your hands."
	careSap   = "Tubers, sap and leaves can irritate the skin and harm pets. Wear gloves."
	careSick  = "Bag sick plants and keep them off the compost. With dips and sprays, the label is the law."
)

// actions are the kinds of entries that have a form, in the order of the year.
var actions = []action{
	{Kind: "taken in", Says: "add new stock", About: "Stock that comes into the garden: bought, swapped, given, or found.", NoLot: true, Fields: []field{
		{Name: "variety", Label: "variety", Type: text, Due: true},
		{Name: "kind", Label: "kind", Type: text, Due: true, Start: "dahlia", Help: "dahlia, ranunculus, anemone, tomato …"},
		{Name: "form", Label: "form", Type: choice, Choices: formNames, Due: true},
		{Name: "count", Label: "how many", Type: tally, Due: true, Start: "1", Help: "packets, for seed"},
		{Name: "place", Label: "place", Type: place, Due: true},
		{Name: "crate", Label: "crate", Type: text},
		{Name: "bed", Label: "bed", Type: text, Help: "in open ground"},
		{Name: "row", Label: "row", Type: text},
		{Name: "pack", Label: "packed in", Type: text, Help: "vermiculite, bare, dry …"},
		{Name: "from", Label: "who it came from", Type: text},
		{Name: "how", Label: "how you got it", Type: choice, Choices: []string{"", "bought", "swapped", "given", "own", "found"}},
		{Name: "price", Label: "price", Type: price},
		{Name: "code", Label: "code on its label, if it has one", Type: text},
		noteField,
	}},
	{Kind: "round", Says: "round", About: "What you found when you checked them: all, or some.", Care: careLift,
		Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Cutting}, Fields: []field{
			{Name: "firm", Label: "firm", Type: tally, Start: "0"},
			{Name: "wrinkled", Label: "wrinkled", Type: tally, Start: "0"},
			{Name: "soft", Label: "soft", Type: tally, Start: "0"},
			{Name: "lost", Label: "lost", Type: tally, Start: "0", Help: "thrown out, or beyond saving"},
			{Name: "whole", Label: "every one was checked", Type: yes, Start: "yes"},
			{Name: "weight", Label: "weight of all that were checked", Type: measure, Help: "such as 4.2 kg or 9 lb"},
			noteField,
		}},
	{Kind: "divided", Says: "divide", About: "You cut clumps. A good division has a body, a neck and an eye.", Care: careKnife, Forms: []stock.Form{stock.Clump}, Fields: []field{
		{Name: "clumps", Label: "clumps cut", Type: tally, Due: true, Start: "1"},
		{Name: "good", Label: "good divisions", Type: tally, Due: true, Start: "0"},
		{Name: "doubtful", Label: "doubtful divisions", Type: tally, Start: "0", Help: "no eye seen yet"},
		{Name: "waste", Label: "waste pieces", Type: tally, Start: "0"},
		{Name: "to.place", Label: "put into", Type: place},
		{Name: "to.crate", Label: "crate", Type: text},
		{Name: "sitting", Label: "cutting session", Type: text, Help: "write the same words for all that you cut in one go, so that sick kin can be traced"},
		{Name: "knife", Label: "knife", Type: text},
		{Name: "tools", Label: "tools", Type: text, Help: "such as: cleaned between lots"},
		noteField,
	}},
	{Kind: "woken", Says: "wake", About: "Set warm and barely damp until eyes show.", Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}, Fields: []field{
		countField, {Name: "to.place", Label: "in", Type: place}, {Name: "to.crate", Label: "tray", Type: text}, noteField}},
	{Kind: "started", Says: "start", About: "Set to grow in a pot or a tray.", Care: careMix, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Cutting}, Fields: []field{
		countField, {Name: "to.form", Label: "in a", Type: choice, Choices: []string{"pot", "tray"}, Due: true}, {Name: "to.place", Label: "place", Type: place},
		{Name: "container", Label: "container", Type: text, Help: "such as no1"}, noteField}},
	{Kind: "sown", Says: "sow", About: "You sowed a packet of seed, or part of it.", Care: careMix, Forms: []stock.Form{stock.Seed}, Fields: []field{
		{Name: "seeds", Label: "seeds sown", Type: tally, Start: "0"}, {Name: "packets", Label: "packets emptied", Type: tally, Start: "0"},
		{Name: "count", Label: "plants you expect", Type: tally, Due: true, Start: "0", Help: "such as the number of cells sown"},
		{Name: "to.form", Label: "in a", Type: choice, Choices: []string{"tray", "pot"}, Due: true}, {Name: "to.place", Label: "place", Type: place, Due: true}, noteField}},
	{Kind: "cuttings taken", Says: "take cuttings", Care: careKnife, Forms: []stock.Form{stock.Clump, stock.Division, stock.Tray, stock.Pot, stock.Plant}, Fields: []field{
		{Name: "count", Label: "cuttings", Type: tally, Due: true, Start: "1"}, {Name: "to.place", Label: "place", Type: place}, {Name: "sitting", Label: "cutting session", Type: text},
		{Name: "knife", Label: "knife", Type: text}, {Name: "tools", Label: "tools", Type: text}, noteField}},
	{Kind: "eyed", Says: "eyes show", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Clump, stock.Division}},
	{Kind: "up", Says: "shoots up", About: "Shoots are through the mix.", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot, stock.Plant, stock.Corm}},
	{Kind: "moved", Says: "move", About: "To another place or crate.", Care: careLift, Fields: []field{
		countField, {Name: "to.place", Label: "to", Type: place, Due: true}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "packed", Says: "pack", About: "For the winter.", Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}, Fields: []field{
		countField, {Name: "medium", Label: "packed in", Type: text, Due: true, Help: "vermiculite, bare, dry …"},
		{Name: "moisture", Label: "moisture", Type: choice, Choices: []string{"", "dry", "barely damp", "damp"}},
		{Name: "to.place", Label: "place", Type: place}, {Name: "to.crate", Label: "crate", Type: text},
		{Name: "weight", Label: "weight", Type: measure, Help: "of all of them, without the packing"}, noteField}},
	{Kind: "watered", Says: "water", Fields: []field{{Name: "feed", Label: "feed", Type: text}, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot, stock.Plant, stock.Cutting}},
	{Kind: "potted up", Says: "pot up", About: "Into a larger pot.", Care: careMix, Forms: []stock.Form{stock.Tray, stock.Pot}, Fields: []field{
		countField, {Name: "container", Label: "container", Type: text}, {Name: "to.place", Label: "place", Type: place}, noteField}},
	{Kind: "pinched", Says: "pinch", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Pot, stock.Plant}},
	{Kind: "hardened", Says: "harden off", About: "Harden off: get them used to outdoor air before planting out.", Fields: []field{countField, {Name: "to.place", Label: "in", Type: place}, noteField}, Forms: []stock.Form{stock.Tray, stock.Pot}},
	{Kind: "planted out", Says: "plant out", About: "Into open ground.", Care: careLift, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm, stock.Tray, stock.Pot, stock.Cutting}, Fields: []field{
		countField, {Name: "to.place", Label: "place", Type: place, Due: true}, {Name: "to.bed", Label: "bed", Type: text}, {Name: "to.row", Label: "row", Type: text}, noteField}},
	{Kind: "first flower", Says: "first flower", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Plant, stock.Pot}},
	{Kind: "stems cut", Says: "cut stems", Fields: []field{{Name: "stems", Label: "stems", Type: tally, Due: true, Start: "1"}, noteField}, Forms: []stock.Form{stock.Plant}},
	{Kind: "name proved", Whole: true, Says: "check the name", About: "When it flowers: is it the variety its name says?", Fields: []field{{Name: "true_to_name", Label: "true to name", Type: yes}, noteField}, Forms: []stock.Form{stock.Plant, stock.Pot}},
	{Kind: "marked", Says: "mark to keep or go", About: "Decide while you see it in flower, before frost.", Fields: []field{
		{Name: "mark", Label: "mark", Type: choice, Choices: []string{"keep", "go"}, Due: true}, someField, noteField}},
	{Kind: "lifted", Says: "lift", About: "Out of the ground for the winter.", Care: careLift, Forms: []stock.Form{stock.Plant, stock.Pot}, Fields: []field{
		countField, {Name: "lost", Label: "dead or not found", Type: tally, Start: "0"}, {Name: "to.form", Label: "as", Type: choice, Choices: []string{"clump", "corm"}, Due: true},
		{Name: "to.place", Label: "to", Type: place, Due: true}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "cured", Says: "cure (dry off)", Fields: []field{someField, noteField}, Forms: []stock.Form{stock.Clump, stock.Division, stock.Corm}},
	{Kind: "marked sick", Says: "mark sick", About: "The page of the lot then lists the lots it may have infected, or come from.", Care: careSick, Fields: []field{
		{Name: "what", Label: "what is wrong", Type: text, Due: true}, {Name: "sure", Label: "certain, not only suspected", Type: yes}, someField, noteField}},
	{Kind: "set apart", Says: "set apart", About: "Some of the lot become a lot of their own: sick, promised to someone, or to be watched.", Fields: []field{
		countField, {Name: "why", Label: "why", Type: text, Due: true}, {Name: "to.place", Label: "to", Type: place}, {Name: "to.crate", Label: "crate", Type: text}, noteField}},
	{Kind: "destroyed", Says: "destroy", Care: careSick, Fields: []field{countField, {Name: "why", Label: "why", Type: text}, noteField}},
	{Kind: "given away", Says: "give away", Care: careSap, Fields: []field{countField, noteField}},
	{Kind: "sold", Says: "sell", Care: careSap, Fields: []field{countField, {Name: "price", Label: "price of all together", Type: price}, noteField}},
	{Kind: "named", Whole: true, Says: "rename", About: "It is another variety than you thought.", Fields: []field{
		{Name: "variety", Label: "its variety", Type: text, Due: true},
		{Name: "reach", Label: "rename which lots", Type: choice, Choices: []string{"lot", "down", "all"}, Due: true, Help: "lot: only this one; down: this one and all that came from it; all: all of the same descent"}, noteField}},
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
