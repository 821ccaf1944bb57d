//! A house: the real binary, serving an own record, ended when the story ends.

use crate::midnight::wait_out_midnight;
use crate::{Caller, Wiretap};
use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, ChildStdout, Command, Stdio};

/// Which database a story runs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// A file of its own.
    Sqlite,
    /// A database of its own on the server that `TEST_DATABASE_URL` names.
    Postgres,
}

/// A running service.
pub struct House {
    /// Where the record is.
    pub database: String,
    /// What calls go to: `http://127.0.0.1:PORT`.
    pub address: String,
    /// What calls show: a manager's token, which may speak for anybody.
    pub token: String,
    child: Child,
    /// Kept open: what the service prints later has somewhere to go.
    _printed: BufReader<ChildStdout>,
    folder: tempfile::TempDir,
    engine: Engine,
    /// Is its record proven in the end?
    is_proven: bool,
}

/// The binary: `GAMBREL_BIN`, else the one that cargo built beside the tests.
pub fn binary() -> PathBuf {
    if let Some(path) = std::env::var_os("GAMBREL_BIN") {
        return path.into();
    }
    let mut path = std::env::current_exe().expect("a test knows where it is");
    while path
        .file_name()
        .is_some_and(|name| name != "debug" && name != "release")
    {
        path.pop();
    }
    let path = path.join("gambrel");
    assert!(
        path.exists(),
        "{} is missing: build it first with `cargo build -p gambrel`",
        path.display()
    );
    path
}

/// A database of its own, gone when the server is: PostgreSQL's are dropped with the test server.
pub fn fresh_database(engine: Engine, folder: &std::path::Path) -> String {
    match engine {
        Engine::Sqlite => folder.join("kitchen.db").display().to_string(),
        Engine::Postgres => {
            let server = std::env::var("TEST_DATABASE_URL")
                .expect("TEST_DATABASE_URL names no PostgreSQL server; tests/run starts one");
            let name = format!("t{}", crate::call::fresh_id().replace('-', ""));
            let made = Command::new("psql")
                .args([&server, "-q", "-c", &format!("CREATE DATABASE {name}")])
                .output()
                .expect("psql is missing: install postgresql-client");
            assert!(
                made.status.success(),
                "{}",
                String::from_utf8_lossy(&made.stderr)
            );
            let (front, _) = server.rsplit_once('/').expect("the URL ends in a database");
            format!("{front}/{name}")
        }
    }
}

impl House {
    /// A service over an empty record, not set up yet.
    pub fn empty(engine: Engine) -> House {
        House::empty_with(engine, &[])
    }

    /// The same, served with more options.
    pub fn empty_with(engine: Engine, flags: &[&str]) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(engine, folder.path());
        House::open(engine, folder, database, &[&["--create"], flags].concat())
    }

    /// The demo kitchen at 10:40.
    pub fn demo(engine: Engine) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(engine, folder.path());
        House::open(engine, folder, database, &["--demo"])
    }

    /// The demo kitchen on SQLite, served with more options.
    pub fn with(flags: &[&str]) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(Engine::Sqlite, folder.path());
        House::open(
            Engine::Sqlite,
            folder,
            database,
            &[&["--demo"], flags].concat(),
        )
    }

    /// The demo kitchen on PostgreSQL, and somebody who hears what it asks the database.
    pub fn tapped() -> (Wiretap, House) {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(Engine::Postgres, folder.path());
        let tap = Wiretap::on(&database);
        let database = tap.database.clone();
        let house = House::open(Engine::Postgres, folder, database, &["--demo"]);
        (tap, house)
    }

    /// A record that is there already, on a machine whose clock is set so; see [`House::restart_at`].
    pub fn over(engine: Engine, fill: impl FnOnce(&std::path::Path, &str), clock: &str) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(engine, folder.path());
        fill(folder.path(), &database);
        let started = launch(clocked(clock), &database, &[]);
        House::in_it(engine, folder, started, token(&database), database)
    }

    /// A service over a record that lies elsewhere.
    pub fn at(engine: Engine, database: &str, flags: &[&str]) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        House::open(engine, folder, database.to_owned(), flags)
    }

    /// A small kitchen: two farms, an abattoir, a supplier, places and products enough for a day.
    pub fn furnished(engine: Engine) -> House {
        wait_out_midnight();
        let house = House::empty(engine);
        house.furnish();
        house
    }

    /// The small kitchen in another build of the service.
    pub fn built(engine: Engine, build: PathBuf) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(engine, folder.path());
        let started = launch(Command::new(&build), &database, &["--create"]);
        let token = token_by(Command::new(build), &database);
        let house = House::in_it(engine, folder, started, token, database);
        house.furnish();
        house
    }

    /// An empty record on SQLite whose writes and syncs a preloaded shim journals.
    pub fn journaled(shim: &std::path::Path, journal: &std::path::Path) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(Engine::Sqlite, folder.path());
        // Whoever writes in the folder is journaled: the service, and the terminal that gives the token.
        let watched = || {
            let mut command = Command::new(binary());
            command
                .env("LD_PRELOAD", shim)
                .env("SHIM_FOLDER", folder.path())
                .env("SHIM_LOG", journal);
            command
        };
        let started = launch(watched(), &database, &["--create"]);
        let token = token_by(watched(), &database);
        House::in_it(Engine::Sqlite, folder, started, token, database)
    }

    /// The small kitchen in a service that logs every request into a file.
    pub fn logging(engine: Engine, log: std::fs::File) -> House {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let database = fresh_database(engine, folder.path());
        let mut command = Command::new(binary());
        command.stderr(log);
        let started = launch(command, &database, &["--create", "--log", "info"]);
        let house = House::in_it(engine, folder, started, token(&database), database);
        house.furnish();
        house
    }

    fn in_it(
        engine: Engine,
        folder: tempfile::TempDir,
        (child, _printed, address): Started,
        token: String,
        database: String,
    ) -> House {
        House {
            database,
            address,
            token,
            child,
            _printed,
            folder,
            engine,
            is_proven: true,
        }
    }

    fn open(engine: Engine, folder: tempfile::TempDir, database: String, flags: &[&str]) -> House {
        let started = start(&database, flags);
        House::in_it(engine, folder, started, token(&database), database)
    }

    /// The same over rows that were written by hand, for speed: they are in no chain.
    pub fn of_rows_by_hand(mut self) -> House {
        self.is_proven = false;
        self
    }

    /// Somebody who calls it.
    pub fn caller(&self) -> Caller {
        Caller::new(&self.address, &self.token)
    }

    /// Kills the service at once, as a power cut would end the process.
    pub fn kill(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }

    /// Asks the service to end, and waits until it has.
    ///
    /// # Panics
    /// It has not within two minutes.
    pub fn end(&mut self) {
        let pid = self.child.id().to_string();
        let asked = Command::new("kill").args(["-TERM", &pid]).status();
        assert!(asked.is_ok_and(|status| status.success()));
        crate::queue::until(|| self.child.try_wait().is_ok_and(|ended| ended.is_some()));
    }

    /// Starts it again over the same record.
    pub fn restart(&mut self) {
        self.restart_with(&[]);
    }

    /// The same, with more options.
    pub fn restart_with(&mut self, flags: &[&str]) {
        self.is_now(start(&self.database, flags));
    }

    /// Starts it again over the same record, at the same address: a tablet knows it by no other.
    pub fn restart_there(&mut self) {
        let there = self.address.trim_start_matches("http://").to_owned();
        self.is_now(start(&self.database, &["--listen", &there]));
    }

    fn is_now(&mut self, (child, printed, address): Started) {
        self._printed = printed;
        self.child = child;
        self.address = address;
    }

    /// Starts it again on a machine whose clock is set wrong, by Debian's libfaketime: `+2d`, or
    /// `@2020-01-01 00:00:00`.
    pub fn restart_at(&mut self, clock: &str) {
        self.is_now(launch(clocked(clock), &self.database, &[]));
    }

    /// The next line that the service prints.
    pub fn line(&mut self) -> String {
        let mut line = String::new();
        self._printed.read_line(&mut line).expect("it prints");
        line
    }

    /// The process id of the service.
    pub fn pid(&self) -> u32 {
        self.child.id()
    }

    /// A folder that lives as long as the house.
    pub fn folder(&self) -> &std::path::Path {
        self.folder.path()
    }

    /// Runs `gambrel check`; the digest comes back.
    ///
    /// # Panics
    /// The record is not sound.
    pub fn check(&self) -> String {
        let out = Command::new(binary())
            .args(["check", "--database", &self.database])
            .output()
            .expect("the binary runs");
        let text = String::from_utf8_lossy(&out.stdout).into_owned();
        assert!(
            out.status.success(),
            "gambrel check: {text}{}",
            String::from_utf8_lossy(&out.stderr)
        );
        text.lines()
            .find_map(|line| line.strip_prefix("digest "))
            .expect("check prints a digest")
            .to_owned()
    }
}

/// The process, what it prints, and where it is.
type Started = (Child, BufReader<ChildStdout>, String);

/// The binary on a machine whose clock is set wrong.
fn clocked(clock: &str) -> Command {
    let library = "/usr/$LIB/faketime/libfaketime.so.1";
    let found = ["/usr/lib/x86_64-linux-gnu", "/usr/lib/aarch64-linux-gnu"]
        .iter()
        .any(|folder| {
            std::path::Path::new(folder)
                .join("faketime/libfaketime.so.1")
                .exists()
        });
    assert!(
        found,
        "libfaketime is missing; tests/run installs it (Debian package faketime)"
    );
    let mut command = Command::new(binary());
    command.env("LD_PRELOAD", library).env("FAKETIME", clock);
    // The time is shown in the zone of the process.
    command.env("TZ", "UTC");
    command
}

/// A manager's token for the record, as the terminal gives it.
pub fn token(database: &str) -> String {
    token_by(Command::new(binary()), database)
}

fn token_by(mut command: Command, database: &str) -> String {
    let out = command
        .args([
            "token",
            "--database",
            database,
            "--name",
            "story",
            "--role",
            "manager",
        ])
        .output()
        .expect("the binary runs");
    let says = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "gambrel token: {says}");
    String::from_utf8_lossy(&out.stdout).trim().to_owned()
}

pub(crate) fn start(database: &str, flags: &[&str]) -> Started {
    launch(Command::new(binary()), database, flags)
}

fn launch(mut command: Command, database: &str, flags: &[&str]) -> Started {
    let anywhere = Some("--listen=127.0.0.1:0").filter(|_| !flags.contains(&"--listen"));
    let mut child = command
        .args(["serve", "--database", database, "--workers", "2"])
        .args(anywhere)
        .args(flags)
        .env_remove("GAMBREL_DATABASE")
        .env("GAMBREL_LOG", "error")
        .stdout(Stdio::piped())
        .spawn()
        .expect("the binary starts");
    let mut line = String::new();
    let mut printed = BufReader::new(child.stdout.take().expect("piped"));
    printed.read_line(&mut line).expect("it prints where it is");
    let address = line
        .split_whitespace()
        .find(|word| word.starts_with("http://") || word.starts_with("https://"));
    let address = address
        .unwrap_or_else(|| panic!("it says where it is, not {line:?}"))
        .trim_end_matches('/')
        .to_owned();
    (child, printed, address)
}

/// Every story ends with a sound record, and no process left.
impl Drop for House {
    fn drop(&mut self) {
        self.kill();
        if self.is_proven
            && !std::thread::panicking()
            && (self.engine == Engine::Postgres || std::path::Path::new(&self.database).exists())
        {
            self.check();
        }
    }
}
