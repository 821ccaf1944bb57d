//! A certificate of the kitchen's own, as a tablet sees it.

use std::process::Command;
use stories::House;

/// With the outside client that Debian has.
#[test]
fn a_certificate_of_the_kitchens_own_is_trusted_by_its_authority() {
    let folder = tempfile::tempdir().unwrap();
    let tls = folder.path().join("tls").display().to_string();
    let make = ["certificate", "--out", &tls, "--host", "bench.local"];
    let made = |args: &[&str]| {
        Command::new(stories::house::binary())
            .args(args)
            .output()
            .unwrap()
    };
    assert!(made(&make).status.success());
    assert!(!made(&make).status.success(), "no key is overwritten");
    let file = |name: &str| format!("{tls}/{name}.pem");
    let odd = ["certificate", "--out", &tls, "--host", "a b"];
    assert!(!made(&odd).status.success(), "no name of a machine");
    // Strict readers ask what the certificate's own maker says of the key above it.
    let strict = Command::new("openssl")
        .args(["verify", "-x509_strict", "-CAfile", &file("authority")])
        .arg(file("certificate"))
        .output()
        .expect("openssl is missing; tests/run installs it");
    let says = String::from_utf8_lossy(&strict.stderr);
    assert!(strict.status.success(), "{says}");
    let house = House::with(&[
        "--certificate",
        &file("certificate"),
        "--key",
        &file("key"),
        "--host",
        "bench.local",
    ]);
    let (_, port) = house.address.rsplit_once(':').unwrap();
    let curl = |args: &[&str]| {
        let resolve = format!("bench.local:{port}:127.0.0.1");
        let out = Command::new("curl")
            .args(["-si", "--max-time", "20", "--resolve", &resolve])
            .args(args)
            .output()
            .expect("curl is missing; tests/run installs it");
        String::from_utf8_lossy(&out.stdout).into_owned()
    };
    let authority = file("authority");
    let at = |name: &str, path: &str| format!("https://{name}:{port}{path}");
    let health = curl(&["--cacert", &authority, &at("bench.local", "/api/health")]);
    assert!(health.starts_with("HTTP/1.1 200"), "{health}");
    assert_eq!(
        curl(&[&at("bench.local", "/api/health")]),
        "",
        "trusted by nobody else"
    );
    let trust = curl(&["--cacert", &authority, &at("localhost", "/trust")]);
    assert!(trust.contains("/trust/kitchen.crt"), "{trust}");
    let given = curl(&[
        "--cacert",
        &authority,
        &at("localhost", "/trust/kitchen.crt"),
    ]);
    assert!(
        given.contains(std::fs::read_to_string(&authority).unwrap().trim()),
        "{given}"
    );
    let sent = "{\"person\":\"Oda Marsh\",\"pin\":\"2580\"}";
    let signed = curl(&[
        "--cacert",
        &authority,
        "-H",
        "Content-Type: application/json",
        "-d",
        sent,
        &at("bench.local", "/api/sessions"),
    ]);
    let cookies: Vec<&str> = signed
        .lines()
        .filter(|line| line.starts_with("set-cookie"))
        .collect();
    assert_eq!(cookies.len(), 2, "{signed}");
    assert!(
        cookies
            .iter()
            .all(|cookie| cookie.contains("; Secure") && cookie.contains("SameSite=Strict"))
    );
}
