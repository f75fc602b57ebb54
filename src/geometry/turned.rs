//! Two equal turned balusters side by side.

use crate::geometry::Certified;
use crate::geometry::Corner;
use crate::geometry::exact::certified;
use crate::geometry::exact::nanometre_corner;
use crate::quantities::Length;

/// How thick a turned baluster is at a height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Station {
    /// Above the profile's beginning.
    pub height: Length,
    /// The diameter there.
    pub diameter: Length,
}

/// Two equal, parallel surfaces of revolution: a profile, straight between its
/// stations, and how far apart the axes stand.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TurnedPair {
    centres: Length,
    profile: Vec<Station>,
}

/// Why a profile is none. Stations are counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum TurnedError {
    /// A height that does not lie above the one before it; one height may stand
    /// twice, with two diameters.
    #[error("the height of station {number} does not lie above the one before it")]
    NotRising {
        /// Which one.
        number: usize,
    },
    /// A diameter or a spacing of zero or below.
    #[error("every diameter must be larger than nothing, and so must the distance of the centres")]
    NotPositive,
    /// Fewer than two stations.
    #[error("a profile needs two heights or more, and this has {count}")]
    TooFewStations {
        /// How many there are.
        count: usize,
    },
    /// A diameter as large as the distance of the axes.
    #[error("at station {number} the balusters touch each other")]
    Touch {
        /// Which one.
        number: usize,
    },
}

/// What lies beyond the ends of a profile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ProfileEnds {
    /// Rails that close the opening there.
    Closed,
    /// The balusters go on as thick as at their ends, for so long.
    GoOn(Length),
}

impl TurnedPair {
    /// The profile from its lowest station up, and the distance between the axes.
    ///
    /// # Errors
    /// [`TurnedError`].
    pub fn new(centres: Length, profile: Vec<Station>) -> Result<TurnedPair, TurnedError> {
        let count = profile.len();
        if count < 2 {
            return Err(TurnedError::TooFewStations { count });
        }
        let positive = |station: &Station| station.diameter > Length::ZERO;
        if centres <= Length::ZERO || !profile.iter().all(positive) {
            return Err(TurnedError::NotPositive);
        }
        for (index, station) in profile.iter().enumerate() {
            let number = index + 1;
            if station.diameter >= centres {
                return Err(TurnedError::Touch { number });
            }
            let before = index.checked_sub(1).map(|before| profile[before]);
            let two_before = index.checked_sub(2).map(|before| profile[before].height);
            let rises = before.is_none_or(|before| {
                station.height > before.height
                    || station.height == before.height
                        && station.diameter != before.diameter
                        && two_before != Some(station.height)
            });
            if !rises {
                return Err(TurnedError::NotRising { number });
            }
        }
        if profile[0].height == profile[count - 1].height {
            return Err(TurnedError::NotRising { number: count });
        }
        Ok(TurnedPair { centres, profile })
    }

    /// The distance between the axes.
    #[must_use]
    pub fn centres(&self) -> Length {
        self.centres
    }

    /// The stations, from the lowest up.
    #[must_use]
    pub fn profile(&self) -> &[Station] {
        &self.profile
    }

    /// The opening between two balusters in the plane through both axes, from the
    /// left axis across and from the profile's height 0 up, in nanometres.
    ///
    /// # Why the largest circle of this outline is the largest ball
    /// *No larger ball passes.* On its way from one side to the other the centre
    /// crosses the plane of the axes. There the ball's section by that plane is a
    /// full disc of its diameter, and it must keep clear of the sections of both
    /// balusters, so that it lies in this outline.
    ///
    /// *A ball of that size passes.* Put its centre at the circle's. Turning a point
    /// of a solid of revolution about its axis into the half plane that holds the
    /// centre brings it no farther away, so the nearest point of each baluster lies
    /// in the plane of the axes, outside of the circle. Then move the centre straight
    /// out of the plane: whatever point of a baluster is the nearest from there,
    /// moving it inward by the same stretch (or to the axis) leaves it in the solid
    /// and no farther from where the centre began; so the distance never shrinks.
    ///
    /// Nothing of this asks for a smooth profile: straight lines between stations are
    /// cones, and [`certified`] bounds the circle among them from both sides.
    ///
    /// With [`ProfileEnds::GoOn`] what lies wholly farther out than the profile lies between
    /// straight sides, and may be moved back along them.
    ///
    /// # Source
    /// Geometry worked out by ourselves: the nearest point of a surface of revolution lies
    /// in the plane of the ball's middle and the axis, so that the section through both
    /// axes decides; a cloud of points in space agreed.
    pub(super) fn outline(&self, ends: ProfileEnds) -> Vec<Corner> {
        let across = self.centres.nanometres_as_float();
        let mut stations = self.profile.clone();
        match (ends, self.profile.as_slice()) {
            (ProfileEnds::GoOn(on), [first, .., last]) => {
                let (mut below, mut above) = (*first, *last);
                below.height = first.height - on;
                above.height = last.height + on;
                stations.insert(0, below);
                stations.push(above);
            }
            (ProfileEnds::GoOn(_) | ProfileEnds::Closed, _) => {
                let square = |one: &Station, other: &Station| one.height == other.height;
                // of a square cut at a rail, the part beyond lies behind the rail
                if matches!(stations.as_slice(), [.., one, other] if square(one, other)) {
                    stations.pop();
                }
                if matches!(stations.as_slice(), [one, other, ..] if square(one, other)) {
                    stations.remove(0);
                }
            }
        }
        // half a nanometre is a float like any other
        let half = |s: &Station| s.diameter.nanometres_as_float() / 2.0;
        let left = stations
            .iter()
            .rev()
            .map(|s| nanometre_corner(half(s), s.height.nanometres_as_float()));
        let right = stations
            .iter()
            .map(|s| nanometre_corner(across - half(s), s.height.nanometres_as_float()));
        right.chain(left).collect()
    }

    /// The largest circle, between two bounds: the lower one is that of an opening
    /// which ends with the profile, the upper one that of one which goes on.
    pub(super) fn circle(&self) -> Option<Certified> {
        let lower = certified(self.outline(ProfileEnds::Closed))?;
        // no circle is wider than the axes are apart
        let upper = certified(self.outline(ProfileEnds::GoOn(self.centres)))?;
        Some(Certified {
            upper_mm: upper.upper_mm,
            ..lower
        })
    }
}
