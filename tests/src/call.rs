//! Calling the service as a device does.

use crate::day::{Told, bought, farm};
use serde_json::{Value, json};
use std::hash::{BuildHasher, Hasher, RandomState};
use std::time::Duration;

/// Somebody with a device.
#[derive(Clone)]
pub struct Caller {
    agent: ureq::Agent,
    address: String,
    token: String,
}

/// What came back.
#[derive(Debug)]
pub struct Answer {
    /// The HTTP status.
    pub status: u16,
    /// The content type.
    pub kind: String,
    /// The headers that stories ask for.
    pub etag: Option<String>,
    /// In how many seconds to ask again.
    pub retry_after: Option<u32>,
    /// What a document of labels is warned of.
    pub warnings: String,
    /// Does a document of labels count as printed?
    pub recorded: String,
    /// The body as JSON, or null.
    pub body: Value,
    /// The body as it came.
    pub bytes: Vec<u8>,
}

impl Answer {
    /// The answer, which must have this status.
    ///
    /// # Panics
    /// It has another.
    #[track_caller]
    pub fn expect(self, status: u16) -> Answer {
        assert_eq!(
            self.status,
            status,
            "{}",
            String::from_utf8_lossy(&self.bytes)
        );
        self
    }

    /// The code of the nth lot of a deed's answer.
    #[track_caller]
    pub fn code(&self, nth: usize) -> String {
        self.body["lots"][nth]["code"]
            .as_str()
            .unwrap_or_else(|| panic!("no lot {nth} in {}", self.body))
            .to_owned()
    }

    /// A refusal, which must be a problem document with this status and field.
    #[track_caller]
    pub fn refused(self, status: u16, field: impl Into<Option<&'static str>>) -> Answer {
        let answer = self.expect(status);
        assert!(
            answer.kind.starts_with("application/problem+json"),
            "{}",
            answer.kind
        );
        for member in ["type", "title", "detail"] {
            assert!(
                answer.body[member]
                    .as_str()
                    .is_some_and(|text| !text.is_empty()),
                "{}",
                answer.body
            );
        }
        assert_eq!(answer.body["status"], status);
        assert_eq!(
            answer.body["field"].as_str(),
            field.into(),
            "{}",
            answer.body
        );
        answer
    }
}

impl Caller {
    /// Somebody who calls that address and shows that token.
    pub fn new(address: &str, token: &str) -> Caller {
        let config = ureq::Agent::config_builder()
            .http_status_as_error(false)
            .timeout_global(Some(Duration::from_secs(60)))
            .max_redirects(0)
            .max_redirects_will_error(false)
            .allow_non_standard_methods(true)
            .max_idle_connections_per_host(4)
            .build();
        Caller {
            agent: config.into(),
            address: address.to_owned(),
            token: token.to_owned(),
        }
    }

    /// The same, with another token, or none.
    pub fn showing(&self, token: &str) -> Caller {
        Caller {
            token: token.to_owned(),
            ..self.clone()
        }
    }

    fn says(&self) -> String {
        match self.token.as_str() {
            "" => "None".to_owned(),
            token => format!("Bearer {token}"),
        }
    }

    /// The lines of a request that say who calls, for whoever writes it by hand.
    pub fn header(&self) -> String {
        format!("Authorization: {}\r\n", self.says())
    }

    /// GET.
    pub fn get(&self, path: &str) -> Answer {
        self.try_get(path).expect("the service answers")
    }

    /// A page, as text.
    pub fn page(&self, path: &str) -> String {
        String::from_utf8(self.get(path).expect(200).bytes).expect("a page is text")
    }

    /// GET, where the service may be gone.
    ///
    /// # Errors
    /// It is gone.
    pub fn try_get(&self, path: &str) -> Result<Answer, ureq::Error> {
        self.agent
            .get(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .call()
            .map(read)
    }

    /// POST of JSON.
    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.try_post(path, body).expect("the service answers")
    }

    /// POST of JSON, where the service may be gone.
    ///
    /// # Errors
    /// It is gone.
    pub fn try_post(&self, path: &str, body: &Value) -> Result<Answer, ureq::Error> {
        self.agent
            .post(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .header("Content-Type", "application/json")
            .send(body.to_string())
            .map(read)
    }

    /// POST of whatever.
    pub fn post_bytes(&self, path: &str, kind: &str, body: &[u8]) -> Answer {
        let request = self
            .agent
            .post(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .header("Content-Type", kind);
        request.send(body).map(read).expect("the service answers")
    }

    /// PUT of JSON.
    pub fn put(&self, path: &str, body: &Value) -> Answer {
        self.agent
            .put(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .header("Content-Type", "application/json")
            .send(body.to_string())
            .map(read)
            .expect("the service answers")
    }

    /// PUT of JSON over a version that was seen.
    pub fn put_over(&self, path: &str, etag: &str, body: &Value) -> Answer {
        let request = self
            .agent
            .put(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .header("If-Match", etag);
        request
            .header("Content-Type", "application/json")
            .send(body.to_string())
            .map(read)
            .expect("the service answers")
    }

    /// Any method, with a JSON body where the method has one. Nobody is followed elsewhere.
    pub fn send(&self, method: &str, path: &str, body: &str) -> Answer {
        let request = ureq::http::Request::builder()
            .method(method)
            .uri(format!("{}{path}", self.address))
            .header("Authorization", self.says())
            .header("Content-Type", "application/json");
        let body = if method == "POST" || method == "PUT" {
            body
        } else {
            ""
        };
        let request = request.body(body.to_owned()).expect("a request");
        self.agent
            .run(request)
            .map(read)
            .expect("the service answers")
    }

    /// A deed with a fresh id, done by the cook.
    pub fn deed(&self, path: &str, mut body: Value) -> Answer {
        if body["id"].is_null() {
            body["id"] = json!(fresh_id());
        }
        if body["by"].is_null() {
            body["by"] = json!("Cook");
        }
        self.post(path, &body)
    }

    /// Receives a half pig of that many grams; its code.
    pub fn half_pig(&self, carcass: &str, grams: u64) -> String {
        let animal = farm("BRC").carcass(carcass).side("left");
        self.receive("pig-half").grams(grams).from(animal).made()
    }

    /// Receives a half pig of 45 kg in the demo kitchen, two days before its today; its code.
    pub fn side_on_the_rail(&self) -> String {
        self.side_of("0624-09")
    }

    /// The same of a carcass with a number of its own.
    pub fn side_of(&self, carcass: &str) -> String {
        let animal = farm("BRC").killed("2026-06-24").carcass(carcass);
        let pig = self.receive("pig-half").grams(45_000);
        pig.from(animal.side("left")).by("Oda Marsh").made()
    }

    /// The code of the lot with that note, as the demo's story names it.
    ///
    /// # Panics
    /// There is none.
    #[track_caller]
    pub fn noted(&self, name: &str) -> String {
        let found = self
            .get(&format!("/api/lots?q={name}&limit=200"))
            .expect(200)
            .body;
        let lots = found["lots"].as_array().into_iter().flatten();
        let lot = lots.into_iter().find(|lot| lot["note"] == name);
        let code = lot.and_then(|lot| lot["code"].as_str());
        code.unwrap_or_else(|| panic!("no lot is noted as {name}"))
            .to_owned()
    }

    /// Receives salt; its code.
    pub fn salt(&self, grams: u64) -> String {
        let salt = self.receive("salt").to("cooler").grams(grams);
        salt.bought(bought("PTS", "S-1")).made()
    }
}

/// An id as a device makes it.
pub fn fresh_id() -> String {
    // The library's own would ask for features that the service does not, and have all built twice.
    let number = || RandomState::new().build_hasher().finish().to_le_bytes();
    let mut bytes = [0; 16];
    bytes[..8].copy_from_slice(&number());
    bytes[8..].copy_from_slice(&number());
    uuid::Builder::from_random_bytes(bytes)
        .into_uuid()
        .to_string()
}

/// A day so many from the furnished kitchen's today: `2026-06-08`.
pub fn chrono_day(offset: i64) -> String {
    let here = chrono::Utc::now().with_timezone(&chrono_tz::America::New_York);
    (here.date_naive() + chrono::TimeDelta::days(offset)).to_string()
}

/// A moment so many minutes from now, RFC 3339.
pub fn moment(minutes: i64) -> String {
    (chrono::Utc::now() + chrono::TimeDelta::minutes(minutes)).to_rfc3339()
}

fn read(mut response: ureq::http::Response<ureq::Body>) -> Answer {
    let header = |name: &str| {
        response
            .headers()
            .get(name)
            .and_then(|value| value.to_str().ok())
            .map(str::to_owned)
    };
    let (kind, etag) = (header("content-type").unwrap_or_default(), header("etag"));
    let retry_after = header("retry-after").and_then(|seconds| seconds.parse().ok());
    let warnings = header("label-warnings").unwrap_or_default();
    let recorded = header("label-recorded").unwrap_or_default();
    let status = response.status().as_u16();
    let bytes = response
        .body_mut()
        .with_config()
        .limit(256 << 20)
        .read_to_vec()
        .unwrap_or_default();
    Answer {
        status,
        kind,
        etag,
        retry_after,
        warnings,
        recorded,
        body: serde_json::from_slice(&bytes).unwrap_or_default(),
        bytes,
    }
}
