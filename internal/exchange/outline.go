package exchange

import (
	"bytes"
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// spot is a place in a file; both numbers count from 1.
type spot struct{ line, column int }

// value is what a key is set to: a text, a bare word (number, boolean or date), a list or a
// group.
type value struct {
	at    spot
	kind  unstable.Kind // its type in TOML
	text  string        // of a text or a bare word
	list  []value
	group *group
}

// group is keys with their values, in the order of the file.
type group struct {
	at   spot
	keys []string
	of   map[string]value
	key  map[string]spot // where each key stands
}

func newGroup(at spot) *group {
	return &group{at: at, of: map[string]value{}, key: map[string]spot{}}
}

func (t *group) put(key string, at spot, v value) {
	if _, there := t.of[key]; !there {
		t.keys = append(t.keys, key)
		t.key[key] = at
	}
	t.of[key] = v
}

// beneath returns the group under key, which it creates if needed; of several ([[key]]) the
// last.
func (t *group) beneath(key string, at spot) *group {
	v, there := t.of[key]
	switch {
	case !there:
		v = value{at: at, kind: unstable.Table, group: newGroup(at)}
		t.put(key, at, v)
	case len(v.list) > 0:
		v = v.list[len(v.list)-1]
	}
	return v.group
}

// outlineOf reads a TOML file with the place of every key and value. The library first reads
// the whole file and rejects what TOML forbids, such as a key set twice; its parser then gives
// the places.
func outlineOf(file string, data []byte) (*group, error) {
	if line := tooDeep(data); line > 0 {
		return nil, Fault{File: file, Line: line, What: "more than 100 brackets stand open here; close each list and each group"}
	}
	var whole map[string]any
	if err := toml.Unmarshal(data, &whole); err != nil {
		return nil, tomlFault(file, err)
	}
	o := outliner{data: data, root: newGroup(spot{1, 1})}
	o.parser.Reset(data)
	at := o.root
	for o.parser.NextExpression() {
		node := o.parser.Expression()
		switch node.Kind {
		case unstable.KeyValue:
			o.set(at, node)
		case unstable.Table, unstable.ArrayTable:
			at = o.enter(node)
		}
	}
	if err := o.parser.Error(); err != nil {
		return nil, Fault{File: file, What: err.Error()}
	}
	return o.root, nil
}

func tomlFault(file string, err error) error {
	var wrong *toml.DecodeError
	if !errors.As(err, &wrong) {
		return Fault{File: file, What: err.Error()}
	}
	line, column := wrong.Position()
	what := strings.TrimPrefix(wrong.Error(), "toml: ")
	return Fault{File: file, Line: line, Column: column, What: what + "; put texts in quotes and set each key once, as key = value"}
}

type outliner struct {
	data   []byte
	parser unstable.Parser
	root   *group

	last   spot // told last, and where it stands: keys come mostly in their order
	offset int
}

// tooDeep returns the line where too many brackets stand open; 0 where none does.
func tooDeep(data []byte) int {
	const most = 100
	open, line := 0, 1
	for _, c := range data {
		switch c {
		case '\n':
			line++
		case '[', '{':
			if open++; open > most {
				return line
			}
		case ']', '}':
			open = max(open-1, 0)
		}
	}
	return 0
}

func (o *outliner) spot(n *unstable.Node) spot {
	at, from := o.last, o.offset
	if offset := int(n.Raw.Offset); offset < from || from == 0 {
		at, from = spot{1, 1}, 0
	}
	between := o.data[from:n.Raw.Offset]
	if end := bytes.LastIndexByte(between, '\n'); end >= 0 {
		at.line += bytes.Count(between, []byte("\n"))
		at.column, between = 1, between[end+1:]
	}
	at.column += utf8.RuneCount(between)
	o.last, o.offset = at, int(n.Raw.Offset)
	return at
}

// enter finds the group that a header names.
func (o *outliner) enter(header *unstable.Node) *group {
	at := o.root
	for it := header.Key(); it.Next(); {
		key, where := string(it.Node().Data), o.spot(it.Node())
		if header.Kind == unstable.ArrayTable && it.IsLast() {
			v := at.of[key]
			one := newGroup(where)
			v.at, v.kind = where, unstable.Array
			v.list = append(v.list, value{at: where, kind: unstable.Table, group: one})
			at.put(key, where, v)
			return one
		}
		at = at.beneath(key, where)
	}
	at.at = o.spot(header.Child())
	return at
}

// set puts a key and its value into the group; a key may be dotted.
func (o *outliner) set(at *group, pair *unstable.Node) {
	for it := pair.Key(); it.Next(); {
		key, where := string(it.Node().Data), o.spot(it.Node())
		if it.IsLast() {
			at.put(key, where, o.value(pair.Value(), where))
			return
		}
		at = at.beneath(key, where)
	}
}

// value reads the value of a key. If its own place is not known, it uses that of the key.
func (o *outliner) value(n *unstable.Node, key spot) value {
	v := value{at: key, kind: n.Kind, text: string(n.Data)}
	if n.Raw.Length > 0 {
		v.at = o.spot(n)
	}
	switch n.Kind {
	case unstable.Array:
		v.list = []value{}
		for it := n.Children(); it.Next(); {
			if it.Node().Kind != unstable.Comment {
				v.list = append(v.list, o.value(it.Node(), v.at))
			}
		}
	case unstable.InlineTable:
		v.group = newGroup(v.at)
		for it := n.Children(); it.Next(); {
			o.set(v.group, it.Node())
		}
	}
	return v
}
