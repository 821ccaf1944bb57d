//! What the pages for setting it up say to type is typed, line by line: each command does what the page says.

use super::least_rights;
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use stories::house::binary;
use stories::{Engine, House};

/// The lines of a page that begin with the program, in the blocks marked as a shell's.
fn commands(page: &str) -> Vec<String> {
    let blocks = page.split("```sh\n").skip(1);
    let lines = blocks.flat_map(|block| block.split("```").next().unwrap_or_default().lines());
    lines.map(str::to_owned).collect()
}

/// Services that a page has started.
struct Started(Vec<Child>);

impl Started {
    fn end(&mut self) {
        for mut service in self.0.drain(..) {
            let _ = service.kill();
            let _ = service.wait();
        }
    }
}

impl Drop for Started {
    fn drop(&mut self) {
        self.end();
    }
}

/// Types a page, with its places put into a folder of ours; what is done on the tablet comes before the first copy.
fn typed(page: &str, places: &[(&str, String)], folder: &std::path::Path, set_up: impl Fn()) {
    let mut services = Started(Vec::new());
    let all = commands(page);
    assert!(all.len() > 4, "{all:?}");
    for line in all {
        let mut words: Vec<String> = line.split(' ').map(str::to_owned).collect();
        for word in &mut words {
            for (theirs, ours) in places {
                *word = word.replace(theirs, ours);
            }
            if word.contains("gambrel-NEWEST.db") {
                let mut copies: Vec<_> = std::fs::read_dir(folder.join("copies"))
                    .unwrap()
                    .map(|copy| copy.unwrap().path())
                    .filter(|path| path.extension().is_some_and(|ending| ending == "db"))
                    .collect();
                copies.sort();
                *word = copies.pop().unwrap().display().to_string();
            }
        }
        assert_eq!(words.remove(0), "gambrel", "{line}");
        if words[0] == "backup" {
            set_up(); // what the page says is done on the tablet
        }
        let mut command = Command::new(binary());
        command.args(&words);
        if words[0] == "serve" {
            let mut service = command
                .stdout(Stdio::piped())
                .stderr(Stdio::null())
                .spawn()
                .unwrap();
            let mut said = BufReader::new(service.stdout.take().unwrap());
            services.0.push(service);
            let mut told = String::new();
            said.read_line(&mut told).unwrap();
            assert!(told.starts_with("Gambrel is at "), "{line}: {told}");
            told.clear();
            said.read_line(&mut told).unwrap();
            assert!(told.contains("Sign in as Manager"), "{line}: {told}");
            continue;
        }
        let out = command.output().unwrap();
        let says = String::from_utf8_lossy(&out.stderr);
        assert!(out.status.success(), "{line}: {says}");
    }
}

#[test]
fn one_kitchen() {
    let folder = tempfile::tempdir().unwrap();
    let within = |name: &str| folder.path().join(name).display().to_string();
    for name in ["record", "copies"] {
        std::fs::create_dir(folder.path().join(name)).unwrap();
    }
    let places = [
        ("/etc/gambrel", within("tls")),
        ("/var/lib/gambrel", within("record")),
        ("/mnt/copies", within("copies")),
        ("0.0.0.0:8443", "127.0.0.1:0".into()),
    ];
    let record = folder.path().join("record/gambrel.db");
    let page = include_str!("../../../deploy/one-kitchen.md");
    typed(page, &places, folder.path(), || {
        House::at(Engine::Sqlite, record.to_str().unwrap(), &[]).furnish();
    });
}

#[test]
fn a_group() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("copies")).unwrap();
    let [_, owner, service] = least_rights::made();
    let role = least_rights::role_of(&service).to_owned();
    let places = [
        ("postgres://gambrel_owner@db.example/gambrel", owner),
        ("postgres://gambrel@db.example/gambrel", service),
        (
            "/mnt/copies",
            folder.path().join("copies").display().to_string(),
        ),
        ("127.0.0.1:8080", "127.0.0.1:0".into()),
    ];
    // The name of the service's role stands alone as a word.
    let page = include_str!("../../../deploy/group.md");
    let page = page.replace(
        "--service-role gambrel\n",
        &format!("--service-role {role}\n"),
    );
    typed(&page, &places, folder.path(), || ());
}
