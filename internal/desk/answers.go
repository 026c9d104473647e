package desk

// answers names every answer that has a schema, by the words of the command that gives it.
var answers = map[string]Answer{
	"reckon sow": &SowAnswer{},
	"reckon mix": &MixAnswer{},
	"reckon keep": &KeepAnswer{},
	"reckon air":     &AirAnswer{},
	"reckon culture": &CultureAnswer{},
	"reckon light":   &LightAnswer{},
	"reckon mite":    &MiteAnswer{},
	"reckon sprout":  &SproutAnswer{},
	"reckon sun":     &SunAnswer{},
	"season":         &SeasonAnswer{},
}
