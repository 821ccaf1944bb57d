# Tout ce que Gambrel dit à une personne, en français. Mêmes clés que en.ftl.
# Arguments : {$left}, etc. Poids, températures et jours viennent dans les unités du lecteur.

## General

as-written = { $text }
list-and = et
list-or = ou

## Words of the vocabularies (one key a word: NameOfTheVocabulary-word)

Being-on-hand = en stock
Being-open = entamé
Being-used = utilisé
Being-sold = vendu
Being-served = servi
Being-discarded = jeté
Being-shipped = expédié
Being-returned = renvoyé
Being-missing = manquant
Being-void = annulé

## Rows and findings

finding-with-sources = { $says } ({ $sources })
source-row = { $row }
source-second-hand = { $row } (de seconde main)
source-memory = { $row } (de mémoire, non confirmé)
source-common-practice = { $row } (usage courant, sans source)
source-house = { $row } (règle de la maison)
source-product-list = la liste de produits de la cuisine
source-practice = usage courant, sans source

## Refusals and drawing from packs (lot, deed, refusal, code, moment, series)

## Counter's verdicts

## Printing

## Dates

## Release

release-unmet = { $unmet }
release-alarm = Une alarme n'est pas signée. { $alarm }
release-not-ready = { $lot } n'est pas prêt. { $unmet }

## Cures and brine

cure-deed-caution = Les sels nitrités sont un poison en excès : quelques grammes de trop peuvent tuer. Pesez-les, jamais à la cuillère ; gardez-les sous clé ; faites vérifier la pesée par une deuxième personne. Ces chiffres sont une aide : la réglementation locale, votre plan approuvé et la personne responsable décident.
cure-deed-refused = { $findings } { cure-deed-caution }

## Cure room

## Yields and cost

## Statements: ingredients, allergens, dates in words

## Heat and cooling

heat-deed-short = { $findings } Continuez et mesurez de nouveau, ou inscrivez ce qui en est sorti comme un produit cru.

## Trichinae

trichinae-deed-short = { $findings }

## Stability and vacuum

stable-of = { $lot } : { $says }

## Duties

## GS1

## Problems, requests, lists

## Pages

## Labels
