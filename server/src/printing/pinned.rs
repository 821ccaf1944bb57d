//! An encrypted line to a printer. Who answers is known by one certificate and by nothing else: no authority
//! vouches for a printer on a kitchen's own network, and its name and days prove nothing there.

use super::fingerprint::Fingerprint;
use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::crypto::{CryptoProvider, ring, verify_tls12_signature, verify_tls13_signature};
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::{
    CertificateError, ClientConfig, ClientConnection, DigitallySignedStruct, SignatureScheme,
    StreamOwned,
};
use std::sync::{Arc, OnceLock};
use ureq::Error;
use ureq::unversioned::transport::{
    Buffers, ConnectionDetails, Connector, LazyBuffers, NextTimeout, Transport, TransportAdapter,
};

/// What was seen of who answered.
#[derive(Debug, Default)]
pub struct Seen {
    /// The certificate that was shown.
    certificate: OnceLock<Fingerprint>,
    /// The line stands, and a question may go out on it.
    open: OnceLock<()>,
}

impl Seen {
    /// The certificate that was shown, if one was.
    pub fn certificate(&self) -> Option<Fingerprint> {
        self.certificate.get().copied()
    }

    /// May anything of the question have gone out?
    pub fn was_open(&self) -> bool {
        self.open.get().is_some()
    }
}

/// Makes the encrypted line upon one that stands.
#[derive(Debug)]
pub struct Pinned {
    /// The one certificate that is spoken to; with none, nobody is.
    pub pin: Option<Fingerprint>,
    /// What is seen on the way.
    pub seen: Arc<Seen>,
}

impl<In: Transport> Connector<In> for Pinned {
    type Out = PinnedLine;

    fn connect(
        &self,
        details: &ConnectionDetails<'_>,
        chained: Option<In>,
    ) -> Result<Option<PinnedLine>, Error> {
        let Some(line) = chained else {
            return Ok(None);
        };
        let host = details.uri.host().unwrap_or_default();
        let host = host.trim_start_matches('[').trim_end_matches(']');
        let name = ServerName::try_from(host.to_owned())
            .map_err(|_| Error::Tls("its name cannot be a host's"))?;
        let provider = Arc::new(ring::default_provider());
        let verifier = Verifier {
            pin: self.pin,
            seen: self.seen.clone(),
            provider: provider.clone(),
        };
        let config = ClientConfig::builder_with_provider(provider)
            .with_safe_default_protocol_versions()
            .map_err(|_| Error::Tls("no version of TLS can be spoken"))?
            .dangerous()
            .with_custom_certificate_verifier(Arc::new(verifier))
            .with_no_client_auth();
        let mut tls = ClientConnection::new(Arc::new(config), name)
            .map_err(|_| Error::Tls("no encrypted line can be begun"))?;
        let mut sock = TransportAdapter::new(line.boxed(), details.current_time.clone());
        sock.set_timeout(details.timeout);
        while tls.is_handshaking() {
            tls.complete_io(&mut sock).map_err(Error::from)?;
        }
        // With TLS 1.3 a certificate is judged before anything of ours goes out.
        let _ = self.seen.open.set(());
        let buffers = LazyBuffers::new(
            details.config.input_buffer_size(),
            details.config.output_buffer_size(),
        );
        Ok(Some(PinnedLine {
            buffers,
            stream: StreamOwned { conn: tls, sock },
        }))
    }
}

/// An encrypted line that stands.
pub struct PinnedLine {
    buffers: LazyBuffers,
    stream: StreamOwned<ClientConnection, TransportAdapter>,
}

impl std::fmt::Debug for PinnedLine {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("an encrypted line")
    }
}

impl Transport for PinnedLine {
    fn buffers(&mut self) -> &mut dyn Buffers {
        &mut self.buffers
    }

    fn transmit_output(&mut self, amount: usize, timeout: NextTimeout) -> Result<(), Error> {
        use std::io::Write;
        self.stream.get_mut().set_timeout(timeout);
        let output = self.buffers.output().get(..amount).unwrap_or_default();
        self.stream.write_all(output)?;
        Ok(())
    }

    fn await_input(&mut self, timeout: NextTimeout) -> Result<bool, Error> {
        use std::io::Read;
        self.stream.get_mut().set_timeout(timeout);
        let amount = self.stream.read(self.buffers.input_append_buf())?;
        self.buffers.input_appended(amount);
        Ok(amount > 0)
    }

    fn is_open(&mut self) -> bool {
        self.stream.get_mut().get_mut().is_open()
    }

    fn is_tls(&self) -> bool {
        true
    }
}

/// Takes one certificate, and that whoever shows it has its key.
#[derive(Debug)]
struct Verifier {
    pin: Option<Fingerprint>,
    seen: Arc<Seen>,
    provider: Arc<CryptoProvider>,
}

impl ServerCertVerifier for Verifier {
    fn verify_server_cert(
        &self,
        leaf: &CertificateDer<'_>,
        _: &[CertificateDer<'_>],
        _: &ServerName<'_>,
        _: &[u8],
        _: UnixTime,
    ) -> Result<ServerCertVerified, rustls::Error> {
        let shown = Fingerprint::of(leaf);
        let _ = self.seen.certificate.set(shown);
        match self.pin == Some(shown) {
            true => Ok(ServerCertVerified::assertion()),
            false => Err(CertificateError::ApplicationVerificationFailure.into()),
        }
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        leaf: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, rustls::Error> {
        let known = &self.provider.signature_verification_algorithms;
        verify_tls12_signature(message, leaf, signed, known)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        leaf: &CertificateDer<'_>,
        signed: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, rustls::Error> {
        let known = &self.provider.signature_verification_algorithms;
        verify_tls13_signature(message, leaf, signed, known)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        self.provider
            .signature_verification_algorithms
            .supported_schemes()
    }
}
