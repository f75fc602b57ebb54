//! How a continuous rail spreads a push over three equal posts
//! (springs in closed form, checked against a frame-analysis library). For
//! explanation: sharing is never credited to an
//! existing guard, whose rail joints are not known.

use crate::quantities::Distance;
use crate::quantities::Rigidity;
use crate::quantities::Stiffness;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

const BASIS: Provenance =
    Provenance::computed("beam on three springs, checked against frame elements");

/// Which post is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Loaded {
    /// One at an end.
    End,
    /// The middle one.
    Middle,
}

/// The shares of the push by post, pushed post first where it is an end one;
/// they add up to 1, and a negative one is pulled back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shares {
    /// The near end post, or one of the two alike.
    pub near: f64,
    /// The middle post.
    pub middle: f64,
    /// The far end post.
    pub far: f64,
}

/// The shares for posts of stiffness `post` at the top, `spacing` apart, on a
/// rail of this rigidity for horizontal bending, continuous over its joints.
#[must_use]
pub fn three_posts(
    loaded: Loaded,
    post: Stiffness,
    spacing: Distance,
    rail: Rigidity,
) -> Worked<Shares> {
    let lambda = (post * spacing * spacing * spacing / (rail * 3.0)).value;
    let inputs = [
        ("k", post.into()),
        ("L", spacing.into()),
        ("EI", rail.into()),
    ];
    let stiffness = Worked::new("λ", "k·L³/(3·EI)", &inputs, lambda, BASIS);
    let part = 1.0 / (3.0 + lambda);
    let input = [("λ", lambda.into())];
    let line = |symbol, formula, value| Worked::new(symbol, formula, &input, value, BASIS);
    match loaded {
        Loaded::End => {
            let shares = Shares {
                near: 1.0 - part / 2.0,
                middle: part,
                far: -part / 2.0,
            };
            line("far", "-1/(2·(3 + λ))", shares.far)
                .after(line("middle", "1/(3 + λ)", shares.middle))
                .after(line("near", "1 - 1/(2·(3 + λ))", shares.near))
                .after(stiffness)
                .map(|_| shares)
        }
        Loaded::Middle => {
            let shares = Shares {
                near: part,
                middle: 1.0 - 2.0 * part,
                far: part,
            };
            line("ends", "1/(3 + λ)", part)
                .after(line("middle", "1 - 2/(3 + λ)", shares.middle))
                .after(stiffness)
                .map(|_| shares)
        }
    }
}
