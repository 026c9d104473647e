package supply

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"

	"eyeup/culture"
)

// Shape is the shape of a container in plan.
type Shape string

// The shapes. An open tray holds several individuals in one body of mix.
const (
	Round  Shape = "round"
	Square Shape = "square"
	Cells  Shape = "cells"
	Open   Shape = "open"
)

// Container is a pot or tray. Unknown figures are NaN.
type Container struct {
	ID     string // as typed: no1, tray50
	Name   string // in words: no. 1 nursery pot
	Shape  Shape
	Cells  int            // 1, except for a tray of cells
	Volume culture.Figure // to the brim, in litres; of one cell
	Top    culture.Figure // width inside at the rim, in cm
	Bottom culture.Figure // width inside at the foot, in cm
	Height culture.Figure // inside, in cm
	Gap    culture.Figure // left empty below the rim, in cm
	Bench  culture.Figure // bench area of one pot or whole tray, pot to pot, in m²
}

//go:embed data/containers.csv
var containersCSV string

var containers = readContainers()

// Containers returns all containers, small pots before trays.
func Containers() []Container { return append([]Container(nil), containers...) }

// ContainerNamed returns the container with the given id. Its error lists the known ids.
func ContainerNamed(id string) (Container, error) {
	var ids []string
	for _, c := range containers {
		if c.ID == id {
			return c, nil
		}
		ids = append(ids, c.ID)
	}
	return Container{}, fmt.Errorf("there is no container %q; there are: %s", id, strings.Join(ids, ", "))
}

func readContainers() []Container {
	var all []Container
	for _, row := range rows(containersCSV, "id,shape,cells,name") {
		cells, err := strconv.Atoi(row[2])
		if err != nil {
			panic("supply: " + err.Error())
		}
		id := row[0]
		all = append(all, Container{
			ID: id, Name: row[3], Shape: Shape(row[1]), Cells: cells,
			Volume: figure(id, "volume"), Top: figure(id, "top"), Bottom: figure(id, "bottom"),
			Height: figure(id, "height"), Gap: figure(id, "gap"), Bench: figure(id, "bench"),
		})
	}
	return all
}

// Filled returns the share of the volume below the gap at the rim. A container of unknown
// height counts as full.
func (c Container) Filled() float64 { return c.filled(c.Gap.Value) }

func (c Container) filled(gap float64) float64 {
	if math.IsNaN(gap) || !known(c.Height) {
		return 1
	}
	top, bottom, height := c.Top.Value, c.Bottom.Value, c.Height.Value
	if !known(c.Bottom) {
		bottom = top
	}
	depth := height - gap
	at := bottom + (top-bottom)*depth/height
	return frustum(at, bottom, depth) / frustum(top, bottom, height)
}

// frustum returns the volume of a tapered container, square in plan, from its widths at rim
// and foot and its depth. A round one is smaller by π/4 at every depth, so shares are the
// same. Source: any textbook of solid geometry.
func frustum(top, bottom, depth float64) float64 {
	return depth / 3 * (top*top + top*bottom + bottom*bottom)
}

// brim returns the volume to the brim in litres computed from the widths and the height; NaN
// if these are unknown.
func (c Container) brim() float64 {
	v := frustum(c.Top.Value, c.Bottom.Value, c.Height.Value) / 1000
	if c.Shape == Round {
		v *= math.Pi / 4
	}
	return v
}
