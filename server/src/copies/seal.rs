//! The seal of a copy that lies open: the SHA-256 of its bytes, written when it was proven, in a file beside it that
//! `sha256sum --check` reads. Whoever has the same bytes has what was proven. A copy under lock needs none: the lock
//! gives back what was put in, or nothing.

use crate::given::{cannot_write, why};
use sha2::{Digest, Sha256};
use std::fs::{self, File};
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::mpsc;
use std::{panic, thread};

/// What the file of a seal ends in, behind the name of its copy.
pub const ENDING: &str = ".sha256";
/// How many bytes are read at once.
const AT_ONCE: usize = 1 << 18;
/// And how many are copied before they are read back.
const PIECE: u64 = 1 << 23;

/// A digest.
pub type Sum = [u8; 32];

/// The file of a copy's seal.
pub fn of(copy: &Path) -> PathBuf {
    PathBuf::from(format!("{}{ENDING}", copy.display()))
}

/// The digest of a file.
pub fn sum(path: &Path) -> Result<Sum, String> {
    let cannot = |error: std::io::Error| format!("{}: {}", path.display(), why(&error));
    let mut file = File::open(path).map_err(cannot)?;
    let (mut hash, mut bytes) = (Sha256::new(), vec![0; AT_ONCE]);
    loop {
        match file.read(&mut bytes).map_err(cannot)? {
            0 => return Ok(hash.finalize().into()),
            read => hash.update(&bytes[..read]),
        }
    }
}

/// Copies a file into a new one, and tells the digest of what lies in that: it is read back piece by piece while the
/// next piece is copied, by the system itself, which is faster than through our hands.
pub fn copied(from: &Path, to: &Path) -> Result<Sum, String> {
    let cannot =
        |path: &Path, error: std::io::Error| format!("{}: {}", path.display(), why(&error));
    let mut source = File::open(from).map_err(|error| cannot(from, error))?;
    let mut target = File::create_new(to).map_err(|error| cannot(to, error))?;
    let mut back = File::open(to).map_err(|error| cannot(to, error))?;
    let (pieces, there) = mpsc::channel::<u64>();
    thread::scope(|scope| {
        let reader = scope.spawn(move || {
            let (mut hash, mut bytes) = (Sha256::new(), vec![0; AT_ONCE]);
            for piece in there {
                let mut piece = Read::by_ref(&mut back).take(piece);
                loop {
                    match piece.read(&mut bytes)? {
                        0 => break,
                        read => hash.update(&bytes[..read]),
                    }
                }
                if piece.limit() > 0 {
                    return Err(ErrorKind::UnexpectedEof.into());
                }
            }
            Ok(hash.finalize().into())
        });
        let mut copied = || loop {
            match io::copy(&mut Read::by_ref(&mut source).take(PIECE), &mut target)? {
                0 => return Ok(()),
                // Where it cannot be read back, that is told at the end.
                piece => drop(pieces.send(piece)),
            }
        };
        let written = copied();
        drop(pieces);
        let sum = reader
            .join()
            .unwrap_or_else(|panic| panic::resume_unwind(panic));
        written.and(sum).map_err(|error| cannot(to, error))
    })
}

/// Writes the seal of a copy that is about to get its name.
pub fn put(copy: &Path, sum: &Sum) -> Result<(), String> {
    let name = copy.file_name().unwrap_or_default().to_string_lossy();
    let digits: String = sum.iter().map(|byte| format!("{byte:02x}")).collect();
    let path = of(copy);
    let cannot = |error: std::io::Error| cannot_write(&path, &error);
    let mut file = File::create(&path).map_err(cannot)?;
    let line = format!("{digits}  {name}\n");
    file.write_all(line.as_bytes()).map_err(cannot)?;
    file.sync_all().map_err(cannot)
}

/// The seal of a copy, if it has one that reads.
pub fn read(copy: &Path) -> Option<Sum> {
    let text = fs::read_to_string(of(copy)).ok()?;
    let digits = text.split_whitespace().next()?;
    let mut sum = [0; 32];
    for (nth, byte) in sum.iter_mut().enumerate() {
        *byte = u8::from_str_radix(digits.get(2 * nth..2 * nth + 2)?, 16).ok()?;
    }
    (digits.len() == 64).then_some(sum)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_copied_is_read_back_whole() {
        let folder = tempfile::tempdir().unwrap();
        let (from, to) = (folder.path().join("from"), folder.path().join("to"));
        for length in [0, 1, PIECE as usize, 2 * PIECE as usize + 17] {
            let bytes: Vec<u8> = (0..length).map(|nth| (nth % 251) as u8).collect();
            fs::write(&from, &bytes).unwrap();
            let found = copied(&from, &to).unwrap();
            assert_eq!(found, sum(&from).unwrap(), "{length}");
            assert_eq!(fs::read(&to).unwrap(), bytes, "{length}");
            assert!(copied(&from, &to).is_err(), "nothing is written over");
            fs::remove_file(&to).unwrap();
        }
    }

    #[test]
    fn a_seal_is_of_the_very_bytes() {
        let folder = tempfile::tempdir().unwrap();
        let copy = folder.path().join("gambrel-20260626T100007Z.db");
        fs::write(&copy, "abc").unwrap();
        let digest = sum(&copy).unwrap();
        // The example of the standard.
        assert_eq!(digest[..4], [0xba, 0x78, 0x16, 0xbf]);
        assert_eq!(read(&copy), None);
        put(&copy, &digest).unwrap();
        assert_eq!(read(&copy), Some(digest));
        for wrong in ["", "ba7816bf", "zz", &"é".repeat(32), &"0".repeat(66)] {
            fs::write(of(&copy), wrong).unwrap();
            assert_eq!(read(&copy), None, "{wrong}");
        }
    }
}
