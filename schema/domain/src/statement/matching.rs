//! Finding a word in a name: whole words only, and not inside a phrase that means something else.

use std::ops::Range;

/// Where one of the words stands in a text, whatever its capitals. A word is whole: `wheat` is not in
/// `buckwheat`. What lies inside one of the `but_not` phrases does not count: `milk` in `coconut milk`.
pub fn find(text: &str, words: &[String], but_not: &[String]) -> Vec<Range<usize>> {
    let lower = text.to_lowercase();
    if lower.len() != text.len() {
        return Vec::new();
    }
    let blocked: Vec<Range<usize>> = but_not
        .iter()
        .flat_map(|phrase| whole_words(&lower, phrase))
        .collect();
    let mut found: Vec<Range<usize>> = words
        .iter()
        .flat_map(|word| whole_words(&lower, word))
        .filter(|at| {
            let inside = |phrase: &Range<usize>| phrase.start <= at.start && at.end <= phrase.end;
            !blocked.iter().any(inside)
        })
        .collect();
    found.sort_by_key(|at| (at.start, at.end));
    found
}

fn whole_words(lower: &str, word: &str) -> Vec<Range<usize>> {
    if word.is_empty() {
        return Vec::new();
    }
    let word = word.to_lowercase();
    let is_edge = |letter: Option<char>| letter.is_none_or(|letter| !letter.is_alphanumeric());
    lower
        .match_indices(&word)
        .map(|(start, _)| start..start + word.len())
        .filter(|at| {
            is_edge(lower[..at.start].chars().next_back())
                && is_edge(lower[at.end..].chars().next())
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, word: &str, but_not: &str, expected: &[&str]) {
        let found = find(text, &[word.to_owned()], &[but_not.to_owned()]);
        let found: Vec<&str> = found.into_iter().map(|at| &text[at]).collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn words_are_whole_and_mean_what_they_say() {
        check("Wheat flour", "wheat", "", &["Wheat"]);
        check("buckwheat flour", "wheat", "", &[]);
        check("coconut milk", "milk", "coconut milk", &[]);
        check("coconut milk, milk", "milk", "coconut milk", &["milk"]);
        check("jaune d'œuf", "œuf", "", &["œuf"]);
        check("noix de muscade", "noix", "noix de muscade", &[]);
        check("anything", "", "", &[]);
    }
}
