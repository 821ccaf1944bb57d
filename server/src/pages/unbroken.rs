//! A text of a page in which no number breaks at its hyphen: "CHK-2026-1" at the end of a line stays whole.

use askama::filters::{Escaper, Html, HtmlSafe};
use std::fmt::{self, Display, Formatter};

/// A text, each number of a lot or an incident in it on one line.
pub struct Unbroken<'a>(pub &'a str);

/// It is escaped as it is written.
impl HtmlSafe for Unbroken<'_> {}

impl Display for Unbroken<'_> {
    fn fmt(&self, to: &mut Formatter<'_>) -> fmt::Result {
        for part in self.0.split_inclusive(' ') {
            let number = part.trim_end_matches(|end: char| !end.is_ascii_alphanumeric());
            let (number, after) = part.split_at(number.len());
            if is_number(number) {
                write!(to, "<span class=\"nb\">{number}</span>")?;
            } else {
                Html.write_escaped_str(&mut *to, number)?;
            }
            Html.write_escaped_str(&mut *to, after)?;
        }
        Ok(())
    }
}

/// Capitals and figures in groups, as a code or the number of an incident is written; of a code also with the numbers of
/// its packs.
fn is_number(text: &str) -> bool {
    let figures = |end: char| end.is_ascii_digit();
    let written = |of: char| of.is_ascii_uppercase() || of.is_ascii_digit() || "-/–".contains(of);
    text.contains('-') && text.contains(figures) && text.chars().all(written)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, shown: &str) {
        assert_eq!(Unbroken(text).to_string(), shown);
    }

    #[test]
    fn numbers_stay_whole_and_what_was_typed_is_escaped() {
        check(
            "Recall CHK-2026-1",
            r#"Recall <span class="nb">CHK-2026-1</span>"#,
        );
        check(
            "of BRC-26159-A00-6, and <more>",
            r#"of <span class="nb">BRC-26159-A00-6</span>, and &#60;more&#62;"#,
        );
        check(
            "Chop, BF-26159-A00-6/2–3, 5.",
            r#"Chop, <span class="nb">BF-26159-A00-6/2–3</span>, 5."#,
        );
        check("<b>-1 half-pig Tue 30", "&#60;b&#62;-1 half-pig Tue 30");
    }
}
