package desk

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"eyeup/stock"
)

// VarietyTyped is how a variety is described, as it is typed; what is empty is not said.
type VarietyTyped struct{ Plant, Reserve, Timing, Colour, Height string }

// VarietyOf returns how the variety of a lot is described. It fails where the variety is
// unsure.
func (d *Desk) VarietyOf(code string) (VarietyTyped, error) {
	body, _, err := d.varietyBody(code)
	if err != nil {
		return VarietyTyped{}, err
	}
	said := func(key string) string {
		if value, known := body[key]; known {
			return fmt.Sprint(value)
		}
		return ""
	}
	v := VarietyTyped{Plant: said("plant"), Reserve: said("reserve"), Timing: said("timing"), Colour: said("colour")}
	if h, is := body["height"].(map[string]any); is {
		v.Height = fmt.Sprint(h["v"], " ", h["u"])
	}
	return v, nil
}

// varietyBody is the description of a lot's variety, to be changed, and the variety's name.
func (d *Desk) varietyBody(code string) (body map[string]any, name string, err error) {
	var kind string
	var said []byte
	d.Read(func(b *stock.Book) { kind, name, said, err = b.DescriptionOf(code) })
	body = map[string]any{}
	if err == nil && said != nil {
		err = json.Unmarshal(said, &body)
	}
	body["kind"] = kind
	return body, name, err
}

// DescribeVariety returns the body of the entry by which the variety of a lot is described
// anew; what it was called and noted stays. It refuses counts that are none, and a height
// without a unit; the rest the book refuses itself.
func (d *Desk) DescribeVariety(code string, v VarietyTyped) ([]byte, error) {
	body, name, err := d.varietyBody(code)
	if err != nil {
		return nil, err
	}
	for key, typed := range map[string]string{"plant": v.Plant, "reserve": v.Reserve, "timing": v.Timing, "colour": v.Colour} {
		delete(body, key)
		if typed = strings.TrimSpace(typed); typed == "" {
			continue
		}
		body[key] = typed
		if key == "plant" || key == "reserve" {
			n, err := strconv.Atoi(typed)
			if err != nil || n < 0 || n > mostPlants {
				return nil, fmt.Errorf("%s: %q is not a whole number from 0 to %d", key, typed, mostPlants)
			}
			body[key] = n
		}
	}
	delete(body, "height")
	if typed := strings.TrimSpace(v.Height); typed != "" {
		at := strings.IndexFunc(typed, func(c rune) bool { return !strings.ContainsRune("0123456789.", c) })
		if at <= 0 {
			return nil, fmt.Errorf("height: %q has no unit; write it like 120 cm or 4 ft", typed)
		}
		body["height"] = stock.Measure{Figure: typed[:at], Unit: strings.TrimSpace(typed[at:])}
	}
	return json.Marshal(map[string]any{"what": "variety", "name": name, "body": body})
}

// IsAnyWanted reports whether any of the stock is wanted in the patch or as reserve.
func (d *Desk) IsAnyWanted() bool {
	for _, h := range d.Garden().Stock {
		if h.Plant+h.Reserve > 0 {
			return true
		}
	}
	return false
}
