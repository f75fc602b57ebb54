//! Where it is published that a link falls short without a number, and where a number
//! comes from that is worked out here.

pub(super) const ACROSS_THE_GRAIN: &str =
    "NDS 2018 §3.8.2, read second-hand; tests of guard posts, trade journal, Feb 2005";
pub(super) const ANCHOR_GUIDE: &str =
    "an approval shown in an anchor design guide, read second-hand";
pub(super) const BOARDS: &str = "NDS 2018 §12.2.2 on the panel's thickness, worked out; researchers call posts fastened to boards dangerous";
pub(super) const DECAY: &str =
    "Wood Handbook, decay (read in the text): strength goes before it shows";
pub(super) const DECAY_OF_A_POST: &str =
    "Wood Handbook, decay (read in the text); trade checklists, read second-hand";
pub(super) const END_GRAIN: &str = "NDS 2018 §12.2.3.3, read second-hand; trade answers";
pub(super) const NAILS: &str = "NDS 2018 §12.2.3, read second-hand; common practice";
pub(super) const NEAR_THE_EDGE: &str = "NDS 2018 Table 12.5.1C and §3.8.2, read second-hand";
pub(super) const NOTCHES_TESTED: &str =
    "tests of guard posts (Loferski, Albright, Woeste), published from 2005 on";
pub(super) const PLASTER: &str = "home-repair pages, read second-hand; common practice";
pub(super) const PRACTICE: &str = "common practice, no source";
pub(super) const RIM_PEELED: &str = "NDS 2018 §12.2.2.3 and §12.2.3.3, read second-hand; in tests the rim peeled off at 237 lb on average";
pub(super) const LABELS: &str = "labels of ties for wind and earthquake, load duration 1.6";
pub(super) const WASHERS: &str = "NDS 2018 §12.1.3.3, read second-hand";
