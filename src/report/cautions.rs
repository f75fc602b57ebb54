//! What a person must know before acting on a report, in words.

use std::borrow::Cow;
use std::io;
use std::io::Write;

use crate::judge::CautionSaid;
use crate::judge::WrittenDown;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::rules::all_of;

/// Who decides; the last word of every report.
pub(super) const DEFERRAL: &str = "The local authority and licensed professionals decide what the law asks \
here and whether a guard is fit. This report only compares readings with rules as we read them.";

/// Writes who decides, as the last line of what is said of a rule or of an item.
///
/// # Errors
/// Those of `out`.
pub fn deferral(out: &mut TextPage<'_>) -> io::Result<()> {
    writeln!(out, "{}", hanging_in(out.width(), "", DEFERRAL))
}

/// Of every guard that is tried by hand. Common practice, no source.
pub(super) const DO_NOT_LEAN: &str = "Do not lean on it to try it: it may give way.";

/// What holds for every guard. Common practice, no source, but for climbing:
/// barriers delay a child and do not stop one (Cordovil et al. 2009, Int J Inj Contr Saf
/// Promot 16:143-151, and Nixon, Pearn, Petrie 1979, Aust Paediatr J 15:260-262, read in
/// their abstracts).
pub(super) const GENERAL: [&str; 3] = [
    "Meeting a rule says nothing about strength, and no guard is called safe here.",
    "No railing is childproof: heights and gaps slow a child down, and a child who can climb gets over. Stay near.",
    "Move chairs, boxes and planters away from every railing and window.",
];

/// What to do at once about a guard that falls short or moves a lot. Common practice, no source.
pub(super) const TONIGHT: &str = "Tonight: keep children away from it, with a gate that an adult opens at once or \
somebody beside them, and move away whatever a child could climb. Lock or block no way by which people \
would leave in a fire.";

/// What every answer about the load path says, of whichever guard
/// judged. Common practice, no source.
pub(super) const STRENGTH_CAUTIONS: [&str; 3] = [
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

/// The words of a caution.
#[must_use]
pub(super) fn caution<'c>(caution: &CautionSaid<'c>) -> Cow<'c, str> {
    Cow::Borrowed(match caution {
        CautionSaid::Deferral => DEFERRAL,
        CautionSaid::DoNotLean => DO_NOT_LEAN,
        CautionSaid::General(number) => GENERAL[*number],
        CautionSaid::KeepOffUntilLookedAt => {
            "Until an engineer has looked: keep weight off a guard that falls short or moves, and keep \
children away from it."
        }
        // Lead in paint of homes from before 1978 (United States; the year from memory)
        CautionSaid::LeadPaint(WrittenDown::Flaking) => {
            "The paint flakes and the place is from before 1978: it may hold lead. Keep children \
off it, do not scrape or sand it, and have it tested."
        }
        CautionSaid::LeadPaint(WrittenDown::So) => {
            "From before 1978: old paint may hold lead. Do not scrape, sand or drill painted parts \
before it is tested."
        }
        CautionSaid::LeadPaint(WrittenDown::Perhaps) => {
            "If the house is from before 1978, old paint may hold lead: do not scrape, sand or \
drill painted parts before it is tested."
        }
        // Common practice: most codes are not retroactive (from memory)
        CautionSaid::LegalWhenBuilt => {
            "Legal when built: a guard that met the rules of its time may often stay until it is rebuilt, \
and the local authority decides that. It is no judgement of danger: a child falls through an old gap as \
through a new one."
        }
        CautionSaid::OfRuleset { caution, holds } => {
            let says = &caution.says;
            let clause = &caution.clause;
            return Cow::Owned(match holds {
                WrittenDown::So | WrittenDown::Flaking => format!("{says} ({clause})"),
                // nobody wrote it down, so it may be so
                WrittenDown::Perhaps => format!("If {}: {says} ({clause})", all_of(&caution.when)),
            });
        }
        CautionSaid::OnlyTheRailing => {
            "Only the railing was looked at, not the platform it stands on."
        }
        CautionSaid::Pulled(number) => PULLED[*number],
        // Caring for Our Children 5.1.5.1, which says that many building codes allow 4 in and more
        CautionSaid::SmallBody(WrittenDown::So | WrittenDown::Flaking) => {
            "An opening of 3 1/2 to 4 in may meet the law and yet let a small child's \
body in while the head is held: child-care guidance asks for less than 3 1/2 in."
        }
        CautionSaid::SmallBody(WrittenDown::Perhaps) => {
            "If an opening measures 3 1/2 to 4 in, it may meet the law and yet let a small child's \
body in while the head is held."
        }
        CautionSaid::Strength(number) => STRENGTH_CAUTIONS[*number],
        CautionSaid::Tonight => TONIGHT,
    })
}

/// Of paint, whether the year is known or not. The year from memory, as above.
const OLD_PAINT: &str = "Paint from before 1978 may hold lead: do not scrape, sand or drill it before \
it is tested.";

/// Of paint that flakes.
const FLAKES: &str = "The paint flakes: keep children off it.";

/// Of gaps, whether one was measured so or not; the source stands above.
const SMALL_BODY: &str = "A gap of 3 1/2 to 4 in may meet the law and yet let a small child's body in and \
hold the head.";

/// A caution as it is said once for several guards: the same text whether what it
/// rests on was written down or not, and for this one the condition, where it was not.
pub(super) struct SharedCaution<'c> {
    pub(super) says: Cow<'c, str>,
    pub(super) only_if: Option<String>,
}

/// A caution with where it stands, if that says anything to whoever hears it: a bare number
/// of a clause stands in the other forms alone.
fn with_source(says: &str, clause: &str) -> String {
    let mut words = clause.split(|c: char| !c.is_alphabetic());
    if words.any(|word| word.len() > 3) {
        format!("{says} ({clause})")
    } else {
        says.to_owned()
    }
}

/// The texts of a caution that several guards may share.
pub(super) fn shared<'c>(said: &CautionSaid<'c>) -> Vec<SharedCaution<'c>> {
    let always = |says| SharedCaution {
        says,
        only_if: None,
    };
    match said {
        CautionSaid::LeadPaint(WrittenDown::Flaking) => {
            vec![always(OLD_PAINT.into()), always(FLAKES.into())]
        }
        CautionSaid::LeadPaint(WrittenDown::So | WrittenDown::Perhaps) => {
            vec![always(OLD_PAINT.into())]
        }
        CautionSaid::SmallBody(_) => vec![always(SMALL_BODY.into())],
        CautionSaid::OfRuleset { caution, holds } => {
            let unknown = *holds == WrittenDown::Perhaps;
            vec![SharedCaution {
                says: with_source(&caution.says, &caution.clause).into(),
                only_if: unknown.then(|| all_of(&caution.when)),
            }]
        }
        CautionSaid::Deferral
        | CautionSaid::DoNotLean
        | CautionSaid::General(_)
        | CautionSaid::KeepOffUntilLookedAt
        | CautionSaid::LegalWhenBuilt
        | CautionSaid::OnlyTheRailing
        | CautionSaid::Pulled(_)
        | CautionSaid::Strength(_)
        | CautionSaid::Tonight => vec![always(caution(said))],
    }
}
