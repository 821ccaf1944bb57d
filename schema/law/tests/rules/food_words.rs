//! What the words of a pack's own list tell (`trade-food-words`), in every place (us-A1, canada-eu-uk-3, 9.4): the
//! words that prove an allergen, and those that may as well mean something else.

use domain::product::Product;
use domain::statement::{named_elsewhere, named_in, untold_by};
use domain::words::{Allergen, ProductKind, Profile};
use law::Shipped;
use std::collections::BTreeSet;
use std::sync::LazyLock;

static SHIPPED: LazyLock<Shipped> =
    LazyLock::new(|| law::shipped().unwrap_or_else(|bad| panic!("{bad}")));

/// The allergens of a line of the table: `milk wheat`, `-` for none.
fn allergens(words: &str) -> BTreeSet<Allergen> {
    let words = words.split(' ').filter(|word| *word != "-");
    words
        .map(|word| Allergen::parse(word).unwrap_or_else(|| panic!("{word}")))
        .collect()
}

fn check(table: &str, language: &str) {
    for place in Profile::ALL {
        let rules = &SHIPPED.laws.of(*place).statements;
        for line in table.lines().filter(|line| !line.trim().is_empty()) {
            let (text, expected) = line.trim().split_once(" => ").unwrap();
            let named = named_in(rules, text, language);
            let mut expected = allergens(expected);
            expected.retain(|allergen| rules.allergens.name(*allergen).is_some());
            assert_eq!(named.inside, expected, "{place} {language}: {text}");
        }
    }
}

#[test]
fn words_that_prove_an_allergen_are_seen_in_every_place() {
    check(
        "cream, butter => milk
        Whey powder (from MILK) => milk
        sodium caseinate; lactose; ghee => milk
        cheddar cheese, yoghurt => milk
        crème fraîche => milk
        butter and cocoa butter => milk
        butter beans, butter => milk
        lactose-free milk => milk
        silken tofu => soy
        red miso paste => soy
        soya lecithin => soy
        semolina => wheat
        pork, water, flour, salt => wheat
        enriched flour, salt => wheat
        salt and flour => wheat
        breadcrumbs => wheat
        rusk => wheat
        couscous => wheat
        bulgur => wheat
        kamut => wheat
        seitan => wheat
        spelt flour => spelt
        barley malt => barley
        malt vinegar => barley
        malt extract, rye flour => barley rye
        rolled oats, oatmeal => oats
        mayonnaise => egg
        dried albumen => egg
        eggs free range => egg
        tahini => sesame
        groundnuts => peanut
        marzipan => almond
        filberts => hazelnut
        hoisin sauce, salt => soy
        dashi => fish
        aioli => egg
        hummus => sesame
        satay sauce => peanut
        dukkah => tree-nut
        pesto => milk
        bechamel => milk wheat
        brioche crumbs => milk egg wheat
        surimi => fish
        anchovies, salt => anchovy
        fish sauce (anchovy extract) => anchovy
        fish sauce => fish
        mixed nuts => tree-nut
        nuts (walnuts) => walnut
        prawns, squid => prawn squid
        scampi => crustacean
        cuttlefish => mollusc
        celeriac => celery
        sodium metabisulphite => sulphites
        preservative (E223) => sulphites
        white wine (sulphur dioxide) => sulphites
        peanut butter => peanut
        almond milk => almond
        oat milk => oats
        soy milk => soy
        cashew cream => cashew
        celery salt, MUSTARD seeds, lupin flour => celery mustard lupin
        İ, milk => milk",
        "en",
    );
    check(
        "crème, beurre => milk
        CREME FRAICHE, BEURRE => milk
        lactosérum en poudre => milk
        caséinate de sodium => milk
        fromage blanc, yaourt => milk
        tofu, sauce soja => soy
        semoule => wheat
        farine, sel => wheat
        farine de froment => wheat
        chapelure => wheat
        mie de pain => wheat
        petit épeautre => wheat
        épeautre => spelt
        malt d’orge => barley
        orge perlé => barley
        flocons d’avoine => oats
        seigle => rye
        mayonnaise => egg
        jaunes d’œufs => egg
        BLANC D'OEUF => egg
        tahini => sesame
        cacahuètes => peanut
        pâte d’arachide => peanut
        massepain => almond
        noisettes => hazelnut
        noix, sel => walnut
        noix de cajou => cashew
        noix de pécan => pecan
        fruits à coque => tree-nut
        sucre roux => -
        aïoli => egg
        béchamel => milk wheat
        poutargue => fish
        surimi => fish
        anchois => anchovy
        cabillaud => cod
        huîtres => oyster
        moules => mussel
        crevettes => shrimp
        céleri-rave => celery
        moutarde à l’ancienne => mustard
        métabisulfite de sodium => sulphites
        anhydride sulfureux => sulphites
        lait d’amande => almond
        boisson au soja => soy",
        "fr",
    );
}

#[test]
fn words_that_may_mean_something_else_tell_nothing() {
    check(
        "coconut milk => -
        coconut cream, creamed coconut => -
        cocoa butter, shea butter => -
        butter beans => -
        butternut squash => -
        cream of tartar => -
        buckwheat flour => -
        rice flour, chick-pea flour, corn flour => -
        rice semolina => -
        gluten-free breadcrumbs => -
        nutmeg, coconut, chestnuts, water chestnuts => -
        tiger nuts => -
        head cheese => -
        vegan butter, plant-based cheese => -
        milk-fed veal => -
        without milk, egg-free, no peanuts => -
        non-dairy creamer => -
        eggplant => -
        ginger beer, brewer’s yeast => -
        rice malt, maltodextrin => -
        oyster mushrooms, oyster blade => -
        roe deer => -
        crab apple => -
        cod fat => -
        lactic acid, sodium lactate => -
        pecan wood smoke => -
        dextrose, sugar, salt, spices => -
        sulphite ammonia caramel => -
        vegan mayonnaise => -",
        "en",
    );
    check(
        "lait de coco, crème de coco => -
        beurre de cacao => -
        haricots beurre => -
        crème de tartre => -
        crème de marrons => -
        fromage de tête => -
        cochon de lait, agneau de lait => -
        noix de muscade, noix de coco => -
        noix de veau, noix de jambon, noix d’entrecôte => -
        sous-noix => -
        noisettes d’agneau => -
        sarrasin, blé noir, blé d’Inde => -
        sucre semoule => -
        farine de riz, farine de pois chiches => -
        semoule de maïs => -
        sans lait, sans œufs => -
        levure de bière => -
        laitue, bœuf => -
        mayonnaise végane => -
        beurre végétal => -",
        "fr",
    );
}

#[test]
fn what_may_be_in_it_is_told_as_that() {
    for (language, text) in [
        ("en", "pork, cream. May contain nuts and mustard. Milk"),
        (
            "fr",
            "porc, crème. Peut contenir : fruits à coque, moutarde.",
        ),
    ] {
        let named = named_in(&SHIPPED.laws.of(Profile::Eu).statements, text, language);
        assert_eq!(named.inside, allergens("milk"), "{text}");
        assert_eq!(named.perhaps, allergens("mustard tree-nut"), "{text}");
    }
}

/// us-A2: oil that is highly refined is no allergen; elsewhere no row that was read says so.
#[test]
fn highly_refined_oil_is_an_allergen_everywhere_but_in_the_united_states() {
    for place in Profile::ALL {
        let rules = &SHIPPED.laws.of(*place).statements;
        let named = named_in(rules, "highly refined soybean oil", "en").inside;
        let expected = if *place == Profile::Us { "-" } else { "soy" };
        assert_eq!(named, allergens(expected), "{place}");
        assert_eq!(
            named_in(rules, "soybean oil", "en").inside,
            allergens("soy")
        );
    }
}

#[test]
fn every_name_that_a_place_prints_is_read_back() {
    for (place, law) in &SHIPPED.laws.places {
        let rules = &law.statements;
        for name in &rules.allergens.names {
            for language in ["en", "fr"] {
                let also = name.also.get(language).into_iter().flatten();
                for word in also.chain(name.name.get(language)) {
                    let named = named_in(rules, word, language).inside;
                    assert!(!named.is_empty(), "{place} {language}: {word}");
                }
            }
        }
    }
    for allergen in Allergen::ALL {
        let foods = &SHIPPED
            .laws
            .of(Profile::Us)
            .statements
            .allergens
            .food_words
            .foods;
        assert!(
            foods.iter().any(|food| food.allergen == *allergen),
            "{allergen}"
        );
    }
}

#[test]
fn a_list_in_another_language_than_it_is_said_to_be_in_is_looked_at() {
    let check = |text: &str, language: &str, expected: &str| {
        let rules = &SHIPPED.laws.of(Profile::Eu).statements;
        let named = named_elsewhere(rules, text, language);
        assert_eq!(named, allergens(expected), "{language}: {text}");
    };
    check("farine de blé, beurre, sel", "en", "wheat milk");
    check("eau, oeufs, noisettes", "en", "egg hazelnut");
    check("crevettes", "en-GB", "shrimp");
    check("pork, water, salt", "en", "-");
    check("wheat flour, butter", "fr", "wheat milk");
    check("farine de blé, beurre, sel", "fr", "-");
    check("lait de coco, riz", "en", "-");
    check("mozzarella, mayonnaise", "en", "-");
}

#[test]
fn what_the_name_of_an_entry_tells_and_nobody_ticked() {
    let check = |kind: ProductKind, language: &str, name: &str, told: &str, expected: &str| {
        let product = Product {
            kind,
            names: std::sync::Arc::new([(language.to_owned(), name.to_owned())].into()),
            allergens: allergens(told),
            ..Product::unnamed()
        };
        let rules = &SHIPPED.laws.of(Profile::Eu).statements;
        let untold = untold_by(rules, &product, &product.allergens).inside;
        assert_eq!(untold, allergens(expected), "{name}");
    };
    use ProductKind::{Cooked, Cut, Ingredient, Mixed};
    check(Ingredient, "en", "Milk powder", "-", "milk");
    check(Ingredient, "en", "Milk powder", "milk", "-");
    check(Ingredient, "en", "Celery", "-", "celery");
    check(Ingredient, "fr", "Graines de moutarde", "-", "mustard");
    check(Mixed, "en", "Walnut and pork terrine", "-", "walnut");
    check(Cooked, "en", "Fish soup", "anchovy", "-");
    check(Cooked, "en", "Fish soup", "-", "fish");
    check(Ingredient, "en", "Cocoa butter", "-", "-");
    check(Ingredient, "en", "Black pepper", "-", "-");
    check(Cooked, "en", "Milk-fed veal stew", "-", "-");
    check(Cooked, "en", "Dairy-free sausage", "-", "-");
    // The shape of a piece tells nothing of what is in it.
    check(Cut, "en", "Oyster blade", "-", "-");
}
