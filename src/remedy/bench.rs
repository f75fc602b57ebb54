//! How a plan is found.
//!
//! Step by step, what holds the guard first: of the remedies of a shortfall that break
//! nothing, the one that changes least and leaves least to be done is taken, and the next
//! shortfall is looked at on the guard as it then is.

use std::borrow::Cow;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Judged;
use crate::remedy::aim::Measuring;
use crate::remedy::below;
use crate::remedy::bridges::bridges_of;
use crate::remedy::change::GuardChange;
use crate::remedy::change::changed;
use crate::remedy::cost::LEFT;
use crate::remedy::cost::cost;
use crate::remedy::drawn::Drawn;
use crate::remedy::ends;
use crate::remedy::faces;
use crate::remedy::footholds;
use crate::remedy::handrails;
use crate::remedy::height;
use crate::remedy::holding;
use crate::remedy::holding::LoadsShort;
use crate::remedy::kind::FirmOnly;
use crate::remedy::kind::RemedyCaution;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::openings;
use crate::remedy::planned::BestSteps;
use crate::remedy::planned::Lesser;
use crate::remedy::planned::PlanDepth;
use crate::remedy::planned::Planned;
use crate::remedy::planned::PlannedWay;
use crate::remedy::planned::RemedyPlan;
use crate::remedy::planned::StillOpen;
use crate::remedy::planned::Unsolved;
use crate::remedy::proof::Broken;
use crate::remedy::proof::RefusedRemedy;
use crate::remedy::proof::RuleKey;
use crate::remedy::proof::breaks;
use crate::remedy::proof::verdict_of;
use crate::remedy::shortfall::ShortfallKind;
use crate::remedy::stairs;
use crate::remedy::tonight::not_firm;
use crate::remedy::tonight::tonight;
use crate::remedy::tonight::waits;
use crate::remedy::topics;
use crate::remedy::topics::ShortTopic;
use crate::remedy::windows;
use crate::survey::Guard;

/// A guard, and how it is judged.
pub(super) struct RemedyBench<'b, 'r> {
    pub(super) guard: &'b Guard,
    pub(super) judge: &'b dyn Fn(&Guard) -> Judged<'r>,
    pub(super) measuring: Measuring,
    pub(super) high: bool,
    pub(super) depth: PlanDepth,
}

/// What was found step by step.
struct StepsTaken<'j, 'r> {
    steps: Vec<Planned>,
    unsolved: Vec<Unsolved>,
    stage: Stage<'j, 'r>,
}

/// A guard part of the way; where it begins, judged as it was handed in.
struct Stage<'j, 'r> {
    change: GuardChange,
    judged: Cow<'j, Judged<'r>>,
}

/// A remedy that breaks nothing, judged.
struct Admitted<'j, 'r> {
    offered: Offered,
    stage: Stage<'j, 'r>,
    proved: bool,
    cost: u32,
    rank: u32,
}

impl Admitted<'_, '_> {
    /// What judging shows comes before what only the built thing does, then what is less.
    fn order(&self) -> (bool, u32, u32) {
        (!self.proved, self.cost, self.rank)
    }
}

/// Where no remedy is worked out.
const NOTHING_KNOWN: &str = "no remedy is worked out here: ask somebody who builds railings";

/// Where each breaks something.
const NOTHING_HOLDS: &str =
    "each remedy that is known here would break another rule or leave this one short";

impl<'r> RemedyBench<'_, 'r> {
    /// The steps alone.
    pub(super) fn best(&self, judged: &Judged<'r>) -> BestSteps {
        let topics = topics(self.guard, judged);
        let mut refused = Vec::new();
        let taken = self.take(judged, &topics, &mut refused);
        if self.depth == PlanDepth::All {
            self.held_back(&topics, &mut refused);
            let not_firm = not_firm(self.guard, judged, &topics);
            let drawn = self.drawn(judged);
            self.bridges(&drawn, judged, &topics, not_firm, &mut refused);
        }
        BestSteps {
            measuring: self.measuring,
            high: self.high,
            topics,
            steps: taken.steps,
            unsolved: taken.unsolved,
            refused,
        }
    }

    /// The whole plan.
    pub(super) fn plan(&self, judged: &Judged<'r>) -> RemedyPlan {
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
    fn take<'j>(
        &self,
        judged: &'j Judged<'r>,
        topics: &[ShortTopic],
        refused: &mut Vec<RefusedRemedy>,
    ) -> StepsTaken<'j, 'r> {
        let not_firm = not_firm(self.guard, judged, topics);
        let drawn = self.drawn(judged);
        let mut stage = Stage {
            change: GuardChange::default(),
            judged: Cow::Borrowed(judged),
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
            passed.sort_by_key(Admitted::order);
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
            let waits = waits(self.guard, best.offered.kind, not_firm);
            let (instead, to_try): (Vec<_>, Vec<_>) = passed.partition(|one| one.proved);
            steps.push(Planned {
                topic: topic.clone(),
                proved: best.proved,
                also,
                lesser,
                offered: best.offered,
                waits,
                instead: instead.into_iter().map(|one| one.offered).collect(),
                to_try: to_try.into_iter().map(|one| one.offered).collect(),
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
    fn passing<'j>(
        &self,
        stage: &Stage<'j, 'r>,
        topic: &ShortTopic,
        all: &[ShortTopic],
        offers: Vec<Offered>,
        refused: &mut Vec<RefusedRemedy>,
    ) -> Vec<Admitted<'j, 'r>> {
        let mut passed: Vec<Admitted<'j, 'r>> = Vec::new();
        let mut offers: Vec<(u32, u32, Offered)> = (0_u32..)
            .zip(offers)
            .map(|(rank, offered)| (cost(&offered, self.high) + 3 * rank, rank, offered))
            .collect();
        if self.depth == PlanDepth::Best {
            offers.sort_by_key(|(least, rank, _)| (*least, *rank));
        }
        for (least, rank, offered) in offers {
            // what it costs by itself is the least that it can come to
            let later = topic.of_loads || is_settled_later(topic, &offered);
            let best = passed.iter().map(Admitted::order).min();
            if self.depth == PlanDepth::Best && best.is_some_and(|best| best < (later, least, rank))
            {
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
                stage: Stage {
                    change,
                    judged: Cow::Owned(judged),
                },
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
        stage: &Stage<'_, 'r>,
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
            | S::WindowOpens => openings::openings(drawn),
            S::LevelBars if topic.item == Item::Opening => openings::openings(drawn),
            S::LevelBars => faces::over_bars(drawn),
            S::TooLow | S::FarTooLow => height::too_low(drawn),
            S::TopAsHandrail => handrails::top_as_handrail(drawn),
            S::BottomGap => below::bottom_gap(drawn, topic.item),
            S::StairTriangle => stairs::triangle(drawn),
            S::RiserOpening => stairs::riser(drawn),
            S::Foothold => {
                let mut all = footholds::foothold(drawn);
                all.extend(faces::covered(drawn));
                all
            }
            S::ThingToClimb => holding::thing_to_climb(drawn),
            S::LooseInfill | S::MissingInfill => ends::loose(drawn),
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
            S::NoHandrail | S::NoHandrailUnasked => handrails::handrail(drawn),
            S::HandrailHeight => handrails::handrail_height(drawn),
            S::NoGate | S::PressedGate | S::NoGateBelow => stairs::gate(drawn, topic.item),
            S::PoolGate => stairs::gate_part(drawn, topic.item),
            S::GapAtWall => ends::at_wall(drawn),
            S::GapAtEdge => ends::at_edge(drawn),
            S::VOpen => ends::vee(drawn),
            S::FlakingPaint => holding::paint(drawn),
            S::LowSill if topic.item == Item::Height => height::too_low(drawn),
            S::LowSill => windows::low_sill(drawn, topic.item),
            S::FixedStep if topic.item == Item::HeightAboveSeat => footholds::seat(drawn),
            S::FixedStep => footholds::step(drawn, topic.item),
            S::GlassLoose => holding::glass(drawn, topic.item),
            S::GapAtJoint | S::GlassUnmarked => Vec::new(),
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

    /// What bridges the time until a shortfall is put right; what is tied to the guard only
    /// where it stands firm.
    fn bridges(
        &self,
        drawn: &Drawn<'_, 'r>,
        judged: &Judged<'r>,
        topics: &[ShortTopic],
        not_firm: bool,
        refused: &mut Vec<RefusedRemedy>,
    ) -> Vec<Offered> {
        let mut bridges = Vec::new();
        for (item, offered) in bridges_of(drawn, topics) {
            let row = offered.kind.row();
            let tears_off =
                row.cautions.contains(&RemedyCaution::Below) && row.firm == FirmOnly::Yes;
            let why = if not_firm && row.firm == FirmOnly::Yes {
                "nothing is tied to a railing that moves or whose posts are not held well"
            } else if self.high && tears_off {
                "outdoors above one storey a net or a sheet that is only tied can tear off; uprights or a fixed \
                 sheet are the remedy, and until then the way is closed"
            } else {
                let guard = changed(self.guard, &offered.change);
                let broken = guard.map(|guard| breaks(judged, &(self.judge)(&guard)));
                match broken {
                    Some(broken) if broken.is_empty() => bridges.push(offered),
                    Some(broken) => refuse(refused, item, offered, broken, String::new()),
                    None => {}
                }
                continue;
            };
            refuse(refused, item, offered, Vec::new(), why.to_owned());
        }
        bridges
    }

    fn way(&self, topics: &[ShortTopic], stage: &Stage<'_, 'r>) -> PlannedWay {
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

/// What stays undecided, strength that cannot be seen left out.
pub(super) fn open(judged: &Judged<'_>) -> Vec<StillOpen> {
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
