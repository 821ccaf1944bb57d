//! GS1 Digital Link: a web address that says what an element string says (`standards` 2).

use super::read::Elements;
use super::says::{NotALink, NotAnElement};

/// What a thing is known by, and what may follow in the path, in this order.
const KEYS: &[(&str, &[&str])] = &[
    ("01", &["22", "10", "21"]),
    ("00", &[]),
    ("414", &["254"]),
    ("253", &[]),
    ("401", &[]),
    ("402", &[]),
    ("415", &[]),
    ("417", &[]),
    ("8003", &[]),
    ("8004", &[]),
];

/// Elements that may stand in a path only.
const PATH_ONLY: &[&str] = &["21", "22", "235", "254"];

/// An address in GS1's form, apart from the host: a key, what qualifies it, and attributes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DigitalLink {
    path: Elements,
    attributes: Elements,
}

impl DigitalLink {
    /// Puts elements into their places: key and qualifiers into the path, the rest behind it.
    ///
    /// # Errors
    /// [`NotALink::NoKey`], or an element that has no place.
    pub fn new(elements: Elements) -> Result<DigitalLink, NotALink> {
        let key = |(ai, _): &(&str, &[&str])| elements.value(ai).is_some();
        let &(key, qualifiers) = KEYS
            .iter()
            .find(|known| key(known))
            .ok_or(NotALink::NoKey)?;
        let in_path = |ai: &str| ai == key || qualifiers.contains(&ai);
        let (mut path, rest): (Vec<_>, Vec<_>) =
            elements.0.into_iter().partition(|(ai, _)| in_path(ai));
        let place = |ai: &str| qualifiers.iter().position(|known| *known == ai);
        path.sort_by_key(|(ai, _)| place(ai));
        match rest.iter().find(|(ai, _)| PATH_ONLY.contains(&ai.as_str())) {
            Some((ai, _)) => Err(NotALink::Place { ai: ai.clone() }),
            None => Ok(DigitalLink {
                path: Elements(path),
                attributes: Elements(rest),
            }),
        }
    }

    /// Reads an address on any host, behind any stem. What its query says beside numbered elements
    /// is for somebody else.
    ///
    /// # Errors
    /// Why it is not a Digital Link.
    pub fn read(uri: &str) -> Result<DigitalLink, NotALink> {
        let (scheme, rest) = uri.split_once("://").ok_or(NotALink::NoAddress)?;
        if !matches!(scheme, "https" | "http" | "HTTPS" | "HTTP") {
            return Err(NotALink::NoAddress);
        }
        let rest = rest.split('#').next().unwrap_or("");
        let (address, query) = rest.split_once('?').unwrap_or((rest, ""));
        let segments: Vec<&str> = address.split('/').skip(1).collect();
        let (path, qualifiers) = read_path(&segments)?;
        let attributes = read_query(query)?;
        for (ai, _) in &attributes {
            let doubled = path.iter().any(|(known, _)| known == ai);
            if doubled || qualifiers.contains(&ai.as_str()) || PATH_ONLY.contains(&ai.as_str()) {
                return Err(NotALink::Place { ai: ai.clone() });
            }
        }
        let in_path = path.len();
        let all = Elements::checked([path, attributes].concat())
            .map_err(|why| NotALink::Value { why })?;
        let (path, attributes) = all.0.split_at(in_path);
        Ok(DigitalLink {
            path: Elements(path.to_vec()),
            attributes: Elements(attributes.to_vec()),
        })
    }

    /// The value of an element, wherever it stands.
    pub fn value(&self, ai: &str) -> Option<&str> {
        self.path.value(ai).or_else(|| self.attributes.value(ai))
    }

    /// The whole address on a host, such as `https://trace.cinderhook.example`.
    pub fn uri(&self, base: &str) -> String {
        let mut uri = self.short_uri(base);
        for (nth, (ai, value)) in self.attributes.iter().enumerate() {
            uri.push(if nth == 0 { '?' } else { '&' });
            uri.push_str(ai);
            uri.push('=');
            push_encoded(&mut uri, value);
        }
        uri
    }

    /// Only the path: what the thing is, without its weight and dates. In capitals it fits the
    /// compact form of a square code, which knows no question mark.
    pub fn short_uri(&self, base: &str) -> String {
        let mut uri = base.trim_end_matches('/').to_owned();
        for (ai, value) in self.path.iter() {
            uri.push('/');
            uri.push_str(ai);
            uri.push('/');
            push_encoded(&mut uri, value);
        }
        uri
    }
}

type Pairs = Vec<(String, String)>;

/// The key and its qualifiers at the end of a path. Looked for from the back: a stem may hold digits.
fn read_path(segments: &[&str]) -> Result<(Pairs, &'static [&'static str]), NotALink> {
    let found = (0..segments.len().saturating_sub(1)).rev().find_map(|at| {
        let whole_pairs = (segments.len() - at).is_multiple_of(2);
        let key = KEYS.iter().find(|(key, _)| *key == segments[at]);
        key.filter(|_| whole_pairs).map(|key| (at, key))
    });
    let (at, &(_, qualifiers)) = found.ok_or(NotALink::NoKey)?;
    let mut path = Vec::new();
    let mut allowed = qualifiers.iter();
    for (nth, pair) in segments[at..].chunks_exact(2).enumerate() {
        let ai = pair[0];
        if nth > 0 && !allowed.any(|known| *known == ai) {
            return Err(NotALink::Place { ai: ai.to_owned() });
        }
        path.push((ai.to_owned(), decoded(pair[1])?));
    }
    Ok((path, qualifiers))
}

fn read_query(query: &str) -> Result<Pairs, NotALink> {
    let mut attributes = Vec::new();
    for part in query.split(['&', ';']) {
        let (name, value) = part.split_once('=').unwrap_or((part, ""));
        if !name.is_empty() && name.bytes().all(|byte| byte.is_ascii_digit()) {
            attributes.push((name.to_owned(), decoded(value)?));
        }
    }
    Ok(attributes)
}

/// Everything but the letters, digits and four signs that an address never changes.
fn push_encoded(out: &mut String, value: &str) {
    for byte in value.bytes() {
        match byte {
            b'A'..=b'Z' | b'a'..=b'z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' => {
                out.push(char::from(byte));
            }
            other => out.push_str(&format!("%{other:02X}")),
        }
    }
}

/// A plus sign is a plus sign.
fn decoded(text: &str) -> Result<String, NotALink> {
    let wrong = || NotALink::Value {
        why: NotAnElement::BadlyEncoded {
            text: text.to_owned(),
        },
    };
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte != b'%' {
            bytes.push(byte);
            continue;
        }
        let mut digit = || rest.next().and_then(|byte| char::from(byte).to_digit(16));
        let (high, low) = (digit().ok_or_else(wrong)?, digit().ok_or_else(wrong)?);
        bytes.push((high * 16 + low) as u8);
    }
    String::from_utf8(bytes).map_err(|_| wrong())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gs1::read;

    fn written(text: &str) -> Result<String, NotALink> {
        DigitalLink::new(read(text).unwrap()).map(|link| link.uri("https://example.org/"))
    }

    /// The address without its host as an element string, as it was understood.
    fn understood(path: &str) -> Result<String, NotALink> {
        let link = DigitalLink::read(&format!("https://example.org{path}"))?;
        Ok(link.path.bracketed() + &link.attributes.bracketed())
    }

    #[test]
    fn elements_to_address_and_back() {
        // standards 2, the vectors of GS1's own engine.
        for (text, uri) in [
            (
                "(01)09521234543213(10)26P0718-BEL7(17)260727",
                "/01/09521234543213/10/26P0718-BEL7?17=260727",
            ),
            (
                "(01)09506000134352(3103)001250(17)261231(10)L-26/0718.A",
                "/01/09506000134352/10/L-26%2F0718.A?3103=001250&17=261231",
            ),
            (
                "(01)09506000134352(22)2A(10)AB/C(21)S1",
                "/01/09506000134352/22/2A/10/AB%2FC/21/S1",
            ),
            (
                "(21)S1(10)AB/C(22)2A(01)09506000134352",
                "/01/09506000134352/22/2A/10/AB%2FC/21/S1",
            ),
            (
                "(414)9506000134376(254)COLD1",
                "/414/9506000134376/254/COLD1",
            ),
        ] {
            let whole = format!("https://example.org{uri}");
            assert_eq!(written(text), Ok(whole.clone()));
            let again = DigitalLink::read(&whole).unwrap();
            assert_eq!(again, DigitalLink::new(read(text).unwrap()).unwrap());
        }
        assert_eq!(written("(91)L26P0718-04"), Err(NotALink::NoKey));
        assert_eq!(written("(10)L26"), Err(NotALink::NoKey));
    }

    #[test]
    fn every_sign_of_the_set_survives() {
        // standards 2: what the grammar lists, and the quotation mark.
        let lot = "/%&+,!(*':;<=>?\"";
        let elements = Elements(vec![
            ("01".into(), "09506000134352".into()),
            ("10".into(), lot.into()),
        ]);
        let link = DigitalLink::new(elements).unwrap();
        let uri = link.uri("https://example.org");
        assert_eq!(
            uri,
            "https://example.org/01/09506000134352/10/%2F%25%26%2B%2C%21%28%2A%27%3A%3B%3C%3D%3E%3F%22"
        );
        assert_eq!(DigitalLink::read(&uri).unwrap().value("10"), Some(lot));
    }

    #[test]
    fn addresses_that_are_none() {
        // standards 2.
        let place = |ai: &str| NotALink::Place { ai: ai.into() };
        for (path, why) in [
            ("/01/09506000134352/10/ABC/22/2A", place("22")),
            ("/01/09506000134352/17/261231", place("17")),
            ("/01/09506000134352/10/ABC?10=DEF", place("10")),
            ("/01/09521234543213?10=A", place("10")),
            ("/01/09506000134352?21=A", place("21")),
            ("/l/26P0718-BEL7", NotALink::NoKey),
            ("/10/26P0718-BEL7", NotALink::NoKey),
            ("/gtin/09521234543213", NotALink::NoKey),
            ("/01", NotALink::NoKey),
            ("/", NotALink::NoKey),
        ] {
            assert_eq!(understood(path), Err(why), "{path}");
        }
        for path in [
            "/01/9506000134352/10/ABC",
            "/01/09506000134353",
            "/01/09521234543213/10/A%20B",
            "/01/09521234543213/10/A%2",
            "/01/09521234543213/10/",
            "/01/09521234543213?17=261331",
        ] {
            let why = understood(path);
            assert!(
                matches!(why, Err(NotALink::Value { .. })),
                "{path}: {why:?}"
            );
        }
        for uri in ["HtTp://example.org/01/09521234543213", "01/09521234543213"] {
            assert_eq!(DigitalLink::read(uri), Err(NotALink::NoAddress));
        }
    }

    #[test]
    fn addresses_that_are() {
        // standards 2.
        for (path, text) in [
            ("/01/09521234543213/10/AB+C", "(01)09521234543213(10)AB+C"),
            (
                "/shop/pork/01/09521234543213/10/26P0718-BEL",
                "(01)09521234543213(10)26P0718-BEL",
            ),
            (
                "/01/09521234543213/10/A?linkType=all&17=260727",
                "(01)09521234543213(10)A(17)260727",
            ),
            (
                "/01/09521234543213/10/A?exp=260727;17=260728#top",
                "(01)09521234543213(10)A(17)260728",
            ),
            ("/00/00/095212345000000018", "(00)095212345000000018"),
        ] {
            assert_eq!(understood(path), Ok(text.into()), "{path}");
        }
        let plus = DigitalLink::read("HTTPS://EXAMPLE.ORG/01/09521234543213/10/AB+C").unwrap();
        assert_eq!(
            plus.uri("https://example.org"),
            "https://example.org/01/09521234543213/10/AB%2BC"
        );
    }
}
