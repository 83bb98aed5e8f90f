### English. Every sentence the project says, one file per language.
### In sentences with figures, { $name } is the formatted figure and { $name_n } its bare number, for plurals.

## Numbers with their units

measure-kilograms = { $number } kg
measure-pounds = { $number } lb
measure-millimetres = { $number } mm
measure-inches = { $number } in
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
measure-nights = { $n ->
    [one] { $number } night
   *[other] { $number } nights
}
measure-percent = { $number } %
measure-count = { $number }
moment = { $date }, { $time }

unit-kilograms = kg
unit-pounds = lb
unit-millimetres = mm
unit-inches = in
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
unit-nights = nights
unit-percent = %
unit-hour-of-day = o’clock
unit-day-of-month = of the month
unit-count = pieces

## Money

money-below-floor = Cash falls below your floor on { $on }. On the worst day, { $lowest_on }, { $missing } is missing.
next-money-below-floor = Bring in { $missing } by { $on }: sell something earlier, move a purchase to a later day, or leave a want out.
money-close-to-floor = The lowest day is { $lowest_on }, with { $margin } to spare: less than a week on the road.
next-money-close-to-floor = One late sale could break it. Keep something you could still sell.
money-largest-before = The largest purchase before that which is not a must: { $name }, { $amount }.
next-money-largest-before = Buy { $name } later, borrow it, or leave it out.
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
    [one] { $name } has no price yet and counts as nothing.
   *[other] { $count } things to buy or make have no price yet and count as nothing, { $name } first.
}
next-money-without-price = A rough price is better than none.

working-money-lowest = { $opening } + { $inflow } in − { $outflow } out = { $lowest } on { $on }
working-money-margin = { $lowest } lowest − { $floor } floor = { $margin }
working-money-cushion = Tight below { $days } of running costs on the road: { $cushion }

## Power

power-runs-out = { $name } is empty on { $at }. In all, { $short } go without, { $missing } are missing.
next-power-runs-out = Charge before then, for longer or at one more stop; or use something less on days without charging.
power-close-to-empty = { $name } is lowest on { $at }, with { $reserve } of reserve.
next-power-close-to-empty = One day more without charging would empty it.
power-above-outlet = { $name } needs { $needs }, the outlet gives { $limit }: it does not run, however much energy there is.
power-above-surge = { $name } needs { $needs } to start, the outlets give { $limit } for a moment: it trips them, although there is energy.
next-power-above-outlet = Take a weaker one, one without electricity, or use it only where there is mains.
power-together-above-outlet = Around { $hour }, what may run at once on { $name } needs { $needs }; its outlets give { $limit }.
next-power-together-above-outlet = Take turns: not both at the same time.
power-no-store = { $count_n ->
    [one] { $name } draws power and has no store to run on.
   *[other] { $count } things draw power and have no store to run on, { $name } first.
}
next-power-no-store = Add a power store to the kit, or take out what needs one.
power-nothing-draws = Nothing in the kit draws power.

working-power-reserve = { $lowest } at the lowest moment ÷ { $average } average draw = { $reserve } of reserve
working-power-energy = { $put_in } in, { $taken_out } out, { $missing } missing, at the cells
working-power-socket = The vehicle’s socket gives at most { $socket } for hours: volts × amperes of the fuse × 0.8
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

working-water-days = { $left } left on { $on } ÷ { $use } a day = { $days }
working-water-mass = { $capacity } of fresh water × 0.998 kg/L = { $mass }

## Sources

source-arithmetic = arithmetic
source-common-practice = common practice, no source
source-published = source: { $name }

## Cautions

caution-store-heat-and-frost = Lithium stores are harmed by heat and must not be charged in frost, and a damaged one can burn. Keep it where its maker’s manual says.
caution-charging-unattended = Charge where you can watch it, on something that does not burn, with the vents free. The maker’s manual goes before anything here.
caution-extension-leads = Unroll extension leads, never plug one into another, and keep plugs dry. Fixed wiring belongs to a licensed electrician.
caution-engine-while-parked = Never run the engine to charge while parked in a closed place or while anyone sleeps: exhaust contains carbon monoxide, which kills unnoticed.
caution-water-quality = Water that stands goes bad, and not every tap is for drinking. Clean the cans often and follow what health authorities say.
caution-grey-water-rules = Used water may be emptied only where it is allowed; local rules differ.
caution-nights-not-cleared = For some nights it is not stated that staying is allowed. Ask first, and have another place in reach.

## Problems

problem-not-json = This is not a plan file: it cannot be read beyond line { $line }, column { $column }.
problem-too-large = This is larger than any plan: at most { $most } bytes are read.
problem-not-a-plan = This is not a plan file.
problem-newer-version = This file is of version { $found }; this app knows version { $known }. What it does not know is kept, but not counted.
problem-not-a-list = A list belongs here.
problem-not-an-entry = An entry with named fields belongs here.
problem-too-many-entries = Only the first { $most } entries are counted; the others are kept.
problem-id-not-unique = Two entries have the id { $id }; one was given a new one.
problem-not-text = Text belongs here.
problem-text-too-long = At most { $most } characters.
problem-not-a-number = A number belongs here, such as { $example }.
problem-not-whole = A whole number belongs here, such as { $example }.
problem-out-of-range = From { $min } to { $max }.
problem-not-money = An amount belongs here, such as { $example }.
problem-negative-money = Not less than nothing.
problem-too-much-money = At most { $most }.
problem-not-a-rate = A percentage from 0 to 100.
problem-not-a-date = A date belongs here, written year-month-day.
problem-not-a-flag = Yes or no.
problem-not-a-choice = One of: { $choices }.
problem-not-a-currency = Three capital letters, such as EUR.
problem-range-reversed = Low, likely and high must be in that order.
problem-range-not-taken = One value only here.
problem-dates-reversed = { $second } is before { $first }; it must not be.
problem-no-such-store = There is no power store with the number { $id } in the kit.
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
rough-water-drinking = Drinking
rough-water-cooking = Cooking
rough-water-washing = Washing
