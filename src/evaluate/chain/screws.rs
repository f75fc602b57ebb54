//! Screws pulled out of wood: which one it is, how much of its thread counts,
//! what it holds (facts/load-path.md §2.3, §2.6).

use crate::evaluate::chain::fixing::positive;
use crate::evaluate::chain::service::Wood;
use crate::measure::Distance;
use crate::measure::Force;
use crate::measure::inches;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::statics::Basis;
use crate::statics::Bounds;
use crate::statics::Worked;
use crate::statics::factors::SpecificGravity;
use crate::statics::hardware::LAGS;
use crate::statics::hardware::Lag;
use crate::statics::hardware::WOOD_SCREWS;
use crate::statics::hardware::WoodScrew;
use crate::statics::withdrawal::Pulled;
use crate::statics::withdrawal::withdrawal;

/// Screws of this count behind something of this thickness, pulled out of side
/// grain of the wood that is known.
pub(super) fn held_by_screws(
    wood: &Wood,
    fasteners: Fasteners,
    before: Bounds<Distance>,
) -> Result<Bounds<Worked<Force>>, &'static str> {
    let length = fasteners
        .length
        .ok_or("how long the screws are is not written")?;
    let length: Distance = length.to_uom();
    let into = before.falling(|before| positive(length - before));
    let gravities = wood.lumber().iter().map(|species| species.gravity.value);
    held(wood, fasteners, into, gravities)
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

    /// The thread that counts, of a screw of this length that reaches so far
    /// into the wood; by the usual share where its length is not known.
    fn thread(self, length: Option<Distance>, into: Bounds<Distance>) -> Bounds<Worked<Distance>> {
        let end = |into: Distance, length: Distance| match self {
            Threaded::Lag(lag) => lag.thread_in_main(length, positive(length - into), into),
            Threaded::Screw(_) => {
                let thread = WoodScrew::thread(length);
                let inputs = [("T", thread.value.into()), ("p", into.into())];
                let held = thread.value.min(into);
                Worked::new("p_t", "min(T, p)", &inputs, held, Basis::MECHANICS).after(thread)
            }
        };
        let whole = |into: Distance| {
            let tip = match self {
                Threaded::Lag(lag) => lag.tip,
                Threaded::Screw(_) => Distance::default(),
            };
            let inputs = [("p", into.into()), ("E", tip.into())];
            Worked::new(
                "p_t",
                "p - E",
                &inputs,
                positive(into - tip),
                Basis::MECHANICS,
            )
        };
        match length {
            Some(length) => into.rising(|into| end(into, length)),
            // a screw is at least as long as it reaches, and at best threaded all the way
            None => Bounds {
                low: end(into.low, into.low),
                high: whole(into.high),
            },
        }
    }

    const fn pulled(self) -> Pulled {
        match self {
            Threaded::Lag(lag) => Pulled::Lag(lag.diameter),
            Threaded::Screw(screw) => Pulled::WoodScrew(screw.diameter),
        }
    }
}

/// So many screws pulled out of side grain of these woods.
pub(super) fn held(
    wood: &Wood,
    fasteners: Fasteners,
    into: Bounds<Distance>,
    gravities: impl IntoIterator<Item = SpecificGravity>,
) -> Result<Bounds<Worked<Force>>, &'static str> {
    let screw = Threaded::of(fasteners.size).ok_or(OUTSIDE)?;
    let thread = screw.thread(fasteners.length.map(|length| length.to_uom()), into);
    pulled_out(wood, fasteners, &thread, gravities)
}

const OUTSIDE: &str = "screws of this size stand in no published table here";

/// So many screws with this thread in the wood.
pub(super) fn pulled_out(
    wood: &Wood,
    fasteners: Fasteners,
    thread: &Bounds<Worked<Distance>>,
    gravities: impl IntoIterator<Item = SpecificGravity>,
) -> Result<Bounds<Worked<Force>>, &'static str> {
    let screw = Threaded::of(fasteners.size).ok_or(OUTSIDE)?;
    let mut all = Vec::new();
    for gravity in gravities {
        for service in wood.joints() {
            for held in [&thread.low, &thread.high] {
                let one = withdrawal(screw.pulled(), gravity, held.value, service);
                let one = one.map_err(|_| OUTSIDE)?;
                all.push(together(one.after(held.clone()), fasteners.count));
            }
        }
    }
    Bounds::of_worked(all).ok_or(OUTSIDE)
}

fn together(one: Worked<Force>, count: u32) -> Worked<Force> {
    if count == 1 {
        return one;
    }
    let n = f64::from(count);
    let inputs = [("n", n.into()), ("W'p", one.value.into())];
    Worked::new("T_a", "n·W'p", &inputs, one.value * n, Basis::MECHANICS).after(one)
}
