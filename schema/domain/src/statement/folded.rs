//! A text made plain, so that a word is found however it is written: small letters, no accents, no hyphens.

use std::ops::Range;

/// A text in small letters, without accents, hyphens and double spaces.
pub fn fold(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        match letter {
            // Accents that stand apart from their letter.
            '\u{300}'..='\u{36f}' => {}
            'œ' => plain.push_str("oe"),
            'æ' => plain.push_str("ae"),
            'ß' => plain.push_str("ss"),
            '’' | 'ʼ' | '`' | '´' => plain.push('\''),
            '-' | '\u{2010}'..='\u{2015}' => push_space(&mut plain),
            space if space.is_whitespace() => push_space(&mut plain),
            letter => plain.push(bare(letter)),
        }
    }
    plain
}

fn push_space(plain: &mut String) {
    if !plain.ends_with(' ') {
        plain.push(' ');
    }
}

fn bare(letter: char) -> char {
    match letter {
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => 'a',
        'ç' => 'c',
        'è' | 'é' | 'ê' | 'ë' => 'e',
        'ì' | 'í' | 'î' | 'ï' => 'i',
        'ñ' => 'n',
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' => 'o',
        'ù' | 'ú' | 'û' | 'ü' => 'u',
        'ÿ' | 'ý' => 'y',
        letter => letter,
    }
}

/// Where a word or phrase stands whole in a folded text, also in its plural.
pub fn whole_words(text: &str, word: &str) -> Vec<Range<usize>> {
    let word = fold(word);
    if word.is_empty() {
        return Vec::new();
    }
    let starts = text.match_indices(&word).map(|(start, _)| start);
    let at_edge = |start: &usize| !text[..*start].ends_with(char::is_alphanumeric);
    let whole = |start: usize| {
        let end = start + word.len();
        let ending = ["", "s", "es", "x"].into_iter().find(|ending| {
            let rest = text[end..].strip_prefix(ending);
            rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
        });
        ending.map(|ending| start..end + ending.len())
    };
    starts.filter(at_edge).filter_map(whole).collect()
}

/// What may stand before an ingredient, and parts it from what stands before that.
const BEFORE: [&str; 10] = [
    "of", "contains", "with", "and", "or", "de", "contient", "avec", "et", "ou",
];

/// What parts one ingredient from the next.
const PARTS: [char; 12] = [',', ';', ':', '.', '(', ')', '[', '/', '+', '&', '•', '·'];

/// Where a word is an ingredient by itself in a folded list, whatever figures stand with it: `flour`, `12 % flour`,
/// but not `rice flour`.
pub fn items(text: &str, words: &[String]) -> Vec<Range<usize>> {
    let found = words.iter().flat_map(|word| whole_words(text, word));
    let alone = |at: &Range<usize>| {
        let figure = |letter: char| letter.is_numeric() || " %*".contains(letter);
        let before = text[..at.start].trim_end_matches(' ');
        let after = text[at.end..].trim_start_matches(' ');
        let begins = before.trim_end_matches(figure);
        let word = begins
            .rsplit(|letter: char| !letter.is_alphanumeric())
            .next();
        let first = begins.is_empty() || begins.ends_with(PARTS);
        let led = word.is_some_and(|word| BEFORE.contains(&word));
        let next = after.chars().next();
        let follows = after.split(|letter: char| !letter.is_alphanumeric()).next();
        let last = next.is_none_or(|letter| !letter.is_alphabetic())
            || follows.is_some_and(|word| matches!(word, "and" | "or" | "et" | "ou"));
        (first || led) && last
    };
    found.filter(alone).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_found_however_it_is_written() {
        let check = |text: &str, word: &str, times: usize| {
            assert_eq!(
                whole_words(&fold(text), word).len(),
                times,
                "{text}: {word}"
            );
        };
        check("CRÈME, crème, creme, cre\u{300}me", "crème", 4);
        check("JAUNES D’ŒUFS", "œuf", 1);
        check("milk-fed", "milk fed", 1);
        check("buckwheat, wheats", "wheat", 1);
        check("İ, lait", "lait", 1);
    }

    #[test]
    fn an_ingredient_by_itself_is_told_from_a_part_of_another() {
        let check = |text: &str, times: usize| {
            let words = ["flour".to_owned(), "farine".to_owned()];
            assert_eq!(items(&fold(text), &words).len(), times, "{text}");
        };
        for text in [
            "flour",
            "pork, flour, salt",
            "rusk (flour, water)",
            "12 % flour",
            "pork, 12,5 % flour",
            "flour 12.5 %",
            "less than 2% of flour",
            "salt and flour",
            "flour and water",
            "farine, sel",
            "Ingrédients : farine",
        ] {
            check(text, 1);
        }
        for text in [
            "rice flour",
            "chick-pea flour",
            "flour of rice",
            "farine de riz",
            "Farine d’avoine",
            "flourless",
        ] {
            check(text, 0);
        }
    }
}
