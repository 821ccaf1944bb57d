//! Files that are named on the command line. A pipe or a device has no end and may be waited for; a folder is
//! none; and why a file cannot be read is said in plain words.

use std::fs::{self, OpenOptions};
use std::io::{Error, ErrorKind, Read};
use std::path::Path;

/// The largest such file, in bytes.
const LARGEST: u64 = 4 << 20;

/// What a file says.
///
/// # Errors
/// In words, with its path: it is not there, may not be read, or is no plain file.
pub fn text(path: &Path) -> Result<String, String> {
    let cannot = |why: String| format!("{} cannot be read: {why}", path.display());
    plain(path).map_err(cannot)?;
    let mut options = OpenOptions::new();
    options.read(true);
    // Should it have become a pipe since, nobody waits for its other end.
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        let flags = rustix::fs::OFlags::NONBLOCK.bits();
        options.custom_flags(i32::try_from(flags).unwrap_or_default());
    }
    let mut text = String::new();
    let file = options.open(path).map_err(|error| cannot(why(&error)))?;
    let read = file.take(LARGEST + 1).read_to_string(&mut text);
    read.map_err(|error| cannot(why(&error)))?;
    Ok(text)
}

/// Is it a plain file, and no endless one?
fn plain(path: &Path) -> Result<(), String> {
    let about = fs::metadata(path).map_err(|error| why(&error))?;
    if about.is_dir() {
        return Err("it is a folder".into());
    }
    if !about.is_file() {
        return Err("it is no plain file".into());
    }
    match about.len() > LARGEST {
        true => Err("it is larger than 4 MB".into()),
        false => Ok(()),
    }
}

/// Refuses what is no folder.
///
/// # Errors
/// In words, with its path.
pub fn folder(path: &Path) -> Result<(), String> {
    let why = match fs::metadata(path) {
        Ok(about) if about.is_dir() => return Ok(()),
        Ok(_) => "it is no folder".to_owned(),
        Err(error) => why(&error),
    };
    Err(format!("{} cannot be read: {why}", path.display()))
}

/// What is said of a file that cannot be written.
pub fn cannot_write(path: &Path, error: &Error) -> String {
    format!("{} cannot be written: {}", path.display(), why(error))
}

/// Why something about a file failed, without the words of the machine where there are plainer ones.
pub fn why(error: &Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "it is not there".into(),
        ErrorKind::PermissionDenied => "the rights to it are missing".into(),
        ErrorKind::InvalidData => "it is no text in UTF-8".into(),
        ErrorKind::AlreadyExists => "it is there already".into(),
        ErrorKind::NotADirectory => "a part of its path is no folder".into(),
        ErrorKind::IsADirectory => "it is a folder".into(),
        ErrorKind::StorageFull => "the disk is full".into(),
        _ => {
            let text = error.to_string();
            let plain = text.split(" (os error").next().unwrap_or_default();
            plain.to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(path: &Path, expected: &str) {
        let says = text(path).unwrap_err();
        assert_eq!(
            says,
            format!("{} cannot be read: {expected}", path.display())
        );
    }

    #[test]
    fn what_is_no_plain_file_is_refused_at_once() {
        let folder = tempfile::tempdir().unwrap();
        check(folder.path(), "it is a folder");
        check(&folder.path().join("none"), "it is not there");
        check(Path::new("/dev/zero"), "it is no plain file");
        let pipe = folder.path().join("pipe");
        let made = std::process::Command::new("mkfifo").arg(&pipe).status();
        assert!(made.unwrap().success());
        check(&pipe, "it is no plain file");
        let file = folder.path().join("file");
        fs::write(&file, [0xff, 0xfe]).unwrap();
        check(&file, "it is no text in UTF-8");
        check(&file.join("in"), "a part of its path is no folder");
        fs::write(&file, "x").unwrap();
        assert_eq!(text(&file).as_deref(), Ok("x"));
        assert!(super::folder(folder.path()).is_ok() && super::folder(&file).is_err());
    }
}
