//! The fingerprint of a certificate: the SHA-256 digest of the whole of it, as other tools show it too.

use sha2::{Digest, Sha256};

/// What stands before the digits.
const SORT: &str = "sha256:";

/// The digest of a certificate.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Fingerprint([u8; 32]);

impl Fingerprint {
    /// Of a certificate as it comes over the line (DER).
    pub fn of(certificate: &[u8]) -> Fingerprint {
        Fingerprint(Sha256::digest(certificate).into())
    }

    /// Reads 64 hexadecimal digits in either case, in pairs with colons or spaces or without, with `sha256:`
    /// before them or not: as a printer or another tool shows it.
    pub fn parse(text: &str) -> Option<Fingerprint> {
        let text = text.trim().to_ascii_lowercase();
        let digits = text.strip_prefix(SORT).unwrap_or(&text);
        let digits: Option<Vec<u8>> = digits
            .chars()
            .filter(|letter| !matches!(letter, ':' | ' '))
            .map(|letter| {
                letter
                    .to_digit(16)
                    .and_then(|digit| u8::try_from(digit).ok())
            })
            .collect();
        let digits = digits.filter(|digits| digits.len() == 64)?;
        let bytes: Vec<u8> = digits
            .chunks(2)
            .map(|pair| pair.iter().fold(0, |byte, digit| byte << 4 | digit))
            .collect();
        Some(Fingerprint(bytes.try_into().ok()?))
    }

    /// In pairs, for the eye: `A1:B2:…`.
    pub fn shown(&self) -> String {
        let pairs: Vec<String> = self.0.iter().map(|byte| format!("{byte:02X}")).collect();
        pairs.join(":")
    }
}

impl std::fmt::Display for Fingerprint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(SORT)?;
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl std::fmt::Debug for Fingerprint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{self}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_read_as_tools_show_it() {
        // FIPS 180-4: the digest of nothing.
        let plain = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
        let of_nothing = Fingerprint::of(b"");
        assert_eq!(of_nothing.to_string(), format!("sha256:{plain}"));
        let shown = of_nothing.shown();
        assert!(shown.starts_with("E3:B0:C4:42"), "{shown}");
        for text in [
            plain.to_owned(),
            of_nothing.to_string(),
            shown.clone(),
            format!("SHA256:{shown}"),
            format!(" {} ", shown.replace(':', " ")),
        ] {
            assert_eq!(Fingerprint::parse(&text), Some(of_nothing), "{text}");
        }
        for wrong in [
            "",
            "sha256:",
            &plain[1..],
            "sha1:00",
            &plain.replace('e', "g"),
        ] {
            assert_eq!(Fingerprint::parse(wrong), None, "{wrong}");
        }
        assert_eq!(Fingerprint::parse(&format!("{plain}00")), None);
    }
}
