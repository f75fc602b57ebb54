//! What can be typed instead of an answer.

use crate::input::folded;
use crate::input::nearest;
use crate::items::Item;

/// A wish of the person's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum WalkCommand {
    /// Ask once more what was skipped.
    Again,
    /// A further reading of an item.
    Another(String),
    /// Go back to the last answer.
    Back,
    /// Put an item right.
    Correct(String),
    Finish,
    Help,
    List,
    /// Tell more about the question.
    More,
    /// On to the next guard.
    NextGuard,
    /// There is no guard here.
    NoGuard,
    /// A note beside the last answer.
    Note(String),
    Skip,
    /// The unit of numbers without one.
    Unit(String),
}

/// The commands with what they do, for `help`.
pub const COMMANDS: [(&str, &str); 13] = [
    ("Enter", "skip the question, or what stands in the brackets"),
    ("?", "show how, with a drawing"),
    ("back", "go back to the last answer and put it right"),
    ("correct ITEM", "put another answer right: correct height"),
    ("another ITEM", "a further reading: another opening"),
    ("ITEM: READING", "an answer out of turn: height: 35 in"),
    ("note WORDS", "a note beside the last answer"),
    ("not reached", "could not look; the reason is asked for"),
    ("no guard", "there is no railing at this edge"),
    ("list", "what is written so far, and what was skipped"),
    ("again", "ask once more what was skipped"),
    ("unit cm", "what a number without a unit is from now on"),
    ("next, finish", "on to the next railing; stop here"),
];

/// The command in a line, if it is one.
pub(super) fn command(text: &str) -> Option<WalkCommand> {
    let plain = folded(text);
    let exact = match plain.as_str() {
        "?" => Some(WalkCommand::More),
        "again" | "ask again" => Some(WalkCommand::Again),
        "another" => Some(WalkCommand::Another("opening".to_owned())),
        "back" => Some(WalkCommand::Back),
        "commands" | "help" => Some(WalkCommand::Help),
        "finish" | "quit" | "exit" => Some(WalkCommand::Finish),
        "list" => Some(WalkCommand::List),
        "next" | "next guard" => Some(WalkCommand::NextGuard),
        "no guard" => Some(WalkCommand::NoGuard),
        "skip" => Some(WalkCommand::Skip),
        _ => None,
    };
    if exact.is_some() {
        return exact;
    }
    let (word, rest) = text.trim().split_once(' ')?;
    let rest = rest.trim().to_owned();
    match folded(word).as_str() {
        "another" => Some(WalkCommand::Another(rest)),
        "correct" => Some(WalkCommand::Correct(rest)),
        "note" => Some(WalkCommand::Note(rest)),
        "unit" if !rest.contains(' ') && !rest.contains(',') => Some(WalkCommand::Unit(rest)),
        _ => None,
    }
}

/// The command, or the answer out of turn, that a refused line was nearly:
/// `finsh`, `corect drop`, `hieght: 35 in`.
pub(super) fn command_nearly_meant(text: &str) -> Option<String> {
    const ALONE: [&str; 7] = ["again", "back", "finish", "help", "list", "next", "skip"];
    const WITH_MORE: [&str; 3] = ["another", "correct", "note"];
    let text = text.trim();
    if let Some((name, reading)) = text.split_once(':') {
        if Item::by_name(name).is_some() {
            return None;
        }
        let item = nearest(&folded(name), Item::names())?;
        return Some(format!("{item}: {}", reading.trim()));
    }
    match text.split_once(' ') {
        Some((word, rest)) => {
            let word = nearest(&folded(word), WITH_MORE)?;
            Some(format!("{word} {}", rest.trim()))
        }
        None => nearest(&folded(text), ALONE).map(str::to_owned),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_a_command_or_item_is_offered_right() {
        let offered = |text| command_nearly_meant(text);
        assert_eq!(offered("finsh").as_deref(), Some("finish"));
        assert_eq!(offered("corect  drop").as_deref(), Some("correct drop"));
        assert_eq!(offered("hieght: 35 in").as_deref(), Some("height: 35 in"));
        assert_eq!(offered("height: 34 ft"), None);
        assert_eq!(offered("balusters"), None);
        assert_eq!(offered("9 ft 2"), None);
    }

    #[test]
    fn commands_are_plain_words_and_readings_are_none() {
        assert_eq!(command(" Back "), Some(WalkCommand::Back));
        assert_eq!(
            command("correct bottom gap"),
            Some(WalkCommand::Correct("bottom gap".to_owned()))
        );
        assert_eq!(
            command("note sags, at the door"),
            Some(WalkCommand::Note("sags, at the door".to_owned()))
        );
        for reading in [
            "34 5/8 in",
            "none",
            "n",
            "y",
            "not reached",
            "back stair",
            "",
            "d",
        ] {
            assert_eq!(command(reading), None, "{reading}");
        }
    }
}
