//! Texts of a report: broken into lines, in letters that the face has.

use crate::face::Weight;
use crate::length::Length;

/// A text in lines: the first so wide, the others so wide. A word that is wider than a line is broken.
pub fn split(text: &str, weight: Weight, size: Length, first: Length, rest: Length) -> Vec<String> {
    let text = drawable(text, weight);
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    let room = |lines: &[String]| if lines.is_empty() { first } else { rest };
    for word in text.split([' ', '\n']).filter(|word| !word.is_empty()) {
        let joined = match line.is_empty() {
            true => word.to_owned(),
            false => format!("{line} {word}"),
        };
        if wide(weight, &joined, size) <= room(&lines) {
            line = joined;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if wide(weight, &line, size) > room(&lines) && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::replace(&mut line, letter.to_string()));
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// A text that the face can draw: a letter that it lacks stands as a question mark in brackets.
pub fn drawable(text: &str, weight: Weight) -> String {
    let face = weight.face();
    if face.lacks(text).is_none() {
        return text.to_owned();
    }
    let mut drawn = String::with_capacity(text.len());
    for letter in text.chars() {
        match face.glyph(letter) {
            Some(_) => drawn.push(letter),
            None if letter.is_whitespace() => drawn.push(' '),
            None => drawn.push_str("[?]"),
        }
    }
    drawn
}

/// How wide a text is.
pub fn wide(weight: Weight, text: &str, size: Length) -> Length {
    weight.face().width(text, size)
}
