// Where the sun stands and when it rises and sets, by astronomy-engine. Reads questions
// from standard input and writes the answers, both as JSON.
'use strict'
const astronomy = require('astronomy-engine')
const { positions, days } = JSON.parse(require('fs').readFileSync(0, 'utf8'))

const observer = (site) => new astronomy.Observer(site.latitude, site.longitude, 0)

function position({ site, at }) {
  const when = new Date(at)
  const place = observer(site)
  const sun = astronomy.Equator('Sun', when, place, true, true)
  const seen = astronomy.Horizon(when, place, sun.ra, sun.dec, 'normal')
  const airless = astronomy.Horizon(when, place, sun.ra, sun.dec, null)
  return { zenith: 90 - seen.altitude, airless: 90 - airless.altitude, azimuth: seen.azimuth }
}

// The edges of the daylight around a noon that is given.
function day({ site, noon }) {
  const edge = (direction, days) =>
    astronomy.SearchRiseSet('Sun', observer(site), direction, new Date(noon), days).date.getTime() / 1000
  return { rise: edge(+1, -1), set: edge(-1, +1) }
}

console.log(JSON.stringify({ positions: positions.map(position), days: days.map(day) }))
