//! What a person must know before acting on a report.

use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::PaintWord;
use crate::items::PlaceWord;
use crate::items::Verdict;
use crate::judge::AsBuilt;
use crate::judge::Decision;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::condition::Truth;
use crate::judge::condition::all;
use crate::judge::guard::built;
use crate::judge::scene::Piece;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::rules::Asked;
use crate::rules::Ruleset;
use crate::rules::all_of;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// Who decides; the last word of every report.
pub const DEFERRAL: &str = "The local authority and licensed professionals decide what the law asks \
here and whether a guard is fit. This report only compares readings with rules as we read them.";

/// What holds for every guard. Common practice, no source, but for climbing:
/// barriers delay a child and do not stop one (Cordovil et al. 2009, Int J Inj Contr Saf
/// Promot 16:143-151, and Nixon, Pearn, Petrie 1979, Aust Paediatr J 15:260-262, read in
/// their abstracts).
pub const GENERAL: [&str; 3] = [
    "Meeting a rule says nothing about strength, and no guard is called safe here.",
    "No railing is childproof: heights and gaps slow a child down, and a child who can climb gets over. Stay near.",
    "Move chairs, boxes and planters away from every railing and window.",
];

/// The cautions of one guard: those that depend on it, then the general ones,
/// the deferral last.
#[must_use]
pub fn cautions(
    guard: &Guard,
    judged: &Judged<'_>,
    facts: &SurveyFacts,
    rulesets: &[Ruleset],
    options: Options,
) -> Vec<String> {
    let mut cautions = guard_cautions(guard, judged, facts, rulesets, options);
    cautions.extend(GENERAL.map(str::to_owned));
    cautions.push(DEFERRAL.to_owned());
    cautions
}

/// The cautions that depend on the guard.
#[must_use]
pub fn guard_cautions(
    guard: &Guard,
    judged: &Judged<'_>,
    facts: &SurveyFacts,
    rulesets: &[Ruleset],
    options: Options,
) -> Vec<String> {
    let scene = Scene::new(guard, facts, options);
    let mut cautions = Vec::new();
    tonight(&scene, judged, &mut cautions);
    cautions.extend(small_body(&scene).map(str::to_owned));
    cautions.extend(lead_paint(guard).map(str::to_owned));
    let place = guard.of(Item::Place).find_map(|(_, o)| o.word());
    if matches!(
        place,
        Some(PlaceWord::Balcony | PlaceWord::Deck | PlaceWord::Porch)
    ) {
        cautions.push("Only the railing was looked at, not the platform it stands on.".to_owned());
    }
    from_rulesets(&scene, rulesets, &mut cautions);
    cautions.extend(legal_when_built(judged, options).map(str::to_owned));
    strength(&scene, judged, &mut cautions);
    cautions
}

/// What rules of its time can tell and what not, where they were asked for.
/// Common practice, no source; that most codes are not retroactive: from memory.
fn legal_when_built(judged: &Judged<'_>, options: Options) -> Option<&'static str> {
    let asked = options.as_built == AsBuilt::Asked && judged.when_built.is_some();
    asked.then_some(
        "Legal when built: a guard that met the rules of its time may often stay until it is rebuilt, \
and the local authority decides that. It is no judgement of danger: a child falls through an old gap as \
through a new one.",
    )
}

/// What every answer about the load path says, and the cautions of a pull test where
/// somebody wrote one.
fn strength(scene: &Scene<'_>, judged: &Judged<'_>, cautions: &mut Vec<String>) {
    let pulled = scene.guard.of(Item::PullTest).next().is_some();
    if pulled {
        cautions.extend(PULLED.map(str::to_owned));
    }
    let mut chains = judged.findings.iter().filter_map(|finding| {
        let chain = finding.chain.as_deref()?;
        (finding.verdict != Verdict::DoesNotApply && chain.written).then_some(chain)
    });
    let Some(first) = chains.next() else { return };
    cautions.extend(STRENGTH_CAUTIONS.map(str::to_owned));
    if std::iter::once(first)
        .chain(chains)
        .any(|chain| chain.verdict() == Verdict::FallsShort)
    {
        cautions.push(
            "Until an engineer has looked: keep weight off a guard that falls short or moves, and keep \
children away from it."
                .to_owned(),
        );
    }
}

/// What every answer about the load path says, of whichever guard
/// judged. Common practice, no source.
pub const STRENGTH_CAUTIONS: [&str; 3] = [
    "Where a report follows what holds a guard up, it does so from what was seen, with published values \
for sound new material. It is indicative: nobody tested the guard, and the answer does not say that it is safe.",
    "Not covered: wear, impact, wind, decay inside wood, rust inside tubes, the quality of welds, glass, \
glue, and anything below the framing.",
    "A licensed engineer decides whether a guard is strong enough; the local building authority decides \
what is required.",
];

/// Of a pull test. Common practice, no source.
const PULLED: [&str; 2] = [
    "A pull test tells how stiff a guard is, and not how strong: one that hardly moves under 50 lbf may \
fail under 200.",
    "Before anybody pulls again: nobody below, children and pets away; stand well back with both feet \
planted, pull inwards and level, never lean, push outwards or jerk; never at a guard that is loose, rotten, \
cracked or rusted through, never at glass, never over an open drop; start low, never above 50 lbf (220 N), \
and stop at the first crack, creak or 1 in of movement.",
];

/// What to do at once about a guard that falls short or moves a lot. Common practice, no source.
pub const TONIGHT: &str = "Tonight: keep children away from it, close the way to it or put up a \
temporary barrier that cannot be climbed or pushed over, and move away whatever a child could climb.";

/// What to do until it is put right. Common practice, no source.
fn tonight(scene: &Scene<'_>, judged: &Judged<'_>, cautions: &mut Vec<String>) {
    let moves = scene
        .guard
        .of(Item::MovesWhenPushed)
        .filter_map(|(_, o)| o.word())
        .find(|word| *word != MovesWhenPushedWord::No);
    let short = [Some(judged.verdict), judged.guidance].contains(&Some(Verdict::FallsShort));
    if short || moves == Some(MovesWhenPushedWord::ALot) {
        cautions.push(TONIGHT.to_owned());
    }
    if moves.is_some() || judged.verdict != Verdict::Meets {
        cautions.push(
            "Do not lean on it, and do not test it by leaning: a guard in doubt can give way."
                .to_owned(),
        );
    }
}

/// Openings between 3 1/2 and 4 in. Source: Caring for Our Children 5.1.5.1, which says that many
/// building codes allow 4 in and more; read in the text.
fn small_body(scene: &Scene<'_>) -> Option<&'static str> {
    let (low, high) = (Length::sixty_fourths(224), Length::inches(4));
    let mut known = false;
    for item in Item::ANY_OPENING.iter().copied() {
        for (index, _) in scene.guard.of(item) {
            if let Piece::Says(said) = scene.piece(item, index) {
                known = known || item == Item::Opening;
                let length = said.evidence.length();
                if length >= low && length <= high {
                    return Some(
                        "An opening of 3 1/2 to 4 in may meet the law and yet let a small child's \
body in while the head is held: child-care guidance asks for less than 3 1/2 in.",
                    );
                }
            }
        }
    }
    (!known).then_some(
        "If an opening measures 3 1/2 to 4 in, it may meet the law and yet let a small child's \
body in while the head is held.",
    )
}

/// Lead in paint of homes from before 1978 (United States; the year from memory).
fn lead_paint(guard: &Guard) -> Option<&'static str> {
    const YEAR: i32 = 1978;
    let flaking = guard
        .of(Item::Paint)
        .any(|(_, o)| o.word() == Some(PaintWord::Flaking));
    match built(guard) {
        Some(span) if span.surely_from(YEAR) => None,
        Some(span) if span.surely_before(YEAR) && flaking => Some(
            "The paint flakes and the place is from before 1978: it may hold lead. Keep children \
off it, do not scrape or sand it, and have it tested.",
        ),
        Some(span) if span.surely_before(YEAR) => Some(
            "From before 1978: old paint may hold lead. Do not scrape, sand or drill painted parts \
before it is tested.",
        ),
        Some(_) | None => Some(
            "If the house is from before 1978, old paint may hold lead: do not scrape, sand or \
drill painted parts before it is tested.",
        ),
    }
}

fn from_rulesets(scene: &Scene<'_>, rulesets: &[Ruleset], cautions: &mut Vec<String>) {
    let chosen = rulesets
        .iter()
        .filter(|ruleset| ruleset.asked == Asked::Chosen);
    for ruleset in chosen {
        let covered = all(scene, &ruleset.covers.conditions, Decision::Simple);
        if covered == Truth::False {
            continue;
        }
        for caution in &ruleset.cautions {
            let holds = all(scene, &caution.when, scene.options.decision);
            let says = match holds {
                Truth::False => continue,
                Truth::True => caution.says.clone(),
                // nobody wrote it down, so it may be so
                Truth::Unknown | Truth::Doubt => {
                    format!("If {}: {}", all_of(&caution.when), caution.says)
                }
            };
            cautions.push(format!("{says} ({})", caution.clause));
        }
    }
}
