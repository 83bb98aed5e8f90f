### English. Every sentence the project says, one file per language.
### In sentences with figures, { $name } is the formatted figure and { $name_n } its bare number, for plurals.

## Numbers with their units

measure-kilograms = { $number } kg
measure-pounds = { $number } lb
measure-millimetres = { $number } mm
measure-inches = { $number } in
measure-square-metres = { $number } m²
measure-newtons = { $number } N
measure-pounds-force = { $number } lbf
measure-celsius = { $number } °C
measure-fahrenheit = { $number } °F
measure-metres = { $number } m
measure-feet = { $number } ft
measure-degrees = { $number }°
measure-square-feet = { $number } ft²
measure-kilometres = { $number } km
measure-miles = { $number } mi
measure-litres = { $number } L
measure-gallons = { $number } gal
measure-watts = { $number } W
measure-watt-hours = { $number } Wh
measure-volts = { $number } V
measure-amperes = { $number } A
measure-hours = { $number } h
measure-days = { $n ->
    [one] { $number } day
   *[other] { $number } days
}
measure-months = { $n ->
    [one] { $number } month
   *[other] { $number } months
}
measure-nights = { $n ->
    [one] { $number } night
   *[other] { $number } nights
}
measure-percent = { $number } %
measure-square-centimetres = { $number } cm²
measure-square-inches = { $number } in²
measure-metres-per-second = { $number } m/s
measure-miles-per-hour = { $number } mph
measure-cubic-metres-per-hour = { $number } m³/h
measure-cubic-feet-per-minute = { $number } cfm
measure-ppm = { $number } ppm
measure-conductivity = { $number } W/(m K)
measure-heat-per-square-metre = { $number } W/(m² K)
measure-heat-per-square-foot = { $number } Btu/(h ft² °F)
measure-heat-per-celsius = { $number } W/K
measure-heat-per-fahrenheit = { $number } Btu/(h °F)
measure-grams = { $number } g
measure-ounces = { $number } oz
measure-gigabytes = { $number } GB
measure-megabytes = { $number } MB
measure-megabits-per-second = { $number } Mbit/s
measure-kilobits-per-second = { $number } kbit/s
measure-count = { $number }
measure-per-kilogram = { $price } per kg
measure-per-pound = { $price } per lb
measure-per-litre = { $price } per L
measure-per-gallon = { $price } per gal
measure-per-metre = { $price } per m
measure-per-foot = { $price } per ft
measure-per-square-metre = { $price } per m²
measure-per-square-foot = { $price } per ft²
measure-per-piece = { $price } a piece
measure-per-hundred = { $price } a hundred
moment = { $date }, { $time }

unit-kilograms = kg
unit-pounds = lb
unit-millimetres = mm
unit-inches = in
unit-square-metres = m²
unit-newtons = N
unit-pounds-force = lbf
unit-celsius = °C
unit-fahrenheit = °F
unit-metres = m
unit-feet = ft
unit-degrees = °
unit-square-feet = ft²
unit-kilometres = km
unit-miles = mi
unit-litres = L
unit-gallons = gal
unit-watts = W
unit-watt-hours = Wh
unit-volts = V
unit-amperes = A
unit-hours = h
unit-days = days
unit-months = months
unit-nights = nights
unit-percent = %
unit-square-centimetres = cm²
unit-square-inches = in²
unit-metres-per-second = m/s
unit-miles-per-hour = mph
unit-cubic-metres-per-hour = m³/h
unit-cubic-feet-per-minute = cfm
unit-ppm = ppm
unit-conductivity = W/(m K)
unit-heat-per-square-metre = W/(m² K)
unit-heat-per-square-foot = Btu/(h ft² °F)
unit-heat-per-celsius = W/K
unit-heat-per-fahrenheit = Btu/(h °F)
unit-grams = g
unit-ounces = oz
unit-gigabytes = GB
unit-megabytes = MB
unit-megabits-per-second = Mbit/s
unit-kilobits-per-second = kbit/s
unit-hour-of-day = o’clock
unit-day-of-month = of the month
unit-count = pieces

## Money

money-below-floor = Cash falls below your floor on { $on }. On the worst day, { $lowest_on }, { $missing } is missing.
next-money-below-floor = Bring in { $missing } in all, the first of it by { $on }: sell something earlier, move a purchase to a later day, or leave a want out.
money-close-to-floor = The lowest day is { $lowest_on }, with { $margin } to spare: less than a week on the road.
next-money-close-to-floor = One late sale could break it. Keep something you could still sell.
money-largest-before = The largest purchase before that which is not a must: “{ $name }”, { $amount }.
next-money-largest-before = Buy “{ $name }” later, borrow it, or leave it out.
money-receipts-unanswered = { $count_n ->
    [one] One receipt of a day past is unanswered ({ $amount }). It is not counted.
   *[other] { $count } receipts of days past are unanswered ({ $amount } together). They are not counted.
}
money-payments-unanswered = { $count_n ->
    [one] One payment of a day past is unanswered ({ $amount }). It is counted as paid.
   *[other] { $count } payments of days past are unanswered ({ $amount } together). They are counted as paid.
}
next-money-unanswered = Say of each whether it happened, or count your cash and enter it.
money-without-price = { $count_n ->
    [one] “{ $name }” has no price yet and counts as nothing.
   *[other] { $count } things to buy or make have no price yet and count as nothing, “{ $name }” first.
}
next-money-without-price = A rough price is better than none.
money-overlap = Home and road are paid for at the same time: { $home } for the home once you have left, { $road } for the road before.
money-pay-at-risk = Some { $amount } of the incomes hang on hours of work until { $by } that lack signal, power or a bearable temperature. Without them, cash is lowest on { $lowest_on }: { $lowest }.
money-pay-breaks-floor = Some { $amount } of the incomes hang on hours of work until { $by } that lack signal, power or a bearable temperature. Without them, cash falls below the floor: { $lowest } on { $lowest_on }.
next-money-pay-at-risk = See on the page of signal which hours those are.
next-money-overlap = End the one earlier or begin the other later, if the contracts let you.
money-sales-unlikely = { $count_n ->
    [one] One sale is less likely than not and is not counted on; it would bring { $amount }.
   *[other] { $count } sales are less likely than not and are not counted on; together they would bring { $amount }.
}
next-money-sales-unlikely = Offer it earlier or for less; whatever comes of it is extra.
money-home-until = Selling the van and going home stays affordable up to { $last_on }; the day after, { $missing } is missing.
money-no-way-home = Selling the van and going home is not affordable now: { $missing } is missing for the loans and a room.
next-money-way-home = Keep the deposit and the first rent of a room apart, or know somebody with whom you could stay.
money-owes-more = On { $on } you would owe { $owed }, and the van would bring { $resale }: selling it would not settle the loan.
next-money-owes-more = Pay a larger part at first, borrow less, or keep the difference apart.

working-money-lowest = { $opening } + { $inflow } in − { $outflow } out = { $lowest } on { $on }
working-money-margin = { $lowest } lowest − { $floor } floor = { $margin }
working-money-month = { $home } a month at home − { $road } on the road = { $saved } a month
working-money-pay-back = { $put_in } put in ÷ { $saved } a month × 30.44 days = { $days } on the road
working-money-freedom = { $saved } a month over { $route } − { $put_in } put in = { $left }; ÷ { $road } a month on the road = { $months }
working-money-going-home = On { $on }: { $cash } cash + { $van } for the van + { $kit } for the kit − { $owed } owed − { $room } for a room = { $left }
working-money-loan = { $amount } lent, { $payment } a month; the last of { $count } payments is { $last }. Interest in all: { $interest }
working-money-loan-cost = With { $fees } of fees it costs { $percent } a year, by the actuarial method
working-selling-chance = Half are sold in { $half } at { $usual }. At { $asking } the rate is ln 2 ÷ { $half } × ({ $usual } ÷ { $asking }) ^ { $steepness } a day; 1 − exp(−rate × { $days }) = { $percent }
working-selling-sum = { $count_n ->
    [one] One thing, at most { $most }, { $expected } on average with its costs taken off; { $percent } is the chance of { $sum } or more
   *[other] { $count } things, at most { $most } together, { $expected } on average with their costs taken off; { $percent } is the chance of { $sum } or more, if they sell apart from one another
}
working-selling-prices = Each price is looked at again every { $days } and is the one worth most with what may follow; a thing without a lowest price goes down to { $lowest } of its usual one
working-selling-sale = { $price } × { $percent } chance − { $cost } for selling = { $sale }, what the others forgo; never less than nothing
working-selling-fate = { $saved } not to be bought + { $later } later − { $spent } spent − { $forgone } of a sale forgone = { $better }
working-futures-taken = Over { $months }: { $home } a month at home, { $road } on the road; chance that it does not suit { $unsuited }, known after { $finds_out }; things sold again bring { $kept }; going back costs { $back }
working-futures-stay = { $months } × { $home } = { $total }
working-futures-suited = If it suits: { $months } × { $home } + { $on_road } on the road × { $road } + { $build } for building + { $redone } redone = { $total }
working-futures-unsuited = If not: { $months } × { $home } + { $on_road } on the road × { $road } + { $build } for building + { $returning } for going back, less what is sold = { $total }
working-futures-average = On average: { $suited } × { $suits } + { $unsuited } × { $percent } = { $total }
working-reserve-ranges = Purchases with a range: { $high } in 8 of 10 tries at most − { $middle } in half of them = { $from_ranges }
working-reserve-share = Purchases without a range: { $percent } of { $without } = { $from_share }
working-reserve = { $from_ranges } for ranges + { $from_share } without + { $breakdown } for a breakdown = { $total }
working-money-cushion = Tight below { $days } of running costs on the road: { $cushion }

## Power

power-runs-out = “{ $name }” is empty on { $at }. In all, { $short } go without, { $missing } are missing.
next-power-runs-out = Charge before then, for longer or at one more stop; or use something less on days without charging.
power-close-to-empty = “{ $name }” is lowest on { $at }, with { $reserve } of reserve.
next-power-close-to-empty = One day more without charging would empty it.
power-above-outlet = “{ $name }” needs { $needs }, the outlet gives { $limit }: it does not run, however much energy there is.
power-above-surge = “{ $name }” needs { $needs } to start, the outlets give { $limit } for a moment: it trips them, although there is energy.
next-power-above-outlet = Take a weaker one, one without electricity, or use it only where there is mains.
power-gives-way = “{ $name }” gives way from { $at } on: beside what matters more, the outlets would have to give more than { $limit }. { $missing } go without, although there may be energy.
next-power-gives-way = Take turns: not both at the same time. Or say of the one that matters more that it does.
power-below-floor = “{ $name }” holds less than is to stay in it from { $at } on: { $lowest } at the lowest.
power-sockets-refuse = Before “{ $name }” ran out, more was on offer than it took: its sockets bear no more, or it was too cold or too hot to charge. { $missing } go without because of that.
next-power-sockets-refuse = Charge longer rather than stronger, or with a store that takes more.
power-too-cold-or-hot = In { $hours } something is on offer while “{ $name }” is too cold or too hot to charge.
next-power-too-cold-or-hot = Keep the store where it is warm enough, away from frost and from the sun, and charge at another hour.
power-no-place = “{ $name }” counts for nothing on days of which nobody said where the van is.
next-power-no-place = State how far north the place is, on the page of the power or with the stay.
power-no-store = { $count_n ->
    [one] “{ $name }” draws power and has no store to run on.
   *[other] { $count } things draw power and have no store to run on, “{ $name }” first.
}
next-power-no-store = Add a power store to the kit, or take out what needs one.
power-nothing-draws = Nothing in the kit draws power.

working-power-reserve = { $lowest } at the lowest moment ÷ { $average } average draw = { $reserve } of reserve
working-power-short = The hours after the store is empty add up to { $short }; { $missing } of what was wanted at an average of { $average } is missing
working-power-energy = { $put_in } in, { $taken_out } out, { $missing } missing, at the cells
working-power-socket = The vehicle’s socket gives at most { $socket } for hours: volts × amperes of the fuse × 0.8
working-power-warm = { $name }: up to { $power }, as long as the room lacks warmth: { $day } on an average day.
working-power-draw = “{ $name }”: { $power } × { $hours } × { $duty } = { $day } on an average day of the route, with the days on which it is not used
working-power-heat = “{ $name }”: { $litres } and the vessel from { $from } to { $to }, { $share } of it arrives: { $once } each time, { $day } on an average day
working-power-cool = “{ $name }”: { $walls } of heat come in for each degree; kept at { $inside } in air of { $air } on average: { $day } a day
working-power-panel = “{ $name }”: { $peak } at its peak, as if for { $hours } a day: { $day }. Sun, clear sky, clouds, tilt, heat of the cells, dirt, shade and controller are counted by the hour
working-power-inverter = The inverter passes on { $efficiency } and takes { $idle } for itself while something hangs on it

## Water

water-runs-out = The cans are empty on { $on }. Water is missing on { $days }, { $missing } in all.
next-water-runs-out = Fill up before then, add a can, or use less where there is no tap.
water-close-to-empty = On { $on } only { $left } are left, enough for { $days }.
water-grey-full = There is no room for used water from { $on }; { $over } too much in all.
next-water-grey-full = Empty it before then, or take a larger tank.
water-no-grey-tank = { $litres } a day become used water, and the kit has no tank for it.
next-water-no-grey-tank = Add a can for it: in most places it may not be poured out.
water-no-fresh-tank = { $litres } a day are used, and the kit has no can to carry it.
next-water-no-fresh-tank = Add a can to the kit.
water-toilet-full = The toilet is full on { $on }, and cannot be emptied before. There is no room on { $days }.
next-water-toilet-full = Empty it before then, carry more bags or a second tank, or stay where there is a toilet.
water-no-toilet = Nobody has a toilet on board, and { $days } have none at the place: { $row } in a row from { $from }, { $hours } in all of which it must be found elsewhere.
next-water-no-toilet = See below what each way of having one takes and costs, or look for places with one on those days.
water-nothing-boils = { $litres } a day are to be boiled, and nothing in the kit heats water.
next-water-nothing-boils = Add a kettle, a hob or a stove to the kit, or a filter instead.
water-no-filter = { $litres } a day are to be filtered, and the kit has no filter.
water-filters-done = The filters of the kit are done on { $on }, at { $litres } a day.
next-water-filters-done = Add a filter to the kit, with the litres that its label says; or filter only what is drunk.
water-cans-freeze = Water in the van may freeze on { $days }, first on { $on }: below 0 °C for up to { $hours }, down to { $coldest }.
next-water-cans-freeze = Leave room in the cans and their lids loose, keep them off the floor and the walls, and the day’s drinking water in the bed.
water-tank-freezes = This tank stands outside and may freeze and burst on { $days }, first on { $on }: below 0 °C for up to { $hours }, down to { $coldest }.
next-water-tank-freezes = Drain it and its tap before those nights, or take it inside.
water-filter-freezes = This filter may freeze on { $days }, first on { $on }: below 0 °C for up to { $hours }, down to { $coldest }. A filter that froze wet is done, even if nothing is to be seen.
next-water-filter-freezes = Keep it dry or warm, in the bed at night, and take another way of treating water along.

working-water-days = { $left } left on { $on } ÷ { $use } a day = { $days }
working-water-mass = { $capacity } of fresh water × 0.998 kg/L = { $mass }
working-water-drunk = { $rest } a day at rest in temperate air become { $most } on a day of { $air } with the hours of work
working-water-least = { $planned } a person and day; people in an emergency are to have { $least } to { $most } for drinking, cooking and washing
working-water-boil = { $litres } a day to the boil, and for { $minutes_n ->
    [one] a minute
   *[other] { $minutes } minutes
} of boiling, with { $power } = { $energy }
working-water-filters = { $life } of filters ÷ { $litres } a day = { $days }
working-water-toilet = { $each } a person and day, for { $people_n ->
    [one] one
   *[other] { $people }
} = { $days }

## Space

standing-short-width = It does not fit as it stands. What is wrong is told below.
standing-short-warmer = Too cold on { $when }; { $margin } too cold at worst.
standing-short-data = First short on { $when }; { $margin } of data too little at worst.
standing-short-work = Data lasts. The first hour of work that lacks something is on { $when }.
standing-short-from = It does not work out from { $when } on.
standing-spare-warmer = { $margin } warmer than must be in the coldest night.
standing-spare-data = { $margin } left at the end of the tightest period.
standing-short-mass = Too heavy from { $when }; { $margin } too much at worst.
standing-spare-mass = { $margin } may still come in on the heaviest day.
standing-spare-width = It fits. { $margin } beyond the width you walk with, at the narrowest.
standing-spare-placed = It works out as it stands.

space-larger-than-van = { $name } is { $by } larger than the van, however it is turned.
next-space-larger-than-van = Measure both again. If it is right, it stays at home, or it comes apart.
space-sticks-out = { $name } sticks out of the floor by { $by }.
space-sticks-out-left = { $name } goes { $by } into the left wall, which leans in.
space-sticks-out-right = { $name } goes { $by } into the right wall, which leans in.
space-sticks-out-roof = { $name } is { $by } too high for the roof there.
space-overlaps = { $name } and { $other } are in one place: { $by } into each other.
space-cannot-open = { $name } cannot be opened: { $other } is { $by } in its way.
space-cannot-open-wall = { $name } cannot be opened: it would go { $by } into the wall.
space-cannot-open-roof = { $name } cannot be opened: it would go { $by } into the roof.
next-space-move = Move or turn one of them in the drawing, or let it be arranged for you.
space-way-too-narrow = To { $name } only { $widest } get through; you asked for { $wanted }.
space-cab-too-narrow = To the cab only { $widest } get through; you asked for { $wanted }.
space-way-close = To { $name } { $widest } get through: hardly more than the { $wanted } you asked for.
space-cab-close = To the cab { $widest } get through: hardly more than the { $wanted } you asked for.
next-space-way = The drawing shows the narrowest place. Move what stands there, or let it be arranged for you.
space-no-way-out = From { $name } no door can be reached at night.
space-one-way-out = From { $name } only one door can be reached at night.
next-space-way-out = Two ways out are wanted, for a fire or a door that jams. Keep a second one free.
space-bed-too-short = { $name } is { $by } longer than the bed.
space-bed-close = The bed is only { $spare } longer than { $name }.
next-space-bed = Lay the bed the other way, make it longer, or measure again with the mattress in place.
space-cannot-sit = { $name } cannot sit up in bed: { $by } are missing above the head.
next-space-sit = A lower bed, or sitting elsewhere.
space-over-a-head = { $name } is above where a head lies on { $bed }.
next-space-over-a-head = Turn the bed round, or keep only light, soft things there, bolted or tied.
space-not-apart = { $name } is closer to { $other } than { $distance }.
space-not-near = { $name } is farther from { $other } than { $distance }.
space-not-clear = Beside { $name }, { $distance } should be free and are not.
space-side-door-not-clear = Something stands inside the side door, where { $distance } should be free.
space-rear-door-not-clear = Something stands inside the rear door, where { $distance } should be free.
space-cab-door-not-clear = Something stands where one goes to the cab, where { $distance } should be free.
next-space-door-not-clear = Move it, or change how much is to be free inside that door.
next-space-distance = Move one of them, or change the distance under “Distances to keep”.
space-not-stowed = { $left } of { $goods } to be put away find no room.
space-nothing-to-stow-in = { $goods } are to be put away, and no box or room under a thing is told.
next-space-not-stowed = Give more things a place of their own, add a box, or leave something at home.
space-waiting = { $count_n ->
    [one] One thing has no place yet, or not all of its sizes are known.
   *[other] { $count } things have no place yet, or not all of their sizes are known.
}
next-space-waiting = Open it in the list below, or let all of it be arranged.
space-no-doors = No doors are told, so no way through the van is checked.
next-space-no-doors = Tell the doors under “Inside of the van”.
space-no-bed = Nothing is marked as a bed, so nobody’s sleep is checked.
space-nobody-sleeps = How tall those are who sleep there is not told.
next-space-nobody-sleeps = Add them under “Who sleeps here”.
space-uncounted = { $count } things at their places are too many and are not counted.
space-roof-below-body = The roof is lower than { $height }: one walks bent.

working-space-way = { $widest } at the narrowest place − { $wanted } asked for = { $spare }. The way is searched in all the free space, for a body as wide, past everything as high as it
working-space-storage = { $usable } can be filled ({ $percent } of boxes and of the room under things); { $goods } are to be put away

inside-arch-left = Wheel arch, left
inside-arch-right = Wheel arch, right

caution-flames-and-monoxide = Every flame and fuel heater can make carbon monoxide, which cannot be smelled and kills asleep. A working alarm beside where you sleep, a fixed opening to the outside, an extinguisher within reach, and what the maker’s manual says; gas and heaters are fitted by licensed trades.
caution-cooking-flame = Never use a cooking flame to heat the room, and never sleep with one burning. Cook beside an open window or door, away from curtains and bedding.
caution-closed-air = A closed van fills with carbon dioxide while people sleep in it, and a flame takes its oxygen too. The numbers come from openings and wind as stated; the limits shown are for healthy people at work. Keep a fixed opening free, and check that it really is.
caution-heat-inside = A parked van in the sun gets dangerously hot within minutes. Never leave people or animals in it, whatever is computed here. Dizziness, cramps or confusion in heat: out, cool down, call for medical help.
caution-cold-inside = Cold can kill: wet clothes, shivering that stops and confusion are signs. The computed temperature is an estimate; bedding differs. Have a warmer way out for the coldest nights.
caution-insulation-fire = Foams and fabrics burn, some fast and with poisonous smoke. Look for the fire rating on the label, keep them covered and away from flames, heaters and hot wires; local codes say what is allowed.
caution-water-treated = Boiling kills germs and takes out no salt, fuel, metal or poison; a filter does what its label says, until its date, and not after it froze. Ask the health authority about local water; clean cans, and change water that has stood for days.
caution-toilet-waste = Empty toilets and bags only where it is allowed, never on the ground or into water. Wash hands with soap; waste carries disease. Local rules decide.
caution-blocked-exits = Two ways out must stay free at night, and they must open from inside. A drawing does not show what slides, jams or burns.
caution-above-a-head = Nothing heavy or hard above a sleeper’s head, however well it is held.
caution-wires-and-fuel-lines = Before a hole is drilled: wires, fuel and brake lines, airbags and what holds the body together lie behind panels and under floors. Ask a workshop; rules for vehicles differ from place to place.

page-space = Space
page-inside = Inside of the van
space-to-inside = Measure the inside: floor, doors, walls, roof
space-to-load = What it weighs, axle by axle
space-to-taping = Taping sheet: lay it out on a floor
space-drawing = From above
space-drawing-label = The van from above, front at the top, with { $count_n ->
    [one] one thing
   *[other] { $count } things
}. All of it is also in the list below.
space-drawing-hint = Drag things with a finger or the mouse. With the keyboard: arrow keys move by 10 mm, with shift by 100, R turns.
space-movable = thing that can be moved
space-front = front
space-rear = rear
space-bigger = Closer
space-smaller = Farther
space-whole = All of it
space-selected-none = Tap a thing to move it, turn it or change it.
space-thing-at = { $name }: { $x } from the front, { $y } from the left, { $length } × { $width }.
space-thing-meets = It meets { $names }.
space-thing-meets-built-in = the van itself
space-thing-out = It sticks out of the van.
space-thing-clear = It is free there.
space-turn = Turn by a quarter
space-move-front = Forward
space-move-rear = Back
space-move-left = Left
space-move-right = Right
space-take-out = Take it out
space-taken-out = { $name } has no place in the van any more.
space-open-fields = All about this thing
space-put-in = Put a thing of the kit in
space-put-in-choose = Thing
space-put-in-add = Put it in
space-put-in-none = All things of the kit that have sizes have a place. Sizes are told in the kit.
space-was-put-in = { $name } has a place.
space-side = From the side
space-side-label = The van from the left, front to the left, with the heights of all things.
space-ways = Ways through the van
space-way-row = { $to }, from { $door }: { $widest } wide, { $says }
space-way-cab = to the cab
space-way-thing = to { $name }
space-way-out = { $name } to { $door }, at night: { $widest } wide, { $says }
space-way-door-side = the side door
space-way-door-rear = the rear door
space-way-door-cab = the cab
space-way-passes = passes
space-way-fails = too narrow
space-ways-none = No ways are checked until there are doors, and a bed or something that must be reached.
space-walker = Who walks
space-walker-usual = Left empty: { $width } wide and { $height } high.
space-sleepers = Who sleeps here
space-sleepers-add = Add one who sleeps here
space-sleeper-spare = { $spare } to spare
space-sleeper-short = { $by } too short
space-storage = Room to put things
space-storage-row = { $level }: { $free } free, of it { $usable } to be filled
space-storage-none = No boxes, and no room under things, is told: “Free under it” and “What goes into it”.
space-storage-goods = To be put away: { $goods }.
space-storage-unknown = { $count_n ->
    [one] Of one thing more nobody knows the size.
   *[other] Of { $count } things more nobody knows the size.
}
space-things = Things at their places
space-things-none = Nothing has a place yet. Put things of the kit in, or begin with a usual van.
space-thing-line = { $x } from the front, { $y } from the left
space-thing-line-none = no place yet
space-distances = Distances to keep
space-distances-hint = A hob away from a curtain, a gap for a cool box to breathe, a shelf near the bed.
space-distances-add = Add a distance
space-arrange = Arrange it for me
space-arrange-hint = Everything that is not pinned is moved about the floor until it fits, with the ways and the distances kept. What stands on or under a thing moves along.
space-arrange-go = Look for arrangements
space-arrange-found = { $count_n ->
    [one] One arrangement fits.
   *[other] { $count } different arrangements fit.
}
space-arrange-impossible = There is no arrangement: that is proven. Something has to go, be smaller, or be walked past more narrowly.
space-arrange-not-found = None was found in the time. There may still be one.
space-arrange-nothing = Nothing on the floor may be moved: all of it is pinned.
space-arrange-take = Take this one
space-arrange-taken = All is arranged anew.
space-arrange-picture = Arrangement { $number }
space-back = To the drawing
space-opened = Folded out or pulled open

inside-measures = Measures
inside-usual = A usual van of this size
inside-usual-hint = Doors, wheel arches and leaning walls as they usually are in a van of this size. All of it is a guess until you measure.
inside-usual-put = Begin with a usual van
inside-usual-done = The inside is that of a usual van. Measure what matters.
inside-doors = Doors
inside-doors-add = Add a door
inside-built-ins = Wheel arches and what is built in
inside-built-ins-add = Add a part
inside-walls = Leaning walls
inside-walls-hint = How far each wall comes in, by height. Straight between two rows.
inside-walls-add = Add a height
inside-roof = Roof
inside-roof-hint = How high it is inside, from the front on. Straight between two places.
inside-roof-add = Add a place
inside-corners = Floor with other corners
inside-corners-hint = Only if the floor is no rectangle: its corners in order, each from the front and from the left.
inside-corners-add = Add a corner
inside-corners-four = Begin with four corners
inside-corner = Corner { $number }
inside-origin = All is measured from the front left corner of the floor, as one looks the way the van drives.
inside-wall-row = at { $height }
inside-door-line = { $width } × { $height }

sheet-taping = Taping sheet
taping-van = The van
taping-how = Measure from the corner with the ring in the drawing: first along, then across. A pair of numbers is where it begins and where it ends. The straight way to the farthest corner is a check of the angle. Lay the tape in this order.
taping-from = Measured from
taping-corner = Corner { $number }
taping-along = Along, { $unit }
taping-across = Across, { $unit }
taping-straight = Straight, { $unit }
taping-mark = Mark
taping-empty = Nothing has a place yet, so there is only the floor to tape.
taping-caution = Tape can take paint off a floor, and people trip over edges: try it in a corner first.

section-corners = Corners of the floor
section-placements = Things at their places

problem-outline-crosses = The outline crosses or touches itself here, from corner { $corner } on. The corners must be in order round the floor.
problem-outline-flat = This outline encloses nothing, or goes back the way it came. At least three corners, round the floor, are wanted.
problem-door-past-wall = There is no straight wall on that side that is long enough for this door there.

share-tells-room = How the van is inside, and what stands where in it.
problem-not-a-year = The hours of this typical year cannot be read. Take it out and read its file in again.
share-tells-latitudes = Where places are, by degrees north: { $count }.
share-tells-charging = Where to charge: { $count }.
share-tells-sleepers = { $count_n ->
    [one] Who sleeps in the van: one person, and how tall.
   *[other] Who sleeps in the van: { $count } people, and how tall.
}

field-body-width-mm = Width to walk with
field-body-height-mm = Height to walk with
field-strap-limit-kg = Working load limit of a strap
field-strip-holds-kg = One strip or hook holds
field-strip-times = Strips must hold, times what is needed
field-strip-heat-percent = On a hot day a strip still holds
field-is-weighed = That was read off a scale
field-weighed-people = People in it then
field-weighed-fuel-percent = Fuel in its tank then
field-empty-front-kg = Of it, on the front axle
field-empty-left-kg = Of it, on the left wheels
field-front-limit-kg = The front axle may bear
field-rear-limit-kg = The rear axle may bear
field-wheelbase-mm = Front axle to rear axle (wheelbase)
field-rear-overhang-mm = Rear axle to the end of the van
field-track-mm = Left wheels to right wheels (track)
field-floor-from-axle-mm = Front axle to the front of the floor
field-seats-from-axle-mm = Front axle to the middle of the seats
field-person-kg = Mass of a person
field-tank-l = The fuel tank holds
field-burns = It burns
field-luggage-kg = Keep free for luggage
field-extra-kg = More in the van with it
field-holds-l = What goes into one
field-packed-l = Room it takes, packed soft
field-x-mm = From the front
field-y-mm = From the left
field-base-mm = Begins above the floor
field-side = In which side
field-from-mm = Begins (from the front; at the rear or front: from the left)
field-clear-mm = Free inside it
field-left-in-mm = Left wall comes in
field-right-in-mm = Right wall comes in
field-level = Where it belongs
field-turn-deg = Turned
field-stands = It stands
field-pinned = Keep it where it is
field-clear-under-mm = Free under it
field-reached = One must get to it
field-sleeps = Sleep on it
field-head = The heads are
field-fastened = Held by
field-opened-x-mm = Open: begins along it
field-opened-y-mm = Open: begins across it
field-opened-length-mm = Open: length
field-opened-width-mm = Open: width
field-opened-base-mm = Open: begins above the floor
field-opened-height-mm = Open: height
field-opened-with-others = Open while others are
field-sitting-mm = Height sitting, seat to crown
field-bed = Sleeps on
field-of = Which thing
field-of-side = Which part of it
field-keeps = What is to be kept
field-other = The other thing
field-other-side = Which part of that
field-distance-mm = How far
choice-level-floor = on the floor
choice-level-under-bed = under the bed
choice-level-counter = on another thing
choice-level-wall = on a wall
choice-level-roof = under the roof
choice-level-outside = outside
choice-side-left = left
choice-side-right = right
choice-side-rear = rear
choice-side-front = front, to the cab
choice-stands-flat = as its sizes say
choice-stands-on-edge = on its edge
choice-stands-on-end = on its end
choice-head-start = at its first end
choice-head-end = at its other end
choice-fastened-nothing = nothing yet
choice-fastened-straps = straps
choice-fastened-wedged = wedged in
choice-fastened-bolted = bolts or screws
choice-fastened-strips = strips or hooks
choice-keeps-apart = away from the other
choice-keeps-near = near to the other
choice-keeps-clear = free beside it
choice-of-side-whole = all of it
choice-of-side-start = its first end
choice-of-side-end = its other end
choice-of-side-left = its first long side
choice-of-side-right = its other long side
choice-other-side-whole = all of it
choice-other-side-start = its first end
choice-other-side-end = its other end
choice-other-side-left = its first long side
choice-other-side-right = its other long side
choice-burns-diesel = diesel
choice-burns-petrol = petrol

## Load

load-over-gross = On { $on } the van weighs { $by } more than the { $gross } it may.
load-over-gross-full = With all tanks full the van weighs { $by } more than the { $gross } it may.
next-load-over-gross = Leave something heavy at home, carry less water while you drive, or weigh the van: a scale may know better than papers.
load-luggage-over = Of the { $luggage } you want to keep free, { $by } are taken.
next-load-luggage-over = Leave something at home, or keep less free.
load-close-to-gross = Only { $spare } of the { $gross } the van may weigh are left at its heaviest.
load-front-over = At its heaviest, the front axle bears { $by } more than the { $limit } it may.
next-load-front-over = Move heavy things towards the rear axle, or leave some at home.
load-rear-over = At its heaviest, the rear axle bears { $by } more than the { $limit } it may.
next-load-rear-over = Move heavy things forward, most of all what stands behind the rear axle: it also lifts the front.
load-front-light = The front axle, which steers, bears only { $percent } of the whole.
load-uneven = The left wheels bear { $left }, the right ones { $right }.
next-load-uneven = Move heavy things, or a full can, to the lighter side.
load-highest-mass = If everything is as heavy as it could be, the van weighs { $high }: { $by } more than it may.
load-mass-unknown = { $count_n ->
    [one] The mass of one thing is not known and counts as nothing.
   *[other] The masses of { $count } things are not known and count as nothing.
}
next-load-mass-unknown = Weigh what you can; bathroom scales will do, with and without the thing in your arms.
load-not-weighed = The { $empty } of the empty van are stated, not weighed. Vans often weigh more than their papers say.
next-load-not-weighed = A public weighbridge costs little. Weigh each axle too, and note who sat in the van and how full the tank was.
load-axles-unknown = { $count_n ->
    [one] What each axle bears is not known: one measure of the van is missing.
   *[other] What each axle bears is not known: { $count } measures of the van are missing.
}
next-load-axles-unknown = It takes the wheelbase, how far behind the front axle the floor begins, and what the front axle of the empty van bears.
load-floor-beyond-van = By these measures the floor would reach { $by } beyond the end of the van.
next-load-floor-beyond-van = Measure again: the wheelbase, the overhang, where the floor begins, or how long it is.
load-fuel-unknown = It is not known what the fuel tank holds, so the fuel counts as it was when the van’s mass was taken: { $percent } full.
next-load-fuel-unknown = The van’s manual says what the tank holds.
load-unfastened = “{ $name }”, { $mass }, is held by nothing while the van drives.
load-unfastened-others = “{ $name }”, { $mass }, and { $count_n ->
    [one] one other heavy thing are held by nothing while the van drives.
   *[other] { $count } other heavy things are held by nothing while the van drives.
}
next-load-unfastened = Strap it to anchors, wedge it between what is fastened, or say what holds it already, under Space.
load-strips-alone = “{ $name }” would hang by strips alone, above or beside “{ $bed }”, where somebody sleeps.
next-load-strips-alone = Hold it with screws or straps, or let it travel on the floor.
load-strips-too-many = “{ $name }” would take { $strips } strips: too heavy for them.
load-strips-not-rated = { $count_n ->
    [one] One thing hangs by strips, and it is not known what a strip holds.
   *[other] { $count } things hang by strips, and it is not known what a strip holds.
}
next-load-strips-not-rated = Its packet says so. Half of that is left on a hot day, more or less.

working-load-total = { $empty } empty + { $people } of people + { $fuel } of fuel, the tank full + { $things } of things + { $water } of water = { $total }
working-load-spare = { $gross } allowed − { $total } − { $luggage } to be kept free = { $spare }
working-load-axles = Each mass × its distance behind the front axle, summed and divided by the wheelbase, rests on the rear axle, up to { $rear }; the rest on the front one, up to { $front }
working-load-tying = “{ $name }”, { $mass }, pushes forward with { $force } when the van brakes at 0.8 of gravity

leaving-round = Walk round the van once: nothing leans on it, lies under it or stands behind it.
leaving-thing-outside = “{ $name }” is brought in, or tied on as its maker says.
leaving-mains-lead = The mains lead is out of the socket, off the ground and stowed.
leaving-used-water = Used water is emptied where that is allowed, and its tank is shut.
leaving-openings = Roof openings and windows are shut.
leaving-steps = Steps and chocks are in.
leaving-latch = “{ $name }” is latched, tied or down on the floor.
leaving-close = “{ $name }” is closed and stays closed.
leaving-can = “{ $name }” is shut, upright and held.
leaving-unplug = “{ $name }” is unplugged from the mains or switched off.
leaving-flames = Every flame is out, every gas valve shut, and what was hot has cooled.
leaving-loose = Nothing heavy lies loose or above a head; doors and drawers stay shut when you shake them.
leaving-dashboard = Nothing lies on the dashboard, in front of an airbag or near the pedals.
leaving-seats = { $people_n ->
    [one] The seat is free, its belt runs straight and is fastened.
   *[other] { $people } seats are free, their belts run straight and are fastened.
}
leaving-load = Has anything heavy come aboard? With everybody in it, the van may weigh { $gross }.
leaving-handbrake = Last of all: mirrors, lights, and the handbrake off.

page-load = Load
load-to-space = Where everything stands
load-parts = The heaviest day
load-parts-none = What the empty van weighs is not told yet: below.
load-part-empty = Empty van
load-part-people = People
load-part-fuel = Fuel, tank full
load-part-things = Things
load-part-water = Water, fresh and used
load-part-all = Together
load-worst-on = That is { $on }.
load-range = With all masses at their lowest { $low }, at their highest { $high }.
load-unplaced = { $mass } of that have no place yet and count in the middle of the floor.
load-plot = What may still come in, by day
load-axles = Axles and sides, at their heaviest
load-axles-none = It takes the wheelbase, where the floor begins, and what the front axle of the empty van bears: below.
load-axle-front = Front axle
load-axle-rear = Rear axle
load-axle-spare = { $mass } to spare
load-axle-over = { $mass } too much
load-axle-no-limit = limit not told
load-side-left = Left wheels
load-side-right = Right wheels
load-leaving = Before driving off
load-leaving-outside = Round the van
load-leaving-inside = Inside, from the rear to the front
load-leaving-driver = At the wheel
load-leaving-left = { $count_n ->
    [one] One is left to look at.
   *[other] { $count } are left to look at.
}
load-leaving-done = All of it is ticked. It names what the plan knows of; look round once more.
load-leaving-again = Begin again
load-tying = What keeps it in place
load-tying-none = Nothing heavy has a place yet.
load-tying-how = When the van brakes hard, everything goes on at 0.8 of its weight. These are the forces, and what straps must carry by the rules for cargo; anchors must carry as much.
load-tying-name = { $name }, { $mass }, held by: { $held }
load-tying-forces = Forward { $forward }, to a side { $sideways }, up { $up }. Straps with working load limits of { $limit } in all.
load-tying-straps = { $ties_n ->
    [one] One of your straps.
   *[other] { $ties } of your straps.
}
load-tying-fewest = { $ties_n ->
    [one] At least one tie-down.
   *[other] At least { $ties } tie-downs.
}
load-tying-strips = { $strips_n ->
    [one] One strip or hook.
   *[other] { $strips } strips or hooks.
}
load-builds = What a heavier build would leave
load-builds-none = No way of building has a mass yet: tell “More in the van with it” under
load-van = What it weighs
load-axle-measures = Axles
load-fastening = Straps and strips at hand
load-fastening-usual = Left empty: strips must hold { $times } times what is needed, and hold { $percent } on a hot day.
load-van-usual = Left empty: { $person } a person, the tank { $percent } full when it was weighed, diesel, nothing kept free.
load-axles-usual = Left empty: the seats { $seats } behind the front axle, the left wheels bear half.
sheet-leaving = Before driving off

## Days

days-not-ready = Not all is done when you leave: “{ $last }” is, with all that must be done, on { $finish }. { $days } are missing.
next-days-not-ready = Find one more pair of hands, leave a task out or for the road, begin earlier, or stay longer: below is what each saves.
days-close-to-leaving = All is done on { $finish }, { $days } before you leave. “{ $last }” comes last.
next-days-close-to-leaving = One day of rain or one tool that comes late uses that up. See below what would save days.
days-block-nobody-has = “{ $name }” needs “{ $what }”, and nobody has it yet.
days-block-tool-gone = “{ $name }” needs “{ $what }”, which is not there on any day ahead.
days-block-item-left-out = “{ $name }” needs “{ $what }”, which is left out or was not bought.
days-block-too-few-hands = “{ $name }” needs more hands than are ever there at once.
days-block-nobody-skilled = “{ $name }” needs somebody who has done it before, and nobody of the helpers has.
days-block-never-together = “{ $name }” needs people, tools and hours that are never there at the same time.
days-block-too-long = “{ $name }” does not fit into the days ahead: after what comes before it, there are too few hours with who and what it needs.
days-block-circle = “{ $name }” waits for itself by way of other tasks.
days-block-behind = “{ $name }” comes after “{ $what }”, which cannot be done.
next-days-blocked = Open the task under “Tasks, people, tools” and change what it needs, who helps, or when the tool is there.
days-money-not-there = “{ $name }” needs “{ $item }”, which is to be paid on { $on }: the money is not there that day.
next-days-money-not-there = Buy it later and move the task, borrow it, or bring in money before that day.
days-item-awaited = The date hangs on “{ $item }”: “{ $name }” can begin on { $on } and no earlier.
next-days-item-awaited = Get it some days earlier, and all that follows moves with it, if the money bears it.
days-no-end = { $count_n ->
    [one] One thing at home has no end yet: it is neither carried, sold, lent, stored, given nor thrown away. { $days } are left.
   *[other] { $count } things at home have no end yet: they are neither carried, sold, lent, stored, given nor thrown away. { $days } are left.
}
next-days-no-end = Decide where each ends, so that the flat is empty on the day you hand over the keys.

working-days-chain = { $chain }: { $hours } of work one after another from { $from }, with what each waits for, end on { $finish }
working-days-leave = { $late } not done × (1 + { $extra }) = { $hours } on the road; at { $a_day } on an average day that is { $days }, each { $road } on the road and { $bench } for a place to work: { $cost }
working-days-stay = Done on { $finish }, so { $days } longer × { $a_day } a day at home = { $cost }
working-days-storing = { $monthly } a month × { $months } + { $bringing } for bringing it = { $rent }, against { $replaces } to buy it again − { $sale } from its sale = { $again }

task-clean = Clean the van
task-measure = Measure it and tape its outline on a floor
task-seal = Find leaks and rust, seal them
task-floor = Lay the floor
task-bed-cut = Cut the bed
task-bed-fit = Put the bed in
task-shelves = Build shelves
task-covers = Make covers for the windows
task-store = Charge the power store and try everything on it
task-fasten = Fasten what is heavy
task-alarms = Put up the alarms
task-trial-night = Sleep one night in it
task-pack = Pack
task-flat = Clean the flat and hand it over
tool-tape = Tape measure
tool-saw = Saw
tool-drill = Drill
task-of-made = Make: { $name }
task-of-vehicle = Fit: { $name }
task-of-safety = Put up: { $name }
task-of-store = Charge and try: { $name }
task-of-heavy = Fasten: { $name }

## Receipts

receipts-item-missing = “{ $name }” is planned for just { $amount } and is on no line.
receipts-counted-twice = “{ $name }” may stand here twice.
receipts-digits-swapped = “{ $name }” may be { $to }, with two digits swapped.
receipts-total-digits-swapped = The total may be { $to }, with two digits swapped.
receipts-mark-misplaced = “{ $name }” may be { $to }, with the decimal mark elsewhere.
receipts-total-mark-misplaced = The total may be { $to }, with the decimal mark elsewhere.
receipts-tax-left-out = “{ $name }” may be without its tax of { $percent }.
receipts-all-tax-left-out = The lines may be without the tax of { $percent }.
receipts-tax-too-much = “{ $name }” may have a tax of { $percent } in it that the total has not.
receipts-all-tax-too-much = The lines may have a tax of { $percent } in them that the total has not.
receipts-sign-turned = “{ $name }” may be money that came back, or the other way round.
receipts-charged-twice = “{ $name }” may have been charged once more than it stands here.
receipts-line-too-many = “{ $name }” may not belong here.
receipts-rounded = The total may be rounded to { $to }.
receipts-line-missing = A line of { $amount } may be missing.
receipts-reduction-missing = A reduction of { $amount } may be missing.
receipts-row-above-headings = It stands above the headings.
receipts-row-cells = It has { $found } cells, not { $expected }.
receipts-row-quote-open = A quote in it is never closed.
receipts-row-no-amount = There is no amount in it.
receipts-row-not-an-amount = “{ $column }” is no amount like the others.
receipts-row-other-currency = “{ $column }” is of another currency than { $currency }.
receipts-row-too-much = “{ $column }” is more than a plan takes.
receipts-row-not-a-day = “{ $column }” is no day like the others, or is empty.
receipts-row-not-an-item = “{ $column }” is no number of a thing in the kit.
receipts-row-not-yes-or-no = “{ $column }” is neither yes nor no.
receipts-row-waits = It waits for your answer above.
receipts-ask-order = “{ $example }”: which number is the day?
receipts-ask-decimal = “{ $example }”: what stands before the decimals?
receipts-ask-amount = Which column holds what was paid?
receipts-file-too-long = This is too long: at most { $most } bytes are read. Split it.
receipts-file-too-many-rows = At most { $most } rows are read. Split it.
receipts-file-empty = Nothing is in it.
receipts-column-day = Day
receipts-column-amount = Paid
receipts-column-back = Came back
receipts-column-total = Total of the receipt
receipts-column-name = What
receipts-column-place = Where
receipts-column-item = Number in the kit
receipts-column-receipt = Number of the receipt
receipts-column-currency = Currency
receipts-column-nothing = (left out)

## Files of typical years

typical-neither-format = Line { $line }: This begins neither as a TMY3 file nor as an EPW file does. Choose a file of one of these, as it came.
typical-no-column = Line { $line }: There is no heading “{ $column }”, as a TMY3 file has. Choose the file as it came.
typical-too-short = Line { $line } ends before “{ $column }”. Choose the file as it came; this one may be cut off.
typical-not-a-number = Line { $line }: “{ $text }” stands for “{ $column }” and is no number such as 12.5.
typical-out-of-range = Line { $line }: { $value } stands for “{ $column }”, which is { $least } to { $most }.
typical-not-a-day = Line { $line }: “{ $text }” is no day: a month of 1 to 12, a stroke, and a day of 1 to 31.
typical-not-an-hour = Line { $line }: “{ $text }” is no hour of 1 to 24.
typical-too-many-lines = Line { $line }: No more than { $most } lines are read. Choose a file with a line an hour.
typical-nothing = Line { $line } is the last, and no day of month { $month } has “{ $column }” for hour { $hour }. A whole year has each hour of each month.

## In the shop

shop-road-days = { $days } on the road
shop-no-road-cost = The plan knows of nothing that a day on the road costs: give it running costs or the price of a night.
shop-runs-out-the-same = Cash falls below your floor on { $after }, as in the plan so far.
shop-runs-out-earlier = Cash falls below your floor on { $after } instead of { $before }: { $days } earlier.
shop-runs-out-later = Cash falls below your floor on { $after } instead of { $before }: { $days } later.
shop-runs-out-now = Cash would fall below your floor on { $after }; in the plan so far it does not.
shop-runs-out-no-longer = Cash would no longer fall below your floor; in the plan so far it does on { $before }.
shop-never-runs-out = Cash stays above your floor to the last day of the plan, { $ends }, with { $left } to spare that day.
shop-never-runs-out-days = Cash stays above your floor to the last day of the plan, { $ends }. What is above it then, { $left }, would pay for { $days } more without income.
shop-lowest = Lowest day of cash: { $lowest } on { $on }, { $margin } above your floor. In the plan so far: { $before }.
shop-lowest-below = Lowest day of cash: { $lowest } on { $on }, { $margin } below your floor. In the plan so far: { $before }.
shop-cash-not-known = How much cash there is, or a day that is still ahead, is missing from the plan: what is left after buying cannot be said.
shop-unit-price = This one: { $price }.
shop-other-unit-price = The other: { $price }.
shop-first-cheaper = This one is cheaper: a unit costs { $percent } less, { $saved } on what you buy here.
shop-second-cheaper = The other is cheaper: a unit costs { $percent } less, { $saved } on as much as you buy here.
shop-same-price = Both cost the same.
shop-not-alike = The two packs cannot be compared: give both in units of the same kind.
shop-group = { $with } in all with it, { $foreseen } in the plan so far. Paid before: { $paid }. Still to pay after it: { $left }.
shop-power-moves = Power: { $after } to spare instead of { $before }.
shop-water-moves = Water: { $after } to spare instead of { $before }.
shop-mass = It weighs { $mass }. All things of known mass then weigh { $carried }.
shop-volume = It takes the room of { $volume }.

working-shop-tax-added = { $net } + { $rate } % tax, { $tax } = { $total }
working-shop-tax-included = { $total } with { $rate } % tax in it: { $net } + { $tax }
working-shop-road-day = { $monthly } a month on the road ({ $names }) ÷ 30.44 days + { $night } for a night on average over { $nights } = { $day } a day. Income and things bought once are not in it.
working-shop-road-fuel = Of the month, { $fuel } is fuel for the distances of your route
working-shop-road-days = { $price } ÷ { $day } a day = { $days }

## Sharing

share-not-a-link = This link holds no plan of this kind. It may be cut off: copy it once more, from its first to its last character.
share-too-long = This link is longer than is read: at most { $most } characters.
share-newer = This link was made by a newer version. Load this page again while you have signal, then open the link once more.
share-damaged = A piece of this link is missing or was changed on its way. Copy it once more, from its first to its last character.
share-too-much = This holds more than a link can. Share a part of the plan, or send its file.

share-tells-plan = The name of the plan, its currency, and how many people travel.
share-tells-things = { $count_n ->
    [one] One thing by its name, with what is known of it.
   *[other] { $count } things by their names, with what is known of each.
}
share-tells-title = The name of the plan.
share-tells-thing-names = { $count_n ->
    [one] The name of one thing that the work needs.
   *[other] The names of { $count } things that the work needs.
}
share-tells-tasks = { $count_n ->
    [one] One task, with how long it takes.
   *[other] { $count } tasks, with how long each takes.
}
share-tells-needs = { $count_n ->
    [one] What one task needs.
   *[other] What the tasks need, { $count } entries.
}
share-tells-tools = { $count_n ->
    [one] One tool or place by its name, and on which days it is there.
   *[other] { $count } tools and places by their names, and on which days they are there.
}
share-tells-helpers = { $count_n ->
    [one] The name of one who works on the van, with their hours.
   *[other] The names of { $count } who work on the van, with their hours.
}
share-tells-other-days = { $count_n ->
    [one] One day off, or a day with other hours.
   *[other] { $count } days off, or with other hours.
}
share-tells-building = When the van is there to be worked on, and what else you entered about building it.
share-tells-lenders = { $count_n ->
    [one] The name of one who lends something.
   *[other] Who lends something: { $count } names.
}
share-tells-notes = { $count_n ->
    [one] One note, word for word.
   *[other] { $count } notes, word for word.
}
share-tells-places = { $count_n ->
    [one] One place you stay at, and for how many nights.
   *[other] { $count } places you stay at, and for how many nights.
}
share-tells-week = What your usual week looks like.
share-tells-days = { $count_n ->
    [one] One day of your calendar.
   *[other] { $count } days of your calendar.
}
share-tells-van = The sizes, weights and socket of the van, as far as they are entered.
share-tells-water-uses = { $count_n ->
    [one] What water is used for, and how much: one use.
   *[other] What water is used for, and how much: { $count } uses.
}
share-tells-readings = { $count_n ->
    [one] What you counted on one day.
   *[other] What you counted, { $count } times.
}
share-tells-sales = { $count_n ->
    [one] One thing of your home that you sell.
   *[other] { $count } things of your home that you sell.
}
share-tells-incomes = { $count_n ->
    [one] One income by its name.
   *[other] { $count } incomes by their names.
}
share-tells-costs = { $count_n ->
    [one] One running cost by its name.
   *[other] { $count } running costs by their names.
}
share-tells-purchase = What you pay for the van.
share-tells-loans = { $count_n ->
    [one] One loan by its name.
   *[other] { $count } loans by their names.
}
share-tells-wish = What your sales are to bring, and by when.
share-tells-builds = { $count_n ->
    [one] What you weigh up about building and leaving: one entry.
   *[other] What you weigh up about building and leaving: { $count } entries.
}
share-tells-receipts = { $count_n ->
    [one] One receipt: where, when and for what.
   *[other] { $count } receipts: where, when and for what.
}
share-tells-cash = How much cash you have.
share-tells-amounts = { $count_n ->
    [one] One amount of money.
   *[other] { $count } amounts of money.
}
share-tells-unknown = { $count_n ->
    [one] One field that a newer version added and this one does not know.
   *[other] { $count } fields that a newer version added and this one does not know.
}
share-tells-no-money = No amounts, no incomes, costs or sales.
share-tells-nothing-else = Nothing else of the plan.
share-tells-name = The name you put under it.
share-tells-marks = { $count_n ->
    [one] What you can lend or do: one thing.
   *[other] What you can lend or do: { $count } things.
}
share-tells-said = { $count_n ->
    [one] What you say to one of them.
   *[other] What you say to { $count } of them.
}
share-tells-own-hours = When you can help: your hours, your first and last day.
share-tells-own-days = { $count_n ->
    [one] One day on which it is otherwise with you.
   *[other] { $count } days on which it is otherwise with you.
}
share-tells-lent = { $count_n ->
    [one] One tool you can lend, and on which days.
   *[other] { $count } tools you can lend, and on which days.
}
share-tells-nothing-of-yours = Nothing of your own plans.

## The page that shares

share-hint = A link holds the plan itself. It goes from you to your friend; nobody stores it in between.
share-what = What to share
share-whole = The whole plan
share-kit = The kit
share-shopping = The shopping list
share-borrowing = What to borrow
share-helper = What one helper needs to know
share-who = Who helps
share-money = With amounts of money
share-tells = What it tells
share-for-ever = Whoever has the link can read this, and a link that was sent cannot be called back.
share-way = Send it
share-send = Send the link
share-copy = Copy the link
share-copied = The link is copied.
share-copy-by-hand = This browser does not let the page copy. The link below is selected: copy it with the menu of your device.
share-link = The link
share-codes = To be photographed
share-code-hint = Let your friend point the camera of a phone at this code.
share-codes-hint = This is more than one code holds. Let your friend photograph all of them, in any order, each with the camera of the same phone.
share-code = QR code of the link
share-code-of = QR code { $number } of { $count }
share-code-before = Code before
share-code-next = Next code
share-code-text = The link in this code, as text
share-to-open = Open what a friend sent you

## The page that opens

open-hint = Here you open a plan that a friend sent you, or an answer to yours. Nothing of your own is changed by looking.
open-paste = The link, or the whole message it came in
open-it = Open
open-unchanged = Nothing of yours was changed.
open-parts-waiting = { $have } of { $count } codes are here. { $missing_count_n ->
    [one] Still missing: code { $missing }.
   *[other] Still missing: codes { $missing }.
}
open-parts-hint = Photograph the missing codes with this phone, or paste their links here. What came so far is kept.
open-parts-damaged = All the codes are here, but one of them was changed on its way. Photograph or paste them all once more.
visitor-hint = This is a copy to look at. Your own plans stay as they are.
visitor-no-money = It came without amounts of money.
visitor-part = Only a part of the plan was sent, so there are no verdicts.
visitor-keep = Keep it as a plan of mine
visitor-compare = Compare it with “{ $title }”
visitor-verdicts = Where it stands
visitor-answer = What you can do
visitor-answer-hint = Say what you can lend, or do: make it, fit it, fetch it. Then send your answer back. It is kept here while you think.
visitor-there = What is there already
mark-nothing = (nothing)
mark-lend = I can lend it
mark-do = I can do it
mark-says = What you say to “{ $name }”, if anything
reply-send = Your answer
reply-none = Nothing is offered yet: choose it above.
reply-from = Your name, as your friend knows you
reply-no-name = Without your name your friend does not know whom to ask. A first name will do.
reply-make = Make it a link
helping-from = The van is there from { $on }.
helping-until = It is to be done before { $on }.
helping-after = After: { $names }
helping-hint = Say when you can help and what you can lend. Then send your answer back. It is kept here while you think.
helping-hours = When you can help
helping-day-back = As always on that day
helping-tools = What you can lend
helping-tool-add = Lend another tool
helping-tool-out = Not after all
compare-title = What is different
compare-answer-from = An answer from { $from }
compare-somebody = somebody without a name
compare-with = Held against your plan
compare-other-title = It was made for “{ $title }”. If that is another of your plans, choose it here.
compare-offers = What is offered
compare-of-nothing = { $count_n ->
    [one] Your plan does not have this any more: { $names }.
   *[other] Your plan does not have these any more: { $names }.
}
offer-lend = { $name }: can lend it
offer-lend-says = { $name }: can lend it. “{ $says }”
offer-do = { $name }: can do it
offer-do-says = { $name }: can do it. “{ $says }”
compare-differences = To take or to leave
compare-hint = Tick what you want to take. What you leave stays as it is.
compare-same = Nothing in it differs from this plan.
compare-take = { $count_n ->
    [one] Take { $count } change
   *[other] Take { $count } changes
}
compare-taken = { $count_n ->
    [one] { $count } change is taken.
   *[other] { $count } changes are taken.
}
compare-all = Tick all
compare-none = Tick none
compare-not-possible = These cannot be taken together: a new entry has the number of one that is here. Take what is no longer there first, or leave the new entry.
compare-change = { $here } → { $there }
compare-added = New: { $name }
compare-removed = No longer there: { $name }
compare-order = Another order: { $name }
compare-guesses = Which values are guesses

## Values of fields

value-none = nothing
value-range = { $likely } ({ $low } to { $high })
value-filled = filled in

## Sources

source-arithmetic = arithmetic
source-common-practice = common practice, no source
source-published = source: { $name }

## Cautions

caution-store-heat-and-frost = Lithium stores are harmed by heat and must not be charged in frost, and a damaged one can burn. Keep it where its maker’s manual says.
caution-charging-unattended = Charge where you can watch it, on something that does not burn, with the vents free. The maker’s manual goes before anything here.
caution-extension-leads = Unroll extension leads, never plug one into another, and keep plugs dry. Fixed wiring belongs to a licensed electrician.
caution-engine-while-parked = Never run the engine to charge while parked in a closed place or while anyone sleeps: exhaust contains carbon monoxide, which kills unnoticed.
caution-panels-on-roofs = What a roof bears, with wind and braking, is in the van’s papers. Holes let water in and meet wires; glued or clamped panels come off. Who is unsure asks a workshop, and a licensed electrician for fixed wiring.
caution-generator-fumes = A generator’s exhaust contains carbon monoxide, which kills unnoticed. Only outside, far from every opening of the van and of others, never in rain, never while anyone sleeps beside it. Many places forbid it.
caution-water-quality = Water that stands goes bad, and not every tap is for drinking. Clean the cans often and follow what health authorities say.
caution-grey-water-rules = Used water may be emptied only where it is allowed; local rules differ.
caution-nights-not-cleared = For some nights it is not stated that staying is allowed. Ask first, and have another place in reach.
caution-power-tools-and-dust = Saws and drills injure, and dust harms lungs and eyes. Read the tool’s manual, clamp the work, wear what it says. Who has never used one is shown first.
caution-solvents-and-foam = Solvents, glue and foam give off vapours that burn and numb. Use them with the doors open, away from flames, and as the label says.
caution-lifting-and-tired = Lift in two. Do not saw, drill or work under the van alone or tired; a day later is cheaper.
caution-cutting-the-van = Cutting or drilling into roof, sides or floor can meet wires, fuel lines and what holds the body together, and lets water in. Gas, mains wiring, brakes and what the law asks a workshop for belong to licensed trades; local codes differ.
caution-overloading = A van above its allowed mass, or with too much on one axle, brakes and steers worse and may not be driven. What its plate and papers say goes before anything here; only a scale knows what it weighs.
caution-loose-cargo = What is loose flies when the van brakes, and hits with many times its weight. Straps and anchors must carry what their makers state; local rules for loads differ. Who is unsure asks a workshop.
caution-belts-and-airbags = Everybody rides on a seat with a belt that was made for it, never on a bed. Nothing may be in an airbag’s way. Seats, belts and their anchors belong to a licensed workshop.
caution-adhesive-near-heads = Adhesive lets go in heat, cold, damp and with time, mostly without a sign. Nothing that could hurt is held by it alone where heads are. What its packet says goes before anything here.

## Problems

problem-not-json = This is not a plan file: it cannot be read beyond line { $line }, column { $column }.
problem-too-large = This file is too large: at most { $most } bytes are read.
problem-not-a-plan = This is not a plan file, or not all of it. A plan or a backup that this page saved can be opened.
problem-newer-version = This file is of version { $found }; this app knows version { $known }. What it does not know is kept, but not counted.
problem-not-a-list = A list belongs here.
problem-not-an-entry = An entry with named fields belongs here.
problem-too-many-entries = Only the first { $most } entries are counted; the others are kept.
problem-id-not-unique = Two entries have the id { $id }; one was given a new one.
problem-not-text = Text belongs here.
problem-text-too-long = At most { $most } characters.
problem-not-a-number = A number belongs here, such as { $example }.
problem-other-unit = “{ $unit }” does not measure what is asked here. These units do: { $units }.
problem-no-unit = “{ $unit }” does not fit here: a number without a unit belongs here.
problem-units-mixed = The units do not come out: give a unit to each number that is added, and to one of those that are multiplied.
problem-divided-by-nothing = Nothing can be divided by nought.
problem-not-whole = A whole number belongs here, such as { $example }.
problem-out-of-range = From { $min } to { $max }.
problem-not-money = An amount belongs here, such as { $example }.
problem-negative-money = Not less than nothing.
problem-too-much-money = At most { $most }.
problem-not-a-rate = A percentage from 0 to 100.
problem-not-a-date = A date belongs here, written year-month-day.
problem-not-a-flag = Yes or no.
problem-not-a-choice = One of: { $choices }.
problem-not-a-currency = The three letters of a currency in use belong here (ISO 4217), such as EUR.
problem-range-reversed = Low, likely and high must be in that order.
problem-range-not-taken = One value only here.
problem-more-than-there-are = At most { $most }: more there are not.
problem-more-than-whole = At most { $whole }: it is a part of that.
problem-dates-reversed = { $second } is before { $first }; it must not be.
problem-no-such-store = There is no power store with the number { $id } in the kit.
problem-no-such-entry = What this is for is not there any more (number { $id }). Choose again, or leave it empty.
problem-task-circle = These tasks wait for one another in a circle: { $names }. Take one “after” out.
problem-store-quantity = Each power store is an entry of its own: quantity 1.
problem-surge-below-continuous = The limit for a moment is below the limit for long, { $continuous }.
problem-route-too-long = Only the first { $most } are computed.
problem-weekday-twice = This day of the week is there twice; the first one counts.

## The starter list

starter-mattress-double = Mattress for two
starter-mattress-single = Mattress for one
starter-bed-platform = Bed platform of boards
starter-quilt = Quilt
starter-sleeping-bag = Sleeping bag
starter-pillow = Pillow
starter-cool-box = 12 V cool box of 25 to 30 L
starter-ice-box = Ice box without power
starter-gas-stove = Gas stove with one flame
starter-gas-cartridge = Gas cartridge
starter-rice-cooker = Small rice cooker
starter-kettle = Travel kettle
starter-induction-hob = Induction hob with one plate
starter-pots = Pots and pan
starter-dishes = Plates, cups and cutlery
starter-washing-up-bowl = Washing-up bowl
starter-store-small = Power store of about 300 Wh
starter-store-medium = Power store of about 600 Wh
starter-store-large = Power store of about 1000 Wh
starter-vehicle-lead = Charging lead for the vehicle’s socket
starter-extension-lead = Extension lead for outdoors
starter-lamp = Lamp
starter-phone = Phone
starter-laptop = Laptop
starter-router = Mobile router
starter-panel-folding = Folding panel
starter-panel-flat = Panel for the roof
starter-radio = Radio
starter-fan = Small fan
starter-heated-blanket = 12 V heated blanket
starter-can-10 = Water can of 10 L
starter-can-15 = Water can of 15 L
starter-grey-can-10 = Can of 10 L for used water
starter-pressure-shower = Hand-pumped shower
starter-bucket-toilet = Bucket toilet with a lid
starter-wash-bag = Wash bag and towel
starter-crate = Stacking crate
starter-lashing-strap = Lashing strap
starter-folding-table = Folding table
starter-folding-chair = Folding chair
starter-window-covers = Insulating window covers
starter-hot-water-bottle = Hot-water bottle
starter-carbon-monoxide-alarm = Carbon monoxide alarm
starter-smoke-alarm = Smoke alarm
starter-fire-extinguisher = Fire extinguisher of 1 kg
starter-first-aid-kit = First-aid kit
starter-tool-bag = Tool bag
starter-clothes-bag = Bag of clothes

## The rough plan

rough-title = First rough plan
rough-place-town = Mostly in town, with work on weekdays
rough-place-country = Mostly in quiet places in one region
rough-place-moving = Somewhere else most days
rough-place-campsites = Mostly on campsites
rough-income = Wages on the road
rough-cost-rent = Rent and bills at home
rough-cost-food = Food
rough-cost-phone = Phone and data
rough-cost-insurance = Insurance and tax of the van
rough-cost-fuel = Fuel
rough-cost-washing = Laundry and showers
rough-cost-repairs = Put by for repairs
rough-cost-wear = Tyres, oil and repairs by the distance
rough-cost-roadside = Roadside help
rough-cost-inspection = Inspection and registration
rough-cost-address = A mail address
rough-cost-storage = Storage of what stays behind
rough-cost-gym = Gym, for its showers
rough-water-drinking = Drinking
rough-water-cooking = Cooking
rough-water-washing = Washing

## The frame

skip-to-content = Skip to content
navigation = Pages
undo = Undo
redo = Redo
take-back = Undo
dismiss = Dismiss
update-ready = A new version is ready.
update-begin = Use it now
update-later = Later
page-overview = Overview
page-kit = Kit
page-route = Route
page-balances = Balances
page-money = Money
page-in-and-out = What comes in and goes out
page-selling = Sell, keep, store
page-futures = Try it or build in full?
page-buying = What to buy when
page-power = Power
page-tonight = Tonight
page-sky = Sky and air
page-aisle = Power in the aisle
page-water = Water
page-days = Days
page-work = Tasks, people, tools
page-clearing = Clearing the flat
page-shop = Shop
page-plans = Plans
page-start = A plan of your own
page-share = Share this plan
page-open = Sent to you
storage-unavailable = This browser does not let the page keep anything, as in a private window or with storage switched off. You can go on, but what you change is gone when you close this tab. Open the page in an ordinary window, or allow storage for it.
storage-full = This browser has no more room for this page. What you change is on the screen and goes on counting, but it is gone when you close this tab. Save it as a file now, or make room: delete plans you no longer need.
aside-found = Something that was kept here could not be read. It is not lost: it was set aside, and you can have it as a file.
aside-show = Show what was set aside

verdict-unknown = Not known yet
verdict-falls-short = Falls short
verdict-tight = Tight
verdict-holds = Holds
standing-short-money = First short on { $when }; { $margin } is missing at worst.
standing-short-hours = First empty on { $when }; { $margin } without power in all.
standing-short-days = First short on { $when }; { $margin } without enough water.
standing-short-early = Not all is done on { $when }: { $margin } are missing.
standing-spare-early = All is done { $margin } before you leave.
standing-cannot = It cannot work as planned.
standing-spare = { $margin } to spare at the lowest moment.
standing-unknown = More is needed for a verdict.
standing-missing = Still needed:
standing-cautions = Take care
standing-working = How this was worked out
severity-short = Short
severity-close = Close
severity-note = Note
finding-show = Show it

section-stays = the stays of the route
section-tasks = the tasks
section-helpers = who works on the van
section-week = the days of the repeating week
section-data-uses = what takes data
section-water-uses = how much water you use

## Overview

demo-banner = This is an invented example: two orchard workers follow the harvest north. Look around, change anything, and start your own plan when you like.
demo-start-own = Start my own plan
dates-no-leaving = No day of leaving yet: set it under Route.
dates-ahead = { $days } until you leave on { $leaves }; the plan runs to { $ends }.
dates-on-the-road = On the road since { $leaves }; the plan runs to { $ends }.
guesses-title = Guesses
guesses-count = { $count_n ->
    [one] One value is a guess of this tool.
   *[other] { $count } values are guesses of this tool.
} Correct what you know better; what you change is a guess no longer.
guesses-list = Show all guesses
guesses-confirm-all = Confirm all
guesses-confirmed = All guesses are confirmed.
problems-title = To be corrected
next-title = Go on
next-tonight = On the road: how long it lasts tonight
next-kit = Correct the kit
next-route = Set dates and places
next-plans = Start, copy or rename plans

## Fields

field-example = e.g. { $example }
field-accepts = { $min } to { $max }
field-comes-to = = { $value }
field-guess = Guess: confirm
field-be-unsure = I am not sure
field-be-sure = One value
field-low = Low
field-likely = Likely
field-high = High
draft-until-then = Until then, { $value } counts.
no-amount = no amount yet

field-title = Name of the plan
field-currency = Currency
field-people = People travelling
field-starts-on = First day that counts
field-leaves-on = Day of leaving
field-ends-on = First day back
field-mode = The route is
field-size = Size of the van
field-inside-length-mm = Inside length
field-inside-width-mm = Inside width
field-inside-height-mm = Inside height
field-empty-mass-kg = Empty mass, weighed if possible
field-gross-limit-kg = Greatest allowed mass (GVWR)
field-socket-volts = Vehicle socket
field-socket-fuse-a = Fuse of the socket
field-opening-cash = Cash on the first day
field-floor = Keep untouched
field-tax-percent = Sales tax
field-prices-include-tax = Prices include the tax
field-room-deposit = Going home: deposit of a room
field-room-rent = Going home: its first rent
field-reserve-percent = Kept of prices without a range (10 % if empty)
field-breakdown-fund = Kept for a breakdown: the tow, nights elsewhere
field-name = Name
field-group = Heading
field-need = How much it matters
field-obtain = How it comes
field-quantity = How many
field-resale = The van would bring, sold again
field-resale-falls = It loses each month
field-fuel-l-per-100-km = Fuel for 100 km
field-fuel-price-per-l = Price of a litre of it
field-unit-price = Price of one
field-discount-percent = Taken off the price
field-delivery = Delivery, all of it
field-needed-on = Needed by
field-buy-on = Bought and paid on, when before that
field-paid-happened = It was paid
field-paid-on = Paid on
field-paid-amount = Paid in all
field-lender = Lent by
field-sale-price = It brings in all
field-sale-on = Money expected on
field-sale-outcome-happened = It was sold
field-sale-outcome-on = Sold on
field-sale-outcome-amount = It brought
field-returned-quantity = How many go back unused
field-returned-on = Money back on
field-returned-outcome-happened = It went back
field-returned-outcome-on = Went back on
field-returned-outcome-amount = Came back in all
field-mass-kg = Mass of one
field-length-mm = Length
field-width-mm = Width
field-height-mm = Height
field-draw-power-w = Power of one while it runs
field-draw-outlet = Plugged into
field-draw-surge-w = Power when it starts
field-draw-hours-per-day = Hours a day
field-draw-from-hour = Switched on at
field-draw-duty-percent = Share of that time it runs
field-draw-days = Used on
field-draw-store = Runs on
field-water-litres-per-day = Fresh water a day
field-water-to-grey-percent = Of it, to be kept as used water
field-draw-works = What decides how long it runs
field-draw-times-per-day = How often a day
field-draw-again-after-hours = Hours from one time to the next
field-draw-used-percent = Chance of being used that day
field-draw-loss-percent = Its charger loses
field-draw-importance = How much it matters, 1 to 9
field-draw-may-move = May hang on another store
field-draw-heats-l = Water or food heated each time
field-draw-heats-from-c = From
field-draw-heats-to-c = To, if not to the boil
field-draw-vessel-kg = The vessel weighs
field-draw-boiled-away-l = Boils away each time
field-draw-heat-percent = Of the power, what reaches the pot
field-draw-label-wh = By its label, a day
field-draw-label-air-c = The label is for air of
field-draw-inside-c = Keeps its inside at
field-draw-wall-mm = Thickness of its walls, without a label
field-store-chemistry = Cells
field-store-rated-wh = Energy by its label
field-store-discharge-efficiency-percent = Comes out of what the cells give
field-store-inverter-low-percent = Inverter at a tenth of its load
field-store-inverter-full-percent = Inverter at full load
field-store-inverter-stays-on = The inverter stays on
field-store-dc-surge-w = Low-voltage outlets, for a moment
field-store-panel-input-w = Takes from panels
field-store-charges-above-c = Charges above
field-store-charges-below-c = Charges below
field-store-loses-percent = Loses in a month
field-store-cycles-done = Full cycles behind it
field-store-cycles-stated = Cycles its maker states
field-store-cycles-left-percent = Left after these
field-store-keeps-percent = To stay in it
field-panel-peak-w = Peak power of one
field-panel-setup = Set up
field-panel-tilt-deg = Tilt
field-panel-azimuth-deg = Faces (0 north, 90 east)
field-panel-turned-times = Turned to the sun, times a day
field-panel-fixing = Air behind it
field-panel-sun-from-hour = The sun reaches it from
field-panel-sun-until-hour = The sun reaches it until
field-panel-shade-percent = Shade takes
field-panel-dirt-percent = Dirt takes
field-panel-per-degree-percent = For each degree above 25 °C
field-panel-controller = Charge controller
field-panel-controller-percent = The controller passes on
field-panel-charges = Charges
field-latitude-deg = Degrees north (south is negative)
field-longitude-deg = Degrees east (west is negative)
field-altitude-m = Height above the sea
field-clock-ahead-h = Clock ahead of universal time
field-low-c = Usual low of a day
field-high-c = Usual high of a day
field-clouds = Clouds on most days
field-clearness-percent = Clearness index
field-like = A climate like
field-year = Typical year of
field-climate-latitude-deg = Degrees north (south is negative)
field-climate-longitude-deg = Degrees east (west is negative)
field-climate-altitude-m = Height above the sea
field-climate-clock-ahead-h = Clock ahead of universal time
field-climate-low-c = Usual low of a day
field-climate-high-c = Usual high of a day
field-climate-clouds = Clouds on most days
field-climate-clearness-percent = Clearness index
field-climate-like = A climate like
field-climate-year = Typical year of
field-mean-days = Its hours
field-gives = What gives the power
field-charging-hours = For how many hours
field-gives-w = It gives at most
field-stop-price = A stop costs
field-hour-price = An hour costs besides
field-in-use = In use
field-stay = During the stay
field-store-usable-wh = Energy that can be taken out
field-store-opening-percent = Charge on the day of leaving
field-store-inverter-efficiency-percent = The inverter passes on
field-store-inverter-idle-w = The inverter takes for itself
field-store-charge-efficiency-percent = Of a charge, what arrives
field-store-ac-continuous-w = Mains outlets, for long
field-store-ac-surge-w = Mains outlets, for a moment
field-store-dc-continuous-w = Low-voltage outlets
field-store-vehicle-input-w = Takes from the vehicle
field-store-mains-input-w = Takes from the mains
field-store-total-input-w = Takes from all together
field-store-taper-from-percent = Charging slows from
field-tank-holds = Holds
field-tank-capacity-l = One holds
field-tank-opening-percent = Filled on the day of leaving
field-toilet-way = How it works
field-toilet-waste-l = Its waste tank holds
field-toilet-lasts-months = It lasts
field-toilet-each-time = Each emptying costs (of bags, each bag)
field-filters-l = Good for, as a water filter
field-burner-heat-w = Heat at full power
field-burner-fuel = Burns
field-burner-vents-out = Its fumes go outside through a pipe
field-burner-keeps-warm = A thermostat keeps the room warm with it
field-burner-burns-hours = Burns, hours a day
field-burner-lit-from-hour = Lit at
field-burner-heat-percent = Of the fuel’s heat, what it gives
field-burner-fuel-price = Its fuel costs (a litre; of gas, a kilogram)
field-fan-blows-m3-h = One moves
field-note = Note
field-delivery-days = Days until it is delivered
field-end = Where it ends
field-end-with = With whom, or who gets it
field-end-fee = Bringing or throwing it away costs
field-ended-on = It left the flat on
field-hours = Hours of work
field-hands = Who it takes
field-in-one-go = It must be done in one go
field-without-van = It can be done before the van is there
field-daylight = It needs daylight
field-dry = It needs a dry day
field-wait-hours = Hours to wait afterwards
field-wait = What is waited for
field-not-before = Not before
field-spent-hours = Hours spent so far
field-done-on = Done on
field-left-out = Left out of the plan
field-can-wait = It can wait until the road
field-for-item = For the thing of the kit
field-task = Task
field-after = After the task
field-tool = Tool or place
field-thing = Thing of the kit
field-at-home = Thing at home
field-tool-kind = Tool or place?
field-tool-source = How it is there
field-there-from = There from
field-there-until = There until
field-on-days = On which days
field-price-per-day = Hire for a day
field-is-skilled = Has done such work before
field-workday-hours = Hours on a weekday
field-saturday-hours = Hours on a Saturday
field-sunday-hours = Hours on a Sunday
field-from-hour = Begins at
field-workday-from-hour = Begins on a weekday at
field-weekend-from-hour = Begins at the weekend at
field-comes-from = From
field-comes-until = Until
field-helper = Who
field-first-day = First day
field-last-day = Last day (empty: only the first)
field-hours-then = Hours on that day (empty: a day off)
field-arrives-on = The van is there from
field-light-from-hour = Light from
field-light-until-hour = Light until
field-dry-percent = Chance of a dry day
field-day-longer = A day longer at home costs
field-road-extra-percent = Work on the road takes longer by
field-road-day = A place to work on the road, a day
field-price = It should bring
field-on = On
field-outcome-happened = It was sold
field-outcome-on = Sold on
field-outcome-amount = It brought
field-lowest = You give it away for no less than
field-chance-percent = Chance that it sells by then
field-listed-on = Offered since
field-selling-cost = Selling it costs
field-half-sold-days = Half of such things are sold within
field-usual-price = Such things usually bring
field-kept-replaces = Without it you would buy one for
field-kept-usable = It can come along as it is
field-kept-later-price = Sold later, it brings
field-kept-mass-kg = Mass
field-kept-floor-m2 = Floor it takes
field-kept-fit-cost = Cutting or fitting it costs
field-kept-fitted-later-price = Fitted and sold later, it brings
field-kept-fitted-mass-kg = Mass once fitted
field-kept-fitted-floor-m2 = Floor once fitted
field-kept-storage-monthly = Storing it costs a month
field-wanted-sum = Sum wanted of your sales
field-wanted-on = Wanted by
field-wanted-percent = With a chance of
field-trial-months = Look ahead
field-unsuited-percent = Chance that the life does not suit
field-finds-out-months = On the road until you know
field-kept-percent = Things taken out and sold bring back
field-home-monthly = A month at home
field-road-monthly = A month on the road
field-going-back = Paid once to live at home again
field-build-months = Months of building, at home
field-removable = For things you can take out and sell
field-fixed = For what stays in the van
field-redone = Redone later, if the life suits
field-amount = Amount
field-repeat = Comes
field-until = Last possible on
field-received-until = Received up to
field-day-of-month = Day of the month
field-every = Each
field-first-on = First due on
field-last-on = Last due on
field-phase = To be paid
field-agreed-price = Price of the van, agreed
field-pay-on = To be paid on
field-deposit = Deposit, part of the price
field-deposit-on = Deposit to be paid on
field-part-exchange = Taken off for your present car
field-seller-fees = The seller’s fees
field-registration = Registration and plates
field-registration-on = Registered on
field-yearly-percent = Interest a year
field-months = Monthly payments
field-fees = Fees kept back or paid that day
field-drawn-on = The money comes on
field-drawn = It came
field-first-payment-on = First payment on
field-paid-off-on = All the rest paid on
field-place = Place
field-nights = Nights
field-working-days-per-week = Working days a week, from Monday
field-drive-hours = Driving to get there
field-drive-km = Distance to get there
field-offers-mains-hours = Mains socket, hours a day
field-offers-mains-from-hour = Socket free from
field-offers-mains-w = The socket gives at most
field-offers-water = Drinking water
field-offers-emptying = Used water can be emptied
field-offers-toilet-emptying = A place to empty a toilet
field-offers-toilet = Toilet
field-offers-shower = Shower
field-offers-laundry = Laundry
field-offers-rubbish = Rubbish
field-offers-fuel = Fuel
field-offers-signal = Phone signal
field-offers-price-per-night = Price of a night
field-offers-night = Staying the night
field-offers-fallback-km = Next place, if you must leave
field-weekday = Day
field-kind = The day is for
field-litres-per-day = How much a day; each time, if not daily
field-per = That is for
field-to-grey-percent = Of it, to be kept as used water
field-total = In all it says
field-receipt = On the receipt
field-item = It is for
field-more-follows = More of it is still to be paid
field-hour = Hour of the count
field-cash = Cash in hand
field-store = The reading is of
field-charge-percent = Battery shows
field-fresh-l = Fresh water left
field-grey-l = Used water on board

choice-mode-stays = stays in order
choice-mode-week = a week that repeats
choice-size-small = small van, sitting height
choice-size-medium = panel van, normal roof
choice-size-high-roof = panel van, standing height
choice-size-long-high-roof = long panel van, standing height
choice-group-sleeping = Sleeping
choice-group-kitchen = Kitchen
choice-group-power = Power
choice-group-water = Water
choice-group-hygiene = Washing
choice-group-structure = Building
choice-group-warmth = Warmth
choice-group-work = Work
choice-group-clothing = Clothing
choice-group-safety = Safety
choice-group-tools = Tools
choice-group-vehicle = Vehicle
choice-group-other = Other
choice-need-must = a must
choice-need-want = a want
choice-need-experiment = an experiment
choice-obtain-owned = owned already
choice-obtain-borrowed = borrowed
choice-obtain-bought = bought
choice-obtain-made = made from materials
choice-obtain-left-out = left out
choice-open = (not said)
choice-works-by-clock = its hours
choice-works-heating = what it heats (kettle, hob)
choice-works-cooling = the air around it (cool box)
choice-works-warming = the warmth the room lacks (heater with a thermostat)
choice-way-portable = flushed with water
choice-way-dry = dry, without flushing
choice-way-bags = bags, one each time
choice-fuel-gas = gas (propane, butane)
choice-fuel-spirit = spirit (alcohol)
choice-fuel-petrol = petrol
choice-fuel-diesel = diesel
choice-effort-easy = easy: strolling, handiwork
choice-effort-moderate = moderate: a brisk walk, a light load
choice-effort-hard = hard: a heavy load, digging
choice-treated-boiled = boiled
choice-treated-filtered = filtered
choice-colour-light = light (white, silver)
choice-colour-middling = in between
choice-colour-dark = dark (black, deep blue)
choice-cab-open = nothing
choice-cab-curtain = a curtain
choice-cab-wall = a wall of steel
choice-covers-roof-and-sides = roof and sides
choice-covers-roof = roof
choice-covers-sides = sides
choice-covers-doors = doors
choice-covers-floor = floor
choice-covers-windows = windows, at night
choice-covers-divider = what divides the cab off
choice-material-xps = extruded foam board (XPS)
choice-material-eps = expanded foam board (EPS)
choice-material-pir = rigid polyurethane foam (PIR)
choice-material-soft-foam = soft closed-cell foam
choice-material-wool = wool
choice-material-cork = cork
choice-material-plywood = plywood
choice-material-timber = softwood
choice-material-carpet = carpet or felt
choice-material-cloth = thick cloth
choice-material-foil = reflective foil
choice-material-air-gap = closed air
choice-material-other = something else
choice-data-task-call-voice = calls, voice only (hours)
choice-data-task-call-low = video calls, small picture (hours)
choice-data-task-call-standard = video calls, standard (hours)
choice-data-task-call-high = video calls, sharp (hours)
choice-data-task-music = music (hours)
choice-data-task-film-low = films, small picture (hours)
choice-data-task-film-standard = films, standard (hours)
choice-data-task-film-high = films, sharp (hours)
choice-data-task-web = web pages (hours)
choice-data-task-maps = maps (hours)
choice-data-task-shared-documents = shared documents (hours)
choice-data-task-mail-in = mails received (pieces)
choice-data-task-mail-out = mails sent (pieces)
choice-data-task-photo-out = photos sent (pieces)
choice-data-task-film-minute-out = film sent (minutes)
choice-data-task-update-in = updates (pieces)
choice-data-task-other = something else
choice-data-days-every = every day
choice-data-days-working = working days
choice-data-days-free = days off
choice-data-days-driving = driving days
choice-data-days-standing = days without driving
choice-beyond-stops = nothing more
choice-beyond-costs = each GB is paid
choice-beyond-slowed = it goes on slowly
choice-chemistry-lfp = lithium iron phosphate
choice-chemistry-nmc = lithium nickel manganese cobalt
choice-setup-flat = flat on the roof
choice-setup-tilted = tilted on the van
choice-setup-beside = beside the van while it stands
choice-fixing-open = all around
choice-fixing-close = a gap above the roof
choice-fixing-glued = none: glued on
choice-controller-tracking = follows the best voltage (MPPT)
choice-controller-switching = switches (PWM)
choice-clouds-clear = clear
choice-clouds-some = some clouds
choice-clouds-many = many clouds
choice-clouds-overcast = overcast
choice-like-long-winters = long winters (60° north)
choice-like-cold-coast = a cold coast (55° north)
choice-like-oceanic = mild and wet (52° north)
choice-like-inland-plain = an inland plain (45° north)
choice-like-dry-summers = dry summers (37° north)
choice-like-wet-summers = wet summers (36° north)
choice-like-dry-heat = desert (33° north)
choice-gives-socket = a mains socket
choice-gives-generator = a generator
choice-outlet-ac = a mains outlet (inverter)
choice-outlet-dc = a low-voltage outlet
choice-days-every = every day
choice-days-working = working days
choice-days-free = days off
choice-days-driving = driving days
choice-days-standing = days without driving
choice-first-store = the first power store
choice-no-item = (nothing in the kit)
choice-none = (none)
choice-everybody = (everybody)
choice-holds-fresh = drinking water
choice-holds-grey = used water
choice-repeat-once = once
choice-repeat-weekly = every week
choice-repeat-fortnightly = every two weeks
choice-repeat-monthly = every month
choice-repeat-yearly = every year
choice-every-once = once
choice-every-week = week
choice-every-month = month
choice-every-quarter = three months
choice-every-half-year = six months
choice-every-year = year
choice-every-hundred-km = 100 km driven
choice-phase-home = at home, until leaving
choice-phase-road = on the road
choice-phase-always = all along
choice-signal-unknown = not known
choice-signal-none = none
choice-signal-weak = weak
choice-signal-good = good
choice-night-unknown = not known
choice-night-allowed = allowed
choice-night-not-allowed = not allowed
choice-weekday-monday = Monday
choice-weekday-tuesday = Tuesday
choice-weekday-wednesday = Wednesday
choice-weekday-thursday = Thursday
choice-weekday-friday = Friday
choice-weekday-saturday = Saturday
choice-weekday-sunday = Sunday
choice-kind-working = working
choice-kind-driving = driving
choice-kind-idle = neither
choice-end-open = not decided
choice-end-carried = comes along
choice-end-sold = sold
choice-end-lent = lent, or left with somebody
choice-end-stored = stored
choice-end-given = given away
choice-end-thrown = thrown away
choice-hands-one = one person
choice-hands-two = two people
choice-hands-skilled = two, one of whom has done it before
choice-wait-curing = curing
choice-wait-drying = drying
choice-wait-delivery = delivery
choice-wait-other = something else
choice-tool-kind-tool = a tool
choice-tool-kind-place = a place to work
choice-tool-source-owned = own
choice-tool-source-borrowed = borrowed
choice-tool-source-hired = hired
choice-tool-source-missing = nobody has it yet
choice-on-days-every = every day
choice-on-days-workdays = Monday to Friday
choice-on-days-weekends = Saturday and Sunday
choice-per-person = each person
choice-per-van = all together

## Lists

entry-unnamed = (no name yet)
entry-up = Move up
entry-down = Move down
entry-copy = Copy
entry-remove = Take out
entry-removed = “{ $name }” is taken out.
part-add = Add: { $part }
part-remove = Take out: { $part }
part-removed = Taken out: { $part }.
part-draw = draws power
part-store = is a power store
part-panel = is a panel in the sun
part-more = More about it
part-tank = is a can or tank
part-water = uses water
part-burner = burns: a stove, a heater
part-fan = blows air out
part-toilet = is a toilet
part-paid = what came of buying it
part-sale = will be sold
part-kept = what it is worth if it is not sold
part-returned = some of it goes back
part-outcome = what came of it

## Kit

kit-new-name = What is it?
kit-new-price = Price of one
kit-add = Add
kit-added = “{ $name }” is in the kit.
kit-starters = Pick from a list of usual things
kit-starters-hint = Each brings usual sizes, masses, draws and rough prices along, marked as guesses until you confirm them.
kit-filter = Find in the kit
kit-find = Find
kit-show = Show
kit-by = Group by
kit-count = { $shown } of { $all } things shown
show-all = all
show-to-pay = still to pay
show-without-price = without a price
show-borrowed = borrowed
show-musts = musts
show-left-out = left out
by-group = heading
by-obtain = how it comes
by-need = how much it matters
by-nothing = no groups

## Money, its page

afford-amount = It costs
afford-free = { $left } is free today: if you spend it, cash still never falls below your floor of { $floor }. The tightest evening is { $on }.
afford-nothing = Nothing is free today: on { $on }, { $missing } is missing already.
afford-yes = Yes: { $left } stays free on the tightest evening, { $on }.
afford-later = Not today: { $missing } would be missing on { $on }. It can be paid from { $from } on.
afford-never = No: { $missing } would be missing on { $on }, and no later day of the plan bears it either.
afford-unknown = Enter the cash you have: without it nobody can say.
afford-shop = With tax, packs and all else it changes: in the shop
plot-mark-in = comes in
plot-mark-sale = sold
plot-mark-out = bought
day-hint = Tap a day in the drawing, or go from one to the next.
day-earlier = Earlier
day-lowest = Lowest day
day-later = Later
day-evening = { $opening } in the morning, { $closing } in the evening.
day-corrected = A count in the evening changed it by { $amount }.
day-uncounted = not counted before you say it happened
ahead-nothing = Nothing is planned to be bought or sold from today on.
ahead-buy = Buy
ahead-sell = Sell
ahead-pay = Pay for
ahead-return = Give back
ahead-comes = Comes in:
ahead-evening = { $closing } in the evening.
ahead-early = Cash would bear it from { $from } on.
ahead-more = { $count_n ->
    [one] One more
   *[other] { $count } more
}
ahead-needed = { $first } more must have come in by { $by }.
ahead-needed-more = { $first } more must have come in by { $by }, and { $all } in all by { $at_last }.
month-line = For
month-home = At home
month-road = On the road
month-in-all = In all
month-pays-back = The { $put_in } put in have come back after { $days } on the road, on { $on }.
month-never-pays-back = A month on the road costs no less than one at home, so the { $put_in } put in do not come back.
month-freedom = At the end of the route { $left } is saved beyond that: it pays for { $months } on the road without income.
loans-add = Add a loan
loans-line = { $payment } a month until { $on }; interest in all { $interest }.
loans-yearly = With its fees it costs { $percent } a year.
loans-saved = Paying the rest at once saves { $saved } of interest.
loans-schedule = Every payment
loans-payment = Payment
loans-interest = Interest
loans-principal = Paid back
loans-balance = Owed
loans-resale = The van would bring
loans-owed = Owed beside what the van would bring
home-plot = Left after selling van and kit, paying what is owed, and taking a room
home-meaning = If you sold the van and what you mean to sell of the kit, settled the loans, and paid deposit and first rent of a room:
home-always = It stays affordable to the end of the plan; { $left } would be left then, with { $room } paid for the room.
home-until = It stays affordable up to { $on }.
home-never = It is not affordable today.
money-plot = Cash in the evening of each day
money-course = Day by day
money-afford = Can I afford it today?
money-ahead = To buy and to sell
money-more = More
money-month = A month on the road and one at home
money-van = The van
money-loans = Loans
money-going-home = If you went home
money-back = Back to the cash
money-purse = Purse
money-belongings = Things to sell
money-incomes = Other income
money-costs = Running costs
money-groups = By group
money-readings = Counted on the way
money-readings-hint = Count your cash, read your battery, look at your cans: from its moment on, a count replaces what was computed.
money-to-kit = Purchases are in the kit
money-unanswered = Did this happen?
answer-yes = It did
answer-no = It did not
belongings-add = Add something to sell
incomes-add = Add an income
costs-add = Add a running cost
costs-starters = Usual costs
costs-added = “{ $name }” is in the plan.
readings-add = Add a count
groups-group = Group
groups-foreseen = Foreseen
groups-settled = Happened
groups-open = Still to come
groups-still-to-pay = Still to pay for the kit: { $amount }
flow-sales = Sales
flow-income = Income
flow-receipts = Other receipts
flow-costs = Running costs
flow-nights = Paid nights
flow-charging = Charging
flow-water-stops = Stops for water
flow-data = Data
flow-vehicle = The van itself
flow-loans = Loans
flow-fuel = Fuel

## Sell, keep, store

selling-wish = What your sales are to bring
selling-reached = At the prices below, your sales bring { $sum } or more by { $on } with a chance of { $percent }; { $expected } on average.
selling-list-by = Offer all of it by { $on } at the latest, at the first price of each thing.
selling-not-reached = That is less than the { $wanted } you want. Want less or wait longer, take lower prices, or sell something more.
selling-needed = You state no sum: this is what cash needs of your sales to stay above your floor up to that day.
selling-nothing = Nothing is left to sell that has a price.
selling-no-day = Say by when you want the money, or when you leave.
selling-day-out = There is no time left to sell by that day, or it is more than three years ahead: name another day.
selling-no-sum = Your cash stays above your floor without these sales. Say which sum you want of them.
selling-too-many = Prices are found for 60 things at most. Put small things together as one.
selling-no-chance = no chance known
selling-no-chance-why = Its chance is known once it has a price and a day that is still ahead, and while nobody said what came of it.
selling-chance = At { $asking }, it is sold by { $on } with a chance of { $percent }.
selling-prices = What to ask, and from when on
selling-ask = from { $from }: { $asking }
selling-prices-bring = Sold by { $on } with a chance of { $percent }, for { $likely } on average.
selling-take = Take these prices into the plan
selling-taken = The prices of “{ $name }” are in the plan.
selling-kept = Sell it or not
selling-kept-hint = Open a thing above and say what it is worth if it is not sold. Money is what a way is worth more than selling now; mass and floor are what it adds to the van.
selling-way = Way
selling-better = Money
selling-mass = Mass
selling-floor = Floor
fate-sell = sell it
fate-keep = take it as it is
fate-adapt = cut or fit it
fate-store = store it

## Try it or build in full

futures-hint = Nobody knows before whether the life on the road suits. This compares what each way costs if it does, and if it does not.
futures-answer = What it costs
futures-cheapest = Over { $months }, “{ $name }” costs least on average: { $cost }.
futures-always = It costs less than “{ $other }” whatever the chance; { $more } less on average.
futures-same = “{ $other }” costs the same.
futures-below = It costs less than “{ $other }” while the chance that the life does not suit is below { $percent }, { $odds }; above that, “{ $other }” costs less. Now it is { $more } less on average.
futures-above = It costs less than “{ $other }” while the chance that the life does not suit is above { $percent }, { $odds }; below that, “{ $other }” costs less. Now it is { $more } less on average.
futures-stay = Stay at home
futures-as-planned = The plan as it stands
futures-plot = All that is paid by then, on average, by months
futures-costs = All that is paid in that time
futures-way = Way
futures-suited = If it suits
futures-unsuited = If not
futures-average = On average
futures-depends = What the answer depends on most
futures-depends-hint = What “{ $name }” costs against “{ $other }”, with one value at a time at its low and its high end:
futures-no-ranges = No value has a range. Where you are not sure of one, give low, likely and high, and see what it does to “{ $name }” against “{ $other }”.
futures-swing = { $what }, { $low } to { $high }: “{ $name }” costs { $at_low } at the low end, { $at_high } at the high end.
futures-less = { $amount } less
futures-more = { $amount } more
futures-turns = This alone can turn the answer.
futures-ways = Ways of building
futures-none = You have entered no way of building: the plan as it stands is compared with staying at home.
futures-begin = Change it, or put others beside it
futures-too-many = Only the first { $most } are compared.
futures-question = What they have in common
futures-question-hint = What you leave empty is taken from the plan’s running costs and sales, or as it usually is. It is counted like this:
builds-add = Add a way of building
plot-after = After
money-chances = If it does not go as is likely
chances-kept = Chance that cash never falls below your floor from today on:
odds-always = all of { $paths } tries
odds-almost-always = more than 99 in 100
odds-about = about { $count } in { $of }
odds-almost-never = fewer than 1 in 100
odds-never = none of { $paths } tries
chances-likely = On { $until }, if all goes as is likely: { $likely }.
chances-expected = On average over all that can happen: { $expected }. That is worked out exactly, but nobody gets an average.
chances-between = In 8 of 10 tries it is between { $low } and { $high }.
chances-lowest = In 1 of 10 tries the lowest evening has less than { $lowest }.
chances-how = How this is worked out
chances-assumed = The days ahead are gone through { $paths } times. Each sale happens with its chance; each price, cost and income that you gave a range is drawn between its ends, mostly near the likely one, each time it is due and apart from all others. Days are kept. Where you gave neither, nothing varies: a chance is only as good as what went in. (Common practice, no source.)
chances-nothing = Nothing that is still to come has a range or a chance. Give a price as low, likely and high, or a thing to sell a chance, to see how often the plan holds.
money-reserve = Reserve
reserve-covered = The lowest day, { $on }, has { $above } above your floor. That covers a reserve of { $total }.
reserve-not-covered = On the lowest day, { $on }, { $missing } is missing for a reserve of { $total } above your floor.
reserve-next = Bring in { $missing } more before then, or buy something later. Surer prices make the reserve smaller.
asked-waiting = Working it out: { $share }
asked-stop = Stop
asked-failed = This could not be worked out: a fault of the calculator, not of your plan. Reload the page to try again.
ahead-cash-unknown = For this, the cash you begin with must be known: enter it where you say what comes in and goes out.
ahead-over = No day of the plan is ahead. Set the dates on the route page.
ahead-too-many = The plan has more payments, or more purchases, than can be worked out here: 10,000 that may vary and 500 purchases at most. Put small things together.
ahead-too-large = An amount in the plan is too large to be worked out here. Look for one with too many digits.
ahead-nothing-to-buy = Nothing with a price is left to buy from today on.

## What to buy when, its page

buying-intro = An order for what is still to be bought: cash stays above your floor and all is there as soon as can be, if sales and income go as is likely.
buying-order = The order
buying-line = { $on }: { $name }, { $amount }
buying-needed = { $need }, needed by { $needed }
buying-instead = The plan has { $planned }.
buying-unpaid = Cannot be paid
buying-unpaid-line = { $name }, { $amount }
buying-lack = { $missing } more by { $by } would pay for it.
buying-lack-sale = “{ $sale }”, sold by then for { $brings }, would bring it.
buying-lack-week = Putting { $week } a week aside until then would bring it, too.
buying-all-lack = For all of them together, { $missing } more is needed by { $by }.
buying-floor-lack = Even without these purchases cash falls below your floor: { $missing } is missing by { $by }. What is bought waits until that is over.
buying-finished = All is bought by { $on }.
buying-sure = How sure this is
buying-proven = Proven: every choice and every order was weighed, and none is better. Better means: more musts paid, then more of the rest; then all bought sooner; then the musts first.
buying-finish-proven = Proven that nothing is finished sooner: all is paid, and the last day depends on the money alone. Which comes first is a rule of thumb: musts, then what is needed soonest, then the cheapest.
buying-rule-of-thumb = A rule of thumb, since these are too many to weigh every choice: musts first, then what is needed soonest; where money is short, the dearest is left out. Another choice may pay for more.
buying-take = Take these days into the plan
buying-taken = { $count_n ->
    [one] One purchase has another day now.
   *[other] { $count } purchases have other days now.
}
buying-as-planned = The plan has these days already.
buying-to-money = Back to the money
## Receipts, their page

page-receipts = Receipts
receipts-hint = What you paid for a thing of the kit counts instead of its planned price. Leave out what your running costs already cover, such as food or fuel: it would count twice.
receipts-add = Add a receipt
receipts-older = Show older ones
receipts-one = Receipt
receipts-lost-lines = Lines whose receipt is gone
receipts-differs = differs by { $difference }
receipts-lines-less = The lines come to { $sum }, { $difference } less than the receipt says. What could explain it:
receipts-lines-more = The lines come to { $sum }, { $difference } more than the receipt says. What could explain it:
receipts-before = This was before the first day of the plan, { $first }: the cash on that day is taken to be without it already.
receipts-line = Line
receipts-rest = What the total leaves: { $amount }
receipts-add-line = Add a line
receipts-take-out = Take this receipt out
receipts-taken-out = The receipt is taken out with its lines.
receipts-take-out-line = Take this line out
receipts-line-taken-out = The line is taken out.
receipts-against = Paid against planned
receipts-what = For
receipts-planned = Planned
receipts-paid = Paid
receipts-beyond = Difference
receipts-import = From a file
receipts-choose = A table with receipts, or of your bank (CSV)
receipts-choose-hint = It stays on this device. Nothing is put in before you have seen what is in it.
receipts-paste = Or paste it
receipts-pasted = Rows, as they were copied
receipts-look = Look at it
receipts-found = What is in it
receipts-delimiter = Cells are parted by
receipts-decimal = Before the decimals
receipts-order = In dates
receipts-comma = a comma
receipts-semicolon = a semicolon
receipts-tab = a tab
receipts-bar = an upright bar
receipts-point = a point
receipts-day-first = the day comes first
receipts-month-first = the month comes first
receipts-say = (please say)
receipts-negative = What was paid has a minus
receipts-column = Column “{ $column }”
receipts-there = here already: same day, same amount
receipts-more = Show more of them
receipts-kept = { $count_n ->
    [one] One row was not read and stays aside.
   *[other] { $count } rows were not read and stay aside.
}
receipts-row = Line { $line }: { $reason }
receipts-save-kept = Save what was not read
receipts-put-in = { $count_n ->
    [one] Put one receipt in
   *[other] Put { $count } receipts in
}
receipts-put-in-done = { $count_n ->
    [one] One receipt is put in.
   *[other] { $count } receipts are put in.
}
receipts-too-much = A plan holds at most 10,000 receipts and as many lines. Leave some out.
receipts-export = As a file
receipts-save = All receipts as a table (CSV)
receipts-to-money = What it comes to: money

## Power, its page

power-plot = Energy in the store, hour by hour
power-stores = Power stores
power-panels = Panels in the sun
power-course = Charge, hour by hour
power-daily = An average day’s energy
power-likely = How likely it lasts
power-sizes = What size would do
power-charging = Places to charge at
power-no-course = It takes a power store in the kit and a route.
power-cycles = { $cycles } full cycles along the route. With nothing coming in, the lowest charge would last { $reserve } of average use.
power-day-hint = Tap the drawing, or choose a day, to see its hours.
power-day-table = Hour by hour
power-day-charge = Lowest { $lowest } at { $at }; { $end } at the end.
hour-dark = Dark
hour-driving = Driving
hour-mains = Mains
hour-sun = Sun
hour-until = Until
hour-charge = Charge
hour-what = What it is like
power-a-day-hint = Each by its size on an average day of the route. Open a draw to see what it costs in hours.
power-out = What takes it
power-in = Where it comes from
power-daily-none = Nothing.
power-from-sun = The sun
power-from-vehicle = Driving
power-from-mains = Sockets and generators
power-unused-sun = Sun that no store could take
power-converted = Inverters and outlets
power-lost = What stores lose by themselves
power-to-item = To the thing in the kit
power-draw-short = Not served from { $at } on: { $energy } for want of charge, { $outlet } because of what the outlets bear.
power-cost = Without it, the stores would last { $hours } longer, or have that much more in reserve when they are lowest.
power-cost-none = Nothing else would run longer without it.
power-cost-waiting = What it costs in hours is being worked out.
power-no-runs = Nothing is ahead that could be asked about.
power-kept = The chance that everything runs and no store falls below what is to stay in it:
power-how = { $runs } runs from { $from } on. Clouds differ from day to day around the mean of the place, and a dull day is often followed by another; what is used differs by the ranges you gave, and by a tenth less to a fifth more at least; driving by the ranges of its hours; what is not used every day by its chance.
power-sizes-hint = The neighbour below was run too and fails. Everything else stays as it is in the plan.
power-size-prevented = No size of “{ $name }” changes that an outlet cannot bear what hangs on it.
power-no-panel-does = No panels up to 2 kW on “{ $name }” would be enough.
power-no-store-does = No store up to 20 kWh in place of “{ $name }” would be enough.
power-no-panel-needed = “{ $name }” needs no panel.
power-least-panel = “{ $name }” needs panels of { $least } at least, set up as they are.
power-least-store = In place of “{ $name }”, a store of { $least } would be just enough.
power-size-uneven = More is not always better here: { $greater } fails.
charging-any-day = any day
charging-in-use = in use
charging-possible = possible
charging-add = Add a place to charge at
charging-hint = A table with a socket, a library, a generator. What is in use charges and costs; among the others it is looked for where to stop.
stops-fewest = The fewest stops
stops-cheapest = The cheapest stops
stops-none-needed = No stop is needed.
stops-impossible = No choice of these places is enough.
stops-not-found = No choice of these places was found that is enough.
stops-line = { $name }, { $on } from { $from } for { $hours }: { $price }
stops-proven = { $count } stops for { $price }; nothing better is possible with these places.
stops-thumb = { $count } stops for { $price }; something better may be possible.
stops-take = Put these stops into the plan
stops-taken = The stops are in the plan.
tonight-reading = What is in it now
tonight-power = How long it lasts
tonight-nothing-read = Read off the charge of the store, and it is worked out from there.
tonight-not-yet = The route is not under way today: a reading counts from its first day on.
tonight-lasts = Everything runs until { $at }.
tonight-lasts-always = Everything runs to the end of the route.
tonight-one-in-ten = One time in ten only until { $at }.
tonight-reaches = It reaches { $at }, when it can be charged again; so do { $share } of the runs by chance.
tonight-reaches-not = It does not reach { $at }, when it can be charged again; { $share } of the runs by chance do.
tonight-go-without = What to go without, one after another
tonight-without = Without “{ $name }”, { $saved } less, it lasts until { $at }.
tonight-without-reaches = Without “{ $name }”, { $saved } less, it reaches the next charge.
tonight-nothing-helps = Going without what is no must changes nothing before then.
tonight-hint = What matters least goes first; of equals, what wins most time for its energy. Say in the kit how much each thing matters. A must is never suggested.
stay-sky = Its sky and air, where they are not the plan’s
sky-hint = Degrees north decide how high the sun stands. Without a word on the clouds, many are taken. What a stay says of itself goes before what is said here.
sky-everywhere = For all places
sky-to-stays = The stays can have their own
sky-years = Typical years
sky-year-line = { $north } north, { $east } east
sky-choose = A file of a typical year (EPW or TMY3)
sky-choose-hint = Only twelve mean days of twenty-four hours of it are kept. It is read on this device and goes nowhere.
sky-year-in = “{ $name }” is in the plan, as twelve mean days.
shop-to-aisle = How long will it run, what size, how long to charge?
aisle-hint = Rough answers from two or three numbers, with the losses that are usual. For the plan itself, put the thing into the kit.
aisle-lasts = How long will this run on that?
aisle-size = What size do I need?
aisle-charge = How long to charge it from here?
aisle-power = It draws
aisle-energy = The store holds
aisle-hours = For so many hours
aisle-outlet = Plugged into
aisle-store = Which store
aisle-usual-store = a usual one of that size
aisle-source = From
aisle-mains = a mains socket
aisle-vehicle = the vehicle’s socket
aisle-panel = panels
aisle-gives = That gives
aisle-from = Charge now
aisle-until = Charge wanted
aisle-waiting = Type the numbers, and the answer stands here.
aisle-too-strong = It does not run: more than the outlets bear, however much energy there is.
aisle-lasts-hours = About { $hours }, from full to empty.
aisle-no-size = No store is large enough.
aisle-size-by-energy = A store of at least { $energy } that can be taken out, with { $spare } left at the end.
aisle-size-by-outlet = A store of at least { $energy } that can be taken out: smaller ones do not bear so strong a draw.
aisle-charge-never = It never gets there.
aisle-charge-hours = About { $hours }.
aisle-charge-cut = About { $hours }: the store takes no more than { $takes } of it.
power-draws = What draws power
power-vehicle = Charging while driving
power-draw-line = { $day } on a day of use, { $power } each
power-add-panel = Say in the kit what is a panel
power-add-store = Add a power store in the kit
power-add-draw = Say in the kit what draws power

## Water, its page

water-plot = Fresh water in the evening of each day
water-grey-plot = Used water in the evening of each day
water-toilet-plot = In the toilet in the evening of each day, in days of one person
water-facts = { $capacity } of fresh water on board when full; { $use } used a day; water on board weighs up to { $mass }.
water-people = For how many
water-uses = Uses of water
water-uses-add = Add a use
water-tanks = Cans and tanks
water-can-empty = first empty on { $on }
water-can-full = first full on { $on }
water-add-tank = Add a can in the kit
water-answers = What it comes to
water-first-none = On the days ahead neither fresh water nor room for what was used runs out.
water-first-fresh = Fresh water runs out first, on { $on }.
water-first-grey = Room for used water runs out first, on { $on }.
water-first-toilet = The toilet is full first, on { $on }.
water-first-next = The next of the others follows after { $days }.
water-no-stop-needed = All of it would hold without a single stop.
water-first-stop-by = Without any stop on the way it holds until { $on }: a first one is needed by then.
water-one-stop-does = One is enough, wherever it is.
water-apart-fresh = After it, one every { $days } at the least, wherever they are; fresh water is what limits it.
water-apart-grey = After it, one every { $days } at the least, wherever they are; room for used water is what limits it.
water-apart-toilet = After it, one every { $days } at the least, wherever they are; the toilet is what limits it.
water-lacks-fresh = With the stops there are, one more full can of { $litres } is the smallest that does.
water-lacks-grey = With the stops there are, { $litres } more room for used water is the least that does.
water-lacks-toilet = With the stops there are, the toilet lacks room for { $days } of one person.
water-boiling = Boiling a day’s { $litres } takes { $energy } and some { $minutes } minutes with { $name }.
water-boiling-by-nothing = Boiling a day’s { $litres } takes { $energy } in the water alone; nothing in the kit heats it.
water-filter-lasts = { $name }: one lasts { $days }; the days ahead take { $needed }, and there { $has_n ->
    [one] is one
   *[other] are { $has }
}.
water-filter-idle = { $name }: nothing is filtered yet. Say of a use that it is.
water-kept = Over the ranges of all uses, the chance that nothing falls short:
water-short-by = Where something does, half of the time it is by { $on }.
water-how = { $runs } runs, in each of which every use is drawn from its range. First short: fresh water in { $fresh }, room for used water in { $grey }, the toilet in { $toilet }. The same plan always gives the same answer.
water-no-runs = There are no days ahead with water to be used.
water-each-week = { $litres } each, { $times } times a week
water-usual = Usual uses
water-usual-hint = One tap adds one with its range; your own count wins over it.
water-range-person-day = { $low } to { $high } a person and day
water-range-day = { $low } to { $high } a day
water-range-person-time = { $low } to { $high } a person each time
water-range-time = { $low } to { $high } each time
water-use-added = Added: { $name }.
need-drinking = Drinking
need-cooking = Cooking
need-dishes = Washing up
need-hands-and-face = Hands and face
need-teeth = Teeth
need-cleaning = Cleaning
need-wash-from-a-bowl = Wash from a bowl
need-shower = Shower
need-hair = Hair
need-laundry-by-hand = Laundry by hand
need-pet-of-ten-kg = Pet of ten kilograms
water-stops = Stops for water
water-stops-hint = A tap, a service point, a friend’s garden. What is in use fills, empties and costs on its days; the others are possible, and are looked at when something falls short.
water-stops-add = Add a stop for water
water-every = every { $days }
water-fewest = { $count_n ->
    [one] One stop is enough, and none is not.
   *[other] { $count } stops are enough, and fewer are not.
}
water-stops-not-enough = Even a stop at every place that has something is not enough.
water-measure = What a can holds
water-toilets = The toilet
can-hint = Sizes inside, or the can weighed empty and full. What is typed stays here; the plan changes only by the button.
can-shape = How it is measured
can-box = a box
can-upright = a standing cylinder
can-lying = a lying cylinder
can-weighed = by weighing
can-length = Length inside
can-width = Width inside
can-height = Height inside
can-diameter = Diameter inside
can-filled = Filled to a height of (may stay empty)
can-empty = Weighs empty
can-full = Weighs full
can-water = Temperature of the water (may stay empty)
can-waiting = Fill in the sizes.
can-no-water = Full it must weigh more than empty.
can-holds = It holds { $litres }. Where it can freeze through, { $frost } at the most leave room for the ice; the lid stays loose.
can-filled-so = Filled so high, there are { $litres } in it.
can-of-kit = Can of the kit
can-take = Take it as what this can holds
can-taken = { $name } holds { $litres } now.
can-no-can = The kit has no can yet.
toilet-way = Way
toilet-lasts = Until it is full or gone
toilet-month = A month
toilet-portable = portable, flushed
toilet-dry = dry
toilet-bags = bags
toilet-public = none, and public ones
toilet-never-full = does not fill
toilet-days = { $likely } ({ $low } to { $high })
toilet-up-to = { $cost } where each visit is paid, nothing where none is
toilet-hint = For everybody on board. What is not in the kit is taken with usual sizes and rough prices; what people leave is WHO’s range. Which it is, is yours to choose.
toilet-add = Choose one in the kit
toilet-no-road = Without a route there are no days to look at.
toilet-always = The place has a toilet on all { $days } ahead.
toilet-without = Of { $days } ahead, { $public } have a toilet at the place. The most in a row without one are { $row } from { $from }, { $hours } in all.

## Route, its page

route-hint = The balances run along this route, day by day.
route-dates = Dates
route-stays = Stays, in order
route-week = The week that repeats
route-vehicle = The van
stays-add = Add a stay
week-add = Add a day
week-fill = Put in the missing days
week-filled = The missing days are put in.

## Plots

plot-empty = Nothing to draw yet.
plot-summary = From { $start } on { $from } to { $end } on { $until }; lowest { $extreme } on { $on }.
plot-summary-highest = From { $start } on { $from } to { $end } on { $until }; highest { $extreme } on { $on }.
plot-table = Show as a table
plot-day = Day
plot-lowest = Lowest
plot-band = The shaded band: in 1 of 10 tries there is less, in 1 of 10 more.
plot-band-low = 1 in 10 below
plot-band-high = 1 in 10 above
plot-evening = Evening

## Plans, their page

plans-open = This plan
plans-all = All plans
plans-new = New plan
plans-share = Share this plan
plans-open-link = Open a link
plans-add-demo = Add the example again
plans-open-it = Open
plans-open-named = Open “{ $title }”
plans-copy-named = Copy “{ $title }”
plans-delete-named = Delete “{ $title }”
plans-delete = Delete
plans-save = Save as a file
plans-save-named = Save as a file: “{ $title }”
plans-deleted = “{ $title }” is deleted.
plans-is-demo = example
plans-is-open = open now
plans-copy-of = { $title } (copy)
plans-unreadable = A plan that cannot be read
plans-units = Units
plans-units-legend = Show values in
plans-privacy = Plans stay in this browser; nothing is sent anywhere.
plans-schema = The file format of a plan, as a JSON Schema
backup-schema = The file format of a backup, as a JSON Schema
stays-unknown = It is not known whether this browser clears by itself what is kept here.
stays-promised = This browser has promised not to clear your plans by itself.
stays-not-promised = This browser has not promised to keep your plans for good: when it needs room, or when you have not been here for long, it may clear them. Save a backup now and then.
backup-title = Backup
backup-hint = All plans and settings in one file, which stays yours. It can be opened here again, on any device.
backup-save = Save everything as a file
backup-save-with-versions = Save it with earlier versions
versions-title = Earlier versions
versions-hint = While you work on this plan, it is remembered as it was every few minutes, and later as it was on days before: ten times in all. When this browser runs out of room, these go first.
version-same = as it is now
version-differs = { $count_n ->
    [one] One thing was different.
   *[other] { $count } things were different.
}
version-back = Go back to it
version-back-named = Go back to it: { $when }
version-beside = Put it beside
version-beside-named = Put it beside: { $when }
version-is-back = The plan is as it was on { $when }.
version-title = { $title } ({ $when })
tabs-taken-over = This plan was changed in another tab, and is the same here now.
tabs-merged = This plan was changed in another tab too. What was changed there and here is in it.
tabs-clash = “{ $what }” was changed in two tabs at once: to { $later }, which counts, and to { $earlier }. The plan of the other tab is among the earlier versions.
tabs-clashes = { $count } things were changed in two tabs at once, “{ $what }” first: to { $later }, which counts, and to { $earlier }. The plan of the other tab is among the earlier versions.
tabs-nothing = nothing
tabs-deleted = This plan was deleted in another tab. It is still here: once you change it, it is kept again.
restore-title = Open a file
restore-choose = A backup or a single plan
restore-hint = You can also let the file fall anywhere onto this page. Nothing is changed before you have seen what is in it.
restore-preview = What is in the file
restore-new = Not here yet.
restore-same = Here already, the same.
restore-changed = { $count_n ->
    [one] Here already; one thing is different.
   *[other] Here already; { $count } things are different.
}
restore-beside = Put it beside
restore-replace = Replace the one here
restore-leave = Leave it out
restore-settings = Take over the settings too
restore-unreadable = { $count_n ->
    [one] One plan of this file cannot be read.
   *[other] { $count } plans of this file cannot be read.
}
restore-do = Do so
restore-cancel = Do nothing
restore-done = { $count_n ->
    [one] One plan was taken over.
   *[other] { $count } plans were taken over.
}
aside-title = Set aside
aside-hint = This was kept here and could not be read. Save it as a file: whoever knows such files can perhaps read it.
aside-shelf = The list of plans
aside-settings = The settings
aside-slip = What was typed in the shop
aside-plan = A plan ({ $number })
aside-save = Save as a file
aside-save-named = Save as a file: { $what }
aside-drop = Throw away
aside-drop-named = Throw away: { $what }
aside-dropped = What could not be read is thrown away.
units-metric = metric units
units-us-customary = US customary units

## Five questions

start-title = My plan
start-hint = Answer what you can, skip the rest: what you skip is guessed, and marked as a guess until you confirm it.
start-leaves = When do you leave home?
start-cash = How much cash do you have?
start-size = How large is the van?
start-place = Where will you mostly be?
start-nights = For how many nights?
start-people = How many people?
start-skip = (skip)
start-show = Show me where I stand

## Papers: tables and the calendar file

column-day = Day
column-opening = In the morning
column-in = In
column-out = Out
column-closing = In the evening
column-receipt = Receipt
column-item = Number in the kit
column-total = Total
column-yes = yes
column-no = no
agenda-pay = Pay for { $name }: { $amount }
agenda-sell = Sell { $name } for { $amount }
agenda-charge = Charge from the mains: { $place }
agenda-refill = Fill the water cans: { $place }
agenda-on-the-way = on the way
agenda-with = With: { $names }
agenda-tool-back = “{ $name }” goes back
agenda-tool-back-to = “{ $name }” goes back to { $lender }
agenda-place-until = Last day at “{ $name }”
page-papers = Papers
papers-print = Print this sheet
papers-files = Files for other programs
papers-files-hint = They are made here, on this device. Tables open in a spreadsheet, the days in a calendar.
papers-kit = The kit as a table (CSV)
papers-cash = Cash by day as a table (CSV)
papers-agenda = What to do on which day (iCalendar)
sheet-plan = The plan
sheet-days = The days of work
sheet-shopping = Shopping list
sheet-borrowing = What to borrow
sheet-nothing = There is nothing on this list.
sheet-total = In all
sheet-no-lender = From whom is not settled
next-share = Share this plan with a friend
next-papers = Print lists, or take tables and dates along

## The page of the shop

shop-answer = What it comes to
shop-no-price = Type a price.
shop-becomes = becomes
shop-pack = How much is in one
shop-units = Units of a pack
shop-other = Another offer to compare with
shop-other-price = Its price
shop-other-pack = How much is in it
shop-tax = The price on the shelf
shop-tax-included = includes the tax
shop-tax-added = is without tax
shop-for = It is
shop-for-new = something new
shop-more = Mass, size, power, water
shop-take-paid = Bought it
shop-take-planned = Plan to buy it
shop-next-thing = Next thing
shop-taken-paid = “{ $name }” is in the kit, paid.
shop-taken-planned = “{ $name }” is in the kit, to be bought.
shop-no-name = Something from the shop
shop-past = Worked out before
shop-past-clear = Clear this list
shop-past-cleared = The list of the shop is cleared.
shop-keys = Keys
shop-key-next = Next
shop-key-divide = Divided by
shop-key-times = Times
shop-key-minus = Minus
shop-key-plus = Plus
shop-key-percent = Per cent
shop-key-open = Opening bracket
shop-key-close = Closing bracket
shop-key-mark = Decimal mark
shop-key-erase = Erase the last character
shop-key-clear = Clear the field
shop-key-bring-back = Bring back what was cleared

# Days

days-to-work = Tasks, people, tools
days-to-clearing = Clearing the flat
to-materials = Materials: what surfaces take, cut plans
days-to-papers = Sheets to print, calendar file
days-back = Back to Days
days-next = The next day of work
days-ahead = The days after it
days-none = No work is planned.
days-more = { $count_n ->
    [one] One more day
   *[other] { $count } more days
}
days-after-leaving = After the day of leaving
days-line = { $from }: { $name }, { $hours }. { $who }
days-line-ends = { $from }: { $name }, { $hours }, then done. { $who }
days-tools = Tools and places: { $names }
days-bring = Bring: { $names }
days-tick = Done
days-hour = One hour spent
days-put-off = A day later
days-ticked = “{ $name }” is done.
days-hour-noted = An hour more was spent on “{ $name }”.
days-was-put-off = “{ $name }” begins a day later; what follows moves with it.
days-chain = What makes the date
days-chain-none = Nothing is planned yet.
days-link-nothing = { $name }: at once, { $starts }
days-link-task = { $name }: { $starts }, after “{ $what }”
days-link-hands = { $name }: { $starts }, when “{ $what }” sets hands free
days-link-tool = { $name }: { $starts }, when “{ $other }” sets “{ $what }” free
days-link-item = { $name }: { $starts }, when “{ $what }” is there
days-link-its-day = { $name }: { $starts }, its first day
days-link-open-hours = { $name }: { $starts }, the first hours in which who and what it needs are there
days-bars = Along the calendar
days-bars-label = Tasks as bars along the calendar. The list of days says the same in words.
days-bars-legend = A full bar is a task with time to spare; one with a thick edge makes the date; a striped one ends after the day of leaving. A thin line is a wait, the tall one is the day of leaving.
days-sure = How likely, and what would save days
days-finish-proven = All that must be done can be done by { $finish }. No order is earlier: that is proven.
days-finish-bound = All that must be done can be done by { $finish }. No order found is earlier; none can be before { $not_before }.
days-finish-none = Not all can be placed: see what is wrong above.
days-better-order = Another order of the tasks is done earlier, on { $finish }.
days-take-order = Take that order
days-order-taken = The tasks are in the earlier order.
days-on-time = Of { $runs } runs with hours and weather by chance, all is done before you leave in: { $odds }.
days-nine-in-ten = In nine of ten it is done by { $on }.
days-how = In each run the hours of every task are drawn between its low and high, most often near the likely ones (the beta distribution of PERT, with mean (low + 4 × likely + high) ÷ 6), and each day is dry or not by its chance. Tasks keep their order and begin as early as they can. Money, deliveries and people come as planned in every run.
days-ready-plot = All done by that evening, in percent of the runs
days-savings = What would save days
days-savings-none = No single change of these saves days: one more helper, a tool that is always there, one task left out.
days-saving-helper = One more helper with the hours of the first: { $days } earlier, { $finish }
days-saving-tool = “{ $name }” there every day: { $days } earlier, { $finish }
days-saving-tool-cost = “{ $name }” there every day: { $days } earlier, { $finish }, for { $cost }
days-saving-task = Without “{ $name }”: { $days } earlier, { $finish }
days-saving-unblocks-helper = With one more helper it can be done, by { $finish }
days-saving-unblocks-tool = With “{ $name }” there every day it can be done, by { $finish }
days-saving-unblocks-task = Without “{ $name }” the rest can be done, by { $finish }
days-ways = Leave all the same, or stay longer?
days-way-leave = Leave on the day and finish on the road: { $hours } of work on { $days }, { $cost }
days-way-stay = Stay { $days } longer and leave when it is done, on { $on }: { $cost }
days-way-never = Staying alone does not do it: some task cannot be done at all as planned.

work-tasks = Tasks
tasks-add = Add a task
work-done-on = done on { $on }
work-left-out = left out
work-starters-hint = The usual tasks of a simple build without fixed wiring, with usual hours. Hours are common practice, no source: correct them.
work-starters-add = Add the usual tasks
work-starters-added = The usual tasks are on the list. Say who has the tools.
work-needs = What it needs
work-need-task = After another task
work-need-tool = A tool or place
work-need-thing = A thing of the kit
work-need-at-home = A thing at home
work-need-remove = Not needed
work-need-removed = It is not needed any more.
work-implied = Tasks that the kit implies
work-implied-hint = A tap adds the task; the thing is then needed when it begins, and the money counts it from that day.
work-implied-none = Nothing in the kit implies a task that is not on the list.
work-added = “{ $name }” is on the list.
work-helpers = Who works on the van
helpers-add = Add somebody
work-helper-hours = Mon–Fri { $workday }, Sat { $saturday }, Sun { $sunday }
work-other-days = Days that are different
other-days-add = Add a day off, or an evening promised
work-everybody = Everybody
work-day-off = off
work-tools = Tools and places
tools-add = Add a tool or a place
work-building = The van, the light, the weather
work-dates = First day and day of leaving

clearing-standing = { $open } of { $count } things have no end yet; { $gone } have left the flat. { $days } are left.
clearing-standing-undated = { $open } of { $count } things have no end yet; { $gone } have left the flat.
clearing-add = Add a thing at home
clearing-things = Everything at home
clearing-gone = It left the flat today
clearing-went = “{ $name }” has left the flat.
clearing-to-selling = Sell, keep, store
clearing-stored = Store it, or sell it and buy it again?
clearing-store = { $name }: storing is cheaper, { $rent } against { $again }.
clearing-sells = { $name }: selling and buying again is cheaper, { $again } against { $rent }.
clearing-even = Both cost the same after { $months }.

# What to change

page-changes = What to change
changes-lede = Each change was tried on the whole plan: what it mends, what else it moves, and what you give up for it. Nothing that is a must is touched.
changes-nothing = Nothing falls short, and nothing is tight: there is nothing to mend.
changes-none = None of the { $count } changes that were tried mends anything.
changes-tried = { $count } changes tried.
changes-ranked = One by one
changes-ranked-hint = What mends most for what it costs you comes first.
changes-set = The cheapest set
changes-set-proven = With these together, nothing falls short. No cheaper set among the { $count } changes that help does it: every one was tried, or ruled out by adding up.
changes-set-best = With these together, nothing falls short. It is the best that was found; a cheaper set among the { $count } changes that help is possible.
changes-set-none = Even with all of these together, this still falls short:
changes-set-nothing = None of the changes that were tried helps with what falls short.
changes-set-wait = The cheapest set is looked for.
changes-take = Make this change
changes-take-set = Make these changes
changes-taken = Changed. You can take it back.
changes-cost = What you give up: { $money } and { $days }.
changes-gain = What you give up: { $days }. It leaves { $money } more in hand at the end.
changes-cost-days = What you give up: { $days }.
changes-cost-how = The days are days on the road: the money over what a day there costs, the days that something moves, and a usual number for comfort and trouble. Common practice, no source.
changes-effects = Before and after
changes-spare = to spare: { $before } → { $after }
changes-next = What would mend it
changes-all = All changes, and the cheapest set
move-leave-out = Leave it at home: { $name }
move-fewer = Take one fewer: { $name }
move-borrow = Borrow it: { $name }
move-buy-used = Buy it used, for about { $amount }: { $name }
move-buy-later = Buy it on { $on }: { $name }
move-sell = Sell it for { $amount }: { $name }
move-ask-less = Ask { $amount } for it, so that it is gone by { $on }: { $name }
move-leave = Leave on { $on }
move-stop = Charge there on { $on }: { $name }
move-stop-always = Charge there every day you can: { $name }
move-charge-longer = Charge there longer: { $name }
move-use-less = Use it half as much: { $name }
move-hang-elsewhere = Run it from another store: { $name }
move-more-cans = Take one more: { $name }
move-heat-at-night = Leave the heater on at night, by its thermostat
move-close-cab = Hang a curtain before the cab
move-open-more = Leave more open at night
move-water-stop = Stop there for water on { $on }: { $name }
move-water-stop-always = Stop there for water whenever it comes: { $name }
move-less-water = Use less water for it: { $name }
move-lighter = Take one a third lighter: { $name }
move-smaller = Take one that is smaller by a seventh each way: { $name }
move-move-it = Put it elsewhere in the van: { $name }
move-task-later = Do it on the road: { $name }
move-leave-task-out = Do not do it at all: { $name }
move-hire-tool = Hire it: { $name }
move-take-contract = Take this contract for data: { $name }
move-end-contract = Do without this contract for data: { $name }
move-less-data = Use less data for it: { $name }
problem-counted-twice = The same was counted at { $at } already; this count is the one that counts. If it is of another time, change the hour.
problem-more-than-fits = This is more than all of them hold, { $most }. Check the count, or what the cans hold.
problem-odometer-back = On { $on } the van had driven { $before }, which is farther. Check both.
share-tells-water-stops = Where water is taken on and left: { $count }.
share-tells-shell = How the van keeps warmth, and what it is lined with.
share-tells-work = The work on the road: its hours, and what it needs.
share-tells-data = What takes data, and contracts for it: { $count }.
share-tells-cuts = Boards and sheets, what is cut of them, and how: { $count }.
share-tells-coverings = What surfaces are covered with, and packs for it: { $count }.
share-tells-wishes = What you missed or wish for: { $count }.

# The road log

page-log = Road log
next-log = Log the day: battery, litres, cash, distance, what you missed
log-lede = Count a thing now and then. Each count replaces what was computed, and together they show by how much the plan is off.
log-now = Now
log-begin = Count now
log-slept-well = Slept well
log-slept-badly = Slept badly
log-nothing-today = Nothing was counted today.
log-noted = Noted.
log-missed = Missed today
log-missed-word = What you missed, in a word
log-missed-note = I missed it today
log-learned = What the road says
log-learned-hint = What lies between two counts is held against what the plan expected of that time. A usual error of a plan is taken for granted until the counts say more. It is an estimate: by Bayesian regression, with the range it is in eight times in ten.
log-nothing-learned = Two counts of one thing, some hours apart and with no tap or socket between them, are the least it takes.
log-of-water = Water, a day
log-of-spending = Money, a day
log-of-cooling = What cools takes from { $name }, a day
log-of-draws = What else { $name } gives, a day
log-of-driving = Driving beside the way, a day
log-mean = { $mean }, between { $low } and { $high }, from { $count_n ->
    [one] one stretch
   *[other] { $count } stretches
 }.
log-planned = The plan says { $planned }.
log-not-yet = Nothing can be said of it yet.
log-contradicts = That contradicts the plan: it was hardly to be expected.
log-correct = Correct the plan by this
log-corrected = The plan is corrected. You can take it back.
log-left-out = What was left out, and why
log-outlier = far off from all other stretches, so left out.
log-gap-refilled = there was a tap on the way, or more water than before.
log-gap-charged = there was a socket on the way, or more charge than before.
log-gap-full-or-empty = the store was full or empty on the way.
log-gap-too-long = too long ago to say what happened between.
log-gap-too-short = too close together.
log-gap-at-home = not on the road.
log-gap-backwards = the distance goes back.
log-wishes = Wishes
wishes-hint = A day on which a thing is missed counts towards it. What was missed most, for its worth and its price, comes first.
wishes-add = Add a wish
wish-would-cost = would cost { $amount }
wish-earned = { $name }: missed on { $days } of { $logged } logged, worth { $worth } of 9.
wishes-not-missed = Not missed on any day so far:
wishes-never-used = Carried and not said to be used on any day so far:
log-entries = All entries
log-entries-hint = The newest first. An entry of another day is added here, too.
more = Show more
log-no-day = No day
log-line-missed = missed: { $name }
field-odometer-km = Odometer
field-measured-c = Inside, now
field-slept = The night was
choice-slept-well = good
choice-slept-badly = bad
field-missed = Missed
field-used = Used today
field-times-per-week = Times a week, if not daily
field-is-drunk = It is drunk: more in heat
field-exertion-hours = Hours of bodily work a day
field-effort = How hard that work is
field-treated = Made fit to drink
field-every-days = Every so many days
field-refills = Cans are filled there
field-empties = Used water is left there
field-empties-toilet = The toilet is emptied there
field-colour = Colour outside
field-cab = What divides the cab off
field-window-m2 = Windows of the load space
field-rib-percent = Ribs’ share of walls and roof
field-leak-cm2 = Gaps that nobody can close
field-vent-cm2 = Left open at night
field-vent-rise-mm = Height between a low and a high opening
field-open-cm2 = Opened on a hot day
field-wanted-c = Heaters keep, while awake
field-wanted-asleep-c = Heaters keep, while asleep
field-least-asleep-c = The bedding is warm enough down to
field-asleep-from-hour = Asleep from
field-asleep-until-hour = Asleep until
field-damp-percent = Humidity outside, early in the morning
field-wind-m-s = Wind where you stand
field-covers = Lies on
field-material = Of
field-thick-mm = Thickness
field-conducts-w-mk = Conductivity, if you know it
field-square-metre-kg = Mass of a square metre, if you know it
field-layer-price = All of it costs
field-made-of = The thing of the kit it is made of
field-pay-per-hour = An hour of work earns
field-work-hours = Hours of work on a working day
field-begins-hour = Work begins at
field-offline = It can be done without signal
field-weak-is-enough = A weak signal is enough
field-works-with = What must have power for it
field-too-cold-c = Too cold to work below
field-too-hot-c = Too hot to work above
field-good-mbit-s = Goes out with a good signal
field-weak-mbit-s = Goes out with a weak signal
field-data-task = Kind
field-uses-per-day = Hours or pieces on each of its days
field-data-days = On
field-each-mb = An hour or a piece takes, if you know it
field-allowance-gb = Included in a period
field-period-price = A period costs
field-period-days = Days of a period, if not a month
field-beyond = After that
field-per-gb = A GB beyond it costs
field-slow-kbit-s = The slow rate
field-would-cost = What it would cost
field-worth = How much a day without it matters, 1 to 9
page-brief = The next build
brief-lede = What the log and the plan say the next build needs, as one sheet that somebody else can quote from. Every number has its working.
brief-rests = It rests on { $logged } with entries.
brief-rests-on-plan = Nothing was logged yet: all of it rests on the plan.
brief-nothing = There is nothing to sum up yet: the plan has no route, or nothing draws, drinks or weighs.
brief-counted = counted
brief-planned = from the plan
brief-store = Power store: { $store } or more.
working-brief-store = { $need } a day, which nine days in ten stay below (of { $count }), × { $days } without a socket ÷ { $usable } that should be used = { $store }.
brief-panel = Panel: { $panel } or more, flat, if the sun is to bring it all.
working-brief-panel = { $need } a day ÷ ({ $hours } of full sun on a day duller than nine in ten, losses of the panel counted × { $charged } that reaches the store) = { $panel }.
brief-water = Water: { $litres } or more.
working-brief-water = { $need } a day, which nine days in ten stay below (of { $count }), × { $days } without a tap = { $litres }.
brief-warmth = Insulation: { $area } of roof, walls and floor. { $warm } inside take { $bare } bare, { $insulated } with { $foam } of foam.
brief-warmth-measured = Insulation: { $area } of roof, walls and floor. It was { $inside } at the coldest. { $warm } inside take { $bare } bare, { $insulated } with { $foam } of foam.
working-brief-warmth = Area × ({ $warm } − { $outside }) ÷ thermal resistance: 0.13 + 0.04 m²K/W of the air on both sides, and for { $foam } of foam its thickness ÷ 0.035 W/mK. Windows, doors, ribs and the air that is let in come on top.
brief-floor = Floor: a bed of { $bed }; what is in the van now stands along { $used }.
working-brief-floor = The tallest, { $tallest }, + { $over } = { $bed }.
brief-load = What it carries: { $payload }, without the build itself.
working-brief-load = { $people } of people + { $things } of things + { $water } of water on the heaviest day = { $payload }.
brief-money = Money: { $month } a month on the road.
brief-money-counted = Money: { $month } a month on the road, up to { $high }.
working-brief-money = { $day } a day × 30.44 days = { $month }.
caution-licensed-trades = Fixed wiring, gas, and work on the roof and what bears the van belong to licensed trades; local codes decide what is allowed. This sheet is a list of needs and no design.

# How likely

page-likely = How likely
likely-lede = Prices, sales, weather, hours and habits are drawn together, a thousand times over: in each draw, money, power, water, days and load go through the same world.
likely-nothing = There is nothing to draw: no balance is known yet.
likely-all = All of it holds: { $odds }.
likely-first = What fails first most often is { $balance }: { $odds }.
likely-first-on = What fails first most often is { $balance }: { $odds }, in half of these by { $on }.
likely-first-by = What fails first most often is { $balance }: { $odds }, in half of these by { $on }; most often by { $name }.
likely-balances = Balance by balance
likely-holds = It holds: { $held }.
likely-fails-first = It is the first to fail: { $first }. Where it fails, it does so by { $on } half the times.
likely-fails = Where it fails, it does so by { $on } half the times.
likely-unknown = not known yet
likely-inputs = What it hangs on
likely-inputs-hint = The most important first. The bar is how closely the worst margin follows it. A balance that fails in every draw is left out here, for nothing of this would mend it.
likely-no-inputs = Nothing in the plan is a range or a chance, so every draw is the likely run.
likely-halves = Fails: { $low } in its lower half, { $high } in its upper half.
likely-how = { $runs } draws from { $from } to { $until }. Each uncertain number is drawn once a draw, for whoever guesses a budget wrong guesses it wrong all along; a sale that is late comes later, and after the day of leaving not at all. Common practice, no source. The order is by rank correlation. Warmth and signal are taken as in the likely run.
likely-of-price = What it costs: { $name }
likely-of-sale-price = What it brings: { $name }
likely-of-sale-day = When it is sold: { $name }
likely-of-income = What comes in: { $name }
likely-of-cost = What is paid: { $name }
likely-of-night = The price of a night: { $name }
likely-of-van-price = The price of the van
likely-of-part-exchange = What is taken off for the present car
likely-of-fuel-use = What the van burns
likely-of-fuel-price = The price of fuel
likely-of-driving = How long and far it is: { $name }
likely-of-mains = How long there is a socket: { $name }
likely-of-use = How much it draws: { $name }
likely-of-often = How often it is used: { $name }
likely-of-water = How much water it takes: { $name }
likely-of-toilet = How much people leave in the toilet: { $name }
likely-of-mass = What it weighs: { $name }
likely-of-task-hours = How long it takes: { $name }
likely-of-clouds = How bright the days are
likely-of-dry-days = How many days are dry

# Side by side

page-beside = Side by side
beside-lede = The open plan beside others that you keep: where they differ comes first. A difference is called better only where more or less of it is better for certain.
beside-only-one = There is only one plan. Copy it under “Plans”, change the copy, and come back.
beside-choose = Beside the open plan
beside-currencies = These plans are in different currencies, so no money is compared.
beside-line = Of
beside-lines = Line by line
beside-differ = Where they differ
beside-alike = Where they do not
beside-nothing = They do not differ in anything that is compared.
beside-never = never
beside-unknown = not known
beside-better = { $value } (better)
beside-under = Which is better
beside-comes-to = { $hold } hold, { $tight } tight, { $short } short
beside-by-nothing = None is better.
beside-by-short = Less falls short.
beside-by-hold = More holds.
beside-by-cash = More cash at the end.
beside-turns = Not as it is as planned.
beside-only = What not all of them have
beside-thing = Thing
beside-none = –
beside-kit-alike = All have the same things.
beside-verdict = verdict
beside-margin = to spare
beside-first-short = first short
beside-cash-at-end = Cash at the end
beside-lowest-cash = Lowest cash
beside-kit-to-pay = Still to pay for the kit
beside-month-on-road = A month on the road
beside-month-at-home = A month at home
beside-day-on-road = A day on the road
beside-paid-back = Paid back on
beside-leaves = Leaves on
beside-ends = Ends on
beside-done = All work done
beside-hours-left = Work left
beside-empty-mass = Empty van
beside-kit-mass = Kit
beside-most-mass = At its heaviest
beside-spare-mass = May still come in
beside-fresh-litres = Cans hold
beside-litres-a-day = Water a day
beside-lowest-litres = Least water left
beside-stores-hold = Stores hold
beside-drawn-a-day = Drawn a day
beside-sun-a-day = From the sun a day
beside-goods = To put away
beside-left-over = No room for
beside-as-planned = If all goes as planned
beside-dear-purchases = If purchases cost the most they can
beside-sales-fail = If uncertain sales fail
beside-much-used = If as much is used as can be
beside-duller-sky = If panels get a fifth less light
beside-dear-running = If running costs are a fifth dearer
beside-leaving-later = If the van leaves two weeks later

page-warmth = Warmth
page-signal = Signal
warmth-to-sky = The air outside: sky and air of places
warmth-to-inside = The sizes: the inside of the van
warmth-nights = Nights
warmth-air = Air to breathe
warmth-answers = What would do
warmth-surfaces = What the shell lets through
warmth-layers = Layers
warmth-wanted = Asleep and warm
warmth-open = What is open
warmth-heats = What heats, burns and blows
warmth-add-heater = Add a heater, stove or fan in the kit
warmth-plot = Inside
warmth-air-plot = Carbon dioxide inside, in parts per million
warmth-air-limits = The line is the limit at work over eight hours, 5,000 ppm; over fifteen minutes it is 30,000 (OSHA, ACGIH, NIOSH). They are for healthy people at work. Outdoors there are some 420.
warmth-coldest-night = Coldest night
warmth-asleep = Asleep
warmth-inside = Inside
warmth-outside = Outside
warmth-dew = Dew point
warmth-day-said = Coldest inside { $inside } at { $at }, with { $outside } outside and { $humidity } humidity inside.
warmth-roof = Roof
warmth-sides = Sides
warmth-doors = Doors
warmth-floor = Floor
warmth-cab = Cab
warmth-divider = Cab’s divider
warmth-ribs = ribs
warmth-window = window
warmth-surface = Surface
warmth-area = Area
warmth-lets-through = Lets through
warmth-loses = Loses
warmth-share = Of all
warmth-fresh-air = Fresh air, asleep
warmth-wet-title = What gets wet
warmth-face = Inner face
warmth-coldest = Coldest
warmth-wet-hours = Wet for
warmth-most-water = Most water
warmth-stays-dry = stays dry
warmth-layers-hint = The layers of a surface, from the steel inwards. Conductivities are declared or handbook values; what you know better counts.
warmth-add-layer = Add a layer
warmth-layer = Layer
warmth-saves = Saves
warmth-per-money = For { $one }
warmth-per-kilogram = A kilogram
warmth-per-millimetre = A millimetre
warmth-no-heater = { $wanted } inside take no heater: it is never below { $without } while somebody is inside, as if each hour lasted.
warmth-stores = The power store
warmth-store-takes = What is heavy inside, such as the cells of a power store, gets { $coldest } to { $hottest }. No charging is lost by that.
warmth-store-refuses = What is heavy inside, such as the cells of a power store, gets { $coldest } to { $hottest }: in { $hours } something is on offer and it does not charge.
warmth-heater = { $wanted } inside take { $most } in the worst hour; without a heater it is { $without } then. Over the { $hours } with somebody inside that is { $heat } of heat.
warmth-fuel = { $name } burns { $amount } for that.
warmth-fuel-price = { $name } burns { $amount } for that: { $price }.
warmth-dry = All inner faces stay dry in the wettest hour with { $air } of fresh air: some { $open } open beside the gaps, where { $is } are left open.
warmth-never-dry = No opening keeps every face dry in the wettest hour: the air outside is too damp for how cold they are.
warmth-fresh = The air stays below 1,500 ppm with { $air } of fresh air: some { $open } open beside the gaps, where { $is } are left open.
warmth-never-fresh = No opening keeps the air below 1,500 ppm.
warmth-hot-day = Parked on a hot day
warmth-hot-outside = Nobody inside, { $outside } outside at most, in the sun.
warmth-parked = Parked
warmth-hottest = Hottest inside
warmth-hottest-at = At
warmth-in-shade = in the shade of trees
warmth-all-open = all open
warmth-fans-on = fans on
warmth-as-it-is = as it is
warmth-too-cold = It is { $inside } inside on { $at }; the bedding is for { $least }. { $nights_n ->
    [one] So it is in one night.
   *[other] So it is in { $nights } nights.
}
next-warmth-too-cold = Warmer bedding, a heater with its cautions, more on the walls, or a milder place.
warmth-nearly-too-cold = It is { $inside } inside on { $at }, near the { $least } that the bedding is for.
warmth-heater-too-weak = What heats does not reach { $wanted }: it is { $inside } inside on { $at }.
next-warmth-heater-too-weak = More heat, more on the walls, or less wanted. An empty power store heats nothing.
warmth-nothing-heats = { $wanted } are wanted inside, and nothing in the kit heats.
next-warmth-nothing-heats = Say of a thing in the kit that it burns or draws by a thermostat.
warmth-gets-wet = From { $at } on water settles inside: { $faces_n ->
    [one] on one inner face
   *[other] on { $faces } inner faces
}, in { $hours } hours, up to { $most } of it.
next-warmth-gets-wet = Open more, wipe, keep bedding off cold steel; the table shows where.
warmth-stale-air = The air gets stale: { $most } of carbon dioxide on { $at }.
warmth-bad-air = From { $at } on there is more carbon dioxide than the { $limit } that are allowed at work; { $most } at worst.
next-warmth-air = Leave more open at night; the answers below say how much.
warmth-open-flame-heats = { $name } heats the room with an open flame: its fumes, water and carbon monoxide stay inside.
warmth-flame-while-asleep = { $name } burns with an open flame while you sleep.
next-warmth-flame = Put it out before you sleep, and heat only with what leads its fumes outside.
warmth-idle-foil = { $name }: foil saves next to nothing where no closed air lies beside it.
next-warmth-idle-foil = Leave a gap of 20 mm or more on its bright side, or save the money.
warmth-hot-inside = It gets { $inside } inside on { $at }.
next-warmth-hot-inside = Shade, open, be elsewhere; never leave people or animals in it.
working-warmth-shell = { $area } of shell let { $shell } through; fresh air takes { $air } more while you sleep.
working-warmth-night = On { $at }: { $outside } outside, { $people } from people and flames, { $heater } from a burner by its thermostat, give { $inside } inside; less { $least } is { $margin }.
working-warmth-dew = Air of { $inside } with { $humidity } of what it can bear is wet on all that is colder than { $dew }.
working-warmth-air = { $fresh } of fresh air in that hour, and { $ppm } of carbon dioxide with those who sleep there.
signal-no-contract = Some { $month } are used in a month, and no contract is in use.
next-signal-no-contract = Add a contract, or say which one is in use.
signal-runs-out = Data runs out on { $on }; { $missing } too little until the allowance begins anew.
next-signal-runs-out = Use less of what takes most, load it where there is a network of the house, or take a larger contract.
signal-may-run-out = If as much is used as may be, data runs out on { $on }; { $missing } too little until the allowance begins anew.
signal-slow-for-all = The allowance is used up on { $on }. What comes after it, { $rate }, is still enough for all that you use.
signal-slow-for-some = The allowance is used up on { $on }. What comes after it, { $rate }, is enough for { $serves } of your { $of } uses.
next-signal-slow = Do what needs a fast line before then, or use less.
signal-paid-beyond = The allowance is used up on { $on }. What is used beyond it costs { $amount } in all, at worst { $day } in a day.
next-signal-paid-beyond = Compare that with a larger contract. The money counts it.
signal-cheaper-set = In the month with most data, these would be enough and cost { $saves } less: { $names }.
next-signal-cheaper-set = Look at how long each contract binds you before you change.
signal-hours-without-signal = { $hours } of work are without signal, the first on { $on }. Their pay is { $pay }.
signal-hours-weak = { $hours } of work have a weak signal only, which is not enough, the first on { $on }. Their pay is { $pay }.
next-signal-hours-signal = Work on other days or elsewhere, or take work along that needs no signal.
signal-hours-without-power = { $hours } of work are without power, the first on { $on }. Their pay is { $pay }.
next-signal-hours-power = See the page of power: charge before, or draw less.
signal-hours-unbearable = { $hours } of work are too cold or too hot inside, the first on { $on }. Their pay is { $pay }.
next-signal-hours-unbearable = Work at other hours of the day, or elsewhere. See the page of warmth.
signal-hours-unknown = { $hours } of work are where it is not known whether they can be done, at { $places_n ->
    [one] one place
   *[other] { $places } places
}, the first on { $on }. Their pay is { $pay }.
next-signal-hours-unknown = Ask those who were there, and say on the route what signal there is.
signal-nothing-powered = Nothing that the work needs draws power in the kit.
next-signal-nothing-powered = Say what must have power for it, or put it under the heading of work.
working-signal-month = { $uses_n ->
    [one] One use
   *[other] { $uses } uses
}, each its hours or pieces × what one takes, over { $days } from { $from }: { $low } to { $high }, likely { $likely }
working-signal-left = allowance − what is used of it until { $on } = { $left }
working-signal-pay = { $lost } of { $wanted } × { $pay } = { $certain }; { $unknown_hours } not known × { $pay } = { $unknown }

signal-at-risk = Hours of work that may be lost
signal-send = Can I send this before I must leave?
signal-uses = What takes data
signal-contracts = Contracts for data
signal-work = The work on the road
signal-places = Places and their signal
signal-left-plot = Left of what is included, by day
signal-day-plot = Data used by day
signal-busiest = Most is used in the month from { $from }: likely { $likely }, { $low } to { $high }.
signal-uses-hint = Calls, films, mail, maps, updates: hours or pieces a day, of all people together. What your phone itself counts wins over the usual figures.
signal-use-line = { $day } on a day of use
signal-add-use = Add something that takes data
signal-usual-hour = Usually { $low } to { $high } an hour, likely { $likely } ({ $source }).
signal-usual-piece = Usually { $low } to { $high } apiece, likely { $likely } ({ $source }).
signal-each-needed = It counts as nothing until you say what an hour or a piece takes.
signal-contracts-hint = Those in use are paid from the day of leaving to the end of the route. The others of the list are held against them.
signal-add-contract = Add a contract or a prepaid card
signal-unlimited = without limit
signal-in-use = in use
signal-not-in-use = not in use
signal-cheapest = Cheapest of the list for the month with most data: { $names }, for { $price }.
signal-cheapest-beside = Cheapest of the list for the month with most data: { $names }, for { $price }. What is in use costs { $now } then.
signal-periods = Period by period
signal-period-contract = Contract
signal-period-from = From
signal-period-used = Likely used
signal-no-work = Say how many hours a day you work on the road, and it is held against signal, power and the temperature inside.
signal-hours-sum = { $sure } of { $wanted } lack nothing. At risk: { $certain } for certain, { $unknown } where it is not known.
signal-warmth-known = Signal, power and the temperature inside were looked at.
signal-warmth-unknown = Signal and power were looked at. The temperature inside was not worked out, so no hour counts as too cold or too hot.
signal-everywhere = everywhere
signal-cause = What is lacking
signal-place = Where
signal-hours = Hours
signal-pay = Pay
signal-by-day = Day by day
signal-day = Day
signal-lost-hours = Lost
signal-lost-pay = Their pay
signal-unknown-hours = Not known
signal-unknown-pay = Pay not known
signal-cause-no-signal = no signal
signal-cause-weak = signal too weak
signal-cause-no-power = no power
signal-cause-unbearable = too cold or too hot
signal-cause-unknown = not known
signal-to-route = Change it on the route
send-hint = A rough answer. Some of the line goes to the packets around the file; lost packets and a busy mast take more. A size may be typed with its unit: 1.5 GB, 700 MiB.
send-size = The file has
send-hours = I must leave in
send-rate = It goes out at
send-where = By the signal of
send-typed = a rate I type
send-good = a good signal
send-weak = a weak signal
send-place = { $place } ({ $signal })
send-signal-unknown = Nobody said what signal there is there.
send-no-signal = There is no signal there: nothing goes out.
send-yes = Yes, also at the lowest rate: { $longest } at the longest, likely { $usual }.
send-likely = Likely, in { $usual }. At the lowest rate { $low } of it is through by then.
send-hardly = Hardly: likely { $likely } of it is through by then, and all of it only at the highest rate, in { $shortest }.
send-no = No: { $low } to { $high } of it is through by then, likely { $likely }. It would have to go out at { $needs }.
send-no-time = No: there is no time for it.
send-hours-minutes = { $hours } h { $minutes } min
send-minutes = { $minutes } min
send-never = no end
shop-to-send = Can I send this file before I must leave?

# Materials

field-stock-kind = Cut as
choice-stock-kind-board = a board, to lengths
choice-stock-kind-sheet = a sheet, to rectangles
field-nominal = Sold by the nominal size
choice-nominal-1x2 = 1 × 2
choice-nominal-1x3 = 1 × 3
choice-nominal-1x4 = 1 × 4
choice-nominal-1x6 = 1 × 6
choice-nominal-1x8 = 1 × 8
choice-nominal-2x2 = 2 × 2
choice-nominal-2x3 = 2 × 3
choice-nominal-2x4 = 2 × 4
choice-nominal-2x6 = 2 × 6
choice-nominal-4x4 = 4 × 4
choice-nominal-panel-quarter = panel, 1/4 in
choice-nominal-panel-three-eighths = panel, 3/8 in
choice-nominal-panel-half = panel, 1/2 in
choice-nominal-panel-five-eighths = panel, 5/8 in
choice-nominal-panel-three-quarters = panel, 3/4 in
field-stock-price = Price of one board or sheet
field-at-hand = It is at hand: own scrap, used first
field-how-many = How many there are, if not enough
field-one-kg = Mass of one of these
field-bought-as = Its entry in the kit
field-flawed = In the board
field-flaw-from-mm = It starts, from the board's beginning
field-flaw-to-mm = It ends, from there too
field-cut-from = Cut from, or from others like it
field-pieces = How many pieces
field-keeps-grain = Its length keeps to the grain
field-kerf-mm = What a cut takes away
field-trim-mm = Cut off at each end or edge first
field-cut-for = Cut for
choice-cut-for-cheapest = the least money
choice-cut-for-fewest = the fewest bought
field-surface = Surface
choice-surface-own = one of your own, by its area
choice-surface-roof = roof
choice-surface-sides = sides, without doors and windows
choice-surface-roof-and-sides = roof and sides
choice-surface-doors = doors, without their windows
choice-surface-floor = floor
field-own-m2 = Its area, less openings
field-waste-percent = More for waste
field-coats = Coats or layers
field-unit-covers-m2 = A litre, kilogram, metre or piece is enough for
field-each-m2-takes = Or: litres, kilograms, metres or pieces for a square metre
field-rest-used-percent = What is left over will be used, that much of it
field-same-as = Takes of the packs for
field-from-pack = Bought in, if not the cheapest
field-covering = For the covering
field-pack-price = Price of a pack
field-pack-m2 = Area in a pack, or that it covers
field-pack-l = Volume in a pack
field-pack-kg = Weight in a pack
field-pack-mm = Length in a pack
field-pack-pieces = Pieces in a pack
page-materials = Materials
materials-lede = What surfaces take, how boards and sheets are cut, and what that costs. What you buy goes into the kit with one tap.
materials-coverings = Coverings: panels, foam, paint, glue, screws
materials-coverings-hint = Surfaces of the van go by its sizes, less doors and windows. Counted in thousandths of a square metre.
materials-add-covering = Add a covering
materials-packs = Packs it could be bought in
materials-packs-hint = Say for each pack how much is in it, in one of the fields. With tax, whole packs and what is left over, another may be cheaper than the one with the lowest price for what is in it.
materials-add-pack = Add a pack
materials-no-price = no price
materials-scrap = at hand
materials-needed = { $area } × { $coats } + { $waste } waste = { $needed }
materials-needed-units = { $area } × { $coats } + { $waste } waste, × { $takes } for a square metre = { $needed }
materials-bought = Packs: { $packs }, for { $price }
materials-packs-unknown = Add a pack with its price, and say what it is enough for.
materials-left-over = Left over: { $amount }
materials-of-packs = It takes what is left over of “{ $name }” first.
materials-pack = Pack
materials-pack-count = How many
materials-pack-total = At the till
materials-pack-unit = For each unit
materials-pack-counted = Less what is used of the rest
materials-pack-unknown = not known: its price, what is in it counted as in the others, or what that is enough for
materials-cheapest = { $name }, the cheapest for this
materials-cheapest-by-unit = { $name }, the cheapest by the unit alone
materials-into-kit = Put it into the kit
materials-in-kit = It is in the kit, with its price, weight and size.
materials-stock = Boards and sheets
materials-stock-hint = All lengths you can buy, with their prices, and your own scrap. Boards of the same material, thickness and width go together; so do sheets of the same material and thickness.
materials-add-stock = Add a board or a sheet
materials-actual = Really { $thick } thick and { $width } wide, dressed and dry.
materials-actual-panel = Really about { $thick } thick. Measure one.
materials-flaws = Bad places of boards
materials-flaws-hint = Knots, splits, old holes: nothing is cut from there. Enter a board that has any on its own, as one.
materials-add-flaw = Add a bad place
materials-flaw-line = { $from } to { $to }
materials-flaws-wrong = “{ $name }”: each bad place ends behind where it starts, and there are { $most } of them at most.
materials-bad-place = Not used, crossed out: { $from } to { $to }.
materials-cuts = Pieces you want
materials-cuts-hint = Each size once, with how many. Pieces of a sheet have a width too.
materials-add-cut = Add a piece
materials-cut-line = { $count } of { $size }
materials-cutting = Saw
materials-counting = Rolls and screws
count-rolls = Rolls by strips
count-rolls-hint = What is laid in strips takes more than its area says. Nothing is pieced together.
count-roll-length = Length of a roll
count-roll-width = Width of a roll
count-run = Length of the surface, along the strips
count-side = Width of the surface
count-overlap = Each strip lies on the one before by
count-cut-off = Cut off each strip, for fitting
count-rolls-so = Strips side by side: { $strips }, from each roll: { $each }. Rolls to buy: { $rolls }.
count-rolls-not = No roll is as long as a strip, or the strips would lie wholly on one another.
count-screws = Screws in a row
count-screws-hint = The first and the last that far from the ends, no two farther apart than that. Who makes the panel or the fixing may ask for less.
count-row = Length of the row
count-edge = From each end
count-spacing = At most this far apart
count-screws-so = Screws: { $count }
materials-plan = Cut plan
materials-stopped = Stopped. What was found so far is below.
materials-again = Look again
materials-from-nothing = “{ $name }”: say what it is cut from.
materials-missing = “{ $name }”: there is not enough for { $count } of them.
materials-more = Cut in other ways, not drawn here: { $count }
materials-proven-cheapest = { $count } in all, { $bought } to buy, for { $cost } with tax. Nothing is cheaper: that is proven. Lost: { $waste }.
materials-proven-fewest = { $count } in all, { $bought } to buy, for { $cost } with tax. Fewer are not enough: that is proven. Lost: { $waste }.
materials-bound-cheapest = { $count } in all, { $bought } to buy, for { $cost } with tax. It cannot be done for less than { $bound }. Lost: { $waste }.
materials-bound-fewest = { $count } in all, { $bought } to buy, for { $cost } with tax. It cannot be done with fewer than { $bound }. Lost: { $waste }.
materials-so-far = So far: { $count } in all, { $bought } to buy, for { $cost } with tax. Lost: { $waste }.
materials-piece-size = “{ $name }”: enter how large it is, above zero; of a sheet, its length and its width.
materials-piece-too-large = “{ $name }” is larger than everything it could be cut from, what is trimmed off counted.
materials-stock-size = “{ $name }”: enter its length, of a sheet its width too, above zero.
materials-stock-price = “{ $name }”: enter its price, or say that it is at hand.
materials-kerf-wrong = What a cut takes away is no length.
materials-trim-wrong = What is cut off first is no length.
materials-too-many-pieces = More pieces than can be looked at: { $most } at most. Nothing is lost; take some out, or cut them in two lots.
materials-too-many-stock = More boards or sheets than can be looked at: { $most } at most.
materials-one = { $count } like this: { $name }, { $length }
materials-picture = The pieces where they are cut: { $count }. The table says the same.
materials-pieces = Pieces
materials-piece = Piece
materials-piece-along = From the end
materials-piece-length = Along
materials-piece-place = From the end × from the side
materials-piece-sides = Along × across
materials-trim-ends = First cut { $trim } off each end. All is measured from the end as it was.
materials-trim-edges = First cut { $trim } off each edge. All is measured from the edges as they were.
materials-cut-order = Cuts, in this order; the saw takes its width beyond each mark:
materials-left = Largest piece left: { $size }
materials-saw = At { $at }
materials-saw-across = Across at { $at }, from { $from } to { $to }
materials-saw-along = Along at { $at }, from { $from } to { $to }
