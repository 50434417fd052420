### Every word of the page's frame, its controls, sentences, notes and errors.
### Numbers arrive as text with their unit. Names in {" "} braces are placeholders: leave them as they are.

name = Loadfirst
page-title = { $title } · Loadfirst
skip = Skip to the rig
rig-label = The rig
disclaimer = Simulated results are for learning and first judgement. Local codes, the makers’ limits and licensed practice decide.
licences = Licences of what this page is built on
close = Close
and = { " and " }

## Headings
apparatus-title = The plant
stack-title = Asked and answered
chart-title = Head over flow
path-title = Head along the way
controls-title = Controls
chips-label = What to change
notes-label = What the engine noticed

## Tools
tool-open = Open…
tool-undo = Undo
tool-redo = Redo
tool-reset = Reset
tool-share = Share link
tool-more = More tools
units-label = Units
units-m3h-bar-m = m³/h · bar · m
units-ls-kpa-m = L/s · kPa · m
units-gpm-psi-ft = US gpm · psi · ft
theme-to-dark = Dark
theme-to-light = Light
switch-turning-on = Stop the turning
switch-turning-off = Let it turn
switch-curves-on = Hide curves
switch-curves-off = Show curves

## Where the readings come from
origin-built = Readings computed when this site was built
origin-none = Dials are blank until Python is ready
live = Live: computed here, in your browser.
live-not-kept = Live. This browser keeps nothing between visits: use “Share link” to save your rig.

## The start
boot-stage-runtime = Fetching Python.
boot-stage-packages = Everything is here; Python is starting.
boot-stage-loadfirst = Reading the pump physics.
boot-restart = Python is starting again; your rig is kept.
boot-bytes = { $done } of { $total } MB
boot-progress = Progress of the start
boot-failed = Python could not be started in this browser. Check the connection, then try again.
boot-again = Try again
reload = Reload the page
copy-details = Copy details

## Troubles
trouble-timeout = That took too long, twice. Python was started again; change something to go on.
trouble-crash = Python stopped, twice. It was started again; change something to go on.
trouble-stale = This page and its Python are of different age. Reload the page.
trouble-bug = Something went wrong that should not. The picture shows the last good answer.
trouble-link-long = This link is longer than any real one, so it was not opened. The rig starts as it comes.
trouble-link-broken = This link is damaged, perhaps cut short on its way. The rig starts as it comes.
trouble-link-newer = This link was made by a newer Loadfirst. Reload the page, then open it again.
trouble-link-content = This link holds something that is not a rig, so it was not opened.

## Controls
control-valve-opening = Valve opening
control-drive-frequency_hz = Drive frequency
control-supply-surface_m = Supply level
control-delivery-surface_m = Delivery level
control-pump-model = Pump
control-pump-arrangement = Pumps running
control-drive-supply_hz = Supply mains
control-drive-poles = Motor poles
control-discharge-attached = Discharge pipe
control-number = { $name }, as a number

chip-valve = Valve
chip-speed = Speed
chip-supply = Supply
chip-delivery = Delivery
chip-pump = Pump
chip-arrangement = One or two
chip-motor = Motor
chip-pipe = Pipe

choice-pump-model-small = Small
choice-pump-model-medium = Medium
choice-pump-model-large = Large
choice-pump-model-own = As in the file
choice-pump-arrangement-single = One
choice-pump-arrangement-side-by-side = Two side by side
choice-pump-arrangement-in-line = Two in line
choice-drive-supply_hz-50 = 50 Hz
choice-drive-supply_hz-60 = 60 Hz
choice-drive-poles-2 = 2
choice-drive-poles-4 = 4
choice-drive-poles-6 = 6
choice-drive-poles-8 = 8
choice-discharge-attached-true = On
choice-discharge-attached-false = Off at the pump

bad-number = { $name }: that is not a number. From { $low } to { $high } will do.
bad-range = { $name } was { $got }; from { $low } to { $high } will do.
bad-choice = { $name } was { $got }; one of these will do: { $choices }.

## The one sentence
why-idea = The load asks; the pump answers.
why-asks = The load asks { $head } at { $flow };
why-answers = the pump answers { $head }.
why-most = The greatest part of it is { $block }: { $part }.
why-still-asks = The load asks more than the pump has, so nothing flows.
why-still-answers = The pump answers its { $head } at no flow.
why-off-asks = With the pipe off there is hardly a load: { $head } at { $flow };
why-off-answers = the pump answers just that.
why-not-converged = No balance was found for this setting; the drawing keeps the last good one.

then-load-up = You made the load lighter. The pump is the same: it now runs further out on its curve, with more flow.
then-load-down = You made the load heavier. The pump is the same: it now runs further back on its curve, with less flow.
then-machine-up = The load is the same. The machine’s curve moved up, and the two meet further out.
then-machine-down = The load is the same. The machine’s curve moved down, and the two meet further back.
then-both = Load and machine both changed.
then-nothing = This change moved the duty point by next to nothing.

block-lift = the lift
block-vessel-pressure = the pressure in the vessels
block-suction-line = the suction line
block-pipe = the pipe
block-fittings = the fittings
block-valve = the valve
block-jet = the jet into the open

## Notes: what it means, and what to mind on a real plant
note-dead-headed = Nothing flows through { $where }; at no flow the head is { $head }, the shut-off head. The { $shaft_power } at the shaft only heat the liquid inside.
    .title = Running against a shut line
    .caution = On a real plant: minutes at most. The liquid heats, seals fail; with both valves shut and running the casing can burst.
note-beyond-curve = { $where } { $count ->
    [one] delivers
   *[other] deliver, each,
 } { $flow }, more than the { $last_flow } that the maker measured. What is shown there is an estimate.
    .title = Beyond the last point of the curve
note-below-vapour-pressure = At { $where } the pressure would be { $pressure }; the liquid boils at { $vapour_pressure }. The real flow is less than shown.
    .title = The liquid would boil
    .caution = On a real plant: vapour hammers and pits the pump, and the head collapses. Clear the suction side, or ask for less flow.
note-npsh-short = { $where } { $count ->
    [one] needs
   *[other] need, each,
 } { $required } of NPSH; there are { $available }. At the required figure 3 % of the head is already lost, so true flow and head are lower than shown.
    .title = Too little head at the suction
    .caution = Throttling the discharge can relieve it; it does not clean a strainer or cool the tank. Never throttle the suction of a liquid pump.
note-reverse-flow = The load pushes back through { $where }: the liquid runs backwards, { $flow }.
    .title = Flow in reverse
    .caution = On a real plant: never restart a machine that is spinning backwards.
note-overload = The shaft of { $where } takes { $shaft_power }; the motor is made for { $rated_power } ({ $load }).
    .title = Motor overloaded
    .caution = On a real plant its protection would trip before the winding burns. Ask for less flow or less speed.
note-pressure-undefined = Shut elements cut { $where } off on both sides: any pressure may be trapped there.
    .title = Pressure unknown
note-more-than-one-state = This load can be met in more than one way; what happened before decides which.
    .title = More than one answer
note-line-off = The discharge gauge falls to nothing because nothing resists there. That is no fault of the pump: its whole head now feeds the suction line and the jet, and these two alone limit the flow.
    .title = The load is gone, not the pump
    .caution = A thought experiment. Never open a line to try: isolate, lock and tag out, vent, drain, verify. At such a flow a motor may overload and the liquid boil at the suction.

place-pump-1 = { $pumps ->
    [one] the pump
   *[other] pump 1
 }
place-pump-2 = pump 2
place-suction = the suction
place-discharge = the discharge
place-after-check = the pipe behind the check valve
place-after-valve = the pipe behind the control valve
place-supply-surface = the supply’s surface
place-supply-outlet = the supply’s outlet
place-pipe-end = the end of the pipe
place-delivery-surface = the delivery’s surface

## Opening things
open-title = Open
open-plants = Plants
open-cases = Cases: what do the readings say?
open-own = Your own plant
file-drop = A plant file is a short text (TOML). Drop it anywhere on this page, or choose it. It stays in your browser.
file-pick = Choose a file…
file-refused = { $file } cannot be used.
file-size = It is far larger than any plant file.
file-unreadable = The browser could not read it.
file-where = Where
file-found = What stands there
file-hint = A way out
file-old-stays = The plant you had is still there.

## Sharing
share-title = A link to exactly this rig
share-about = Whoever opens it sees the same plant, the same settings and the same units.
share-link = The link
share-copy = Copy
share-copied = Copied.
share-by-hand = The browser does not let us copy: press Ctrl+C or hold the text.
share-too-long = This plant is too large for a link. Send the plant file instead.
