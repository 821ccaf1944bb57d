//! Many labels on a sheet: none over another, none off the paper, codes still on whole dots.

use crate::common;
use labels::{Dpi, Placed, PlacedLabel, Sheet, SheetRefusal, lay_out};

fn sheet(name: &str) -> Sheet {
    let path = format!(
        "{}/../../label-templates/sheets/{name}.json",
        env!("CARGO_MANIFEST_DIR")
    );
    Sheet::parse(name, &std::fs::read_to_string(path).unwrap()).unwrap()
}

fn labels(count: usize) -> Vec<PlacedLabel> {
    let label = lay_out(&common::plain_tub(), &common::tub(), Dpi::D300).unwrap();
    vec![label; count]
}

#[test]
fn a_sheet_holds_as_many_as_fit() {
    // Letter: 203.9 mm between the margins hold 3 of 51 + 4 mm, 267.4 mm hold 4; A4: 3 and 5.
    for (name, places) in [("letter", 12), ("a4", 15)] {
        let sheets = sheet(name).fill(&labels(places + 1), 0).unwrap();
        assert_eq!(sheets.len(), 2, "{name}");
        assert_eq!(sheets[0].codes().count(), places);
        assert_eq!(sheets[1].codes().count(), 1);
        let sheets = sheet(name).fill(&labels(places), places - 1).unwrap();
        assert_eq!(sheets.len(), 2);
        assert_eq!(
            sheets[0].codes().count(),
            1,
            "the first sheet was used up but for one place"
        );
        let refused = sheet(name).fill(&labels(1), places).unwrap_err();
        assert!(matches!(refused, SheetRefusal::Skip { .. }), "{refused}");
    }
}

#[test]
fn nothing_overlaps_and_codes_stay_on_dots() {
    let page = sheet("a4").fill(&labels(15), 0).unwrap().remove(0);
    let cuts = |item: &&Placed| !matches!(item, Placed::Rule(area) if area.w == page.width || area.h == page.height);
    let items: Vec<&Placed> = page.items.iter().filter(cuts).collect();
    for (nth, item) in items.iter().enumerate() {
        assert!(page.page().holds(&item.bounds()), "{item:?}");
        for other in &items[..nth] {
            assert!(
                !item.bounds().overlaps(&other.bounds()),
                "{item:?} {other:?}"
            );
        }
    }
    let whole = |length| page.dpi.dots(page.dpi.first_dot(length)) == length;
    for code in page.codes() {
        for dark in &code.dark {
            assert!(whole(dark.x) && whole(dark.right()) && whole(dark.y) && whole(dark.bottom()));
        }
    }
}

#[test]
fn a_label_larger_than_the_paper_is_refused() {
    let mut label = labels(1).remove(0);
    label.width = label.width * 5;
    let refused = sheet("letter").fill(&[label], 0).unwrap_err();
    assert!(
        matches!(refused, SheetRefusal::TooLarge { .. }),
        "{refused}"
    );
    assert_eq!(sheet("letter").fill(&[], 0).unwrap(), Vec::new());
}
