# Everything that Gambrel says to a person, in English. The keys never change; fr.ftl has the same.
# Arguments: {$left} and the like. Weights, temperatures and days come in the reader's own units.

## General

as-written = { $text }
list-and = and
list-or = or

## Words of the vocabularies (one key a word: NameOfTheVocabulary-word)

Being-on-hand = on hand
Being-open = open
Being-used = used
Being-sold = sold
Being-served = served
Being-discarded = discarded
Being-shipped = shipped
Being-returned = returned
Being-missing = missing
Being-void = void
DeedKind-break-down = break-down
DeedKind-cut = cut
DeedKind-cure = cure
DeedKind-turn = turn
DeedKind-rinse = rinse
DeedKind-equalise = equalise
DeedKind-hang = hang
DeedKind-smoke = smoke
DeedKind-cook = cook
DeedKind-chill = chill
DeedKind-grind = grind
DeedKind-mix = mix
DeedKind-render = render
DeedKind-portion = portion
DeedKind-pack = pack
DeedKind-receive = receive
DeedKind-move = move
DeedKind-sell = sell
DeedKind-serve = serve
DeedKind-discard = discard
DeedKind-ship = ship
DeedKind-return = return
DeedKind-take-back = take-back
DeedKind-measure = measure
DeedKind-count = count
DeedKind-release = release
DeedKind-clean-down = clean-down
DeedKind-void = void
DeedKind-correct = correct
DeedKind-print = print
DeedKind-settle-print = settle-print
DeedKind-cancel-print = cancel-print
PrintState-waiting = waits for the printer
PrintState-sending = is being sent to the printer
PrintState-sent = the printer has it
PrintState-printed = came out
PrintState-unsure = nobody knows whether it came out: look, and say
PrintState-refused = the printer does not take it
PrintState-cancelled = cancelled before it was printed
PrintState-spoilt = did not come out
Side-left = left
Side-right = right
Side-whole = whole
Side-left-fore = left-fore
Side-left-hind = left-hind
Side-right-fore = right-fore
Side-right-hind = right-hind
Species-pig = pig
Species-cattle = cattle
Species-sheep = sheep
Species-goat = goat
Species-horse = horse
Species-deer = deer
Species-bison = bison
Species-boar = boar
Species-rabbit = rabbit
Species-chicken = chicken
Species-turkey = turkey
Species-duck = duck
Species-goose = goose
Species-guinea-fowl = guinea-fowl
Species-quail = quail
Species-pheasant = pheasant
Species-partridge = partridge
Species-pigeon = pigeon
StepKind-break-down = break-down
StepKind-cut = cut
StepKind-cure = cure
StepKind-turn = turn
StepKind-rinse = rinse
StepKind-equalise = equalise
StepKind-hang = hang
StepKind-smoke = smoke
StepKind-cook = cook
StepKind-chill = chill
StepKind-grind = grind
StepKind-mix = mix
StepKind-render = render
StepKind-portion = portion
StepKind-pack = pack
Method-dry = dry
Method-equilibrium-dry = equilibrium-dry
Method-equilibrium-brine = equilibrium-brine
Method-immersion-pick-up = immersion-pick-up
Method-immersion-equilibrium = immersion-equilibrium
Method-pumped = pumped
Method-comminuted = comminuted
Packaging-vacuum = vacuum
Packaging-modified-atmosphere = modified-atmosphere

## Rows and findings

finding-with-sources = { $says } ({ $sources })
source-row = { $row }
source-second-hand = { $row } (second hand)
source-memory = { $row } (from memory, not confirmed)
source-common-practice = { $row } (common practice, no source)
source-house = { $row } (house rule)
source-product-list = the kitchen's product list
source-practice = common practice, no source

## Refusals and drawing from packs (lot, deed, refusal, code, moment, series)

refusal-never-issued = { $lot } was never given out here. Check the label and type it again.
moment-no-time = { $at } is not a time this kitchen can have worked.
moment-future = { $at } is in the future; the clock here says { $now }.
moment-ends-first = The step would end ({ $end }) before it began ({ $began }).
moment-long-ago = { $at } is more than { $days ->
    [one] 1 day
   *[other] { $days } days
 } back. Add a note that says why it is entered only now.
moment-not-made-yet = { $lot } was made { $made }; it cannot be used at { $at }.
moment-not-done-yet = The deed was made { $done }; it cannot be used at { $at }.
lot-not-released = { $lot } ({ $product }) is still in its cure. Weigh it and release it first; the cure room shows what is missing.
draw-no-pack = Name at least one pack.
draw-pack-twice = Pack { $pack } is named twice.
draw-voided = { $lot } was voided. Pull its labels and use the right lot.
draw-no-such-pack = { $lot } has { $packs ->
    [one] one pack
   *[other] { $packs } packs, numbered from 1
 }; there is no pack { $pack }.
draw-which-pack = { $lot } has several packs on hand: { $packs }. Say which.
draw-missing = { $pack } was counted as missing. Count it before it is used.
draw-emptied = { $pack } has nothing left: it is { $being }.
draw-nothing-left = { $lot } has nothing left.
draw-not-enough = { $pack } has { $left } left; { $asked } is asked for.
draw-no-weight = { $grams } is no weight. Give what the scale shows, above { $none }.
draw-too-heavy = { $grams } is more than { $most }. Is it typed right?
step-cannot-fill = { $grams } cannot fill { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }.
step-packs-sum = The packs sum to { $sum }; the lot is { $lot }.
step-pack-count = A lot has 1 to { $most } packs, not { $packs }.
step-too-many-packs = One step makes at most { $most } packs in all.
step-nothing-in = Nothing goes in. Name the lot that you work on.
step-too-many-inputs = { $inputs } inputs; a step takes at most { $most }.
step-too-many-outputs = { $outputs } outputs; a step makes at most { $most }.
step-makes-something = A { $kind } step makes something. Weigh what came out, waste included.
step-named-twice = { $pack } is named twice in this step.
step-two-scales-apart = Two scales differ by at most { $percent } % of what goes in: { $bound } of { $inputs }, not { $grams }.
step-more-out = { $out } came out of { $inputs }. Weigh again, or name what was added (water, ice, steam, scale-difference).
step-less-than-nothing = A pack cannot hold less than nothing.
step-past-date = { $pack } was to be used by { $date }. Ask before you go on.
step-frozen = { $pack } is on record as frozen. Enter the thaw, so that its days are counted.
step-two-scales = { $grams } is put down to two scales and stays unexplained.
receive-killed-later = Killed on { $killed }, received on { $received }. One of the two is wrong.
receive-head = { $head } head cannot be one receipt.
receive-new-animal = Neither carcass number nor tag: this is taken as a new animal, and a second side cannot join it.
receive-supplier-past = The supplier's date is past: { $date }. Do not use it.
receive-other-species = { $product } is of { $species }; the animal is { $animal }.
receive-side-known = The { $side } side of this animal was received as { $lot }.
depart-taken-back = { $pack } came back from a customer. It is never for sale again; discard it.
depart-past-date = { $pack } was to be used by { $date }. It should not have gone out.
count-nothing = Say for each pack what it weighs, or that it is missing.
count-twice = Pack { $pack } is counted twice.
count-too-much = { $pack } was born with { $made }; { $grams } cannot be in it.
count-unexplained = { $pack }: { $gap } unexplained.
correct-as-known = That is what the record says already.
release-deed-no-rule = { $lot } needs no release: its product has no rule for one.
release-deed-already = { $lot } is released already.
release-deed-released = Released on { $day } by { $by }: { $days ->
    [one] 1 day
   *[other] { $days } days
 } from the first salt.
release-deed-released-lighter = Released on { $day } by { $by }: { $days ->
    [one] 1 day
   *[other] { $days } days
 } from the first salt, { $loss } % of the green weight lost.
release-deed-rule = release rule
move-nowhere = Say where it goes (to), or how it is kept now (state).
take-back-not-sold = { $pack } is not on record as sold: it is { $being }.
take-back-too-much = { $away } of { $pack } went out; { $grams } cannot come back.
void-of-void = A void cannot be voided. Enter what really happened as a new deed.
void-of-print = Labels that were asked for cannot be voided. Cancel those that wait, and say of the others whether they came out.
void-of-settlement = What somebody saw at the printer cannot be voided. Ask for the label again, with why.
void-of-cancellation = A cancelled label stays so. Ask for it again.
void-voided-before = This deed was voided before.
void-used-since = What it made was used since. Void those first.
void-corrected-since = It was corrected since. Void the correction first.
void-pack-used-since = { $pack } was weighed, counted or used since. Void that first.
weigh-several-packs = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }; only a lot of one piece can be weighed.
weigh-heavier = { $lot } weighed { $before } before; { $grams } is more. Is it the right piece?

## Counter's verdicts

verdict-elsewhere = This is another kitchen's label.
verdict-misread = One character of this code is wrong. Scan or type it again.
verdict-not-ours = This is not one of our labels.
verdict-never-issued = { $lot } was never given out here.
verdict-no-such-pack = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }; there is no pack { $pack }.
verdict-voided = This label was voided. Take it off the shelf.
verdict-not-released = This is still in its cure. Nothing of it is sold before it is released.
verdict-nothing-left = Nothing of this lot is left on record.
verdict-missing = This pack was counted as missing. Keep it apart and tell the manager.
verdict-gone = On record this pack is { $being } already.
verdict-taken-back = A customer brought this pack back. It is never for sale again.
verdict-past = Its last day was { $date }. Take it off the shelf.
verdict-not-sold-here = This is not sold at the counter.
verdict-last-day = Today, { $date }, is its last day.
verdict-good = Good until { $date }.
verdict-frozen = Frozen, and so without a date. Thaw it and enter the thaw first.
verdict-no-date = It should have a date and has none. Ask the manager.
verdict-no-last-day = It has no last day.

## Printing

printer-jammed = The printer “{ $printer }” is jammed: clear it, then look which labels came out. The queue goes on by itself.
printer-out-of-labels = The printer “{ $printer }” is out of labels: put in a roll, the queue goes on by itself.
printer-open = The printer “{ $printer }” is open: close it, the queue goes on by itself.
printer-out-of-ribbon = The printer “{ $printer }” is out of ribbon: put one in, the queue goes on by itself.
printer-no-room = The printer “{ $printer }” has no room for more labels: take out what is printed, the queue goes on by itself.
printer-memory-full = The printer “{ $printer }” has its memory full: wait a little, the queue goes on by itself.
printer-paused = The printer “{ $printer }” is paused: press its button, the queue goes on by itself.
printer-off = The printer “{ $printer }” is off or not connected: switch it on, the queue goes on by itself.
printer-stopped-mute = The printer “{ $printer }” has stopped and does not say why: see what it shows, the queue goes on by itself.
printer-stopped = The printer “{ $printer }” has stopped ({ $reasons }): see what it shows, the queue goes on by itself.
printer-takes-none = The printer “{ $printer }” takes no labels now: see what it shows, the queue goes on by itself.
printer-no-answer = The printer “{ $printer }” does not answer: see that it is switched on and on the network. The labels wait, and the queue goes on by itself.
printer-bad-answer = The printer “{ $printer }” was asked and gave no answer that can be read: see what it shows. The labels wait, and the queue goes on by itself.
printer-answers = The printer “{ $printer }” says: { $words }. The labels wait, and the queue goes on by itself.
printer-stumbles = The printer “{ $printer }” does not take a label whole: its memory may be full, or the line to it bad. It is tried again by itself.
printer-no-format = The printer takes neither PDF nor PWG raster, only { $formats }.
printer-other-size = The label is { $label } mm; the printer has { $sizes }.
printer-state-ready = ready
printer-state-printing = printing
printer-state-stopped = stopped
printer-state-does-not-say = does not say
printer-state-does-not-answer = does not answer
size-is = { $across } x { $along }
size-span = { $least } to { $most }
printer-address-none = "{ $address }" is not a printer's address; write it like ipp://printer.local:631/ipp/print.
printer-address-encrypted = "{ $address }" asks for an encrypted line, which this program does not have for printers; write it like ipp://printer.local:631/ipp/print, on a network of your own.
printer-address-not-ipp = "{ $address }" does not begin with ipp://; write it like ipp://printer.local:631/ipp/print.
printer-address-no-host = "{ $address }" names no printer; write it like ipp://printer.local:631/ipp/print.
printer-address-secret = "{ $address }" has a name and password or a question in it; write it like ipp://printer.local:631/ipp/print.
printer-address-no-port = "{ $address }" has no port that can be: 1 to 65535, or none; write it like ipp://printer.local:631/ipp/print.
print-lot-voided = { $lot } was voided since: its label is not printed.
print-not-drawn = The label cannot be drawn: { $cause }.
print-broken-off-empty = The printer “{ $printer }” broke the label off before anything came out (no reason given).
print-broken-off-empty-with = The printer “{ $printer }” broke the label off before anything came out ({ $words }).
print-broken-off = The printer “{ $printer }” broke the label off (no reason given): look whether it came out, and say.
print-broken-off-with = The printer “{ $printer }” broke the label off ({ $words }): look whether it came out, and say.
print-vanished = The printer “{ $printer }” no longer knows this label: it was switched off, or forgets fast. Look whether it came out, and say.
print-drawn-otherwise = Print { $print } was drawn by another version of this program, which drew it otherwise. What it said is on record all the same.
print-before = { $lot }: { $prints }. A label is printed once. If it is needed again, say why: it will be marked as a reprint.
print-before-by = { $packs } on { $at } by { $by }
print-pack = pack { $pack }
print-packs = packs { $packs }
print-run = { $first } to { $last }
print-no-place-for-mark = The label "{ $label }" has no place for the word that says that it is a reprint. Choose another.
print-no-reprint = The label "{ $label }" cannot be made as a reprint: { $cause }.
print-date-stands = Pack { $pack } was printed before with { $date }; the reprint shows that date.
print-date-stands-though = Pack { $pack } was printed before with { $date }; the reprint shows that date, though the record now says { $now }.
print-deed-lot-or-step = Give a lot or a step, one of them.
print-deed-packs-of-lot = Packs are those of one lot: give the lot.
print-deed-why-again = Say why it is printed again, for whoever reads this later.
print-deed-no-lots = That deed made no lots, so it has no labels.
print-deed-too-many = { $labels } labels at once; ask for those of each lot, at most { $most }.
print-deed-dots = The printer “{ $printer }” prints { $dots } dots an inch; labels are laid out for 203, 300 or 600.
print-deed-pack-named = The lot names a pack already.
print-deed-put-in-roll = { $size } Put in such a roll, or choose another printer or label.
print-deed-name-waiting = Name at least one print that waits.
print-deed-name-seen = Say of at least one print whether it came out.
print-deed-unknown = No print on record has the number { $print }.
print-deed-waits-no-more = Print { $print } waits no more: { $state }.
print-deed-named-twice = This print is named twice.
print-deed-printed-already = Print { $print } is down as printed already.
print-deed-not-settled = Print { $print } cannot be settled: { $state }.
print-deed-lot-voided = { $pack } is voided: its label is not printed again.
print-deed-another-label = { $pack } has another label (print { $print }): this one is not printed again.
print-deed-cancelled-by = { $by } cancelled it.
print-deed-seen-out = { $by } saw that it came out.
print-deed-seen-missing = { $by } saw that it did not come out.

## Dates

date-not-before-release = { $product } has no last day before it is released.
date-release-rule = release rule
date-no-rule = { $product } has no keeping rule of its own.
date-no-rule-name = no rule
date-rule-name = { $days ->
    [one] 1 day
   *[other] { $days } days
 } from { $from }
date-from-making = the making
date-from-receipt = the receipt
date-from-packing = packing
date-from-opening = the opening
date-from-thaw = the thaw
date-from-cook = the cook
date-first-that-day = that day is day 1
date-first-day-after = the day after is day 1
date-first-preparation = the day of preparation is day 1
date-first-after-preparation = the day after preparation is day 1
date-keeps = { $product } keeps { $days ->
    [one] 1 day
   *[other] { $days } days
 } from { $from } on { $day }; { $first }: { $date }.
date-keeps-opened = { $product } keeps { $days ->
    [one] 1 day
   *[other] { $days } days
 } from being opened; { $first }.
date-keeps-thawed = { $product } keeps { $days ->
    [one] 1 day
   *[other] { $days } days
 } from being thawed; { $first }.
date-raw-by-house = Raw food is dated by the house.
date-no-exemption = Cured in this kitchen: the exemption of an inspected plant does not hold, and no reading shows that it needs no control.
date-ready-to-eat = Ready to eat, prepared { $day } and held cold: at most { $days ->
    [one] 1 day
   *[other] { $days } days
 }; { $first }: { $date }.
date-starts-anew = A { $kind } step starts the date anew: the { $date } of { $part } is at an end.
date-made-from = { $part } that it was made from is good until { $date }.
date-earliest-part = The earliest of what went in is { $part }: { $date }.
date-earliest-wins = the earliest part wins
date-supplier = The supplier's own date is never passed: { $date }.
date-supplier-rule = the supplier's date
date-no-vacuum-rule = No rule of this place for { $packaging } packs is on file. Local codes and licensed practice decide; ask before you sell it.
date-no-air = Packed without air on { $day }: at most { $days ->
    [one] 1 day
   *[other] { $days } days
 } from packing: { $date }.
date-no-air-cold = Without air, germs grow that nobody smells: keep it at { $degrees } or below, or as your approval says. Local codes and licensed practice decide.
date-no-air-unapproved = { $product } made here may not go into a { $packaging } pack without an approval on file ({ $source }). Pack it with air, or enter the approval's number for "vacuum" in the kitchen's settings.
date-no-air-approved = Packed without air under approval { $number }.
date-no-air-plan = Packs without air need a written plan ({ $source }). None is on file for "vacuum".

## Release

release-unmet = { $unmet }
release-alarm = An alarm stands unsigned. { $alarm }
release-not-ready = { $lot } is not ready. { $unmet }
release-asks-nothing = A release rule that asks for nothing releases everything. Give a loss, days, a water activity or a signature.
release-loss-fraction = { $loss } % loss is next to nothing. For a quarter type 25.
release-loss-cannot-be = { $loss } % loss cannot be. Give the percent of green weight, as 30.
release-tolerance-cannot-be = { $points } points under a target of { $target } % cannot be.
release-water-activity-cannot-be = A water activity lies between 0 and 1, as 0.90; { $limit } does not.
release-too-young = { $days ->
    [one] 1 day
   *[other] { $days } days
 } so far, { $needed } needed.
release-too-young-until = { $days ->
    [one] 1 day
   *[other] { $days } days
 } so far, { $needed } needed. It is old enough on { $from }.
release-never-weighed = It was never weighed, { $target } % loss is needed. Weigh it.
release-too-heavy = { $lost } % lost, { $target } % needed: it weighs { $now } of { $green } green and is ready at { $ready }.
release-too-heavy-still = { $lost } % lost, { $target } % less { $less } needed: it weighs { $now } of { $green } green and is ready at { $ready }.
release-not-read = There is no reading of its water activity, { $limit } or less is needed. Measure it.
release-misread-water = A water activity of { $reading } cannot be. Measure it again.
release-too-wet = Its water activity is { $reading }, { $limit } or less is needed. Let it hang and measure again.
release-not-signed = Nobody has signed. Whoever answers for the cure room tests it and signs.

## Cures and brine

cure-deed-caution = Curing salts are poison in excess: a few grams too many can kill. Weigh them, never measure by spoon; lock them away; have a second person check the weight. These numbers are an aid: your local code, your approved plan and the licensed person decide.
cure-deed-refused = { $findings } { cure-deed-caution }

## Cure room

room-calendar-ends = The calendar ends before that day.
room-turned-daily = A piece is turned every day at most.
room-days-cannot-be = { $days ->
    [one] 1 day
   *[other] { $days } days
 } cannot be. Give the days from the first salt, as 270.
room-fat-cannot-be = { $fat } % fat cannot be. Give it from 0 to 100.
room-fat-fraction = { $fat } % fat is next to none. For a half type 50.
room-fits-better = { $grams } fits { $tag } better, which should weigh about { $expected }. Look at both tags.
room-due = { $tag }: { $task }, since { $since }.
room-task-since = { $task } (since { $since })
room-task-salt = into the salt
room-task-overhaul = rub in more salt and turn
room-task-turn = turn
room-task-rinse = out of the salt, rinse and dry
room-task-equalise = move to equalise
room-task-hang = move to the drying room
room-task-weigh = weigh
room-task-ready-from = may be ready, weigh and test it
room-task-ready-by = should be ready
alarm-too-fast = { $tag } has lost { $lost } % by { $day }, { $expected } % was to be expected, { $points } points either way are usual. It dries too fast: look for a hard case, and give it a damper place. Sign when it was looked at.
alarm-too-slow = { $tag } has lost { $lost } % by { $day }, { $expected } % was to be expected, { $points } points either way are usual. It dries too slowly: the room is humid, or the tag is another piece's. Sign when it was looked at.
alarm-cannot-weigh = { $tag } cannot weigh { $grams } of { $green } green. Weigh it again.
alarm-before-salt = { $tag } was weighed on { $day }, before it went in salt on { $salted }. Look at the tag and the day.
alarm-above-green = { $tag } weighs { $grams }, more than its green { $green } and the salt that clings. Look at the tag and the scale.
alarm-past-water = { $tag } has lost { $lost } %, more than the water that was in it. Look at the tag and the scale.
alarm-gained = { $tag } weighs { $grams }, more than the { $before } of { $day }. A piece does not gain while it dries: look at the tag and the scale.
forecast-released = Released.
forecast-weight-met = It has lost enough, and is old enough from { $ready }.
forecast-about = Ready about { $day }, { $basis }.
forecast-between = Ready between { $earliest } and { $latest }, { $basis }.
forecast-not-before = Not before { $earliest }, { $basis }.
forecast-unknown = Nobody can say yet. Weigh it.
forecast-by-curve = by the curve alone, it was never weighed
forecast-by-one-weighing = by one weighing
forecast-by-weighings = by its weighings
salting-no-green = Days for each pound need the green weight. Weigh it.
salting-no-thickness = Days for each inch need the thickness at the thickest place, in millimetres.
salting-too-many = So many days cannot be. Look at the numbers.
salting-pound-cannot-be = { $rate } days for each pound cannot be.
salting-inch-cannot-be = { $rate } days for each inch cannot be.
salting-pound-too-long = { $rate } days for each pound cannot be: { $most } is the most that anybody salts for. Look for a misprint, such as 11½ for 1½ or pounds for inches.
salting-inch-too-long = { $rate } days for each inch cannot be: { $most } is the most that anybody salts for. Look for a misprint, such as 11½ for 1½ or pounds for inches.
salting-a-day-at-least = A piece lies in salt for a day at least.
salting-too-long = { $days } days in salt cannot be: { $most } is the most. Look at the rate, the weight and its unit.
curve-begins = A curve begins at day 0 with no loss and has at least one more point.
curve-rises = Along a curve days rise and loss never falls.
curve-all-lost = No piece loses all of its weight.
curve-few-days = Weighings of at least three different days make a curve. Keep the one you have.

## Yields and cost

## Why, yield and cost of a lot

why-frozen = Frozen packs have no date; { $days } days are left once they are thawed, the day of thawing counted.
why-since = Since then a pack was opened or thawed: { $day }.
why-opened-or-thawed = opened or thawed
yield-no-style = The list does not say how { $product } is cut (cut_style) or cooked (process), so there is nothing to compare with.
yield-nothing-cut = Nothing was cut off it yet. Break it down first.
cost-of-paid = { $product } { $lot }: { $amount } was paid for { $grams }.
cost-of-nothing = { $product } { $lot }: no price on record, counted as nothing.
cost-of-no-price = { $product } { $lot }: no price on record. Enter what was paid (price_minor) with its receipt.
cost-of-share-by-value = { $lot }: { $share } of { $of } that its step cost, by what each piece sells for.
cost-of-share-by-weight = { $lot }: { $share } of { $of } that its step cost, by weight.

## Statements: ingredients, allergens, dates in words

## Heat and cooling

heat-deed-short = { $findings } Go on and measure again, or enter what came out as a raw product.

## Trichinae

trichinae-deed-short = { $findings }

## Stability and vacuum

stable-of = { $lot }: { $says }

## Duties

## GS1

## Problems, requests, lists

title-cannot-be = A value that cannot be
title-never-issued = Never given out
title-not-enough = Not enough left
title-voided = Voided
title-in-the-way = Later deeds depend on it
title-clash = It contradicts the record
title-missing = Counted as missing
title-not-approved = No approval on file
title-not-released = Not released
title-not-found = Not found
title-id-used = The id was used
title-nothing-to-label = Nothing to label
title-printed-before = Printed before
title-size-not-there = The printer does not have that size
title-label-does-not-hold = The label does not hold it
title-sheet-does-not-hold = The sheet does not hold it
title-label-not-made = The label cannot be made
title-label-not-shown = The label cannot be shown
title-which-version = Which version?
title-changed-meanwhile = Changed meanwhile
title-not-json = Not JSON
title-too-large = Too large
title-cut-off = Cut off
title-method = Not that method
title-unreadable = Cannot be read
title-database-full = The database is full
title-database-away = The database is away
title-damaged = The record is damaged
title-clock = The clock is wrong
service-database-full = Nothing was recorded. Make room on the disk, then try again.
service-database-away = Nothing was recorded. Try again in a moment.
service-damaged = The record could not be read as it should. Nothing was recorded. Run `gambrel check` and see the log.
service-clock-before-build = The clock of this machine says { $now } UTC, before this program was built.
service-clock-before-deed = The clock of this machine says { $now } UTC, before the last deed on record ({ $last } UTC).
service-nothing-recorded = { $why } Nothing is recorded until it is set right.
request-send-json = Send JSON, with Content-Type: application/json.
request-too-large = A body may be at most 1 MB. Send the deed in parts.
request-cut-off = The body did not arrive whole.
request-not-json = This is not JSON: look at line { $line }, column { $column }.
request-ends-early = This is not JSON: it ends too early.
request-no-object = An object with named fields is expected.
request-missing-field = Missing field `{ $name }`.
request-unknown-field = Unknown field `{ $name }`; there are { $known }.
request-no-fields = Unknown field `{ $name }`; there are no fields here.
request-twice = The field `{ $name }` is there twice.
request-not-that = This must be { $wanted }, not { $told }.
request-unread = This cannot be read: { $cause }.
request-no-number = This must be a whole number.
request-no-truth = This must be true or false.
request-query = The query cannot be read. { $says }
request-method = This path takes { $methods }.
request-unreadable = This request cannot be read.
request-scanned = What was scanned? Send it as ?code=…
kind-text = text
kind-quoted = the text "{ $text }"
kind-truth = true or false
kind-whole-number = a whole number
kind-counting-number = a whole number, 0 or more
kind-number = a number
kind-figure = { $figure }
kind-nothing = null
kind-list = a list
kind-object = an object with named fields
kind-other = another kind of value
value-empty = It is empty.
value-too-long = It is longer than { $most } characters.
value-unprintable = It holds a character that cannot be printed.
value-no-day = "{ $text }" is not a day; write it like 2026-06-08.
value-no-time = "{ $text }" is not a time; write it like 2026-06-10T09:05:00-04:00, with its offset.
value-no-code = "{ $text }" is not a code: small letters, digits and hyphens, at most 64.
value-none-of = "{ $text }" is not one of: { $words }.
value-no-uuid = "{ $text }" is not a UUID; the device makes one for each deed.
value-too-much = { $number } is more than can be kept.
value-too-fine = { $number } has more than { $places ->
    [one] 1 decimal
   *[other] { $places } decimals
 }.
value-no-money = { $number } is not an amount of money.
labels-name-packs = A deed may make several lots: name packs at the lot's own labels.
labels-no-lots = That { $kind } made no lots, so it has no labels.
labels-in-parts = { $labels } labels come in { $parts } parts of { $most }: ask for them one by one, with part=1 to part={ $parts }.
labels-no-part = There is no part { $part }: these labels come in { $parts }.
labels-no-packs = "{ $text }" names no packs; write them like 1,2,5-9.
labels-no-sheet = There is no sheet "{ $sheet }". Sheets are: { $sheets }.
list-name-farms = farms
list-name-abattoirs = abattoirs
list-name-suppliers = suppliers
list-name-places = places
list-name-products = products
list-name-recipes = recipes
list-name-printers = printers
entry-not-there = "{ $code }" is not in the list of { $list }.
entry-add-or-choose = "{ $code }" is not in the list of { $list }. Add it, or choose another.
entry-add-first = "{ $code }" is not in the list of { $list }. Add it first.
entry-otherwise = { $code } is in the list of { $list } already, and says otherwise. Change it with PUT.
entry-path-says = The path says { $path }, the entry says { $entry }.
entry-changed-meanwhile = It was changed meanwhile: version { $version } is current. Read it again, then change that.
entry-which-version = Say which version you have seen: send its ETag as If-Match.
entry-no-version = "{ $text }" is no version; send the ETag of the entry as it was read.
entry-no-house-code = "{ $code }" cannot begin a lot code: it must be 2 or 3 capital letters without I, L, O, U.
entry-no-farm-code = "{ $code }" is not a farm's code: 2 or 3 capital letters without I, L, O, U.
entry-code-of-farm = { $code } is the code of the farm { $farm }. Farm and kitchen codes are never shared.
entry-code-of-kitchen = { $code } is the code of the kitchen. Farm and kitchen codes are never shared.
entry-no-name = Give the product a name in at least one language.
entry-keep-days = { $days ->
    [one] 1 day
   *[other] { $days } days
 } cannot be: 1 to { $most }.
entry-no-language = "{ $tag }" is not a language: two small letters, like en or fr.
entry-recipe-parts = A recipe has 1 to { $most } parts.
entry-recipe-in-itself = { $part } has { $product } in it already: a recipe cannot be part of itself.
entry-recipe-too-deep = Recipes are nested more than { $most } deep.
kitchen-no-time-zone = "{ $zone }" is not a time zone; write it like America/New_York.
kitchen-languages = Name 1 to { $most } languages, the first one first.
kitchen-no-currency = "{ $currency }" is not a currency: three capital letters.
kitchen-no-address = "{ $url }" cannot stand in a code: write it like https://trace.kitchen.example
kitchen-gs1-prefix = A GS1 company prefix has 4 to 12 digits.
named-elsewhere = "{ $text }" is another kitchen's label.
named-misread = "{ $text }" does not add up: one of its characters is wrong. Read it from the label again.
named-no-lot = "{ $text }" is not a lot code; they look like BRC-26159-A03-0.
deed-id-used = The id { $id } was used for another deed ({ $kind }). Make a new id for each deed.
deed-unknown = No deed on record has the id { $id }.
deed-no-id = No deed on record has the id "{ $id }".
deed-one-packing = Give pack_count or pack_grams, not both.
deed-two-packs = The lot names pack { $one }, the pack field { $other }.
deed-pack-or-packs = Give pack or packs, not both.
deed-packs-whole = Packs go whole; grams are for one pack.
deed-no-food-place = { $place } is not a place that food touches; clean-downs are about benches and machines.
deed-weigh-or-missing = Say what the pack weighs, or that it is missing; not both, not neither.
deed-not-from-cure = { $lot } did not come out of a cure, so there is nothing to release.
deed-why-back = Why did it come back?
deed-which-back = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }. Say which came back.
deed-why-void = Say why, for whoever reads this later.
deed-take-off = Take these labels off: { $lots }.
step-kind-receipts = POST /api/receipts takes what arrives.
step-kind-moves = POST /api/moves takes moves, freezing and thawing.
step-kind-departures = POST /api/departures takes { $kind }.
step-kind-take-backs = POST /api/take-backs takes what customers bring back.
step-kind-readings = POST /api/readings takes weighings and readings.
step-kind-counts = POST /api/counts takes counts.
step-kind-clean-downs = POST /api/clean-downs takes clean-downs.
step-kind-voids = POST /api/steps/{"{"}id{"}"}/void voids a deed.
step-kind-corrections = POST /api/corrections takes corrections.
step-kind-no-step = "{ $kind }" is not a step. Steps are: { $steps }.
correct-deed-how-known = Say how it is known, for whoever reads this later.
correct-deed-which = Say what is otherwise: of the animal, or of what was bought.
correct-deed-only-receipts = Only receipts are corrected; that is a { $kind }. Void it and enter it anew.
correct-deed-voided = That receipt was voided.
correct-deed-was-bought = That lot was bought in; correct `bought`.
correct-deed-of-animal = That lot is of an animal; correct `animal`.
correct-deed-side-taken = The { $side } side of that animal is { $lot } already.
receive-deed-no-curing-salt = { $product } is no curing salt in the list. Add its strength to the product first.
receive-deed-how-strong = How strong is it? Read the per cent of nitrite and nitrate off the bag: it differs from bag to bag.
receive-deed-strength-from-list = The strength of this curing salt was taken from the list. Read it off the bag: it differs from bag to bag.
receive-deed-one-source = A lot is of an animal or bought in, not both.
receive-deed-which-source = Say which animal it is of (animal), or where it was bought (bought or barcode).
receive-deed-packed-later = Packed on { $packed }, received on { $received }. One of the two is wrong.
receive-deed-other-species = That carcass is on record as { $known }, not { $told }.
receive-deed-no-weight = What does it weigh? The barcode does not say.
receive-deed-carton-differs = The carton's barcode says otherwise. Leave it out, or check the carton.
measure-between = It must be between { $least } and { $most }.
measure-between-celsius = It must be between { $least } and { $most }. Is it Fahrenheit?
measure-between-parts = It must be between { $least } and { $most }. Is it a percentage?
measure-brine = That is { $salt } % salt in the brine.
measure-of-what = Of what? Name a lot or a place.
measure-empty = There is no reading in it.
measure-place-not-weighed = A place is not weighed; name the lot.
measure-nothing-left = { $lot } has nothing left to measure.
cure-deed-not-said-how = Curing salt goes in, but the list does not say how { $product } is cured. Add "cure" (class and method) to the product; the limits depend on it.
cure-deed-going-in = { $salt } of curing salt on { $meat } of meat, { $method }: { $nitrite } ppm sodium nitrite going in, { $percent } % salt.
cure-deed-both-going-in = { $salt } of curing salt on { $meat } of meat, { $method }: { $nitrite } ppm sodium nitrite and { $nitrate } ppm sodium nitrate going in, { $percent } % salt.
heat-deed-no-core = No core temperature is on record for this cook. Measure the thickest part and enter it: its date rests on it.
trichinae-deed-nothing-speaks = { $lot } is pork that is eaten without cooking, and nothing on record speaks for it against trichinae. Tell its treatment ("trichinae": frozen, heated or certificate), or enter the certificate of its farm.

## Pages

## Why there is no label

label-refused-not-lawful = { $lot } is not labelled for sale: { $finding }

## Labels

label-use-by = USE BY
label-use-by-day = USE BY { $day }
label-use-within = USE WITHIN
label-once-thawed = { $days ->
    [one] 1 DAY ONCE THAWED
   *[other] { $days } DAYS ONCE THAWED
 }
label-no-date = NO DATE YET
label-made = Made { $day }
label-frozen = FROZEN
label-frozen-on = Frozen { $day }
label-ingredients = Ingredients:
label-contains = Contains: { $names }
label-raw = RAW
label-ready-to-eat = READY TO EAT
label-caution-raw = Raw. Cook through before eating. Wash hands, board and knife.
label-keep-chilled = Keep refrigerated
label-keep-frozen = Keep frozen
label-keep-ambient = Keep cool and dry
label-keep-hot = Keep hot
label-cured = Cured with salt
label-cured-nitrite = Cured with salt, sodium nitrite
label-cured-nitrate = Cured with salt, sodium nitrate
label-cured-both = Cured with salt, sodium nitrite, sodium nitrate
label-received-heading = RECEIVED
label-received-at = Received { $at }
label-received-cold = Received { $at } · { $degrees }
label-killed = Killed { $day }
label-farm-killed = { $farm }, killed { $day }
label-carcass = Carcass { $number }
label-tag = tag { $tag }
label-their-lot = Their lot { $lot }
label-not-released = NOT RELEASED
label-green = Green { $weight }
label-salted = Salted { $day }
label-turns = Turn: { $days }
label-release = Release at { $target }
label-release-from = Release from { $day }
label-release-both = Release at { $target }, from { $day }
label-release-target = { $weight } (-{ $loss } %)
label-column-day = Day
label-column-who = Who
label-hold = HOLD
label-hold-caution = Do not use, sell or move.
label-released-on = Released on
label-by = By
label-reprint = REPRINT { $nth }
