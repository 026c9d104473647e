// Moist air by psychrolib. Reads a list of {celsius, humidity, pressure} from standard
// input and writes what becomes of each, both as JSON.
'use strict'
const air = require('psychrolib')
air.SetUnitSystem(air.SI)
const questions = JSON.parse(require('fs').readFileSync(0, 'utf8'))

console.log(JSON.stringify(questions.map(({ celsius, humidity, pressure }) => {
  const ratio = air.GetHumRatioFromRelHum(celsius, humidity, pressure)
  return {
    saturation: air.GetSatVapPres(celsius),
    ratio,
    frostPoint: air.GetTDewPointFromRelHum(celsius, humidity),
    wetBulb: air.GetTWetBulbFromRelHum(celsius, humidity, pressure),
    enthalpy: air.GetMoistAirEnthalpy(celsius, ratio),
    volume: air.GetMoistAirVolume(celsius, ratio, pressure),
    density: air.GetMoistAirDensity(celsius, ratio, pressure),
  }
})))
