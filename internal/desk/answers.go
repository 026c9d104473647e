package desk

// answers names every answer that has a schema, by the words of the command that gives it.
var answers = map[string]Answer{
	"book kin":           &KinAnswer{},
	"book lot":           &LotAnswer{},
	"book lots":          &LotsAnswer{},
	"check":              &CheckAnswer{},
	"read weather":       &WeatherAnswer{},
	"reckon air":         &AirAnswer{},
	"reckon culture":     &CultureAnswer{},
	"reckon frost":       &FrostAnswer{},
	"reckon heat":        &HeatAnswer{},
	"reckon hours":       &HoursAnswer{},
	"reckon keep":        &KeepAnswer{},
	"reckon light":       &LightAnswer{},
	"reckon mite":        &MiteAnswer{},
	"reckon mite garden": &MitePlacesAnswer{},
	"reckon mix":         &MixAnswer{},
	"reckon nights":      &NightsAnswer{},
	"reckon soil":        &SoilAnswer{},
	"reckon pack":        &PackAnswer{},
	"reckon sow":         &SowAnswer{},
	"reckon sprout":      &SproutAnswer{},
	"reckon sun":         &SunAnswer{},
	"restore":            &RestoreAnswer{},
	"season":             &SeasonAnswer{},
}
