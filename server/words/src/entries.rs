//! What stands in a file of the catalogue: each key, and the arguments that it uses.

use crate::{Language, catalogue};
use fluent_syntax::ast;
use std::collections::{BTreeMap, BTreeSet};

/// Each key of a language with the names of the arguments that its message uses, those of messages
/// that it refers to included.
///
/// # Panics
/// Where the file does not parse, or a key stands in it twice: this is for checks.
pub fn entries(language: Language) -> BTreeMap<String, BTreeSet<String>> {
    let resource = fluent_syntax::parser::parse(catalogue::text(language))
        .unwrap_or_else(|(_, errors)| panic!("{}.ftl: {errors:?}", language.tag()));
    let mut found: BTreeMap<String, Used> = BTreeMap::new();
    for entry in &resource.body {
        if let ast::Entry::Message(message) = entry {
            let mut used = Used::default();
            if let Some(pattern) = &message.value {
                used.pattern(pattern);
            }
            let twice = found.insert(message.id.name.to_owned(), used).is_some();
            assert!(
                !twice,
                "{}.ftl has {} twice",
                language.tag(),
                message.id.name
            );
        }
    }
    let all = |key: &String| {
        let mut args = BTreeSet::new();
        let (mut next, mut seen) = (vec![key.clone()], BTreeSet::new());
        while let Some(key) = next.pop() {
            if let Some(used) = found.get(&key).filter(|_| seen.insert(key.clone())) {
                args.extend(used.args.iter().cloned());
                next.extend(used.messages.iter().cloned());
            }
        }
        args
    };
    found.keys().map(|key| (key.clone(), all(key))).collect()
}

#[derive(Default)]
struct Used {
    args: BTreeSet<String>,
    messages: BTreeSet<String>,
}

impl Used {
    fn pattern(&mut self, pattern: &ast::Pattern<&str>) {
        for element in &pattern.elements {
            if let ast::PatternElement::Placeable { expression } = element {
                self.expression(expression);
            }
        }
    }

    fn expression(&mut self, expression: &ast::Expression<&str>) {
        match expression {
            ast::Expression::Inline(inline) => self.inline(inline),
            ast::Expression::Select { selector, variants } => {
                self.inline(selector);
                for variant in variants {
                    self.pattern(&variant.value);
                }
            }
        }
    }

    fn inline(&mut self, inline: &ast::InlineExpression<&str>) {
        match inline {
            ast::InlineExpression::VariableReference { id } => {
                self.args.insert(id.name.to_owned());
            }
            ast::InlineExpression::MessageReference { id, .. } => {
                self.messages.insert(id.name.to_owned());
            }
            ast::InlineExpression::Placeable { expression } => self.expression(expression),
            ast::InlineExpression::FunctionReference { arguments, .. } => {
                for argument in &arguments.positional {
                    self.inline(argument);
                }
            }
            _ => {}
        }
    }
}
