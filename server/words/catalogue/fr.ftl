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

## Why, yield and cost of a lot

why-frozen = Les paquets congelés n'ont pas de date ; il leur reste { $days ->
        [one] { $days } jour
       *[other] { $days } jours
    } une fois décongelés, le jour de la décongélation compris.
why-since = Depuis, un paquet a été ouvert ou décongelé : { $day }.
why-opened-or-thawed = ouvert ou décongelé
yield-no-style = La liste ne dit pas comment { $product } est découpé (cut_style) ou cuit (process) : rien à comparer.
yield-nothing-cut = Rien n'y a encore été découpé. Découpez d'abord.
cost-of-paid = { $product } { $lot } : { $amount } payé pour { $grams }.
cost-of-nothing = { $product } { $lot } : aucun prix inscrit, compté pour rien.
cost-of-no-price = { $product } { $lot } : aucun prix inscrit. Inscrivez ce qui a été payé (price_minor) avec sa réception.
cost-of-share-by-value = { $lot } : { $share } sur { $of } que son étape a coûté, selon le prix de vente de chaque morceau.
cost-of-share-by-weight = { $lot } : { $share } sur { $of } que son étape a coûté, selon le poids.

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

## Why there is no label

label-refused-not-lawful = { $lot } n'est pas étiqueté pour la vente : { $finding }

## Labels
