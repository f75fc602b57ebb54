//! The words of a report that all forms share: reasons, what was taken as
//! given, how a reading near a limit was decided.

use crate::items::Hazard;
use crate::items::Hole;
use crate::items::Item;
use crate::items::Verdict;
use crate::items::Worst;
use crate::judge::Agreed;
use crate::judge::Assumption;
use crate::judge::Decision;
use crate::judge::Judged;
use crate::judge::LimitShown;
use crate::judge::MemoryRules;
use crate::judge::NoteOfDanger;
use crate::judge::Operator;
use crate::judge::Options;
use crate::judge::Reason;
use crate::judge::Unclear;
use crate::judge::WhyUnclear;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::report::Counts;
use crate::report::one_line;
use crate::rules::Ruleset;
use crate::rules::Unread;
use crate::rules::UnreadPart;
use crate::rules::Zone;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::RowPlace;
use crate::survey::SheetCells;
use crate::survey::SurveyFacts;

/// How a reading near a limit was decided, in one sentence.
#[must_use]
pub(super) const fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::Guarded => {
            "a reading counts only when it lies at least twice the tape's doubt away from the \
limit; nearer than that it is too close to call."
        }
        Decision::Simple => {
            "the reading alone is compared with the limit, and how sure the tape is does not count."
        }
    }
}

/// How many of a ruleset's rules were read how.
#[must_use]
pub(super) fn counts(ruleset: &Ruleset, options: Options) -> String {
    let counts = Counts::of(ruleset);
    let memory = match options.memory {
        MemoryRules::Decide => "from memory (verify; they decide, as you asked)",
        MemoryRules::Warn => "from memory (verify; they only warn)",
    };
    let parts = [
        (counts.published, "read in the text"),
        (counts.quoted, "second-hand (verify)"),
        (counts.memory, memory),
        (counts.practice, "common practice, no source"),
    ];
    let parts: Vec<String> = parts
        .iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, what)| format!("{count} {what}"))
        .collect();
    if counts.rules == counts.published {
        return format!(
            "{} read in the text.",
            several(counts.rules, "rule", "rules")
        );
    }
    format!(
        "{}: {}.",
        several(counts.rules, "rule", "rules"),
        parts.join(", ")
    )
}

/// `1 rule`, `3 rules`.
#[must_use]
pub(super) fn several(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// What advisory rulesets are called: `child guidance`, if that is all they are.
#[must_use]
pub(super) fn guidance_name(rulesets: &[Ruleset]) -> &'static str {
    let mut advisory = rulesets.iter().filter(|ruleset| ruleset.advisory);
    if advisory.all(|ruleset| ruleset.is_about_small_children()) {
        "child guidance"
    } else {
        "guidance"
    }
}

/// A limit in a reader's words: `at least 36 in`, `a 4 in ball must not pass`.
#[must_use]
pub(super) fn limit(shown: &LimitShown<'_>) -> String {
    let written = &shown.written;
    match shown.operator {
        Operator::Above => format!("more than {written}"),
        Operator::AtLeast => format!("at least {written}"),
        Operator::AtMost => format!("at most {written}"),
        Operator::Below => format!("less than {written}"),
        Operator::AngleAtLeast => format!("sides that open {written} or more"),
        Operator::Entraps => format!("must not admit a {written}"),
        Operator::LadderBelow => format!("no two less than {written} apart"),
        Operator::LadderUpTo => format!("no two {written} apart or nearer"),
        Operator::Is => format!("must be {written}"),
        Operator::IsNot => format!("must not be {written}"),
        Operator::NoneWithin => format!("none within {written}"),
        Operator::NotWithin => format!("not between {written}"),
        Operator::StopsBall => format!("a {written} ball must not pass"),
    }
}

/// What was seen that comes before every rule, with what to do: `KEEP EVERYBODY OFF
/// IT: it moves a lot when pushed gently`.
#[must_use]
pub(super) fn dangers(judged: &Judged<'_>) -> Option<String> {
    let dangers: Vec<String> = judged
        .dangers
        .iter()
        .map(|seen| format!("{}: {}", seen.danger.act, seen.danger.says))
        .collect();
    (!dangers.is_empty()).then(|| dangers.join("; "))
}

/// A note that tells of a danger, with what to write: `your note says "one is missing"`.
#[must_use]
pub(super) fn note_of_danger(note: &NoteOfDanger) -> String {
    let [so, not_so] = note.told.readings;
    let item = note.told.item;
    format!(
        "your note says \"{}\", and nothing written says whether it is so: write {item},{so}, or {item},{not_so}",
        shortened(&one_line(&note.note))
    )
}

/// What all cases of what nobody wrote down agree on, a sentence each.
#[must_use]
pub(super) fn agreed(judged: &Judged<'_>) -> Vec<String> {
    judged.agreed.iter().filter_map(agreed_on).collect()
}

/// What all cases agree on of one hazard, where it is not good.
fn agreed_on(agreed: &Agreed<'_>) -> Option<String> {
    let hazard = agreed.hazard?;
    let well = matches!(agreed.verdict, Verdict::DoesNotApply | Verdict::Meets);
    (!well).then(|| {
        format!(
            "{hazard}: {} by {}, whichever the open circumstances are",
            agreed.verdict,
            one_line(&agreed.ruleset.id)
        )
    })
}

/// What of a ruleset could not be read, with the ruleset's name: a whole one has it already.
#[must_use]
pub(super) fn not_read(unread: &Unread, ruleset: &str) -> String {
    if unread.part == UnreadPart::Whole {
        unread.says()
    } else {
        format!("{} ({ruleset})", unread.says())
    }
}

/// What keeps a ruleset from letting a guard meet, in words for a reader.
#[must_use]
pub(super) fn why_unclear(unclear: &Unclear<'_>) -> String {
    let about = match unclear.hazard {
        Some(hazard) => subject(hazard),
        None => "the guard",
    };
    let id = one_line(&unclear.ruleset.id);
    match unclear.why {
        WhyUnclear::HoleNotAsked(item) => format!(
            "{about}: no rule of {id} that was read asks about the {item} that is written, and it is not known to be as narrow as an opening has to be; ask the local authority what is asked"
        ),
        WhyUnclear::NoRuleRead => format!(
            "{about}: {id} holds no rule on this that was read and met here; ask the local authority what is asked"
        ),
        WhyUnclear::NotCovered(item) => {
            format!(
                "{id} does not cover this guard, by what is written for {item}; ask the local authority which rules do"
            )
        }
        WhyUnclear::OnlyOneSubject(concerns) => {
            let concerns: Vec<&str> = concerns.iter().map(|concern| concern.name()).collect();
            format!(
                "{about}: the rules of {id} speak only of {}; choose rules for guards as well",
                concerns.join(" and ")
            )
        }
        WhyUnclear::Silence(item) => {
            format!(
                "{about}: whether {id} asks anything depends on {item}, which is not written down"
            )
        }
        WhyUnclear::Unread(unread) => format!("{id}: {}", one_line(&unread.says())),
    }
}

/// What a hazard's rules speak of.
const fn subject(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::FallOver => "height",
        Hazard::FallThrough => "gaps",
        Hazard::Entrapment => "heads caught",
        Hazard::Climb => "climbing",
        Hazard::GiveWay => "strength",
    }
}

/// Why a finding is what it is, in words for a reader.
#[must_use]
pub fn reason(reason: &Reason<'_>, guard: &Guard) -> String {
    match reason {
        Reason::TriggerFalse(item) => format!("it does not speak of this guard, by what is written for {item}"),
        Reason::Excepted(item) => format!("an exception holds, by what is written for {item}"),
        Reason::CircumstanceMissing(item) => {
            format!("whether it applies depends on {item}, which is not written down")
        }
        Reason::TriggerInDoubt(item) => {
            format!("{item} lies so close to where this rule begins that the tape cannot tell whether it applies")
        }
        Reason::Contradicts { item, index, by, bound } => contradicts(*item, *index, *by, *bound, guard),
        Reason::GroundFallsAway { index, deeper } => {
            let unit = unit_of(guard.observation(*index));
            let deeper = deeper.readable_up(unit);
            format!(
                "the ground falls away beside the edge, so that 36 in out the drop may be {deeper}: measure it to the \
deepest place there; if it was, write it as a bound (under {deeper})"
            )
        }
        Reason::NoteTellsWorse { item, index } => {
            let note = one_line(&guard.observation(*index).note);
            format!(
                "the note beside {item} tells of another place (\"{note}\"): write what it says as a reading of {item}, \
in a row of its own; the worst decides"
            )
        }
        Reason::Guessed { item, index, word } => {
            let observation = guard.observation(*index);
            let written = one_line(&observation.written);
            let off = if unit_of(observation).is_imperial() {
                "1 in"
            } else {
                "20 mm"
            };
            format!(
                "{item} \"{written}\" is no measurement, by its note ({word}): measure it, or write how far off it may be \
({written} ± {off})"
            )
        }
        Reason::NoSuchPlace { index, top } => {
            let observation = guard.observation(*index);
            let top = top.readable_up(unit_of(observation));
            format!(
                "{} \"{}\" lies above the top, which is at {top} at most by the heights that are written: look at its \
height again, or write the height where it lies as well",
                observation.item,
                one_line(&observation.written)
            )
        }
        Reason::TooLargeToBe { item, index, usual } => {
            let observation = guard.observation(*index);
            let usual = usual.readable_down(unit_of(observation));
            format!(
                "{item} \"{}\" is more than is found ({usual} is much), and a slip of the unit is likelier: look at \
number and unit again; if it is right, write over {usual}",
                one_line(&observation.written)
            )
        }
        Reason::TooSmallToBe { item, index, usual } => {
            let observation = guard.observation(*index);
            let usual = usual.readable_up(unit_of(observation));
            format!(
                "{item} \"{}\" is less than is found ({usual} is little), and a slip of the unit is likelier: look at \
number and unit again; if it is right, write under {usual}",
                one_line(&observation.written)
            )
        }
        Reason::Contradicted => {
            "two readings of one place cannot both be true: both were judged, and the worse one decides; measure again".to_owned()
        }
        Reason::Hidden(index) => hidden(guard.observation(*index)),
        Reason::OnlyFromMemory => {
            "this rule is known only from memory, and nobody here has read it: ask the local authority what it asks".to_owned()
        }
        Reason::LiftedFromMemory => {
            "an exception that is known only from memory would lift this rule: ask the local authority whether it does".to_owned()
        }
        Reason::InfillMissing(_) => {
            "a baluster or panel is missing, so the widest opening was not measured".to_owned()
        }
        Reason::NotWritten(item) => format!("{item} is not written down"),
        Reason::CouldNotLook(index) => could_not_look(guard.observation(*index)),
        Reason::Unreadable(index) => unreadable(guard.observation(*index)),
        Reason::NotCovered(item) => {
            format!("the ruleset does not cover this guard, by what is written for {item}")
        }
        Reason::CoveredElsewhere(item) => {
            format!("another ruleset covers this guard, by what is written for {item}")
        }
        Reason::NoGuard => "there is no guard to measure".to_owned(),
        Reason::OutsideZone(zone) => format!("the opening lies outside {}", band(zone)),
        Reason::TakenInZone(zone) => {
            format!("nobody wrote how high it lies: taken to lie {}", band(zone))
        }
        Reason::WhereDoesItLie(zone) => format!(
            "where does it lie? It is too wide for openings {}, and fine elsewhere: write its height behind it (at 38 in)",
            band(zone)
        ),
        Reason::ReachNotWritten(zone) => format!(
            "how far up and down does it reach? One height says where the tape was held, and the rule is about openings {}: write both its ends behind it (at 38 in to 42 in)",
            band(zone)
        ),
        Reason::BoundDoesNotSettle => {
            "the reading says too little for this limit: measure it, or try a ball or a stick of the limit's own size".to_owned()
        }
        Reason::NeedsPush => {
            "this infill gives way: try a ball and push it, and write so (4 in ball stops pushed by hand)".to_owned()
        }
        Reason::PushTooWeak => {
            "the ball was pushed less hard than the rule asks, or nobody wrote how hard".to_owned()
        }
        Reason::PushedByHand => "the ball was pushed by hand, with no force stated".to_owned(),
        Reason::OnlySomeOpenings => {
            "only some of the openings were looked at: look at every one".to_owned()
        }
        Reason::LiftMissing => {
            "the lift is missing: how far the rail's underside stands above the line of the step noses, plumb (lift 1 in)".to_owned()
        }
        Reason::LiftsDiffer => {
            "on a stair the bottom gap is the lift of the triangle at the steps, and the two were written down otherwise: measure the lift again, plumb from the line of the step noses to the rail's underside".to_owned()
        }
        Reason::NosingThickness => {
            "how thick the step nosing is is not written down, and it decides: write nosing 1 thick 1 1/4 in, or try a ball".to_owned()
        }
        Reason::StepTurned => {
            "a step that is higher than it is deep: rise and going are most likely written the other way round; \
if not, try a ball in the triangle (stair triangle,6 in ball stops)"
                .to_owned()
        }
        Reason::NoSuchStep => {
            "the dimensions of this step cannot be: measure them again, or try a ball".to_owned()
        }
        Reason::RisersOpen => {
            "the risers are open, and the hole goes on below the next tread: what is written down says how wide it is at least, and a ball says whether a larger one passes".to_owned()
        }
        Reason::BoundsStraddle => {
            "the limit lies between the largest ball that is proven to pass and the smallest that is proven to stop: try a ball of the limit's own size".to_owned()
        }
        Reason::ProbeUndecided => {
            "whether the probe passes is so near, or the outline so involved, that the sum cannot tell: cut the probe from card and try it".to_owned()
        }
        Reason::TakenAsLong => {
            "taken as long in the other direction, as gaps between bars are; if it is not, write its shape (rectangle 4 x 5 in)".to_owned()
        }
        Reason::AlongMissing => {
            "how far along the guard the ledges lie is not written down (450 mm high 600 mm along)".to_owned()
        }
        Reason::BarsHaveHeights => {
            "level bars are something to stand on: write their heights (100 to 900 mm every 100 mm)".to_owned()
        }
        Reason::Ladder { lower, upper, unit } => format!(
            "the ledges at {} and {} are {} apart",
            lower.readable(*unit),
            upper.readable(*unit),
            (*upper - *lower).readable(*unit)
        ),
        Reason::SidesDoNotMeet => {
            "its sides do not meet at the bottom, and no rule that was read says how such an opening is judged: look at it as an opening of its own".to_owned()
        }
        Reason::Wedges { degrees, ball, above, unit } => format!(
            "its sides open {degrees} degrees: a ball of {} sinks in wholly and wedges with its middle {} above the point",
            ball.readable(*unit),
            above.readable(*unit)
        ),
        Reason::FootholdDepthMissing => "how deep the foothold is is not written down".to_owned(),
        Reason::BarsHaveGaps => "it says that there is no gap, and bars have gaps: write the widest, or what else \
fills the railing"
            .to_owned(),
        Reason::MayBeTriangle => {
            "is this the triangle at the steps? Then a larger ball counts: write it as a stair triangle (rise 7 3/4 going 10 lift 2 in)".to_owned()
        }
        Reason::BottomGapIsLift => {
            "on a stair the gap under the rail is no opening of its own: give rise, going and lift as a stair triangle".to_owned()
        }
        Reason::ForAPerson(why) => {
            format!("the clause leaves this to a person: {}", one_line(why))
        }
        Reason::NotInForceWhenBuilt => {
            "today's rules for new work; the rules of its time may have asked less, which says nothing about danger".to_owned()
        }
        Reason::NoBuildTolerance => {
            "it is a plan without a build tolerance: nothing is left over for the builder's error".to_owned()
        }
        Reason::ExactlyAtLimit => "it reads exactly the limit; a tape cannot settle that".to_owned(),
        Reason::StrengthNotJudged => {
            "strength not judged: nothing known about what holds the posts; how to look: guardrule items post-fastening".to_owned()
        }
        Reason::SettledByGauge(index) => format!(
            "the tape could not tell, and a test did: {}",
            one_line(&guard.observation(*index).written)
        ),
    }
}

/// Two readings that cannot both be so, and how to say which is right.
fn contradicts(item: Item, index: usize, by: usize, bound: Length, guard: &Guard) -> String {
    let (observation, other) = (guard.observation(index), guard.observation(by));
    let (written, other_written) = (one_line(&observation.written), one_line(&other.written));
    let unit = unit_of(observation);
    let why = if other.item == Item::Risers {
        format!(
            "{other_written} risers climb {} or more",
            bound.readable_down(unit)
        )
    } else if item == Item::SillTopHeight {
        format!("{} \"{other_written}\" is lower", other.item)
    } else {
        format!(
            "{} \"{other_written}\" makes it {} or more",
            other.item,
            bound.readable_down(unit)
        )
    };
    let answer = match (item, length_of(observation)) {
        (Item::Drop, Some(length)) => format!(
            "; if it is right, since the railing runs along the lowest steps alone, write it as a bound (under {})",
            (length + unit.one()).readable_up(unit)
        ),
        (_, _) => String::new(),
    };
    format!(
        "{item} \"{written}\" cannot be beside what else is written: {why}; look at both again{answer}"
    )
}

/// The length of a plain reading.
fn length_of(observation: &Observation) -> Option<Length> {
    if let Value::Measure(measure) = observation.reading.as_ref()?.value {
        Some(measure.length)
    } else {
        None
    }
}

/// The unit in which somebody wrote a length.
fn unit_of(observation: &Observation) -> LengthUnit {
    let reading = observation.reading.as_ref().map(|reading| &reading.value);
    match reading {
        Some(Value::Measure(measure)) => measure.unit,
        Some(Value::Ball(ball)) => ball.unit,
        Some(Value::Stick(stick)) => stick.unit,
        Some(Value::Shape(shape)) => shape.unit,
        Some(_) | None => LengthUnit::Inch,
    }
}

fn could_not_look(observation: &Observation) -> String {
    let written = one_line(&observation.written);
    format!(
        "{}: could not look ({written}){}",
        observation.item,
        noted(observation)
    )
}

fn hidden(observation: &Observation) -> String {
    format!(
        "{}: it cannot be seen ({}){}",
        observation.item,
        one_line(&observation.written),
        noted(observation)
    )
}

fn unreadable(observation: &Observation) -> String {
    let written = one_line(&observation.written);
    format!(
        "{}: \"{written}\" could not be understood{}",
        observation.item,
        noted(observation)
    )
}

/// A note behind a reading; nothing where there is none.
#[must_use]
pub(super) fn noted(observation: &Observation) -> String {
    if observation.note.is_empty() {
        String::new()
    } else {
        format!("; note: {}", shortened(&one_line(&observation.note)))
    }
}

/// A note of any length, cut where it becomes a page.
#[must_use]
pub(super) fn shortened(text: &str) -> String {
    const LONGEST: usize = 240;
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

pub(super) fn band(zone: &Zone) -> String {
    format!(
        "from {} to {} above the walking surface",
        one_line(&zone.from.written),
        one_line(&zone.to.written)
    )
}

/// What was taken as given, in words for a reader.
#[must_use]
pub fn assumption(assumption: &Assumption<'_>) -> String {
    match assumption {
        Assumption::WorstPlace(item) => format!("{item} taken as {}", worst_place(*item)),
        Assumption::Covered { ruleset, item } => {
            format!(
                "{item} taken as {} covers it, since nobody wrote it down",
                one_line(ruleset)
            )
        }
        Assumption::InfillStiff => {
            "the infill taken as stiff, since nobody wrote it down".to_owned()
        }
        Assumption::EveryOpening => "every opening taken as looked at".to_owned(),
        Assumption::BuiltUnknown => {
            "no rules of its time judged, since nobody wrote down when it was built".to_owned()
        }
        Assumption::Existing => "the guard taken as standing there, and no plan".to_owned(),
        Assumption::NoRulesetCovers(years) => format!(
            "no ruleset here covers {years}, when it was built: it is judged by rules of another time"
        ),
        Assumption::Tape(class) => format!("the tape taken as {class}, since nobody named one"),
        Assumption::ReadTo { written, step } => {
            format!("\"{}\" taken as read to {step}", one_line(written))
        }
    }
}

fn worst_place(item: Item) -> &'static str {
    let opening = item.info().hole != Hole::No;
    match item.info().worst {
        Worst::Greatest if opening => "the widest",
        Worst::Greatest => "the greatest",
        Worst::Least => "the lowest",
        Worst::Neither => "the worst place",
    }
}

/// `walk.csv, line 12`
#[must_use]
pub(super) fn place(observation: &Observation, survey: &SurveyFacts) -> String {
    format!(
        "{}, line {}",
        one_line(file_name(observation.row, survey)),
        observation.row.line
    )
}

/// The file in which a row stands.
#[must_use]
pub(super) fn file_name(row: RowPlace, survey: &SurveyFacts) -> &str {
    usize::try_from(row.file)
        .ok()
        .and_then(|file| survey.files.get(file))
        .map_or("", |name| name)
}

/// The sheet of a workbook that a row stands in; `None` in a file of another kind.
pub(super) fn sheet_name(row: RowPlace, survey: &SurveyFacts) -> Option<&str> {
    let file = usize::try_from(row.file).ok()?;
    survey.sheets.get(file)?.as_deref()
}

/// The address of a cell in its sheet: `D7`.
pub(super) fn sheet_cell(row: RowPlace, column: u32, survey: &SurveyFacts) -> Option<String> {
    sheet_name(row, survey)?;
    Some(SheetCells::address(row.line, column as usize))
}
