//! TLS by certificate files, and a certificate of the kitchen's own for tablets that nobody outside calls.

use crate::config::CertificateArgs;
use crate::given;
use chrono::{DateTime, TimeDelta, Utc};
use rcgen::{
    BasicConstraints, CertificateParams, DnType, ExtendedKeyUsagePurpose, IsCa, Issuer, KeyPair,
    KeyUsagePurpose,
};
use rustls::ServerConfig;
use rustls::crypto::ring;
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The file that tablets are told to trust, beside the certificate.
pub const AUTHORITY: &str = "authority.pem";

/// The files of a certificate.
#[derive(Debug, Clone)]
pub struct CertificateFiles {
    /// The certificate with those above it.
    pub certificate: PathBuf,
    /// Its key.
    pub key: PathBuf,
}

impl CertificateFiles {
    /// What the listener needs.
    ///
    /// # Errors
    /// In words: a file cannot be read, or the two do not belong together.
    pub fn read(&self) -> Result<ServerConfig, String> {
        let cannot = |path: &Path, why: &str| format!("{} cannot be used: {why}", path.display());
        let (certificate, key) = (given::text(&self.certificate)?, given::text(&self.key)?);
        let chain: Result<Vec<_>, _> =
            CertificateDer::pem_slice_iter(certificate.as_bytes()).collect();
        let chain = chain.ok().filter(|chain| !chain.is_empty());
        let none = "there is no certificate in it that can be read";
        let chain = chain.ok_or_else(|| cannot(&self.certificate, none))?;
        let none = "there is no key in it that can be read";
        let key =
            PrivateKeyDer::from_pem_slice(key.as_bytes()).map_err(|_| cannot(&self.key, none))?;
        let apart = format!(
            "it and {} do not belong together, or are of a kind that is not known here",
            self.key.display()
        );
        ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(|error| error.to_string())?
            .with_no_client_auth()
            .with_single_cert(chain, key)
            .map_err(|_| cannot(&self.certificate, &apart))
    }

    /// What tablets are told to trust, if it lies beside the certificate.
    pub fn authority(&self) -> Option<String> {
        let path = self.certificate.with_file_name(AUTHORITY);
        given::text(&path).ok()
    }
}

/// For how long the certificate is good: devices take no longer one.
const GOOD: TimeDelta = TimeDelta::days(800);

/// Makes a certificate for some names, and the authority that tablets are told to trust. The authority's key
/// is thrown away: nobody can ever make another certificate that those tablets would trust.
///
/// # Errors
/// In words: a name cannot be one, or the files cannot be written; no file is overwritten.
pub fn make(args: &CertificateArgs, now: DateTime<Utc>) -> Result<String, String> {
    let failed = |error: rcgen::Error| format!("no certificate can be made: {error}");
    let mut of_authority = CertificateParams::default();
    named(&mut of_authority, "Kitchen's own authority", now)?;
    of_authority.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    of_authority.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    let authority_key = KeyPair::generate().map_err(failed)?;
    let authority = of_authority.self_signed(&authority_key).map_err(failed)?;
    let issuer = Issuer::new(of_authority, authority_key);

    if let Some(odd) = args.hosts.iter().find(|host| !is_name(host)) {
        return Err(format!(
            "{odd:?} is no name or number of a machine; write it like bench.local or 192.168.1.20"
        ));
    }
    let mut names = args.hosts.clone();
    names.extend(["localhost".to_owned(), "127.0.0.1".to_owned()]);
    let mut params = CertificateParams::new(names).map_err(failed)?;
    named(&mut params, "Kitchen", now)?;
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
    // Strict readers, Python's among them, take none that does not name the key above it.
    params.use_authority_key_identifier_extension = true;
    let key = KeyPair::generate().map_err(failed)?;
    let certificate = params.signed_by(&key, &issuer).map_err(failed)?;

    let folder = &args.out;
    std::fs::create_dir_all(folder).map_err(|error| {
        format!(
            "{} cannot be made: {}",
            folder.display(),
            given::why(&error)
        )
    })?;
    let chain = format!("{}{}", certificate.pem(), authority.pem());
    write(&folder.join("certificate.pem"), &chain, false)?;
    write(&folder.join("key.pem"), &key.serialize_pem(), true)?;
    write(&folder.join(AUTHORITY), &authority.pem(), false)?;
    let shown = folder.display();
    Ok(format!(
        "gambrel serve --certificate {shown}/certificate.pem --key {shown}/key.pem\n\
         Tablets trust it by {shown}/{AUTHORITY}: open /trust on each. It is good until {}.",
        (now + GOOD).date_naive()
    ))
}

/// Could a tablet call a machine so?
fn is_name(host: &str) -> bool {
    let is_part = |part: &str| {
        let plain = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-';
        !part.is_empty() && part.len() < 64 && part.bytes().all(plain)
    };
    host.parse::<std::net::IpAddr>().is_ok() || host.len() < 254 && host.split('.').all(is_part)
}

fn named(params: &mut CertificateParams, name: &str, now: DateTime<Utc>) -> Result<(), String> {
    params.distinguished_name.push(DnType::CommonName, name);
    let day = |at: DateTime<Utc>| {
        use chrono::Datelike;
        let date = at.date_naive();
        rcgen::date_time_ymd(
            date.year(),
            u8::try_from(date.month()).unwrap_or(1),
            u8::try_from(date.day()).unwrap_or(1),
        )
    };
    params.not_before = day(now - TimeDelta::days(1));
    params.not_after = day(now + GOOD);
    Ok(())
}

fn write(path: &Path, text: &str, secret: bool) -> Result<(), String> {
    use std::io::Write;
    let mut options = std::fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(if secret { 0o600 } else { 0o644 });
    }
    #[cfg(not(unix))]
    let _ = secret;
    let written = options
        .open(path)
        .and_then(|mut file| file.write_all(text.as_bytes()));
    written.map_err(|error| given::cannot_write(path, &error))
}
