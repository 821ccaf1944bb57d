//! Options of making a certificate.

use clap::Args;
use std::path::PathBuf;

/// Which certificate.
#[derive(Debug, Args)]
pub struct CertificateArgs {
    /// The folder that it goes into. Nothing there is overwritten.
    #[arg(long, value_name = "FOLDER")]
    pub out: PathBuf,
    /// A name or number that tablets call the service by: bench.local, 192.168.1.20. Again for more.
    #[arg(
        long = "host",
        value_name = "NAME",
        required = true,
        value_delimiter = ','
    )]
    pub hosts: Vec<String>,
}
