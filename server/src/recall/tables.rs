//! The tables of a report.

use super::facts::{LotFacts, PersonFacts};
use super::paper::{Writer, mark, plain};
use super::picture::local;
use super::says::ReportSays;
use domain::grams::Grams;
use domain::incident::{CountState, IncidentNote, Milestone};
use labels::report::{Line, Part};
use words::capital;

type Cells = Vec<Vec<Line>>;

/// What was done when, and how long after the call.
pub(super) fn clock(of: &Writer<'_>) -> Vec<Cells> {
    let row = |mark: &super::facts::MilestoneFacts| {
        let what = Milestone::parse(&mark.what);
        let what = match (what, of.facts.disposed_so_far()) {
            (Some(Milestone::Disposed), Some(says)) => of.say(says),
            (Some(what), _) => of.speech.say(&what.says()),
            (None, _) => String::new(),
        };
        let later = of.say(ReportSays::later(mark.seconds));
        vec![
            vec![plain(capital(&what))],
            vec![plain(of.moment(&mark.at))],
            vec![plain(later)],
        ]
    };
    of.facts.milestones.iter().map(row).collect()
}

fn name(of: &Writer<'_>, lot: &LotFacts) -> Vec<Line> {
    let name = lot.name(of.speech.language.tag());
    vec![mark(capital(&name)), plain(lot.shown.clone())]
}

/// Every lot: why it is in scope, where it went, what became of it since the call.
pub(super) fn lots(of: &Writer<'_>) -> Part {
    let language = of.speech.language.tag();
    let row = |lot: &LotFacts| {
        let because = lot.because.iter();
        let because = because.map(|why| plain(super::facts::in_language(why, language, "")));
        let went = &lot.went;
        let accounts = [
            (ReportSays::Made, went.made),
            (ReportSays::OnHand, went.on_hand),
        ];
        let mut places: Vec<Line> = accounts
            .into_iter()
            .filter_map(|(says, grams)| of.figure(says, grams.0))
            .collect();
        let vocabulary = [
            (domain::words::Account::Used, went.used),
            (domain::words::Account::Sold, went.sold),
            (domain::words::Account::Served, went.served),
            (domain::words::Account::Discarded, went.discarded),
            (domain::words::Account::Shipped, went.shipped),
            (domain::words::Account::Returned, went.returned),
            (domain::words::Account::Lost, went.lost),
            (domain::words::Account::Unexplained, went.unexplained),
            (domain::words::Account::TakenBack, went.taken_back),
        ];
        let gone = vocabulary
            .iter()
            .filter(|(_, grams)| grams.0 != Grams::ZERO);
        places.extend(gone.map(|(account, grams)| Line {
            label: Some(capital(&of.speech.say(&account.says()))),
            ..plain(of.grams(grams.0))
        }));
        let since = of.sums(&lot.sums).into_iter().chain(of.agreement(lot));
        vec![name(of, lot), because.collect(), places, since.collect()]
    };
    of.table(
        ReportSays::Lots,
        vec![
            (ReportSays::Lot, 30),
            (ReportSays::Because, 34),
            (ReportSays::Went, 24),
            (ReportSays::Since, 28),
        ],
        of.facts.lots.iter().map(row).collect(),
        ReportSays::NothingOutside,
    )
}

/// Packs that were not found as the book has them.
pub(super) fn differences(of: &Writer<'_>) -> Part {
    let mut rows = Vec::new();
    for lot in &of.facts.lots {
        for pack in &lot.packs {
            let sums = &pack.sums;
            let elsewhere = pack.found_at.as_ref().filter(|found| **found != pack.place);
            let differs = sums.missing_grams.0 != Grams::ZERO
                || sums.surplus_grams.0 != Grams::ZERO
                || sums.back_grams.0 != Grams::ZERO
                || pack.opened
                || elsewhere.is_some();
            // What nobody counted yet is told of its lot.
            if !differs || super::facts::is_uncounted(pack) {
                continue;
            }
            let state = CountState::parse(&pack.state);
            let state = state.map_or_else(String::new, |state| of.speech.say(&state.says()));
            let mut how = vec![plain(capital(&state))];
            how.extend(pack.opened.then(|| plain(of.say(ReportSays::Opened))));
            let place = elsewhere.map(|place| of.facts.place(place).to_owned());
            how.extend(place.map(|place| mark(of.say(ReportSays::FoundAt { place }))));
            rows.push(vec![
                name(of, lot),
                vec![plain(pack.pack.to_string())],
                vec![plain(of.facts.place(&pack.place))],
                how,
                of.sums(sums),
            ]);
        }
    }
    of.table(
        ReportSays::Differences,
        vec![
            (ReportSays::Lot, 34),
            (ReportSays::Pack, 8),
            (ReportSays::Place, 22),
            (ReportSays::What, 26),
            (ReportSays::Weight, 28),
        ],
        rows,
        ReportSays::NoDifference,
    )
}

/// What became of what was held.
pub(super) fn disposals(of: &Writer<'_>) -> Part {
    let row = |one: &super::facts::DisposalFacts| {
        let what = match one.what.as_str() {
            "discarded" => ReportSays::Discarded,
            "returned" => ReportSays::Returned,
            "released" => ReportSays::Released,
            "put-right" => ReportSays::PutRight,
            _ => ReportSays::Reworked,
        };
        let packs = one.packs.len();
        let weight = (one.grams.0 != Grams::ZERO).then(|| plain(of.grams(one.grams.0)));
        let place = one.place.as_ref().map(|place| of.facts.place(place));
        let paper = [
            of.labelled(ReportSays::Place, place.unwrap_or_default()),
            of.labelled(
                ReportSays::Witness,
                one.witness.as_deref().unwrap_or_default(),
            ),
            of.labelled(
                ReportSays::Document,
                one.document.as_deref().unwrap_or_default(),
            ),
        ];
        vec![
            vec![plain(of.moment(&one.at)), plain(one.by.clone())],
            vec![
                mark(capital(&of.named(&one.names, ""))),
                plain(one.lot.clone()),
                plain(of.say(ReportSays::Packs { packs })),
            ],
            std::iter::once(mark(of.head(what))).chain(weight).collect(),
            paper.into_iter().flatten().collect(),
            vec![plain(one.why.clone())],
        ]
    };
    of.table(
        ReportSays::Disposals,
        vec![
            (ReportSays::When, 22),
            (ReportSays::Lot, 28),
            (ReportSays::What, 18),
            (ReportSays::Witness, 30),
            (ReportSays::Because, 26),
        ],
        of.facts.disposals.iter().map(row).collect(),
        ReportSays::NoDisposals,
    )
}

/// Whom to call, and who was told.
pub(super) fn people(of: &Writer<'_>) -> Part {
    let row = |one: &PersonFacts| {
        let role = match one.role.as_str() {
            "farm" => ReportSays::Farm,
            "abattoir" => ReportSays::Abattoir,
            "supplier" => ReportSays::Supplier,
            _ => ReportSays::Customer,
        };
        let address = one.address.iter().chain(&one.phone).cloned().map(plain);
        let told = match &one.told_at {
            Some(at) => plain(of.moment(at)),
            None => mark(of.say(ReportSays::NotTold)),
        };
        let grams = one.grams.map(|grams| plain(of.grams(grams.0)));
        vec![
            vec![plain(of.head(role))],
            std::iter::once(mark(one.name.clone()))
                .chain(address)
                .collect(),
            std::iter::once(plain(one.lots.join(", ")))
                .chain(grams)
                .collect(),
            vec![told],
            vec![plain(one.answered.clone().unwrap_or_default())],
        ]
    };
    let all = of.facts.sources.iter().chain(&of.facts.customers);
    of.table(
        ReportSays::People,
        vec![
            (ReportSays::Who, 16),
            (ReportSays::Name, 34),
            (ReportSays::Lot, 28),
            (ReportSays::ToldAt, 22),
            (ReportSays::Answered, 26),
        ],
        all.map(row).collect(),
        ReportSays::NoPeople,
    )
}

/// What was sold, by day and hour.
pub(super) fn sold(of: &Writer<'_>) -> Part {
    let row = |one: &super::facts::SoldFacts| {
        let day = one.day.parse().unwrap_or_default();
        let hour = of.say(ReportSays::Hour {
            day,
            from: one.hour,
            until: one.hour + 1,
        });
        let packs = one.packs;
        vec![
            vec![plain(hour)],
            vec![
                plain(capital(&of.named(&one.names, ""))),
                plain(one.lot.clone()),
            ],
            vec![plain(of.say(ReportSays::Packs { packs }))],
            vec![plain(of.grams(one.grams.0))],
            vec![plain(one.to.join("; "))],
        ]
    };
    of.table(
        ReportSays::Sold,
        vec![
            (ReportSays::When, 26),
            (ReportSays::Lot, 36),
            (ReportSays::HowMuch, 16),
            (ReportSays::Weight, 16),
            (ReportSays::Buyers, 24),
        ],
        of.facts.sold.iter().map(row).collect(),
        ReportSays::NothingSold,
    )
}

/// What was left out, and why.
pub(super) fn outside(of: &Writer<'_>) -> Part {
    let row = |one: &super::facts::OutsideFacts| {
        vec![
            vec![plain(one.lot.clone().unwrap_or_default())],
            vec![plain(of.named(&one.why, ""))],
        ]
    };
    of.table(
        ReportSays::Outside,
        vec![(ReportSays::Lot, 26), (ReportSays::Because, 90)],
        of.facts.outside.iter().map(row).collect(),
        ReportSays::NothingOutside,
    )
}

/// What was decided, told and answered.
pub(super) fn decisions(of: &Writer<'_>) -> Part {
    let row = |one: &super::facts::ActFacts| {
        let what = match one.kind.as_str() {
            "begun" => of.head(ReportSays::Begun),
            "scope" => of.head(ReportSays::Scoped),
            "shown" => of.head(ReportSays::Shown),
            "hidden" => of.head(ReportSays::Hidden),
            "disposed" => of.head(ReportSays::Disposed),
            "closed" => of.head(ReportSays::Closed),
            kind => {
                let note = IncidentNote::parse(kind).unwrap_or(IncidentNote::Note);
                capital(&of.speech.say(&note.says()))
            }
        };
        vec![
            vec![
                plain(of.speech.moment(local(&one.at))),
                plain(one.by.clone()),
            ],
            std::iter::once(mark(what))
                .chain(one.whom.clone().map(plain))
                .collect(),
            vec![plain(one.text.clone())],
        ]
    };
    of.table(
        ReportSays::Decisions,
        vec![
            (ReportSays::When, 26),
            (ReportSays::What, 30),
            (ReportSays::Because, 64),
        ],
        of.facts.acts.iter().map(row).collect(),
        ReportSays::NothingOutside,
    )
}

/// Room to sign.
pub(super) fn signatures(of: &Writer<'_>) -> Part {
    let who = [
        ReportSays::SignLead,
        ReportSays::SignCount,
        ReportSays::SignWitness,
        ReportSays::SignAuthority,
    ];
    let row = |says: ReportSays| {
        let room = vec![plain(of.head(says)), plain("\u{a0}"), plain("\u{a0}")];
        vec![room, Vec::new(), Vec::new(), Vec::new()]
    };
    of.table(
        ReportSays::Signatures,
        vec![
            (ReportSays::Who, 30),
            (ReportSays::Name, 32),
            (ReportSays::Signature, 40),
            (ReportSays::Day, 20),
        ],
        who.into_iter().map(row).collect(),
        ReportSays::NothingOutside,
    )
}
