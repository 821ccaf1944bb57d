//! Every parser that takes bytes from outside: codes, cartons' bars, printers' answers, templates, what a label
//! says, house files, options, certificates, bodies, forms, addresses, languages, tables, photos, papers, anchors, archives. Each is given its corpus as it is, and the corpus turned about; none of it may panic, and
//! what is taken must be the same when it is written and read again.
//!
//! Something new that broke a parser is put into `corpus` as a file: then it is tried every time.

use gambrel::printing::capabilities::Capabilities;
use gambrel::printing::line::read_answer;
use ipp::prelude::DelimiterTag;
use proptest::prelude::*;
use proptest::sample::Index;
use std::net::IpAddr;
use std::path::Path;

/// The files of one parser.
fn corpus(name: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/parsers/corpus");
    let files = std::fs::read_dir(folder.join(name)).expect("the corpus is there");
    let mut files: Vec<_> = files.map(|file| file.expect("a file").path()).collect();
    files.sort();
    assert!(files.len() > 1, "{name}");
    let read = |path| std::fs::read(path).expect("a file");
    files.into_iter().map(read).collect()
}

/// What is done to a file of the corpus.
#[derive(Debug, Clone)]
enum Turn {
    Byte(Index, u8),
    Cut(Index),
    Drop(Index, u8),
    Twice(Index, u8),
    Put(Index, Vec<u8>),
}

fn turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        (any::<Index>(), any::<u8>()).prop_map(|(at, byte)| Turn::Byte(at, byte)),
        any::<Index>().prop_map(Turn::Cut),
        (any::<Index>(), 1_u8..40).prop_map(|(at, many)| Turn::Drop(at, many)),
        (any::<Index>(), 1_u8..40).prop_map(|(at, many)| Turn::Twice(at, many)),
        (any::<Index>(), prop::collection::vec(any::<u8>(), 0..12))
            .prop_map(|(at, more)| Turn::Put(at, more)),
    ]
}

fn turned(mut bytes: Vec<u8>, turns: Vec<Turn>) -> Vec<u8> {
    for turn in turns {
        let at = |index: Index| index.index(bytes.len() + 1);
        match turn {
            Turn::Byte(index, byte) => {
                let at = at(index);
                if let Some(one) = bytes.get_mut(at) {
                    *one = byte;
                }
            }
            Turn::Cut(index) => bytes.truncate(at(index)),
            Turn::Drop(index, many) => {
                let from = at(index);
                bytes.drain(from..bytes.len().min(from + usize::from(many)));
            }
            Turn::Twice(index, many) => {
                let from = at(index);
                let part = bytes[from..bytes.len().min(from + usize::from(many))].to_vec();
                bytes.splice(from..from, part);
            }
            Turn::Put(index, more) => {
                let at = at(index);
                bytes.splice(at..at, more);
            }
        }
    }
    bytes
}

/// Tries a parser with its corpus, and with that turned about.
fn hold(name: &str, cases: u32, parse: impl Fn(&[u8])) {
    let files = corpus(name);
    files.iter().for_each(|file| parse(file));
    let any = (
        prop::sample::select(files),
        prop::collection::vec(turn(), 0..6),
    );
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    });
    let done = runner.run(&any, |(file, turns)| {
        parse(&turned(file, turns));
        Ok(())
    });
    done.unwrap_or_else(|error| panic!("{name}: {error}"));
}

#[test]
fn codes_in_any_spelling() {
    use domain::scanned::{Scanned, read};
    let here = ["https://trace.test.example"];
    hold("codes", 20_000, |bytes| {
        let text = String::from_utf8_lossy(bytes);
        if let Scanned::Lot { code, pack } = read(&text, &here) {
            let shown = pack.map_or(code.to_string(), |pack| format!("{code}/{pack}"));
            let again = matches!(read(&shown, &here), Scanned::Lot { code: same, pack: packed }
                if same == code && packed == pack);
            assert!(again, "{text:?} is {shown}");
        }
    });
}

#[test]
fn bars_of_cartons() {
    use domain::gs1::read;
    let today = "2026-11-28".parse().expect("a day");
    hold("cartons", 20_000, |bytes| {
        let text = String::from_utf8_lossy(bytes);
        if let Ok(elements) = read(&text) {
            let _ = (elements.gtin(), elements.lot(), elements.net_milligrams());
            let _ = (elements.packed_on(today), elements.use_by(today));
            let raw = elements.raw();
            let again = read(&raw).map(|again| again.raw());
            assert_eq!(again.ok().as_ref(), Some(&raw), "{text:?}");
        }
    });
}

#[test]
fn answers_of_printers() {
    hold("ipp", 20_000, |bytes| {
        if let Ok(answer) = read_answer(bytes) {
            for group in answer
                .attributes()
                .groups_of(DelimiterTag::PrinterAttributes)
            {
                let read = Capabilities::read(group);
                let _ = (
                    read.stopped(),
                    read.dpi(),
                    read.size_for(10_000, 5_000).is_ok(),
                );
                assert!(read.sizes().count() < 10_000);
            }
        }
    });
}

#[test]
fn templates_of_labels() {
    hold("templates", 3_000, |bytes| {
        let _ = labels::Template::parse("mine", &String::from_utf8_lossy(bytes));
    });
}

#[test]
fn house_files() {
    let shipped = law::shipped().expect("the law is read").laws;
    hold("house", 1_000, |bytes| {
        let mut laws = shipped.clone();
        let house = law::House::read(&String::from_utf8_lossy(bytes));
        if house.and_then(|house| house.apply(&mut laws)).is_err() {
            assert!(laws == shipped, "nothing is set where something is refused");
        }
    });
}

#[test]
fn bodies() {
    use gambrel::wire::asked::StepAsked;
    hold("bodies", 20_000, |bytes| {
        let _ = gambrel::door::unseen::refuse(bytes);
        if let Err(error) = gambrel::body::parse::<StepAsked>(bytes) {
            let status = error.problem().status.as_u16();
            assert!((400..500).contains(&status), "{status}");
        }
    });
}

/// What `gambrel label` is given: whatever is read is laid out or refused.
#[test]
fn facts_of_labels() {
    let json = include_str!("../../../label-templates/tub.json");
    let template = labels::Template::parse("tub", json).expect("it is ours");
    hold("facts", 2_000, |bytes| {
        if let Ok(facts) = serde_json::from_slice::<labels::Facts>(bytes) {
            let _ = labels::lay_out(&facts, &template, labels::Dpi::D203);
        }
    });
}

/// Addresses: of printers, of the service on labels, in a request's `Host` and `Origin`.
#[test]
fn addresses() {
    use gambrel::door::hosts::Hosts;
    use gambrel::printing::address::PrinterAddress;
    use gambrel::web_address::is_web_address;
    let hosts = Hosts::new(&["trace.kitchen.example".into()], false, None);
    hold("addresses", 20_000, |bytes| {
        let text = String::from_utf8_lossy(bytes);
        if let Ok(address) = PrinterAddress::parse(&text) {
            let uri = address.uri().to_string();
            assert!(uri.starts_with("ipp"), "{text:?}");
            assert!(PrinterAddress::parse(&uri).is_ok(), "{text:?} is {uri}");
        }
        if is_web_address(&text) {
            assert!(text.starts_with("http") && !text.contains(char::is_whitespace));
        }
        if hosts.knows(&text) {
            let ours = ["localhost", "trace.kitchen.example"];
            let text = text.to_lowercase();
            // However its number is spelt: `::01` is `::1`.
            let here = |number: &str| number.parse().is_ok_and(|ip: IpAddr| ip.is_loopback());
            let host = text.rsplit_once(':').map_or(&*text, |(host, _)| host);
            let number = [&*text, host].iter().any(|host| {
                here(host)
                    || host
                        .strip_prefix('[')
                        .is_some_and(|rest| rest.strip_suffix(']').is_some_and(here))
            });
            assert!(
                number || ours.iter().any(|name| text.contains(name)),
                "{text:?}"
            );
        }
        let _ = gambrel::door::control_in(&text);
    });
}

#[test]
fn languages_and_queries() {
    hold("headers", 20_000, |bytes| {
        let text = String::from_utf8_lossy(bytes);
        let _ = words::Language::accepted(&text);
        let read = actix_web::web::Query::<gambrel::read::find::LotsQuery>::from_query(&text);
        if let Err(error) = read {
            let _ = gambrel::wire::unread::unread(&error.to_string());
        }
    });
}

/// Files that the command line names: options, a certificate with its key. What is said is one line.
#[test]
fn options_and_certificates() {
    use gambrel::config::DatabaseArgs;
    use gambrel::tls::CertificateFiles;
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("given");
    hold("options", 1_000, |bytes| {
        std::fs::write(&path, bytes).expect("it is written");
        let args = DatabaseArgs {
            database: Some("kitchen.db".into()),
            config: Some(path.clone()),
        };
        let said = [
            args.resolve(false).err(),
            CertificateFiles {
                certificate: path.clone(),
                key: path.clone(),
            }
            .read()
            .err(),
        ];
        for says in said.into_iter().flatten() {
            assert_eq!(says.lines().count(), 1, "{says}");
        }
    });
}

/// Tables of a spreadsheet: whatever is sent has rows under columns, or is refused by its line.
#[test]
fn tables() {
    use gambrel::lists::table::{LARGEST, MOST, table};
    hold("tables", 20_000, |bytes| match table(bytes) {
        Ok(table) => {
            assert!(bytes.len() <= LARGEST);
            assert!((1..=MOST).contains(&table.len()), "{}", table.len());
        }
        Err(error) => assert_eq!(error.problem().status.as_u16(), 422),
    });
}

/// Photos: whatever is sent is read, has no code, or is no photo; a decoder that gives up is none of ours.
#[test]
fn photos() {
    use gambrel::photo;
    let known = corpus("photos")
        .iter()
        .filter(|file| photo::read(file).is_ok())
        .count();
    assert!(known >= 4, "{known} labels are read");
    hold("photos", 150, |bytes| match photo::read(bytes) {
        Ok(codes) => assert!(codes.iter().all(|code| !code.text.is_empty())),
        Err(error) => assert_eq!(error.problem().status.as_u16(), 422),
    });
}

/// Papers: whatever is sent has a form that its content tells, or is none.
#[test]
fn papers() {
    use domain::paper::PaperForm;
    let taken = corpus("papers");
    let taken = taken.iter().filter(|file| PaperForm::of(file).is_ok());
    assert_eq!(taken.count(), 4, "a PDF, a JPEG, a PNG and a table");
    hold("papers", 20_000, |bytes| {
        if let Ok(form) = PaperForm::of(bytes) {
            let is_text = !bytes.contains(&0) && !bytes.contains(&0x1b);
            assert!(form != PaperForm::Text || is_text);
            assert_eq!(PaperForm::parse(form.as_str()), Some(form));
        }
    });
}

/// Anchors as they are printed, typed and scanned.
#[test]
fn anchors() {
    use store::chain::Anchor;
    hold("anchors", 20_000, |bytes| {
        if let Some(anchor) = Anchor::parse(&String::from_utf8_lossy(bytes)) {
            assert_eq!(Anchor::parse(&anchor.in_groups()), Some(anchor));
        }
    });
}

/// Lines of an archive's tables: what is taken as a row is written again as that row.
#[test]
fn lines_of_archives() {
    use store::carry;
    let tables: Vec<&carry::Table> = carry::tables().collect();
    let known = corpus("archives").into_iter().filter(|file| {
        let text = String::from_utf8_lossy(file);
        tables
            .iter()
            .any(|table| carry::parse(table, text.trim_end()).is_some())
    });
    assert!(known.count() >= 3, "rows are read");
    hold("archives", 5_000, |bytes| {
        let text = String::from_utf8_lossy(bytes);
        for table in &tables {
            if let Some(row) = carry::parse(table, &text) {
                let written = carry::line(table, &row);
                assert_eq!(carry::parse(table, &written), Some(row), "{text}");
            }
        }
    });
}

/// A whole archive of which one file was turned about: it is the same record, or refused in one line, and nothing is kept.
#[test]
fn archives() {
    use gambrel::archive::{export, import};
    use gambrel::config::{DatabaseArgs, ExportArgs, ImportArgs};
    let folder = tempfile::tempdir().expect("a folder");
    let [from, to, again] =
        ["kitchen.db", "archive", "again.db"].map(|name| folder.path().join(name));
    let database = |path: &std::path::Path| DatabaseArgs {
        database: path.to_str().map(str::to_owned),
        config: None,
    };
    let address = store::Address::Sqlite(from.clone());
    drop(store::Store::open(&address, true, 1).expect("a record"));
    let asked = ExportArgs {
        database: database(&from),
        to: to.clone(),
    };
    export(&asked, law::shipped().expect("the law is read")).expect("it is written");
    let files =
        ["record.json", "tables/counters.jsonl", "tables/chain.jsonl"].map(|name| to.join(name));
    let any = (
        prop::sample::select(files.to_vec()),
        prop::collection::vec(turn(), 0..3),
    );
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig {
        cases: 24,
        failure_persistence: None,
        ..ProptestConfig::default()
    });
    let done = runner.run(&any, |(file, turns)| {
        let whole = std::fs::read(&file).expect("a file");
        std::fs::write(&file, turned(whole.clone(), turns)).expect("it is written");
        let args = ImportArgs {
            database: database(&again),
            from: to.clone(),
        };
        let done = import(&args);
        std::fs::write(&file, whole).expect("it is written");
        match done {
            Ok(_) => std::fs::remove_file(&again).expect("it was made"),
            Err(says) => {
                prop_assert_eq!(says.lines().count(), 1, "{}", says);
                prop_assert!(!again.exists(), "{}", says);
            }
        }
        Ok(())
    });
    done.unwrap_or_else(|error| panic!("{error}"));
}
