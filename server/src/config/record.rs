//! Options of what is done with a whole record: proven, written out and read in.

use super::DatabaseArgs;
use clap::Args;
use std::path::PathBuf;

/// What is proven.
#[derive(Debug, Clone, Default, Args)]
pub struct CheckArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// An anchor that was kept outside: proves that nothing before it was altered since.
    #[arg(long, value_name = "LINE")]
    pub anchor: Option<String>,
}

/// Where the files go.
#[derive(Debug, Clone, Args)]
pub struct ExportArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// A folder that is not there yet.
    #[arg(long, value_name = "FOLDER")]
    pub to: PathBuf,
}

/// Where the files are, and where the record goes.
#[derive(Debug, Clone, Args)]
pub struct ImportArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// The folder that `gambrel export` wrote.
    #[arg(value_name = "FOLDER")]
    pub from: PathBuf,
}
