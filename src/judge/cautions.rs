//! What a person must know before acting on a report.

use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::PaintWord;
use crate::items::PlaceWord;
use crate::items::Verdict;
use crate::judge::AskedWhenBuilt;
use crate::judge::Decision;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::condition::Truth;
use crate::judge::condition::all;
use crate::judge::guard::built;
use crate::judge::said::Piece;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::rules::Asked;
use crate::rules::Caution;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// A caution; its words stand in `report/`.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum CautionSaid<'r> {
    /// Who decides; the last word of every report.
    Deferral,
    /// Not to test a doubtful guard by leaning.
    DoNotLean,
    /// What holds for every guard: the first, second or third.
    General(usize),
    /// Something that bears on strength falls short.
    KeepOffUntilLookedAt,
    /// Old paint may hold lead.
    LeadPaint(WrittenDown),
    /// What it means that a guard met the rules of its time.
    LegalWhenBuilt,
    /// What a ruleset says beside its rules.
    OfRuleset {
        /// The ruleset's caution.
        caution: &'r Caution,
        /// Whether its conditions hold.
        holds: WrittenDown,
    },
    /// Of a deck, balcony or porch.
    OnlyTheRailing,
    /// About a pull test that somebody wrote: the first or second.
    Pulled(usize),
    /// An opening that lets a small child's body in.
    SmallBody(WrittenDown),
    /// What every answer about the load path says: the first, second or third.
    Strength(usize),
    /// What to do until it is put right.
    Tonight,
}

/// Whether what a caution rests on was written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WrittenDown {
    /// It was, and the paint flakes.
    Flaking,
    /// Nobody wrote it down, so it may be so.
    Perhaps,
    /// It was.
    So,
}

/// The cautions of one guard: those that depend on it, then the general ones,
/// the deferral last.
#[must_use]
pub fn cautions<'r>(
    guard: &Guard,
    judged: &Judged<'_>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Vec<CautionSaid<'r>> {
    let mut cautions = guard_cautions(guard, judged, facts, rulesets, options);
    cautions.extend([0, 1, 2].map(CautionSaid::General));
    cautions.push(CautionSaid::Deferral);
    cautions
}

/// The cautions that depend on the guard.
#[must_use]
pub fn guard_cautions<'r>(
    guard: &Guard,
    judged: &Judged<'_>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Vec<CautionSaid<'r>> {
    let scene = Scene::new(guard, facts, options);
    let mut cautions = Vec::new();
    tonight(&scene, judged, &mut cautions);
    cautions.extend(small_body(&scene).map(CautionSaid::SmallBody));
    cautions.extend(lead_paint(guard).map(CautionSaid::LeadPaint));
    let place = guard.of(Item::Place).find_map(|(_, o)| o.word());
    if matches!(
        place,
        Some(PlaceWord::Balcony | PlaceWord::Deck | PlaceWord::Porch)
    ) {
        cautions.push(CautionSaid::OnlyTheRailing);
    }
    from_rulesets(&scene, rulesets, &mut cautions);
    if options.when_built == AskedWhenBuilt::Asked
        && judged
            .when_built
            .as_ref()
            .is_some_and(|when| !when.rulesets.is_empty())
    {
        cautions.push(CautionSaid::LegalWhenBuilt);
    }
    strength(&scene, judged, &mut cautions);
    cautions
}

/// What every answer about the load path says, and the cautions of a pull test
/// where somebody wrote one.
fn strength(scene: &Scene<'_>, judged: &Judged<'_>, cautions: &mut Vec<CautionSaid<'_>>) {
    let pulled = scene.guard.of(Item::PullTest).next().is_some();
    if pulled {
        cautions.extend([0, 1].map(CautionSaid::Pulled));
    }
    let mut chains = judged.findings.iter().filter_map(|finding| {
        let chain = finding.chain.as_deref()?;
        (finding.verdict != Verdict::DoesNotApply && chain.written).then_some(chain)
    });
    let Some(first) = chains.next() else { return };
    cautions.extend([0, 1, 2].map(CautionSaid::Strength));
    if std::iter::once(first)
        .chain(chains)
        .any(|chain| chain.verdict() == Verdict::FallsShort)
    {
        cautions.push(CautionSaid::KeepOffUntilLookedAt);
    }
}

/// What to do until it is put right. Common practice, no source.
fn tonight(scene: &Scene<'_>, judged: &Judged<'_>, cautions: &mut Vec<CautionSaid<'_>>) {
    let moves = scene
        .guard
        .of(Item::MovesWhenPushed)
        .filter_map(|(_, o)| o.word())
        .find(|word| *word != MovesWhenPushedWord::No);
    let short = [Some(judged.verdict), judged.guidance].contains(&Some(Verdict::FallsShort));
    if short || moves == Some(MovesWhenPushedWord::ALot) {
        cautions.push(CautionSaid::Tonight);
    }
    if moves.is_some() || judged.verdict != Verdict::Meets {
        cautions.push(CautionSaid::DoNotLean);
    }
}

/// Openings between 3 1/2 and 4 in, or none known.
fn small_body(scene: &Scene<'_>) -> Option<WrittenDown> {
    let (low, high) = (Length::sixty_fourths(224), Length::inches(4));
    let mut known = false;
    for item in Item::ANY_OPENING.iter().copied() {
        for (index, _) in scene.guard.of(item) {
            if let Piece::Says(said) = scene.piece(item, index) {
                known = known || item == Item::Opening;
                let length = said.evidence.length();
                if length >= low && length <= high {
                    return Some(WrittenDown::So);
                }
            }
        }
    }
    (!known).then_some(WrittenDown::Perhaps)
}

/// Paint of homes from before 1978 (United States; the year from memory).
fn lead_paint(guard: &Guard) -> Option<WrittenDown> {
    const YEAR: i32 = 1978;
    let flaking = guard
        .of(Item::Paint)
        .any(|(_, o)| o.word() == Some(PaintWord::Flaking));
    match built(guard) {
        Some(span) if span.surely_from(YEAR) => None,
        Some(span) if span.surely_before(YEAR) && flaking => Some(WrittenDown::Flaking),
        Some(span) if span.surely_before(YEAR) => Some(WrittenDown::So),
        Some(_) | None => Some(WrittenDown::Perhaps),
    }
}

fn from_rulesets<'r>(
    scene: &Scene<'_>,
    rulesets: &'r [Ruleset],
    cautions: &mut Vec<CautionSaid<'r>>,
) {
    let chosen = rulesets
        .iter()
        .filter(|ruleset| ruleset.asked == Asked::Chosen);
    for ruleset in chosen {
        let covered = all(scene, &ruleset.covers.conditions, Decision::Simple);
        if covered == Truth::False {
            continue;
        }
        for caution in &ruleset.cautions {
            let holds = match all(scene, &caution.when, scene.options.decision) {
                Truth::False => continue,
                Truth::True => WrittenDown::So,
                Truth::Unknown | Truth::Doubt => WrittenDown::Perhaps,
            };
            cautions.push(CautionSaid::OfRuleset { caution, holds });
        }
    }
}
