package garden

import (
	"time"

	"eyeup/civil"
	"eyeup/internal/demo"
	"eyeup/internal/exchange"
)

// OpenDemo opens the invented garden for the season ahead. From August on, that is the season of
// the next year.
func OpenDemo(today civil.Date) (*Garden, error) {
	folder := demo.Garden()
	read, err := exchange.ReadGarden(folder, "the invented garden")
	if err != nil {
		return nil, err
	}
	read.Season.PlantYear = today.Year()
	if today.Month() >= time.August {
		read.Season.PlantYear++
	}
	return New(read, folder)
}
