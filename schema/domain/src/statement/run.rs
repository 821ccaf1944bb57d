//! A stretch of text, plain or emphasised, so that a label can print the one bold.

/// A stretch of text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TextRun {
    /// The text.
    pub text: String,
    /// Is it emphasised?
    pub strong: bool,
}

/// Text in stretches.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Runs(Vec<TextRun>);

impl Runs {
    /// Adds text; it joins the stretch before it if both look the same.
    pub fn push(&mut self, text: &str, strong: bool) {
        match self.0.last_mut() {
            _ if text.is_empty() => {}
            Some(last) if last.strong == strong => last.text.push_str(text),
            _ => self.0.push(TextRun {
                text: text.to_owned(),
                strong,
            }),
        }
    }

    /// Adds what another has.
    pub fn append(&mut self, other: Runs) {
        for run in other.0 {
            self.push(&run.text, run.strong);
        }
    }

    /// The stretches.
    pub fn iter(&self) -> impl Iterator<Item = &TextRun> {
        self.0.iter()
    }

    /// Is there no text?
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The text without its looks.
    pub fn text(&self) -> String {
        self.0.iter().map(|run| run.text.as_str()).collect()
    }

    /// For plain text: what is emphasised stands in capitals.
    pub fn in_capitals(&self) -> String {
        let one = |run: &TextRun| match run.strong {
            true => run.text.to_uppercase(),
            false => run.text.clone(),
        };
        self.0.iter().map(one).collect()
    }
}
