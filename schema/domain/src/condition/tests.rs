//! What makes food ready, and what does not.

use super::*;
use crate::lot::LotId;
use crate::product::{AsPart, InCure, Keeping};
use crate::rows::RowId;
use crate::says::Says;
use crate::words::{CurePart, Natural, ProductKind, Species, StepKind};

fn part(condition: Condition, of_animal: bool) -> Part {
    Part {
        lot: LotId(1),
        natural: None,
        shown: Says::as_written("a part"),
        condition,
        of_animal,
        may_carry: false,
        sort: ProductKind::Cut,
    }
}

fn meat() -> Part {
    part(Condition::RAW, true)
}

fn fat() -> Part {
    Part {
        sort: ProductKind::Fat,
        ..meat()
    }
}

fn pork() -> Part {
    Part {
        may_carry: true,
        ..meat()
    }
}

fn lard() -> Product {
    Product {
        kind: ProductKind::Rendered,
        keeping: Keeping {
            stable_as: Some(Natural::RenderedFat),
            ..Keeping::default()
        },
        ..Product::unnamed()
    }
}

fn salt() -> Part {
    natural(1, Natural::Salt)
}

fn natural(lot: i32, natural: Natural) -> Part {
    let keeps = Condition::ready(ProvedBy::Listed).and_stable(Some(StableBy::Nature));
    Part {
        lot: LotId(lot),
        natural: Some(natural),
        ..part(keeps, false)
    }
}

fn cooked() -> Part {
    part(Condition::ready(ProvedBy::Heat), true)
}

fn heat() -> HeatProof {
    HeatProof {
        by: ProvedBy::Heat,
        says: Says::as_written("74 °C"),
        rows: vec![RowId::new("us-T1")],
    }
}

fn check(kind: StepKind, parts: &[Part], heat: Option<&HeatProof>, expected: &str) {
    let born = |raw| Product {
        raw,
        ..Product::unnamed()
    };
    let product = &born(expected.starts_with("treated heat"));
    let born = Born {
        kind,
        product,
        parts,
        watered: true,
        heat,
        approved: None,
        freed: None,
        stable: None,
    };
    let proven = born.condition();
    assert_eq!(proven.condition.to_string(), expected, "{kind}");
    assert!(!proven.because.is_empty());
    assert_eq!(Condition::parse(expected), Some(proven.condition));
}

#[test]
fn only_a_proof_makes_ready_and_not_the_name_of_a_step() {
    use StepKind::*;
    for kind in [Smoke, Cure, Hang] {
        check(kind, &[meat(), salt()], None, "treated nothing");
    }
    // Meat that was warmed and not proven is raw no more, whatever it goes into; heat that proves it ends that.
    for kind in [Cook, Render] {
        check(
            kind,
            &[meat(), salt()],
            None,
            "treated nothing partly-cooked",
        );
    }
    check(Cook, &[salt()], None, "ready parts");
    let warmed = part(Condition::TREATED.and_partly_cooked(true), true);
    let with = |other| [warmed.clone(), other];
    check(Grind, &with(salt()), None, "treated nothing partly-cooked");
    check(Mix, &with(meat()), None, "raw nothing partly-cooked");
    check(Cure, &with(meat()), None, "treated nothing partly-cooked");
    check(Cook, &with(meat()), Some(&heat()), "ready heat");
    check(Cook, &[meat(), salt()], Some(&heat()), "ready heat");
    // What its list calls raw was cooked through by the same proof, and is half cooked no more.
    check(Cook, &with(meat()), Some(&heat()), "treated heat");
    let through = part(Condition::treated(ProvedBy::Heat), true);
    check(Mix, &[through.clone(), meat()], None, "raw nothing");
    // It stays so, and cooked once more without a record it is not half cooked.
    for kind in [Pack, Smoke, Cook] {
        check(kind, &[through.clone(), cooked()], None, "treated heat");
    }
    check(Grind, &[meat(), salt()], None, "raw nothing");
    check(Pack, &[cooked()], None, "ready parts");
    check(Smoke, &[cooked(), salt()], None, "ready parts");
    check(Mix, &[cooked(), meat()], None, "raw nothing");
    let treated = part(Condition::TREATED, true);
    check(
        Pack,
        std::slice::from_ref(&treated),
        None,
        "treated nothing",
    );
    check(Mix, &[treated, cooked()], None, "treated nothing");
}

#[test]
fn what_is_stable_stays_so_without_water() {
    let product = Product::unnamed();
    let parts = [salt(), salt()];
    let mix = |watered| Born {
        kind: StepKind::Mix,
        product: &product,
        parts: &parts,
        watered,
        heat: None,
        approved: None,
        freed: None,
        stable: None,
    };
    assert_eq!(
        mix(false).condition().condition.stable,
        Some(StableBy::Parts)
    );
    assert_eq!(mix(true).condition().condition.stable, None);
}

#[test]
fn what_is_wet_keeps_by_itself_and_not_in_a_mix() {
    use Natural::*;
    let product = Product::unnamed();
    let keeps = |of: &[(i32, Natural)]| {
        let parts: Vec<Part> = of.iter().map(|(lot, of)| natural(*lot, *of)).collect();
        let born = Born {
            kind: StepKind::Mix,
            product: &product,
            parts: &parts,
            watered: false,
            heat: None,
            approved: None,
            freed: None,
            stable: None,
        };
        born.condition().condition.stable.is_some()
    };
    for dry in [
        &[(1, Salt), (2, Spice), (3, Sugar)][..],
        &[(1, RenderedFat), (2, Spice), (3, Oil)],
        &[(1, Produce), (1, Produce)],
        &[(1, Wine), (2, Wine)],
    ] {
        assert!(keeps(dry), "{dry:?}");
    }
    for wet in [
        &[(1, Produce), (2, Oil)][..],
        &[(1, DryGoods), (2, Beer)],
        &[(1, Bread), (2, RenderedFat)],
        &[(1, Vinegar), (2, Produce)],
    ] {
        assert!(!keeps(wet), "{wet:?}");
    }
}

#[test]
fn a_fat_is_stable_once_its_rendering_is_proven() {
    let lard = lard();
    let parts = [fat()];
    let heat = heat();
    let rendered = |heat| Born {
        kind: StepKind::Render,
        product: &lard,
        parts: &parts,
        watered: false,
        heat,
        approved: None,
        freed: None,
        stable: None,
    };
    let proven = rendered(Some(&heat)).condition().condition;
    assert_eq!(proven.to_string(), "ready heat nature");
    assert_eq!(
        rendered(None).condition().condition.to_string(),
        "treated nothing partly-cooked"
    );
}

fn arrives(product: &Product, declared: Option<Declared>, expected: &str) {
    let proven = received(product, declared, None, None);
    assert_eq!(proven.condition.to_string(), expected);
}

#[test]
fn food_of_animals_is_ready_only_where_its_own_pack_says_so() {
    let duck = Product {
        species: Some(Species::Duck),
        ..Product::unnamed()
    };
    let said = |ready| Some(Declared { ready });
    arrives(&duck, None, "raw nothing");
    arrives(&duck, said(None), "treated nothing");
    arrives(&duck, said(Some(true)), "ready declared");
    arrives(&duck, said(Some(false)), "raw nothing");
    arrives(&Product::unnamed(), said(None), "ready listed");
    let raw = Product {
        raw: true,
        ..Product::unnamed()
    };
    arrives(&raw, said(None), "raw nothing");
}

#[test]
fn the_list_is_closed_and_a_salt_is_known_by_what_it_does() {
    let salt = Product {
        part: AsPart {
            in_cure: Some(InCure::Other(CurePart::Salt)),
            nature: None,
        },
        raw: true,
        ..Product::unnamed()
    };
    arrives(&salt, Some(Declared::default()), "ready listed nature");
    assert_eq!(by_nature(&Product::unnamed()), None);
}

#[test]
fn what_is_called_rendered_fat_is_fat_only_where_fat_or_bones_went_in() {
    let lard = lard();
    let heat = heat();
    let of = |kind, parts: &[Part], heat| {
        let born = Born {
            kind,
            product: &lard,
            parts,
            watered: true,
            heat,
            approved: None,
            freed: None,
            stable: None,
        };
        born.condition().condition.stable
    };
    let cook = |parts: &[Part]| of(StepKind::Cook, parts, Some(&heat));
    assert_eq!(cook(&[fat(), salt()]), Some(StableBy::Nature));
    assert_eq!(cook(&[meat()]), None);
    assert_eq!(cook(&[fat(), meat()]), None);
    // Parted again, it does not become what it was not.
    let potted = Part {
        sort: ProductKind::Rendered,
        ..cooked()
    };
    assert_eq!(of(StepKind::Portion, &[potted], None), None);
}

#[test]
fn an_approval_does_not_speak_of_trichinae() {
    let product = Product::unnamed();
    let paper = [super::born::practice(ConditionSays::Released)];
    let of = |part: Part, freed| {
        let parts = [part];
        let born = Born {
            kind: StepKind::Grind,
            product: &product,
            parts: &parts,
            watered: false,
            heat: None,
            approved: Some("A-1"),
            freed,
            stable: None,
        };
        born.condition().condition.to_string()
    };
    assert_eq!(of(meat(), None), "ready approved");
    assert_eq!(of(pork(), None), "treated nothing");
    assert_eq!(of(pork(), Some(&paper[..])), "ready approved");
    let cooked = Part {
        may_carry: true,
        ..cooked()
    };
    assert_eq!(of(cooked, None), "ready approved");
}

#[test]
fn an_approval_alone_makes_no_bought_pork_ready() {
    let of = |species| {
        let product = Product {
            species: Some(species),
            ..Product::unnamed()
        };
        let declared = Some(Declared { ready: None });
        received(&product, declared, Some("A-1"), None)
            .condition
            .to_string()
    };
    assert_eq!(of(Species::Duck), "ready approved");
    assert_eq!(of(Species::Pig), "treated nothing");
}

#[test]
fn what_is_kept_cold_needs_it_unless_it_keeps_by_what_it_is() {
    use crate::words::State;
    let needs = |storage, stable_as, in_cure: Option<CurePart>| {
        let product = Product {
            storage,
            keeping: Keeping {
                stable_as,
                ..Keeping::default()
            },
            part: AsPart {
                in_cure: in_cure.map(InCure::Other),
                nature: None,
            },
            ..Product::unnamed()
        };
        (product.is_controlled(), product.is_perishable())
    };
    assert_eq!(needs(State::Chilled, None, None), (true, true));
    assert_eq!(needs(State::Frozen, None, None), (true, true));
    assert_eq!(needs(State::Ambient, None, None), (false, false));
    let wine = Some(Natural::Wine);
    assert_eq!(needs(State::Chilled, wine, None), (false, false));
    let starter = Some(CurePart::Starter);
    assert_eq!(needs(State::Frozen, None, starter), (false, false));
}

#[test]
fn fish_egg_and_milk_kept_cold_are_ready_only_where_their_pack_says_so() {
    use crate::words::{Allergen, State};
    for brings in [Allergen::Oyster, Allergen::Egg, Allergen::Milk] {
        let fresh = Product {
            allergens: [brings].into(),
            ..Product::unnamed()
        };
        arrives(&fresh, Some(Declared::default()), "treated nothing");
        let ready = Some(Declared { ready: Some(true) });
        arrives(&fresh, ready, "ready declared");
        let sauce = Product {
            storage: State::Ambient,
            ..fresh
        };
        arrives(&sauce, Some(Declared::default()), "ready listed");
    }
}

#[test]
fn flour_keeps_and_is_raw_where_the_list_says_so() {
    let flour = |raw| {
        let mut flour = Product {
            raw,
            ..Product::unnamed()
        };
        flour.keeping.stable_as = Some(Natural::DryGoods);
        flour
    };
    arrives(&flour(true), Some(Declared::default()), "raw nothing");
    let ready = Some(Declared { ready: Some(true) });
    arrives(&flour(true), ready, "ready declared nature");
    arrives(
        &flour(false),
        Some(Declared::default()),
        "ready listed nature",
    );
}
