package prove

import "slices"

// worthwhile is how much of what a node's bound lacks a mix of prices must make good to be
// kept.
const worthwhileMix = 0.1

// mostMixes is how many mixes of prices are tried at a time on a node with several houses; with one
// house prices pull apart less, and one does.
const mostMixes = 3

// mixingGame is prices of which each bounds some settings of a node well and others badly, and those
// settings: worth is what each bounds each by.
type mixingGame struct {
	duals    []int // of the pool
	settings []*node
	worth    [][]float64 // by prices and setting
}

// mixDuals mixes the prices that bound a node with others that bound its likeliest setting better
// (other is the likeliest by those), so that the worst of these is bounded as well as can be, and
// keeps the mix where it bounds the node enough better. A mix of prices bounds as truly as any of
// them.
func (p *prover) mixDuals(n, one, other *node) bool {
	d := &mixingGame{settings: []*node{other}}
	p.addToGame(d, n.duals)
	p.addSetting(d, one)
	best, bound, mixes := (*duals)(nil), n.bound, 1
	if len(n.houses) > 1 {
		mixes = mostMixes
	}
	for range mixes {
		x := p.mixtureOf(d)
		_, next, _, b := p.minimiserBy(n, x)
		if b > bound {
			best, bound = x, b
		}
		if p.isGapClosed(bound) {
			break
		}
		p.closeGapBy(next, n)
		if !p.addSetting(d, next) {
			break
		}
	}
	lacks := p.costOf(p.incumbent) - TargetGap*p.scale(p.incumbent) - n.bound
	if best == nil || bound < n.bound+worthwhileMix*lacks {
		return false
	}
	p.pool = append(p.pool, best)
	p.tryDuals(n, len(p.pool)-1)
	best.forget() // many are kept, and few are tried on many nodes
	return true
}

// addToGame adds prices to a game, and reports whether they are new to it.
func (p *prover) addToGame(d *mixingGame, by int) bool {
	if by < 0 || slices.Contains(d.duals, by) {
		return false
	}
	var worth []float64
	for _, s := range d.settings {
		worth = append(worth, p.boundOf(s, p.pool[by]))
	}
	d.duals, d.worth = append(d.duals, by), append(d.worth, worth)
	return true
}

// addSetting adds a setting to a game, with the prices that bound it best, and reports whether either
// is new to it.
func (p *prover) addSetting(d *mixingGame, s *node) bool {
	fresh := !slices.ContainsFunc(d.settings, func(known *node) bool { return known.key() == s.key() })
	if fresh {
		d.settings = append(d.settings, s)
		for k, by := range d.duals {
			d.worth[k] = append(d.worth[k], p.boundOf(s, p.pool[by]))
		}
	}
	return p.addToGame(d, s.duals) || fresh
}

// duelRounds is how many rounds a game is played for.
const gameRounds = 200

// play plays a game: in turn the setting that is bounded worst by what was played so far, and the
// prices that do best against the settings so far. The shares of what was played come near those
// that bound the worst setting best.
//
// Source: Brown, Iterative solution of games by fictitious play, in Activity Analysis of Production
// and Allocation (1951), 374-376; from memory.
func (d *mixingGame) play() []float64 {
	played, bySetting, byPrices := make([]float64, len(d.duals)), make([]float64, len(d.settings)), make([]float64, len(d.duals))
	for range gameRounds {
		k := slices.Index(byPrices, slices.Max(byPrices))
		played[k] += 1.0 / gameRounds
		for j, w := range d.worth[k] {
			bySetting[j] += w
		}
		j := slices.Index(bySetting, slices.Min(bySetting))
		for k := range d.duals {
			byPrices[k] += d.worth[k][j]
		}
	}
	return played
}

// mixtureOf mixes the prices of a game by their shares.
func (p *prover) mixtureOf(d *mixingGame) *duals {
	var x *duals
	sum := 0.0
	for k, share := range d.play() {
		if share == 0 {
			continue
		}
		if sum += share; x == nil {
			x = p.pool[d.duals[k]]
			continue
		}
		x = p.mixture(p.pool[d.duals[k]], x, share/sum)
	}
	return x
}

// manyBlends is how many prices are added before those that nothing leans on are let go of.
const mixesBetweenDrops = 256

// dropUnusedMixes lets go of mixes on which no node leans.
func (p *prover) dropUnusedMixes(nodes ...*node) {
	kept := map[int]bool{}
	for _, n := range nodes {
		kept[n.duals] = true
		for _, one := range n.bestDuals {
			kept[one.duals] = true
		}
	}
	for _, i := range p.solvedDuals {
		kept[i] = true
	}
	for i := range p.pool {
		if !kept[i] {
			p.pool[i] = p.pool[0] // prices of nothing, which bound too
		}
	}
}

// mixture is prices of which a share is taken from a and the rest from b.
func (p *prover) mixture(a, b *duals, share float64) *duals {
	mix := func(a, b []float64) []float64 {
		c := make([]float64, len(a))
		for i := range c {
			c[i] = share*a[i] + (1-share)*b[i]
		}
		return c
	}
	x := p.newDuals(mix(a.row, b.row))
	if a.heaters == nil && b.heaters == nil {
		return x
	}
	x.heaters = make([]*heaterDuals, len(p.problem.columns.HeaterKeys))
	for i := range x.heaters {
		one, other := a.heaterDuals(i), b.heaterDuals(i)
		if one == nil && other == nil {
			continue
		}
		if one == nil {
			one = p.newHeaterDuals(p.problem.columns.HeaterKeys[i])
		}
		if other == nil {
			other = p.newHeaterDuals(p.problem.columns.HeaterKeys[i])
		}
		d := &heaterDuals{monday: one.monday, row: one.row, room: mix(one.room, other.room), total: mix(one.total, other.total)}
		for g := range one.upTo {
			d.upTo = append(d.upTo, mix(one.upTo[g], other.upTo[g]))
		}
		x.heaters[i] = d
	}
	return x
}

// heaterDuals returns the heater prices for a heater; nil where there are none.
func (x *duals) heaterDuals(heater int) *heaterDuals {
	if x.heaters == nil {
		return nil
	}
	return x.heaters[heater]
}
