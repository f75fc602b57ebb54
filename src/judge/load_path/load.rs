//! What a rule's loads make of a member: each case for itself, the greatest counts.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::Of;
use crate::rules::Direction;
use crate::rules::LoadDemand;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::beam::Case;
use crate::statics::demand::Bays;
use crate::statics::demand::infill_moment;
use crate::statics::demand::line_force;
use crate::statics::demand::line_moment;
use crate::statics::demand::point_moment;
use crate::statics::demand::tributary_width;
use crate::statics::infill::baluster_moment;
use crate::statics::infill::baluster_moment_worst;
use crate::statics::infill::on_one_baluster;

/// The loads of a rule and how far apart the posts stand.
#[derive(Clone, Copy)]
pub(super) struct Loads<'r> {
    pub(super) demand: &'r LoadDemand,
    pub(super) spacing: Option<Distance>,
}

impl Loads<'_> {
    /// Whether the rule's loads come from above too.
    pub(super) fn presses_down(&self) -> bool {
        match self.demand.direction {
            Direction::Any | Direction::OutwardOrDown => true,
            Direction::Level => false,
        }
    }

    /// Whether somebody may also pull the top inward.
    pub(super) fn pulls_inward(&self) -> bool {
        match self.demand.direction {
            Direction::Any | Direction::Level => true,
            Direction::OutwardOrDown => false,
        }
    }

    /// Whether a load along the top or on the infill needs a spacing that
    /// nobody wrote down, so that the greatest demand is not known.
    pub(super) fn lacks_spacing(&self) -> bool {
        let spread = self.demand.line.is_some() || self.demand.infill_pressure.is_some();
        spread && self.spacing.is_none()
    }

    /// The greatest level force at the top of one post.
    pub(super) fn top_force(&self) -> Option<Worked<Force>> {
        let point = self
            .demand
            .concentrated
            .as_ref()
            .map(|load| plain(load.value));
        let line = self.demand.line.as_ref().zip(self.spacing);
        let line = line.map(|(load, spacing)| {
            let width = tributary_width(Bays::Two(spacing, spacing));
            line_force(load.value, width.value).after(width)
        });
        greatest([point, line])
    }

    /// The greatest moment in a post at a level `arm` below the load, the
    /// infill's pressure acting over `height`.
    pub(super) fn post_moment(
        &self,
        arm: Worked<Distance>,
        height: Distance,
    ) -> Option<Worked<Moment>> {
        let point = self.demand.concentrated.as_ref();
        let point = point.map(|load| point_moment(load.value, arm.value));
        let width = self.spacing.map(|bay| tributary_width(Bays::Two(bay, bay)));
        let line = self.demand.line.as_ref().zip(width.clone());
        let line =
            line.map(|(load, width)| line_moment(load.value, width.value, arm.value).after(width));
        let pressure = self.demand.infill_pressure.as_ref().zip(width);
        let pressure = pressure
            .map(|(load, width)| infill_moment(load.value, width.value, height).after(width));
        greatest([point, line, pressure]).map(|moment| moment.after(arm))
    }

    /// The greatest moment of a rail between two posts pressed level.
    pub(super) fn rail_moment_level(&self, span: Distance) -> Option<Worked<Moment>> {
        let point = self
            .demand
            .concentrated
            .as_ref()
            .map(|load| Case::OneSpan(load.value));
        let line = self
            .demand
            .line
            .as_ref()
            .map(|load| Case::OneSpanUniform(load.value));
        greatest([point, line].map(|case| case.map(|case| sagging(case, span))))
    }

    /// The greatest moment of a rail between two posts pressed down; none where
    /// the rule's loads are level.
    pub(super) fn rail_moment_down(&self, span: Distance) -> Option<Worked<Moment>> {
        let demand = self.demand;
        let downward = self.presses_down();
        let point = demand.concentrated.as_ref().filter(|_| downward);
        let point = point.map(|load| Case::OneSpan(load.value));
        let line = demand.line.as_ref().filter(|_| downward);
        let line = demand.line_down.as_ref().or(line);
        let line = line.map(|load| Case::OneSpanUniform(load.value));
        greatest([point, line].map(|case| case.map(|case| sagging(case, span))))
    }

    /// The moment of one baluster, and the load that comes on it.
    pub(super) fn baluster_load(
        &self,
        spacing: Option<Distance>,
        length: Distance,
    ) -> Option<(Worked<Moment>, Worked<Force>)> {
        let patch = self.demand.infill.as_ref()?;
        let load = patch.force.value;
        match &patch.over {
            Some(over) => {
                let over = over.length.to_uom();
                let spacing = spacing?;
                Some((
                    baluster_moment(load, over, spacing, length),
                    on_one_baluster(load, over, spacing),
                ))
            }
            None => Some((baluster_moment_worst(load, length), plain(load))),
        }
    }
}

/// A load as the rule states it, without a line of its own.
pub(super) fn plain<T>(value: T) -> Worked<T> {
    Worked {
        value,
        lines: Vec::new(),
    }
}

fn sagging(case: Case, span: Distance) -> Worked<Moment> {
    case.moments(span).map(|moments| moments.sagging)
}

fn greatest<D: crate::quantities::Dimension + ?Sized, const N: usize>(
    all: [Option<Worked<Of<D>>>; N],
) -> Option<Worked<Of<D>>> {
    Ends::of_worked(all.into_iter().flatten()).map(|ends| ends.high)
}
