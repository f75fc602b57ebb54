//! Rails as beams: moments, deflections, reactions (closed forms of
//! beams, checked against a frame-analysis library).

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::quantities::Rigidity;
use crate::quantities::SecondMoment;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

const FRAME_CHECKED: Provenance =
    Provenance::computed("closed form of beam theory, checked against frame elements");

/// How a rail is supported and where it is loaded; every span is equal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Case {
    /// The free end of a rail beyond its last post, load at the tip; the span
    /// is its length. The rotation of the post comes on top.
    Cantilever(Force),
    /// One span with pinned ends, load at midspan: the cautious case of an
    /// existing rail.
    OneSpan(Force),
    /// One span with both ends built in, load at midspan.
    OneSpanBuiltIn(Force),
    /// One span with pinned ends, a uniform load over its length.
    OneSpanUniform(LineLoad),
    /// One span with pinned ends, a load spread evenly over a length at midspan.
    PartlyUniform {
        /// The whole load W.
        load: Force,
        /// The length a that it covers.
        over: Distance,
    },
    /// Three equal spans, load at midspan of an end one.
    ThreeSpansEnd(Force),
    /// Three equal spans, load at midspan of the middle one.
    ThreeSpansMiddle(Force),
    /// Three equal spans, load at the worst place for each moment.
    ThreeSpansWorst(Force),
    /// Two equal spans, load at midspan of one.
    TwoSpans(Force),
    /// Two equal spans, load at the worst place for each moment.
    TwoSpansWorst(Force),
}

/// The greatest moments of a case, both without sign.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moments {
    /// Greatest sagging moment; zero for a cantilever.
    pub sagging: Moment,
    /// Greatest hogging moment, over a support; zero for one pinned span.
    pub hogging: Moment,
}

impl Moments {
    /// The greater of the two.
    #[must_use]
    pub fn greatest(self) -> Moment {
        self.sagging.max(self.hogging)
    }
}

/// Why a case has no deflection here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("no closed form of the deflection is given for this case")]
pub struct NoDeflection;

/// The coefficients of a point load: P·L times sagging and hogging, as text and number.
type PointRow = (Force, (&'static str, f64), (&'static str, f64));

impl Case {
    /// The greatest moments over spans of this length.
    #[must_use]
    pub fn moments(self, span: Distance) -> Worked<Moments> {
        match self {
            Case::OneSpanUniform(load) => {
                let inputs = [("w", load.into()), ("L", span.into())];
                let moment = load * span * span / 8.0;
                Worked::new("M", "w·L²/8", &inputs, moment, FRAME_CHECKED).map(sagging)
            }
            Case::PartlyUniform { load, over } => {
                let inputs = [("W", load.into()), ("L", span.into()), ("a", over.into())];
                let moment = load * (span * 2.0 - over) / 8.0;
                Worked::new("M", "W·(2·L - a)/8", &inputs, moment, FRAME_CHECKED).map(sagging)
            }
            Case::Cantilever(p) => point((p, ("0", 0.0), ("P·L", 1.0)), span),
            Case::OneSpan(p) => point((p, ("P·L/4", 0.25), ("0", 0.0)), span),
            Case::OneSpanBuiltIn(p) => point((p, ("P·L/8", 0.125), ("P·L/8", 0.125)), span),
            Case::ThreeSpansEnd(p) => point((p, ("P·L/5", 0.2), ("P·L/10", 0.1)), span),
            Case::ThreeSpansMiddle(p) => point(
                (p, ("7·P·L/40", 7.0 / 40.0), ("3·P·L/40", 3.0 / 40.0)),
                span,
            ),
            Case::ThreeSpansWorst(p) => {
                let row = (p, ("0.204915·P·L", 0.204_915), ("0.102640·P·L", 0.102_640));
                point(row, span)
            }
            Case::TwoSpans(p) => point(
                (p, ("13·P·L/64", 13.0 / 64.0), ("3·P·L/32", 3.0 / 32.0)),
                span,
            ),
            Case::TwoSpansWorst(p) => {
                let hogging = 1.0 / (6.0 * 3.0_f64.sqrt());
                let row = (p, ("0.207427·P·L", 0.207_427), ("P·L/(6·√3)", hogging));
                point(row, span)
            }
        }
    }

    /// Deflection under the load, or at midspan of a uniform one.
    ///
    /// # Errors
    /// [`NoDeflection`] where the facts give no closed form.
    pub fn deflection(
        self,
        span: Distance,
        rigidity: Rigidity,
    ) -> Result<Worked<Distance>, NoDeflection> {
        let cube = span * span * span;
        let (symbol, formula, load, value): (_, _, crate::statics::AnyQuantity, Distance) =
            match self {
                Case::Cantilever(p) => ("P", "P·L³/(3·EI)", p.into(), p * cube / rigidity / 3.0),
                Case::OneSpan(p) => ("P", "P·L³/(48·EI)", p.into(), p * cube / rigidity / 48.0),
                Case::OneSpanBuiltIn(p) => {
                    ("P", "P·L³/(192·EI)", p.into(), p * cube / rigidity / 192.0)
                }
                Case::OneSpanUniform(w) => {
                    let value = w * span * cube * (5.0 / 384.0) / rigidity;
                    ("w", "5·w·L⁴/(384·EI)", w.into(), value)
                }
                Case::TwoSpans(p) => {
                    let value = p * cube * (23.0 / 1536.0) / rigidity;
                    ("P", "23·P·L³/(1536·EI)", p.into(), value)
                }
                Case::PartlyUniform { .. }
                | Case::ThreeSpansEnd(_)
                | Case::ThreeSpansMiddle(_)
                | Case::ThreeSpansWorst(_)
                | Case::TwoSpansWorst(_) => return Err(NoDeflection),
            };
        let inputs = [(symbol, load), ("L", span.into()), ("EI", rigidity.into())];
        Ok(Worked::new("δ", formula, &inputs, value, FRAME_CHECKED))
    }
}

fn sagging(moment: Moment) -> Moments {
    Moments {
        sagging: moment,
        hogging: Moment::default(),
    }
}

fn point(row: PointRow, span: Distance) -> Worked<Moments> {
    let (load, sagging, hogging) = row;
    let inputs = [("P", load.into()), ("L", span.into())];
    let line = |symbol, (formula, share): (&'static str, f64)| {
        Worked::new(symbol, formula, &inputs, load * span * share, FRAME_CHECKED)
    };
    let sagging = line("M+", sagging);
    let hogging = line("M-", hogging);
    let value = Moments {
        sagging: sagging.value,
        hogging: hogging.value,
    };
    hogging.after(sagging).map(|_| value)
}

/// EI
#[must_use]
pub fn rigidity(elasticity: Pressure, second_moment: SecondMoment) -> Worked<Rigidity> {
    let inputs = [("E", elasticity.into()), ("I", second_moment.into())];
    let value = elasticity * second_moment;
    Worked::new("EI", "E·I", &inputs, value, Provenance::MECHANICS)
}

/// Greatest reaction at the end of a rail: the whole load when it is at the end.
#[must_use]
pub fn end_reaction(load: Force) -> Worked<Force> {
    Worked::new(
        "R_end",
        "P",
        &[("P", load.into())],
        load,
        Provenance::MECHANICS,
    )
}
