//! The command line: parses options, opens the record, and hands over.

use clap::Parser;
use gambrel::app::App;
use gambrel::config::{CheckArgs, Cli, Command, LabelArgs, ProfilesArgs, ServeArgs, UpgradeArgs};
use gambrel::door::hosts::Hosts;
use gambrel::label_facts::file;
use gambrel::tls::{self, CertificateFiles};
use gambrel::who::{commands, people};
use gambrel::world::Clock;
use gambrel::{
    addresses, archive, check, copies, demo, keeping, lease, log, profiles, rooms, serve,
};
use std::io::Write;
use std::net::TcpListener;
use std::path::Path;
use std::process::ExitCode;
use store::Store;

fn main() -> ExitCode {
    let done = match Cli::parse().command {
        Command::Serve(args) => serve(&args).map(|()| true),
        Command::Check(args) => check(&args),
        Command::Anchor(args) => say(args.resolve(false).and_then(|place| check::anchor(&place))),
        Command::Backup(args) => say(copies::backup(&args, Clock::Machine.now())),
        Command::Restore(args) => say(copies::restore(&args, Clock::Machine.now())),
        Command::Drill(args) => say(copies::drill(&args, Clock::Machine.now())),
        Command::Key(args) => say(copies::make_key(&args.to)),
        Command::Export(args) => say(shipped().and_then(|law| archive::export(&args, law))),
        Command::Import(args) => say(archive::import(&args)),
        Command::Upgrade(args) => upgrade(&args).map(|()| true),
        Command::Keeping(args) => {
            say(rules(args.house.as_deref()).and_then(|law| keeping::told(&args, law)))
        }
        Command::Profiles(args) => list(&args).map(|()| true),
        Command::People(args) => say(shipped().and_then(|law| commands::people(&args, law))),
        Command::Token(args) => say(shipped().and_then(|law| commands::token(&args, law))),
        Command::Certificate(args) => say(tls::make(&args, Clock::Machine.now())),
        Command::Label(args) => label(&args).map(|()| true),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(says) => {
            eprintln!("gambrel: {says}");
            ExitCode::FAILURE
        }
    }
}

fn shipped() -> Result<law::Shipped, String> {
    rules(None)
}

fn rules(house: Option<&Path>) -> Result<law::Shipped, String> {
    let day = Clock::Machine.now().date_naive();
    profiles::read(house, day).map(|(law, _)| law)
}

fn say(done: Result<String, String>) -> Result<bool, String> {
    // Nobody may be reading to the end; that is no fault.
    let _ = writeln!(std::io::stdout(), "{}", done?);
    Ok(true)
}

fn upgrade(args: &UpgradeArgs) -> Result<(), String> {
    let place = args.database.resolve(false)?;
    let done = store::rights::upgrade(&place.address, args.service_role.as_deref());
    done.map_err(|error| error.to_string())
}

fn check(args: &CheckArgs) -> Result<bool, String> {
    check::run(&args.database.resolve(false)?, args.anchor.as_deref())
}

fn list(args: &ProfilesArgs) -> Result<(), String> {
    let day = Clock::Machine.now().date_naive();
    let text = profiles::list(args, day)?;
    // Nobody may be reading to the end; that is no fault.
    let _ = writeln!(std::io::stdout(), "{text}");
    Ok(())
}

fn label(args: &LabelArgs) -> Result<(), String> {
    if args.list {
        // Nobody may be reading to the end; that is no fault.
        let _ = writeln!(std::io::stdout(), "{}", file::list()?);
        return Ok(());
    }
    if let Some(text) = file::show::asked(&args.design)? {
        let _ = writeln!(std::io::stdout(), "{}", text.trim_end());
        return Ok(());
    }
    let job = file::Job::new(args, shipped()?)?;
    if args.watch {
        file::watch::run(&job, &mut std::io::stdout());
        return Ok(());
    }
    for warns in job.make(&job.read())?.warns {
        eprintln!("gambrel: {warns}");
    }
    Ok(())
}

fn serve(args: &ServeArgs) -> Result<(), String> {
    let serving = args.resolve()?;
    let _log = log::start(serving.log)?;
    let tls = serving
        .tls
        .as_ref()
        .map(CertificateFiles::read)
        .transpose()?;
    let listener = TcpListener::bind(serving.listen).map_err(|error| {
        format!(
            "cannot listen on {}: {error}. Is it running already? Choose another with --listen.",
            serving.listen
        )
    })?;
    let address = listener.local_addr().map_err(|error| error.to_string())?;
    let scheme = if tls.is_some() { "https" } else { "http" };
    let public_url = serving
        .public_url
        .clone()
        .unwrap_or_else(|| format!("{scheme}://{address}"));
    let templates = gambrel::label_facts::templates::load(serving.templates.as_deref())?;
    for says in &templates.bad {
        tracing::warn!("{says}");
    }
    // Only the demo needs a folder, and it goes when the service ends.
    let folder = args.demo.then(tempfile::tempdir).transpose();
    let folder = folder.map_err(|error| format!("no temporary folder can be made: {error}"))?;
    let (place, clock) = match &folder {
        Some(folder) => (
            demo::place(&args.database, folder.path())?,
            Clock::starting_at(demo::now()),
        ),
        None => (args.database.resolve(args.create)?, Clock::Machine),
    };
    let (law, ended) = profiles::read(serving.house.as_deref(), clock.now().date_naive())?;
    for says in ended {
        tracing::warn!("{says}");
    }
    let system = actix_web::rt::System::new();
    let outlives = system.block_on(async { serve::outlive_full_files() });
    outlives.map_err(|error| error.to_string())?;
    let open = || {
        let store = Store::open(&place.address, place.create, rooms::CONNECTIONS);
        store.map_err(|error| error.to_string())
    };
    let mut store = open()?;
    let found = lease::begin(&store, clock.now(), args.moved)?;
    if found == lease::Found::Moved {
        // How often its numbers were moved on is read when it is opened.
        drop(store);
        store = open()?;
    }
    let mut app = App::new(store, clock, public_url, templates.known, law);
    app.copying.timetable = serving.copies;
    let loopback = address.ip().is_loopback();
    app.hosts = Hosts::new(&serving.hosts, !loopback, serving.proxy);
    app.authority = serving.tls.as_ref().and_then(CertificateFiles::authority);
    app.hear(&app.public_url);
    app.demo = args.demo;
    let mut told = format!("Gambrel is at {scheme}://{address}/");
    let learnt = app.store.look(|conn| app.learn(conn));
    learnt.map_err(|error| error.to_string())?;
    if let Some(url) = serving.public_url.as_deref().filter(|_| !args.demo) {
        // Whoever may not write the record now is told so by the first deed.
        if let Err(error) = addresses::keep(&app, url) {
            tracing::warn!("the address {url} could not be kept: {error}");
        }
    }
    if args.demo {
        told += " with the demo kitchen. Five things to try:\n";
        for line in demo::build(&mut app)? {
            let line = line.replace("{address}", &format!("{scheme}://{address}"));
            told += &format!("  {line}\n");
        }
        told += match args.database.database {
            None => "Ctrl-C ends it; nothing of it is kept.",
            Some(_) => {
                "Ctrl-C ends it; what was recorded stays in the database that --database names."
            }
        };
    } else if let Some((name, word)) = people::first(&app).map_err(|error| error.to_string())? {
        told += &format!(
            "\nNobody can manage this kitchen yet. Sign in as {name} with the word {word}: it is good once."
        );
    }
    if found == lease::Found::Moved {
        told += "\nThis record was worked in elsewhere before: it was copied or moved. Every running number was moved on, so that no code is given out twice. If the other one is still worked in, put it away.";
    }
    // Nobody may be reading any more; the service goes on.
    let _ = writeln!(std::io::stdout(), "{told}");
    system
        .block_on(serve::run(app, listener, tls, serving.workers))
        .map_err(|error| error.to_string())
}
