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
DeedKind-break-down = découpe de la carcasse
DeedKind-cut = coupe
DeedKind-cure = salaison
DeedKind-turn = retournement
DeedKind-rinse = rinçage
DeedKind-equalise = repos du sel
DeedKind-hang = suspension
DeedKind-smoke = fumage
DeedKind-cook = cuisson
DeedKind-chill = refroidissement
DeedKind-grind = hachage
DeedKind-mix = mélange
DeedKind-render = fonte
DeedKind-portion = portionnement
DeedKind-pack = emballage
DeedKind-receive = réception
DeedKind-move = déplacement
DeedKind-sell = vente
DeedKind-serve = service
DeedKind-discard = mise au rebut
DeedKind-ship = expédition
DeedKind-return = renvoi
DeedKind-take-back = reprise
DeedKind-measure = relevé
DeedKind-count = comptage
DeedKind-release = libération
DeedKind-clean-down = nettoyage
DeedKind-void = annulation
DeedKind-correct = correction
DeedKind-print = impression
DeedKind-settle-print = constat d'impression
DeedKind-cancel-print = annulation d'impression
PrintState-waiting = attend l'imprimante
PrintState-sending = est en cours d'envoi à l'imprimante
PrintState-sent = l'imprimante l'a reçue
PrintState-printed = est sortie
PrintState-unsure = nul ne sait si elle est sortie : regardez et dites-le
PrintState-refused = l'imprimante ne la prend pas
PrintState-cancelled = annulée avant d'être imprimée
PrintState-spoilt = n'est pas sortie
Side-left = gauche
Side-right = droite
Side-whole = entière
Side-left-fore = avant gauche
Side-left-hind = arrière gauche
Side-right-fore = avant droite
Side-right-hind = arrière droite
Species-pig = porc
Species-cattle = bovin
Species-sheep = mouton
Species-goat = chèvre
Species-horse = cheval
Species-deer = cerf
Species-bison = bison
Species-boar = sanglier
Species-rabbit = lapin
Species-chicken = poulet
Species-turkey = dinde
Species-duck = canard
Species-goose = oie
Species-guinea-fowl = pintade
Species-quail = caille
Species-pheasant = faisan
Species-partridge = perdrix
Species-pigeon = pigeon
StepKind-break-down = découpe de la carcasse
StepKind-cut = coupe
StepKind-cure = salaison
StepKind-turn = retournement
StepKind-rinse = rinçage
StepKind-equalise = repos du sel
StepKind-hang = suspension
StepKind-smoke = fumage
StepKind-cook = cuisson
StepKind-chill = refroidissement
StepKind-grind = hachage
StepKind-mix = mélange
StepKind-render = fonte
StepKind-portion = portionnement
StepKind-pack = emballage

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

refusal-never-issued = { $lot } n'a jamais été attribué ici. Vérifiez l'étiquette et retapez le code.
moment-no-time = { $at } : cette cuisine n'a pas pu travailler à ce moment-là.
moment-future = { $at } est dans l'avenir ; l'horloge d'ici indique { $now }.
moment-ends-first = L'étape finirait ({ $end }) avant de commencer ({ $began }).
moment-long-ago = { $at } remonte à plus de { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 }. Ajoutez une note qui dit pourquoi c'est saisi seulement maintenant.
moment-not-made-yet = { $lot } a été fait { $made } ; on ne peut pas s'en servir { $at }.
moment-not-done-yet = L'acte date du { $done } ; on ne peut pas y toucher { $at }.
lot-not-released = { $lot } ({ $product }) est encore en salaison. Pesez-le et libérez-le d'abord ; le saloir montre ce qui manque.
draw-no-pack = Indiquez au moins un paquet.
draw-pack-twice = Le paquet { $pack } est indiqué deux fois.
draw-voided = { $lot } a été annulé. Retirez ses étiquettes et prenez le bon lot.
draw-no-such-pack = { $lot } a { $packs ->
    [one] un seul paquet
   *[other] { $packs } paquets, numérotés à partir de 1
 } ; il n'y a pas de paquet { $pack }.
draw-which-pack = { $lot } a plusieurs paquets en stock : { $packs }. Dites lequel.
draw-missing = { $pack } a été compté comme manquant. Comptez-le avant de vous en servir.
draw-emptied = Il ne reste rien de { $pack } : { $being }.
draw-nothing-left = Il ne reste rien de { $lot }.
draw-not-enough = Il reste { $left } de { $pack } ; { $asked } demandés.
draw-no-weight = { $grams } n'est pas un poids. Donnez ce que montre la balance, plus de { $none }.
draw-too-heavy = { $grams }, c'est plus que { $most }. Est-ce bien tapé ?
step-cannot-fill = { $grams } ne peuvent pas remplir { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 }.
step-packs-sum = Les paquets font { $sum } ; le lot pèse { $lot }.
step-pack-count = Un lot a de 1 à { $most } paquets, pas { $packs }.
step-too-many-packs = Une étape fait au plus { $most } paquets en tout.
step-nothing-in = Rien n'entre. Indiquez le lot que vous travaillez.
step-too-many-inputs = { $inputs } entrées ; une étape en prend au plus { $most }.
step-too-many-outputs = { $outputs } sorties ; une étape en fait au plus { $most }.
step-makes-something = Étape « { $kind } » : il en sort quelque chose. Pesez ce qui est sorti, déchets compris.
step-named-twice = { $pack } est indiqué deux fois dans cette étape.
step-two-scales-apart = Deux balances diffèrent d'au plus { $percent } % de ce qui entre : { $bound } sur { $inputs }, pas { $grams }.
step-more-out = { $out } sont sortis de { $inputs }. Repesez, ou indiquez ce qui a été ajouté (eau, glace, vapeur, écart de balances).
step-less-than-nothing = Un paquet ne peut pas contenir moins que rien.
step-past-date = { $pack } était à utiliser au plus tard le { $date }. Demandez avant de continuer.
step-frozen = { $pack } est inscrit comme congelé. Saisissez la décongélation, pour que ses jours soient comptés.
step-two-scales = { $grams } sont mis sur le compte de deux balances et restent inexpliqués.
receive-killed-later = Abattu le { $killed }, réceptionné le { $received }. L'une des deux dates est fausse.
receive-head = { $head ->
    [one] { $head } tête
   *[other] { $head } têtes
 } : impossible en une réception.
receive-new-animal = Ni numéro de carcasse ni boucle : c'est pris comme un nouvel animal, et un second côté ne pourra pas le rejoindre.
receive-supplier-past = La date du fournisseur est passée : { $date }. Ne l'utilisez pas.
receive-other-species = Espèce de { $product } : { $species } ; espèce de l'animal : { $animal }.
receive-side-known = Cette partie de l'animal ({ $side }) a été réceptionnée : { $lot }.
depart-taken-back = { $pack } est revenu d'un client. Il ne se vend plus jamais ; jetez-le.
depart-past-date = { $pack } était à utiliser au plus tard le { $date }. Il n'aurait pas dû sortir.
count-nothing = Dites pour chaque paquet ce qu'il pèse, ou qu'il manque.
count-twice = Le paquet { $pack } est compté deux fois.
count-too-much = { $pack } pesait { $made } à l'origine ; il ne peut pas contenir { $grams }.
count-unexplained = { $pack } : { $gap } inexpliqués.
correct-as-known = C'est déjà ce que dit le registre.
release-deed-no-rule = { $lot } n'a pas à être libéré : son produit n'a pas de règle de libération.
release-deed-already = { $lot } est déjà libéré.
release-deed-released = Libéré le { $day } par { $by } : { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } depuis le premier sel.
release-deed-released-lighter = Libéré le { $day } par { $by } : { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } depuis le premier sel, { $loss } % du poids frais perdus.
release-deed-rule = règle de libération
move-nowhere = Dites où il va (to), ou comment il est gardé maintenant (state).
take-back-not-sold = { $pack } n'est pas inscrit comme vendu : { $being }.
take-back-too-much = { $away } de { $pack } sont sortis ; { $grams } ne peuvent pas revenir.
void-of-void = Une annulation ne s'annule pas. Saisissez ce qui s'est vraiment passé comme un nouvel acte.
void-of-print = Des étiquettes demandées ne s'annulent pas ainsi. Annulez celles qui attendent, et dites des autres si elles sont sorties.
void-of-settlement = Ce que quelqu'un a vu à l'imprimante ne s'annule pas. Redemandez l'étiquette, en disant pourquoi.
void-of-cancellation = Une étiquette annulée le reste. Redemandez-la.
void-voided-before = Cet acte est déjà annulé.
void-used-since = Ce qu'il a fait a servi depuis. Annulez d'abord ces actes-là.
void-corrected-since = Il a été corrigé depuis. Annulez d'abord la correction.
void-pack-used-since = { $pack } a été pesé, compté ou utilisé depuis. Annulez d'abord cet acte-là.
weigh-several-packs = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 } ; seul un lot d'une pièce se pèse.
weigh-heavier = { $lot } pesait { $before } avant ; { $grams }, c'est plus. Est-ce la bonne pièce ?

## Counter's verdicts

verdict-elsewhere = C'est l'étiquette d'une autre cuisine.
verdict-misread = Un caractère de ce code est faux. Scannez-le ou retapez-le.
verdict-not-ours = Ce n'est pas une de nos étiquettes.
verdict-never-issued = { $lot } n'a jamais été attribué ici.
verdict-no-such-pack = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 } ; il n'y a pas de paquet { $pack }.
verdict-voided = Cette étiquette a été annulée. Retirez-le de la vitrine.
verdict-not-released = C'est encore en salaison. Rien ne s'en vend avant la libération.
verdict-nothing-left = Selon le registre, il ne reste rien de ce lot.
verdict-missing = Ce paquet a été compté comme manquant. Mettez-le de côté et prévenez le responsable.
verdict-gone = Selon le registre, ce paquet est déjà { $being }.
verdict-taken-back = Un client a rapporté ce paquet. Il ne se vend plus jamais.
verdict-past = Son dernier jour était { $date }. Retirez-le de la vitrine.
verdict-not-sold-here = Ceci ne se vend pas au comptoir.
verdict-last-day = Aujourd'hui, { $date }, est son dernier jour.
verdict-good = Bon jusqu'au { $date }.
verdict-frozen = Congelé, donc sans date. Décongelez-le et saisissez d'abord la décongélation.
verdict-no-date = Il devrait avoir une date et n'en a pas. Demandez au responsable.
verdict-no-last-day = Il n'a pas de dernier jour.

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

label-use-by = À CONSOMMER AVANT LE
label-use-by-day = À consommer avant le { $day }
label-use-within = À CONSOMMER SOUS
label-once-thawed = { $days ->
    [one] { $days } JOUR APRÈS DÉCONGÉLATION
   *[other] { $days } JOURS APRÈS DÉCONGÉLATION
 }
label-no-date = PAS ENCORE DE DATE
label-made = Fait le { $day }
label-frozen = CONGELÉ
label-frozen-on = Congelé le { $day }
label-ingredients = Ingrédients :
label-contains = Contient : { $names }
label-raw = CRU
label-ready-to-eat = PRÊT À MANGER
label-caution-raw = Cru. Bien cuire avant de manger. Laver mains, planche et couteau.
label-keep-chilled = Garder au réfrigérateur
label-keep-frozen = Garder congelé
label-keep-ambient = Garder au frais et au sec
label-keep-hot = Garder au chaud
label-cured = Salaison : sel
label-cured-nitrite = Salaison : sel, nitrite de sodium
label-cured-nitrate = Salaison : sel, nitrate de sodium
label-cured-both = Salaison : sel, nitrite de sodium, nitrate de sodium
label-received-heading = REÇU
label-received-at = Reçu le { $at }
label-received-cold = Reçu le { $at } · { $degrees }
label-killed = Abattu le { $day }
label-farm-killed = { $farm }, abattu le { $day }
label-carcass = Carcasse { $number }
label-tag = boucle { $tag }
label-their-lot = Lot fournisseur { $lot }
label-not-released = NON LIBÉRÉ
label-green = Poids frais { $weight }
label-salted = Salé le { $day }
label-turns = Retourner : { $days }
label-release = Libérer à { $target }
label-release-from = Libérer dès le { $day }
label-release-both = Libérer à { $target }, dès le { $day }
label-release-target = { $weight } (-{ $loss } %)
label-column-day = Jour
label-column-who = Qui
label-hold = BLOQUÉ
label-hold-caution = Ne pas utiliser, vendre ni déplacer.
label-released-on = Libéré le
label-by = Par
label-reprint = RÉIMPRESSION { $nth }
