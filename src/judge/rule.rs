//! One rule against one guard.

use std::sync::Arc;

use crate::items::Hazard;
use crate::items::Hole;
use crate::items::Item;
use crate::items::ItemSet;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::MemoryRules;
use crate::judge::Reason;
use crate::judge::condition::Applies;
use crate::judge::condition::Truth;
use crate::judge::condition::applies;
use crate::judge::condition::reasons;
use crate::judge::facts::guessed;
use crate::judge::facts::slip;
use crate::judge::foothold;
use crate::judge::judgement;
use crate::judge::judgement::Judgement;
use crate::judge::lengths;
use crate::judge::lift;
use crate::judge::load_path::chain;
use crate::judge::load_path::is_the_same;
use crate::judge::opening;
use crate::judge::presence::Presence;
use crate::judge::said::says_nothing;
use crate::judge::scene::Build;
use crate::judge::scene::Scene;
use crate::judge::told_worse::told_worse;
use crate::judge::v_opening;
use crate::quantities::Length;
use crate::quantities::YearSpan;
use crate::reading::Value;
use crate::rules::Check;
use crate::rules::Demand;
use crate::rules::LoadDemand;
use crate::rules::OpeningDemand;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Status;
use crate::rules::Subject;

/// A ruleset before one guard.
pub(super) struct Bench<'r> {
    pub(super) ruleset: &'r Ruleset,
    /// Why the ruleset as a whole does not judge this guard.
    pub(super) not_covered: Option<Reason<'r>>,
    /// Whether its rules decide, or only advise.
    pub(super) decides: Decides,
    /// Whether it was in force when the guard was built.
    pub(super) in_force: InForceThen,
}

/// Whether a ruleset's rules take part in the guard's verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Decides {
    Yes,
    No,
}

/// Whether a ruleset was in force when the guard was built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum InForceThen {
    /// It was, or nobody knows.
    Perhaps,
    /// It was not.
    No,
}

impl InForceThen {
    pub(super) fn of(ruleset: &Ruleset, built: Option<YearSpan>) -> InForceThen {
        let (Some(years), Some(span)) = (ruleset.in_force, built) else {
            return InForceThen::Perhaps;
        };
        let before = span.surely_before(years.from);
        let after = years.until.is_some_and(|until| span.surely_from(until));
        if before || after {
            InForceThen::No
        } else {
            InForceThen::Perhaps
        }
    }
}

pub(super) fn is_excepted(finding: &Finding<'_>) -> bool {
    let mut reasons = finding.reasons.iter();
    reasons.any(|reason| matches!(reason, Reason::Excepted(_)))
}

/// Whether a rule limits holes, and so is read beside the others that do.
pub(super) fn bounds_holes(rule: &Rule) -> bool {
    let mut checks = rule.checks.iter();
    checks.any(|check| matches!(check.demand, Demand::Opening(_)))
}

/// Whether a rule limits holes somewhere alone.
pub(super) fn has_a_zone(rule: &Rule) -> bool {
    let mut checks = rule.checks.iter();
    checks.any(|check| matches!(&check.demand, Demand::Opening(demand) if demand.zone.is_some()))
}

/// A rule, whether it applies, and the items that this rests on.
#[derive(Clone, Copy)]
pub(super) struct Considered<'r> {
    pub(super) rule: &'r Rule,
    pub(super) applies: Applies,
    pub(super) looked_at: ItemSet,
    /// Whether this had to be asked anew.
    pub(super) is_touched: bool,
}

impl<'r> Considered<'r> {
    pub(super) fn of(scene: &Scene<'_>, rule: &'r Rule) -> Considered<'r> {
        let (applies, looked_at) = scene.looking_at(|| applies(scene, rule));
        Considered {
            rule,
            applies,
            looked_at,
            is_touched: true,
        }
    }
}

/// The rules of one ruleset with whether each applies; all of those on holes.
pub(super) struct Others<'a, 'r> {
    pub(super) rules: &'a [Considered<'r>],
}

impl<'r> Others<'_, 'r> {
    fn openings(&self, item: Item) -> impl Iterator<Item = &'r OpeningDemand> {
        let possible = |applies: &Applies| applies.truth > Truth::False;
        self.rules
            .iter()
            .filter(move |other| possible(&other.applies))
            .flat_map(move |other| other.rule.openings(item))
    }

    /// What it rests on whether each of the rules on holes applies.
    fn looked_at(&self) -> ItemSet {
        let holes = self.rules.iter().filter(|other| bounds_holes(other.rule));
        holes.fold(ItemSet::EMPTY, |all, other| all.union(other.looked_at))
    }

    /// Demands with a zone on this item.
    fn zoned(&self, item: Item) -> Vec<&'r OpeningDemand> {
        self.openings(item)
            .filter(|demand| demand.zone.is_some())
            .collect()
    }

    /// The ball that the triangle at a stair has to stop.
    fn triangle_ball(&self) -> Option<Length> {
        self.openings(Item::StairTriangle)
            .find_map(|demand| opening::ball_size(demand).map(|limit| limit.length))
    }
}

/// Judges by one rule; the items that this looks at.
pub(super) fn judge_rule<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    here: &Considered<'r>,
    others: &Others<'_, 'r>,
    known: Option<&mut Option<Vec<Judgement<'r>>>>,
    judgements: &mut Vec<Judgement<'r>>,
) -> ItemSet {
    let rule_here = (here.rule, here.applies);
    let work = || judge(scene, bench, rule_here, others, known, judgements);
    let ((), looked_at) = scene.looking_at(work);
    let looked_at = looked_at.union(here.looked_at);
    if bounds_holes(here.rule) {
        looked_at.union(others.looked_at())
    } else {
        looked_at
    }
}

fn judge<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    (rule, applies): (&'r Rule, Applies),
    others: &Others<'_, 'r>,
    known: Option<&mut Option<Vec<Judgement<'r>>>>,
    judgements: &mut Vec<Judgement<'r>>,
) {
    let first = rule
        .checks
        .first()
        .map_or(Item::Guard, |check| check.items()[0]);
    if let Some(reason) = &bench.not_covered {
        let verdict = if matches!(reason, Reason::CoveredElsewhere(_)) {
            Verdict::DoesNotApply
        } else {
            Verdict::NotSettled
        };
        judgements.push(Judgement::bare(first, verdict, vec![reason.clone()]));
        return;
    }
    if applies.truth == Truth::False {
        let reasons = reasons(scene, rule, applies.truth);
        judgements.push(Judgement::bare(first, Verdict::DoesNotApply, reasons));
        return;
    }
    // a window opens whether or not something stands in front of it
    let of_the_window = first == Item::Opening && scene.is_at_a_window();
    if matches!(scene.presence, Presence::Absent(_)) && first.is_of_the_guard() && !of_the_window {
        let no_guard = vec![Reason::NoGuard];
        judgements.push(Judgement::bare(first, Verdict::DoesNotApply, no_guard));
        return;
    }
    match known {
        Some(Some(known)) => judgements.extend(known.iter().cloned()),
        Some(unknown) => {
            checked(scene, rule, others, judgements);
            let all = judgements.iter();
            *unknown = Some(all.map(Judgement::without_what_is_shown).collect());
        }
        None => checked(scene, rule, others, judgements),
    }
    for judgement in judgements {
        if judgement.verdict != Verdict::DoesNotApply {
            under(scene, judgement, rule, applies);
            unlooked(scene, judgement, rule);
            for_a_person(judgement, rule);
        }
    }
}

/// The rule's checks: all items of a single one, else the best of several.
fn checked<'r>(
    scene: &Scene<'_>,
    rule: &'r Rule,
    others: &Others<'_, 'r>,
    judgements: &mut Vec<Judgement<'r>>,
) {
    if let [only] = rule.checks.as_slice() {
        by_item(scene, only, others, judgements);
        return;
    }
    let mut best = None;
    for check in &rule.checks {
        let mut of_check = Vec::new();
        by_item(scene, check, others, &mut of_check);
        if let Some(worst) = Judgement::worst(scene, of_check) {
            best = opening::better(best, worst);
        }
    }
    judgements.extend(best);
}

fn by_item<'r>(
    scene: &Scene<'_>,
    check: &'r Check,
    others: &Others<'_, 'r>,
    judgements: &mut Vec<Judgement<'r>>,
) {
    match check.subject {
        Subject::Item(item) => judgements.push(one(scene, item, check, others)),
        Subject::LoadPath => judgements.push(one(scene, check.items()[0], check, others)),
        Subject::AnyOpening => {
            let of = check.items().iter();
            judgements.extend(of.filter_map(|item| any_opening(scene, *item, check, others)));
        }
    }
}

/// One of `opening`, `bottom gap`, `end gap`, `edge gap`, `gap above solid part` under
/// `any-opening`; `None` where the item need not be there.
fn any_opening<'r>(
    scene: &Scene<'_>,
    item: Item,
    check: &'r Check,
    others: &Others<'_, 'r>,
) -> Option<Judgement<'r>> {
    let written = scene.of(item).next().is_some();
    // a guard need not have one
    let may_be_none = item == Item::EndGap || item.info().hole == Hole::AnyForItself;
    if may_be_none && !written {
        return None;
    }
    if item != Item::BottomGap || side_is_closed(scene) {
        return Some(one(scene, item, check, others));
    }
    if scene.on_a_stair() == Some(true) {
        let lift = Reason::BottomGapIsLift;
        return written.then(|| Judgement::bare(item, Verdict::DoesNotApply, vec![lift]));
    }
    let mut judgement = one(scene, item, check, others);
    if scene.on_a_stair().is_none() && judgement.verdict < Verdict::NotMeasured {
        // on a stair it would be no opening at all
        judgement.verdict = Verdict::NotMeasured;
        judgement.alone = Verdict::NotMeasured;
        judgement.reasons = vec![Reason::CircumstanceMissing(Item::Place)];
    }
    Some(judgement)
}

/// `stair triangle,none`: the side is closed, so that a bottom gap is an opening.
pub(super) fn side_is_closed(scene: &Scene<'_>) -> bool {
    scene.of(Item::StairTriangle).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading.is_some_and(|reading| reading.value == Value::None)
    })
}

fn one<'r>(
    scene: &Scene<'_>,
    item: Item,
    check: &'r Check,
    others: &Others<'_, 'r>,
) -> Judgement<'r> {
    let mut judgement = by_demand(scene, item, check, others);
    if lift::is_the_lift(item) && !side_is_closed(scene) {
        lift::written_twice(scene, &mut judgement);
    }
    judgement
}

fn by_demand<'r>(
    scene: &Scene<'_>,
    item: Item,
    check: &'r Check,
    others: &Others<'_, 'r>,
) -> Judgement<'r> {
    match &check.demand {
        Demand::Count(bounds) => judgement::count(scene, item, bounds),
        Demand::Foothold(demand) => foothold::foothold(scene, demand),
        Demand::Length(bounds) => lengths::length(scene, item, bounds),
        // strength depends on no circumstance that a case could tell apart
        Demand::Load(_) if scene.is_a_case() => {
            Judgement::bare(item, Verdict::DoesNotApply, Vec::new())
        }
        Demand::Load(demand) => load_path(scene, item, demand),
        Demand::Opening(demand) => {
            let zoned = match demand.zone {
                Some(_) => others.zoned(item),
                None => Vec::new(), // nothing to be read where it lies
            };
            let mut judgement = opening::opening(scene, item, demand, &zoned);
            may_be_triangle(scene, &mut judgement, others);
            judgement
        }
        Demand::VOpening(limit) => v_opening::v_opening(scene, limit),
        Demand::Words { .. } if item == Item::Guard => judgement::presence(scene),
        Demand::Words { is, is_not } => judgement::words(scene, item, is, is_not),
    }
}

/// The load path under this demand as it was before a change that touched nothing of it.
fn known_chain(scene: &Scene<'_>, demand: &LoadDemand) -> Option<Arc<Chain>> {
    let before = scene.before.as_deref()?;
    let of_demand = |finding: &&Finding<'_>| {
        let mut loads = finding.rule.loads();
        loads.next().is_some_and(|one| std::ptr::eq(one, demand)) && loads.next().is_none()
    };
    let found = before.findings.iter().find(of_demand)?;
    let chain = found.chain.as_ref()?;
    is_the_same(chain, before, scene).then(|| Arc::clone(chain))
}

/// The load path under a rule's loads.
fn load_path<'r>(scene: &Scene<'_>, item: Item, demand: &LoadDemand) -> Judgement<'r> {
    let chain = known_chain(scene, demand).unwrap_or_else(|| Arc::new(chain(scene, demand)));
    let verdict = chain.verdict();
    let reasons = if verdict != Verdict::NotMeasured {
        Vec::new()
    } else if chain.written {
        chain.asks().into_iter().map(Reason::NotWritten).collect()
    } else {
        vec![Reason::StrengthNotJudged]
    };
    let looked_at = [Item::PostFastening, Item::FastenedTo].into_iter();
    let readings = looked_at.flat_map(|item| scene.of(item).map(|(index, _)| index));
    Judgement {
        readings: readings.collect(),
        chain: Some(chain),
        ..Judgement::bare(item, verdict, reasons)
    }
}

/// On a stair a hole too wide for the infill may be the triangle at the steps.
fn may_be_triangle<'r>(scene: &Scene<'_>, judgement: &mut Judgement<'r>, others: &Others<'_, 'r>) {
    let short = judgement.verdict == Verdict::FallsShort;
    if judgement.item != Item::Opening || !short || scene.on_a_stair() != Some(true) {
        return;
    }
    let value = judgement
        .measured
        .as_ref()
        .and_then(|measured| measured.value);
    if let (Some(value), Some(ball)) = (value, others.triangle_ball())
        && value < ball
    {
        judgement.reasons.push(Reason::MayBeTriangle);
    }
}

/// What a trigger that is unknown or in doubt makes of a judgement.
fn under(scene: &Scene<'_>, judgement: &mut Judgement<'_>, rule: &Rule, applies: Applies) {
    if applies.truth == Truth::True {
        return;
    }
    let why = reasons(scene, rule, applies.truth);
    judgement.reasons.extend(why);
    if applies.truth == Truth::Unknown {
        judgement.verdict = Verdict::NotMeasured;
        judgement.alone = Verdict::NotMeasured;
        return;
    }
    if judgement.verdict == Verdict::FallsShort {
        judgement.verdict = Verdict::TooClose;
    }
    if applies.alone == Truth::False {
        judgement.alone = Verdict::DoesNotApply;
    }
}

/// What was not looked at keeps what was from meeting: a circumstance that could
/// not be read at one place, a guard that could not be reached, a hole where a
/// baluster is missing, a reading that is most likely a slip, was guessed, or has a note
/// that tells of a worse place.
fn unlooked<'r>(scene: &Scene<'_>, judgement: &mut Judgement<'r>, rule: &'r Rule) {
    let unread = rule
        .conditions()
        .flat_map(|condition| scene.of(condition.item))
        .find_map(|(index, observation)| says_nothing(index, observation));
    let not_reached = scene
        .not_reached()
        .filter(|_| judgement.item.is_at_guard())
        .map(Reason::CouldNotLook);
    let missing = scene
        .infill_missing()
        .filter(|_| judgement.item == Item::Opening)
        .map(Reason::InfillMissing);
    let close_is_open = missing.is_some();
    let opened = |verdict: Verdict| {
        verdict == Verdict::Meets || (close_is_open && verdict == Verdict::TooClose)
    };
    if !opened(judgement.alone) && !opened(judgement.verdict) {
        return;
    }
    let slipped = || {
        judgement.readings.iter().find_map(|index| {
            let slip = slip(scene, scene.guard.observation(*index).item, *index);
            slip.or_else(|| guessed(scene, *index))
                .or_else(|| told_worse(scene, *index))
        })
    };
    let Some(reason) = unread.or(not_reached).or(missing).or_else(slipped) else {
        return;
    };
    if opened(judgement.alone) {
        judgement.alone = Verdict::NotMeasured;
    }
    if opened(judgement.verdict) {
        judgement.verdict = Verdict::NotMeasured;
        judgement.reasons.push(reason);
    }
}

/// A clause without a number settles nothing that its check does not meet for sure.
fn for_a_person<'r>(judgement: &mut Judgement<'r>, rule: &'r Rule) {
    let Some(why) = &rule.judgement else { return };
    for verdict in [&mut judgement.verdict, &mut judgement.alone] {
        if matches!(*verdict, Verdict::FallsShort | Verdict::TooClose) {
            *verdict = Verdict::NotSettled;
        }
    }
    if judgement.verdict == Verdict::NotSettled {
        judgement.reasons.push(Reason::ForAPerson(why));
    }
}

/// Whether nobody here has read the rule: known from memory, or common practice
/// beside law.
fn is_from_memory(scene: &Scene<'_>, ruleset: &Ruleset, rule: &Rule) -> bool {
    // an example shows what its own rule asks, however that was read
    if scene.build == Build::Exact {
        return false;
    }
    match rule.status {
        Status::Memory => scene.options.memory == MemoryRules::Warn,
        Status::Practice => !ruleset.advisory,
        Status::Published | Status::Quoted => false,
    }
}

/// Only what was read decides: a rule that nobody read settles nothing.
fn unread_rule(judgement: &mut Judgement<'_>) {
    let unsettled = |verdict: Verdict| matches!(verdict, Verdict::FallsShort | Verdict::TooClose);
    if unsettled(judgement.alone) {
        judgement.alone = Verdict::NotSettled;
    }
    if unsettled(judgement.verdict) {
        judgement.verdict = Verdict::NotSettled;
        judgement.reasons.push(Reason::OnlyFromMemory);
    }
}

/// A rule that was read, and that an exception known only from memory would lift.
pub(super) fn lifted_from_memory<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    found: &mut [Finding<'r>],
) {
    let from_memory: Vec<(Hazard, &[Check])> = found
        .iter()
        .filter(|finding| finding.from_memory && finding.verdict != Verdict::DoesNotApply)
        .map(|finding| (finding.rule.hazard, finding.rule.checks.as_slice()))
        .collect();
    if from_memory.is_empty() {
        return;
    }
    for finding in found {
        let excepted = is_excepted(finding);
        let in_its_place = |(hazard, checks): &(Hazard, &[Check])| {
            let mut items = checks.iter().flat_map(Check::items);
            *hazard == finding.rule.hazard
                && items.any(|item| finding.rule.checks.iter().any(|c| c.items().contains(item)))
        };
        let read = !is_from_memory(scene, bench.ruleset, finding.rule);
        if read && excepted && from_memory.iter().any(in_its_place) {
            finding.verdict = Verdict::NotSettled;
            finding.reading_alone = Verdict::NotSettled;
            finding.reasons.push(Reason::LiftedFromMemory);
            finding.binding = bench.decides == Decides::Yes;
        }
    }
}

pub(super) fn finding<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    rule: &'r Rule,
    judgement: Judgement<'r>,
    looked_at: ItemSet,
) -> Finding<'r> {
    let from_memory = is_from_memory(scene, bench.ruleset, rule);
    let mut judgement = judgement;
    if from_memory {
        unread_rule(&mut judgement);
    }
    let counts_for_nothing =
        from_memory && matches!(judgement.verdict, Verdict::Meets | Verdict::DoesNotApply);
    let mut reasons = judgement.reasons;
    if judgement.verdict == Verdict::FallsShort && bench.in_force == InForceThen::No {
        reasons.push(Reason::NotInForceWhenBuilt);
    }
    if scene.build == Build::Proposed(None)
        && judgement.verdict == Verdict::Meets
        && judgement.margin.is_some_and(|margin| margin < SMALL_MARGIN)
    {
        reasons.push(Reason::NoBuildTolerance);
    }
    Finding {
        ruleset: bench.ruleset,
        rule,
        item: judgement.item,
        verdict: judgement.verdict,
        reading_alone: judgement.alone,
        partial: judgement.partial,
        binding: bench.decides == Decides::Yes && !counts_for_nothing,
        from_memory,
        measured: judgement.measured,
        limit: judgement.limit,
        margin: judgement.margin,
        uncertainty: judgement.uncertainty,
        probability: judgement.probability,
        readings: judgement.readings,
        also_readings: judgement.also_readings,
        reasons,
        chain: judgement.chain,
        looked_at,
    }
}

/// Below this a drawing leaves little to the builder. (common practice, no source)
const SMALL_MARGIN: Length = Length::sixty_fourths(16);
