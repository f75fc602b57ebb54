//! What brings cables nearer together under a push. Nothing measured at rest shows whether
//! it does: the ball is pushed again when it is done.

use crate::items::Item;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::widest;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;

/// Spreaders, tension, or cables nearer together; where the gap is too wide already while
/// nobody pushes, only the last.
pub(super) fn nearer_cables(drawn: &Drawn<'_, '_>, target: Length) -> Vec<Offered> {
    let offered = |kind, says: &str| Offered::new(kind, says.to_owned(), GuardChange::default());
    let closer = offered(
        RemedyKind::CloserCables,
        "Have the posts drilled anew and the cables strung closer together, after an engineer has looked at the \
         end posts, which are pulled harder by more cables; then push the ball again.",
    );
    let closer = closer.taking(240, 480, LabourPer::Bay);
    if widest(drawn).is_some_and(|rest| rest > target) {
        return vec![closer];
    }
    let spreader = offered(
        RemedyKind::SpreaderBars,
        "Put a spreader bar upright in the middle of every span, from the bottom rail to the top rail, with a \
         hole for each cable: it halves the length that gives way; then push the ball again.",
    );
    let tight = offered(
        RemedyKind::TightenCables,
        "Have the cables tightened to what their maker states and no further, where the end posts do not move, \
         eyes covered; then push the ball again, and each season, since cables slacken.",
    );
    vec![
        spreader
            .of(MaterialPart {
                what: "spreader bars, one in each span between two posts".to_owned(),
                how_many: HowMany::Write(vec![Item::GuardLength, Item::PostSpacing]),
                length: None,
                buy: None,
            })
            .taking(20, 40, LabourPer::Bay),
        tight.taking(10, 30, LabourPer::Bay),
        closer,
    ]
}
