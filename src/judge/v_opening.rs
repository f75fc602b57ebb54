//! Openings that are open at the top and narrow downward, against an angle.

use std::borrow::Cow;

use crate::geometry::Vee;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::judge::judgement::Judgement;
use crate::judge::judgement::seen;
use crate::judge::said::says_nothing;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::combine;
use crate::reading::Tilt;
use crate::reading::VReading;
use crate::reading::Value;
use crate::rules::SlopeLimit;

const ITEM: Item = Item::VOpening;

/// The narrowest decides.
pub(super) fn v_opening<'r>(scene: &Scene<'_>, limit: &'r SlopeLimit) -> Judgement<'r> {
    let mut all = Vec::new();
    for (index, observation) in scene.of(ITEM) {
        all.push(match observation.reading.as_ref().map(|r| &r.value) {
            Some(Value::VOpening(vee)) => one(scene, index, vee, limit),
            Some(Value::None) => seen(scene, ITEM, index, Verdict::Meets, shown(limit)),
            _ => {
                let reason = says_nothing(index, observation).unwrap_or(Reason::Unreadable(index));
                Judgement::open(ITEM, reason)
            }
        });
    }
    Judgement::worst(scene, all).unwrap_or_else(|| Judgement::not_written(scene, ITEM))
}

fn one<'r>(
    scene: &Scene<'_>,
    index: usize,
    found: &VReading,
    limit: &'r SlopeLimit,
) -> Judgement<'r> {
    if found.bottom > Length::ZERO {
        return Judgement::open(ITEM, Reason::SidesDoNotMeet);
    }
    let observation = scene.guard.observation(index);
    let doubt = |length| {
        let terms = scene.terms(ITEM, observation, length, found.unit, found.graduation);
        combine(&terms).doubled()
    };
    let (by_width, by_depth) = (doubt(found.wide), doubt(found.deep));
    // an angle that cannot be is the narrowest or the widest
    let angle = |wide, deep| Vee::new(wide, deep).map(|vee| Tilt::of(vee.angle()));
    let meets = |angle: Option<Tilt>| angle.is_some_and(|angle| angle >= limit.tilt);
    let plain = angle(found.wide, found.deep);
    let alone = if meets(plain) {
        Verdict::Meets
    } else {
        Verdict::FallsShort
    };
    let narrowest = meets(angle(found.wide - by_width, found.deep + by_depth));
    let widest = angle(found.wide + by_width, found.deep - by_depth);
    let settled = narrowest == meets(widest) && widest.is_some();
    let verdict = if scene.options.decision == Decision::Guarded && !settled {
        Verdict::TooClose
    } else {
        alone
    };
    let mut judgement = seen(scene, ITEM, index, verdict, shown(limit));
    judgement.alone = alone;
    if let Some(vee) = Vee::new(found.wide, found.deep) {
        let (ball, above) = vee.sunk_ball();
        let degrees = vee.angle().get::<uom::si::angle::degree>();
        judgement.reasons.push(Reason::Wedges {
            degrees: format!("{degrees:.1}"),
            ball,
            above,
            unit: found.unit,
        });
    }
    judgement
}

fn shown(limit: &SlopeLimit) -> LimitShown<'_> {
    LimitShown {
        operator: Operator::AngleAtLeast,
        written: Cow::Borrowed(limit.written.as_str()),
        value: None,
        unit: None,
    }
}
