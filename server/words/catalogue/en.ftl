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

## Labels
