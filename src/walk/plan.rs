//! The order of the questions at a guard: look, push gently, the ball, the tape.

use std::collections::BTreeSet;

use crate::items::FastenedToWord;
use crate::items::GuardWord;
use crate::items::HandrailWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::PlaceWord;
use crate::items::PostFasteningWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Question;
use crate::judge::Reason;
use crate::reading::Value;
use crate::rules::Urgency;
use crate::survey::Guard;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::question::Asking;
use crate::walk::sizes::ball_sizes;
use crate::walk::sizes::one_ball;
use crate::walk::sizes::stick;
use crate::walk::sizes::triggers;
use crate::walk::sizes::worded_above;

/// What a person has passed over, and what was asked for beyond the rules.
#[derive(Clone, Debug, Default)]
pub(super) struct Passed {
    pub(super) over: BTreeSet<(GuardName, Asking)>,
    /// Guards at which something was answered that only strength wants to know.
    pub(super) strength: BTreeSet<GuardName>,
    /// Guards at which the person goes on by eye after a danger.
    pub(super) by_eye: BTreeSet<GuardName>,
    /// What was seen and is still to be measured.
    pub(super) seen: BTreeSet<(GuardName, Item)>,
    /// What was asked once more though it is written.
    pub(super) followed: BTreeSet<(GuardName, Item)>,
    /// The unit of numbers without one, in which sizes are worded.
    pub(super) unit: Option<crate::quantities::LengthUnit>,
}

/// In this order what is measured follows the balls.
const MEASURED: [Item; 6] = [
    Item::StairTriangle,
    Item::RiserOpening,
    Item::Handrail,
    Item::Height,
    Item::HandrailHeight,
    Item::EdgeGap,
];

/// One guard as it stands, and what was passed over there.
pub(super) struct AskingPlan<'p, 'r> {
    /// Its name, in the form in which names are compared.
    pub(super) place: GuardName,
    pub(super) guard: &'p Guard,
    pub(super) judged: &'p Judged<'r>,
    /// What its findings wait for, most decisive first.
    pub(super) questions: &'p [Question],
    pub(super) passed: &'p Passed,
}

impl AskingPlan<'_, '_> {
    /// What comes next; `None` where nothing is to be asked any more.
    pub(super) fn next(&self) -> Option<GuardTopic> {
        if !self.judged.dangers.is_empty() {
            return self.after_a_danger();
        }
        let questions = self.questions;
        if self.wants(Item::Place, questions) {
            return Some(GuardTopic::Item(Item::Place));
        }
        match self.presence() {
            SaidToBe::None => self.at_an_open_edge(questions),
            SaidToBe::OutOfReach => self.photo(),
            SaidToBe::There => self.at_a_guard(questions),
        }
    }

    fn at_a_guard(&self, questions: &[Question]) -> Option<GuardTopic> {
        if self.open(Asking::Look) && !self.looked() {
            return Some(GuardTopic::Look);
        }
        if self.open(Asking::Touch) && !self.written(Item::MovesWhenPushed) {
            return Some(GuardTopic::Touch);
        }
        self.drop(questions)
            .or_else(|| self.gaps(questions))
            .or_else(|| self.measured(questions))
            .or_else(|| self.others(questions))
            .or_else(|| self.climb(questions))
            .or_else(|| self.strength(questions))
            .or_else(|| self.to_count())
            .or_else(|| self.photo())
    }

    fn open(&self, asking: Asking) -> bool {
        let key = (self.place.clone(), asking);
        !self.passed.over.contains(&key)
    }

    fn written(&self, item: Item) -> bool {
        self.guard.of(item).next().is_some()
    }

    /// Not written, not passed over, and a rule about more than strength waits for it.
    fn wants(&self, item: Item, questions: &[Question]) -> bool {
        let mut asked = questions.iter();
        let waits = asked.any(|question| question.item == item && !question.of_strength);
        waits && !self.written(item) && self.open(Asking::Item(item))
    }

    fn presence(&self) -> SaidToBe {
        let Some((_, said)) = self.guard.of(Item::Guard).last() else {
            return SaidToBe::There;
        };
        match (said.word(), said.reading.as_ref().map(|r| &r.value)) {
            (Some(GuardWord::None), _) => SaidToBe::None,
            (Some(GuardWord::Present), _) => SaidToBe::There,
            (None, Some(Value::Unknown)) => SaidToBe::OutOfReach,
            (None, _) => SaidToBe::There,
        }
    }

    fn looked(&self) -> bool {
        let missing = |item: Item| self.guard.of(item).any(|(_, o)| &*o.written == "missing");
        self.written(Item::Condition) || missing(Item::InfillLoose) || missing(Item::PostFastening)
    }

    /// After a danger nothing is touched: is the way closed, and what the eye tells.
    fn after_a_danger(&self) -> Option<GuardTopic> {
        let noted = self.judged.dangers.iter().any(|danger| {
            let note = &self.guard.observation(danger.index).note;
            note.contains(WAY_CLOSED) || note.contains(WAY_OPEN)
        });
        if !noted && self.open(Asking::Closed) {
            return Some(GuardTopic::Closed);
        }
        if self.presence() == SaidToBe::None {
            return self.photo();
        }
        if !self.passed.by_eye.contains(&self.place) {
            return self.open(Asking::ByEye).then_some(GuardTopic::ByEye);
        }
        if !self.written(Item::Drop)
            && self.open(Asking::Drop)
            && let Some(least) = triggers(self.judged).first()
        {
            return Some(GuardTopic::Drop(worded_above(least, self.passed.unit)));
        }
        if !self.written(Item::Infill) && self.open(Asking::Item(Item::Infill)) {
            return Some(GuardTopic::Item(Item::Infill));
        }
        self.photo()
    }

    /// Nothing is measured at an open edge: the drop by eye, and what a word answers.
    fn at_an_open_edge(&self, questions: &[Question]) -> Option<GuardTopic> {
        if !self.written(Item::Drop)
            && self.open(Asking::Drop)
            && let Some(least) = triggers(self.judged).first()
        {
            return Some(GuardTopic::Drop(worded_above(least, self.passed.unit)));
        }
        let told = |item: &Item| matches!(item.info().kind, crate::items::Kind::Words(_));
        let asked = questions.iter().map(|question| question.item).filter(told);
        let circumstance = asked
            .filter(|item| item.is_circumstance())
            .find(|item| self.wants(*item, questions) && !self.idle(*item));
        circumstance.map(GuardTopic::Item).or_else(|| self.photo())
    }

    /// The drop: yes or no where the triggers lie close together, else the tape.
    fn drop(&self, questions: &[Question]) -> Option<GuardTopic> {
        if !self.wants(Item::Drop, questions) {
            return None;
        }
        let triggers = triggers(self.judged);
        if let (Some(least), Some(most)) = (triggers.first(), triggers.last())
            && self.open(Asking::Drop)
            && most.length.nanometres() <= least.length.nanometres().saturating_mul(2)
        {
            return Some(GuardTopic::Drop(worded_above(most, self.passed.unit)));
        }
        Some(GuardTopic::Item(Item::Drop))
    }

    /// What fills it, one question for all balls, and the tape where there is no ball.
    fn gaps(&self, questions: &[Question]) -> Option<GuardTopic> {
        let holes = questions
            .iter()
            .any(|question| question.item.info().hole.is_everywhere() && !question.of_strength);
        let waits = holes
            || questions
                .iter()
                .any(|question| question.item == Item::Infill && !question.of_strength);
        if waits && !self.written(Item::Infill) && self.open(Asking::Item(Item::Infill)) {
            return Some(GuardTopic::Item(Item::Infill));
        }
        if !self.written(Item::Opening) && self.waits(Item::Opening) {
            let sizes = ball_sizes(self.judged, Item::Opening);
            if self.open(Asking::Balls) && !sizes.is_empty() {
                let written = sizes.iter().map(|size| size.written.clone());
                return Some(GuardTopic::Balls(written.collect()));
            }
            if self.open(Asking::Item(Item::Opening)) {
                return Some(GuardTopic::Item(Item::Opening));
            }
        }
        let by_tape = |item: &Item| self.wants(*item, questions) && !self.idle(*item);
        if let Some(item) = [Item::BottomGap, Item::EndGap].into_iter().find(by_tape) {
            return Some(GuardTopic::Item(item));
        }
        let checked = Item::OpeningsChecked;
        (self.open(Asking::Item(checked)) && self.rests_on_every_opening())
            .then_some(GuardTopic::Item(checked))
    }

    /// Whether something meets only since nobody said that holes were left out.
    fn rests_on_every_opening(&self) -> bool {
        let by_tape = |index: &usize| {
            let reading = self.guard.observation(*index).reading.as_ref();
            reading
                .is_some_and(|reading| matches!(reading.value, Value::Measure(_) | Value::Shape(_)))
        };
        let mut met = self.judged.findings.iter().filter(|finding| {
            finding.item == Item::Opening && finding.verdict == Verdict::Meets && !finding.partial
        });
        !self.written(Item::OpeningsChecked)
            && met.any(|finding| finding.readings.iter().any(by_tape))
    }

    fn measured(&self, questions: &[Question]) -> Option<GuardTopic> {
        for item in MEASURED {
            let contradiction = Asking::Contradiction(item);
            if item == Item::Height && self.open(contradiction) && contradicted(self.judged, item) {
                return Some(GuardTopic::Contradiction(item));
            }
            if item == Item::Height
                && let Some(size) = stick(self.judged, self.guard, Item::Height)
                && self.open(Asking::Stick(Item::Height))
            {
                return Some(GuardTopic::Stick(Item::Height, size));
            }
            let asked = self.wants(item, questions) || self.once_more(item, questions);
            if !asked || self.idle(item) {
                continue;
            }
            return Some(self.by_ball(item).unwrap_or(GuardTopic::Item(item)));
        }
        None
    }

    /// A ball at a hole of its own, where one is at hand.
    fn by_ball(&self, item: Item) -> Option<GuardTopic> {
        let of_its_own = item.info().hole.is_for_itself() && item != Item::RiserOpening;
        let at_hand = self.open(Asking::Balls) || self.written(Item::Opening);
        if !of_its_own || !at_hand || !self.open(Asking::Ball(item)) {
            return None;
        }
        let size = one_ball(self.judged, self.guard, item)?;
        Some(GuardTopic::Ball(item, size))
    }

    /// A length that is written and settles too little is asked for once more.
    fn once_more(&self, item: Item, questions: &[Question]) -> bool {
        let again = [Item::Height, Item::HandrailHeight, Item::StairTriangle];
        let key = (self.place.clone(), item);
        again.contains(&item)
            && self.written(item)
            && questions.iter().any(|question| question.item == item)
            && self.open(Asking::Item(item))
            && !self.passed.followed.contains(&key)
            && !self.could_not_look(item)
    }

    fn could_not_look(&self, item: Item) -> bool {
        let values = self.guard.of(item).filter_map(|(_, o)| o.reading.as_ref());
        let mut values = values.map(|reading| &reading.value);
        values.any(|value| *value == Value::Unknown)
    }

    /// Circumstances and whatever else some rule waits for, most decisive first.
    fn others(&self, questions: &[Question]) -> Option<GuardTopic> {
        let elsewhere = [
            Item::Foothold,
            Item::ThingToClimb,
            Item::InfillLoose,
            Item::MovesWhenPushed,
            Item::Guard,
            Item::Opening,
        ];
        let asked = questions.iter().filter(|question| !of_strength(question));
        let asked = asked.map(|question| question.item);
        let mut left = asked.filter(|item| !elsewhere.contains(item));
        let next = left.find(|item| self.wants(*item, questions) && !self.idle(*item));
        next.map(|item| self.by_ball(item).unwrap_or(GuardTopic::Item(item)))
    }

    /// One look for what could be climbed; then the numbers of what was seen.
    fn climb(&self, questions: &[Question]) -> Option<GuardTopic> {
        let to_measure = [Item::Foothold, Item::ThingToClimb]
            .into_iter()
            .find(|item| {
                let key = (self.place.clone(), *item);
                self.passed.seen.contains(&key)
                    && !self.written(*item)
                    && self.open(Asking::Item(*item))
            });
        if let Some(item) = to_measure {
            return Some(GuardTopic::Item(item));
        }
        let foothold = self.wants(Item::Foothold, questions) && !self.level_bars();
        let thing = self.wants(Item::ThingToClimb, questions);
        (self.open(Asking::Climb) && (foothold || thing)).then_some(GuardTopic::Climb)
    }

    /// Level bars and cables are a ladder whatever else is on it.
    pub(super) fn level_bars(&self) -> bool {
        self.guard.of(Item::Infill).any(|(_, o)| {
            let word: Option<InfillWord> = o.word();
            matches!(word, Some(InfillWord::HorizontalBars | InfillWord::Cables))
        })
    }

    /// What holds it, all of it or nothing.
    fn strength(&self, questions: &[Question]) -> Option<GuardTopic> {
        let hidden = self
            .guard
            .of(Item::PostFastening)
            .any(|(_, o)| o.word() == Some(PostFasteningWord::Hidden))
            || self
                .guard
                .of(Item::FastenedTo)
                .any(|(_, o)| o.word() == Some(FastenedToWord::Hidden));
        if hidden {
            return None;
        }
        let asked = questions.iter().filter(|question| of_strength(question));
        let asked = asked.map(|question| question.item);
        let not_yet = |item: &Item| !self.written(*item) && self.open(Asking::Item(*item));
        let all: Vec<Item> = asked.filter(not_yet).collect();
        let first = all.iter().find(|item| **item == Item::PostFastening);
        first.or(all.first()).map(|item| GuardTopic::Item(*item))
    }

    /// What a remedy is counted by, where something that was measured falls short; what
    /// holds it and was passed over is not asked after all.
    fn to_count(&self) -> Option<GuardTopic> {
        let findings = self.judged.findings.iter();
        let short = findings.filter(|f| f.verdict == Verdict::FallsShort && f.counts());
        let mut all = short.flat_map(|finding| finding.item.counted_by());
        let uprights = self.guard.of(Item::Infill).any(|(_, o)| {
            let word: Option<InfillWord> = o.word();
            word == Some(InfillWord::Balusters)
        });
        let asked = |item: &&Item| {
            let of_uprights = **item != Item::GuardLength;
            (uprights || !of_uprights) && !self.written(**item) && self.open(Asking::Item(**item))
        };
        all.find(asked).map(|item| GuardTopic::Item(*item))
    }

    fn photo(&self) -> Option<GuardTopic> {
        let asked = self.open(Asking::Item(Item::Photo)) && !self.written(Item::Photo);
        asked.then_some(GuardTopic::Item(Item::Photo))
    }

    /// Whether some finding waits for this item.
    fn waits(&self, item: Item) -> bool {
        self.judged
            .findings
            .iter()
            .any(|finding| waits_for(finding, item))
    }

    /// Whether no answer could change a hazard's verdict or what is to be done tonight:
    /// whatever waits for it bears on a hazard that is decided already.
    fn idle(&self, item: Item) -> bool {
        // what stands in the hand decides whether there are risers to count
        let held = self.guard.of(Item::Handrail).any(|(_, o)| {
            let word: Option<HandrailWord> = o.word();
            matches!(
                word,
                Some(HandrailWord::Separate | HandrailWord::TopOfTheGuard)
            )
        });
        if item == Item::Risers && held && !self.risers_decide() {
            return true;
        }
        let mut waiting = self
            .judged
            .findings
            .iter()
            .filter(|finding| waits_for(finding, item));
        !waiting.any(|finding| finding.rule.urgency == Urgency::Now || self.undecided(finding))
    }

    /// Whether a rule about something other than a handrail's being there waits for the risers.
    fn risers_decide(&self) -> bool {
        let mut waiting = self.judged.findings.iter();
        waiting.any(|finding| {
            waits_for(finding, Item::Risers)
                && finding.item != Item::Handrail
                && self.undecided(finding)
        })
    }

    fn undecided(&self, finding: &Finding<'_>) -> bool {
        let mut hazards = self.judged.hazards.iter();
        let Some(of) = hazards.find(|of| of.hazard == finding.rule.hazard) else {
            return true;
        };
        let by = if finding.ruleset.advisory && self.judged.guidance.is_some() {
            of.guidance
        } else {
            of.verdict
        };
        match by {
            Some(Verdict::FallsShort | Verdict::Meets | Verdict::DoesNotApply) => false,
            None | Some(Verdict::NotMeasured | Verdict::NotSettled | Verdict::TooClose) => true,
        }
    }
}

/// What holds it is asked all at once or not at all, be it that some advice looks at it too.
pub(super) fn of_strength(question: &Question) -> bool {
    let seen = [Item::PostFastening, Item::FastenedTo, Item::NotchedPost];
    question.of_strength || seen.contains(&question.item)
}

/// Whether there is a guard, as far as it was said.
#[derive(Clone, Copy, PartialEq, Eq)]
enum SaidToBe {
    There,
    None,
    OutOfReach,
}

/// The note beside a danger whose way is closed.
pub(super) const WAY_CLOSED: &str = "way closed";

/// And where it is not.
pub(super) const WAY_OPEN: &str = "way not closed";

/// A finding that waits for this item, be it only for a finer reading of it.
fn waits_for(finding: &Finding<'_>, item: Item) -> bool {
    let open = finding.verdict == Verdict::NotMeasured || finding.partial;
    let awaits = |reason: &Reason<'_>| {
        let missing =
            *reason == Reason::NotWritten(item) || *reason == Reason::CircumstanceMissing(item);
        missing || reason.wants_a_gauge() && finding.item == item
    };
    open && finding.reasons.iter().any(awaits)
}

/// Whether some rule was told that a gauge and the tape contradict each other here.
fn contradicted(judged: &Judged<'_>, item: Item) -> bool {
    judged
        .findings
        .iter()
        .any(|finding| finding.item == item && finding.reasons.contains(&Reason::Contradicted))
}

/// Whether the infill gives way, so that a ball is tried with a push of the hand.
pub(super) fn gives_way(guard: &Guard) -> bool {
    guard
        .of(Item::Infill)
        .any(|(_, o)| o.word().is_some_and(InfillWord::gives_way))
}

/// Whether a guard stands on a stair, whose steps have holes of their own; one whose
/// place nobody wrote may.
pub(super) fn on_a_stair(guard: &Guard) -> bool {
    let mut places = guard.of(Item::Place).filter_map(|(_, o)| o.word());
    !places.any(|place: PlaceWord| place != PlaceWord::Stair)
}

/// Whether it moved so that nothing more was tried by hand.
pub(super) fn stopped_at_first_movement(guard: &Guard) -> bool {
    guard.of(Item::MovesWhenPushed).any(|(_, o)| {
        let word: Option<MovesWhenPushedWord> = o.word();
        matches!(
            word,
            Some(MovesWhenPushedWord::ALittle | MovesWhenPushedWord::ALot)
        )
    })
}
