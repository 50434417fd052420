### Every word of the page's frame, its controls, sentences, notes and errors.
### Numbers arrive as text with their unit. Names in {" "} braces are placeholders: leave them as they are.

name = Loadfirst
page-title = { $title } · Loadfirst
skip = Skip to the content
places-label = Rig or puzzles
place-rig = The rig
place-case = Puzzles
rig-label = The rig
disclaimer = Simulated results are for learning and first judgement. Local codes, the makers’ limits and licensed practice decide.
licences = Licences of what this page is built on
close = Close
and = { " and " }
comma = { ", " }

## Headings
apparatus-title = The plant
stack-title = Load and answer
chart-title-head = Head over flow
chart-title-npsh = NPSH over flow
chart-title-power = Power over flow
chart-strip = What is drawn over the flow
chart-show-head = Head
chart-show-npsh = NPSH
chart-show-power = Power
path-title = Head along the line
before-key = before
before-key-yesterday = yesterday
controls-title = Controls
chips-label = What to change

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
switch-turning-on = Pause motion
switch-turning-off = Resume motion
switch-curves-on = Hide curves
switch-curves-off = Show curves

## Where the readings come from
origin-built = Readings computed when this site was built
origin-none = Dials are blank until Python is ready
origin-refused = Dials are blank: this rig cannot be computed
origin-old = Readings of before this change
computing = Computing …
live = Live: computed here, in your browser.
live-not-kept = Live. This browser keeps nothing between visits: use “Share link” to save your rig.

## The start
boot-stage-runtime = Fetching Python.
boot-stage-packages = Everything is here; Python is starting.
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
trouble-plant = This plant cannot be computed. { $what }
trouble-link-long = This link is longer than any real one, so it was not opened. The rig starts as it comes.
trouble-link-broken = This link is damaged, perhaps cut short on its way. The rig starts as it comes.
trouble-link-long-stays = This link is longer than any real one, so it was not opened. Your rig stays as it was.
trouble-link-broken-stays = This link is damaged, perhaps cut short on its way. Your rig stays as it was.
trouble-link-newer = This link was made by a newer Loadfirst. Reload the page, then open it again.
trouble-link-content = This link holds something that is not a rig, so it was not opened.

## Controls
control-valve-opening = Valve opening
control-drive-frequency_hz = Drive frequency
control-supply-surface_m = Supply level
control-delivery-surface_m = Delivery level
control-pump-model = Pump
control-pump-arrangement = Number of pumps
control-drive-supply_hz = Motor made for
control-drive-poles = Motor poles
control-discharge-attached = Discharge pipe
control-number = { $name }, as a number

chip-valve = Valve
chip-speed = Speed
chip-supply = Supply
chip-delivery = Delivery
chip-pump = Pump
chip-arrangement = How many
chip-motor = Motor
chip-pipe = Pipe

choice-pump-model-small = Small
choice-pump-model-medium = Medium
choice-pump-model-large = Large
choice-pump-model-mixed = Mixed flow
choice-pump-model-axial = Axial
choice-pump-model-drooping = With a droop
choice-pump-model-own = As in the file
# On a button beside the sizes: leads to all other kinds of pump; what it says where one of them is fitted
pump-others = { $name }…
pump-others-none = Others
pump-others-long = Others… (all kinds of pump)
pump-others-fitted = { $name }… is fitted (all kinds of pump)
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
choice-discharge-attached-false = Taken off

printed-when = Printed { $when }. The address below opens exactly this.

control-idle = No effect while the discharge pipe is off
control-held = The controller moves it
control-take = Move it by hand

## What will not do. One sentence for each rule that Python checks, with the name of the control or the key in the file.
bad-number = { $name }: that is not a number. From { $low } to { $high } will do.
error-other = { $name } cannot be used as it is.
error-the-file = The file
error-nothing = nothing
error-list = a list
error-table = a table
error-range = { $name } was { $got }; that is out of its range.
error-range-both = { $name } was { $got }; from { $low } to { $high } will do.
error-range-low = { $name } was { $got }; { $low } or more will do.
error-range-high = { $name } was { $got }; { $high } or less will do.
error-range-braces = { $name } was { $got }; nothing is filled in there, so it must do without braces.
error-range-file = The file is far larger than any plant or puzzle. Is it the right one?
error-choice = { $name } was { $got }; that is none of the words that may stand there.
error-choice-nearest = { $name } was { $got }; that is none of the words that may stand there. Did you mean { $nearest }?
error-choice-known = { $name } was { $got }; one of these will do: { $choices }.
error-lookup = { $name } was { $got }; nothing of that name is known.
error-lookup-off = { $name } holds { $got }; on that day { $off ->
    [low] its pointer rests below the scale
    [high] its pointer rests above the scale
   *[other] there is nothing to be read
 }, so that there is no number.
error-lookup-nearest = { $name } was { $got }; nothing of that name is known. Did you mean { $nearest }?
error-lookup-known = { $name } was { $got }; nothing of that name is known. Known are: { $choices }.
error-type = { $name } was { $got }; { $kind ->
    [number] a number belongs there, without quotation marks
    [whole] a whole number belongs there, without quotation marks
    [text] a text in quotation marks belongs there
    [flag] true or false belongs there, without quotation marks
    [list] a list in square brackets belongs there
    [table] a table belongs there
   *[other] something of another kind belongs there
 }.
error-type-above = { $name } was { $got }; { $above } is a key of the file itself and belongs above the first [table].
error-type-double = { $name } is one table; write [[{ $double }]] above each of them.
error-unknown = { $name } is no key that is known.
error-unknown-nearest = { $name } is no key that is known. Did you mean { $nearest }?
error-unknown-known = { $name } is no key that is known. Known there are: { $choices }.
error-unknown-above = { $name } is no key that is known; { $above } is a key of the file itself and belongs above the first [table].
error-unknown-needed = { $name } is no key that is known. Known there are: { $choices }. Still missing is: { $needed }.
error-missing = { $name } is missing, but is needed.
error-missing-below = { $name } is missing: it stands below [{ $below }], but belongs above the first [table].
error-missing-other = { $name } is missing; with { $other } as it is, it is needed.
error-points = { $name }: these points are not those of a pump.
error-points-order = { $name } was { $got }; it must be { $order ->
    [above] above
   *[below] below
 } { $limit }. Flows rise along the list, heads fall, and power is more than the liquid takes away.
error-points-length = { $name } has { $count } entries, but { $other } has { $wanted }; there must be as many.
error-points-list = { $name } does not fit: it needs { $least ->
    [null] a list
   *[other] { $least } to { $most } entries, each
 } within its range.
error-points-first = { $name } was { $got }; the first point is at no flow, so it must be 0.
error-points-later = { $name } was { $got }; where liquid flows it must be above 0.
error-together = { $name } was { $got }; that does not go together with the rest of the file.
error-together-order = { $name } was { $got }; it must be { $order ->
    [above] above
    [below] below
    [at-or-above] no lower than
   *[at-or-below] no more than
 } { $limit }, because of { $other }.
error-together-same = { $name } is the reply to “{ $same }” too; each verdict has its own.
error-together-other = { $name } does not go together with { $other }; leave one of the two out.
error-syntax = { $name } is not written as TOML wants it.
error-syntax-line = Line { $line } is not written as TOML wants it: { $got }.
error-syntax-twice = Line { $line }: { $got }. Each key and each table may stand once only.
error-syntax-comma = Line { $line } is not written as TOML wants it: { $got }. Write numbers with a decimal point.
error-syntax-words = Line { $line } is not written as TOML wants it: { $got }. Write words in quotation marks.
error-syntax-curly = Line { $line } is not written as TOML wants it: { $got }. Use straight quotation marks here: "single".
error-syntax-lines = Line { $line } is not written as TOML wants it: { $got }. A text ends on its line; one over several lines stands in three quotation marks: """…""".
error-syntax-inside = Line { $line } is not written as TOML wants it: { $got }. Inside a text write “these” quotation marks: straight ones end it.
error-encoding = The file is not plain text in UTF-8. Save it again with this encoding.
error-unreadable = { $name } could not be read.
error-pump = This is a pump, and a pump alone cannot be opened. Write its points into a plant, as a table [pump.curve].
error-turns = { $name } holds a character that turns the direction of writing. Leave it out.
error-version = { $name } was { $got }; this Loadfirst does not know that format. A newer one may.
error-typed-number = { $name } holds a number with a unit: { $got }. Write a placeholder, so that the number is computed.
error-too-early = { $name } holds { $got }, which the learner cannot have seen by then.
error-too-early-seen = { $name } holds { $got }, which the learner cannot have seen by then. Seen are: { $seen }.
error-too-early-tell = { $name } holds { $got }, which would tell too early of the plant as it is today. Replies may, and what is seen with: { $tell }.
error-order = { $name } does not fit there: first the prediction, then checks, hints and what was seen, last the verdict.
error-proof = { $name } says { $got }; what is computed says otherwise.
error-proof-line = { $name } says { $got }; what is computed: { $computed }.
error-proof-lines = { $name } says { $got }; what is computed: { $computed }. Wrong as well, with what is computed: { $also }.
error-proof-percent = { $name } says { $got }; what is computed: { $computed }. A size in what happened is in per cent, now { $percent } %: was { $meant } meant?
error-proof-draws = { $name } says { $got }, which holds in { $share } of the draws only. Tell it without a direction, or claim nothing of it.
error-proof-sizes = { $name } says { $got }, which holds in { $share } of the draws only where the size is an end of its range: { $sizes }. Narrow the range, or leave the claim out.
error-days = { $name }: the two days do not differ as a puzzle needs it. Change one cause, and enough for an instrument to show it.
error-days-percent = { $name }: the two days hardly differ. A size in it is in per cent, now { $percent } %: was { $meant } meant?
error-truth = { $name }: exactly one verdict must be the one that holds, and it is not so.
error-truth-nearly = { $name }: exactly one verdict must be the one that holds, and it is not so. “{ $nearly }” would be, but for what it says of the load.
error-truth-group = { $name }: exactly one verdict must be the one that holds, and it is not so. What is computed: blames “{ $groups }”.
error-truth-load = { $name }: exactly one verdict must be the one that holds, and it is not so. What is computed: blames “{ $groups }”, load “{ $load }”.
error-fair-group = Too little tells where it happened: with every check the right part of the plant reaches a probability of { $got }. Offer a reading or a look that parts it from what else fits, or make the cause larger.
error-fair-cause = The look that shows what happened errs too often beside what else fits: it reaches a probability of { $got }. Offer a second one.
error-fair-open = What the story tells and what stands open at first decides it, and no check is needed. Show less at first, or tell another reading.
error-fair-led = What is cheap to learn speaks for a wrong verdict: who always takes what tells most for its cost decides rightly in a share of { $got } of the plays only. Make dearer what misleads, or cheaper what tells.
error-fair-rival = { $name }, { $got }, stays about as likely as the right verdict, with a probability of { $chance }. Offer what speaks against it.
error-fair = These puzzles, taken together, give themselves away: { $got }. Add some in which it is otherwise.

## The one sentence
why-idea = A pump does not choose its pressure: the load asks for it, and the pump answers.
why-no-answer = The numbers come as soon as Python is ready.
why-refused = There are no numbers for this rig: one of its values will not do.
why-asks = The load asks { $head } at { $flow };
why-answers = { $pumps ->
    [one] the pump answers
   *[other] the pumps answer
 } { $head }.
why-most = The greatest part of it is { $block }: { $part }.
why-still-asks = The load asks for more than { $pumps ->
    [one] the pump has
   *[other] the pumps have
 }, so nothing flows;
why-still-answers = { $pumps ->
    [one] the pump answers
   *[other] the pumps answer
 } { $head } at no flow.
why-back-asks = The load pushes back: { $flow } run backwards through { $pumps ->
    [one] the pump
   *[other] the pumps
 };
why-back-answers = { $pumps ->
    [one] the pump holds
   *[other] the pumps hold
 } only { $head } against it.
why-turned-asks = { $pumps ->
    [one] The pump turns
   *[other] A pump turns
 } the wrong way: { $flow } go from the discharge to the suction;
why-turned-idles = { $pumps ->
    [one] The pump turns
   *[other] A pump turns
 } the wrong way, and nothing comes back to it;
why-turned-answers = { $head } are given the wrong way round.
why-turned-driven = the load drives it with { $head }.
why-off-asks = With the pipe off, all that is left of the load is { $head } at { $flow };
why-off-answers = { $pumps ->
    [one] the pump answers
   *[other] the pumps answer
 } just that.
why-off-sound = Much flow, hardly any pressure: no fault of the pump.
why-off-limits = The flow is limited by { $limits }.
why-off-part = { $block } ({ $part })
why-off-npsh = boiling at the suction
why-not-reached = To come out at { $where }, the liquid lacks { $missing }.
why-not-converged = No balance was found for this setting; the drawing keeps the last good one.

then-load-up = You made the load lighter. The pump is the same: it now runs further out on its curve, with more flow.
then-load-down = You made the load heavier. The pump is the same: it now runs further back on its curve, with less flow.
then-machine-up = The load is the same. The pump’s curve moved up, and the two meet further out.
then-machine-down = The load is the same. The pump’s curve moved down, and the two meet further back.
then-checks-up = But for its check valves, the load is the same. The machine’s curve moved up, and the two meet further out.
then-checks-down = But for its check valves, the load is the same. The machine’s curve moved down, and the two meet further back.
then-checks-same = But for its check valves, the load is the same. The machine’s curve moved, but the flow stays as it was.
then-load-same = You changed the load, but the flow stays as it was.
then-machine-same = The load is the same. The pump’s curve moved, but the flow stays as it was.
then-both = Load and pump both changed.
then-nothing = This change moved the duty point by next to nothing.

block-lift = the lift
block-vessel-pressure = the pressure in the vessels
block-suction-line = the suction line
block-check-valve = the check valve
block-pipe = the pipe
block-fittings = the fittings
block-acceleration = speeding up the liquid
block-valve = the valve
block-filter = the filter
block-summit = the way over the summit
block-jet = the jet into the open
block-not-reached = what is missing of the lift

## Two rigs side by side
remember-day = Remember this as yesterday
remember-day-long = Keep this rig as the remembered day: what changes from here on is drawn against it
forget-day = Forget yesterday
forget-day-long = Nothing is remembered then; undo brings it back
day-same = Yesterday is remembered. Now change something.
day-failed = The remembered day cannot be computed just now.
keep-beside = Compare
keep-beside-long = Keep this rig as it stands, to compare it with what you do next
keep-see = See both
keep-see-long = Go to the two rigs side by side
beside-title-unknown = Two rigs side by side
beside-title-none = Kept. Now change the load or the machine.
beside-title-machine = The same load, another machine
beside-title-load = The same machine, another load
beside-title-both = Another load and another machine
beside-title-instrument = The same load and machine, other instruments
beside-kept = Kept
beside-now = Now
beside-load = Exchange the loads
beside-machine = Exchange the machines
beside-places = Change places
beside-away = Take away
beside-failed = What was kept cannot be computed just now.
beside-table = What differs between the two, and what their instruments show
beside-what = What
beside-exchange-column = Exchange
beside-exchange-key = Exchange: { $name }
beside-more = and { $count } more
beside-key = { $part }: { $key }
beside-key-pump-curve = The pump’s own points
beside-key-pump-displacement = The pump’s own rating
beside-none = –
beside-own = its own
beside-yes = yes
beside-no = no
beside-to = { " to " }

## Opening things
open-title = Open
open-plants = Plants
open-cases = Puzzles: what do the readings say?
open-own = Your own plant or puzzle
open-course = The whole course, with what you have done
file-drop = Plants and puzzles are short texts (TOML). Drop one anywhere on this page, or choose it. It stays in your browser.
file-pick = Choose a file…
file-refused = { $file } cannot be used.
file-where = Where
file-found = What stands there
file-old-stays = What you had is still there.

## Sharing
share-title = A link to exactly what stands here
share-about = Whoever opens it sees the same plant, the same settings and the same units.
share-hidden = What is hidden travels in the link under a veil: no eye sees it, but it is no secret from anyone who wants to know.
share-link = The link
share-each = Whoever opens it begins anew, with numbers of their own
share-copy = Copy
share-copied = Copied.
share-by-hand = The browser does not let us copy: press Ctrl+C or hold the text.
share-too-long-plant = This plant is too large for a link. Send the plant file instead.
share-too-long-puzzle = This puzzle is too large for a link. Send its file instead; your moves stay in this browser.
