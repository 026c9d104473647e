package desk

// answers names every answer that has a schema, by the words of the command that gives it.
var answers = map[string]Answer{
	"reckon air": &AirAnswer{},
	"reckon sun": &SunAnswer{},
	"season":     &SeasonAnswer{},
}
