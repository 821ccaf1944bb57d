//! Other people's programs, run on files of ours. A missing one fails the test.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::Command;

use labels::Dpi;

/// What a program printed.
pub fn run(tool: &str, arguments: &[&OsStr]) -> String {
    let output = match Command::new(tool).args(arguments).output() {
        Ok(output) => output,
        Err(error) => panic!("missing tool: {tool} ({error})"),
    };
    let complaint = String::from_utf8_lossy(&output.stderr).trim().to_owned();
    assert!(output.status.success(), "{tool} failed: {complaint}");
    String::from_utf8(output.stdout).unwrap()
}

/// What a Python program printed: the one named by `GAMBREL_PYTHON`, else `python3`.
pub fn python(program: &str, arguments: &[&OsStr]) -> String {
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    run(
        &python,
        &[&["-c".as_ref(), program.as_ref()], arguments].concat(),
    )
}

/// A file in the folder for tests.
pub fn save(name: &str, bytes: &[u8]) -> PathBuf {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&file, bytes).unwrap();
    file
}

/// The page as a printer of that kind would have it.
pub fn picture(file: &Path, dpi: Dpi) -> PathBuf {
    let (stem, number) = (file.with_extension(""), dpi.number().to_string());
    let options = ["-r", &number, "-gray", "-png", "-singlefile"].map(OsStr::new);
    run(
        "pdftoppm",
        &[&options[..], &[file.as_os_str(), stem.as_os_str()]].concat(),
    );
    file.with_extension("png")
}
