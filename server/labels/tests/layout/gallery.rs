//! Every template with its short, usual and long example fits, and no template is without one.

use crate::common;
use std::collections::BTreeMap;

use labels::{Dpi, lay_out, pdf, svg};

#[test]
fn every_template_holds_its_examples() {
    let mut cases = BTreeMap::<String, Vec<String>>::new();
    let mut refused = Vec::new();
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("gallery");
    std::fs::create_dir_all(&folder).unwrap();
    for (template, case, facts) in common::examples() {
        for dpi in [Dpi::D203, Dpi::D300] {
            match lay_out(&facts, &template, dpi) {
                Ok(label) => {
                    let stem = format!("{}-{case}-{}", template.name(), dpi.number());
                    let bytes = pdf(std::slice::from_ref(&label)).unwrap();
                    std::fs::write(folder.join(format!("{stem}.pdf")), bytes).unwrap();
                    std::fs::write(folder.join(format!("{stem}.svg")), svg(&label)).unwrap();
                }
                Err(refusal) => refused.push(format!("{} {case}: {refusal}", template.name())),
            }
        }
        cases
            .entry(template.name().to_owned())
            .or_default()
            .push(case);
    }
    assert!(refused.is_empty(), "{}", refused.join("\n"));
    for template in common::templates() {
        let cases = cases.get(template.name()).cloned().unwrap_or_default();
        assert_eq!(cases, ["long", "short", "usual"], "{}", template.name());
    }
}
