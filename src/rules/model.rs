//! What a ruleset is once it has been read.

use std::fmt;
use std::sync::Arc;

use crate::input::Excerpt;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::quantities::Age;
use crate::quantities::Moment;
use crate::reading::Reading;
use crate::rules::demand::Bounds;
use crate::rules::demand::Check;
use crate::rules::demand::Limit;
use crate::rules::demand::Member;
use crate::rules::demand::Stated;
use crate::rules::matter::Matter;
use crate::rules::unread::Unread;
use crate::rules::unread::UnreadPart;

/// One ruleset: an edition of a code, or a collection of guidance.
#[derive(Clone, Debug)]
pub struct Ruleset {
    /// Its id: `us-dwelling-2018`.
    pub id: String,
    /// Its title for readers.
    pub title: String,
    /// The country it holds in, or "any country"; lists are grouped by it.
    pub country: Option<String>,
    /// The parts of the country in which it holds; empty where it holds in all of it.
    pub regions: Vec<String>,
    /// The parts of the country whose own print of this edition was read and has these
    /// rules unchanged.
    pub taken_up: Vec<String>,
    /// The parts of the country that have taken these rules out of their print, or have
    /// a code of their own in their place.
    pub not_in: Vec<String>,
    /// Whether it is about buildings other than houses of one home or two.
    pub not_for_houses: bool,
    /// The narrower matters that it is about; empty where it is about buildings at large.
    pub matters: Vec<Matter>,
    /// The edition that was read.
    pub edition: String,
    /// Guidance and no law.
    pub advisory: bool,
    /// The years in which the model edition was current.
    pub in_force: Option<InForce>,
    /// What it covers.
    pub covers: Covers,
    /// What it leaves out; a report says what may bear on the guard at hand.
    pub leaves_out: Vec<LeaveOut>,
    /// What it speaks of alone; empty where it speaks of guards as a whole.
    pub concerns: Vec<Concern>,
    /// Hazards that its text was read to ask nothing about.
    pub asks_nothing: Vec<AsksNothing>,
    /// The sources it cites.
    pub sources: Vec<Arc<Source>>,
    /// Its rules in the order of the file; one that an amendment replaces keeps
    /// its place, and an amendment's own new ones come last.
    pub rules: Vec<Rule>,
    /// What a clause says without a number, said beside the findings.
    pub cautions: Vec<Caution>,
    /// The file it came from: a path, or the id of an embedded one.
    pub file: Arc<str>,
    /// The id or file that it extends, as it names it.
    pub extends: Option<String>,
    /// Which rules were replaced or removed, and by which file.
    pub amendments: Vec<Amendment>,
    /// The rules that an amendment took away, as they were: what they asked is
    /// asked no more, and that is no leave. Where the rules that remain on their
    /// subject are all switched off, a guard is judged as if nobody had asked,
    /// unless the trigger of each rule taken away is off as well.
    pub removed: Vec<Rule>,
    /// What of it could not be read. While there is anything, it lets no guard meet.
    pub unread: Vec<Unread>,
    /// Why it is judged by.
    pub asked: Asked,
}

impl Ruleset {
    /// What stands for a ruleset that was asked for and cannot be judged by:
    /// it was not found, or nothing usable of it remains. It has no rules, and
    /// lets no guard meet.
    #[must_use]
    pub fn unreadable(name: &str) -> Ruleset {
        let mut ruleset = Ruleset::without_rules(&name.into());
        ruleset.unread.push(Unread {
            part: UnreadPart::Whole,
            hazard: None,
            at: Excerpt::whole(Arc::clone(&ruleset.file)),
        });
        ruleset
    }

    /// A ruleset that says nothing yet.
    pub(super) fn without_rules(file: &Arc<str>) -> Ruleset {
        Ruleset {
            id: file.to_string(),
            title: "a ruleset that could not be read".to_owned(),
            country: None,
            regions: Vec::new(),
            taken_up: Vec::new(),
            not_in: Vec::new(),
            not_for_houses: false,
            matters: Vec::new(),
            edition: "not known".to_owned(),
            advisory: false,
            in_force: None,
            covers: Covers::default(),
            leaves_out: Vec::new(),
            concerns: Vec::new(),
            asks_nothing: Vec::new(),
            sources: Vec::new(),
            rules: Vec::new(),
            cautions: Vec::new(),
            file: Arc::clone(file),
            extends: None,
            amendments: Vec::new(),
            removed: Vec::new(),
            unread: Vec::new(),
            asked: Asked::Chosen,
        }
    }
}

/// Why a ruleset is judged by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Asked {
    /// Somebody chose it.
    #[default]
    Chosen,
    /// It is another edition of a chosen one, for guards that were built in its time.
    OfItsTime,
}

/// Years in which a model edition was current: from the first, until the next edition came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InForce {
    /// The first year.
    pub from: i32,
    /// The year of the next edition, if there is one; no longer included.
    pub until: Option<i32>,
}

/// What a ruleset covers.
#[derive(Clone, Debug, Default)]
pub struct Covers {
    /// In words.
    pub says: String,
    /// Circumstances that must hold; one that nobody stated is taken to hold.
    pub conditions: Vec<Condition>,
}

/// Something that a ruleset leaves out.
#[derive(Clone, Debug, PartialEq)]
pub struct LeaveOut {
    /// Conditions; it is said unless one of them is false.
    pub when: Vec<Condition>,
    /// What is left out, in a sentence.
    pub says: String,
}

/// The one subject of a ruleset that does not speak of guards as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Concern {
    /// How wide gaps may be; not how high a guard is.
    Gaps,
    /// Gates at stairs.
    Gates,
    /// Handrails.
    Handrails,
    /// How high guards are; not how wide their gaps.
    Heights,
    /// Slats of beds.
    Slats,
}

impl Concern {
    /// All of them.
    pub const ALL: [Concern; 5] = [
        Concern::Gaps,
        Concern::Gates,
        Concern::Handrails,
        Concern::Heights,
        Concern::Slats,
    ];

    /// The word in rulesets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Concern::Gaps => "gaps",
            Concern::Gates => "gates",
            Concern::Handrails => "handrails",
            Concern::Heights => "heights",
            Concern::Slats => "slats",
        }
    }
}

/// A hazard that the text of a ruleset was read to ask nothing about.
#[derive(Clone, Debug)]
pub struct AsksNothing {
    /// The hazard.
    pub hazard: Hazard,
    /// The clause in its source, where it can be named.
    pub clause: Option<String>,
    /// Conditions that must all hold; an unknown one is asked for.
    pub when: Vec<Condition>,
    /// A sentence of our own.
    pub says: String,
    /// The text that was read.
    pub source: Arc<Source>,
    /// How it was read: published or quoted, never from memory.
    pub status: Status,
    /// Worked examples: `meets` where nothing is asked, `does not apply` where
    /// the conditions do not hold.
    pub examples: Vec<Example>,
    /// The file that says so.
    pub file: Arc<str>,
}

/// How rules that a ruleset takes over unchanged are to be read: the text of
/// this edition was not, or not as the other was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Carried {
    /// How far the rules taken over are to be trusted at most.
    pub status: Status,
    /// A sentence that is added to each of them.
    pub says: String,
}

/// A rule that an amendment replaced, added or removed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Amendment {
    /// The rule's id.
    pub rule: String,
    /// The file that amends it.
    pub file: Arc<str>,
    /// Whether the rule was taken away.
    pub removed: bool,
    /// In what it asks less than before, a few words each; empty where it asks as much.
    pub asks_less: Vec<String>,
}

/// Where a rule comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// Its key in the file.
    pub key: String,
    /// Its title.
    pub title: String,
    /// Its edition.
    pub edition: String,
    /// How it was read.
    pub status: Status,
}

/// How a source was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Status {
    /// Read in the text itself.
    Published,
    /// Read second-hand.
    Quoted,
    /// From memory; such a rule only warns unless the user asks.
    Memory,
    /// Common practice, no source.
    Practice,
}

impl Status {
    /// All of them.
    pub const ALL: [Status; 4] = [
        Status::Published,
        Status::Quoted,
        Status::Memory,
        Status::Practice,
    ];

    /// The word in rulesets and reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Status::Published => "published",
            Status::Quoted => "quoted",
            Status::Memory => "memory",
            Status::Practice => "practice",
        }
    }
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// How soon to act on a shortfall. In the order of the report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Urgency {
    /// Act tonight.
    Now,
    /// Act soon.
    Soon,
    /// Know about it.
    Know,
}

impl Urgency {
    /// All of them.
    pub const ALL: [Urgency; 3] = [Urgency::Now, Urgency::Soon, Urgency::Know];

    /// The word in rulesets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Urgency::Now => "now",
            Urgency::Soon => "soon",
            Urgency::Know => "know",
        }
    }
}

/// One requirement.
#[derive(Clone, Debug)]
pub struct Rule {
    /// Names the fault: `rail-too-low`.
    pub id: String,
    /// The hazard it guards against.
    pub hazard: Hazard,
    /// The clause in its source.
    pub clause: String,
    /// How soon to act on a shortfall.
    pub urgency: Urgency,
    /// In what time the text asks for a fault to be mended, where it says so:
    /// `24 hours`.
    pub within: Option<String>,
    /// What it asks, in one sentence of our own.
    pub says: String,
    /// Where it comes from.
    pub source: Arc<Source>,
    /// How this clause was read.
    pub status: Status,
    /// Where the clause has no number and leaves the decision to a person: why.
    /// Where its check is not met for sure, the finding is not settled.
    pub judgement: Option<String>,
    /// Conditions that must all hold.
    pub when: Vec<Condition>,
    /// Alternatives: one group must hold, where there are any.
    pub when_any: Vec<Vec<Condition>>,
    /// Exceptions: no group may hold.
    pub unless: Vec<Vec<Condition>>,
    /// What it asks: one of these suffices.
    pub checks: Vec<Check>,
    /// Worked examples.
    pub examples: Vec<Example>,
    /// The file that holds the rule (an amendment's rules stand in another).
    pub file: Arc<str>,
}

/// A caution that a ruleset adds to the findings.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    /// Conditions; it is said unless one of them is false.
    pub when: Vec<Condition>,
    /// The clause in its source.
    pub clause: String,
    /// What it says.
    pub says: String,
    /// Where it comes from.
    pub source: Arc<Source>,
    /// How this clause was read.
    pub status: Status,
}

/// Something that must hold for a rule to apply.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// The item it looks at.
    pub item: Item,
    /// What must hold of it.
    pub test: Test,
}

/// What a condition asks of an item.
#[derive(Clone, Debug, PartialEq)]
pub enum Test {
    /// Ages: one child within the bounds suffices.
    Age(Bounds<Age>),
    /// Counts.
    Count(Bounds<u32>),
    /// Lengths: the governing one.
    Length(Bounds<Limit>),
    /// One of these words.
    OneOf(Vec<&'static str>),
    /// None of these words.
    NoneOf(Vec<&'static str>),
    /// Years of building.
    Years(Bounds<i32>),
}

/// A worked example of a rule.
#[derive(Clone, Debug)]
pub struct Example {
    /// What is given: readings as a survey would have them.
    pub given: Vec<(Item, Reading, String)>,
    /// The verdict that must come out.
    pub expect: Verdict,
    /// Of a load rule: the greatest moments that must come out.
    pub moments: Vec<(Member, Stated<Moment>)>,
    /// Where it stands, to point at when it fails.
    pub at: Excerpt,
}
