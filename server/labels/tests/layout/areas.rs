//! How much paper a label of the usual packs takes: as little as its words need. The table is printed, and each row has
//! to be met; what each may take at the most is our own.

use crate::common;
use labels::{Dpi, Facts, Field, PlacedLabel, Template, lay_out};

/// Some of the texts of a label.
type Part = &'static [(Field, &'static str)];

/// What stands on every pack of the invented kitchen.
const HOUSE: &[(Field, &str)] = &[
    (Field::UseByHeading, "USE BY"),
    (
        Field::Business,
        "Cinderhook Kitchen, 14 Tallow Lane, Cinder Hollow, New York",
    ),
    (Field::Storage, "Keep Refrigerated"),
];

/// The panel of raw meat (us 4.2, its wording fixed by the law).
const PANEL: &[(Field, &str)] = &[
    (Field::HandlingHeading, "Safe Handling Instructions"),
    (
        Field::HandlingWhy,
        "Some food products may contain bacteria that could cause illness if the product is mishandled or cooked \
         improperly. For your protection, follow these safe handling instructions.",
    ),
    (
        Field::HandlingKeep,
        "Keep refrigerated or frozen. Thaw in refrigerator or microwave.",
    ),
    (
        Field::HandlingApart,
        "Keep raw meat and poultry separate from other foods. Wash working surfaces (including cutting boards), \
         utensils, and hands after touching raw meat or poultry.",
    ),
    (Field::HandlingCook, "Cook thoroughly."),
    (
        Field::HandlingHot,
        "Keep hot foods hot. Refrigerate leftovers immediately or discard.",
    ),
];

const BACON: &[(Field, &str)] = &[
    (Field::Name, "Dry-cured smoked bacon, sliced"),
    (Field::Kind, "RAW"),
    (Field::UseBy, "TUE 30 JUN 2026"),
    (Field::Net, "Net Wt. 8.8\u{a0}oz (250\u{a0}g)"),
    (
        Field::Ingredients,
        "Ingredients: skinless pork belly, salt, contains 1 percent or less of sugar, curing salt no. 1 (salt, \
         sodium nitrite).",
    ),
    (Field::Cure, "Cured with salt, sodium nitrite"),
    (Field::Made, "Packed on 24 JUN 2026"),
    (Field::Lot, "BRC-26159-A0T-M / 9"),
];

const CHOPS: &[(Field, &str)] = &[
    (Field::Name, "Pork chop"),
    (Field::Kind, "RAW"),
    (Field::UseBy, "SUN 28 JUN 2026"),
    (Field::Net, "Net Wt. 1.10\u{a0}lb (500\u{a0}g)"),
    (Field::Price, "$9.90"),
    (Field::UnitPrice, "$8.98/lb"),
    (Field::Made, "Packed on 24 JUN 2026"),
    (Field::Lot, "BRC-26159-A0C-7 / 2"),
];

const RILLETTES: &[(Field, &str)] = &[
    (Field::Name, "Pork rillettes"),
    (Field::Kind, "READY TO EAT"),
    (Field::UseBy, "FRI 26 JUN 2026"),
    (Field::Net, "Net Wt. 6.3\u{a0}oz (180\u{a0}g)"),
    (
        Field::Ingredients,
        "Ingredients: pork picnic shoulder, pork fat, cracklings (pork fat, salt), salt.",
    ),
    (Field::Made, "Packed on 20 JUN 2026"),
    (Field::Lot, "CHK-26171-A01-K / 7"),
];

/// The same in a second language.
const SECOND: &[(Field, &str)] = &[
    (Field::SecondName, "Rillettes de porc"),
    (Field::SecondUseBy, "Consommer jusqu’au 26 juin 2026"),
    (
        Field::SecondIngredients,
        "Ingrédients : épaule picnic de porc, gras de porc, grattons de porc (gras de porc, sel), sel.",
    ),
    (Field::SecondStorage, "Garder au réfrigérateur"),
    (Field::SecondMade, "Emballé le 20 JUIN 2026"),
];

/// What stands on a tub of the kitchen's own.
const TUB: &[(Field, &str)] = &[
    (Field::Name, "Pork rillettes"),
    (Field::Kind, "READY TO EAT"),
    (Field::UseByHeading, "USE BY"),
    (Field::UseByShort, "FRI 26 JUN"),
    (Field::Allergens, "Contains: celery, mustard"),
    (Field::Made, "Made on 20 JUN 2026"),
    (Field::Lot, "CHK-26171-A01-K / 7"),
];

fn on_a_roll(parts: &[&[(Field, &str)]], linear: &str) -> PlacedLabel {
    on("roll-us", parts, linear)
}

fn on(template: &str, parts: &[&[(Field, &str)]], linear: &str) -> PlacedLabel {
    laid_out(template, common::facts(&parts.concat(), linear))
}

/// The panel on a label of its own.
fn apart(parts: &[&[(Field, &str)]], linear: &str) -> PlacedLabel {
    let facts = common::facts(&parts.concat(), linear);
    laid_out(
        "roll-us",
        Facts {
            panel_apart: true,
            ..facts
        },
    )
}

fn laid_out(template: &str, facts: Facts) -> PlacedLabel {
    let template = common::template(template);
    lay_out(&facts, &template, Dpi::D203).unwrap_or_else(|refusal| panic!("{refusal}"))
}

/// What a label may take at the most: its length in millimetres, on paper as wide as it is.
struct Target {
    what: &'static str,
    label: PlacedLabel,
    most: f64,
}

impl Target {
    fn of(what: &'static str, label: PlacedLabel, most: f64) -> Target {
        Target { what, label, most }
    }

    fn is_met(&self) -> bool {
        self.label.height.to_mm() <= self.most
    }

    /// A row of the table.
    fn row(&self) -> String {
        let (wide, long) = (self.label.width.to_mm(), self.label.height.to_mm());
        let met = if self.is_met() { "met" } else { "MISSED" };
        let (what, most) = (self.what, self.most);
        format!("{what:<26} {wide:>3.0} x {long:>5.1} {most:>7.1} {met}")
    }
}

fn targets() -> Vec<Target> {
    let linear = "BRC26159A0TM/9";
    let us = |parts: &[Part]| on_a_roll(parts, linear);
    let two = |name: &str| on(name, &[HOUSE, RILLETTES, SECOND], linear);
    let bacon = apart(&[HOUSE, BACON, PANEL], linear);
    let chops = apart(&[HOUSE, CHOPS, PANEL], linear);
    let panel = |label: &PlacedLabel| *label.second.clone().unwrap();
    let facts = common::facts(&[HOUSE, BACON, PANEL].concat(), linear);
    let wide = lay_out(&facts, &on_wide_paper("roll-us"), Dpi::D203);
    vec![
        // A front of 86 and a panel of 62, as one label; or one of 100 x 102.
        Target::of("bacon, 250 g", us(&[HOUSE, BACON, PANEL]), 148.0),
        Target::of("bacon, on wide paper", wide.unwrap(), 102.0),
        Target::of("bacon, its panel", panel(&bacon), 62.0),
        Target::of("bacon, front", bacon, 86.0),
        Target::of("chops, raw", us(&[HOUSE, CHOPS, PANEL]), 125.0),
        Target::of("chops, panel", panel(&chops), 62.0),
        Target::of("chops, front", chops, 65.0),
        Target::of("rillettes, 180 g", us(&[HOUSE, RILLETTES]), 62.0),
        // Half as long again as in one language, at the most.
        Target::of("rillettes, two languages", two("roll-us"), 87.0),
        Target::of("rillettes, Canada", two("roll-ca"), 87.0),
        // A label of a fixed size (trade 5), on narrower paper: no more of it than 62 x 50.
        Target::of(
            "tub",
            on("tub", &[TUB], "CHK26171A01K/7"),
            62.0 * 50.0 / 51.0,
        ),
    ]
}

/// A template for a roll on paper 100 mm wide, as a kitchen with a wider printer writes it.
fn on_wide_paper(template: &str) -> Template {
    const MORE: f64 = 38.0;
    let mut form: serde_json::Value = serde_json::from_str(&common::form(template)).unwrap();
    let wider = |value: &mut serde_json::Value| *value = (value.as_f64().unwrap() + MORE).into();
    wider(&mut form["width_mm"]);
    for item in form["items"].as_array_mut().unwrap() {
        if let Some(stack) = item.get_mut("stack") {
            wider(&mut stack["w"]);
        } else if let Some(code) = item.get_mut("qr") {
            wider(&mut code["x"]);
        }
    }
    Template::parse("wide", &form.to_string()).unwrap()
}

#[test]
fn a_label_is_as_short_as_its_words_need() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("areas");
    std::fs::create_dir_all(&folder).unwrap();
    let mut long = Vec::new();
    println!("{:<26} {:>11} {:>7}", "United States English", "mm", "most");
    for target in targets() {
        println!("{}", target.row());
        long.extend((!target.is_met()).then(|| target.row()));
        let (what, label) = (target.what, target.label);
        let bytes = labels::pdf(std::slice::from_ref(&label)).unwrap();
        let name = format!("{}.pdf", what.replace(", ", "-").replace(' ', "-"));
        std::fs::write(folder.join(name), bytes).unwrap();
        // Nothing below the last code's words but the margin.
        let lowest = label.lines().map(|line| line.baseline).max().unwrap();
        assert!(label.height.to_mm() - lowest.to_mm() < 4.0, "{what}");
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
}

#[test]
fn a_panel_apart_is_one_print_of_two_labels() {
    let label = apart(&[HOUSE, BACON, PANEL], "BRC26159A0TM/9");
    let panel = label.second.as_deref().unwrap();
    let heading = |label: &PlacedLabel| label.text_of(Field::HandlingHeading);
    assert!(heading(&label).is_empty() && !heading(panel).is_empty());
    // By the clear code it is known to which pack it belongs.
    assert_eq!(panel.text_of(Field::Lot), label.text_of(Field::Lot));
    let bytes = labels::pdf(std::slice::from_ref(&label)).unwrap();
    let file = String::from_utf8_lossy(&bytes);
    let pages = file.matches("/Type/Page").count() - file.matches("/Type/Pages").count();
    assert_eq!(pages, 2);
    // A printer is told one size for both; a screen shows them as one picture.
    assert!(
        label
            .alike()
            .iter()
            .all(|page| page.height == label.tallest())
    );
    assert!(label.joined().height > label.height + panel.height);
    // What needs no panel has one label.
    assert!(
        apart(&[HOUSE, RILLETTES], "CHK26171A01K/7")
            .second
            .is_none()
    );
}

#[test]
fn a_day_and_a_net_weight_stand_on_one_line_each() {
    for parts in [
        [HOUSE, BACON, PANEL].as_slice(),
        [HOUSE, CHOPS, PANEL].as_slice(),
        [HOUSE, RILLETTES].as_slice(),
    ] {
        let label = on_a_roll(parts, "BRC26159A0TM/9");
        let of = |field| {
            let lines = label.lines().filter(move |line| line.field == field);
            lines.map(|line| line.text.clone()).collect::<Vec<String>>()
        };
        let (day, net) = (of(Field::UseBy), of(Field::Net));
        assert_eq!(day.len(), 2, "{day:?}");
        assert_eq!(day[1], "2026");
        assert_eq!(net.len(), 1, "{net:?}");
        assert!(net[0].ends_with("g)"), "{net:?}");
    }
}

#[test]
fn a_roll_is_never_shorter_than_it_may_be_nor_longer() {
    let template = common::template("roll-us");
    let (shortest, longest) = (template.shortest().unwrap(), template.height());
    let little = [
        (Field::Name, "Ham"),
        (Field::UseByHeading, "USE BY"),
        (Field::UseBy, "SUN 28 JUN 2026"),
        (Field::Lot, "BRC-26159-A0C-7"),
    ];
    let label = on_a_roll(&[&little], "BRC26159A0C7");
    assert!(shortest <= label.height, "{}", label.height);
    let endless = "pork belly, salt, ".repeat(300);
    let much = [
        (Field::Name, "Ham"),
        (Field::UseByHeading, "USE BY"),
        (Field::UseBy, "SUN 28 JUN 2026"),
        (Field::Lot, "BRC-26159-A0C-7"),
        (Field::Ingredients, endless.as_str()),
    ];
    let facts = common::facts(&much, "BRC26159A0C7");
    let refused = lay_out(&facts, &template, Dpi::D203)
        .unwrap_err()
        .to_string();
    assert!(refused.contains("too-tall"), "{refused} {longest}");
}

#[test]
fn the_net_weight_is_as_high_as_the_face_of_the_pack_asks() {
    let height = |least: Option<i64>| {
        let facts = common::facts(&[HOUSE, BACON].concat(), "BRC26159A0TM/9");
        let label = laid_out(
            "roll-us",
            Facts {
                net_least_um: least,
                ..facts
            },
        );
        let line = label.lines().find(|line| line.field == Field::Net);
        let line = line.unwrap().clone();
        line.weight.face().letters(line.size).1.to_mm()
    };
    // us 4.3: 3/16 inch on a face above 25 square inches.
    assert!((3.2..3.4).contains(&height(None)), "{}", height(None));
    assert!(height(Some(4_763)) >= 4.76, "{}", height(Some(4_763)));
}
