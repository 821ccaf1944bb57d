//! Options: the command line wins over the environment, the environment over one TOML file.

mod certificate;
mod copies;
mod record;
mod who;

pub use certificate::CertificateArgs;
pub use copies::{BackupArgs, CopiesArgs, DrillArgs, KeyArgs, RestoreArgs};
pub use record::{CheckArgs, ExportArgs, ImportArgs, KeepingArgs, UpgradeArgs};
pub use who::{PeopleArgs, PeopleCommand, TokenArgs};

use crate::copies::timetable::Timetable;

use crate::label_facts::file::show::DesignArgs;
use crate::log::Level;
use crate::tls::CertificateFiles;
use crate::web_address::is_web_address;
use clap::{Args, Parser, Subcommand};
use serde::Deserialize;
use std::net::{IpAddr, SocketAddr};
use std::path::PathBuf;
use store::Address;

/// Labels and traces every lot of a kitchen that buys whole animals.
#[derive(Debug, Parser)]
#[command(name = "gambrel", version, about, max_term_width = 100)]
pub struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What the program does.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Serves the pages and the API. Try it with --demo.
    Serve(ServeArgs),
    /// Reads the whole record, proves that it is sound, and prints its digest.
    Check(CheckArgs),
    /// Prints the end of the record's chain: a line to be kept outside, for `check --anchor`.
    Anchor(DatabaseArgs),
    /// Copies the whole record into a folder, while it is worked in, and proves the copy.
    Backup(BackupArgs),
    /// Makes a record of a copy where there is none, and proves it. Nothing is overwritten.
    Restore(RestoreArgs),
    /// Tries the newest copy: restores it in a place of its own, proves it, and throws it away.
    Drill(DrillArgs),
    /// Makes a key for copies, and prints it once.
    Key(KeyArgs),
    /// Writes the whole record as plain files that need no program of ours.
    Export(ExportArgs),
    /// Makes the same record of such files, on either engine, where there is none.
    Import(ImportArgs),
    /// Brings a record up to this version of the program; on PostgreSQL, gives the service's role its rights.
    Upgrade(UpgradeArgs),
    /// Tells how long each record is kept by the rules of the place, and which papers may be thinned.
    Keeping(KeepingArgs),
    /// Lists the rows of the law that it works by, with their sources' marks.
    Profiles(ProfilesArgs),
    /// Lists the people of the record, adds one, or gives one a word that signs them in once.
    People(PeopleArgs),
    /// Makes a token for a script or a device and prints it, once.
    Token(TokenArgs),
    /// Makes a certificate of the kitchen's own, for tablets.
    Certificate(CertificateArgs),
    /// Makes one label without a server, for whoever designs labels.
    Label(LabelArgs),
}

/// Where the record is.
#[derive(Debug, Clone, Default, Args)]
pub struct DatabaseArgs {
    /// A file's path, sqlite:PATH, or postgres://… [default: gambrel.db in your data folder]
    #[arg(long, env = "GAMBREL_DATABASE", value_name = "ADDRESS")]
    pub database: Option<String>,
    /// A file with these options, one a line: database = "…"
    #[arg(long, env = "GAMBREL_CONFIG", value_name = "FILE.toml")]
    pub config: Option<PathBuf>,
}

/// How to serve.
#[derive(Debug, Clone, Default, Args)]
pub struct ServeArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// Make the database if there is none at the path given.
    #[arg(long, env = "GAMBREL_CREATE")]
    pub create: bool,
    /// Where to listen. Beyond this machine only with --certificate, or with --proxy in front. [default: 127.0.0.1:8080]
    #[arg(long, env = "GAMBREL_LISTEN", value_name = "ADDR:PORT")]
    pub listen: Option<String>,
    /// The address that the codes on labels hold, where the kitchen names none.
    #[arg(long, env = "GAMBREL_PUBLIC_URL", value_name = "URL")]
    pub public_url: Option<String>,
    /// The certificate for TLS, with those above it.
    #[arg(
        long,
        env = "GAMBREL_CERTIFICATE",
        value_name = "FILE.pem",
        requires = "key"
    )]
    pub certificate: Option<PathBuf>,
    /// Its key.
    #[arg(
        long,
        env = "GAMBREL_KEY",
        value_name = "FILE.pem",
        requires = "certificate"
    )]
    pub key: Option<PathBuf>,
    /// The number of the proxy in front, which ends TLS: only it and this machine may call.
    #[arg(long, env = "GAMBREL_PROXY", value_name = "IP")]
    pub proxy: Option<IpAddr>,
    /// A name that the service goes by besides its public address: bench.local. Again for more.
    #[arg(
        long = "host",
        env = "GAMBREL_HOSTS",
        value_name = "NAME",
        value_delimiter = ','
    )]
    pub hosts: Vec<String>,
    /// A file with the house's own numbers: stricter ones, or looser by a named approval.
    #[arg(long, env = "GAMBREL_HOUSE", value_name = "FILE.json")]
    pub house: Option<PathBuf>,
    /// A folder with the house's own label templates.
    #[arg(long, env = "GAMBREL_TEMPLATES", value_name = "FOLDER")]
    pub templates: Option<PathBuf>,
    /// How many workers answer the network. [default: one for each core]
    #[arg(long, env = "GAMBREL_WORKERS", value_name = "N")]
    pub workers: Option<usize>,
    /// How much the log on standard error says. [default: info]
    #[arg(long, env = "GAMBREL_LOG", value_name = "LEVEL")]
    pub log: Option<Level>,
    #[command(flatten)]
    #[allow(missing_docs, reason = "see CopiesArgs")]
    pub copies: CopiesArgs,
    /// The record was copied or moved here on purpose, and the one it came from is put away.
    #[arg(long)]
    pub moved: bool,
    /// Show an invented kitchen in a fresh database that is gone afterwards.
    #[arg(long, env = "GAMBREL_DEMO")]
    pub demo: bool,
}

/// Which rows.
#[derive(Debug, Args)]
pub struct ProfilesArgs {
    /// Only the rows that nobody has confirmed: they warn and never block.
    #[arg(long)]
    pub unconfirmed: bool,
    /// Only one place: us, ca, eu, uk.
    #[arg(long, value_name = "PLACE")]
    pub place: Option<String>,
    /// A file with the house's own, stricter numbers.
    #[arg(long, env = "GAMBREL_HOUSE", value_name = "FILE.json")]
    pub house: Option<PathBuf>,
}

/// Which label.
#[derive(Debug, Args)]
pub struct LabelArgs {
    /// What the label says: {"texts": {"name": "…", …}, "qr": "…", "linear": "…"}
    #[arg(value_name = "FACTS.json", required_unless_present_any = ["list", "show", "schema", "sample", "from"])]
    pub facts: Option<PathBuf>,
    /// A shipped template's name, or the path of a template's file.
    #[arg(long, value_name = "NAME|FILE.json", required_unless_present_any = ["list", "show", "schema", "sample", "from"])]
    pub template: Option<String>,
    /// Where the label goes: the ending says in what form (.pdf, .png, .svg, .pwg). Again for more. A - before the
    /// ending (-.png), or - alone for PDF, is standard output.
    #[arg(long, value_name = "FILE", allow_hyphen_values = true, required_unless_present_any = ["list", "show", "schema", "sample", "from"])]
    pub out: Vec<PathBuf>,
    /// The printer's dots per inch: 203 or 300.
    #[arg(long, default_value_t = 203)]
    pub dpi: u16,
    /// For a customer: the place whose law it is held to (us, ca, eu, uk). [default: every place that the
    /// template serves]
    #[arg(long, value_name = "PLACE")]
    pub place: Option<String>,
    /// For a customer: how much is in the pack, to hold the net weight on it against.
    #[arg(long, value_name = "GRAMS")]
    pub grams: Option<String>,
    /// For a customer: there is no meat in it.
    #[arg(long)]
    pub without_meat: bool,
    /// Draw it although a law forbids it for sale: it is marked as a specimen, in words and in its codes.
    #[arg(long)]
    pub specimen: bool,
    /// Make it again whenever the template or the facts are saved, until Ctrl-C.
    #[arg(long)]
    pub watch: bool,
    /// List the shipped templates, and no more.
    #[arg(long, exclusive = true)]
    pub list: bool,
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DesignArgs")]
    pub design: DesignArgs,
}

/// The options of one TOML file.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    database: Option<String>,
    create: Option<bool>,
    listen: Option<String>,
    public_url: Option<String>,
    hosts: Option<Vec<String>>,
    certificate: Option<PathBuf>,
    key: Option<PathBuf>,
    proxy: Option<IpAddr>,
    workers: Option<usize>,
    house: Option<PathBuf>,
    templates: Option<PathBuf>,
    log: Option<Level>,
    copies: Option<PathBuf>,
    copies_every: Option<String>,
    copies_key: Option<PathBuf>,
    copies_daily: Option<usize>,
    copies_weekly: Option<usize>,
    copies_monthly: Option<usize>,
}

/// Its options by name.
const OPTIONS: &str = "database, create, listen, public_url, hosts, certificate, key, proxy, workers, house, \
                       templates, log, copies, copies_every, copies_key, copies_daily, copies_weekly, copies_monthly";

fn file(path: Option<&PathBuf>) -> Result<File, String> {
    let Some(path) = path else {
        return Ok(File::default());
    };
    let text = crate::given::text(path)?;
    toml::from_str(&text).map_err(|error| {
        let before = error.span().map_or(0, |span| span.start.min(text.len()));
        let line = text.bytes().take(before).filter(|byte| *byte == b'\n').count() + 1;
        format!(
            "{}, line {line}: this is no option. Options are written like database = \"…\", one a line: {OPTIONS}.",
            path.display()
        )
    })
}

/// An open door to the record: its address, and whether it may be made.
#[derive(Debug, Clone)]
pub struct Where {
    /// The address.
    pub address: Address,
    /// May a file be made?
    pub create: bool,
}

impl DatabaseArgs {
    /// Where the record is; the default file may be made, one given by hand only if `create` says so.
    ///
    /// # Errors
    /// In words: what is wrong with the address or the file of options.
    pub fn resolve(&self, create: bool) -> Result<Where, String> {
        let file = file(self.config.as_ref())?;
        let create = create || file.create.unwrap_or(false);
        match self.database.clone().or(file.database) {
            Some(text) => Ok(Where {
                address: Address::parse(&text).map_err(|error| error.to_string())?,
                create,
            }),
            None => Ok(Where {
                address: Address::Sqlite(default_file()?),
                create: true,
            }),
        }
    }
}

fn default_file() -> Result<PathBuf, String> {
    let data = std::env::var_os("XDG_DATA_HOME")
        .map(PathBuf::from)
        .filter(|path| path.is_absolute());
    let home = || std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".local/share"));
    let folder = data
        .or_else(home)
        .ok_or("no data folder is known: give --database PATH")?
        .join("gambrel");
    std::fs::create_dir_all(&folder).map_err(|error| {
        format!(
            "{} cannot be made: {}",
            folder.display(),
            crate::given::why(&error)
        )
    })?;
    Ok(folder.join("gambrel.db"))
}

/// How to serve, settled.
#[derive(Debug)]
pub struct Serving {
    /// Where to listen.
    pub listen: SocketAddr,
    /// The address that codes hold, where the kitchen names none.
    pub public_url: Option<String>,
    /// The certificate for TLS.
    pub tls: Option<CertificateFiles>,
    /// The proxy in front.
    pub proxy: Option<IpAddr>,
    /// The names that it goes by, besides.
    pub hosts: Vec<String>,
    /// The house's own numbers.
    pub house: Option<PathBuf>,
    /// The house's own label templates.
    pub templates: Option<PathBuf>,
    /// How many workers.
    pub workers: usize,
    /// How much the log says.
    pub log: Level,
    /// When copies are made.
    pub copies: Option<Timetable>,
}

impl ServeArgs {
    /// How to serve.
    ///
    /// # Errors
    /// In words: an address that is not valid, or one that others could reach.
    pub fn resolve(&self) -> Result<Serving, String> {
        let file = file(self.database.config.as_ref())?;
        let copies = self.copies.resolve(&file)?;
        let listen = self
            .listen
            .clone()
            .or(file.listen)
            .unwrap_or_else(|| "127.0.0.1:8080".into());
        let address: SocketAddr = listen
            .replace("localhost", "127.0.0.1")
            .parse()
            .map_err(|_| format!("{listen:?} is not an address; write it like 127.0.0.1:8080"))?;
        let certificate = self.certificate.clone().or(file.certificate);
        let tls =
            match (certificate, self.key.clone().or(file.key)) {
                (Some(certificate), Some(key)) => Some(CertificateFiles { certificate, key }),
                (None, None) => None,
                _ => return Err(
                    "a certificate and its key belong together: give both --certificate and --key"
                        .into(),
                ),
            };
        let proxy = self.proxy.or(file.proxy);
        if !address.ip().is_loopback() && tls.is_none() && proxy.is_none() {
            return Err(format!(
                "{listen} could be reached from other machines, and whoever listens there would hear PINs. Give --certificate and --key (`gambrel certificate` makes them), or name the proxy in front with --proxy."
            ));
        }
        let public_url = self.public_url.clone().or(file.public_url);
        if let Some(url) = public_url.as_deref().filter(|url| !is_web_address(url)) {
            return Err(format!(
                "{url:?} cannot stand on labels as an address; write it like https://trace.kitchen.example"
            ));
        }
        let cores = std::thread::available_parallelism().map_or(2, usize::from);
        Ok(Serving {
            listen: address,
            public_url,
            tls,
            proxy,
            hosts: match self.hosts.is_empty() {
                true => file.hosts.unwrap_or_default(),
                false => self.hosts.clone(),
            },
            house: self.house.clone().or(file.house),
            templates: self.templates.clone().or(file.templates),
            workers: self.workers.or(file.workers).unwrap_or(cores).clamp(1, 64),
            log: self.log.or(file.log).unwrap_or(Level::Info),
            copies,
        })
    }
}
