package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// sowCommand asks how many seeds to sow for so many plants.
type sowCommand struct {
	Want        int    `required:"" placeholder:"N" help:"How many plants are wanted."`
	Sure        string `default:"95" placeholder:"PERCENT" help:"How sure to be of getting that many (${default})."`
	Germination string `placeholder:"PERCENT" help:"Germination by the packet. With --age, what it was when the packet was new."`
	Tested      string `placeholder:"GOOD/OF" help:"Your own germination test, such as 17/20: 17 of 20 came up."`
	Kind        string `placeholder:"KIND" help:"The kind, such as tomato. Sets how fast its seed ages."`
	Age         string `placeholder:"YEARS" help:"How many years old the packet is."`
	Kept        string `placeholder:"TEMPERATURE" help:"Temperature where the packet lay, such as 60F. If not given, that of a room."`
	RH          string `name:"rh" placeholder:"PERCENT" help:"Relative humidity there in per cent. If not given, that of a house."`
	Moisture    string `placeholder:"PERCENT" help:"Water in the seed, if you measured it."`
	Why         bool   `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c sowCommand) Run(d *door) error {
	q := reckon.SowQuestion{
		Want: c.Want, Kind: c.Kind, Why: c.Why,
		Germination: quantity.Share(math.NaN()), Years: math.NaN(),
	}
	var err error
	if q.Sure, err = percent("--sure", c.Sure); err != nil {
		return err
	}
	if c.Germination != "" {
		if q.Germination, err = percent("--germination", c.Germination); err != nil {
			return err
		}
	}
	if c.RH != "" {
		if q.Humidity, err = percent("--rh", c.RH); err != nil {
			return err
		}
	}
	if c.Moisture != "" {
		moisture, err := percent("--moisture", c.Moisture)
		if err != nil {
			return err
		}
		q.Moisture = moisture.Percent()
	}
	if c.Tested != "" {
		if q.Good, q.Of, err = readTest(c.Tested); err != nil {
			return err
		}
	}
	if c.Age != "" {
		if q.Years, err = strconv.ParseFloat(c.Age, 64); err != nil || math.IsNaN(q.Years) {
			return fmt.Errorf("--age: %q is not a number of years; write it as in 3 or 0.5", c.Age)
		}
	}
	if c.Kept != "" {
		kept, err := quantity.ParseTemperature(c.Kept)
		if err != nil {
			return fmt.Errorf("--kept: %w", err)
		}
		q.Kept = &kept
	}
	a, err := reckon.Sow(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.US)
}

// percent reads a share typed in per cent, with its sign or without.
func percent(flag, text string) (quantity.Share, error) {
	s, err := quantity.ParseShare(strings.TrimSuffix(text, "%") + "%")
	if err != nil {
		return 0, fmt.Errorf("%s: %w", flag, err)
	}
	return s, nil
}

// readTest reads how many came up of how many.
func readTest(text string) (good, of int, err error) {
	before, after, found := strings.Cut(text, "/")
	good, errGood := strconv.Atoi(strings.TrimSpace(before))
	of, errOf := strconv.Atoi(strings.TrimSpace(after))
	if !found || errGood != nil || errOf != nil || of < 1 {
		return 0, 0, fmt.Errorf("--tested: %q is not a test; write how many came up of how many, as in 17/20", text)
	}
	return good, of, nil
}
