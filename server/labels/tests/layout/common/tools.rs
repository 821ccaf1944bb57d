//! Other people's programs, run on files of ours, and their grey pictures read.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::Command;

use labels::Dpi;

/// What a program printed.
pub fn run(tool: &str, arguments: &[&OsStr]) -> String {
    String::from_utf8(output(tool, &[], arguments)).unwrap()
}

/// What a program writes to its standard output. A missing one fails the test.
pub fn output(tool: &str, environment: &[(&str, &str)], arguments: &[&OsStr]) -> Vec<u8> {
    let mut command = Command::new(tool);
    command.args(arguments).envs(environment.iter().copied());
    let output = match command.output() {
        Ok(output) => output,
        Err(error) => panic!("missing tool: {tool} ({error})"),
    };
    let complaint = String::from_utf8_lossy(&output.stderr).trim().to_owned();
    assert!(output.status.success(), "{tool} failed: {complaint}");
    output.stdout
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

/// A grey picture as drawn by another program.
pub struct Grey {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// From 0, black, row by row.
    pub light: Vec<u8>,
}

impl Grey {
    /// Reads a binary PGM: `P5`, width, height and 255, with a remark in between, then the pixels.
    pub fn read(pgm: &[u8]) -> Grey {
        let mut rest = pgm;
        let mut words = Vec::new();
        while words.len() < 4 {
            let end = rest
                .iter()
                .position(|byte| *byte == b'\n')
                .expect("a header");
            let line = std::str::from_utf8(&rest[..end]).unwrap();
            let remark = line.starts_with('#');
            words.extend(line.split_whitespace().filter(|_| !remark));
            rest = &rest[end + 1..];
        }
        assert_eq!((words[0], words[3]), ("P5", "255"));
        let [width, height] = [words[1], words[2]].map(|word| word.parse().unwrap());
        assert_eq!(rest.len(), width * height);
        let light = rest.to_vec();
        Grey {
            width,
            height,
            light,
        }
    }

    /// Whether a pixel is rather black than white.
    pub fn black(&self, x: usize, y: usize) -> bool {
        self.light[y * self.width + x] < 128
    }
}
