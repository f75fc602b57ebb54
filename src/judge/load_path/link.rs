//! A link of the chain, and the chain as a whole.

use crate::items::Item;
use crate::items::ItemSet;
use crate::items::Verdict;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::why::StepName;
use crate::quantities::Dimension;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::quantities::Of;
use crate::rules::LoadBasis;
use crate::rules::Member;
use crate::statics::AnyQuantity;
use crate::statics::Ends;
use crate::statics::Line;
use crate::statics::Provenance;
use crate::statics::RatioOutcome;
use crate::statics::Units;
use crate::statics::Utilisation;
use crate::statics::Worked;

/// Which part of the load path it is, from the top down to the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LinkKind {
    /// A baluster, cable or panel.
    Infill,
    /// What holds its ends.
    InfillFixing,
    /// The top rail between two posts.
    TopRail,
    /// What holds the end of the rail.
    RailEnd,
    /// The post itself.
    Post,
    /// What fastens the post.
    PostFixing,
    /// The joist, rim or wall that the post is fastened to.
    Framing,
    /// What holds that member to the rest of the building.
    FramingConnection,
    /// How far the top moves in a pull test: a stiffness and no strength.
    Stiffness,
}

/// Why a link falls short without a number, with the source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ruled {
    /// The reason, for a reader.
    pub reason: LinkReason,
    /// Where it comes from.
    pub source: &'static str,
}

/// Why a link cannot be judged, and how to look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hidden {
    /// Why, for a reader.
    pub reason: LinkReason,
}

/// What became of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkFinding {
    /// Ruled out by the method or by what is seen.
    ByRule(Ruled),
    /// Even the least demand exceeds the greatest capacity.
    FallsShort,
    /// Even the greatest demand does not exceed the least capacity; indicative.
    NoShortfall,
    /// No published basis, or it cannot be seen.
    NotMeasured(Hidden),
    /// It depends on what is not known.
    TooClose,
}

impl LinkFinding {
    /// As a verdict.
    #[must_use]
    pub const fn verdict(self) -> Verdict {
        match self {
            LinkFinding::ByRule(_) | LinkFinding::FallsShort => Verdict::FallsShort,
            LinkFinding::NoShortfall => Verdict::Meets,
            LinkFinding::NotMeasured(_) => Verdict::NotMeasured,
            LinkFinding::TooClose => Verdict::TooClose,
        }
    }
}

/// A part of a calculation.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What it works out: `load on it, at least`.
    pub what: StepName,
    /// Its lines.
    pub lines: Vec<Line>,
}

/// One link with what bears on it and what it can take.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Which part it is.
    pub kind: LinkKind,
    /// Which case of it: `bending, pressed down`.
    pub case: LinkCase,
    /// The load on it.
    pub demand: Option<Ends<AnyQuantity>>,
    /// What it can take.
    pub capacity: Option<Ends<AnyQuantity>>,
    /// Demand over capacity at the ends that oppose each other.
    pub ratio: Option<Ends<Utilisation>>,
    /// What became of it.
    pub finding: LinkFinding,
    /// What to write down so that it can be judged, or judged more narrowly.
    pub asks: Vec<Item>,
    /// What was taken as given in it.
    pub taken: Vec<Taken>,
    /// The calculation.
    pub steps: Vec<Step>,
    /// What somebody who knows the trade would do there.
    pub mend: Option<Mend>,
}

/// What a tradesman would do at a joint, for an engineer to confirm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Mend {
    /// Through bolts in place of lags, screws or nails.
    Bolts,
    /// Posts closer together, or a stronger rail.
    CloserPosts,
    /// Somebody who knows anchors in concrete or masonry.
    Anchors,
    /// The end posts of a run of cables.
    EndPosts,
    /// Posts fixed to solid blocking or a joist in place of boards or plaster.
    IntoTheFraming,
    /// A new post.
    NewPost,
    /// A fixing of the rail's end with a load on its label, or more of it.
    RailEnd,
    /// A second rail on edge below the top rail.
    SecondRail,
    /// A deeper socket in the concrete.
    Socket,
    /// A thicker plate below the post.
    ThickerPlate,
    /// A thicker post, or bolts farther apart.
    ThickerPost,
    /// A tension tie from the upper bolt to the joists.
    Tie,
    /// Washers at least this wide, and stiff; none where no washer is enough.
    Washers(Option<Distance>),
}

/// Something that a link took as given, for lack of a better word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taken {
    /// The rail bends between two posts as one pinned span.
    OneSpan,
    /// Boards on the framing between nothing and 2 in thick.
    Covering,
    /// The upper fastener 1 to 6 in below the framing's top.
    Depth,
    /// Full distances to ends and edges of the wood.
    Distances,
    /// C_D 1.0 and 1.6, since which one a guard load deserves is disputed.
    Duration,
    /// No. 2 lumber.
    Grade,
    /// Dry and wet.
    Moisture,
    /// Half of a notched post is left.
    NotchHalf,
    /// One No. 8 screw with 1/2 in of thread at each end.
    OneScrew,
    /// Only the load at one point, since a load along the top needs a spacing.
    PointAlone,
    /// A rim of 1 1/2 in.
    Rim,
    /// A rim or joist of 1 1/2 in at the low end, a doubled one at the high end.
    RimOrMore,
    /// The best value of any lumber, for a board that has none of its own.
    BestBoard,
    /// Every species of the list, for rim, joists and studs.
    FramingSpecies,
    /// With and without a second rail beneath the top rail.
    LowerRail,
    /// The post presses at the lower bolt or at the bottom edge of the rim.
    Pivot,
    /// Treated wood with and without rows of slits.
    Slits,
    /// 100 to 400 lb in each cable.
    Tension,
    /// Cables evenly from the floor to the rail.
    EvenCables,
    /// What a tie's label states, with and without load duration in it.
    Label,
    /// Rails and balusters are of wood where the posts are.
    SameMaterial,
    /// Every species of the list.
    Species,
    /// A subfloor of 23/32 in.
    Subfloor,
    /// Thread by the rule for its length.
    Thread,
}

/// What the steps of a load are called.
const LOADS: [StepName; 3] = [StepName::Load, StepName::LoadAtLeast, StepName::LoadAtMost];

/// Whether the low end is the lowest that is plausible.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lowest {
    /// It is.
    Known,
    /// A grade or species that it may be has no value that was read.
    Unknown,
}

impl Link {
    /// A link without numbers.
    pub(super) fn bare(kind: LinkKind, case: LinkCase, finding: LinkFinding) -> Link {
        Link {
            kind,
            case,
            demand: None,
            capacity: None,
            ratio: None,
            finding,
            asks: Vec::new(),
            taken: Vec::new(),
            steps: Vec::new(),
            mend: None,
        }
    }

    /// A link that cannot be judged.
    pub(super) fn hidden(
        kind: LinkKind,
        case: LinkCase,
        reason: LinkReason,
        asks: &[Item],
    ) -> Link {
        let finding = LinkFinding::NotMeasured(Hidden { reason });
        Link {
            asks: asks.to_vec(),
            ..Link::bare(kind, case, finding)
        }
    }

    /// A link that falls short by rule.
    pub(super) fn by_rule(
        kind: LinkKind,
        case: LinkCase,
        reason: LinkReason,
        source: &'static str,
    ) -> Link {
        Link::bare(kind, case, LinkFinding::ByRule(Ruled { reason, source }))
    }

    /// The load on it, without a word about what it can take.
    pub(super) fn with_demand<D>(mut self, demand: &Ends<Worked<Of<D>>>) -> Link
    where
        D: Dimension + ?Sized,
        Of<D>: Into<AnyQuantity>,
    {
        self.demand = Some(demand.values().rising(Into::into));
        if demand.low.lines == demand.high.lines {
            self.step(LOADS[0], demand.high.lines.clone());
        } else {
            self.step(LOADS[1], demand.low.lines.clone());
            self.step(LOADS[2], demand.high.lines.clone());
        }
        self
    }

    /// Demand against capacity.
    pub(super) fn weighed<D>(
        kind: LinkKind,
        case: LinkCase,
        demand: &Ends<Worked<Of<D>>>,
        capacity: &Ends<Worked<Of<D>>>,
    ) -> Link
    where
        D: Dimension + ?Sized,
        Of<D>: Into<AnyQuantity>,
    {
        let ratio = Ends::utilisation(demand.values(), capacity.values());
        let finding = match ratio.outcome() {
            RatioOutcome::FallsShort => LinkFinding::FallsShort,
            RatioOutcome::NoShortfall => LinkFinding::NoShortfall,
            RatioOutcome::TooClose => LinkFinding::TooClose,
        };
        let mut link = Link::bare(kind, case, finding).with_demand(demand);
        link.capacity = Some(capacity.values().rising(Into::into));
        link.ratio = Some(ratio);
        let (low, high) = (&capacity.low, &capacity.high);
        if low.lines == high.lines {
            link.step(StepName::Takes, low.lines.clone());
        } else {
            link.step(StepName::TakesAtLeast, low.lines.clone());
            link.step(StepName::TakesAtMost, high.lines.clone());
        }
        link
    }

    /// The load alone, where no capacity may be put beside it.
    pub(super) fn demand_only(&mut self) {
        self.capacity = None;
        self.ratio = None;
        self.steps.retain(|step| LOADS.contains(&step.what));
    }

    /// A calculation beside it, for a reader and for no verdict.
    pub(super) fn explaining(mut self, what: StepName, lines: Vec<Line>) -> Link {
        self.step(what, lines);
        self
    }

    fn step(&mut self, what: StepName, lines: Vec<Line>) {
        self.steps.push(Step { what, lines });
    }

    pub(super) fn taking(mut self, taken: &[Taken]) -> Link {
        self.taken.extend_from_slice(taken);
        self
    }

    pub(super) fn asking(mut self, items: &[Item]) -> Link {
        self.asks.extend_from_slice(items);
        self
    }

    pub(super) fn mending(mut self, mend: Mend) -> Link {
        self.mend = Some(mend);
        self
    }

    /// Takes away "no shortfall found", and nothing that is worse.
    pub(super) fn never_passing(mut self, reason: LinkReason, asks: &[Item]) -> Link {
        if self.finding == LinkFinding::NoShortfall {
            self.finding = LinkFinding::NotMeasured(Hidden { reason });
            self.asks.extend_from_slice(asks);
        }
        self
    }

    /// Of a bound only a shortfall can be told.
    pub(super) fn only_short(mut self, reason: LinkReason) -> Link {
        let open = matches!(
            self.finding,
            LinkFinding::NoShortfall | LinkFinding::TooClose
        );
        if open {
            self.finding = LinkFinding::NotMeasured(Hidden { reason });
            self.demand_only();
        }
        self
    }

    /// A pass holds only where the lowest plausible grade has a value.
    pub(super) fn lowest(self, lowest: Lowest) -> Link {
        let reason = LinkReason::LowestGradeHasNoValue;
        match lowest {
            Lowest::Known => self,
            Lowest::Unknown => self.never_passing(reason, &[Item::LumberGrade, Item::WoodSpecies]),
        }
    }

    /// Where the capacity comes from, where there is one.
    #[must_use]
    pub fn source(&self) -> Option<Provenance> {
        self.capacity?;
        let steps = self.steps.iter().rev();
        steps
            .flat_map(|step| step.lines.iter().rev())
            .map(|line| line.basis)
            .find(|basis| *basis != Provenance::MECHANICS)
    }
}

/// Something wrong that somebody saw at what holds the guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// Cables pull at the end posts for as long as they are tight.
    Cables,
    /// Cracks at posts, rails or fixings.
    Cracks,
    /// Rust that took metal away.
    DeepRust,
    /// A gap, siding or spacers between post and framing.
    Apart,
    /// The top moves a little.
    MovesALittle,
    /// The top moves a lot.
    MovesALot,
    /// A post is notched where it is fixed.
    Notched,
    /// Rot.
    Rot,
    /// Bolts more than 5 in apart across the grain of the rim.
    WideAcrossGrain,
}

/// The load path of one guard under the loads of one rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// Which capacities the loads may be compared with.
    pub basis: LoadBasis,
    /// In which units the person measured.
    pub units: Units,
    /// The links, from the infill down.
    pub links: Vec<Link>,
    /// Whether anything is written about what holds the guard.
    pub written: bool,
    /// What is seen that no number counts.
    pub seen: Vec<Wrong>,
    /// The greatest moment of each member that could be worked out.
    pub moments: Vec<(Member, Moment)>,
    /// The items that were looked at for it; it rests on their readings alone, on the
    /// demand and on the units.
    pub(in crate::judge) looked_at: ItemSet,
}

impl Chain {
    /// The worst of its links; a stiffness counts only where it falls short.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        let counts = |link: &&Link| {
            link.kind != LinkKind::Stiffness || link.finding.verdict() == Verdict::FallsShort
        };
        let links = self.links.iter().filter(counts);
        links
            .map(|link| link.finding.verdict())
            .min()
            .unwrap_or(Verdict::NotMeasured)
    }

    /// The weakest of the links that have a number: the greatest ratio of demand to
    /// capacity. One that is ruled out without a number cannot be ranked beside
    /// them, and one that only works loose is no strength. The lower one of two in
    /// the path that are alike.
    #[must_use]
    pub fn weakest(&self) -> Option<&Link> {
        let rank = |link: &Link| match link.finding {
            LinkFinding::FallsShort | LinkFinding::NoShortfall | LinkFinding::TooClose => {
                link.ratio.map(|ratio| ratio.high.0)
            }
            LinkFinding::ByRule(_) | LinkFinding::NotMeasured(_) => None,
        };
        self.links
            .iter()
            .filter(|link| link.kind != LinkKind::Stiffness)
            .filter_map(|link| Some((rank(link)?, link)))
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, link)| link)
    }

    /// The links that are ruled out without a number, the lowest in the path first:
    /// built guards fail there.
    pub fn ruled_out(&self) -> impl Iterator<Item = &Link> {
        let links = self.links.iter().rev();
        links.filter(|link| matches!(link.finding, LinkFinding::ByRule(_)))
    }

    /// Whether a link that could not be judged may be weaker than the weakest.
    #[must_use]
    pub fn is_found_so_far(&self) -> bool {
        let mut links = self.links.iter();
        links.any(|link| matches!(link.finding, LinkFinding::NotMeasured(_)))
    }

    /// What to write down next, in the order of asking, each once; never a pull test.
    #[must_use]
    pub fn asks(&self) -> Vec<Item> {
        let open = |link: &&Link| link.finding.verdict() == Verdict::NotMeasured;
        let links = self.links.iter().filter(open);
        let asked: ItemSet = links.flat_map(|link| link.asks.iter().copied()).collect();
        let order = Item::LOAD_PATH.iter().copied();
        order
            .filter(|item| *item != Item::PullTest && asked.contains(*item))
            .collect()
    }

    /// What was taken as given, each once.
    #[must_use]
    pub fn taken(&self) -> Vec<Taken> {
        let mut all: Vec<Taken> = Vec::new();
        for taken in self.links.iter().flat_map(|link| &link.taken) {
            if !all.contains(taken) {
                all.push(*taken);
            }
        }
        all
    }
}
