//! As much of HTTP as a printer needs to read.

use std::io::BufRead;

/// The body of an HTTP request, whole or in chunks.
pub(super) fn body(reader: &mut impl BufRead) -> Option<Vec<u8>> {
    let mut line = || -> Option<String> {
        let mut line = String::new();
        (reader.read_line(&mut line).ok()? > 0).then(|| line.trim_end().to_owned())
    };
    let mut length = None;
    loop {
        let header = line()?.to_lowercase();
        if header.is_empty() {
            break;
        }
        if let Some(told) = header.strip_prefix("content-length:") {
            length = told.trim().parse().ok();
        }
    }
    let mut body = Vec::new();
    if let Some(length) = length {
        body.resize(length, 0);
        reader.read_exact(&mut body).ok()?;
        return Some(body);
    }
    loop {
        let mut head = String::new();
        reader.read_line(&mut head).ok()?;
        let length = usize::from_str_radix(head.trim(), 16).ok()?;
        let start = body.len();
        body.resize(start + length, 0);
        reader.read_exact(&mut body[start..]).ok()?;
        let mut end = String::new();
        reader.read_line(&mut end).ok()?;
        if length == 0 {
            return Some(body);
        }
    }
}
