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

## Dates

## Release

release-unmet = { $unmet }
release-alarm = An alarm stands unsigned. { $alarm }
release-not-ready = { $lot } is not ready. { $unmet }

## Cures and brine

cure-deed-caution = Curing salts are poison in excess: a few grams too many can kill. Weigh them, never measure by spoon; lock them away; have a second person check the weight. These numbers are an aid: your local code, your approved plan and the licensed person decide.
cure-deed-refused = { $findings } { cure-deed-caution }

## Cure room

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
