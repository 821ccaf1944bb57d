//! The way back: who was led to a page because something was lacking is led back to where they were, once it is there.

use super::find::encoded;

/// A page of ours, and nowhere else: a browser takes `\` for `/`, and leaves out tabs and ends of lines.
pub fn ours(then: Option<&str>) -> Option<&str> {
    let leads_away = |path: &str| path.starts_with("//") || path.contains('\\');
    then.filter(|path| path.starts_with('/') && !leads_away(path))
        .filter(|path| !path.contains(char::is_control))
}

/// The address of a page that leads back to another.
pub fn leading(path: &str, then: &str) -> String {
    let joint = if path.contains('?') { '&' } else { '?' };
    format!("{path}{joint}then={}", encoded(then))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nobody_is_sent_to_another_site() {
        assert_eq!(ours(Some("/lots?q=a")), Some("/lots?q=a"));
        for other in [
            "//evil.example",
            "https://evil.example",
            "/\\evil.example",
            "/\t/evil.example",
            "/\n/evil.example",
            "javascript:x",
            "",
        ] {
            assert_eq!(ours(Some(other)), None, "{other}");
        }
    }

    #[test]
    fn the_way_back_keeps_its_own_questions() {
        let back = "/make/cure?product=bacon&lot=A1";
        let encoded = "/make/cure%3Fproduct%3Dbacon%26lot%3DA1";
        assert_eq!(
            leading("/receive?of=bought", back),
            format!("/receive?of=bought&then={encoded}")
        );
        assert_eq!(
            leading("/lists/products/new", back),
            format!("/lists/products/new?then={encoded}")
        );
    }
}
