//! A copy under lock. Everything about the cipher is a library's: ChaCha20-Poly1305 with a nonce of 24 bytes, in pieces
//! by the construction STREAM, so that no piece can be left out, moved or cut off unnoticed.
//!
//! A locked file is: the line `gambrel locked copy 1`, the four bytes by which its key is known, 19 bytes of chance,
//! then pieces of 65,536 bytes, each with 16 bytes of proof behind it; the last one may be shorter, and may be empty.

use super::key::{Key, shown};
use crate::given::{cannot_write, why};
use crate::world;
use aead_stream::{DecryptorBE32, EncryptorBE32};
use chacha20poly1305::XChaCha20Poly1305;
use chacha20poly1305::aead::KeyInit;
use std::fs::File;
use std::io::{BufReader, BufWriter, Read, Write};
use std::path::Path;

/// What every locked file begins with.
const FORM: &[u8; 22] = b"gambrel locked copy 1\n";
/// How many bytes of the nonce are drawn; the rest counts.
const DRAWN: usize = 19;
/// How many bytes are a piece.
const PIECE: usize = 64 << 10;
/// How many bytes of proof stand behind each.
const PROOF: usize = 16;

/// Is it a locked copy, as far as its beginning says?
pub fn is_locked(path: &Path) -> bool {
    let mut begins = [0; FORM.len()];
    let read = File::open(path).and_then(|mut file| file.read_exact(&mut begins));
    read.is_ok() && &begins == FORM
}

/// Writes a file, locked, into a new one.
///
/// # Errors
/// In words: one of them cannot be read or written.
pub fn lock(from: &Path, to: &Path, key: &Key) -> Result<(), String> {
    let drawn: [u8; DRAWN] = world::chance()?;
    let unread = |error: std::io::Error| format!("{}: {}", from.display(), why(&error));
    let unwritten = |error: std::io::Error| cannot_write(to, &error);
    let mut file = BufReader::new(File::open(from).map_err(unread)?);
    let mut out = BufWriter::new(File::create_new(to).map_err(unwritten)?);
    for head in [&FORM[..], &key.mark(), &drawn] {
        out.write_all(head).map_err(unwritten)?;
    }
    let cipher = XChaCha20Poly1305::new(&key.0.into());
    let mut stream = EncryptorBE32::from_aead(cipher, &drawn.into());
    let mut piece = filled(&mut file, PIECE).map_err(unread)?;
    loop {
        let next = match piece.len() < PIECE {
            true => Vec::new(),
            false => filled(&mut file, PIECE).map_err(unread)?,
        };
        // A full piece with nothing behind it is the last one.
        if next.is_empty() {
            break;
        }
        stream
            .encrypt_next_in_place(b"", &mut piece)
            .map_err(|_| too_long(from))?;
        out.write_all(&piece).map_err(unwritten)?;
        piece = next;
    }
    stream
        .encrypt_last_in_place(b"", &mut piece)
        .map_err(|_| too_long(from))?;
    out.write_all(&piece).map_err(unwritten)?;
    let file = out.into_inner().map_err(|error| error.into_error());
    file.and_then(|file| file.sync_all()).map_err(unwritten)
}

/// Writes what is in a locked file into a new one.
///
/// # Errors
/// In words: it is another key's, it was changed or cut, or a file cannot be read or written. What was written then
/// is no copy.
pub fn unlock(from: &Path, to: &Path, key: &Key) -> Result<(), String> {
    let shown_from = from.display();
    let unread = |error: std::io::Error| format!("{shown_from}: {}", why(&error));
    let unwritten = |error: std::io::Error| cannot_write(to, &error);
    let changed = || {
        format!(
            "{shown_from} was changed or cut short since it was made: it is no copy any more. Take another one."
        )
    };
    let mut file = BufReader::new(File::open(from).map_err(unread)?);
    let head = filled(&mut file, FORM.len() + 4 + DRAWN).map_err(unread)?;
    let (form, rest) = head.split_at_checked(FORM.len()).ok_or_else(changed)?;
    let (mark, drawn) = rest.split_at_checked(4).ok_or_else(changed)?;
    let drawn: [u8; DRAWN] = drawn.try_into().map_err(|_| changed())?;
    if form != FORM {
        return Err(format!("{shown_from} is no locked copy"));
    }
    if mark != key.mark() {
        return Err(format!(
            "{shown_from} was locked with the key {}, and this is the key {}. Look for the other one: the last group of its line is {}. Without it nobody can open this copy; nothing was changed.",
            shown(mark),
            shown(&key.mark()),
            shown(mark)
        ));
    }
    let mut out = BufWriter::new(File::create_new(to).map_err(unwritten)?);
    let cipher = XChaCha20Poly1305::new(&key.0.into());
    let mut stream = DecryptorBE32::from_aead(cipher, &drawn.into());
    let mut piece = filled(&mut file, PIECE + PROOF).map_err(unread)?;
    loop {
        let next = match piece.len() < PIECE + PROOF {
            true => Vec::new(),
            false => filled(&mut file, PIECE + PROOF).map_err(unread)?,
        };
        if next.is_empty() {
            break;
        }
        stream
            .decrypt_next_in_place(b"", &mut piece)
            .map_err(|_| changed())?;
        out.write_all(&piece).map_err(unwritten)?;
        piece = next;
    }
    stream
        .decrypt_last_in_place(b"", &mut piece)
        .map_err(|_| changed())?;
    out.write_all(&piece).map_err(unwritten)?;
    let file = out.into_inner().map_err(|error| error.into_error());
    file.and_then(|file| file.sync_all()).map_err(unwritten)
}

/// The next so many bytes; fewer at the end.
fn filled(file: &mut impl Read, most: usize) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::with_capacity(most + PROOF);
    file.take(most as u64).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// More pieces than can be counted: 256 TB.
fn too_long(path: &Path) -> String {
    format!("{} is too long to be locked", path.display())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    #[test]
    fn whatever_its_length_a_file_comes_back_and_no_change_goes_unnoticed() {
        let folder = tempfile::tempdir().unwrap();
        let path = |name: &str| folder.path().join(name);
        let (key, other) = (Key([7; 32]), Key([8; 32]));
        let opened = |key: &Key| {
            let _ = fs::remove_file(path("back"));
            unlock(&path("locked"), &path("back"), key)
        };
        for length in [0, 1, PIECE - 1, PIECE, PIECE + 1, 3 * PIECE, 3 * PIECE + 17] {
            let bytes: Vec<u8> = (0..length).map(|nth| (nth % 251) as u8).collect();
            fs::write(path("plain"), &bytes).unwrap();
            let _ = fs::remove_file(path("locked"));
            lock(&path("plain"), &path("locked"), &key).unwrap();
            assert!(is_locked(&path("locked")) && !is_locked(&path("plain")));
            opened(&key).unwrap();
            assert!(fs::read(path("back")).unwrap() == bytes, "{length}");
            let says = opened(&other).unwrap_err();
            assert!(says.contains(&shown(&key.mark())), "{says}");
            let locked = fs::read(path("locked")).unwrap();
            let begin = FORM.len() + 4 + DRAWN;
            let mut changes = vec![
                locked[..locked.len() - 1].to_vec(),
                [&locked[..], b"x"].concat(),
                locked[..begin].to_vec(),
            ];
            let mut turned = locked.clone();
            turned[locked.len() - 1] ^= 1;
            changes.push(turned);
            if length >= 2 * PIECE {
                // Cut after a whole piece, and two pieces in each other's place.
                changes.push(locked[..begin + PIECE + PROOF].to_vec());
                let mut moved = locked.clone();
                let (one, two) = (begin..begin + PIECE + PROOF, begin + PIECE + PROOF);
                moved.copy_within(two..two + PIECE + PROOF, begin);
                moved[two..two + PIECE + PROOF].copy_from_slice(&locked[one]);
                changes.push(moved);
            }
            for changed in changes {
                fs::write(path("locked"), &changed).unwrap();
                assert!(opened(&key).is_err(), "{length}: {} bytes", changed.len());
            }
        }
    }
}
