package plans

import (
	"fmt"
	"strings"

	"eyeup/internal/picture"
	"eyeup/quantity"
)

// Picture draws one plan of the season as SVG: the course of the season, and how full the benches are.
// It fails for a plan that the season does not have.
func (a *SeasonAnswer) Picture(plan string, units quantity.System) ([]byte, error) {
	var names []string
	for _, p := range a.Plans {
		if p.Name == plan {
			return picture.Draw(picture.Season{
				Garden: a.Garden, Plan: p, Frost: a.FrostWeeks, Early: a.PriceOfEarly, Units: units, MadeUp: a.Weather.MadeUp,
			}), nil
		}
		names = append(names, p.Name)
	}
	return nil, fmt.Errorf("there is no plan named %q; there are: %s", plan, strings.Join(names, ", "))
}
