# Words inside the drawings. Short ones stand beside parts, so keep them short.

draw-apparatus = Apparatus: supply vessel, pump, valve, pipe and delivery vessel with their instruments
draw-supply = Supply
draw-delivery = Delivery
draw-level-supply = Level in the supply vessel
draw-level-delivery = Level in the delivery vessel
draw-lift = lift { $head }

draw-pump = Pump
draw-pump-1 = Pump 1
draw-pump-2 = Pump 2
# What kind of pump it is, by its specific speed or by what displaces the liquid
draw-kind-radial = Radial flow
draw-kind-mixed = Mixed flow
draw-kind-axial = Axial flow
draw-kind-gear = Gear pump
draw-kind-lobe = Lobe pump
draw-kind-screw = Screw pump
draw-pump-state = Runs at { $speed }
draw-slowed = Turning drawn { $times } times slower
draw-check = Check valve
draw-check-1 = Check valve of pump 1
draw-check-2 = Check valve of pump 2
draw-check-open = open
draw-check-shut = shut
draw-valve = Control valve
draw-open = { $opening } open
draw-shut = shut
draw-drive = Drive

draw-gauge-suction = Pressure at the suction
draw-gauge-discharge = Pressure at the discharge
draw-gauge-after-valve = Pressure after the valve
draw-gauge-suction-short = Suction
draw-gauge-discharge-short = Discharge
draw-gauge-after-valve-short = After valve
# Beside the name of a gauge: how high its dial hangs
draw-gauge-height = at { $height }
draw-flow-meter = Flow
draw-ammeter-1 = Motor current, pump 1
draw-ammeter-2 = Motor current, pump 2
draw-tachometer-1 = Speed of pump 1
draw-tachometer-2 = Speed of pump 2
draw-no-reading = no reading
draw-hunting = about { $reading }, swinging
draw-off-scale = { $reading }, off the scale
draw-two-days = { $today }; yesterday { $yesterday }

# The load stack
draw-asks = asks
draw-answers = answers
draw-block-lift = Lift
draw-block-vessel-pressure = Gas pressure
draw-block-suction-line = Suction line
draw-block-check-valve = Check valve
draw-block-pipe = Pipe
draw-block-fittings = Fittings
draw-block-acceleration = Speeding up
draw-block-valve = Valve
draw-block-filter = Filter
draw-block-summit = Summit
draw-block-jet = Jet
draw-block-not-reached = Not reached
draw-block-shared = Shut parts
draw-shared-says = { $blocks } together, in unknown shares, { $head }
draw-pressure-head = pressure head
draw-height = height difference
draw-velocity-head = velocity head
draw-check-valves = check valves
draw-unknown = unknown
draw-stack-says = The load asks: { $blocks }. The pump answers { $head }.
draw-stack-and-yesterday = { $said } Yesterday it was { $head }.
draw-stack-and-today = { $said } Today it is { $head }.

# The chart
draw-load-curve = Load asks
draw-machine-curve = Pump answers
draw-single-curve = One pump alone
draw-readout = Read both curves at a flow
draw-readout-short = { $flow }: asks { $load }, answers { $machine }
draw-readout-says = At { $flow } the load asks { $load }, the pump answers { $machine }
draw-chart-says = Head over flow. The curves meet at { $flow } and { $head }.
draw-chart-two-days = { $today } Yesterday they met at { $flow } and { $head }.
draw-chart-empty = Head over flow. No answer yet.
draw-other-states = other states
draw-states-say = There are { $count } states: { $states }.
draw-state-there = { $flow } and { $head }, the one that is there
draw-state-lasts = { $flow } and { $head }, which would last too
draw-state-falls = { $flow } and { $head }, which would not last

# The charts of NPSH and of power, beside the head chart
draw-flow-each = through each pump, { $unit }
draw-flow-chart-empty = No answer yet.
draw-npsh-load = NPSH available
draw-npsh-load-short = available
draw-npsh-machine = NPSH required
draw-npsh-machine-short = required
draw-npsh-needs = needs { $required }
draw-npsh-margin = { $head } to spare
draw-npsh-short = { $head } short
draw-npsh-from = too little from { $flow }
draw-npsh-bubbles = bubbles from { $flow }
draw-npsh-says = NPSH over flow. At { $flow } there are { $available }, and { $required } are required.
draw-npsh-bubbles_surely = From { $flow } there is less than twice what is required: bubbles.
draw-npsh-begins = From { $flow } there is too little: head is lost.
draw-npsh-boils = More than { $flow } does not pass: the liquid boils at the suction.
draw-npsh-says-alone = NPSH over flow. At { $flow } { $required } are required.
draw-npsh-readout = Read NPSH at a flow
draw-npsh-readout-short = { $flow }: has { $load }, needs { $machine }
draw-npsh-readout-says = At { $flow } there are { $load } of NPSH; { $machine } are required
draw-power-machine = Shaft power
draw-power-machine-short = Shaft power
draw-power-level = the motor’s rated { $rated }
draw-power-says = Power over flow. At { $flow } the shaft takes { $power } and the motor draws { $current }; it is made for { $rated }.
draw-power-says-alone = Power over flow. At { $flow } the shaft takes { $power } and the motor draws { $current }.
draw-power-readout = Read the power at a flow
draw-power-readout-short = { $flow }: { $machine }
draw-power-readout-says = At { $flow } the shaft takes { $machine }

# Head along the path
draw-valve-short = Valve
draw-path-head = Head
draw-path-grade = Hydraulic grade
draw-path-pipe = Pipe
draw-path-says = Head, hydraulic grade (height and pressure head) and height of the pipe, from the supply to the delivery.
draw-path-gaps = The pressure is unknown at { $places }.
draw-path-empty = No readings yet

# Parts that a plant may have besides: what stands beside them, and what a screen reader says of them
draw-short = { $part }: { $state }
draw-suction-line = Suction line: { $flow }
draw-discharge-line = Discharge line: { $flow }
draw-line-filling = Discharge line, still filling: { $share } of it is full, { $flow }
draw-strainer-clean = Strainer in the suction line
draw-strainer-blocked = Strainer in the suction line, stopped up in part
draw-relief = Relief
draw-relief-shut = shut
draw-relief-lifted = lifted
draw-relief-blocked = blocked
draw-relief-passing = passing
draw-relief-says = Relief valve: { $state }
draw-relief-flow = Relief valve: { $state }, { $flow } back to the supply
draw-return = Return
draw-return-says = Return line: its valve { $opening }, { $flow } back to the supply
draw-branch = Second user
draw-branch-says = Second user: its valve { $opening }, takes { $flow }
draw-branch-back = Second user: its valve { $opening }, feeds { $flow } back
draw-second-says = Second delivery line: { $flow }
draw-burst-says = Burst in the pipe: { $flow } leaves by it
draw-filter = Filter
draw-filter-clean = Filter: clean
draw-filter-fouled = Filter: what it has caught resists { $times } times as much as its clean medium
draw-summit-full = Summit of the line: full of liquid
draw-summit-gas = Summit of the line: gas stands in it
# Letters on a controller's box, as drawings have them
draw-control-flow = FC
draw-control-pressure = PC
draw-control-level = LC
draw-control-output = Controller’s output
draw-control-says = Controller of the { $kind ->
    [pressure] pressure
    [level] level
   *[flow] flow
  }, { $mode ->
    [manual] by hand
   *[automatic] automatic
  }: its output to the { $on ->
    [drive] drive
   *[valve] valve
  } is { $output }
draw-check-stuck = stuck open
draw-check-passing = shut, but passing
draw-pump-also = { $state }; { $more }
draw-pump-wrong = turns the wrong way
draw-pump-standing = Its motor is off, it stands still
draw-pump-driven = Its motor is off, the liquid turns it at { $speed }
draw-pump-driven-back = Its motor is off, the liquid turns it backward at { $speed }
draw-pump-belted = a belt drives it, from a motor at { $speed }
draw-pump-slipping = its belt slips, the motor turns at { $speed }
draw-pump-tripped = its overload relay trips
draw-pump-boiling = liquid boils at its inlet
draw-pump-worn = its gaps are worn, { $share } slips back
draw-pump-trimmed = impeller at { $share } of its diameter
draw-pump-blocked = { $share } of its passages are stopped up
