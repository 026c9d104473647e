// Package check replays a plan of a season and says where it does not hold. It takes from
// the plan nothing but its decisions: what is started when, how many, by which places,
// from when leafy plants go out, and between which days a place is heated to what level.
// From these and the brief it runs every place hour by hour in every year of the weather,
// leads every batch through, and adds up the room, the heat, the hours and the money anew.
// What the plan says of all that must come out again.
//
// It is code of its own: it knows what a brief and a plan are, and nothing of how plans
// are found. It reads the figures of its rules from package culture itself. Its rules are those of
// package season, in these words:
//
//   - Warmth counts by the hour: in the roots until the shoot is through, then in the air.
//     Before the end of deep rest nothing counts; what is dry or seed does not stir in store.
//     A cutting is rooted so many days after its mother was started.
//   - The day on which a shoot comes through belongs to coming up; leaves begin the day after.
//   - A Monday's move sees only what has been. A batch is handed on the first Monday after
//     half of it is up on which its second place is safe; planted out the first Monday, not
//     before the one fixed, on which it has been fit for as many days as it hardens and the
//     soil at ten centimetres was warm enough over the past seven days. What hardens in a
//     frame goes there the first Monday on which it is fit, the frame is free of killing
//     frost in all but the accepted share of years, and the Monday fixed is no further off
//     than it hardens; then it is planted out when it has stood there so long.
//   - A warm bench stands in the air of its house, at its setting, and warms roots alone; what
//     is up on it is handed on without regard to nights. Its electricity, by the
//     share of the bench that is taken, is its heat.
//   - A place is safe from the day after which, in all but the accepted share of years, no
//     hour before midsummer is colder than young leaves bear.
//   - What begins in a small pot is potted up the first Monday after that begins to hold it
//     back, but not in the last fortnight before the Monday fixed. In it leaves meet sooner:
//     the way to that goes with the root of the room it takes pot-tight.
//   - In its pot a plant slows when pot-bound, by what it has come to in the middle of each hour;
//     planted out it is checked for some days, fewer out of a frame.
//   - A day under cover on which leaves have less light than its mean warmth asks for is a
//     stretched day.
//   - A day with an hour of frost kills, or stops growth for so many days, that day the first.
//     A pot that freezes before anything is up is lost.
//   - Stock is put away on the 45th day of the season, in the middle of October or of April in the
//     south, and lies in the air of its store, month by month, up to the day on which it is started,
//     or by the middle of the years goes into the ground.
//   - Where more plants are wanted than clumps are there, as few are cut as give them. Five weeks before
//     the Monday fixed they are cut in spring; until then pieces cut in autumn are kept, or the clumps.
//   - Of all that is raised from store, each clump that makes a plant is put away when it first freezes.
//   - A lot is its middle plant, which decides the moves, and five individuals besides.
//
// What was started before the plan has the room of spaced pots, or of its part of a tray, where it
// stands, from the plan's day until leafy plants go out.
//
// Of a plan whose decisions are held, each batch's Monday of planting out is a decision too, and
// how many are raised or cut is held to what there is, not to what is wanted; what it started may
// lie in the past.
//
// Dates are held within a day, those of every single year to the day but for odd years, room within
// 0.02 m², heat and what survives a store within one in a thousand, counts exactly; and so are
// crates, what is short, and in how many years the benches suffice, with the worst. Not checked: whether
// a better plan exists, and what sets plans beside each other (what they share, when heat pays).
package check
