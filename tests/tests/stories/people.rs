//! Who did it, and who may: signing in, names, rights, tokens, the first manager, and who is turned away.

use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::process::Command;
use stories::call::fresh_id;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    every_route_as_everybody
    a_name_is_its_owners
    what_sets_food_free_is_a_managers
}

/// A caller for each role, and nobody.
fn everybody(house: &House) -> BTreeMap<&'static str, Caller> {
    let caller = house.caller();
    let mut all = BTreeMap::from([
        ("nobody", caller.showing("")),
        ("wrong", caller.showing("gambrel_no")),
    ]);
    for role in ["cook", "counter", "manager"] {
        let asked = json!({ "name": format!("a {role}"), "role": role });
        let given = caller.post("/api/tokens", &asked).expect(201).body;
        all.insert(role, caller.showing(given["token"].as_str().unwrap()));
    }
    all
}

fn every_route_as_everybody(engine: Engine) {
    let house = House::furnished(engine);
    let table = house
        .caller()
        .showing("")
        .get("/api/rights")
        .expect(200)
        .body;
    let routes = table["routes"].as_array().unwrap();
    assert!(routes.len() > 70, "{}", routes.len());
    let before = house.check();
    for (name, caller) in everybody(&house) {
        for route in routes {
            let (method, right) = (
                route["method"].as_str().unwrap(),
                route["right"].as_str().unwrap(),
            );
            let shown = route["path"].as_str().unwrap();
            let path = shown.replace("{l:[Ll]}", "L").replace(['{', '}'], "");
            let may = right == "anyone"
                || route["roles"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .any(|role| role == name);
            // Who takes the key away from everybody else is not part of this.
            if (shown == "/sign-out" || shown.starts_with("/api/sessions")) && may {
                continue;
            }
            let answer = caller.send(method, &path, "{}");
            let told = format!(
                "{method} {shown} as {name}: {} {}",
                answer.status, answer.body
            );
            let is_page = !path.starts_with("/api") && path != "/metrics" && method == "GET";
            match (may, name) {
                (true, _) => assert!(
                    ![401, 403].contains(&answer.status) && answer.status < 500,
                    "{told}"
                ),
                (false, "nobody" | "wrong") if is_page => {
                    assert_eq!(answer.status, 303, "{told}")
                }
                (false, "nobody" | "wrong") => {
                    assert!([401, 303].contains(&answer.status), "{told}")
                }
                (false, _) => {
                    assert_eq!(answer.status, 403, "{told}");
                    assert!(
                        !path.starts_with("/api") || answer.body["right"] == right,
                        "{told}"
                    );
                }
            }
        }
    }
    assert_eq!(house.check(), before, "an empty body does nothing");
}

/// Signs somebody in with a PIN; what comes back, and the cookies.
fn sign_in(house: &House, person: &str, pin: &str, cookies: &str) -> (u16, String) {
    let body = json!({ "person": person, "pin": pin }).to_string();
    let answer = raw(house, "POST", "/api/sessions", cookies, "", &body);
    let status = answer[9..12].parse().unwrap();
    let set = answer
        .lines()
        .filter_map(|line| line.strip_prefix("set-cookie: "));
    let pairs: Vec<&str> = set.filter_map(|line| line.split(';').next()).collect();
    (status, pairs.join("; "))
}

/// A request as a browser sends it, by hand.
fn raw(house: &House, method: &str, path: &str, cookies: &str, more: &str, body: &str) -> String {
    let host = house.address.trim_start_matches("http://");
    let mut stream = TcpStream::connect(host).unwrap();
    let origin = if more.contains("Origin:") || more.contains("Host:") {
        ""
    } else {
        &format!("Origin: http://{host}\r\n")
    };
    let host = if more.contains("Host:") {
        ""
    } else {
        &format!("Host: {host}\r\n")
    };
    let request = format!(
        "{method} {path} HTTP/1.1\r\n{host}{origin}{more}Cookie: {cookies}\r\nContent-Type: application/json\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

fn add(house: &House, name: &str, role: &str, pin: &str) -> Value {
    let person = json!({ "name": name, "roles": [role], "pin": pin });
    house.caller().post("/api/people", &person).expect(201).body
}

fn a_name_is_its_owners(engine: Engine) {
    let house = House::furnished(engine);
    add(&house, "Jo", "cook", "2580");
    add(&house, "Wim", "cook", "1470");
    // Written another way it would be taken for the same.
    let other = json!({ "name": "JO", "roles": ["manager"], "pin": "3690" });
    let refused = house.caller().post("/api/people", &other).expect(409);
    assert_eq!(refused.body["field"], "name");
    assert_eq!(sign_in(&house, "Jo", "2581", "").0, 401);
    assert_eq!(sign_in(&house, "Nobody", "2580", "").0, 401);
    let (status, jo) = sign_in(&house, "Jo", "2580", "");
    assert_eq!(status, 201);
    let cleaned = |by: Value, cookies: &str, more: &str| {
        let mut body = json!({ "id": fresh_id(), "place": "bench" });
        if !by.is_null() {
            body["by"] = by;
        }
        let id = body["id"].as_str().unwrap().to_owned();
        let answer = raw(
            &house,
            "POST",
            "/api/clean-downs",
            cookies,
            more,
            &body.to_string(),
        );
        (answer[9..12].parse::<u16>().unwrap(), id, answer)
    };
    let (status, id, told) = cleaned(Value::Null, &jo, "");
    assert_eq!(status, 201, "{told}");
    assert_eq!(house.caller().read(&format!("/api/steps/{id}"))["by"], "Jo");
    assert_eq!(cleaned(json!("Jo"), &jo, "").0, 201);
    let (status, _, told) = cleaned(json!("Wim"), &jo, "");
    assert!(status == 403 && told.contains("\"field\":\"by\""), "{told}");
    // From another site, or under another name, nothing is written.
    for more in [
        "Origin: http://evil.example\r\n",
        "Origin: null\r\n",
        "Origin: http://127.0.0.1:1\r\n",
    ] {
        assert_eq!(cleaned(Value::Null, &jo, more).0, 403, "{more}");
    }
    for host in ["evil.example", "127.0.0.1.evil.example", "192.168.7.7"] {
        let more = format!("Host: {host}\r\n");
        assert_eq!(cleaned(Value::Null, &jo, &more).0, 421, "{host}");
        assert!(raw(&house, "GET", "/api/health", "", &more, "").starts_with("HTTP/1.1 421"));
    }
    // What waited on the same device counts by who was signed in then; Jo's session ends with Wim's.
    let during = stories::call::moment(0);
    std::thread::sleep(std::time::Duration::from_millis(20));
    let (status, wim) = sign_in(&house, "Wim", "1470", &jo);
    assert_eq!(status, 201);
    assert_eq!(cleaned(Value::Null, &jo, "").0, 401, "switched");
    let waited = json!({ "id": fresh_id(), "place": "bench", "by": "Jo", "at": during });
    let answer = raw(
        &house,
        "POST",
        "/api/clean-downs",
        &wim,
        "",
        &waited.to_string(),
    );
    assert!(answer.starts_with("HTTP/1.1 201"), "{answer}");
    assert_eq!(cleaned(json!("Jo"), &wim, "").0, 403, "now it is Wim");
    // Wrong PINs slow down on that device alone, and the right one waits too.
    let statuses: Vec<u16> = (0..5)
        .map(|_| sign_in(&house, "Jo", "0000", &wim).0)
        .collect();
    assert!(statuses.ends_with(&[429]), "{statuses:?}");
    assert_eq!(sign_in(&house, "Jo", "2580", "").0, 201, "elsewhere");
    // Devices that nobody has signed in on are one by their address, whatever they call themselves.
    let strangers = ["", "2", "", "4", ""].map(|nth| {
        let named = format!("gambrel_device={nth}{}", nth.repeat(40));
        sign_in(&house, "Jo", "0000", &named).0
    });
    assert_eq!(strangers.last(), Some(&429), "{strangers:?}");
    // So is one on which only somebody else has signed in.
    let made_up = format!("gambrel_device={}", "1".repeat(40));
    assert_eq!(sign_in(&house, "Wim", "1470", &made_up).0, 201);
    assert_eq!(sign_in(&house, "Jo", "0000", &made_up).0, 429);
    // Deeds of programs have the name they say, or their own.
    let step = house
        .caller()
        .post(
            "/api/clean-downs",
            &json!({ "id": fresh_id(), "place": "bench" }),
        )
        .expect(201);
    let read = house
        .caller()
        .read(&format!("/api/steps/{}", step.body["id"].as_str().unwrap()));
    assert_eq!(read["by"], "story");
}

fn what_sets_food_free_is_a_managers(engine: Engine) {
    let house = House::furnished(engine);
    let manager = house.caller();
    let all = everybody(&house);
    let cook = &all["cook"];
    let lot = cook.half_pig("0608-17", 10_000);
    let hold = json!({ "lots": [{ "lot": lot }], "why": "smells" });
    cook.deed("/api/holds", hold.clone()).expect(201);
    cook.deed("/api/hold-releases", hold.clone())
        .refused(403, None);
    let release = json!({ "lot": lot, "what": "released", "why": "fine" });
    let refused = cook.deed("/api/dispositions", release).refused(403, None);
    assert_eq!(refused.body["right"], "lift");
    // A sale of it although it was held is recorded by somebody who could have let it go.
    let sale = json!({ "kind": "sell", "lot": lot, "grams": 5, "as_it_happened": true, "note": "Nobody looked" });
    let refused = cook
        .deed("/api/departures", sale.clone())
        .refused(403, None);
    assert_eq!(refused.body["right"], "lift");
    manager.deed("/api/departures", sale).expect(201);
    manager.deed("/api/hold-releases", hold).expect(201);
    // One's own deed is taken back, another's not.
    let serve = |by: &str| json!({ "kind": "serve", "lot": lot, "grams": 5, "by": by });
    let own = cook
        .deed("/api/departures", serve("a cook"))
        .expect(201)
        .body["id"]
        .clone();
    let void = |id: &Value| format!("/api/steps/{}/void", id.as_str().unwrap());
    cook.deed(&void(&own), json!({ "by": "Wim", "why": "x" }))
        .refused(403, None);
    cook.deed(&void(&own), json!({ "by": "a cook", "why": "x" }))
        .expect(201);
    // A program that speaks for others takes nothing of theirs back by saying their name.
    let of_jo = cook.deed("/api/departures", serve("Jo")).expect(201).body["id"].clone();
    cook.deed(&void(&of_jo), json!({ "by": "Jo", "why": "x" }))
        .refused(403, None);
    let other = manager
        .deed("/api/departures", serve("Jo"))
        .expect(201)
        .body["id"]
        .clone();
    manager
        .deed(&void(&other), json!({ "by": "Oda", "why": "x" }))
        .expect(201);
}

#[test]
fn the_first_manager_begins_with_a_word_from_the_terminal() {
    let mut house = House::empty(Engine::Sqlite);
    house.kill();
    let word = |house: &mut House| {
        house.restart();
        let line = house.line();
        let word = line
            .split("the word ")
            .nth(1)
            .and_then(|rest| rest.split(':').next());
        word.unwrap_or_else(|| panic!("{line:?}")).to_owned()
    };
    let first = word(&mut house);
    house.kill();
    let second = word(&mut house);
    assert_ne!(first, second, "each start gives another, until one is used");
    assert_eq!(sign_in(&house, "Manager", &first, "").0, 401);
    let (status, cookies) = sign_in(
        &house,
        "Manager",
        &second.to_lowercase().replace('-', ""),
        "",
    );
    assert_eq!(status, 201);
    assert_eq!(sign_in(&house, "Manager", &second, "").0, 401, "once");
    let easy = raw(
        &house,
        "PUT",
        "/api/sessions/mine/pin",
        &cookies,
        "",
        "{\"pin\":\"1234\"}",
    );
    assert!(easy.starts_with("HTTP/1.1 422"), "{easy}");
    let chosen = raw(
        &house,
        "PUT",
        "/api/sessions/mine/pin",
        &cookies,
        "",
        "{\"pin\":\"2580\"}",
    );
    assert!(
        chosen.starts_with("HTTP/1.1 200") && !chosen.contains("argon2"),
        "{chosen}"
    );
    assert_eq!(sign_in(&house, "Manager", "2580", "").0, 201);
    // The last manager stays one.
    let people = house.caller().read("/api/people");
    let id = people["people"][0]["id"].as_str().unwrap().to_owned();
    let version = format!("\"v{}\"", people["people"][0]["version"]);
    let leave = json!({ "name": "Manager", "roles": ["cook"] });
    house
        .caller()
        .put_over(&format!("/api/people/{id}"), &version, &leave)
        .refused(409, "roles");
    // Nobody new is made at the next start; on the terminal there is always a way in.
    house.kill();
    house.restart();
    let out = Command::new(stories::house::binary())
        .args(["people", "--database", &house.database, "word", "Manager"])
        .output()
        .unwrap();
    let anew = String::from_utf8_lossy(&out.stdout).trim().to_owned();
    assert_eq!(sign_in(&house, "Manager", "wrong", "").0, 401);
    assert_eq!(sign_in(&house, "Manager", &anew, "").0, 201);
    assert_eq!(sign_in(&house, "Manager", "2580", "").0, 401, "the old PIN");
}

#[test]
fn pages_send_nobody_to_sign_in_and_back() {
    let house = House::demo(Engine::Sqlite);
    let lots = raw(&house, "GET", "/lots?q=ham", "", "", "");
    assert!(
        lots.starts_with("HTTP/1.1 303")
            && lots.contains("location: /sign-in?then=/lots%3Fq%3Dham"),
        "{lots}"
    );
    let page = raw(&house, "GET", "/sign-in", "", "", "");
    assert!(
        page.contains("Oda Marsh") && page.contains("Tamsin Roke"),
        "{page}"
    );
    // What an open scan shows is for everybody; the rest is not.
    let scan = "/api/scan?code=BRC-26159-A0T-M/9";
    assert!(raw(&house, "GET", scan, "", "", "").starts_with("HTTP/1.1 401"));
    let caller = house.caller();
    let kitchen = caller.get("/api/kitchen").expect(200);
    let mut open = kitchen.body.clone();
    open["open_scan"] = json!(true);
    caller
        .put_over("/api/kitchen", &kitchen.etag.unwrap(), &open)
        .expect(200);
    caller.get(scan).expect(200);
    assert!(raw(&house, "GET", scan, "", "", "").starts_with("HTTP/1.1 200"));
    assert!(raw(&house, "GET", "/api/lots", "", "", "").starts_with("HTTP/1.1 401"));
    // The address on old labels is a name of ours for ever.
    let more = "Host: trace.cinderhook.example\r\n";
    assert!(raw(&house, "GET", scan, "", more, "").starts_with("HTTP/1.1 200"));
}

#[test]
fn a_token_ends_and_is_taken_away() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let past = json!({ "name": "late", "role": "cook", "until": "2020-01-01T00:00:00Z" });
    caller.post("/api/tokens", &past).refused(422, "until");
    let given = caller
        .post("/api/tokens", &json!({ "name": "script", "role": "cook" }))
        .expect(201)
        .body;
    let script = caller.showing(given["token"].as_str().unwrap());
    script.get("/api/lots").expect(200);
    let listed = caller.read("/api/tokens").to_string();
    assert!(
        listed.contains("script") && !listed.contains("gambrel_"),
        "{listed}"
    );
    caller
        .send("DELETE", &format!("/api/tokens/{}", given["id"]), "")
        .expect(204);
    script.get("/api/lots").refused(401, None);
}
