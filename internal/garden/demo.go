package garden

import (
	"time"

	"eyeup/civil"
	"eyeup/internal/demo"
	"eyeup/internal/exchange"
)

// OpenDemo opens the invented garden for the season that lies ahead of today: from
// August on, the next year's.
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
