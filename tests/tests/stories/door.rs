//! The door: endless bodies, names and pages that are not ours, files that are none, tokens that speak for
//! nobody else.

use serde_json::json;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};
use stories::call::fresh_id;
use stories::{Engine, House, on_both_engines};

fn host(house: &House) -> String {
    house.address.trim_start_matches("http://").to_owned()
}

fn connect(house: &House) -> TcpStream {
    let stream = TcpStream::connect(host(house)).unwrap();
    let patience = Some(Duration::from_secs(20));
    stream.set_read_timeout(patience).unwrap();
    stream.set_write_timeout(patience).unwrap();
    stream
}

fn raw(house: &House, request: &str) -> String {
    let mut stream = connect(house);
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = String::new();
    let _ = stream.read_to_string(&mut answer);
    answer
}

#[test]
fn a_body_without_an_end_is_not_read_for_long() {
    let house = House::furnished(Engine::Sqlite);
    let host = host(&house);
    for (path, kind) in [
        ("/nowhere", "text/plain"),
        ("/api/nowhere", "application/json"),
        ("/sign-in", "application/x-www-form-urlencoded"),
        ("/api/moves", "application/json"),
        ("/api/health", "text/plain"),
    ] {
        let mut stream = connect(&house);
        let head = format!(
            "POST {path} HTTP/1.1\r\nHost: {host}\r\nContent-Type: {kind}\r\nTransfer-Encoding: chunked\r\n\r\n"
        );
        stream.write_all(head.as_bytes()).unwrap();
        let chunk = format!("10000\r\n{}\r\n", "a".repeat(65_536));
        let (began, mut sent) = (Instant::now(), 0_usize);
        while stream.write_all(chunk.as_bytes()).is_ok() {
            sent += chunk.len();
            assert!(sent < 64 << 20, "{path} reads on and on");
        }
        assert!(began.elapsed() < Duration::from_secs(20), "{path}");
    }
}

#[test]
fn who_sends_too_much_is_told_so_and_who_sends_little_goes_on() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let large = vec![b' '; 3 << 20];
    let told = caller.post_bytes("/api/moves", "application/json", &large);
    assert_eq!(told.status, 413);
    let host = host(&house);
    let mut stream = connect(&house);
    for nth in 0..3 {
        let request = format!(
            "POST /api/nowhere HTTP/1.1\r\nHost: {host}\r\nContent-Type: text/plain\r\nContent-Length: 3\r\n\r\nabc"
        );
        stream.write_all(request.as_bytes()).unwrap();
        let mut part = [0; 4_096];
        let read = stream.read(&mut part).unwrap();
        let told = String::from_utf8_lossy(&part[..read]);
        assert!(told.starts_with("HTTP/1.1 404"), "{nth}: {told}");
    }
    let large = "a".repeat(9_000);
    let form = format!(
        "POST /sign-in HTTP/1.1\r\nHost: {host}\r\nContent-Type: application/x-www-form-urlencoded\r\n\
         Connection: close\r\nContent-Length: 9007\r\n\r\nperson={large}"
    );
    let told = raw(&house, &form);
    assert!(
        told.starts_with("HTTP/1.1 413") && told.contains("<main"),
        "{told}"
    );
}

#[test]
fn a_page_that_came_another_way_is_another_site() {
    let house = House::furnished(Engine::Sqlite);
    let host = host(&house);
    let post = |target: &str, more: &str| {
        let body = json!({ "id": fresh_id(), "place": "bench" }).to_string();
        raw(
            &house,
            &format!(
                "POST {target} HTTP/1.1\r\nHost: {host}\r\n{more}{}Content-Type: application/json\r\n\
                 Connection: close\r\nContent-Length: {}\r\n\r\n{body}",
                house.caller().header(),
                body.len()
            ),
        )
    };
    let deed = "/api/clean-downs";
    let ours = format!("Origin: http://{host}\r\n");
    assert!(post(deed, &ours).starts_with("HTTP/1.1 201"));
    let other = format!("Origin: https://{host}\r\n");
    let told = post(deed, &other);
    assert!(told.starts_with("HTTP/1.1 403"), "{told}");
    // Before the path too, only our own name, and the one that the request is for.
    let whole = format!("http://{host}{deed}");
    assert!(post(&whole, &ours).starts_with("HTTP/1.1 201"));
    for other in ["http://evil.example", "http://localhost"] {
        let told = post(&format!("{other}{deed}"), &ours);
        assert!(told.starts_with("HTTP/1.1 421"), "{told}");
    }
    // With a cookie and no word of a page, it is said what is missing.
    let told = raw(
        &house,
        &format!(
            "POST {deed} HTTP/1.1\r\nHost: {host}\r\nCookie: gambrel=x\r\nConnection: close\r\nContent-Length: 0\r\n\r\n"
        ),
    );
    assert!(
        told.contains("who-no-origin") && !told.contains("()"),
        "{told}"
    );
}

#[test]
fn letters_that_are_none_stand_in_no_name() {
    let house = House::furnished(Engine::Sqlite);
    for none in ['\u{ffff}', '\u{fdd0}', '\u{1fffe}', '\u{10ffff}'] {
        let named = json!({ "code": "NEW", "name": format!("a{none}b") });
        let caller = house.caller();
        caller.post("/api/suppliers", &named).refused(422, "name");
    }
}

#[test]
fn a_wrong_pin_is_one_line_and_whoever_waits_is_told_how_long() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log");
    let mut house = House::logging(Engine::Sqlite, std::fs::File::create(&path).unwrap());
    let caller = house.caller();
    let jo = json!({ "name": "Jo", "roles": ["cook"], "pin": "2580" });
    caller.post("/api/people", &jo).expect(201);
    let wrong = json!({ "person": "Jo", "pin": "2581" });
    let nobody = caller.showing("");
    // The pause doubles with each wrong one: also on a slow machine one comes that is not over at the next try, and
    // that has some seconds left for the page's form.
    let mut told = Vec::new();
    let seconds = loop {
        let answer = nobody.post("/api/sessions", &wrong);
        let wait = answer.retry_after;
        told.push(answer);
        match wait {
            Some(seconds) if seconds > 2 => break seconds,
            Some(_) => std::thread::sleep(std::time::Duration::from_millis(500)),
            None => assert!(told.len() < 20, "nobody waits"),
        }
    };
    assert!(seconds <= 16, "{seconds}");
    assert_eq!(told.last().unwrap().status, 429);
    let form = format!(
        "POST /sign-in HTTP/1.1\r\nHost: {0}\r\nOrigin: http://{0}\r\nContent-Type: application/x-www-form-urlencoded\r\n\
         Connection: close\r\nContent-Length: 18\r\n\r\nperson=Jo&pin=2581",
        host(&house)
    );
    let page = raw(&house, &form);
    assert!(
        page.starts_with("HTTP/1.1 429") && page.contains("retry-after: "),
        "{page}"
    );
    house.end();
    let log = std::fs::read_to_string(&path).unwrap();
    let wrong = told.iter().filter(|told| told.status == 401).count();
    let lines = log.lines().filter(|line| line.contains("status=401"));
    assert_eq!(lines.count(), wrong, "{log}");
    assert!(!log.contains("PIN"), "{log}");
}

on_both_engines! {
    a_token_that_speaks_for_nobody_else
}

fn a_token_that_speaks_for_nobody_else(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let clean = |by: &str| json!({ "place": "bench", "by": by });
    caller.deed("/api/clean-downs", clean("Oda")).expect(201);
    let asked = json!({ "name": "till", "role": "manager", "speaks_for_others": false });
    let given = caller.post("/api/tokens", &asked).expect(201).body;
    assert_eq!(given["speaks_for_others"], false);
    let till = caller.showing(given["token"].as_str().unwrap());
    let refused = till
        .deed("/api/clean-downs", clean("Oda"))
        .refused(403, "by");
    assert_eq!(refused.body["right"], "speak");
    till.deed("/api/clean-downs", clean("till")).expect(201);
    let own = json!({ "id": fresh_id(), "place": "bench" });
    till.post("/api/clean-downs", &own).expect(201);
    let rights = |caller: &stories::Caller| caller.read("/api/sessions/mine")["rights"].to_string();
    assert!(rights(&caller).contains("\"speak\"") && !rights(&till).contains("\"speak\""));
    let listed = caller.read("/api/tokens")["tokens"].clone();
    let listed = listed.as_array().unwrap().iter();
    let speak: Vec<_> = listed.map(|one| one["speaks_for_others"].clone()).collect();
    assert_eq!(speak, [json!(true), json!(false)]);
    // The terminal can say it too.
    let out = Command::new(stories::house::binary())
        .args([
            "token",
            "--database",
            &house.database,
            "--name",
            "door",
            "--role",
            "manager",
        ])
        .arg("--speaks-for-others=false")
        .output()
        .unwrap();
    let door = caller.showing(String::from_utf8_lossy(&out.stdout).trim());
    door.deed("/api/clean-downs", clean("Oda"))
        .refused(403, "by");
    door.deed("/api/clean-downs", clean("door")).expect(201);
}

/// Runs it with options that cannot be right; what it says, in one line and at once.
fn refused(args: &[&str]) -> String {
    let folder = tempfile::tempdir().unwrap();
    let database = folder.path().join("kitchen.db").display().to_string();
    let mut command = Command::new(stories::house::binary());
    command.args(["serve", "--listen", "127.0.0.1:0"]);
    if !args.contains(&"--database") {
        command.args(["--create", "--database", &database]);
    }
    let mut child = command
        .args(args)
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let began = Instant::now();
    let ended = loop {
        if let Some(ended) = child.try_wait().unwrap() {
            break ended;
        }
        if began.elapsed() > Duration::from_secs(10) {
            let _ = child.kill();
            panic!("{args:?}: it waits");
        }
        std::thread::sleep(Duration::from_millis(20));
    };
    assert!(!ended.success(), "{args:?}");
    let mut says = String::new();
    child
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut says)
        .unwrap();
    assert_eq!(says.trim().lines().count(), 1, "{args:?}: {says}");
    for word in [
        "os error",
        "Err(",
        "struct",
        "serde",
        "expected",
        "panicked",
        "invalid type",
    ] {
        assert!(!says.contains(word), "{args:?}: {says}");
    }
    says
}

#[test]
fn what_is_no_plain_file_is_refused_at_once_in_one_line() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name).display().to_string();
    let pipe = at("pipe");
    assert!(
        Command::new("mkfifo")
            .arg(&pipe)
            .status()
            .unwrap()
            .success()
    );
    std::fs::write(at("text"), "not what it should be: [\n").unwrap();
    std::fs::write(at("typed"), "workers = \"two\"\n").unwrap();
    std::fs::write(at("json"), "{\"x\": 1}").unwrap();
    let (here, text) = (folder.path().display().to_string(), at("text"));
    for bad in [
        pipe.as_str(),
        &here,
        "/dev/zero",
        "/dev/null",
        "/nowhere/at/all",
    ] {
        for option in ["--house", "--config"] {
            let says = refused(&[option, bad]);
            assert!(says.contains("cannot be read"), "{says}");
        }
        refused(&["--certificate", bad, "--key", &text]);
        refused(&["--certificate", &text, "--key", bad]);
        if bad != here {
            refused(&["--templates", bad]);
        }
        if bad != "/nowhere/at/all" {
            refused(&["--database", bad]);
        }
    }
    for bad in [text.as_str(), &at("typed"), &at("json")] {
        refused(&["--house", bad]);
        refused(&["--config", bad]);
        refused(&["--certificate", bad, "--key", bad]);
    }
    for url in [
        "javascript:alert(1)",
        "ftp://x",
        "https://",
        "http://a b",
        "//x",
        "https://x/\"y",
    ] {
        refused(&["--public-url", url]);
    }
}
