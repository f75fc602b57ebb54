//! Screws in wood: which one it is, what lies under its head, how much of its
//! thread counts, what it holds (NDS 2018 §12.2 and §12.3, read second-hand).

use crate::judge::load_path::why::LinkReason;
use uom::si::angle::degree;

use crate::judge::load_path::service::Wood;
use crate::quantities::Angle;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::dowel::Dowel;
use crate::statics::dowel::dowel_bearing;
use crate::statics::factors::Driven;
use crate::statics::factors::Grain;
use crate::statics::factors::JointService;
use crate::statics::factors::SpecificGravity;
use crate::statics::hardware::LAGS;
use crate::statics::hardware::Lag;
use crate::statics::hardware::WOOD_SCREWS;
use crate::statics::hardware::WoodScrew;
use crate::statics::joint::GeometryFactor;
use crate::statics::joint::Seasoning;
use crate::statics::joint::lateral_allowable;
use crate::statics::lateral::BearingMember;
use crate::statics::lateral::Joint;
use crate::statics::lateral::Shear;
use crate::statics::lateral::SidePlate;
use crate::statics::lateral::penetration_share;
use crate::statics::withdrawal::Pulled;
use crate::statics::withdrawal::RuledOut;
use crate::statics::withdrawal::head_allowable;
use crate::statics::withdrawal::head_pull_through;
use crate::statics::withdrawal::withdrawal;

pub(super) const NO_NUMBERS: LinkReason = LinkReason::FastenersNotWritten;
pub(super) const NO_THREAD: LinkReason = LinkReason::ThreadNotKnown;

/// One fastener of the same kind.
pub(super) const fn one_of(fasteners: Fasteners) -> Fasteners {
    Fasteners {
        count: 1,
        ..fasteners
    }
}

/// The part of a force that comes on one of a post's upper fasteners: half of
/// all are up there, and of an odd number one more or one less.
pub(super) fn on_one(force: Ends<Worked<Force>>, fasteners: Fasteners) -> Ends<Worked<Force>> {
    let share = |of: Worked<Force>, count: u32| {
        if count <= 1 {
            return of;
        }
        let n = f64::from(count);
        let inputs = [("T", of.value.into()), ("n", n.into())];
        Worked::new("T_1", "T/n", &inputs, of.value / n, Provenance::MECHANICS).after(of)
    };
    Ends {
        low: share(force.low, fasteners.count.div_ceil(2)),
        high: share(force.high, fasteners.count / 2),
    }
}

/// What a screw goes through.
#[derive(Clone, Copy)]
pub(super) struct Layers {
    /// What lies between its head and the wood that it bites.
    pub(super) before: Ends<Distance>,
    /// How thick the wood is that it bites.
    pub(super) main: Ends<Distance>,
}

impl Layers {
    /// The wood as a person wrote it: a screw of this length fits, so that no more
    /// lies before it than is left of the length.
    pub(super) fn written(
        length: Option<Distance>,
        before: Ends<Distance>,
        into: Distance,
    ) -> Layers {
        let left = length.map(|length| positive(length - into));
        let fitting = |before: Distance| left.map_or(before, |left| before.min(left));
        Layers {
            before: before.rising(fitting),
            main: Ends::exactly(into),
        }
    }
}

/// A screw by its kind.
#[derive(Clone, Copy)]
enum Threaded {
    Lag(Lag),
    Screw(WoodScrew),
}

impl Threaded {
    fn of(size: FastenerSize) -> Option<Threaded> {
        let diameter: Distance = match size {
            FastenerSize::Number(number) => {
                let mut screws = WOOD_SCREWS.iter();
                let screw = screws.find(|screw| screw.number == number)?;
                return Some(Threaded::Screw(*screw));
            }
            FastenerSize::Diameter(diameter) => diameter.to_uom(),
        };
        let near = |of: Distance| (of - diameter).abs();
        let hair = inches(1.0 / 64.0);
        let lag = LAGS
            .iter()
            .filter(|lag| lag.diameter <= diameter + hair)
            .min_by(|a, b| near(a.diameter).value.total_cmp(&near(b.diameter).value));
        if let Some(lag) = lag.filter(|lag| near(lag.diameter) <= inches(1.0 / 16.0)) {
            return Some(Threaded::Lag(*lag));
        }
        WOOD_SCREWS
            .iter()
            .filter(|screw| screw.diameter <= diameter + hair / 4.0)
            .max_by(|a, b| a.diameter.value.total_cmp(&b.diameter.value))
            .map(|screw| Threaded::Screw(*screw))
    }

    const fn tip(self) -> Distance {
        match self {
            Threaded::Lag(lag) => lag.tip,
            Threaded::Screw(_) => inches(0.0),
        }
    }

    /// p_t at this much before the wood and this much wood.
    fn held(self, length: Distance, before: Distance, main: Distance) -> Worked<Distance> {
        match self {
            Threaded::Lag(lag) => lag.thread_in_main(length, before, main),
            Threaded::Screw(_) => WoodScrew::thread_in_main(length, before, main),
        }
    }

    /// The thread that counts; by the usual share where its length is not known.
    fn thread(self, length: Option<Distance>, layers: Layers) -> Ends<Worked<Distance>> {
        let Layers { before, main } = layers;
        let Some(length) = length else {
            // at worst as long as it reaches, at best threaded all the way and out at the back
            let reach = main.high;
            let inputs = [("p", reach.into())];
            let whole = Worked::new("p_t", "p", &inputs, reach, Provenance::MECHANICS);
            return Ends {
                low: self.held(main.low, Distance::default(), main.low),
                high: whole,
            };
        };
        let thread = match self {
            Threaded::Lag(_) => Lag::thread(length),
            Threaded::Screw(_) => WoodScrew::thread(length),
        };
        // the thread held rises, stays and falls with what lies before: its turns count too
        let turns = [
            length - thread.value,
            length - self.tip() - main.low,
            length - self.tip() - main.high,
        ];
        let turns = turns.into_iter().filter(|turn| before.holds(*turn));
        let starts = [before.low, before.high].into_iter().chain(turns);
        let all = starts
            .flat_map(|start| [main.low, main.high].map(|main| self.held(length, start, main)));
        let none = Worked::new("p_t", "0", &[], Distance::default(), Provenance::MECHANICS);
        Ends::of_worked(all).unwrap_or(Ends::exactly(none))
    }

    const fn pulled(self) -> Pulled {
        match self {
            Threaded::Lag(lag) => Pulled::Lag(lag.diameter),
            Threaded::Screw(screw) => Pulled::WoodScrew(screw.diameter),
        }
    }

    const fn dowel(self) -> Dowel {
        match self {
            Threaded::Lag(lag) => Dowel::Lag(lag),
            Threaded::Screw(screw) => Dowel::WoodScrew(screw),
        }
    }
}

/// So many screws pulled out of this grain of the wood that is known.
pub(super) fn held(
    wood: &Wood,
    fasteners: Fasteners,
    layers: Layers,
    grain: Grain,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    let screw = Threaded::of(fasteners.size).ok_or(OUTSIDE)?;
    let thread = screw.thread(fasteners.length.map(|length| length.to_uom()), layers);
    pulled_out(wood, fasteners, &thread, lightest_and_heaviest(wood), grain)
}

/// Less wood than this lies under no head. (common practice, no source)
const UNDER_A_HEAD: Distance = inches(0.5);

/// What so many screws hold, where their heads bear on wood: a head may be pulled
/// through before the thread comes out, and of the two the less counts (NDS 2018
/// §12.2.5, read second-hand). Lags bear on washers, and have a link of their own.
pub(super) fn no_more_than_the_heads(
    capacity: Ends<Worked<Force>>,
    (under, thick): (&Wood, Ends<Distance>),
    fasteners: Fasteners,
) -> Ends<Worked<Force>> {
    let Some(Threaded::Screw(screw)) = Threaded::of(fasteners.size) else {
        return capacity;
    };
    let mut all = Vec::new();
    for gravity in lightest_and_heaviest(under) {
        for thick in [thick.low, thick.high] {
            let reference = head_pull_through(screw.head, gravity, thick.max(UNDER_A_HEAD));
            for service in under.joints_in(Grain::Side) {
                let one = head_allowable(&reference, service);
                all.push(together(one, fasteners.count));
            }
        }
    }
    let Some(heads) = Ends::of_worked(all) else {
        return capacity;
    };
    let lesser = |thread: Worked<Force>, head: Worked<Force>| {
        if head.value < thread.value {
            head
        } else {
            thread
        }
    };
    Ends {
        low: lesser(capacity.low, heads.low),
        high: lesser(capacity.high, heads.high),
    }
}

const OUTSIDE: LinkReason = LinkReason::NoTableForScrews;

/// Why the method gives nothing for a screw in this grain.
pub(super) const NONE_IN_END_GRAIN: LinkReason = LinkReason::ScrewsInEndGrain;

/// Holding and bearing only grow with G: the lightest and the heaviest wood that
/// it may be are the two ends.
pub(super) fn lightest_and_heaviest(wood: &Wood) -> Vec<SpecificGravity> {
    let all = wood.lumber().iter().map(|species| species.gravity.value);
    Ends::over(all).map_or_else(Vec::new, |ends| vec![ends.low, ends.high])
}

/// So many screws with this thread in the wood.
pub(super) fn pulled_out(
    wood: &Wood,
    fasteners: Fasteners,
    thread: &Ends<Worked<Distance>>,
    gravities: impl IntoIterator<Item = SpecificGravity>,
    grain: Grain,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    let screw = Threaded::of(fasteners.size).ok_or(OUTSIDE)?;
    let mut all = Vec::new();
    for gravity in gravities {
        for service in wood.joints_in(grain) {
            for held in [&thread.low, &thread.high] {
                let one = withdrawal(screw.pulled(), gravity, held.value, service);
                let one = one.map_err(|ruled| match ruled {
                    RuledOut::OutsideRange => OUTSIDE,
                    RuledOut::NailInEndGrain | RuledOut::ScrewInEndGrain => NONE_IN_END_GRAIN,
                })?;
                all.push(together(one.after(held.clone()), fasteners.count));
            }
        }
    }
    Ends::of_worked(all).ok_or(OUTSIDE)
}

/// What a screw that is pushed sideways goes through, and into which grain.
#[derive(Clone, Copy)]
pub(super) struct Sideways {
    pub(super) layers: Layers,
    pub(super) grain: Grain,
    /// The sheet of a bracket under the head; wood otherwise.
    pub(super) plate: Option<SidePlate>,
    /// How the load meets the grain under the head, degrees.
    pub(super) under_the_head: f64,
}

/// Fasteners pushed sideways, across the grain of the wood that they bite
/// (NDS 2018 §12.3): faces in contact, or no value holds.
pub(super) fn pushed_sideways(
    (before, main): (&Wood, &Wood),
    fasteners: Fasteners,
    through: Sideways,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    let dowel = Threaded::of(fasteners.size).ok_or(OUTSIDE)?.dowel();
    let length: Option<Distance> = fasteners.length.map(|length| length.to_uom());
    let layers = through.layers;
    let mut all = Vec::new();
    for thick in [layers.before.low, layers.before.high] {
        for deep in [layers.main.low, layers.main.high] {
            let reach = length.map_or(deep, |length| positive(length - thick));
            let lights = lightest_and_heaviest(before);
            for (light, heavy) in lights.into_iter().zip(lightest_and_heaviest(main)) {
                let wooden = || bearing(dowel, light, through.under_the_head);
                let side = BearingMember {
                    bearing: through.plate.map_or_else(wooden, SidePlate::bearing),
                    length: thick,
                };
                let reference = across(dowel, heavy, side, deep, reach)?;
                for service in main.joints_in(through.grain) {
                    let (seasoning, full) = (Seasoning::Seasoned, GeometryFactor::FULL);
                    let one = lateral_allowable(reference.value, dowel, service, seasoning, full);
                    all.push(together(one.after(reference.clone()), fasteners.count));
                }
            }
        }
    }
    Ends::of_worked(all).ok_or(OUTSIDE)
}

/// Z of one screw that reaches so far beyond what lies before it, its tip
/// included; what stands out at the back of the wood bears on nothing.
fn across(
    dowel: Dowel,
    gravity: SpecificGravity,
    side: BearingMember,
    main: Distance,
    reach: Distance,
) -> Result<Worked<Force>, LinkReason> {
    let deep = match dowel {
        Dowel::Lag(lag) => positive(reach - lag.tip),
        Dowel::Bolt { .. } | Dowel::Nail { .. } | Dowel::WoodScrew(_) => reach,
    };
    penetration_share(dowel, deep.min(main)).map_err(|_| TOO_SHALLOW)?;
    let mut bears = dowel.bearing_length(reach);
    if bears.value > main {
        let inputs = [("t_m", main.into())];
        bears = Worked::new("l_m", "t_m", &inputs, main, Provenance::MECHANICS);
    }
    let joint = Joint {
        dowel,
        main: BearingMember {
            bearing: bearing(dowel, gravity, 90.0),
            length: bears.value,
        },
        side,
        angle: Angle::new::<degree>(90.0),
        shear: Shear::Single,
    };
    let reference = joint.reference().after(bears);
    let load = reference.value.load;
    Ok(reference.map(|_| load))
}

/// How hard wood is to a fastener at this angle of load to grain, in degrees.
fn bearing(dowel: Dowel, gravity: SpecificGravity, angle: f64) -> Pressure {
    dowel_bearing(gravity, dowel.nominal(), Angle::new::<degree>(angle)).value
}

/// Toe-nails in the end of a rail between posts, loaded across it: a third of the
/// length in the rail, the rest at 30 degrees in the post (NDS 2018 §12.3.10.2 and
/// commentary, C_tn 0.83, read second-hand).
pub(super) fn toenailed(
    wood: &Wood,
    fasteners: Fasteners,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    let FastenerSize::Diameter(diameter) = fasteners.size else {
        return Err(LinkReason::NailsHaveNoNumbers);
    };
    let Some(length) = fasteners.length else {
        return Err(LinkReason::NailLengthNotWritten);
    };
    let (diameter, length): (Distance, Distance) = (diameter.to_uom(), length.to_uom());
    let dowel = Dowel::Nail { diameter };
    let mut all = Vec::new();
    for gravity in lightest_and_heaviest(wood) {
        let reference = toenail(dowel, length, gravity).reference();
        let load = reference.value.load;
        for service in wood.joints() {
            let service = JointService {
                driven: Driven::Toenailed,
                ..service
            };
            let (seasoning, full) = (Seasoning::Seasoned, GeometryFactor::FULL);
            let one = lateral_allowable(load, dowel, service, seasoning, full);
            all.push(together(one.after(reference.clone()), fasteners.count));
        }
    }
    Ends::of_worked(all).ok_or(OUTSIDE)
}

fn toenail(dowel: Dowel, length: Distance, gravity: SpecificGravity) -> Joint {
    let third = length / 3.0;
    let slanted = length * libm::cos(std::f64::consts::FRAC_PI_6);
    let bears = bearing(dowel, gravity, 0.0);
    Joint {
        dowel,
        main: BearingMember {
            bearing: bears,
            length: positive(slanted - third),
        },
        side: BearingMember {
            bearing: bears,
            length: third,
        },
        angle: Angle::new::<degree>(0.0),
        shear: Shear::Single,
    }
}

const TOO_SHALLOW: LinkReason = LinkReason::ScrewsTooShallow;

pub(super) fn positive(length: Distance) -> Distance {
    length.max(Distance::default())
}

fn together(one: Worked<Force>, count: u32) -> Worked<Force> {
    if count == 1 {
        return one;
    }
    let n = f64::from(count);
    let inputs = [("n", n.into()), ("T_1", one.value.into())];
    Worked::new(
        "T_a",
        "n·T_1",
        &inputs,
        one.value * n,
        Provenance::MECHANICS,
    )
    .after(one)
}
