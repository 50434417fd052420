### Notes on an answer: a title, a caution for the real plant in few words, and what it means; then the names of places.
### Numbers arrive as text with their unit.

notes-label = What to know about this answer
note-dead-headed = Nothing flows through { $where }; at no flow the head is { $head }, the shut-off head. The { $shaft_power } at the shaft only heat the liquid inside.
    .title = Running, but nothing flows
    .caution = Minutes at most: the liquid heats, seals fail; with both valves shut and running the casing can burst.
note-dead-headed-propeller = Nothing flows through { $where }; at no flow the head is { $head }. A propeller takes most power there: the { $shaft_power } at the shaft only churn and heat the liquid inside.
    .title = Running, but nothing flows
    .caution = Never shut an axial pump in, not even for a test: its motor overloads, the liquid heats.
note-beyond-curve = { $where } { $count ->
    [one] delivers
   *[other] deliver, each,
 } { $flow }, more than the { $last_flow } that the maker measured. What is shown there is an estimate.
    .title = Beyond the last point of the curve
note-below-vapour-pressure = At { $where } the pressure would be { $pressure }; the liquid boils at { $vapour_pressure }. The real flow is less than shown.
    .title = The liquid would boil
    .caution = Vapour hammers and pits the pump, and the head collapses. Clear the suction side, or ask for less flow.
note-below-vapour-pressure-behind = At { $where } the pressure would fall to { $pressure }; the liquid boils at { $vapour_pressure }. The line is not full there: true pressures and flow differ from those shown.
    .title = The liquid column may part
    .caution = Where it closes again it hammers the pipe. Throttle at the low end of the line, not above it.
note-other-speed = { $where } { $count ->
    [one] runs
   *[other] run
 } at { $speed }, but the points were measured at { $measured_speed }. So far away the affinity laws are a rough guide. Do poles, frequency and belt suit this pump?
    .title = Far from the measured speed
note-npsh-short = { $where } { $count ->
    [one] needs
   *[other] need, each,
 } { $required } of NPSH; there are { $available }. { $curable ->
    [yes] Below { $enough } there is enough: throttling the discharge cures it, as less flow needs less and loses less on the way. It does not clean a strainer, raise the level or cool the tank.
   *[no] There is too little at any flow: throttling the discharge does not cure it. Look at the strainer, the level, the height of the pump, the heat.
 } Gauges hunt, head and flow are lower than they would be.
    .title = Too little NPSH
    .caution = Cavitation: noise, damage. Never throttle the suction: that takes still more NPSH away.
note-npsh-not-counted = Two pumps stand side by side and the curve of one rises somewhere: this answer counts no head that is lost for want of NPSH. At these flows a pump would lose up to { $lost }: less flows than is said. One pump alone, or two in line, are answered with what is lost.
    .title = Head lost for want of NPSH is not counted
note-bubbles = { $where } { $count ->
    [one] needs
   *[other] need, each,
 } { $required } of NPSH and { $count ->
    [one] has
   *[other] have
 } { $available }, less than twice that. Bubbles form and collapse in the impeller; no gauge shows it, every reading stands.
    .title = Bubbles in the eye of the pump
    .caution = They wear the impeller, unseen. Common practice leaves a margin; the maker says how much.
note-suction-boils = The liquid boils in front of the pump: no more than { $flow } pass, whatever the load would take. The pump gives just what the load asks at that flow. Opening the discharge brings nothing; throttling takes noise away, not the cause: a strainer, the level, the height, the heat.
    .title = The suction line boils
    .caution = Readings hunt hard, the pump hammers and may run dry. Stop it. Never throttle the suction.
note-suction-dry = The liquid does not reach the pump: { $missing } of NPSH are missing before anything flows. Vapour stands there. Nothing on the discharge side helps: raise the level, lower the pump, cool the liquid.
    .title = No liquid at the pump
    .caution = Dry running ruins seals and bearings within minutes. Stop the pump.
note-runs-dry = { $where } runs dry at { $speed }: the supply vessel has run empty, so the pump turns in air and gives nothing.
    .title = A pump runs dry
    .caution = Nothing wets or cools its seals and bearings: they fail within minutes. Stop it; fill, prime and vent it before it starts again.
note-vortex = { $above } of liquid stand above the mouth of the suction line; at this flow { $needed } are common practice. A vortex may draw air by gulps, and the readings hunt with them. The answer does not count that air.
    .title = A vortex may draw air
note-reverse-flow = The load pushes back through { $where }: the liquid runs backwards, { $flow }.
    .title = Flow in reverse
    .caution = Never restart a pump that is spinning backwards.
note-overload = { $count ->
    [one] The shaft of { $where } takes { $shaft_power }; the motor is
   *[other] The shafts of { $where } take { $shaft_power } each; their motors are
 } made for { $rated_power } ({ $load }).
    .title = Motor overloaded
    .caution = No motor bears that for long. Mend the load, or lower the speed.
note-overload-still = { $count ->
    [one] The shaft of { $where } takes { $shaft_power }; the motor is
   *[other] The shafts of { $where } take { $shaft_power } each; their motors are
 } made for { $rated_power } ({ $load }), though nothing is delivered.
    .title = Motor overloaded
    .caution = No motor bears that for long. Lower the speed: less flow than none is no way out.
note-trips = The motor of { $where } draws { $current }; its overload relay is set to { $setting } and trips after { $after }. { $rule ->
    [little-load] The load asks too little head and gets too much flow, which takes more power here: the pump is sound.
    [much-load] The load asks more pressure, and this pump takes the more power the harder it is held back: it is sound.
    [stalled] The load asks more torque than the motor has.
    [phase-lost] One phase is lost, and the other two carry it all. Neither pump nor load has changed.
    [low-voltage] The voltage is low, so the same power takes more current. Neither pump nor load has changed.
    [set-low] That is within what the motor is rated for: the relay is set too low.
    [speed] The pump is turned faster than it was measured, and power grows faster than speed.
    [liquid] The liquid is heavier or thicker than the one that the motor was chosen for.
   *[small-motor] The motor is too small for this pump.
 } What is shown holds until then.
    .title = { $rule ->
    [little-load] The relay trips: too little load
    [much-load] The relay trips: too much load
    [phase-lost] The relay trips: a phase is lost
    [low-voltage] The relay trips: low voltage
    [set-low] The relay trips: it is set too low
   *[other] The overload relay trips
 }
    .caution = { $rule ->
    [little-load] Throttle; do not repair the pump. Never set a relay higher to keep it in.
    [much-load] Open what is shut; never set a relay higher to keep it in.
   *[other] Find the reason before you start again; never set a relay higher to keep it in.
 }
note-belt-slips = The belt of { $where } holds { $torque } and no more: it slips, the pump turns at only { $speed }, and { $heat } heat the belt. The pump is sound; the tachometer tells.
    .title = The belt slips
    .caution = It squeals and soon burns. Stop, lock out, then tighten it; never reach over its guard.
note-start-hangs = { $rule ->
    [ramp] Near { $speed } load and run-up together ask more torque than the drive of { $where } gives. Give it more time or less load.
   *[direct] Near { $speed } the load asks more torque than the motor of { $where } has: it hangs there, at up to { $current }, until something trips. Start it against less load, or mend the voltage.
 } What is shown is a motor that got there.
    .title = It would not run up
    .caution = A motor that hangs burns within seconds if its protection fails. Switch off.
note-phase-lost = The motor of { $where } has lost a phase: the other two carry { $current } instead of { $usual_current }. It runs on, a little slower; it would not start again. What is pumped hardly tells.
    .title = A phase is lost
    .caution = The windings burn unless something trips. Stop, lock out, and leave fuses and contactor to an electrician.
note-low-voltage = { $where } has only { $voltage } of its voltage, so the motor draws { $current } instead of { $usual_current }. The speed hardly falls, nor does what is pumped: an ammeter alone does not tell of the load.
    .title = Low voltage, more current
note-not-reached = At no flow { $pumps ->
    [one] the pump gives
   *[other] the pumps give
 } { $head }; to come out at { $where }, the liquid lacks { $missing } more.
    .title = The liquid does not get there
note-not-reached-summit = To get over { $where }, the liquid lacks { $missing } of head.
    .title = The liquid does not get over the summit
note-pressure-undefined = Shut elements cut { $where } off on both sides: any pressure may be trapped there.
    .title = Pressure unknown
note-more-than-one-state = The pump’s curve rises with the flow somewhere, so this load is met in { $states } states. { $lasting ->
    [1] Only one of them lasts.
   *[other] { $lasting } of them last, from { $least_flow } to { $most_flow }; the flow there was before decides which. The chart marks the others: a diamond where one lasts, a cross where it does not.
 }
    .title = More than one answer
note-held-level = With this motor { $where } would give more head at more flow somewhere, by its slip; it is held level here. In truth more than one state may be possible.
    .title = More than one answer may be true
note-line-off = The discharge gauge falls to nothing because nothing resists there. That is no fault of the pump: its whole head now feeds the suction line and the jet. Running like that does harm: the motor of a radial pump may overload, the liquid boil at the suction.
    .title = The load is gone, not the pump
    .caution = A thought experiment. Never open a line to try: isolate, lock and tag out, vent, drain, verify.
note-line-off-still = With the pipe off, all that is left of the load is the way up to the open flange, and that is more than there is at this speed. A pump that is turned slowly is not a worn one.
    .title = The load is gone, and still nothing flows
    .caution = A thought experiment. Never open a line to try: isolate, lock and tag out, vent, drain, verify.
note-dead-headed-upright = Nothing gets past { $where }, and it moves its volume all the same: the pressure climbs until something lets it go.
    .title = Running, but nothing flows
    .caution = A displacement pump bears that not for a moment. Stop it.
note-pressure-limit = { $pressure } stand across { $where }; its casing is made for { $limit }. The pump does not end that climb: it moves its volume on, and the pressure is whatever the load asks. In a real plant something would have given way before.
    .title = More pressure than the casing bears
    .caution = A pipe or the casing may burst. Stop the pump; never try this.
note-stalled = The load asks more torque of { $where } than its motor has: { $torque } at { $speed }. It stands or crawls, and draws several times its current until its protection trips.
    .title = The motor is stalled
    .caution = It burns within seconds if its protection fails. Switch off; take the load away before you start again.
note-no-relief = Nothing would relieve { $where }. Shut what it delivers into, and the pressure climbs until something gives way; the casing is made for { $limit }.
    .title = No relief valve that works
    .caution = Never run a displacement pump without one; never shut its discharge.
note-relief-lifted = { $where } has lifted at { $set }: { $flow } go back to the supply, { $pressure } stand across it. The gauge now tells of its spring as well as of the load.
    .title = The relief valve has lifted
    .caution = It is no control valve: what goes round heats up, and its seat wears. Find what shuts the line.
note-burst = The hole takes { $flow } that the load should get, so the load is lighter than it was: more flow at the pump, less pressure at the gauge.
    .title = The pipe has burst
    .caution = Keep away from the jet. Stop the pump, isolate, lock and tag out, vent, drain, verify.
note-not-supplied = { $where } gets nothing although its valve is open: { $missing } of head are missing there. The other user draws the pressure down.
    .title = One user gets nothing
note-backflow = { $flow } flow back through { $where }.
    .title = Flow in reverse in a line
note-line-filling = The liquid has filled { $filled } of the line and stands at { $height }. Until it is full the load is lighter than it will be: more flow, less pressure, more power.
    .title = The line is still filling
    .caution = Fill slowly, with the valve throttled: a fast front hammers when it meets the end.
note-not-primed = No liquid hangs in the line beyond { $where }, so it draws nothing over: the pump has to lift { $rise } more than it would with the line full.
    .title = The siphon is not primed
note-siphon-broken = The pressure at { $where } would be below that at which the liquid boils, so the column breaks there: the pump has to lift { $rise } more than it would with the line full.
    .title = The siphon has broken
    .caution = Vapour collects at the summit, and the column hammers when it closes again.
note-choked = { $drop } stand across { $where }, but only { $most } drive the flow; the rest makes vapour and noise. Less pressure behind it brings no more flow.
    .title = The valve chokes
    .caution = Vapour that collapses behind the seat eats valve and pipe. Spread the drop, or raise the pressure behind it.
note-held-shut = { $where } is held shut by the other pump: { $against } stand behind it, and its own pump has { $head }. That pump runs without flow, though it is sound.
    .title = The stronger pump holds the weaker one’s check valve shut
    .caution = Minutes at most: the liquid in the weaker pump heats. Stop it, or ask for more flow.
note-standing = The motor of { $where } is off. The flow through it is { $flow }; forward it is a resistance, backward its check valve should hold.
    .title = A pump stands
note-turning-backward = The motor of { $where } is off, and its check valve lets { $flow } back: it spins backward at { $speed }.
    .title = A standing pump is driven backward
    .caution = Never start a machine that spins backward: shaft or coupling may break. Shut its valve, wait until it stands.
note-pumps-backward = { $where } { $count ->
    [one] turns the wrong way and pumps
   *[other] turn the wrong way and pump, each,
 } { $flow } backward: in at the discharge flange, out at the suction flange.
    .title = A pump pumps backward
    .caution = Stop it and lock it out; have two phases exchanged. Never run it to try.
note-relief-behind = What was the suction side of { $where } is its outlet now, at { $pressure }; only the other side of its casing is made for { $limit }. The relief valve stands on that other side: nothing protects the suction line and its strainer.
    .title = The relief valve is on the wrong side
    .caution = Shut the suction line, and something bursts. Stop the pump at its switch; touch no valve.
note-nothing-comes = Too little comes back to { $where }: at { $pressure } the liquid boils at its inlet, and it takes in only { $flow }.
    .title = A pump runs partly dry
    .caution = It has nothing to wet or cool it: seals and rotors wear within minutes.
note-outside-rule = { $rule ->
    [viscosity] The rule for thick liquids
    [trim] The rule for a trimmed impeller
    [wear] The rule for wear
    [gas] The rule for entrained gas
    [blocked] The rule for a blocked impeller
    [rotation] The rule for wrong rotation
   *[other] A rule
 } is used outside its range at { $where }: it holds from { $low } to { $high }, and here stands { $got }. { $held ->
    [yes] It is held at the end of its range
   *[no] It is carried on beyond
 }, so the numbers are a guess.
    .title = Beyond what a rule was made for
note-control-lost = Its output stands at its limit, { $output }, and it can do no more: { $where } reads { $reading }, the set point is { $wanted }. Look for what has used up its room: a heavier load, a worn pump, a set point out of reach.
    .title = Control is lost
note-control-lost-level = Its output stands at its limit, { $output }: { $flow } pass, { $draw } are drawn. So { $where } does not stay at { $wanted } but goes to { $height }.
    .title = Control is lost
    .caution = A vessel may overflow, or run empty and let its pump run dry.
note-control-hunts = Near { $output } of its output { $where } leaps over the set point, { $wanted }: the smallest flow that a valve can hold is above it. A real loop swings there and finds no rest.
    .title = The controller hunts
note-current-limited = The drive keeps the current to { $current } and cuts the frequency from { $asked } to { $frequency }. The pump turns slower than it is told to, because the load is too much for the limit; that is no wear.
    .title = The drive is at its current limit
note-current-over-limit = Even at { $frequency }, its lowest frequency, { $current } flow: above the drive’s limit.
    .title = Too much current at any speed
    .caution = The drive trips. Take the load away before you start again.

## Places
place-pump-1 = { $pumps ->
    [one] the pump
   *[other] pump 1
 }
place-pump-2 = pump 2
place-station = the pumps
place-suction = the suction
place-discharge = the discharge
place-pump-1-out = the outlet of pump 1
place-pump-2-out = the outlet of pump 2
place-between = the pipe between the pumps
place-after-check = the pipe behind the check valve
place-after-valve = the pipe behind the control valve
place-supply-surface = the supply’s surface
place-supply-outlet = the supply’s outlet
place-pipe-end = the end of the pipe
place-open-flange = the open flange
place-delivery-surface = the delivery’s surface
place-valve = the control valve
place-check-1 = the check valve of pump 1
place-check-2 = the check valve of pump 2
place-relief = the relief valve
place-branch = the second user’s line
place-return-line = the return line
place-discharge-line = the discharge line
place-second-line = the second line
place-summit = the summit
place-burst = the burst
place-after-filter = the pipe behind the filter
place-header = the pipe behind the check valve
place-drive = the drive
place-flow = the flow
place-discharge-pressure = the discharge pressure
place-after-valve-pressure = the pressure after the valve
place-suction-pressure = the suction pressure
place-delivery-level = the level in the delivery vessel
place-supply-level = the level in the supply vessel
