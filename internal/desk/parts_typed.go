package desk

import (
	"slices"
	"strconv"
	"strings"

	"eyeup/internal/exchange"
)

// partOf names the part of garden.toml that something described is.
func partOf(what, name string, body map[string]any) string {
	if what == "garden" {
		return name
	}
	sort, _ := body["sort"].(string)
	return exchange.PlacePart(exchange.Sort(sort))
}

// typedAs takes what was typed for a key as what the key is: a number, a list, or a text. A
// key that has no word is taken as what it was before.
func typedAs(part, key string, before map[string]any, typed string) any {
	w, known := exchange.WordOf(part, key)
	switch {
	case part == "figures" && known:
		return typed
	case !known:
		w.As = as(before, strings.Split(key, "."))
	}
	switch w.As {
	case exchange.AsList:
		return between(typed)
	case exchange.AsMonths:
		if strings.Contains(typed, ",") {
			return between(typed)
		}
	case exchange.AsWhole, exchange.AsDecimal:
		if n, err := strconv.ParseInt(typed, 10, 64); err == nil {
			return n
		}
		if x, err := strconv.ParseFloat(typed, 64); err == nil && w.As == exchange.AsDecimal {
			return x
		}
	}
	return typed
}

// between returns what stands between commas.
func between(typed string) []any {
	var all []any
	for one := range strings.SplitSeq(typed, ",") {
		if one = strings.TrimSpace(one); one != "" {
			all = append(all, one)
		}
	}
	return all
}

// as tells what a key was before.
func as(before map[string]any, keys []string) exchange.As {
	was, there := before[keys[0]]
	for _, key := range keys[1:] {
		switch in := was.(type) {
		case map[string]any:
			was, there = in[key]
		case []any:
			was, there = numbered(in)[key]
		}
	}
	switch was.(type) {
	case []any:
		return exchange.AsList
	case int64, float64:
		return exchange.AsDecimal
	}
	if !there { // of a new key a bare number is meant as one
		return exchange.AsDecimal
	}
	return exchange.AsText
}

// numbered returns tables that stand one by one under their numbers, from 1; nil for a list
// of anything else.
func numbered(list []any) map[string]any {
	tables := map[string]any{}
	for i, one := range list {
		if _, is := one.(map[string]any); !is {
			return nil
		}
		tables[strconv.Itoa(i+1)] = one
	}
	if len(tables) == 0 {
		return nil
	}
	return tables
}

// inRows makes lists again of tables that were typed under their numbers, in their order;
// of those from which all was taken away none is left.
func inRows(body map[string]any) {
	for key, value := range body {
		tables, is := value.(map[string]any)
		if !is {
			continue
		}
		inRows(tables)
		var numbers []int
		for text := range tables {
			if n, err := strconv.Atoi(text); err == nil && n > 0 {
				numbers = append(numbers, n)
			}
		}
		if len(numbers) == 0 || len(numbers) < len(tables) {
			continue
		}
		slices.Sort(numbers)
		list := make([]any, len(numbers))
		for i, n := range numbers {
			list[i] = tables[strconv.Itoa(n)]
		}
		body[key] = list
	}
}

// put sets a key, in tables within where it has dots.
func put(body map[string]any, keys []string, value any) {
	if len(keys) == 1 {
		body[keys[0]] = value
		return
	}
	inner, _ := body[keys[0]].(map[string]any)
	if inner == nil {
		inner = map[string]any{}
		body[keys[0]] = inner
	}
	put(inner, keys[1:], value)
}
