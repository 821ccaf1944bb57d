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

/// Whose keeping is told.
#[derive(Debug, Clone, Args)]
pub struct KeepingArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// A file with the house's own, stricter numbers.
    #[arg(long, env = "GAMBREL_HOUSE", value_name = "FILE.json")]
    pub house: Option<PathBuf>,
}

/// What is brought up to this version.
#[derive(Debug, Clone, Args)]
pub struct UpgradeArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// On PostgreSQL: the role that the service signs in as. It may add to the record, and alter no table.
    #[arg(long, value_name = "ROLE")]
    pub service_role: Option<String>,
}
