# Everything that Gambrel says to a person, in English. The keys never change; fr.ftl has the same.
# Arguments: {$left} and the like. Weights, temperatures and days come in the reader's own units.

## General

as-written = { $text }
list-and = and
list-or = or

## Words of the vocabularies (one key a word: NameOfTheVocabulary-word)

Account-used = used
Account-sold = sold
Account-served = served
Account-discarded = discarded
Account-shipped = shipped
Account-returned = returned
Account-lost = lost
Account-unexplained = unexplained
Account-taken-back = taken back
Account-moved = moved
Account-noted = noted
Allergen-milk = milk
Allergen-egg = egg
Allergen-peanut = peanut
Allergen-soy = soy
Allergen-sesame = sesame
Allergen-mustard = mustard
Allergen-celery = celery
Allergen-lupin = lupin
Allergen-sulphites = sulphites
us-sulfites = sulfites
Allergen-wheat = wheat
Allergen-spelt = spelt
Allergen-rye = rye
Allergen-barley = barley
Allergen-oats = oats
Allergen-triticale = triticale
Allergen-almond = almond
Allergen-brazil-nut = Brazil nut
Allergen-cashew = cashew
Allergen-hazelnut = hazelnut
Allergen-macadamia = macadamia nut
Allergen-pecan = pecan
Allergen-pine-nut = pine nut
Allergen-pistachio = pistachio
Allergen-walnut = walnut
Allergen-tree-nut = tree nut
Allergen-anchovy = anchovy
Allergen-bass = bass
Allergen-cod = cod
Allergen-flounder = flounder
Allergen-haddock = haddock
Allergen-hake = hake
Allergen-herring = herring
Allergen-mackerel = mackerel
Allergen-pollock = pollock
Allergen-salmon = salmon
Allergen-sardine = sardine
Allergen-sole = sole
Allergen-trout = trout
Allergen-tuna = tuna
Allergen-fish = fish
Allergen-crab = crab
Allergen-crayfish = crayfish
Allergen-lobster = lobster
Allergen-prawn = prawn
Allergen-shrimp = shrimp
Allergen-crustacean = crustacean
Allergen-clam = clam
Allergen-mussel = mussel
Allergen-octopus = octopus
Allergen-oyster = oyster
Allergen-scallop = scallop
Allergen-snail = snail
Allergen-squid = squid
Allergen-mollusc = mollusc
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
DeedKind-confirm-row = confirmation of a row of the law
DeedKind-adopt = taken in without a label
DeedKind-dispose = disposition
DeedKind-hold = hold
DeedKind-hold-release = hold let go
DeedKind-clean-down = clean-down
DeedKind-check-probe = check of a probe
DeedKind-place-failed = place that did not stay cold
DeedKind-void = void
DeedKind-correct = correct
DeedKind-print = print
DeedKind-settle-print = settle-print
DeedKind-cancel-print = cancel-print
DeedKind-paper = paper
DeedKind-thin = thinning of papers
PrintState-waiting = waits for the printer
PrintState-sending = is being sent to the printer
PrintState-sent = the printer has it
PrintState-printed = came out
PrintState-unsure = nobody knows whether it came out: look, and say
PrintState-refused = the printer does not take it
PrintState-cancelled = cancelled before it was printed
PrintState-spoilt = did not come out
print-left-as-pdf = left as a PDF
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
Food-intact = intact
Food-ground = ground
Food-poultry = poultry
Food-roast = roast
Food-microwaved = microwaved
PiercedBy-stuffed = stuffed
PiercedBy-said-stuffed = stuffed
PiercedBy-filled = filled
PiercedBy-ground = ground
PiercedBy-pumped = pumped with brine
PiercedBy-bladed = pierced by blades or needles
Holding-cold = cold
Holding-hot = hot
Holding-hot-roast = hot roast
Holding-barbecued-cold = barbecued, cold
Holding-barbecued-hot = barbecued, hot
Holding-refrigerated = refrigerated
Holding-eggs = eggs
Holding-receiving = receiving
Holding-receiving-meat = raw meat at the door
Holding-receiving-poultry = raw poultry at the door
Holding-receiving-offal = raw offal at the door
Holding-receiving-preparation = a raw preparation at the door
Holding-receiving-mince = raw mince at the door
Holding-receiving-frozen = frozen food at the door
Holding-thaw-water = thaw water
Holding-thaw-ready-to-eat = thaw ready to eat
Holding-mince = mince
Holding-frozen-mince = frozen mince
Holding-bath = bath
Holding-chicken-bath = chicken bath
Holding-sous-vide-store = sous vide store
CureFigure-salt = salt on the meat, %
CureFigure-mix-salt = salt in the cure mix, %
CureFigure-brine-salt = salt in the meat's brine at the end, %
CureFigure-salometer = pickle on the salometer, °
CureFigure-pickle = pickle to 100 of meat
CureFigure-piece = largest piece, mm
CureFigure-mass = depth of the curing mass, mm
CureFigure-overhauls = overhauls
StageKind-cure = cure
StageKind-contact = contact
StageKind-equalise = equalise
StageKind-soak = soak
StageKind-rinse = rinse
StageKind-hold = hold
StageKind-smoke = smoke
StageKind-dry = dry
Way-carcass-tested = carcass tested
Way-negligible-risk-herd = negligible-risk herd
Way-unweaned = unweaned
Fact-sterile-hermetic = sterile hermetic
Fact-packed-in-salt = packed in salt
Fact-packed-in-brine = packed in brine
Fact-fermented = fermented
Fact-plant-cured = plant cured
Fact-raw-meat = raw meat
Measure-ph = pH
Measure-water-activity = water activity
Measure-salt-in-water = salt in the water of the food, %
Measure-brine = salt in the brine, %
Work-smoke-to-keep = smoke to keep
Work-smoke-for-flavour = smoke for flavour
Work-cure = cure
Work-additive-to-keep = additive to keep
Work-reduced-oxygen = reduced oxygen
Work-reduced-oxygen-listed = reduced oxygen, listed
Work-custom-processing = custom processing
Work-shellfish-tank = shellfish tank
Work-sprouting = sprouting
Work-manufactured-meat = manufactured meat
Work-other-named = other named
BannedFrom-food = food
BannedFrom-mince = mince
BannedFrom-meat-product = meat products
BannedFrom-uncooked-product = uncooked meat products
Shared-born = born
Shared-reared = reared
Shared-slaughtered = slaughtered
Shared-slaughterhouse = slaughterhouse
Shared-cutting-plant = cutting plant
MinceKind-lean = lean
MinceKind-beef = beef
MinceKind-with-pork = with-pork
MinceKind-other = other
Part-hind-leg = hind leg
Part-shoulder = shoulder
Part-loin = loin
Part-belly = belly
Part-shank = shank
Part-trim = trim
Part-jowl = jowl
Part-feet = feet
Part-other = other
Head-cattle = cattle
Head-calf = calf
Head-sheep = sheep
Head-pig = pig
Head-goat = goat
Record-ground-beef-log = ground beef log
Record-farm-direct = farm direct
Record-one-off-purchase = one-off purchase
Record-listed-food = listed food
Record-listed-receiving = listed receiving
Record-listed-receiving-exempt = listed receiving, exempt
Record-listed-inputs = listed inputs
Record-listed-output = listed output
Record-listed-shipping = listed shipping
Record-one-up-one-down = one up, one down
Record-reduced-oxygen-log = reduced oxygen log
Record-trace-to-business = trace to business
Record-trace-retail = trace retail
Record-pig-report = pig report
Record-recall-drill = recall drill
Record-recall = recall
Record-complaint = complaint
Record-trichinae-treatment = trichinae treatment
Record-ontario-meat = meat products made (only in Ontario)
Record-ontario-purchase = food bought (only in Ontario)
Record-animal-product = animal product
Record-freeze-log = freeze log
Record-meat-transaction = record of meat bought and sold
Record-beef-label = record of beef labelling
Record-meat-origin = record of origin
Basis-sodium-nitrite = sodium nitrite
Basis-potassium-nitrite = potassium nitrite
Basis-nitrite-ion = nitrite ion
Basis-sodium-nitrate = sodium nitrate
Basis-potassium-nitrate = potassium nitrate
Basis-nitrate-ion = nitrate ion
Class-bacon = bacon
Class-whole-muscle = whole-muscle
Class-comminuted = comminuted
Class-dry-sausage = dry-sausage
Class-sterilised = sterilised
Class-infant-food = infant-food
Class-wiltshire-bacon = wiltshire-bacon
Class-wiltshire-ham = wiltshire-ham
Class-cured-tongue = cured-tongue
Class-dry-cured-bacon = dry-cured-bacon
Class-dry-cured-ham = dry-cured-ham
Class-jamon = jamon
Class-jambon-sec = jambon-sec
Class-rohschinken = rohschinken
Class-jellied-meat = jellied-meat
Class-immersed-bacon = immersed-bacon
Class-spreadable-sausage = spreadable-sausage
Class-preparation = preparation
Class-named-preparation = named-preparation
Class-portuguese-salted = portuguese-salted
Class-smoked-reindeer = smoked-reindeer
Class-ripened-sausage = ripened-sausage
Class-saucisson-sec = saucisson-sec
Class-czech-salami = czech-salami
Class-swedish-christmas = swedish-christmas
Salometer-60F = 60F
Salometer-38F = 38F
Salometer-25-percent = 25-percent
State-chilled = chilled
State-frozen = frozen
State-ambient = ambient
State-hot = hot
Verdict-sell = SELL
Verdict-sell-today = SELL TODAY
Verdict-not-for-sale = NOT FOR SALE
Verdict-gone = GONE
Verdict-pull = PULL
Verdict-hold = HOLD
Verdict-unknown = NOT OURS

## Rows and findings

finding-with-sources = { $says } ({ $sources })
source-row = { $row }
source-second-hand = { $row } (second hand)
source-memory = { $row } (from memory, not confirmed)
source-common-practice = { $row } (common practice, no source)
source-house = { $row } (house rule)
source-only-in = in { $place }: { $source }
source-product-list = the kitchen's product list
source-practice = common practice, no source

## Refusals and drawing from packs (lot, deed, refusal, code, moment, series)

refusal-never-issued = { $lot } was never given out here. Check the label and type it again.
moment-no-time = { $at } cannot be right: this kitchen cannot have worked then. Check the date and the time.
moment-future = { $at } is in the future; the clock here says { $now }. Check the time that was entered.
moment-ends-first = The step would end ({ $end }) before it began ({ $began }). Check both times.
moment-long-ago = { $at } is more than { $days ->
    [one] 1 day
   *[other] { $days } days
 } back. Add a note that says why it is entered only now.
moment-not-made-yet = { $lot } was made { $made }; it cannot be used at { $at }.
moment-not-done-yet = That deed was done { $done }; nothing can be done with it at { $at }. Check the time that was entered.
adopt-other-product = { $pack } is { $product }. Is it that pack?
adopt-heavier = { $pack } had { $made } in it at first, and { $grams } are more: it is another pot. Take it in without saying which pack it is.
adopt-not-missing = { $pack } is not missing: it is { $being }. Count it as missing first, or take the pot in without naming a pack.
adopt-print-again = Print the label of { $pack } again and put it on.
adopt-taken-as-raw = Nobody knows what happened to it: it is taken as raw
adopt-taken-as-treated = Nobody knows what happened to it: it is not ready to eat
adopt-age-unknown = Nobody knows how old it is: the day it was found is its last
adopt-not-told = Nobody has said which allergens are in it. Correct the deed that took it in and say all of them, or that there are none; until then no customer gets any of it.
adopt-not-the-contents = Of a pot without a label only what is in it can be told: its allergens, its ingredients, what may be in it. Leave the rest out, and void the adoption if it is another pot.
adopt-found = Found without a label: { $why }.
draw-no-pack = Name at least one pack.
draw-pack-twice = Pack { $pack } is named twice. Name it once.
draw-voided = { $lot } was voided. Pull its labels and use the right lot.
draw-no-such-pack = { $lot } has { $packs ->
    [one] one pack
   *[other] { $packs } packs, numbered from 1
 }; there is no pack { $pack }. Look at the number on the pack.
draw-which-pack = { $lot } has several packs on hand: { $packs }. Say which.
draw-missing = { $pack } was counted as missing. Count it before it is used.
draw-emptied = { $pack } has nothing left: it is { $being }. Look at the label again; if it is here all the same, count it first.
draw-nothing-left = { $lot } has nothing left. Look at the label again; if some of it is here all the same, count it first.
draw-not-enough = { $pack } has { $left } left; { $asked } is asked for. Enter what there is; if there is more in it, count it first.
draw-no-weight = { $grams } is no weight. Give what the scale shows, above { $none }.
draw-too-heavy = { $grams } is more than { $most }. Is it typed right?
step-cannot-fill = { $grams } cannot fill { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }. Weigh again, or make fewer packs.
step-packs-sum = The packs sum to { $sum }; the lot is { $lot }. Weigh again.
step-pack-count = A lot has 1 to { $most } packs, not { $packs }.
step-too-many-packs = One step makes at most { $most } packs in all.
step-nothing-in = Nothing goes in. Name the lot that you work on.
step-too-many-inputs = { $inputs } inputs; a step takes at most { $most }.
step-too-many-outputs = { $outputs } outputs; a step makes at most { $most }.
step-makes-something = A { $kind } step makes something. Weigh what came out, waste included.
step-named-twice = { $pack } is named twice in this step. Name it once, with all its grams.
step-two-scales-apart = Two scales differ by at most { $percent } % of what goes in: { $bound } of { $inputs }, not { $grams }. Weigh again.
step-more-out = { $out } came out of { $inputs }. Weigh again, or name what was added (water, ice, steam, scale-difference).
step-less-than-nothing = A pack cannot hold less than nothing. Type its weight again.
part-of = { $product } ({ $pack })
step-dried-as-raw = { $product } hangs and looks ready to eat, but the product list calls it raw. It is not asked for trichinae. If anyone eats it without cooking it, set the product right: not raw, and released. If it is cooked first, give the product its cooking instructions.
step-frozen = { $pack } is on record as frozen. Enter the thaw, so that its days are counted.
step-two-scales = { $grams } is a difference between two scales and stays unexplained.
receive-killed-later = Killed on { $killed }, received on { $received }. One of the two is wrong. Look at the tag and enter it again.
receive-killed-long-ago = Killed on { $killed }, received on { $received }: years later. One of the two is wrong. Look at the tag and enter it again.
receive-head = { $head } head cannot be one receipt. Enter what came in at once in several receipts.
receive-new-animal = Neither carcass number nor tag: this is taken as a new animal, and a second side cannot join it.
receive-raw-on-the-list = The pack is entered as ready to eat, but the product list calls { $product } raw. Look at the pack. If it is raw, correct this receipt.
receive-supplier-past = The supplier's date is past: { $date }. Do not use it.
receive-not-told = { $product } is made of several things, and nobody has said which allergens are in it. Read its pack, correct this receipt, and say all of them, or that there are none, with its ingredients; until then no customer gets any of it.
receive-other-species = { $product } is of { $species }; the animal is { $animal }. Choose the product of that animal, or set its species right.
receive-side-known = The { $side } side of this animal was received as { $lot }. Look at the tag; if the first receipt is wrong, correct it.
depart-to-nobody = Nobody is named to whom it was shipped: a recall could not call them. Void it and enter it again with the name.
depart-taken-back = { $pack } came back from a customer. It is never for sale again; discard it.
count-nothing = Say for each pack what it weighs, or that it is missing.
count-twice = Pack { $pack } is counted twice. Count it once.
count-too-much = { $pack } had { $made } in it at first, and { $grams } are more. Weigh it again without its box, and look whether it is another pack. If more was packed than was entered, void the packing and enter it anew. If it is there all the same, enter it as it happened.
count-heavier = { $pack } had { $made } in it at first, and { $grams } were found in it: something else may be in it.
count-unexplained = { $pack }: { $gap } unexplained.
count-was-gone = { $pack } is on record as { $being }, and now it is here. Nobody knows where it was, so it goes nowhere until a manager says by name what becomes of it. If it came back, void this count and enter it as taken back; if another pack went out, set that right.
count-was-used = { $pack } is on record as used up, and some of it is here: it counts again from now on. If it was another that was used, set that right.
count-was-missing = { $pack } was missing, and now it is here. Nobody knows where it stood and how warm it was: it goes nowhere until a manager says by name what becomes of it. If it was only overlooked, and always stood where it belongs, void both counts.
count-found = { $pack } was on record as { $being }, and was found here.
count-gone-already = { $pack } is on record as { $being } already. If that is wrong, void what took it.
correct-as-known = That is what the record says already. If something else is wrong, correct that.
release-deed-no-rule = { $lot } needs no release: its product has no rule for one. Go on without.
release-deed-already = { $lot } is released already. Go on: nothing is missing.
release-deed-released = Released on { $day } by { $by }: { $days ->
    [one] 1 day
   *[other] { $days } days
 } from the first salt.
release-deed-released-lighter = Released on { $day } by { $by }: { $days ->
    [one] 1 day
   *[other] { $days } days
 } from the first salt, { $loss } % of the green weight lost.
release-deed-rule = release rule
move-too-warm = { $lot } ({ $product }) is ready to eat and has to be kept cold: nothing on record shows that it keeps at room temperature. Enter a pH or a water activity that shows it, have an approval on file, or leave it cold.
move-raw-too-warm = { $lot } ({ $product }) has to be kept cold: in raw food that stands warm some bacteria leave poisons that no cooking undoes. Leave it cold until it is cooked or salted.
move-cools-unseen = It comes from the heat into the cold, and no log shows how fast it cooled. Enter the readings with a chill step: what cooled too slowly cannot be told from what did not.
move-nowhere = Say where it goes (to), or how it is kept now (state).
take-back-came-back = A customer had { $pack }, and nobody knows how it was kept. Discard it. It is not sold or used again, and leaves this kitchen only if a manager lets it go by name, with the reason.
take-back-not-sold = { $pack } is not on record as sold: it is { $being }. Look at the number on the pack; if it was never scanned out, enter the sale first.
take-back-too-much = { $away } of { $pack } went out; { $grams } cannot come back. Weigh it again, or take back the other pack as well.
void-of-void = A void cannot be voided. Enter what really happened as a new deed.
void-of-print = Labels that were asked for cannot be voided. Cancel those that wait, and say of the others whether they came out.
void-of-settlement = What somebody saw at the printer cannot be voided. Ask for the label again, with why.
void-of-cancellation = A cancelled label stays so. Ask for it again.
void-voided-before = This deed is voided already.
void-used-since = What came out of it was used since. Void those deeds first.
void-corrected-since = It was corrected since. Void the correction first.
void-pack-used-since = { $pack } was weighed, counted or used since. Void that first.
weigh-several-packs = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }; only a lot of one piece can be weighed. Count its packs instead.
weigh-heavier = { $lot } weighed { $before } before; { $grams } is more. Is it the right piece?

## Counter's verdicts

verdict-elsewhere = This is another kitchen's label.
verdict-misread = One character of this code is wrong. Scan or type it again.
verdict-not-ours = This is not one of our labels.
verdict-part = This is only a part of a code: { $lots ->
    [one] one lot has it.
   *[other] { $lots } lots have it.
  } Tap the right one, or type the rest.
verdict-of-the-till = This is the till's number of { $product }, which tells nothing of the pack. Scan the square code beside it.
verdict-never-issued = { $lot } was never given out here.
verdict-no-such-pack = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }; there is no pack { $pack }.
verdict-voided = This label was voided. Take it off the shelf.
verdict-not-released = This is still in its cure. Nothing of it is sold before it is released.
verdict-clock-in-doubt = The clock is in doubt, so no date can be trusted. Sell nothing by its date until a manager has looked.
verdict-made-ahead = This was recorded while the clock was wrong, so its date cannot be trusted. Keep it apart and tell the manager.
verdict-nothing-left = Nothing of this lot is left on record.
verdict-missing = This pack was counted as missing. Keep it apart and tell the manager.
verdict-gone = On record this pack is { $being } already.
verdict-taken-back = A customer brought this pack back. It is never for sale again.
verdict-past = Its last day was { $date }. Take it off the shelf.
verdict-not-sold-here = This is not sold at the counter.
verdict-last-day = Today, { $date }, is its last day.
verdict-stands-warm = Look first: { $place } showed { $read } when it was read last, where { $limit } is asked for. If this feels warm, set it apart and ask who is in charge.
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
printer-stopped = The printer “{ $printer }” has stopped. The printer says: “{ $reasons }”. See what it shows, the queue goes on by itself.
printer-worn-part = The printer “{ $printer }” wants a part changed: see what it shows, the queue goes on by itself.
printer-wrong-heat = The printer “{ $printer }” is too hot or too cold to print: leave it alone for a while, the queue goes on by itself.
printer-busy = The printer “{ $printer }” is busy with itself: wait a little, the queue goes on by itself.
printer-locked = The printer “{ $printer }” asks for a name and a password, and takes no labels without: take that off in its own settings.
printer-takes-none = The printer “{ $printer }” takes no labels now: see what it shows, the queue goes on by itself.
printer-no-answer = The printer “{ $printer }” does not answer: see that it is switched on and on the network. The labels wait, and the queue goes on by itself.
printer-bad-answer = The printer “{ $printer }” was asked and gave no answer that can be read: see what it shows. The labels wait, and the queue goes on by itself.
printer-answers = The printer “{ $printer }” takes no label now. The printer says: “{ $words }”. The labels wait, and the queue goes on by itself.
printer-stumbles = The printer “{ $printer }” does not take a label whole: its memory may be full, or the line to it bad. It is tried again by itself.
printer-no-pin = Nothing was sent to the printer “{ $printer }”: nobody has said yet by which certificate it is known. It shows the one of the fingerprint (SHA-256) { $seen }. Compare it with what the printer itself tells, on its panel, its printed configuration or its own page; if it is the same, a manager makes it the printer's on the page for printing.
printer-stranger = Nothing was sent to the printer “{ $printer }”: it shows another certificate, of the fingerprint { $seen }, than the one it is known by, { $pinned }. If the printer was given a new one, compare it with what the printer itself tells and make it the printer's; if not, something else may be answering in its place. The labels wait.
printer-no-format = The printer takes neither PDF nor PWG raster, only { $formats }.
printer-other-size = The printer has no paper for this label: it needs { $label } mm, and the printer says that it holds { $sizes } mm. Put in a roll of { $label } mm, or choose another printer or another label.
printer-state-ready = ready
printer-state-ready-for-some = ready, but not for all your labels
printer-state-printing = printing
printer-state-stopped = stopped
printer-state-does-not-say = does not say
printer-state-does-not-answer = does not answer
size-is = { $across } x { $along }
size-span = { $least } to { $most }
inches-size = { $inches } in ({ $millimetres } mm)
inches-paper-for-needs = { $purpose }: { $sizes }
inches-paper-for-test = The test label: { $sizes }
inches-paper-for-has = For { $purpose }: it has { $sizes }.
inches-paper-for-has-none = For { $purpose }: it lacks { $sizes }.
inches-paper-for-unknown = For { $purpose }: { $sizes }, not known now.
inches-printer-other-size = The printer has no paper for this label: it needs { $label }, and the printer says that it holds { $sizes }. Put in a roll of { $label }, or choose another printer or another label.
inches-printer-test-no-paper = The printer “{ $printer }” says that it holds { $held }: no test label fits there. Put in a roll of { $sizes }, then try again.
paper-for-needs = { $purpose }: { $sizes } mm
paper-for-test = The test label: { $sizes } mm
paper-for-has = For { $purpose }: it has { $sizes } mm.
paper-for-has-none = For { $purpose }: it lacks { $sizes } mm.
paper-for-unknown = For { $purpose }: { $sizes } mm, not known now.
paper-for-lacks = It says that it has no paper for: { $needs }. Put in such a roll before you print these, or print them on another printer.
printer-address-none = "{ $address }" is not a printer's address; write it like ipp://printer.local:631/ipp/print.
printer-address-not-encrypted = "{ $address }" is not an encrypted line, on which alone a printer is known by its certificate; write it like ipps://printer.local:631/ipp/print, or leave the certificate out.
printer-address-not-ipp = "{ $address }" begins neither with ipp:// nor with ipps://; write it like ipp://printer.local:631/ipp/print.
printer-address-no-host = "{ $address }" names no printer; write it like ipp://printer.local:631/ipp/print.
printer-address-secret = "{ $address }" has a name and password or a question in it; write it like ipp://printer.local:631/ipp/print.
printer-address-no-port = "{ $address }" has no port that can be: 1 to 65535, or none; write it like ipp://printer.local:631/ipp/print.
print-lot-voided = { $lot } was voided since: its label is not printed.
print-not-drawn = The label cannot be drawn: { $cause }.
print-broken-off-empty = The printer “{ $printer }” broke the label off before anything came out (no reason given).
print-broken-off-empty-with = The printer “{ $printer }” broke the label off before anything came out. The printer says: “{ $words }”.
print-broken-off = The printer “{ $printer }” broke the label off (no reason given): look whether it came out, and say.
print-broken-off-with = The printer “{ $printer }” broke the label off: look whether it came out, and say. The printer says: “{ $words }”.
print-vanished = The printer “{ $printer }” no longer knows this label: it was switched off, or forgets fast. Look whether it came out, and say.
print-drawn-otherwise = Print { $print } was drawn by another version of this program, which drew it differently. What it said is still on record.
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
print-deed-pack-named = The lot names a pack already. Leave out one of the two.
print-deed-name-waiting = Name at least one print that waits.
print-deed-name-seen = Say of at least one print whether it came out.
print-deed-unknown = No print on record has the number { $print }.
print-deed-waits-no-more = Print { $print } waits no more: { $state }.
print-deed-named-twice = This print is named twice. Name it once.
print-deed-printed-already = Print { $print } is down as printed already.
print-deed-not-settled = Print { $print } cannot be settled: { $state }.
print-deed-lot-voided = { $pack } is voided: its label is not printed again.
print-deed-another-label = { $pack } has another label (print { $print }): this one is not printed again.
print-deed-cancelled-by = { $by } cancelled it.
print-deed-undone-by = { $by } undid what it was of.
print-deed-seen-out = { $by } saw that it came out.
print-deed-seen-missing = { $by } saw that it did not come out.
print-deed-handed-out = { $by } took it as a PDF to print.
print-deed-no-document = No labels left as a document by a deed with the id { $id }.

## Dates

date-not-before-release = { $product } hangs and has no last day of its own: what is cut or packed of it after its release gets one.
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
date-at-most = Made { $day }: at most { $days ->
    [one] 1 day
   *[other] { $days } days
 }; { $first }: { $date }.
date-starts-anew = A { $kind } step starts the date anew: the { $date } of { $part } is at an end.
date-not-anew = A { $kind } starts a date anew only where times and temperatures on record prove the kill of raw food, and nothing in it was past its day. Here they do not.
date-ready-keeps-its-day = { $part } was ready before and keeps its own day, { $date }: so the house has chosen.
date-house-choice = what was ready before keeps its day when it is cooked with raw food (the kitchen's own rule)
date-in-its-cure = A raw piece in its cure has no last day while it cures.
date-made-from = { $part } that it was made from is good until { $date }.
date-part-undated = { $part } has to be kept cold and nobody knows its last day: what is made of it has none, and is for the kitchen only. Correct its receipt with the day on its pack.
date-earliest-part = The earliest of what went in is { $part }: { $date }.
date-earliest-wins = the earliest part wins
date-supplier = The supplier's own date is never gone past: { $date }.
date-supplier-frozen = The supplier's day is for the frozen food: { $date }. Once thawed it keeps by its own days, and never longer than this.
date-supplier-rule = the supplier's date
date-no-vacuum-rule = No rule of this place for { $packaging } packs is on file. Local codes and licensed practice decide; ask before you sell it.
date-no-air = Packed without air on { $day }: at most { $days ->
    [one] 1 day
   *[other] { $days } days
 } from packing: { $date }.
date-no-air-cold = Without air, germs grow that nobody smells: keep it at { $degrees } or below, or as your approval says. Local codes and licensed practice decide.
date-no-air-unapproved = { $product } made here may not go into a { $packaging } pack without an approval on file ({ $source }). Pack it with air, or enter the approval's number for "vacuum" in the kitchen's settings.
date-no-air-approved = Packed without air under approval { $number }.
date-no-air-fish = { $product } is raw fish and may go into a { $packaging } pack only if it is frozen before, while and after it is packed ({ $source }): without air it can become poisonous before anybody smells it. Pack it with air, or freeze it first and keep it frozen.
date-no-air-plan = Packs without air need a written plan ({ $source }). None is on file for "vacuum".
mince-date-too-old = { $product } ({ $lot }) is of an animal killed on { $killed }, { $days } days ago; it may be minced for { $most } days. Cook it, cut it or freeze it instead.
mince-date-frozen-again = { $pack } is mince, or made with it, and was thawed: it is not frozen again. Keep it cold and use it within its day, or cook it.

## Release

release-alarm = An alarm stands unsigned. { $alarm }
release-not-ready = { $lot } is not ready. { $unmet }
release-asks-nothing = A release rule that asks for nothing releases everything. Give a loss, days, a water activity or a signature.
release-loss-fraction = { $loss } % loss is next to nothing. For a quarter type 25.
release-loss-cannot-be = { $loss } % loss cannot be. Give the percent of green weight, as 30.
release-tolerance-cannot-be = { $points } points under a target of { $target } % cannot be.
release-water-activity-cannot-be = A water activity lies between 0 and 1, as 0.90; { $limit } does not.
release-too-young = { $days ->
    [one] 1 day
   *[other] { $days } days
 } so far, { $needed } needed.
release-too-young-until = { $days ->
    [one] 1 day
   *[other] { $days } days
 } so far, { $needed } needed. It is old enough on { $from }.
release-never-weighed = It was never weighed, { $target } % loss is needed. Weigh it.
release-too-heavy = { $lost } % lost, { $target } % needed: it weighs { $now } of { $green } green and is ready at { $ready }.
release-too-heavy-still = { $lost } % lost, { $target } % less { $less } needed: it weighs { $now } of { $green } green and is ready at { $ready }.
release-not-read = There is no reading of its water activity, { $limit } or less is needed. Measure it.
release-misread-water = A water activity of { $reading } cannot be. Measure it again.
release-too-wet = Its water activity is { $reading }, { $limit } or less is needed. Let it hang and measure again.
release-not-signed = Nobody has signed. Whoever answers for the cure room tests it and signs.

## Cures and brine

cure-deed-caution = Curing salts are poison in excess: a few grams too many can kill. Weigh them, never measure by spoon; lock them away; have a second person check the weight. These numbers are an aid: your local code, your approved plan and the licensed person decide.
cure-deed-refused = { $findings } Is it typed right? If it was done that way, record it as it happened, with a note: what came out is then stopped. { cure-deed-caution }
cure-weight-cannot-be = { $grams } cannot be: give a weight from { $none } to { $most }.
cure-no-meat = There is no weight of meat. Weigh it raw, before the cure goes on.
cure-class-and-method = { $class } and { $method } do not go together: the limits for whole pieces are not for ground meat. Choose the method comminuted for ground meat, and only for it.
cure-water-in-dry = There is water in a dry cure. Choose a brine method, so that it is counted.
cure-pickle-parts = The pickle weighs { $pickle } and its parts { $parts }. Weigh the whole pickle again.
cure-pickle-drawn = The pickle is said to weigh { $pickle }, and { $drawn } were weighed for it: it is reckoned by the { $drawn }. Weigh again, or enter the rest that went in.
cure-taken-more = { $said } is said to have gone in, and the meat weighs { $weighed } more: it is reckoned by the weights. Weigh again.
cure-rind-only = The rule for the rind leaves no meat. Say that it has no rind, or have the house file set right.
cure-salt-cannot-be = { $salt } % salt cannot be: that is more salt than meat. Weigh both again; grams and kilograms may be mixed up.
cure-percent-cannot-be = { $percent } % cannot be. Give a per cent from 0 to 100.
cure-fraction = { $percent } % looks like a fraction typed for a percent. If you mean { $meant } %, type { $meant }.
cure-nothing-cures = A curing salt holds nitrite or nitrate, and this one is said to hold neither. Read the bag again; common salt is entered as salt.
cure-no-strength = The strength of this curing salt is not given. Read the per cent of nitrite and nitrate off the bag and write it on the lot; it differs from bag to bag.
cure-strength-too-much = { $nitrite } % nitrite, { $nitrate } % nitrate and the salt come to more than 100 %. Read the bag again.
cure-stronger-than-sold = { $nitrite } % nitrite is stronger than any curing salt that is sold ({ $most } %). Read the bag again. If it is so, record it as it happened, with a note.
cure-method-no-meat = There is no weight of meat. Weigh it raw, before the cure. ({ $method })
cure-method-no-pickle = There is no weight of pickle. Weigh the whole pickle; a rule per gallon is not safe. ({ $method })
cure-method-no-pump = Say how much was pumped, in per cent of the meat. ({ $method })
cure-method-no-pick-up = Say how much pickle the meat took up, in per cent of its weight. ({ $method })
cure-method-no-water = There is no water in this brine. Weigh it, or choose a dry method. ({ $method })
cure-pickle-weight = How much pickle is to be made? Give its whole weight; the water follows.
cure-salt-brought = The curing salt alone brings { $brought } of salt, more than the { $salt } % of the recipe. Use a stronger curing salt, or more salt in all.
cure-no-room-for-water = Salt, sugar and cure leave no room for water in this pickle. Type the weights again, or make more pickle.
cure-aim-ingoing = { $level } cannot be aimed at: give what is to go in, in ppm.
cure-not-in-salt = This curing salt holds no { $basis }. Take another one.
cure-other-things = { $from } cannot be counted as { $to }: nitrite and nitrate are two things. Give each its own number.
cure-ppm-cannot-be = { $ppm } ppm cannot be. Give parts per million (mg/kg).
cure-went-in = { $level } is what went in. Give what the laboratory found.
cure-weak = This is the weak curing salt ({ $name }, { $nitrite } % nitrite): it is as pink as no. 1 and has a small part of its strength. Look at the bag, and at the recipe.
cure-unusual = A curing salt of { $nitrite } % nitrite and { $nitrate } % nitrate is not one of the usual ones. See that the bag says so.
cure-no-nitrate = This ham ages for months and its curing salt has no nitrate: the nitrite is gone long before it is done. Did you take no. 1 for no. 2?
cure-too-little-for-scale = { $dose } of curing salt is too little for a scale that shows { $division }: one step of it is ±{ $error } ppm. Use a finer scale, or weigh at least { $least } on this one.
cure-finer-scale = { $meat } of meat needs a scale that shows { $fine }; on this one a step of { $division } is ±{ $error } ppm.
cure-level-ingoing = { $ppm } ppm as { $basis }, ingoing
cure-level-residual = { $ppm } ppm as { $basis }, residual
cure-counted-both = nitrite and nitrate together
cure-counted-ascorbate = ascorbate or erythorbate
cure-counted-nitrite = nitrite
cure-counted-nitrate = nitrate
cure-limit-broken = { $ppm } ppm { $what } went in; { $rule }.
cure-limit-broken-would-do = { $ppm } ppm { $what } went in; { $rule }. { $dose }
cure-limit-any-place = { $ppm } ppm { $basis } went in. No place that has been read allows more than { $most } ppm for { $class } ({ $method }); so it is not done anywhere.
cure-limit-only-residual = For { $what } in { $class } only what is left at the end is limited, not what goes in.
cure-limit-none-read = No limit for { $what } in { $class } ({ $method }) has been read for this place. Ask before you use it.
cure-limit-finished-most = The finished product may hold at most { $most } ppm { $what }: more than that went in, so have it tested.
cure-limit-left-asks = { $ppm } ppm { $what } are left. That is no limit, and it may be sold; but from { $level } ppm on the reason has to be looked for, and written down.
cure-limit-left = { $ppm } ppm { $what } are left; { $most } ppm is the most in finished { $class }. It is not sold.
cure-limit-sets = { $nitrite } ppm nitrite and { $ascorbate } ppm ascorbate or erythorbate went into pumped bacon; it must be just one of these: { $sets }.
cure-allowed-none = none is allowed in { $food }
cure-allowed-exactly = it must be { $ppm } ppm in { $food }
cure-allowed-most = { $ppm } ppm is the most for { $food }
cure-allowed-least = { $ppm } ppm is the least for { $food }
cure-food-any = { $class } ({ $method })
cure-food-heated = { $class } ({ $method }) where it is cooked
cure-food-not-heated = { $class } ({ $method }) where it is not cooked
cure-food-keep-refrigerated = { $class } ({ $method }) for what must be kept refrigerated
cure-food-called-cured = { $class } ({ $method }) for what is called cured
cure-dose-just = Just { $grams } of this curing salt would do, not { $used }.
cure-dose-at-most = At most { $grams } of this curing salt would do, not { $used }.
cure-dose-at-least = At least { $grams } of this curing salt would do, not { $used }.
cure-set-plain = { $nitrite } ppm sodium nitrite + { $ascorbate } ppm
cure-set-sugar = { $nitrite } ppm sodium nitrite + { $ascorbate } ppm + sugar { $sugar } % or more
cure-set-starter = { $nitrite } ppm sodium nitrite + { $ascorbate } ppm + a lactic starter
cure-set-sugar-starter = { $nitrite } ppm sodium nitrite + { $ascorbate } ppm + sugar { $sugar } % or more + a lactic starter
cure-range-one = { $ppm }
cure-range-from = { $low } to { $high }
brine-degrees-cannot-be = { $degrees }° cannot be: a salometer goes from 0 to 100. Read it again.
brine-no-scale = There are no figures for a salometer of the scale { $scale }. Weigh salt and water instead.
brine-other-scale = { $degrees }° on this salometer is { $percent } % salt; on the usual one (60 °F) it would be { $usual } %. See which of them the recipe means.
brine-cold-scale = This salometer is made for 38 °F and the table for 60 °F: { $degrees }° is about { $usual } % salt, not just that. Read it with a 60 °F salometer in brine of 60 °F, or weigh salt and water.
brine-saturated = A brine of { $percent } % salt does not dissolve: { $most } % is the most that water holds. The rest lies on the bottom and is not in the meat as counted. Weigh again, or add water.
uncured-none-due = The brine is { $brine } %: none of the words is required.
uncured-brine-unknown = Salt and water of the finished product are not known. With a brine of { $least } % or more none of these words would be required.
uncured-cannot-be = { $value } cannot be: it goes from 0 to { $most }.
uncured-nitrite-used = Nitrite or nitrate went in: it may not say uncured, nor that none was added.
uncured-natural-source = { $source } brings nitrite: it may not say that none was added. The rule is under review, so nothing is printed.
uncured-no-wording = This place has no wording for it that has been read. Ask before you print such a claim.
uncured-not-like-cured = It must be like the cured product in size, flavour, consistency and look, or it needs another name.
uncured-natural-words = { $source } brings nitrite: the words need "{ $words }", and the claim may be forbidden altogether. Ask before you print it. ({ $law })

## Cure room

room-calendar-ends = The calendar ends before that day. Choose an earlier day.
room-turned-daily = A piece is turned every day at most.
room-days-cannot-be = { $days ->
    [one] 1 day
   *[other] { $days } days
 } cannot be. Give the days from the first salt, as 270.
room-fat-cannot-be = { $fat } % fat cannot be. Give it from 0 to 100.
room-fat-fraction = { $fat } % fat is next to none. For a half, type 50.
room-never-reached = It is released at { $loss } % lost, and no more than { $most } % can dry out: it would never come down. Enter a lower loss.
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
alarm-too-fast = { $tag } has lost { $lost } % by { $day }, { $expected } % was to be expected, { $points } points either way are usual. It dries too fast: look for a hard case, and give it a damper place. Sign when it was looked at.
alarm-too-slow = { $tag } has lost { $lost } % by { $day }, { $expected } % was to be expected, { $points } points either way are usual. It dries too slowly: the room is humid, or the tag is another piece's. Sign when it was looked at.
alarm-cannot-weigh = { $tag } cannot weigh { $grams } of { $green } green. Weigh it again.
alarm-before-salt = { $tag } was weighed on { $day }, before it went in salt on { $salted }. Look at the tag and the day.
alarm-above-green = { $tag } weighs { $grams }, more than its green { $green } and the salt that clings. Look at the tag and the scale.
alarm-past-water = { $tag } has lost { $lost } %, more than the water that was in it. Look at the tag and the scale.
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
salting-no-thickness = Days for each inch need the thickness at the thickest place, in millimetres. Enter it.
salting-too-many = So many days cannot be. Look at the numbers.
salting-pound-cannot-be = { $rate } days for each pound cannot be. Type it again.
salting-inch-cannot-be = { $rate } days for each inch cannot be. Type it again.
salting-pound-too-long = { $rate } days for each pound cannot be: { $most } is the most that anybody salts for. Look for a misprint, such as 11½ for 1½ or pounds for inches.
salting-inch-too-long = { $rate } days for each inch cannot be: { $most } is the most that anybody salts for. Look for a misprint, such as 11½ for 1½ or pounds for inches.
salting-a-day-at-least = A piece lies in salt for a day at least.
salting-too-long = { $days } days in salt cannot be: { $most } is the most. Look at the rate, the weight and its unit.
curve-begins = A curve begins at day 0 with no loss and has at least one more point.
curve-rises = Along a curve days rise and loss never falls.
curve-all-lost = No piece loses all of its weight.

## Yields and cost

cut-out-no-styles = There is no style of cutting for { $species } yet. Enter its pieces by hand.
cut-out-no-such-style = "{ $style }" is no style of cutting for { $species }. There is: { $known }.
cut-out-no-hanging = The hanging weight is missing. Weigh the animal before it is cut.
cut-out-piece-weight = The { $piece } weighs { $grams }. Weigh it, or leave it out.
cut-out-not-weighed = No { $piece } was weighed. About { $expected } % was to be expected.
cut-out-unusual = The { $piece } is { $part } % of the hanging weight, usual is { $low } to { $high } %. Look at the scale, the tag and where it was cut.
cut-out-usual = The { $piece } is { $part } % of the hanging weight, usual is { $low } to { $high } %.
cut-out-plain = The { $piece } is { $part } % of the hanging weight.
cut-out-beside = The { $piece } is { $part } % of the hanging weight; this style has no such piece.
cut-out-more-than-hung = The pieces weigh { $grams } more than what hung ({ $part } % loss). A scale or a typing error.
cut-out-left-out = { $grams } ({ $part } %) was not weighed. Look for a piece that was left out.
cut-out-dripped = { $grams } ({ $part } %) went to cutting and dripping.
cut-out-loss = unexplained loss
step-yield-unknown = "{ $process }" is no process with a known yield. Choose one of the list.
step-yield-no-base = The weight of the { $of } is missing. Weigh it before it goes in.
step-yield-no-output = What came out was not weighed. Weigh it.
step-yield-added = What was added cannot weigh less than nothing or as much as all that came out. Type its weight again.
step-yield-percent = { $name }: { $amount } % of the { $of }.
step-yield-percent-usual = { $name }: { $amount } % of the { $of }, usual is { $low } to { $high } %.
step-yield-percent-unusual = { $name }: { $amount } % of the { $of }, usual is { $low } to { $high } %. Look at the scale, the tag and what went in.
step-yield-litres = { $name }: { $amount } L/kg of the { $of }.
step-yield-litres-usual = { $name }: { $amount } L/kg of the { $of }, usual is { $low } to { $high } L/kg.
step-yield-litres-unusual = { $name }: { $amount } L/kg of the { $of }, usual is { $low } to { $high } L/kg. Look at the scale, the tag and what went in.
cost-no-cost = What it cost is missing. Take it from the supplier's paper.
cost-no-weight = A cut without weight has no share. Weigh it.
cost-nothing-sells = There is no cut that sells for anything. Give the cuts a price, or share by weight.
cost-too-much-to-share = { $cost } is too much to share out. Look at it.
cost-price-cannot-be = { $price } for a kilogram cannot be. Look at the price.
cost-too-much-money = { $amount } is more money than there is. Type it again, in hundredths of the currency.

## Why, yield and cost of a lot

why-frozen = Frozen packs have no date; { $days } days are left once they are thawed, the day of thawing counted.
why-freezing-stops = freezing stops the clock
why-since = Since then a pack was opened or thawed: { $day }.
why-opened-or-thawed = opened or thawed
yield-no-style = The list does not say how { $product } is cut (cut_style) or cooked (process), so there is nothing to compare with.
yield-nothing-cut = Nothing was cut off it yet. Break it down first.
cost-of-paid = { $product } { $lot }: { $amount } was paid for { $grams }.
cost-of-nothing = { $product } { $lot }: no price on record, counted as nothing.
cost-of-bears-nothing = { $product }, { $lot }, has neither a price nor a value a kilogram, so the other pieces bear its cost. Give it one in the list.
cost-of-no-price = { $product } { $lot }: no price on record. Enter what was paid (price_minor) with its receipt.
cost-of-share-by-value = { $lot }: { $share } of { $of } that its step cost, by what each piece sells for.
cost-of-share-by-weight = { $lot }: { $share } of { $of } that its step cost, by weight.

## Statements: ingredients, allergens, dates in words

statement-sulphites-unknown = Sulphites went in and nobody said how much is in the finished food, so they are declared. Under { $most } mg/kg they need not be.
us-sulfites-unknown = Sulfites went in and nobody said how much is in the finished food, so they are declared. Under { $most } ppm they need not be.
statement-name-the-nut = "{ $allergen }" is not enough here: name the nut. Look at the supplier's label and correct the product.
statement-name-the-crustacean = "{ $allergen }" is not enough here: name the crustacean. Look at the supplier's label and correct the product.
statement-name-the-mollusc = "{ $allergen }" is not enough here: name the mollusc. Look at the supplier's label and correct the product.
statement-name-the-fish = "{ $allergen }" is not enough here: name the fish. Look at the supplier's label and correct the product.
statement-title = The allergen statement begins with "{ $title }" and nothing else.
statement-lacks = The allergen statement lacks { $names }. Once it is there it names every one, even those that the list shows.
statement-capitals = Each entry of the allergen statement begins with a capital and goes on small: { $entries }.
statement-no-date-words = There are no words here for a { $kind } date. Take another kind.
statement-date-before = The last day { $day } lies before { $from }, from which it keeps. One of the two is wrong. Look which, and enter it again.
statement-kitchen-date = A { $kind } date is for the kitchen only here, not for a customer's label.
statement-no-date-form = There is no form of a date here in "{ $language }". Take this language off the labels of the kitchen.
statement-may-not-say = A customer's label of meat may not say "{ $words }" here. Write { $instead }.
statement-letters-low = The small letters of the { $what } are { $printed } mm high; on this panel they must be { $least } mm or more. Take a larger label or larger letters.
statement-net-title = The net weight begins with "{ $title }".
statement-net-wrong = "{ $text }" is not the weight of the pack, { $grams }. Weigh it and print it again.
statement-languages = A label here is in { $wanted }: { $missing } is missing.
statement-added-water = Added water is { $percent } % of the finished weight: a cut, joint, slice or carcase says "with added water" in its name above { $most } %.
statement-no-raw-meat = The raw meat has no weight. Weigh it before the solution goes in.
statement-no-solution = The solution has no weight. Weigh the meat again, or the solution that went in.
statement-no-bringer = No ingredient is known to bring { $allergens }, so it is said after the list. Set it at the ingredient that brings it.
statement-cure-unlisted = { $name } has no recipe: every part of a cure is listed by name. Enter what its label says.
statement-no-spice = { $name } is not a spice here. Set it as a food or a flavouring.
statement-declared-elsewhere = The pack declares its ingredients, but not in the language "{ $language }". The label has them as the pack does: { $text }. Enter them in that language (bought.declares.ingredients).
date-kind-use-by = use-by
date-kind-best-before = best-before
date-kind-discard-by = discard-by
date-kind-packed-on = packed-on
date-kind-frozen-on = frozen-on
date-kind-prepared-on = prepared-on
lettering-label = label
lettering-ingredient-list = ingredient-list
lettering-ingredient-list-by-table = ingredient-list-by-table
lettering-net-quantity = net-quantity
lettering-thawed = thawed
lettering-safe-handling = safe-handling
change-new-allergen = { CAPITAL($allergen) } is new in this batch: { $sources }.
change-new-allergen-unknown = { CAPITAL($allergen) } is new in this batch: no ingredient is known to bring it.
change-gone-allergen = { CAPITAL($allergen) } is no longer in this batch. Look twice before you believe it.
change-new-ingredients = New in this batch: { $names }.
change-gone-ingredients = No longer in it: { $names }.
change-reordered = The order of the ingredients has changed.
change-source = { $path }
change-source-lot = { $path }, lot { $lot }
change-source-lots = { $path }, lots { $lots }

## Heat and cooling

heat-deed-short = { $findings } Is it typed right? If so, go on and measure again. If that is how it ended, record it as it happened, with a note: what came out is then stopped.
limit-at-most = at most { $value }
limit-below = below { $value }
limit-at-least = at least { $value }
limit-above = above { $value }
limit-exactly = exactly { $value }
heat-core-too-hot = { $at } is hotter than the core of meat gets ({ $most }). Was it read in Fahrenheit and typed as Celsius? Give the scale with the number.
heat-core-too-cold = { $at } is colder than the core of meat gets ({ $least }). Check the number.
heat-store-too-hot = { $at } is hotter than a room or bath gets ({ $most }). Was it read in Fahrenheit and typed as Celsius? Give the scale with the number.
heat-store-too-cold = { $at } is colder than a room or bath gets ({ $least }). Check the number.
heat-ends-first = A time of minus { $time } cannot be; the end is before the start. Check both times.
heat-no-reading = There is no reading. Give the time and the core temperature of each.
heat-read-after = The reading of { $read } is from after the step, which ended { $ended }. Set the time of the reading right, or say when the step really ended.
heat-read-before = The reading of { $read } is from before the step, which began { $began }. Set the time of the reading right, or say when the step really began.
heat-read-long-before = The last reading is of { $read }, more than a day before the step ended ({ $ended }). Say when the step really ended, or enter the log that belongs to it.
heat-read-before-it-came = The last reading is of { $read }, and { $lot } came in { $came }: this log is of another pot. Enter the one that belongs to it, or set the times right.
heat-held-before-it-came = It cannot have been held for { $held }: { $lot } came in { $came }, { $most } before the step ended. Set the minutes right, or say when the step really ended.
heat-held-before-it-began = It cannot have been held for { $held }: the step began { $began }, { $most } before it ended. Set the minutes right, or say when the step really began and ended.
heat-two-readings = At { $at } there are two readings, { $one } and { $other }. Which is right?
failure-nothing-there = Nothing stood in { $place } at that time.
failure-stable = { $lot } keeps without cold.
failure-stayed-cold = { $lot } stayed cold by the readings.
failure-all-stayed-cold = { $lots } lots stayed cold by the readings.
failure-in-time = { $lot } was too warm for up to { $warm }; { $within } are allowed, once. Cool it at once or use it now.
failure-in-time-again = { $lot } was too warm for up to { $warm }, and for up to { $before } another time; { $within } are allowed in all. Cool it at once or use it now.
failure-broke = In { $place } it was, or may have been, too warm for { $warm }; { $within } are allowed.
failure-broke-in-all = In { $place } it was, or may have been, too warm for { $warm }, and for { $before } another time; { $within } are allowed in all.
failure-thawed = In { $place } it was above freezing for up to { $warm }: what was frozen counts as thawed since then, and its days with it.
failure-stopped = Stopped: { $foods }.
failure-stopped-more = Stopped: { $foods }, and { $more } more.
failure-found-warm = { $lot } was found too warm, and again { $warm } later, with no cold reading in between: { $within } are allowed.
failure-look-if-thawed = { $lot } was frozen. What thawed is entered as thawed, and is not frozen again.
failure-look-what-thawed = { $lots } lots here were frozen. What thawed is entered as thawed, and is not frozen again.
failure-left-before = { $lot } had left { $place } in time: what the failure there stopped is free of it.
failure-left-before-ask = { $lot } had left { $place } in time. It stays stopped until somebody who may lift stops says so.
failure-no-rule = This place has no rule for food that got warm. A person decides on each lot.
failure-still-open = { $place } failed ({ $at }), and nobody has read it since. Read it and enter that it is cold before food stands in it.
place-beyond = { $place }: { $at } where { $limit } is asked for.
place-stood-there = In { $place } at that time: { $lots }. Look at it; if it lasted, record that the place failed.
place-no-reading = This reading has no temperature. Give celsius or fahrenheit.
place-read-outside = This reading is not of the time in which it was not cold. Check its hour, or both times.
place-ends-first = It must end after it began, and not after it was noticed. Check the times.
probe-good = Probe { $probe } is good; check it again by { $due }.
probe-failed = Probe { $probe } showed { $read } on { $day } where { $right } is true ({ $bath }). Mend or replace it, and check it again: what it showed proves little. Water boils a little cooler high above the sea.
probe-unchecked = Probe { $probe } was never checked. Hold it in melting ice, and enter what it shows.
probe-overdue = Probe { $probe } was due for a check on { $due }. Hold it in melting ice, and enter what it shows.
Bath-ice = melting ice
Bath-boiling = boiling water
cook-silence = No reading between { $from } and { $until } ({ $length }). What happened then? Decide before it is used.
cook-went-out = The core was down to { $core } at { $at } and came up again later. Was the heat off? Decide before it is used.
cook-no-table = This place has no cooking table for { $food } food here. Judge it by your own written plan.
cook-no-lethality = There is no table of a { $log }-log cut for { $food } food in this place. Judge it by your own written plan.
cook-no-row = There is no cooking table { $row } in this place. Choose one that GET /api/rows lists, or leave it out: then the one that fits is found.
cook-held-short = { $core } was held for { $held }; { $at_least } needs { $hold }, so { $missing } more.
cook-gaps = Every reading for { $held } was at or above { $at_least }, which would be enough, but readings are missing in between. If it never fell below that, it is enough; a person decides.
cook-hold-short = The longest hold at or above { $at_least } was { $held }; { $hold } are needed, so { $missing } more.
cook-not-held = It reached { $at_least }, and nothing shows that it stayed there; { $hold } are needed. Hold it for so long, and enter how long it was held.
cook-reached = Enough: at { $at_least } reaching it is enough.
cook-enough = Enough: at { $at_least } { $hold } are needed and { $held } were held.
cook-too-cool = { $core } is below the table's first row. No time is long enough; heat it to { $at_least } for { $hold } or hotter.
cook-too-cool-at-once = { $core } is below the table's first row. No time is long enough; heat it to { $at_least } or hotter.
cook-none-met = No cooking table on file is met, of this place or of another, so nothing shows that it is cooked. Heat it on: { $at_least } for { $hold } is enough.
cook-none-met-at-once = No cooking table on file is met, of this place or of another, so nothing shows that it is cooked. Heat it on: reaching { $at_least } is enough.
cook-by-another = The kitchen's own table is not met; another one is: { $row }. Is it allowed here? A person decides that once.
cook-not-decided = The kitchen's own table is not met. One of another place is ({ $row }), and nobody has said that it may be used here: heat it further, or have the number of an approval for "cooking" entered in the kitchen's settings first.
cook-other-food = The table { $row } is for { $made_for } food; this is { $food }. Choose another, or leave it out: then the one that fits is found.
cook-not-made-for = The table { $row } was not made for what is in this. Leave it out, and the one that fits is found.
cook-boiled = It boiled for { $boiled }; { $least } are usual. That is common practice, no source.
cook-boiled-short = It boiled for { $boiled }; { $least } are usual, common practice without a source. Boil it on, or measure the core.
cook-boiled-piece = That the pot boiled does not show how hot the middle got of { $food } food. Measure the thickest part.
cook-boiled-whole = That the pot boiled does not show how hot the middle of { $piece } got, which went in whole. Measure the thickest part, and enter the temperature and how long it was held.
cook-pierced = { $product } ({ $lot }) was { $by }, so it is judged as ground meat, not as { $class }: what was on the outside is inside.
cook-stuffed = { $product } ({ $lot }) was mixed with something that fills it, so it is judged as stuffed meat, not as { $class }. Cook it on until the middle of the filling shows enough.
cook-said-stuffed = It is said to be stuffed, so it is judged as stuffed meat, not as { $class }. Cook it on until the middle of the filling shows enough.
cook-filled = { $product } ({ $lot }) went into this cook with the meat and may fill it, so it is judged as stuffed meat, not as { $class }. Cook it on until the middle of the filling shows enough; where it only lies around the meat or beside it, say that it is not stuffed.
cook-not-stuffed = { $product } ({ $lot }) went into this cook with the meat. Whoever cooked it says that it does not fill the meat.
cook-before-it-came = { $lot } came in { $came }. What was read or held before proves nothing of it.
cook-typed-later = { $lot } was typed in { $came }, and part of this heat was before. It counts because nobody said when { $lot } came in; if it came in then, correct the reading.
cook-unknown-animal = { $product } ({ $lot }) is raw, and nothing on record says of which animal, so it is judged as poultry, which needs the most. Cook it on; and say in its entry which animal it is, so that the next of it is judged by that.
cook-stood-warm = In this cook the food was warm, and not yet { $hot }, for { $warm }; it may be for { $within } at the most. Some bacteria leave poisons that heat does not undo.
cook-came-up-slowly = From { $from } to { $to } it took up to { $took }; { $within } or less is advised, because some bacteria leave poisons that heat does not undo.
cool-stage-between = cooling from { $from } to { $to }
cool-stage-from-start = cooling from the start to { $to }
cool-no-plan = This place has no cooling plan "{ $plan }". Known here: { $known }.
cool-not-after-cooking = The way to cool "{ $plan }" is for what was never hot. What was cooked cools by another one. Leave it out: then the one that fits is found.
cool-nitrite-cannot-be = { $ppm } ppm of nitrite cannot be. Leave it out if none was used.
cool-no-stages = It has no stages.
cool-not-approved = This way to cool needs an approval on file first. Without one the ordinary cooling times hold.
cool-no-nitrite = This slower way is for meat cured with { $least } ppm of nitrite or more; none is on record.
cool-little-nitrite = This slower way is for meat cured with { $least } ppm of nitrite or more; { $ppm } ppm went in.
cool-never-above = It never was above { $to }.
cool-enough = Enough: { $stage } took { $most } at most; { $within } are allowed.
cool-too-long = { $stage } took more than { $least }; { $within } are allowed.
cool-unsure = { $stage } took between { $least } and { $most }; { $within } are allowed. The readings are too far apart to tell.
cool-unsure-at-most = { $stage } took up to { $most }; { $within } are allowed. The readings are too far apart to tell.
cool-still-warm = { $gone } after { $from } it was still at { $core }; { $within } are allowed for { $stage }.
cool-warm-since-start = { $gone } after the start it was still at { $core }; { $within } are allowed for { $stage }.
cool-still-cooling = It is still cooling ({ $core } at { $at }). It must be at { $to } by { $by }.
cool-warm-after-first = It was still at { $core } { $after } after the first reading; { $within } are allowed for { $stage }.
cool-begins-late = The readings begin at { $core }, so nobody can tell how long { $stage } took. A reading at or above that is missing; a person decides.
cool-none-met = No way to cool on file is met, of this place or of another, so nothing shows that it was cooled in time. Discard it; or, where a reading is missing in between, enter it.
holding-no-temperature = This place has no temperature for "{ $what }" here. Go by your own written plan.
holding-nowhere = { $at } is warmer than any place on file lets ready food be; the mildest of them asks for { $limit }.
holding-outside = { $at } where { $limit } is asked for.

## Trichinae

trichinae-deed-short = { $findings }
thickness-of = { $mm } mm ({ $inches } in)
trichinae-proof-normally-cooked = It is normally cooked before it is eaten, so it needs no treatment. It must not look ready to eat.
trichinae-proof-not-freed = No row of this place frees it from treatment. A person decides.
trichinae-proof-no-paper = Give the number of the test or the certificate; without it nobody can look.
trichinae-proof-not-taken = No row of this place takes "{ $way }" in place of a treatment. A person decides.
trichinae-proof-only-of-pigs = "{ $way }" speaks of domestic pigs only, and there is { $species } in this lot. Show the test of the carcass, or a treatment.
trichinae-proof-none-needed = No treatment is needed: { $way } ({ $paper }).
trichinae-cold-no-table = This place has no table here for trichinae by cold. A person decides.
trichinae-cold-give-thickness = Give the thickness of the piece or the box: thick ones take longer.
trichinae-cold-too-warm = { $at } is warmer than the table's first row ({ $first }). No time is long enough.
trichinae-cold-short = At { $at_most } or colder it needs { $hold }; it has had { $held }, so { $missing } more.
trichinae-cold-enough = Enough for trichinae: { $at_most } or colder for { $hold }.
trichinae-cold-longer-than-on-record = It is said to have been frozen for { $held }; by the record all of its meat stood frozen for { $on_record }. Enter the hours that the record has, or first record with their times when it went into the freezer and when it came out.
trichinae-cold-never-frozen = It is said to have been frozen for { $held }; by the record not all of its meat ever was. If it was, record first with their times when it went into the freezer and when it came out.
trichinae-cold-longer-than-dead = It cannot have been frozen for { $held }: its animal was killed { $dead_for } ago. Look at the freezer's log and enter the hours again.
trichinae-cold-too-thick = No table is for pieces so thick; the thickest is { $thickest }. Cut it, or read the temperature in the middle.
trichinae-cold-warm-at-start = The time began with the meat at { $start }; it begins when the meat is { $limit }.
trichinae-heat-no-table = This place has no table here for trichinae by heat. A person decides.
trichinae-heat-never-heated = It is said to have been heated to { $core }; no step on record heated it. Record the cooking or the hot smoking first, with its log.
trichinae-heat-hotter-than-on-record = It is said to have been heated to { $core }; the hottest on record is { $on_record }. Enter that, or correct the log of the step that heated it.
trichinae-heat-too-cool = { $core } is below the table's first row ({ $first }). No time is long enough.
trichinae-heat-enough = Enough for trichinae: { $at_least } for { $hold }. Salmonella is another test.
trichinae-heat-holds-itself = Enough for trichinae: a piece thicker than { $thicker_than } that is chilled more than { $later } later needs no logged time.
trichinae-heat-short = { $at_least } needs { $hold }; { $held } were held, so { $missing } more.
trichinae-heat-no-time = { $at_least } needs { $hold }, and no time is on record. Enter how long it was held.
trichinae-heat-came-up-slowly = It took { $took } to come up; meat that is neither cured nor fermented has { $within }.
trichinae-method-no-methods = This place has no methods of curing here, so not "{ $method }". Freeze the meat or show a test.
trichinae-method-no-method = This place has no method "{ $method }". Known here: { $known }.
trichinae-method-checked = Checked against the method { $method } for trichinae.
trichinae-method-incomplete = A part of this method is not on file here, so it cannot be passed. Read the official text; a person decides.
trichinae-method-give-piece = Give the size of the largest pieces of meat: the method goes by it.
trichinae-method-give-mass = Give the depth of the mass in which it cured: the method goes by it.
trichinae-method-give-casing = Give the casing's diameter when stuffed: the days go by it.
trichinae-method-give-whole = Give the time since the cure began: the method asks for it.
trichinae-method-give-heaviest = Give the weight of the heaviest piece of the lot: the days go by it.
trichinae-method-give-days = Give the first day of the cure and the first and last day of drying.
trichinae-method-too-heavy = No piece weighs so much. Type its weight again.
trichinae-method-casing-too-wide = The casing is wider than the method's widest. Use another method.
trichinae-method-lack = { $figure }: { $limit }; it has { $has }.
trichinae-method-lack-unknown = { $figure }: { $limit }; none is on record.
trichinae-method-lacks = { $lacks }
trichinae-method-need = { $need }: { $wanted } are needed and { $has } count, so { $missing } more.
trichinae-method-up-to = { $stage }: { $most } at most; it took { $took }.
trichinae-method-up-to-cool = { $stage }: { $most } at most and never above { $at_most }; it took { $took }.
trichinae-method-whole-short = From the start of the cure: { $wanted } are needed, { $has } have passed, so { $missing } more.
trichinae-method-outside-winter = the cure began on { $cured_on }, outside the winter that the method allows
trichinae-method-dried-short = it dried { $days ->
    [one] { $days } day
   *[other] { $days } days
 } and needs { $needed }
trichinae-method-no-summer = it did not hang through the whole of the summer months
trichinae-method-climate-short = Drying without control of the room: { $lacks }.
trichinae-method-climate-met = The drying took in the summer that the method asks for.
trichinae-method-no-meat = No meat is on record in its cure. Enter what it was cured with first.
trichinae-method-on-record = On record, salt: { $salt } %. { $stages }
trichinae-stage-read = On record, { $stage }: { $time }, never below { $lowest } (readings: { $readings }).
trichinae-stage-unread = On record, { $stage }: { $time }, and nobody read how warm it was, so it does not count. Enter the readings of that place.
trichinae-part-any = { $stage }
trichinae-part-at-least = { $stage } at or above { $at_least }
trichinae-part-at-most = { $stage } at or below { $at_most }
trichinae-part-between = { $stage } at or above { $at_least } and at or below { $at_most }
trichinae-part-with = { $part } with { $other }
trichinae-drying-no-ham-table = The table of drying days for hams is not on file here. A person decides.
trichinae-drying-no-sausage-tables = The tables of drying days are not on file here. A person decides.
trichinae-drying-give-casing = Give the casing's diameter when stuffed.
trichinae-drying-give-salt = Give the salt in a hundred of the mix without its dry ingredients.
trichinae-drying-one-run = Dry enough: at or above { $at_least } for { $time }.
trichinae-drying-runs-enough = Dry enough: the runs come to { $sum }, more than { $more_than }.
trichinae-drying-runs-short = Drying: the runs come to { $sum } and must come to more than { $more_than }. In one run at { $at_least } it would be { $missing } more.
trichinae-drying-table-ends = The table ends before a casing of { $casing } with { $salt } % salt. Use another method.
trichinae-drying-days = { $base ->
    [one] { $base } day
   *[other] { $base } days
 } by the casing, { $cut } off for the hold ({ $cut_percent } %), { $more } more for the salt ({ $more_percent } %): { $days ->
    [one] { $days } day
   *[other] { $days } days
 } at or above { $room }
trichinae-drying-enough = Dry enough: { $days }.
trichinae-drying-short = Drying: { $days }; { $missing } more.
trichinae-process-highest-below-lowest = The highest temperature ({ $highest }) is below the lowest ({ $lowest }). Enter them the other way about.
trichinae-process-no-thickness = A thickness is more than nothing.
trichinae-process-no-weight = A piece weighs more than nothing.
trichinae-process-ends-first = The drying would end ({ $last }) before it began ({ $first }). Change one of the two.
trichinae-process-salt-is-dry = The salt is one of the dry ingredients, so they weigh at least as much as it.
trichinae-process-mix-too-light = The mix must weigh more than its dry ingredients. Check the weights.
trichinae-process-part-of-one = { $percent } % is so little that a part of one may have been typed for a percentage: 3.3 %, not 0.033. Type the percentage.
trichinae-process-cannot-be = { $percent } % cannot be. Give the parts in a hundred.
trichinae-process-salometer = { $degrees }° on the salometer cannot be; it ends at 100°.
trichinae-process-pickle = { $parts } parts of pickle cannot be. Type it again.

## Stability and vacuum

stable-of = { $lot }: { $says }
stable-at-door = Measured at the door: { $says }
stability-no-table = This place has no table of stability here, so the food is kept under time and temperature control.
stability-not-measured = not measured
stability-ph = the pH
stability-water-activity = the water activity
stability-measured = pH { $ph }, water activity { $activity }
stability-stable = { $measured }: no time and temperature control is needed.
stability-measure = { $measured }: it needs time and temperature control. Measure { $lacks }.
stability-assess = { $measured }: it needs time and temperature control until an assessment of the product proves otherwise.
stability-none-of = It needs time and temperature control. Any one of these would free it: { $ways }.
stability-way-of = { $all }
stability-way-limit = { $measure } { $limit }
stability-way-has = It has { $way }.
stability-way-has-unread = It has { $way }. This row was not read at its source: look before you lean on it.
stability-way-no-barriers = This place has no list of barriers here. Go by your own approved plan.
stability-way-no-barrier = No barrier beside the cold is shown. One of these, or an approval on file: { $ways }.
moisture-ratio-cannot-be = { $ratio } parts of moisture to one of protein cannot be. Type it again.
moisture-no-name = This place has no moisture to protein for "{ $name }". Known here: { $known }.
moisture-too-moist = { $ratio } parts of moisture to one of protein; { $name } has { $most } at most.
moisture-ph-high = pH { $ph }; { $name } has { $most } at most.
moisture-ph-missing = pH not measured; { $name } has { $most } at most.
moisture-no-proof = Dry enough for the name. It is no proof of safety; water activity is.
reading-ph = A pH of { $ph } cannot be; it lies between 0 and 14.
reading-activity-percent = A water activity of { $activity } cannot be; it is at most 1. Was a per cent typed? { $activity } % is { $meant }.
reading-activity-high = A water activity of { $activity } cannot be; it is at most 1.
reading-activity-low = A water activity of { $activity } cannot be; it is at least 0.
reading-salt = { $salt } % of salt in water cannot be; it holds no more than about 26 %.

## Duties

percent-cannot-be = { $percent } % cannot be. Give a number between 0 and 100.
percent-part-of-one = { $percent } looks like a part of one. Write it in hundredths: { $meant }.
approval-ended = { $number } for { $work } ended on { $until }. Have it renewed and enter the new day.
approval-needed-in = In { $place }: { $work } needs { $needs } first. Enter its number; elsewhere ask your own authority what it wants.
approval-needed = { $work } needs { $needs } first. Enter its number, or ask the authority for it.
animal-banned = { $part }: { $named } may not be in { $from } here. Take it out of the recipe.
animal-sulphites = There are sulphites in it. Raw meat may have them only as breakfast sausage, as burger meat with 4 % vegetables or cereals or more, or under a few names of their own; in all other, 10 mg/kg or less counts as none. Look at what brings them: leave it out, or show how little it is.
batch-beef-one-day = A batch of beef is never over one day's production. Make one batch a day.
batch-beef-unknown = { $what } is not known for every piece. Enter it, or leave the piece out.
batch-beef-differs = { $what } differs: { $one } and { $other }. Make a batch of each.
batch-beef-several = { $what }: { $count } of them in one batch, { $most } at most. Make two batches.
batch-beef-kill-days = Different kill days of one slaughterhouse may share the batch.
record-give-last-day = This record is kept until the food can be taken as eaten. Enter its last day.
listed-no-sales = Sales below nothing cannot be. Enter the average of the last three years.
listed-sells-little = The kitchen sells too little for this rule to apply to it.
listed-not-listed = It is not a listed food.
listed-inspected = It is under meat or poultry inspection.
listed-after-kill-step = It came after a kill step, or is no longer listed.
listed-farm-pack = The intact pack of a farm names it.
listed-farm-itself = Bought from the farm itself: keep its name and address.
listed-other-shop = Bought once from another shop: keep the receipt.
listed-served = Keep the receiving data; what is not shipped on needs no more.
listed-leaves-list = Keep the receiving data; what leaves the list needs no more.
listed-kill-step = Keep the receiving data and a record that the kill step was done.
listed-shipped-on = Keep receiving data, what went in, what came out, and the shipment.
sale-no-weight = { $weight } cannot be sold. Weigh it and enter it.
sale-more-than-retail = { $weight } of { $head } in one sale; { $most } is the most that counts as retail. Ask the manager.
name-quoted = "{ $text }"
name-made-plain = "{ $by }" makes plain what "{ $word }" is here.
name-packed-in = It is packed in { $liquid }, and the name does not say so. Name it "{ $name }, packed in { $liquid }".
name-cut-of = "{ $word }" alone is for the { $parts } of { $species } only. Enter that part, or name it for what it is.
name-nitrite = "{ $word }" is not for what has nitrite or nitrate in it. Leave the word out.
name-salted = "{ $word }" is not for what has salt to keep it. Leave the word out.
name-core-unread = "{ $word }" asks for a core of { $least }; none was measured. Bake it through, or leave the word out.
name-core-cool = "{ $word }" asks for a core of { $least }; it was { $core }. Bake it through, or leave the word out.
name-shank-bones = "{ $word }" is for a piece with both bones of the shank fully out.
name-bones = Bones remain in it. Add { $add } to the name.
name-made-there = "{ $word }" is for what was made there. Add { $add } in the same lettering.
name-only-trichinae = "{ $word }" is not for what was heated only against trichinae. Leave the word out.
name-not-cooked = "{ $word }" must be cooked before it is sold. Enter the cook first.
name-much-fat = { $part } % of it is { $fat } fat; "{ $word }" with "{ $fat } fat added" goes to { $most } %. Name the blend.
name-say-fat = Add "{ $fat } fat added" to the name.
name-say-where = State beside the name where it was really made.
name-not-made-there = It was not made in { $place }. Add { $add } to the name, and where it was made.
gate-origin-unknown = A label of fresh meat tells here where the animal was reared and slaughtered, and the lists do not know both. Enter the country of the farm and of the abattoir.
gate-beef-unknown = A label of beef tells here where the animal was born, reared and slaughtered, and in which slaughterhouse. Not all of it is known: enter the country with the farm and with the abattoir, and with the farm whether its animals are born there, or keep the supplier's paper beside the pack.
gate-no-list = A pack of several ingredients carries their list here, and this label has no room for it. Take a label that has.
gate-no-date = A pack for a customer has a date here, and this one has none. Enter how long the product keeps.
gate-no-tenderised-name = Blades or needles went through this beef: its name says one of { $one_of }. Put it into the name of the product.
tenderised-too-cool = The label would tell to cook this beef to { $core }. Blades or needles went through it: it takes { $at_least } for { $hold } or hotter. Put that into the cooking instructions of the product.
tenderised-too-short = The label would tell to cook this beef to { $core } without a hold that is long enough. Blades or needles went through it: at that heat it takes { $hold }. Put that into the cooking instructions of the product.
gate-no-tenderised = It was tenderised, and its label must say "{ $words }". Take a label that has room for it.
gate-lacks = The label lacks something that a pack for a customer tells here: { $item }.
gate-lacks-in = The label lacks something in { $language } that a pack for a customer tells here in both languages: { $item }.
gate-not-named = It has no name in { $language }: "{ $name }" would stand on the label. Enter its name in that language with the product.
gate-part-not-named = The ingredient "{ $name }" has no name in { $language }. Enter it with the product.
gate-for-kitchen = This is a label for the kitchen, and the counter sells this product. A customer gets the label for sale.
gate-no-address = A pack for a customer tells here where the kitchen is, and its address is not entered. Enter it with the kitchen.
naming-qualifier = By its protein this name needs more words. Name it "{ $name }".
naming-protein-unknown = The bare name is for { $least } % or more meat protein in what is not fat. Have protein and fat measured and enter them with the product.
naming-meat-protein-unsaid = Something was added to this cut, so its name states the least meat protein. Write it into the name: "{ $percent } % meat protein".
naming-meat-protein-unknown = Water was added: at least { $least } % meat protein is required, and the name states it. Have it measured and enter it with the product.
naming-mince-unknown = Mince of this sort has at most { $fat } % fat and { $collagen } % collagen in its meat protein. Nobody has told how much it has: enter both with the product.
naming-no-nitrite-in = "{ $word }" is for what has neither nitrite nor nitrate in it. Make it without, or leave the word out.
naming-no-nitrite-claim = "{ $words }" calls for more words beside the name. Enter with the product how it is made without nitrite.
naming-nitrite-declared = The name says that no nitrite was used, and the list on the pack of something in it has { $what }. Change the name.
naming-nitrite-by-nature = The name says "{ $words }", and { $source } brings nitrite into it. Change the name.
naming-solution = What was added comes to { $percent } % of the raw meat. State it in the name, as a number with its sign: "containing { $percent } % of a solution".
naming-added-water = { $percent } % was added, as the product is listed. Above { $most } % a cut, joint, slice or carcase says "with added water" in its name, in each language.
naming-unlisted = { $name } is made of several things, and nobody has told of which. Enter its recipe, or what its pack declares when it comes in.
naming-denies = The name says that it is without { $what }, and { $what } is in it. Change the name.
naming-denies-animal = The name says "{ $word }", and { $what } is in it. Change the name.
naming-called-cured = The name says cured, and { $ppm } ppm of nitrite and nitrate went in: the word stands for salt and at least { $least } ppm. Call it salted, or ask the authority.
naming-tells-allergen = The name tells { $what }, and the allergens of this food do not. Tick them, or give it another name: no label and no scan warns of what is not ticked.
naming-other-animal = The name speaks of { $named }, and the meat in it is { $is }. Name the meat that is in it.
naming-say-animal = It is { $what }, and the name does not say so. Put it in the name.
naming-not-alone = The name speaks of { $named } alone, and there is meat of { $others } in it, too. Name it as well, or make it without.
naming-say-uncured = This is usually cured with nitrite, and none went into it: it may not be sold by the bare name. Enter with the product that it is sold as uncured, and the label says { $words }.
naming-mince-else = It is entered as mince of another sort ({ $told }); by the animals in it, or by its name, it is { $is }. Mend the entry.
naming-added-else = The product is listed with { $told } % added; by what was weighed it is { $weighed } %. Mend the one that is wrong.
naming-moisture-unknown = "{ $name }" has at most { $most } parts of water to one of protein. Have both measured and enter them with the product.
naming-no-protein = Meat without protein cannot be. Enter what the laboratory found.
naming-more-than-whole = Together that is { $sum } %, more than the whole. Check each.
pork-give-added = This name states the percentage of added ingredients. Enter it.
pork-no-protein = Meat without protein cannot be. Enter what the laboratory found.
pork-more-than-whole = { $protein } % protein and { $fat } % fat are more than the whole. Check both.
pork-bacon = It weighs { $part } % of the fresh belly; bacon ready to slice goes to { $most } %. Let it dry back.
pork-fat = { $percent } % fat; { $most } % at most.
pork-shank = { $percent } % shank meat over the normal part; { $most } % at most.
pork-no-weight = { $weight } cannot be. Weigh the piece and enter it.
dry-cured-heavy = It weighs { $part } % of fresh; at most { $most } % may carry this name. Let it dry on.
dry-cured-little-salt = Salt inside is { $salt } %; this name asks for { $least } % or more.
dry-cured-measure-salt = Have the salt inside measured: this name asks for { $least } % or more.
dry-cured-more-than-whole = { $salt } % salt and { $water } % water are more than the whole. Check both.
dry-cured-activity-cannot-be = A water activity of { $activity } cannot be. It lies between 0 and 1.
dry-cured-unmeasured = Without nitrite this name asks for a brine of { $brine } % or more, or a water activity of { $activity } or less; neither was measured.
dry-cured-brine = Without nitrite this name asks for a brine of { $brine } % or more, or a water activity of { $activity } or less; the brine is { $is } %.
dry-cured-activity = Without nitrite this name asks for a brine of { $brine } % or more, or a water activity of { $activity } or less; the water activity is { $is }.
dry-cured-both = Without nitrite this name asks for a brine of { $brine } % or more, or a water activity of { $activity } or less; they are { $has } % and { $is }.
dry-cured-whole-days = { $days ->
    [one] { $days } day
   *[other] { $days } days
 } in all; the standard names { $least } (not enforced, but good practice).
dry-cured-cure-days = { $days ->
    [one] { $days } day
   *[other] { $days } days
 } in cure and equalising; the standard names { $least } (not enforced, but good practice).
dry-cured-core = The core reached { $core }; the standard names { $most } (not enforced).
mince-no-sample = There is no sample of the day. Enter fat and collagen of one at least.
mince-fat = The day's average is { $percent } % fat; { $kind } mince goes to { $most } %. Name it otherwise, or add leaner meat.
mince-collagen = The day's average is { $percent } % collagen in meat protein; { $kind } mince goes to { $most } %. Name it otherwise, or add leaner meat.
mince-fat-edge = { $percent } % fat is the very limit; one source prints it as not enough.
mince-collagen-edge = { $percent } % collagen in meat protein is the very limit; one source prints it as not enough.
mince-salt = { $salt } % salt: minced meat has less than { $under } %. Call it a meat preparation.
mince-refrozen = It was thawed once and may not be frozen again. Use it now, or cook it.
mince-meat-fat = { $percent } % fat: over { $most } % it is not meat. Take the excess off the meat content and list it as fat.
mince-meat-tissue = { $percent } % connective tissue: over { $most } % it is not meat. Take the excess off the meat content and list it as connective tissue.
mince-meat-protein = { $protein } % meat protein; { $least } % or more is required. Add less water.
identity-fat = "{ $word }" has at most { $most } % fat; this has { $fat } %.
identity-fat-unknown = "{ $word }" has at most { $most } % fat. Nobody has told how much this has.
identity-water = "{ $word }" has at most { $most } % added water; this has { $water } %.
identity-together = Fat and added water in "{ $word }" come to at most { $most } %; here they come to { $percent } %.
identity-meat = "{ $word }" is at least { $least } % meat; this is { $meat } %.
identity-weight = "{ $word }" weighs at most { $most } % of its fresh weight; this weighs { $percent } %.
identity-organ = "{ $word }" is at least { $least } % { $organ }; this is { $percent } %.
identity-has-organ = "{ $word }" has to be at least { $least } % { $organ }. Enter its recipe.
identity-lacks = "{ $word }" has one of these in it: { $one }. This has none.
identity-has-one-of = "{ $word }" has to have one of these in it: { $one }. Enter its recipe.
identity-other-animal = "{ $word }" alone does not stand for the meat of { $others }, and there is some in this. Name it too in the name of the product, or make it without.
identity-whole-animal = "{ $word }" is the meat of the whole animal as it grew, and these parts did not go in: { $parts }. Name it otherwise, or make it of all of them.
identity-one-animal = The meat of this "{ $word }" is of one animal alone, and so its name says which: write "{ $meat }" before it.
identity-without = "{ $word }" has nothing of this sort in it: { $what }. Leave it out, or name it otherwise.
identity-fat-as-such = "{ $word }" has no fat added as such. Take fatter meat, leave the fat out, or name it otherwise.
identity-say-too = "{ $word }" with nitrite in it also says "{ $add }" in its name.

## GS1

gtin-digits = A GTIN is digits only: copy it from the GS1 certificate.
gtin-length = A GTIN has 8, 12, 13 or 14 digits, not { $length }: copy it whole.
gtin-check-digit = The last digit of the GTIN does not go with the others: one was misread or typed wrong.
gtin-restricted = Numbers beginning with 02, 04, 20 to 29 or only zeros are for use inside one shop. They are no GTIN: leave it empty unless GS1 gave you one.
element-nothing = The barcode holds nothing.
element-length = ({ $ai }) holds "{ $value }", which has the wrong length: scan it again.
element-character = ({ $ai }) holds "{ $character }", which no GS1 code can hold: scan it again.
element-not-digits = ({ $ai }) holds "{ $value }" instead of digits: scan it again.
element-check-digit = The check digit of { $value } in ({ $ai }) is wrong: scan it again.
element-no-day = ({ $ai }) holds { $value }, which is no day: read the date off the label.
element-no-time = ({ $ai }) holds { $value }, which is no time: read it off the label.
element-unknown = ({ $ai }) is not an application identifier.
element-unknown-at = No application identifier is known at "{ $text }".
element-two-things = ({ $ai }) stands in it twice and says two things.
element-twice = ({ $other }) and ({ $ai }) say the same thing twice.
element-open-bracket = A bracket is not closed.
element-ends-early = The barcode ends in the middle of an identifier.
element-cut-off = ({ $ai }) is cut off: scan it again.
element-badly-encoded = "{ $text }" is not well formed in an address.
link-no-key = Without a GTIN there is no GS1 address: use the kitchen's own address.
link-place = ({ $ai }) must not stand at that place of a GS1 address.
link-value = { $why }
link-no-address = This is no web address: it begins with https://.
gs1-gtin = { $why }
gs1-lot = "{ $lot }" cannot be the lot in a GS1 code: 1 to { $longest } letters, digits and the signs ! " % & ' * + , - . / : ; < = > ? _
gs1-weight-missing = The GTIN begins with 9, so each pack has its own weight: weigh it first.
gs1-weight-not-wanted = The GTIN does not begin with 9, so all its packs weigh the same: leave the weight out of the code, or ask GS1 for a GTIN for goods by weight.
gs1-weight-range = The weight must be more than { $none } and less than { $most } to go into a GS1 code.
gs1-year = A GS1 code holds the years 2000 to 2099, not { $year }.
gs1-no-gtin = ({ $ai }) means nothing without a GTIN: print the plain code instead.
gs1-not-together = ({ $one }) and ({ $other }) must not stand together.
gs1-too-long = A GS1 bar code holds { $longest } characters, and this would be { $length }: leave out the pack number or the date.
gs1-unreadable = { $why }
gs1-link = { $why }
till-layout-form = A till layout is twelve places and what they hold, such as 20PPPPPCVVVV price 2 or 28PPPPCVVVVV weight 3: the prefix in digits, P for the item number, C for the verifier, V for the price or weight.
till-layout-prefix = { $prefix } is the beginning of real trade item numbers: a till layout begins with 02, 04 or 20 to 29.
till-layout-verifier = A verifier (C) goes with four or five digits of value (V) only.
till-layout-decimals = A price has at most 2 decimals, a weight at most 3, and neither more than it has V.
till-item = The item number { $item } is too long for the till code: { $digits } digits at most.
till-price-too-much = The price { $price } is too much for the till code: make smaller packs or leave the till code out.
till-weight-too-much = The weight { $grams } is too much for the till code: make smaller packs or leave the till code out.
till-price-too-fine = The price { $price } has more decimals than the till code: round it where it is set, not here.
till-weight-too-fine = The weight { $grams } has more decimals than the till code: round it where it is set, not here.
till-other-measure = The till code wants a price where there is a weight, or the other way round.
till-nothing = A pack without price or weight gets no till code: set it first.
till-misread = These are not the 13 digits of a till code: scan again.
till-foreign = This is not a till code of this shop.
till-verifier = The price or weight in the till code was misread or changed: weigh and scan again.

## Problems, requests, lists

title-cannot-be = A value that cannot be
title-never-issued = Never given out
title-not-enough = Not enough left
title-voided = Voided
title-in-the-way = Later deeds depend on it
title-clash = It contradicts the record
title-missing = Counted as missing
title-limit = Beyond a limit
title-stopped = Stopped
title-held = On hold
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
title-database-locked = Another program has the database
title-damaged = The record is damaged
title-clock = The clock is wrong
service-database-full = Nothing was recorded. Make room on the disk, then try again.
service-database-away = Nothing was recorded. Try again in a moment.
service-database-locked = Another program is writing to the database and does not let go. Nothing was recorded. End that program, or try again in a moment.
service-damaged = The record could not be read as it should. Nothing was recorded. Run `gambrel check` and see the log.
service-clock-before-build = The clock of this machine says { $now } UTC, before this program was built.
service-clock-before-deed = The clock of this machine says { $now } UTC, before what was recorded last ({ $last } UTC).
service-clock-leapt = The clock of this machine says { $now } UTC: it was set ahead by { $minutes } minutes while the service ran.
service-clock-set-back = The clock of this machine says { $now } UTC: it was set back by { $minutes } minutes while the service ran.
service-clock-far-ahead = The clock of this machine says { $now } UTC, and the last deed on record is of { $last } UTC.
service-clock-ahead-of-database = The clock of this machine says { $now } UTC, that of the database { $database } UTC.
service-set-it-right = Nothing is recorded and nothing is to be sold by a date until the clock is set right, or a manager says that it is.
service-nothing-recorded = { $why } Nothing is recorded until it is set right.
request-send-json = Send JSON, with Content-Type: application/json.
request-too-large = A body may be at most 1 MB. Send the deed in parts.
request-cut-off = The body did not arrive whole.
request-not-json = This is not JSON: look at line { $line }, column { $column }.
request-ends-early = This is not JSON: it ends too early.
request-no-object = An object with named fields is expected. Send one.
request-missing-field = Missing field `{ $name }`.
request-unknown-field = Unknown field `{ $name }`; there are { $known }.
request-no-fields = Unknown field `{ $name }`; there are no fields here.
request-twice = The field `{ $name }` is there twice.
request-not-that = This must be { $wanted }, not { $told }.
title-database-disk = The disk fails
title-database-read-only = The database takes no writes
title-database-gone = The database is gone
title-database-emptied = The database was emptied
title-busy = Too much at once
title-too-slow = Too slow
service-database-disk = Nothing was recorded. The disk reports an error: see the log, and look after the disk before anything else.
service-database-read-only = Nothing was recorded. The database may only be read: let the service write to it again.
service-database-gone = Nothing was recorded. The file of the record was taken away or another was put in its place. Put it back and start the service again.
service-database-emptied = Nothing was recorded. What was on record is no longer there. Restore the last copy.
service-busy = The service is busy. Try again in a moment.
request-too-slow = The body did not arrive within { $seconds } seconds.
request-long-address = The address is too long.
request-long-headers = The headers are too long.
request-unread-value = This value cannot be read.
request-no-number = This must be a whole number.
request-no-truth = This must be true or false.
request-query = The query cannot be read. { $says }
request-method = This path takes { $methods }.
request-unreadable = This request cannot be read. Look at what was sent and send it again.
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
value-empty = It is empty. Fill it in, or leave it out.
value-too-long = It is longer than { $most } characters. Make it shorter.
value-unseen = It holds a character that nobody sees ({ $code }). Type it anew.
value-unprintable = It holds a character that cannot be printed. Type it by hand.
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
value-no-fingerprint = "{ $text }" is no fingerprint of a certificate (SHA-256): it has 64 hexadecimal digits.
labels-name-packs = A deed may make several lots: name packs at the lot's own labels.
labels-nothing-held = Nothing that this recall holds is on hand, so there is nothing to tag.
labels-no-lots = That { $kind } made no lots, so it has no labels.
labels-in-parts = { $labels } labels come in { $parts } parts of { $most }: ask for them one by one, with part=1 to part={ $parts }.
labels-no-part = There is no part { $part }: these labels come in { $parts }. Ask for one of them.
labels-no-packs = "{ $text }" names no packs; write them like 1,2,5-9.
labels-no-sheet = There is no sheet "{ $sheet }". Sheets are: { $sheets }.
list-name-farms = farms
list-name-abattoirs = abattoirs
list-name-suppliers = suppliers
list-name-places = places
list-name-products = products
list-name-recipes = recipes
list-name-printers = printers
list-name-probes = probes
entry-not-there = "{ $code }" is not in the list of { $list }.
entry-add-or-choose = "{ $code }" is not in the list of { $list }. Add it, or choose another.
entry-add-first = "{ $code }" is not in the list of { $list }. Add it first.
entry-otherwise = { $code } is in the list of { $list } already, and says otherwise. Change it with PUT.
entry-path-says = The path says { $path }, the entry says { $entry }. Write the same code in both.
entry-changed-meanwhile = It was changed meanwhile: version { $version } is current. Read it again, then change that.
entry-which-version = Say which version you have seen: send its ETag as If-Match.
entry-packs-as-before = { $packs ->
    [one] { $packs } pack on hand was made before this change and keeps
   *[other] { $packs } packs on hand were made before this change and keep
  } what was said then: the label, the price, whether it is for sale. Only what is made from now on is new. To change what is on hand, pack it anew; what came in with wrong facts is put right by a correction of its receipt.
entry-no-version = "{ $text }" is no version; send the ETag of the entry as it was read.
entry-no-house-code = "{ $code }" cannot begin a lot code: it must be 2 or 3 capital letters without I, L, O, U.
entry-no-farm-code = "{ $code }" is not a farm's code: 2 or 3 capital letters without I, L, O, U.
entry-code-of-farm = { $code } is the code of the farm { $farm }. Farm and kitchen codes are never shared. Choose another code for the kitchen.
entry-code-of-kitchen = { $code } is the code of the kitchen. Farm and kitchen codes are never shared. Choose another code for the farm.
entry-no-name = Give the product a name in at least one language.
entry-keep-days = { $days ->
    [one] 1 day
   *[other] { $days } days
 } cannot be: 1 to { $most }.
entry-cure-days = { $days } days in a cure cannot be. Give 1 to { $most }.
entry-no-cooking-degrees = Cooking instructions name a core temperature: give celsius or fahrenheit, and hold_minutes where it is held.
entry-not-of-that-sort = { $says } is not what a product of this kind can be: only ingredients, and rendered fat, keep by what they are. Leave it out; a pH, a water activity or an approval shows that it keeps.
entry-no-language = "{ $tag }" is not a language: two small letters, like en or fr.
entry-recipe-parts = A recipe has 1 to { $most } parts.
entry-recipe-in-itself = { $part } has { $product } in it already: a recipe cannot be part of itself. Take one of the two out.
entry-recipe-too-deep = Recipes are nested more than { $most } deep. Make one of those within a lot of its own.
kitchen-day-goes-back = In the kitchen it is { $today } by now, and by { $zone } it is still { $there }: what was past its last day would be sold again. Change the time zone at an hour at which both have the same day.
kitchen-no-time-zone = "{ $zone }" is not a time zone; write it like America/New_York.
kitchen-languages = Name 1 to { $most } languages, the first one first.
kitchen-no-country = "{ $country }" is not a country: two capital letters, as FR or GB.
kitchen-country-of-number = The number belongs to the State that gave it. Enter the country too.
kitchen-not-written = "{ $tag }": labels are not written in this language here. Name one of these: { $ours }.
kitchen-no-currency = "{ $currency }" is not a currency: three capital letters.
kitchen-no-address = "{ $url }" cannot stand in a code: write it like https://trace.kitchen.example
kitchen-drills = Between two drills of a recall there are 1 to { $most } months.
kitchen-gs1-prefix = A GS1 company prefix has 4 to 12 digits.
named-elsewhere = "{ $text }" is another kitchen's label. Receive it as bought, if it came in.
named-misread = "{ $text }" does not add up: one of its characters is wrong. Read it from the label again.
named-no-lot = "{ $text }" is not a lot code; they look like BRC-26159-A03-0. Scan the label, or type it again.
deed-of-somebody = { $kind }: { $by }, { $at }
deed-id-used = The id { $id } was used for another deed ({ $kind }). Make a new id for each deed.
deed-unknown = No deed on record has the id { $id }. Look the deed up on the page of its lot.
deed-no-id = No deed on record has the id "{ $id }".
deed-mince-limit = { $findings } Is the right lot named? If it was done, record it as it happened, with a note: it is then stopped until somebody decides.
deed-one-packing = Say how many packs, or what each weighs: one of the two.
deed-two-packs = The lot names pack { $one }, the pack field { $other }. Say which of the two it is, once.
deed-pack-or-packs = Give pack or packs, not both.
deed-packs-whole = Packs go whole; grams are for one pack. Give grams with one pack, or leave them out.
deed-no-food-place = { $place } is not a place that food touches; clean-downs are about benches and machines. Choose one of these.
deed-weigh-or-missing = Say what the pack weighs, or that it is missing; not both, not neither.
deed-not-from-cure = { $lot } did not come out of a cure, so there is nothing to release. Choose the piece that hangs.
deed-why-back = Why did it come back?
deed-which-back = { $lot } has { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }. Say which came back.
deed-why-void = Say why, for whoever reads this later.
deed-take-off = Take these labels off: { $lots }.
deed-labels-cancelled = { $labels ->
    [one] The label that still waited for the printer is cancelled.
   *[other] The { $labels } labels that still waited for the printer are cancelled.
  }
step-kind-receipts = POST /api/receipts takes what arrives.
step-kind-moves = POST /api/moves takes moves, freezing and thawing.
step-kind-departures = POST /api/departures takes { $kind }.
step-kind-take-backs = POST /api/take-backs takes what customers bring back.
step-kind-readings = POST /api/readings takes weighings and readings.
step-kind-counts = POST /api/counts takes counts.
step-kind-clean-downs = POST /api/clean-downs takes clean-downs.
step-kind-voids = POST /api/steps/{"{"}id{"}"}/void voids a deed. Send it there.
step-kind-corrections = POST /api/corrections takes corrections.
step-kind-no-step = "{ $kind }" is not a step. Steps are: { $steps }.
correct-deed-how-known = Say how it is known, for whoever reads this later.
correct-deed-which = Say what is otherwise, and of one thing at a time: the animal, what was bought, what was read, a log.
correct-deed-only-receipts = An animal and what was bought are facts of a receipt; that is a { $kind }. Name the deed that received it.
correct-deed-voided = That deed was voided, so there is nothing of it to correct: it counts for nothing. Enter what really happened as a new deed; if that one is wrong too, correct that one.
correct-deed-was-bought = That lot was bought in; correct `bought`.
correct-deed-of-animal = That lot is of an animal; correct `animal`.
correct-deed-side-taken = The { $side } side of that animal is { $lot } already. Look which of the two is right, and correct the other first.
correct-deed-corrected = Corrected by { $by } ({ $kind }): { $facts }. { $why }
correct-deed-undone = A correction of a { $kind } was voided by { $by }. { $why }
correct-deed-reading-voided = A reading was voided by { $by }. { $why }
correct-deed-deed-undone = A { $kind } was voided by { $by }: what was made since is judged again. { $why }
correct-deed-told = { $by } told it later than it happened ({ $kind }): what was made since is judged again.
correct-deed-told-rule = what happened counts from the moment it happened
correct-deed-row-confirmed = { $by } confirmed { $row } for this kitchen: what waited for it is judged by it.
correct-deed-left-past = { $pack }: { $grams } left on { $at } ({ $kind }). By what is known now its last day was { $date }. Find out who has it, and say so.
correct-deed-left-not-ready = { $pack }: { $grams } left on { $at } ({ $kind }) as ready to eat. By what is known now it is not. Find out who has it, and say so.
correct-deed-left-with-allergens = { $pack }: { $grams } left on { $at } ({ $kind }). By what is known now there is more in it than was told: { $allergens }. Find out who has it, and say so.
correct-deed-other-lots = Of the same animal there are other lots on record as { $species }: { $lots }. Correct their receipts too.
correct-deed-other-lots-as-told = Of the same animal there are other lots on record as it was told before: { $lots }. Correct their receipts too.
correct-deed-left-since = { $lot }: { $grams } left on { $at } ({ $kind }), while a stop stood that nobody knew of yet. Find out who has it.
correct-deed-rule = a corrected fact counts as if it had been right from the start
correct-deed-codes-stay = The codes stay, also where they hold what was believed before; no label is wrong for that.
correct-deed-not-of = A { $kind } has no such fact. Void it and enter it anew.
correct-deed-as-known = That is what the record says already. If something else is wrong, correct that.
correct-deed-end-stays = A correction leaves the step’s end where it is ({ $ended }), and a log lies within its step. Leave out what was read at another time, and enter it as a reading of the lot; where the step ended at another time, take it back and enter it anew.
correct-deed-tried = Only asked what would change.
fact-animal = animal
fact-bought = supplier's lot
fact-declared = what the pack declares
fact-strength = strength
fact-readings = readings
fact-log = log
fact-standard = what it is held against
fact-stuffed = whether it is stuffed
fact-price = price paid
receive-deed-no-curing-salt = { $product } is no curing salt in the list. Add its strength to the product first.
receive-deed-too-warm = It came in too warm. { $findings } Is it typed right? If so, send it back. If it was taken in, record it as it happened, with a note: it is then stopped.
receive-deed-too-warm-mince = It came in too warm for mince. { $findings } Has it seasoning or anything else in it than meat? Then give the product its recipe: a preparation may be warmer. If it is mince, send it back; if it was taken in, record it as it happened, with a note: it is then stopped.
receive-deed-strength-unread = Nobody knows how strong this curing salt is: what is cured with it is not proven until somebody reads the bag and corrects the receipt.
receive-deed-how-strong = How strong is it? Read the per cent of nitrite and nitrate off the bag: it differs from bag to bag.
receive-deed-two-strengths = The bag is told twice, and each time otherwise. Read it once more off the bag, and tell it in one field.
receive-deed-strength-from-list = The strength of this curing salt was taken from the list. It differs from bag to bag: if this bag says otherwise, enter it on the page of its lot, under “How strong the bag is”.
receive-deed-one-source = A lot is of an animal or bought in, not both. Give one of the two.
receive-deed-which-source = Say which animal it is of (animal), or where it was bought (bought or barcode).
receive-deed-packed-later = Packed on { $packed }, received on { $received }. One of the two is wrong. Look at the pack and enter it again.
receive-deed-other-species = That carcass is on record as { $known }, not { $told }. Look at the carcass number. If what is on record is wrong, correct the receipt that brought it.
receive-deed-no-weight = What does it weigh? The barcode does not say.
receive-deed-carton-differs = The carton's barcode says otherwise. Leave it out, or check the carton.
receive-deed-what-is-it = What is it? Name the product, or scan a barcode that holds its GTIN.
receive-deed-gtin-unknown = No product in the list has the GTIN { $gtin }, or that of another case of the same. Add it to its product (gtin), or name the product.
receive-deed-gtin-of-several = The GTIN { $gtin } could be any of these: { $products }. Name the product.
measure-between = It must be between { $least } and { $most }.
measure-between-degrees = It must be between { $least } and { $most }. Is the scale right, Celsius or Fahrenheit?
measure-one-scale = Give the temperature once, in Celsius or in Fahrenheit, as the probe showed it.
measure-between-parts = It must be between { $least } and { $most }. Is it a percentage?
measure-brine = That is { $salt } % salt in the brine.
measure-of-what = Of what? Name a lot or a place.
measure-empty = There is no reading in it. Enter what was read.
measure-place-not-weighed = A place is not weighed; name the lot.
measure-not-cured = It was not cured here by a rule that says how: there is no limit to hold the finding against.
measure-nothing-left = { $lot } has nothing left to measure. Choose the lot that is in front of you; if some of this one is there, count it first.
measure-held-wrong = { $product } ({ $lot }) is not held as it must be. { $findings } Cool or heat it now, check the place, and note how long it stood so.
cure-deed-sold-later = From { $day } on it may not be sold: { $findings } Sell it before that day, or keep it back and ask the manager.
cure-deed-not-said-how = Curing salt goes in, but the list does not say how { $product } is cured. Add "cure" (class and method) to the product, or "curing_salt" where it is a brine or a mix of salts; the limits depend on it. If it was done already, record it as it happened, with a note: what came out is then stopped.
cure-deed-unsaid-how = Curing salt went in, and the list did not say how { $product } is cured: no limit was held.
cure-deed-strength-unknown = Nobody knows how strong { $lot } is, so nothing shows how much nitrite went in. Correct its receipt with the strength on its bag; the cure is judged again.
cure-deed-no-nitrite = { $product } is cured with nitrite by the list, and no curing salt of known strength went in: nothing shows that it is cured.
cure-deed-no-salt = { $product } is cured, and no salt was weighed: nothing shows that it is cured. Put the lot of salt among what goes in.
cure-deed-salt-alone = { $salt } of salt on { $meat } of meat, without a curing salt: { $percent } % salt.
cure-deed-mixed = Weighed together it holds { $nitrite } % nitrite, { $nitrate } % nitrate and { $salt } % salt.
cure-deed-brought = Of that, { $nitrite } ppm of nitrite and { $nitrate } ppm of nitrate came with meat that was cured before.
cure-deed-rule = what was weighed
cure-deed-going-in = { $salt } of curing salt on { $meat } of meat, { $method }: { $nitrite } ppm sodium nitrite going in, { $percent } % salt.
cure-deed-both-going-in = { $salt } of curing salt on { $meat } of meat, { $method }: { $nitrite } ppm sodium nitrite and { $nitrate } ppm sodium nitrate going in, { $percent } % salt.
heat-deed-warm = { $findings } Is it typed right? If so, record it as it happened, with a note: what came out is then stopped, and heating it again does not put it right.
heat-deed-untold = { $findings } Is there a reading in between? Then enter it with the others. If there is none, record it as it happened, with a note: it is then stopped until somebody decides.
heat-deed-no-core = No core temperature is on record for this cook. Measure the thickest part and enter it: its date rests on it.
heat-deed-no-reading = This point of the log has no temperature. Enter what the probe showed, or for how many minutes it boiled.
heat-deed-no-cooling = No log shows how fast it cooled. Enter the readings with a chill step: what cooled too slowly cannot be told from what did not.
heat-deed-cooling-begun = Kept. How fast it cools is told by the readings that follow: enter the next one on the same page.
heat-deed-not-chosen = The table or the way to cool was named, but no reading goes with it.
trichinae-deed-no-degrees = Which temperature was it? Give celsius or fahrenheit.
trichinae-deed-untested-unread = There is meat of { $species } in { $lot }. By a row that nobody here has read, only the test of its carcass speaks for it, and no heat takes its place ({ $source }). Have the paper of the test before it is sold.
trichinae-deed-untested = There is meat of { $species } in { $lot }, and only the test of its carcass speaks for it: no heat takes its place ({ $source }). What was made is stopped until a manager lets it go by name, with the number of the test.
trichinae-deed-tested-only = { $lot } is of an animal whose every carcass is tested: only that test speaks for it ({ $source }). Enter the paper of the test.
trichinae-deed-record-rule = what the record holds of its cure and its rooms
trichinae-deed-nothing-speaks = { $lot } is eaten without cooking and has meat in it that can carry trichinae ({ $species }); nothing on record speaks for it. Enter how it was frozen or heated, the method by which it was cured and dried, or the paper that frees it: the carcass's test or its farm's certificate.
labels-sheet-too-small = A label of { $width } by { $height } mm does not go on the sheet "{ $sheet }": between its margins there are { $across } by { $along } mm.
labels-sheet-places = The sheet "{ $sheet }" has { $places } places for these labels; { $skip } cannot be used up.
labels-not-drawn = The label cannot be drawn: { $cause }.

## Pages

page-nav-today = Today
page-nav-lots = Lots
page-nav-cure-room = Cure room
page-nav-animals = Animals
page-nav-printing = Printing
page-footer = Local codes and licensed practice decide.
page-find = Find
page-box = Scan or type it
page-box-how = A label, half a code, a carcass number, an ear tag, a product, a place or a name: the box takes any of them.
page-found-nothing = Nothing here is called “{ $said }”
page-found-some = “{ $said }” may be
page-found-elsewhere = This is another kitchen’s label.
page-found-places = Places
page-found-farms = Farms
page-found-products = Products
page-found-all-lots = All lots that fit
page-ways = Where to
page-ways-counter = Counter
page-ways-settings = Settings
page-ways-labels = Labels
page-ways-found = Look it up
page-ways-kitchen = At the bench
page-did = { $deed }: { $by }, { $at }.
page-did-to = { $deed }: { $what }. { $by }, { $at }.
page-things = { $name } and others, { $lots } lots
page-lot-missing = { $packs ->
    [one] Missing: pack { $numbers }, { $weight }. A count did not find it; until somebody does, it stays unexplained.
   *[other] Missing: packs { $numbers }, { $weight }. A count did not find them; until somebody does, they stay unexplained.
}
page-act-see-lot = Its page
page-undo = Undo
page-undo-ask = Only a manager may undo this: { $names }.
page-undo-why = Undone right away
page-apart = {"; "}
page-undone = Undone.
page-labels = Print labels
page-undo-first = What has to be undone first:
page-limit-correct = Typed wrong: correct it
page-odd-weight = [weight]: that is far from what is usual here. Is it typed in the right unit?
page-odd-sure = It is right: record it
page-limit-meat = Typed wrong: the meat, [meat]
page-limit-salt = Typed wrong: the curing salt, [salt]
page-limit-send-back = It is [read]: send it back
page-receive-sent-back = It came in at [read] and goes back.
page-receive-unread = not read
page-limit-more = More about it
page-limit-happened = It is so: take it as it happened
page-limit-typed = Say what happened: it is recorded, and what came of it stays stopped until somebody sends it back, throws it away or decides otherwise.
page-limit-note = What happened?
page-limit-record = Record as it happened
page-colon = { $of }: { $says }
page-today-nothing = Nothing needs a hand.
page-today-hands = { $hands ->
    [one] One thing needs a hand.
   *[other] { $hands } things need a hand.
}
page-today-prints = { $labels ->
    [one] One label is being printed.
   *[other] { $labels } labels are being printed.
}
page-today-refused = { $labels ->
    [one] One label was refused by its printer.
   *[other] { $labels } labels were refused by their printer.
}
page-today-as-of = As of { $at }
page-today-reasons = { $reasons ->
    [one] There is one reason more.
   *[other] There are { $reasons } reasons more.
}
page-today-sheet = Print all this as one sheet
page-today-next = More
page-anchor = Anchor of the record
page-anchor-how = Keep this line outside the machine. With it “gambrel check --anchor” shows that nothing before it was altered.
page-begin = First
page-begin-done = done
page-begin-kitchen = Say who the kitchen is: name, place, law and time zone.
page-begin-places = Name the places: coolers, freezer, benches, counter.
page-begin-people = Say who works here.
page-begin-printer = Add a label printer.
page-begin-printer-test = Print a test label on the printer.
page-begin-products = List the products: cuts, cures, what you sell.
page-begin-lots = Receive the first animal, and print its tag.
page-acts = What to do
page-act-pack = Pack
page-act-cut-up = Cut up
page-act-not-sold = not sold at the counter
page-act-pack-print = Pack and print
page-act-move = Move
page-act-freeze = Freeze
page-act-thaw = Thaw
page-act-discard = Discard
page-act-serve = Serve
page-act-count = Count
page-act-labels = Print labels
page-act-as = Packed as
page-act-as-new = It is not here: add a product
page-act-each = Weight of each
page-act-count-more = Count the packs after these
page-act-packs = How many packs
page-act-too-much = That is [asked]; there is only [left].
page-act-all = That is all of it: nothing is left over.
page-bench-typed-kg = Or with its unit: 1.2 kg.
page-bench-typed-lb = Or with its unit: 1.5 lb, 2 lb 3 oz, 500 g.
page-act-which-packs = Which packs (numbers on their labels)
page-act-pack-number = Pack
page-act-to-same = where they are now
page-act-to = Where to
page-act-why = Why
page-act-of = { $act }: { $name }
page-act-cannot = This cannot be done with it now: see on its page what is left of it, and how it is kept.
page-act-no-script = To do this here, allow scripts in this browser. Reading works without.
page-why-past = Past its day
page-why-spoilt = Spoilt
page-why-opened = Opened or pierced
page-why-dropped = Dropped
page-why-waste = Trimmings and bones
page-sold = Sold
page-sentence-wants = Still missing: [what].
page-sentence-pack = Pack [outputs.0.pack_count] x [_each] of { $name }, { $lot }, as [outputs.0.product], to [outputs.0.place].
page-sentence-move = Move packs [packs] of { $name }, { $lot }, to [to].
page-sentence-freeze = Freeze packs [packs] of { $name }, { $lot }; they go to [to].
page-sentence-thaw = Thaw packs [packs] of { $name }, { $lot }; they go to [to].
page-sentence-discard = Discard packs [packs] of { $name }, { $lot }: [why].
page-sentence-serve = Serve packs [packs] of { $name }, { $lot }.
page-sentence-count = Count { $name }, { $lot }: what is typed is what is there.

page-between = { $low } to { $high }
page-act-break-down = Break down
page-side-pork = Side of pork, inside up, hind leg to the left
page-side-lamb = Side of lamb or goat, inside up, hind leg to the left
page-side-beef = Side of beef in two quarters, parted between the 12th and the 13th rib, inside up, hind to the left
page-side-bird = Bird, breast up, legs to the left
page-side-as = It is
page-side-weight = Weight
page-side-again = Weigh it again
page-side-another = Keep, and weigh one more of it
page-side-keep-nothing = Keep
page-side-first = Another cut first?
page-side-other = Something else came off it
page-side-choose = Choose
page-side-lacking = Not on the house’s list of products:
page-side-end = Done with this side
page-side-keep-it = Keep it
page-side-leave-out = Leave it out
page-side-record = Record the cuts
page-side-record-print = Record the cuts and print their labels
page-side-order = The cuts in the order of the knife
page-side-cut = Cut
page-side-knife = Where the knife goes
page-side-usual = Usual
page-side-why = Why is that usual?
page-side-kept-as = kept as:
page-side-no-store = This browser keeps nothing. Stay on this page until the cuts are recorded, or write the weights down.
page-sentence-side-off = weighed off [off]
page-sentence-side-left = on the table [left] of [all]
page-sentence-side-bar = Weighed off [off], on the scale [now], on the table [left] of [all]
page-sentence-side-weight = Weight of [cut], in [unit]
page-sentence-side-usual = [cut]: usual [low] to [high] [unit], most often [usual]
page-sentence-side-usual-alone = [cut]: usual [usual] [unit]
page-sentence-side-band = Usual [low] to [high], on the scale [weight]
page-sentence-side-keep = Keep [weight]
page-sentence-side-keep-odd = It is [weight]: keep it
page-sentence-side-light = Light for [cut]: usual is [low] to [high]. Is part of it still on the table, or is this another cut?
page-sentence-side-heavy = Heavy for [cut]: usual is [low] to [high]. Is another cut still on it?
page-sentence-side-too-much = [weight] is more than the [left] still on the table. Look at the scale and its unit.
page-sentence-side-unkept = [cut]: “[typed]” is typed and not kept yet. Is it one of the cuts?
page-sentence-side-no-weight = No weight of [cut] yet: put it on the scale, or type it in [unit], as 4.050.
page-sentence-side-more = [kept] of it is kept already: this is one more piece.
page-sentence-side-kept = [cut] [weight], [time], [by]
page-sentence-side-begun = Begun at [time] by [by]: [off] is kept on this device. Go on where it was left.
page-sentence-side-not-weighed = Not weighed: [cuts].
page-sentence-side-over = [left] more was weighed off than lay on the table. Undo what is wrong, and weigh it again.
page-sentence-side-rest = [left] was not weighed. What is it?
page-sentence-side-rest-loss = Loss: drip, saw and knife
page-sentence-side-rest-stays = Still on the carcass: it stays
page-sentence-side-rest-scales = The scales differ by [left]
page-sentence-side-loss = [left] is [percent] % of the carcass. Usual loss is at most [high].
page-sentence-side-loss-high = [left] is [percent] % of the carcass. Usual loss is at most [high]: look for the trim tub, the fat, a cut that was not weighed.
page-sentence-break-down = Break down { $lot }, { $name }: [off] in all, to [place]. [list].
page-sentence-side-deed-loss = [left] is loss.
page-sentence-side-deed-stays = [left] stays on the carcass.
page-sentence-side-deed-scales = The scales differ by [left].
page-sentence-side-note-odd = Beside the usual, and kept: [list].
page-sentence-side-note-by = Weighed by [list].
page-lot = Lot
page-animal = Animal
page-packs = Packs
page-carcass = Carcass
page-killed = Killed
page-tag = Tag
page-hang-tag = Tag
page-made = Made
page-on-hand = On hand
page-where = Where
page-now = Now
page-kept = Kept
page-share = Share
page-use-by = Use by
page-raw-or-ready = Raw or ready
page-raw = Raw: cook it
page-ready = Ready to eat
page-not-proven = Not proven ready to eat
page-not-raw = Not raw
page-allergens-unknown = Allergens not known.
page-no-allergens = No allergens on record
page-contains = Contains: { $allergens }
page-may-contain = May contain: { $allergens }
page-no-date = No date
page-nothing-left = Nothing left
page-past = Past: take it off
page-last-day-today = Today is the last day
page-more = And { $more } more.
page-count-packs = { $packs ->
    [one] 1 pack
   *[other] { $packs } packs
 }
page-once-thawed = { $days ->
    [one] 1 day once thawed
   *[other] { $days } days once thawed
 }
page-percent = { $percent } %
page-share-under = under { $percent } %
page-from = { $what } from { $farm }
page-killed-on = killed { $day }
page-forward = Made from it
page-forward-now = On hand now
page-forward-all = All of them
page-forward-share = A share is information only: a lot with any share is in scope.
page-forward-lots = { $lots ->
    [one] 1 lot in all, { $on_hand } with something on hand.
   *[other] { $lots } lots in all, { $on_hand } with something on hand.
 }
page-forward-missing = { $weight } missing.
page-forward-surplus = { $weight } too much.
page-forward-taken-back = Taken back
page-forward-used = Used
page-forward-sold = Sold
page-forward-served = Served
page-forward-shipped = Shipped
page-forward-returned = Returned
page-forward-discarded = Dis­carded
page-forward-lost = Lost
page-forward-head-missing = Missing
page-forward-head-surplus = Too much
page-wrong-labels = Wrong labels
page-wrong-labels-why = What was printed on these packs is no longer true. They are not sold until the label is printed anew.
page-wrong-labels-none = No pack on hand has a wrong label.
page-wrong-labels-says = The label says
page-wrong-labels-true = True is
page-wrong-labels-tells = { $about }: { $says }
page-wrong-labels-print = Print
page-wrong-labels-gone = Sold or shipped with it
page-home-all-lots = All lots
page-home-animals = Source animals
page-home-no-printer = There is no label printer yet: labels come as a PDF.
page-scan-whole-lot = The lot was named, not a pack: scan the pack’s own label to sell it. Until then this speaks of the pack that asks for most care.
page-scan-how = A scanner types the code and presses Enter. By hand: hyphens, spaces and small letters do not matter.
page-lots = Lots, newest first
page-lots-field = Code, product or note
page-lots-anywhere = Anywhere
page-lots-state = Kept, or gone how
page-lots-any-state = Any
page-lots-all = Show all lots
page-lots-none = No lot fits.
page-lots-next = Next: older lots
page-lots-only-product = Only { $product }
page-lots-only-farm = Only from { $farm }
page-lots-only-killed = Only killed { $day }
page-lots-only-before = Only to be used before { $day }
page-animals = Source animals, newest kill first
page-animals-carcass = Carcass number
page-animals-farm = Farm
page-animals-any-farm = Any farm
page-animals-killed-on = Killed on
page-animals-all = Show all animals
page-animals-none = No animal fits.
page-animals-lots = Lots received
page-animals-head = { $species }, { $head } head
page-animal-once = Known as this animal until that was corrected
page-animal-known-once = was known as of this animal until { $by } corrected it on { $day }.
page-animal-now = The animal that it is of
page-animal-abattoir-wrong = The place of slaughter is wrong?
page-animal-abattoir-lacks = Enter the place of slaughter
page-animal-abattoir-how = Everything that came of this animal follows; codes and weights stay. Labels that say it otherwise have to be printed anew, and Today tells which.
page-animal-abattoir-do = Correct it
page-animal-abattoir-add = It is not on the list: add it
page-animal-unknown = No such animal is on record.
page-nothing-here = There is nothing at { $path }.
page-trouble-again = Try again
page-trouble-home = To the first page
page-trouble-lots = To the lots
page-lot-voided = Voided.
page-lot-voided-do = Take its labels off.
page-lot-of-received = of { $made } received
page-lot-of-made = of { $made } made
page-lot-why-condition = Raw or ready: why?
page-lot-why-date = Why this date?
page-lot-source = Source:
page-lot-species = Species
page-lot-nav = On this page
page-lot-family = Family
page-lot-family-picture = The family of this lot
page-tree-more = and { $more } more
page-lot-where-from = Where from
page-lot-came-from = Where it came from
page-lot-done = What was done
page-lot-label = Label
page-as-printed = As the printer “{ $printer }” prints it, on { $size }.
page-lot-print = Print labels
page-rest-on-label = { $made } came in, and { $left } of it is left. This label is for what is left: its date, origin and code are those of the receipt, its weight is what is left now.
page-lot-nothing-to-label = Nothing is on hand, so there is nothing to label.
page-lot-no-origin = Nothing is on record.
page-lot-via = By way of
page-lot-then = then
page-lot-without-bought = The shares leave bought-in meat out.
page-lot-bought = Bought in
page-lot-supplier = Supplier
page-lot-supplier-lot = Supplier’s lot
page-lot-nothing-made = Nothing was made from it.
page-lot-left-in-each = Left in each
page-lot-packs = { $packs ->
    [one] Pack { $numbers }
   *[other] Packs { $numbers }
 }
page-lot-alike = { $packs } alike
page-lot-what = What
page-lot-how-much = How much
page-lot-when = When
page-lot-who = Who
page-lot-step-voided = voided
page-lot-received = Received
page-lot-made-by = Made: { $deed }
page-lot-used-for = Used: { $deed }
page-lot-otherwise = { $account }: { $deed }
page-lot-readings = Readings
page-lot-value = Value
page-lot-others = Other lots of this product
page-reading-weight = Weight
page-reading-temperature = Temperature
page-reading-held = Held
page-reading-boiled = Boiled
page-reading-brine-temperature = Temperature of the brine
page-reading-ph = pH
page-reading-water-activity = Water activity
page-reading-salometer-60f = Salometer, at 60 °F
page-reading-salometer-38f = Salometer, at 38 °F
page-reading-nitrite = Nitrite
page-reading-potassium-nitrite = Potassium nitrite
page-reading-potassium-nitrate = Potassium nitrate
page-reading-sugar = Sugar
page-reading-water = Water
page-reading-residual-nitrite = Nitrite left
page-reading-residual-nitrate = Nitrate left
page-reading-nitrate = Nitrate
page-reading-salt = Salt
page-reading-price = Paid
page-cure-room-empty = Nothing lies in salt or hangs.
page-cure-room-piece = { $stage }, day { $days }: { $loss }
page-cure-room-in-salt = in salt
page-cure-room-equalising = equalising
page-cure-room-smoking = smoking
page-cure-room-hanging = hanging
page-cure-room-released = released
page-cure-room-loss-expected = { $loss } lost, { $expected } expected
page-cure-room-loss = { $loss } lost
page-cure-room-never-weighed = never weighed
page-cure-room-curve = { $days ->
    [one] Loss over 1 day, up to { $loss } per cent
   *[other] Loss over { $days } days, up to { $loss } per cent
 }
page-cure-room-footer = The thin line is what is expected, the thick one what was weighed; down is lost. Loss of weight alone makes nothing safe.
page-printing-no-script = This page shows how things stand. To print and to say what came out, allow scripts in this browser.
page-printing-away = The service does not answer. Press again in a moment: nothing is done twice.
page-printing-lot = Print the labels of { $name }
page-printing-printer = Printer
page-printing-together = One tag for all pieces, weighed together
page-printing-all-packs = all on hand
page-printing-why-again = Why again?
page-printing-print = Print
page-printing-pdf-keep = Save it on this device
page-printing-pdf-open = Open it in a tab of its own
page-printing-pdf-made = The PDF with the labels is made.
page-printing-of-deed = Print the labels of what was made
page-printing-as-document = PDF, printed by hand
page-printing-look-at = Look at them only (PDF, not recorded as printed: not for packs)
page-printing-unsure = Did it come out?
page-printing-look = Nobody but you can know. Look at the printer and in the bin, then say.
page-printing-on = on { $printer }, asked for { $asked }
page-printing-reprint = reprint { $nth }
page-printing-came-out = It came out
page-printing-did-not = It did not
page-printing-printers = Printers
page-printing-add = No printer is in the list yet. Labels can be had as a document until then.
page-printing-add-one = Add a printer
page-printing-none-yet = Nothing was printed on it yet.
page-printing-trust = The printer itself tells the same: use this certificate
page-printing-count-waiting = { $labels ->
    [one] 1 waiting
   *[other] { $labels } waiting
 }
page-printing-count-sending = { $labels ->
    [one] 1 sending
   *[other] { $labels } sending
 }
page-printing-count-sent = { $labels ->
    [one] 1 sent
   *[other] { $labels } sent
 }
page-printing-count-printed = { $labels ->
    [one] 1 printed
   *[other] { $labels } printed
 }
page-printing-count-unsure = { $labels ->
    [one] 1 unsure
   *[other] { $labels } unsure
 }
page-printing-count-refused = { $labels ->
    [one] 1 refused
   *[other] { $labels } refused
 }
page-printing-count-cancelled = { $labels ->
    [one] 1 cancelled
   *[other] { $labels } cancelled
 }
page-printing-count-spoilt = { $labels ->
    [one] 1 spoilt
   *[other] { $labels } spoilt
 }
page-printing-open = On the way
page-printing-nothing-waits = Nothing waits.
page-printing-label = Label
page-printing-asked = Asked for
page-printing-cancel = Cancel
page-printing-cancel-all = Cancel all { $labels } that wait
page-printing-done = Lately
page-printing-nothing-done = Nothing was printed yet.
page-printing-became = What became of it
page-printing-footer = A label is printed once, unless somebody says why again. A printer is believed when it says that a label came out; when it cannot say, a person must.

## Why there is no label

label-refused-not-lawful = { $lot } is not labelled for sale: { $finding }
label-refused-language-missing = { $lot } is not labelled for sale: { $finding } Add it to the kitchen's languages; for local food that may do with one, file the exemption as an approval for "languages".
label-refused-letters-too-low = The label "{ $label }" is not printed for sale: { $finding }
label-refused-none-for-it = There is no label for { $purpose } under the law of "{ $place }", so { $lot } cannot have one.
label-refused-not-held = The label "{ $label }" ({ $size }) of { $lot } cannot be made: { $why }. { $advice }
label-refused-would-hold = The label "{ $label }" ({ $size }) would hold it.
label-refused-none-holds = No label here would hold it: say it shorter.
label-refused-not-uncured = { $lot } cannot be labelled as uncured: { $why }
label-refused-curing-salt = curing salt went in.
label-refused-no-such-label = There is no label "{ $label }". Labels are: { $labels }.
label-refused-voided = { $lot } was voided: it has no label any more.
label-refused-dpi = { $dpi } dpi is not known; 203 or 300.
label-refused-no-such-pack = { $lot } has { $packs } packs; there is no pack { $pack }. Look at the number on the pack.
label-refused-no-room-for = The label "{ $label }" has no room for something that a pack for a customer tells here: { $item }. So { $lot } is not labelled on it.
label-refused-not-together = { $lot } gets a label a pack: ask without “together”. One tag for all is for pieces of one lot that hang and are not released yet.
label-refused-nothing-on-hand = Nothing of { $lot } is on hand, so there is nothing to label. Name packs to print theirs.
label-title-stopped = It is stopped
label-title-not-lawful = The statement is not lawful
label-title-language-missing = A language is missing
label-title-letters-too-low = The letters are too low
label-title-none-for-it = There is no such label
label-title-not-uncured = It is not uncured
label-for-receiving = what comes in
label-for-kitchen = the kitchen's own tubs and shelves
label-for-curing = pieces in salt or hanging
label-for-freezer = what is frozen
label-for-retail = packs for customers
label-for-direct-sale = packs that are sold where they were packed
label-for-hold = what is on hold
label-size-is = { $width } × { $height } mm
layout-printer = the label "{ $template }" is not made for a { $dpi } dpi printer
layout-missing = the label needs a text for "{ $field }" and there is none
layout-no-place = this label has no place for "{ $field }": use a larger one
layout-character = "{ $field }" holds the character { $character } ({ $number }), which the label font cannot print
layout-too-wide = "{ $field }" does not fit: "{ $text }" is { $needed } mm wide at the smallest legible size, there are { $had } mm
layout-too-many-lines = "{ $field }" does not fit: "{ $text }" needs { $needed } lines at the smallest legible size, there are { $had }
layout-too-tall = the texts do not fit: they need { $needed } mm of height at the smallest legible size, there are { $had } mm; the tallest is "{ $field }": "{ $text }"
layout-empty-code = there is nothing to put in the { $code }
layout-code-character = the { $code } cannot hold the character { $character } in "{ $payload }"
layout-code-too-long = "{ $payload }" is too long for a { $code }
layout-no-code-place = this label has no place for the { $code }: use a larger one
layout-not-gs1 = "{ $text }" cannot be printed as a GS1 code: { $why }
layout-not-till-digits = "{ $digits }" is no till code: it must be 13 digits, the last of them right
layout-code-too-large = the { $code } for "{ $payload }" does not fit: it needs { $needed } mm to stay scannable, there are { $had } mm
label-code-qr = square code
label-code-code-128 = bar code
label-code-gs1-128 = GS1 bar code
label-code-ean-13 = till code

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
label-unit-price = { $price }/{ $unit }
label-lot-only = bars: the lot only
label-thawed-on = Thawed on: ____________
label-ingredients = Ingredients:
label-contains = Contains: { $names }
label-allergens-unknown = Allergens not known
label-raw = RAW
label-ready-to-eat = READY TO EAT
label-cook-method = Pan-fry, grill or roast
label-cook-and-hold = { $method } until the middle is { $fahrenheit } °F ({ $celsius } °C), and keep it there for { $hold }. Check with a food thermometer.
label-cook-at-once = { $method } until the middle is { $fahrenheit } °F ({ $celsius } °C). Check with a food thermometer.
label-caution-raw = Raw. Cook through before eating. Wash hands, board and knife.
label-keep-chilled = Keep refrigerated
label-keep-frozen = Keep frozen
label-keep-ambient = Keep cool and dry
label-keep-hot = Keep hot
label-cured = Cured with salt
label-received-heading = RECEIVED
label-received-at = Received { $at }
label-received-cold = Received { $at } · { $degrees }
label-left = { $weight } left
label-killed = Killed { $day }
label-farm-killed = { $farm }, killed { $day }
label-carcass = Carcass { $number }
label-tag = tag { $tag }
label-their-lot = Their lot { $lot }
label-not-released = NOT RELEASED
label-green = Green { $weight }
label-green-together = Green { $weight }, { $pieces } pieces: weigh together
label-green-of = Green { $weight }, piece { $nth } of { $of }
label-salted = Salted { $day }
label-turns = Turn: { $days }
label-turns-every = { $apart ->
    [one] Turn every day, { $from } to { $until }
   *[other] Turn every { $apart } days, { $from } to { $until }
}
label-turns-and-more = Turn: { $days }, then see the cure room
label-out-of-cure = OUT OF CURE
label-out-of-cure-on = Out of its cure { $day }
label-release = Release at { $target }
label-release-from = Release from { $day }
label-release-both = Release at { $target }, from { $day }
label-release-target = { $weight } (-{ $loss } %)
label-column-day = Day
label-column-who = Who
label-hold = HOLD
label-held-since = Held since { $day }
label-hold-caution = Do not use, sell or move.
label-released-on = Released on
label-by = By
label-reprint = REPRINT { $nth }
label-specimen = SPECIMEN, NOT FOR SALE

## Questions that cannot be answered

query-unprintable = It holds a character that cannot be printed. Type it by hand.
query-not-after = "{ $after }" is no animal of the page before. Begin again with the first page.
query-not-state = "{ $state }" is not one of: { $known }.
query-not-limit = "{ $limit }" is not a number from 1 to { $most }.
query-limit-range = 1 to { $most } at once.
query-no-law = There is no law of "{ $place }" here. Places are: { $known }.
query-no-animal = No animal on record has the id "{ $id }". Choose it on the page of animals.
query-dose-or-target = Say how much curing salt for the meat, or how much nitrite is wanted: one of the two.

## Conditions

ConditionKind-raw = raw
ConditionKind-treated = treated
ConditionKind-ready = ready to eat

Natural-salt = salt
Natural-sugar = sugar
Natural-honey = honey or syrup
Natural-spice = dry spice or dried herb
Natural-curing-salt = curing salt
Natural-vinegar = vinegar
Natural-wine = wine
Natural-spirits = spirits
Natural-beer = beer or cider
Natural-oil = oil
Natural-rendered-fat = rendered fat
Natural-dry-goods = dry goods
Natural-bread = bread
Natural-nuts = nuts
Natural-produce = raw vegetables and fruit, uncut
Natural-salted-casing = salted casings
Natural-water = water

condition-from-the-animal = Raw: as it came from the animal.
condition-raw-bought = Bought raw.
condition-listed = { $product } was received as the product list has it: ready to eat, with no animal named.
condition-declared-ready = The supplier's pack or paper says that { $product } is ready to eat.
condition-no-declaration = { $product } is food of an animal, and nothing says that the supplier's pack or paper calls it ready to eat. Enter with the receipt what the pack says.
condition-proven = The heat is on record. { $says }
condition-parts-ready = Everything that went into this { $kind } was ready to eat.
condition-not-ready-part = { $part } went in, and nothing shows that it is ready to eat.
condition-nothing-proves = This { $kind } has no times and temperatures on record that reach a rule: it proves nothing.
condition-approved-not-freed = Approval { $number } is for the dish. It does not show that { $part } is free of trichinae. Enter the certificate of the farm where that counts, cook it, or let a manager release it with the paper of the carcass test.
condition-approved = Approved under number { $number }.
condition-released = Its cure and drying were released by the product's rule.
condition-let-go = { $by } let it go: { $why }
condition-proof-rule = proof
condition-list-rule = product list
condition-approval-rule = approval
condition-nature = It keeps without time and temperature control by what it is: { $says }.
condition-parts-stable = Everything in it keeps without time and temperature control, and no water was added.
condition-judged-before = Made before proof was asked: it stays as it was judged then. What is made from it needs proof.

## What a bought lot is made of
supplied-by-list = { $lot }: what is in it is told by the product list as it stood on { $day }, which counts as the supplier's declaration.
supplied-ingredients-by-pack = { $lot }: its own pack or paper declares its ingredients.
supplied-allergens-by-pack = { $lot }: its own pack or paper declares its allergens.
supplied-by-words = { $lot }: the words of its list name { $allergens }.
supplied-may-contain = { $lot }: its own pack or paper says that it may contain { $allergens }.
supplied-by-name = { $lot }: its name on the product list tells { $allergens }; its entry there does not.
supplied-named = The ingredients name { $allergens }, and the allergens that were told do not. They are counted as in it: look at the pack again.
supplied-named-on-list = The name on the product list tells { $allergens }, and the entry there does not. They are counted as in it: tick them in the list, or enter which allergens the pack tells.
supplied-named-elsewhere = Read in another language, the ingredients name { $allergens }, and the allergens that were told do not. They are not counted as in it: look at the pack again, and tell them if they are.
supplied-recipe = The recipe in the list brings { $allergens }, and the allergens that were told do not name them. They are counted as in it: enter the ingredients of the pack, if it is made without.
supplied-rule = what a pack says, else the list as it stood

## Stops

StopKind-voided = voided
StopKind-held = leave it where it is
StopKind-failed = a limit was broken
StopKind-unknown-history = nobody knows its history
StopKind-not-proven = not proven
StopKind-not-confirmed = its limit is not confirmed
StopKind-came-back = a customer had it
StopKind-not-released = not released
StopKind-past-its-day = past its day
StopKind-waste = waste
StopKind-wrong-label = wrong label

LabelFact-allergen = allergens
LabelFact-date = last day
LabelFact-species = animals
LabelFact-ingredient = ingredients
LabelFact-weight = net weight
LabelFact-origin = origin
LabelFact-name = name
LabelItem-name = name
LabelItem-list = ingredient list
LabelItem-allergens = allergens
LabelItem-net = net weight
LabelItem-date = last day
LabelItem-storage = how it is kept
LabelItem-business = name and address of the kitchen
LabelItem-lot = lot
LabelItem-safe-handling = safe handling panel
LabelItem-caution = that it must be cooked
LabelItem-cooking = how it is cooked
LabelItem-frozen = day of freezing
LabelItem-thawed = that it was frozen
LabelItem-composition = fat and collagen
LabelItem-unit-price = price per unit of weight
LabelItem-price = price

claim-day = { $date }
claim-no-day = no day
claim-these = { $names }
claim-nothing = none
claim-may-be = may contain { $names }
claim-nothing-may = nothing that it may contain
claim-weight = { $grams }
claim-name = { $name }
claim-differs = The label says { $about }: { $printed }. True is: { $now }.

Disposal-discarded = Discarded
Disposal-returned = Returned
Disposal-released = Released
Disposal-put-right = Put right

stop-voided = { $lot } was voided: whatever carries its label is not what the label says. Pull it.
stop-not-released = { $lot } ({ $product }) is still in its cure. Weigh it and release it first; the cure room shows what is missing.
stop-not-proven = { $lot } ({ $product }) is sold as ready to eat, and nothing on record shows that it is. Cook it through and enter the core temperature, or discard it. Where the proof is on paper, a manager lets it go by name with a disposition that names the paper.
stop-partly-cooked = { $lot } ({ $product }) has meat in it that was partly cooked, and nothing on record shows that it was enough: it is not sold as raw, and it is not ready to eat. Cook it through and enter the core temperature, or discard it.
stop-room-not-proven = { $lot } ({ $product }) is kept as food that needs no cold, and nothing on record shows that it does without. Enter a pH or a water activity that shows it, or have an approval on file; else discard it. Where the proof is on paper, a manager lets it go by name with a disposition that names the paper.
stop-no-date = { $lot } ({ $product }) must be kept cold and has no last day: no rule gives one. Give the product a keeping rule before the next batch, or measure what shows that it keeps; this one is for the kitchen only.
stop-no-date-piece = { $lot } ({ $product }) is a whole cured piece that must be kept cold, and as such it has no last day: its rule would count from before its release. Cut or pack it into a product with days of its own, or measure what shows that it keeps.
stop-undated-piece = { $lot } ({ $product }) is a whole cured piece that keeps, and its entry has a keeping rule, which would count from before its release: no last day can follow from that. Sell what is cut or packed of it under a product with days of its own, and take the rule off the entry of the whole piece before the next one.
stop-undated = { $lot } ({ $product }) is sold with a last day and has none: its keeping rule gave it none. Correct the rule before the next batch, and use this one in the kitchen.
stop-made-ahead = { $lot } was recorded while the clock was wrong, so its date cannot be trusted. Keep it apart; a manager says by name what becomes of it.
stop-past-day = { $pack } was to be used by { $date }. Discard it or send it back. Nothing goes out after its day: common practice, no source; why it has that day stands with its lot.
stop-waste = { $lot } ({ $product }) is waste: it is not sold, served, shipped or put into food. When it goes, record it as discarded. If it is food after all, void the step that made it, and enter it as what it is.
stop-wrong-label = The label of { $pack } is no longer true. { $untrue } Print it anew before it is sold.
stop-unknown-history = Nobody knows the history of this, nor all that is in it. { $says } It goes nowhere until a manager says by name what becomes of it: discarded, or let go with the reason.
stop-not-confirmed = Cured under a limit that nobody here has read in the law: { $row }, { $text }. It is not sold until a manager has read it and confirms the row for this kitchen.
stop-held = On hold: { $why }. Do not sell or use it until a manager lets it go.
stop-held-rule = hold
stop-broke = { $findings } Cook it on until the core shows enough and enter that, or discard it.
stop-broke-for-good = { $findings } Nothing makes that good again. Discard it or send it back; a manager may let it go by name, with the reason.
stop-refused = { $pack } is stopped. { $stop }
stop-passed = { $pack } went on although it was stopped. { $stop }
stop-entered-after = { $pack } is stopped, and this was entered afterwards. What was made of it is stopped too, until a manager lets it go by name because it was made before. { $stop }
stop-inherited = Made from { $pack }, which was stopped. { $stop }

dispose-no-witness = Who saw it go? Name a second person.
dispose-contents-not-told = Nobody has said which allergens are in { $lot }. Letting it go does not tell that: correct the deed that took it in, and say them.
dispose-nothing-stands = Nothing stands on { $lot } that could be let go. Look at its page: what stands in its way ends in another way.
dispose-left = { $what } by { $by }, seen by { $witness }: { $why }
dispose-let-go = { $what } by { $by }: { $why }. It was stopped for this: { $stop }
dispose-rule = disposition

hold-made-since = Made of it after that moment, and held with it: { $lots }.
hold-no-hold = No hold stands on { $lot }. Choose the lot that is on hold, or go on.

deed-what-happened = Say in the note what happened: it broke a limit or passed a stop.
deed-what-was-read = Say what the text says, as you read it.
deed-where-read = Say where you read it.
deed-no-such-row = { $place } has no row { $row }. GET /api/rows?unconfirmed lists those that wait.
deed-row-confirmed = { $row } was read already: there is nothing to confirm. Go on: it holds.
deed-why-disposed = Say why.
deed-why-adopted = Say how it was found, and how you know what it is.
deed-which-missing = Say which pack it is: CODE/N.
deed-what-put-right = Name the deed that put it right, in document.
deed-put-right-by-other = "{ $document }" is no deed on record that did anything to { $lot }. Name the deed that put it right by its id, or release it with the paper that says so.
deed-puts-nothing-right = A deed of the kind "{ $kind }" puts nothing right about { $lot }. Name the cook, the chill, the reading or the correction that did, or release it with the paper that says so.
deed-why-held = Say why it is held or let go.
deed-too-many = At most { $most } at once. Do it in parts.
deed-nothing-held = Name at least one lot.

void-of-hold = A hold is not voided. Let it go by a hold release, with the reason.
void-of-thinning = What was thrown away does not come back: a thinning is not voided.

# People, and what each may do.
Right-anyone = sign in
Right-scan = ask what may be sold
Right-see = read the record and the lists
Right-work = work at the bench: receive, cut, cook, move, weigh, count, clean
Right-sell = sell, serve, discard, ship, and take back
Right-hold = put lots on hold
Right-print = print labels
Right-undo = take back what one did oneself
Right-void = take back what somebody else did
Right-release = release cured pieces
Right-correct = correct where something came from
Right-lift = lift stops and holds
Right-confirm = confirm rows of the law
Right-thin = throw away what papers hold that nobody has to keep any more
Right-set-up = set up the kitchen and its lists
Right-people = say who the people are, and give tokens
Right-watch = read the figures of the service
Right-speak = record a deed in another's name
Role-cook = cook
Role-counter = counter
Role-manager = manager
who-sign-in = Sign in first.
who-right = { $name } may not do this: { $right }. Ask a manager.
who-right-ask = { $name } may not do this: { $right }. Ask { $names }.
who-by-whom = Who did it?
who-other-name = { $name } is signed in, and the deed says that { $by } did it. Let { $by } sign in.
who-no-person = There is no such person here.
who-wrong-pin = That is not the PIN of anybody by this name.
who-wait = Wrong too often. Wait { $seconds } seconds.
who-pin-digits = A PIN has 4 to 12 digits.
who-pin-too-easy = Anybody would try that PIN first. Choose another.
who-name-taken = Somebody here is called { $name } already. Choose another name for one of the two.
who-no-role = Say what this person is here: cook, counter or manager.
who-last-manager = Then nobody could manage the kitchen. Make somebody else a manager first, with a PIN.
who-token-ends = That time is past. Choose a later one.
who-no-token = There is no such token.
who-origin = Another site sent this ({ $origin }). Nothing was done. Open the page of this kitchen and do it there.
who-no-origin = This came with the cookie of somebody who is signed in, and without a word of which page sent it. Nothing was done. A program shows a token instead. Open the page anew and do it there.
who-host = This service does not go by the name "{ $host }". If it should, start it with --host.
title-sign-in = Not signed in
title-right = Not allowed
title-host = Another name
title-origin = From another site
page-sign-in = Sign in
page-sign-in-who = Who is it?
page-sign-in-demo = This is the demo: tap a name to be that person.
page-sign-in-pin = PIN
page-sign-in-by-word = The word that you were given
page-sign-in-another = Somebody else
page-sign-in-word = No PIN yet? Type the word that you were given: it is good once.
page-me-another = Hand over to somebody else
page-me-out = Sign out
page-me-choose-pin = Choose a PIN
page-me-new-pin = Choose another PIN
page-me-pin = 4 to 12 digits
page-me-keep-pin = Keep this PIN
page-me-people = Say who the people are
page-me-may = What you may do
page-me-pin-kept = Your PIN is kept. From now on you sign in with it; the word that you were given is used up.
page-me-pin-how = The word is used up. Choose a PIN now: you sign in with it from here on.
page-people = People
page-people-word = Signs in with this word:
page-people-word-once = It is good once, and is not shown again.
page-people-left = may not sign in
page-people-no-pin = has no PIN yet
page-people-new-word = Give a new word
page-people-sign-out = Sign out everywhere
page-people-leave = Let sign in no more
page-people-return = Let sign in again
page-first-manager = Manager
page-pin-show = Show the PIN
page-people-add = Somebody new
page-people-name = Name
page-people-add-button = Add this person
page-people-keep = Keep it so
page-people-change = Change the name or the work
page-people-kept = is kept as it stands below.
who-past-proxy = Call through the proxy: { $origin } may not come past it.
page-trust = Trust this kitchen
page-trust-why = The kitchen has a certificate of its own. A device that trusts it can use its camera here and go on working without the network. Do this once on each.
page-trust-file = Get the file
page-trust-android = Android tablet or phone
page-trust-android-how = Get the file. Then Settings, Security, More security settings, Install from storage, CA certificate: choose kitchen.crt.
page-trust-apple = iPad or iPhone
page-trust-apple-how = Get the file and allow it. Then Settings, Profile downloaded: install it. Then Settings, General, About, Certificate trust settings: switch it on.
page-trust-desk = Desk computer
page-trust-desk-how = Get the file and open it: add it to the authorities that the browser trusts for websites.
page-trust-then = Close the browser and open it again: the warning is gone.
page-trust-none = This service has no certificate of its own. Its manager makes one with:

## Today: what needs a hand

today-piece = { $tag }: { $name }
today-release = May be released; it needs a signature.
today-printer = The printer { $name } wants you
today-unsure = { $labels ->
    [one] One label on { $name }: did it come out?
   *[other] { $labels } labels on { $name }: did they come out?
}
today-labels-wait = { $labels ->
    [one] One label waits.
   *[other] { $labels } labels wait.
}
today-wrong-label = { $packs ->
    [one] { $name }, one pack: its label is wrong
   *[other] { $name }, { $packs } packs: their labels are wrong
}
today-stopped = { $packs ->
    [one] { $name }, one pack: stopped
   *[other] { $name }, { $packs } packs: stopped
}
today-past = { $packs ->
    [one] { $name }, one pack: past its day, { $day }
   *[other] { $name }, { $packs } packs: past their day, { $day }
}
today-last-day = { $packs ->
    [one] { $name }, one pack: last day
   *[other] { $name }, { $packs } packs: last day
}
today-cools = { $name } cools: { $to } by { $by }
today-cool-read = { $core } at { $at }.
today-cool-unread = Nobody has read it since it came out of the heat.
today-failed = { $place } did not stay cold: { $lots } lots, { $packs ->
    [one] { $packs } pack
   *[other] { $packs } packs
} stopped
today-failed-names = { $weight }: { $names }.
today-failed-do = Throw away what went soft. What stayed hard to the middle is a manager’s to let go, lot by lot.
today-failed-names-more = { $weight }: { $names }, and { $more } more.
today-lies = { $weight }, { $places }.
today-may-raw = Sell, serve, cook or freeze today.
today-may-raw-here = Cook, use or freeze today.
today-may-ready = Sell, serve or freeze today; cooking it again gains nothing.
today-may-ready-here = Serve, use or freeze today.
today-not-read = Read { $place }
today-read-on = Last read { $day }.
today-never-read = Never read yet.
today-missing = { $name }: { $packs ->
    [one] { $packs } pack is missing
   *[other] { $packs } packs are missing
}
today-missing-since = { $shown }, { $weight }: not there when it was counted, { $day }. It stays unexplained.
today-missing-do = Look for it and count again; what turns up without its label is taken in as that pack.
today-do-count-again = Count again
today-beyond = { $place } shows { $read }, where { $limit } is asked for
today-beyond-at = Read { $at }.
today-beyond-there = { $packs ->
    [one] { $packs } pack lies
   *[other] { $packs } packs lie
  } there, { $weight }: { $names }.
today-beyond-there-more = { $packs ->
    [one] { $packs } pack lies
   *[other] { $packs } packs lie
  } there, { $weight }: { $names }, and { $more } more.
today-beyond-do = If it stays so, move it into the cold, or throw it away.
today-do-read-again = Read it again
today-crossed = { $place }: raw and ready since one clean-down
today-crossed-do = Clean it down, and look at what was ready.
today-clean-down = Clean down { $place }
today-raw-there = Raw food was worked there since the last time.
today-ready-there = Worked at since the last time.
today-do-look = Look at { $what }
today-do-weigh = Weigh { $what }
today-do-sign = Sign for { $what }
today-do-see = Look at it
today-do-say-what-came = Say what came out
today-do-print-anew = { $packs ->
    [one] Print it anew
   *[other] Print { $packs } anew
}
today-do-discard = { $packs ->
    [one] Discard it
   *[other] Discard { $packs } packs
}
today-do-freeze = { $packs ->
    [one] Freeze it
   *[other] Freeze { $packs } packs
}
today-do-read = Read it
today-do-read-core = Read the core
today-do-sort = Throw away packs
today-recall = Recall { $number } is open
today-recall-holds = { $packs ->
    [one] 1 pack is
   *[other] { $packs } packs are
 } on hand and held, { $weight }.
today-recall-end = Nothing that it holds is left; it is not closed yet.
today-drill = A drill of a recall is due
today-last-drill = the last one was on { $day }
today-no-drill = none is on record yet
today-copy-late = The copy of the record is late
today-copy-failed = The last copy of the record came to nothing
today-last-copy = the last good one is of { $day }
today-no-copy = there is no good one yet
today-copy-untried = A copy of the record is to be tried
today-copy-no-good = The copy that was tried last is not good
today-last-tried = one was last tried with success on { $day }
today-never-tried = none was ever tried with success
today-moved = The record was found elsewhere than it was last worked in
today-moved-do = If the other one is still worked in, put it away. No code is given out twice: every running number was moved on.
today-do-count-recall = Count what it holds
today-do-close-recall = Go on with the recall
today-do-begin-drill = Begin the drill
today-do-turn = Turn { $what }
today-do-rinse = Out of the salt: { $what }
today-do-equalise = Rest { $what } in the cold
today-do-hang = Hang { $what }
today-do-choose = Choose what thaws
today-thaw = Anything to thaw for tomorrow?
today-frozen-there = { $packs ->
    [one] { $place }: one frozen pack, { $weight }.
   *[other] { $place }: { $packs } frozen packs, { $weight }.
}
today-thaw-cold = Thaw it in the cold, below what is ready to eat.
today-do-cleaned = Cleaned
today-when-now = Now
today-when-today = Today
today-when-closing = Before closing
page-counter = Counter
page-counter-field = Scan a pack
page-counter-pack = pack { $pack }
page-counter-contains = Contains { $allergens }
page-counter-animal = { $species ->
    [pig] contains pork
    [cattle] contains beef
   *[other] contains { $meat }
}
page-counter-animals-unknown = Whether another animal is in it, the record does not tell.
page-counter-next = Next pack
page-counter-next-same = Next pack, same guest
page-counter-call = Put it aside and call
page-counter-no-name = This is a name. Type the code that stands on the label.
page-country-farm = { $name }: no country is entered for this farm. A label of fresh meat tells here where the animal was reared.
page-country-abattoir = { $name }: no country is entered for this abattoir. A label of fresh meat tells here where the animal was slaughtered.
page-country-no-abattoir = No abattoir is entered for the animal of { $lot }. A label of fresh meat tells here where it was slaughtered: enter it on the page of the animal.
page-country-enter = Enter the country
page-country-animal = To the animal
page-country-ask = Ask
page-country-this-farm = No country is entered for this farm. A label of fresh meat tells here where the animal was reared.
page-country-this-abattoir = No country is entered for this abattoir. A label of fresh meat tells here where the animal was slaughtered.
page-country-choose-abattoir = Choose the abattoir. A label of fresh meat tells here where the animal was slaughtered.
page-lot-not-sold = The counter does not sell this: the list of products does not offer it there. What is made of it for sale is packed as that.
page-lot-sell-it = Change the product
page-counter-why = See why
page-counter-say-hold = Say: “I can’t sell this one today.” Nothing else is needed.
page-counter-take-off = Take it off
page-counter-discard = and discard { $weight }
page-counter-other-why = Another reason
page-counter-thaw = Thaw it
page-counter-came-back = It came back
page-counter-came-back-why = A guest brought it back
page-counter-never-left = It never left: count it
page-counter-gone-how = Has a guest brought it back? Or was another one scanned in its stead?
page-counter-gone-discarded = It was thrown away here, not sold. Put it in the bin, and find out why it is still out.
page-counter-gone-otherwise = It was not sold here. Put it aside, and find out why it is here.
page-counter-type = Type it
page-counter-photo = Photograph the code
page-counter-camera = Camera
page-counter-camera-off = Close the camera
page-counter-looking = Looking for the code …
page-counter-sound = Tap anywhere once, and each word has its sound.
page-counter-unknown-how = Look at the label again, or type the code under the bars. Without a label nobody sells it.
page-counter-which-pack-how = Tap its number: it stands behind the code on the label.
page-counter-which-lot = Which code?
page-counter-which-pack = Which pack?
page-counter-back = Back to the basket
page-counter-sold = Sold: { $what }, { $price }.
page-counter-sold-plain = Sold: { $what }.
page-counter-taken-back = Sale taken back: { $what }. Nothing is sold.
page-counter-did = { $deed }: { $what }.
page-counter-ready = { $lot }, { $much }
page-counter-ready-now = May be sold now, the shortest date first
page-counter-until = use by { $day }
page-counter-by = { $by }, { $at }.
page-counter-sold-all = Sold, all { $packs }
page-counter-basket = Basket
page-counter-together = Together: { $allergens }
page-counter-dropped = No longer for sale, and taken out of the basket: { $packs }. Scan it again.
page-counter-last-day = Last day
page-counter-put-back = Take out
page-ask-guest = A guest asks
page-ask-title = A guest asks
page-ask-field = Ask: milk, pork, wine, nitrite …
page-ask-such = Milk, wine …
page-ask-about = A guest asks: { $topics }
page-ask-at = From what truly went in, { $at }.
page-ask-what = Choose what the guest asks about.
page-ask-more = Several at once, or something else
page-ask-where = Where
page-ask-everywhere = Everywhere
page-ask-offered = Only what the counter sells
page-ask-ask = Ask
page-ask-again = Ask again
page-ask-group = { $group }: { $things }
page-ask-no = Without
page-ask-yes = With
page-ask-not-known = Not known
page-ask-say = Say “I don’t know”. It is not sold as without.
page-ask-means = “Without” means not put in; the slicer and the board are shared.
page-ask-none = None.
page-ask-nothing = Nothing of what is asked about is on hand now, so there is no answer for { $topics }. Do not say “without”.
page-ask-small = is are there in the a an of any with without and or does do it have has this that contain contains what which some your you s i can to for
page-ask-none-of = Nothing that is called “{ $name }” is there now.
page-ask-which = You mean: { $names }. What does the guest ask about it? Choose below.
page-ask-no-word = Nobody here has a word for “{ $word }”. Choose below.
page-ask-stopped = { $things ->
    [one] One thing is stopped or past its day, and not offered.
   *[other] { $things } things are stopped or past their day, and not offered.
}
page-ask-line = { $packs }, { $weight }
page-ask-held-more = { $packs ->
    [one] One more may not be sold.
   *[other] { $packs } more may not be sold.
}
page-ask-held-of = { $packs ->
    [one] One of them may not be sold.
   *[other] { $packs } of them may not be sold.
}
page-ask-fresh = New question
page-ask-next = Older lots
page-ask-wine = wine, beer, brandy, spirits
query-ask-what = Say what the guest asks about: { $known }.
query-not-topic = Nobody can be asked about “{ $topic }” here; these are known: { $known }.
query-no-place = There is no place “{ $place }” on the list. Choose one of the list of places.
photo-no-code = No code is to be seen in this photo. Hold the phone closer and straight, with light on the label; or type the code that stands beside it.
photo-not-read = This is no photo that can be read here. Send a JPEG or a PNG.
photo-too-many-dots = This photo has too many dots: at most { $most } million. Send a smaller one.
photo-too-large = A photo may have at most { $most } MB. Send a smaller one.
photo-send = Send the photo itself, with Content-Type: image/jpeg or image/png.

## Papers kept with a deed

paper-empty = There is nothing in this paper. Take the photo again, or choose another file.
paper-not-read = This is no paper that can be kept here: it has to be a PDF, a JPEG, a PNG or a plain text. What counts is what it holds, not its name.
paper-cut-off = The end of this paper is missing. Send it once more, whole.
paper-too-large = A paper may have at most { $most } MB. Take the photo smaller, or send the pages one by one.
paper-send = Send the paper itself, with its Content-Type: application/pdf, image/jpeg, image/png, text/csv or text/plain.
paper-too-many = This deed has { $most } papers, and takes no more. Put it to another deed of the same lot.
paper-no-paper = There is no paper { $id }. Look for it with its deed or lot.
paper-thinned = What this paper held was thrown away when nobody had to keep it any more. That it was there stays on record; ask whoever it came from for another.
paper-why-thinned = Say why it is thrown away.
paper-nothing-to-thin = Name the papers that are to be thinned.
paper-thinned-before = What this paper held was thrown away before.
paper-of-paper = A paper belongs to what was done, not to another paper. Name the deed itself.
paper-no-rule = The rules of this place do not say how long it is kept, so it stays.
paper-kept-until = Kept until { $until }.
paper-needed-on-hand = { $lot } came of it and is on hand: it stays until that is gone, and until { $until } at the least.
paper-needed-then = { $lot }, from which something on hand was made, was there then: it stays until that is gone, and until { $until } at the least.
paper-needed-incident = Recall { $incident } is open: nothing is thinned until it is closed.
paper-may-go = No rule asks for it since { $until }, and nothing on hand needs it.
paper-which-of = Ask for the papers of one thing: of a deed, a lot or an animal.
paper-all-is-kept = What was done, weighed, measured and labelled is kept for ever: nothing of it can be taken out. Only what a paper holds may be thinned, when no rule asks for it and nothing needs it any more; that it was there, and its digest, stay.

title-no-code = No code
ask-topic-alcohol = alcohol
ask-topic-nitrite = nitrite
ask-topic-raw = raw
ask-topic-gluten = gluten
ask-is = { $what }
ask-has = { $what }: { $by }
ask-has-in = { $what }: { $by }, in the { $through }
ask-may-contain = { $what }: may be in the { $by }, by its maker
ask-not-entered = { $what }: what is in the { $by }, nobody has entered
ask-vague = { $what }: there may be some in the { $by }; the record does not tell
ask-unknown = { $what }: nobody knows what is in the { $by }
ask-not-proven = { $what }: nothing shows yet that it is ready to eat

# Scopes: what is affected, what is outside, what cannot be asked.
scope-left-out = Left out by a person: { $why }
scope-falls-out = Affected only through what a person left out: { $lots }.
scope-made-before = Made of { $lot } before that was affected.
scope-voided = { $lot } was voided, so it never was.
scope-twin = Another animal, { $number } of { $farm }, killed the same day, { $killed }: it was not named, and nothing that came in of it is affected.
scope-known-as = Known as { $known } until { $by } corrected it on { $at }.
scope-of-animal = { $number } of farm { $farm }, killed { $killed }
scope-of-supplier = { $supplier } lot { $number }
scope-no-start = Say where it begins: a lot, an animal, a supplier's lot, a product, a place or a person's work.
scope-which-start = Say one of these: lot; animal; facts of an animal (farm, killed_on, killed_from, killed_until, carcass, tag); supplier with supplier_lot; or product, place or by, each with from and until. Name the others on their own.
scope-needs = This is needed here. Add it.
scope-ends-first = This time ends before it begins. Change one of the two.
scope-no-animal = No animal on record fits all of this. Say less: the farm and the day, or the number alone.
scope-no-supplier-lot = Nothing on record came as lot { $number } of { $supplier }. Read the number from the carton or the delivery note again.
scope-nobody = Nobody called { $person } ever did anything on record. Write the name as it stands in the record.
scope-why-left-out = Say why this lot is left out.
scope-because-named = It was asked about.
scope-because-made-of = Made of { $lot } ({ $product }).
scope-because-shared-contact = Was at { $place } together with { $lot }, and nobody cleaned in between.
scope-because-was-there = Was at { $place } at that time.
scope-because-done-by = That person worked on it.

# Incidents: recalls and drills.
Hazard-residue = residue
Hazard-pathogen = pathogen
Hazard-allergen = allergen
Hazard-foreign-body = foreign body
Hazard-temperature = temperature
Hazard-label = label
Hazard-other = other
IncidentNote-told = told
IncidentNote-answered = answered
IncidentNote-caller = who told it
IncidentNote-reason = why
IncidentNote-hazard = what it is about
IncidentNote-note = note
Milestone-called = The call
Milestone-scoped = Scope known
Milestone-held = Held
Milestone-told = First people told
Milestone-disposed = Last of it disposed of
Milestone-closed = Closed
DeedKind-incident = recall
DeedKind-incident-scope = scope of a recall
DeedKind-incident-note = note on a recall
DeedKind-incident-guests = recall shown to guests
DeedKind-incident-close = recall closed
Right-recall = lead a recall
Right-destroy = throw away or send back what is held
incident-unknown = No recall on record has the id "{ $id }". Choose it on the page of recalls.
incident-why = Say why: what was said, and by whom it was decided.
incident-told-later = You were told at { $told }, which is later than this deed. Check both times.
incident-closed = Recall { $number } is closed. Begin another.
incident-no-text = Say what was told or answered.
incident-no-hazard = A recall is not about “{ $said }”. Choose one of: { $known }.
incident-holds-nothing = { $number } holds nothing. What it lists is sold and used as before.
incident-caught = Falls in the scope of recall { $number }, and is held: { $lots }.
incident-left-scope = No longer in the scope of { $number }, and held until you let it go: { $lots }.
Milestone-located = Looked for everywhere
Milestone-counted = All counted
CountState-waiting = not looked for yet
CountState-seen = seen, not counted
CountState-found = found
CountState-missing = missing
CountState-gone = gone
incident-not-begun = { $number } had not begun at that moment. Ask for a later one.
incident-no-moment = "{ $text }" is no moment. Write it as 2026-06-30T18:00:00-04:00.
incident-not-counted = { $packs ->
    [one] { $packs } pack of { $number } was never counted.
   *[other] { $packs } packs of { $number } were never counted.
}
incident-missing = { $weight } of { $number } is missing, and stays unexplained.
incident-disposed-uncounted = { $lot } was not counted since the call.
incident-disposed-other = { $lot } was counted at { $counted }; { $disposed } of it leaves now, the rest stays held.
incident-still-held = { $packs ->
    [one] { $packs } pack is still held for { $number }.
   *[other] { $packs } packs are still held for { $number }.
}
stop-held-for = On hold for recall { $number }: { $why }. Do not sell or use it until the recall lets it go.
stop-held-under = On hold for recall { $number }. Do not sell or use it until the recall lets it go.
void-of-incident = What was done in a recall is not voided. Say by a new act how far it goes, and let go by a hold release.

# The page of recalls.
page-recall = Recall
page-recall-what = What did they say?
page-recall-nothing-yet = Type whatever was said on the phone, and tap what it is. To look holds nothing.
page-recall-said = What they said
page-recall-how = A carcass number, an ear tag, a lot code or half of one, a label in the hand.
page-recall-lots = { $lots ->
    [one] { $lots } lot is affected
   *[other] { $lots } lots are affected
}
page-recall-on-hand = { $lots ->
    [one] { $lots } lot is on hand, { $weight }.
   *[other] { $lots } lots are on hand, { $weight }.
} { $sold ->
    [0] No pack was sold.
    [one] { $sold } pack was sold.
   *[other] { $sold } packs were sold.
}
page-recall-hold = { $lots ->
    [0] Begin the recall: nothing of it is left to hold
    [one] Hold this { $lots } lot, { $weight }
   *[other] Hold these { $lots } lots, { $weight }
}
page-recall-hold-what = From that moment nothing of it is sold, packed, served or printed
page-recall-lineage = What was made of it
page-recall-contact = And what shared a bench or machine
page-recall-told-by = Who phoned
page-recall-why = What they said it is
page-recall-hazard = What it is about
page-recall-each = Why each of them
page-recall-lot = Lot
page-recall-because = Because
page-recall-outside = Left out, and why
page-recall-gone = Affected, and nothing left of it
page-recall-sold = Sold
page-recall-sold-which = Sold: which packs, and when
page-recall-served = Served
page-recall-discarded = Thrown out
page-recall-shipped = Shipped
page-recall-unexplained = Unexplained
page-recall-all = Recalls so far
page-recall-drill = drill
page-recall-closed = closed
page-recall-count-now = Start the count
page-recall-count-on = Go on with the count
page-recall-see = See the recall
page-recall-drill-begin = Begin a drill
page-recall-drill-of-what = A drill: of which label?
page-recall-drill-what = Everything as in a recall, and nothing is held
page-drills = Drills
page-drill-due = The next drill is due by { $day }.
page-drill-none-due = Nothing has come in yet, so no drill is due.
page-drill-none = No drill is on record yet.
page-drill = Drill
page-drill-of = Of
page-drill-packs = Packs
page-drill-scope = Scope after
page-drill-located = Located after
page-drill-counted = Counted after
page-drill-share = Looked for
page-drill-missing = Missing
page-minutes = { $minutes } min
page-incident-report = The report
page-incident-record = The record for a spreadsheet
page-incident-picture = The picture
page-incident-events = The events
page-incident-clock = The clock
page-incident-what = What
page-incident-when = When
page-incident-after = After the call
page-incident-lots = What there is to find
page-incident-left = Still there
page-incident-all-there = all there
page-incident-dispose = { $lots ->
    [one] { $lots } lot, { $weight }
   *[other] { $lots } lots, { $weight }
}
page-incident-dispose-head = What becomes of it
page-incident-dispose-what = Each ticked lot leaves with its witness. To let a lot go, go to its own page.
page-incident-dispose-do = Record it for what is ticked
page-incident-dispose-which = Which of it
page-incident-dispose-packs = Packs of { $lot }: all, or 1-4, 7
page-incident-uncounted-close = Not everything was counted. Count it first, or say below why it cannot be.
page-incident-known = What you know by now
page-incident-known-do = Put it down
page-incident-known-none = Nothing is written yet.
page-incident-dispose-some = Only some packs
page-incident-how = How
page-incident-discarded = destroyed
page-incident-returned = sent back
page-incident-witness = Who saw it
page-incident-document = On which paper
page-incident-why = Why
page-incident-people = Whom to call
page-incident-nobody = Nobody one step back or forward is on record.
page-incident-who = Who
page-incident-about = About
page-incident-told = Told
page-incident-answered = Answered
page-incident-note-kind = What happened
page-incident-note-told = Told
page-incident-note-answered = Answered
page-incident-note-note = Something else
page-incident-whom = Whom
page-incident-text = What was said
page-incident-note = Note it
page-incident-sold = Sold, by day and hour
page-incident-nothing-sold = Nothing of it was sold.
page-incident-how-much = How much
page-incident-notices = The notices to customers and for the shelf
page-incident-show = Tell guests who read a label
page-incident-hide = Tell guests no longer
page-incident-show-what = Whoever reads the code of a held pack with a phone sees the recall
page-incident-acts = What was decided and told
page-incident-close = Close it
page-incident-close-why = How it ended; what does not agree, and why
page-incident-close-what = The report is kept as it is then. What is held stays held
page-count-at = Count: { $place }, place { $nth } of { $places }
page-count-found = { $found } of { $packs ->
    [one] { $packs } pack is found here
   *[other] { $packs } packs are found here
}{ $missing ->
    [0] .
   *[other] ; { $missing } missing.
}
page-count-place = { $place }: { $found } of { $packs }{ $missing ->
    [0] { "" }
   *[other] ; { $missing } missing
}
page-count-missing = missing: no. { $packs }
page-count-not-here = Not here: { $packs }
page-count-pack = Pack { $pack }, { $weight }
page-count-outside = { $lot } is not in this recall. Put it back.
page-count-which = { $name }, { $lot }: which pack? Read its number on the label, and add it: { $lot }/3.
page-count-surplus = { $name }, { $pack }: by the book nothing of it is left. Weigh it: it is more than the book.
page-count-again = { $name }, { $pack } is counted already: { $weight }. Weigh it anew if that is wrong.
page-count-elsewhere = { $name }, { $pack }: by the book it lies at { $place }.
page-count-opened = { $name }, { $pack } is open; by the book { $weight } is left. It is not counted yet: weigh it, then tap “It is here”.
page-count-this = { $name }, { $pack }: { $weight } by the book.
page-count-unanswered = Still asked, not counted yet:
page-count-decide = Decide what becomes of it
page-count-all-counted = All of it is counted
page-count-it-is-here = It is here
page-count-scan = Scan each pack where it lies, and put its hold tag on it
page-count-this-one = Count it
page-count-book = By the book
page-count-found-n = Found
page-count-stands = How it stands
page-count-without-scan = A label that cannot be read
page-count-missing-what = It stays unexplained until somebody finds it
page-count-places = The way round
page-count-back = A customer brought some back
page-count-back-code = Its code
page-count-back-from = Who
page-count-back-do = Take it back
page-count-back-what = It is held as it comes in
page-count-tags = Hold tags (PDF)
page-and-more = { $what }: { $more }
page-count-tub = A tub without a label
page-count-tub-how = If you know which pack it is, and that one is counted as missing, say its code. Else it is taken in as a tub of which nobody knows the history, and stays stopped.
page-count-tub-product = What it is
page-count-tub-is = Its code, if you know it
page-count-tub-do = Take it in
page-count-all = All places together
page-recall-days = { $first } to { $last }
page-recall-held = Held under { $number }: { $packs ->
    [one] { $packs } pack
   *[other] { $packs } packs
  }, { $weight }
page-recall-since = Since { $at }. Told by: { $by }
page-recall-hazard-unknown = Not known yet, or something else
page-recall-no-name = a caller whose name was not noted
page-recall-afterwards = All of it can wait: hold first. What you learn later is put down on the recall’s own page.
page-recall-of-farm = All its animals killed on some days
page-recall-of-product = What was made of it on some days
page-recall-of-place = What was there over some days
page-recall-of-person = What this person did on some days
page-recall-which-kills = When were they killed? Tap the day, or say the first and the last: both are in it.
page-recall-none-killed = No animal of { $what } is on record as killed from { $first } to { $last }. That does not say that none is here: the day may have been heard or written otherwise. These are the nearest:
page-recall-none-then = Nothing is on record of { $what } from { $first } to { $last }. That does not say that none is here: try other days, or the lot.
page-recall-left-out = Left out: { $words }
query-small-words = the a an of from in at on to by for and or with was were is are has have been this that these those it we they you our your killed slaughtered about start end beginning middle week month day some all lot lots batch animal animals meat ending ends
query-months = january february march april may june july august september october november december
query-carcass-words = side half carcass body
page-recall-which-days = Over which days? Both are in it.
page-recall-show = Show what is affected
page-recall-tags = Print all hold tags (PDF)
page-animal-recall = Recall what came of it
page-animal-recall-what = Shows what is affected, and holds it with one more tap
page-incident-told-now = Told now
page-incident-by-phone = told by telephone
page-count-next = Next: { $place }
page-recall-stands = { $by }, { $at }: { $packs ->
    [one] { $packs } pack on hold, { $weight }.
   *[other] { $packs } packs on hold, { $weight }.
}
page-bench-did-made = { $deed }: { $packs ->
    [one] {""}
   *[other] { $packs } packs of{" "}
  }{ $name }, { $lot }; { $by }, { $at }.
page-bench-did-made-lots = { $deed }: { $lots } lots; { $by }, { $at }.
page-bench-labels-doubt = { $labels ->
    [one] 1 label did not surely come out: look under Printing.
   *[other] { $labels } labels did not surely come out: look under Printing.
  }
page-bench-labels-open = { $labels ->
    [one] 1 label waits for the printer { $printer }.
   *[other] { $labels } labels wait for the printer { $printer }.
  }
page-bench-labels-out = { $labels ->
    [one] 1 label came out.
   *[other] { $labels } labels came out.
  }
page-bench-labels-as-pdf = { $labels ->
    [one] 1 label left as a PDF.
   *[other] { $labels } labels left as a PDF.
  }
page-bench-labels-none = No label was printed yet.
page-bench-room-head = Cure room: { $alarms ->
    [one] 1 alarm
   *[other] { $alarms } alarms
  }, { $due } due
page-bench-room-lies = { $lots ->
    [one] 1 lot lies in its cure.
   *[other] { $lots } lots lie in their cure.
  }
page-bench-labels-printing = { $labels ->
    [one] 1 label is on its way to { $printer }.
   *[other] { $labels } labels are on their way to { $printer }.
  }
page-bench-room-quiet = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  } lie in salt or hang.
page-bench-of-tag = { $tag } { $name }
page-bench-lost = { $percent } % lost
page-bench-last = last { $weight } on { $day }
page-bench-expected = expected { $weight }
page-bench-target = target { $percent } %
page-bench-days = { $days } days
page-bench-day = day { $day }
page-bench-ready-for = ready: day { $nth }, { $day }
page-bench-turn-on = turn on { $day }.
page-bench-out-on = out of its cure on { $day }.
page-bench-is-out = out of its cure: smoke or cook it.
page-bench-signed-by = signed by { $by }
page-bench-left = { $weight } left, { $until }
page-bench-boiled = It boiled { $minutes } minutes
page-bench-heat-step = { $at } held { $minutes }
page-bench-heat-reached = { $at } reached
page-bench-cool-between = from { $from } to { $to } within { $hours }
page-bench-cool-from-start = down to { $to } within { $hours }
page-bench-cool-by = { $to } by { $by }
page-bench-cool-met = { $to }: reached
page-bench-row = Row { $row }
page-sentence-weigh = { $name }, { $lot }, weighs [grams]: [_lost] of its green weight is lost.
page-sentence-weigh-alone = { $name }, { $lot }, weighs [grams].
page-sentence-release = Release { $name }, { $lot }. Signed: { $by }.
page-sentence-turn = { $name }, { $lot }, is turned, at [place].
page-sentence-rinse = { $name }, { $lot }, is rinsed, at [place].
page-sentence-equalise = { $name }, { $lot }, equalises from now on, at [place].
page-sentence-hang = { $name }, { $lot }, hangs from now on, at [place].
page-sentence-receive-animal = Receive [product], [animal.side], [grams], of [animal.farm], killed on [animal.killed_on], carcass [animal.carcass], temperature [degrees], to [place].
page-sentence-receive-bought = Receive [product], [grams], from [bought.supplier], temperature [degrees], to [place].
page-sentence-cool = { $name }, { $lot }, is cooled, at [place].
page-sentence-core = The core of { $lot } was [degrees] at the end of its cook.
page-sentence-cook = Cook [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-sentence-smoke = Smoke [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-sentence-render = Render [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-sentence-grind = Grind [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-sentence-mix = Mix [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-sentence-cure = Cure [_sum] (lots: [_lots]): [outputs.0.grams] of { $name }, packs: [outputs.0.pack_count], to [outputs.0.place].
page-act-weigh = Weigh
page-act-sell = Sell
page-act-tend = Turn or hang
page-act-release = Release
page-act-see = See it
page-act-cook = Cook
page-act-grind = Grind
page-act-mix = Mix
page-act-cure = Cure
page-act-smoke = Smoke
page-act-cool = Cool
page-act-core = Enter the core temperature
page-weigh-now = On the scale
page-weigh-keep = Keep this weight
page-weigh-else = Other readings
page-weigh-again = Weigh it again
page-weigh-caution = Loss of weight alone makes nothing safe; local codes and licensed practice decide.
page-tend-how = What was done
page-tend-done = Done: keep it
page-tend-turned = Turned
page-tend-rinse = Rinse it
page-tend-equalise = Let it equalise
page-tend-hang = Hang it
page-release-it = Release it
page-release-see = See what it has
page-release-sign = Sign and release
page-release-looked = What did you find when you looked?
page-release-looked-later = Hang it where it dries as it should, and weigh it again in a few days. If it is still too far off when it comes down, you sign that it was looked at.
page-release-looked-manager = Hang it where it dries as it should, weigh it again in a few days, and tell a manager what you found: they sign for it when it comes down.
page-weigh-hang-elsewhere = Hang it elsewhere
page-release-looked-sign = I looked: sign and release
page-release-not-yet = Not yet:
page-release-trichinae = Pork that is eaten uncooked: paper on trichinae
page-release-trichinae-help = Only where the farm has no certificate in the list. The service says so when it is needed.
page-release-paper = Number of the paper
page-release-way = What it says
page-release-carcass-tested = The carcass was tested
page-release-herd = The herd is of negligible risk
page-cure-room-scan = Scan a tag to weigh it
page-cure-room-due = Due
page-cure-room-lies = In cure, to be smoked or cooked
page-cure-room-in-cure = in cure
page-cure-room-rest = The rest hangs or lies quietly
page-cure-room-lost = Lost
page-cure-room-next = Next
page-cure-room-stage-day = { $stage }, day { $days }
page-receive = Receive
page-receive-animal = An animal
page-receive-bought = A carton or a bag
page-receive-what = What is it?
page-receive-farm = Farm
page-receive-killed = Killed on
page-receive-abattoir = Abattoir
page-receive-abattoir-us = Slaughterhouse
page-receive-carcass = Carcass number
page-receive-carcass-help = By the carcass number or the ear tag its other side joins it. With neither it is taken as an animal of its own.
page-receive-no-carcass = Neither carcass number nor ear tag: this is taken as an animal of its own, and a second side cannot join it later. Type one of them if there is one.
page-receive-part-whole = By its name this is a part of an animal. Is it a whole one? Else choose left or right.
page-receive-no-number = without a number
page-receive-ear-tag = Ear tag or tattoo
page-receive-side = Which part of it
page-receive-side-other = Another part
page-receive-barcode = Scan the carton
page-receive-barcode-help = What its code holds fills itself in: product, weight, lot, dates. Type only what it does not say.
page-receive-new-supplier = The supplier is not on the list: add one
page-receive-new-product = The product is not on the list: add one
page-receive-no-supplier = No supplier is on the list yet. A manager adds one under Lists and settings.
page-receive-salt = How strong it is, by the bag
page-receive-salt-listed = Read it off this bag: it differs from bag to bag. By the list it is [percent]; left empty, that is taken.
page-receive-by-barcode = As the code says
page-receive-use-by = Supplier’s last day
page-receive-weight = Weight
page-receive-degrees = At the door
page-receive-head = How many head, of birds
page-receive-note = Delivery note
page-receive-button = Receive it
page-optional = (optional)
page-make = Cook, grind, mix or cure
page-make-cook = What is cooked?
page-make-grind = What is ground?
page-make-mix = What is mixed?
page-make-cure = What is cured?
page-make-smoke = What is smoked?
page-make-render = What is rendered?
page-make-becomes = What does it become?
page-make-cut = Which piece is cut?
page-make-cut-none = Nothing on hand can be cut now: no side, no whole piece that is free and not frozen.
page-make-pack = What is packed?
page-packs-gone = No longer here: { $packs }
page-make-apart = Not now: { $lots }
page-make-pack-none = Nothing on hand can be packed now: no piece, no pot that is free and not frozen.
page-ways-cut = Cut
page-make-else = Something else
page-make-none = No recipe is on the list for that.
page-pot-meat = Meat, weighed
page-pot-batch = Batch: all that goes in
page-pot-in = What goes in
page-pot-none-on-hand = None on hand.
page-pot-receive = Receive some
page-pot-make = Make some
page-pot-break-down = Break a carcass down
page-pot-water = Water added
page-pot-units = Meat and water in lb. What lies on the small scale is in g: salts, spices, casings. 2 lb 3 oz is understood, too.
page-pot-strength = How strong it is, on the list
page-pot-scan = Scan or type another lot
page-pot-chosen = Chosen so far: [chosen] of [wanted]. Tick what else goes in, or look at the weight above.
page-pot-add = Add it
page-pot-nothing-in = Nothing goes in yet: tick a lot above, or scan one here.
page-pot-out = What comes out
page-pot-made = Weight made
page-pot-bench = Done at
page-pot-tag = Tag
page-plan = Weigh this
page-plan-curing-salt = Curing salt
page-plan-salt = Salt
page-plan-sugar = Sugar
page-plan-nitrite = Nitrite
page-plan-nitrate = Nitrate
page-plan-all-salt = All salt
page-heat = Heat
page-heat-asks = Asked for:
page-heat-core = Core
page-heat-held = Held, minutes
page-heat-stuffed = Is the meat stuffed?
page-heat-stuffed-yes = Yes, something fills it
page-heat-stuffed-no = No: around it or beside it
page-heat-stuffed-help = With bread, rice, fruit or forcemeat in this cook and no answer, it is judged as stuffed, which takes more heat.
page-heat-log = Readings by the hour
page-heat-curve = The readings as a curve
page-heat-at = At
page-heat-more = One more reading
page-cool-where = Cooled in
page-cool-keep = Keep these readings
page-cool-due = Due
page-cool-left = [left] left
page-cool-over = [left] over
page-cool-read = Read so far
page-cool-now = Now
page-core-help = Only what a probe showed in the thickest part during that cook. If nobody measured then, cook it through again and measure, or throw it away.
page-core-how = How is it known?
page-core-noted = Measured then, written down now
page-core-logged = From the log of the probe
page-act-strength = How strong the bag is
page-strength-help = As it is printed on this bag: per cent, not a fraction, like 6.25. What was cured with it is judged again by that.
page-strength-read = Read off the bag
page-strength-mistyped = It was typed wrong
page-strength-keep = Enter it
deed-not-frozen = All else at { $place } is frozen. This was moved there without freezing: it stays as it is kept now, and its day runs on. If it freezes there, choose Freeze.
# The logs as the rules name them
LogKind-receiving = receiving
LogKind-grinding = grinding
LogKind-batches = batches made
LogKind-cooking = cooking
LogKind-cooling = cooling
LogKind-curing = curing
LogKind-trichinae = treatment against trichinae
LogKind-temperatures = temperatures
LogKind-corrections = corrective actions
LogKind-departures = departures
LogKind-clean-downs = clean-downs
Column-at = when
Column-began = began
Column-step = what was done
Column-place = place
Column-by = by
Column-lot = lot
Column-product = product
Column-weight = weight
Column-packs = packs
Column-use-by = use by
Column-materials = what went in
Column-carried-over = carried over
Column-added = added
Column-loss = loss
Column-from = from
Column-from-address = their address
Column-establishments = establishment number
Column-supplier-lots = supplier’s lot
Column-produced-on = packed or killed on
Column-animals = animal
Column-reference = their reference
Column-sent-on = sent on
Column-received-on = received on
Column-sources = each source
Column-document = paper
Column-responsible = responsible
Column-temperature = temperature
Column-hottest = hottest core
Column-held = held for
Column-boiled = boiled for
Column-cooled-from = cooled from
Column-cooled-to = cooled to
Column-chart = times and temperatures
Column-limit = limit
Column-probe = probe
Column-standard = held against
Column-cleaned-before = cleaned before
Column-cleaned-after = cleaned after
Column-worked = worked on it since
Column-salt = salt
Column-nitrite = nitrite
Column-nitrate = nitrate
Column-brine = brine, degrees
Column-ph = pH
Column-water-activity = water activity
Column-residual = left in the food
Column-method = way
Column-casing = casing
Column-actual = reached
Column-certificate = certificate
Column-deviation = what went otherwise
Column-correction = what was done about it
Column-about = about
Column-wrong = what was wrong
Column-done = what was done
Column-why = why
Column-witness = witness
Column-to = to
Column-to-address = the receiver’s address
Column-to-telephone = the receiver’s telephone
Column-carrier = carrier
Column-found = found
Column-note = note
Group-when = when and who
Group-what = what
Group-whence = where it came from
Group-checks = checks
Group-whereto = where it went
Group-remarks = remarks
Occasion-grind-beef = beef is ground
Occasion-sell-at-retail = food is sold at retail
Occasion-sell-to-business = food is sold to a business
Occasion-serve-meal = a meal is served
Occasion-send-pig = a pig is sent
Occasion-make-meat-product = a meat product is made
Occasion-buy-food = food is bought
Occasion-receive-animal-product = food of animals is received
Occasion-treat-trichinae = pork is treated against trichinae
Occasion-pack-reduced-oxygen = food is packed with reduced oxygen
Occasion-complaint = somebody complains
Occasion-recall = something is recalled
Occasion-recall-drill = a recall is rehearsed
Addition-water = water
Addition-ice = ice
Addition-steam = steam
Addition-scale-difference = difference of two scales
logs-percent = { $percent } %
logs-ppm = { $ppm } ppm
logs-millimetres = { $mm } mm
logs-material = { $product }, { $lot }, { $grams }
logs-point = { $at }: { $read }
logs-named-with = { $name } ({ $number })
logs-animal = { $species }, killed { $killed }, { $number }
logs-animal-unnumbered = { $species }, killed { $killed }
logs-source = { $product }, { $lot }: from { $from }, { $day }
logs-source-at = { $product }, { $lot }: from { $from }, { $address }, { $day }
logs-nobody = nobody known
logs-carried-nothing = nothing on record
logs-carried-lot = { $product }, { $lot }
logs-added = { $what }, { $grams }
logs-with-probe = { $probe }, checked { $checked }
logs-probe-unchecked = { $probe }, no check on record in the year before
logs-checked = checked in { $bath }
logs-none-found = none on record
logs-limit-of-place = { $limit }
logs-frozen-at = { $read } or colder for { $hours } h
logs-heated-to = { $read } for { $minutes } min
logs-certificate = { $way }: { $paper }
logs-dried-by = cured and dried, { $method }
logs-frozen = frozen
logs-heated = heated
logs-certified = a certificate instead of a treatment
logs-herd-certified = the certificate of the farm
logs-deed = { $kind }, { $at }, { $by }
logs-disposed = { $how }
logs-let-go = let go
logs-stopped-by = stopped until a person disposes of it
logbook-missing = MISSING: { $field } ({ $row })
logbook-deed = deed
logbook-scale = scale
logbook-missing-column = missing
logbook-remark = remark
logbook-in-grams = { $heading } (g)
logbook-in-minutes = { $heading } (min)
logbook-page-of = Page { $page } of { $of }
logbook-nothing = Nothing was recorded in this time.
logbook-days = From { $first } to { $last }, both days included.
logbook-between = From { $from } until before { $until }.
logbook-only-place = Only at { $place }.
logbook-only-by = Only by { $by }.
logbook-only-lot = Only lot { $lot }.
logbook-anchor = Anchor of the record: { $line }
logbook-asked-by = Asked for by { $by }.
logbook-voided = VOIDED by { $by }, { $at }: { $why }
logbook-corrected = Corrected by { $by }, { $at }
logbook-entered = Entered later: { $at }
logbook-due = due where { $on } (record: { $record }, { $row }).
logbook-not-due = No row on file asks for this log here. It is good practice; local rules decide.
logbook-kept-span = Kept for { $span } ({ $row }).
logbook-kept-food = Kept as long as the food may be eaten ({ $row }).
logbook-kept-longer = Kept for { $span }, or as long as the food keeps where that is longer ({ $row }).
logbook-span-hours = { $number ->
    [one] { $number } hour
   *[other] { $number } hours
}
logbook-span-days = { $number ->
    [one] { $number } day
   *[other] { $number } days
}
logbook-span-months = { $number ->
    [one] { $number } month
   *[other] { $number } months
}
logbook-span-years = { $number ->
    [one] { $number } year
   *[other] { $number } years
}
logbook-counted = Entries: { $entries }. Fields that a rule wants and the record lacks: { $holes }.
query-no-log = There is no log called { $log }. There are: { $known }.
query-window-ends-first = The window ends before it begins, or when it begins. Give a later end.
query-log-too-long = That is more than { $most } entries, the most of one file. Ask for a shorter time.
page-logs = Logs
page-papers = Papers
page-papers-add = Add a paper
page-papers-none = No papers yet.
page-papers-next = Older papers
page-papers-kind = What it is
page-papers-of = It belongs to
page-papers-name = Its number or name
page-papers-photo = Take a photo
page-papers-file = Choose a file
page-papers-how = A photo, a PDF or a plain text, at most { $most } MB. It goes as soon as it is chosen, and is never changed; a mistake is undone. Without a line to the kitchen it is not sent and does not wait: choose it again when the line is back.
page-papers-sending = It is being sent …
page-papers-thinned = Thinned
page-papers-voided = Taken back
page-paper-of = Of: { $deed }, { $at }
page-paper-size = { $form }, { $kilobytes } KB
page-papers-kept = { $papers ->
    [one] One paper
   *[other] { $papers } papers
 } on record, { $megabytes } MB; thinned: { $thinned }.
page-keeping = How long things are kept
page-keeping-none = No paper may be thinned today.
page-keeping-paper = Paper
page-keeping-of = Belongs to
page-keeping-why = Why it may go
page-keeping-thin = Thin these papers
page-keeping-how = What they hold is thrown away for good, under your name. That they were there stays, with the digest of what they held. Make a copy of the record first if in doubt.
page-keeping-reason = Why
page-keeping-thin-do = Throw away what they hold
page-keeping-rules = The rules of the place
page-keeping-no-rules = This place has no rule on record, so everything stays.
page-keeping-record = Record
page-keeping-rule = What the rule says
page-keeping-over = Over for what is older than
page-logs-from = From
page-logs-last = To, this day included
page-logs-show = Show
page-logs-spreadsheet = Spreadsheet (CSV)
page-logs-paper = Paper (PDF)
page-logs-due = Due here
page-logs-kept-anyway = Not asked for here
page-logs-next = Next entries
page-logs-all = All logs
page-picture = The family as a picture
page-picture-file = The picture alone, to print
page-picture-alt = Each lot by the day on which it was made, with its weight, and what is on hand of it. The table above says the same.
picture-nothing = Nothing was made of it.
picture-summary-gone = { $lots ->
    [one] 1 lot, made { $from }. Nothing is on hand.
   *[other] { $lots } lots, made { $from } to { $to }. Nothing is on hand.
 }
picture-summary-clear = { $lots ->
    [one] 1 lot, made { $from }, on hand: { $weight }.
   *[other] { $lots } lots, made { $from } to { $to }. On hand: { $on_hand } of them, { $weight }.
 }
picture-summary-held = { $lots ->
    [one] 1 lot, made { $from }, on hand: { $weight }, held: { $held }.
   *[other] { $lots } lots, made { $from } to { $to }. On hand: { $on_hand } of them, { $weight }, held: { $held }.
 }
picture-key-gone = made
picture-key-on-hand = on hand
picture-key-held = held
picture-key-weight = the thicker, the heavier
picture-made = Made
picture-on-hand = On hand
picture-since = from { $day }
picture-group = { $lots ->
    [one] 1 lot: { $products }
   *[other] { $lots } lots: { $products }
 }
picture-in-places = { $weight } in { $places } places
picture-in-lots = { $lots ->
    [one] { $weight }, 1 lot
   *[other] { $weight }, { $lots } lots
 }
picture-all-gone = all gone
picture-now-at = Where it is now
picture-place = { $lots ->
    [one] { $place }, 1 lot
   *[other] { $place }, { $lots } lots
 }
page-guest-unknown = Not on record here
page-guest-unknown-do = This code says nothing here. Please ask at the counter, and bring the pack.
page-guest-at-work = I work here: sign in
page-guest-recalled = Please don’t eat this
page-guest-do = Bring it back, opened or not, or throw it away. If you have eaten it and feel unwell, call a doctor.
page-guest-keep = Keeping and cooking it
page-guest-in-it = What is in it
page-guest-from = Where it came from
page-guest-more-farms = and animals of other farms
page-guest-allergens = No allergens that have to be named are on record
page-guest-ask = Questions? Ask at the counter.
guest-residue = An animal this was made of should not have been sold for food: a medicine was still in it. Cooking does not take it away.
guest-pathogen = It may hold germs that make people ill. You cannot see, smell or taste that.
guest-allergen = It may hold an allergen that its label does not name.
guest-foreign-body = There may be something hard in it that does not belong there.
guest-temperature = It may not have been kept as cold or cooked as hot as it has to be.
guest-label = Its label does not say what is true of it.
guest-other = Something is wrong with it.
guest-ask-first = Please ask at the counter before you eat or open it.
guest-past-day = Its last day was { $day }. Please ask at the counter.

## Set-up, lists, tables, rules

page-field-code = Code
page-help-code-made = Leave it empty: it is made of the name. Whoever wants a short name of their own writes it in small letters and hyphens; it cannot be changed later.
page-help-code = Short, and it cannot be changed. A farm: 2 or 3 letters without I, L, O, U. Anything else: small letters and hyphens.
page-field-name = Name
page-field-number = Establishment number
page-field-phone = Telephone
page-field-address = Address
page-field-country = Country, two letters
page-field-born-there = Born in that country too
page-help-born-there = Only with a paper that says so: some labels claim the place of birth.
page-field-premises-id = Premises identification
page-field-trichinae-certificate = Certificate for trichinae
page-help-trichinae-certificate = The number of its paper as a farm of negligible risk. Without it, pork that is eaten uncooked needs freezing, heating or a drying on record.
page-field-kind = What it is
page-field-scale-grams = Step of its scale, g
page-help-scale-grams = Below about 2 kg of meat curing salt needs a scale that shows 0.1 g.
page-field-limits-below-celsius = Not warmer than, °C
page-field-limits-below-fahrenheit = Not warmer than, °F
page-field-limits-above-celsius = Not colder than, °C
page-field-limits-above-fahrenheit = Not colder than, °F
page-field-certificate = Fingerprint of its certificate
page-help-certificate = Only behind ipps://: nothing is sent to a printer that shows another.
page-field-templates = Labels that it is for, one a line
page-field-names-en = Name in English
page-field-names-fr = Name in French
page-field-species = Animal
page-field-raw = Must be cooked before it is eaten
page-help-raw = “No” is only a claim: the record has to prove that it is ready (a cook with its readings, a release, a supplier’s paper), or the counter holds it.
page-field-allergens = Allergens of itself
page-help-allergens = What is in it besides its recipe’s parts. Read it off the pack: what is not told here and in no part is said to be without. Name each nut and fish.
page-field-storage = Kept
page-field-keep-days = Days it keeps
page-help-keep-days = The house’s own days. What the law of the place allows may be less, and then that holds; nothing makes it longer.
page-field-keep-from = Counted from
page-field-keep-day-one-counts = That day is day 1
page-field-keep-freeze-day-counts = The day of freezing counts
page-field-keep-if-stable-days = Days, where readings show that it is stable
page-field-keep-if-stable-from = Then counted from
page-field-keep-if-stable-day-one-counts = Then that day is day 1
page-field-controlled = Needs cold to be safe
page-help-controlled = “No” for food of animals needs readings (pH, water activity) or an approval; else its packs are held.
page-field-stable-as = Keeps by nature, as
page-field-for-sale = Sold at the counter
page-field-price-minor-per-kg = Price a kilogram
page-field-gtin = GTIN
page-help-gtin = Only under the kitchen’s own GS1 prefix.
page-field-till-number = Till number
page-field-face = Face of the pack in cm²
page-help-face = The side that carries the label: the law’s height of the net weight goes by it. If nothing is said, it goes by the label.
page-field-panel-apart = Safe handling on a second label
page-help-panel-apart = The front is then shorter; both labels come out as one print and carry the same code. If nothing is said, the kitchen’s own setting counts.
page-help-till-number = How it is written into a bar is told by the kitchen’s till layout.
page-field-cut-style = Cut up as
page-help-cut-style = For a carcass: which way of cutting the bench shows and weighs against.
page-field-cut = Which piece of it
page-help-cut = For a piece of a carcass: then the bench knows where the knife goes and what it usually weighs.
page-field-process = Yield held against
page-help-process = For what is cooked, smoked or rendered: the published yield that the scale is compared with.
page-field-value-minor-per-kg = Value a kilogram, for costs
page-field-cooked-as = Its cook is judged as
page-help-cooked-as = Ground and pumped meat needs more heat than whole pieces; what was pierced on its way counts as ground whatever stands here.
page-field-nature = In a list of ingredients
page-field-cure-class = Cured as
page-help-cure-class = What the limits for nitrite divide by.
page-field-cure-method = How
page-field-cure-heated = Cooked here afterwards
page-field-cure-nitrite = With nitrite or nitrate
page-help-cure-nitrite = Say yes where it is meant to: then a cure without a curing salt of known strength is stopped.
page-field-cure-salting = Lies in its cure as
page-help-cure-salting = For what is smoked or cooked afterwards and does not hang: the cure room and Today then say when it is turned and when it comes out. Days say nothing of whether it is safe: the cure and its weights decide.
page-field-cure-days = Days in its cure
page-help-cure-days = The house’s own. If nothing is said: as many as the way above takes.
page-field-in-cure = In a cure it is
page-field-curing-salt-nitrite-percent = Nitrite, % of the curing salt
page-help-curing-salt-nitrite-percent = Read it off the bag, every time: salts of 6.25 %, 5.88 % and 0.5 % look the same, and a wrong figure here is a wrong dose in every batch. Per cent, not a fraction: 6.25.
page-field-curing-salt-nitrite-of = Which nitrite
page-field-curing-salt-nitrate-percent = Nitrate, % of the curing salt
page-help-curing-salt-nitrate-percent = Never in bacon in the United States; only in what hangs for long.
page-field-curing-salt-nitrate-of = Which nitrate
page-field-release-loss-percent = Released at a loss of, %
page-field-release-tolerance-points = So many points under that may do
page-field-release-days = Not before so many days
page-field-release-water-activity = At most this water activity
page-help-release-water-activity = What shows that it keeps without cold; a loss of weight alone does not.
page-field-release-curve = Dries along the curve
page-help-release-curve = Too far ahead or behind, the cure room gives an alarm.
page-field-release-salting = Salted by the calendar
page-field-other = More
page-part-keep = How long it keeps
page-part-counter = At the counter
page-part-code = Short name, if you want your own
page-part-names = Code and other names
page-part-keep-more = More on how long it keeps
page-part-label = Bar code, till and label
page-part-yield = Cut and yield
page-part-cure = How it is cured
page-part-salt = If it is a curing salt
page-part-release = When a hanging piece is released
page-field-standard-place = Place in its name
page-field-standard-made-there = Made where the name says
page-field-standard-mince = Sold as which mince
page-field-standard-steak = Sold as a steak
page-field-standard-tenderised = Blades or needles went through it
page-field-standard-loaf = A loaf, not a cut
page-field-standard-shank-bones-out = Both shank bones out
page-field-standard-bones-remain = Bones remain in it
page-field-standard-packed-in = Packed in which liquid
page-field-standard-protein-percent = Meat protein, %
page-field-standard-fat-percent = Fat, %
page-field-standard-collagen-percent = Collagen in its meat protein, %
page-field-standard-shank-over-percent = Shank meat over the normal, %
page-field-standard-added-percent = Added ingredients, % of its weight
page-field-standard-salt-percent = Salt inside, measured, %
page-field-standard-water-percent = Water inside, measured, %
page-field-keep-if-stable-freeze-day-counts = Then the day of freezing counts
page-field-curing-salt-salt-percent = Salt in it, %
page-field-release-signature = A signature releases it
page-field-customer-names-en = Name for customers in English
page-field-customer-names-fr = Name for customers in French
page-help-customer-names = On labels and in ingredient lists, where the house calls it otherwise among itself. Left empty: the name above.
page-field-cooking-en = How a customer cooks it, in English
page-field-cooking-fr = How a customer cooks it, in French
page-help-cooking = It stands on the pack, as it is written here.
page-field-uncured-resembles = Sold as uncured: looks, tastes and cuts like the cured one
page-field-uncured-natural = What brings nitrite by nature, such as celery powder
page-help-uncured = Only for what is usually cured with nitrite and is sold as uncured. Left empty: it is not sold so.
page-field-standard-cooking-method-en = After the blades: how it is cooked, in English
page-field-standard-cooking-method-fr = After the blades: how it is cooked, in French
page-field-standard-cooking-celsius = After the blades: core, °C
page-field-standard-cooking-fahrenheit = After the blades: core, °F
page-field-standard-cooking-hold-minutes = After the blades: held there, minutes
page-help-standard-cooking = Where blades or needles went through it: as the kitchen has shown that it is cooked. One of the two temperatures. All left empty: the place’s own figures are printed.
page-part-standard = What its name stands for
page-help-standard-place = A name that speaks of a place is kept for what is made there. Left empty: its name names none.
page-help-standard-tenderised = Then it is no whole piece any more, and its label may have to say so and how to cook it.
page-help-standard-protein-percent = As a laboratory found it in the finished food. What is left empty is not known, and is warned of where a standard hangs on it.
page-part-limits = How cold or warm it has to be
page-caution = Local codes and licensed practice decide. The rows say where a figure comes from; read them before you rely on one.
page-rows-behind = Where this comes from
page-yes = Yes
page-no = No
page-lists = Lists and settings
page-field-missing = This is needed: type or choose it.
page-field-misread = This cannot be read here: look at what is asked, and type it anew.
page-back = Back to where you were
page-lists-till = Till numbers
page-new-probe = A new probe
page-new-printer = A new printer
page-new-product = A new product
page-new-place = A new place
page-new-supplier = A new supplier
page-new-abattoir-us = A new slaughterhouse
page-new-abattoir = A new abattoir
page-new-farm = A new farm
page-lists-add = Add one
page-lists-none = Nothing here.
page-lists-keep = Keep it so
page-lists-add-this = Add it to the list
page-lists-manager = A manager changes this.
page-recipe = What it is made of
page-recipe-help = By weight as it goes in, for any size of batch: a cure is worked out from the weight of the meat. An empty row is none.
page-recipe-part = Part
page-starters = Pick from the starter list
page-starters-back = Products
page-starters-how = Tick what your kitchen has. Each becomes an ordinary product that you can change; what it is made of is ticked with it.
page-starters-with = Ticked with it, as it is made of them: [names].
page-starters-kept = Stays ticked: needed for [names].
page-starters-all = All of these
page-starters-listed = listed
page-starters-take = Add what is ticked
page-starters-going = [nth] of [all]: stay on this page until all are there.
page-setting-group-of = { $listed ->
    [0] { $things } in all
   *[other] { $things } in all, of which { $listed } on the list
}
page-starters-ticked = to add
page-common-practice = Common practice, no source.
page-about-keep = Days:
page-about-cut = Share of the carcass:
page-about-yield = Yield:
page-about-cure = Nitrite:
page-about-salting = In its cure:
page-about-release = Release:
page-about-strength = Strength:
page-import = From a spreadsheet
page-import-how = Save the sheet as CSV, its first line naming the columns. Try it first: nothing changes until you take it over, and then all of it or nothing.
page-import-file = The file
page-import-paste = or paste it here
page-import-try = Try it
page-import-sample = A file to begin with
page-import-report = What would become of it
page-import-new = new
page-import-changed = changed
page-import-same = as they are
page-import-wrong = wrong
page-import-line = Line
page-import-columns = Columns
page-import-says = What to do
page-import-take = Take all of it over
page-import-which = Which columns there may be
page-rules = Rules and their sources
page-rules-how = Everything that a label or a stop rests on, in our own words, with where it was read. A row that nobody here has confirmed only warns.
page-rules-all = All rows
page-rules-work = To be confirmed
page-rules-open = not confirmed
page-rules-confirm = I have read the text
page-rules-confirm-how = Read the law’s own text, not a summary. What you write goes on record under your name; it can be undone.
page-rules-text = What the text says
page-rules-read-in = Where you read it, and when
page-rules-confirm-button = Confirm this row
page-rules-next = More rows
page-mark-read = read in the source
page-mark-second-hand = read second-hand
page-mark-memory = from memory
page-mark-derived = worked out of rows that were read
page-mark-house = the house’s own
page-mark-kitchen = confirmed by the kitchen
page-mark-practice = common practice, no source
page-me-reading = Your language and units
page-me-language = Language
page-me-weights = Weights
page-me-temperatures = Temperatures
page-me-as-tablet = As the tablet has it
page-me-as-kitchen = As the kitchen has it
page-me-keep-reading = Keep it so
page-begin-go = Do this now
page-set-up = Set the kitchen up
page-set-up-small = step by step
page-set-up-kitchen = The kitchen: name, law, units
page-step-kitchen = Kitchen
page-step-places = Places
page-step-people = People
page-step-printer = Printer
page-step-products = Products
page-step-animal = First animal
page-set-up-no-address = There is no address yet. A label for a customer will want one: until then it is refused, while tub and freezer labels print.
page-set-up-address-now = Add it now
page-set-up-kitchen-how = Who you are, and whose law you label under. All of it can be changed later, but for the code.
page-set-up-code = Your own code
page-set-up-code-help = 2 or 3 capital letters without I, L, O, U. It begins the code of everything that is made of several animals.
page-set-up-code-wrong = [letter] cannot stand in a code: on a wet tag it is taken for another sign. Take another letter.
page-set-up-address-help = As it is to stand on labels for customers.
page-set-up-law = Whose law
page-set-up-languages = Languages of your labels
page-set-up-zone = Time zone
page-zone-others = Everywhere else
page-zone-africa = Africa
page-zone-america = America
page-zone-antarctica = Antarctica
page-zone-arctic = Arctic
page-zone-asia = Asia
page-zone-atlantic-ocean = Atlantic
page-zone-australia = Australia
page-zone-europe = Europe
page-zone-indian-ocean = Indian Ocean
page-zone-pacific-ocean = Pacific
page-zone-newfoundland = Newfoundland
page-zone-atlantic = Atlantic
page-zone-hawaii = Hawaii
page-zone-alaska = Alaska
page-zone-pacific = Pacific
page-zone-mountain-standard = Mountain, no summer time
page-zone-mountain = Mountain
page-zone-central-standard = Central, no summer time
page-zone-central = Central
page-zone-eastern = Eastern
page-set-up-currency = Currency
page-set-up-more = Address of the codes, till, approvals
page-set-up-url = Address that the codes on labels hold
page-set-up-panel-help = The front is then shorter; both labels come out as one print and carry the same code. A product may say otherwise.
page-set-up-country = Country, two letters
page-set-up-establishment = Approval number of the establishment
page-set-up-establishment-help = Only where the authority approved your kitchen. It then stands on labels for customers where your law asks for it; the oval mark itself is not printed.
page-set-up-till = How the till’s numbers are written
page-set-up-approvals-help = Variances and plan numbers on file, by what they are for: curing, smoking, vacuum (packing without air), cooking (by another place's table), cooling, ready:CODE, stable:CODE. Packed without air what spoils you cannot smell can grow; without the plan that your place asks for, do not. What is not on file stays forbidden.
page-set-up-approval-for = Approval for
page-set-up-approval-number = Its number
page-set-up-approval-until = Until, if it ends
page-set-up-kitchen-keep = This is our kitchen
page-set-up-places-how = Tick the places that you have, and call them what your people call them.
page-set-up-places-keep = These are our places
page-set-up-place-own = Your own place
page-set-up-place-other = Another place
page-set-up-people-how = Everybody who records something signs in with a name and a PIN, so that a deed says who did it.
page-set-up-you = You
page-set-up-your-name = Your name
page-set-up-name-first = You are called Manager until you enter your name: everything that you do is signed with it.
page-set-up-name-like = First name and surname
page-set-up-you-keep = That is me
page-set-up-pin = PIN, 4 to 12 digits
page-set-up-pin-help = Left empty, they get a word that signs them in once, and choose their own PIN.
page-set-up-on = Go on
page-set-up-peg-later = later
page-set-up-is-added = is added.
page-set-up-people-so-far = Who works here so far
page-set-up-roles = Works as: one of these or several
page-set-up-cook = receives, cuts, cooks, packs
page-set-up-counter = sells and answers guests
page-set-up-manager = signs, decides, sets up
page-set-up-farm-code-help = 2 or 3 letters without I, L, O, U, like WF for a West Farm. The codes of its animals begin with it, and it cannot be changed.
page-set-up-printer-how = A label printer on your network that speaks IPP. Its address stands on its own status page or sheet.
page-set-up-test = Print a test label
page-set-up-untried = No label has come out here yet. This step is done when a test label has.
page-set-up-printer-name = Label printer
page-set-up-printer-help = Like ipp://192.168.1.50:631/ipp/print: ipp:// or ipps://, its name or number, and mostly :631/ipp/print.
page-set-up-printer-keep = Add this printer
page-set-up-paper = Paper that your labels need
page-set-up-paper-how = One size of each line is enough. A printer need not have them all: put in another roll, or add a second printer.
page-set-up-paper-has = What this printer says:
page-set-up-printer-later = No printer yet: go on
page-set-up-products-how = What you cut, cure, cook and sell. Begin with the list, change it later.
page-set-up-animal-how = Say whom it comes from; then receive it. No animal yet? Leave this for the day it comes.
page-set-up-animals = Animals
page-set-up-came-in = Received so far
page-set-up-another = Receive another animal
page-set-up-no-carcass = No carcass is among your products yet: pick one.
page-set-up-farm = The farm
page-set-up-farm-keep = Add this farm
page-set-up-abattoir = The abattoir
page-set-up-abattoir-us = The slaughterhouse
page-set-up-abattoir-keep = Add this abattoir
page-set-up-abattoir-keep-us = Add this slaughterhouse
page-set-up-abattoir-may-wait = May wait: the animal can be received without it, and its page takes it later.
page-set-up-later = To today
page-set-up-has = What the kitchen has now
page-set-up-change = Change
page-place-rail = Rail
page-place-walk-in = Walk-in cooler
page-place-cooked = Cooler for cooked food
page-place-freezer = Freezer
page-place-dry-store = Dry store
page-place-salt-room = Salt room
page-place-cure-room = Cure room
page-place-bench = Bench
page-place-cure-table = Cure table
page-place-grinder = Grinder
page-place-slicer = Slicer
page-place-stove = Stove and oven
page-place-smoker = Smoker
page-place-case = Counter case
page-setting-keeps = keeps { $days ->
    [one] 1 day
   *[other] { $days } days
  }, counted from: { $from }
page-setting-nitrite = { $percent } % nitrite: read it off your bag
page-setting-step-of = Step { $step } of { $steps }
page-setting-zone = { $region } – { $city }
page-setting-added = { $products ->
    [one] 1 product is added.
   *[other] { $products } products are added.
  }
page-setting-has = { $count }: { $names }
who-no-language = The pages speak no "{ $tag }". Choose en or fr.
title-table = The table cannot be taken over
import-new = new
import-changed = changed
import-same = as it is
import-wrong = wrong
import-send-table = Send the table as text/csv.
import-too-large = A table has at most { $most } KB. Send it in parts.
import-no-text = Line { $line } is no text in UTF-8. Save the sheet as "CSV UTF-8".
import-unseen = In line { $line } stands a letter that nobody sees. Type that cell anew.
import-no-table = Line { $line } cannot be read as a row: look for a quotation mark without its fellow.
import-too-many = A table has at most { $most } rows. Send it in parts.
import-nothing = There is no row below the heading. The first line names the columns, each other line is one entry.
import-no-column = Column { $number } is called "{ $column }", which is none. There are: { $columns }.
import-column-twice = The column "{ $column }" stands there twice. Take one away.
import-no-head = The column "{ $column }" is missing: it says which entry a row is.
import-cells = The row has { $cells } cells, the heading { $columns }. Put a text with a comma in quotation marks.
import-twice = "{ $code }" stands in the table twice. Leave one row.
import-no-yes = "{ $cell }" is neither yes nor no.
import-no-figure = "{ $cell }" is no figure that can stand here. Write 12 or 12.50.
import-line-wrong = Line { $line }, { $column }: { $says } Lines that are wrong: { $wrong }. Nothing was taken over; try the table to see all of them.
printer-test-unanswered = { $printer } does not answer. See that it is switched on, on this network, and that its address is right. Nothing was sent.
printer-test-sent = The test label was sent. Look whether it came out, and whether everything on it stands whole.
printer-test-no-paper = The printer “{ $printer }” says that it holds { $held } mm: no test label fits there. Put in a roll of { $sizes } mm, then try again.
Nature-food = food
Nature-fat = fat or oil
Nature-cure = mix that cures
Nature-spice = spice
Nature-flavouring = flavouring
Nature-additive = additive
Nature-water = water
Nature-removed-water = water that is poured off
Nature-casing = casing
Alkali-sodium = sodium
Alkali-potassium = potassium
CurePart-salt = salt
CurePart-sugar = sugar
CurePart-ascorbate = ascorbate
CurePart-erythorbate = erythorbate
CurePart-starter = starter culture
HeatUnits-celsius = °C
HeatUnits-fahrenheit = °F
MassUnits-metric = kg
MassUnits-pounds = lb
KeepFrom-made = the making
KeepFrom-received = the receipt
KeepFrom-packed = the packing
KeepFrom-opened = the opening
KeepFrom-thawed = the thaw
KeepFrom-cooked = the cook
PlaceKind-storage = for keeping
PaperKind-delivery-note = delivery note
PaperKind-certificate = certificate
PaperKind-photo = photo
PaperKind-print-out = print-out of a thermometer
PaperKind-other = another paper
PlaceKind-contact = for working on
PlaceKind-heat = for heat
PlaceKind-counter = for selling
ProductKind-carcass = carcass
ProductKind-cut = cut
ProductKind-trim = trim
ProductKind-fat = fat
ProductKind-bone = bones
ProductKind-offal = offal
ProductKind-cured = cured
ProductKind-cooked = cooked
ProductKind-rendered = rendered
ProductKind-stock = stock
ProductKind-mixed = mixed
ProductKind-ingredient = ingredient
ProductKind-waste = waste
Profile-us = United States
Profile-ca = Canada
Profile-eu = European Union
Profile-uk = United Kingdom
page-places = Places
page-places-none = No place is in the list yet.
page-probes = Probes
page-probes-none = No probe is in the list yet: a manager adds them.
page-place-head = { $lots ->
    [one] 1 lot
   *[other] { $lots } lots
}: { $what }.
page-place-carcasses = { $carcasses ->
    [one] 1 carcass or side
   *[other] { $carcasses } carcasses or sides
}
page-place-pieces = { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
}
page-place-empty = Nothing stands here
page-place-last-read = Read last
page-place-never-read = Never read
page-place-clean = Cleaned down
page-place-never-cleaned = Never, as far as the record tells
page-place-cleaned = { $at }, { $by }
page-place-raw-since = Raw food was worked here since: { $at }.
page-place-ready-since = Food that is ready was worked here since: { $at }.
page-place-degrees = { $at }
page-place-checked = Last: { $read }, { $bath }, { $at }
page-place-asks = { $limits }
page-place-cold-last = Last good reading on record: { $read }, { $at }. Change the time if somebody saw it cold later.
page-place-cold-unknown = No good reading is on record. Enter when somebody last saw that it was cold; if nobody knows, the earlier time is the safe one.
page-place-missing-pack = { $pack }, { $weight }, last in { $place }
page-place-more-lots = { $lots } more lots stand here: the list below has them all, page by page.
page-place-more = { $packs } more packs stand here than this page shows: see the list of lots.
page-place-readings = Last readings
page-place-stands = What stands here
page-place-stopped = Stopped
page-place-lots = As a list of lots
page-place-note = A word about it
page-place-warmth = It shows
page-place-probe = Read with
page-place-bath = In what
page-place-ice = melting ice
page-place-boiling = boiling water
page-place-shows = It shows
page-place-check = Keep the check
page-place-never-checked = Never checked
page-place-from = Last known to be cold
page-place-until = Cold again (empty: not yet)
page-place-readings-help = What was read in between, with its hour. Without a reading it counts as too warm all the time.
page-place-failed-how = Everything that stood here in that time is judged in one go: by its hours and by what was read.
page-place-count-how = Scan or tap what stands here. What is left untapped is missing.
page-place-choose = Tap the packs that are meant.
page-place-good-chosen = All that is still good is chosen. Say where it goes.
page-place-here = It is here
page-place-all = All
page-place-elsewhere = The record has it elsewhere: it is moved here.
page-place-back = It had left, by the record. What does it weigh?
page-place-nothing-chosen = No pack is tapped yet.
page-act-clean-down = Clean down
page-act-temperature = Read the temperature
page-act-failed = It did not stay cold
page-act-moves = Move packs
page-act-move-good = Move what is still good
page-act-thaws = Thaw packs
page-act-count-place = Count what stands here
page-act-adopt = A tub without a label
page-act-ship = Ship
page-act-return = Send back
page-act-take-back = Take back
page-act-whom = To whom
page-act-from-whom = From whom
page-why-too-warm = Too warm when it came
page-why-not-ordered = Not ordered
page-why-arrived-bad = Arrived in bad order
page-why-recalled = Called back
page-why-not-wanted = Not wanted
page-why-not-right = Something was not right
page-adopt-missing = Is it one of these? They are missing
page-adopt-none = It is none of these
page-adopt-another = It is another one
page-adopt-help = Nobody knows how it was made: it is stopped until somebody decides, and its allergens count as unknown.
page-adopt-product = What people take it for
page-adopt-weight = What it weighs
page-adopt-why = How it was found
page-adopt-why-washed = Its label washed off
page-adopt-why-fell = Its label fell off
page-adopt-why-never = It never had a label
page-adopt-button = Take it in
page-sentence-ship = Ship packs [packs] of { $name }, { $lot }, to [to].
page-sentence-return = Send packs [packs] of { $name }, { $lot }, back to the supplier: [why].
page-sentence-take-back = Take back pack [pack] of { $name }, { $lot }: [why]. It is never sold again.
page-sentence-clean-down = { $place } is cleaned down now: what is worked there next touches nothing of before.
page-sentence-temperature = { $place } shows [{ $field }].
page-sentence-failed = { $place } did not stay cold from [from] until [until]: { $lots ->
    [one] the lot in it is judged.
   *[other] the { $lots } lots in it are judged.
}
page-sentence-thaws = Packs: [_count]. From { $place } they go to [to] to thaw; their day counts again from today.
page-sentence-moves = Packs: [_count]. From { $place } they go to [to].
page-sentence-discards = Packs: [_count]. Discarded from { $place }: [why].
page-sentence-count-place = Count { $place }. There: [_count]. Missing: [_missing]. Found besides: [_more].
page-sentence-adopt-missing = It is { $name }, { $lot }: [grams], to [place]. [why].
page-sentence-adopt-unknown = Take in [grams] as [product], to [place]. [why].
page-sentence-probe-check = [probe] in [bath] shows [{ $field }].
page-bench-did-several = { $says } Lots in all: { $deeds }.
page-waiting = What waits on this device
page-waiting-count = Waiting on this device: [n]
page-waiting-refused = Not taken: [n]. See what to do
page-waiting-through = Gone through: [n]. See the codes
page-waiting-stale = No line to the kitchen. This page was kept at [time] by this device’s clock: what it shows may have changed. Work on: what you do waits on this device. The box finds only lots whose page was opened here before.
page-draft = Typed here by [name], [time], and not recorded yet.
page-draft-drop = Begin anew
page-waiting-kept = No line to the kitchen: this waits on this device.
page-waiting-write = Write [slip] on it. Its code and its labels come with the line.
page-waiting-goes = It goes through by itself, once, when the line is back.
page-waiting-once-more = One more
page-waiting-all = All that waits
page-waiting-taken-out = Undone: it does not go through.
page-waiting-no-script = What waits is shown by a script: allow scripts in this browser.
page-waiting-no-line = No line to the kitchen
page-waiting-work-on = Work on. What is here is kept, also if this device sleeps or starts anew. It goes through once, in this order, when the line is back.
page-waiting-sign-in = Sign in, so that what waits goes through.
page-waiting-nothing = Nothing waits here.
page-waiting-unread = What this device keeps cannot be read just now. Close the other windows of Gambrel on it, then open this page again. What you do goes straight to the kitchen meanwhile.
page-waiting-try = Try the line now
page-waiting-help = Each thing waits under the number of its slip. What the kitchen refuses stays here until somebody chooses.
page-waiting-not-taken = [slip] was not taken
page-waiting-again = Send it again
page-waiting-of = Not counted here yet, it waits on this device: [what]
page-waiting-leave = Leave it out
page-waiting-leave-how = Nothing of it is recorded then: what lies on the bench has no code and no label. Put it back to where it came from, or record it anew.
page-waiting-drop = Leave it: it is not recorded
page-waiting-is-now = [slip] went through:
page-waiting-codes = See the codes
page-waiting-off = No line to the kitchen. Work on: what you do waits on this device. The box finds only lots whose page was opened here before.
page-waiting-held = The line is back. Sign in, and what waits goes through: [n]
page-waiting-tried = Tried at [time]: still no line.
page-waiting-not-kept = No line, and the page that you wanted was not kept on this device. What was opened here before still opens. Else write it down with its time and your name, and record it when the line is back.
page-waiting-seen = Seen
page-counter-no-line = No line to the kitchen: this scan has no answer now.
page-counter-no-line-do = Do not sell this pack, unless who is in charge says so. Scan it again when the line is back. What was scanned before the line went may be sold, and waits here.
page-counter-off = No line to the kitchen. The pack whose word is on the screen may still be sold: the sale waits on this device and goes through by itself. What is scanned from now on gets no word and is not sold, unless who is in charge says so.
page-counter-stale = No line to the kitchen. This page was kept at [time] by this device’s clock: its word may no longer be true. Nothing is sold by it, unless who is in charge says so; what is sold all the same waits on this device and goes through by itself.
page-counter-sold-here = SOLD HERE
page-counter-gone-here = GONE HERE
page-counter-sold-here-waits = [slip]: recorded on this device and not sent yet. It goes through by itself when the line is back. Do not sell it again.
page-counter-sold-here-went = [slip] has gone through. Do not sell it again.
page-counter-sold-here-more = sold here, not sent yet
page-place-now = now
page-place-cleaned-last = Cleaned down last: { $at }, by { $by }.
page-place-keep-reading = Keep the reading
page-place-failed-do = Judge what stood in it
# The report of a recall.
report-title = Recall { $number }
report-drill-title = DRILL { $number }: nothing was held
report-told-by = Told by { $by }, { $at }: { $hazard }.
report-told-at-only = Told { $at }, by whom is not noted yet: { $hazard }.
report-as-of = Everything recorded until { $at } is in it.
report-book = By the book at the call: { $lots ->
    [one] { $lots } lot
   *[other] { $lots } lots
  }, { $packs ->
    [one] { $packs } pack
   *[other] { $packs } packs
  }, { $weight }.
report-found = Count: { $missing } missing, { $surplus } more than the book; { $back } brought back by customers.
report-ended = Since: { $destroyed } destroyed, { $returned } sent back, { $gone } gone otherwise; { $left } still there.
report-open = Nobody has counted { $uncounted } of { $packs ->
    [one] { $packs } pack.
   *[other] { $packs } packs.
}
report-scope-digest = Scope, question and answer (SHA-256): { $digest }
report-record-digest = The record as it was (SHA-256): { $digest }
report-anchor = Anchor of the record: { $line }
report-clock = The clock
report-what = what
report-when = when
report-after = after the call
report-at-once = at once
report-not-known-yet = what it is about is not known yet
report-later = { $hours } h { $minutes } min
report-lots = lots in scope
report-lot = lot
report-because = because
report-went = where it went
report-since = since the call
report-sum-book = by the book
report-sum-missing = missing
report-sum-surplus = more than the book
report-sum-back = brought back
report-sum-destroyed = destroyed
report-sum-returned = sent back
report-sum-gone = gone otherwise
report-sum-left = still there
report-disposed-so-far = disposed of so far: { $weight }
report-made = made
report-on-hand = on hand
report-agrees = Counted, and nothing left
report-not-counted = { $packs ->
    [one] { $packs } pack not counted
   *[other] { $packs } packs not counted
}
report-still-there = { $weight } still there
report-differences = what differs from the book
report-pack = pack
report-place = place
report-found-at = found at { $place }
report-opened = opened
report-no-difference = Every pack was found as the book has it.
report-disposals = what became of it
report-weight = weight
report-witness = witness, place, paper
report-document = paper
report-who = who
report-discarded = destroyed
report-returned = sent back
report-released = let go
report-put-right = put right
report-reworked = worked on by permission
report-no-disposals = Nothing was disposed of.
report-people = whom to call
report-farm = farm
report-abattoir = abattoir
report-supplier = supplier
report-customer = customer
report-told-at = told
report-not-told = not told
report-answered = answered
report-no-people = Nobody one step back or forward is on record.
report-how-much = packs
report-sold = sold, by day and hour
report-hour = { $day }, { $from } to { $until } h
report-packs = { $packs ->
    [one] { $packs } pack
   *[other] { $packs } packs
}
report-buyers = buyers on record
report-nothing-sold = Nothing of it was sold.
report-outside = left out, and why
report-nothing-outside = None.
report-decisions = what was decided and told
report-begun = begun
report-scoped = scope said anew
report-shown = shown to guests
report-hidden = no longer shown to guests
report-closed = closed
report-disposed = disposed of
report-notices = the notices
report-to-customers = to customers
report-on-shelf = on the shelf
report-picture = the family by day and step
report-signatures = signed
report-name = name
report-signature = signature
report-day = day
report-sign-lead = led by
report-sign-count = counted by
report-sign-witness = witness
report-sign-authority = authority
report-page-of = Page { $page } of { $of }
report-entry = entry
report-entry-received = received
report-entry-made = made of
report-entry-shipped = shipped
report-entry-sold = sold
report-entry-on-hand = on hand
report-entry-destroyed = destroyed
report-entry-returned = sent back
report-entry-missing = missing
report-grams = grams
report-from = from
report-from-address = address it came from
report-from-lot = their lot, carcass or tag
report-killed-on = killed on
report-to = to, or seen by
report-input-lot = lot that went in
report-input = what went in
report-input-grams = grams that went in
report-responsible = made, stored and labelled by
report-moment = day and time
report-number-of-packs = packs
report-with-rows = { $heading } [{ $rows }]
notice-title = { $place ->
    [eu] Product recall
    [uk] Product recall
    [ca] Food recall
   *[other] Recall
}
notice-what = { $kitchen } asks you not to eat: { $names }.
notice-codes = On the label: { $codes }.
notice-sold-on = Sold on { $day }.
notice-sold-between = Sold from { $from } to { $until }.
notice-why = { $hazard ->
    [residue] Why: the meat may hold a residue that is not allowed in food. Cooking does not take it away.
    [pathogen] Why: it may hold germs that make people ill.
    [allergen] Why: it may hold an allergen that its label does not name.
    [foreign-body] Why: something that is not food may be in it.
    [temperature] Why: it may not have been kept cold or hot enough.
    [label] Why: its label is wrong.
   *[other] Why: it may not be safe.
}
notice-deed = Bring it back, or throw it away. We take it back without a receipt.
notice-at-home = What you froze, or made of it at home, is meant as well. If you feel ill, ask a doctor.
notice-ask = Ask us: { $kitchen }, { $address }
notice-shelf = No longer on sale: { $names }.
notice-shelf-deed = Did you buy it here? Bring it back, or throw it away.
notice-drill = DRILL: not to be put up.

## Spreadsheets of an archive

sheet-lot = Lot
sheet-product = Product
sheet-made-at = Made
sheet-made-by = Made by
sheet-deed = Deed
sheet-person = Who
sheet-note = Note
sheet-voided = Taken back
sheet-packs = Packs
sheet-allergens = Contains
sheet-may-contain = May contain
sheet-species = Species
sheet-made-grams = Made, g
sheet-taken-back-grams = Taken back from customers, g
sheet-used-grams = Used, g
sheet-sold-grams = Sold, g
sheet-served-grams = Served, g
sheet-discarded-grams = Discarded, g
sheet-shipped-grams = Shipped, g
sheet-returned-grams = Returned to the supplier, g
sheet-lost-grams = Lost, g
sheet-unexplained-grams = Unexplained, g
sheet-on-hand-grams = On hand, g
sheet-use-by = Use by
sheet-farm = Farm
sheet-killed-on = Killed
sheet-carcass = Carcass
sheet-supplier = Supplier
sheet-supplier-lot = Supplier’s lot
sheet-pack = Pack
sheet-left-grams = Left, g
sheet-is = Is
sheet-place = Place
sheet-state = Kept
sheet-animal = Animal
sheet-abattoir = Abattoir
sheet-tag = Tag
sheet-head = Head
sheet-what = What
sheet-at = When
sheet-recorded-at = Recorded
sheet-voided-because = Taken back because
sheet-recall = Recall
sheet-hazard = Hazard
sheet-drill = Drill
sheet-told-by = Told by
sheet-told-at = Told
sheet-why = Why
sheet-closed-at = Closed
sheet-paper = Paper
sheet-file = File
sheet-kind = Kind
sheet-name = Name
sheet-bytes = Bytes
sheet-sha256 = SHA-256
sheet-belongs = Belongs to
sheet-thinned = Thinned
sheet-yes = yes

## Copies of the record

copies-folder = the folder of copies cannot be read or written, or has no copy
copies-record = the record could not be read
copies-unsound = what was copied is not sound
copies-key = the key is missing, or it is another one
copies-apart = the copy and the record have gone different ways
copies-every-days = { $days ->
    [one] every day
   *[other] every { $days } days
}
copies-every-hours = { $hours ->
    [one] every hour
   *[other] every { $hours } hours
}
copies-every-minutes = { $minutes ->
    [one] every minute
   *[other] every { $minutes } minutes
}
copies-keeps = the last one of each of { $days } days, { $weeks } weeks and { $months } months
copies-length = { $megabytes } MB
copies-took = { $seconds } s
page-copies = Copies of the record
page-copies-on-time = Copies are made as they should be.
page-copies-late = The copy is late.
page-copies-failed = The last copy came to nothing.
page-copies-off = No copies are made by themselves.
page-copies-untried = Nobody has tried a copy for a quarter of a year.
page-copies-last = Last good copy
page-copies-tried = Last tried with success
page-copies-never = never
page-copies-every = How often
page-copies-kept = Kept
page-copies-folder = Folder
page-copies-lock = Lock
page-copies-locked = Under lock: nobody opens them without the key
page-copies-open = Open: who has the folder can read them
page-copies-where = The record is in
page-copies-since = Since
page-copies-made = begun there
page-copies-restored = restored from a copy
page-copies-moved = found there, copied or moved
page-copies-record = Its identity, in every copy
page-copies-set-up = To have them made by themselves, name a folder on another disk where the service is started, and a key:
page-copies-try = To try the newest copy, which changes nothing:
page-copies-came = What came of the last ones
page-copies-none = No copy is known here yet.
page-copies-at = When
page-copies-what = What
page-copies-copy = copy
page-copies-drill = trial
page-copies-outcome = What came of it
page-copies-good = good
page-copies-file = File
page-copies-length = Length
page-copies-took = Took
