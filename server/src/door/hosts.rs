//! Which names this service goes by. A page of another site that has its name point at this machine is
//! turned away by the name it asks for, and one that sends a form by where it says it comes from.

use crate::app::App;
use crate::error::{Error, Problem};
use crate::problems::TitleSays;
use crate::who::permit::{SESSION, cookie};
use crate::who::says::WhoSays;
use actix_web::HttpRequest;
use actix_web::http::{Method, StatusCode, header};
use std::collections::BTreeSet;
use std::net::IpAddr;
use std::sync::{PoisonError, RwLock};

/// The names that a service goes by, besides those of the machine itself.
#[derive(Debug, Default)]
pub struct Hosts {
    /// Names in small letters, without a port.
    names: RwLock<BTreeSet<String>>,
    /// Does it listen to other machines? Then they may call it by its number, which no name can be made
    /// to stand for.
    beyond_loopback: bool,
    /// The proxy in front that ends TLS, if there is one.
    proxy: Option<IpAddr>,
}

impl Hosts {
    /// Those names, and whether others may reach it, and through which proxy.
    pub fn new(names: &[String], beyond_loopback: bool, proxy: Option<IpAddr>) -> Hosts {
        let hosts = Hosts {
            names: RwLock::default(),
            beyond_loopback,
            proxy,
        };
        for name in names {
            hosts.learn(name);
        }
        hosts
    }

    /// Learns a name, or the name in an address. Labels with an old address are on the shelf for years.
    pub fn learn(&self, address: &str) {
        let rest = address.split_once("://").map_or(address, |(_, rest)| rest);
        let authority = rest.split('/').next().unwrap_or_default();
        let name = without_port(authority).to_ascii_lowercase();
        if !name.is_empty() {
            let mut names = self.names.write().unwrap_or_else(PoisonError::into_inner);
            names.insert(name);
        }
    }

    /// Is it one of ours?
    pub fn knows(&self, authority: &str) -> bool {
        let name = without_port(authority).to_ascii_lowercase();
        let within = name
            .strip_prefix('[')
            .and_then(|rest| rest.strip_suffix(']'));
        let bare = within.unwrap_or(&name);
        if let Ok(number) = bare.parse::<IpAddr>() {
            return number.is_loopback() || self.beyond_loopback;
        }
        let names = self.names.read().unwrap_or_else(PoisonError::into_inner);
        name == "localhost" || name.ends_with(".localhost") || names.contains(&name)
    }
}

fn without_port(authority: &str) -> &str {
    match authority.rsplit_once(':') {
        // The last part of an address in brackets is no port.
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => name,
        _ => authority,
    }
}

/// Refuses a request for another name, and a write that another site sends.
///
/// # Errors
/// 421 and 403.
pub fn refuse(app: &App, request: &HttpRequest) -> Result<(), Error> {
    let headers = request.headers();
    let text = |name: header::HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
    // Where a proxy ends TLS, whoever comes past it would be heard by all.
    let peer = request.peer_addr().map(|peer| peer.ip().to_canonical());
    if let (Some(proxy), Some(peer)) = (app.hosts.proxy, peer)
        && peer != proxy
        && !peer.is_loopback()
    {
        let origin = peer.to_string();
        let (title, detail) = (TitleSays::Origin, WhoSays::PastProxy { origin });
        return Err(Problem::new(StatusCode::FORBIDDEN, "past-proxy", title, detail).into());
    }
    let host = text(header::HOST).unwrap_or_default();
    // A request may also say for whom it is before its path; then both have to be ours, and the same.
    let target = request
        .uri()
        .authority()
        .map(|authority| authority.as_str());
    let other =
        target.filter(|target| !target.eq_ignore_ascii_case(host) || !app.hosts.knows(target));
    if let Some(host) = other.or(Some(host).filter(|host| !app.hosts.knows(host))) {
        let host = shown(host);
        let (title, detail) = (TitleSays::Host, WhoSays::Host { host });
        return Err(Problem::new(StatusCode::MISDIRECTED_REQUEST, "host", title, detail).into());
    }
    if [Method::GET, Method::HEAD, Method::OPTIONS].contains(request.method()) {
        return Ok(());
    }
    let site = headers
        .get("sec-fetch-site")
        .and_then(|site| site.to_str().ok());
    let ours = match text(header::ORIGIN) {
        Some(origin) => {
            let parts = origin.split_once("://");
            parts.is_some_and(|(scheme, authority)| {
                is_our_scheme(app, request, scheme)
                    && (authority.eq_ignore_ascii_case(host)
                        || app.hosts.proxy.is_some() && app.hosts.knows(authority))
            })
        }
        // A program says nothing of where it comes from; a browser that has our cookie always does.
        None => match site {
            Some(site) => matches!(site, "same-origin" | "none"),
            None => cookie(request, SESSION).is_none(),
        },
    };
    if ours {
        return Ok(());
    }
    let detail = match text(header::ORIGIN).filter(|origin| !origin.is_empty()) {
        Some(origin) => WhoSays::Origin {
            origin: shown(origin),
        },
        None => WhoSays::NoOrigin,
    };
    let title = TitleSays::Origin;
    Err(Problem::new(StatusCode::FORBIDDEN, "origin", title, detail).into())
}

/// Is that how our own pages are reached? A page that came without TLS may be anybody's.
fn is_our_scheme(app: &App, request: &HttpRequest, scheme: &str) -> bool {
    let told = request.headers().get("x-forwarded-proto");
    match app.hosts.proxy {
        _ if request.app_config().secure() => scheme == "https",
        // Whoever comes without the proxy's word is on this machine.
        Some(_) => match told {
            Some(told) => told.as_bytes() == scheme.as_bytes(),
            None => matches!(scheme, "http" | "https"),
        },
        None => scheme == "http",
    }
}

/// Did it come to the proxy in front by TLS?
pub fn came_by_tls(request: &HttpRequest) -> bool {
    let app = request.app_data::<actix_web::web::Data<App>>();
    let told = request.headers().get("x-forwarded-proto");
    app.is_some_and(|app| app.hosts.proxy.is_some())
        && told.is_some_and(|told| told.as_bytes() == b"https")
}

fn shown(text: &str) -> String {
    text.chars().take(100).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_our_own_names_are_known() {
        let hosts = Hosts::new(&["https://Trace.Kitchen.example/x".into()], false, None);
        hosts.learn("bench.local:8080");
        for ours in [
            "127.0.0.1:8080",
            "127.9.9.9",
            "[::1]:8080",
            "localhost:1",
            "trace.kitchen.example",
            "TRACE.kitchen.example:443",
            "bench.local",
            "a.localhost",
        ] {
            assert!(hosts.knows(ours), "{ours}");
        }
        for other in [
            "",
            "evil.example",
            "127.0.0.1.evil.example",
            "localhost.evil.example",
            "192.168.1.5",
            "trace.kitchen.example.evil.example",
            "[::2]",
            "127.0.0.1@evil.example",
            "0.0.0.0",
            "2130706433",
        ] {
            assert!(!hosts.knows(other), "{other}");
        }
        assert!(Hosts::new(&[], true, None).knows("192.168.1.5:8080"));
        assert!(!Hosts::new(&[], true, None).knows("evil.example"));
    }
}
