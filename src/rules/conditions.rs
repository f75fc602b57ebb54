//! `when`, `when-any`, `unless` and `covers`: what must hold for a rule to apply.

use std::ops::Range;

use toml::de::DeValue;

use crate::input::nearest;
use crate::items::Item;
use crate::items::Kind;
use crate::quantities::Age;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Bounds;
use crate::rules::demand::Limit;
use crate::rules::faults::Faults;
use crate::rules::faults::instead;
use crate::rules::faults::one_of;
use crate::rules::fields::Fields;
use crate::rules::fields::KeyValue;
use crate::rules::fields::TomlNode;
use crate::rules::fields::texts;
use crate::rules::model::Condition;
use crate::rules::model::Test;
use crate::rules::plausible;
use crate::rules::quantity::BOUNDS;
use crate::rules::quantity::age;
use crate::rules::quantity::bounds;
use crate::rules::quantity::count;
use crate::rules::quantity::limit;
use crate::rules::quantity::year;

/// Every operator of the format, for telling a misfit from a slip of the pen.
const OPERATORS: &[&str] = &[
    "at-least",
    "at-most",
    "above",
    "below",
    "is",
    "is-not",
    "stops-ball",
    "not-within",
    "entraps",
    "zone",
    "pushed",
    "none-within",
    "deeper-than",
    "no-steeper-than",
    "ladder-up-to",
    "ladder-below",
    "angle-at-least",
];

/// The operators that ask for words.
pub(super) const WORD_OPERATORS: &[&str] = &["is", "is-not"];

/// The item that a key names: `bottom-gap`.
pub(super) fn item(key: &str, at: &Range<usize>, faults: &mut Faults) -> Option<Item> {
    let found = Item::by_name(&key.replace('-', " "));
    if found.is_none() {
        let names: Vec<String> = Item::names().map(|name| name.replace(' ', "-")).collect();
        let help = match nearest(key, names.iter().map(String::as_str)) {
            Some(near) => format!("write {near}"),
            None => "type guardrule items to see all of them; write hyphens for spaces".to_owned(),
        };
        faults.error_help(
            RuleFault::UnknownItem,
            at,
            format!("there is no item `{key}`"),
            help,
        );
    }
    found
}

/// The conditions of a table, whose keys are items.
pub(super) fn conditions(value: &TomlNode<'_>, what: &str, faults: &mut Faults) -> Vec<Condition> {
    match Fields::of(value, what, faults) {
        Some(fields) => group(&fields, what, faults),
        None => Vec::new(),
    }
}

/// The conditions of one table; an empty one is a fault.
pub(super) fn group(fields: &Fields<'_>, what: &str, faults: &mut Faults) -> Vec<Condition> {
    let entries = fields.entries();
    if entries.is_empty() {
        faults.error_help(
            RuleFault::NothingAsked,
            &fields.at,
            format!("{what} holds no condition"),
            "add one, such as when.place = [\"landing\"], or take it away",
        );
    }
    entries_to_conditions(&entries, faults)
}

/// The conditions that these entries are.
pub(super) fn entries_to_conditions(
    entries: &[KeyValue<'_>],
    faults: &mut Faults,
) -> Vec<Condition> {
    let mut conditions: Vec<Condition> = Vec::new();
    for entry in entries {
        let Some(item) = item(entry.key, &entry.at, faults) else {
            continue;
        };
        if conditions.iter().any(|other| other.item == item) {
            let message = format!("`{}` names {item}, which is there already", entry.key);
            faults.error(RuleFault::GivenTwice, &entry.at, message);
        }
        if let Some(test) = test(item, entry, faults) {
            conditions.push(Condition { item, test });
        }
    }
    conditions
}

fn test(item: Item, entry: &KeyValue<'_>, faults: &mut Faults) -> Option<Test> {
    let kind = item.info().kind;
    if item.is_survey_fact() {
        return no_test(
            item,
            entry,
            "it is about the survey and not about a guard",
            faults,
        );
    }
    match kind {
        Kind::Words(_) => word_test(item, entry.value, faults),
        Kind::Ages => numbers(item, entry, faults, age, months).map(Test::Age),
        Kind::Count => numbers(item, entry, faults, count, |n| i64::from(*n)).map(Test::Count),
        Kind::Length => {
            let fields = operators(item, entry.value, BOUNDS, faults)?;
            let bounds = bounds(&fields, faults, limit, nanometres)?;
            plausible::of_condition(item, &bounds, &fields, faults);
            Some(Test::Length(bounds))
        }
        Kind::Years => numbers(item, entry, faults, year, |y| i64::from(*y)).map(Test::Years),
        Kind::Date
        | Kind::Fasteners
        | Kind::Foothold
        | Kind::Graduation
        | Kind::Opening
        | Kind::Force
        | Kind::Pull
        | Kind::Section
        | Kind::StairTriangle
        | Kind::Text
        | Kind::ThingToClimb
        | Kind::Tolerance
        | Kind::VOpening => no_test(item, entry, "no condition can look at it", faults),
    }
}

fn no_test(item: Item, entry: &KeyValue<'_>, why: &str, faults: &mut Faults) -> Option<Test> {
    faults.error_help(
        RuleFault::OperatorDoesNotFit,
        &entry.at,
        format!("`{item}` cannot be a condition: {why}"),
        "conditions look at words, lengths, counts, ages and years",
    );
    None
}

fn months(age: &Age) -> i64 {
    i64::from(age.months())
}

/// The size of a limit for comparing two of them.
pub(super) fn nanometres(limit: &Limit) -> i64 {
    limit.length.nanometres()
}

fn numbers<T>(
    item: Item,
    entry: &KeyValue<'_>,
    faults: &mut Faults,
    read: fn(&TomlNode<'_>, &str, &mut Faults) -> Option<T>,
    size: fn(&T) -> i64,
) -> Option<Bounds<T>> {
    let fields = operators(item, entry.value, BOUNDS, faults)?;
    bounds(&fields, faults, read, size)
}

/// The table of operators that a value is, each of them fitting.
pub(super) fn operators<'t>(
    item: Item,
    value: &'t TomlNode<'t>,
    fitting: &[&str],
    faults: &mut Faults,
) -> Option<Fields<'t>> {
    let DeValue::Table(table) = value.get_ref() else {
        let message = format!(
            "`{item}` stands here without an operator; expected {}",
            one_of(fitting)
        );
        let help = match value.get_ref().as_str() {
            Some(text) => format!(
                "write {}.{} = \"{text}\"",
                item.toml_name(),
                fitting.first().unwrap_or(&"at-least")
            ),
            None => format!(
                "write {}.{} = \"…\"",
                item.toml_name(),
                fitting.first().unwrap_or(&"at-least")
            ),
        };
        faults.error_help(RuleFault::OperatorDoesNotFit, &value.span(), message, help);
        return None;
    };
    let fields = Fields::new(table, value.span());
    let entries = fields.entries();
    let mut right = !entries.is_empty();
    if entries.is_empty() {
        let message = format!("nothing is asked of `{item}`");
        let help = format!("add {}", one_of(fitting));
        faults.error_help(RuleFault::NothingAsked, &value.span(), message, help);
    }
    for entry in entries {
        if !fitting.contains(&entry.key) {
            misfit(item, &entry, fitting, faults);
            right = false;
        }
    }
    right.then_some(fields)
}

fn misfit(item: Item, entry: &KeyValue<'_>, fitting: &[&str], faults: &mut Faults) {
    if OPERATORS.contains(&entry.key) {
        let message = format!("`{}` does not fit `{item}`", entry.key);
        let help = format!("for {item} write {}", one_of(fitting));
        faults.error_help(RuleFault::OperatorDoesNotFit, &entry.at, message, help);
    } else {
        let message = format!("there is no operator `{}`", entry.key);
        let help = instead(entry.key, fitting);
        faults.error_help(RuleFault::UnknownKey, &entry.at, message, help);
    }
}

fn word_test(item: Item, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Test> {
    let (is, is_not) = words_asked(item, value, faults)?;
    Some(if is_not.is_empty() {
        Test::OneOf(is)
    } else {
        Test::NoneOf(is_not)
    })
}

/// The words that are fine and those that are not: from a word, a list of
/// words, `is` or `is-not`; one of the two is empty.
pub(super) fn words_asked(
    item: Item,
    value: &TomlNode<'_>,
    faults: &mut Faults,
) -> Option<(Vec<&'static str>, Vec<&'static str>)> {
    if !value.get_ref().is_table() {
        return Some((words(item, value, faults)?, Vec::new()));
    }
    let fields = operators(item, value, WORD_OPERATORS, faults)?;
    match (fields.value("is"), fields.value("is-not")) {
        (Some(is), None) => Some((words(item, is, faults)?, Vec::new())),
        (None, Some(is_not)) => Some((Vec::new(), words(item, is_not, faults)?)),
        (Some(is), Some(is_not)) => {
            words(item, is, faults);
            words(item, is_not, faults);
            faults.error_help(
                RuleFault::Contradiction,
                &fields.at_of("is-not"),
                format!("`is` and `is-not` both stand at `{item}`"),
                "keep one of them",
            );
            None
        }
        (None, None) => None,
    }
}

/// Words of the item's list; `None` where one of them is none, or there are none.
fn words(item: Item, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Vec<&'static str>> {
    if let Some(flag) = value.get_ref().as_bool() {
        let word = if flag { "yes" } else { "no" };
        faults.error_help(
            RuleFault::WrongKind,
            &value.span(),
            format!("`{item}` is {flag}; expected a word in quotation marks"),
            format!("write \"{word}\" if the item has that word"),
        );
        return None;
    }
    let before = faults.errors();
    let mut found = Vec::new();
    for text in texts(value, item.name(), faults) {
        match word(item, text.value) {
            Some(word) => found.push(word),
            None => {
                let all = names(item);
                faults.error_help(
                    RuleFault::UnknownWord,
                    &text.at,
                    format!("`{item}` has no word \"{}\"", text.value),
                    instead(text.value, &all),
                );
            }
        }
    }
    if found.is_empty() && faults.errors() == before {
        faults.error(
            RuleFault::NothingAsked,
            &value.span(),
            format!("the list of words for `{item}` is empty"),
        );
    }
    (faults.errors() == before).then_some(found)
}

/// The words that may be asked of an item. Of a thing to climb only `none` can.
fn names(item: Item) -> Vec<&'static str> {
    if item.info().kind == Kind::ThingToClimb {
        vec!["none"]
    } else {
        item.words().iter().map(|word| word.name).collect()
    }
}

fn word(item: Item, text: &str) -> Option<&'static str> {
    item.word(text)
        .or_else(|| names(item).into_iter().find(|name| *name == text))
}
