//! The head of a ruleset: what it is, when it held, what it covers.

use std::ops::Range;

use crate::rules::codes::RuleFault;
use crate::rules::conditions::conditions;
use crate::rules::conditions::entries_to_conditions;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::Text;
use crate::rules::fields::TomlNode;
use crate::rules::fields::choice;
use crate::rules::fields::text;
use crate::rules::matter::Matter;
use crate::rules::model::Carried;
use crate::rules::model::Concern;
use crate::rules::model::Covers;
use crate::rules::model::InForce;
use crate::rules::model::LeaveOut;
use crate::rules::model::Status;
use crate::rules::quantity::year;
use crate::rules::rule::is_id;

const HEAD_KEYS: &[&str] = &[
    "id",
    "title",
    "country",
    "region",
    "taken-up",
    "not-in",
    "not-for-houses",
    "words",
    "edition",
    "advisory",
    "extends",
    "carried",
    "remove",
    "in-force",
    "covers",
    "concerns",
    "leaves-out",
    "source",
    "rule",
    "asks-nothing",
    "caution",
];

/// The head of a file; what it does not say is inherited.
pub(super) struct Head<'t> {
    pub(super) id: Option<Text<'t>>,
    pub(super) title: Option<Text<'t>>,
    pub(super) country: Option<Text<'t>>,
    pub(super) regions: Option<Vec<String>>,
    pub(super) not_in: Option<Vec<String>>,
    pub(super) not_for_houses: Option<bool>,
    pub(super) taken_up: Option<Vec<String>>,
    pub(super) matters: Option<Vec<Matter>>,
    pub(super) edition: Option<Text<'t>>,
    pub(super) advisory: Option<bool>,
    pub(super) extends: Option<Text<'t>>,
    pub(super) carried: Option<Carried>,
    pub(super) remove: Vec<Text<'t>>,
    pub(super) in_force: Option<InForce>,
    pub(super) covers: Option<Covers>,
    pub(super) concerns: Option<Vec<Concern>>,
    pub(super) leaves_out: Option<Vec<LeaveOut>>,
}

impl<'t> Head<'t> {
    /// Reads the head. `extent` is where it stands: if the file's syntax is
    /// broken there, a missing key is no second fault.
    pub(super) fn read(
        fields: &Fields<'t>,
        extent: &Range<usize>,
        faults: &mut Faults,
    ) -> Head<'t> {
        const WHAT: &str = "a ruleset";
        fields.only(HEAD_KEYS, WHAT, faults);
        let broken = faults.broken(extent);
        let required = |key: &str, faults: &mut Faults| {
            if broken {
                fields.text(key, faults)
            } else {
                fields.required(key, WHAT, faults)
            }
        };
        Head {
            id: required("id", faults).filter(|id| is_id(id, faults)),
            title: required("title", faults),
            country: fields.text("country", faults),
            regions: parts_of_the_country(fields, "region", faults),
            not_in: parts_of_the_country(fields, "not-in", faults),
            not_for_houses: fields.flag("not-for-houses", faults),
            taken_up: parts_of_the_country(fields, "taken-up", faults),
            matters: matters(fields, faults),
            edition: required("edition", faults),
            advisory: fields.flag("advisory", faults),
            extends: fields.text("extends", faults),
            carried: carried(fields, faults),
            remove: fields.texts("remove", faults).unwrap_or_default(),
            in_force: in_force(fields, faults),
            covers: covers(fields, faults),
            concerns: concerns(fields, faults),
            leaves_out: fields
                .value("leaves-out")
                .map(|value| leaves_out(value, faults)),
        }
    }
}

/// What is left out: sentences, and tables with a sentence and when it matters.
fn leaves_out(value: &TomlNode<'_>, faults: &mut Faults) -> Vec<LeaveOut> {
    const KEY: &str = "leaves-out";
    let one = |value: &TomlNode<'_>, faults: &mut Faults| {
        if !value.get_ref().is_table() {
            let says = text(value, KEY, faults)?.value.to_owned();
            let when = Vec::new();
            return Some(LeaveOut { when, says });
        }
        let what = "an entry of `leaves-out`";
        let table = Fields::of(value, what, faults)?;
        table.only(&["when", "says"], what, faults);
        let when = table.value("when");
        let when = when.map_or_else(Vec::new, |when| conditions(when, "`when`", faults));
        let says = table.required("says", what, faults)?.value.to_owned();
        Some(LeaveOut { when, says })
    };
    match value.get_ref().as_array() {
        Some(array) => array
            .iter()
            .filter_map(|value| one(value, faults))
            .collect(),
        None => one(value, faults).into_iter().collect(),
    }
}

/// Parts of the country: where the rules hold, or whose print of them was read.
fn parts_of_the_country(
    fields: &Fields<'_>,
    key: &str,
    faults: &mut Faults,
) -> Option<Vec<String>> {
    let texts = fields.texts(key, faults)?;
    Some(texts.iter().map(|text| text.value.to_owned()).collect())
}

/// The narrower matters that the file is about.
fn matters(fields: &Fields<'_>, faults: &mut Faults) -> Option<Vec<Matter>> {
    let texts = fields.texts("words", faults)?;
    let word = |text: &Text<'_>| choice(text, "matter", &Matter::ALL, Matter::name, faults);
    Some(texts.iter().filter_map(word).collect())
}

/// What the file speaks of alone. An empty list would say that it speaks of nothing.
fn concerns(fields: &Fields<'_>, faults: &mut Faults) -> Option<Vec<Concern>> {
    const KEY: &str = "concerns";
    let before = faults.errors();
    let texts = fields.texts(KEY, faults)?;
    if texts.is_empty() && faults.errors() == before {
        faults.error_help(
            RuleFault::NothingAsked,
            &fields.at_of(KEY),
            "the list of `concerns` is empty",
            "write concerns = [\"handrails\"], or take it away where the file speaks of guards as a whole",
        );
        return None;
    }
    let word = |text: &Text<'_>| choice(text, "subject", &Concern::ALL, Concern::name, faults);
    Some(texts.iter().filter_map(word).collect())
}

/// What holds of rules that are taken over unchanged.
fn carried(fields: &Fields<'_>, faults: &mut Faults) -> Option<Carried> {
    const WHAT: &str = "`carried`";
    let table = Fields::of(fields.value("carried")?, WHAT, faults)?;
    table.only(&["status", "says"], WHAT, faults);
    if fields.value("extends").is_none() {
        faults.error_help(
            RuleFault::NothingAsked,
            &table.at,
            "`carried` is about rules taken over, and the file extends no ruleset",
            "add extends = \"…\" with the ruleset that it takes them from, or take carried away",
        );
    }
    let status = table.required("status", WHAT, faults);
    let status =
        status.and_then(|text| choice(&text, "status", &Status::ALL, Status::name, faults));
    let says = table.required("says", WHAT, faults)?.value.to_owned();
    Some(Carried {
        status: status?,
        says,
    })
}

fn in_force(fields: &Fields<'_>, faults: &mut Faults) -> Option<InForce> {
    const WHAT: &str = "`in-force`";
    let value = fields.value("in-force")?;
    let table = Fields::of(value, WHAT, faults)?;
    table.only(&["from", "until"], WHAT, faults);
    if table.value("from").is_none() {
        table.missing("from", WHAT, faults);
    }
    let from = table
        .value("from")
        .and_then(|value| year(value, "from", faults));
    let until = table
        .value("until")
        .map(|value| year(value, "until", faults));
    // an `until` that cannot be read must not become an edition without an end
    let (from, until) = (from?, until.map_or(Some(None), |year| year.map(Some))?);
    if until.is_some_and(|until| until <= from) {
        faults.error_help(
            RuleFault::Contradiction,
            &table.at_of("until"),
            format!("`until` does not come after `from` ({from})"),
            "until is the year of the next edition; leave it out where there is none",
        );
        return None;
    }
    Some(InForce { from, until })
}

fn covers(fields: &Fields<'_>, faults: &mut Faults) -> Option<Covers> {
    let value = fields.value("covers")?;
    let table = Fields::of(value, "`covers`", faults)?;
    let says = table
        .value("says")
        .and_then(|value| text(value, "says", faults));
    let mut entries = table.entries();
    entries.retain(|entry| entry.key != "says");
    Some(Covers {
        says: says.map(|text| text.value.to_owned()).unwrap_or_default(),
        conditions: entries_to_conditions(&entries, faults),
    })
}
