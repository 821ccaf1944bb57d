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

## Counter's verdicts

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
