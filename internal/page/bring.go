package page

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"
	"strings"
	"sync"

	"eyeup/civil"
	"eyeup/internal/stockbook"
)

// bringView is a stock list, typed or read.
type bringView struct {
	Text string
	Bad  []string
	Read *stockbook.StockListAnswer
	List string // the name of the list that was read
	On   string
}

// lists keeps the lists that were checked last, until they are written into the book.
type lists struct {
	mu    sync.Mutex
	names []string
	by    map[string]*stockbook.StockListAnswer
}

// mostLists is how many lists are kept, mostListed how many rows they have together; the
// newest is kept however many it has.
const mostLists, mostListed = 8, 20000

// keep keeps a list and returns its name.
func (l *lists) keep(content []byte, list *stockbook.StockListAnswer) string {
	sum := sha256.Sum256(content)
	name := hex.EncodeToString(sum[:8])
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.by == nil {
		l.by = map[string]*stockbook.StockListAnswer{}
	}
	if l.by[name] == nil {
		l.names = append(l.names, name)
	}
	l.by[name] = list
	for len(l.names) > 1 && (len(l.names) > mostLists || l.rows() > mostListed) {
		delete(l.by, l.names[0])
		l.names = l.names[1:]
	}
	return name
}

// rows counts the rows of all lists.
func (l *lists) rows() (all int) {
	for _, list := range l.by {
		all += list.Rows
	}
	return all
}

// take returns a list and forgets it, so that it is written once.
func (l *lists) take(name string) *stockbook.StockListAnswer {
	l.mu.Lock()
	defer l.mu.Unlock()
	list := l.by[name]
	delete(l.by, name)
	return list
}

// bringPage asks for a stock list.
func (s *server) bringPage(r *request) error {
	return s.showBring(r, http.StatusOK, bringView{})
}

func (s *server) showBring(r *request, status int, v bringView) error {
	if v.On == "" {
		v.On = s.today().String()
	}
	return s.show(r, status, "bring", view{Title: "Read in a stock list", Here: "stock", Main: v})
}

// bring reads a stock list (list, or file) and shows how it was understood. Nothing is
// written down.
func (s *server) bring(r *request) error {
	name, content, err := uploaded(r, "file")
	if err != nil {
		return err
	}
	v := bringView{Text: r.FormValue("list"), On: r.FormValue("on")}
	if len(content) == 0 {
		name, content = "the list", []byte(strings.TrimSpace(v.Text)+"\n")
	}
	if v.Read, err = s.desk.ReadList(name, content); err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showBring(r, http.StatusUnprocessableEntity, v)
	}
	v.List = s.lists.keep(content, v.Read)
	return s.showBring(r, http.StatusOK, v)
}

// takeIn writes a list that was checked (list, by its name on the page) into the book, all
// of it or nothing, on a day (on).
func (s *server) takeIn(r *request) error {
	v := bringView{On: r.FormValue("on")}
	on, err := dayTyped(v.On, s)
	if err != nil {
		return refused("%v", err)
	}
	list := s.lists.take(r.FormValue("list"))
	if list == nil {
		return refused("that list is in the book already, or you checked it too long ago. Paste it and check it again")
	}
	if err := s.desk.WriteList(list, on, s.writer(r.Context())); err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showBring(r, http.StatusUnprocessableEntity, v)
	}
	r.goTo("/season")
	return nil
}

// dayTyped reads a day that is not in the future.
func dayTyped(typed string, s *server) (day civil.Date, err error) {
	if day, err = civil.Parse(typed); err == nil && day.After(s.today()) {
		err = fmt.Errorf("%s is in the future; give the day on which it happened", day)
	}
	return day, err
}
