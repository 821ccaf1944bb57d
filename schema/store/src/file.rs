//! The file of a record on SQLite: is it still the one that was opened, and is it still a record?
//!
//! SQLite itself does not look again at a file that it has open: what was put over it is noticed when a page
//! of it is read, which may be long after. So its first bytes are looked at before every deed.

use crate::error::{Error, Result};
use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

/// The beginning of every file of SQLite, as its format is published: what it is, and the size of a page.
const HEADER: usize = 100;
/// What every such file begins with.
const MAGIC: &[u8] = b"SQLite format 3\0";

/// A file that holds a record. It stays open until nobody needs it: the locks of a file are its process's,
/// and closing it would drop those that SQLite holds.
#[derive(Debug)]
pub(crate) struct RecordFile {
    path: PathBuf,
    opened: Option<FileId>,
    file: Option<File>,
    /// The bytes that never change while it is open.
    fixed: Option<[u8; 8]>,
    /// The longest that it was seen. It never gets shorter; what its head says of its length is ahead of it while
    /// SQLite copies the log into it.
    longest: AtomicU64,
}

/// Which file it is, whatever its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct FileId(u64, u64);

impl FileId {
    /// The file at a path, if there is one.
    #[cfg(unix)]
    fn at(path: &Path) -> Option<FileId> {
        use std::os::unix::fs::MetadataExt;
        let about = std::fs::metadata(path).ok()?;
        Some(FileId(about.dev(), about.ino()))
    }

    /// Elsewhere a file that is open cannot be taken away.
    #[cfg(not(unix))]
    fn at(path: &Path) -> Option<FileId> {
        path.exists().then_some(FileId(0, 0))
    }
}

impl RecordFile {
    /// The file at a path, which has just been opened and is sound.
    pub(crate) fn at(path: &Path) -> RecordFile {
        let file = File::open(path).ok();
        let header = file.as_ref().and_then(header);
        RecordFile {
            path: path.to_owned(),
            opened: FileId::at(path),
            fixed: header.as_ref().map(fixed),
            longest: AtomicU64::new(file.as_ref().map_or(0, length)),
            file,
        }
    }

    /// Its path.
    pub(crate) fn path(&self) -> &Path {
        &self.path
    }

    /// Waits until what was written into it so far is on the disk.
    ///
    /// # Errors
    /// The disk fails.
    pub(crate) fn send(&self) -> io::Result<()> {
        self.file.as_ref().map_or(Ok(()), File::sync_data)
    }

    /// Refuses a file that is not the one that was opened, or was emptied, cut or written over since: a deed in
    /// it would be answered and lost.
    ///
    /// # Errors
    /// Gone, emptied or damaged.
    pub(crate) fn check(&self) -> Result<()> {
        let path = self.path.display();
        match (self.opened, FileId::at(&self.path)) {
            (None, _) => return Ok(()),
            (Some(opened), Some(now)) if opened == now => {}
            (Some(_), None) => return Err(Error::Gone(format!("{path} is not there"))),
            (Some(_), Some(_)) => return Err(Error::Gone(format!("{path} is another file"))),
        }
        let (Some(file), Some(known)) = (&self.file, &self.fixed) else {
            return Ok(());
        };
        // Cut to nothing under us; what the log beside it still holds hides that for a while.
        let known_length = self.longest.load(Ordering::Relaxed);
        let long = length(file);
        self.longest.fetch_max(long, Ordering::Relaxed);
        if long == 0 {
            return Err(Error::Emptied(format!("{path} is empty")));
        }
        let header = header(file).filter(|header| fixed(header) == *known);
        header.ok_or_else(|| Error::Damaged(format!("{path} was written over")))?;
        if long < known_length {
            return Err(Error::Damaged(format!("{path} was cut short")));
        }
        Ok(())
    }
}

fn length(file: &File) -> u64 {
    file.metadata().map_or(0, |about| about.len())
}

/// The first bytes of a file, if they are those of SQLite.
fn header(file: &File) -> Option<[u8; HEADER]> {
    let mut bytes = [0; HEADER];
    #[cfg(unix)]
    std::os::unix::fs::FileExt::read_exact_at(file, &mut bytes, 0).ok()?;
    #[cfg(not(unix))]
    {
        use std::io::{Read, Seek};
        let mut file = file;
        file.rewind().ok()?;
        file.read_exact(&mut bytes).ok()?;
    }
    bytes.starts_with(MAGIC).then_some(bytes)
}

/// The size of a page, how it is read and written, the bytes kept free and the three fractions.
fn fixed(header: &[u8; HEADER]) -> [u8; 8] {
    std::array::from_fn(|nth| header[16 + nth])
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::{Seek, SeekFrom, Write};

    fn folder(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("gambrel-{name}-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        folder
    }

    /// The header of an empty database of two pages of 4,096 bytes.
    fn sound() -> Vec<u8> {
        let mut bytes = vec![0; 8_192];
        bytes[..16].copy_from_slice(MAGIC);
        bytes[16..24].copy_from_slice(&[16, 0, 2, 2, 0, 64, 32, 32]);
        bytes[24..28].copy_from_slice(&[0, 0, 0, 9]);
        bytes[28..32].copy_from_slice(&[0, 0, 0, 2]);
        bytes[92..96].copy_from_slice(&[0, 0, 0, 9]);
        bytes
    }

    fn check(name: &str, change: impl FnOnce(&Path, &mut File), expected: Option<&str>) {
        let folder = folder(name);
        let path = folder.join("kitchen.db");
        std::fs::write(&path, sound()).unwrap();
        let record = RecordFile::at(&path);
        record.check().unwrap();
        change(&path, &mut File::options().write(true).open(&path).unwrap());
        let says = record.check().err().map(|error| error.to_string());
        match expected {
            Some(expected) => assert!(says.as_ref().unwrap().contains(expected), "{says:?}"),
            None => assert_eq!(says, None),
        }
        std::fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn what_happens_to_a_file_is_noticed() {
        check("same", |_, _| {}, None);
        let grows = |_: &Path, file: &mut File| file.set_len(40_960).unwrap();
        check("grows", grows, None);
        let over = |_: &Path, file: &mut File| file.write_all(&[0xa7; 8_192]).unwrap();
        check("over", over, Some("written over"));
        let other = |_: &Path, file: &mut File| {
            file.seek(SeekFrom::Start(16)).unwrap();
            file.write_all(&[8, 0]).unwrap();
        };
        check("other", other, Some("written over"));
        let cut = |_: &Path, file: &mut File| file.set_len(4_096).unwrap();
        check("cut", cut, Some("cut short"));
        let emptied = |_: &Path, file: &mut File| file.set_len(0).unwrap();
        check("emptied", emptied, Some("is empty"));
        let gone = |path: &Path, _: &mut File| std::fs::remove_file(path).unwrap();
        check("gone", gone, Some("is not there"));
        let another = |path: &Path, _: &mut File| {
            std::fs::rename(path, path.with_extension("old")).unwrap();
            std::fs::write(path, sound()).unwrap();
        };
        check("another", another, Some("is another file"));
    }
}
