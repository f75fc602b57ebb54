//! The proof: a changed guard beside the one it was, finding by finding.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::remedy::offered::Offered;

/// Which finding: a rule, and the item that it judged.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RuleKey {
    /// The ruleset's id.
    pub ruleset: String,
    /// The rule's id.
    pub rule: String,
    /// The item.
    pub item: Item,
}

impl RuleKey {
    /// Of a finding.
    #[must_use]
    pub fn of(finding: &Finding<'_>) -> RuleKey {
        RuleKey {
            ruleset: finding.ruleset.id.clone(),
            rule: finding.rule.id.clone(),
            item: finding.item,
        }
    }
}

/// A rule that held, and would hold no longer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Broken {
    /// Which.
    pub key: RuleKey,
    /// What the rule says.
    pub says: String,
    /// What it would come to.
    pub becomes: Verdict,
    /// The reading that does it, as it would be written.
    pub written: Option<String>,
}

/// A remedy that is not offered, and why.
#[derive(Clone, Debug)]
pub struct RefusedRemedy {
    /// What it would have put right.
    pub item: Item,
    /// The remedy.
    pub offered: Offered,
    /// What it would break; empty where it is held back for `why`.
    pub breaks: Vec<Broken>,
    /// Why it is held back, in a sentence.
    pub why: String,
}

/// The verdict of the same rule on the same item; where the rule judged another
/// item, that; `does not apply` where it judged none.
pub(super) fn verdict_of(judged: &Judged<'_>, key: &RuleKey) -> Verdict {
    find(judged, key).map_or(Verdict::DoesNotApply, |finding| finding.counts_as())
}

/// Whether a rule is met that was said to be.
#[must_use]
pub fn is_met(judged: &Judged<'_>, key: &RuleKey) -> bool {
    verdict_of(judged, key) == Verdict::Meets
}

fn find<'f, 'r>(judged: &'f Judged<'r>, key: &RuleKey) -> Option<&'f Finding<'r>> {
    let of_rule =
        |finding: &&Finding<'_>| finding.ruleset.id == key.ruleset && finding.rule.id == key.rule;
    let mut same = judged.findings.iter().filter(of_rule);
    same.clone()
        .find(|finding| finding.item == key.item)
        .or_else(|| {
            // a rule on any opening has a finding for each: another's says nothing
            let any = same.clone().next()?.rule.checks.first()?.items().len() > 1;
            if any { None } else { same.next() }
        })
}

/// As [`find`], of a finding by the same rulesets.
fn the_same<'f, 'r>(judged: &'f Judged<'r>, of: &Finding<'r>) -> Option<&'f Finding<'r>> {
    let of_rule = |finding: &&Finding<'_>| std::ptr::eq(finding.rule, of.rule);
    let mut same = judged.findings.iter().filter(of_rule);
    let found = same.clone().find(|finding| finding.item == of.item);
    found.or_else(|| {
        let any = of.rule.checks.first()?.items().len() > 1;
        if any { None } else { same.next() }
    })
}

/// What a change makes short, too near to tell or unmeasured that was not, or worse
/// than it was; strength, which it cannot show on paper, only where it falls short.
pub(super) fn breaks(before: &Judged<'_>, after: &Judged<'_>) -> Vec<Broken> {
    let mut broken = Vec::new();
    for finding in &after.findings {
        let was = the_same(before, finding);
        let verdict = was.map_or(Verdict::DoesNotApply, |was| was.counts_as());
        if is_worse(verdict, finding) || is_further(was, finding) {
            broken.push(Broken {
                says: finding.rule.says.clone(),
                becomes: finding.counts_as(),
                written: finding.measured.as_ref().map(|m| m.written.to_string()),
                key: RuleKey::of(finding),
            });
        }
    }
    broken
}

fn is_worse(was: Verdict, finding: &Finding<'_>) -> bool {
    let becomes = finding.counts_as();
    match becomes {
        Verdict::FallsShort => was != Verdict::FallsShort,
        Verdict::TooClose => !matches!(was, Verdict::FallsShort | Verdict::TooClose),
        // what was never asked before is a thing to write down, and breaks nothing
        // nor does what only the built thing shows
        Verdict::NotSettled | Verdict::NotMeasured => {
            was == Verdict::Meets
                && finding.chain.is_none()
                && !finding.is_strength_unseen()
                && !SHOWN_WHEN_BUILT.contains(&finding.item)
        }
        Verdict::Meets | Verdict::DoesNotApply => false,
    }
}

/// What nobody can know before it is built.
const SHOWN_WHEN_BUILT: [Item; 2] = [Item::MovesWhenPushed, Item::Condition];

/// Short before and short after, and by more.
fn is_further(was: Option<&Finding<'_>>, finding: &Finding<'_>) -> bool {
    let short = |of: &Finding<'_>| {
        let margin = of.margin.unwrap_or(Length::ZERO);
        (of.verdict == Verdict::FallsShort).then_some(margin)
    };
    match (was.and_then(short), short(finding)) {
        (Some(was), Some(now)) => now < was,
        (Some(_), None) | (None, _) => false,
    }
}
