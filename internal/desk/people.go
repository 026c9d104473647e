package desk

// Names returns the names of people by their ids; blanked ones are empty.
func (d *Desk) Names() (map[string]string, error) { return d.book.Names() }

// PersonNamed returns the id of the person of a name; see stockbook.Book.PersonNamed.
func (d *Desk) PersonNamed(name string) (id string, err error) { return d.book.PersonNamed(name) }
