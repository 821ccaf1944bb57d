//! Debian's `ippeveprinter`, an IPP Everywhere printer that is not ours, on loopback.
//!
//! It hands every label to a command, which here writes the job's name on the "paper" and takes its
//! time. What is on the paper came out.

use std::collections::BTreeMap;
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// Sizes in hundredths of a millimetre: those of the shipped labels.
const ATTRIBUTES: &str = "\
ATTR collection media-size-supported {MEMBER integer x-dimension 5100 MEMBER integer y-dimension 5100},{MEMBER integer x-dimension 6200 MEMBER integer y-dimension 10000},{MEMBER integer x-dimension 6200 MEMBER integer y-dimension 15000},{MEMBER integer x-dimension 6200 MEMBER integer y-dimension 18000}
ATTR resolution printer-resolution-supported 300dpi
ATTR mimeMediaType document-format-supported application/pdf,image/pwg-raster
";

/// The real printer.
pub struct RealPrinter {
    folder: tempfile::TempDir,
    shim: PathBuf,
    port: u16,
    process: Option<Child>,
}

impl RealPrinter {
    /// A printer that needs so many milliseconds for a label.
    ///
    /// # Panics
    /// `ippeveprinter` or a C compiler is missing.
    pub fn new(milliseconds: u32) -> RealPrinter {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let shim = folder.path().join("undiscovered.so");
        let source = concat!(env!("CARGO_MANIFEST_DIR"), "/shim/undiscovered.c");
        let built = Command::new("cc")
            .args(["-shared", "-fPIC", "-o", path(&shim), source])
            .status();
        assert!(
            built.is_ok_and(|status| status.success()),
            "the shim does not build"
        );
        std::fs::create_dir(folder.path().join("spool")).expect("a folder");
        std::fs::write(folder.path().join("label.conf"), ATTRIBUTES).expect("a file");
        let paper = folder.path().join("paper");
        std::fs::write(&paper, "").expect("a file");
        let script = format!(
            "#!/bin/sh\necho \"$IPP_JOB_NAME\" >>'{}'\nsleep {}.{:03}\n",
            path(&paper),
            milliseconds / 1000,
            milliseconds % 1000
        );
        let command = folder.path().join("print");
        std::fs::write(&command, script).expect("a file");
        let runs = Command::new("chmod").args(["+x", path(&command)]).status();
        assert!(runs.is_ok_and(|status| status.success()));
        let mut printer = RealPrinter {
            folder,
            shim,
            port: 0,
            process: None,
        };
        printer.switch_on();
        printer
    }

    /// Its address for the list of printers.
    pub fn address(&self) -> String {
        format!("ipp://localhost:{}/ipp/print", self.port)
    }

    /// Starts it; it remembers nothing but its paper and its spool.
    ///
    /// # Panics
    /// It does not start.
    pub fn switch_on(&mut self) {
        let folder = self.folder.path().to_owned();
        for _ in 0..5 {
            if self.port == 0 {
                let free = TcpListener::bind("127.0.0.1:0").expect("a free port");
                self.port = free.local_addr().expect("bound").port();
            }
            let log = std::fs::File::create(folder.join("log")).expect("a file");
            // A file that is too large is to be an error, not the end: see `limit_spool`.
            let process = Command::new("env")
                .arg("--ignore-signal=XFSZ")
                .arg(format!("LD_PRELOAD={}", path(&self.shim)))
                .arg("ippeveprinter")
                .args(["-a", path(&folder.join("label.conf"))])
                .args(["-p", &self.port.to_string(), "-n", "localhost"])
                .args(["-d", path(&folder.join("spool")), "-k"])
                .args(["-c", path(&folder.join("print")), "Bench"])
                .stdout(Stdio::null())
                .stderr(log)
                .spawn()
                .expect("env runs");
            self.process = Some(process);
            let give_up = Instant::now() + Duration::from_secs(10);
            while Instant::now() < give_up {
                if TcpStream::connect(("127.0.0.1", self.port)).is_ok() {
                    return;
                }
                std::thread::sleep(Duration::from_millis(20));
            }
            // Somebody took the port: another, if nobody knows this one yet.
            self.switch_off();
            self.port = 0;
        }
        let log = std::fs::read_to_string(folder.join("log")).unwrap_or_default();
        panic!("ippeveprinter (Debian package cups-ipp-utils) does not start: {log}");
    }

    /// Kills it at once, as a pulled plug would.
    pub fn switch_off(&mut self) {
        if let Some(mut process) = self.process.take() {
            let _ = process.kill();
            let _ = process.wait();
        }
    }

    /// No file in its spool may grow beyond so many bytes, as if its memory were full; `None`: as
    /// large as it likes.
    ///
    /// # Panics
    /// `prlimit` is missing.
    pub fn limit_spool(&self, bytes: Option<u32>) {
        let pid = self.process.as_ref().expect("it is on").id().to_string();
        let soft = bytes.map_or("unlimited".to_owned(), |bytes| bytes.to_string());
        let limited = Command::new("prlimit")
            .args(["--pid", &pid, &format!("--fsize={soft}:unlimited")])
            .status();
        assert!(
            limited.is_ok_and(|status| status.success()),
            "prlimit: install util-linux"
        );
    }

    /// The names of the jobs that came out, in order.
    pub fn paper(&self) -> Vec<String> {
        let paper = std::fs::read_to_string(self.folder.path().join("paper"));
        paper
            .expect("the paper")
            .lines()
            .map(str::to_owned)
            .collect()
    }

    /// How often each print came out, by its number.
    pub fn copies(&self) -> BTreeMap<i64, usize> {
        let mut copies = BTreeMap::new();
        for token in self.paper() {
            *copies.entry(crate::printer::print_of(&token)).or_default() += 1;
        }
        copies
    }

    /// The documents that it keeps, by the number of the print.
    pub fn spool(&self) -> Vec<(i64, PathBuf)> {
        let files = std::fs::read_dir(self.folder.path().join("spool")).expect("the spool");
        let paths = files.map(|file| file.expect("a file").path());
        let mut spool: Vec<(i64, PathBuf)> = paths
            .filter_map(|path| {
                // Beside each is what the command said of it.
                (path.extension()? == "pdf").then_some(())?;
                let name = path.file_stem()?.to_str()?;
                let token = &name[name.find("gambrel-")?..];
                Some((crate::printer::print_of(token), path))
            })
            .collect();
        spool.sort();
        spool
    }
}

impl Drop for RealPrinter {
    fn drop(&mut self) {
        self.switch_off();
    }
}

fn path(path: &Path) -> &str {
    path.to_str().expect("the path is UTF-8")
}
