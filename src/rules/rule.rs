//! `[[rule]]`, its examples, and `[[caution]]`.

use std::sync::Arc;

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Verdict;
use crate::reading::Reading;
use crate::reading::parse;
use crate::rules::checks::checks;
use crate::rules::codes::RuleFault;
use crate::rules::conditions::conditions;
use crate::rules::conditions::group;
use crate::rules::conditions::item;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::KeyValue;
use crate::rules::fields::Text;
use crate::rules::fields::choice;
use crate::rules::fields::scalar;
use crate::rules::fields::texts;
use crate::rules::loads::moments;
use crate::rules::model::Caution;
use crate::rules::model::Condition;
use crate::rules::model::Example;
use crate::rules::model::Rule;
use crate::rules::model::Source;
use crate::rules::model::Status;
use crate::rules::model::Urgency;
use crate::rules::quantity::unreadable;
use crate::rules::sources::Sources;

const RULE_KEYS: &[&str] = &[
    "id",
    "hazard",
    "clause",
    "urgency",
    "within",
    "says",
    "source",
    "status",
    "judgement",
    "when",
    "when-any",
    "unless",
    "check",
    "check-any",
    "example",
];

const CAUTION_KEYS: &[&str] = &["when", "clause", "says", "source", "status"];

/// Whether worked examples are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Examples {
    LeftOut,
    Read,
}

impl Examples {
    /// The examples of a rule or of a silence.
    pub(super) fn of(self, fields: &Fields<'_>, header: &str, faults: &mut Faults) -> Vec<Example> {
        match self {
            Examples::LeftOut => Vec::new(),
            Examples::Read => fields
                .tables("example", header, faults)
                .iter()
                .filter_map(|fields| example(fields, faults))
                .collect(),
        }
    }
}

/// A rule; `None` where anything but an example of it is faulty.
pub(super) fn rule(
    fields: &Fields<'_>,
    examples: Examples,
    sources: &mut Sources,
    faults: &mut Faults,
) -> Option<Rule> {
    let before = faults.errors();
    fields.only(RULE_KEYS, "a rule", faults);
    let id = fields
        .required("id", "a rule", faults)
        .filter(|id| is_id(id, faults));
    let hazard = fields
        .required("hazard", "a rule", faults)
        .and_then(|text| choice(&text, "hazard", &Hazard::ALL, Hazard::name, faults));
    let clause = fields.required("clause", "a rule", faults);
    let urgency = fields.text("urgency", faults);
    let urgency =
        urgency.and_then(|text| choice(&text, "urgency", &Urgency::ALL, Urgency::name, faults));
    let within = fields.text("within", faults);
    let says = fields.required("says", "a rule", faults);
    let cited = cited(fields, "a rule", sources, faults);
    let judgement = fields.text("judgement", faults);
    let when = when(fields, faults);
    let when_any = groups(fields, "when-any", "[[rule.when-any]]", faults);
    let unless = groups(fields, "unless", "[[rule.unless]]", faults);
    let checks = checks(fields, faults);
    let sound = faults.errors() == before;
    let examples = examples.of(fields, "[[rule.example]]", faults);
    let (source, status) = cited?;
    let rule = Rule {
        id: id?.value.to_owned(),
        hazard: hazard?,
        clause: clause?.value.to_owned(),
        urgency: urgency.unwrap_or(Urgency::Soon),
        within: within.map(|text| text.value.to_owned()),
        says: says?.value.to_owned(),
        source,
        status,
        judgement: judgement.map(|text| text.value.to_owned()),
        when,
        when_any,
        unless,
        checks,
        examples,
        file: Arc::clone(&faults.file().name),
    };
    sound.then_some(rule)
}

/// A caution; `None` where anything of it is faulty.
pub(super) fn caution(
    fields: &Fields<'_>,
    sources: &mut Sources,
    faults: &mut Faults,
) -> Option<Caution> {
    let before = faults.errors();
    fields.only(CAUTION_KEYS, "a caution", faults);
    let clause = fields.required("clause", "a caution", faults);
    let says = fields.required("says", "a caution", faults);
    let cited = cited(fields, "a caution", sources, faults);
    let when = when(fields, faults);
    let (source, status) = cited?;
    let caution = Caution {
        when,
        clause: clause?.value.to_owned(),
        says: says?.value.to_owned(),
        source,
        status,
    };
    (faults.errors() == before).then_some(caution)
}

/// Lowercase letters, digits and single hyphens, so that it can be typed anywhere.
pub(super) fn is_id(text: &Text<'_>, faults: &mut Faults) -> bool {
    let right = text.value.split('-').all(|part| {
        !part.is_empty()
            && part
                .bytes()
                .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit())
    });
    if !right {
        let lower = text.value.to_lowercase();
        let parts: Vec<&str> = lower
            .split(|c: char| !c.is_ascii_lowercase() && !c.is_ascii_digit())
            .filter(|part| !part.is_empty())
            .collect();
        let help = match parts.as_slice() {
            [] => "write something like rail-too-low".to_owned(),
            parts => format!("write {}", parts.join("-")),
        };
        faults.error_help(
            RuleFault::BadId,
            &text.at,
            format!(
                "\"{}\" is no id; expected lowercase letters and digits, parted by hyphens",
                text.value
            ),
            help,
        );
    }
    right
}

/// The source that is cited, and how the clause was read.
pub(super) fn cited(
    fields: &Fields<'_>,
    what: &str,
    sources: &mut Sources,
    faults: &mut Faults,
) -> Option<(Arc<Source>, Status)> {
    let key = fields.required("source", what, faults);
    let own = fields.text("status", faults);
    let own = own.and_then(|text| choice(&text, "status", &Status::ALL, Status::name, faults));
    let source = sources.cite(&key?, faults)?;
    let status = own.unwrap_or(source.status);
    Some((source, status))
}

pub(super) fn when(fields: &Fields<'_>, faults: &mut Faults) -> Vec<Condition> {
    fields
        .value("when")
        .map(|value| conditions(value, "`when`", faults))
        .unwrap_or_default()
}

fn groups(
    fields: &Fields<'_>,
    key: &str,
    header: &str,
    faults: &mut Faults,
) -> Vec<Vec<Condition>> {
    fields
        .tables(key, header, faults)
        .iter()
        .map(|fields| group(fields, &format!("`{key}`"), faults))
        .collect()
}

fn example(fields: &Fields<'_>, faults: &mut Faults) -> Option<Example> {
    let before = faults.errors();
    fields.only(&["given", "expect", "moments"], "an example", faults);
    let expect = fields.required("expect", "an example", faults);
    let verdict = expect
        .as_ref()
        .and_then(|text| choice(text, "verdict", &Verdict::ALL, Verdict::name, faults));
    let given = match fields.value("given") {
        Some(value) => Fields::of(value, "`given`", faults).map(|table| given(&table, faults)),
        None => {
            faults.error_help(
                RuleFault::MissingKey,
                &fields.at,
                "an example needs `given`, which is missing",
                "add given = { place = \"porch\", drop = \"5 ft\", height = \"37 in\" }",
            );
            None
        }
    };
    let moments = fields.value("moments").map(|value| moments(value, faults));
    let example = Example {
        given: given?,
        expect: verdict?,
        moments: moments.unwrap_or_default(),
        at: faults.file().excerpt(expect?.at),
    };
    (faults.errors() == before).then_some(example)
}

/// The readings of an example.
fn given(fields: &Fields<'_>, faults: &mut Faults) -> Vec<(Item, Reading, String)> {
    let mut given: Vec<(Item, Reading, String)> = Vec::new();
    let entries = fields.entries();
    if entries.is_empty() {
        faults.error(
            RuleFault::NothingAsked,
            &fields.at,
            "the example gives no reading",
        );
    }
    for entry in &entries {
        let Some(item) = item(entry.key, &entry.at, faults) else {
            continue;
        };
        if item.is_survey_fact() {
            faults.error(
                RuleFault::UnreadableExample,
                &entry.at,
                format!("`{item}` is about a survey; an example gives readings of one guard"),
            );
            continue;
        }
        if given.iter().any(|(other, _, _)| *other == item) {
            let message = format!("`{}` names {item}, which is there already", entry.key);
            faults.error(RuleFault::GivenTwice, &entry.at, message);
        }
        given.extend(readings(item, entry, faults));
    }
    given
}

/// One reading or a list of them. A count may stand without quotation marks.
fn readings(item: Item, entry: &KeyValue<'_>, faults: &mut Faults) -> Vec<(Item, Reading, String)> {
    let mut found = Vec::new();
    let mut read = |text: &Text<'_>, faults: &mut Faults| match parse(item, text.value, None) {
        Ok(parsed) => found.extend(
            parsed
                .readings
                .into_iter()
                .map(|reading| (item, reading, text.value.to_owned())),
        ),
        Err(error) => unreadable(text, &error, RuleFault::UnreadableExample, faults),
    };
    let count = entry.value.get_ref().as_integer();
    match count.filter(|_| item.info().kind == Kind::Count) {
        Some(number) => {
            let value = number.as_str();
            let at = entry.value.span();
            read(&Text { value, at }, faults);
        }
        None if bare_number(entry) => {
            let number = scalar(entry.value.get_ref()).unwrap_or_default();
            faults.error_help(
                RuleFault::UnreadableExample,
                &entry.value.span(),
                format!(
                    "`{}` is a bare number; expected a reading as surveys have it",
                    entry.key
                ),
                format!("write \"{number} in\" or \"{number} mm\", in quotation marks"),
            );
        }
        None => {
            for text in texts(entry.value, entry.key, faults) {
                read(&text, faults);
            }
        }
    }
    found
}

fn bare_number(entry: &KeyValue<'_>) -> bool {
    let value = entry.value.get_ref();
    value.is_integer() || value.is_float()
}
