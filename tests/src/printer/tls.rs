//! Who the printer says it is on an encrypted line: a certificate that it made for itself, as printers do.

use rcgen::{CertificateParams, KeyPair};
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use rustls::{ServerConfig, ServerConnection, StreamOwned};
use std::io::Write;
use std::net::TcpStream;
use std::process::{Command, Stdio};
use std::sync::Arc;

/// A certificate and its key.
#[derive(Clone)]
pub(super) struct Identity {
    certificate: CertificateDer<'static>,
    config: Arc<ServerConfig>,
}

impl Identity {
    pub(super) fn new() -> Identity {
        let key = KeyPair::generate().expect("a key");
        let params = CertificateParams::new(["printer.local".to_owned()]).expect("a name");
        let made = params.self_signed(&key).expect("a certificate");
        let certificate = made.der().clone();
        let key = PrivateKeyDer::try_from(key.serialize_der()).expect("its key");
        let provider = Arc::new(rustls::crypto::ring::default_provider());
        let config = ServerConfig::builder_with_provider(provider)
            .with_safe_default_protocol_versions()
            .expect("versions of TLS")
            .with_no_client_auth()
            .with_single_cert(vec![certificate.clone()], key)
            .expect("they belong together");
        Identity {
            certificate,
            config: Arc::new(config),
        }
    }

    /// SHA-256 of the certificate, by coreutils.
    pub(super) fn fingerprint(&self) -> String {
        let mut tool = Command::new("sha256sum")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("coreutils");
        let mut into = tool.stdin.take().expect("its input");
        into.write_all(&self.certificate).expect("it reads");
        drop(into);
        let told = tool.wait_with_output().expect("it ends").stdout;
        let told = String::from_utf8(told).expect("digits");
        format!("sha256:{}", told.split(' ').next().unwrap_or_default())
    }

    pub(super) fn over(&self, call: TcpStream) -> StreamOwned<ServerConnection, TcpStream> {
        let tls = ServerConnection::new(self.config.clone()).expect("a line");
        StreamOwned::new(tls, call)
    }
}
