# The remembered day beside today: what was changed, why it moved, and what every instrument makes of it.

days-title = Yesterday and today
days-see = See both days
days-at-moment = While time runs, yesterday, in balance at the levels it was kept with, is compared with what stands now, every other second.
days-print = Print
days-table = Every instrument on both days: how far it moved, whether that is more than it can err by itself, and why
days-column-reading = Instrument
days-column-yesterday = Yesterday
days-column-today = Today
days-column-change = Change
days-column-why = Why
days-foot = A change counts where it is larger than a sound instrument can make by itself between two looks; where another one hangs in its place, larger than what both of them may err.

## What changed: one cause of the catalogue
causes-open = What changed…
causes-open-long = Let one cause happen to the plant as it stands, and compare it with the day before
causes-title = What changed
causes-about = One thing happens to the plant as it stands. Where no day is remembered yet, what it was before is kept as yesterday. Undo takes it back.
causes-choose = Cause
causes-apply = Let it happen
causes-hidden = Out of sight: only the instruments tell
causes-hidden-about = Out of sight, the drawing, the controls and the panels show everything as it was set; curves, stack, notes, sentences and the running clock are put away, and dials, levels and both days’ readings are left. A link carries it under a veil, which hides it from the eye and not from anyone who wants to know.
causes-chance = Surprise me
causes-failed = That cannot happen here. { $text }

## Something hidden
hidden-says = Something has changed out of sight.
hidden-about = Everything is drawn as it was set; only dials, levels and readings tell the truth. Work the rig, see what moves and what does not, and say what it is before you ask.
hidden-reveal = Show what it was
hidden-told = It was this: { $happened }
hidden-told-size = It was this: { $happened } { $name }: { $size }.
hidden-close = Put this away
hidden-days = What every instrument shows beside yesterday. Why is for you to say.

## The story
days-nothing = Nothing was changed since yesterday.
days-changed = Since yesterday: { $changes }.
days-between = {"; "}
# $side is one of the words below
days-key = { $name } { $before } → { $after } ({ $side })
days-side-load = load
days-side-machine = machine
days-side-drive = drive
days-side-liquid = liquid
days-side-instrument = instrument
days-mover-load = At yesterday’s { $flow } { $load }; the pump’s curve is where it was.
days-mover-machine = At yesterday’s { $flow } { $machine }; the load is the same.
days-mover-both = At yesterday’s { $flow } { $load }, and { $machine }.
days-neither = At yesterday’s flow, load and pump are as they were.
days-neither-instrument = Load and pump are as they were: only what the instruments show is another.
days-load-moved = the load now asks { $after } instead of { $before }
days-load-shut = the load lets nothing pass any more
days-load-opened = the load, which let nothing pass, now asks { $after }
days-load-unknown = the load lets nothing pass
days-machine-moved = the pump now answers { $after } instead of { $before }
days-machine-shut = the pump no longer answers with a head of its own
days-machine-opened = the pump now answers { $after }
days-machine-unknown = the pump gives another flow, whatever is asked
days-then = So { $flow }, and { $head }.
days-then-flow-up = the flow rose from { $before } to { $after }
days-then-flow-down = the flow fell from { $before } to { $after }
days-then-flow-same = the flow stays at { $after }
days-then-head-up = the head from { $before } to { $after }
days-then-head-down = the head from { $before } to { $after }
days-then-head-same = the head stays at { $after }

## Several changes
days-part = { $name }: { $first } of flow
days-part-both = { $name }: { $first } of flow where it comes first, { $last } where it comes last
days-order-same = The order in which they are made does not matter.
days-order-matters = What each does depends on what else has been done: no single number is its part.

## Rows
days-moved-up = more than the instrument can err by itself ({ $explained })
days-moved-down = more than the instrument can err by itself ({ $explained })
days-moved-same = no more than the instrument can err by itself ({ $explained })
days-moved-unknown = cannot be told

## Why a reading moved
days-why-instrument = The instrument itself is another, or is wrong otherwise than it was.
days-why-supply-up = The level or the pressure in the supply vessel is higher.
days-why-supply-down = The level or the pressure in the supply vessel is lower.
days-why-flow-before-up = Less flow loses less on its way to the pump.
days-why-flow-before-down = More flow loses more on its way to the pump.
days-why-line-before-up = The suction line itself takes less.
days-why-line-before-down = The suction line itself takes more.
days-why-delivery-up = The level or the pressure at the far end is higher.
days-why-delivery-down = The level or the pressure at the far end is lower.
days-why-flow-behind-up = More flow needs more head behind the valve.
days-why-flow-behind-down = Less flow needs less head behind the valve.
days-why-line-behind-up = The line behind the valve itself takes more.
days-why-line-behind-down = The line behind the valve itself takes less.
days-why-suction-up = The pressure in front of the pump is higher, and the pump adds to it.
days-why-suction-down = The pressure in front of the pump is lower, and the pump adds to it.
days-why-curve-up = The same pump, further back on its curve, answers with more head.
days-why-curve-down = The same pump, further out on its curve, answers with less head.
days-why-machine-up = The pump answers with more head than it did at that flow.
days-why-machine-down = The pump answers with less head than it did at that flow.
days-why-asked-up = More head is asked, and this pump gives its flow whatever is asked.
days-why-asked-down = Less head is asked, and this pump gives its flow whatever is asked.
days-why-liquid-up = The liquid is heavier.
days-why-liquid-down = The liquid is lighter.
days-why-place = Velocity or height at its place is another.
days-why-load-up = The load asks for less, so more flows.
days-why-load-down = The load asks for more, so less flows.
days-why-divided-up = The pump gives less, but more of it comes past this meter.
days-why-divided-down = The pump gives more, but more of it takes another way than past this meter.
days-why-both = Load and pump have both changed.
days-why-current-curve-more-up = The same pump needs more power at its larger flow.
days-why-current-curve-more-down = The same pump needs less power at its larger flow.
days-why-current-curve-less-up = The same pump needs more power at its smaller flow.
days-why-current-curve-less-down = The same pump needs less power at its smaller flow.
days-why-current-machine-up = Pump or drive takes more than it did at that flow.
days-why-current-machine-down = Pump or drive takes less than it did at that flow.
days-why-current-asked-up = More head is asked, and that takes more power.
days-why-current-asked-down = Less head is asked, and that takes less power.
days-why-current-liquid-up = This liquid takes more power to pump.
days-why-current-liquid-down = This liquid takes less power to pump.
days-why-drive-up = The drive turns it faster.
days-why-drive-down = The drive turns it slower.
days-why-slip-up = The motor has less to carry, and slips less.
days-why-slip-down = The motor has more to carry, and slips more.
days-why-driven-up = Liquid turns the pump that stands.
days-why-driven-down = Liquid turns the pump that stands no more.
days-why-motor = It has another motor.
days-why-set = The level itself is another.
days-why-time-up = More came than left.
days-why-time-down = More left than came.
days-why-controller = The controller has set another output.
