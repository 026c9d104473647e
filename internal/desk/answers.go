package desk

import (
	"eyeup/internal/plans"
	"eyeup/internal/planting"
	"eyeup/internal/reckon"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
)

// answers names every answer that has a schema, by the words of the command that gives it.
var answers = map[string]report.Answer{
	"book kin":           &stockbook.KinAnswer{},
	"book lot":           &stockbook.LotAnswer{},
	"book lots":          &stockbook.LotsAnswer{},
	"book people":        &stockbook.PeopleAnswer{},
	"book outlook":       &stockbook.OutlookAnswer{},
	"check":              &stockbook.CheckAnswer{},
	"patch":              &planting.PatchAnswer{},
	"read logger":        &reckon.LoggerAnswer{},
	"read stock":         &stockbook.StockListAnswer{},
	"read weather":       &reckon.WeatherAnswer{},
	"reckon air":         &reckon.AirAnswer{},
	"reckon culture":     &reckon.CultureAnswer{},
	"reckon frost":       &reckon.FrostAnswer{},
	"reckon heat":        &reckon.HeatAnswer{},
	"reckon hours":       &reckon.HoursAnswer{},
	"reckon keep":        &reckon.KeepAnswer{},
	"reckon light":       &reckon.LightAnswer{},
	"reckon mite":        &reckon.MiteAnswer{},
	"reckon mite garden": &reckon.MitePlacesAnswer{},
	"reckon mix":         &reckon.MixAnswer{},
	"reckon nights":      &reckon.NightsAnswer{},
	"reckon soil":        &reckon.SoilAnswer{},
	"reckon pack":        &reckon.PackAnswer{},
	"reckon sow":         &reckon.SowAnswer{},
	"reckon sprout":      &reckon.SproutAnswer{},
	"reckon sun":         &reckon.SunAnswer{},
	"restore":            &stockbook.RestoreAnswer{},
	"season":             &plans.SeasonAnswer{},
	"write calendar":     &report.WrittenAnswer{},
	"write folder":       &report.WrittenAnswer{},
	"write labels":       &report.WrittenAnswer{},
	"write lists":        &report.WrittenAnswer{},
	"write tables":       &report.WrittenAnswer{},
}
