# Tout ce que Gambrel dit à une personne, en français. Mêmes clés que en.ftl.
# Arguments : {$left}, etc. Poids, températures et jours viennent dans les unités du lecteur.

## General

as-written = { $text }
list-and = et
list-or = ou

## Words of the vocabularies (one key a word: NameOfTheVocabulary-word)

Account-used = utilisé
Account-sold = vendu
Account-served = servi
Account-discarded = jeté
Account-shipped = expédié
Account-returned = renvoyé
Account-lost = perdu
Account-unexplained = inexpliqué
count-was-gone = { $pack } est inscrit comme { $being }, et se trouve ici. Personne ne sait où il était : il ne va nulle part tant qu’un responsable n’a pas dit en son nom ce qu’il devient. S’il est revenu, annulez ce comptage et saisissez une reprise ; si c’est un autre paquet qui est parti, corrigez la saisie.
count-was-used = { $pack } est inscrit comme utilisé en entier, et il en reste ici : ce reste compte de nouveau. Si c’est un autre paquet qui a été utilisé, corrigez la saisie.
count-was-missing = { $pack } manquait, et se trouve ici. Personne ne sait où il était ni à quelle température : il ne va nulle part tant qu’un responsable n’a pas dit en son nom ce qu’il devient. Si on l’a seulement manqué des yeux, et qu’il était toujours à sa place, annulez les deux comptages.
count-found = { $pack } était inscrit comme { $being }, et a été trouvé ici.
count-gone-already = { $pack } est déjà inscrit comme { $being }. Si c’est faux, annulez ce qui l’a pris.
Account-taken-back = repris
Account-moved = déplacé
Account-noted = noté
Allergen-milk = lait
Allergen-egg = œuf
Allergen-peanut = arachide
Allergen-soy = soja
Allergen-sesame = sésame
Allergen-mustard = moutarde
Allergen-celery = céleri
Allergen-lupin = lupin
Allergen-sulphites = sulfites
us-sulfites = sulfites
Allergen-wheat = blé
Allergen-spelt = épeautre
Allergen-rye = seigle
Allergen-barley = orge
Allergen-oats = avoine
Allergen-triticale = triticale
Allergen-almond = amande
Allergen-brazil-nut = noix du Brésil
Allergen-cashew = noix de cajou
Allergen-hazelnut = noisette
Allergen-macadamia = noix de macadamia
Allergen-pecan = noix de pécan
Allergen-pine-nut = pignon
Allergen-pistachio = pistache
Allergen-walnut = noix
Allergen-tree-nut = fruit à coque
Allergen-anchovy = anchois
Allergen-bass = bar
Allergen-cod = morue
Allergen-flounder = plie
Allergen-haddock = aiglefin
Allergen-hake = merlu
Allergen-herring = hareng
Allergen-mackerel = maquereau
Allergen-pollock = goberge
Allergen-salmon = saumon
Allergen-sardine = sardine
Allergen-sole = sole
Allergen-trout = truite
Allergen-tuna = thon
Allergen-fish = poisson
Allergen-crab = crabe
Allergen-crayfish = écrevisse
Allergen-lobster = homard
Allergen-prawn = crevette
Allergen-shrimp = crevette
Allergen-crustacean = crustacé
Allergen-clam = palourde
Allergen-mussel = moule
Allergen-octopus = pieuvre
Allergen-oyster = huître
Allergen-scallop = pétoncle
Allergen-snail = escargot
Allergen-squid = calmar
Allergen-mollusc = mollusque
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
DeedKind-equalise = mise au repos
DeedKind-hang = mise au séchoir
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
DeedKind-confirm-row = confirmation d’une ligne de la loi
DeedKind-adopt = prise sans étiquette
DeedKind-dispose = décision
DeedKind-hold = blocage
DeedKind-hold-release = déblocage
DeedKind-clean-down = nettoyage
DeedKind-check-probe = vérification de sonde
DeedKind-place-failed = panne de froid d’un lieu
DeedKind-void = annulation
DeedKind-correct = correction
DeedKind-print = impression
DeedKind-settle-print = constat d’impression
DeedKind-cancel-print = annulation d’impression
DeedKind-paper = document joint
DeedKind-thin = élimination de documents
PrintState-waiting = attend l’imprimante
PrintState-sending = est en cours d’envoi à l’imprimante
PrintState-sent = l’imprimante l’a reçue
PrintState-printed = est sortie
PrintState-unsure = nul ne sait si elle est sortie : regardez et dites-le
PrintState-refused = l’imprimante ne la prend pas
PrintState-cancelled = annulée avant d’être imprimée
PrintState-spoilt = n’est pas sortie
print-left-as-pdf = sortie en PDF
Side-left = gauche
Side-right = droite
Side-whole = entière
Side-left-fore = avant gauche
Side-left-hind = arrière gauche
Side-right-fore = avant droit
Side-right-hind = arrière droit
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
StepKind-equalise = mise au repos
StepKind-hang = mise au séchoir
StepKind-smoke = fumage
StepKind-cook = cuisson
StepKind-chill = refroidissement
StepKind-grind = hachage
StepKind-mix = mélange
StepKind-render = fonte
StepKind-portion = portionnement
StepKind-pack = emballage
Method-dry = à sec
Method-equilibrium-dry = à sec, à l’équilibre
Method-equilibrium-brine = en saumure, à l’équilibre
Method-immersion-pick-up = par immersion, selon la reprise
Method-immersion-equilibrium = par immersion, à l’équilibre
Method-pumped = par injection
Method-comminuted = en viande hachée
Packaging-vacuum = sous vide
Packaging-modified-atmosphere = sous atmosphère modifiée
Food-intact = muscle entier
Food-ground = viande hachée, injectée ou attendrie
Food-poultry = volaille ou farce
Food-roast = rôti entier
Food-microwaved = cru, cuit au micro-ondes
PiercedBy-stuffed = la farce
PiercedBy-said-stuffed = la farce
PiercedBy-filled = la farce
PiercedBy-ground = le hachage
PiercedBy-pumped = l’injection de saumure
PiercedBy-bladed = les lames ou les aiguilles
Holding-cold = froid
Holding-hot = chaud
Holding-hot-roast = rôti tenu au chaud
Holding-barbecued-cold = barbecue, au froid
Holding-barbecued-hot = barbecue, au chaud
Holding-refrigerated = réfrigéré
Holding-eggs = œufs
Holding-receiving = réception
Holding-receiving-meat = viande crue à la réception
Holding-receiving-poultry = volaille crue à la réception
Holding-receiving-offal = abats crus à la réception
Holding-receiving-preparation = préparation crue à la réception
Holding-receiving-mince = haché cru à la réception
Holding-receiving-frozen = congelé à la réception
Holding-thaw-water = eau de décongélation
Holding-thaw-ready-to-eat = décongélation de prêt-à-manger
Holding-mince = viande hachée
Holding-frozen-mince = viande hachée congelée
Holding-bath = bain de cuisson
Holding-chicken-bath = bain de cuisson du poulet
Holding-sous-vide-store = conservation sous vide
CureFigure-salt = sel sur la viande, %
CureFigure-mix-salt = sel dans le mélange de salaison, %
CureFigure-brine-salt = sel dans l’eau de la viande à la fin, %
CureFigure-salometer = saumure au pèse-sel, °
CureFigure-pickle = saumure pour 100 de viande
CureFigure-piece = plus gros morceau, mm
CureFigure-mass = hauteur de la masse en salaison, mm
CureFigure-overhauls = resalages
StageKind-cure = salaison
StageKind-contact = contact avec le sel
StageKind-equalise = repos
StageKind-soak = dessalage
StageKind-rinse = rinçage
StageKind-hold = étuvage
StageKind-smoke = fumage
StageKind-dry = séchage
Way-carcass-tested = carcasse analysée
Way-negligible-risk-herd = élevage à risque négligeable
Way-unweaned = porcelet non sevré
Fact-sterile-hermetic = stérile en emballage hermétique
Fact-packed-in-salt = emballé dans le sel
Fact-packed-in-brine = emballé dans la saumure
Fact-fermented = fermenté
Fact-plant-cured = salé dans un établissement inspecté
Fact-raw-meat = viande crue
Measure-ph = pH
Measure-water-activity = activité de l’eau
Measure-salt-in-water = sel dans l’eau de l’aliment, %
Measure-brine = sel dans la saumure, %
Work-smoke-to-keep = fumage de conservation
Work-smoke-for-flavour = fumage d’aromatisation
Work-cure = salaison
Work-additive-to-keep = additif de conservation
Work-reduced-oxygen = emballage sous oxygène réduit
Work-reduced-oxygen-listed = emballage sous oxygène réduit, cas listé
Work-custom-processing = travail à façon
Work-shellfish-tank = vivier à coquillages
Work-sprouting = germination
Work-manufactured-meat = transformation de viandes
Work-other-named = autre travail que nomme l’autorité
BannedFrom-food = denrées
BannedFrom-mince = viande hachée
BannedFrom-meat-product = produits à base de viande
BannedFrom-uncooked-product = produits de viande non cuits
Shared-born = pays de naissance
Shared-reared = pays d’élevage
Shared-slaughtered = pays d’abattage
Shared-slaughterhouse = abattoir
Shared-cutting-plant = atelier de découpe
MinceKind-lean = maigre
MinceKind-beef = pur bœuf
MinceKind-with-pork = contenant du porc
MinceKind-other = autres espèces
Part-hind-leg = cuisse
Part-shoulder = épaule
Part-loin = longe
Part-belly = poitrine
Part-shank = jarret
Part-trim = parures
Part-jowl = joue
Part-feet = pieds
Part-other = autre
Head-cattle = bovin
Head-calf = veau
Head-sheep = mouton
Head-pig = porc
Head-goat = chèvre
Record-ground-beef-log = bœuf haché
Record-farm-direct = achat à la ferme
Record-one-off-purchase = achat ponctuel
Record-listed-food = aliment de la liste
Record-listed-receiving = réception d’un aliment de la liste
Record-listed-receiving-exempt = réception d’un aliment de la liste, fournisseur exempté
Record-listed-inputs = entrées d’aliments de la liste
Record-listed-output = sortie d’un aliment de la liste
Record-listed-shipping = expédition d’un aliment de la liste
Record-one-up-one-down = un maillon avant, un maillon après
Record-reduced-oxygen-log = oxygène réduit
Record-trace-to-business = traçabilité vers les entreprises
Record-trace-retail = traçabilité au détail
Record-pig-report = déclaration de porcs
Record-recall-drill = exercice de rappel
Record-recall = rappel
Record-complaint = plainte
Record-trichinae-treatment = traitement contre la trichine
Record-ontario-meat = viandes transformées (en Ontario seulement)
Record-ontario-purchase = achats d’aliments (en Ontario seulement)
Record-animal-product = produit animal
Record-freeze-log = congélation
Record-meat-transaction = viandes achetées et vendues
Record-beef-label = étiquetage du bœuf
Record-meat-origin = origine des viandes
Basis-sodium-nitrite = nitrite de sodium
Basis-potassium-nitrite = nitrite de potassium
Basis-nitrite-ion = ion nitrite
Basis-sodium-nitrate = nitrate de sodium
Basis-potassium-nitrate = nitrate de potassium
Basis-nitrate-ion = ion nitrate
Class-bacon = bacon
Class-whole-muscle = muscle entier
Class-comminuted = viande hachée
Class-dry-sausage = saucisson sec
Class-sterilised = produit stérilisé
Class-infant-food = aliment pour nourrissons
Class-wiltshire-bacon = bacon Wiltshire
Class-wiltshire-ham = jambon Wiltshire
Class-cured-tongue = langue en salaison
Class-dry-cured-bacon = bacon salé à sec
Class-dry-cured-ham = jambon salé à sec
Class-jamon = jambon sec (genre jamón)
Class-jambon-sec = jambon sec (genre français)
Class-rohschinken = jambon cru (genre Rohschinken)
Class-jellied-meat = viande en gelée
Class-immersed-bacon = bacon immergé
Class-spreadable-sausage = saucisson à tartiner
Class-preparation = préparation de viande
Class-named-preparation = préparation de viande nommée par la loi
Class-portuguese-salted = pièce salée portugaise
Class-smoked-reindeer = renne fumé à froid
Class-ripened-sausage = saucisse crue de longue maturation
Class-saucisson-sec = saucisson sec
Class-czech-salami = salami sec tchèque
Class-swedish-christmas = jambon ou pâté de Noël suédois
Salometer-60F = 60 °F
Salometer-38F = 38 °F
Salometer-25-percent = 25 % de sel
State-chilled = réfrigéré
State-frozen = congelé
State-ambient = température ambiante
State-hot = tenu au chaud
Verdict-sell = VENDRE
Verdict-sell-today = VENDRE AUJOURD’HUI
Verdict-not-for-sale = PAS À VENDRE
Verdict-gone = DÉJÀ PARTI
Verdict-pull = RETIRER
Verdict-hold = BLOQUÉ
Verdict-unknown = PAS DE CHEZ NOUS

## Rows and findings

finding-with-sources = { $says } ({ $sources })
source-row = { $row }
source-second-hand = { $row } (de seconde main)
source-memory = { $row } (de mémoire, non confirmé)
source-common-practice = { $row } (usage courant, sans source)
source-house = { $row } (règle de la maison)
source-only-in = en { $place } : { $source }
source-product-list = la liste de produits de la cuisine
source-practice = usage courant, sans source

## Refusals and drawing from packs (lot, deed, refusal, code, moment, series)

refusal-never-issued = { $lot } n’a jamais été attribué ici. Vérifiez l’étiquette et retapez le code.
moment-no-time = { $at } : cette cuisine n’a pas pu travailler à ce moment-là. Vérifiez la date et l’heure.
moment-future = { $at } est dans l’avenir ; l’horloge d’ici indique { $now }. Vérifiez l’heure saisie.
moment-ends-first = L’étape finirait ({ $end }) avant de commencer ({ $began }). Vérifiez les deux heures.
moment-long-ago = { $at } remonte à plus de { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 }. Ajoutez une note qui dit pourquoi c’est saisi seulement maintenant.
moment-not-made-yet = { $lot } a été fait le { $made } ; on ne peut pas s’en servir le { $at }.
moment-not-done-yet = L’acte date du { $done } ; on ne peut pas y toucher le { $at }. Vérifiez l’heure saisie.
adopt-other-product = { $pack } est { $product }. Est-ce bien ce paquet ?
adopt-heavier = { $pack } pesait { $made } à l’origine, et { $grams }, c’est plus : c’est un autre pot. Reprenez-le sans dire de quel paquet il s’agit.
adopt-not-missing = { $pack } ne manque pas : il est { $being }. Comptez-le d’abord comme manquant, ou prenez le pot sans nommer de paquet.
adopt-print-again = Imprimez de nouveau l’étiquette de { $pack } et collez-la.
adopt-taken-as-raw = Personne ne sait ce qui lui est arrivé : il compte comme cru
adopt-taken-as-treated = Personne ne sait ce qui lui est arrivé : il n’est pas prêt à manger
adopt-age-unknown = Personne ne sait son âge : le jour où il a été trouvé est son dernier
adopt-not-told = Personne n’a dit quels allergènes il contient. Corrigez l’opération qui l’a pris en compte et dites-les tous, ou qu’il n’y en a aucun ; d’ici là, aucun client n’en reçoit.
adopt-not-the-contents = D’un pot sans étiquette, on ne peut dire que ce qu’il contient : ses allergènes, ses ingrédients, ce qui peut s’y trouver. Laissez le reste, et annulez la reprise si c’est un autre pot.
adopt-found = Trouvé sans étiquette : { $why }.
draw-no-pack = Indiquez au moins un paquet.
draw-pack-twice = Le paquet { $pack } est indiqué deux fois. Indiquez-le une fois.
draw-voided = { $lot } a été annulé. Retirez ses étiquettes et prenez le bon lot.
draw-no-such-pack = { $lot } a { $packs ->
    [one] un seul paquet
   *[other] { $packs } paquets, numérotés à partir de 1
 } ; il n’y a pas de paquet { $pack }. Regardez le numéro sur le paquet.
draw-which-pack = { $lot } a plusieurs paquets en stock : { $packs }. Dites lequel.
draw-missing = { $pack } a été compté comme manquant. Comptez-le avant de vous en servir.
draw-emptied = { $pack } n’a plus rien : il est { $being }. Relisez l’étiquette ; s’il est là quand même, comptez-le d’abord.
draw-nothing-left = { $lot } n’a plus rien. Relisez l’étiquette ; s’il en reste ici quand même, comptez-le d’abord.
draw-not-enough = { $pack } n’a plus que { $left } ; on en demande { $asked }. Saisissez ce qu’il y a ; s’il y en a plus, comptez-le d’abord.
draw-no-weight = { $grams } n’est pas un poids. Donnez ce que montre la balance, plus de { $none }.
draw-too-heavy = { $grams }, c’est plus que { $most }. Est-ce bien tapé ?
step-cannot-fill = { $grams }, c’est trop peu pour remplir { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 }. Repesez, ou faites moins de paquets.
step-packs-sum = Les paquets font { $sum } ; le lot pèse { $lot }. Repesez.
step-pack-count = Un lot a de 1 à { $most } paquets, pas { $packs }.
step-too-many-packs = Une étape fait au plus { $most } paquets en tout.
step-nothing-in = Rien n’entre. Indiquez le lot que vous travaillez.
step-too-many-inputs = { $inputs } entrées ; une étape en prend au plus { $most }.
step-too-many-outputs = { $outputs } sorties ; une étape en fait au plus { $most }.
step-makes-something = Étape « { $kind } » : il en sort quelque chose. Pesez ce qui est sorti, déchets compris.
step-named-twice = { $pack } est indiqué deux fois dans cette étape. Indiquez-le une fois, avec tous ses grammes.
step-two-scales-apart = Deux balances diffèrent d’au plus { $percent } % de ce qui entre : { $bound } sur { $inputs }, pas { $grams }. Repesez.
step-more-out = { $out } sont sortis de { $inputs }. Repesez, ou indiquez ce qui a été ajouté (eau, glace, vapeur, écart de balances).
step-less-than-nothing = Un paquet ne peut pas contenir moins que zéro. Saisissez de nouveau son poids.
part-of = { $product } ({ $pack })
step-dried-as-raw = { $product } sèche et a l’air prêt à manger, mais la liste des produits le dit cru : les trichines ne sont pas demandées. Si quelqu’un le mange sans le cuire, corrigez le produit : pas cru, et à libérer. S’il est cuit d’abord, donnez au produit ses consignes de cuisson.
step-frozen = { $pack } est inscrit comme congelé. Saisissez la décongélation, pour que ses jours soient comptés.
step-two-scales = { $grams } sont mis sur le compte de deux balances et restent inexpliqués.
receive-killed-later = Abattu le { $killed }, réceptionné le { $received }. L’une des deux dates est fausse. Regardez l’étiquette et saisissez de nouveau.
receive-killed-long-ago = Abattu le { $killed }, réceptionné le { $received } : des années plus tard. L’une des deux dates est fausse. Regardez l’étiquette et saisissez de nouveau.
receive-head = { $head ->
    [one] { $head } tête
   *[other] { $head } têtes
 } : impossible en une réception. Saisissez l’arrivage en plusieurs réceptions.
receive-new-animal = Ni numéro de carcasse ni boucle : c’est pris comme un nouvel animal, et un second côté ne pourra pas le rejoindre.
receive-raw-on-the-list = Le paquet est saisi comme prêt à manger, mais la liste des produits dit cru : { $product }. Regardez le paquet. S’il est cru, corrigez cette réception.
receive-supplier-past = La date du fournisseur est passée : { $date }. Ne l’utilisez pas.
receive-not-told = { $product } se compose de plusieurs choses, et personne n’a dit quels allergènes s’y trouvent. Lisez le paquet, corrigez cette réception et dites-les tous, ou qu’il n’y en a aucun, avec ses ingrédients ; d’ici là, aucun client n’en reçoit.
receive-other-species = Espèce de { $product } : { $species } ; espèce de l’animal : { $animal }. Choisissez le produit de cet animal, ou rectifiez son espèce.
receive-side-known = Cette partie de l’animal ({ $side }) a été réceptionnée : { $lot }. Regardez l’étiquette ; si la première réception est fausse, corrigez-la.
depart-to-nobody = Aucun destinataire n’est indiqué : un rappel ne pourrait pas le joindre. Annulez et saisissez de nouveau avec le nom.
depart-taken-back = { $pack } est revenu d’un client. Il ne se vend plus jamais ; jetez-le.
count-nothing = Dites pour chaque paquet ce qu’il pèse, ou qu’il manque.
count-twice = Le paquet { $pack } est compté deux fois. Comptez-le une fois.
count-too-much = { $pack } pesait { $made } à l’origine, et { $grams }, c’est plus. Pesez-le encore sans sa boîte et regardez si c’est un autre paquet. Si l’on a emballé plus que saisi, annulez l’emballage et saisissez-le de nouveau. S’il pèse bien cela, saisissez-le tel quel.
count-heavier = { $pack } pesait { $made } à l’origine, et l’on y a trouvé { $grams } : il peut y avoir autre chose dedans.
count-unexplained = { $pack } : { $gap } inexpliqués.
correct-as-known = C’est déjà ce que dit le registre. Si autre chose est faux, corrigez cela.
release-deed-no-rule = { $lot } n’a pas à être libéré : son produit n’a pas de règle de libération. Continuez sans.
release-deed-already = { $lot } est déjà libéré. Continuez : rien ne manque.
release-deed-released = Libéré le { $day } par { $by } : { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } depuis le premier sel.
release-deed-released-lighter = Libéré le { $day } par { $by } : { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } depuis le premier sel, { $loss } % du poids frais perdus.
release-deed-rule = règle de libération
move-too-warm = { $lot } ({ $product }) est prêt à manger et se garde au froid : rien au dossier ne montre qu’il se garde à température ambiante. Saisissez un pH ou une activité de l’eau qui le montre, inscrivez une approbation au dossier, ou laissez-le au froid.
move-raw-too-warm = { $lot } ({ $product }) se garde au froid : dans un aliment cru laissé au chaud, certaines bactéries laissent des toxines qu’aucune cuisson ne détruit. Laissez-le au froid jusqu’à la cuisson ou au salage.
move-cools-unseen = Cela passe du chaud au froid, et aucun relevé ne montre en combien de temps cela s’est refroidi. Saisissez les mesures avec une étape de refroidissement : sans elles, rien ne distingue ce qui s’est refroidi trop lentement.
move-nowhere = Dites où il va (to), ou comment il est gardé maintenant (state).
take-back-came-back = Un client a eu { $pack }, et personne ne sait comment il a été gardé. Jetez-le. Il ne se revend pas et ne sert plus, sauf si un responsable le laisse passer en son nom, avec la raison.
take-back-not-sold = { $pack } n’est pas inscrit comme vendu : { $being }. Regardez le numéro du paquet ; s’il est sorti sans être scanné, saisissez d’abord la vente.
take-back-too-much = { $away } de { $pack } sont sortis ; { $grams } ne peuvent pas revenir. Repesez, ou reprenez aussi l’autre paquet.
void-of-void = Une annulation ne s’annule pas. Saisissez ce qui s’est vraiment passé comme un nouvel acte.
void-of-print = Des étiquettes demandées ne s’annulent pas ainsi. Annulez celles qui attendent, et dites des autres si elles sont sorties.
void-of-settlement = Ce que quelqu’un a vu à l’imprimante ne s’annule pas. Redemandez l’étiquette, en disant pourquoi.
void-of-cancellation = Une étiquette annulée le reste. Redemandez-la.
void-voided-before = Cet acte est déjà annulé.
void-used-since = Ce qui en est sorti a servi depuis. Annulez d’abord ces actes-là.
void-corrected-since = Il a été corrigé depuis. Annulez d’abord la correction.
void-pack-used-since = { $pack } a été pesé, compté ou utilisé depuis. Annulez d’abord cet acte-là.
weigh-several-packs = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 } ; seul un lot d’une pièce se pèse. Comptez plutôt ses paquets.
weigh-heavier = { $lot } pesait { $before } avant ; { $grams }, c’est plus. Est-ce la bonne pièce ?

## Counter's verdicts

verdict-elsewhere = C’est l’étiquette d’une autre cuisine.
verdict-misread = Un caractère de ce code est faux. Scannez-le ou retapez-le.
verdict-not-ours = Ce n’est pas une de nos étiquettes.
verdict-part = Ce n’est qu’une partie d’un code : { $lots ->
    [one] un lot la porte.
   *[other] { $lots } lots la portent.
  } Touchez le bon, ou tapez la suite.
verdict-of-the-till = C’est le numéro de caisse de { $product }, qui ne dit rien du paquet. Lisez le code carré à côté.
verdict-never-issued = { $lot } n’a jamais été attribué ici.
verdict-no-such-pack = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 } ; il n’y a pas de paquet { $pack }.
verdict-voided = Cette étiquette a été annulée. Retirez le paquet de la vitrine.
verdict-not-released = C’est encore en salaison. Rien ne s’en vend avant la libération.
verdict-clock-in-doubt = L’horloge est en doute : on ne peut se fier à aucune date. Ne vendez rien d’après sa date avant qu’un responsable ait regardé.
verdict-made-ahead = Ceci a été enregistré pendant que l’horloge était fausse : on ne peut se fier à sa date. Mettez-le de côté et prévenez le responsable.
verdict-nothing-left = Selon le registre, il ne reste rien de ce lot.
verdict-missing = Ce paquet a été compté comme manquant. Mettez-le de côté et prévenez le responsable.
verdict-gone = Selon le registre, ce paquet est déjà { $being }.
verdict-taken-back = Un client a rapporté ce paquet. Il ne se vend plus jamais.
verdict-past = Son dernier jour était { $date }. Retirez-le de la vitrine.
verdict-not-sold-here = Ceci ne se vend pas au comptoir.
verdict-last-day = Aujourd’hui, { $date }, est son dernier jour.
verdict-stands-warm = Regardez d’abord : { $place } affichait { $read } au dernier relevé, et il faut { $limit }. Si c’est tiède, mettez-le de côté et demandez au responsable.
verdict-good = Bon jusqu’au { $date }.
verdict-frozen = Congelé, donc sans date. Décongelez-le et saisissez d’abord la décongélation.
verdict-no-date = Il devrait avoir une date et n’en a pas. Demandez au responsable.
verdict-no-last-day = Il n’a pas de dernier jour.

## Printing

printer-jammed = L’imprimante « { $printer } » a un bourrage : dégagez-la, puis regardez quelles étiquettes sont sorties. La file reprend toute seule.
printer-out-of-labels = L’imprimante « { $printer } » n’a plus d’étiquettes : mettez un rouleau, la file reprend toute seule.
printer-open = L’imprimante « { $printer } » est ouverte : fermez-la, la file reprend toute seule.
printer-out-of-ribbon = L’imprimante « { $printer } » n’a plus de ruban : mettez-en un, la file reprend toute seule.
printer-no-room = L’imprimante « { $printer } » n’a plus de place pour les étiquettes : retirez ce qui est imprimé, la file reprend toute seule.
printer-memory-full = L’imprimante « { $printer } » a la mémoire pleine : attendez un peu, la file reprend toute seule.
printer-paused = L’imprimante « { $printer } » est en pause : appuyez sur son bouton, la file reprend toute seule.
printer-off = L’imprimante « { $printer } » est éteinte ou débranchée : allumez-la, la file reprend toute seule.
printer-stopped-mute = L’imprimante « { $printer } » s’est arrêtée sans dire pourquoi : voyez ce qu’elle affiche, la file reprend toute seule.
printer-stopped = L’imprimante « { $printer } » s’est arrêtée. L’imprimante dit : « { $reasons } ». Voyez ce qu’elle affiche, la file reprend toute seule.
printer-worn-part = L’imprimante « { $printer } » demande qu’une pièce soit changée : voyez ce qu’elle affiche, la file reprend toute seule.
printer-wrong-heat = L’imprimante « { $printer } » est trop chaude ou trop froide pour imprimer : laissez-la un moment, la file reprend toute seule.
printer-busy = L’imprimante « { $printer } » est occupée : attendez un peu, la file reprend toute seule.
printer-locked = L’imprimante « { $printer } » demande un nom et un mot de passe, et ne prend pas d’étiquettes sans cela : enlevez-les dans ses propres réglages.
printer-takes-none = L’imprimante « { $printer } » ne prend pas d’étiquettes pour l’instant : voyez ce qu’elle affiche, la file reprend toute seule.
printer-no-answer = L’imprimante « { $printer } » ne répond pas : vérifiez qu’elle est allumée et sur le réseau. Les étiquettes attendent, et la file reprend toute seule.
printer-bad-answer = L’imprimante « { $printer } » a répondu de façon illisible : voyez ce qu’elle affiche. Les étiquettes attendent, et la file reprend toute seule.
printer-answers = L’imprimante « { $printer } » ne prend pas d’étiquette pour l’instant. L’imprimante dit : « { $words } ». Les étiquettes attendent, et la file reprend toute seule.
printer-stumbles = L’imprimante « { $printer } » ne prend pas une étiquette entière : sa mémoire est peut-être pleine, ou la liaison mauvaise. L’essai se refait tout seul.
printer-no-pin = Rien n’a été envoyé à l’imprimante « { $printer } » : personne n’a encore dit à quel certificat on la reconnaît. Elle montre celui de l’empreinte (SHA-256) { $seen }. Comparez-la avec ce que dit l’imprimante elle-même, sur son écran, sa configuration imprimée ou sa propre page ; si c’est la même, un responsable en fait celui de l’imprimante sur la page d’impression.
printer-stranger = Rien n’a été envoyé à l’imprimante « { $printer } » : elle montre un autre certificat, d’empreinte { $seen }, que celui auquel on la reconnaît, { $pinned }. Si l’imprimante en a reçu un nouveau, comparez-le avec ce qu’elle dit elle-même et faites-en le sien ; sinon, autre chose répond peut-être à sa place. Les étiquettes attendent.
printer-no-format = L’imprimante ne prend ni PDF ni trame PWG, seulement { $formats }.
printer-other-size = L’imprimante n’a pas de papier pour cette étiquette : il lui faut { $label } mm, et l’imprimante dit contenir { $sizes } mm. Mettez un rouleau de { $label } mm, ou choisissez une autre imprimante ou une autre étiquette.
printer-state-ready = prête
printer-state-ready-for-some = prête, mais pas pour toutes vos étiquettes
printer-state-printing = en cours d’impression
printer-state-stopped = arrêtée
printer-state-does-not-say = ne dit rien
printer-state-does-not-answer = ne répond pas
size-is = { $across } × { $along }
size-span = { $least } à { $most }
inches-size = { $inches } po ({ $millimetres } mm)
inches-paper-for-needs = { $purpose } : { $sizes }
inches-paper-for-test = L’étiquette d’essai : { $sizes }
inches-paper-for-has = Pour { $purpose } : elle a { $sizes }.
inches-paper-for-has-none = Pour { $purpose } : il manque { $sizes }.
inches-paper-for-unknown = Pour { $purpose } : { $sizes }, inconnu pour l’instant.
inches-printer-other-size = L’imprimante n’a pas de papier pour cette étiquette : il lui faut { $label }, et l’imprimante dit contenir { $sizes }. Mettez un rouleau de { $label }, ou choisissez une autre imprimante ou une autre étiquette.
inches-printer-test-no-paper = L’imprimante « { $printer } » dit contenir { $held } : aucune étiquette d’essai n’y va. Mettez un rouleau de { $sizes }, puis réessayez.
paper-for-needs = { $purpose } : { $sizes } mm
paper-for-test = L’étiquette d’essai : { $sizes } mm
paper-for-has = Pour { $purpose } : elle a { $sizes } mm.
paper-for-has-none = Pour { $purpose } : il manque { $sizes } mm.
paper-for-unknown = Pour { $purpose } : { $sizes } mm, inconnu pour l’instant.
paper-for-lacks = Elle dit n’avoir pas de papier pour : { $needs }. Mettez un tel rouleau avant d’imprimer ces étiquettes, ou imprimez-les sur une autre imprimante.
printer-address-none = « { $address } » n’est pas l’adresse d’une imprimante ; écrivez-la comme ipp://printer.local:631/ipp/print.
printer-address-not-encrypted = « { $address } » n’est pas une liaison chiffrée, la seule où une imprimante se reconnaît à son certificat ; écrivez-la comme ipps://printer.local:631/ipp/print, ou laissez le certificat de côté.
printer-address-not-ipp = « { $address } » ne commence ni par ipp:// ni par ipps:// ; écrivez-la comme ipp://printer.local:631/ipp/print.
printer-address-no-host = « { $address } » ne désigne aucune imprimante ; écrivez-la comme ipp://printer.local:631/ipp/print.
printer-address-secret = « { $address } » contient un nom avec mot de passe ou une question ; écrivez-la comme ipp://printer.local:631/ipp/print.
printer-address-no-port = « { $address } » n’a pas de port possible : de 1 à 65535, ou aucun ; écrivez-la comme ipp://printer.local:631/ipp/print.
print-lot-voided = { $lot } a été annulé depuis : son étiquette n’est pas imprimée.
print-not-drawn = L’étiquette ne peut pas être dessinée : { $cause }.
print-broken-off-empty = L’imprimante « { $printer } » a interrompu l’étiquette avant que quoi que ce soit ne sorte (sans dire pourquoi).
print-broken-off-empty-with = L’imprimante « { $printer } » a interrompu l’étiquette avant que quoi que ce soit ne sorte. L’imprimante dit : « { $words } ».
print-broken-off = L’imprimante « { $printer } » a interrompu l’étiquette (sans dire pourquoi) : regardez si elle est sortie, et dites-le.
print-broken-off-with = L’imprimante « { $printer } » a interrompu l’étiquette : regardez si elle est sortie, et dites-le. L’imprimante dit : « { $words } ».
print-vanished = L’imprimante « { $printer } » ne connaît plus cette étiquette : elle a été éteinte, ou elle oublie vite. Regardez si l’étiquette est sortie, et dites-le.
print-drawn-otherwise = L’impression { $print } a été dessinée par une autre version de ce programme, qui la dessinait autrement. Ce qu’elle disait reste au registre.
print-before = { $lot } : { $prints }. Une étiquette s’imprime une fois. S’il en faut une autre, dites pourquoi : elle portera la mention de réimpression.
print-before-by = { $packs }, le { $at }, par { $by }
print-pack = paquet { $pack }
print-packs = paquets { $packs }
print-run = { $first } à { $last }
print-no-place-for-mark = L’étiquette « { $label } » n’a pas de place pour la mention de réimpression. Choisissez-en une autre.
print-no-reprint = L’étiquette « { $label } » ne peut pas se faire en réimpression : { $cause }.
print-date-stands = Le paquet { $pack } a déjà été imprimé avec { $date } ; la réimpression montre cette date.
print-date-stands-though = Le paquet { $pack } a déjà été imprimé avec { $date } ; la réimpression montre cette date, bien que le registre dise maintenant { $now }.
print-deed-lot-or-step = Donnez un lot ou une étape, l’un des deux.
print-deed-packs-of-lot = Des paquets sont ceux d’un seul lot : donnez le lot.
print-deed-why-again = Dites pourquoi elle est réimprimée, pour qui le lira plus tard.
print-deed-no-lots = Cet acte n’a fait aucun lot, il n’a donc pas d’étiquettes.
print-deed-too-many = { $labels } étiquettes d’un coup ; demandez-les lot par lot, { $most } au plus.
print-deed-dots = L’imprimante « { $printer } » imprime { $dots } points par pouce ; les étiquettes sont faites pour 203, 300 ou 600.
print-deed-pack-named = Le lot désigne déjà un paquet. Ne donnez que l’un des deux.
print-deed-name-waiting = Indiquez au moins une impression qui attend.
print-deed-name-seen = Dites d’au moins une impression si elle est sortie.
print-deed-unknown = Aucune impression au registre n’a le numéro { $print }.
print-deed-waits-no-more = L’impression { $print } n’attend plus : { $state }.
print-deed-named-twice = Cette impression est indiquée deux fois. Indiquez-la une fois.
print-deed-printed-already = L’impression { $print } est déjà inscrite comme imprimée.
print-deed-not-settled = Rien à constater pour l’impression { $print } : { $state }.
print-deed-lot-voided = { $pack } est annulé : son étiquette n’est pas réimprimée.
print-deed-another-label = { $pack } a une autre étiquette (impression { $print }) : celle-ci n’est pas réimprimée.
print-deed-cancelled-by = Annulée par { $by }.
print-deed-undone-by = { $by } a annulé ce dont elle parle.
print-deed-seen-out = { $by } a vu qu’elle est sortie.
print-deed-seen-missing = { $by } a vu qu’elle n’est pas sortie.
print-deed-handed-out = { $by } l’a prise en PDF pour l’imprimer.
print-deed-no-document = Aucune étiquette n’est sortie en document par une opération d’identifiant { $id }.

## Dates

date-not-before-release = { $product } pend et n’a pas de dernier jour à soi : ce qui en est coupé ou emballé après sa libération en reçoit un.
date-release-rule = règle de libération
date-no-rule = { $product } : pas de durée de conservation propre.
date-no-rule-name = sans règle
date-rule-name = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } à compter de { $from }
date-from-making = la fabrication
date-from-receipt = la réception
date-from-packing = l’emballage
date-from-opening = l’ouverture
date-from-thaw = la décongélation
date-from-cook = la cuisson
date-first-that-day = ce jour-là est le jour 1
date-first-day-after = le lendemain est le jour 1
date-first-preparation = le jour de la préparation est le jour 1
date-first-after-preparation = le lendemain de la préparation est le jour 1
date-keeps = { $product } : { $days ->
    [one] { $days } jour de conservation
   *[other] { $days } jours de conservation
 } à compter de { $from }, le { $day } ; { $first } : { $date }.
date-keeps-opened = { $product } : { $days ->
    [one] { $days } jour de conservation
   *[other] { $days } jours de conservation
 } après ouverture ; { $first }.
date-keeps-thawed = { $product } : { $days ->
    [one] { $days } jour de conservation
   *[other] { $days } jours de conservation
 } après décongélation ; { $first }.
date-raw-by-house = C’est la maison qui date les aliments crus.
date-no-exemption = Salé dans cette cuisine : l’exemption d’un établissement inspecté ne vaut pas, et aucun relevé ne montre qu’il se garde sans contrôle.
date-ready-to-eat = Prêt à manger, préparé le { $day } et gardé au froid : au plus { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } ; { $first } : { $date }.
date-at-most = Fait le { $day } : au plus { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } ; { $first } : { $date }.
date-starts-anew = L’étape « { $kind } » fait repartir la date ; celle d’avant ne compte plus : { $part }, { $date }.
date-not-anew = L’étape « { $kind } » ne fait repartir la date que si les temps et températures au dossier prouvent l’assainissement d’aliments crus, et si rien n’y était périmé. Ce n’est pas le cas ici.
date-ready-keeps-its-day = Déjà prêt à manger, ceci garde sa propre date : { $part }, { $date }. C’est le choix de la maison.
date-house-choice = ce qui était prêt garde sa date quand il est recuit avec du cru (règle de la maison)
date-in-its-cure = Une pièce crue en salaison n’a pas de dernier jour tant qu’elle y est.
date-made-from = Fait avec ceci, bon jusqu’au { $date } : { $part }.
date-part-undated = Personne ne connaît le dernier jour de ceci, qui se garde au froid : { $part }. Ce qui en est fait n’en a pas non plus et reste en cuisine. Corrigez sa réception avec la date de l’emballage.
date-earliest-part = De tout ce qui y est entré, ceci a la date la plus proche : { $part }, { $date }.
date-earliest-wins = la date la plus proche l’emporte
date-supplier = On ne dépasse jamais la date du fournisseur : { $date }.
date-supplier-frozen = La date du fournisseur vaut pour le produit congelé : { $date }. Une fois décongelé, il se garde selon ses propres jours, jamais au-delà.
date-supplier-rule = la date du fournisseur
date-no-vacuum-rule = Aucune règle d’ici pour un emballage { $packaging } n’est au dossier. La réglementation locale et les professionnels habilités décident ; demandez avant de vendre.
date-no-air = Emballé sans air le { $day } : au plus { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } à compter de l’emballage : { $date }.
date-no-air-cold = Sans air, des germes poussent que personne ne sent : gardez à { $degrees } ou moins, ou comme le dit votre approbation. La réglementation locale et les professionnels habilités décident.
date-no-air-unapproved = { $product } : fait ici, cela ne va pas dans un emballage { $packaging } sans approbation au dossier ({ $source }). Emballez avec de l’air, ou inscrivez le numéro de l’approbation pour « vacuum » dans les réglages de la cuisine.
date-no-air-approved = Emballé sans air selon l’approbation { $number }.
date-no-air-fish = { $product } : du poisson cru ne va dans un emballage { $packaging } que congelé avant, pendant et après l’emballage ({ $source }) : sans air, il peut devenir toxique avant que personne ne le sente. Emballez avec de l’air, ou congelez d’abord et gardez congelé.
date-no-air-plan = Les emballages sans air demandent un plan écrit ({ $source }). Il n’y en a aucun au dossier pour « vacuum ».
mince-date-too-old = { $product } ({ $lot }) vient d’un animal abattu le { $killed }, il y a { $days } jours ; cela se hache pendant { $most } jours. Plutôt cuire, découper ou congeler.
mince-date-frozen-again = { $pack } est du haché, ou une préparation, déjà décongelé : on ne le recongèle pas. Gardez-le au froid et utilisez-le dans ses jours, ou cuisez-le.

## Release

release-alarm = Une alarme n’est pas signée. { $alarm }
release-not-ready = { $lot } n’est pas prêt. { $unmet }
release-asks-nothing = Une règle de libération qui ne demande rien libère tout. Donnez une perte, des jours, une activité de l’eau ou une signature.
release-loss-fraction = { $loss } % de perte, c’est presque rien. Pour un quart, tapez 25.
release-loss-cannot-be = { $loss } % de perte : impossible. Donnez le pourcentage du poids frais, par exemple 30.
release-tolerance-cannot-be = { $points } points sous une cible de { $target } % : impossible.
release-water-activity-cannot-be = Une activité de l’eau est entre 0 et 1, par exemple 0,90 ; pas { $limit }.
release-too-young = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } jusqu’ici, il en faut { $needed }.
release-too-young-until = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } jusqu’ici, il en faut { $needed }. L’âge est atteint le { $from }.
release-never-weighed = Jamais pesé ; il faut { $target } % de perte. Pesez.
release-too-heavy = { $lost } % de perte, il en faut { $target } % : { $now } sur { $green } de poids frais, prêt à { $ready }.
release-too-heavy-still = { $lost } % de perte, il en faut { $target } % moins { $less } : { $now } sur { $green } de poids frais, prêt à { $ready }.
release-not-read = Pas de relevé de l’activité de l’eau ; il faut { $limit } ou moins. Mesurez.
release-misread-water = Une activité de l’eau de { $reading } : impossible. Mesurez de nouveau.
release-too-wet = L’activité de l’eau est de { $reading } ; il faut { $limit } ou moins. Laissez sécher et mesurez de nouveau.
release-not-signed = Personne n’a signé. La personne responsable du saloir contrôle et signe.

## Cures and brine

cure-deed-caution = Les sels nitrités sont un poison en excès : quelques grammes de trop peuvent tuer. Pesez-les, jamais à la cuillère ; gardez-les sous clé ; faites vérifier la pesée par une deuxième personne. Ces chiffres sont une aide : la réglementation locale, votre plan approuvé et la personne habilitée décident.
cure-deed-refused = { $findings } Est-ce bien saisi ? Si cela a été fait ainsi, inscrivez-le tel quel, avec une note : ce qui en est sorti est alors arrêté. { cure-deed-caution }
cure-weight-cannot-be = { $grams } : impossible, donnez un poids de { $none } à { $most }.
cure-no-meat = Il n’y a pas de poids de viande. Pesez-la crue, avant de mettre le sel.
cure-class-and-method = « { $class } » et « { $method } » ne vont pas ensemble : les limites des pièces entières ne valent pas pour la viande hachée. Choisissez la méthode « en viande hachée » (comminuted) pour la viande hachée, et seulement pour elle.
cure-water-in-dry = Il y a de l’eau dans un salage à sec. Choisissez une méthode en saumure, pour qu’elle soit comptée.
cure-pickle-parts = La saumure pèse { $pickle } et ses parties { $parts }. Repesez toute la saumure.
cure-pickle-drawn = La saumure est dite peser { $pickle } et { $drawn } ont été pesés pour elle : le calcul prend { $drawn }. Repesez, ou saisissez ce qui y est entré d’autre.
cure-taken-more = On dit { $said } de saumure prise et la viande pèse { $weighed } de plus : le calcul prend les poids. Repesez.
cure-rind-only = La règle de la couenne ne laisse pas de viande. Dites qu’elle est sans couenne, ou faites corriger le fichier de la maison.
cure-salt-cannot-be = { $salt } % de sel : impossible, c’est plus de sel que de viande. Repesez les deux ; grammes et kilogrammes sont peut-être confondus.
cure-percent-cannot-be = { $percent } % : impossible. Donnez un pourcentage de 0 à 100.
cure-fraction = { $percent } % ressemble à une fraction tapée pour un pourcentage. Si c’est { $meant } %, tapez { $meant }.
cure-nothing-cures = Un sel de salaison contient du nitrite ou du nitrate, et celui-ci n’en aurait pas. Relisez le sac ; le sel ordinaire s’inscrit comme sel.
cure-no-strength = La teneur de ce sel nitrité n’est pas indiquée. Lisez le pourcentage de nitrite et de nitrate sur le sac et inscrivez-le avec le lot ; il change d’un sac à l’autre.
cure-strength-too-much = { $nitrite } % de nitrite, { $nitrate } % de nitrate et le sel font plus de 100 %. Relisez le sac.
cure-stronger-than-sold = { $nitrite } % de nitrite, c’est plus que tout sel nitrité en vente ({ $most } %). Relisez le sac. S’il en est ainsi, inscrivez-le tel quel, avec une note.
cure-method-no-meat = Il n’y a pas de poids de viande. Pesez-la crue, avant la salaison. ({ $method })
cure-method-no-pickle = Il n’y a pas de poids de saumure. Pesez toute la saumure ; une règle par gallon n’est pas sûre. ({ $method })
cure-method-no-pump = Dites combien a été injecté, en pourcentage de la viande. ({ $method })
cure-method-no-pick-up = Dites combien de saumure la viande a prise, en pourcentage de son poids. ({ $method })
cure-method-no-water = Il n’y a pas d’eau dans cette saumure. Pesez-la, ou choisissez une méthode à sec. ({ $method })
cure-pickle-weight = Combien de saumure faut-il faire ? Donnez son poids total ; l’eau suit.
cure-salt-brought = Le sel nitrité apporte à lui seul { $brought } de sel, plus que les { $salt } % de la recette. Prenez un sel nitrité plus concentré, ou plus de sel en tout.
cure-no-room-for-water = Le sel, le sucre et le sel nitrité ne laissent pas de place à l’eau dans cette saumure. Saisissez de nouveau les poids, ou faites plus de saumure.
cure-aim-ingoing = { $level } ne se vise pas : donnez ce qui doit entrer, en ppm.
cure-not-in-salt = Ce sel nitrité n’en contient pas : { $basis }. Prenez-en un autre.
cure-other-things = { $from } ne se compte pas comme { $to } : nitrite et nitrate sont deux choses. Donnez à chacun son chiffre.
cure-ppm-cannot-be = { $ppm } ppm : impossible. Donnez des parties par million (mg/kg).
cure-went-in = { $level } : c’est ce qui est entré. Donnez ce que le laboratoire a trouvé.
cure-weak = C’est le sel nitrité faible ({ $name }, { $nitrite } % de nitrite) : il est aussi rose que le n° 1 et n’a qu’une petite partie de sa teneur. Regardez le sac, et la recette.
cure-unusual = Un sel nitrité à { $nitrite } % de nitrite et { $nitrate } % de nitrate n’est pas un des sels courants. Vérifiez que le sac le dit.
cure-no-nitrate = Ce jambon s’affine pendant des mois et son sel nitrité n’a pas de nitrate : le nitrite est parti bien avant la fin. Avez-vous pris le n° 1 pour le n° 2 ?
cure-too-little-for-scale = { $dose } de sel nitrité, c’est trop peu pour une balance qui affiche { $division } : un échelon fait ±{ $error } ppm. Prenez une balance plus fine, ou pesez au moins { $least } sur celle-ci.
cure-finer-scale = { $meat } de viande demandent une balance qui affiche { $fine } ; sur celle-ci, un échelon de { $division } fait ±{ $error } ppm.
cure-level-ingoing = { $ppm } ppm en { $basis }, à l’entrée
cure-level-residual = { $ppm } ppm en { $basis }, résiduel
cure-counted-both = nitrite et nitrate ensemble
cure-counted-ascorbate = ascorbate ou érythorbate
cure-counted-nitrite = nitrite
cure-counted-nitrate = nitrate
cure-limit-broken = { $ppm } ppm sont entrés ({ $what }) ; { $rule }.
cure-limit-broken-would-do = { $ppm } ppm sont entrés ({ $what }) ; { $rule }. { $dose }
cure-limit-any-place = { $ppm } ppm sont entrés ({ $basis }). Aucun des pays lus ne va au-delà de { $most } ppm pour « { $class } » ({ $method }) ; cela ne se fait donc nulle part.
cure-limit-only-residual = Pour « { $class } », seul ce qui reste à la fin est limité ({ $what }), pas ce qui entre.
cure-limit-none-read = Aucune limite ({ $what }) pour « { $class } » ({ $method }) n’a été lue pour ce pays. Demandez avant de vous en servir.
cure-limit-finished-most = Le produit fini contient au plus { $most } ppm ({ $what }) : il en est entré davantage, faites-le analyser.
cure-limit-left-asks = Il reste { $ppm } ppm ({ $what }). Ce n’est pas une limite, et cela peut se vendre ; mais à partir de { $level } ppm il faut en chercher la cause, et l’écrire.
cure-limit-left = Il reste { $ppm } ppm ({ $what }) ; le maximum est de { $most } ppm dans le produit fini ({ $class }). Il ne se vend pas.
cure-limit-sets = { $nitrite } ppm de nitrite et { $ascorbate } ppm d’ascorbate ou d’érythorbate sont entrés dans du bacon injecté ; il faut exactement une de ces formules : { $sets }.
cure-allowed-none = rien n’est permis pour { $food }
cure-allowed-exactly = il faut { $ppm } ppm dans { $food }
cure-allowed-most = le maximum est de { $ppm } ppm pour { $food }
cure-allowed-least = le minimum est de { $ppm } ppm pour { $food }
cure-food-any = « { $class } » ({ $method })
cure-food-heated = « { $class } » ({ $method }), si c’est cuit
cure-food-not-heated = « { $class } » ({ $method }), si ce n’est pas cuit
cure-food-keep-refrigerated = « { $class } » ({ $method }), pour ce qui doit rester réfrigéré
cure-food-called-cured = « { $class } » ({ $method }), pour ce qui est dit « salaisonné »
cure-dose-just = Il faut exactement { $grams } de ce sel nitrité, pas { $used }.
cure-dose-at-most = Il faut au plus { $grams } de ce sel nitrité, pas { $used }.
cure-dose-at-least = Il faut au moins { $grams } de ce sel nitrité, pas { $used }.
cure-set-plain = { $nitrite } ppm de nitrite de sodium + { $ascorbate } ppm
cure-set-sugar = { $nitrite } ppm de nitrite de sodium + { $ascorbate } ppm + { $sugar } % de sucre ou plus
cure-set-starter = { $nitrite } ppm de nitrite de sodium + { $ascorbate } ppm + un ferment lactique
cure-set-sugar-starter = { $nitrite } ppm de nitrite de sodium + { $ascorbate } ppm + { $sugar } % de sucre ou plus + un ferment lactique
cure-range-one = { $ppm }
cure-range-from = { $low } à { $high }
brine-degrees-cannot-be = { $degrees }° : impossible, un pèse-sel va de 0 à 100. Relisez-le.
brine-no-scale = Il n’y a pas de chiffres pour un pèse-sel de l’échelle { $scale }. Pesez plutôt le sel et l’eau.
brine-other-scale = { $degrees }° sur ce pèse-sel, c’est { $percent } % de sel ; sur l’habituel (60 °F), ce serait { $usual } %. Voyez lequel la recette veut dire.
brine-cold-scale = Ce pèse-sel est fait pour 38 °F et la table pour 60 °F : { $degrees }°, c’est environ { $usual } % de sel, pas exactement. Lisez avec un pèse-sel de 60 °F dans une saumure à 60 °F, ou pesez le sel et l’eau.
brine-saturated = Une saumure à { $percent } % de sel ne se dissout pas : l’eau en tient au plus { $most } %. Le reste est au fond et n’est pas dans la viande comme compté. Repesez, ou ajoutez de l’eau.
uncured-none-due = La saumure est à { $brine } % : aucune des mentions n’est exigée.
uncured-brine-unknown = Le sel et l’eau du produit fini ne sont pas connus. Avec une saumure à { $least } % ou plus, aucune de ces mentions ne serait exigée.
uncured-cannot-be = { $value } : impossible, cela va de 0 à { $most }.
uncured-nitrite-used = Du nitrite ou du nitrate est entré : l’étiquette ne peut dire ni que c’est non salé au nitrite, ni qu’il n’en a pas été ajouté.
uncured-natural-source = Cet ingrédient apporte du nitrite : { $source }. L’étiquette ne peut pas dire qu’il n’en a pas été ajouté. La règle est en révision, donc rien n’est imprimé.
uncured-no-wording = Ce pays n’a pas de mention lue pour cela. Demandez avant d’imprimer une telle allégation.
uncured-not-like-cured = Il doit ressembler au produit salé par la taille, le goût, la consistance et l’aspect, ou il lui faut un autre nom.
uncured-natural-words = Cet ingrédient apporte du nitrite : { $source }. La mention demande « { $words } », et l’allégation est peut-être tout à fait interdite. Demandez avant de l’imprimer. ({ $law })

## Cure room

room-calendar-ends = Le calendrier finit avant ce jour. Choisissez un jour plus proche.
room-turned-daily = Une pièce se retourne au plus une fois par jour.
room-days-cannot-be = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } : impossible. Donnez les jours depuis le premier sel, par exemple 270.
room-fat-cannot-be = { $fat } % de gras : impossible. Donnez de 0 à 100.
room-fat-fraction = { $fat } % de gras, c’est presque rien. Pour la moitié, tapez 50.
room-never-reached = La pièce est libérée à { $loss } % de perte, et pas plus de { $most } % ne peut sécher : elle ne serait jamais libérée. Inscrivez une perte plus faible.
room-fits-better = { $grams } va mieux à { $tag }, qui devrait peser environ { $expected }. Regardez les deux étiquettes.
room-due = { $tag } : { $task }, depuis le { $since }.
room-task-since = { $task } (depuis le { $since })
room-task-salt = mettre au sel
room-task-overhaul = resaler et retourner
room-task-turn = retourner
room-task-rinse = sortir du sel, rincer et sécher
room-task-equalise = mettre au repos
room-task-hang = mettre au séchoir
room-task-weigh = peser
room-task-ready-from = peut être prêt : peser et contrôler
room-task-ready-by = devrait être prêt
alarm-too-fast = { $tag } a perdu { $lost } % au { $day }, { $expected } % étaient attendus, { $points } points de plus ou de moins sont normaux. Le séchage est trop rapide : cherchez un croûtage, et donnez un endroit plus humide. Signez une fois vérifié.
alarm-too-slow = { $tag } a perdu { $lost } % au { $day }, { $expected } % étaient attendus, { $points } points de plus ou de moins sont normaux. Le séchage est trop lent : le local est humide, ou l’étiquette est celle d’une autre pièce. Signez une fois vérifié.
alarm-cannot-weigh = { $tag } ne peut pas peser { $grams } sur { $green } de poids frais. Repesez.
alarm-before-salt = { $tag } a été pesé le { $day }, avant sa mise au sel le { $salted }. Regardez l’étiquette et le jour.
alarm-above-green = { $tag } pèse { $grams }, plus que { $green } de poids frais avec le sel qui colle. Regardez l’étiquette et la balance.
alarm-past-water = { $tag } a perdu { $lost } %, plus que l’eau qui s’y trouvait. Regardez l’étiquette et la balance.
alarm-gained = { $tag } pèse { $grams }, plus qu’avant ({ $before } le { $day }). Une pièce ne prend pas de poids en séchant : regardez l’étiquette et la balance.
forecast-released = Libéré.
forecast-weight-met = La perte suffit ; l’âge est atteint le { $ready }.
forecast-about = Prêt vers le { $day }, { $basis }.
forecast-between = Prêt entre le { $earliest } et le { $latest }, { $basis }.
forecast-not-before = Pas avant le { $earliest }, { $basis }.
forecast-unknown = Nul ne peut encore le dire. Pesez.
forecast-by-curve = selon la courbe seule, jamais pesé
forecast-by-one-weighing = selon une pesée
forecast-by-weighings = selon ses pesées
salting-no-green = Des jours par livre demandent le poids frais. Pesez.
salting-no-thickness = Des jours par pouce demandent l’épaisseur à l’endroit le plus épais, en millimètres. Saisissez-la.
salting-too-many = Tant de jours, c’est impossible. Regardez les chiffres.
salting-pound-cannot-be = { $rate } jours par livre : impossible. Saisissez-le de nouveau.
salting-inch-cannot-be = { $rate } jours par pouce : impossible. Saisissez-le de nouveau.
salting-pound-too-long = { $rate } jours par livre : impossible, personne ne sale plus de { $most }. Cherchez une coquille, comme 11½ pour 1½, ou des livres pour des pouces.
salting-inch-too-long = { $rate } jours par pouce : impossible, personne ne sale plus de { $most }. Cherchez une coquille, comme 11½ pour 1½, ou des livres pour des pouces.
salting-a-day-at-least = Une pièce reste au sel au moins un jour.
salting-too-long = { $days } jours au sel : impossible, { $most } est le maximum. Regardez le taux, le poids et son unité.
curve-begins = Une courbe commence au jour 0 sans perte et a au moins un autre point.
curve-rises = Le long d’une courbe, les jours montent et la perte ne baisse jamais.
curve-all-lost = Aucune pièce ne perd tout son poids.

## Yields and cost

cut-out-no-styles = Il n’y a pas encore de découpe pour cette espèce : { $species }. Saisissez ses pièces à la main.
cut-out-no-such-style = « { $style } » n’est pas une découpe pour cette espèce : { $species }. Il y a : { $known }.
cut-out-no-hanging = Le poids de carcasse manque. Pesez l’animal avant de le découper.
cut-out-piece-weight = { $piece } : { $grams }. Pesez, ou laissez de côté.
cut-out-not-weighed = { $piece } : rien n’a été pesé. Environ { $expected } % étaient attendus.
cut-out-unusual = { $piece } : { $part } % du poids de carcasse, d’ordinaire { $low } à { $high } %. Regardez la balance, l’étiquette et l’endroit de la coupe.
cut-out-usual = { $piece } : { $part } % du poids de carcasse, d’ordinaire { $low } à { $high } %.
cut-out-plain = { $piece } : { $part } % du poids de carcasse.
cut-out-beside = { $piece } : { $part } % du poids de carcasse ; cette découpe n’a pas cette pièce.
cut-out-more-than-hung = Les pièces pèsent { $grams } de plus que la carcasse ({ $part } % de perte). Une erreur de balance ou de saisie.
cut-out-left-out = { $grams } ({ $part } %) n’ont pas été pesés. Cherchez une pièce oubliée.
cut-out-dripped = { $grams } ({ $part } %) sont partis à la coupe et au ressuage.
cut-out-loss = perte inexpliquée
step-yield-unknown = « { $process } » n’est pas un procédé dont le rendement est connu. Choisissez-en un dans la liste.
step-yield-no-base = Il manque un poids : { $of }. Pesez avant que cela entre.
step-yield-no-output = Ce qui est sorti n’a pas été pesé. Pesez-le.
step-yield-added = Ce qui a été ajouté ne pèse ni moins que zéro ni autant que tout ce qui est sorti. Saisissez de nouveau son poids.
step-yield-percent = { $name } : { $amount } % ({ $of }).
step-yield-percent-usual = { $name } : { $amount } % ({ $of }), d’ordinaire { $low } à { $high } %.
step-yield-percent-unusual = { $name } : { $amount } % ({ $of }), d’ordinaire { $low } à { $high } %. Regardez la balance, l’étiquette et ce qui est entré.
step-yield-litres = { $name } : { $amount } L/kg ({ $of }).
step-yield-litres-usual = { $name } : { $amount } L/kg ({ $of }), d’ordinaire { $low } à { $high } L/kg.
step-yield-litres-unusual = { $name } : { $amount } L/kg ({ $of }), d’ordinaire { $low } à { $high } L/kg. Regardez la balance, l’étiquette et ce qui est entré.
cost-no-cost = Le prix payé manque. Prenez-le sur le papier du fournisseur.
cost-no-weight = Un morceau sans poids n’a pas de part. Pesez-le.
cost-nothing-sells = Aucun morceau ne se vend à un prix. Donnez un prix aux morceaux, ou répartissez selon le poids.
cost-too-much-to-share = { $cost }, c’est trop pour se répartir. Vérifiez.
cost-price-cannot-be = { $price } le kilogramme : impossible. Regardez le prix.
cost-too-much-money = { $amount }, c’est plus d’argent qu’il n’y en a. Saisissez-le de nouveau, en centièmes de la monnaie.

## Why, yield and cost of a lot

why-frozen = Les paquets congelés n’ont pas de date ; il leur reste { $days ->
        [one] { $days } jour
       *[other] { $days } jours
    } après décongélation, le jour de la décongélation compris.
why-freezing-stops = la congélation arrête le compte
why-since = Depuis, un paquet a été ouvert ou décongelé : { $day }.
why-opened-or-thawed = ouvert ou décongelé
yield-no-style = La liste ne dit pas comment se découpe (cut_style) ou se cuit (process) ceci : { $product }. Il n’y a rien à comparer.
yield-nothing-cut = Rien n’y a encore été découpé. Découpez d’abord.
cost-of-paid = { $product } { $lot } : payé { $amount } pour { $grams }.
cost-of-nothing = { $product } { $lot } : aucun prix inscrit, compté pour rien.
cost-of-bears-nothing = { $product }, { $lot }, n’a ni prix ni valeur au kilo : les autres morceaux portent son coût. Donnez-lui-en un dans la liste.
cost-of-no-price = { $product } { $lot } : aucun prix inscrit. Inscrivez à la réception ce qui a été payé (price_minor).
cost-of-share-by-value = { $lot } : { $share } sur les { $of } de son étape, selon le prix de vente de chaque morceau.
cost-of-share-by-weight = { $lot } : { $share } sur les { $of } de son étape, selon le poids.

## Statements: ingredients, allergens, dates in words

statement-sulphites-unknown = Des sulfites sont entrés et nul n’a dit combien il y en a dans le produit fini, donc ils sont déclarés. En dessous de { $most } mg/kg, ce n’est pas nécessaire.
us-sulfites-unknown = Des sulfites sont entrés et nul n’a dit combien il y en a dans le produit fini, donc ils sont déclarés. En dessous de { $most } ppm, ce n’est pas nécessaire.
statement-name-the-nut = « { $allergen } » ne suffit pas ici : nommez la noix. Regardez l’étiquette du fournisseur et corrigez le produit.
statement-name-the-crustacean = « { $allergen } » ne suffit pas ici : nommez le crustacé. Regardez l’étiquette du fournisseur et corrigez le produit.
statement-name-the-mollusc = « { $allergen } » ne suffit pas ici : nommez le mollusque. Regardez l’étiquette du fournisseur et corrigez le produit.
statement-name-the-fish = « { $allergen } » ne suffit pas ici : nommez le poisson. Regardez l’étiquette du fournisseur et corrigez le produit.
statement-title = La déclaration d’allergènes commence par « { $title } » et rien d’autre.
statement-lacks = Il manque à la déclaration d’allergènes : { $names }. Une fois là, elle les nomme tous, même ceux que la liste montre.
statement-capitals = Chaque mot de la déclaration d’allergènes commence par une majuscule et continue en minuscules : { $entries }.
statement-no-date-words = Il n’y a pas ici de mention pour une date « { $kind } ». Prenez-en une autre.
statement-date-before = Le dernier jour, le { $day }, tombe avant le { $from }, à partir duquel il se garde. L’un des deux est faux. Voyez laquelle, et saisissez de nouveau.
statement-kitchen-date = Une date « { $kind } » ne sert ici qu’à la cuisine, pas à l’étiquette d’un client.
statement-no-date-form = Il n’y a pas ici de forme de date en « { $language } ». Retirez cette langue des étiquettes de la cuisine.
statement-may-not-say = L’étiquette de viande d’un client ne peut pas dire « { $words } » ici. Écrivez { $instead }.
statement-letters-low = Les minuscules ({ $what }) font { $printed } mm de haut ; sur cette surface il faut { $least } mm ou plus. Prenez une étiquette plus grande ou des lettres plus grandes.
statement-net-title = Le poids net commence par « { $title } ».
statement-net-wrong = « { $text } » n’est pas le poids du paquet, { $grams }. Pesez-le et imprimez de nouveau.
statement-languages = Une étiquette est ici en { $wanted } : il manque { $missing }.
statement-added-water = L’eau ajoutée fait { $percent } % du poids fini : une pièce, un rôti, une tranche ou une carcasse porte « avec eau ajoutée » dans son nom au-dessus de { $most } %.
statement-no-raw-meat = La viande crue n’a pas de poids. Pesez-la avant d’y mettre la solution.
statement-no-solution = La solution n’a pas de poids. Repesez la viande, ou la solution qui y a été injectée.
statement-no-bringer = Aucun ingrédient connu n’apporte ceci : { $allergens } ; c’est donc dit après la liste. Inscrivez-le à l’ingrédient qui l’apporte.
statement-cure-unlisted = { $name } n’a pas de recette : chaque partie d’un mélange de salaison est listée par son nom. Inscrivez ce que dit son étiquette.
statement-no-spice = { $name } n’est pas une épice ici. Inscrivez-le comme aliment ou comme arôme.
statement-declared-elsewhere = L’emballage déclare ses ingrédients, mais pas dans la langue « { $language } ». L’étiquette les donne comme l’emballage : { $text }. Inscrivez-les dans cette langue (bought.declares.ingredients).
date-kind-use-by = à consommer jusqu’au
date-kind-best-before = meilleur avant
date-kind-discard-by = à jeter après
date-kind-packed-on = emballé le
date-kind-frozen-on = congelé le
date-kind-prepared-on = préparé le
lettering-label = étiquette
lettering-ingredient-list = liste des ingrédients
lettering-ingredient-list-by-table = liste des ingrédients à côté du tableau
lettering-net-quantity = quantité nette
lettering-thawed = mention de décongélation
lettering-safe-handling = manipulation sûre
change-new-allergen = { CAPITAL($allergen) } : nouveau dans cette fabrication, par { $sources }.
change-new-allergen-unknown = { CAPITAL($allergen) } : nouveau dans cette fabrication, aucun ingrédient connu ne l’apporte.
change-gone-allergen = { CAPITAL($allergen) } : n’est plus dans cette fabrication. Regardez deux fois avant de le croire.
change-new-ingredients = Nouveau dans cette fabrication : { $names }.
change-gone-ingredients = N’y est plus : { $names }.
change-reordered = L’ordre des ingrédients a changé.
change-source = { $path }
change-source-lot = { $path }, lot { $lot }
change-source-lots = { $path }, lots { $lots }

## Heat and cooling

heat-deed-short = { $findings } Est-ce bien saisi ? Si oui, continuez et mesurez de nouveau. Si cela s’est terminé ainsi, inscrivez-le tel quel, avec une note : ce qui en est sorti est alors arrêté.
heat-deed-warm = { $findings } Est-ce bien saisi ? Si oui, inscrivez-le tel quel, avec une note : ce qui en est sorti est alors arrêté, et réchauffer n’y change rien.
heat-deed-untold = { $findings } Y a-t-il une mesure entre les deux ? Saisissez-la avec les autres. S’il n’y en a pas, inscrivez-le tel quel, avec une note : c’est alors arrêté jusqu’à ce que quelqu’un décide.
limit-at-most = { $value } au plus
limit-below = moins de { $value }
limit-at-least = { $value } au moins
limit-above = plus de { $value }
limit-exactly = { $value } exactement
heat-core-too-hot = { $at }, c’est plus chaud que ne peut l’être le cœur d’une viande ({ $most }). Relevé en Fahrenheit et saisi en Celsius ? Donnez l’échelle avec le nombre.
heat-core-too-cold = { $at }, c’est plus froid que ne peut l’être le cœur d’une viande ({ $least }). Vérifiez le nombre.
heat-store-too-hot = { $at }, c’est plus chaud que ne peut l’être une enceinte ou un bain ({ $most }). Relevé en Fahrenheit et saisi en Celsius ? Donnez l’échelle avec le nombre.
heat-store-too-cold = { $at }, c’est plus froid que ne peut l’être une enceinte ou un bain ({ $least }). Vérifiez le nombre.
heat-ends-first = Une durée de moins { $time } est impossible ; la fin précède le début. Vérifiez les deux heures.
heat-no-reading = Il n’y a aucun relevé. Donnez l’heure et la température à cœur de chacun.
heat-read-after = Le relevé de { $read } vient après l’opération, finie { $ended }. Corrigez l’heure du relevé, ou indiquez quand l’opération a vraiment fini.
heat-read-before = Le relevé de { $read } vient avant l’opération, commencée { $began }. Corrigez l’heure du relevé, ou indiquez quand l’opération a vraiment commencé.
heat-read-long-before = Le dernier relevé est de { $read }, plus d’un jour avant la fin de l’opération ({ $ended }). Indiquez quand l’opération a vraiment fini, ou saisissez le journal qui est le sien.
heat-read-before-it-came = Le dernier relevé est de { $read }, et { $lot } est entré { $came } : ce journal est celui d’une autre cuisson. Saisissez celui qui est le sien, ou corrigez les heures.
heat-held-before-it-came = Cela n’a pas pu tenir { $held } : { $lot } est entré { $came }, { $most } avant la fin de l’opération. Corrigez les minutes, ou indiquez quand l’opération a vraiment fini.
heat-held-before-it-began = Cela n’a pas pu tenir { $held } : l’opération a commencé { $began }, { $most } avant sa fin. Corrigez les minutes, ou indiquez quand l’opération a vraiment commencé et fini.
heat-two-readings = { $at } : il y a deux relevés, { $one } et { $other }. Lequel est le bon ?
failure-nothing-there = Il n’y avait rien à cet endroit à ce moment : { $place }.
failure-stable = { $lot } : se garde sans froid.
failure-stayed-cold = { $lot } : c’est resté froid d’après les mesures.
failure-all-stayed-cold = { $lots } lots sont restés froids d’après les mesures.
failure-in-time = { $lot } : trop chaud pendant au plus { $warm } ; { $within } sont permis, une fois. À refroidir tout de suite ou à utiliser maintenant.
failure-in-time-again = { $lot } : trop chaud pendant au plus { $warm }, et pendant au plus { $before } une autre fois ; { $within } sont permis en tout. À refroidir tout de suite ou à utiliser maintenant.
failure-broke = { $place } : c’était, ou cela a pu être, trop chaud pendant { $warm } ; { $within } sont permis.
failure-broke-in-all = { $place } : c’était, ou cela a pu être, trop chaud pendant { $warm }, et pendant { $before } une autre fois ; { $within } sont permis en tout.
failure-thawed = { $place } : c’était au-dessus de zéro pendant au plus { $warm } ; ce qui était congelé compte comme décongelé depuis lors, et ses jours aussi.
failure-stopped = Bloqués : { $foods }.
failure-stopped-more = Bloqués : { $foods }, et { $more } de plus.
failure-found-warm = { $lot } : c’était trop chaud, et de nouveau { $warm } plus tard, sans relevé froid entre-temps ; { $within } sont permis.
failure-look-if-thawed = { $lot } : c’était congelé. Ce qui s’est décongelé se saisit comme décongelé, et ne se recongèle pas.
failure-look-what-thawed = { $lots } lots étaient congelés ici. Ce qui s’est décongelé se saisit comme décongelé, et ne se recongèle pas.
failure-left-before = { $lot } avait quitté { $place } à temps : la panne n’y change plus rien.
failure-left-before-ask = { $lot } avait quitté { $place } à temps. Cela reste bloqué jusqu’à ce qu’une personne qui peut lever un arrêt le dise.
failure-no-rule = Pas de règle ici pour ce qui n’est pas resté au froid. Une personne décide de chaque lot.
failure-still-open = { $place } est tombé en panne ({ $at }), et personne ne l’a relevé depuis. Relevez-le et notez qu’il est froid avant d’y mettre des aliments.
place-beyond = { $place } : { $at } ; demandé : { $limit }.
place-stood-there = { $place }, à ce moment : { $lots }. Regardez ; si cela a duré, inscrivez la panne de froid.
place-no-reading = Cette mesure n’a pas de température. Donnez celsius ou fahrenheit.
place-read-outside = Ce relevé n’est pas du temps où il ne faisait pas froid. Vérifiez son heure, ou les deux heures.
place-ends-first = La fin vient après le début, et pas après le moment où l’on s’en est aperçu. Vérifiez les heures.
probe-good = La sonde { $probe } est bonne ; à revérifier d’ici le { $due }.
probe-failed = La sonde { $probe } a montré { $read } le { $day } là où { $right } est juste ({ $bath }). Réparez-la ou remplacez-la, puis vérifiez de nouveau : ce qu’elle a montré ne prouve guère. L’eau bout un peu moins chaud en altitude.
probe-unchecked = La sonde { $probe } n’a jamais été vérifiée. Tenez-la dans la glace fondante et saisissez ce qu’elle montre.
probe-overdue = La sonde { $probe } devait être vérifiée au plus tard : { $due }. Tenez-la dans la glace fondante et saisissez ce qu’elle montre.
Bath-ice = glace fondante
Bath-boiling = eau bouillante
cook-silence = Aucun relevé entre le { $from } et le { $until } ({ $length }). Que s’est-il passé ? Décidez avant l’utilisation.
cook-went-out = Le cœur était retombé à { $core } ({ $at }) et il est remonté ensuite. Le feu était-il éteint ? Décidez avant l’utilisation.
cook-no-table = Pas de barème de cuisson ici pour cette sorte d’aliment : { $food }. Jugez d’après votre propre plan écrit.
cook-no-lethality = Pas de barème ici pour une réduction de { $log } log et cette sorte d’aliment : { $food }. Jugez d’après votre propre plan écrit.
cook-no-row = Pas de barème de cuisson { $row } ici. Choisissez-en un que donne GET /api/rows, ou n’en nommez pas : celui qui convient est alors trouvé.
cook-held-short = { $core } tenus pendant { $held } ; à { $at_least } il faut { $hold }, donc encore { $missing }.
cook-gaps = Pendant { $held }, chaque relevé était à { $at_least } ou plus, ce qui suffirait, mais il manque des relevés entre-temps. Si le cœur n’est jamais descendu plus bas, c’est suffisant ; à vous de décider.
cook-hold-short = Le plus long maintien à { $at_least } ou plus a duré { $held } ; il faut { $hold }, donc encore { $missing }.
cook-not-held = { $at_least } est atteint, et rien ne montre que cela a duré ; il faut { $hold }. Tenez-le aussi longtemps, et saisissez la durée.
cook-reached = Suffisant : { $at_least } atteints, cela suffit.
cook-enough = Suffisant : à { $at_least } il faut { $hold }, tenus { $held }.
cook-too-cool = { $core }, c’est moins que la première ligne du barème. Aucune durée n’y suffit ; chauffez à { $at_least } pendant { $hold }, ou plus chaud.
cook-too-cool-at-once = { $core }, c’est moins que la première ligne du barème. Aucune durée n’y suffit ; chauffez à { $at_least } ou plus.
cook-none-met = Aucun barème de cuisson connu n’est atteint, ni d’ici ni d’ailleurs : rien ne montre que c’est cuit. Chauffez encore : { $at_least } pendant { $hold }, cela suffit.
cook-none-met-at-once = Aucun barème de cuisson connu n’est atteint, ni d’ici ni d’ailleurs : rien ne montre que c’est cuit. Chauffez encore : atteindre { $at_least } suffit.
cook-by-another = Le barème de la cuisine n’est pas atteint ; un autre l’est : { $row }. Est-il permis ici ? Une personne le décide une fois.
cook-not-decided = Le barème de la cuisine n’est pas atteint. Celui d’un autre lieu l’est ({ $row }), et personne n’a dit qu’il vaut ici : chauffez encore, ou faites d’abord inscrire le numéro d’une autorisation pour « cooking » dans les réglages de la cuisine.
cook-other-food = Le barème { $row } est pour un autre aliment ({ $made_for }) ; celui-ci est : { $food }. Choisissez-en un autre, ou n’en nommez pas : celui qui convient est alors trouvé.
cook-not-made-for = Le barème { $row } n’est pas fait pour ce qui est dedans. Ne l’indiquez pas : celui qui convient est trouvé.
cook-boiled = Cela a bouilli { $boiled } ; { $least } sont d’usage. Pratique courante, sans source.
cook-boiled-short = Cela a bouilli { $boiled } ; { $least } sont d’usage, pratique courante sans source. Laissez bouillir encore, ou mesurez à cœur.
cook-boiled-piece = Que la marmite ait bouilli ne montre pas la température à cœur de cette sorte d’aliment : { $food }. Mesurez la partie la plus épaisse.
cook-boiled-whole = Que la marmite ait bouilli ne montre pas la température à cœur de ceci, mis entier : { $piece }. Mesurez la partie la plus épaisse, et saisissez la température et combien de temps elle a été tenue.
cook-pierced = { $product } ({ $lot }) est passé par { $by } : cela se juge comme viande hachée et non comme { $class }, car l’extérieur est maintenant à l’intérieur.
cook-stuffed = { $product } ({ $lot }) a été mélangé à ce qui le remplit : cela se juge comme viande farcie et non comme { $class }. Poursuivez la cuisson jusqu’à ce que le cœur de la farce suffise.
cook-said-stuffed = C’est dit farci : cela se juge comme viande farcie et non comme { $class }. Poursuivez la cuisson jusqu’à ce que le cœur de la farce suffise.
cook-filled = { $product } ({ $lot }) est entré dans cette cuisson avec la viande et peut la remplir : cela se juge comme viande farcie et non comme { $class }. Poursuivez la cuisson jusqu’à ce que le cœur de la farce suffise ; si c’est seulement autour de la viande ou à côté, dites qu’elle n’est pas farcie.
cook-not-stuffed = { $product } ({ $lot }) est entré dans cette cuisson avec la viande. La personne qui a cuit dit que cela ne la remplit pas.
cook-before-it-came = { $lot } est entré { $came }. Ce qui a été relevé ou tenu avant n’en prouve rien.
cook-typed-later = { $lot } a été saisi { $came }, et une part de cette chaleur a eu lieu avant. Elle compte parce que personne n’a dit quand { $lot } est entré ; si c’était à ce moment, corrigez le relevé.
cook-unknown-animal = { $product } ({ $lot }) est cru, et rien n’indique de quel animal : cela se juge comme volaille, qui demande le plus. Poursuivez la cuisson ; et indiquez l’animal dans sa fiche, pour que le prochain lot se juge par lui.
cook-stood-warm = Pendant cette cuisson, l’aliment est resté tiède, sans atteindre { $hot }, pendant { $warm } ; c’est { $within } au plus. Certaines bactéries laissent des toxines que la chaleur ne détruit pas.
cook-came-up-slowly = De { $from } à { $to }, la montée a pris jusqu’à { $took } ; { $within } ou moins est conseillé, car certaines bactéries laissent des toxines que la chaleur ne détruit pas.
cool-stage-between = le refroidissement de { $from } à { $to }
cool-stage-from-start = le refroidissement du départ à { $to }
cool-no-plan = Pas de plan de refroidissement « { $plan } » ici. Connus ici : { $known }.
cool-not-after-cooking = Le plan de refroidissement « { $plan } » est pour ce qui n’a jamais été chaud. Ce qui est cuit refroidit par un autre. N’en nommez pas : celui qui convient est alors trouvé.
cool-nitrite-cannot-be = { $ppm } ppm de nitrite : impossible. N’indiquez rien s’il n’y en a pas.
cool-no-stages = Il n’a pas d’étapes.
cool-not-approved = Cette façon de refroidir demande d’abord une approbation au dossier. Sans elle, les durées ordinaires valent.
cool-no-nitrite = Cette façon plus lente est pour la viande salée avec { $least } ppm de nitrite ou plus ; rien n’est inscrit.
cool-little-nitrite = Cette façon plus lente est pour la viande salée avec { $least } ppm de nitrite ou plus ; il y en a { $ppm } ppm.
cool-never-above = Elle n’a jamais dépassé { $to }.
cool-enough = Suffisant : { $stage } a pris { $most } au plus ; permis : { $within }.
cool-too-long = Trop long : { $stage } a pris plus de { $least } ; permis : { $within }.
cool-unsure = Incertain : { $stage } a pris entre { $least } et { $most } ; permis : { $within }. Les relevés sont trop espacés pour trancher.
cool-unsure-at-most = Incertain : { $stage } a pris jusqu’à { $most } ; permis : { $within }. Les relevés sont trop espacés pour trancher.
cool-still-warm = { $gone } après { $from }, il y avait encore { $core } ; permis pour { $stage } : { $within }.
cool-warm-since-start = { $gone } après le départ, il y avait encore { $core } ; permis pour { $stage } : { $within }.
cool-still-cooling = Le refroidissement continue ({ $core }, { $at }). Il faut { $to } au plus tard le { $by }.
cool-warm-after-first = Il y avait encore { $core } { $after } après le premier relevé ; permis pour { $stage } : { $within }.
cool-begins-late = Les relevés commencent à { $core } : nul ne sait combien { $stage } a pris. Il manque un relevé à cette température ou plus ; à vous de décider.
cool-none-met = Aucune voie de refroidissement connue n’est tenue, ni d’ici ni d’ailleurs : rien ne montre que c’est refroidi à temps. Jetez-le ; ou, s’il manque un relevé entre deux, saisissez-le.
holding-no-temperature = Pas de température ici pour « { $what } ». Suivez votre propre plan écrit.
holding-nowhere = { $at }, c’est plus chaud que ne l’admet aucun lieu connu pour un aliment prêt ; le moins strict demande { $limit }.
holding-outside = { $at } ; demandé : { $limit }.

## Trichinae

trichinae-deed-short = { $findings }
thickness-of = { $mm } mm ({ $inches } po)
trichinae-proof-normally-cooked = Normalement cuit avant d’être mangé : pas de traitement nécessaire. Il ne doit pas avoir l’air prêt à manger.
trichinae-proof-not-freed = Rien ici ne le dispense de traitement. À vous de décider.
trichinae-proof-no-paper = Donnez le numéro de l’analyse ou du certificat ; sans lui, nul ne peut vérifier.
trichinae-proof-not-taken = Rien ici n’admet « { $way } » au lieu d’un traitement. À vous de décider.
trichinae-proof-only-of-pigs = « { $way } » ne vaut que pour le porc domestique, et ce lot contient autre chose ({ $species }). Montrez l’analyse de la carcasse, ou un traitement.
trichinae-proof-none-needed = Pas de traitement nécessaire : { $way } ({ $paper }).
trichinae-cold-no-table = Pas de barème ici contre la trichine par le froid. À vous de décider.
trichinae-cold-give-thickness = Donnez l’épaisseur de la pièce ou du carton : plus c’est épais, plus c’est long.
trichinae-cold-too-warm = { $at }, c’est plus chaud que la première ligne du barème ({ $first }). Aucune durée n’y suffit.
trichinae-cold-short = À { $at_most } ou moins, il faut { $hold } ; il y en a eu { $held }, donc encore { $missing }.
trichinae-cold-enough = Suffisant contre la trichine : { $at_most } ou moins pendant { $hold }.
trichinae-cold-longer-than-on-record = La congélation aurait duré { $held } ; d’après le registre, toute sa viande est restée congelée { $on_record }. Saisissez les heures du registre, ou enregistrez d’abord, avec les heures, l’entrée au congélateur et la sortie.
trichinae-cold-never-frozen = La congélation aurait duré { $held } ; d’après le registre, toute sa viande n’a pas été congelée. Si elle l’a été, enregistrez d’abord, avec les heures, l’entrée au congélateur et la sortie.
trichinae-cold-longer-than-dead = La congélation n’a pas pu durer { $held } : l’abattage date de { $dead_for }. Regardez le relevé du congélateur et saisissez de nouveau les heures.
trichinae-cold-too-thick = Aucun barème ne va pour des pièces si épaisses ; la plus épaisse : { $thickest }. Coupez-la, ou relevez la température au centre.
trichinae-cold-warm-at-start = La durée a commencé avec la viande à { $start } ; elle ne commence que quand la viande est à : { $limit }.
trichinae-heat-no-table = Pas de barème ici contre la trichine par la chaleur. À vous de décider.
trichinae-heat-never-heated = Cela aurait été chauffé à { $core } ; aucune opération du registre ne l’a chauffé. Enregistrez d’abord la cuisson ou le fumage à chaud, avec son relevé.
trichinae-heat-hotter-than-on-record = Cela aurait été chauffé à { $core } ; le plus chaud du registre est { $on_record }. Saisissez cela, ou corrigez le relevé de l’opération qui l’a chauffé.
trichinae-heat-too-cool = { $core }, c’est moins que la première ligne du barème ({ $first }). Aucune durée n’y suffit.
trichinae-heat-enough = Suffisant contre la trichine : { $at_least } pendant { $hold }. Les salmonelles se jugent à part.
trichinae-heat-holds-itself = Suffisant contre la trichine : une pièce de plus de { $thicker_than } refroidie plus de { $later } après n’a pas besoin de durée relevée.
trichinae-heat-short = À { $at_least }, il faut { $hold } ; tenus { $held }, donc encore { $missing }.
trichinae-heat-no-time = À { $at_least }, il faut { $hold }, et aucune durée n’est inscrite. Saisissez combien de temps elle a été tenue.
trichinae-heat-came-up-slowly = La montée a pris { $took } ; pour une viande ni salée ni fermentée, { $within } au plus.
trichinae-method-no-methods = Pas de méthode de salaison ici, donc pas « { $method } ». Congelez la viande ou présentez une analyse.
trichinae-method-no-method = Pas de méthode « { $method } » ici. Connues ici : { $known }.
trichinae-method-checked = Vérifié selon la méthode { $method } contre la trichine.
trichinae-method-incomplete = Une partie de cette méthode n’est pas au dossier ici : elle ne peut pas être admise. Lisez le texte officiel ; à vous de décider.
trichinae-method-give-piece = Donnez la taille des plus gros morceaux de viande : la méthode en dépend.
trichinae-method-give-mass = Donnez la hauteur de la masse en salaison : la méthode en dépend.
trichinae-method-give-casing = Donnez le diamètre du boyau embossé : les jours en dépendent.
trichinae-method-give-whole = Donnez la durée depuis le début de la salaison : la méthode la demande.
trichinae-method-give-heaviest = Donnez le poids de la plus lourde pièce du lot : les jours en dépendent.
trichinae-method-give-days = Donnez le premier jour de la salaison, le premier et le dernier jour de séchage.
trichinae-method-too-heavy = Aucune pièce ne pèse autant. Saisissez de nouveau son poids.
trichinae-method-casing-too-wide = Le boyau est plus large que le plus large de la méthode. Prenez une autre méthode.
trichinae-method-lack = { $figure } : { $limit } ; relevé : { $has }.
trichinae-method-lack-unknown = { $figure } : { $limit } ; rien n’est inscrit.
trichinae-method-lacks = { $lacks }
trichinae-method-need = { $need } : il faut { $wanted }, { $has } comptent, donc encore { $missing }.
trichinae-method-up-to = { $stage } : { $most } au plus ; cela a pris { $took }.
trichinae-method-up-to-cool = { $stage } : { $most } au plus et jamais au-dessus de { $at_most } ; cela a pris { $took }.
trichinae-method-whole-short = Depuis le début de la salaison : il faut { $wanted }, { $has } ont passé, donc encore { $missing }.
trichinae-method-outside-winter = la salaison a commencé le { $cured_on }, hors de l’hiver que la méthode admet
trichinae-method-dried-short = séché { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 }, il en faut { $needed }
trichinae-method-no-summer = il n’a pas été suspendu pendant tous les mois d’été
trichinae-method-climate-short = Séchage en local non réglé : { $lacks }.
trichinae-method-climate-met = Le séchage a compris l’été que la méthode demande.
trichinae-method-no-meat = Aucune viande n’est inscrite dans sa salaison. Saisissez d’abord avec quoi elle a été salée.
trichinae-method-on-record = Au registre, sel : { $salt } %. { $stages }
trichinae-stage-read = Au registre, { $stage } : { $time }, jamais sous { $lowest } (mesures : { $readings }).
trichinae-stage-unread = Au registre, { $stage } : { $time }, et personne n’a relevé la température : cela ne compte pas. Saisissez les mesures de ce lieu.
trichinae-part-any = { $stage }
trichinae-part-at-least = { $stage } à { $at_least } ou plus
trichinae-part-at-most = { $stage } à { $at_most } ou moins
trichinae-part-between = { $stage } à { $at_least } ou plus et à { $at_most } ou moins
trichinae-part-with = { $part } avec { $other }
trichinae-drying-no-ham-table = Le barème des jours de séchage des jambons n’est pas au dossier ici. À vous de décider.
trichinae-drying-no-sausage-tables = Les barèmes des jours de séchage ne sont pas au dossier ici. À vous de décider.
trichinae-drying-give-casing = Donnez le diamètre du boyau embossé.
trichinae-drying-give-salt = Donnez le pourcentage de sel de la mêlée, ingrédients secs non compris.
trichinae-drying-one-run = Assez séché : à { $at_least } ou plus pendant { $time }.
trichinae-drying-runs-enough = Assez séché : les périodes font { $sum }, plus de { $more_than }.
trichinae-drying-runs-short = Séchage : les périodes font { $sum } et doivent faire plus de { $more_than }. D’une traite à { $at_least }, il faudrait encore { $missing }.
trichinae-drying-table-ends = Le barème s’arrête avant un boyau de { $casing } avec { $salt } % de sel. Prenez une autre méthode.
trichinae-drying-days = { $base ->
    [one] { $base } jour
   *[other] { $base } jours
 } d’après le boyau, { $cut } de moins pour l’étuvage ({ $cut_percent } %), { $more } de plus pour le sel ({ $more_percent } %) : { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } à { $room } ou plus
trichinae-drying-enough = Assez séché : { $days }.
trichinae-drying-short = Séchage : { $days } ; encore { $missing }.
trichinae-process-highest-below-lowest = La plus haute température ({ $highest }) est sous la plus basse ({ $lowest }). Saisissez-les dans l’autre ordre.
trichinae-process-no-thickness = Une épaisseur est supérieure à zéro.
trichinae-process-no-weight = Le poids d’une pièce est supérieur à zéro.
trichinae-process-ends-first = Le séchage finirait ({ $last }) avant de commencer ({ $first }). Changez l’un des deux.
trichinae-process-salt-is-dry = Le sel est un des ingrédients secs : ils pèsent au moins autant que lui.
trichinae-process-mix-too-light = La mêlée doit peser plus que ses ingrédients secs. Vérifiez les poids.
trichinae-process-part-of-one = { $percent } %, c’est si peu qu’une fraction a pu être saisie pour un pourcentage : 3,3 %, non 0,033. Saisissez le pourcentage.
trichinae-process-cannot-be = { $percent } % : impossible. Donnez un pourcentage.
trichinae-process-salometer = { $degrees }° au pèse-sel : impossible, il s’arrête à 100°.
trichinae-process-pickle = { $parts } parts de saumure : impossible. Saisissez-le de nouveau.

## Stability and vacuum

stable-of = { $lot } : { $says }
stable-at-door = Mesuré à la réception : { $says }
stability-no-table = Pas de barème de stabilité ici : l’aliment reste sous maîtrise du temps et de la température.
stability-not-measured = non mesuré
stability-ph = le pH
stability-water-activity = l’activité de l’eau
stability-measured = pH { $ph }, activité de l’eau { $activity }
stability-stable = { $measured } : pas de maîtrise du temps et de la température nécessaire.
stability-measure = { $measured } : il faut la maîtrise du temps et de la température. Mesurez { $lacks }.
stability-assess = { $measured } : il faut la maîtrise du temps et de la température tant qu’une évaluation du produit ne prouve pas le contraire.
stability-none-of = Il faut la maîtrise du temps et de la température. Une seule de ces conditions en dispenserait : { $ways }.
stability-way-of = { $all }
stability-way-limit = { $measure } : { $limit }
stability-way-has = Condition remplie : { $way }.
stability-way-has-unread = Condition remplie : { $way }. Cette ligne n’a pas été lue à sa source : vérifiez avant de vous y fier.
stability-way-no-barriers = Pas de liste de barrières ici. Suivez votre propre plan approuvé.
stability-way-no-barrier = Aucune barrière autre que le froid n’est montrée. Une de celles-ci, ou une approbation au dossier : { $ways }.
moisture-ratio-cannot-be = { $ratio } parts d’humidité pour une de protéines : impossible. Saisissez-le de nouveau.
moisture-no-name = Pas de rapport humidité/protéines ici pour « { $name } ». Connus ici : { $known }.
moisture-too-moist = { $ratio } parts d’humidité pour une de protéines ; pour « { $name } », { $most } au plus.
moisture-ph-high = pH { $ph } ; pour « { $name } », { $most } au plus.
moisture-ph-missing = pH non mesuré ; pour « { $name } », { $most } au plus.
moisture-no-proof = Assez sec pour ce nom. Ce n’est pas une preuve d’innocuité ; l’activité de l’eau en est une.
reading-ph = Un pH de { $ph } est impossible ; il se tient entre 0 et 14.
reading-activity-percent = Une activité de l’eau de { $activity } est impossible ; elle est de 1 au plus. Un pourcentage a-t-il été saisi ? { $activity } %, c’est { $meant }.
reading-activity-high = Une activité de l’eau de { $activity } est impossible ; elle est de 1 au plus.
reading-activity-low = Une activité de l’eau de { $activity } est impossible ; elle est de 0 au moins.
reading-salt = { $salt } % de sel dans l’eau : impossible ; elle n’en tient pas plus d’environ 26 %.

## Duties

percent-cannot-be = { $percent } % : impossible. Donnez un nombre entre 0 et 100.
percent-part-of-one = { $percent } a l’air d’une fraction. Écrivez-le en pour cent : { $meant }.
approval-ended = { $number } (pour : { $work }) a pris fin le { $until }. Faites-le renouveler et saisissez la nouvelle date.
approval-needed-in = En { $place } : { $work }, il faut d’abord { $needs }. Saisissez son numéro ; ailleurs, demandez à votre autorité ce qu’elle veut.
approval-needed = { $work } : il faut d’abord { $needs }. Saisissez son numéro, ou demandez-le à l’autorité.
animal-banned = { $part } : { $named }, interdit ici ({ $from }). Retirez-le de la recette.
animal-sulphites = Il y a des sulfites dedans. La viande crue ne peut en avoir qu’en saucisse du petit-déjeuner, en viande à burger avec 4 % de légumes ou de céréales au moins, ou sous quelques noms à part ; dans toute autre, 10 mg/kg ou moins comptent pour rien. Voyez ce qui les apporte : ôtez-le, ou montrez combien c’est peu.
batch-beef-one-day = Un lot de bœuf ne dépasse jamais un jour de production. Faites un lot par jour.
batch-beef-unknown = { $what } : pas connu pour chaque pièce. Saisissez-le, ou laissez la pièce de côté.
batch-beef-differs = { $what } : différent ({ $one } et { $other }). Faites un lot de chacun.
batch-beef-several = { $what } : { $count } différents dans un lot, { $most } au plus. Faites deux lots.
batch-beef-kill-days = Des jours d’abattage différents d’un même abattoir peuvent partager le lot.
record-give-last-day = Ce registre se garde tant que l’aliment peut se manger. Saisissez son dernier jour.
listed-no-sales = Des ventes sous zéro sont impossibles. Saisissez la moyenne des trois dernières années.
listed-sells-little = La cuisine vend trop peu pour être concernée.
listed-not-listed = Ce n’est pas un aliment de la liste.
listed-inspected = Il est sous inspection des viandes ou des volailles.
listed-after-kill-step = Il est venu après une étape d’assainissement, ou n’est plus sur la liste.
listed-farm-pack = L’emballage intact d’une ferme la nomme.
listed-farm-itself = Acheté à la ferme même : gardez son nom et son adresse.
listed-other-shop = Acheté une fois dans un autre magasin : gardez le reçu.
listed-served = Gardez les données de réception ; ce qui n’est pas réexpédié n’en demande pas plus.
listed-leaves-list = Gardez les données de réception ; ce qui quitte la liste n’en demande pas plus.
listed-kill-step = Gardez les données de réception et la trace de l’étape d’assainissement.
listed-shipped-on = Gardez les données de réception, ce qui est entré, ce qui est sorti, et l’expédition.
sale-no-weight = { $weight } ne se vend pas. Pesez et saisissez.
sale-more-than-retail = { $head } : { $weight } en une seule vente ; { $most } au plus comptent comme vente au détail. Demandez au responsable.
name-quoted = « { $text } »
name-made-plain = « { $by } » dit bien ce que « { $word } » est ici.
name-packed-in = Il est emballé ainsi : { $liquid }, et le nom ne le dit pas. Nommez-le « { $name }, packed in { $liquid } ».
name-cut-of = « { $word } » seul ne vaut que pour : { $parts } ({ $species }). Saisissez cette partie, ou nommez-le pour ce qu’il est.
name-nitrite = « { $word } » ne se dit pas de ce qui contient du nitrite ou du nitrate. Retirez le mot.
name-salted = « { $word } » ne se dit pas de ce qui est salé pour se garder. Retirez le mot.
name-core-unread = « { $word } » demande { $least } à cœur ; rien n’a été mesuré. Cuisez à cœur, ou retirez le mot.
name-core-cool = « { $word } » demande { $least } à cœur ; c’était { $core }. Cuisez à cœur, ou retirez le mot.
name-shank-bones = « { $word } » est pour une pièce dont les deux os du jarret sont entièrement retirés.
name-bones = Il reste des os. Ajoutez { $add } au nom.
name-made-there = « { $word } » est pour ce qui a été fait là-bas. Ajoutez { $add } dans les mêmes caractères.
name-only-trichinae = « { $word } » ne se dit pas de ce qui n’a été chauffé que contre la trichine. Retirez le mot.
name-not-cooked = « { $word } » doit être cuit avant la vente. Saisissez d’abord la cuisson.
name-much-fat = { $part } % en sont de la graisse ({ $fat }) ; « { $word } » avec « { $fat } fat added » va jusqu’à { $most } %. Nommez le mélange.
name-say-fat = Ajoutez « { $fat } fat added » au nom.
name-say-where = Dites à côté du nom où il a vraiment été fait.
name-not-made-there = Il n’a pas été fait à cet endroit : { $place }. Ajoutez { $add } au nom, et le lieu où il a été fait.
gate-origin-unknown = L’étiquette d’une viande fraîche dit ici où l’animal a été élevé et abattu, et les listes ne savent pas les deux. Inscrivez le pays de la ferme et celui de l’abattoir.
gate-beef-unknown = L’étiquette de la viande bovine dit ici où l’animal est né, a été élevé et abattu, et dans quel abattoir. Tout n’est pas connu : inscrivez-le avec la ferme et l’abattoir, ou gardez le papier du fournisseur à côté du paquet.
gate-no-list = Un paquet de plusieurs ingrédients porte ici leur liste, et cette étiquette n’a pas de place pour elle. Prenez une étiquette qui en a.
gate-no-date = Un paquet pour un client porte ici une date, et celui-ci n’en a pas. Inscrivez combien de temps le produit se garde.
gate-no-tenderised-name = Des lames ou des aiguilles ont traversé ce bœuf : son nom dit l’un de ces mots, { $one_of }. Mettez-le dans le nom du produit.
tenderised-too-cool = L’étiquette dirait de cuire ce bœuf à { $core }. Des lames ou des aiguilles l’ont traversé : il lui faut { $at_least } pendant { $hold }, ou plus chaud. Mettez-le dans le mode de cuisson du produit.
tenderised-too-short = L’étiquette dirait de cuire ce bœuf à { $core } sans tenue assez longue. Des lames ou des aiguilles l’ont traversé : à cette chaleur, il lui faut { $hold }. Mettez-le dans le mode de cuisson du produit.
gate-no-tenderised = La viande a été attendrie, et l’étiquette doit porter « { $words } ». Prenez une étiquette qui a de la place pour cette mention.
gate-lacks = Il manque sur l’étiquette une chose qu’un paquet pour un client indique ici : { $item }.
gate-lacks-in = Il manque sur l’étiquette, en { $language }, une chose qu’un paquet pour un client indique ici dans les deux langues : { $item }.
gate-not-named = Il n’a pas de nom en { $language } : « { $name } » serait sur l’étiquette. Inscrivez son nom dans cette langue avec le produit.
gate-part-not-named = L’ingrédient « { $name } » n’a pas de nom en { $language }. Inscrivez-le avec le produit.
gate-for-kitchen = C’est une étiquette pour la cuisine, et le comptoir vend ce produit. Un client reçoit l’étiquette de vente.
gate-no-address = Un paquet pour un client dit ici où est la cuisine, et son adresse n’est pas inscrite. Inscrivez-la avec la cuisine.
naming-qualifier = D’après ses protéines, ce nom demande d’autres mots. Nommez-le « { $name } ».
naming-protein-unknown = Le nom seul est pour { $least } % ou plus de protéines de viande dans la part non grasse. Faites mesurer protéines et gras, et inscrivez-les avec le produit.
naming-meat-protein-unsaid = Quelque chose a été ajouté à cette pièce, et son nom indique le minimum de protéines de viande. Écrivez-le dans le nom : « { $percent } % de protéines de viande ».
naming-meat-protein-unknown = De l’eau a été ajoutée : il faut au moins { $least } % de protéines de viande, et le nom l’indique. Faites-les mesurer et inscrivez-les avec le produit.
naming-mince-unknown = Une viande hachée de cette sorte a au plus { $fat } % de gras et { $collagen } % de collagène dans ses protéines de viande. Personne n’a dit combien elle en a : inscrivez les deux avec le produit.
naming-no-nitrite-in = « { $word } » est pour ce qui ne contient ni nitrite ni nitrate. Faites-le sans, ou laissez le mot.
naming-no-nitrite-claim = « { $words } » demande d’autres mots à côté du nom. Inscrivez avec le produit comment il est fait sans nitrite.
naming-nitrite-declared = Le nom dit qu’aucun nitrite n’a été employé, et la liste d’un paquet qui y entre porte { $what }. Changez le nom.
naming-nitrite-by-nature = Le nom dit « { $words } », et { $source } y apporte du nitrite. Changez le nom.
naming-solution = Ce qui a été ajouté fait { $percent } % de la viande crue. Indiquez-le dans le nom, en chiffres avec le signe : « contenant { $percent } % d’une solution ».
naming-added-water = { $percent } % a été ajouté, d’après la liste des produits. Au-dessus de { $most } %, une pièce, un rôti, une tranche ou une carcasse porte « avec eau ajoutée » dans son nom, dans chaque langue.
naming-unlisted = { $name } : plusieurs choses dedans, et personne n’a dit lesquelles. Saisissez sa recette, ou à la réception ce que son emballage déclare.
naming-denies = La dénomination annonce sans { $what }, et il y en a : { $what }. Changez le nom.
naming-denies-animal = La dénomination dit « { $word } », et il y a dedans : { $what }. Changez le nom.
naming-called-cured = Le nom dit salaisonné, et il est entré { $ppm } ppm de nitrite et de nitrate : le mot vaut pour du sel et au moins { $least } ppm. Appelez-le salé, ou demandez à l’autorité.
naming-tells-allergen = Le nom annonce { $what }, et les allergènes de cet aliment n’en disent rien. Cochez-les, ou donnez-lui un autre nom : ni étiquette ni lecture n’avertit de ce qui n’est pas coché.
naming-other-animal = La dénomination parle de { $named }, et la viande qu’il contient est : { $is }. Nommez la viande qui y est.
naming-say-animal = C’est du { $what }, et la dénomination ne le dit pas. Mettez-le dans le nom.
naming-not-alone = La dénomination ne parle que de { $named }, et il y a aussi de la viande de { $others } dedans. Nommez-la aussi, ou faites-le sans.
naming-say-uncured = Ce produit se sale d’ordinaire au nitrite, et il n’y en a pas : il ne se vend pas sous ce seul nom. Inscrivez avec le produit qu’il est vendu sans nitrite, et l’étiquette dira { $words }.
naming-mince-else = Il est inscrit comme viande hachée d’une autre sorte ({ $told }) ; d’après les animaux qui y sont, ou son nom, c’est { $is }. Rectifiez l’inscription.
naming-added-else = Le produit est inscrit avec { $told } % ajoutés ; d’après ce qui a été pesé c’est { $weighed } %. Corrigez celui qui est faux.
naming-moisture-unknown = « { $name } » a au plus { $most } parts d’eau pour une de protéines. Faites mesurer les deux et inscrivez-les avec le produit.
naming-no-protein = Une viande sans protéines n’existe pas. Inscrivez ce que le laboratoire a trouvé.
naming-more-than-whole = Ensemble cela fait { $sum } %, plus que le tout. Vérifiez chacun.
pork-give-added = Ce nom énonce le pourcentage d’ingrédients ajoutés. Saisissez-le.
pork-no-protein = De la viande sans protéines : impossible. Saisissez ce que le laboratoire a trouvé.
pork-more-than-whole = { $protein } % de protéines et { $fat } % de matières grasses font plus que le tout. Vérifiez les deux.
pork-bacon = Il pèse { $part } % de la poitrine fraîche ; un bacon prêt à trancher va jusqu’à { $most } %. Laissez-le sécher.
pork-fat = { $percent } % de matières grasses ; { $most } % au plus.
pork-shank = { $percent } % de jarret au-dessus de la part normale ; { $most } % au plus.
pork-no-weight = { $weight } : impossible. Pesez la pièce et saisissez.
dry-cured-heavy = Il pèse { $part } % du poids frais ; { $most } % au plus pour porter ce nom. Laissez-le sécher encore.
dry-cured-little-salt = Sel à l’intérieur : { $salt } % ; ce nom demande { $least } % ou plus.
dry-cured-measure-salt = Faites mesurer le sel à l’intérieur : ce nom demande { $least } % ou plus.
dry-cured-more-than-whole = { $salt } % de sel et { $water } % d’eau font plus que le tout. Vérifiez les deux.
dry-cured-activity-cannot-be = Une activité de l’eau de { $activity } est impossible. Elle se tient entre 0 et 1.
dry-cured-unmeasured = Sans nitrite, ce nom demande une saumure de { $brine } % ou plus, ou une activité de l’eau de { $activity } ou moins ; ni l’une ni l’autre n’a été mesurée.
dry-cured-brine = Sans nitrite, ce nom demande une saumure de { $brine } % ou plus, ou une activité de l’eau de { $activity } ou moins ; la saumure est à { $is } %.
dry-cured-activity = Sans nitrite, ce nom demande une saumure de { $brine } % ou plus, ou une activité de l’eau de { $activity } ou moins ; l’activité de l’eau est de { $is }.
dry-cured-both = Sans nitrite, ce nom demande une saumure de { $brine } % ou plus, ou une activité de l’eau de { $activity } ou moins ; relevé : { $has } % et { $is }.
dry-cured-whole-days = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } en tout ; la norme en nomme { $least } (non exigé, mais bonne pratique).
dry-cured-cure-days = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } de salaison et de repos ; la norme en nomme { $least } (non exigé, mais bonne pratique).
dry-cured-core = Le cœur a atteint { $core } ; la norme nomme { $most } (non exigé).
mince-no-sample = Il n’y a pas d’échantillon du jour. Saisissez les matières grasses et le collagène d’un échantillon au moins.
mince-fat = Moyenne du jour : { $percent } % de matières grasses ; viande hachée « { $kind } » : { $most } % au plus. Nommez-la autrement, ou ajoutez de la viande plus maigre.
mince-collagen = Moyenne du jour : { $percent } % de collagène dans les protéines de viande ; viande hachée « { $kind } » : { $most } % au plus. Nommez-la autrement, ou ajoutez de la viande plus maigre.
mince-fat-edge = { $percent } % de matières grasses, c’est juste la limite ; une source l’imprime comme insuffisant.
mince-collagen-edge = { $percent } % de collagène dans les protéines de viande, c’est juste la limite ; une source l’imprime comme insuffisant.
mince-salt = { $salt } % de sel : la viande hachée en a moins de { $under } %. Nommez-la préparation de viandes.
mince-refrozen = Elle a été décongelée une fois et ne se recongèle pas. Utilisez-la maintenant, ou cuisez-la.
mince-meat-fat = { $percent } % de matières grasses : au-dessus de { $most } %, ce n’est pas de la viande. Retirez l’excès de la teneur en viande et indiquez-le comme graisse.
mince-meat-tissue = { $percent } % de tissu conjonctif : au-dessus de { $most } %, ce n’est pas de la viande. Retirez l’excès de la teneur en viande et indiquez-le comme tissu conjonctif.
mince-meat-protein = { $protein } % de protéines de viande ; il en faut { $least } % ou plus. Ajoutez moins d’eau.
identity-fat = « { $word } » a au plus { $most } % de gras ; ceci en a { $fat } %.
identity-fat-unknown = « { $word } » a au plus { $most } % de gras. Personne n’a dit combien en a ceci.
identity-water = « { $word } » a au plus { $most } % d’eau ajoutée ; ceci en a { $water } %.
identity-together = Gras et eau ajoutée dans « { $word } » font au plus { $most } % ; ici ils font { $percent } %.
identity-meat = « { $word } » est pour au moins { $least } % de la viande ; ceci l’est pour { $meat } %.
identity-weight = « { $word } » pèse au plus { $most } % de son poids frais ; ceci pèse { $percent } %.
identity-organ = « { $word } » contient au moins { $least } % de « { $organ } » ; ceci en contient { $percent } %.
identity-has-organ = « { $word } » doit contenir au moins { $least } % de « { $organ } ». Inscrivez sa recette.
identity-lacks = « { $word } » contient l’un de ceux-ci : { $one }. Ceci n’en a aucun.
identity-has-one-of = « { $word } » doit contenir l’un de ceux-ci : { $one }. Inscrivez sa recette.
identity-other-animal = « { $word } » ne vient que d’un animal, et il y a aussi ceci dedans : { $others }. Nommez-le aussi dans le nom du produit, ou faites-le sans.
identity-whole-animal = « { $word } » est la viande de tout l’animal dans ses proportions, et il y manque ceci : { $parts }. Donnez-lui un autre nom, ou faites-le de tout.
identity-one-animal = La viande de ce « { $word } » ne vient que d’un animal, et le nom dit lequel : écrivez « { $meat } » devant.
identity-without = « { $word } » ne contient rien de tel : { $what }. Laissez-le, ou nommez-le autrement.
identity-fat-as-such = « { $word } » ne contient pas de gras ajouté comme tel. Prenez de la viande plus grasse, laissez le gras, ou nommez-le autrement.
identity-say-too = « { $word } » avec du nitrite dit aussi « { $add } » dans son nom.

## GS1

gtin-digits = Un GTIN n’a que des chiffres : copiez-le du certificat GS1.
gtin-length = Un GTIN a 8, 12, 13 ou 14 chiffres, pas { $length } : copiez-le en entier.
gtin-check-digit = Le dernier chiffre du GTIN ne va pas avec les autres : l’un est mal lu ou mal tapé.
gtin-restricted = Les numéros qui commencent par 02, 04, 20 à 29 ou qui n’ont que des zéros servent à l’intérieur d’un seul magasin. Ce ne sont pas des GTIN : laissez vide si GS1 ne vous en a pas donné.
element-nothing = Le code-barres ne contient rien.
element-length = ({ $ai }) contient « { $value } », qui n’a pas la bonne longueur : scannez de nouveau.
element-character = ({ $ai }) contient « { $character } », qu’aucun code GS1 ne peut contenir : scannez de nouveau.
element-not-digits = ({ $ai }) contient « { $value } » au lieu de chiffres : scannez de nouveau.
element-check-digit = Le chiffre de contrôle de { $value } dans ({ $ai }) est faux : scannez de nouveau.
element-no-day = ({ $ai }) contient { $value }, qui n’est pas un jour : lisez la date sur l’étiquette.
element-no-time = ({ $ai }) contient { $value }, qui n’est pas une heure : lisez-la sur l’étiquette.
element-unknown = ({ $ai }) n’est pas un identifiant de données.
element-unknown-at = Aucun identifiant de données connu ici : « { $text } ».
element-two-things = ({ $ai }) y figure deux fois et dit deux choses.
element-twice = ({ $other }) et ({ $ai }) disent deux fois la même chose.
element-open-bracket = Une parenthèse n’est pas fermée.
element-ends-early = Le code-barres finit au milieu d’un identifiant.
element-cut-off = ({ $ai }) est coupé : scannez de nouveau.
element-badly-encoded = « { $text } » n’est pas bien formé dans une adresse.
link-no-key = Sans GTIN il n’y a pas d’adresse GS1 : prenez l’adresse de la cuisine.
link-place = ({ $ai }) ne peut pas être à cet endroit d’une adresse GS1.
link-value = { $why }
link-no-address = Ce n’est pas une adresse web : elle commence par https://.
gs1-gtin = { $why }
gs1-lot = « { $lot } » ne peut pas être le lot dans un code GS1 : 1 à { $longest } lettres, chiffres et les signes ! " % & ' * + , - . / : ; < = > ? _
gs1-weight-missing = Le GTIN commence par 9, donc chaque paquet a son propre poids : pesez-le d’abord.
gs1-weight-not-wanted = Le GTIN ne commence pas par 9, donc tous ses paquets pèsent pareil : laissez le poids hors du code, ou demandez à GS1 un GTIN pour marchandise au poids.
gs1-weight-range = Le poids doit être plus de { $none } et moins de { $most } pour aller dans un code GS1.
gs1-year = Un code GS1 contient les années 2000 à 2099, pas { $year }.
gs1-no-gtin = ({ $ai }) ne veut rien dire sans GTIN : imprimez plutôt le code simple.
gs1-not-together = ({ $one }) et ({ $other }) ne vont pas ensemble.
gs1-too-long = Un code-barres GS1 contient { $longest } caractères, et celui-ci en aurait { $length } : laissez de côté le numéro de paquet ou la date.
gs1-unreadable = { $why }
gs1-link = { $why }
till-layout-form = Un format de caisse a douze places et ce qu’elles contiennent, comme 20PPPPPCVVVV price 2 ou 28PPPPCVVVVV weight 3 : le préfixe en chiffres, P pour le numéro d’article, C pour le vérificateur, V pour le prix (price) ou le poids (weight).
till-layout-prefix = { $prefix } est le début de vrais numéros d’article : un format de caisse commence par 02, 04 ou 20 à 29.
till-layout-verifier = Un vérificateur (C) ne va qu’avec quatre ou cinq chiffres de valeur (V).
till-layout-decimals = Un prix a au plus 2 décimales, un poids au plus 3, et aucun n’en a plus que de V.
till-item = Le numéro d’article { $item } est trop long pour le code de caisse : { $digits } chiffres au plus.
till-price-too-much = Le prix { $price } est trop élevé pour le code de caisse : faites des paquets plus petits, ou n’imprimez pas de code de caisse.
till-weight-too-much = Le poids { $grams } est trop élevé pour le code de caisse : faites des paquets plus petits, ou n’imprimez pas de code de caisse.
till-price-too-fine = Le prix { $price } a plus de décimales que le code de caisse : arrondissez-le là où il est fixé, pas ici.
till-weight-too-fine = Le poids { $grams } a plus de décimales que le code de caisse : arrondissez-le là où il est fixé, pas ici.
till-other-measure = Le code de caisse veut un prix là où il y a un poids, ou l’inverse.
till-nothing = Un paquet sans prix ni poids n’a pas de code de caisse : fixez-le d’abord.
till-misread = Ce ne sont pas les 13 chiffres d’un code de caisse : scannez de nouveau.
till-foreign = Ce n’est pas un code de caisse de ce magasin.
till-verifier = Le prix ou le poids du code de caisse est mal lu ou changé : pesez et scannez de nouveau.

## Problems, requests, lists

title-cannot-be = Une valeur impossible
title-never-issued = Jamais attribué
title-not-enough = Il n’en reste pas assez
title-voided = Annulé
title-in-the-way = Des actes plus récents en dépendent
title-clash = Contraire à ce que dit le registre
title-missing = Compté comme manquant
title-limit = Au-delà d’une limite
title-stopped = Arrêté
title-held = Bloqué
title-not-released = Pas libéré
title-not-found = Introuvable
title-id-used = L’identifiant a déjà servi
title-nothing-to-label = Rien à étiqueter
title-printed-before = Déjà imprimé
title-size-not-there = L’imprimante n’a pas ce format
title-label-does-not-hold = L’étiquette ne peut pas tout contenir
title-sheet-does-not-hold = La feuille ne peut pas tout contenir
title-label-not-made = L’étiquette ne peut pas être faite
title-label-not-shown = L’étiquette ne peut pas être affichée
title-which-version = Quelle version ?
title-changed-meanwhile = Modifié entre-temps
title-not-json = Pas du JSON
title-too-large = Trop grand
title-cut-off = Envoi interrompu
title-method = Méthode non admise
title-unreadable = Illisible
title-database-full = La base de données est pleine
title-database-away = La base de données est injoignable
title-database-locked = Un autre programme occupe la base de données
title-damaged = Le registre est endommagé
title-clock = L’horloge est fausse
service-database-full = Rien n’a été enregistré. Faites de la place sur le disque, puis réessayez.
service-database-away = Rien n’a été enregistré. Réessayez dans un instant.
service-database-locked = Un autre programme écrit dans la base de données et ne la rend pas. Rien n’a été enregistré. Arrêtez ce programme, ou réessayez dans un instant.
service-damaged = Le registre n’a pas pu être lu comme il faut. Rien n’a été enregistré. Lancez `gambrel check` et voyez le journal.
service-clock-before-build = L’horloge de cette machine indique { $now } UTC, avant la construction de ce programme.
service-clock-before-deed = L’horloge de cette machine indique { $now } UTC, avant la dernière inscription au registre ({ $last } UTC).
service-clock-leapt = L’horloge de cette machine indique { $now } UTC : elle a été avancée de { $minutes } minutes pendant que le service tournait.
service-clock-set-back = L’horloge de cette machine indique { $now } UTC : elle a été retardée de { $minutes } minutes pendant que le service tournait.
service-clock-far-ahead = L’horloge de cette machine indique { $now } UTC, et le dernier acte au registre est du { $last } UTC.
service-clock-ahead-of-database = L’horloge de cette machine indique { $now } UTC, celle de la base { $database } UTC.
service-set-it-right = Rien n’est enregistré et rien ne se vend d’après sa date tant que l’horloge n’est pas réglée, ou qu’un responsable n’a pas dit qu’elle est juste.
service-nothing-recorded = { $why } Rien n’est enregistré tant qu’elle n’est pas remise à l’heure.
request-send-json = Envoyez du JSON, avec Content-Type: application/json.
request-too-large = Un envoi fait au plus 1 Mo. Envoyez l’acte en plusieurs parties.
request-cut-off = L’envoi n’est pas arrivé entier.
request-not-json = Ce n’est pas du JSON : voyez ligne { $line }, colonne { $column }.
request-ends-early = Ce n’est pas du JSON : il finit trop tôt.
request-no-object = Il faut un objet avec des champs nommés. Envoyez-en un.
request-missing-field = Il manque le champ `{ $name }`.
request-unknown-field = Champ inconnu : `{ $name }` ; il y a { $known }.
request-no-fields = Champ inconnu : `{ $name }` ; il n’y a pas de champs ici.
request-twice = Le champ `{ $name }` est là deux fois.
request-not-that = Il faut ici { $wanted }, pas { $told }.
title-database-disk = Le disque est en panne
title-database-read-only = La base n’accepte aucune écriture
title-database-gone = La base a disparu
title-database-emptied = La base a été vidée
title-busy = Trop à la fois
title-too-slow = Trop lent
service-database-disk = Rien n’a été enregistré. Le disque signale une erreur : voyez le journal, et occupez-vous du disque avant tout.
service-database-read-only = Rien n’a été enregistré. La base ne peut être que lue : laissez le service y écrire à nouveau.
service-database-gone = Rien n’a été enregistré. Le fichier du registre a été enlevé ou remplacé par un autre. Remettez-le et relancez le service.
service-database-emptied = Rien n’a été enregistré. Ce qui était au registre n’y est plus. Restaurez la dernière copie.
service-busy = Le service est occupé. Réessayez dans un instant.
request-too-slow = L’envoi n’est pas arrivé entier en { $seconds } secondes.
request-long-address = L’adresse est trop longue.
request-long-headers = Les en-têtes sont trop longs.
request-unread-value = Cette valeur ne se lit pas.
request-no-number = Il faut ici un nombre entier.
request-no-truth = Il faut ici true ou false.
request-query = La requête est illisible. { $says }
request-method = Ce chemin accepte { $methods }.
request-unreadable = Cette requête est illisible. Regardez ce qui a été envoyé et renvoyez-le.
request-scanned = Qu’a-t-on scanné ? Envoyez-le par ?code=…
kind-text = du texte
kind-quoted = le texte « { $text } »
kind-truth = true ou false
kind-whole-number = un nombre entier
kind-counting-number = un nombre entier, 0 ou plus
kind-number = un nombre
kind-figure = { $figure }
kind-nothing = null
kind-list = une liste
kind-object = un objet avec des champs nommés
kind-other = une autre sorte de valeur
value-empty = C’est vide. Remplissez-le, ou ne l’envoyez pas.
value-too-long = C’est plus long que { $most } caractères. Raccourcissez-le.
value-unseen = Il y a là un caractère que personne ne voit ({ $code }). Saisissez-le à nouveau.
value-unprintable = Il y a là un caractère qui ne s’imprime pas. Tapez-le à la main.
value-no-day = « { $text } » n’est pas un jour ; écrivez-le comme 2026-06-08.
value-no-time = « { $text } » n’est pas un moment ; écrivez-le comme 2026-06-10T09:05:00-04:00, avec son décalage horaire.
value-no-code = « { $text } » n’est pas un code : lettres minuscules, chiffres et tirets, 64 au plus.
value-none-of = « { $text } » n’est pas l’un de : { $words }.
value-no-uuid = « { $text } » n’est pas un UUID ; l’appareil en fait un par acte.
value-too-much = { $number } est plus que ce qui peut être gardé.
value-too-fine = { $number } a plus de { $places ->
    [one] { $places } décimale
   *[other] { $places } décimales
 }.
value-no-money = { $number } n’est pas un montant.
value-no-fingerprint = « { $text } » n’est pas l’empreinte (SHA-256) d’un certificat : elle a 64 chiffres hexadécimaux.
labels-name-packs = Un acte peut faire plusieurs lots : indiquez les paquets aux étiquettes du lot lui-même.
labels-nothing-held = Rien de ce que ce rappel bloque n’est encore en stock, il n’y a donc rien à étiqueter.
labels-no-lots = Cet acte ({ $kind }) n’a fait aucun lot, il n’a donc pas d’étiquettes.
labels-in-parts = { $labels } étiquettes viennent en { $parts } parties de { $most } : demandez-les une à une, de part=1 à part={ $parts }.
labels-no-part = Il n’y a pas de partie { $part } : ces étiquettes viennent en { $parts }. Demandez l’une d’elles.
labels-no-packs = « { $text } » ne désigne pas de paquets ; écrivez-les comme 1,2,5-9.
labels-no-sheet = Il n’y a pas de feuille « { $sheet } ». Les feuilles sont : { $sheets }.
list-name-farms = fermes
list-name-abattoirs = abattoirs
list-name-suppliers = fournisseurs
list-name-places = lieux
list-name-products = produits
list-name-recipes = recettes
list-name-printers = imprimantes
list-name-probes = sondes
entry-not-there = « { $code } » n’est pas dans la liste des { $list }.
entry-add-or-choose = « { $code } » n’est pas dans la liste des { $list }. Ajoutez-le, ou choisissez autre chose.
entry-add-first = « { $code } » n’est pas dans la liste des { $list }. Ajoutez-le d’abord.
entry-otherwise = { $code } est déjà dans la liste des { $list }, avec un autre contenu. Modifiez-le par PUT.
entry-path-says = Le chemin dit { $path }, la fiche dit { $entry }. Écrivez le même code aux deux endroits.
entry-changed-meanwhile = Modifié entre-temps : la version { $version } est en cours. Relisez-la, puis modifiez celle-là.
entry-which-version = Dites quelle version vous avez vue : envoyez son ETag comme If-Match.
entry-packs-as-before = { $packs ->
    [one] { $packs } paquet en stock date d’avant ce changement et garde
   *[other] { $packs } paquets en stock datent d’avant ce changement et gardent
  } ce qui valait alors : l’étiquette, le prix, la mise en vente. Seul ce qui est fait à partir de maintenant est nouveau. Pour changer ce qui est là, remballez-le ; ce qui est arrivé avec des données fausses se corrige sur sa réception.
entry-no-version = « { $text } » n’est pas une version ; envoyez l’ETag de la fiche telle que lue.
entry-no-house-code = « { $code } » ne peut pas commencer un code de lot : il faut 2 ou 3 majuscules, sans I, L, O, U.
entry-no-farm-code = « { $code } » n’est pas un code de ferme : 2 ou 3 majuscules, sans I, L, O, U.
entry-code-of-farm = { $code } est le code de la ferme { $farm }. Les codes des fermes et de la cuisine ne se partagent jamais. Choisissez un autre code pour la cuisine.
entry-code-of-kitchen = { $code } est le code de la cuisine. Les codes des fermes et de la cuisine ne se partagent jamais. Choisissez un autre code pour la ferme.
entry-no-name = Donnez un nom au produit dans au moins une langue.
entry-keep-days = { $days ->
    [one] { $days } jour
   *[other] { $days } jours
 } : impossible, de 1 à { $most }.
entry-cure-days = { $days } jours en salaison : impossible. Donnez de 1 à { $most }.
entry-no-cooking-degrees = Un mode de cuisson nomme une température à cœur : donnez celsius ou fahrenheit, et hold_minutes si elle est tenue.
entry-not-of-that-sort = Un produit de cette sorte ne peut pas être « { $says } » : seuls les ingrédients, et le gras fondu, se gardent par ce qu’ils sont. Laissez le champ vide ; un pH, une activité de l’eau ou une approbation montre qu’il se garde.
entry-no-language = « { $tag } » n’est pas une langue : deux lettres minuscules, comme en ou fr.
entry-recipe-parts = Une recette a de 1 à { $most } ingrédients.
entry-recipe-in-itself = { $part } contient déjà { $product } : une recette ne peut pas faire partie d’elle-même. Enlevez l’une des deux.
entry-recipe-too-deep = Les recettes s’emboîtent sur plus de { $most } niveaux. Faites d’une recette intérieure un lot à part.
kitchen-day-goes-back = À la cuisine, on est déjà le { $today }, et selon { $zone } encore le { $there } : ce qui a passé son dernier jour se vendrait de nouveau. Changez le fuseau horaire à une heure où les deux ont la même date.
kitchen-no-time-zone = « { $zone } » n’est pas un fuseau horaire ; écrivez-le comme America/New_York.
kitchen-languages = Indiquez de 1 à { $most } langues, la principale en premier.
kitchen-no-country = « { $country } » n’est pas un pays : deux majuscules, comme FR ou GB.
kitchen-country-of-number = Le numéro appartient à l’État qui l’a donné. Saisissez aussi le pays.
kitchen-not-written = « { $tag } » : ici les étiquettes ne sont pas écrites dans cette langue. Indiquez l’une de celles-ci : { $ours }.
kitchen-no-currency = « { $currency } » n’est pas une devise : trois majuscules.
kitchen-no-address = « { $url } » ne peut pas figurer dans un code : écrivez-le comme https://trace.kitchen.example
kitchen-drills = Entre deux exercices de rappel, il y a de 1 à { $most } mois.
kitchen-gs1-prefix = Un préfixe d’entreprise GS1 a de 4 à 12 chiffres.
named-elsewhere = « { $text } » est l’étiquette d’une autre cuisine. S’il est entré ici, réceptionnez-le comme un achat.
named-misread = « { $text } » ne tombe pas juste : un de ses caractères est faux. Relisez-le sur l’étiquette.
named-no-lot = « { $text } » n’est pas un code de lot ; ils ressemblent à BRC-26159-A03-0. Scannez l’étiquette, ou tapez-le de nouveau.
deed-of-somebody = { $kind } : { $by }, { $at }
deed-id-used = L’identifiant { $id } a servi à un autre acte ({ $kind }). Faites un nouvel identifiant pour chaque acte.
deed-unknown = Aucun acte au registre n’a l’identifiant { $id }. Cherchez l’acte sur la page de son lot.
deed-no-id = Aucun acte au registre n’a l’identifiant « { $id } ».
deed-mince-limit = { $findings } Est-ce le bon lot ? Si c’est fait, inscrivez-le tel quel, avec une note : c’est alors arrêté jusqu’à ce que quelqu’un décide.
deed-one-packing = Dites combien d’emballages, ou le poids de chacun : l’un des deux.
deed-two-packs = Le lot désigne le paquet { $one }, le champ pack le paquet { $other }. Dites une seule fois lequel des deux c’est.
deed-pack-or-packs = Donnez pack ou packs, pas les deux.
deed-packs-whole = Les paquets vont entiers ; grams ne vaut que pour un paquet. Donnez grams avec un seul paquet, ou ne les donnez pas.
deed-no-food-place = La nourriture ne touche pas ce lieu : { $place } ; les nettoyages concernent les plans de découpe et les machines. Choisissez-en un.
deed-weigh-or-missing = Dites ce que pèse le paquet, ou qu’il manque ; l’un ou l’autre.
deed-not-from-cure = { $lot } ne sort pas d’une salaison, il n’y a donc rien à libérer. Choisissez la pièce qui est au séchoir.
deed-why-back = Pourquoi est-il revenu ?
deed-which-back = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 }. Dites lequel est revenu.
deed-why-void = Dites pourquoi, pour qui le lira plus tard.
deed-take-off = Retirez ces étiquettes : { $lots }.
deed-labels-cancelled = { $labels ->
    [one] L’étiquette qui attendait encore l’imprimante est annulée.
   *[other] Les { $labels } étiquettes qui attendaient encore l’imprimante sont annulées.
  }
step-kind-receipts = POST /api/receipts prend ce qui arrive.
step-kind-moves = POST /api/moves prend les déplacements, la congélation et la décongélation.
step-kind-departures = POST /api/departures prend { $kind }.
step-kind-take-backs = POST /api/take-backs prend ce que les clients rapportent.
step-kind-readings = POST /api/readings prend les pesées et les relevés.
step-kind-counts = POST /api/counts prend les comptages.
step-kind-clean-downs = POST /api/clean-downs prend les nettoyages.
step-kind-voids = POST /api/steps/{"{"}id{"}"}/void annule un acte. Envoyez-le là.
step-kind-corrections = POST /api/corrections prend les corrections.
step-kind-no-step = « { $kind } » n’est pas une étape. Les étapes sont : { $steps }.
correct-deed-how-known = Dites comment on le sait, pour qui le lira plus tard.
correct-deed-which = Dites ce qui change, une chose à la fois : l’animal, l’achat, un relevé, un journal.
correct-deed-only-receipts = Un animal et un achat sont les faits d’une réception ; ceci est autre chose : { $kind }. Indiquez l’acte qui l’a réceptionné.
correct-deed-voided = Cet acte a été annulé : il ne compte plus, et il n’y a rien à y corriger. Saisissez ce qui s’est vraiment passé comme un nouvel acte ; si celui-là aussi est faux, corrigez celui-là.
correct-deed-was-bought = Ce lot a été acheté ; corrigez `bought`.
correct-deed-of-animal = Ce lot vient d’un animal ; corrigez `animal`.
correct-deed-side-taken = Cette partie de l’animal ({ $side }) est déjà { $lot }. Voyez laquelle des deux est juste, et corrigez d’abord l’autre.
correct-deed-corrected = Corrigé par { $by } ({ $kind }) : { $facts }. { $why }
correct-deed-undone = Une correction ({ $kind }) a été annulée par { $by }. { $why }
correct-deed-reading-voided = Un relevé a été annulé par { $by }. { $why }
correct-deed-deed-undone = Une saisie ({ $kind }) a été annulée par { $by } : ce qui a été fait depuis est jugé de nouveau. { $why }
correct-deed-told = { $by } l’a dit après coup ({ $kind }) : ce qui a été fait depuis est jugé de nouveau.
correct-deed-told-rule = ce qui s’est passé compte dès le moment où cela s’est passé
correct-deed-row-confirmed = { $by } a confirmé { $row } pour cette cuisine : ce qui l’attendait est jugé selon cette ligne.
correct-deed-left-past = { $pack } : { $grams } sont partis le { $at } ({ $kind }). D’après ce qu’on sait maintenant, son dernier jour était le { $date }. Cherchez qui les a, et prévenez.
correct-deed-left-not-ready = { $pack } : { $grams } sont partis le { $at } ({ $kind }) comme prêts à manger. D’après ce qu’on sait maintenant, ils ne le sont pas. Cherchez qui les a, et prévenez.
correct-deed-left-with-allergens = { $pack } : { $grams } sont partis le { $at } ({ $kind }). D’après ce qu’on sait maintenant, il contient plus qu’on ne l’a dit : { $allergens }. Cherchez qui les a, et prévenez.
correct-deed-other-lots = Du même animal, d’autres lots sont au dossier comme { $species } : { $lots }. Corrigez aussi leurs réceptions.
correct-deed-other-lots-as-told = Du même animal, d’autres lots sont au dossier tel qu’il avait été dit : { $lots }. Corrigez aussi leurs réceptions.
correct-deed-left-since = { $lot } : { $grams } sont partis le { $at } ({ $kind }), alors qu’un blocage encore inconnu s’y opposait. Cherchez qui les a.
correct-deed-rule = un fait corrigé compte comme s’il avait été juste dès le début
correct-deed-codes-stay = Les codes restent, même s’ils portent ce que l’on croyait avant ; aucune étiquette n’est fausse pour autant.
correct-deed-not-of = Cette saisie ({ $kind }) n’a pas un tel fait. Annulez-la et saisissez-la de nouveau.
correct-deed-as-known = C’est déjà ce que dit le registre. Si autre chose est faux, corrigez cela.
correct-deed-end-stays = Une correction laisse la fin de l’étape où elle est ({ $ended }), et un relevé tient dans son étape. Retirez ce qui a été lu à un autre moment et saisissez-le comme une lecture du lot ; si l’étape a fini à un autre moment, annulez-la et saisissez-la de nouveau.
correct-deed-tried = On a seulement demandé ce qui changerait.
fact-animal = animal
fact-bought = lot du fournisseur
fact-declared = ce que l’emballage déclare
fact-strength = teneur
fact-readings = relevés
fact-log = journal des températures
fact-standard = la règle appliquée
fact-stuffed = si c’est farci
fact-price = prix payé
receive-deed-no-curing-salt = { $product } n’est pas un sel nitrité dans la liste. Ajoutez d’abord sa teneur au produit.
receive-deed-too-warm = C’est arrivé trop chaud. { $findings } Est-ce bien saisi ? Si oui, renvoyez-le. S’il a été pris, inscrivez-le tel quel, avec une note : il est alors arrêté.
receive-deed-too-warm-mince = C’est arrivé trop chaud pour du haché. { $findings } Contient-il un assaisonnement ou autre chose que de la viande ? Donnez alors sa recette au produit : une préparation peut être moins froide. Si c’est du haché, renvoyez-le ; s’il a été pris, inscrivez-le tel quel, avec une note : il est alors arrêté.
receive-deed-strength-unread = Personne ne connaît la teneur de ce sel nitrité : ce qu’on sale avec lui n’est pas prouvé tant que personne n’a lu le sac et corrigé la réception.
receive-deed-how-strong = Quelle est sa teneur ? Lisez sur le sac le pourcentage de nitrite et de nitrate : il change d’un sac à l’autre.
receive-deed-two-strengths = Le sac est décrit deux fois, et chaque fois autrement. Relisez-le sur le sac, et dites-le dans un seul champ.
receive-deed-strength-from-list = La teneur de ce sel nitrité a été prise dans la liste. Elle change d’un sac à l’autre : si ce sac dit autre chose, saisissez-la sur la page de son lot, sous « La teneur du sac ».
receive-deed-one-source = Un lot vient d’un animal ou d’un achat, pas des deux. Donnez l’un des deux.
receive-deed-which-source = Dites de quel animal il vient (animal), ou où il a été acheté (bought ou barcode).
receive-deed-packed-later = Emballé le { $packed }, réceptionné le { $received }. L’une des deux dates est fausse. Regardez le paquet et saisissez de nouveau.
receive-deed-other-species = Espèce de cette carcasse au registre : { $known }, pas { $told }. Regardez le numéro de carcasse. Si c’est le registre qui se trompe, corrigez la réception qui l’a fait entrer.
receive-deed-no-weight = Combien pèse-t-il ? Le code-barres ne le dit pas.
receive-deed-carton-differs = Le code-barres du carton dit autre chose. Laissez ce champ vide, ou vérifiez le carton.
receive-deed-what-is-it = Qu’est-ce que c’est ? Indiquez le produit, ou scannez un code-barres qui contient son GTIN.
receive-deed-gtin-unknown = Aucun produit de la liste n’a le GTIN { $gtin }, ni celui d’un autre colis du même article. Ajoutez-le à son produit (gtin), ou indiquez le produit.
receive-deed-gtin-of-several = Le GTIN { $gtin } peut être l’un de ceux-ci : { $products }. Indiquez le produit.
measure-between = Il faut une valeur entre { $least } et { $most }.
measure-between-degrees = Il faut une valeur entre { $least } et { $most }. L’échelle est-elle la bonne, Celsius ou Fahrenheit ?
measure-one-scale = Donnez la température une seule fois, en Celsius ou en Fahrenheit, telle que la sonde l’a montrée.
measure-between-parts = Il faut une valeur entre { $least } et { $most }. Serait-ce un pourcentage ?
measure-brine = Cela fait { $salt } % de sel dans la saumure.
measure-of-what = De quoi ? Indiquez un lot ou un lieu.
measure-empty = Il n’y a aucun relevé. Saisissez ce qui a été relevé.
measure-place-not-weighed = Un lieu ne se pèse pas ; indiquez le lot.
measure-not-cured = Aucune règle ne dit comment elle a été salée ici : il n’y a pas de limite à laquelle comparer le résultat.
measure-nothing-left = Il ne reste rien de { $lot } à mesurer. Choisissez le lot que vous avez devant vous ; s’il reste de celui-ci, comptez-le d’abord.
measure-held-wrong = { $product } ({ $lot }) n’est pas tenu comme il faut. { $findings } Remettez-le au froid, ou au chaud, maintenant, vérifiez le lieu, et notez combien de temps cela a duré.
cure-deed-sold-later = À partir du { $day }, la vente est interdite : { $findings } Vendez avant cette date, ou mettez de côté et demandez au responsable.
cure-deed-not-said-how = Du sel nitrité entre, mais la liste ne dit pas comment se sale ceci : { $product }. Ajoutez « cure » (classe et méthode) au produit, ou « curing_salt » si c’est une saumure ou un mélange de sels ; les limites en dépendent. Si c’est déjà fait, saisissez-le tel quel, avec une note : ce qui en sort est alors bloqué.
cure-deed-unsaid-how = Du sel nitrité est entré, et la liste ne disait pas comment se sale ceci : { $product }. Aucune limite n’a été vérifiée.
cure-deed-strength-unknown = Personne ne connaît la teneur du lot { $lot } : rien ne montre combien de nitrite est entré. Corrigez sa réception avec la teneur indiquée sur le sac ; la salaison est jugée de nouveau.
cure-deed-no-nitrite = D’après la liste, ce produit est salé au nitrite, et aucun sel nitrité de teneur connue n’y est entré : rien ne montre qu’il est salé ({ $product }).
cure-deed-no-salt = Ce produit est salé, et aucun sel n’a été pesé : rien ne montre qu’il est salé ({ $product }). Mettez le lot de sel parmi ce qui entre.
cure-deed-salt-alone = { $salt } de sel pour { $meat } de viande, sans sel nitrité : { $percent } % de sel.
cure-deed-mixed = Pesé ensemble, il contient { $nitrite } % de nitrite, { $nitrate } % de nitrate et { $salt } % de sel.
cure-deed-brought = De cela, { $nitrite } ppm de nitrite et { $nitrate } ppm de nitrate sont venus de viande déjà salée.
cure-deed-rule = ce qui a été pesé
cure-deed-going-in = { $salt } de sel nitrité pour { $meat } de viande, { $method } : { $nitrite } ppm de nitrite de sodium ajoutés, { $percent } % de sel.
cure-deed-both-going-in = { $salt } de sel nitrité pour { $meat } de viande, { $method } : { $nitrite } ppm de nitrite de sodium et { $nitrate } ppm de nitrate de sodium ajoutés, { $percent } % de sel.
heat-deed-no-core = Aucune température à cœur n’est inscrite pour cette cuisson. Mesurez la partie la plus épaisse et saisissez-la : la date en dépend.
heat-deed-no-reading = Ce point du relevé n’a pas de température. Saisissez ce que la sonde a montré, ou combien de minutes cela a bouilli.
heat-deed-no-cooling = Aucun relevé ne montre en combien de temps cela s’est refroidi. Saisissez les mesures avec une étape de refroidissement : sans elles, rien ne distingue ce qui s’est refroidi trop lentement.
heat-deed-cooling-begun = Noté. La vitesse du refroidissement se lit dans les mesures qui suivent : saisissez la prochaine sur la même page.
heat-deed-not-chosen = Le barème ou le plan de refroidissement est indiqué, mais sans aucune mesure.
trichinae-deed-no-degrees = À quelle température ? Donnez celsius ou fahrenheit.
trichinae-deed-untested-unread = Il y a de la viande de { $species } dans { $lot }. Selon une ligne que personne ici n’a lue, seul l’examen de la carcasse parle pour elle, et aucune cuisson n’en tient lieu ({ $source }). Ayez le papier de l’examen avant de vendre.
trichinae-deed-untested = Il y a de la viande de { $species } dans { $lot }, et seul l’examen de la carcasse parle pour elle : aucune cuisson n’en tient lieu ({ $source }). Ce qui en est fait est bloqué jusqu’à ce qu’un responsable le libère en son nom, avec le numéro de l’examen.
trichinae-deed-tested-only = { $lot } est d’un animal dont chaque carcasse est analysée : seule une analyse de la carcasse le garantit ({ $source }). Inscrivez le papier de l’analyse.
trichinae-deed-record-rule = ce que le registre sait de sa salaison et de ses salles
trichinae-deed-nothing-speaks = { $lot } se mange sans cuisson et contient de la viande qui peut porter la trichine ({ $species }) ; rien au registre ne le garantit. Saisissez comment il a été congelé ou chauffé, la méthode de salaison et de séchage, ou le papier qui en dispense : l’analyse de la carcasse ou le certificat de la ferme.
labels-sheet-too-small = Une étiquette de { $width } sur { $height } mm ne tient pas sur la feuille « { $sheet } » : entre ses marges il y a { $across } sur { $along } mm.
labels-sheet-places = La feuille « { $sheet } » a { $places } places pour ces étiquettes ; { $skip } ne peuvent pas être déjà prises.
labels-not-drawn = L’étiquette ne peut pas être dessinée : { $cause }.

## Pages

page-nav-today = Aujourd’hui
page-nav-lots = Lots
page-nav-cure-room = Saloir et séchoir
page-nav-animals = Animaux
page-nav-printing = Impression
page-footer = La réglementation locale et les professionnels habilités décident.
page-find = Chercher
page-box = Scanner ou écrire
page-box-how = Une étiquette, la moitié d’un code, un numéro de carcasse, une boucle d’oreille, un produit, un lieu ou un nom : tout se tape ici.
page-found-nothing = Rien ici ne s’appelle « { $said } »
page-found-some = « { $said } » peut être
page-found-elsewhere = C’est l’étiquette d’une autre cuisine.
page-found-places = Lieux
page-found-farms = Fermes
page-found-products = Produits
page-found-all-lots = Tous les lots qui conviennent
page-ways = Où aller
page-ways-counter = Comptoir
page-ways-settings = Réglages
page-ways-labels = Étiquettes
page-ways-found = Retrouver
page-ways-kitchen = Au plan de travail
page-did = { $deed } : { $by }, { $at }.
page-did-to = { $deed } : { $what }. { $by }, { $at }.
page-things = { $name } et d’autres, { $lots } lots
page-lot-missing = { $packs ->
    [one] Manquant : le paquet { $numbers }, { $weight }. Un comptage ne l’a pas trouvé ; tant que personne ne le retrouve, cela reste inexpliqué.
   *[other] Manquants : les paquets { $numbers }, { $weight }. Un comptage ne les a pas trouvés ; tant que personne ne les retrouve, cela reste inexpliqué.
}
page-act-see-lot = Sa page
page-undo = Annuler
page-undo-ask = Seul un responsable peut annuler ceci : { $names }.
page-undo-why = Annulé aussitôt
page-apart = {" ; "}
page-undone = Annulé.
page-labels = Imprimer les étiquettes
page-undo-first = À annuler d’abord :
page-limit-correct = Mal tapé : corriger
page-odd-weight = [weight] : c’est bien loin de l’habitude ici. Est-ce saisi dans la bonne unité ?
page-odd-sure = C’est juste : enregistrer
page-limit-meat = Mal tapé : la viande, [meat]
page-limit-salt = Mal tapé : le sel nitrité, [salt]
page-limit-send-back = C’est bien [read] : renvoyer
page-receive-sent-back = Arrivé à [read], renvoyé.
page-receive-unread = non relevée
page-limit-more = En savoir plus
page-limit-happened = C’est ainsi : noter comme c’est arrivé
page-limit-typed = Dites ce qui s’est passé : c’est noté, et ce qui en vient reste bloqué jusqu’à ce que quelqu’un le renvoie, le jette ou en décide autrement.
page-limit-note = Que s’est-il passé ?
page-limit-record = Noter comme c’est arrivé
page-colon = { $of } : { $says }
page-today-nothing = Rien n’attend.
page-today-hands = { $hands ->
    [one] Une chose attend.
   *[other] { $hands } choses attendent.
}
page-today-prints = { $labels ->
    [one] Une étiquette est en cours d’impression.
   *[other] { $labels } étiquettes sont en cours d’impression.
}
page-today-refused = { $labels ->
    [one] Une étiquette a été refusée par son imprimante.
   *[other] { $labels } étiquettes ont été refusées par leur imprimante.
}
page-today-as-of = État du { $at }
page-today-reasons = { $reasons ->
    [one] Il y a une autre raison.
   *[other] Il y a { $reasons } autres raisons.
}
page-today-sheet = Imprimer tout sur une feuille
page-today-next = La suite
page-anchor = Ancre du registre
page-anchor-how = Gardez cette ligne hors de la machine. Avec elle, « gambrel check --anchor » montre que rien de ce qui précède n’a été modifié.
page-begin = D’abord
page-begin-done = fait
page-begin-kitchen = Dire qui est la cuisine : nom, lieu, droit et fuseau horaire.
page-begin-places = Nommer les lieux : chambres froides, congélateur, plan de découpe, vitrine.
page-begin-people = Dire qui travaille ici.
page-begin-printer = Ajouter une imprimante d’étiquettes.
page-begin-printer-test = Imprimer une étiquette d’essai sur l’imprimante.
page-begin-products = Lister les produits : pièces, salaisons, ce qui se vend.
page-begin-lots = Réceptionner le premier animal et imprimer son étiquette.
page-acts = Que faire
page-act-pack = Emballer
page-act-cut-up = Détailler
page-act-not-sold = pas vendu au comptoir
page-act-pack-print = Emballer et imprimer
page-act-move = Déplacer
page-act-freeze = Congeler
page-act-thaw = Décongeler
page-act-discard = Jeter
page-act-serve = Servir
page-act-count = Compter
page-act-labels = Imprimer les étiquettes
page-act-as = Emballé comme
page-act-as-new = Il n’y est pas : ajouter un produit
page-act-each = Poids de chacun
page-act-count-more = Compter les paquets suivants
page-act-packs = Combien de paquets
page-act-too-much = Cela fait [asked] ; il n’y a que [left].
page-act-all = C’est le tout : il ne reste rien.
page-bench-typed-kg = Ou avec l’unité : 1,2 kg.
page-bench-typed-lb = Ou avec l’unité : 1,5 lb, 2 lb 3 oz, 500 g.
page-act-which-packs = Quels paquets (numéros des étiquettes)
page-act-pack-number = Paquet
page-act-to-same = l’endroit où ils sont
page-act-to = Vers où
page-act-why = Pourquoi
page-act-of = { $act } : { $name }
page-act-cannot = Cela ne se peut pas maintenant : voyez sur sa page ce qui en reste, et comment c’est gardé.
page-act-no-script = Pour le faire ici, autorisez les scripts dans ce navigateur. La lecture s’en passe.
page-why-past = Date dépassée
page-why-spoilt = Gâté
page-why-opened = Ouvert ou percé
page-why-dropped = Tombé
page-why-waste = Parures et os
page-sold = Vendu
page-sentence-wants = Il manque encore : [what].
page-sentence-pack = Emballer [outputs.0.pack_count] × [_each] : { $name }, { $lot }, comme [outputs.0.product], vers [outputs.0.place].
page-sentence-move = Déplacer les paquets [packs] : { $name }, { $lot }, vers [to].
page-sentence-freeze = Congeler les paquets [packs] : { $name }, { $lot } ; ils vont vers [to].
page-sentence-thaw = Décongeler les paquets [packs] : { $name }, { $lot } ; ils vont vers [to].
page-sentence-discard = Jeter les paquets [packs] : { $name }, { $lot }. Raison : [why].
page-sentence-serve = Servir les paquets [packs] : { $name }, { $lot }.
page-sentence-count = Compter { $name }, { $lot } : ce qui est tapé est ce qui est là.

page-between = { $low } à { $high }
page-act-break-down = Découper
page-side-pork = Demi-porc, face interne vers le haut, cuisse à gauche
page-side-lamb = Demi-agneau ou demi-chèvre, face interne vers le haut, cuisse à gauche
page-side-beef = Demi-bœuf en deux quartiers, séparés entre la 12e et la 13e côte, face interne vers le haut, arrière à gauche
page-side-bird = Volaille, poitrine vers le haut, cuisses à gauche
page-side-as = C’est
page-side-weight = Poids
page-side-again = Repeser
page-side-another = Garder, et en peser une autre
page-side-keep-nothing = Garder
page-side-first = Une autre pièce d’abord ?
page-side-other = Autre chose en est venu
page-side-choose = Choisir
page-side-lacking = Pas dans la liste des produits de la maison :
page-side-end = Fini avec cette demi-carcasse
page-side-keep-it = Garder ce poids
page-side-leave-out = Laisser ce poids de côté
page-side-record = Enregistrer les pièces
page-side-record-print = Enregistrer les pièces et imprimer leurs étiquettes
page-side-order = Les pièces dans l’ordre du couteau
page-side-cut = Pièce
page-side-knife = Où passe le couteau
page-side-usual = D’habitude
page-side-why = D’où vient cette habitude ?
page-side-kept-as = gardé comme :
page-side-no-store = Ce navigateur ne garde rien. Restez sur cette page jusqu’à l’enregistrement, ou notez les poids.
page-sentence-side-off = pesé [off]
page-sentence-side-left = sur la table [left] de [all]
page-sentence-side-bar = Pesé [off], sur la balance [now], sur la table [left] de [all]
page-sentence-side-weight = Poids : [cut], en [unit]
page-sentence-side-usual = [cut] : d’habitude de [low] à [high] [unit], le plus souvent [usual]
page-sentence-side-usual-alone = [cut] : d’habitude [usual] [unit]
page-sentence-side-band = D’habitude de [low] à [high], sur la balance [weight]
page-sentence-side-keep = Garder [weight]
page-sentence-side-keep-odd = C’est bien [weight] : garder
page-sentence-side-light = Léger pour : [cut]. D’habitude de [low] à [high]. En reste-t-il sur la table, ou est-ce une autre pièce ?
page-sentence-side-heavy = Lourd pour : [cut]. D’habitude de [low] à [high]. Une autre pièce y tient-elle encore ?
page-sentence-side-too-much = [weight], c’est plus que les [left] encore sur la table. Regardez la balance et son unité.
page-sentence-side-unkept = [cut] : « [typed] » est tapé, mais pas encore gardé. Est-ce une des pièces ?
page-sentence-side-no-weight = Pas encore de poids : [cut]. Posez la pièce sur la balance, ou tapez le poids en [unit], comme 4,050.
page-sentence-side-more = [kept] en sont déjà gardés : c’est une pièce de plus.
page-sentence-side-kept = [cut] [weight], [time], [by]
page-sentence-side-begun = Commencé à [time] par [by] : [off] sont gardés sur cet appareil. Reprenez où c’en était.
page-sentence-side-not-weighed = Pas pesé : [cuts].
page-sentence-side-over = On a pesé [left] de plus qu’il n’y avait sur la table. Annulez ce qui est faux et repesez.
page-sentence-side-rest = [left] n’ont pas été pesés. Qu’est-ce que c’est ?
page-sentence-side-rest-loss = De la perte : jus, scie et couteau
page-sentence-side-rest-stays = Encore sur la carcasse : cela y reste
page-sentence-side-rest-scales = Les balances diffèrent de [left]
page-sentence-side-loss = [left], c’est [percent] % de la carcasse. La perte est d’habitude de [high] au plus.
page-sentence-side-loss-high = [left], c’est [percent] % de la carcasse. La perte est d’habitude de [high] au plus : cherchez le bac de parures, le gras, une pièce non pesée.
page-sentence-break-down = Découper { $lot }, { $name } : [off] en tout, vers [place]. [list].
page-sentence-side-deed-loss = Perte : [left].
page-sentence-side-deed-stays = [left] restent sur la carcasse.
page-sentence-side-deed-scales = Les balances diffèrent de [left].
page-sentence-side-note-odd = Hors de l’habitude, et gardé : [list].
page-sentence-side-note-by = Pesé par [list].
page-lot = Lot
page-animal = Animal
page-packs = Paquets
page-carcass = Carcasse
page-killed = Abattu le
page-tag = Boucle
page-hang-tag = Étiquette
page-made = Fait
page-on-hand = En stock
page-where = Où
page-now = Maintenant
page-kept = Conservation
page-share = Part
page-use-by = Date limite
page-raw-or-ready = Cru ou prêt
page-raw = Cru : à cuire
page-ready = Prêt à manger
page-not-proven = Non prouvé prêt à manger
page-not-raw = Pas cru
page-allergens-unknown = Allergènes inconnus.
page-no-allergens = Aucun allergène inscrit
page-contains = Contient : { $allergens }
page-may-contain = Peut contenir : { $allergens }
page-no-date = Sans date
page-nothing-left = Plus rien
page-past = Dépassé : à retirer
page-last-day-today = Dernier jour aujourd’hui
page-more = Et { $more } de plus.
page-count-packs = { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 }
page-once-thawed = { $days ->
    [one] { $days } jour après décongélation
   *[other] { $days } jours après décongélation
 }
page-percent = { $percent } %
page-share-under = moins de { $percent } %
page-from = { $what }, { $farm }
page-killed-on = abattu le { $day }
page-forward = Ce qui en vient
page-forward-now = En stock maintenant
page-forward-all = Tous ensemble
page-forward-share = Une part n’est qu’une indication : un lot qui a la moindre part est concerné.
page-forward-lots = { $lots ->
    [one] { $lots } lot en tout, dont { $on_hand } avec du stock.
   *[other] { $lots } lots en tout, dont { $on_hand } avec du stock.
 }
page-forward-missing = { $weight } manquent.
page-forward-surplus = { $weight } en trop.
page-forward-taken-back = Repris
page-forward-used = Utilisé
page-forward-sold = Vendu
page-forward-served = Servi
page-forward-shipped = Expédié
page-forward-returned = Renvoyé
page-forward-discarded = Jeté
page-forward-lost = Perdu
page-forward-head-missing = Manque
page-forward-head-surplus = En trop
page-wrong-labels = Étiquettes erronées
page-wrong-labels-why = Ce qui est imprimé sur ces paquets n’est plus exact. Ils ne se vendent pas avant que l’étiquette soit réimprimée.
page-wrong-labels-none = Aucun paquet en stock n’a d’étiquette erronée.
page-wrong-labels-says = L’étiquette dit
page-wrong-labels-true = En réalité
page-wrong-labels-tells = { $about } : { $says }
page-wrong-labels-print = Imprimer
page-wrong-labels-gone = Vendu ou expédié avec cette étiquette
page-home-all-lots = Tous les lots
page-home-animals = Animaux d’origine
page-home-no-printer = Il n’y a pas encore d’imprimante : les étiquettes viennent en PDF.
page-scan-whole-lot = C’est le lot qui a été lu, pas un paquet : scannez l’étiquette du paquet pour le vendre. En attendant, ceci parle du paquet qui demande le plus de soin.
page-scan-how = Un lecteur tape le code et appuie sur Entrée. À la main : tirets, espaces et minuscules sont sans importance.
page-lots = Lots, du plus récent au plus ancien
page-lots-field = Code ou produit
page-lots-anywhere = Partout
page-lots-state = Conservation ou sortie
page-lots-any-state = Peu importe
page-lots-all = Montrer tous les lots
page-lots-none = Aucun lot ne correspond.
page-lots-next = Suite : lots plus anciens
page-lots-only-product = Seulement ce produit : { $product }
page-lots-only-farm = Seulement la ferme { $farm }
page-lots-only-killed = Seulement abattu le { $day }
page-lots-only-before = Seulement à utiliser avant le { $day }
page-animals = Animaux d’origine, du dernier abattu au premier
page-animals-carcass = No de carcasse
page-animals-farm = Ferme
page-animals-any-farm = Toutes
page-animals-killed-on = Abattu le
page-animals-all = Montrer tous les animaux
page-animals-none = Aucun animal ne correspond.
page-animals-lots = Lots réceptionnés
page-animals-head = { $species }, { $head ->
    [one] { $head } tête
   *[other] { $head } têtes
 }
page-animal-once = Attribués à cet animal jusqu’à ce que ce soit corrigé
page-animal-known-once = était attribué à cet animal jusqu’à la correction de { $by }, le { $day }.
page-animal-now = L’animal dont il vient
page-animal-abattoir-wrong = L’abattoir n’est pas le bon ?
page-animal-abattoir-lacks = Inscrire l’abattoir
page-animal-abattoir-how = Tout ce qui est issu de cet animal suit ; codes et poids restent. Les étiquettes qui disent autre chose sont à réimprimer, et la page du jour dit lesquelles.
page-animal-abattoir-do = Corriger
page-animal-abattoir-add = Il n’est pas sur la liste : l’ajouter
page-animal-unknown = Cet animal n’est pas inscrit.
page-nothing-here = Il n’y a rien à l’adresse { $path }.
page-trouble-again = Réessayer
page-trouble-home = À la première page
page-trouble-lots = Aux lots
page-lot-voided = Annulé.
page-lot-voided-do = Retirez ses étiquettes.
page-lot-of-received = sur { $made } reçus
page-lot-of-made = sur { $made } faits
page-lot-why-condition = Cru ou prêt : pourquoi ?
page-lot-why-date = Pourquoi cette date ?
page-lot-source = Source :
page-lot-species = Espèce
page-lot-nav = Sur cette page
page-lot-family = Parenté
page-lot-family-picture = La parenté de ce lot
page-tree-more = et { $more } de plus
page-lot-where-from = D’où il vient
page-lot-came-from = D’où il vient
page-lot-done = Ce qui a été fait
page-lot-label = Étiquette
page-as-printed = Telle que l’imprimante « { $printer } » l’imprime, sur { $size }.
page-lot-print = Imprimer les étiquettes
page-rest-on-label = { $made } sont entrés, il en reste { $left }. Cette étiquette est pour ce reste : date, origine et code sont ceux de la réception, le poids est ce qui reste maintenant.
page-lot-nothing-to-label = Rien n’est en stock, donc rien à étiqueter.
page-lot-no-origin = Rien n’est inscrit.
page-lot-via = En passant par
page-lot-then = puis
page-lot-without-bought = Les parts ne comptent pas la viande achetée.
page-lot-bought = Acheté
page-lot-supplier = Fournisseur
page-lot-supplier-lot = Lot fournisseur
page-lot-nothing-made = Rien n’en a été fait.
page-lot-left-in-each = Reste par paquet
page-lot-packs = { $packs ->
    [one] Paquet { $numbers }
   *[other] Paquets { $numbers }
 }
page-lot-alike = { $packs } identiques
page-lot-what = Quoi
page-lot-how-much = Combien
page-lot-when = Quand
page-lot-who = Qui
page-lot-step-voided = annulé
page-lot-received = Réceptionné
page-lot-made-by = Fait : { $deed }
page-lot-used-for = Utilisé : { $deed }
page-lot-otherwise = { $account } : { $deed }
page-lot-readings = Relevés
page-lot-value = Valeur
page-lot-others = Autres lots de ce produit
page-reading-weight = Poids
page-reading-temperature = Température
page-reading-held = Maintenu
page-reading-boiled = Bouilli
page-reading-brine-temperature = Température de la saumure
page-reading-ph = pH
page-reading-water-activity = Activité de l’eau
page-reading-salometer-60f = Pèse-sel, à 60 °F
page-reading-salometer-38f = Pèse-sel, à 38 °F
page-reading-nitrite = Nitrite
page-reading-potassium-nitrite = Nitrite de potassium
page-reading-potassium-nitrate = Nitrate de potassium
page-reading-sugar = Sucre
page-reading-water = Eau
page-reading-residual-nitrite = Nitrite restant
page-reading-residual-nitrate = Nitrate restant
page-reading-nitrate = Nitrate
page-reading-salt = Sel
page-reading-price = Payé
page-cure-room-empty = Rien n’est au sel ni suspendu.
page-cure-room-piece = { $stage }, jour { $days } : { $loss }
page-cure-room-in-salt = au sel
page-cure-room-equalising = en repos
page-cure-room-smoking = au fumoir
page-cure-room-hanging = au séchoir
page-cure-room-released = libéré
page-cure-room-loss-expected = { $loss } de perte, { $expected } prévus
page-cure-room-loss = { $loss } de perte
page-cure-room-never-weighed = jamais pesé
page-cure-room-curve = { $days ->
    [one] Perte sur { $days } jour, jusqu’à { $loss } pour cent
   *[other] Perte sur { $days } jours, jusqu’à { $loss } pour cent
 }
page-cure-room-footer = Trait fin : ce qui est prévu ; trait épais : ce qui a été pesé ; vers le bas, la perte. La perte de poids seule ne rend rien sûr.
page-printing-no-script = Cette page montre l’état des choses. Pour imprimer et dire ce qui est sorti, autorisez les scripts dans ce navigateur.
page-printing-away = Le service ne répond pas. Appuyez de nouveau dans un instant : rien n’est fait deux fois.
page-printing-lot = Imprimer les étiquettes : { $name }
page-printing-printer = Imprimante
page-printing-together = Une étiquette pour toutes les pièces, pesées ensemble
page-printing-all-packs = tous en stock
page-printing-why-again = Pourquoi de nouveau ?
page-printing-print = Imprimer
page-printing-pdf-keep = L’enregistrer sur cet appareil
page-printing-pdf-open = L’ouvrir dans un autre onglet
page-printing-pdf-made = Le PDF des étiquettes est prêt.
page-printing-of-deed = Imprimer les étiquettes de ce qui a été fait
page-printing-as-document = PDF, imprimé à la main
page-printing-look-at = Aperçu seulement (PDF, non noté comme imprimé : à ne pas coller)
page-printing-unsure = Est-elle sortie ?
page-printing-look = Vous seul pouvez le savoir. Regardez à l’imprimante et dans la poubelle, puis dites-le.
page-printing-on = sur { $printer }, demandée le { $asked }
page-printing-reprint = réimpression { $nth }
page-printing-came-out = Elle est sortie
page-printing-did-not = Elle n’est pas sortie
page-printing-printers = Imprimantes
page-printing-add = Aucune imprimante dans la liste pour l’instant. D’ici là, les étiquettes s’obtiennent en document.
page-printing-add-one = Ajouter une imprimante
page-printing-none-yet = Rien n’y a encore été imprimé.
page-printing-trust = L’imprimante indique elle-même la même empreinte : prendre ce certificat
page-printing-count-waiting = { $labels } en attente
page-printing-count-sending = { $labels } en cours d’envoi
page-printing-count-sent = { $labels ->
    [one] { $labels } envoyée
   *[other] { $labels } envoyées
 }
page-printing-count-printed = { $labels ->
    [one] { $labels } sortie
   *[other] { $labels } sorties
 }
page-printing-count-unsure = { $labels ->
    [one] { $labels } incertaine
   *[other] { $labels } incertaines
 }
page-printing-count-refused = { $labels ->
    [one] { $labels } refusée
   *[other] { $labels } refusées
 }
page-printing-count-cancelled = { $labels ->
    [one] { $labels } annulée
   *[other] { $labels } annulées
 }
page-printing-count-spoilt = { $labels ->
    [one] { $labels } perdue
   *[other] { $labels } perdues
 }
page-printing-open = En route
page-printing-nothing-waits = Rien n’attend.
page-printing-label = Étiquette
page-printing-asked = Demandée
page-printing-cancel = Annuler
page-printing-cancel-all = Annuler les { $labels } qui attendent
page-printing-done = Dernièrement
page-printing-nothing-done = Rien n’a encore été imprimé.
page-printing-became = Ce qu’elle est devenue
page-printing-footer = Une étiquette s’imprime une seule fois, sauf si quelqu’un dit pourquoi la refaire. On croit l’imprimante quand elle dit qu’une étiquette est sortie ; quand elle ne peut pas le dire, une personne doit le faire.

## Why there is no label

label-refused-not-lawful = { $lot } n’est pas étiqueté pour la vente : { $finding }
label-refused-language-missing = { $lot } n’est pas étiqueté pour la vente : { $finding } Ajoutez-la aux langues de la cuisine ; pour un aliment local qui peut se contenter d’une langue, inscrivez l’exemption comme approbation pour « languages ».
label-refused-letters-too-low = L’étiquette « { $label } » ne s’imprime pas pour la vente : { $finding }
label-refused-none-for-it = Il n’y a pas d’étiquette pour { $purpose } selon les règles d’ici ({ $place }) : { $lot } ne peut pas en avoir.
label-refused-not-held = L’étiquette « { $label } » ({ $size }) de { $lot } ne peut pas être faite : { $why }. { $advice }
label-refused-would-hold = L’étiquette « { $label } » ({ $size }) suffirait.
label-refused-none-holds = Aucune étiquette d’ici ne suffirait : dites-le plus court.
label-refused-not-uncured = { $lot } ne peut pas être étiqueté « uncured » : { $why }
label-refused-curing-salt = du sel nitrité y est entré.
label-refused-no-such-label = Il n’y a pas d’étiquette « { $label } ». Il y a : { $labels }.
label-refused-voided = { $lot } a été annulé : il n’a plus d’étiquette.
label-refused-dpi = { $dpi } ppp n’est pas connu ; 203 ou 300.
label-refused-no-such-pack = { $lot } a { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
 } ; il n’y a pas de paquet { $pack }. Regardez le numéro sur le paquet.
label-refused-no-room-for = L’étiquette « { $label } » n’a pas de place pour une chose qu’un paquet pour un client indique ici : { $item }. { $lot } n’est donc pas étiqueté avec elle.
label-refused-not-together = { $lot } reçoit une étiquette par paquet : demandez sans « together ». L’étiquette commune est pour les pièces d’un même lot qui sèchent et ne sont pas encore libérées.
label-refused-nothing-on-hand = Il n’y a rien de { $lot } en stock, donc rien à étiqueter. Indiquez des paquets pour imprimer leurs étiquettes.
label-title-stopped = C’est arrêté
label-title-not-lawful = La mention n’est pas légale
label-title-language-missing = Il manque une langue
label-title-letters-too-low = Les lettres sont trop petites
label-title-none-for-it = Cette étiquette n’existe pas
label-title-not-uncured = Ce n’est pas « uncured »
label-for-receiving = ce qui arrive
label-for-kitchen = les bacs et les étagères de la cuisine
label-for-curing = les pièces au sel ou au séchoir
label-for-freezer = ce qui est congelé
label-for-retail = les paquets des clients
label-for-direct-sale = les paquets vendus là où ils sont emballés
label-for-hold = ce qui est bloqué
label-size-is = { $width } × { $height } mm
layout-printer = l’étiquette « { $template } » n’est pas faite pour une imprimante à { $dpi } ppp
layout-missing = il faut un texte pour « { $field } » et il n’y en a pas
layout-no-place = cette étiquette n’a pas de place pour « { $field } » : prenez-en une plus grande
layout-character = « { $field } » contient le caractère { $character } ({ $number }), que la police des étiquettes ne peut pas imprimer
layout-too-wide = « { $field } » ne tient pas : « { $text } » fait { $needed } mm de large à la plus petite taille lisible, il y en a { $had }
layout-too-many-lines = « { $field } » ne tient pas : « { $text } » demande { $needed } lignes à la plus petite taille lisible, il y en a { $had }
layout-too-tall = les textes ne tiennent pas : ils demandent { $needed } mm de haut à la plus petite taille lisible, il y en a { $had } ; le plus haut est « { $field } » : « { $text } »
layout-empty-code = il n’y a rien à mettre dans le { $code }
layout-code-character = le { $code } ne peut pas contenir le caractère { $character } de « { $payload } »
layout-code-too-long = « { $payload } » est trop long pour un { $code }
layout-no-code-place = cette étiquette n’a pas de place pour le { $code } : prenez-en une plus grande
layout-not-gs1 = « { $text } » ne peut pas s’imprimer comme code GS1 : { $why }
layout-not-till-digits = « { $digits } » n’est pas un code de caisse : il faut 13 chiffres, le dernier juste
layout-code-too-large = le { $code } de « { $payload } » ne tient pas : il lui faut { $needed } mm pour rester lisible, il y en a { $had }
label-code-qr = code carré
label-code-code-128 = code-barres
label-code-gs1-128 = code-barres GS1
label-code-ean-13 = code de caisse

## Labels

label-use-by = À CONSOMMER JUSQU’AU
label-use-by-day = À consommer jusqu’au { $day }
label-use-within = À CONSOMMER SOUS
label-once-thawed = { $days ->
    [one] { $days } JOUR APRÈS DÉGEL
   *[other] { $days } JOURS APRÈS DÉGEL
 }
label-no-date = PAS ENCORE DE DATE
label-made = Fait le { $day }
label-frozen = CONGELÉ
label-frozen-on = Congelé le { $day }
label-unit-price = { $price }/{ $unit }
label-lot-only = barres : le lot seul
label-thawed-on = Décongelé le : ____________
label-ingredients = Ingrédients :
label-contains = Contient : { $names }
label-allergens-unknown = Allergènes inconnus
label-raw = CRU
label-ready-to-eat = PRÊT À MANGER
label-cook-method = Cuire à la poêle, au gril ou au four
label-cook-and-hold = { $method } jusqu’à { $celsius } °C ({ $fahrenheit } °F) à cœur, et tenir { $hold }. Vérifier avec un thermomètre de cuisine.
label-cook-at-once = { $method } jusqu’à { $celsius } °C ({ $fahrenheit } °F) à cœur. Vérifier avec un thermomètre de cuisine.
label-caution-raw = Cru. Bien cuire avant de manger. Laver mains, planche et couteau.
label-keep-chilled = Garder au réfrigérateur
label-keep-frozen = Garder congelé
label-keep-ambient = Garder au frais et au sec
label-keep-hot = Garder au chaud
label-cured = Salaison : sel
label-received-heading = REÇU
label-received-at = Reçu le { $at }
label-received-cold = Reçu le { $at } · { $degrees }
label-left = reste { $weight }
label-killed = Abattu le { $day }
label-farm-killed = { $farm }, abattu le { $day }
label-carcass = Carcasse { $number }
label-tag = boucle { $tag }
label-their-lot = Lot fournisseur { $lot }
label-not-released = NON LIBÉRÉ
label-green = Frais { $weight }
label-green-together = Frais { $weight }, { $pieces } pièces : à peser ensemble
label-green-of = Frais { $weight }, pièce { $nth } sur { $of }
label-salted = Salé le { $day }
label-turns = Retourner : { $days }
label-turns-every = { $apart ->
    [one] Retourner chaque jour, du { $from } au { $until }
   *[other] Retourner tous les { $apart } jours, du { $from } au { $until }
}
label-turns-and-more = Retourner : { $days }, puis voir le saloir
label-out-of-cure = SORTIE DE SALAISON
label-out-of-cure-on = Sortie de salaison le { $day }
label-release = Libérer à { $target }
label-release-from = Libérer dès le { $day }
label-release-both = Libérer à { $target }, dès le { $day }
label-release-target = { $weight } (-{ $loss } %)
label-column-day = Jour
label-column-who = Qui
label-hold = BLOQUÉ
label-held-since = Bloqué depuis le { $day }
label-hold-caution = Ne pas utiliser, vendre ni déplacer.
label-released-on = Libéré le
label-by = Par
label-reprint = RÉIMPRESSION { $nth }
label-specimen = SPÉCIMEN, NE PAS VENDRE

## Questions that cannot be answered

query-unprintable = Il contient un caractère qui ne peut pas s’imprimer. Tapez-le à la main.
query-not-after = « { $after } » n’est pas un animal de la page précédente. Recommencez à la première page.
query-not-state = « { $state } » n’est pas l’un de : { $known }.
query-not-limit = « { $limit } » n’est pas un nombre entier de 1 à { $most }.
query-limit-range = De 1 à { $most } à la fois.
query-no-law = Pas de règles pour « { $place } » ici. Les lieux sont : { $known }.
query-no-animal = Aucun animal inscrit n’a l’identifiant « { $id } ». Choisissez-le à la page des animaux.
query-dose-or-target = Dites combien de sel nitrité pour la viande, ou combien de nitrite est voulu : l’un des deux.

## État des aliments

ConditionKind-raw = cru
ConditionKind-treated = traité
ConditionKind-ready = prêt à manger

Natural-salt = sel
Natural-sugar = sucre
Natural-honey = miel ou sirop
Natural-spice = épice ou herbe sèche
Natural-curing-salt = sel nitrité
Natural-vinegar = vinaigre
Natural-wine = vin
Natural-spirits = spiritueux
Natural-beer = bière ou cidre
Natural-oil = huile
Natural-rendered-fat = graisse fondue
Natural-dry-goods = produits secs
Natural-bread = pain
Natural-nuts = fruits à coque
Natural-produce = légumes et fruits crus, non coupés
Natural-salted-casing = boyaux salés
Natural-water = eau

condition-from-the-animal = Cru : tel qu’il vient de l’animal.
condition-raw-bought = Acheté cru.
condition-listed = Reçu tel que le donne la liste des produits : prêt à manger, sans animal nommé ({ $product }).
condition-declared-ready = L’emballage ou le papier du fournisseur le dit prêt à manger ({ $product }).
condition-no-declaration = C’est d’origine animale ({ $product }), et rien ne montre que l’emballage ou le papier du fournisseur le dise prêt à manger. Inscrivez à la réception ce que dit l’emballage.
condition-proven = La chaleur est au dossier. { $says }
condition-parts-ready = Tout ce qui est entré dans cette étape « { $kind } » était prêt à manger.
condition-not-ready-part = Entré sans preuve que ce soit prêt à manger : { $part }.
condition-nothing-proves = L’étape « { $kind } » n’a au dossier ni temps ni températures qui atteignent une règle : elle ne prouve rien.
condition-approved-not-freed = L’autorisation { $number } vaut pour le plat. Elle ne montre pas que { $part } est sans trichines. Saisissez le certificat de l’élevage là où il compte, cuisez, ou faites libérer le lot par un responsable avec le résultat de l’analyse de la carcasse.
condition-approved = Approuvé sous le numéro { $number }.
condition-released = Sa salaison et son séchage ont été libérés selon la règle du produit.
condition-let-go = { $by } l’a laissé passer : { $why }
condition-proof-rule = preuve
condition-list-rule = liste des produits
condition-approval-rule = approbation
condition-nature = Il se garde sans maîtrise du temps et de la température par ce qu’il est : { $says }.
condition-parts-stable = Tout ce qui y est entré se garde sans maîtrise du temps et de la température, et aucune eau n’a été ajoutée.
condition-judged-before = Fait avant que la preuve soit demandée : il reste tel qu’il a été jugé. Ce qu’on en fait demande une preuve.

## De quoi est fait un lot acheté
supplied-by-list = { $lot } : ce qu’il contient est dit par la liste des produits telle qu’elle était le { $day }, qui vaut déclaration du fournisseur.
supplied-ingredients-by-pack = { $lot } : son emballage ou son papier déclare ses ingrédients.
supplied-allergens-by-pack = { $lot } : son emballage ou son papier déclare ses allergènes.
supplied-by-words = { $lot } : les mots de sa liste nomment { $allergens }.
supplied-may-contain = { $lot } : son emballage ou son papier dit qu’il peut contenir { $allergens }.
supplied-by-name = { $lot } : son nom dans la liste des produits annonce { $allergens } ; sa fiche n’en dit rien.
supplied-named = Les ingrédients nomment { $allergens }, et les allergènes donnés n’en disent rien. On les compte comme présents : regardez l’emballage encore une fois.
supplied-named-on-list = Le nom dans la liste des produits annonce { $allergens }, et la fiche n’en dit rien. On les compte comme présents : cochez-les dans la liste, ou inscrivez les allergènes que dit l’emballage.
supplied-named-elsewhere = Lus dans une autre langue, les ingrédients nomment { $allergens }, et les allergènes donnés n’en disent rien. On ne les compte pas comme présents : regardez l’emballage encore une fois, et donnez-les s’ils y sont.
supplied-recipe = La recette de la liste apporte { $allergens }, et les allergènes donnés n’en disent rien. On les compte comme présents : inscrivez les ingrédients de l’emballage s’il est fait sans.
supplied-rule = ce que dit l’emballage, sinon la liste telle qu’elle était

## Arrêts

StopKind-voided = annulé
StopKind-held = bloqué, à laisser où il est
StopKind-failed = une limite a été dépassée
StopKind-unknown-history = personne ne sait son histoire
StopKind-not-proven = non prouvé
StopKind-not-confirmed = sa limite n’est pas confirmée
StopKind-came-back = un client l’a eu
StopKind-not-released = non libéré
StopKind-past-its-day = date dépassée
StopKind-waste = déchet
StopKind-wrong-label = étiquette erronée

LabelFact-allergen = allergènes
LabelFact-date = dernier jour
LabelFact-species = animaux
LabelFact-ingredient = ingrédients
LabelFact-weight = poids net
LabelFact-origin = origine
LabelFact-name = nom
LabelItem-name = dénomination
LabelItem-list = liste des ingrédients
LabelItem-allergens = allergènes
LabelItem-net = poids net
LabelItem-date = date limite
LabelItem-storage = conservation
LabelItem-business = nom et adresse de la cuisine
LabelItem-lot = lot
LabelItem-safe-handling = encadré de manipulation sûre
LabelItem-caution = qu’il doit être cuit
LabelItem-cooking = mode de cuisson
LabelItem-frozen = date de congélation
LabelItem-thawed = qu’il a été congelé
LabelItem-composition = matières grasses et collagène
LabelItem-unit-price = prix à l’unité de poids
LabelItem-price = prix

claim-day = { $date }
claim-no-day = aucun jour
claim-these = { $names }
claim-nothing = aucun
claim-may-be = peut contenir { $names }
claim-nothing-may = rien qu’il puisse contenir
claim-weight = { $grams }
claim-name = { $name }
claim-differs = Sur l’étiquette, { $about } : { $printed }. En réalité : { $now }.

Disposal-discarded = Jeté
Disposal-returned = Renvoyé
Disposal-released = Libéré
Disposal-put-right = Remis en ordre

stop-voided = { $lot } a été annulé : ce qui porte son étiquette n’est pas ce qu’elle dit. Retirez-le.
stop-not-released = { $lot } ({ $product }) est encore en salaison. Pesez-le et libérez-le d’abord ; la page du saloir montre ce qui manque.
stop-not-proven = { $lot } ({ $product }) est vendu prêt à manger, et rien au dossier ne le montre. Cuisez-le à cœur et saisissez la température à cœur, ou jetez-le. Si la preuve est sur papier, un responsable peut le laisser passer en son nom, par une décision qui cite ce papier.
stop-partly-cooked = { $lot } ({ $product }) contient de la viande cuite en partie, et rien au dossier ne montre que ce fut assez : il ne se vend pas comme cru, et il n’est pas prêt à manger. Cuisez-le à cœur et saisissez la température à cœur, ou jetez-le.
stop-room-not-proven = { $lot } ({ $product }) est gardé comme un aliment qui se passe de froid, et rien au dossier ne le montre. Saisissez un pH ou une activité de l’eau qui le montre, ou inscrivez une approbation ; sinon, jetez-le. Si la preuve est sur papier, un responsable peut le laisser passer en son nom, par une décision qui cite ce papier.
stop-no-date = { $lot } ({ $product }) se garde au froid et n’a pas de dernier jour : aucune règle n’en donne. Donnez au produit une durée de conservation avant le prochain lot, ou mesurez ce qui montre qu’il se garde ; celui-ci reste en cuisine.
stop-no-date-piece = { $lot } ({ $product }) est une pièce salée entière à garder au froid, et n’a donc pas de dernier jour : sa règle compterait dès avant sa libération. Coupez-la ou emballez-la en un produit qui a ses propres jours, ou mesurez ce qui montre qu’elle se garde.
stop-undated-piece = { $lot } ({ $product }) est une pièce salée entière qui se garde, et sa fiche a une règle de conservation, qui compterait dès avant sa libération : aucun dernier jour n’en découle. Vendez ce qui en est coupé ou emballé sous un produit qui a ses propres jours, et ôtez la règle de la fiche de la pièce entière avant la suivante.
stop-undated = { $lot } ({ $product }) se vend avec un dernier jour et n’en a pas : sa durée de conservation ne lui en donne aucun. Corrigez la règle avant le prochain lot, et servez-vous de celui-ci en cuisine.
stop-made-ahead = { $lot } a été enregistré pendant que l’horloge était fausse : on ne peut se fier à sa date. Mettez-le de côté ; un responsable dit par son nom ce qu’il devient.
stop-past-day = { $pack } était à consommer jusqu’au { $date }. Jetez-le ou renvoyez-le. Rien ne sort après son jour : usage courant, sans source ; pourquoi il a ce jour-là, son lot le dit.
stop-waste = { $lot } ({ $product }) est un déchet : cela ne se vend pas, ne se sert pas, ne s’expédie pas et n’entre dans aucun aliment. Quand il part, notez-le comme jeté. Si c’est bien un aliment, annulez l’étape qui l’a fait et saisissez-le pour ce qu’il est.
stop-wrong-label = L’étiquette de { $pack } n’est plus exacte. { $untrue } Réimprimez-la avant la vente.
stop-unknown-history = Personne ne sait l’histoire de ceci, ni tout ce qu’il y a dedans. { $says } Il ne va nulle part avant qu’un responsable dise par son nom ce qu’il devient : jeté, ou libéré avec la raison.
stop-not-confirmed = Salé sous une limite que personne ici n’a lue dans la loi : { $row }, { $text }. Il n’est pas vendu avant qu’un responsable l’ait lue et confirme la ligne pour cette cuisine.
stop-held = Bloqué : { $why }. Ne le vendez pas et ne l’utilisez pas avant qu’un responsable le libère.
stop-held-rule = blocage
stop-broke = { $findings } Poursuivez la cuisson jusqu’à la température voulue à cœur et saisissez-la, ou jetez-le.
stop-broke-for-good = { $findings } Rien ne rattrape cela. Jetez-le ou renvoyez-le ; un responsable peut le laisser passer en son nom, avec la raison.
stop-refused = { $pack } est arrêté. { $stop }
stop-passed = { $pack } a suivi son cours alors qu’il était arrêté. { $stop }
stop-entered-after = { $pack } est arrêté, et ceci a été saisi après. Ce qui en a été fait est arrêté aussi, jusqu’à ce qu’un responsable le laisse passer en son nom, parce que c’était fait avant. { $stop }
stop-inherited = Fait avec { $pack }, qui était arrêté. { $stop }

dispose-no-witness = Qui l’a vu partir ? Indiquez une deuxième personne.
dispose-contents-not-told = Personne n’a dit quels allergènes contient { $lot }. Le laisser passer ne le dit pas : corrigez l’opération qui l’a pris en compte et dites-les.
dispose-nothing-stands = Rien n’arrête { $lot } qui puisse être levé. Voyez sa page : ce qui l’arrête prend fin autrement.
dispose-left = { $what } par { $by }, vu par { $witness } : { $why }
dispose-let-go = { $what } par { $by } : { $why }. Il était arrêté pour ceci : { $stop }
dispose-rule = décision

hold-made-since = Fait avec après ce moment, et bloqué avec : { $lots }.
hold-no-hold = Aucun blocage sur { $lot }. Choisissez le lot qui est bloqué, ou continuez.

deed-what-happened = Dites dans la note ce qui s’est passé : une limite ou un arrêt a été dépassé.
deed-what-was-read = Dites ce que dit le texte, comme vous l’avez lu.
deed-where-read = Dites où vous l’avez lu.
deed-no-such-row = { $place } n’a pas de ligne { $row }. GET /api/rows?unconfirmed donne celles qui attendent.
deed-row-confirmed = { $row } est déjà lue : il n’y a rien à confirmer. Continuez : elle vaut.
deed-why-disposed = Dites pourquoi.
deed-why-adopted = Dites comment il a été trouvé, et comment vous savez ce que c’est.
deed-which-missing = Dites quel paquet c’est : CODE/N.
deed-what-put-right = Indiquez dans document l’acte qui l’a remis en ordre.
deed-put-right-by-other = « { $document } » n’est pas un acte au dossier qui ait touché { $lot }. Indiquez par son identifiant l’acte qui l’a remis en ordre, ou libérez-le avec le papier qui le dit.
deed-puts-nothing-right = Un acte de la sorte « { $kind } » ne remet rien en ordre pour { $lot }. Indiquez la cuisson, le refroidissement, la mesure ou la correction qui l’a fait, ou libérez-le avec le papier qui le dit.
deed-why-held = Dites pourquoi c’est bloqué ou débloqué.
deed-too-many = { $most } au plus à la fois. Faites-le en plusieurs fois.
deed-nothing-held = Indiquez au moins un lot.

void-of-hold = Un blocage ne s’annule pas. Levez-le par un déblocage, avec la raison.
void-of-thinning = Ce qui a été éliminé ne revient pas : une élimination ne s’annule pas.

# People, and what each may do.
Right-anyone = se connecter
Right-scan = demander ce qui peut être vendu
Right-see = lire le registre et les listes
Right-work = travailler en cuisine : réceptionner, découper, cuire, déplacer, peser, compter, nettoyer
Right-sell = vendre, servir, jeter, expédier et reprendre
Right-hold = bloquer des lots
Right-print = imprimer des étiquettes
Right-undo = annuler ce qu’on a fait soi-même
Right-void = annuler ce qu’un autre a fait
Right-release = libérer les pièces de salaison
Right-correct = corriger l’origine d’un lot
Right-lift = lever les arrêts et les blocages
Right-confirm = confirmer des lignes de la loi
Right-thin = éliminer le contenu de documents que plus rien n’oblige à garder
Right-set-up = régler la cuisine et ses listes
Right-people = inscrire les personnes et donner des jetons
Right-watch = lire les mesures du service
Right-speak = enregistrer un acte au nom d’un autre
Role-cook = cuisine
Role-counter = comptoir
Role-manager = responsable
who-sign-in = Connectez-vous d’abord.
who-right = { $name } ne peut pas faire cela : { $right }. Demandez à un responsable.
who-right-ask = { $name } ne peut pas faire cela : { $right }. Demandez à { $names }.
who-by-whom = Qui l’a fait ?
who-other-name = { $name } est connecté, et l’acte dit que { $by } l’a fait. Que { $by } se connecte.
who-no-person = Cette personne n’est pas connue ici.
who-wrong-pin = Ce code PIN n’est celui de personne de ce nom.
who-wait = Trop d’erreurs. Attendez { $seconds } secondes.
who-pin-digits = Un code PIN a de 4 à 12 chiffres.
who-pin-too-easy = N’importe qui essaierait ce code PIN d’abord. Choisissez-en un autre.
who-name-taken = Quelqu’un ici s’appelle déjà { $name }. Choisissez un autre nom pour l’un des deux.
who-no-role = Dites ce qu’est cette personne ici : cuisine, comptoir ou responsable.
who-last-manager = Plus personne ne pourrait gérer la cuisine. Nommez d’abord un autre responsable, avec un code PIN.
who-token-ends = Ce moment est passé. Choisissez-en un plus tard.
who-no-token = Ce jeton n’existe pas.
who-origin = Un autre site a envoyé ceci ({ $origin }). Rien n’a été fait. Ouvrez la page de cette cuisine et faites-le là.
who-no-origin = Ceci est arrivé avec le cookie d’une personne connectée, sans dire quelle page l’a envoyé. Rien n’a été fait. Un programme montre plutôt un jeton. Rouvrez la page et faites-le là.
who-host = Ce service ne porte pas le nom « { $host } ». S’il le doit, lancez-le avec --host.
title-sign-in = Pas connecté
title-right = Pas permis
title-host = Un autre nom
title-origin = Vient d’un autre site
page-sign-in = Se connecter
page-sign-in-who = Qui est-ce ?
page-sign-in-demo = Ceci est la démonstration : touchez un nom pour être cette personne.
page-sign-in-pin = Code PIN
page-sign-in-by-word = Le code provisoire qu’on vous a donné
page-sign-in-another = Quelqu’un d’autre
page-sign-in-word = Pas encore de code PIN ? Saisissez le mot qu’on vous a donné : il sert une fois.
page-me-another = Passer la main à quelqu’un d’autre
page-me-out = Se déconnecter
page-me-choose-pin = Choisir un code PIN
page-me-new-pin = Choisir un autre code PIN
page-me-pin = de 4 à 12 chiffres
page-me-keep-pin = Garder ce code PIN
page-me-people = Gérer les personnes
page-me-may = Ce que vous pouvez faire
page-me-pin-kept = Votre code PIN est enregistré. Identifiez-vous désormais avec lui ; le mot reçu ne sert plus.
page-me-pin-how = Le mot a servi. Choisissez maintenant un code PIN : c’est avec lui que vous vous connecterez.
page-people = Personnes
page-people-word = Se connecte avec ce mot :
page-people-word-once = Il sert une fois et ne sera plus montré.
page-people-left = ne peut plus se connecter
page-people-no-pin = n’a pas encore de code PIN
page-people-new-word = Donner un nouveau mot
page-people-sign-out = Déconnecter partout
page-people-leave = Ne plus laisser se connecter
page-people-return = Laisser se connecter à nouveau
page-first-manager = Responsable
page-pin-show = Montrer le code PIN
page-people-add = Quelqu’un de nouveau
page-people-name = Nom
page-people-add-button = Ajouter cette personne
page-people-keep = Garder ainsi
page-people-change = Changer le nom ou le rôle
page-people-kept = est inscrit comme ci-dessous.
who-past-proxy = Passez par le mandataire : { $origin } ne peut pas le contourner.
page-trust = Faire confiance à cette cuisine
page-trust-why = La cuisine a son propre certificat. Un appareil qui lui fait confiance peut se servir ici de sa caméra et travailler sans réseau. À faire une fois sur chacun.
page-trust-file = Télécharger le fichier
page-trust-android = Tablette ou téléphone Android
page-trust-android-how = Téléchargez le fichier. Puis Paramètres, Sécurité, Autres paramètres de sécurité, Installer depuis le stockage, Certificat CA : choisissez kitchen.crt.
page-trust-apple = iPad ou iPhone
page-trust-apple-how = Téléchargez le fichier et autorisez-le. Puis Réglages, Profil téléchargé : installez-le. Puis Réglages, Général, Informations, Réglages des certificats : activez-le.
page-trust-desk = Ordinateur
page-trust-desk-how = Téléchargez le fichier et ouvrez-le : ajoutez-le aux autorités auxquelles le navigateur fait confiance pour les sites.
page-trust-then = Fermez le navigateur et rouvrez-le : l’avertissement a disparu.
page-trust-none = Ce service n’a pas de certificat à lui. Son responsable en fait un avec :

## Today: what needs a hand

today-piece = { $tag } : { $name }
today-release = Peut être libéré ; il faut une signature.
today-printer = L’imprimante { $name } vous attend
today-unsure = { $labels ->
    [one] Une étiquette sur { $name } : est-elle sortie ?
   *[other] { $labels } étiquettes sur { $name } : sont-elles sorties ?
}
today-labels-wait = { $labels ->
    [one] Une étiquette attend.
   *[other] { $labels } étiquettes attendent.
}
today-wrong-label = { $packs ->
    [one] { $name }, un paquet : son étiquette est fausse
   *[other] { $name }, { $packs } paquets : leurs étiquettes sont fausses
}
today-stopped = { $packs ->
    [one] { $name }, un paquet : bloqué
   *[other] { $name }, { $packs } paquets : bloqués
}
today-past = { $packs ->
    [one] { $name }, un paquet : date dépassée, { $day }
   *[other] { $name }, { $packs } paquets : date dépassée, { $day }
}
today-last-day = { $packs ->
    [one] { $name }, un paquet : dernier jour
   *[other] { $name }, { $packs } paquets : dernier jour
}
today-cools = { $name } refroidit : { $to } avant { $by }
today-cool-read = { $core } à { $at }.
today-cool-unread = Personne ne l’a mesuré depuis la sortie du feu.
today-failed = Panne de froid ({ $place }) : { $lots } lots, { $packs ->
    [one] { $packs } paquet bloqué
   *[other] { $packs } paquets bloqués
}
today-failed-names = { $weight } : { $names }.
today-failed-do = Jetez ce qui a ramolli. Ce qui est resté dur à cœur, un responsable le débloque, lot par lot.
today-failed-names-more = { $weight } : { $names }, et { $more } autres.
today-lies = { $weight }, { $places }.
today-may-raw = Vendre, servir, cuire ou congeler aujourd’hui.
today-may-raw-here = Cuire, employer ou congeler aujourd’hui.
today-may-ready = Vendre, servir ou congeler aujourd’hui ; recuire ne fait rien gagner.
today-may-ready-here = Servir, employer ou congeler aujourd’hui.
today-not-read = Relever { $place }
today-read-on = Dernier relevé : { $day }.
today-never-read = Jamais relevé.
today-missing = { $name } : { $packs ->
    [one] { $packs } paquet manque
   *[other] { $packs } paquets manquent
}
today-missing-since = { $shown }, { $weight } : introuvable au comptage, { $day }. Cela reste inexpliqué.
today-missing-do = Cherchez et comptez de nouveau ; ce qui reparaît sans étiquette est repris comme ce paquet.
today-do-count-again = Compter de nouveau
today-beyond = { $place } affiche { $read }, et il faut { $limit }
today-beyond-at = Relevé { $at }.
today-beyond-there = { $packs ->
    [one] { $packs } paquet s’y trouve
   *[other] { $packs } paquets s’y trouvent
  }, { $weight } : { $names }.
today-beyond-there-more = { $packs ->
    [one] { $packs } paquet s’y trouve
   *[other] { $packs } paquets s’y trouvent
  }, { $weight } : { $names }, et { $more } autres.
today-beyond-do = Si cela dure, mettez-le au froid, ou jetez-le.
today-do-read-again = Relever de nouveau
today-crossed = { $place } : cru et prêt à manger depuis le même nettoyage
today-crossed-do = Nettoyez, et voyez ce qui était prêt.
today-clean-down = Nettoyer { $place }
today-raw-there = Du cru y a été travaillé depuis la dernière fois.
today-ready-there = On y a travaillé depuis la dernière fois.
today-do-look = Voir { $what }
today-do-weigh = Peser { $what }
today-do-sign = Signer pour { $what }
today-do-see = Voir
today-do-say-what-came = Dire ce qui est sorti
today-do-print-anew = { $packs ->
    [one] Réimprimer
   *[other] En réimprimer { $packs }
}
today-do-discard = { $packs ->
    [one] Jeter
   *[other] Jeter { $packs } paquets
}
today-do-freeze = { $packs ->
    [one] Congeler
   *[other] Congeler { $packs } paquets
}
today-do-read = Relever
today-do-read-core = Mesurer à cœur
today-do-sort = Jeter des paquets
today-recall = Le rappel { $number } est ouvert
today-recall-holds = { $packs ->
    [one] 1 paquet est
   *[other] { $packs } paquets sont
 } là et bloqués, { $weight }.
today-recall-end = Il ne reste rien de ce qu’il bloque ; il n’est pas encore clos.
today-drill = Un exercice de rappel est à faire
today-last-drill = le dernier a eu lieu le { $day }
today-no-drill = aucun n’est encore au dossier
today-copy-late = La copie du dossier est en retard
today-copy-failed = La dernière copie du dossier n’a pas abouti
today-last-copy = la dernière bonne copie date du { $day }
today-no-copy = il n’y en a encore aucune de bonne
today-copy-untried = Une copie du dossier est à essayer
today-copy-no-good = La dernière copie essayée n’est pas bonne
today-last-tried = le dernier essai réussi date du { $day }
today-never-tried = aucun essai n’a encore réussi
today-moved = Le dossier a été trouvé ailleurs que là où l’on y travaillait
today-moved-do = Si l’on travaille encore dans l’autre, mettez-le de côté. Aucun code n’est donné deux fois : tous les numéros courants ont été avancés.
today-do-count-recall = Compter ce qu’il bloque
today-do-close-recall = Continuer le rappel
today-do-begin-drill = Commencer l’exercice
today-do-turn = Retourner { $what }
today-do-rinse = Sortir du sel : { $what }
today-do-equalise = Mettre { $what } au repos à froid
today-do-hang = Suspendre { $what }
today-do-choose = Choisir ce qui décongèle
today-thaw = Quelque chose à décongeler pour demain ?
today-frozen-there = { $packs ->
    [one] { $place } : un paquet congelé, { $weight }.
   *[other] { $place } : { $packs } paquets congelés, { $weight }.
}
today-thaw-cold = Décongeler au froid, au-dessous de ce qui est prêt à manger.
today-do-cleaned = Nettoyé
today-when-now = Maintenant
today-when-today = Aujourd’hui
today-when-closing = Avant de fermer
page-counter = Comptoir
page-counter-field = Scannez ici
page-counter-pack = paquet { $pack }
page-counter-contains = Contient { $allergens }
page-counter-animal = { $species ->
    [pig] contient du porc
    [cattle] contient du bœuf
    [sheep] contient de l’agneau
    [goat] contient de la chèvre
    [horse] contient du cheval
    [deer] contient du cerf
    [bison] contient du bison
    [boar] contient du sanglier
    [rabbit] contient du lapin
    [chicken] contient du poulet
    [turkey] contient de la dinde
    [duck] contient du canard
    [goose] contient de l’oie
   *[other] contient : { $meat }
}
page-counter-animals-unknown = Y a-t-il un autre animal dedans ? Le registre ne le dit pas.
page-counter-next = Autre paquet
page-counter-next-same = Autre paquet, même client
page-counter-call = Mettre de côté et appeler
page-counter-no-name = Ceci est un nom. Tapez le code qui est sur l’étiquette.
page-country-farm = { $name } : aucun pays n’est inscrit pour cette ferme. L’étiquette d’une viande fraîche dit ici où l’animal a été élevé.
page-country-abattoir = { $name } : aucun pays n’est inscrit pour cet abattoir. L’étiquette d’une viande fraîche dit ici où l’animal a été abattu.
page-country-no-abattoir = Aucun abattoir n’est inscrit pour l’animal de { $lot }. L’étiquette d’une viande fraîche dit ici où il a été abattu : inscrivez-le sur la page de l’animal.
page-country-enter = Inscrire le pays
page-country-animal = Vers l’animal
page-country-ask = Demandez à
page-country-this-farm = Aucun pays n’est inscrit pour cette ferme. L’étiquette d’une viande fraîche dit ici où l’animal a été élevé.
page-country-this-abattoir = Aucun pays n’est inscrit pour cet abattoir. L’étiquette d’une viande fraîche dit ici où l’animal a été abattu.
page-country-choose-abattoir = Choisissez l’abattoir. L’étiquette d’une viande fraîche dit ici où l’animal a été abattu.
page-lot-not-sold = Le comptoir ne vend pas ceci : la liste des produits ne l’y propose pas. Ce qu’on en fait pour la vente s’emballe comme tel.
page-lot-sell-it = Changer le produit
page-counter-why = Voir pourquoi
page-counter-say-hold = Dites : « Je ne peux pas vendre celui-ci aujourd’hui. » Rien d’autre n’est nécessaire.
page-counter-take-off = Retirer de la vitrine
page-counter-discard = et jeter { $weight }
page-counter-other-why = Autre raison
page-counter-thaw = Décongeler
page-counter-came-back = Il est revenu
page-counter-came-back-why = Un client l’a rapporté
page-counter-never-left = Il n’est jamais parti : compter
page-counter-gone-how = Un client l’a-t-il rapporté ? Ou un autre a-t-il été scanné à sa place ?
page-counter-gone-discarded = Il a été jeté ici, pas vendu. Mettez-le à la poubelle et cherchez pourquoi il traîne encore.
page-counter-gone-otherwise = Il n’a pas été vendu ici. Mettez-le de côté et cherchez pourquoi il est là.
page-counter-type = Taper le code
page-counter-photo = Photographier le code
page-counter-camera = Caméra
page-counter-camera-off = Fermer la caméra
page-counter-looking = Recherche du code …
page-counter-sound = Touchez l’écran une fois : chaque mot a ensuite son signal sonore.
page-counter-unknown-how = Regardez encore l’étiquette, ou tapez le code sous les barres. Sans étiquette, personne ne le vend.
page-counter-which-pack-how = Touchez son numéro : il suit le code sur l’étiquette.
page-counter-which-lot = Quel code ?
page-counter-which-pack = Quel paquet ?
page-counter-back = Revenir au panier
page-counter-sold = Vendu : { $what }, { $price }.
page-counter-sold-plain = Vendu : { $what }.
page-counter-taken-back = Vente annulée : { $what }. Rien n’est vendu.
page-counter-did = { $deed } : { $what }.
page-counter-ready = { $lot }, { $much }
page-counter-ready-now = À vendre maintenant, la date la plus courte d’abord
page-counter-until = jusqu’au { $day }
page-counter-by = { $by }, { $at }.
page-counter-sold-all = Vendu, les { $packs }
page-counter-basket = Panier
page-counter-together = Ensemble : { $allergens }
page-counter-dropped = Plus à vendre, retiré du panier : { $packs }. Scannez à nouveau.
page-counter-last-day = Dernier jour
page-counter-put-back = Enlever
page-ask-guest = Un client demande
page-ask-title = Un client demande
page-ask-field = Demandez : lait, porc, vin, nitrite …
page-ask-such = Lait, vin …
page-ask-about = Un client demande : { $topics }
page-ask-at = D’après ce qui y est vraiment entré, { $at }.
page-ask-what = Choisissez ce que demande le client.
page-ask-more = Plusieurs à la fois, ou autre chose
page-ask-where = Où
page-ask-everywhere = Partout
page-ask-offered = Seulement ce que vend le comptoir
page-ask-ask = Demander
page-ask-again = Autre question
page-ask-group = { $group } : { $things }
page-ask-no = Sans
page-ask-yes = Avec
page-ask-not-known = Inconnu
page-ask-say = Dites « Je ne sais pas ». Ce n’est pas vendu comme « sans ».
page-ask-means = « Sans » veut dire : pas mis dedans ; la trancheuse et la planche sont partagées.
page-ask-small = est sont il elle y a t en dans le la les l un une des du de d avec sans et ou ce cette ça cela contient contiennent que quoi quel quelle qu s votre vous je peux puis pour dedans
page-ask-none = Rien.
page-ask-nothing = Rien de ce qui est demandé n’est là en ce moment : pas de réponse pour { $topics }. Ne dites pas « sans ».
page-ask-none-of = Rien qui s’appelle « { $name } » n’est là maintenant.
page-ask-which = Vous voulez dire : { $names }. Que demande le client à ce sujet ? Choisissez ci-dessous.
page-ask-no-word = Personne ici n’a de mot pour « { $word } ». Choisissez ci-dessous.
page-ask-stopped = { $things ->
    [one] Une chose est bloquée ou a passé son jour, et n’est pas offerte.
   *[other] { $things } choses sont bloquées ou ont passé leur jour, et ne sont pas offertes.
}
page-ask-line = { $packs }, { $weight }
page-ask-held-more = { $packs ->
    [one] Un autre ne peut pas être vendu.
   *[other] { $packs } autres ne peuvent pas être vendus.
}
page-ask-held-of = { $packs ->
    [one] Un d’entre eux ne peut pas être vendu.
   *[other] { $packs } d’entre eux ne peuvent pas être vendus.
}
page-ask-fresh = Nouvelle question
page-ask-next = Lots plus anciens
page-ask-wine = vin, bière, brandy, spiritueux
query-ask-what = Dites ce que demande le client : { $known }.
query-not-topic = On ne peut rien demander ici sur « { $topic } » ; on connaît : { $known }.
query-no-place = Il n’y a pas de lieu « { $place } » dans la liste. Choisissez-en un dans la liste des lieux.
photo-no-code = On ne voit aucun code sur cette photo. Tenez le téléphone plus près et bien droit, avec de la lumière sur l’étiquette ; ou tapez le code qui est à côté.
photo-not-read = Ce n’est pas une photo que l’on peut lire ici. Envoyez un JPEG ou un PNG.
photo-too-many-dots = Cette photo a trop de points : au plus { $most } millions. Envoyez-en une plus petite.
photo-too-large = Une photo fait au plus { $most } Mo. Envoyez-en une plus petite.
photo-send = Envoyez la photo elle-même, avec Content-Type: image/jpeg ou image/png.

## Les documents gardés avec un acte

paper-empty = Ce document est vide. Reprenez la photo, ou choisissez un autre fichier.
paper-not-read = Ce document ne peut pas être gardé ici : il faut un PDF, un JPEG, un PNG ou un texte simple. C’est le contenu qui compte, non le nom.
paper-cut-off = Il manque la fin de ce document. Envoyez-le de nouveau, entier.
paper-too-large = Un document a au plus { $most } Mo. Prenez la photo plus petite, ou envoyez les pages une à une.
paper-send = Envoyez le document lui-même, avec son Content-Type : application/pdf, image/jpeg, image/png, text/csv ou text/plain.
paper-too-many = Cet acte a déjà { $most } documents et n’en prend pas d’autre. Joignez-le à un autre acte du même lot.
paper-no-paper = Il n’y a pas de document { $id }. Cherchez-le avec son acte ou son lot.
paper-thinned = Le contenu de ce document a été éliminé quand plus rien n’obligeait à le garder. Il reste inscrit qu’il était là ; demandez-en un autre à qui l’a remis.
paper-why-thinned = Dites pourquoi elle est éliminée.
paper-nothing-to-thin = Nommez les documents à éliminer.
paper-thinned-before = Le contenu de ce document a déjà été éliminé.
paper-of-paper = Un document se joint à ce qui a été fait, non à un autre document. Nommez l’acte lui-même.
paper-no-rule = Les règles de ce lieu ne disent pas combien de temps le garder : il reste.
paper-kept-until = Gardée jusqu’au { $until }.
paper-needed-on-hand = { $lot } en provient et est en stock : elle reste jusqu’à ce qu’il n’y en ait plus, et au moins jusqu’au { $until }.
paper-needed-then = { $lot }, dont provient ce qui est en stock, était là alors : elle reste jusqu’à ce qu’il n’y en ait plus, et au moins jusqu’au { $until }.
paper-needed-incident = Le rappel { $incident } est ouvert : rien n’est éliminé avant sa clôture.
paper-may-go = Aucune règle ne le demande depuis le { $until }, et rien en stock n’en a besoin.
paper-which-of = Demandez les documents d’une seule chose : d’un acte, d’un lot ou d’un animal.
paper-all-is-kept = Ce qui a été fait, pesé, mesuré et étiqueté est gardé pour toujours : rien n’en sort. Seul le contenu d’un document peut être éliminé, quand aucune règle ne le demande et que rien n’en a plus besoin ; qu’il était là, et son empreinte, restent.

title-no-code = Aucun code
ask-topic-alcohol = alcool
ask-topic-nitrite = nitrite
ask-topic-raw = cru
ask-topic-gluten = gluten
ask-is = { $what }
ask-has = { $what } : { $by }
ask-has-in = { $what } : { $by }, dans « { $through } »
ask-may-contain = { $what } : peut s’en trouver dans « { $by } », selon le fabricant
ask-not-entered = { $what } : personne n’a inscrit ce que contient « { $by } »
ask-vague = { $what } : il peut y en avoir dans « { $by } » ; le registre ne le dit pas
ask-unknown = { $what } : personne ne sait ce que contient « { $by } »
ask-not-proven = { $what } : rien ne montre encore que c’est prêt à manger

# Scopes: what is affected, what is outside, what cannot be asked.
scope-left-out = Laissé de côté par une personne : { $why }
scope-falls-out = Touché seulement à travers ce qu’une personne a laissé de côté : { $lots }.
scope-made-before = Fait avec { $lot } avant que ce lot soit touché.
scope-voided = { $lot } a été annulé : il n’a jamais existé.
scope-twin = Un autre animal, { $number } de { $farm }, abattu le même jour, le { $killed } : il n’a pas été nommé, et rien de ce qui en est arrivé n’est touché.
scope-known-as = Connu comme { $known } jusqu’à la correction de { $by }, le { $at }.
scope-of-animal = { $number } de l’élevage { $farm }, abattu le { $killed }
scope-of-supplier = { $supplier }, lot { $number }
scope-no-start = Dites par où commencer : un lot, un animal, un lot de fournisseur, un produit, un lieu ou le travail d’une personne.
scope-which-start = Dites l’un de ceux-ci : lot ; animal ; des faits d’un animal (farm, killed_on, killed_from, killed_until, carcass, tag) ; supplier avec supplier_lot ; ou product, place ou by, chacun avec from et until. Nommez les autres à part.
scope-needs = Il faut le dire ici. Ajoutez-le.
scope-ends-first = Ce temps finit avant de commencer. Changez l’un des deux.
scope-no-animal = Aucun animal au dossier ne répond à tout cela. Dites-en moins : l’élevage et le jour, ou le numéro seul.
scope-no-supplier-lot = Rien au dossier n’est arrivé comme lot { $number } de { $supplier }. Relisez le numéro sur le carton ou le bon de livraison.
scope-nobody = Personne du nom de { $person } n’a jamais rien fait au dossier. Écrivez le nom comme il figure au dossier.
scope-why-left-out = Dites pourquoi ce lot est laissé de côté.
scope-because-named = C’est ce qui a été demandé.
scope-because-made-of = Fait avec { $lot } ({ $product }).
scope-because-shared-contact = A été à { $place } avec { $lot }, sans nettoyage entre les deux.
scope-because-was-there = A été à { $place } à ce moment.
scope-because-done-by = Cette personne y a travaillé.

# Incidents: recalls and drills.
Hazard-residue = résidu
Hazard-pathogen = germe pathogène
Hazard-allergen = allergène
Hazard-foreign-body = corps étranger
Hazard-temperature = température
Hazard-label = étiquette
Hazard-other = autre
IncidentNote-told = prévenu
IncidentNote-answered = répondu
IncidentNote-caller = qui l’a annoncé
IncidentNote-reason = pourquoi
IncidentNote-hazard = de quoi il s’agit
IncidentNote-note = note
Milestone-called = L’appel
Milestone-scoped = Étendue connue
Milestone-held = Bloqué
Milestone-told = Premières personnes prévenues
Milestone-disposed = Dernière élimination
Milestone-closed = Clos
DeedKind-incident = rappel
DeedKind-incident-scope = étendue d’un rappel
DeedKind-incident-note = note sur un rappel
DeedKind-incident-guests = rappel montré aux clients
DeedKind-incident-close = rappel clos
Right-recall = mener un rappel
Right-destroy = jeter ou renvoyer ce qui est bloqué
incident-unknown = Aucun rappel au dossier n’a l’identifiant « { $id } ». Choisissez-le à la page des rappels.
incident-why = Dites pourquoi : ce qui a été dit, et qui l’a décidé.
incident-told-later = Vous avez été prévenu à { $told }, plus tard que cet acte. Vérifiez les deux heures.
incident-closed = Le rappel { $number } est clos. Ouvrez-en un autre.
incident-no-text = Dites ce qui a été annoncé ou répondu.
incident-no-hazard = Un rappel n’a pas pour objet « { $said } ». Choisissez parmi : { $known }.
incident-holds-nothing = { $number } ne bloque rien. Ce qu’il énumère se vend et s’emploie comme avant.
incident-caught = Entre dans l’étendue du rappel { $number }, et se trouve bloqué : { $lots }.
incident-left-scope = Hors de l’étendue de { $number } désormais, et bloqué jusqu’à ce que vous le leviez : { $lots }.
Milestone-located = Cherché partout
Milestone-counted = Tout compté
CountState-waiting = pas encore cherché
CountState-seen = vu, pas compté
CountState-found = trouvé
CountState-missing = manquant
CountState-gone = parti
incident-not-begun = { $number } n’avait pas commencé à ce moment. Demandez un moment plus tardif.
incident-no-moment = « { $text } » n’est pas un moment. Écrivez-le comme 2026-06-30T18:00:00-04:00.
incident-not-counted = { $packs ->
    [one] { $packs } paquet de { $number } n’a jamais été compté.
   *[other] { $packs } paquets de { $number } n’ont jamais été comptés.
}
incident-missing = { $weight } de { $number } manquent, et restent inexpliqués.
incident-disposed-uncounted = { $lot } n’a pas été compté depuis l’appel.
incident-disposed-other = { $lot } a été compté à { $counted } ; il en part { $disposed }, le reste demeure bloqué.
incident-still-held = { $packs ->
    [one] { $packs } paquet reste bloqué pour { $number }.
   *[other] { $packs } paquets restent bloqués pour { $number }.
}
stop-held-for = Bloqué pour le rappel { $number } : { $why }. Ne le vendez pas et ne l’utilisez pas avant que le rappel le libère.
stop-held-under = Bloqué pour le rappel { $number }. Ne le vendez pas et ne l’utilisez pas avant que le rappel le libère.
void-of-incident = Ce qui a été fait dans un rappel ne s’annule pas. Dites l’étendue par un nouvel acte, et levez par un déblocage.

# The page of recalls.
page-recall = Rappel
page-recall-what = Qu’ont-ils dit ?
page-recall-nothing-yet = Tapez ce qui a été dit au téléphone, puis touchez ce que c’est. Chercher ne bloque rien.
page-recall-said = Ce qu’ils ont dit
page-recall-how = Un numéro de carcasse, une boucle, un code de lot ou sa moitié, une étiquette en main.
page-recall-lots = { $lots ->
    [one] { $lots } lot est touché
   *[other] { $lots } lots sont touchés
}
page-recall-on-hand = { $lots ->
    [one] { $lots } lot est en stock, { $weight }.
   *[other] { $lots } lots sont en stock, { $weight }.
} { $sold ->
    [0] Aucun paquet n’a été vendu.
    [one] { $sold } paquet a été vendu.
   *[other] { $sold } paquets ont été vendus.
}
page-recall-hold = { $lots ->
    [0] Commencer le rappel : il n’en reste rien à bloquer
    [one] Bloquer ce lot ({ $lots }), { $weight }
   *[other] Bloquer ces { $lots } lots, { $weight }
}
page-recall-hold-what = Dès ce moment, rien n’en est vendu, emballé, servi ni imprimé
page-recall-lineage = Ce qui en a été fait
page-recall-contact = Et ce qui a partagé un plan de travail ou une machine
page-recall-told-by = Qui a appelé
page-recall-why = Ce qu’ils disent que c’est
page-recall-hazard = De quoi il s’agit
page-recall-each = Pourquoi chacun d’eux
page-recall-lot = Lot
page-recall-because = Parce que
page-recall-outside = Laissé de côté, et pourquoi
page-recall-gone = Touché, et il n’en reste rien
page-recall-sold = Vendu
page-recall-sold-which = Vendu : quels paquets, et quand
page-recall-served = Servi
page-recall-discarded = Jeté
page-recall-shipped = Expédié
page-recall-unexplained = Inexpliqué
page-recall-all = Rappels jusqu’ici
page-recall-drill = exercice
page-recall-closed = clos
page-recall-count-now = Commencer le comptage
page-recall-count-on = Continuer le comptage
page-recall-see = Voir le rappel
page-recall-drill-begin = Commencer un exercice
page-recall-drill-of-what = Un exercice : de quelle étiquette ?
page-recall-drill-what = Tout comme lors d’un rappel, et rien n’est bloqué
page-drills = Exercices
page-drill-due = Le prochain exercice est à faire au plus tard le { $day }.
page-drill-none-due = Rien n’est encore entré : aucun exercice n’est à faire.
page-drill-none = Aucun exercice n’est encore au dossier.
page-drill = Exercice
page-drill-of = Sur
page-drill-packs = Paquets
page-drill-scope = Étendue après
page-drill-located = Repéré après
page-drill-counted = Compté après
page-drill-share = Cherché
page-drill-missing = Manquant
page-minutes = { $minutes } min
page-incident-report = Le rapport
page-incident-record = Le dossier pour un tableur
page-incident-picture = L’image
page-incident-events = Les événements
page-incident-clock = Les heures
page-incident-what = Quoi
page-incident-when = Quand
page-incident-after = Après l’appel
page-incident-lots = Ce qu’il y a à trouver
page-incident-left = Encore là
page-incident-all-there = tout est là
page-incident-dispose = { $lots ->
    [one] { $lots } lot, { $weight }
   *[other] { $lots } lots, { $weight }
}
page-incident-dispose-head = Ce qu’il en advient
page-incident-dispose-what = Chaque lot coché part avec son témoin. Pour débloquer un lot, allez à sa propre page.
page-incident-dispose-do = Enregistrer pour ce qui est coché
page-incident-dispose-which = Ce qui part
page-incident-dispose-packs = Paquets de { $lot } : tous, ou 1-4, 7
page-incident-uncounted-close = Tout n’est pas compté. Comptez d’abord, ou dites ci-dessous pourquoi c’est impossible.
page-incident-known = Ce que vous savez maintenant
page-incident-known-do = Le noter
page-incident-known-none = Rien n’est encore écrit.
page-incident-dispose-some = Seulement quelques paquets
page-incident-how = Comment
page-incident-discarded = détruit
page-incident-returned = renvoyé
page-incident-witness = Qui l’a vu
page-incident-document = Sur quel document
page-incident-why = Pourquoi
page-incident-people = Qui appeler
page-incident-nobody = Personne en amont ni en aval n’est au dossier.
page-incident-who = Qui
page-incident-about = À propos de
page-incident-told = Prévenu
page-incident-answered = A répondu
page-incident-note-kind = Ce qui s’est passé
page-incident-note-told = Prévenu
page-incident-note-answered = A répondu
page-incident-note-note = Autre chose
page-incident-whom = Qui
page-incident-text = Ce qui a été dit
page-incident-note = Le noter
page-incident-sold = Vendu, par jour et par heure
page-incident-nothing-sold = Rien n’en a été vendu.
page-incident-how-much = Combien
page-incident-notices = Les avis aux clients et pour le rayon
page-incident-show = Prévenir les clients qui lisent une étiquette
page-incident-hide = Ne plus prévenir les clients
page-incident-show-what = Qui lit au téléphone le code d’un paquet bloqué voit le rappel
page-incident-acts = Ce qui a été décidé et annoncé
page-incident-close = Le clore
page-incident-close-why = Comment il a fini ; ce qui ne concorde pas, et pourquoi
page-incident-close-what = Le rapport est gardé tel qu’il est alors. Ce qui est bloqué le reste
page-count-at = Comptage : { $place }, lieu { $nth } sur { $places }
page-count-found = { $found } sur { $packs ->
    [one] { $packs } paquet trouvé ici
   *[other] { $packs } paquets trouvés ici
}{ $missing ->
    [0] .
    [one]  ; { $missing } manque.
   *[other]  ; { $missing } manquent.
}
page-count-place = { $place } : { $found } sur { $packs }{ $missing ->
    [0] { "" }
    [one]  ; { $missing } manque
   *[other]  ; { $missing } manquent
}
page-count-missing = manque : n° { $packs }
page-count-not-here = Pas ici : { $packs }
page-count-pack = Paquet { $pack }, { $weight }
page-count-outside = { $lot } n’est pas de ce rappel. Remettez-le.
page-count-which = { $name }, { $lot } : quel paquet ? Lisez son numéro sur l’étiquette et ajoutez-le : { $lot }/3.
page-count-surplus = { $name }, { $pack } : selon le livre, il n’en reste rien. Pesez-le : c’est de plus que le livre.
page-count-again = { $name }, { $pack } est déjà compté : { $weight }. Pesez-le de nouveau si c’est faux.
page-count-elsewhere = { $name }, { $pack } : selon le livre, il est à { $place }.
page-count-opened = { $name }, { $pack } est ouvert ; selon le livre il en reste { $weight }. Il n’est pas encore compté : pesez-le, puis touchez « Il est là ».
page-count-this = { $name }, { $pack } : { $weight } selon le livre.
page-count-unanswered = Toujours demandé, pas encore compté :
page-count-decide = Décider de la suite
page-count-all-counted = Tout est compté
page-count-it-is-here = Il est ici
page-count-scan = Lisez chaque paquet là où il se trouve, et posez son étiquette de blocage
page-count-this-one = Le compter
page-count-book = Selon le livre
page-count-found-n = Trouvé
page-count-stands = Où on en est
page-count-without-scan = Une étiquette illisible
page-count-missing-what = Il reste inexpliqué jusqu’à ce que quelqu’un le trouve
page-count-places = Le tour
page-count-back = Un client en a rapporté
page-count-back-code = Son code
page-count-back-from = Qui
page-count-back-do = Le reprendre
page-count-back-what = Il est bloqué dès qu’il rentre
page-count-tags = Étiquettes de blocage (PDF)
page-and-more = { $what } : { $more }
page-count-tub = Un bac sans étiquette
page-count-tub-how = Si vous savez quel paquet c’est, et qu’il est compté comme manquant, dites son code. Sinon il est pris comme un bac dont personne ne connaît l’histoire, et reste arrêté.
page-count-tub-product = Ce que c’est
page-count-tub-is = Son code, si vous le connaissez
page-count-tub-do = Le prendre
page-count-all = Tous les lieux ensemble
page-recall-days = du { $first } au { $last }
page-recall-held = Bloqué par { $number } : { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
  }, { $weight }
page-recall-since = Depuis { $at }. Signalé par : { $by }
page-recall-hazard-unknown = Pas encore connu, ou autre chose
page-recall-no-name = quelqu’un dont le nom n’a pas été noté
page-recall-afterwards = Tout cela peut attendre : bloquez d’abord. Ce que vous apprenez ensuite se note sur la page du rappel.
page-recall-of-farm = Tous ses animaux abattus certains jours
page-recall-of-product = Ce qui en a été fait certains jours
page-recall-of-place = Ce qui s’y trouvait certains jours
page-recall-of-person = Ce que cette personne a fait certains jours
page-recall-which-kills = Quand ont-ils été abattus ? Touchez le jour, ou dites le premier et le dernier : les deux sont compris.
page-recall-none-killed = Aucun animal de { $what } n’est noté comme abattu du { $first } au { $last }. Cela ne dit pas qu’il n’y en a pas ici : le jour a pu être mal entendu ou noté autrement. Voici les plus proches :
page-recall-none-then = Rien n’est noté de { $what } du { $first } au { $last }. Cela ne dit pas qu’il n’y en a pas ici : essayez d’autres jours, ou le lot.
page-recall-left-out = Laissé de côté : { $words }
query-small-words = le la les l un une des du de d en au aux à a dans par pour et ou avec est sont été fut était ce cette ces il elle nous vous notre votre abattu abattue abattus abattues début fin milieu semaine mois jour lot lots animal animaux viande finissant finit termine terminant
query-months = janvier février mars avril mai juin juillet août septembre octobre novembre décembre
query-carcass-words = demi-carcasse demi-carcasses demi carcasse carcasses côté moitié
page-recall-which-days = Quels jours ? Les deux sont compris.
page-recall-show = Montrer ce qui est touché
page-recall-tags = Imprimer toutes les étiquettes de blocage (PDF)
page-animal-recall = Rappeler ce qui en est issu
page-animal-recall-what = Montre ce qui est touché, et le bloque d’un geste de plus
page-incident-told-now = Prévenu à l’instant
page-incident-by-phone = prévenu par téléphone
page-count-next = Ensuite : { $place }
page-recall-stands = { $by }, { $at } : { $packs ->
    [one] { $packs } paquet bloqué, { $weight }.
   *[other] { $packs } paquets bloqués, { $weight }.
}
page-bench-did-made = { $deed } : { $packs ->
    [one] {""}
   *[other] { $packs } paquets,{" "}
  }{ $name }, { $lot } ; { $by }, { $at }.
page-bench-did-made-lots = { $deed } : { $lots } lots ; { $by }, { $at }.
page-bench-labels-doubt = { $labels ->
    [one] { $labels } étiquette n’est peut-être pas sortie : voyez Impression.
   *[other] { $labels } étiquettes ne sont peut-être pas sorties : voyez Impression.
  }
page-bench-labels-open = { $labels ->
    [one] { $labels } étiquette attend l’imprimante { $printer }.
   *[other] { $labels } étiquettes attendent l’imprimante { $printer }.
  }
page-bench-labels-out = { $labels ->
    [one] { $labels } étiquette est sortie.
   *[other] { $labels } étiquettes sont sorties.
  }
page-bench-labels-as-pdf = { $labels ->
    [one] { $labels } étiquette est partie en PDF.
   *[other] { $labels } étiquettes sont parties en PDF.
  }
page-bench-labels-none = Aucune étiquette n’est encore imprimée.
page-bench-room-head = Saloir : { $alarms ->
    [one] { $alarms } alarme
   *[other] { $alarms } alarmes
  }, { $due } à faire
page-bench-room-lies = { $lots ->
    [one] 1 lot est en salaison.
   *[other] { $lots } lots sont en salaison.
  }
page-bench-labels-printing = { $labels ->
    [one] 1 étiquette est en route vers { $printer }.
   *[other] { $labels } étiquettes sont en route vers { $printer }.
  }
page-bench-room-quiet = { $pieces ->
    [one] { $pieces } pièce
   *[other] { $pieces } pièces
  } au sel ou au séchoir.
page-bench-of-tag = { $tag } { $name }
page-bench-lost = { $percent } % de perte
page-bench-last = dernière pesée { $weight }, { $day }
page-bench-expected = attendu { $weight }
page-bench-target = cible { $percent } %
page-bench-days = { $days } jours
page-bench-day = jour { $day }
page-bench-ready-for = prêt : jour { $nth }, { $day }
page-bench-turn-on = à retourner le { $day }.
page-bench-out-on = sortie de salaison le { $day }.
page-bench-is-out = sorti de salaison : à fumer ou à cuire.
page-bench-signed-by = signé { $by }
page-bench-left = reste { $weight }, { $until }
page-bench-boiled = A bouilli { $minutes } minutes
page-bench-heat-step = { $at } pendant { $minutes }
page-bench-heat-reached = { $at } atteints
page-bench-cool-between = de { $from } à { $to } en { $hours } au plus
page-bench-cool-from-start = jusqu’à { $to } en { $hours } au plus
page-bench-cool-by = { $to } avant { $by }
page-bench-cool-met = { $to } : atteint
page-bench-row = Ligne { $row }
page-sentence-weigh = { $name }, { $lot }, pèse [grams] : [_lost] du poids frais sont perdus.
page-sentence-weigh-alone = { $name }, { $lot }, pèse [grams].
page-sentence-release = Libérer { $name }, { $lot }. Signé : { $by }.
page-sentence-turn = { $name }, { $lot } : retourné, à l’endroit [place].
page-sentence-rinse = { $name }, { $lot } : rincé, à l’endroit [place].
page-sentence-equalise = { $name }, { $lot } : en repos dès maintenant, à l’endroit [place].
page-sentence-hang = { $name }, { $lot } : suspendu dès maintenant, à l’endroit [place].
page-sentence-receive-animal = Réceptionner [product], [animal.side], [grams], de [animal.farm], abattu le [animal.killed_on], carcasse [animal.carcass], température [degrees], vers [place].
page-sentence-receive-bought = Réceptionner [product], [grams], de [bought.supplier], température [degrees], vers [place].
page-sentence-cool = { $name }, { $lot } : refroidi, à l’endroit [place].
page-sentence-core = Le cœur de { $lot } était à [degrees] à la fin de sa cuisson.
page-sentence-cook = Cuire [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-sentence-smoke = Fumer [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-sentence-render = Fondre [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-sentence-grind = Hacher [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-sentence-mix = Mélanger [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-sentence-cure = Saler [_sum] (lots : [_lots]) : [outputs.0.grams] de { $name }, paquets : [outputs.0.pack_count], vers [outputs.0.place].
page-act-weigh = Peser
page-act-sell = Vendre
page-act-tend = Retourner ou suspendre
page-act-release = Libérer
page-act-see = Voir
page-act-cook = Cuire
page-act-grind = Hacher
page-act-mix = Mélanger
page-act-cure = Saler
page-act-smoke = Fumer
page-act-cool = Refroidir
page-act-core = Noter la température à cœur
page-weigh-now = Sur la balance
page-weigh-keep = Garder ce poids
page-weigh-else = Autres relevés
page-weigh-again = Repeser
page-weigh-caution = La perte de poids seule ne rend rien sûr ; la réglementation locale et les professionnels habilités décident.
page-tend-how = Ce qui a été fait
page-tend-done = Fait : garder
page-tend-turned = Retourné
page-tend-rinse = Rincer
page-tend-equalise = Mettre en repos
page-tend-hang = Suspendre
page-release-it = Libérer
page-release-see = Voir où il en est
page-release-sign = Signer et libérer
page-release-looked = Qu’avez-vous constaté en regardant ?
page-release-looked-later = Suspendez-la là où elle sèche comme il faut, et repesez-la dans quelques jours. Si l’écart est encore trop grand quand elle descend, vous signez qu’elle a été vérifiée.
page-release-looked-manager = Suspendez-la là où elle sèche comme il faut, repesez-la dans quelques jours, et dites à un responsable ce que vous avez trouvé : c’est lui qui signe quand elle descend.
page-weigh-hang-elsewhere = Suspendre ailleurs
page-release-looked-sign = J’ai regardé : signer et libérer
page-release-not-yet = Pas encore :
page-release-trichinae = Porc mangé cru : papier sur les trichines
page-release-trichinae-help = Seulement si la ferme n’a pas de certificat dans la liste. Le service le dit quand il en faut un.
page-release-paper = Numéro du papier
page-release-way = Ce qu’il dit
page-release-carcass-tested = La carcasse a été examinée
page-release-herd = L’élevage est à risque négligeable
page-cure-room-scan = Étiquette à peser
page-cure-room-due = À faire
page-cure-room-lies = En salaison, à fumer ou à cuire
page-cure-room-in-cure = en salaison
page-cure-room-rest = Le reste sèche ou repose tranquillement
page-cure-room-lost = Perte
page-cure-room-next = Ensuite
page-cure-room-stage-day = { $stage }, jour { $days }
page-receive = Réceptionner
page-receive-animal = Un animal
page-receive-bought = Un carton ou un sac
page-receive-what = Qu’est-ce que c’est ?
page-receive-farm = Ferme
page-receive-killed = Abattu le
page-receive-abattoir = Abattoir
page-receive-abattoir-us = Abattoir
page-receive-carcass-help = Le numéro de carcasse ou la boucle réunit les deux demi-carcasses. Sans l’un ni l’autre, c’est un animal à part.
page-receive-no-carcass = Ni numéro de carcasse ni boucle : cela compte comme un animal à part, et l’autre côté ne pourra pas le rejoindre. Tapez l’un des deux s’il existe.
page-receive-part-whole = D’après son nom, c’est une partie d’un animal. Est-ce un animal entier ? Sinon, choisissez gauche ou droite.
page-receive-no-number = sans numéro
page-receive-carcass = Numéro de carcasse
page-receive-ear-tag = Boucle ou tatouage
page-receive-side = Quelle partie
page-receive-side-other = Une autre partie
page-receive-barcode = Scannez le carton
page-receive-barcode-help = Ce que le code contient se remplit seul : produit, poids, lot, dates. Ne tapez que ce qu’il ne dit pas.
page-receive-new-supplier = Le fournisseur n’est pas dans la liste : en ajouter un
page-receive-new-product = Le produit n’est pas dans la liste : en ajouter un
page-receive-no-supplier = La liste n’a pas encore de fournisseur. Un responsable en ajoute un sous « Listes et réglages ».
page-receive-salt = Sa teneur, d’après le sac
page-receive-salt-listed = À lire sur ce sac : elle varie d’un sac à l’autre. D’après la liste, c’est [percent] ; laissé vide, c’est ce qui est pris.
page-receive-by-barcode = Selon le code
page-receive-use-by = Dernier jour du fournisseur
page-receive-weight = Poids
page-receive-degrees = Température à l’arrivée
page-receive-head = Combien de têtes, pour la volaille
page-receive-note = Bon de livraison
page-receive-button = Réceptionner
page-optional = (facultatif)
page-make = Cuire, hacher, mélanger ou saler
page-make-cook = Que cuit-on ?
page-make-grind = Que hache-t-on ?
page-make-mix = Que mélange-t-on ?
page-make-cure = Que sale-t-on ?
page-make-smoke = Que fume-t-on ?
page-make-render = Que fond-on ?
page-make-becomes = Qu’est-ce que cela devient ?
page-make-cut = Quelle pièce découpe-t-on ?
page-make-cut-none = Rien ne peut être découpé maintenant : ni carcasse, ni pièce entière qui soit libre et non congelée.
page-make-pack = Qu’emballe-t-on ?
page-packs-gone = Ne sont plus là : { $packs }
page-make-apart = Pas maintenant : { $lots }
page-make-pack-none = Rien ne peut être emballé maintenant : ni pièce, ni préparation qui soit libre et non congelée.
page-ways-cut = Découper
page-make-else = Autre chose
page-make-none = La liste n’a pas de recette pour cela.
page-pot-meat = Viande pesée
page-pot-batch = Fournée : tout ce qui entre
page-pot-in = Ce qui entre
page-pot-receive = En réceptionner
page-pot-make = En préparer
page-pot-break-down = Découper une carcasse
page-pot-none-on-hand = Il n’y en a pas.
page-pot-water = Eau ajoutée
page-pot-units = Viande et eau en lb. Ce qui va sur la petite balance est en g : sels, épices, boyaux. 2 lb 3 oz se comprend aussi.
page-pot-strength = Sa teneur, dans la liste
page-pot-scan = Scannez ou tapez un autre lot
page-pot-chosen = Choisi jusqu’ici : [chosen] sur [wanted]. Cochez ce qui entre encore, ou voyez le poids ci-dessus.
page-pot-add = Ajouter
page-pot-nothing-in = Rien n’entre encore : cocher un lot ci-dessus, ou en scanner un ici.
page-pot-out = Ce qui sort
page-pot-made = Poids fait
page-pot-bench = Fait où
page-pot-tag = Étiquette
page-plan = À peser
page-plan-curing-salt = Sel de salaison
page-plan-salt = Sel
page-plan-sugar = Sucre
page-plan-nitrite = Nitrite
page-plan-nitrate = Nitrate
page-plan-all-salt = Sel en tout
page-heat = Chaleur
page-heat-asks = Demandé :
page-heat-core = À cœur
page-heat-held = Tenu, minutes
page-heat-stuffed = La viande est-elle farcie ?
page-heat-stuffed-yes = Oui, quelque chose la remplit
page-heat-stuffed-no = Non : autour ou à côté
page-heat-stuffed-help = Avec du pain, du riz, des fruits ou une farce dans cette cuisson et sans réponse, cela se juge comme farci : il faut plus de chaleur.
page-heat-log = Relevés par heure
page-heat-curve = Les relevés en courbe
page-heat-at = À
page-heat-more = Un relevé de plus
page-cool-where = Refroidi dans
page-cool-keep = Garder ces relevés
page-cool-due = À atteindre
page-cool-left = encore [left]
page-cool-over = dépassé de [left]
page-cool-read = Mesuré jusqu’ici
page-cool-now = Maintenant
page-core-help = Seulement ce qu’une sonde a montré au plus épais pendant cette cuisson. Si personne n’a mesuré, recuisez à cœur et mesurez, ou jetez.
page-core-how = Comment le sait-on ?
page-core-noted = Mesuré alors, noté maintenant
page-core-logged = D’après l’enregistrement de la sonde
page-act-strength = La teneur du sac
page-strength-help = Comme imprimé sur ce sac : en pour cent, par exemple 0,6. Ce qui a été salé avec est jugé à nouveau d’après cela.
page-strength-read = Lu sur le sac
page-strength-mistyped = Mal saisi avant
page-strength-keep = Enregistrer la teneur
deed-not-frozen = Tout le reste à l’endroit { $place } est congelé. Ceci y a été déplacé sans congélation : l’état reste le même, et le délai court. Si cela y congèle, choisissez Congeler.
# The logs as the rules name them
LogKind-receiving = réception
LogKind-grinding = hachage
LogKind-batches = fabrications
LogKind-cooking = cuisson
LogKind-cooling = refroidissement
LogKind-curing = salaison
LogKind-trichinae = traitement contre la trichine
LogKind-temperatures = températures
LogKind-corrections = mesures correctives
LogKind-departures = sorties
LogKind-clean-downs = nettoyages
Column-at = quand
Column-began = début
Column-step = ce qui a été fait
Column-place = lieu
Column-by = par
Column-lot = lot
Column-product = produit
Column-weight = poids
Column-packs = emballages
Column-use-by = à consommer jusqu’au
Column-materials = ce qui est entré
Column-carried-over = report du lot d’avant
Column-added = ajouté
Column-loss = perte
Column-from = de
Column-from-address = leur adresse
Column-establishments = numéro d’établissement
Column-supplier-lots = lot du fournisseur
Column-produced-on = emballé ou abattu le
Column-animals = animal
Column-reference = leur référence
Column-sent-on = expédié le
Column-received-on = reçu le
Column-sources = chaque origine
Column-document = document
Column-responsible = responsable
Column-temperature = température
Column-hottest = cœur au plus chaud
Column-held = maintenu pendant
Column-boiled = bouilli pendant
Column-cooled-from = refroidi à partir de
Column-cooled-to = refroidi jusqu’à
Column-chart = heures et températures
Column-limit = limite
Column-probe = sonde
Column-standard = comparé à
Column-cleaned-before = nettoyé avant
Column-cleaned-after = nettoyé après
Column-worked = travaillé dessus depuis
Column-salt = sel
Column-nitrite = nitrite
Column-nitrate = nitrate
Column-brine = saumure, degrés
Column-ph = pH
Column-water-activity = activité de l’eau
Column-residual = résiduel
Column-method = méthode
Column-casing = boyau
Column-actual = atteint
Column-certificate = certificat
Column-deviation = écart
Column-correction = ce qui a été fait pour y remédier
Column-about = au sujet de
Column-wrong = ce qui n’allait pas
Column-done = ce qui a été fait
Column-why = pourquoi
Column-witness = témoin
Column-to = à
Column-to-address = adresse du destinataire
Column-to-telephone = téléphone du destinataire
Column-carrier = transporteur
Column-found = constaté
Column-note = note
Group-when = quand et qui
Group-what = quoi
Group-whence = d’où cela vient
Group-checks = contrôles
Group-whereto = où c’est allé
Group-remarks = remarques
Occasion-grind-beef = on hache du bœuf
Occasion-sell-at-retail = on vend au détail
Occasion-sell-to-business = on vend à une entreprise
Occasion-serve-meal = on sert un repas
Occasion-send-pig = on expédie un porc
Occasion-make-meat-product = on fabrique un produit de viande
Occasion-buy-food = on achète un aliment
Occasion-receive-animal-product = on reçoit un produit d’origine animale
Occasion-treat-trichinae = on traite du porc contre la trichine
Occasion-pack-reduced-oxygen = on emballe sous atmosphère réduite en oxygène
Occasion-complaint = quelqu’un se plaint
Occasion-recall = on rappelle un produit
Occasion-recall-drill = on fait un exercice de rappel
Addition-water = eau
Addition-ice = glace
Addition-steam = vapeur
Addition-scale-difference = écart entre deux balances
logs-percent = { $percent } %
logs-ppm = { $ppm } ppm
logs-millimetres = { $mm } mm
logs-material = { $product }, { $lot }, { $grams }
logs-point = { $at } : { $read }
logs-named-with = { $name } ({ $number })
logs-animal = { $species }, abattu le { $killed }, { $number }
logs-animal-unnumbered = { $species }, abattu le { $killed }
logs-source = { $product }, { $lot } : de { $from }, { $day }
logs-source-at = { $product }, { $lot } : de { $from }, { $address }, { $day }
logs-nobody = on ne sait qui
logs-carried-nothing = rien au dossier
logs-carried-lot = { $product }, { $lot }
logs-added = { $what }, { $grams }
logs-with-probe = { $probe }, vérifiée { $checked }
logs-probe-unchecked = { $probe }, aucune vérification au dossier dans l’année d’avant
logs-checked = vérifiée dans { $bath }
logs-none-found = aucun au dossier
logs-limit-of-place = { $limit }
logs-frozen-at = { $read } ou moins pendant { $hours } h
logs-heated-to = { $read } pendant { $minutes } min
logs-certificate = { $way } : { $paper }
logs-dried-by = salé et séché, { $method }
logs-frozen = congelé
logs-heated = chauffé
logs-certified = un certificat au lieu d’un traitement
logs-herd-certified = le certificat de la ferme
logs-deed = { $kind }, { $at }, { $by }
logs-disposed = { $how }
logs-let-go = levée de la retenue
logs-stopped-by = arrêté jusqu’à ce qu’une personne en décide
logbook-missing = MANQUE : { $field } ({ $row })
logbook-deed = acte
logbook-scale = échelle
logbook-missing-column = manque
logbook-remark = remarque
logbook-in-grams = { $heading } (g)
logbook-in-minutes = { $heading } (min)
logbook-page-of = Page { $page } sur { $of }
logbook-nothing = Rien n’a été enregistré pendant cette période.
logbook-days = Du { $first } au { $last }, ces deux jours compris.
logbook-between = De { $from } jusqu’avant { $until }.
logbook-only-place = Seulement à { $place }.
logbook-only-by = Seulement par { $by }.
logbook-only-lot = Seulement le lot { $lot }.
logbook-anchor = Ancre du registre : { $line }
logbook-asked-by = Demandé par { $by }.
logbook-voided = ANNULÉ par { $by }, { $at } : { $why }
logbook-corrected = Corrigé par { $by }, { $at }
logbook-entered = Saisi plus tard : { $at }
logbook-due = dû quand { $on } (dossier : { $record }, { $row }).
logbook-not-due = Aucune ligne au dossier n’exige ce registre ici. C’est une bonne pratique ; les règles locales décident.
logbook-kept-span = À conserver { $span } ({ $row }).
logbook-kept-food = À conserver tant que l’aliment peut être consommé ({ $row }).
logbook-kept-longer = À conserver { $span }, ou tant que l’aliment se conserve si c’est plus long ({ $row }).
logbook-span-hours = { $number ->
    [one] { $number } heure
   *[other] { $number } heures
}
logbook-span-days = { $number ->
    [one] { $number } jour
   *[other] { $number } jours
}
logbook-span-months = { $number ->
    [one] { $number } mois
   *[other] { $number } mois
}
logbook-span-years = { $number ->
    [one] { $number } an
   *[other] { $number } ans
}
logbook-counted = Inscriptions : { $entries }. Champs qu’une règle exige et que le dossier n’a pas : { $holes }.
query-no-log = Il n’y a pas de registre nommé { $log }. Il y a : { $known }.
query-window-ends-first = La période se termine avant de commencer, ou au même moment. Donnez une fin plus tardive.
query-log-too-long = Cela fait plus de { $most } inscriptions, le maximum d’un fichier. Demandez une période plus courte.
page-logs = Registres
page-papers = Documents
page-papers-add = Joindre un document
page-papers-none = Pas encore de documents.
page-papers-next = Documents plus anciens
page-papers-kind = Ce que c’est
page-papers-of = Va avec
page-papers-name = Son numéro ou son nom
page-papers-photo = Prendre une photo
page-papers-file = Choisir un fichier
page-papers-how = Une photo, un PDF ou un texte simple, au plus { $most } Mo. Le document part dès qu’il est choisi et ne change plus ; une erreur s’annule. Sans liaison avec la cuisine, il n’est ni envoyé ni mis en attente : choisissez-le de nouveau quand elle est revenue.
page-papers-sending = Envoi en cours…
page-papers-thinned = Éliminé
page-papers-voided = Annulé
page-paper-of = De : { $deed }, { $at }
page-paper-size = { $form }, { $kilobytes } Ko
page-papers-kept = { $papers ->
    [one] Un document inscrit
   *[other] { $papers } documents inscrits
 }, { $megabytes } Mo ; éliminées : { $thinned }.
page-keeping = Combien de temps on garde
page-keeping-none = Aucun document ne peut être éliminé aujourd’hui.
page-keeping-paper = Document
page-keeping-of = Va avec
page-keeping-why = Pourquoi il peut partir
page-keeping-thin = Éliminer ces documents
page-keeping-how = Leur contenu est jeté pour de bon, sous votre nom. Il reste inscrit qu’ils étaient là, avec l’empreinte de leur contenu. En cas de doute, faites d’abord une copie.
page-keeping-reason = Pourquoi
page-keeping-thin-do = Jeter leur contenu
page-keeping-rules = Les règles du lieu
page-keeping-no-rules = Ce lieu n’a pas de règle inscrite : tout reste.
page-keeping-record = Dossier
page-keeping-rule = Ce que dit la règle
page-keeping-over = Passé pour ce qui date d’avant le
page-logs-from = Du
page-logs-last = Au, ce jour compris
page-logs-show = Afficher
page-logs-spreadsheet = Tableur (CSV)
page-logs-paper = Papier (PDF)
page-logs-due = Exigé ici
page-logs-kept-anyway = Pas exigé ici
page-logs-next = Inscriptions suivantes
page-logs-all = Tous les registres
page-picture = La famille en image
page-picture-file = L’image seule, à imprimer
page-picture-alt = Chaque lot au jour où il a été fait, avec son poids et ce qu’il en reste. Le tableau ci-dessus dit la même chose.
picture-nothing = Rien n’en a été fait.
picture-summary-gone = { $lots ->
    [one] { $lots } lot, fait le { $from }. Il n’en reste rien.
   *[other] { $lots } lots, faits du { $from } au { $to }. Il n’en reste rien.
 }
picture-summary-clear = { $lots ->
    [one] { $lots } lot, fait le { $from }, en stock : { $weight }.
   *[other] { $lots } lots, faits du { $from } au { $to }. En stock : { $on_hand } d’entre eux, { $weight }.
 }
picture-summary-held = { $lots ->
    [one] { $lots } lot, fait le { $from }, en stock : { $weight }, bloqué : { $held }.
   *[other] { $lots } lots, faits du { $from } au { $to }. En stock : { $on_hand } d’entre eux, { $weight }, bloqué : { $held }.
 }
picture-key-gone = fait
picture-key-on-hand = en stock
picture-key-held = bloqué
picture-key-weight = plus épais, plus lourd
picture-made = Fait
picture-on-hand = En stock
picture-since = dès le { $day }
picture-group = { $lots ->
    [one] { $lots } lot : { $products }
   *[other] { $lots } lots : { $products }
 }
picture-in-places = { $weight } à { $places } endroits
picture-in-lots = { $lots ->
    [one] { $weight }, { $lots } lot
   *[other] { $weight }, { $lots } lots
 }
picture-all-gone = plus rien
picture-now-at = Où c’est maintenant
picture-place = { $lots ->
    [one] { $place }, { $lots } lot
   *[other] { $place }, { $lots } lots
 }
page-guest-unknown = Rien à ce sujet ici
page-guest-unknown-do = Ce code ne dit rien ici. Demandez au comptoir, avec le paquet.
page-guest-at-work = Je travaille ici : se connecter
page-guest-recalled = Ne mangez pas ceci
page-guest-do = Rapportez-le, ouvert ou non, ou jetez-le. Si vous en avez mangé et vous sentez mal, appelez un médecin.
page-guest-keep = Garder et cuire
page-guest-in-it = Ce qu’il y a dedans
page-guest-from = D’où cela vient
page-guest-more-farms = et des bêtes d’autres fermes
page-guest-allergens = Aucun allergène à nommer n’est inscrit
page-guest-ask = Une question ? Demandez au comptoir.
guest-residue = Une bête dont ceci est fait n’aurait pas dû être vendue pour être mangée : un médicament y était encore. La cuisson ne l’enlève pas.
guest-pathogen = Il peut porter des germes qui rendent malade. Cela ne se voit, ne se sent ni ne se goûte.
guest-allergen = Il peut contenir un allergène que l’étiquette ne nomme pas.
guest-foreign-body = Il peut s’y trouver quelque chose de dur qui n’a pas sa place là.
guest-temperature = Il n’a peut-être pas été gardé assez froid ou cuit assez chaud.
guest-label = L’étiquette ne dit pas la vérité.
guest-other = Quelque chose ne va pas.
guest-ask-first = Demandez au comptoir avant de manger ou d’ouvrir ceci.
guest-past-day = Le dernier jour était { $day }. Demandez au comptoir.

## Set-up, lists, tables, rules

page-field-code = Code
page-help-code-made = Laissez vide : il est tiré du nom. Qui veut son propre nom court l’écrit en minuscules, avec des traits d’union ; il ne se change plus ensuite.
page-help-code = Court, et on ne peut plus le changer. Une ferme : 2 ou 3 lettres sans I, L, O, U. Tout le reste : minuscules et traits d’union.
page-field-name = Nom
page-field-number = Numéro d’établissement
page-field-phone = Téléphone
page-field-address = Adresse
page-field-country = Pays, deux lettres
page-field-born-there = Nés dans ce pays aussi
page-help-born-there = Seulement avec un document qui le dit : certaines étiquettes affirment le lieu de naissance.
page-field-premises-id = Identification de l’exploitation
page-field-trichinae-certificate = Certificat trichine
page-help-trichinae-certificate = Le numéro de l’attestation d’exploitation à risque négligeable. Sans elle, le porc mangé cru exige une congélation, une cuisson ou un séchage consigné.
page-field-kind = Sorte
page-field-scale-grams = Échelon de la balance, g
page-help-scale-grams = Sous environ 2 kg de viande, le sel nitrité demande une balance au dixième de gramme.
page-field-limits-below-celsius = Pas plus chaud que, °C
page-field-limits-below-fahrenheit = Pas plus chaud que, °F
page-field-limits-above-celsius = Pas plus froid que, °C
page-field-limits-above-fahrenheit = Pas plus froid que, °F
page-field-certificate = Empreinte de son certificat
page-help-certificate = Seulement derrière ipps:// : rien n’est envoyé à une imprimante qui en présente une autre.
page-field-templates = Étiquettes prévues, une par ligne
page-field-names-en = Nom en anglais
page-field-names-fr = Nom en français
page-field-species = Animal
page-field-raw = À cuire avant d’être mangé
page-help-raw = « Non » n’est qu’une affirmation : le dossier doit prouver que c’est prêt (une cuisson mesurée, une libération, un document du fournisseur), sinon le comptoir le retient.
page-field-allergens = Allergènes propres
page-help-allergens = Ce qu’il contient en plus des parts de sa recette. Lire l’emballage : ce qui n’est dit ni ici ni dans une part passe pour absent. Nommer chaque noix et chaque poisson.
page-field-storage = Conservation
page-field-keep-days = Jours de conservation
page-help-keep-days = Les jours de la maison. Si la loi du lieu en permet moins, c’est elle qui vaut ; rien ne les allonge.
page-field-keep-from = Comptés à partir de
page-field-keep-day-one-counts = Ce jour-là est le jour 1
page-field-keep-freeze-day-counts = Le jour de la congélation compte
page-field-keep-if-stable-days = Jours, si des mesures montrent qu’il est stable
page-field-keep-if-stable-from = Alors comptés à partir de
page-field-keep-if-stable-day-one-counts = Alors ce jour-là est le jour 1
page-field-controlled = Exige le froid
page-help-controlled = « Non » pour un produit animal exige des mesures (pH, activité de l’eau) ou une approbation ; sinon ses emballages sont retenus.
page-field-stable-as = Se conserve par nature, comme
page-field-for-sale = Vendu au comptoir
page-field-price-minor-per-kg = Prix au kilo
page-field-gtin = GTIN
page-help-gtin = Seulement sous le préfixe GS1 de la cuisine.
page-field-till-number = Numéro de caisse
page-field-face = Face de l’emballage en cm²
page-help-face = Le côté qui porte l’étiquette : la hauteur légale du poids net en dépend. Sans réponse, elle suit l’étiquette.
page-field-panel-apart = Manipulation sûre sur une seconde étiquette
page-help-panel-apart = L’étiquette de face est alors plus courte ; les deux sortent en une seule impression et portent le même code. Sans réponse, le réglage de la cuisine compte.
page-help-till-number = La disposition de caisse de la cuisine dit comment il entre dans un code à barres.
page-field-cut-style = Découpé comme
page-help-cut-style = Pour une carcasse : celle que la page de découpe montre et compare.
page-field-cut = Quel morceau
page-help-cut = Pour un morceau : la page de découpe sait alors où passe le couteau et ce qu’il pèse d’habitude.
page-field-process = Rendement comparé à
page-help-process = Pour ce qui est cuit, fumé ou fondu : le rendement publié auquel la balance est comparée.
page-field-value-minor-per-kg = Valeur au kilo, pour les coûts
page-field-cooked-as = Cuisson jugée comme
page-help-cooked-as = La viande hachée ou injectée demande plus de chaleur ; ce qui fut percé en route compte comme haché quoi qu’il soit dit ici.
page-field-nature = Dans la liste d’ingrédients
page-field-cure-class = Salé comme
page-help-cure-class = Ce que distinguent les limites de nitrite.
page-field-cure-method = Méthode
page-field-cure-heated = Cuit ici ensuite
page-field-cure-nitrite = Avec nitrite ou nitrate
page-help-cure-nitrite = Dire oui si c’est voulu : une salaison sans sel nitrité de teneur connue est alors arrêtée.
page-field-cure-salting = Manière de saler
page-help-cure-salting = Pour ce qui est ensuite fumé ou cuit, sans être suspendu : le saloir et la page du jour disent alors quand le retourner et quand le sortir. Les jours ne disent rien de la sûreté : la salaison et ses poids décident.
page-field-cure-days = Jours en salaison
page-help-cure-days = Ceux de la maison. Si rien n’est dit : ceux de la manière choisie.
page-field-in-cure = Dans une salaison, c’est
page-field-curing-salt-nitrite-percent = Nitrite, % du sel
page-help-curing-salt-nitrite-percent = Le lire sur le sac, chaque fois : des sels à 6,25 %, 5,88 % et 0,5 % se ressemblent, et un chiffre faux ici est une dose fausse dans chaque lot. En pour cent, pas en fraction : 6,25.
page-field-curing-salt-nitrite-of = Quel nitrite
page-field-curing-salt-nitrate-percent = Nitrate, % du sel
page-help-curing-salt-nitrate-percent = Jamais dans le bacon aux États-Unis ; seulement dans ce qui sèche longtemps.
page-field-curing-salt-nitrate-of = Quel nitrate
page-field-release-loss-percent = Libéré à une perte de, %
page-field-release-tolerance-points = Points de moins admis
page-field-release-days = Pas avant tant de jours
page-field-release-water-activity = Activité de l’eau au plus
page-help-release-water-activity = C’est ce qui montre qu’il se conserve sans froid ; la seule perte de poids ne le montre pas.
page-field-release-curve = Sèche selon la courbe
page-help-release-curve = Trop en avance ou en retard, le séchoir donne l’alarme.
page-field-release-salting = Salé selon le calendrier
page-field-other = Autre
page-part-keep = Durée de conservation
page-part-counter = Au comptoir
page-part-code = Nom court, si vous en voulez un
page-part-names = Code et autres noms
page-part-keep-more = Conservation : le détail
page-part-label = Code-barres, caisse et étiquette
page-part-yield = Découpe et rendement
page-part-cure = Salaison
page-part-salt = Si c’est un sel nitrité
page-part-release = Libération d’une pièce suspendue
page-field-standard-place = Lieu dans son nom
page-field-standard-made-there = Fait là où le nom le dit
page-field-standard-mince = Vendu comme quel haché
page-field-standard-steak = Vendu comme steak
page-field-standard-tenderised = Attendri par lames ou aiguilles
page-field-standard-loaf = Un pain, non une pièce
page-field-standard-shank-bones-out = Les deux os du jarret retirés
page-field-standard-bones-remain = Il reste des os
page-field-standard-packed-in = Conditionné dans quel liquide
page-field-standard-protein-percent = Protéines de viande, %
page-field-standard-fat-percent = Matière grasse, %
page-field-standard-collagen-percent = Collagène dans ses protéines, %
page-field-standard-shank-over-percent = Viande de jarret en plus, %
page-field-standard-added-percent = Ingrédients ajoutés, % du poids
page-field-standard-salt-percent = Sel à l’intérieur, mesuré, %
page-field-standard-water-percent = Eau à l’intérieur, mesurée, %
page-field-keep-if-stable-freeze-day-counts = Alors le jour de congélation compte
page-field-curing-salt-salt-percent = Sel dedans, %
page-field-release-signature = Une signature la libère
page-field-customer-names-en = Nom pour la clientèle en anglais
page-field-customer-names-fr = Nom pour la clientèle en français
page-help-customer-names = Sur les étiquettes et dans les listes d’ingrédients, si la maison l’appelle autrement entre elle. Vide : le nom ci-dessus.
page-field-cooking-en = Cuisson chez le client, en anglais
page-field-cooking-fr = Cuisson chez le client, en français
page-help-cooking = Figure sur l’emballage, tel qu’écrit ici.
page-field-uncured-resembles = Vendu comme non salé au nitrite : a l’aspect, le goût et la coupe du produit salé
page-field-uncured-natural = Ce qui apporte du nitrite par nature, comme la poudre de céleri
page-help-uncured = Seulement pour ce qui est d’ordinaire salé au nitrite et se vend comme non salé. Vide : il ne se vend pas ainsi.
page-field-standard-cooking-method-en = Après les lames : mode de cuisson, en anglais
page-field-standard-cooking-method-fr = Après les lames : mode de cuisson, en français
page-field-standard-cooking-celsius = Après les lames : cœur, °C
page-field-standard-cooking-fahrenheit = Après les lames : cœur, °F
page-field-standard-cooking-hold-minutes = Après les lames : tenu, minutes
page-help-standard-cooking = Si des lames ou des aiguilles l’ont traversé : la cuisson que la cuisine a démontrée. Une seule des deux températures. Tout vide : les chiffres du pays sont imprimés.
page-part-standard = Ce que son nom garantit
page-help-standard-place = Un nom qui parle d’un lieu est réservé à ce qui y est fait. Vide : son nom n’en nomme aucun.
page-help-standard-tenderised = Ce n’est plus une pièce entière ; l’étiquette doit parfois le dire, et comment la cuire.
page-help-standard-protein-percent = Comme un laboratoire l’a trouvé dans l’aliment fini. Vide : inconnu, et signalé là où une norme en dépend.
page-part-limits = Température exigée
page-caution = La réglementation locale et les professionnels habilités décident. Chaque chiffre dit d’où il vient ; à lire avant de s’y fier.
page-rows-behind = D’où cela vient
page-yes = Oui
page-no = Non
page-lists = Listes et réglages
page-field-missing = À remplir ou à choisir.
page-field-misread = Cela ne se lit pas ici : voyez ce qui est demandé et tapez-le de nouveau.
page-back = Revenir là où vous étiez
page-lists-till = Numéros de caisse
page-new-probe = Une nouvelle sonde
page-new-printer = Une nouvelle imprimante
page-new-product = Un nouveau produit
page-new-place = Un nouveau lieu
page-new-supplier = Un nouveau fournisseur
page-new-abattoir-us = Un nouvel abattoir
page-new-abattoir = Un nouvel abattoir
page-new-farm = Une nouvelle ferme
page-lists-add = Ajouter
page-lists-none = Rien ici.
page-lists-keep = Garder ainsi
page-lists-add-this = Ajouter à la liste
page-lists-manager = Un responsable modifie ceci.
page-recipe = De quoi il est fait
page-recipe-help = En poids mis en œuvre, pour un lot de n’importe quelle taille : une salaison se calcule sur le poids de la viande. Une ligne vide ne compte pas.
page-recipe-part = Part
page-starters = Choisir dans la liste de départ
page-starters-back = Produits
page-starters-how = Cocher ce que la cuisine fait. Chaque entrée devient un produit ordinaire, modifiable ; ce dont il est fait est coché avec lui.
page-starters-with = Coché avec, puisqu’il en est fait : [names].
page-starters-kept = Reste coché : il en faut pour [names].
page-starters-all = Tout ce groupe
page-starters-listed = dans la liste
page-starters-take = Ajouter ce qui est coché
page-starters-going = [nth] sur [all] : restez sur cette page jusqu’à ce que tout y soit.
page-setting-group-of = { $listed ->
    [0] { $things } en tout
   *[other] { $things } en tout, dont { $listed } dans la liste
}
page-starters-ticked = à ajouter
page-common-practice = Usage courant, sans source.
page-about-keep = Jours :
page-about-cut = Part de la carcasse :
page-about-yield = Rendement :
page-about-cure = Nitrite :
page-about-salting = En salaison :
page-about-release = Libération :
page-about-strength = Teneur :
page-import = Depuis un tableur
page-import-how = Enregistrer la feuille en CSV, les colonnes nommées en première ligne. L’essayer d’abord : rien ne change avant la reprise, et alors tout ou rien.
page-import-file = Le fichier
page-import-paste = ou le coller ici
page-import-try = Essayer
page-import-sample = Un fichier pour commencer
page-import-report = Ce qui en résulterait
page-import-new = nouvelles
page-import-changed = modifiées
page-import-same = inchangées
page-import-wrong = fautives
page-import-line = Ligne
page-import-columns = Colonnes
page-import-says = Que faire
page-import-take = Tout reprendre
page-import-which = Les colonnes possibles
page-rules = Règles et sources
page-rules-how = Tout ce sur quoi reposent étiquettes et blocages, dans nos mots, avec la source. Une ligne que personne ici n’a confirmée avertit seulement.
page-rules-all = Toutes les lignes
page-rules-work = À confirmer
page-rules-open = non confirmée
page-rules-confirm = J’ai lu le texte
page-rules-confirm-how = Lire le texte même de la loi, pas un résumé. Ce qui est écrit est consigné à votre nom ; cela peut être annulé.
page-rules-text = Ce que dit le texte
page-rules-read-in = Où et quand vous l’avez lu
page-rules-confirm-button = Confirmer cette ligne
page-rules-next = Autres lignes
page-mark-read = lu à la source
page-mark-second-hand = lu de seconde main
page-mark-memory = de mémoire
page-mark-derived = déduit de lignes lues
page-mark-house = propre à la maison
page-mark-kitchen = confirmé par la cuisine
page-mark-practice = usage courant, sans source
page-me-reading = Votre langue et vos unités
page-me-language = Langue
page-me-weights = Poids
page-me-temperatures = Températures
page-me-as-tablet = Comme la tablette
page-me-as-kitchen = Comme la cuisine
page-me-keep-reading = Garder ainsi
page-begin-go = Le faire maintenant
page-set-up = Installer la cuisine
page-set-up-small = pas à pas
page-set-up-kitchen = La cuisine : nom, loi, unités
page-step-kitchen = Cuisine
page-step-places = Lieux
page-step-people = Équipe
page-step-printer = Imprimante
page-step-products = Produits
page-step-animal = Premier animal
page-set-up-no-address = Il n’y a pas encore d’adresse. Une étiquette client l’exigera : d’ici là elle est refusée ; bacs et congélateur s’impriment.
page-set-up-address-now = L’ajouter maintenant
page-set-up-kitchen-how = Qui vous êtes, et selon quelle loi vous étiquetez. Tout pourra changer, sauf le code.
page-set-up-code = Votre code
page-set-up-code-help = 2 ou 3 majuscules, sans I, L, O, U. Il commence le code de tout ce qui vient de plusieurs animaux.
page-set-up-code-wrong = [letter] ne peut pas figurer dans un code : sur une étiquette mouillée, on la prend pour un autre signe. Prendre une autre lettre.
page-set-up-address-help = Comme elle doit figurer sur les étiquettes des clients.
page-set-up-law = Quelle loi
page-set-up-languages = Langues de vos étiquettes
page-set-up-zone = Fuseau horaire
page-zone-others = Ailleurs
page-zone-africa = Afrique
page-zone-america = Amérique
page-zone-antarctica = Antarctique
page-zone-arctic = Arctique
page-zone-asia = Asie
page-zone-atlantic-ocean = Atlantique
page-zone-australia = Australie
page-zone-europe = Europe
page-zone-indian-ocean = océan Indien
page-zone-pacific-ocean = Pacifique
page-zone-newfoundland = Terre-Neuve
page-zone-atlantic = Atlantique
page-zone-hawaii = Hawaï
page-zone-alaska = Alaska
page-zone-pacific = Pacifique
page-zone-mountain-standard = Rocheuses, sans heure d’été
page-zone-mountain = Rocheuses
page-zone-central-standard = Centre, sans heure d’été
page-zone-central = Centre
page-zone-eastern = Est
page-set-up-currency = Monnaie
page-set-up-more = Adresse des codes, caisse, approbations
page-set-up-url = Adresse contenue dans les codes des étiquettes
page-set-up-panel-help = L’étiquette de face est alors plus courte ; les deux sortent en une seule impression et portent le même code. Un produit peut en décider autrement.
page-set-up-country = Pays, deux lettres
page-set-up-establishment = Numéro d’agrément de l’établissement
page-set-up-establishment-help = Seulement si l’autorité a agréé votre cuisine. Il figure alors sur les étiquettes des clients là où votre loi le demande ; la marque ovale elle-même n’est pas imprimée.
page-set-up-till = Comment s’écrivent les numéros de caisse
page-set-up-approvals-help = Dérogations et numéros de plan en dossier, selon leur objet : curing (salaison), smoking (fumage), vacuum (emballage sans air), cooking (cuisson d’après le barème d’un autre lieu), cooling (refroidissement), ready:CODE, stable:CODE. Sans air, ce qui pousse ne se sent pas toujours ; sans le plan exigé par votre lieu, s’abstenir. Ce qui n’est pas en dossier reste interdit.
page-set-up-approval-for = Approbation pour
page-set-up-approval-number = Son numéro
page-set-up-approval-until = Jusqu’au, si elle finit
page-set-up-kitchen-keep = C’est notre cuisine
page-set-up-places-how = Cocher les lieux que vous avez, et les nommer comme l’équipe les nomme.
page-set-up-places-keep = Ce sont nos lieux
page-set-up-place-own = Un lieu à vous
page-set-up-place-other = Un autre lieu
page-set-up-people-how = Qui consigne quelque chose s’identifie par un nom et un code PIN, pour que chaque acte dise qui l’a fait.
page-set-up-you = Vous
page-set-up-your-name = Votre nom
page-set-up-name-first = Vous vous appelez « Responsable » tant que votre nom n’est pas inscrit : il signe tout ce que vous faites.
page-set-up-name-like = Prénom et nom
page-set-up-you-keep = C’est moi
page-set-up-pin = Code PIN, 4 à 12 chiffres
page-set-up-pin-help = Laissé vide, la personne reçoit un mot qui l’identifie une fois, et choisit son code PIN.
page-set-up-is-added = figure maintenant dans vos listes.
page-set-up-people-so-far = Qui travaille ici pour l’instant
page-set-up-roles = Rôle : un ou plusieurs
page-set-up-cook = reçoit, découpe, cuit, emballe
page-set-up-counter = vend et répond aux clients
page-set-up-manager = signe, décide, règle
page-set-up-farm-code-help = 2 ou 3 lettres sans I, L, O, U, par exemple FM pour une Ferme du Moulin. Les codes de ses animaux commencent par elles, et on ne peut plus les changer.
page-set-up-on = Continuer
page-set-up-peg-later = plus tard
page-set-up-printer-how = Une imprimante d’étiquettes du réseau qui parle IPP. Son adresse figure sur sa page ou sa feuille d’état.
page-set-up-test = Imprimer une étiquette d’essai
page-set-up-untried = Aucune étiquette n’est encore sortie ici. L’étape est faite dès qu’une étiquette d’essai sort.
page-set-up-printer-name = Imprimante d’étiquettes
page-set-up-printer-help = Par exemple ipp://192.168.1.50:631/ipp/print : ipp:// ou ipps://, son nom ou numéro, puis le plus souvent :631/ipp/print.
page-set-up-printer-keep = Ajouter cette imprimante
page-set-up-paper = Le papier qu’il faut à vos étiquettes
page-set-up-paper-how = Un format par ligne suffit. Une imprimante n’a pas à les avoir tous : changez de rouleau, ou ajoutez une autre imprimante.
page-set-up-paper-has = Ce que dit cette imprimante :
page-set-up-printer-later = Pas encore d’imprimante : continuer
page-set-up-products-how = Ce que vous découpez, salez, cuisez et vendez. Commencer par la liste, la changer ensuite.
page-set-up-animal-how = Dire de qui il vient ; puis le recevoir. Pas encore d’animal ? Laisser ceci pour le jour venu.
page-set-up-animals = Animaux
page-set-up-came-in = Réceptionné jusqu’ici
page-set-up-another = Réceptionner un autre animal
page-set-up-no-carcass = Aucune carcasse parmi vos produits : en choisir une.
page-set-up-farm = La ferme
page-set-up-farm-keep = Ajouter cette ferme
page-set-up-abattoir = L’abattoir
page-set-up-abattoir-us = L’abattoir
page-set-up-abattoir-keep = Ajouter cet abattoir
page-set-up-abattoir-keep-us = Ajouter cet abattoir
page-set-up-abattoir-may-wait = Peut attendre : l’animal se réceptionne aussi sans cela, et sa page le demande plus tard.
page-set-up-later = Aller à la journée
page-set-up-has = Ce que la cuisine a déjà
page-set-up-change = Modifier
page-place-rail = Rail
page-place-walk-in = Chambre froide
page-place-cooked = Frigo des cuits
page-place-freezer = Congélateur
page-place-dry-store = Réserve sèche
page-place-salt-room = Salle de salage
page-place-cure-room = Séchoir
page-place-bench = Plan de découpe
page-place-cure-table = Table de salage
page-place-grinder = Hachoir
page-place-slicer = Trancheuse
page-place-stove = Cuisinière et four
page-place-smoker = Fumoir
page-place-case = Vitrine
page-setting-keeps = se garde { $days ->
    [one] { $days } jour
   *[other] { $days } jours
  } après { $from }
page-setting-nitrite = { $percent } % de nitrite : le lire sur votre sac
page-setting-step-of = Étape { $step } sur { $steps }
page-setting-zone = { $region } – { $city }
page-setting-added = { $products ->
    [one] { $products } produit est ajouté.
   *[other] { $products } produits sont ajoutés.
  }
page-setting-has = { $count } : { $names }
who-no-language = Les pages ne parlent pas « { $tag } ». Choisir en ou fr.
title-table = Le tableau ne peut pas être repris
import-new = nouvelle
import-changed = modifiée
import-same = inchangée
import-wrong = fautive
import-send-table = Envoyer le tableau en text/csv.
import-too-large = Un tableau a au plus { $most } Ko. L’envoyer en plusieurs fois.
import-no-text = La ligne { $line } n’est pas du texte en UTF-8. Enregistrer la feuille en « CSV UTF-8 ».
import-unseen = La ligne { $line } contient un caractère invisible. Retaper cette cellule.
import-no-table = La ligne { $line } ne se lit pas comme une rangée : chercher un guillemet seul.
import-too-many = Un tableau a au plus { $most } rangées. L’envoyer en plusieurs fois.
import-nothing = Il n’y a aucune rangée sous l’en-tête. La première ligne nomme les colonnes, chaque autre est une entrée.
import-no-column = La colonne { $number } s’appelle « { $column } », qui n’existe pas. Il y a : { $columns }.
import-column-twice = La colonne « { $column } » figure deux fois. En retirer une.
import-no-head = La colonne « { $column } » manque : elle dit de quelle entrée il s’agit.
import-cells = La rangée a { $cells } cellules, l’en-tête { $columns }. Mettre entre guillemets un texte avec virgule.
import-twice = « { $code } » figure deux fois dans le tableau. Laisser une rangée.
import-no-yes = « { $cell } » n’est ni oui ni non.
import-no-figure = « { $cell } » n’est pas un chiffre possible ici. Écrire 12 ou 12,50.
import-line-wrong = Ligne { $line }, { $column } : { $says } Lignes fautives : { $wrong }. Rien n’a été repris ; essayer le tableau pour les voir toutes.
printer-test-unanswered = { $printer } ne répond pas. Vérifier qu’elle est allumée, sur ce réseau, et que son adresse est juste. Rien n’a été envoyé.
printer-test-sent = L’étiquette d’essai est partie. Regardez si elle est sortie, et si tout y est imprimé en entier.
printer-test-no-paper = L’imprimante « { $printer } » dit contenir { $held } mm : aucune étiquette d’essai n’y va. Mettez un rouleau de { $sizes } mm, puis réessayez.
Nature-food = aliment
Nature-fat = matière grasse
Nature-cure = mélange de salaison
Nature-spice = épice
Nature-flavouring = arôme
Nature-additive = additif
Nature-water = eau
Nature-removed-water = eau rejetée
Nature-casing = boyau
Alkali-sodium = sodium
Alkali-potassium = potassium
CurePart-salt = sel
CurePart-sugar = sucre
CurePart-ascorbate = ascorbate
CurePart-erythorbate = érythorbate
CurePart-starter = ferments
HeatUnits-celsius = °C
HeatUnits-fahrenheit = °F
MassUnits-metric = kg
MassUnits-pounds = lb
KeepFrom-made = la fabrication
KeepFrom-received = la réception
KeepFrom-packed = l’emballage
KeepFrom-opened = l’ouverture
KeepFrom-thawed = la décongélation
KeepFrom-cooked = la cuisson
PlaceKind-storage = pour garder
PaperKind-delivery-note = bon de livraison
PaperKind-certificate = certificat
PaperKind-photo = photo
PaperKind-print-out = relevé de thermomètre
PaperKind-other = autre document
PlaceKind-contact = pour travailler
PlaceKind-heat = pour chauffer
PlaceKind-counter = pour vendre
ProductKind-carcass = carcasse
ProductKind-cut = morceau
ProductKind-trim = parures
ProductKind-fat = gras
ProductKind-bone = os
ProductKind-offal = abats
ProductKind-cured = salaison
ProductKind-cooked = cuit
ProductKind-rendered = fondu
ProductKind-stock = fond
ProductKind-mixed = mélange
ProductKind-ingredient = ingrédient
ProductKind-waste = déchets
Profile-us = États-Unis
Profile-ca = Canada
Profile-eu = Union européenne
Profile-uk = Royaume-Uni
page-places = Emplacements
page-places-none = Aucun emplacement dans la liste.
page-probes = Sondes
page-probes-none = Aucune sonde dans la liste : un responsable les ajoute.
page-place-head = { $lots ->
    [one] { $lots } lot
   *[other] { $lots } lots
} : { $what }.
page-place-carcasses = { $carcasses ->
    [one] { $carcasses } carcasse ou demi
   *[other] { $carcasses } carcasses ou demis
}
page-place-pieces = { $pieces ->
    [one] { $pieces } pièce
   *[other] { $pieces } pièces
}
page-place-empty = Rien ici
page-place-last-read = Dernier relevé
page-place-never-read = Jamais relevé
page-place-clean = Nettoyé
page-place-never-cleaned = Jamais, d’après le registre
page-place-cleaned = { $at }, { $by }
page-place-raw-since = Du cru y a été travaillé depuis : { $at }.
page-place-ready-since = Du prêt à manger y a été travaillé depuis : { $at }.
page-place-degrees = { $at }
page-place-checked = Dernier contrôle : { $read }, { $bath }, { $at }
page-place-asks = { $limits }
page-place-cold-last = Dernier bon relevé au registre : { $read }, { $at }. Changez l’heure si quelqu’un l’a vu froid plus tard.
page-place-cold-unknown = Aucun bon relevé au registre. Entrez quand quelqu’un l’a vu froid pour la dernière fois ; si personne ne sait, l’heure la plus ancienne est la plus sûre.
page-place-missing-pack = { $pack }, { $weight }, vu en dernier : { $place }
page-place-more-lots = { $lots } lots de plus sont ici : la liste ci-dessous les a tous, page par page.
page-place-more = { $packs } paquets de plus sont ici que cette page n’en montre : voir la liste des lots.
page-place-readings = Derniers relevés
page-place-stands = Ce qui est ici
page-place-stopped = Bloqué
page-place-lots = En liste de lots
page-place-note = Un mot à ce sujet
page-place-warmth = Affiché
page-place-probe = Lu avec
page-place-bath = Dans quoi
page-place-ice = glace fondante
page-place-boiling = eau bouillante
page-place-shows = Affiché
page-place-check = Noter le contrôle
page-place-never-checked = Jamais contrôlée
page-place-from = Froid pour la dernière fois
page-place-until = De nouveau froid (vide : pas encore)
page-place-readings-help = Ce qui a été lu entre-temps, avec l’heure. Sans relevé, cela compte comme trop chaud tout le temps.
page-place-failed-how = Tout ce qui était ici pendant ce temps est jugé en une fois : d’après ses heures et ce qui a été lu.
page-place-count-how = Scannez ou touchez ce qui est ici. Ce qui n’est pas touché manque.
page-place-choose = Touchez les paquets voulus.
page-place-good-chosen = Tout ce qui est encore bon est choisi. Dites où cela va.
page-place-here = C’est ici
page-place-all = Tous
page-place-elsewhere = Le registre le voit ailleurs : il est déplacé ici.
page-place-back = Il était parti, d’après le registre. Combien pèse-t-il ?
page-place-nothing-chosen = Aucun paquet n’est touché.
page-act-clean-down = Nettoyer
page-act-temperature = Relever la température
page-act-failed = Panne de froid
page-act-moves = Déplacer des paquets
page-act-move-good = Déplacer ce qui est encore bon
page-act-thaws = Décongeler des paquets
page-act-count-place = Compter ce qui est ici
page-act-adopt = Un bac sans étiquette
page-act-ship = Expédier
page-act-return = Renvoyer
page-act-take-back = Reprendre
page-act-whom = À qui
page-act-from-whom = De qui
page-why-too-warm = Trop chaud à l’arrivée
page-why-not-ordered = Pas commandé
page-why-arrived-bad = Arrivé en mauvais état
page-why-recalled = Rappelé
page-why-not-wanted = Pas voulu
page-why-not-right = Quelque chose n’allait pas
page-adopt-missing = Est-ce l’un de ceux-ci ? Ils manquent
page-adopt-none = Ce n’est aucun de ceux-ci
page-adopt-another = C’en est un autre
page-adopt-help = Personne ne sait comment il a été fait : il reste bloqué jusqu’à ce que quelqu’un décide, et ses allergènes comptent comme inconnus.
page-adopt-product = Ce que l’on croit que c’est
page-adopt-weight = Son poids
page-adopt-why = Comment on l’a trouvé
page-adopt-why-washed = L’étiquette est partie au lavage
page-adopt-why-fell = L’étiquette est tombée
page-adopt-why-never = Il n’a jamais eu d’étiquette
page-adopt-button = Le prendre en charge
page-sentence-ship = Expédier les paquets [packs] : { $name }, { $lot }, à [to].
page-sentence-return = Renvoyer au fournisseur les paquets [packs] : { $name }, { $lot }. Raison : [why].
page-sentence-take-back = Reprendre le paquet [pack] : { $name }, { $lot }. Raison : [why]. Il n’est plus jamais vendu.
page-sentence-clean-down = { $place } : nettoyé maintenant. Ce qui y est travaillé ensuite ne touche rien d’avant.
page-sentence-temperature = { $place } affiche [{ $field }].
page-sentence-failed = { $place } n’est pas resté froid de [from] à [until] : { $lots ->
    [one] le lot qui y était est jugé.
   *[other] les { $lots } lots qui y étaient sont jugés.
}
page-sentence-thaws = Paquets : [_count]. De { $place }, ils vont vers [to] pour décongeler ; leur jour compte de nouveau dès aujourd’hui.
page-sentence-moves = Paquets : [_count]. De { $place }, ils vont vers [to].
page-sentence-discards = Paquets : [_count]. Jetés de { $place }. Raison : [why].
page-sentence-count-place = Compter { $place }. Là : [_count]. Manquants : [_missing]. Trouvés en plus : [_more].
page-sentence-adopt-missing = C’est { $name }, { $lot } : [grams], vers [place]. [why].
page-sentence-adopt-unknown = Prendre en charge [grams] comme [product], vers [place]. [why].
page-sentence-probe-check = [probe] dans [bath] affiche [{ $field }].
page-bench-did-several = { $says } Lots en tout : { $deeds }.
page-waiting = Ce qui attend sur cet appareil
page-waiting-count = En attente sur cet appareil : [n]
page-waiting-refused = Pas accepté : [n]. Voir quoi faire
page-waiting-through = Transmis : [n]. Voir les codes
page-waiting-stale = Pas de liaison avec la cuisine. Cette page date de [time] à l’horloge de cet appareil : ce qu’elle montre a pu changer. Continuez : ce que vous faites attend sur cet appareil. Le champ de recherche ne trouve que les lots dont la page a déjà été ouverte ici.
page-draft = Saisi ici par [name], [time], pas encore enregistré.
page-draft-drop = Recommencer
page-waiting-kept = Pas de liaison avec la cuisine : ceci attend sur cet appareil.
page-waiting-write = Écrivez [slip] dessus. Le code et les étiquettes viennent avec la liaison.
page-waiting-goes = Cela part tout seul, une seule fois, dès que la liaison est là.
page-waiting-once-more = Encore un
page-waiting-all = Tout ce qui attend
page-waiting-taken-out = Annulé : cela ne part pas.
page-waiting-no-script = Ce qui attend est montré par un script : autorisez les scripts dans ce navigateur.
page-waiting-no-line = Pas de liaison avec la cuisine
page-waiting-work-on = Continuez. Ce qui est ici est gardé, même si l’appareil dort ou redémarre. Tout part une seule fois, dans cet ordre, dès que la liaison est là.
page-waiting-sign-in = Identifiez-vous, pour que ce qui attend puisse partir.
page-waiting-nothing = Rien n’attend ici.
page-waiting-unread = Ce que cet appareil garde ne peut pas être lu pour l’instant. Fermez les autres fenêtres de Gambrel, puis rouvrez cette page. En attendant, ce que vous faites va directement à la cuisine.
page-waiting-try = Essayer la liaison
page-waiting-help = Chaque chose attend sous le numéro de sa fiche. Ce que la cuisine refuse reste ici jusqu’à ce que quelqu’un choisisse.
page-waiting-not-taken = [slip] n’a pas été accepté
page-waiting-again = Envoyer de nouveau
page-waiting-of = Pas encore compté ici, en attente sur cet appareil : [what]
page-waiting-leave = Laisser de côté
page-waiting-leave-how = Rien n’en est alors enregistré : ce qui est sur la planche n’a ni code ni étiquette. Remettez-le d’où il vient, ou enregistrez-le à nouveau.
page-waiting-drop = Laisser : rien n’est noté
page-waiting-is-now = [slip] est passé :
page-waiting-codes = Voir les codes
page-waiting-off = Pas de liaison avec la cuisine. Continuez : ce que vous faites attend sur cet appareil. Le champ de recherche ne trouve que les lots dont la page a déjà été ouverte ici.
page-waiting-held = La liaison est revenue. Connectez-vous, et ce qui attend passera : [n]
page-waiting-tried = Essayé à [time] : toujours pas de liaison.
page-waiting-not-kept = Pas de liaison, et la page voulue n’a pas été gardée sur cet appareil. Ce qui a déjà été ouvert ici s’ouvre encore. Sinon, notez-le avec l’heure et votre nom, et enregistrez-le quand la liaison revient.
page-waiting-seen = Vu
page-counter-no-line = Pas de liaison avec la cuisine : ce code n’a pas de réponse maintenant.
page-counter-no-line-do = Ne vendez pas ce paquet, sauf si le responsable le dit. Scannez de nouveau quand la liaison est là. Ce qui a été scanné avant la coupure peut être vendu, et attend ici.
page-counter-off = Pas de liaison avec la cuisine. Le paquet dont la réponse est à l’écran peut encore être vendu : la vente attend sur cet appareil et part toute seule. Ce qui est scanné à partir de maintenant n’a pas de réponse et ne se vend pas, sauf si le responsable le dit.
page-counter-stale = Pas de liaison avec la cuisine. Cette page date de [time] à l’horloge de cet appareil : sa réponse n’est peut-être plus vraie. On ne vend rien d’après elle, sauf si le responsable le dit ; ce qui est vendu quand même attend sur cet appareil et part tout seul.
page-counter-sold-here = VENDU ICI
page-counter-gone-here = PARTI D’ICI
page-counter-sold-here-waits = [slip] : noté sur cet appareil, pas encore transmis. Cela part tout seul dès que la liaison est là. Ne le vendez pas une seconde fois.
page-counter-sold-here-went = [slip] est transmis. Ne le vendez pas une seconde fois.
page-counter-sold-here-more = vendu ici, pas encore transmis
page-place-now = maintenant
page-place-cleaned-last = Dernier nettoyage : { $at }, par { $by }.
page-place-keep-reading = Noter le relevé
page-place-failed-do = Juger ce qui y était
# The report of a recall.
report-title = Rappel { $number }
report-drill-title = EXERCICE { $number } : rien n’a été bloqué
report-told-by = Annoncé par { $by }, { $at } : { $hazard }.
report-told-at-only = Annoncé { $at }. Par qui : pas encore noté. Danger : { $hazard }.
report-as-of = Tout ce qui était consigné à { $at } y figure.
report-book = Selon le livre à l’appel : { $lots ->
    [one] { $lots } lot
   *[other] { $lots } lots
  }, { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
  }, { $weight }.
report-found = Comptage : { $missing } manquants, { $surplus } de plus que le livre ; { $back } rapportés par des clients.
report-ended = Depuis : { $destroyed } détruits, { $returned } renvoyés, { $gone } partis autrement ; { $left } encore là.
report-open = Personne n’a compté { $uncounted } de { $packs ->
    [one] { $packs } paquet.
   *[other] { $packs } paquets.
}
report-scope-digest = Étendue, question et réponse (SHA-256) : { $digest }
report-record-digest = Le dossier tel qu’il était (SHA-256) : { $digest }
report-anchor = Ancre du registre : { $line }
report-clock = Les heures
report-what = quoi
report-when = quand
report-after = après l’appel
report-at-once = aussitôt
report-not-known-yet = pas encore connu
report-later = { $hours } h { $minutes } min
report-lots = lots touchés
report-lot = lot
report-because = parce que
report-went = où c’est allé
report-since = depuis l’appel
report-sum-book = selon le livre
report-sum-missing = manquant
report-sum-surplus = de plus que le livre
report-sum-back = rapporté
report-sum-destroyed = détruit
report-sum-returned = renvoyé
report-sum-gone = parti autrement
report-sum-left = encore là
report-disposed-so-far = éliminé jusqu’ici : { $weight }
report-made = fait
report-on-hand = en stock
report-agrees = Compté, il n’en reste rien
report-not-counted = { $packs ->
    [one] { $packs } paquet pas compté
   *[other] { $packs } paquets pas comptés
}
report-still-there = { $weight } encore là
report-differences = ce qui diffère du livre
report-pack = paquet
report-place = lieu
report-found-at = trouvé à { $place }
report-opened = entamé
report-no-difference = Chaque paquet a été trouvé comme au livre.
report-disposals = ce qu’il en est advenu
report-weight = poids
report-witness = témoin, lieu, pièce
report-document = document
report-who = qui
report-discarded = détruit
report-returned = renvoyé
report-released = débloqué
report-put-right = remis en ordre
report-reworked = travaillé avec permission
report-no-disposals = Rien n’a été éliminé.
report-people = qui appeler
report-farm = ferme
report-abattoir = abattoir
report-supplier = fournisseur
report-customer = client
report-told-at = prévenu
report-not-told = pas prévenu
report-answered = a répondu
report-no-people = Personne en amont ni en aval n’est au dossier.
report-how-much = paquets
report-sold = vendu, par jour et par heure
report-hour = { $day }, de { $from } à { $until } h
report-packs = { $packs ->
    [one] { $packs } paquet
   *[other] { $packs } paquets
}
report-buyers = acheteurs au dossier
report-nothing-sold = Rien n’en a été vendu.
report-outside = laissé de côté, et pourquoi
report-nothing-outside = Aucun.
report-decisions = ce qui a été décidé et annoncé
report-begun = ouvert
report-scoped = étendue redite
report-shown = montré aux clients
report-hidden = plus montré aux clients
report-closed = clos
report-disposed = éliminé
report-notices = les avis
report-to-customers = aux clients
report-on-shelf = au rayon
report-picture = la famille par jour et par étape
report-signatures = signé
report-name = nom
report-signature = signature
report-day = jour
report-sign-lead = mené par
report-sign-count = compté par
report-sign-witness = témoin
report-sign-authority = autorité
report-page-of = Page { $page } de { $of }
report-entry = écriture
report-entry-received = reçu
report-entry-made = fait de
report-entry-shipped = expédié
report-entry-sold = vendu
report-entry-on-hand = en stock
report-entry-destroyed = détruit
report-entry-returned = renvoyé
report-entry-missing = manquant
report-grams = grammes
report-from = de
report-from-address = adresse de provenance
report-from-lot = leur lot, carcasse ou boucle
report-killed-on = abattu le
report-to = à, ou vu par
report-input-lot = lot entré
report-input = ce qui est entré
report-input-grams = grammes entrés
report-responsible = fait, entreposé et étiqueté par
report-moment = jour et heure
report-number-of-packs = paquets
report-with-rows = { $heading } [{ $rows }]
notice-title = { $place ->
    [eu] Rappel de produit
    [uk] Rappel de produit
    [ca] Rappel d’aliments
   *[other] Rappel
}
notice-what = { $kitchen } vous demande de ne pas manger : { $names }.
notice-codes = Sur l’étiquette : { $codes }.
notice-sold-on = Vendu le { $day }.
notice-sold-between = Vendu du { $from } au { $until }.
notice-why = { $hazard ->
    [residue] Pourquoi : la viande peut contenir un résidu interdit dans les aliments. La cuisson ne l’enlève pas.
    [pathogen] Pourquoi : il peut s’y trouver des germes qui rendent malade.
    [allergen] Pourquoi : il peut s’y trouver un allergène que l’étiquette ne nomme pas.
    [foreign-body] Pourquoi : il peut s’y trouver un corps étranger.
    [temperature] Pourquoi : ce n’est peut-être pas resté assez froid ou assez chaud.
    [label] Pourquoi : l’étiquette est fausse.
   *[other] Pourquoi : ce n’est peut-être pas sûr.
}
notice-deed = Rapportez-le ou jetez-le. Nous le reprenons sans reçu.
notice-at-home = Ce que vous avez congelé ou cuisiné chez vous est visé aussi. Si vous vous sentez malade, consultez un médecin.
notice-ask = Demandez-nous : { $kitchen }, { $address }
notice-shelf = Retiré de la vente : { $names }.
notice-shelf-deed = Vous l’avez acheté ici ? Rapportez-le ou jetez-le.
notice-drill = EXERCICE : à ne pas afficher.

## Les feuilles d’une archive

sheet-lot = Lot
sheet-product = Produit
sheet-made-at = Fait
sheet-made-by = Fait par
sheet-deed = Acte
sheet-person = Qui
sheet-note = Note
sheet-voided = Annulé
sheet-packs = Emballages
sheet-allergens = Contient
sheet-may-contain = Peut contenir
sheet-species = Espèce
sheet-made-grams = Fait, g
sheet-taken-back-grams = Repris aux clients, g
sheet-used-grams = Employé, g
sheet-sold-grams = Vendu, g
sheet-served-grams = Servi, g
sheet-discarded-grams = Jeté, g
sheet-shipped-grams = Expédié, g
sheet-returned-grams = Rendu au fournisseur, g
sheet-lost-grams = Perdu, g
sheet-unexplained-grams = Inexpliqué, g
sheet-on-hand-grams = En stock, g
sheet-use-by = À consommer
sheet-farm = Ferme
sheet-killed-on = Abattu
sheet-carcass = Carcasse
sheet-supplier = Fournisseur
sheet-supplier-lot = Lot du fournisseur
sheet-pack = Emballage
sheet-left-grams = Reste, g
sheet-is = Est
sheet-place = Endroit
sheet-state = Conservation
sheet-animal = Animal
sheet-abattoir = Abattoir
sheet-tag = Boucle
sheet-head = Têtes
sheet-what = Quoi
sheet-at = Quand
sheet-recorded-at = Inscrit
sheet-voided-because = Annulé parce que
sheet-recall = Rappel
sheet-hazard = Danger
sheet-drill = Exercice
sheet-told-by = Signalé par
sheet-told-at = Signalé
sheet-why = Pourquoi
sheet-closed-at = Clos
sheet-paper = Document
sheet-file = Fichier
sheet-kind = Sorte
sheet-name = Nom
sheet-bytes = Octets
sheet-sha256 = SHA-256
sheet-belongs = Va avec
sheet-thinned = Éliminée
sheet-yes = oui

## Copies of the record

copies-folder = l’emplacement des copies ne peut être lu ou écrit, ou n’en contient aucune
copies-record = le dossier de la cuisine n’a pas pu être lu
copies-unsound = ce qui a été copié n’est pas intact
copies-key = la clé manque, ou c’en est une autre
copies-apart = la copie et le dossier ont suivi des chemins différents
copies-every-days = { $days ->
    [one] chaque jour
   *[other] tous les { $days } jours
}
copies-every-hours = { $hours ->
    [one] chaque heure
   *[other] toutes les { $hours } heures
}
copies-every-minutes = { $minutes ->
    [one] chaque minute
   *[other] toutes les { $minutes } minutes
}
copies-keeps = la dernière de chacun des { $days } derniers jours, des { $weeks } dernières semaines et des { $months } derniers mois
copies-length = { $megabytes } Mo
copies-took = { $seconds } s
page-copies = Copies du dossier
page-copies-on-time = Les copies se font comme prévu.
page-copies-late = La copie est en retard.
page-copies-failed = La dernière copie n’a pas abouti.
page-copies-off = Aucune copie ne se fait d’elle-même.
page-copies-untried = Personne n’a essayé de copie depuis trois mois.
page-copies-last = Dernière bonne copie
page-copies-tried = Dernier essai réussi
page-copies-never = jamais
page-copies-every = Rythme
page-copies-kept = Conservées
page-copies-folder = Emplacement
page-copies-lock = Protection
page-copies-locked = Chiffrées : sans la clé, personne ne les ouvre
page-copies-open = En clair : qui a le support peut les lire
page-copies-where = Le dossier se trouve dans
page-copies-since = Depuis
page-copies-made = commencé là
page-copies-restored = rétabli d’une copie
page-copies-moved = trouvé là, copié ou déplacé
page-copies-record = Son identité, dans chaque copie
page-copies-set-up = Pour qu’elles se fassent d’elles-mêmes, nommez au démarrage du service un emplacement sur un autre disque, et une clé :
page-copies-try = Pour essayer la plus récente, sans rien changer :
page-copies-came = Ce qu’il est advenu des dernières
page-copies-none = Aucune copie n’est encore connue ici.
page-copies-at = Quand
page-copies-what = Quoi
page-copies-copy = copie
page-copies-drill = essai
page-copies-outcome = Résultat
page-copies-good = bonne
page-copies-file = Fichier
page-copies-length = Taille
page-copies-took = Durée
