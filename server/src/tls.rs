//! TLS by certificate files, and a certificate of the kitchen's own for tablets that nobody outside calls.

use crate::config::CertificateArgs;
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
        let cannot = |path: &Path, why: &dyn std::fmt::Display| {
            format!("{} cannot be used: {why}", path.display())
        };
        let chain: Result<Vec<_>, _> = CertificateDer::pem_file_iter(&self.certificate)
            .map_err(|error| cannot(&self.certificate, &error))?
            .collect();
        let chain = chain.map_err(|error| cannot(&self.certificate, &error))?;
        if chain.is_empty() {
            return Err(cannot(&self.certificate, &"there is no certificate in it"));
        }
        let key = PrivateKeyDer::from_pem_file(&self.key);
        let key = key.map_err(|error| cannot(&self.key, &error))?;
        ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(|error| error.to_string())?
            .with_no_client_auth()
            .with_single_cert(chain, key)
            .map_err(|error| cannot(&self.certificate, &error))
    }

    /// What tablets are told to trust, if it lies beside the certificate.
    pub fn authority(&self) -> Option<String> {
        let path = self.certificate.with_file_name(AUTHORITY);
        std::fs::read_to_string(path).ok()
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

    let mut names = args.hosts.clone();
    names.extend(["localhost".to_owned(), "127.0.0.1".to_owned()]);
    let mut params = CertificateParams::new(names).map_err(failed)?;
    named(&mut params, "Kitchen", now)?;
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
    let key = KeyPair::generate().map_err(failed)?;
    let certificate = params.signed_by(&key, &issuer).map_err(failed)?;

    let folder = &args.out;
    std::fs::create_dir_all(folder)
        .map_err(|error| format!("{} cannot be made: {error}", folder.display()))?;
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
    written.map_err(|error| format!("{} cannot be written: {error}", path.display()))
}
