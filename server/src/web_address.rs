//! What may stand on labels as this service's address: one of the web, that any telephone opens.

use std::net::Ipv6Addr;

/// Is it an address that a telephone opens from a label: `https://` or `http://`, a name, and plain letters?
pub fn is_web_address(url: &str) -> bool {
    let rest = url.strip_prefix("https://").or(url.strip_prefix("http://"));
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._:/[]".contains(&byte);
    rest.is_some_and(|rest| {
        let authority = rest.split('/').next().unwrap_or_default();
        let (name, port) = match authority.rsplit_once(':') {
            Some((name, port)) if !port.ends_with(']') => (name, Some(port)),
            _ => (authority, None),
        };
        let is_name = match name.strip_prefix('[') {
            Some(number) => number
                .strip_suffix(']')
                .is_some_and(|number| number.parse::<Ipv6Addr>().is_ok()),
            None => {
                !name.contains([':', '[', ']'])
                    && name.bytes().any(|byte| byte.is_ascii_alphanumeric())
            }
        };
        let path_is_plain = !rest[authority.len()..].contains(['[', ']']);
        let port_is_one = port.is_none_or(|port| port.parse::<u16>().is_ok_and(|port| port > 0));
        is_name && port_is_one && path_is_plain && rest.bytes().all(plain)
    })
}

#[cfg(test)]
mod tests {
    use super::is_web_address;

    #[test]
    fn an_address_on_labels_is_one() {
        for good in [
            "https://trace.kitchen.example",
            "http://bench.local:8080/x",
            "http://192.168.1.20",
            "https://[2001:db8::7]:8443/lots",
        ] {
            assert!(is_web_address(good), "{good}");
        }
        for bad in [
            "javascript:alert(1)",
            "https://",
            "http:///x",
            "https://[::1",
            "https://::1",
            "https://x]/",
            "https://x.example:",
            "https://x.example:99999",
            "https://me:pw@x.example",
            "https://x.example/?q",
            "https://x.example/[a]",
        ] {
            assert!(!is_web_address(bad), "{bad}");
        }
    }
}
