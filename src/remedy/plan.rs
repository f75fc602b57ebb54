//! One plan for a guard that satisfies all chosen rules at once, what else would do, what
//! is refused and why.
//!
//! Step by step, what holds the guard first: of the remedies of a shortfall that break
//! nothing, the one that changes least and leaves least to be done is taken, and the next
//! shortfall is looked at on the guard as it then is.

use crate::items::Hazard;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::Verdict;
use crate::judge;
use crate::judge::Judged;
use crate::judge::Options;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::change::changed;
use crate::remedy::holding;
use crate::remedy::holding::LoadsShort;
use crate::remedy::kind::FirmOnly;
use crate::remedy::kind::HowLong;
use crate::remedy::kind::MakesHoles;
use crate::remedy::kind::Needed;
use crate::remedy::kind::RemedyCaution;
use crate::remedy::kind::RemedyKind;
use crate::remedy::kind::WhoDoes;
use crate::remedy::level;
use crate::remedy::level::Drawn;
use crate::remedy::offered::Offered;
use crate::remedy::proof::Broken;
use crate::remedy::proof::RefusedRemedy;
use crate::remedy::proof::RuleKey;
use crate::remedy::proof::breaks;
use crate::remedy::proof::verdict_of;
use crate::remedy::shortfall::ShortfallKind;
use crate::remedy::stairs;
use crate::remedy::topics::ShortTopic;
use crate::remedy::topics::is_high_outdoors;
use crate::remedy::topics::says;
use crate::remedy::topics::topics;
use crate::remedy::upright;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// One step of a plan.
#[derive(Clone, Debug)]
pub struct Planned {
    /// What falls short.
    pub topic: ShortTopic,
    /// What is done.
    pub offered: Offered,
    /// Whether it waits until the guard stands firm.
    pub waits: bool,
    /// Whether judging the changed guard shows it; what only a push, a look or an
    /// engineer settles is shown by none.
    pub proved: bool,
    /// What else it puts right that is spoken of apart.
    pub also: Vec<Item>,
    /// What would satisfy the building rules alone, where that is less, and the advice
    /// that it leaves.
    pub lesser: Option<Lesser>,
    /// Others that would do in its place, the least change first; each was judged.
    pub instead: Vec<Offered>,
}

/// A remedy that stops where the building rules do.
#[derive(Clone, Debug)]
pub struct Lesser {
    /// What it is.
    pub offered: Offered,
    /// Advice that it leaves short.
    pub leaves: Vec<RuleKey>,
}

/// A guard with the plan carried out.
#[derive(Clone, Debug)]
pub struct PlannedWay {
    /// The guard as it would then be written.
    pub guard: Guard,
    /// What it changes.
    pub change: GuardChange,
    /// Rules that fell short and are met.
    pub solved: Vec<RuleKey>,
    /// Rules that fell short and are no longer asked.
    pub no_longer_asked: Vec<RuleKey>,
    /// Its verdict, by the rules that decide.
    pub verdict: Verdict,
    /// The worst of the advice beside them.
    pub guidance: Option<Verdict>,
}

/// Something that falls short and for which no remedy was found that breaks nothing.
#[derive(Clone, Debug)]
pub struct Unsolved {
    /// What falls short.
    pub topic: ShortTopic,
    /// Why nothing is offered.
    pub why: String,
}

/// A rule that stays undecided with the plan carried out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StillOpen {
    /// Which.
    pub key: RuleKey,
    /// What the rule says.
    pub says: String,
    /// How it stands.
    pub verdict: Verdict,
}

/// What would put a guard right.
#[derive(Clone, Debug)]
pub struct RemedyPlan {
    /// In which unit it is drawn, and how exactly it is taken to be built.
    pub measuring: Measuring,
    /// Everything that falls short.
    pub topics: Vec<ShortTopic>,
    /// What comes tonight, without tools and leave.
    pub tonight: Vec<RemedyKind>,
    /// The steps, in their order.
    pub steps: Vec<Planned>,
    /// What bridges the time until they are done.
    pub bridges: Vec<Offered>,
    /// What is not offered.
    pub refused: Vec<RefusedRemedy>,
    /// What falls short and has no remedy here.
    pub unsolved: Vec<Unsolved>,
    /// The guard with all steps done.
    pub way: PlannedWay,
    /// What stays undecided then.
    pub open: Vec<StillOpen>,
    /// Whether the guard moves, or something that holds it falls short or is a danger.
    pub not_firm: bool,
    /// Whether it stands outdoors above one storey, so that more needs a licensed person.
    pub high: bool,
}

impl RemedyPlan {
    /// Whether every shortfall has a remedy that the re-check confirms.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.unsolved.is_empty() && self.steps.iter().all(|step| step.proved)
    }

    /// Who does it, here.
    #[must_use]
    pub fn who(&self, kind: RemedyKind) -> WhoDoes {
        who(kind, self.high)
    }
}

fn who(kind: RemedyKind, high: bool) -> WhoDoes {
    let row = kind.row();
    if high { row.who_high } else { row.who }
}

/// The steps of a plan alone.
#[derive(Clone, Debug)]
pub struct BestSteps {
    /// In which unit it is drawn, and how exactly it is taken to be built.
    pub measuring: Measuring,
    /// Everything that falls short.
    pub topics: Vec<ShortTopic>,
    /// The steps, in their order; nothing of what else would do.
    pub steps: Vec<Planned>,
    /// What falls short and has no remedy here.
    pub unsolved: Vec<Unsolved>,
    /// What is not offered.
    pub refused: Vec<RefusedRemedy>,
    /// Whether it stands outdoors above one storey, so that more needs a licensed person.
    pub high: bool,
}

impl BestSteps {
    /// Who does it, here.
    #[must_use]
    pub fn who(&self, kind: RemedyKind) -> WhoDoes {
        who(kind, self.high)
    }
}

/// How much of a plan is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanDepth {
    /// The step that is best for each shortfall: the rest is judged only as far as it
    /// could be better.
    Best,
    /// Everything that could be offered is judged, and what is not offered is kept.
    All,
}

/// The steps that [`plan`] takes as well, without what else would do; for a report of
/// many guards, since less is judged for it.
#[must_use]
pub fn best_steps<'r>(
    guard: &Guard,
    judged: &Judged<'r>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
    depth: PlanDepth,
) -> BestSteps {
    let bench = RemedyBench {
        guard,
        judge: &|guard| judge::judge_by_findings(guard, facts, rulesets, options),
        measuring: Measuring::of(guard, facts),
        high: is_high_outdoors(guard),
        depth,
    };
    let topics = topics(guard, judged);
    let mut refused = Vec::new();
    let taken = bench.take(judged, &topics, &mut refused);
    if depth == PlanDepth::All {
        bench.held_back(&topics, &mut refused);
        let not_firm = not_firm(guard, judged, &topics);
        bench.bridges(
            &bench.drawn(judged),
            judged,
            &topics,
            not_firm,
            &mut refused,
        );
    }
    BestSteps {
        measuring: bench.measuring,
        high: bench.high,
        topics,
        steps: taken.steps,
        unsolved: taken.unsolved,
        refused,
    }
}

/// Works out what would put a guard right, and judges every part of it.
#[must_use]
pub fn plan<'r>(
    guard: &Guard,
    judged: &Judged<'r>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> RemedyPlan {
    let bench = RemedyBench {
        guard,
        judge: &|guard| judge::judge(guard, facts, rulesets, options),
        measuring: Measuring::of(guard, facts),
        high: is_high_outdoors(guard),
        depth: PlanDepth::All,
    };
    bench.plan(judged)
}

/// A guard, and how it is judged.
struct RemedyBench<'b, 'r> {
    guard: &'b Guard,
    judge: &'b dyn Fn(&Guard) -> Judged<'r>,
    measuring: Measuring,
    high: bool,
    depth: PlanDepth,
}

/// What was found step by step.
struct StepsTaken<'r> {
    steps: Vec<Planned>,
    unsolved: Vec<Unsolved>,
    stage: Stage<'r>,
}

/// A guard part of the way.
struct Stage<'r> {
    change: GuardChange,
    judged: Judged<'r>,
}

/// A remedy that breaks nothing, judged.
struct Admitted<'r> {
    offered: Offered,
    stage: Stage<'r>,
    proved: bool,
    cost: u32,
    rank: u32,
}

/// Where no remedy is worked out.
const NOTHING_KNOWN: &str = "no remedy is worked out here: ask somebody who builds railings";

/// Where each breaks something.
const NOTHING_HOLDS: &str =
    "each remedy that is known here would break another rule or leave this one short";

impl<'r> RemedyBench<'_, 'r> {
    fn plan(&self, judged: &Judged<'r>) -> RemedyPlan {
        let topics = topics(self.guard, judged);
        let not_firm = not_firm(self.guard, judged, &topics);
        let mut refused: Vec<RefusedRemedy> = Vec::new();
        let taken = self.take(judged, &topics, &mut refused);
        self.held_back(&topics, &mut refused);
        let drawn = self.drawn(judged);
        let bridges = self.bridges(&drawn, judged, &topics, not_firm, &mut refused);
        let way = self.way(&topics, &taken.stage);
        RemedyPlan {
            measuring: self.measuring,
            tonight: tonight(self.guard, &topics, not_firm),
            open: open(&taken.stage.judged),
            topics,
            steps: taken.steps,
            bridges,
            refused,
            unsolved: taken.unsolved,
            way,
            not_firm,
            high: self.high,
        }
    }

    fn drawn<'d>(&'d self, judged: &'d Judged<'r>) -> Drawn<'d, 'r> {
        Drawn {
            guard: self.guard,
            judged,
            measuring: self.measuring,
        }
    }

    /// Topic by topic, on the guard as it is by then.
    fn take(
        &self,
        judged: &Judged<'r>,
        topics: &[ShortTopic],
        refused: &mut Vec<RefusedRemedy>,
    ) -> StepsTaken<'r> {
        let not_firm = not_firm(self.guard, judged, topics);
        let drawn = self.drawn(judged);
        let mut stage = Stage {
            change: GuardChange::default(),
            judged: judged.clone(),
        };
        let mut steps: Vec<Planned> = Vec::new();
        let mut unsolved = Vec::new();
        for topic in topics {
            if is_solved(topic, &stage.judged) {
                continue;
            }
            let offers = self.offers(&drawn, topic);
            if offers.is_empty() {
                unsolved.push(Unsolved {
                    topic: topic.clone(),
                    why: NOTHING_KNOWN.to_owned(),
                });
                continue;
            }
            let mut passed = self.passing(&stage, topic, topics, offers, refused);
            passed.sort_by_key(|one| (one.cost, one.rank));
            let mut passed = passed.into_iter();
            let Some(best) = passed.next() else {
                unsolved.push(Unsolved {
                    topic: topic.clone(),
                    why: NOTHING_HOLDS.to_owned(),
                });
                continue;
            };
            let lesser = match self.depth {
                PlanDepth::All => self.lesser(&stage, judged, topic, &best.offered),
                PlanDepth::Best => None,
            };
            let open = |other: &&ShortTopic| {
                *other != topic
                    && !is_solved(other, &stage.judged)
                    && is_solved(other, &best.stage.judged)
            };
            let also = topics.iter().filter(open).map(|other| other.item).collect();
            let waits = not_firm && best.offered.kind.row().firm == FirmOnly::Yes;
            steps.push(Planned {
                topic: topic.clone(),
                proved: best.proved,
                also,
                lesser,
                offered: best.offered,
                waits,
                instead: passed
                    .filter(|one| one.proved)
                    .map(|one| one.offered)
                    .collect(),
            });
            stage = best.stage;
        }
        StepsTaken {
            steps,
            unsolved,
            stage,
        }
    }

    /// Every remedy of a topic that breaks nothing and puts it right.
    fn passing(
        &self,
        stage: &Stage<'r>,
        topic: &ShortTopic,
        all: &[ShortTopic],
        offers: Vec<Offered>,
        refused: &mut Vec<RefusedRemedy>,
    ) -> Vec<Admitted<'r>> {
        let mut passed: Vec<Admitted<'r>> = Vec::new();
        let mut offers: Vec<(u32, u32, Offered)> = (0_u32..)
            .zip(offers)
            .map(|(rank, offered)| (cost(&offered, self.high) + 3 * rank, rank, offered))
            .collect();
        if self.depth == PlanDepth::Best {
            offers.sort_by_key(|(least, rank, _)| (*least, *rank));
        }
        for (least, rank, offered) in offers {
            // what it costs by itself is the least that it can come to
            let best = passed.iter().map(|one| (one.cost, one.rank)).min();
            if self.depth == PlanDepth::Best && best.is_some_and(|best| best < (least, rank)) {
                continue;
            }
            let change = stage.change.and(&offered.change);
            // a reading that is none of its item is no remedy
            let Some(guard) = changed(self.guard, &change) else {
                continue;
            };
            let judged = (self.judge)(&guard);
            let broken = breaks(&stage.judged, &judged);
            if !broken.is_empty() {
                refuse(refused, topic.item, offered, broken, String::new());
                continue;
            }
            let later = topic.of_loads || is_settled_later(topic, &offered);
            let proved = !later && is_solved(topic, &judged);
            if !proved && !later {
                continue;
            }
            let left = all
                .iter()
                .filter(|other| !is_solved(other, &judged))
                .count();
            let left = u32::try_from(left).unwrap_or(u32::MAX);
            passed.push(Admitted {
                offered,
                stage: Stage { change, judged },
                proved,
                cost: least + LEFT * left,
                rank,
            });
        }
        passed
    }

    /// What would satisfy the building rules alone, where that takes less than the advice.
    fn lesser(
        &self,
        stage: &Stage<'r>,
        judged: &Judged<'r>,
        topic: &ShortTopic,
        best: &Offered,
    ) -> Option<Lesser> {
        let binding = |key: &&RuleKey| {
            let mut findings = judged.findings.iter();
            findings.any(|finding| finding.binding && RuleKey::of(finding) == **key)
        };
        let asked: Vec<&RuleKey> = topic.short.iter().filter(binding).collect();
        if asked.is_empty() || asked.len() == topic.short.len() {
            return None;
        }
        let mut rules = judged.clone();
        rules.findings.retain(|finding| finding.binding);
        let drawn = Drawn {
            guard: self.guard,
            judged: &rules,
            measuring: self.measuring,
        };
        let mut all: Vec<(u32, Lesser)> = Vec::new();
        for (rank, offered) in (0_u32..).zip(self.offers(&drawn, topic)) {
            let guard = changed(self.guard, &stage.change.and(&offered.change))?;
            let after = (self.judge)(&guard);
            let met = asked.iter().all(|key| {
                matches!(
                    verdict_of(&after, key),
                    Verdict::Meets | Verdict::DoesNotApply
                )
            });
            let left = |key: &&RuleKey| verdict_of(&after, key) == Verdict::FallsShort;
            let leaves: Vec<RuleKey> = topic.short.iter().filter(left).cloned().collect();
            if met && !leaves.is_empty() && breaks(&stage.judged, &after).is_empty() {
                all.push((
                    cost(&offered, self.high) + 3 * rank,
                    Lesser { offered, leaves },
                ));
            }
        }
        let (cheap, lesser) = all.into_iter().min_by_key(|(cost, _)| *cost)?;
        let less = cheap < cost(best, self.high) || lesser.offered.kind == best.kind;
        (less && lesser.offered.says != best.says).then_some(lesser)
    }

    /// What could be done about a topic, the least change that is safe first.
    fn offers(&self, drawn: &Drawn<'_, 'r>, topic: &ShortTopic) -> Vec<Offered> {
        let Some(kind) = topic.kind else {
            return Vec::new();
        };
        let mut all = self.of_kind(drawn, topic, kind);
        let lasting = kind.row().lasting;
        all.sort_by_key(|one| {
            let at = lasting.iter().position(|kind| *kind == one.kind);
            at.unwrap_or(lasting.len())
        });
        all
    }

    fn of_kind(
        &self,
        drawn: &Drawn<'_, 'r>,
        topic: &ShortTopic,
        kind: ShortfallKind,
    ) -> Vec<Offered> {
        use ShortfallKind as S;
        match kind {
            S::Gap
            | S::Hole
            | S::GapForAChild
            | S::GapForAHead
            | S::Cables
            | S::GlassGap
            | S::WindowOpens => upright::openings(drawn),
            S::LevelBars if topic.item == Item::Opening => upright::openings(drawn),
            S::LevelBars => upright::over_bars(drawn),
            S::TooLow | S::FarTooLow => level::too_low(drawn),
            S::TopAsHandrail => level::top_as_handrail(drawn),
            S::BottomGap => level::bottom_gap(drawn, topic.item),
            S::StairTriangle => stairs::triangle(drawn),
            S::RiserOpening => stairs::riser(drawn),
            S::Foothold => {
                let mut all = level::foothold(drawn);
                all.extend(upright::covered(drawn));
                all
            }
            S::ThingToClimb => holding::thing_to_climb(drawn),
            S::LooseInfill | S::MissingInfill => upright::loose(drawn),
            S::MovesALot | S::MovesALittle => holding::moves(drawn),
            S::PostFixing | S::PostHidden => {
                let others = drawn.judged.findings.iter().any(|finding| {
                    finding.chain.is_none() && topic.short.contains(&RuleKey::of(finding))
                });
                let loads = if others || !topic.of_loads {
                    LoadsShort::WithOthers
                } else {
                    LoadsShort::Alone
                };
                holding::fixing(drawn, loads)
            }
            S::PostRotten => holding::rotten(drawn),
            S::RailEndLoose | S::BracketLoose | S::HandrailComesOff => holding::rail_end(),
            S::NoGuard => holding::new_guard(drawn, self.judge),
            S::NoHandrail | S::NoHandrailUnasked => level::handrail(drawn),
            S::HandrailHeight => level::handrail_height(drawn),
            S::NoGate | S::PressedGate | S::NoGateBelow => stairs::gate(drawn, topic.item),
            S::PoolGate => stairs::gate_part(drawn, topic.item),
            S::GapAtWall => upright::at_wall(drawn),
            S::GapAtEdge => upright::at_edge(drawn),
            S::VOpen => upright::vee(drawn),
            S::FlakingPaint => holding::paint(drawn),
            S::LowSill | S::GapAtJoint | S::GlassLoose | S::GlassUnmarked => Vec::new(),
        }
    }

    /// What people would think of first, and what is never offered.
    fn held_back(&self, topics: &[ShortTopic], refused: &mut Vec<RefusedRemedy>) {
        for topic in topics {
            let (kind, says, why) = match topic.kind {
                Some(ShortfallKind::LevelBars) if topic.item == Item::Opening => (
                    RemedyKind::MoreLevelBars,
                    "More level bars between those that are there.",
                    "they would close the gaps and add rungs that a child climbs",
                ),
                Some(ShortfallKind::TopAsHandrail) => (
                    RemedyKind::LowerTop,
                    "The top of the railing lowered to the height of a handrail.",
                    "it takes railing away where somebody could fall over it",
                ),
                Some(_) | None => continue,
            };
            let offered = Offered::new(kind, says.to_owned(), GuardChange::default());
            refuse(refused, topic.item, offered, Vec::new(), why.to_owned());
        }
    }

    /// What bridges the time until the gaps are closed; only on a guard that stands firm.
    fn bridges(
        &self,
        drawn: &Drawn<'_, 'r>,
        judged: &Judged<'r>,
        topics: &[ShortTopic],
        not_firm: bool,
        refused: &mut Vec<RefusedRemedy>,
    ) -> Vec<Offered> {
        let of_gaps = |topic: &ShortTopic| matches!(topic.item, Item::Opening | Item::InfillLoose);
        let glass = says(self.guard, InfillWord::Glass);
        if !topics.iter().any(of_gaps) || glass || level::is_stair(self.guard) {
            return Vec::new();
        }
        let mut bridges = Vec::new();
        for offered in upright::bridges(drawn) {
            let why = if not_firm {
                "nothing is tied to a railing that moves or whose posts are not held well"
            } else if self.high {
                "outdoors above one storey a net can tear off; uprights or a fixed sheet are the remedy, and \
                 until then the way is closed"
            } else {
                let guard = changed(self.guard, &offered.change);
                let broken = guard.map(|guard| breaks(judged, &(self.judge)(&guard)));
                match broken {
                    Some(broken) if broken.is_empty() => bridges.push(offered),
                    Some(broken) => refuse(refused, Item::Opening, offered, broken, String::new()),
                    None => {}
                }
                continue;
            };
            refuse(refused, Item::Opening, offered, Vec::new(), why.to_owned());
        }
        bridges
    }

    fn way(&self, topics: &[ShortTopic], stage: &Stage<'r>) -> PlannedWay {
        let short = topics.iter().flat_map(|topic| &topic.short);
        let (mut solved, mut no_longer_asked) = (Vec::new(), Vec::new());
        for key in short {
            match verdict_of(&stage.judged, key) {
                Verdict::Meets => solved.push(key.clone()),
                Verdict::DoesNotApply => no_longer_asked.push(key.clone()),
                Verdict::FallsShort
                | Verdict::TooClose
                | Verdict::NotMeasured
                | Verdict::NotSettled => {}
            }
        }
        let guard = if stage.change == GuardChange::default() {
            None
        } else {
            changed(self.guard, &stage.change)
        };
        PlannedWay {
            guard: guard.unwrap_or_else(|| self.guard.clone()),
            change: stage.change.clone(),
            solved,
            no_longer_asked,
            verdict: stage.judged.verdict,
            guidance: stage.judged.guidance,
        }
    }
}

/// What it weighs that something is left to be done by another step.
const LEFT: u32 = 20;

/// How much a remedy changes and asks of people: less is better. (our own judgement, no
/// source)
fn cost(offered: &Offered, high: bool) -> u32 {
    let row = offered.kind.row();
    let needed = |needed: Needed, ask: u32, yes: u32| match needed {
        Needed::No => 0,
        Needed::Ask => ask,
        Needed::Yes => yes,
    };
    let who = match who(offered.kind, high) {
        WhoDoes::Anyone => 0,
        WhoDoes::Handy => 1,
        WhoDoes::Trade => 8,
        WhoDoes::Licensed => 16,
    };
    let holes = match row.holes {
        MakesHoles::No => 0,
        MakesHoles::Either => 1,
        MakesHoles::Yes => 3,
    };
    let labour = offered.labour.map_or(0, |labour| labour.minutes[1] / 30);
    let parts = u32::try_from(offered.parts.len()).unwrap_or(u32::MAX);
    // what catches wind or pulls harder at the posts comes after what does not
    let lever = if row.cautions.contains(&RemedyCaution::Lever) {
        10
    } else {
        0
    };
    who + holes + lever + needed(row.leave, 1, 3) + needed(row.permit, 2, 15) + labour + 2 * parts
}

fn refuse(
    refused: &mut Vec<RefusedRemedy>,
    item: Item,
    offered: Offered,
    breaks: Vec<Broken>,
    why: String,
) {
    let known = refused
        .iter()
        .any(|other| other.offered.says == offered.says);
    if !known {
        refused.push(RefusedRemedy {
            item,
            offered,
            breaks,
            why,
        });
    }
}

/// Whether every rule of a topic is met or no longer asked, and its danger is gone.
fn is_solved(topic: &ShortTopic, judged: &Judged<'_>) -> bool {
    let met = topic.short.iter().all(|key| {
        matches!(
            verdict_of(judged, key),
            Verdict::Meets | Verdict::DoesNotApply
        )
    });
    let mut dangers = judged.dangers.iter();
    let gone = !topic.danger || !dangers.any(|seen| seen.item == topic.item);
    met && gone && !topic.of_loads
}

/// What no drawing shows: whether a built thing moves, what it looks like, what an engineer says.
fn is_settled_later(topic: &ShortTopic, offered: &Offered) -> bool {
    let of_built = matches!(
        topic.item,
        Item::MovesWhenPushed | Item::Condition | Item::RailEndFastening
    );
    of_built || offered.change == GuardChange::default()
}

fn not_firm(guard: &Guard, judged: &Judged<'_>, topics: &[ShortTopic]) -> bool {
    let moves = says(guard, MovesWhenPushedWord::ALot) || says(guard, MovesWhenPushedWord::ALittle);
    let danger = judged
        .dangers
        .iter()
        .any(|seen| seen.danger.hazard == Hazard::GiveWay);
    let held = topics.iter().any(|topic| {
        matches!(
            topic.item,
            Item::MovesWhenPushed | Item::Condition | Item::PostFastening
        )
    });
    moves || danger || held
}

/// What comes tonight: of a guard that does not hold only that everybody keeps off it.
fn tonight(guard: &Guard, topics: &[ShortTopic], not_firm: bool) -> Vec<RemedyKind> {
    let moves = topics.iter().any(|topic| {
        topic.danger
            && matches!(
                topic.item,
                Item::MovesWhenPushed | Item::Condition | Item::PostFastening
            )
    });
    if moves || says(guard, MovesWhenPushedWord::ALot) {
        return vec![RemedyKind::EverybodyOff];
    }
    let mut kinds: Vec<RemedyKind> = Vec::new();
    let little = says(guard, MovesWhenPushedWord::ALittle);
    for topic in topics {
        let Some(kind) = topic.kind else { continue };
        for kind in kind.row().tonight {
            let held_back = not_firm && kind.row().firm == FirmOnly::Yes;
            let there = |item: Item| topics.iter().any(|topic| topic.item == item);
            let not_there = (*kind == RemedyKind::MoveThing && !there(Item::ThingToClimb))
                || (*kind == RemedyKind::MoveWhatRaises && there(Item::ThingToClimb))
                || (*kind == RemedyKind::FootholdAway && !there(Item::Foothold))
                || (*kind == RemedyKind::EverybodyOff && !little);
            if !held_back && !not_there && !kinds.contains(kind) {
                kinds.push(*kind);
            }
        }
    }
    // whoever keeps off, or keeps from the stairs, keeps from the rest as well
    let sweeping = [
        RemedyKind::EverybodyOff,
        RemedyKind::CloseTheWay,
        RemedyKind::StairsShut,
        RemedyKind::KeepAway,
    ];
    if let Some(first) = sweeping.iter().find(|kind| kinds.contains(kind)) {
        let beside = [
            RemedyKind::MoveThing,
            RemedyKind::FootholdAway,
            RemedyKind::BoardOverHole,
            RemedyKind::KeepOffPaint,
            RemedyKind::TestPaint,
        ];
        kinds.retain(|kind| kind == first || beside.contains(kind));
        kinds.sort_by_key(|kind| kind != first);
    }
    debug_assert!(
        kinds
            .iter()
            .all(|kind| kind.row().lasts.contains(&HowLong::Tonight))
    );
    kinds
}

/// What stays undecided, strength that cannot be seen left out.
fn open(judged: &Judged<'_>) -> Vec<StillOpen> {
    let open = judged.findings.iter().filter(|finding| {
        let undecided = finding.counts_as().is_undecided();
        undecided
            && finding.chain.is_none()
            && !finding.from_memory
            && !finding.is_strength_unseen()
    });
    open.map(|finding| StillOpen {
        key: RuleKey::of(finding),
        says: finding.rule.says.clone(),
        verdict: finding.counts_as(),
    })
    .collect()
}
