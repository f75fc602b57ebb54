//! `[[asks-nothing]]`: a hazard that the text was read to ask nothing about.

use std::sync::Arc;

use crate::items::Hazard;
use crate::rules::codes::RuleFault;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::choice;
use crate::rules::model::AsksNothing;
use crate::rules::model::Status;
use crate::rules::rule::Examples;
use crate::rules::rule::cited;
use crate::rules::rule::when;
use crate::rules::sources::Sources;

const KEYS: &[&str] = &[
    "hazard", "clause", "when", "says", "source", "status", "example",
];

const WHAT: &str = "`asks-nothing`";

/// A statement of silence; `None` where anything but an example of it is faulty.
pub(super) fn asks_nothing(
    fields: &Fields<'_>,
    examples: Examples,
    sources: &mut Sources,
    faults: &mut Faults,
) -> Option<AsksNothing> {
    let before = faults.errors();
    fields.only(KEYS, WHAT, faults);
    let hazard = fields
        .required("hazard", WHAT, faults)
        .and_then(|text| choice(&text, "hazard", &Hazard::ALL, Hazard::name, faults));
    let clause = fields.text("clause", faults);
    let says = fields.required("says", WHAT, faults);
    let cited = cited(fields, WHAT, sources, faults);
    let when = when(fields, faults);
    if let Some((_, status)) = &cited
        && !was_read(*status)
    {
        let key = if fields.value("status").is_some() {
            "status"
        } else {
            "source"
        };
        faults.error_help(
            RuleFault::SilenceNotRead,
            &fields.at_of(key),
            format!("that a text asks nothing is known only from the text, and the status here is {status}"),
            "cite a source that is published or quoted, or take the statement away",
        );
    }
    let sound = faults.errors() == before;
    let examples = examples.of(fields, "[[asks-nothing.example]]", faults);
    let (source, status) = cited?;
    let silence = AsksNothing {
        hazard: hazard?,
        clause: clause.map(|text| text.value.to_owned()),
        when,
        says: says?.value.to_owned(),
        source,
        status,
        examples,
        file: Arc::clone(&faults.file().name),
    };
    sound.then_some(silence)
}

/// Whether somebody had the text before them, at first or at second hand.
pub(super) const fn was_read(status: Status) -> bool {
    match status {
        Status::Published | Status::Quoted => true,
        Status::Memory | Status::Practice => false,
    }
}
