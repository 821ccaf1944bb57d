//! What a paper may be, told by its content alone: whatever its name and its sender say of it.

use super::PaperSays;
use crate::words::words;

/// The largest paper, in bytes.
pub const LARGEST: usize = LARGEST_MB << 20;
/// The same in the words of a refusal.
pub const LARGEST_MB: usize = 10;
/// The most papers of one deed.
pub const MOST_OF_DEED: usize = 40;

words! {
    /// The forms that a paper may have.
    PaperForm {
        Pdf = "application/pdf", Jpeg = "image/jpeg", Png = "image/png", Text = "text/plain",
    }
}

impl PaperForm {
    /// The form that some bytes have.
    ///
    /// # Errors
    /// There are none, they are no form that is taken, or their end is missing.
    pub fn of(bytes: &[u8]) -> Result<PaperForm, PaperSays> {
        if bytes.is_empty() {
            return Err(PaperSays::Empty);
        }
        let whole = |form, is_whole| match is_whole {
            true => Ok(form),
            false => Err(PaperSays::CutOff),
        };
        if bytes.starts_with(b"%PDF-") {
            // Whoever writes a PDF ends it so; a scanner may put a few bytes behind.
            let end = &bytes[bytes.len().saturating_sub(1_024)..];
            return whole(PaperForm::Pdf, end.windows(5).any(|five| five == b"%%EOF"));
        }
        if bytes.starts_with(&[0xff, 0xd8, 0xff]) {
            return whole(PaperForm::Jpeg, is_jpeg(bytes));
        }
        if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
            return whole(PaperForm::Png, is_png(bytes));
        }
        match is_text(bytes) {
            true => Ok(PaperForm::Text),
            false => Err(PaperSays::NotRead),
        }
    }

    /// How a file of it ends.
    pub const fn ending(self) -> &'static str {
        match self {
            PaperForm::Pdf => "pdf",
            PaperForm::Jpeg => "jpg",
            PaperForm::Png => "png",
            PaperForm::Text => "txt",
        }
    }

    /// May a browser show it where it stands? What could hold more than a picture is saved instead.
    pub const fn is_picture(self) -> bool {
        matches!(self, PaperForm::Jpeg | PaperForm::Png)
    }
}

/// Do its segments lead to a picture with a width and a height, whose dots follow?
fn is_jpeg(bytes: &[u8]) -> bool {
    let mut at = 2;
    let mut is_sized = false;
    while let Some(&[0xff, marker]) = bytes.get(at..at + 2) {
        if marker == 0xff {
            at += 1; // filling
            continue;
        }
        let Some(&[high, low]) = bytes.get(at + 2..at + 4) else {
            return false;
        };
        let length = usize::from(u16::from_be_bytes([high, low]));
        let is_frame = (0xc0..=0xcf).contains(&marker) && !matches!(marker, 0xc4 | 0xc8 | 0xcc);
        if is_frame {
            let size = bytes.get(at + 5..at + 9);
            is_sized = size.is_some_and(|size| size[..2] != [0, 0] && size[2..] != [0, 0]);
        }
        if marker == 0xda {
            // Some telephones put a film behind the end of a photo.
            let dots = bytes.get(at + 2 + length..).unwrap_or_default();
            return is_sized && dots.windows(2).any(|two| two == [0xff, 0xd9]);
        }
        at += 2 + length.max(2);
    }
    false
}

/// Does it begin with its size and end with its end?
fn is_png(bytes: &[u8]) -> bool {
    let header = bytes.get(8..24);
    let is_sized = header.is_some_and(|header| {
        header[4..8] == *b"IHDR" && header[8..12] != [0; 4] && header[12..16] != [0; 4]
    });
    is_sized && bytes.get(bytes.len() - 8..bytes.len() - 4) == Some(&b"IEND"[..])
}

/// Is it something to read: UTF-8, or the one-byte letters of an older instrument, and nothing that steers a screen?
fn is_text(bytes: &[u8]) -> bool {
    let steers = |byte: &u8| *byte < 0x20 && !matches!(byte, b'\t' | b'\n' | b'\r' | 0x0c);
    if bytes.iter().any(|byte| steers(byte) || *byte == 0x7f) {
        return false;
    }
    let has_letters = bytes.iter().any(|byte| !byte.is_ascii_whitespace());
    let is_one_byte = || bytes.iter().all(|byte| !(0x80..0xa0).contains(byte));
    has_letters && (std::str::from_utf8(bytes).is_ok() || is_one_byte())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PNG: &[u8] = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01\x08\0\0\0\0\x3a\x7e\x9b\x55\0\0\0\0IEND\xae\x42\x60\x82";
    const JPEG: &[u8] = b"\xff\xd8\xff\xe0\0\x04ab\xff\xc0\0\x0b\x08\0\x02\0\x03\x01\x01\x11\0\xff\xda\0\x02ab\xff\xd9film";

    #[test]
    fn the_content_says_what_it_is() {
        let of = PaperForm::of;
        assert_eq!(of(b"%PDF-1.7\n1 0 obj\n%%EOF\n"), Ok(PaperForm::Pdf));
        assert_eq!(of(b"%PDF-1.7\n1 0 obj\n"), Err(PaperSays::CutOff));
        assert_eq!(of(PNG), Ok(PaperForm::Png));
        assert_eq!(of(JPEG), Ok(PaperForm::Jpeg));
        assert_eq!(of(b"time;\xb0C\r\n10:00;3,4\r\n"), Ok(PaperForm::Text));
        assert_eq!(of("heure;°C\n10:00;3,4\n".as_bytes()), Ok(PaperForm::Text));
        for none in [
            &b"MZ\x90\0\x03"[..],
            b"PK\x03\x04",
            b"GIF89a\x01\0",
            b"\x1b[2Jx",
            b" \n",
        ] {
            assert_eq!(of(none), Err(PaperSays::NotRead), "{none:?}");
        }
        assert_eq!(of(b""), Err(PaperSays::Empty));
    }

    #[test]
    fn what_was_cut_off_is_not_taken() {
        for whole in [PNG, &JPEG[..JPEG.len() - 4]] {
            for end in 8..whole.len() {
                assert_eq!(
                    PaperForm::of(&whole[..end]),
                    Err(PaperSays::CutOff),
                    "{end}"
                );
            }
        }
    }

    proptest! {
        #[test]
        fn whatever_comes_it_answers(bytes: Vec<u8>, front in 0usize..3) {
            let fronts = [&b""[..], &JPEG[..12], &PNG[..16]];
            let _ = PaperForm::of(&[fronts[front], &bytes].concat());
        }
    }
}
